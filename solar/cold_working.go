package solar

import (
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the cold voltage came about, step by step.
func (o ColdOpen) Working() *working.Sheet {
	s := working.NewSheet("Open-circuit voltage of a string in the cold")
	o.steps(s)
	return s
}

// steps appends the steps that end in V_cold.
func (o ColdOpen) steps(s *working.Sheet) {
	c := o.String
	s.Choose("rule set", c.Rules.String(), "as given", working.Source{})
	s.Given("V_oc", c.Panel.Voc, "V", "open-circuit voltage of a panel at 25 °C")
	s.Given("n", units.Ratio(c.Series), "1", "panels in series")
	s.Given("T", c.Coldest, "°C", "coldest morning")
	s.Formula("V_25", o.Standard, "V", "string at 25 °C", "n * V_oc")
	if beta, ok := c.Panel.VoltageCoefficient.Get(); ok {
		v, _ := o.ByCoefficient.Get()
		s.Given("β", beta, "%/K", "temperature coefficient of the open-circuit voltage")
		s.Constant("T_test", testCell, "°C", "cell temperature of the datasheet", testConditions)
		s.Formula("k_β", o.CoefficientFactor, "1", "factor by the coefficient", "1 + β/100 * (T - T_test)")
		s.Formula("V_β", v, "V", "cold, by the coefficient", "V_25 * k_β")
	}
	if v, ok := o.ByTable.Get(); ok {
		s.LookUp("k_table", o.TableFactor, "1", "factor by the table",
			working.Lookup{Source: necColdTable, Key: c.Coldest.String(), Row: o.band()})
		s.Formula("V_table", v, "V", "cold, by the table", "V_25 * k_table")
	}
	if o.Governs == ByCoefficient {
		s.Choose("what governs", o.Governs.String(), "it is given", necCold)
		s.Formula("V_cold", o.Voltage, "V", "greatest open-circuit voltage", "V_25 * k_β")
		return
	}
	s.Choose("what governs", o.Governs.String(), "the maker's coefficient is not given", necCold)
	s.Formula("V_cold", o.Voltage, "V", "greatest open-circuit voltage", "V_25 * k_table")
}

// band names the row of the table.
func (o ColdOpen) band() string {
	for _, b := range coldBands {
		if b.factor == o.TableFactor {
			return strconv.Itoa(int(b.warm)) + " °C to " + strconv.Itoa(int(b.cold)) + " °C"
		}
	}
	return "25 °C and up, no correction"
}

// Findings returns what the voltage rests on, worst first: a coefficient that
// few panels have, a table for want of the maker's, cells that nobody stated,
// and always the coldest morning.
func (o ColdOpen) Findings() []working.Finding {
	f := o.coefficientFindings()
	numbers := []working.Number{{Name: "cold string", Value: o.Voltage}}
	if o.Governs == ByTable {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "coefficient-not-stated", Numbers: numbers, Source: necCold,
			Message: "The maker's voltage coefficient is not given, so the table stands in for it.",
			Fix:     "Give VoltageCoefficient from the datasheet; it governs.",
		})
		if o.String.Panel.Cells == CellsNotStated {
			f = append(f, working.Finding{
				Severity: working.Note, Rule: "cells-not-stated", Numbers: numbers, Source: necColdTable,
				Message: "The table is for crystalline silicon. What the cells are is not stated.",
				Fix:     "State the cells from the datasheet.",
			})
		}
	}
	return append(f, working.Finding{
		Severity: working.Note, Rule: "coldest-as-given",
		Numbers: append(numbers, working.Number{Name: "at", Value: o.String.Coldest}),
		Message: "The voltage holds for the coldest morning given. A colder place or night raises it, and sunrise brings it in full before any current flows.",
		Fix:     "Take the record low of every place that the vehicle may spend a night in.",
		Source:  necCold,
	})
}
