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
	tinned2    float64
	tinned5    float64
}

// Maximum resistance of plain and of tinned copper conductors at 20 °C,
// class 2 (stranded), and class 1 (solid) with the same limits; class 5
// (flexible).
// Source: IEC 60228:2004, tables 1, 2 and 3, read in public cable data sheets
// that reproduce them. At 50 mm² the flexible conductor has the lower limit;
// that is how it is printed.
var iec60228 = [...]iecRow{
	{50, 36.0, 39.0, 36.7, 40.1},
	{75, 24.5, 26.0, 24.8, 26.7},
	{100, 18.1, 19.5, 18.2, 20.0},
	{150, 12.1, 13.3, 12.2, 13.7},
	{250, 7.41, 7.98, 7.56, 8.21},
	{400, 4.61, 4.95, 4.70, 5.09},
	{600, 3.08, 3.30, 3.11, 3.39},
	{1000, 1.83, 1.91, 1.84, 1.95},
	{1600, 1.15, 1.21, 1.16, 1.24},
	{2500, 0.727, 0.780, 0.734, 0.795},
	{3500, 0.524, 0.554, 0.529, 0.565},
	{5000, 0.387, 0.386, 0.391, 0.393},
	{7000, 0.268, 0.272, 0.270, 0.277},
	{9500, 0.193, 0.206, 0.195, 0.210},
	{12000, 0.153, 0.161, 0.154, 0.164},
}

var iecSource = working.Source{
	Body: "IEC", Title: "60228, Conductors of insulated cables", Edition: "2004",
	Place: "maximum resistance at 20 °C, plain copper, as public cable data sheets reproduce it", Provenance: working.Read,
}

var iecTinnedSource = working.Source{
	Body: "IEC", Title: "60228, Conductors of insulated cables", Edition: "2004",
	Place: "maximum resistance at 20 °C, tinned copper, as public cable data sheets reproduce it", Provenance: working.Read,
}

// iecResistance returns the limit for s, which is metric, at 20 °C.
func iecResistance(s Size, strand Strand, coated bool) units.ResistancePerLength {
	for _, r := range iec60228 {
		if r.hundredths != s.n {
			continue
		}
		x := r.class2
		switch {
		case strand == Flexible && coated:
			x = r.tinned5
		case strand == Flexible:
			x = r.class5
		case coated:
			x = r.tinned2
		}
		return units.ResistancePerLength(x) * units.MilliohmPerMetre
	}
	return 0
}
