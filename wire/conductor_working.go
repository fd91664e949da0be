package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the resistance came about, step by step.
func (p PerLength) Working() *working.Sheet {
	s := working.NewSheet("Resistance of one conductor, " + p.name())
	p.steps(s)
	return s
}

// Findings returns what needs attention: for a metric size, that its name is
// not its area.
func (p PerLength) Findings() []working.Finding {
	if p.Basis != FromResistivity || !p.Conductor.Size.IsMetric() {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution,
		Rule:     "nominal-area",
		Message: "The area of a metric size is its name. IEC 60228 limits the resistance, and the conductor " +
			"may hold 11 % less copper than the name says, so a resistance worked out from it can be too low.",
		Numbers: []working.Number{{Name: "nominal area", Value: p.Area}, {Name: "resistance per length", Value: p.At}},
		Fix:     "Leave the resistivity out, so that the limit of IEC 60228 is used, or state the resistance of the datasheet.",
		Source:  iecSource,
	}}
}

// name says which conductor p is about.
func (p PerLength) name() string {
	c := p.Conductor
	switch {
	case p.Basis == FromStated && !c.Size.IsValid():
		return "resistance stated"
	case p.Basis == FromStated:
		return c.Size.String() + ", resistance stated"
	case p.Basis == FromResistivity:
		return c.Size.String() + ", resistivity given"
	}
	return c.Size.String() + " copper, " + c.Strand.String() + ", at " + c.Temperature.String()
}

// steps appends the steps that end in r.
func (p PerLength) steps(s *working.Sheet) {
	const what = "resistance of one conductor per length"
	switch p.Basis {
	case FromStated:
		s.Given("r", p.At, "Ω/m", what+", as stated")
	case FromIEC60228:
		p.iecSteps(s)
		p.warmingSteps(s)
		s.Formula("r", p.At, "Ω/m", what, "r_20/1000 * (1 + α_20*(T - T_20))")
	case FromResistivity:
		p.areaSteps(s)
		s.Given("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature, as given")
		s.Formula("r", p.At, "Ω/m", what, "ρ / A")
	default:
		p.areaSteps(s)
		s.Constant("ρ_20", copperRho20, "Ω·mm²/m", "resistivity of annealed copper at 20 °C", copperRhoSource)
		p.warmingSteps(s)
		if p.Conductor.Strand == Solid {
			s.Formula("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature", "ρ_20 * (1 + α_20*(T - T_20))")
		} else {
			s.Constant("k_lay", strandLay, "1", "longer path of the strands", strandLaySource)
			s.Formula("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature, lay included",
				"ρ_20 * (1 + α_20*(T - T_20)) * k_lay")
		}
		s.Formula("r", p.At, "Ω/m", what, "ρ / A")
	}
}

// warmingSteps appends the temperature and what it does to copper.
func (p PerLength) warmingSteps(s *working.Sheet) {
	s.Given("T", p.Conductor.Temperature, "°C", "temperature of the metal")
	s.Constant("T_20", reference, "°C", "temperature that the tables belong to", copperAlphaSource)
	s.Constant("α_20", copperAlpha20, "1/K", "temperature coefficient of copper at 20 °C", copperAlphaSource)
}

// iecSteps appends the look-up of the tabulated resistance.
func (p PerLength) iecSteps(s *working.Sheet) {
	column := "class 2"
	switch p.Conductor.Strand {
	case Solid:
		column = "class 1"
	case Flexible:
		column = "class 5"
	}
	s.LookUp("r_20", p.At20, "mΩ/m", "greatest resistance per length at 20 °C", working.Lookup{
		Source: iecSource,
		Key:    p.Conductor.Size.String(),
		Row:    p.Conductor.Size.String() + ", " + column,
	})
}

// areaSteps appends the metal area of the size.
func (p PerLength) areaSteps(s *working.Sheet) {
	size := p.Conductor.Size
	n, isGauge := size.Gauge()
	if !isGauge {
		s.Given("A", p.Area, "mm²", "area of "+size.String())
		return
	}
	what := "gauge number of " + size.String()
	if n <= 0 {
		what += ", counting 1/0 as 0"
	}
	s.Given("n", units.Ratio(n), "1", what)
	s.Constant("d_36", units.Length(gauge36Diameter), "mm", "diameter of 36 AWG", gaugeSource)
	s.Constant("q", units.Ratio(gaugeRatio), "1", "ratio of diameters, 4/0 to 36 AWG, 39 steps apart", gaugeSource)
	s.Formula("d", size.Diameter(), "mm", "diameter as one round wire", "d_36 * pow(q, (36 - n)/39)")
	s.Formula("A", p.Area, "mm²", "metal area", "pi/4 * pow(d, 2)")
}
