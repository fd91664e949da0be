package wire

import "example.com/drawbar/units"

// A cordRow is a size and its ampacity in amperes; 0 where the table is blank.
type cordRow struct {
	gauge int32
	cells [3]units.Current
}

// Ampacity of flexible cords at 30 °C, in amperes: with three conductors that
// carry current (column A), with two (column B), and of heater cords. Of 20 AWG
// only the 2 A of other types than elevator cable are taken; tinsel cord is left
// out.
// Source: NFPA 70 Table 400.5(A)(1), 2017 and 2023, read.
var cordTable1 = [...]cordRow{
	{20, [3]units.Current{0, 2, 0}},
	{18, [3]units.Current{7, 10, 10}},
	{17, [3]units.Current{9, 12, 13}},
	{16, [3]units.Current{10, 13, 15}},
	{15, [3]units.Current{12, 16, 17}},
	{14, [3]units.Current{15, 18, 20}},
	{13, [3]units.Current{17, 21, 0}},
	{12, [3]units.Current{20, 25, 30}},
	{11, [3]units.Current{23, 27, 0}},
	{10, [3]units.Current{25, 30, 35}},
	{9, [3]units.Current{29, 34, 0}},
	{8, [3]units.Current{35, 40, 0}},
	{7, [3]units.Current{40, 47, 0}},
	{6, [3]units.Current{45, 55, 0}},
	{5, [3]units.Current{52, 62, 0}},
	{4, [3]units.Current{60, 70, 0}},
	{3, [3]units.Current{70, 82, 0}},
	{2, [3]units.Current{80, 95, 0}},
}

// A cableRow is a size and its ampacity in amperes as a single conductor (D),
// with two (E) and with three (F) that carry current, at 60, 75 and 90 °C.
type cableRow struct {
	gauge         int32
	c60, c75, c90 [3]units.Current
}

// Ampacity of portable power cables at 30 °C, in amperes.
// Source: NFPA 70 Table 400.5(A)(2), 2017 and 2023, read.
var cordTable2 = [...]cableRow{
	{12, [3]units.Current{0, 31, 26}, [3]units.Current{0, 37, 31}, [3]units.Current{0, 42, 35}},
	{10, [3]units.Current{0, 44, 37}, [3]units.Current{0, 52, 43}, [3]units.Current{0, 59, 49}},
	{8, [3]units.Current{60, 55, 48}, [3]units.Current{70, 65, 57}, [3]units.Current{80, 74, 65}},
	{6, [3]units.Current{80, 72, 63}, [3]units.Current{95, 88, 77}, [3]units.Current{105, 99, 87}},
	{4, [3]units.Current{105, 96, 84}, [3]units.Current{125, 115, 101}, [3]units.Current{140, 130, 114}},
	{3, [3]units.Current{120, 113, 99}, [3]units.Current{145, 135, 118}, [3]units.Current{165, 152, 133}},
	{2, [3]units.Current{140, 128, 112}, [3]units.Current{170, 152, 133}, [3]units.Current{190, 174, 152}},
	{1, [3]units.Current{165, 150, 131}, [3]units.Current{195, 178, 156}, [3]units.Current{220, 202, 177}},
	{0, [3]units.Current{195, 173, 151}, [3]units.Current{230, 207, 181}, [3]units.Current{260, 234, 205}},
	{-1, [3]units.Current{225, 199, 174}, [3]units.Current{265, 238, 208}, [3]units.Current{300, 271, 237}},
	{-2, [3]units.Current{260, 230, 201}, [3]units.Current{310, 275, 241}, [3]units.Current{350, 313, 274}},
	{-3, [3]units.Current{300, 265, 232}, [3]units.Current{360, 317, 277}, [3]units.Current{405, 361, 316}},
}

// Adjustment for more than three current-carrying conductors in a cord.
// Source: NFPA 70 Table 400.5(A)(3), 2017 and 2023, read.
var cordBundleFactors = [...]bundleRow{{3, 1}, {6, 0.80}, {9, 0.70}, {20, 0.50}, {30, 0.45}, {40, 0.40}, {mostConductors, 0.35}}

// cordCell returns a cell of the table for the type, 0 where it is blank.
func cordCell(k CordType, s Size, n Insulation, conductors int) units.Current {
	number, ok := s.Gauge()
	if !ok {
		return 0
	}
	if k == PortableCable {
		for i := range cordTable2 {
			if r := &cordTable2[i]; int(r.gauge) == number {
				return [...][3]units.Current{r.c60, r.c75, r.c90}[necIndex(n)][min(conductors, 3)-1]
			}
		}
		return 0
	}
	for i := range cordTable1 {
		if r := &cordTable1[i]; int(r.gauge) == number {
			return r.cells[cordColumn(k, conductors)]
		}
	}
	return 0
}

// cordColumn returns the place of the column of Table 400.5(A)(1).
func cordColumn(k CordType, conductors int) int {
	switch {
	case k == HeaterCord:
		return 2
	case conductors >= 3:
		return 0
	}
	return 1
}
