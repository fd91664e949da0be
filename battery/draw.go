package battery

import (
	"math"

	"example.com/drawbar/units"
)

// A Draw is how a load takes its share: exactly one field is given. A load of
// constant power, such as an inverter, takes more current the lower the
// voltage; a resistive one takes less.
type Draw struct {
	Power      units.Opt[units.Power]      // constant, > 0
	Current    units.Opt[units.Current]    // constant, > 0
	Resistance units.Opt[units.Resistance] // constant, >= 0; 0 is a short circuit
}

// A Circuit is a load on a source with a resistance.
type Circuit struct {
	OpenCircuit units.Voltage            // of the source, > 0
	Internal    units.Resistance         // all that lies before the load: battery, links and cables, >= 0
	Draw        Draw                     // the load
	CutOff      units.Opt[units.Voltage] // the load stops at this voltage or below, > 0
}

// A Sag is the result of [UnderLoad].
type Sag struct {
	Circuit Circuit       // as used
	Voltage units.Voltage // at the load
	Current units.Current // through the load and what lies before it
	Power   units.Power   // taken by the load
	Lost    units.Power   // heat in Internal
}

// UnderLoad returns the voltage that is left at the load of c. With V of the
// source and R before the load:
//
//	constant power:      U = (V + sqrt(V² - 4·R·P)) / 2,  I = P / U
//	constant current:    U = V - I·R
//	constant resistance: I = V / (R + R_load),  U = I·R_load
//
// Of the two voltages at which a constant power can be had, the one returned
// is the higher, which is the one a load that starts from rest settles at.
// To put P/V in for the current leaves out that the sag raises it, and passes
// circuits that trip.
//
// A field out of the range that [Circuit] and [Draw] state, or not finite,
// gives a [*units.RangeError]; so does none or more than one field of the
// Draw, a power of more than V²/(4R) or a current of more than V/R, which the
// source cannot give, and a result that no float64 holds.
func UnderLoad(c Circuit) (Sag, error) { return c.underLoad("battery.UnderLoad") }

func (c Circuit) underLoad(op string) (Sag, error) {
	if err := c.check(op); err != nil {
		return Sag{}, err
	}
	s := Sag{Circuit: c}
	if p, ok := c.Draw.Power.Get(); ok {
		v, r := float64(c.OpenCircuit), float64(c.Internal)
		root := c.root()
		if root < 0 {
			most := units.Power(v * v / (4 * r))
			return Sag{}, &units.RangeError{Op: op, Field: "Power", Value: p, Allowed: units.Above[units.Power](0).AtMost(most)}
		}
		s.Voltage = units.Voltage((v + math.Sqrt(root)) / 2)
		s.Current = p.At(s.Voltage)
	} else if i, ok := c.Draw.Current.Get(); ok {
		s.Current = i
		s.Voltage = units.Minus(c.OpenCircuit, i.Through(c.Internal))
		if s.Voltage < 0 {
			return Sag{}, &units.RangeError{Op: op, Field: "Current", Value: i,
				Allowed: units.Above[units.Current](0).AtMost(c.OpenCircuit.Across(c.Internal))}
		}
	} else {
		r := c.Draw.Resistance.Or(0)
		s.Current = c.OpenCircuit.Across(c.Internal + r)
		s.Voltage = s.Current.Through(r)
	}
	s.Power = s.Current.At(s.Voltage)
	s.Lost = s.Current.Heating(c.Internal)
	return s.finite(op)
}

// root returns what is under the root for a constant power: 0 if it is all
// that the source can give, below 0 if it is more.
func (c Circuit) root() float64 {
	v := float64(c.OpenCircuit)
	return units.Minus(v*v, 4*float64(c.Internal)*float64(c.Draw.Power.Or(0)))
}

// finite refuses what no float64 holds.
func (s Sag) finite(op string) (Sag, error) {
	if err := units.Above[units.Current](0).Check(op, "Current", s.Current); err != nil {
		return Sag{}, err
	}
	if err := units.AtLeast[units.Power](0).Check(op, "Power", s.Power); err != nil {
		return Sag{}, err
	}
	if err := units.AtLeast[units.Power](0).Check(op, "Lost", s.Lost); err != nil {
		return Sag{}, err
	}
	return s, nil
}

// check reports the first field of c out of range.
func (c Circuit) check(op string) error {
	if err := units.Above[units.Voltage](0).Check(op, "OpenCircuit", c.OpenCircuit); err != nil {
		return err
	}
	if err := units.AtLeast[units.Resistance](0).Check(op, "Internal", c.Internal); err != nil {
		return err
	}
	if err := c.Draw.check(op); err != nil {
		return err
	}
	if r, ok := c.Draw.Resistance.Get(); ok {
		if err := units.Above[units.Resistance](0).Check(op, "Resistance", c.Internal+r); err != nil {
			return err
		}
	}
	return checkOpt(op, "CutOff", c.CutOff, units.Above[units.Voltage](0))
}

// check reports what is wrong with d.
func (d Draw) check(op string) error {
	given := 0
	for _, set := range [...]bool{d.Power.IsSet(), d.Current.IsSet(), d.Resistance.IsSet()} {
		if set {
			given++
		}
	}
	if given != 1 {
		return &units.RangeError{Op: op, Field: "Draw", Value: given,
			Allowed: allowed("exactly one of Power, Current and Resistance given")}
	}
	if err := checkOpt(op, "Power", d.Power, units.Above[units.Power](0)); err != nil {
		return err
	}
	if err := checkOpt(op, "Current", d.Current, units.Above[units.Current](0)); err != nil {
		return err
	}
	return checkOpt(op, "Resistance", d.Resistance, units.AtLeast[units.Resistance](0))
}

// isShort reports whether more is lost before the load than reaches it. No
// load is made to run so: it is a short circuit, through whatever lies in it.
func (s Sag) isShort() bool {
	return units.Compare(s.Voltage, units.Scale(s.Circuit.OpenCircuit, 0.5)) < 0
}

// belowCutOff reports whether the load has stopped: it does at the cut-off
// itself.
func (s Sag) belowCutOff() bool {
	cut, ok := s.Circuit.CutOff.Get()
	return ok && units.Compare(s.Voltage, cut) <= 0
}
