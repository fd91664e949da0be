package wire

import "example.com/drawbar/units"

// An ambientRow is a band of ambient temperature in °C and the correction
// factor at 60, 75 and 90 °C; 0 where the table is blank.
type ambientRow struct {
	top    float64 // the band holds it
	factor [3]units.Ratio
}

// Correction of a 30 °C ampacity for ambient temperature.
// Source: NFPA 70 (2020) Table 310.15(B)(1), read through IRC 2021 Table
// E3705.2. Bands are 10 or less, 11-15, 16-20 and so on; a temperature
// between two bands belongs to the upper one.
var necAmbientFactors = [...]ambientRow{
	{10, [3]units.Ratio{1.29, 1.20, 1.15}},
	{15, [3]units.Ratio{1.22, 1.15, 1.12}},
	{20, [3]units.Ratio{1.15, 1.11, 1.08}},
	{25, [3]units.Ratio{1.08, 1.05, 1.04}},
	{30, [3]units.Ratio{1, 1, 1}},
	{35, [3]units.Ratio{0.91, 0.94, 0.96}},
	{40, [3]units.Ratio{0.82, 0.88, 0.91}},
	{45, [3]units.Ratio{0.71, 0.82, 0.87}},
	{50, [3]units.Ratio{0.58, 0.75, 0.82}},
	{55, [3]units.Ratio{0.41, 0.67, 0.76}},
	{60, [3]units.Ratio{0, 0.58, 0.71}},
	{65, [3]units.Ratio{0, 0.47, 0.65}},
	{70, [3]units.Ratio{0, 0.33, 0.58}},
	{75, [3]units.Ratio{0, 0, 0.50}},
	{80, [3]units.Ratio{0, 0, 0.41}},
	{85, [3]units.Ratio{0, 0, 0.29}},
}

// The same of the editions to 2008, which begins at 21 °C and has one band
// from 61 to 70 °C and one from 71 to 80 °C.
// Source: NFPA 70 (2008) Table 310.16, correction factors. Provenance: the two
// wide bands read in a note on old editions, the others from memory.
var nec2008AmbientFactors = [...]ambientRow{
	{25, [3]units.Ratio{1.08, 1.05, 1.04}},
	{30, [3]units.Ratio{1, 1, 1}},
	{35, [3]units.Ratio{0.91, 0.94, 0.96}},
	{40, [3]units.Ratio{0.82, 0.88, 0.91}},
	{45, [3]units.Ratio{0.71, 0.82, 0.87}},
	{50, [3]units.Ratio{0.58, 0.75, 0.82}},
	{55, [3]units.Ratio{0.41, 0.67, 0.76}},
	{60, [3]units.Ratio{0, 0.58, 0.71}},
	{70, [3]units.Ratio{0, 0.33, 0.58}},
	{80, [3]units.Ratio{0, 0, 0.41}},
}

// The lowest ambient temperature that is taken, and the lowest that the
// editions to 2008 have a factor for, in °C.
const (
	coldest     = -60
	coldest2008 = 21
)

// ambientBands returns the table of the edition.
func ambientBands(rules RuleSet) []ambientRow {
	if rules == NEC2008 {
		return nec2008AmbientFactors[:]
	}
	return necAmbientFactors[:]
}

// ambientFactor returns the factor for class n at t, which is not colder than
// the table begins; 0 if the table has none.
func ambientFactor(rules RuleSet, n Insulation, t units.Temperature) units.Ratio {
	// Settled once, and held against whole degrees, as Exceeds would each time.
	celsius := units.Settle(t.Celsius())
	bands := ambientBands(rules)
	for i := range bands {
		if celsius <= bands[i].top {
			return bands[i].factor[necIndex(n)]
		}
	}
	return 0
}

// ambientRange returns the temperatures for which class n has a factor.
func ambientRange(rules RuleSet, n Insulation) units.TemperatureBounds {
	b := units.TemperatureBounds{Low: units.Celsius(coldest)}
	if rules == NEC2008 {
		b.Low = units.Celsius(coldest2008)
	}
	bands := ambientBands(rules)
	for i := range bands {
		if bands[i].factor[necIndex(n)] > 0 {
			b.High = units.Celsius(bands[i].top)
		}
	}
	return b
}

// A bundleRow is how many conductors together a factor is good for.
type bundleRow struct {
	atMost int // conductors
	factor units.Ratio
}

// Adjustment for more than three current-carrying conductors together.
// Source: NFPA 70 (2014) Table 310.15(B)(3)(a), read.
var necBundleFactors = [...]bundleRow{{3, 1}, {6, 0.80}, {9, 0.70}, {20, 0.50}, {30, 0.45}, {40, 0.40}, {mostConductors, 0.35}}

// mostConductors is the range of Installation.Conductors.
const mostConductors = 1000

func bundleFactor(rows []bundleRow, n int) units.Ratio {
	for _, r := range rows {
		if n <= r.atMost {
			return r.factor
		}
	}
	return 0
}
