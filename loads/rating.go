package loads

import (
	"strings"

	"example.com/drawbar/units"
)

// A Rating is what a nameplate, a datasheet or a meter says of one load while
// it runs: exactly one of Power, Current, Apparent and Output, and what that
// one needs.
type Rating struct {
	Power    units.Opt[units.Power]         // what it takes, >= 0
	Current  units.Opt[units.Current]       // what it takes at Voltage, >= 0
	Apparent units.Opt[units.ApparentPower] // what it takes, >= 0; on an alternating-current bus only
	// Output is what it gives off in use, >= 0: the heat that an oven puts
	// into the food, the power at a shaft. Efficiency is then needed.
	Output     units.Opt[units.Power]
	Efficiency units.Opt[units.Ratio] // Output over what it takes, > 0, <= 1; with Output only
	// Voltage is that of the nameplate, > 0. Not given means that of the bus.
	// Where it differs from the bus, the kind of the load says what follows.
	Voltage units.Opt[units.Voltage]
	// PowerFactor is that of an alternating-current load, > 0, <= 1. Not
	// given is 1 for a resistive load; for others 1 is used and a finding
	// says so. A direct-current bus has none.
	PowerFactor units.Opt[units.Ratio]
}

// String returns "7 A at 12 V", "1500 VA, power factor 0.6" and the like, or
// "nothing".
func (r Rating) String() string {
	var parts []string
	add := func(set bool, text string) {
		if set {
			parts = append(parts, text)
		}
	}
	add(r.Power.IsSet(), r.Power.String())
	add(r.Current.IsSet(), r.Current.String())
	add(r.Apparent.IsSet(), r.Apparent.String())
	add(r.Output.IsSet(), "output "+r.Output.String())
	text := strings.Join(parts, " and ")
	if text == "" {
		text = "nothing"
	}
	if r.Voltage.IsSet() {
		text += " at " + r.Voltage.String()
	}
	if pf, ok := r.PowerFactor.Get(); ok {
		text += ", power factor " + units.Significant(float64(pf), 6)
	}
	if r.Efficiency.IsSet() {
		text += ", efficiency " + r.Efficiency.String()
	}
	return text
}

// upToOne is the range of an efficiency and of a power factor.
func upToOne() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).AtMost(1) }

// checkOpt checks x if it is given.
func checkOpt[Q units.Quantity](op, field string, x units.Opt[Q], allowed units.Bounds[Q]) error {
	if q, ok := x.Get(); ok {
		return allowed.Check(op, field, q)
	}
	return nil
}

// check returns all that is wrong with the rating of a load of kind k on a
// bus of the given kind.
func (r Rating) check(op string, k Kind, bus BusKind) faults {
	var f faults
	given := 0
	for _, set := range [...]bool{r.Power.IsSet(), r.Current.IsSet(), r.Apparent.IsSet(), r.Output.IsSet()} {
		if set {
			given++
		}
	}
	if given != 1 {
		f.add(&units.RangeError{Op: op, Field: "Rating", Value: r, Allowed: wording("exactly one of power, current, apparent power and output")})
	}
	f.add(checkOpt(op, "Rating.Power", r.Power, units.AtLeast[units.Power](0)))
	f.add(checkOpt(op, "Rating.Current", r.Current, units.AtLeast[units.Current](0)))
	f.add(checkOpt(op, "Rating.Apparent", r.Apparent, units.AtLeast[units.ApparentPower](0)))
	f.add(checkOpt(op, "Rating.Output", r.Output, units.AtLeast[units.Power](0)))
	f.add(checkOpt(op, "Rating.Voltage", r.Voltage, units.Above[units.Voltage](0)))
	if r.Output.IsSet() != r.Efficiency.IsSet() {
		f.add(&units.RangeError{Op: op, Field: "Rating.Efficiency", Value: r.Efficiency, Allowed: wording("an efficiency with an output, none without")})
	}
	f.add(checkOpt(op, "Rating.Efficiency", r.Efficiency, upToOne()))
	if bus == Direct && r.Apparent.IsSet() {
		f.add(&units.RangeError{Op: op, Field: "Rating.Apparent", Value: r.Apparent, Allowed: wording("W or A on a direct-current bus")})
	}
	return append(f, r.checkPowerFactor(op, k, bus)...)
}

func (r Rating) checkPowerFactor(op string, k Kind, bus BusKind) faults {
	var f faults
	pf, ok := r.PowerFactor.Get()
	switch {
	case !ok:
	case bus == Direct:
		f.add(&units.RangeError{Op: op, Field: "Rating.PowerFactor", Value: pf, Allowed: wording("none on a direct-current bus")})
	case k == Resistive && units.Compare(pf, 1) != 0:
		f.add(&units.RangeError{Op: op, Field: "Rating.PowerFactor", Value: pf, Allowed: wording("1 for a resistive load")})
	default:
		f.add(upToOne().Check(op, "Rating.PowerFactor", pf))
	}
	return f
}

// powerFactor returns the power factor to use, and whether it is assumed.
func (r Rating) powerFactor(k Kind, bus BusKind) (pf units.Ratio, assumed bool) {
	pf, ok := r.PowerFactor.Get()
	switch {
	case ok:
		return pf, false
	case bus == Direct, k == Resistive:
		return 1, false
	}
	return 1, true
}

// take returns what one load takes at v, the voltage it is rated at. The
// rating is checked.
func (r Rating) take(v units.Voltage, pf units.Ratio) (units.Power, units.ApparentPower) {
	var s units.ApparentPower
	switch {
	case r.Current.IsSet():
		s = r.Current.Or(0).ApparentAt(v)
	case r.Apparent.IsSet():
		s = r.Apparent.Or(0)
	case r.Output.IsSet():
		p := units.Scale(r.Output.Or(0), 1/r.Efficiency.Or(1))
		return p, p.Apparent(pf)
	default:
		p := r.Power.Or(0)
		return p, p.Apparent(pf)
	}
	return s.Real(pf), s
}
