package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Findings returns what a bank brings with it wherever it is used, worst
// first: cold, hot or unknown cells, a charger set wrongly or not stated, for
// lead-acid hydrogen and freezing, and a number of cells that is a guess.
func (a Assembly) Findings() []working.Finding { return a.findings(1 - a.Depth) }

// findings are those of a bank that comes down to the state of charge lowest.
func (a Assembly) findings(lowest units.Ratio) []working.Finding {
	var f []working.Finding
	switch c := a.Bank.Battery.Chemistry; {
	case c.IsLithium():
		f = append(f, a.lithiumCold()...)
	case c.IsLead():
		f = append(f, a.hydrogen())
		f = append(f, a.freezing(lowest)...)
	}
	f = append(f, a.hot()...)
	f = append(f, a.charging()...)
	f = append(f, a.cellsGuessed()...)
	working.Sort(f)
	return f
}

// The sources of the findings below.
var (
	explodes = practice("charging lead-acid gives off hydrogen, which explodes from 4 % in air")
	counted  = practice("batteries are made with usual numbers of cells, and the nominal voltage tells which")
	unknowns = practice("what is not known is not taken for good")
)

// Lithium is best charged between these; see chargeWarm.
var (
	lithiumAdvised     = units.Celsius(5)
	lithiumAdvisedHigh = units.Celsius(45)
)

// lithiumCold returns what the cell temperature of a lithium bank means.
func (a Assembly) lithiumCold() []working.Finding {
	t := a.Bank.CellTemperature
	numbers := []working.Number{{Name: "cells", Value: t}, {Name: "lowest for charging", Value: a.ChargeLow}}
	switch {
	case !t.IsSet():
		return []working.Finding{{
			Severity: working.Caution, Rule: "lithium-temperature-unknown",
			Message: "The temperature of the lithium cells is not known. Charged at or below freezing they are damaged for good, without a sign.",
			Numbers: numbers,
			Fix:     "Measure the cells, not the air, on the coldest morning, and give CellTemperature. Protection that refuses a cold charge needs checking.",
			Source:  chargeWarm,
		}}
	case t.Compare(a.ChargeLow) <= 0 || t.Compare(waterFreezes) <= 0:
		return []working.Finding{{
			Severity: working.Caution, Rule: "lithium-too-cold-to-charge",
			Message: "The lithium cells are at or below freezing or the lowest temperature for charging; a limit below freezing is the maker's word for that battery alone. Charged there they are damaged for good; where protection refuses the charge, sun, converter and alternator give nothing until they are warm.",
			Numbers: numbers,
			Fix:     "Warm the cells or their compartment before charging, and count on no charge on cold mornings.",
			Source:  chargeWarm,
		}}
	case t.Compare(lithiumAdvised) < 0:
		return []working.Finding{{
			Severity: working.Note, Rule: "lithium-cold",
			Message: "The lithium cells are colder than is recommended for charging, though the limit allows it. Batteries of one bank differ by some kelvins.",
			Numbers: append(numbers, working.Number{Name: "recommended", Value: lithiumAdvised}),
			Fix:     "Charge gently, and know where the sensor of the protection sits.",
			Source:  chargeWarm,
		}}
	}
	return nil
}

// hot returns what warm cells mean for charging.
func (a Assembly) hot() []working.Finding {
	t := a.Bank.CellTemperature
	numbers := []working.Number{{Name: "cells", Value: t}, {Name: "highest for charging", Value: a.ChargeHigh}}
	switch {
	case !t.IsSet():
		return nil
	case a.ChargeHigh.IsSet() && t.Compare(a.ChargeHigh) > 0:
		return []working.Finding{{
			Severity: working.Caution, Rule: "too-hot-to-charge",
			Message: "The cells are above the highest temperature for charging.",
			Numbers: numbers,
			Fix:     "Stop the charge until they have cooled; shade or ventilate the compartment.",
			Source:  a.figures().ChargeHigh.Source,
		}}
	case a.Bank.Battery.Chemistry.IsLithium() && t.Compare(lithiumAdvisedHigh) > 0:
		return []working.Finding{{
			Severity: working.Note, Rule: "lithium-warm",
			Message: "The lithium cells are warmer than is recommended for charging, though the limit allows it: they age faster.",
			Numbers: append(numbers, working.Number{Name: "recommended at most", Value: lithiumAdvisedHigh}),
			Fix:     "Shade or ventilate the compartment.",
			Source:  chargeWarm,
		}}
	}
	return nil
}

// cellsGuessed says when the voltage would allow another number of cells.
func (a Assembly) cellsGuessed() []working.Finding {
	one := a.Bank.Battery
	if one.Chemistry.check("") != nil {
		return nil
	}
	n, other := one.cells()
	if other == 0 {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "cells-guessed",
		Message: "The voltage of the battery is that of either of two usual numbers of cells. The one nearer to nominal is taken, and no limit of the charge voltage with it.",
		Numbers: []working.Number{
			{Name: "voltage", Value: one.Voltage}, {Name: "cells taken", Value: units.Ratio(n), Unit: "1"},
			{Name: "it may have", Value: units.Ratio(other), Unit: "1"},
		},
		Fix:    "State the number of cells, from the datasheet.",
		Source: counted,
	}}
}

// hydrogen returns what the gas of a lead bank asks for.
func (a Assembly) hydrogen() working.Finding {
	need := a.ventilate()
	f := working.Finding{
		Rule: "hydrogen",
		Numbers: []working.Number{
			{Name: "air", Value: need.Flow}, {Name: "each opening", Value: need.Opening},
		},
		Fix: "Two openings to the outside, one low and one high, of that free area each, tight to the living space, and no spark in the compartment. " +
			working.DeferToCode,
		Source: explodes,
	}
	vent, ok := a.Bank.Vent.Get()
	if ok {
		f.Numbers = append(f.Numbers, working.Number{Name: "there is", Value: vent})
	}
	switch {
	case !ok:
		f.Severity = working.Caution
		f.Message = "A lead-acid bank gives off hydrogen when it is charged, sealed ones too when something fails, and the openings of its compartment were not stated."
	case units.Exceeds(need.Opening, vent):
		f.Severity = working.Danger
		f.Message = "The openings of the compartment are too small for the hydrogen that the lead-acid bank gives off. It can explode."
	default:
		f.Severity = working.Note
		f.Message = "The openings pass the ventilation formula for this lead-acid bank; whether they stay free, and are where they must be, no formula sees."
	}
	return f
}

// freezing returns what the cold does to the electrolyte of a lead bank that
// comes down to the state of charge lowest.
func (a Assembly) freezing(lowest units.Ratio) []working.Finding {
	t := a.Bank.CellTemperature
	down, flat := freezingAt(lowest), freezingAt(0)
	f := working.Finding{
		Numbers: []working.Number{
			{Name: "cells", Value: t}, {Name: "lowest state of charge", Value: lowest}, {Name: "freezes at 25 % charge", Value: flat.Point},
		},
		Fix:    "Keep the bank charged in the cold, disconnect what drains it, or take it in.",
		Source: freezingSource,
	}
	if !down.Warmer {
		f.Numbers = append(f.Numbers, working.Number{Name: "freezes at that state", Value: down.Point})
	}
	const bursts = " The flatter it is, the milder the cold that freezes it. A frozen battery splits its case, spills acid and must not be charged."
	switch {
	case !t.IsSet():
		f.Severity, f.Rule = working.Note, "lead-temperature-unknown"
		f.Message = "The temperature of the cells is not known, so capacity in the cold and freezing are not judged." + bursts
		f.Source = unknowns
	case t.Compare(down.Point) <= 0:
		f.Severity, f.Rule = working.Danger, "lead-freezes"
		f.Message = "At the lowest state of charge that the bank is in or is planned for, the electrolyte freezes at this temperature." + bursts
	case down.Warmer && t.Compare(waterFreezes) <= 0:
		// The table has no row down there, so its last one is a bound on the
		// wrong side.
		f.Severity, f.Rule = working.Caution, "lead-may-freeze"
		f.Message = "The lowest state of charge that the bank is in or is planned for is below the end of the table, at 25 %: the electrolyte can freeze at this temperature." + bursts
	case t.Compare(flat.Point) <= 0:
		f.Severity, f.Rule = working.Caution, "lead-freezes-if-flat"
		f.Message = "At the lowest state of charge that is planned the electrolyte stays liquid by the table, but a flatter battery can freeze at this temperature." + bursts
	case t.Compare(waterFreezes) <= 0:
		f.Severity, f.Rule = working.Note, "lead-freezes-if-flat"
		f.Message = "A flat lead-acid battery can freeze at this temperature; the table ends at 25 % charge." + bursts
	default:
		return nil
	}
	return []working.Finding{f}
}

// waterFreezes is where a battery without any acid left in solution would.
var waterFreezes = units.Celsius(0)
