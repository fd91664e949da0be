package battery

import "example.com/drawbar/units"

// A Demand is what a bank is asked to give and to take.
type Demand struct {
	Bank Bank // what is asked
	// Discharge is the greatest lasting current out of the bank, everything
	// that can run together; Charge the greatest into it, every source that
	// can charge together added up. >= 0; 0 is none, not given is not judged.
	Discharge, Charge units.Opt[units.Current]
}

// A Limits is the result of [CheckLimits]. A limit is not given if the
// battery's is not; 0 A with one string out means that the bank is gone.
type Limits struct {
	Assembly                      Assembly                 // the bank
	Demand                        Demand                   // as used
	Discharge, Charge             units.Opt[units.Current] // with every string
	DischargeOneOut, ChargeOneOut units.Opt[units.Current] // with one string out
	DischargeEach, ChargeEach     units.Opt[units.Current] // what each string then sees, all in
	DischargeOthers, ChargeOthers units.Opt[units.Current] // and with one out; not given with one string
}

// CheckLimits puts what d demands beside what the bank may give and take,
// with every string connected and with one out:
//
//	I_limit = Parallel · I_battery
//	I_out   = (Parallel - 1) · I_battery
//
// Protection electronics disconnect one battery at a time: cold, full, or
// with a weak cell. What the whole bank carried then falls on the others at
// once, so the limits must hold with one out. Strings are taken to share the
// current alike.
//
// A field outside the range that [Demand], [Bank] and [Battery] state, or a
// result that no float64 holds, gives a [*units.RangeError].
func CheckLimits(d Demand) (Limits, error) {
	const op = "battery.CheckLimits"
	a, err := d.Bank.assemble(op)
	if err != nil {
		return Limits{}, err
	}
	if err := checkOpt(op, "Discharge", d.Discharge, units.AtLeast[units.Current](0)); err != nil {
		return Limits{}, err
	}
	if err := checkOpt(op, "Charge", d.Charge, units.AtLeast[units.Current](0)); err != nil {
		return Limits{}, err
	}
	n := a.Bank.Parallel
	l := Limits{
		Assembly: a, Demand: d,
		Discharge: a.dischargeLimit(n), Charge: a.chargeLimit(n),
		DischargeOneOut: a.dischargeLimit(n - 1), ChargeOneOut: a.chargeLimit(n - 1),
		DischargeEach: among(d.Discharge, n), ChargeEach: among(d.Charge, n),
		DischargeOthers: among(d.Discharge, n-1), ChargeOthers: among(d.Charge, n-1),
	}
	if err := checkOpt(op, "DischargeLimit", l.Discharge, units.Bounds[units.Current]{}); err != nil {
		return Limits{}, err
	}
	if err := checkOpt(op, "ChargeLimit", l.Charge, units.Bounds[units.Current]{}); err != nil {
		return Limits{}, err
	}
	return l, nil
}

// among returns the share of each of so many strings, if there are any.
func among(i units.Opt[units.Current], strings int) units.Opt[units.Current] {
	whole, ok := i.Get()
	if !ok || strings == 0 {
		return units.None[units.Current]()
	}
	return units.Some(units.Scale(whole, 1/units.Ratio(strings)))
}
