package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Metal is what a conductor is made of. The zero value is [Copper].
type Metal uint8

const (
	// Copper is annealed copper.
	Copper Metal = iota
	// Aluminium is the electrical grade of it, 61 % as conductive as copper.
	Aluminium
	// CopperClad is aluminium with a skin of copper, 10 % of the area, as cheap
	// cable sold by copper gauge numbers often is.
	CopperClad
)

// Aluminium at 20 °C. The coefficient referred to 75 °C that the note of NEC
// Chapter 9 Table 8 prints, 0.00330, is the same one: 0.0033/(1 - 0.0033 · 55)
// is 0.00403. FAA AC 43.13-1B has 1/258.1, which is 0.00387; the aluminium
// column of Table 8 agrees with 0.00403.
// Source: IEC 60889 (1987). Provenance: memory.
const (
	aluminiumRho20   units.Resistivity = 0.028264e-6
	aluminiumAlpha20 units.PerKelvin   = 0.00403
)

// cladShare is how much of the area of copper-clad aluminium is copper.
// Source: ASTM B566, class 10. Provenance: memory.
const cladShare units.Ratio = 0.10

// What one metre of 1 mm² weighs: densities of 8.89 and 2.703 g/cm³.
// Sources: IEC 60028 (1925) and IEC 60889 (1987). Provenance: memory.
const (
	copperUnitMass    = 8.89 * units.GramPerMetre
	aluminiumUnitMass = 2.703 * units.GramPerMetre
)

var (
	aluminiumSource = working.Source{
		Body: "IEC", Title: "60889, Hard-drawn aluminium wire for overhead line conductors", Edition: "1987",
		Place: "0.028264 Ω·mm²/m, 0.00403/K and 2.703 g/cm³ at 20 °C", Provenance: working.Memory,
	}
	copperDensitySource = working.Source{
		Body: "IEC", Title: "60028, International standard of resistance for copper", Edition: "1925",
		Place: "8.89 g/cm³ at 20 °C", Provenance: working.Memory,
	}
	cladSource = working.Source{
		Body: "ASTM", Title: "B566, Copper-clad aluminum wire", Place: "class 10, 10 % copper by volume", Provenance: working.Memory,
	}
	copperOnlySource = working.Source{
		Body: "NFPA", Title: "70, National Electrical Code", Edition: "2008",
		Place: "552.10(B)(1), low-voltage conductors of park trailers are copper", Provenance: working.Read,
	}
)

// resistivity returns that of the metal at t, without the lay of strands.
func (m Metal) resistivity(t units.Temperature) units.Resistivity {
	switch m {
	case Aluminium:
		return units.Scale(aluminiumRho20, 1+aluminiumAlpha20.Over(t.Sub(reference)))
	case CopperClad:
		// Skin and core lie side by side: conductivity adds by area.
		skin := float64(cladShare) / float64(Copper.resistivity(t))
		core := float64(1-cladShare) / float64(Aluminium.resistivity(t))
		return units.Resistivity(1 / (skin + core))
	}
	return units.Scale(copperRho20, warming(t))
}

// unitMass returns what one metre of 1 mm² of the metal weighs.
func (m Metal) unitMass() units.MassPerLength {
	switch m {
	case Aluminium:
		return aluminiumUnitMass
	case CopperClad:
		return units.Scale(copperUnitMass, cladShare) + units.Scale(aluminiumUnitMass, 1-cladShare)
	}
	return copperUnitMass
}

// metalFinding says what a metal other than copper asks for, if it is one.
func (c Conductor) metalFinding() (f working.Finding, ok bool) {
	if c.Metal == Copper {
		return working.Finding{}, false
	}
	conductive := units.RatioOf(Copper.resistivity(c.Temperature.Or(WarmCopper())), c.Metal.resistivity(c.Temperature.Or(WarmCopper())))
	return working.Finding{
		Severity: working.Caution,
		Rule:     "metal-not-copper",
		Message: "The conductor is " + c.Metal.String() + ". It drops more and warms more than copper of its size, its joints loosen " +
			"and oxidise where terminals are not made for it, and ampacities of copper are not its own.",
		Numbers: []working.Number{{Name: "conductivity, copper being 100 %", Value: conductive}},
		Fix:     "Use copper, or terminals listed for the metal and the ampacity of the metal, where the code allows it at all.",
		Source:  copperOnlySource,
	}, true
}
