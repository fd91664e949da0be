package battery

import (
	"strconv"

	"example.com/drawbar/units"
)

// A Hold is a bank that feeds a load with nothing coming in.
type Hold struct {
	Bank Bank // what feeds it
	Draw Draw // of the load at the bank, the losses of an inverter included
	// StateOfCharge is where the bank begins, 0 to 100 % of what it can give;
	// full, 100 %, if not given.
	StateOfCharge units.Opt[units.Ratio]
	// OpenCircuit is the voltage of the bank at rest, > 0, taken as constant
	// until the end; the nominal one if not given.
	OpenCircuit units.Opt[units.Voltage]
	// Leads is the resistance of links and cables there and back, >= 0; 0 if
	// not given.
	Leads units.Opt[units.Resistance]
	// CutOff is the voltage at or below which the load stops, > 0.
	CutOff units.Opt[units.Voltage]
}

// An End says what ends a [HoldUp].
type End uint8

const (
	// ByDepth is that the bank has come down to the depth that may be taken.
	ByDepth End = iota
	// ByCutOff is that the voltage under load is at or below the cut-off.
	ByCutOff
	// ByProtection is that the current is above the discharge limit.
	ByProtection
)

// String returns "depth", "cut-off voltage" or "discharge limit".
func (e End) String() string {
	switch e {
	case ByDepth:
		return "depth"
	case ByCutOff:
		return "cut-off voltage"
	case ByProtection:
		return "discharge limit"
	}
	return "End(" + strconv.Itoa(int(e)) + ")"
}

// An Endurance is the result of [HoldUp].
type Endurance struct {
	Hold          Hold                     // as used
	StateOfCharge units.Ratio              // where it begins, settled
	Sag           Sag                      // voltage and current meanwhile
	Usable        UsableCharge             // from full, at that current
	Charge        units.Charge             // from StateOfCharge down to the depth
	Limit         units.Opt[units.Current] // of discharge, of the whole bank
	// MostPower is what a load can have within Limit and with the voltage not
	// below its cut-off, where it just stops; 0 W if the bank at rest is below
	// that. Not given if Limit is not.
	MostPower units.Opt[units.Power]
	Time      units.Elapsed // 0 if the load does not start, or the bank is down already
	End       End           // what ends it
	Energy    units.Energy  // that the load gets in Time
}

// HoldUp returns how long the bank of h feeds its load:
//
//	U, I   as UnderLoad gives them, with R of the bank and Leads
//	Charge = Available(I) · (depth - (1 - StateOfCharge))
//	t      = Charge / I
//
// If the current is above the discharge limit of the bank or the voltage at
// or below the cut-off, the time is 0: energy is not power. One voltage holds
// from the beginning to the end, so the last part of a discharge, where a
// battery sags more, is taken too kindly; a cut-off reached there ends it
// sooner.
//
// A field outside the range that [Hold], [Bank] and [Battery] state, a draw
// that [UnderLoad] refuses, or a result that no float64 holds gives a
// [*units.RangeError].
func HoldUp(h Hold) (Endurance, error) {
	const op = "battery.HoldUp"
	a, err := h.Bank.assemble(op)
	if err != nil {
		return Endurance{}, err
	}
	if err := h.check(op); err != nil {
		return Endurance{}, err
	}
	// Settled, as the depth is: where they all but cancel, what is left is a
	// number that can be followed by hand.
	e := Endurance{Hold: h, StateOfCharge: units.Settle(h.StateOfCharge.Or(1))}
	e.Sag, err = Circuit{
		OpenCircuit: h.OpenCircuit.Or(a.Voltage),
		Internal:    a.Resistance.Or(0) + h.Leads.Or(0),
		Draw:        h.Draw,
		CutOff:      h.CutOff,
	}.underLoad(op)
	if err != nil {
		return Endurance{}, err
	}
	if e.Usable, err = a.usable(op, units.Some(e.Sag.Current)); err != nil {
		return Endurance{}, err
	}
	e.Limit = a.dischargeLimit(a.Bank.Parallel)
	if err := checkOpt(op, "DischargeLimit", e.Limit, units.Bounds[units.Current]{}); err != nil {
		return Endurance{}, err
	}
	e.MostPower = e.mostPower()
	e.Charge = units.Scale(e.Usable.Available, max(e.share(), 0))
	e.Time = e.Charge.Lasts(e.Sag.Current)
	if limit, ok := e.Limit.Get(); ok && units.Exceeds(e.Sag.Current, limit) {
		e.Time, e.End = 0, ByProtection
	} else if e.Sag.belowCutOff() {
		e.Time, e.End = 0, ByCutOff
	}
	e.Energy = e.Sag.Power.For(e.Time)
	if err := units.AtLeast[units.Energy](0).Check(op, "Energy", e.Energy); err != nil {
		return Endurance{}, err
	}
	if err := checkOpt(op, "MostPower", e.MostPower, units.AtLeast[units.Power](0)); err != nil {
		return Endurance{}, err
	}
	return e, nil
}

// mostPower returns what a load can have within the limit and down to the
// cut-off. Beyond half the short-circuit current more current is less power.
func (e Endurance) mostPower() units.Opt[units.Power] {
	i, ok := e.Limit.Get()
	if !ok {
		return units.None[units.Power]()
	}
	c := e.Sag.Circuit
	cut := c.CutOff.Or(0)
	if units.Compare(c.OpenCircuit, cut) <= 0 {
		return units.Some[units.Power](0)
	}
	// Without resistance the last two are infinite, and the limit decides.
	i = min(i, c.OpenCircuit.Across(2*c.Internal), (c.OpenCircuit - cut).Across(c.Internal))
	return units.Some(i.At(c.OpenCircuit - i.Through(c.Internal)))
}

// share returns the part of the charge between the beginning and the depth,
// below 0 if the bank begins below it.
func (e Endurance) share() units.Ratio {
	return units.Minus(e.Usable.Assembly.Depth, 1-e.StateOfCharge)
}

// lowest returns the least charged that the bank gets: where it begins, or
// where the depth lets it come to.
func (e Endurance) lowest() units.Ratio { return min(1-e.Usable.Assembly.Depth, e.StateOfCharge) }

// check reports the first field of h out of range, but for those that Bank and
// Circuit check.
func (h Hold) check(op string) error {
	if err := checkOpt(op, "StateOfCharge", h.StateOfCharge, units.Between[units.Ratio](0, 1)); err != nil {
		return err
	}
	return checkOpt(op, "Leads", h.Leads, units.AtLeast[units.Resistance](0))
}

// dischargeLimit returns the limit of so many strings, if there is one.
func (a Assembly) dischargeLimit(strings int) units.Opt[units.Current] {
	return times(a.Bank.Battery.DischargeLimit, strings)
}

// chargeLimit returns the limit of so many strings, if there is one.
func (a Assembly) chargeLimit(strings int) units.Opt[units.Current] {
	return times(a.Bank.Battery.ChargeLimit, strings)
}

func times(limit units.Opt[units.Current], strings int) units.Opt[units.Current] {
	i, ok := limit.Get()
	if !ok {
		return limit
	}
	return units.Some(units.Scale(i, units.Ratio(strings)))
}
