package wire

import "example.com/drawbar/units"

// A boatRow is a size and its ampacity in amperes by the class of insulation,
// in the order of insulationClasses.
type boatRow struct {
	size    Size
	amperes [7]units.Current
}

// Ampacity of single copper conductors of boats, outside engine spaces, at 60,
// 75, 80, 90, 105, 125 and 200 °C, in amperes.
// Source: 33 CFR 183.425 Table 5, 2001 edition, read; the current one agrees.
var boat425 = [...]boatRow{
	{Size{gauge, 18}, [7]units.Current{10, 10, 15, 20, 20, 25, 25}},
	{Size{gauge, 16}, [7]units.Current{15, 15, 20, 25, 25, 30, 35}},
	{Size{gauge, 14}, [7]units.Current{20, 20, 25, 30, 35, 40, 45}},
	{Size{gauge, 12}, [7]units.Current{25, 25, 35, 40, 45, 50, 55}},
	{Size{gauge, 10}, [7]units.Current{40, 40, 50, 55, 60, 70, 70}},
	{Size{gauge, 8}, [7]units.Current{55, 65, 70, 70, 80, 90, 100}},
	{Size{gauge, 6}, [7]units.Current{80, 95, 100, 100, 120, 125, 135}},
	{Size{gauge, 4}, [7]units.Current{105, 125, 130, 135, 160, 170, 180}},
	{Size{gauge, 3}, [7]units.Current{120, 145, 150, 155, 180, 195, 210}},
	{Size{gauge, 2}, [7]units.Current{140, 170, 175, 180, 210, 225, 240}},
	{Size{gauge, 1}, [7]units.Current{165, 195, 210, 210, 245, 265, 280}},
	{Size{gauge, 0}, [7]units.Current{195, 230, 245, 245, 285, 305, 325}},
	{Size{gauge, -1}, [7]units.Current{225, 265, 285, 285, 330, 355, 370}},
	{Size{gauge, -2}, [7]units.Current{260, 310, 330, 330, 385, 410, 430}},
	{Size{gauge, -3}, [7]units.Current{300, 360, 385, 385, 445, 475, 510}},
}

// Correction inside engine spaces, where 50 °C is assumed, by the class of
// insulation in the order of insulationClasses. Reprints of an industry
// standard have 0.85 at 105 °C.
// Source: 33 CFR 183.425 Table 5, note 1. Provenance: from memory.
var boatEngineFactors = [...]units.Ratio{0.58, 0.75, 0.78, 0.82, 0.86, 0.89, 1.0}

// Adjustment for conductors together, in circuits of 50 V and more.
// Source: 33 CFR 183.425 Table 5, note 2, read in a page that reprints the
// compliance guideline of the Coast Guard.
var boatBundleFactors = [...]bundleRow{{2, 1}, {3, 0.7}, {6, 0.6}, {24, 0.5}, {mostConductors, 0.4}}

// boatBare is how much of 18 AWG may be out of its sheath: 33 CFR 183.425(f).
const boatBare = 30 * units.Inch

// boatAmpacity returns a cell of the table, 0 where it is blank.
func boatAmpacity(s Size, n Insulation) units.Current {
	for i := range boat425 {
		if boat425[i].size == s {
			return boat425[i].amperes[boatIndex(n)]
		}
	}
	return 0
}

// boatIndex returns which of the columns is that of n, which is a class.
func boatIndex(n Insulation) int {
	for i, c := range insulationClasses {
		if c.class == n {
			return i
		}
	}
	return 0
}
