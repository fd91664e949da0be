package wire

import "example.com/drawbar/units"

// A necRow is a size and its ampacity in amperes, at 60, 75 and 90 °C, of
// copper and of aluminium or copper-clad aluminium; 0 where the table is blank.
type necRow struct {
	size              Size
	copper, aluminium [3]units.Current
}

// Ampacity of not more than three conductors in raceway or cable at 30 °C, in
// amperes.
// Source: NFPA 70 (2017) Table 310.15(B)(16), read through IRC 2018 Table
// E3705.1; 18 and 16 AWG from memory. From memory, the values hold from 2011 to
// 2023.
var nec2011 = [...]necRow{
	{Size{gauge, 18}, [3]units.Current{0, 0, 14}, [3]units.Current{}},
	{Size{gauge, 16}, [3]units.Current{0, 0, 18}, [3]units.Current{}},
	{Size{gauge, 14}, [3]units.Current{15, 20, 25}, [3]units.Current{}},
	{Size{gauge, 12}, [3]units.Current{20, 25, 30}, [3]units.Current{15, 20, 25}},
	{Size{gauge, 10}, [3]units.Current{30, 35, 40}, [3]units.Current{25, 30, 35}},
	{Size{gauge, 8}, [3]units.Current{40, 50, 55}, [3]units.Current{35, 40, 45}},
	{Size{gauge, 6}, [3]units.Current{55, 65, 75}, [3]units.Current{40, 50, 55}},
	{Size{gauge, 4}, [3]units.Current{70, 85, 95}, [3]units.Current{55, 65, 75}},
	{Size{gauge, 3}, [3]units.Current{85, 100, 115}, [3]units.Current{65, 75, 85}},
	{Size{gauge, 2}, [3]units.Current{95, 115, 130}, [3]units.Current{75, 90, 100}},
	{Size{gauge, 1}, [3]units.Current{110, 130, 145}, [3]units.Current{85, 100, 115}},
	{Size{gauge, 0}, [3]units.Current{125, 150, 170}, [3]units.Current{100, 120, 135}},
	{Size{gauge, -1}, [3]units.Current{145, 175, 195}, [3]units.Current{115, 135, 150}},
	{Size{gauge, -2}, [3]units.Current{165, 200, 225}, [3]units.Current{130, 155, 175}},
	{Size{gauge, -3}, [3]units.Current{195, 230, 260}, [3]units.Current{150, 180, 205}},
	{Size{kcmil, 250}, [3]units.Current{215, 255, 290}, [3]units.Current{170, 205, 230}},
	{Size{kcmil, 300}, [3]units.Current{240, 285, 320}, [3]units.Current{195, 230, 260}},
	{Size{kcmil, 350}, [3]units.Current{260, 310, 350}, [3]units.Current{210, 250, 280}},
	{Size{kcmil, 400}, [3]units.Current{280, 335, 380}, [3]units.Current{225, 270, 305}},
	{Size{kcmil, 500}, [3]units.Current{320, 380, 430}, [3]units.Current{260, 310, 350}},
}

// The same before 2011. What 2011 changed: copper 14 and 12 AWG at 60 °C, 3 and
// 1 AWG at 90 °C; aluminium 12 and 8 AWG at 60 °C, 6 AWG at 90 °C, and 300
// kcmil at 60 and 90 °C.
// Source: NFPA 70, 1990s to 2008, Table 310.16, read in a public reprint.
var nec1990s = [...]necRow{
	{Size{gauge, 18}, [3]units.Current{0, 0, 14}, [3]units.Current{}},
	{Size{gauge, 16}, [3]units.Current{0, 0, 18}, [3]units.Current{}},
	{Size{gauge, 14}, [3]units.Current{20, 20, 25}, [3]units.Current{}},
	{Size{gauge, 12}, [3]units.Current{25, 25, 30}, [3]units.Current{20, 20, 25}},
	{Size{gauge, 10}, [3]units.Current{30, 35, 40}, [3]units.Current{25, 30, 35}},
	{Size{gauge, 8}, [3]units.Current{40, 50, 55}, [3]units.Current{30, 40, 45}},
	{Size{gauge, 6}, [3]units.Current{55, 65, 75}, [3]units.Current{40, 50, 60}},
	{Size{gauge, 4}, [3]units.Current{70, 85, 95}, [3]units.Current{55, 65, 75}},
	{Size{gauge, 3}, [3]units.Current{85, 100, 110}, [3]units.Current{65, 75, 85}},
	{Size{gauge, 2}, [3]units.Current{95, 115, 130}, [3]units.Current{75, 90, 100}},
	{Size{gauge, 1}, [3]units.Current{110, 130, 150}, [3]units.Current{85, 100, 115}},
	{Size{gauge, 0}, [3]units.Current{125, 150, 170}, [3]units.Current{100, 120, 135}},
	{Size{gauge, -1}, [3]units.Current{145, 175, 195}, [3]units.Current{115, 135, 150}},
	{Size{gauge, -2}, [3]units.Current{165, 200, 225}, [3]units.Current{130, 155, 175}},
	{Size{gauge, -3}, [3]units.Current{195, 230, 260}, [3]units.Current{150, 180, 205}},
	{Size{kcmil, 250}, [3]units.Current{215, 255, 290}, [3]units.Current{170, 205, 230}},
	{Size{kcmil, 300}, [3]units.Current{240, 285, 320}, [3]units.Current{190, 230, 255}},
	{Size{kcmil, 350}, [3]units.Current{260, 310, 350}, [3]units.Current{210, 250, 280}},
	{Size{kcmil, 400}, [3]units.Current{280, 335, 380}, [3]units.Current{225, 270, 305}},
	{Size{kcmil, 500}, [3]units.Current{320, 380, 430}, [3]units.Current{260, 310, 350}},
}

// necAmpacity returns a cell of the table of the edition, 0 where it is blank.
func necAmpacity(rules RuleSet, m Metal, s Size, n Insulation) units.Current {
	table := nec2011[:]
	if rules == NEC2008 {
		table = nec1990s[:]
	}
	for i := range table {
		if r := &table[i]; r.size == s {
			if m == Copper {
				return r.copper[necIndex(n)]
			}
			return r.aluminium[necIndex(n)]
		}
	}
	return 0
}

// necIndex returns which of the three columns is that of n.
func necIndex(n Insulation) int {
	switch n.necColumn() {
	case Insulation60:
		return 0
	case Insulation75:
		return 1
	}
	return 2
}

// A sizeLimit is the greatest device that a size may have; 0 where there is
// none of its own.
type sizeLimit struct {
	size              Size
	copper, aluminium units.Current
}

// Limits of overcurrent devices for small conductors, in amperes, after
// correction and adjustment; the aluminium column is for copper-clad too.
// Copper-clad of 14 AWG is left out: whether the edition of 2023 has it with
// 10 A, public summaries disagree.
// Source: NEC 240.4(D), 2017 to 2023, read in public summaries; for 2008 from
// memory.
var necSmallLimits = [...]sizeLimit{
	{Size{gauge, 18}, 7, 0},
	{Size{gauge, 16}, 10, 0},
	{Size{gauge, 14}, 15, 0},
	{Size{gauge, 12}, 20, 15},
	{Size{gauge, 10}, 30, 25},
}

// What 240.4(D)(1) and (2) let 18 and 16 AWG carry for hours, in amperes.
// Source: as above, quoted in public.
var necSmallContinuous = [...]sizeLimit{
	{Size{gauge, 18}, 5.6, 0},
	{Size{gauge, 16}, 8, 0},
}

// Limits of overcurrent devices by conductor, in amperes. 18 and 16 AWG are
// for stranded conductors only.
// Source: NEC Table 552.10(E)(1), park trailers, low voltage. Provenance: from
// memory.
var rvLimits = [...]sizeLimit{
	{Size{gauge, 18}, 6, 0},
	{Size{gauge, 16}, 8, 0},
	{Size{gauge, 14}, 15, 0},
	{Size{gauge, 12}, 20, 0},
	{Size{gauge, 10}, 30, 0},
}

func limitOf(table []sizeLimit, s Size, m Metal) (limit units.Current, ok bool) {
	for _, r := range table {
		if r.size == s {
			if limit = r.copper; m != Copper {
				limit = r.aluminium
			}
			return limit, limit > 0
		}
	}
	return 0, false
}
