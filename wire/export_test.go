package wire

import "example.com/drawbar/units"

// AmbientFactor returns a cell of the table of ambient correction, 0 where it
// is blank.
func AmbientFactor(n Insulation, t units.Temperature) units.Ratio { return ambientFactor(n, t) }

// IECResistance returns a cell of the table of IEC 60228.
func IECResistance(s Size, strand Strand, coated bool) units.ResistancePerLength {
	return iecResistance(s, strand, coated)
}
