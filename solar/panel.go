package solar

import (
	"fmt"

	"example.com/drawbar/units"
)

// CellType is what the cells of a panel are made of.
type CellType uint8

const (
	// CellsNotStated means that nobody said.
	CellsNotStated CellType = iota
	// CrystallineSilicon is mono- or multicrystalline silicon, as nearly all
	// panels are.
	CrystallineSilicon
	// ThinFilm is everything else, such as amorphous silicon.
	ThinFilm
)

// String returns "not stated", "crystalline silicon" or "thin film".
func (c CellType) String() string {
	switch c {
	case CellsNotStated:
		return "not stated"
	case CrystallineSilicon:
		return "crystalline silicon"
	case ThinFilm:
		return "thin film"
	}
	return "unknown"
}

// A Panel is one panel by its datasheet, at standard test conditions. Each
// function says which fields it needs; those that it does not need may be
// left out, and those that are there are held against each other.
type Panel struct {
	Power units.Power              // nameplate, > 0 and not above Voc · Isc
	Voc   units.Voltage            // open-circuit voltage, > 0
	Vmp   units.Voltage            // voltage at maximum power, > 0 and below Voc
	Isc   units.Current            // short-circuit current, > 0 and not below Power / Vmp
	Imp   units.Opt[units.Current] // current at maximum power, > 0 and below Isc; only checks the others
	// VoltageCoefficient is β: how Voc changes for each kelvin, −1 %/K to
	// −0.1 %/K. It is negative: the voltage rises in the cold. Silicon has
	// −0.2 %/K to −0.5 %/K, near −0.30 %/K as a rule, so that a figure whose
	// point has slipped, or a ratio taken for per cent, falls outside.
	VoltageCoefficient units.Opt[units.PerKelvin]
	Cells              CellType                 // for the table of 690.7(A), which is for crystalline silicon
	SeriesFuse         units.Opt[units.Current] // maximum series fuse on the label, > 0
}

// An Array is like panels in like strings, all strings in parallel.
type Array struct {
	Panel    Panel // each one
	Series   int   // panels in a string, 1 to 1000
	Parallel int   // strings, 1 to 1000
}

// count is how many panels a has.
func (a Array) count() units.Ratio { return units.Ratio(a.Series) * units.Ratio(a.Parallel) }

// checkCold reports the first field that the cold voltage cannot use.
func (p Panel) checkCold(op string) error {
	if err := units.Above[units.Voltage](0).Check(op, "Voc", p.Voc); err != nil {
		return err
	}
	if p.Cells > ThinFilm {
		return &units.RangeError{Op: op, Field: "Cells", Value: p.Cells,
			Allowed: allowed("CellsNotStated, CrystallineSilicon or ThinFilm")}
	}
	if beta, ok := p.VoltageCoefficient.Get(); ok {
		if err := coefficients().Check(op, "VoltageCoefficient", beta); err != nil {
			return err
		}
	}
	return p.checkTogether(op)
}

// checkCurrent reports the first field that the currents cannot use.
func (p Panel) checkCurrent(op string) error {
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "Isc", p.Isc); err != nil {
		return err
	}
	if label, ok := p.SeriesFuse.Get(); ok {
		if err := positive.Check(op, "SeriesFuse", label); err != nil {
			return err
		}
	}
	return p.checkTogether(op)
}

// checkPower reports the first field that the output cannot use; the others,
// and all of them together, are checked before.
func (p Panel) checkPower(op string) error {
	if err := units.Above[units.Power](0).Check(op, "Power", p.Power); err != nil {
		return err
	}
	return units.Above[units.Voltage](0).Check(op, "Vmp", p.Vmp)
}

// checkTogether reports the first field that the others make impossible, of
// those that are there.
func (p Panel) checkTogether(op string) error {
	if p.Vmp > 0 && p.Voc > 0 {
		if err := units.Above[units.Voltage](0).Below(p.Voc).Check(op, "Vmp", p.Vmp); err != nil {
			return err
		}
	}
	if p.Power > 0 && p.Voc > 0 && p.Isc > 0 {
		if most := p.Isc.At(p.Voc); units.Exceeds(p.Power, most) {
			return &units.RangeError{Op: op, Field: "Power", Value: p.Power, Allowed: allowed(fmt.Sprintf("%.4v at most (Voc times Isc)", most))}
		}
	}
	if p.Power > 0 && p.Vmp > 0 && p.Isc > 0 {
		if least := p.Power.At(p.Vmp); units.Exceeds(least, p.Isc) {
			return &units.RangeError{Op: op, Field: "Isc", Value: p.Isc, Allowed: allowed(fmt.Sprintf("%.4v at least (Power by Vmp)", least))}
		}
	}
	imp, ok := p.Imp.Get()
	if !ok {
		return nil
	}
	bounds := units.Above[units.Current](0)
	if p.Isc > 0 {
		bounds = bounds.Below(p.Isc)
	}
	return bounds.Check(op, "Imp", imp)
}

// coefficients returns what a coefficient of the open-circuit voltage may be.
// A cell loses about 2 mV a kelvin of its 0.55 V to 0.75 V, which is usual
// below; the range leaves room for other cells on either side, and none for a
// factor of ten.
func coefficients() units.Bounds[units.PerKelvin] {
	return units.Between(-1*units.PercentPerKelvin, -0.1*units.PercentPerKelvin)
}

// usualCoefficients returns what nearly all panels have.
// Source: common practice.
func usualCoefficients() units.Bounds[units.PerKelvin] {
	return units.Between(-0.5*units.PercentPerKelvin, -0.2*units.PercentPerKelvin)
}

func checkCount(op, field string, n int) error {
	if n >= 1 && n <= 1000 {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: n, Allowed: allowed("1 to 1000")}
}
