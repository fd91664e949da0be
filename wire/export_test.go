package wire

import "example.com/drawbar/units"

// AmbientFactor returns a cell of the table of ambient correction, 0 where it
// is blank.
func AmbientFactor(r RuleSet, n Insulation, t units.Temperature) units.Ratio {
	return ambientFactor(r, n, t)
}

// IECResistance returns a cell of the table of IEC 60228.
func IECResistance(s Size, strand Strand, coated bool) units.ResistancePerLength {
	return iecResistance(s, strand, coated)
}

// Table8 returns a cell of NEC Chapter 9 Table 8, 0 where it has none.
func Table8(c Conductor) units.ResistancePerLength { return c.table8() }

// SolidResistance returns a cell of the table of solid copper.
func SolidResistance(s Size) units.ResistancePerLength { return solidResistance(s) }

// Table9 returns cells of NEC Chapter 9 Table 9, 0 where it has none.
func Table9(s Size, m Metal, c Conduit) (r, x units.ResistancePerLength) { return table9(s, m, c) }
