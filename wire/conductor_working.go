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

// Findings returns what needs attention, worst first: a metal that is not
// copper, and for a metric size that its name is not its area.
func (p PerLength) Findings() []working.Finding {
	var f []working.Finding
	c := p.Conductor
	if metal, ok := c.metalFinding(); ok {
		f = append(f, metal)
	}
	if c.Size.IsMetric() && p.Rho > 0 {
		f = append(f, working.Finding{
			Severity: working.Caution,
			Rule:     "nominal-area",
			Message: "The area of a metric size is its name. IEC 60228 limits the resistance, and the conductor " +
				"may hold 11 % less copper than the name says, so a resistance worked out from it can be too low.",
			Numbers: []working.Number{{Name: "nominal area", Value: p.Area}, {Name: "resistance per length", Value: p.At}},
			Fix:     "Leave the resistivity out, so that the limit of IEC 60228 is used, or state the resistance of the datasheet.",
			Source:  iecSource,
		})
	}
	return f
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
	coat := ""
	if c.Coated {
		coat = "tinned "
	}
	return c.Size.String() + " " + coat + c.Metal.String() + ", " + c.Strand.String() + ", at " + c.Temperature.String()
}

// perLengthWhat is what the steps of a conductor end in.
const perLengthWhat = "resistance of one conductor per length"

// steps appends the steps that end in r.
func (p PerLength) steps(s *working.Sheet) {
	c := p.Conductor
	switch p.Basis {
	case FromStated:
		s.Given("r", p.At, "Ω/m", perLengthWhat+", as stated")
	case FromIEC60228:
		p.iecSteps(s)
		warmingSteps(s, c.Temperature)
		s.Formula("r", p.At, "Ω/m", perLengthWhat, "r_20/1000 * (1 + α_20*(T - T_20))")
	case FromNBSHandbook100:
		p.handbookSteps(s)
	case FromNECTable8:
		p.table8Steps(s)
	case FromResistivity:
		p.areaSteps(s)
		s.Given("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature, as given")
		s.Formula("r", p.At, "Ω/m", perLengthWhat, "ρ / A")
	default:
		p.areaSteps(s)
		p.rhoSteps(s)
		s.Formula("r", p.At, "Ω/m", perLengthWhat, "ρ / A")
	}
}

// rhoSteps appends the resistivity of the metal, warm and with its lay.
func (p PerLength) rhoSteps(s *working.Sheet) {
	c := p.Conductor
	formula := "ρ_20 * (1 + α_20*(T - T_20))"
	switch c.Metal {
	case Aluminium:
		s.Constant("ρ_20", aluminiumRho20, "Ω·mm²/m", "resistivity of aluminium at 20 °C", aluminiumSource)
		aluminiumSteps(s, c.Temperature)
	case CopperClad:
		s.Constant("ρ_20", copperRho20, "Ω·mm²/m", "resistivity of annealed copper at 20 °C", copperRhoSource)
		warmingSteps(s, c.Temperature)
		s.Formula("ρ_Cu", Copper.resistivity(c.Temperature), "Ω·mm²/m", "resistivity of the copper skin", formula)
		s.Constant("ρ_Al20", aluminiumRho20, "Ω·mm²/m", "resistivity of aluminium at 20 °C", aluminiumSource)
		s.Constant("α_Al20", aluminiumAlpha20, "1/K", "temperature coefficient of aluminium at 20 °C", aluminiumSource)
		s.Formula("ρ_Al", Aluminium.resistivity(c.Temperature), "Ω·mm²/m", "resistivity of the aluminium core", "ρ_Al20 * (1 + α_Al20*(T - T_20))")
		s.Constant("x_Cu", cladShare, "1", "share of the area that is copper", cladSource)
		formula = "1 / (x_Cu/ρ_Cu + (1 - x_Cu)/ρ_Al)"
	default:
		s.Constant("ρ_20", copperRho20, "Ω·mm²/m", "resistivity of annealed copper at 20 °C", copperRhoSource)
		warmingSteps(s, c.Temperature)
	}
	if c.Strand == Solid {
		s.Formula("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature", formula)
		return
	}
	s.Constant("k_lay", strandLay, "1", "longer path of the strands", strandLaySource)
	s.Formula("ρ", p.Rho, "Ω·mm²/m", "resistivity at the working temperature, lay included", formula+" * k_lay")
}

// warmingSteps appends the temperature and what it does to copper.
func warmingSteps(s *working.Sheet, t units.Temperature) {
	s.Given("T", t, "°C", "temperature of the metal")
	s.Constant("T_20", reference, "°C", "temperature that the tables belong to", copperAlphaSource)
	s.Constant("α_20", copperAlpha20, "1/K", "temperature coefficient of copper at 20 °C", copperAlphaSource)
}

// aluminiumSteps is warmingSteps for aluminium.
func aluminiumSteps(s *working.Sheet, t units.Temperature) {
	s.Given("T", t, "°C", "temperature of the metal")
	s.Constant("T_20", reference, "°C", "temperature that the constants belong to", aluminiumSource)
	s.Constant("α_20", aluminiumAlpha20, "1/K", "temperature coefficient of aluminium at 20 °C", aluminiumSource)
}

// iecSteps appends the look-up of the tabulated resistance.
func (p PerLength) iecSteps(s *working.Sheet) {
	column, source := "class 2", iecSource
	switch p.Conductor.Strand {
	case Solid:
		column = "class 1"
	case Flexible:
		column = "class 5"
	}
	if p.Conductor.Coated {
		source = iecTinnedSource
	}
	s.LookUp("r_20", p.At20, "mΩ/m", "greatest resistance per length at 20 °C", working.Lookup{
		Source: source,
		Key:    p.Conductor.Size.String(),
		Row:    p.Conductor.Size.String() + ", " + column,
	})
}

// handbookSteps appends the table of solid copper, warmed, with its lay.
func (p PerLength) handbookSteps(s *working.Sheet) {
	c := p.Conductor
	s.LookUp("r_20", p.At20, "mΩ/m", "resistance per length of solid copper at 20 °C", working.Lookup{Source: solidTableSource, Key: c.Size.String()})
	warmingSteps(s, c.Temperature)
	formula := "r_20/1000 * (1 + α_20*(T - T_20))"
	if c.Strand != Solid {
		s.Constant("k_lay", strandLay, "1", "longer path of the strands", strandLaySource)
		formula += " * k_lay"
	}
	s.Formula("r", p.At, "Ω/m", perLengthWhat, formula)
}

// table8Steps appends NEC Table 8 and the correction of its note.
func (p PerLength) table8Steps(s *working.Sheet) {
	c := p.Conductor
	column := c.Strand.String() + " " + c.Metal.String()
	if c.Coated {
		column = c.Strand.String() + " coated copper"
	}
	s.LookUp("r_75", p.At75, "mΩ/m", "resistance per length at 75 °C", working.Lookup{
		Source: table8Source, Key: c.Size.String(), Row: c.Size.String() + ", " + column})
	s.Given("T", c.Temperature, "°C", "temperature of the metal")
	s.Constant("T_75", tableTemperature, "°C", "temperature that the table belongs to", table8Source)
	s.Constant("α_75", c.Metal.alpha75(), "1/K", "temperature coefficient at 75 °C", table8NoteSource)
	s.Formula("r", p.At, "Ω/m", perLengthWhat, "r_75/1000 * (1 + α_75*(T - T_75))")
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
