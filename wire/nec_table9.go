package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Conduit is what an alternating-current circuit runs in: the metal round it
// changes resistance and reactance. The zero value is [PVCConduit].
type Conduit uint8

const (
	// PVCConduit is plastic, or none: cable with a plastic sheath.
	PVCConduit Conduit = iota
	// AluminiumConduit is of aluminium.
	AluminiumConduit
	// SteelConduit is of steel.
	SteelConduit
)

// A table9Row is a row of NEC Chapter 9 Table 9: reactance in PVC or
// aluminium and in steel, then resistance in PVC, aluminium and steel.
type table9Row struct {
	size             Size
	xOpen, xSteel    ohmsPerKilofoot
	copper, aluminum [3]ohmsPerKilofoot
}

// Alternating-current reactance and resistance at 75 °C and 60 Hz, to neutral:
// of one conductor. 14 AWG has no aluminium.
// Source: NFPA 70, National Electrical Code, Chapter 9 Table 9, edition not
// printed; three public reprints agree but for two cells, which are noted beside the check.
// Provenance: read.
var necTable9 = [...]table9Row{
	{Size{gauge, 14}, 0.058, 0.073, [3]ohmsPerKilofoot{3.1, 3.1, 3.1}, [3]ohmsPerKilofoot{}},
	{Size{gauge, 12}, 0.054, 0.068, [3]ohmsPerKilofoot{2.0, 2.0, 2.0}, [3]ohmsPerKilofoot{3.2, 3.2, 3.2}},
	{Size{gauge, 10}, 0.050, 0.063, [3]ohmsPerKilofoot{1.2, 1.2, 1.2}, [3]ohmsPerKilofoot{2.0, 2.0, 2.0}},
	{Size{gauge, 8}, 0.052, 0.065, [3]ohmsPerKilofoot{0.78, 0.78, 0.78}, [3]ohmsPerKilofoot{1.3, 1.3, 1.3}},
	{Size{gauge, 6}, 0.051, 0.064, [3]ohmsPerKilofoot{0.49, 0.49, 0.49}, [3]ohmsPerKilofoot{0.81, 0.81, 0.81}},
	{Size{gauge, 4}, 0.048, 0.060, [3]ohmsPerKilofoot{0.31, 0.31, 0.31}, [3]ohmsPerKilofoot{0.51, 0.51, 0.51}},
	{Size{gauge, 3}, 0.047, 0.059, [3]ohmsPerKilofoot{0.25, 0.25, 0.25}, [3]ohmsPerKilofoot{0.40, 0.41, 0.40}},
	{Size{gauge, 2}, 0.045, 0.057, [3]ohmsPerKilofoot{0.19, 0.20, 0.20}, [3]ohmsPerKilofoot{0.32, 0.32, 0.32}},
	{Size{gauge, 1}, 0.046, 0.057, [3]ohmsPerKilofoot{0.15, 0.16, 0.16}, [3]ohmsPerKilofoot{0.25, 0.26, 0.25}},
	{Size{gauge, 0}, 0.044, 0.055, [3]ohmsPerKilofoot{0.12, 0.13, 0.12}, [3]ohmsPerKilofoot{0.20, 0.21, 0.20}},
	{Size{gauge, -1}, 0.043, 0.054, [3]ohmsPerKilofoot{0.10, 0.10, 0.10}, [3]ohmsPerKilofoot{0.16, 0.16, 0.16}},
	{Size{gauge, -2}, 0.042, 0.052, [3]ohmsPerKilofoot{0.077, 0.082, 0.079}, [3]ohmsPerKilofoot{0.13, 0.13, 0.13}},
	{Size{gauge, -3}, 0.041, 0.051, [3]ohmsPerKilofoot{0.062, 0.067, 0.063}, [3]ohmsPerKilofoot{0.10, 0.11, 0.10}},
	{Size{kcmil, 250}, 0.041, 0.052, [3]ohmsPerKilofoot{0.052, 0.057, 0.054}, [3]ohmsPerKilofoot{0.085, 0.090, 0.086}},
	{Size{kcmil, 300}, 0.041, 0.051, [3]ohmsPerKilofoot{0.044, 0.049, 0.045}, [3]ohmsPerKilofoot{0.071, 0.076, 0.072}},
	{Size{kcmil, 350}, 0.040, 0.050, [3]ohmsPerKilofoot{0.038, 0.043, 0.039}, [3]ohmsPerKilofoot{0.061, 0.066, 0.063}},
	{Size{kcmil, 400}, 0.040, 0.049, [3]ohmsPerKilofoot{0.033, 0.038, 0.035}, [3]ohmsPerKilofoot{0.054, 0.059, 0.055}},
	{Size{kcmil, 500}, 0.039, 0.048, [3]ohmsPerKilofoot{0.027, 0.032, 0.029}, [3]ohmsPerKilofoot{0.043, 0.048, 0.045}},
}

var table9Source = working.Source{Body: "NFPA", Title: "70, National Electrical Code",
	Place: "Chapter 9 Table 9, one conductor, 75 °C, 60 Hz, in reprints that name no edition", Provenance: working.Read}

// table9 returns the cells for a conductor in a conduit; each is 0 if the table
// has none.
func table9(s Size, m Metal, c Conduit) (r, x units.ResistancePerLength) {
	for i := range necTable9 {
		row := &necTable9[i]
		if row.size != s {
			continue
		}
		reactance := row.xOpen
		if c == SteelConduit {
			reactance = row.xSteel
		}
		switch m {
		case Copper:
			r = row.copper[c].perLength()
		case Aluminium:
			r = row.aluminum[c].perLength()
		}
		return r, reactance.perLength()
	}
	return 0, 0
}
