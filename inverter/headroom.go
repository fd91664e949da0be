package inverter

import (
	"slices"

	"example.com/drawbar/units"
)

// A Headroom is the result of [Check]: what a machine has left with a set of
// demands running together, below zero where it has not enough.
type Headroom struct {
	Machine  Machine             // as used
	Demands  []Demand            // a copy of the list given
	Power    units.Power         // of all
	Apparent units.ApparentPower // of all, added plainly

	RatedVA      units.ApparentPower // ContinuousVA, or as many as Continuous has watts
	PowerLeft    units.Power         // of Continuous
	ApparentLeft units.ApparentPower // of RatedVA

	// Starting is the demand whose start on top of all others running takes
	// the most, an index of Demands; -1 if none has a start.
	Starting  int
	Others    units.ApparentPower            // what runs when it starts
	Start     units.ApparentPower            // Others and the start
	SurgeLeft units.Opt[units.ApparentPower] // of Surge; not given if that is not, or nothing starts

	// Unstated is how many demands state neither apparent power nor power
	// factor and were counted with a power factor of 1.
	Unstated int
}

// Check returns what m has left with all of the demands running together, and
// when the worst of them starts while the others run:
//
//	P = P_1 + P_2 + ...
//	S = P_1/k_1 + P_2/k_2 + ...
//	S_start = S_i,start + S of all others
//
// where k is the power factor. A machine must hold in watts, which its battery
// side feels, and in volt-amperes, which its bridge feels. What is too much or
// not stated is in [Headroom.Findings]. Nothing is allocated but the copy of
// the demands.
//
// A field outside the range that [Machine] and [Demand] state, or not finite,
// gives a [*units.RangeError] that names it, such as "demands[2].Power"; so
// does a sum that no float64 holds. The Headroom is then the zero value.
func Check(m Machine, demands []Demand) (Headroom, error) {
	const op = "inverter.Check"
	if err := m.check(op); err != nil {
		return Headroom{}, err
	}
	if err := checkDemands(op, demands); err != nil {
		return Headroom{}, err
	}
	h := Headroom{Machine: m, Demands: slices.Clone(demands), RatedVA: m.ratedVA(), Starting: -1}
	for _, d := range demands {
		h.Power += d.Power
		h.Apparent += d.apparent()
		if d.unstated() {
			h.Unstated++
		}
	}
	for i, d := range demands {
		others := units.Minus(h.Apparent, d.apparent())
		if start, ok := d.Start.Get(); ok && (h.Starting < 0 || units.Exceeds(others+start, h.Start)) {
			h.Starting, h.Others, h.Start = i, others, others+start
		}
	}
	if err := firstError(
		notNegative[units.Power]().Check(op, "Power", h.Power),
		notNegative[units.ApparentPower]().Check(op, "Apparent", h.Apparent),
		notNegative[units.ApparentPower]().Check(op, "Start", h.Start),
	); err != nil {
		return Headroom{}, err
	}
	h.PowerLeft = units.Minus(m.Continuous, h.Power)
	h.ApparentLeft = units.Minus(h.RatedVA, h.Apparent)
	if s, ok := m.Surge.Get(); ok && h.Starting >= 0 {
		h.SurgeLeft = units.Some(units.Minus(s, h.Start))
	}
	return h, nil
}

// starter returns the demand that starts; false if there is none.
func (h Headroom) starter() (Demand, bool) {
	if h.Starting < 0 || h.Starting >= len(h.Demands) {
		return Demand{}, false
	}
	return h.Demands[h.Starting], true
}
