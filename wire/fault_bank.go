package wire

import "example.com/drawbar/units"

// A FaultBank is a bank of equal batteries, or of cells, as a source of fault
// current.
type FaultBank struct {
	Voltage    units.Voltage    // of one, open-circuit, > 0
	Resistance units.Resistance // of one, > 0
	Series     int              // how many in a string, 1 to 1000; 0 means 1
	Parallel   int              // how many strings, 1 to 1000; 0 means 1
	Links      units.Resistance // of what joins them and leads out, in all; >= 0
}

// Source returns what the bank drives into a short circuit:
//
//	E = n_series · E_1,  R = n_series/n_parallel · R_1 + R_links
//
// Each string that is added makes the fault larger: a device that could break it
// before may burst after. The resistance is that of the discharge curve, not the
// smaller one that an impedance meter shows. Protection inside a battery may end
// the fault sooner, and is no fuse.
//
// A field outside its range gives a [*units.RangeError] and the zero
// FaultSource.
func (b FaultBank) Source() (FaultSource, error) {
	const op = "wire.FaultBank.Source"
	if err := units.Above[units.Voltage](0).Check(op, "Voltage", b.Voltage); err != nil {
		return FaultSource{}, err
	}
	if err := units.Above[units.Resistance](0).Check(op, "Resistance", b.Resistance); err != nil {
		return FaultSource{}, err
	}
	if err := units.AtLeast[units.Resistance](0).Check(op, "Links", b.Links); err != nil {
		return FaultSource{}, err
	}
	const most, allowed = 1000, allowedText("0 to 1000")
	if b.Series < 0 || b.Series > most {
		return FaultSource{}, &units.RangeError{Op: op, Field: "Series", Value: b.Series, Allowed: allowed}
	}
	if b.Parallel < 0 || b.Parallel > most {
		return FaultSource{}, &units.RangeError{Op: op, Field: "Parallel", Value: b.Parallel, Allowed: allowed}
	}
	series, parallel := units.Ratio(max(b.Series, 1)), units.Ratio(max(b.Parallel, 1))
	s := FaultSource{
		Voltage:    units.Scale(b.Voltage, series),
		Resistance: units.Scale(b.Resistance, series/parallel) + b.Links,
	}
	if err := units.Above[units.Voltage](0).Check(op, "Voltage", s.Voltage); err != nil {
		return FaultSource{}, err
	}
	if err := units.Above[units.Resistance](0).Check(op, "Resistance", s.Resistance); err != nil {
		return FaultSource{}, err
	}
	return s, nil
}
