package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the bank came about, step by step.
func (a Assembly) Working() *working.Sheet {
	s := working.NewSheet("Bank of " + a.Bank.Battery.Chemistry.String() + " batteries")
	a.steps(s)
	s.Formula("E_marked", a.Energy, "Wh", "energy as marked: not what can be used", "C * V")
	a.resistanceSteps(s)
	if v, ok := a.Bank.Battery.OpenCircuit.Get(); ok {
		s.Given("V_full_b", v, "V", "one battery, full and at rest")
		s.Formula("V_full", a.OpenCircuit, "V", "the bank, full and at rest", "n_s * V_full_b")
		return s
	}
	s.Given("n_cell", units.Ratio(a.Cells), "1", "cells in series, of one string")
	full := a.figures().OpenCircuit
	s.Constant("V_full_cell", full.Value, "V", "one cell, full and at rest", full.Source)
	s.Formula("V_full", a.OpenCircuit, "V", "the bank, full and at rest", "n_cell * V_full_cell")
	return s
}

// figures returns the defaults of the bank's chemistry, empty ones if it has
// none.
func (a Assembly) figures() *Figures {
	if a.Bank.Battery.Chemistry.check("") != nil {
		return &Figures{}
	}
	return a.Bank.Battery.Chemistry.figures()
}

// steps appends the steps that end in V and C.
func (a Assembly) steps(s *working.Sheet) {
	s.Given("n_s", units.Ratio(a.Bank.Series), "1", "batteries in series, each string")
	s.Given("n_p", units.Ratio(a.Bank.Parallel), "1", "strings in parallel")
	s.Given("V_b", a.Bank.Battery.Voltage, "V", "voltage of one battery")
	s.Given("C_b", a.Bank.Battery.Capacity, "Ah", "capacity of one battery, as marked")
	s.Formula("V", a.Voltage, "V", "voltage of the bank: series adds volts", "n_s * V_b")
	s.Formula("C", a.Capacity, "Ah", "capacity of the bank: parallel adds ampere-hours", "n_p * C_b")
}

// resistanceSteps appends the resistance of the bank, if it is known.
func (a Assembly) resistanceSteps(s *working.Sheet) {
	one, ok := a.Bank.Battery.Resistance.Get()
	if !ok {
		return
	}
	s.Given("R_b", one, "mΩ", "resistance inside one battery")
	s.Formula("R", a.Resistance.Or(0), "mΩ", "resistance inside the bank", "R_b * n_s / n_p")
}

// defaultOr appends a figure that the datasheet may give.
func defaultOr[Q units.Value](s *working.Sheet, name string, given units.Opt[Q], byDefault Figure[Q], unit, what string) {
	v, ok := given.Get()
	if ok {
		s.Given(name, v, unit, what)
		return
	}
	s.Constant(name, byDefault.Value, unit, what+", where no datasheet says otherwise", byDefault.Source)
}
