package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Findings returns what a bank brings with it wherever it is used, worst
// first: cold or unknown cell temperature, and for lead-acid hydrogen and
// freezing.
func (a Assembly) Findings() []working.Finding {
	var f []working.Finding
	switch c := a.Bank.Battery.Chemistry; {
	case c.IsLithium():
		f = append(f, a.lithiumCold()...)
	case c.IsLead():
		f = append(f, a.hydrogen())
		f = append(f, a.freezing()...)
	}
	f = append(f, a.hot()...)
	working.Sort(f)
	return f
}

// The sources of the findings below.
var (
	plating  = practice("lithium iron phosphate is not charged at or below 0 °C; cell datasheets allow 0 to 60 °C, 5 to 45 °C is recommended")
	explodes = practice("charging lead-acid gives off hydrogen, which explodes from 4 % in air")
	unknowns = practice("what is not known is not taken for good")
)

// lithiumAdvised is the lowest temperature that lithium should be charged at.
var lithiumAdvised = units.Celsius(5)

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
			Source:  plating,
		}}
	case t.Compare(a.ChargeLow) <= 0 || t.Compare(waterFreezes) <= 0:
		return []working.Finding{{
			Severity: working.Caution, Rule: "lithium-too-cold-to-charge",
			Message: "The lithium cells are at or below freezing or the lowest temperature for charging; a limit below freezing is the maker's word for that battery alone. Charged there they are damaged for good; where protection refuses the charge, sun, converter and alternator give nothing until they are warm.",
			Numbers: numbers,
			Fix:     "Warm the cells or their compartment before charging, and count on no charge on cold mornings.",
			Source:  plating,
		}}
	case t.Compare(lithiumAdvised) < 0:
		return []working.Finding{{
			Severity: working.Note, Rule: "lithium-cold",
			Message: "The lithium cells are colder than is recommended for charging, though the limit allows it. Batteries of one bank differ by some kelvins.",
			Numbers: append(numbers, working.Number{Name: "recommended", Value: lithiumAdvised}),
			Fix:     "Charge gently, and know where the sensor of the protection sits.",
			Source:  plating,
		}}
	}
	return nil
}

// hot returns a finding above the highest temperature for charging.
func (a Assembly) hot() []working.Finding {
	t := a.Bank.CellTemperature
	if !t.IsSet() || !a.ChargeHigh.IsSet() || t.Compare(a.ChargeHigh) <= 0 {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "too-hot-to-charge",
		Message: "The cells are above the highest temperature for charging.",
		Numbers: []working.Number{{Name: "cells", Value: t}, {Name: "highest for charging", Value: a.ChargeHigh}},
		Fix:     "Stop the charge until they have cooled; shade or ventilate the compartment.",
		Source:  a.figures().ChargeHigh.Source,
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

// freezing returns what the cold does to the electrolyte of a lead bank.
func (a Assembly) freezing() []working.Finding {
	t := a.Bank.CellTemperature
	planned, flat := freezingAt(1-a.Depth), freezingAt(0)
	f := working.Finding{
		Numbers: []working.Number{
			{Name: "cells", Value: t}, {Name: "freezes at 25 % charge", Value: flat.Point},
		},
		Fix:    "Keep the bank charged in the cold, disconnect what drains it, or take it in.",
		Source: freezingSource,
	}
	if !planned.Warmer {
		f.Numbers = append(f.Numbers, working.Number{Name: "at the planned depth", Value: planned.Point})
	}
	const bursts = " The flatter it is, the milder the cold that freezes it. A frozen battery bursts and must not be charged."
	switch {
	case !t.IsSet():
		f.Severity, f.Rule = working.Note, "lead-temperature-unknown"
		f.Message = "The temperature of the cells is not known, so capacity in the cold and freezing are not judged." + bursts
		f.Source = unknowns
	case t.Compare(planned.Point) <= 0:
		f.Severity, f.Rule = working.Danger, "lead-freezes"
		f.Message = "Taken down to the planned depth, the electrolyte freezes at this temperature." + bursts
	case planned.Warmer && t.Compare(waterFreezes) <= 0:
		// The table has no row down there, so its last one is a bound on the
		// wrong side.
		f.Severity, f.Rule = working.Caution, "lead-may-freeze"
		f.Message = "The planned depth is below the end of the table, at 25 % charge: the electrolyte can freeze at this temperature." + bursts
		f.Numbers = []working.Number{{Name: "cells", Value: t}, {Name: "planned state of charge", Value: 1 - a.Depth}, {Name: "freezes at 25 % charge", Value: flat.Point}}
	case t.Compare(flat.Point) <= 0:
		f.Severity, f.Rule = working.Caution, "lead-freezes-if-flat"
		f.Message = "Charged to the planned depth or better the electrolyte stays liquid by the table, but a flatter battery can freeze at this temperature." + bursts
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
