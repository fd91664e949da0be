package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// An ohmsPerKilofoot is a cell of a table, in ohms per 1000 ft as printed; 0
// is a blank.
type ohmsPerKilofoot float64

// perLength returns the cell as a quantity.
func (o ohmsPerKilofoot) perLength() units.ResistancePerLength {
	return units.ResistancePerLength(o) * units.OhmPerKilofoot
}

// A table8Row is a row of NEC Chapter 9 Table 8.
type table8Row struct {
	size                     Size
	strand                   Strand
	copper, coated, aluminum ohmsPerKilofoot
}

// Direct-current resistance at 75 °C of solid and of concentric stranded
// conductors: uncoated copper, coated copper, aluminium.
// Source: NFPA 70, National Electrical Code, 2017, Chapter 9 Table 8, as
// printed in Modern Commercial Wiring (2018), p. 87; a second public
// transcription agrees. Provenance: read.
var necTable8 = [...]table8Row{
	{Size{gauge, 18}, Solid, 7.77, 8.08, 12.8},
	{Size{gauge, 18}, Stranded, 7.95, 8.45, 13.1},
	{Size{gauge, 16}, Solid, 4.89, 5.08, 8.05},
	{Size{gauge, 16}, Stranded, 4.99, 5.29, 8.21},
	{Size{gauge, 14}, Solid, 3.07, 3.19, 5.06},
	{Size{gauge, 14}, Stranded, 3.14, 3.26, 5.17},
	{Size{gauge, 12}, Solid, 1.93, 2.01, 3.18},
	{Size{gauge, 12}, Stranded, 1.98, 2.05, 3.25},
	{Size{gauge, 10}, Solid, 1.21, 1.26, 2.00},
	{Size{gauge, 10}, Stranded, 1.24, 1.29, 2.04},
	{Size{gauge, 8}, Solid, 0.764, 0.786, 1.26},
	{Size{gauge, 8}, Stranded, 0.778, 0.809, 1.28},
	{Size{gauge, 6}, Stranded, 0.491, 0.510, 0.808},
	{Size{gauge, 4}, Stranded, 0.308, 0.321, 0.508},
	{Size{gauge, 3}, Stranded, 0.245, 0.254, 0.403},
	{Size{gauge, 2}, Stranded, 0.194, 0.201, 0.319},
	{Size{gauge, 1}, Stranded, 0.154, 0.160, 0.253},
	{Size{gauge, 0}, Stranded, 0.122, 0.127, 0.201},
	{Size{gauge, -1}, Stranded, 0.0967, 0.101, 0.159},
	{Size{gauge, -2}, Stranded, 0.0766, 0.0797, 0.126},
	{Size{gauge, -3}, Stranded, 0.0608, 0.0626, 0.100},
	{Size{kcmil, 250}, Stranded, 0.0515, 0.0535, 0.0847},
	{Size{kcmil, 300}, Stranded, 0.0429, 0.0446, 0.0707},
	{Size{kcmil, 350}, Stranded, 0.0367, 0.0382, 0.0605},
	{Size{kcmil, 400}, Stranded, 0.0321, 0.0331, 0.0529},
	{Size{kcmil, 500}, Stranded, 0.0258, 0.0265, 0.0424},
}

// The note below Table 8 corrects for temperature from 75 °C.
const (
	copperAlpha75    units.PerKelvin = 0.00323
	aluminiumAlpha75 units.PerKelvin = 0.00330
)

// tableTemperature is what NEC Chapter 9 Tables 8 and 9 belong to.
var tableTemperature = units.Celsius(75)

var (
	table8Source = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "Chapter 9 Table 8, as printed in Modern Commercial Wiring (2018), p. 87", Provenance: working.Read}
	table8NoteSource = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
		Place: "Chapter 9 Table 8, note on temperature, as a public restatement gives it", Provenance: working.Read}
)

// table8 returns what Table 8 has for c at 75 °C; 0 if it has no such row.
func (c Conductor) table8() units.ResistancePerLength {
	for _, r := range necTable8 {
		if r.size != c.Size || r.strand != c.Strand {
			continue
		}
		switch {
		case c.Metal == Aluminium:
			return r.aluminum.perLength()
		case c.Coated:
			return r.coated.perLength()
		}
		return r.copper.perLength()
	}
	return 0
}

// alpha75 returns the coefficient of the note below Table 8.
func (m Metal) alpha75() units.PerKelvin {
	if m == Aluminium {
		return aluminiumAlpha75
	}
	return copperAlpha75
}
