package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the freezing point came about, step by step.
func (f Freezing) Working() *working.Sheet {
	s := working.NewSheet("Freezing point of lead-acid electrolyte")
	s.Given("s", f.StateOfCharge, "%", "state of charge")
	at := working.Lookup{Source: freezingSource, Key: f.StateOfCharge.String()}
	const what = "freezing point"
	switch {
	case f.Warmer:
		at.Row = f.LowCharge.String() + ", the lowest there is"
		s.LookUp("T_f", f.Point, "°C", what+"; here that or warmer", at)
		return s
	case f.LowCharge == f.HighCharge:
		at.Row = f.LowCharge.String()
		s.LookUp("T_f", f.Point, "°C", what, at)
		return s
	}
	s.Given("s_lo", f.LowCharge, "%", "row below")
	s.Given("s_hi", f.HighCharge, "%", "row above")
	at.Between = f.LowCharge.String() + " and " + f.HighCharge.String()
	s.LookUp("T_lo", f.LowPoint, "°C", what+" of the row below", at)
	s.LookUp("T_hi", f.HighPoint, "°C", what+" of the row above", at)
	s.Formula("T_f", f.Point, "°C", what, "T_lo + (T_hi - T_lo) * (s - s_lo)/(s_hi - s_lo)")
	return s
}

// Working returns how the opening came about, step by step.
func (v Ventilation) Working() *working.Sheet {
	s := working.NewSheet("Ventilation of a " + v.Assembly.Bank.Battery.Chemistry.String() + " bank")
	s.Given("n_cell", units.Ratio(v.Assembly.Cells), "1", "cells in series, not batteries")
	s.Given("C", v.Assembly.Capacity, "Ah", "capacity of all strings")
	s.Constant("I_gas", v.Gassing, "mA", "gassing current above float, of each Ah", v.Assembly.figures().Gassing.Source)
	s.Constant("q", airPerCharge, "1", "air, m³/h for each cell and ampere of gassing", airSource)
	s.Formula("Q", v.Flow, "m³/h", "air that is needed", "q * n_cell * I_gas * C / 1000")
	s.Constant("r", openingPerM3, "1", "cm² of opening for each m³/h", openingSource)
	s.Formula("A_Q", v.ByFlow, "cm²", "each opening for that air", "r * Q")
	s.Constant("A_min", units.Area(rvOpening), "cm²", "least opening by the code, at top and bottom", rvOpeningSource)
	governs := "the air that is needed"
	if v.byCode() {
		governs = "the least opening of the code"
	}
	s.Choose("which rule governs", governs, "the larger opening", working.Source{})
	s.Formula("A", v.Opening, "cm²", "each of two openings, low and high", "max(A_Q, A_min)")
	return s
}

// Findings returns that of the table's end: below it nothing is known but the
// side.
func (f Freezing) Findings() []working.Finding {
	if !f.Warmer {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "below-freezing-table",
		Message: "The table ends above this state of charge. The electrolyte freezes at its last temperature or warmer.",
		Numbers: []working.Number{{Name: "state of charge", Value: f.StateOfCharge}, {Name: "last temperature", Value: f.Point}},
		Fix:     "Charge the battery before the cold comes.",
		Source:  freezingSource,
	}}
}

// Findings returns the hydrogen finding of the bank.
func (v Ventilation) Findings() []working.Finding {
	if !v.Assembly.Bank.Battery.Chemistry.IsLead() {
		return nil
	}
	return []working.Finding{v.Assembly.hydrogen()}
}
