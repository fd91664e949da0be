package wire

import "example.com/drawbar/units"

// An ampacityRow is a size and its ampacity in amperes by insulation class;
// 0 where the table is blank.
type ampacityRow struct {
	size                Size
	c60, c75, c90, c105 units.Current
}

// Ampacity of not more than three copper conductors in raceway or cable at
// 30 °C, in amperes.
// Source: NFPA 70 (2017) Table 310.15(B)(16), read through IRC 2018 Table
// E3705.1; 18 and 16 AWG from memory. The values hold from 2011 on; before, 14
// and 12 AWG at 60 °C were 20 and 25 A. Insulation of 105 °C has no column.
var nec310 = [...]ampacityRow{
	{Size{gauge, 18}, 0, 0, 14, 0},
	{Size{gauge, 16}, 0, 0, 18, 0},
	{Size{gauge, 14}, 15, 20, 25, 0},
	{Size{gauge, 12}, 20, 25, 30, 0},
	{Size{gauge, 10}, 30, 35, 40, 0},
	{Size{gauge, 8}, 40, 50, 55, 0},
	{Size{gauge, 6}, 55, 65, 75, 0},
	{Size{gauge, 4}, 70, 85, 95, 0},
	{Size{gauge, 3}, 85, 100, 115, 0},
	{Size{gauge, 2}, 95, 115, 130, 0},
	{Size{gauge, 1}, 110, 130, 145, 0},
	{Size{gauge, 0}, 125, 150, 170, 0},
	{Size{gauge, -1}, 145, 175, 195, 0},
	{Size{gauge, -2}, 165, 200, 225, 0},
	{Size{gauge, -3}, 195, 230, 260, 0},
	{Size{kcmil, 250}, 215, 255, 290, 0},
	{Size{kcmil, 300}, 240, 285, 320, 0},
	{Size{kcmil, 350}, 260, 310, 350, 0},
	{Size{kcmil, 400}, 280, 335, 380, 0},
	{Size{kcmil, 500}, 320, 380, 430, 0},
}

// Ampacity of single copper conductors of boats, outside engine spaces, in
// amperes.
// Source: 33 CFR 183.425 Table 5, 2001 edition, read. The columns for 80, 125
// and 200 °C are left out.
var boat425 = [...]ampacityRow{
	{Size{gauge, 18}, 10, 10, 20, 20},
	{Size{gauge, 16}, 15, 15, 25, 25},
	{Size{gauge, 14}, 20, 20, 30, 35},
	{Size{gauge, 12}, 25, 25, 40, 45},
	{Size{gauge, 10}, 40, 40, 55, 60},
	{Size{gauge, 8}, 55, 65, 70, 80},
	{Size{gauge, 6}, 80, 95, 100, 120},
	{Size{gauge, 4}, 105, 125, 135, 160},
	{Size{gauge, 3}, 120, 145, 155, 180},
	{Size{gauge, 2}, 140, 170, 180, 210},
	{Size{gauge, 1}, 165, 195, 210, 245},
	{Size{gauge, 0}, 195, 230, 245, 285},
	{Size{gauge, -1}, 225, 265, 285, 330},
	{Size{gauge, -2}, 260, 310, 330, 385},
	{Size{gauge, -3}, 300, 360, 385, 445},
}

// Limits of overcurrent devices by conductor, in amperes.
// 18 and 16 AWG are for stranded conductors only.
// Source: NEC Table 552.10(E)(1), park trailers, low voltage. Provenance: from
// memory.
var rvLimits = [...]sizeLimit{
	{Size{gauge, 18}, 6}, {Size{gauge, 16}, 8}, {Size{gauge, 14}, 15}, {Size{gauge, 12}, 20}, {Size{gauge, 10}, 30},
}

// Limits of overcurrent devices for small copper conductors, in amperes,
// after correction and adjustment.
// Source: NEC 240.4(D), 2017 to 2023, read in public summaries.
var necSmallLimits = [...]sizeLimit{
	{Size{gauge, 18}, 7}, {Size{gauge, 16}, 10}, {Size{gauge, 14}, 15}, {Size{gauge, 12}, 20}, {Size{gauge, 10}, 30},
}

// A sizeLimit is the greatest device that a size may have.
type sizeLimit struct {
	size  Size
	limit units.Current
}

func limitOf(table []sizeLimit, s Size) (limit units.Current, ok bool) {
	for _, r := range table {
		if r.size == s {
			return r.limit, true
		}
	}
	return 0, false
}

// of returns the column for n; 0 where the table is blank.
func (r ampacityRow) of(n Insulation) units.Current {
	switch n {
	case Insulation60:
		return r.c60
	case Insulation75:
		return r.c75
	case Insulation90:
		return r.c90
	case Insulation105:
		return r.c105
	}
	return 0
}

func tabulated(table []ampacityRow, s Size, n Insulation) units.Current {
	for _, r := range table {
		if r.size == s {
			return r.of(n)
		}
	}
	return 0
}

// An ambientRow is the upper end of a band of ambient temperature in °C and the
// correction factor by insulation class; 0 where the table is blank.
type ambientRow struct {
	top           float64
	f60, f75, f90 units.Ratio
}

// Correction of a 30 °C ampacity for ambient temperature.
// Source: NFPA 70 (2020) Table 310.15(B)(1), read through IRC 2021 Table
// E3705.2. Bands are 10 or less, 11-15, 16-20 and so on; a temperature
// between two bands belongs to the upper one.
var necAmbientFactors = [...]ambientRow{
	{10, 1.29, 1.20, 1.15},
	{15, 1.22, 1.15, 1.12},
	{20, 1.15, 1.11, 1.08},
	{25, 1.08, 1.05, 1.04},
	{30, 1, 1, 1},
	{35, 0.91, 0.94, 0.96},
	{40, 0.82, 0.88, 0.91},
	{45, 0.71, 0.82, 0.87},
	{50, 0.58, 0.75, 0.82},
	{55, 0.41, 0.67, 0.76},
	{60, 0, 0.58, 0.71},
	{65, 0, 0.47, 0.65},
	{70, 0, 0.33, 0.58},
	{75, 0, 0, 0.50},
	{80, 0, 0, 0.41},
	{85, 0, 0, 0.29},
}

// ambientFactor returns the factor for class n at t, 0 if the table has none.
func ambientFactor(n Insulation, t units.Temperature) units.Ratio {
	for _, r := range necAmbientFactors {
		if units.Exceeds(t.Celsius(), r.top) {
			continue
		}
		switch n {
		case Insulation60:
			return r.f60
		case Insulation75:
			return r.f75
		}
		return r.f90
	}
	return 0
}

// Adjustment for more than three current-carrying conductors together.
// Source: NFPA 70 (2014) Table 310.15(B)(3)(a), read.
var necBundleFactors = [...]struct {
	atMost int // conductors
	factor units.Ratio
}{{3, 1}, {6, 0.80}, {9, 0.70}, {20, 0.50}, {30, 0.45}, {40, 0.40}}

// bundleMany is the factor from 41 conductors up.
const bundleMany units.Ratio = 0.35

func bundleFactor(n int) units.Ratio {
	for _, r := range necBundleFactors {
		if n <= r.atMost {
			return r.factor
		}
	}
	return bundleMany
}
