package inverter

import "example.com/drawbar/units"

// A Machine is an inverter as its datasheet describes it. Continuous and
// Efficiency are needed; what else is not given is not judged, and a finding
// says so.
type Machine struct {
	Continuous units.Power // that it gives for hours, > 0
	// ContinuousVA is the same in volt-amperes, not below Continuous. Not
	// given: as many as Continuous has watts, for a bridge that is sold by its
	// watts promises no more, and a finding says so.
	ContinuousVA units.Opt[units.ApparentPower]
	Surge        units.Opt[units.ApparentPower] // for SurgeFor, not below ContinuousVA
	SurgeFor     units.Opt[units.Elapsed]       // > 0
	// Efficiency is output over input, > 0 to 100 %: 0.89 or 89 %, not 89.
	Efficiency units.Ratio
	// Idle is what it draws from the bank by itself whenever it is on, >= 0.
	// An explicit 0 W is data.
	Idle units.Opt[units.Power]
	// LowestVoltage is where it cuts off, > 0. The current is greatest there.
	LowestVoltage units.Opt[units.Voltage]
	// PassThrough is the rating of the relay that carries shore power past the
	// machine, > 0; see [PassThrough].
	PassThrough units.Opt[units.Current]
}

// check reports the first field of m out of range.
func (m Machine) check(op string) error {
	return firstError(
		positive[units.Power]().Check(op, "Continuous", m.Continuous),
		checkOpt(op, "ContinuousVA", m.ContinuousVA, units.AtLeast(m.Continuous.Apparent(1))),
		checkOpt(op, "Surge", m.Surge, units.AtLeast(m.ratedVA())),
		checkOpt(op, "SurgeFor", m.SurgeFor, positive[units.Elapsed]()),
		shares().Check(op, "Efficiency", m.Efficiency),
		checkOpt(op, "Idle", m.Idle, notNegative[units.Power]()),
		checkOpt(op, "LowestVoltage", m.LowestVoltage, positive[units.Voltage]()),
		checkOpt(op, "PassThrough", m.PassThrough, positive[units.Current]()),
	)
}

// ratedVA returns the volt-amperes that m gives for hours.
func (m Machine) ratedVA() units.ApparentPower { return m.ContinuousVA.Or(m.Continuous.Apparent(1)) }

// Limit returns what m gives for hours in watts and volt-amperes, for [Sets]
// and [CanRun].
func (m Machine) Limit() Limit {
	return Limit{Name: "the inverter", Power: units.Some(m.Continuous), Apparent: units.Some(m.ratedVA())}
}

// A Demand is what a load looks like to the source that feeds it.
type Demand struct {
	Name  string      // not empty
	Power units.Power // while it runs, what the plug takes and not what the label cooks with, >= 0
	// Apparent power while it runs, not below Power. It or PowerFactor is
	// given, or neither, which counts as a power factor of 1 and is a finding.
	Apparent    units.Opt[units.ApparentPower]
	PowerFactor units.Opt[units.Ratio] // > 0 to 1
	Kind        Kind                   // how it starts; not stated is a finding
	// Start is what it takes at the most while it starts, instead of its
	// apparent power and not on top of it, so not below that. Not given:
	// counted as no more than running, which of a motor is a finding.
	Start    units.Opt[units.ApparentPower]
	StartFor units.Opt[units.Elapsed] // how long a start lasts, > 0
}

// apparent returns the apparent power of a checked d while it runs.
func (d Demand) apparent() units.ApparentPower {
	if s, ok := d.Apparent.Get(); ok {
		return s
	}
	return d.Power.Apparent(d.PowerFactor.Or(1))
}

// starts is the range of Start: above nothing, and not below running.
func (d Demand) starts() units.Bounds[units.ApparentPower] {
	if d.apparent() > 0 {
		return units.AtLeast(d.apparent())
	}
	return positive[units.ApparentPower]()
}

// unstated reports that nothing tells the apparent power of d.
func (d Demand) unstated() bool { return !d.Apparent.IsSet() && !d.PowerFactor.IsSet() }

// check reports the first field of d out of range.
func (d Demand) check(op string) error {
	if d.Apparent.IsSet() && d.PowerFactor.IsSet() {
		return &units.RangeError{Op: op, Field: "PowerFactor", Value: d.PowerFactor, Allowed: allowed("not given where Apparent is")}
	}
	return firstError(
		checkName(op, "Name", d.Name),
		notNegative[units.Power]().Check(op, "Power", d.Power),
		checkOpt(op, "Apparent", d.Apparent, units.AtLeast(d.Power.Apparent(1))),
		checkOpt(op, "PowerFactor", d.PowerFactor, shares()),
		notNegative[units.ApparentPower]().Check(op, "Apparent", d.apparent()),
		checkWord(op, "Kind", kindWords[:], d.Kind, uint8(d.Kind)),
		checkOpt(op, "Start", d.Start, d.starts()),
		checkOpt(op, "StartFor", d.StartFor, positive[units.Elapsed]()),
	)
}

// checkDemands reports the first field of a list out of range, by its place
// in the list.
func checkDemands(op string, demands []Demand) error {
	for i, d := range demands {
		if err := d.check(op); err != nil {
			e := err.(*units.RangeError)
			e.Field = at("demands", i) + "." + e.Field
			return e
		}
	}
	return nil
}
