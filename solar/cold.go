package solar

import "example.com/drawbar/units"

// A ColdString is a string of panels at the coldest sunrise.
type ColdString struct {
	Rules  RuleSet // needed
	Panel  Panel   // Voc is needed; VoltageCoefficient and Cells if known
	Series int     // panels in the string, 1 to 1000
	// Coldest is the record low of every place that the vehicle is taken to,
	// since that is what the panels have at sunrise: −90 °C to 25 °C; needed.
	Coldest units.Temperature
}

// A ColdRule is the way to a cold voltage.
type ColdRule uint8

const (
	// ByCoefficient is by the maker's temperature coefficient.
	ByCoefficient ColdRule = iota
	// ByTable is by the table of the rule set.
	ByTable
)

// String returns "maker's coefficient" or "table".
func (c ColdRule) String() string {
	switch c {
	case ByCoefficient:
		return "maker's coefficient"
	case ByTable:
		return "table"
	}
	return "unknown"
}

// A ColdOpen is the result of [ColdVoltage].
type ColdOpen struct {
	String            ColdString               // as used
	Standard          units.Voltage            // open-circuit voltage of the string at 25 °C
	CoefficientFactor units.Ratio              // by the coefficient; 0 if that is not given
	TableFactor       units.Ratio              // by the table; 0 if the table does not cover the string
	ByCoefficient     units.Opt[units.Voltage] // by the maker's coefficient, if that is given
	ByTable           units.Opt[units.Voltage] // by the table, if it covers the string
	Governs           ColdRule                 // which of the two Voltage is
	Voltage           units.Voltage            // greatest open-circuit voltage by the rule set
}

// ColdVoltage returns the open-circuit voltage of a string on its coldest
// morning, by the maker's coefficient and by the table of NEC 690.7(A):
//
//	V = n · V_oc · (1 + β (T − 25 °C))
//	V = n · V_oc · k
//
// The maker's coefficient governs where it is given, else the table, which
// has whole degrees: between two of its bands the colder one is used. Both are
// in the result as far as they can be had.
//
// A field outside the range that [ColdString] and [Panel] state gives a
// [*units.RangeError]; so does a string without coefficient that the table does
// not cover, below −40 °C or of thin film. The ColdOpen is then the zero value.
func ColdVoltage(c ColdString) (ColdOpen, error) { return coldVoltage("solar.ColdVoltage", c) }

func coldVoltage(op string, c ColdString) (ColdOpen, error) {
	if err := c.check(op); err != nil {
		return ColdOpen{}, err
	}
	o := ColdOpen{String: c, Standard: units.Scale(c.Panel.Voc, units.Ratio(c.Series))}
	if c.Panel.Cells != ThinFilm {
		o.TableFactor = coldFactor(coldBands[:], c.Coldest)
	}
	if o.TableFactor > 0 {
		o.Governs, o.Voltage = ByTable, units.Scale(o.Standard, o.TableFactor)
		o.ByTable = units.Some(o.Voltage)
	}
	if beta, ok := c.Panel.VoltageCoefficient.Get(); ok {
		o.CoefficientFactor = 1 + beta.Over(c.Coldest.Sub(testCell))
		o.Governs, o.Voltage = ByCoefficient, units.Scale(o.Standard, o.CoefficientFactor)
		o.ByCoefficient = units.Some(o.Voltage)
	}
	if o.Voltage == 0 {
		return ColdOpen{}, c.notCovered(op)
	}
	if err := units.Above[units.Voltage](0).Check(op, "Voltage", o.Voltage); err != nil {
		return ColdOpen{}, err
	}
	return o, nil
}

// notCovered says why there is no way to a cold voltage.
func (c ColdString) notCovered(op string) error {
	if c.Panel.Cells == ThinFilm {
		return &units.RangeError{Op: op, Field: "VoltageCoefficient", Value: c.Panel.VoltageCoefficient,
			Allowed: allowed("the maker's, since the table is for crystalline silicon")}
	}
	return &units.RangeError{Op: op, Field: "Coldest", Value: c.Coldest,
		Allowed: units.TemperatureBounds{Low: coldestBand(), High: testCell}}
}

func (c ColdString) check(op string) error {
	if err := c.Rules.check(op); err != nil {
		return err
	}
	if err := c.Panel.checkCold(op); err != nil {
		return err
	}
	if err := checkCount(op, "Series", c.Series); err != nil {
		return err
	}
	return units.TemperatureBounds{Low: units.Celsius(-90), High: testCell}.Check(op, "Coldest", c.Coldest)
}
