package solar

import "example.com/drawbar/units"

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
// function says which fields it needs.
type Panel struct {
	Power units.Power   // nameplate, > 0
	Voc   units.Voltage // open-circuit voltage, > 0
	Vmp   units.Voltage // voltage at maximum power, > 0 and below Voc
	Isc   units.Current // short-circuit current, > 0
	// VoltageCoefficient is β: how Voc changes for each kelvin, −1 %/K and up
	// to but not including 0 %/K. It is negative: the voltage rises in the
	// cold.
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
		return units.AtLeast(-1*units.PercentPerKelvin).Below(0).Check(op, "VoltageCoefficient", beta)
	}
	return nil
}

// checkCurrent reports the first field that the currents cannot use.
func (p Panel) checkCurrent(op string) error {
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "Isc", p.Isc); err != nil {
		return err
	}
	if label, ok := p.SeriesFuse.Get(); ok {
		return positive.Check(op, "SeriesFuse", label)
	}
	return nil
}

// checkPower reports the first field that the output cannot use; Voc is
// checked before.
func (p Panel) checkPower(op string) error {
	if err := units.Above[units.Power](0).Check(op, "Power", p.Power); err != nil {
		return err
	}
	return units.Above[units.Voltage](0).Below(p.Voc).Check(op, "Vmp", p.Vmp)
}

func checkCount(op, field string, n int) error {
	if n >= 1 && n <= 1000 {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: n, Allowed: allowed("1 to 1000")}
}
