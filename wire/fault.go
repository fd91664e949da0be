package wire

import "example.com/drawbar/units"

// A FaultSource is what drives current into a short circuit: a bank, with all
// its batteries in parallel, and whatever else is in its path.
type FaultSource struct {
	Voltage    units.Voltage    // open-circuit, > 0
	Resistance units.Resistance // of the bank inside, with its links; > 0
	// Chassis is the resistance of the chassis, >= 0, where a fault current
	// returns through it instead of a second conductor. Not given means two like
	// conductors.
	Chassis units.Opt[units.Resistance] `json:",omitzero"`
}

// A Fault is the result of [ShortCircuit].
type Fault struct {
	Source    FaultSource      // as used
	Conductor PerLength        // one conductor of the run
	OneWay    units.Length     // from the source to the short
	Loop      units.Resistance // of the run, there and back; with Chassis one conductor and that
	Current   units.Current    // that flows
}

// ShortCircuit returns the steady current of a bolted short at the end of a
// run of two like conductors:
//
//	I_k = E / (R_source + r · 2L)
//
// With s.Chassis, 2L is L and that resistance is added: such a short is larger,
// since half of the conductor is not in its way. At OneWay 0 it is the short at the source itself. The protection inside a
// battery, arcs and joints are left out, so a real short may carry less, and
// the short of a warm bank or a cold cable more.
//
// Voltage and Resistance must be above 0, Chassis and OneWay not below; the conductor is
// as for [Resistance] and is not looked at if OneWay is 0. Anything else is a
// [*units.RangeError] and the zero Fault.
func ShortCircuit(s FaultSource, c Conductor, oneWay units.Length) (Fault, error) {
	return shortCircuit("wire.ShortCircuit", s, c, oneWay)
}

func shortCircuit(op string, s FaultSource, c Conductor, oneWay units.Length) (Fault, error) {
	if err := units.Above[units.Voltage](0).Check(op, "Voltage", s.Voltage); err != nil {
		return Fault{}, err
	}
	if err := units.Above[units.Resistance](0).Check(op, "Resistance", s.Resistance); err != nil {
		return Fault{}, err
	}
	if err := units.AtLeast[units.Resistance](0).Check(op, "Chassis", s.Chassis.Or(0)); err != nil {
		return Fault{}, err
	}
	if err := units.AtLeast[units.Length](0).Check(op, "OneWay", oneWay); err != nil {
		return Fault{}, err
	}
	f := Fault{Source: s, OneWay: oneWay}
	if oneWay > 0 {
		p, err := resistance(op, c)
		if err != nil {
			return Fault{}, err
		}
		f.Conductor, f.Loop = p, p.At.Over(2*oneWay)
		if chassis, ok := s.Chassis.Get(); ok {
			f.Loop = p.At.Over(oneWay) + chassis
		}
	}
	f.Current = s.Voltage.Across(s.Resistance + f.Loop)
	if err := units.Above[units.Current](0).Check(op, "Current", f.Current); err != nil {
		return Fault{}, err
	}
	return f, nil
}
