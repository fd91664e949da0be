package solar

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the harvest came about, step by step.
func (h DayHarvest) Working() *working.Sheet {
	s := working.NewSheet("Harvest of a day from its peak sun hours")
	s.Given("H", h.Day.Irradiation, "kWh/m²", "irradiation of the day in the plane of the panels")
	s.Given("P", h.Day.Peak, "W", "nameplate power of all panels")
	s.Constant("G_test", testIrradiance, "W/m²", "irradiance of the nameplate", testConditions)
	s.Formula("t", h.PeakHours, "h", "peak sun hours", "1000 * H / G_test")
	s.Formula("E_nameplate", h.Nameplate, "Wh", "at nameplate power", "P * t")
	h.temperatureSteps(s)
	h.Day.Losses.steps(s, h.Kept)
	s.Formula("E", h.Energy, "Wh", "harvest of the day", "E_nameplate * k_T * k_losses")
	return s
}

func (h DayHarvest) temperatureSteps(s *working.Sheet) {
	gamma, ok := h.Day.PowerCoefficient.Get()
	if !ok || !h.Day.CellTemperature.IsSet() {
		s.Constant("k_T", h.TemperatureFactor, "1", "factor for cell temperature, which is not counted",
			working.Source{Title: "cells at 25 °C throughout, as the nameplate has it", Provenance: working.CommonPractice})
		return
	}
	s.Choose("method", "power in proportion, with a coefficient", "coefficient and cell temperature are given", dobosPower)
	s.Given("γ", gamma, "%/K", "temperature coefficient of power")
	s.Given("T_c", h.Day.CellTemperature, "°C", "temperature of the cells")
	s.Constant("T_test", testCell, "°C", "cell temperature of the nameplate", testConditions)
	s.Formula("k_T", h.TemperatureFactor, "1", "factor for cell temperature", "1 + γ/100 * (T_c - T_test)")
}

// steps appends the steps that end in k_losses.
func (l Losses) steps(s *working.Sheet, kept units.Ratio) {
	if l == typicalLosses {
		s.Choose("losses", "typical list", "as given", dobosLosses)
	}
	var product strings.Builder
	product.WriteString("1")
	for i, x := range l.All() {
		name := "L_" + strconv.Itoa(i+1)
		s.Given(name, x.Fraction, "%", x.Name)
		product.WriteString(" * (1 - " + name + "/100)")
	}
	s.Formula("k_losses", kept, "1", "what the losses leave, one after the other", product.String())
}

// Findings returns what the harvest does not count: the temperature of the
// cells, losses, and always what the bank can still take.
func (h DayHarvest) Findings() []working.Finding {
	var f []working.Finding
	energy := working.Number{Name: "harvest", Value: h.Energy}
	if h.Day.Losses.Len() == 0 {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "no-losses", Source: dobosLosses,
			Message: "No losses are given, so this is what panels give that are clean, unshaded and wired without loss.",
			Numbers: []working.Number{energy, {Name: "with the typical list", Value: units.Scale(h.Energy, typicalLosses.Kept())}},
			Fix:     "Give a list of losses; TypicalLosses has one.",
		})
	}
	if !h.Day.PowerCoefficient.IsSet() || !h.Day.CellTemperature.IsSet() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "temperature-not-counted", Source: dobosPower,
			Message: "The temperature of the cells is not counted: coefficient or cell temperature is not given. Hot cells give less, cold ones more.",
			Numbers: []working.Number{energy},
			Fix:     "Give PowerCoefficient from the datasheet and CellTemperature, or put it into the losses.",
		})
	}
	return append(f, working.Finding{
		Severity: working.Note, Rule: "harvest-not-accepted",
		Message: "A harvest is what could be had. A full bank takes nothing of it, and what is spilled at noon does not carry over into a rainy day.",
		Numbers: []working.Number{energy},
		Fix:     "Run the bank over the day with its loads to see what it accepts.",
		Source:  working.Source{Title: "conservation of energy", Provenance: working.Derived},
	})
}
