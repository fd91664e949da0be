package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A MetalMass is the result of [MassOf].
type MetalMass struct {
	Conductor Conductor // as given
	// At20 is the limit of resistance at 20 °C that the area of a metric size
	// is worked out from; 0 for a gauge and kcmil.
	At20 units.ResistancePerLength
	// Area is the cross-section of the metal, square to the axis of the strands.
	Area      units.Area
	PerLength units.MassPerLength // of the metal alone, without insulation
}

// MassOf returns the mass of the metal of one conductor per length:
//
//	m = m_1 · A · lay
//
// where m_1 is the mass of one metre of 1 mm². A metric copper size is taken to
// hold the metal that just keeps the limit of IEC 60228, which is less than its
// name. Insulation is left out: a cable weighs more.
//
// Stated, Resistivity, Basis and Temperature are not looked at. A Size, Metal
// or Strand that [Conductor] does not allow gives a [*units.RangeError], and so
// does a metric size of another metal than copper, whose area is not known.
func MassOf(c Conductor) (MetalMass, error) {
	const op = "wire.MassOf"
	bare := Conductor{Size: c.Size, Metal: c.Metal, Strand: c.Strand, Coated: c.Coated && c.Size.IsMetric()}
	if err := bare.check(op); err != nil {
		return MetalMass{}, err
	}
	m := MetalMass{Conductor: c, Area: c.Size.Area()}
	if c.Size.IsMetric() {
		m.At20 = iecResistance(c.Size, c.Strand, c.Coated)
		m.Area = units.Area(float64(units.Scale(copperRho20, c.Strand.lay())) / float64(m.At20))
	}
	mm2 := units.Ratio(units.In(m.Area, units.SquareMillimetre))
	m.PerLength = units.Scale(c.Metal.unitMass(), mm2*c.Strand.lay())
	return m, nil
}

// Working returns how the mass came about, step by step.
func (m MetalMass) Working() *working.Sheet {
	c := m.Conductor
	s := working.NewSheet("Mass of the metal, " + c.Size.String() + " " + c.Metal.String() + ", " + c.Strand.String())
	lay := ""
	if c.Strand != Solid {
		s.Constant("k_lay", strandLay, "1", "longer path of the strands", strandLaySource)
		lay = " * k_lay"
	}
	if c.Size.IsMetric() {
		PerLength{Conductor: c, At20: m.At20}.iecSteps(s)
		s.Constant("ρ_20", copperRho20, "Ω·mm²/m", "resistivity of annealed copper at 20 °C", copperRhoSource)
		s.Formula("A", m.Area, "mm²", "metal that has this resistance", "ρ_20"+lay+" / r_20 * 1000")
	} else {
		PerLength{Conductor: c, Area: m.Area}.areaSteps(s)
	}
	switch c.Metal {
	case Aluminium:
		s.Constant("m_1", c.Metal.unitMass(), "g/m", "mass of one metre of 1 mm²", aluminiumSource)
	case CopperClad:
		s.Constant("x_Cu", cladShare, "1", "share of the area that is copper", cladSource)
		s.Constant("m_Cu", copperUnitMass, "g/m", "mass of one metre of 1 mm² of copper", copperDensitySource)
		s.Constant("m_Al", aluminiumUnitMass, "g/m", "mass of one metre of 1 mm² of aluminium", aluminiumSource)
		s.Formula("m_1", c.Metal.unitMass(), "g/m", "mass of one metre of 1 mm²", "x_Cu*m_Cu + (1 - x_Cu)*m_Al")
	default:
		s.Constant("m_1", c.Metal.unitMass(), "g/m", "mass of one metre of 1 mm²", copperDensitySource)
	}
	s.Formula("m", m.PerLength, "g/m", "mass of the metal per length", "m_1 * A"+lay)
	return s
}

// Findings returns what needs attention: that the insulation is not weighed,
// and a metal that is not copper.
func (m MetalMass) Findings() []working.Finding {
	f := []working.Finding{{
		Severity: working.Note,
		Rule:     "metal-only",
		Message:  "This is the metal. Insulation and sheath of a cable weigh from a tenth to as much again.",
		Numbers:  []working.Number{{Name: "metal", Value: m.PerLength}},
		Fix:      "For the load of a vehicle take the mass from the datasheet of the cable.",
		Source:   working.Source{Title: "datasheets of building and battery cable", Provenance: working.CommonPractice},
	}}
	if metal, ok := m.Conductor.metalFinding(); ok {
		f = append(f, metal)
	}
	working.Sort(f)
	return f
}
