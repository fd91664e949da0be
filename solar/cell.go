package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The conditions for which a nominal operating cell temperature is stated.
// Source: Ross (1980), as an open-source photovoltaic modelling library has
// it, read.
const nominalIrradiance = 800 * units.WattPerSquareMetre

var (
	nominalAir = units.Celsius(20)
	zero       = units.Celsius(0)
	rossModel  = working.Source{Title: "Ross, cell temperature from the nominal operating cell temperature", Edition: "1980",
		Place: "800 W/m² and 20 °C, as an open-source modelling library has it", Provenance: working.Read}
	roofMount = working.Source{Body: "NREL", Title: "TP-6A20-62641 (Dobos)", Edition: "2014",
		Place: "45 °C on an open rack against 49 °C on a roof, as an open-source modelling library has it", Provenance: working.Read}
)

// An Exposure is a panel in the sun.
type Exposure struct {
	Air        units.Temperature // round the panel, −60 °C to 60 °C; needed
	Irradiance units.Irradiance  // on the panel, 0 to 1500 W/m²; 0 is night
	// Nominal is the panel's nominal operating cell temperature (NOCT), at 800
	// W/m² and 20 °C of air: 25 °C to 80 °C; needed. Most datasheets have 42 °C
	// to 48 °C, on an open rack.
	Nominal units.Temperature
}

// A CellHeat is the result of [CellTemperature].
type CellHeat struct {
	Exposure    Exposure                // as used
	Rise        units.TemperatureChange // of the cells above the air
	Temperature units.Temperature       // of the cells
}

// CellTemperature returns how warm the cells of a panel get:
//
//	T_c = T_a + (NOCT − 20 °C) / (800 W/m²) · G
//
// Wind is that of the rating, a light one. A field outside the range that
// [Exposure] states gives a [*units.RangeError] and the zero CellHeat.
func CellTemperature(x Exposure) (CellHeat, error) {
	if err := x.check("solar.CellTemperature"); err != nil {
		return CellHeat{}, err
	}
	h := CellHeat{Exposure: x}
	h.Rise = units.Scale(x.Nominal.Sub(nominalAir), units.RatioOf(x.Irradiance, nominalIrradiance))
	// As a difference, which is exactly 0 °C where air and rise cancel.
	h.Temperature = units.Celsius(float64(units.Minus(h.Rise, zero.Sub(x.Air))))
	return h, nil
}

func (x Exposure) check(op string) error {
	air := units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(60)}
	if err := air.Check(op, "Air", x.Air); err != nil {
		return err
	}
	light := units.Between(0, 1500*units.WattPerSquareMetre)
	if err := light.Check(op, "Irradiance", x.Irradiance); err != nil {
		return err
	}
	return units.TemperatureBounds{Low: units.Celsius(25), High: units.Celsius(80)}.Check(op, "Nominal", x.Nominal)
}

// Working returns how the temperature came about, step by step.
func (h CellHeat) Working() *working.Sheet {
	s := working.NewSheet("Temperature of the cells in the sun")
	s.Given("T_air", h.Exposure.Air, "°C", "air round the panel")
	s.Given("G", h.Exposure.Irradiance, "W/m²", "irradiance on the panel")
	s.Given("T_nominal", h.Exposure.Nominal, "°C", "nominal operating cell temperature")
	s.Constant("T_rating", nominalAir, "°C", "air of that rating", rossModel)
	s.Constant("G_rating", nominalIrradiance, "W/m²", "irradiance of that rating", rossModel)
	s.Formula("ΔT", h.Rise, "K", "rise above the air", "(T_nominal - T_rating) / G_rating * G")
	s.Formula("T_c", h.Temperature, "°C", "temperature of the cells", "T_air + ΔT")
	return s
}

// Findings returns that a panel flat on a roof runs hotter than its rating.
func (h CellHeat) Findings() []working.Finding {
	return []working.Finding{{
		Severity: working.Note, Rule: "close-to-the-roof", Source: roofMount,
		Message: "The rating is for an open rack. A panel with little air behind it runs hotter than this.",
		Numbers: []working.Number{{Name: "cells", Value: h.Temperature}, {Name: "rise", Value: h.Rise}},
		Fix:     "Take a nominal temperature some kelvins higher for panels close to the roof.",
	}}
}
