package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// An iecRow is a row of the resistance tables of IEC 60228, in ohms per
// kilometre as printed.
type iecRow struct {
	hundredths int32 // nominal area in mm²/100
	class2     float64
	class5     float64
}

// Maximum resistance of plain copper conductors at 20 °C, classes 1 and 2
// (solid, stranded) and class 5 (flexible).
// Source: IEC 60228:2004, tables 1, 2 and 3, read in public cable data sheets
// that reproduce them. At 50 mm² the flexible conductor has the lower limit;
// that is how it is printed.
var iec60228 = [...]iecRow{
	{50, 36.0, 39.0},
	{75, 24.5, 26.0},
	{100, 18.1, 19.5},
	{150, 12.1, 13.3},
	{250, 7.41, 7.98},
	{400, 4.61, 4.95},
	{600, 3.08, 3.30},
	{1000, 1.83, 1.91},
	{1600, 1.15, 1.21},
	{2500, 0.727, 0.780},
	{3500, 0.524, 0.554},
	{5000, 0.387, 0.386},
	{7000, 0.268, 0.272},
	{9500, 0.193, 0.206},
	{12000, 0.153, 0.161},
}

var iecSource = working.Source{
	Body: "IEC", Title: "60228, Conductors of insulated cables", Edition: "2004",
	Place: "maximum resistance at 20 °C, plain copper, as public cable data sheets reproduce it", Provenance: working.Read,
}

// iecResistance returns the limit for s, which is metric, at 20 °C.
func iecResistance(s Size, strand Strand) units.ResistancePerLength {
	for _, r := range iec60228 {
		if r.hundredths != s.n {
			continue
		}
		if strand == Flexible {
			return units.ResistancePerLength(r.class5) * units.MilliohmPerMetre
		}
		return units.ResistancePerLength(r.class2) * units.MilliohmPerMetre
	}
	return 0
}
