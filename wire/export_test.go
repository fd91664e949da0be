package wire

import "example.com/drawbar/units"

// AmbientFactor returns a cell of the table of ambient correction, 0 where it
// is blank.
func AmbientFactor(r RuleSet, n Insulation, t units.Temperature) units.Ratio {
	return ambientFactor(r, n, t)
}

// IECResistance returns a cell of the table of IEC 60228.
func IECResistance(s Size, strand Strand) units.ResistancePerLength { return iecResistance(s, strand) }
