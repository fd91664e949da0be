package wire

import "example.com/drawbar/units"

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

// Aluminium at 20 °C.
// Source: IEC 60889 (1987). Provenance: memory.
const (
	aluminiumRho20   units.Resistivity = 0.028264e-6
	aluminiumAlpha20 units.PerKelvin   = 0.00403
)

// cladShare is how much of the area of copper-clad aluminium is copper.
// Source: ASTM B566, class 10. Provenance: memory.
const cladShare units.Ratio = 0.10

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

var metalWords = []string{"copper", "aluminium", "copper-clad aluminium"}

// String returns "copper", "aluminium" or "copper-clad aluminium".
func (m Metal) String() string { return wordOf(metalWords, uint8(m)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (m Metal) MarshalText() ([]byte, error) {
	return wordText("wire.Metal.MarshalText", metalWords, uint8(m))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves m alone.
func (m *Metal) UnmarshalText(text []byte) error {
	i, err := readWord("metal", metalWords, text)
	if err == nil {
		*m = Metal(i)
	}
	return err
}
