package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The sources of the findings below.
var (
	compensates = practice("charge voltage of lead-acid falls 3 to 5 mV a cell and kelvin; that of lithium is not corrected")
	sixCells    = practice("chargers set for lead-acid count six cells for each 12 V")
	at25        = practice("charge voltages are stated for 25 °C")
)

// Working returns how the voltage came about, step by step.
func (v Compensated) Working() *working.Sheet {
	s := working.NewSheet("Charge voltage with temperature compensation")
	s.Given("V_ref", v.Absorption, "V", "voltage that is set, of the whole bank")
	s.Given("c", v.Compensation, "mV", "change for each kelvin, of one lead-acid cell")
	if v.Assembly.Bank.Charging.Cells.IsSet() || v.Assembly.Bank.Battery.Chemistry.IsLead() {
		s.Given("n", units.Ratio(v.Cells), "1", "cells that the charger counts")
	} else {
		s.Constant("n", units.Ratio(v.Cells), "1", "lead-acid cells that the charger counts", sixCells)
	}
	if v.Assembly.Bank.Charging.Reference.IsSet() {
		s.Given("T_ref", v.Reference, "°C", "temperature without correction")
	} else {
		s.Constant("T_ref", v.Reference, "°C", "temperature without correction", at25)
	}
	s.Given("T", v.Coldest, "°C", "coldest temperature of the sensor")
	s.Formula("V", v.Voltage, "V", "voltage on the bank at that temperature", "V_ref + n * c/1000 * (T - T_ref)")
	limit, ok := v.Limit.Get()
	if !ok {
		return s
	}
	s.Given("V_max", limit, "V", "greatest that the bank may have")
	s.Test("voltage against the limit", "V <= V_max", !units.Exceeds(v.Voltage, limit))
	return s
}

// Findings returns what the voltage of the charger means for the bank, worst
// first.
func (v Compensated) Findings() []working.Finding { return v.Assembly.charging() }

// charging returns what is wrong with how the charger sets its voltage, or
// what is not known of it.
func (a Assembly) charging() []working.Finding {
	c := a.Bank.Charging
	chemistry := a.Bank.Battery.Chemistry
	if chemistry.check("") != nil {
		return nil
	}
	f := a.setTooHigh()
	slope, ok := c.Compensation.Get()
	switch {
	case !ok:
		f = append(f, a.compensationUnknown())
	case chemistry.IsLithium() && slope != 0:
		f = append(f, a.compensationOnLithium())
	case chemistry.IsLead() && slope == 0:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "lead-not-compensated",
			Message: "The charger does not correct its voltage for temperature: in the cold the lead-acid bank is not filled, in the heat it is overcharged and gives off more gas.",
			Numbers: []working.Number{{Name: "coldest", Value: a.coldest()}, {Name: "compensation", Value: slope}},
			Fix:     "Turn compensation on, with its sensor at the bank, or set the voltage by season.",
			Source:  compensates,
		})
	}
	return f
}

// setTooHigh returns a finding if the charger is above the limit even without
// compensation.
func (a Assembly) setTooHigh() []working.Finding {
	set, ok := a.Bank.Charging.Absorption.Get()
	limit, limited := a.ChargeVoltage.Get()
	if !ok || !limited || !units.Exceeds(set, limit) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "charge-voltage-above-limit",
		Message: "The charger is set above the greatest voltage of the bank. Cells are overcharged, or protection opens under charge and leaves the sources without a battery.",
		Numbers: []working.Number{{Name: "set", Value: set}, {Name: "limit", Value: limit}},
		Fix:     "Set the charger to the profile of the battery's maker.",
		Source:  a.chargeLimitSource(),
	}}
}

// compensationUnknown says what hangs on compensation that was not stated.
func (a Assembly) compensationUnknown() working.Finding {
	f := working.Finding{
		Severity: working.Note, Rule: "compensation-not-stated",
		Message: "It was not stated whether the charger corrects its voltage for temperature. Lead-acid without it is not filled in the cold and overcharged in the heat.",
		Numbers: []working.Number{{Name: "compensation"}, {Name: "coldest", Value: a.coldest()}},
		Fix:     "Read it off the charger, and state it: 0 V if it is off.",
		Source:  compensates,
	}
	if a.Bank.Battery.Chemistry.IsLithium() {
		f.Message = "It was not stated whether the charger corrects its voltage for temperature. Left on, as for lead-acid, it puts more than lithium may have on the bank in the cold."
	}
	return f
}

// compensationOnLithium says what compensation does to a lithium bank: a
// danger if it is known to pass the limit.
func (a Assembly) compensationOnLithium() working.Finding {
	c := a.Bank.Charging
	f := working.Finding{
		Severity: working.Caution, Rule: "compensation-on-lithium",
		Numbers: []working.Number{{Name: "for each cell and kelvin", Value: c.Compensation.Or(0)}},
		Fix:     "Turn temperature compensation off, or select the lithium profile of the battery's maker, on every charger of the bank.",
		Source:  compensates,
	}
	v := a.compensated()
	set, hasSet := c.Absorption.Get()
	limit, hasLimit := v.Limit.Get()
	if !hasSet || !hasLimit {
		f.Message = "The charger corrects its voltage for temperature, which is for lead-acid: in the cold it goes above what lithium may have. The voltage it is set to, or the limit, is not known, so how far is not judged."
		return f
	}
	f.Numbers = append(f.Numbers, working.Number{Name: "set", Value: set}, working.Number{Name: "limit", Value: limit},
		working.Number{Name: "above it when colder than", Value: v.onset(limit)})
	switch {
	case !v.Coldest.IsSet():
		f.Message = "The charger corrects its voltage for temperature, which is for lead-acid: in the cold it goes above what lithium may have. How cold it gets was not given, so how far is not judged."
		return f
	case v.above(limit) > 0:
		f.Severity = working.Danger
		f.Message = "The charger corrects its voltage for temperature, which is for lead-acid, and on the coldest morning goes above what the lithium bank may have. Cells are overcharged, or protection opens under charge and the voltage on the wires may jump."
	default:
		f.Message = "The charger corrects its voltage for temperature, which is for lead-acid. At the coldest that was given it stays within the limit of the lithium bank; colder it does not, and in the heat the bank is not filled."
	}
	f.Numbers = append(f.Numbers, working.Number{Name: "coldest", Value: v.Coldest}, working.Number{Name: "voltage there", Value: v.Voltage},
		working.Number{Name: "above the limit by", Value: v.above(limit)})
	return f
}

// chargeLimitSource returns where the limit of the charge voltage is from.
func (a Assembly) chargeLimitSource() working.Source {
	if a.Bank.Battery.ChargeVoltage.IsSet() {
		return working.Source{Title: "the limit that was given", Provenance: working.Definition}
	}
	return a.figures().ChargeVoltage.Source
}
