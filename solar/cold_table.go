package solar

import "example.com/drawbar/units"

// A coldBand is a band of ambient temperature in whole degrees Celsius and
// the factor for open-circuit voltage in it.
type coldBand struct {
	warm, cold float64
	factor     units.Ratio
}

// Correction of the open-circuit voltage of crystalline silicon for cold.
// Source: NFPA 70 (2017) Table 690.7(A), Table 690.7 up to 2014; °C bands and
// factors read in a public transcription, whose first and third bands have
// slips that are set right here. From 25 °C up there is no correction.
var coldBands = [...]coldBand{
	{24, 20, 1.02},
	{19, 15, 1.04},
	{14, 10, 1.06},
	{9, 5, 1.08},
	{4, 0, 1.10},
	{-1, -5, 1.12},
	{-6, -10, 1.14},
	{-11, -15, 1.16},
	{-16, -20, 1.18},
	{-21, -25, 1.20},
	{-26, -30, 1.21},
	{-31, -35, 1.23},
	{-36, -40, 1.25},
}

// coldFactor returns the factor at t, and 0 if t is colder than the table. A
// t between two bands is in the colder one.
func coldFactor(bands []coldBand, t units.Temperature) units.Ratio {
	if t.Compare(testCell) >= 0 {
		return 1
	}
	for _, b := range bands {
		if t.Compare(units.Celsius(b.cold)) >= 0 {
			return b.factor
		}
	}
	return 0
}

// coldestBand returns the lowest temperature of the table.
func coldestBand() units.Temperature { return units.Celsius(coldBands[len(coldBands)-1].cold) }
