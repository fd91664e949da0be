package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	churchillChu = working.Source{Title: "Churchill S. W. and Chu H. H. S., Correlating equations for laminar and turbulent free convection from a horizontal cylinder",
		Body: "International Journal of Heat and Mass Transfer", Edition: "1975", Place: "18, 1049-1053", Provenance: working.Memory}
	standardAtmosphere = working.Source{Title: "U.S. Standard Atmosphere", Edition: "1976",
		Place: "equations for viscosity and thermal conductivity", Provenance: working.Memory}
	airBook       = working.Source{Title: "dry air at about 300 K", Place: "heat tables of textbooks", Provenance: working.Memory}
	plasticBook   = working.Source{Body: "IEC", Title: "60287-2-1, Thermal resistance of cables", Place: "PVC, 5 K·m/W", Provenance: working.Memory}
	radiationLaw  = working.Source{Body: "BIPM", Title: "SI brochure", Edition: "2019", Place: "Stefan-Boltzmann constant, from exact constants", Provenance: working.Memory}
	gravityByRule = working.Source{Body: "CGPM", Title: "standard gravity", Edition: "1901", Provenance: working.Definition}
)

// Working returns how the current came about, step by step, from the balance
// that was found.
func (b HeatBalance) Working() *working.Sheet {
	x := b.Cable
	s := working.NewSheet("Heat balance of " + x.Size.String() + " copper in still air")
	s.Given("d", b.Strands, "mm", "diameter over the strands")
	s.Given("t", x.Thickness.Or(0), "mm", "thickness of the insulation")
	s.Formula("D", b.Outer, "mm", "diameter over the insulation", "d + 2*t")
	s.Given("T_c", x.Metal, "°C", "temperature of the copper")
	s.Given("T_a", x.Ambient, "°C", "temperature of the air")
	s.Choose("surface temperature", "found by halving, "+units.Significant(float64(b.Halvings), 3)+" times",
		"what passes the insulation is what leaves the surface", working.Source{})
	s.Given("T_s", b.Surface, "°C", "temperature of the surface")
	s.Formula("DeltaT", b.Surface.Sub(x.Ambient), "K", "surface above the air", "T_s - T_a")
	s.Formula("T_f", b.Film, "°C", "temperature of the film of air", "(T_s + T_a) / 2")
	b.airSteps(s)
	b.lossSteps(s)
	s.Given("r", b.PerLength, "mΩ/m", "resistance of the copper at its temperature")
	s.Formula("I", b.Current, "A", "current whose heat that is", "sqrt(1000 * P / r)")
	return s
}

// airSteps appends the properties of air and what they make of the surface.
func (b HeatBalance) airSteps(s *working.Sheet) {
	s.Constant("c_p", units.Ratio(airHeat), "1", "specific heat of air, in J/(kg·K)", airBook)
	s.Constant("R_air", units.Ratio(airGas), "1", "gas constant of air, in J/(kg·K)", airBook)
	s.Constant("g", units.Ratio(standardGravity), "1", "gravity, in m/s²", gravityByRule)
	s.Formula("rho", b.Air.Density, "1", "density of the air, in kg/m³", "101325 / (R_air * (T_f + 273.15))")
	s.Choose("viscosity and conductivity of air", "by temperature", "formulas of the standard atmosphere", standardAtmosphere)
	s.Formula("mu", b.Air.Viscosity, "1", "viscosity of the air, in Pa·s",
		"0.000001458 * pow(T_f + 273.15, 1.5) / (T_f + 273.15 + 110.4)")
	s.Formula("k", b.Air.Conductivity, "1", "conductivity of the air, in W/(m·K)",
		"0.00264638 * pow(T_f + 273.15, 1.5) / (T_f + 273.15 + 245.4 * pow(10, -12 / (T_f + 273.15)))")
	s.Formula("Pr", b.Air.Prandtl, "1", "Prandtl number", "mu * c_p / k")
	s.Formula("Ra", b.Rayleigh, "1", "Rayleigh number",
		"g / (T_f + 273.15) * DeltaT * pow(D / 1000, 3) * pow(rho, 2) * c_p / (mu * k)")
	s.Choose("convection", "level cylinder", "correlation of Churchill and Chu", churchillChu)
	s.Formula("Nu", b.Nusselt, "1", "Nusselt number",
		"pow(0.60 + 0.387 * pow(Ra, 1/6) / pow(1 + pow(0.559 / Pr, 9/16), 8/27), 2)")
}

// lossSteps appends what leaves the surface and what reaches it.
func (b HeatBalance) lossSteps(s *working.Sheet) {
	s.Formula("P_convection", b.Convection, "W", "carried off by the air, of one metre", "pi * Nu * k * DeltaT")
	s.Given("epsilon", b.Cable.Emissivity.Or(0), "1", "emissivity of the surface")
	s.Constant("sigma", units.Ratio(stefanBoltzmann*1e8), "1", "Stefan-Boltzmann constant, in 10⁻⁸ W/(m²·K⁴)", radiationLaw)
	s.Formula("P_radiation", b.Radiation, "W", "radiated, of one metre",
		"epsilon * sigma * pi * D / 1000 * (pow((T_s + 273.15) / 100, 4) - pow((T_a + 273.15) / 100, 4))")
	s.Formula("P", b.Loss, "W", "leaves the surface, of one metre", "P_convection + P_radiation")
	s.Constant("rho_T", units.Ratio(plasticResistance), "1", "thermal resistivity of the insulation, in K·m/W", plasticBook)
	s.Formula("P_through", b.Through, "W", "passes the insulation, of one metre", "2 * pi * (T_c - T_s) / (rho_T * ln(D / d))")
}

// Findings returns what the balance is not.
func (b HeatBalance) Findings() []working.Finding {
	return []working.Finding{{
		Severity: working.Note, Rule: "free-air-physics", Source: churchillChu,
		Numbers: []working.Number{{Name: "current", Value: b.Current}, {Name: "copper", Value: b.Cable.Metal}, {Name: "surface", Value: b.Surface}},
		Message: "This is physics for one cable in still, open air, with numbers from memory in it; it is no rule. In a wall, a bundle or the sun the same current is too much.",
		Fix:     "Take the ampacity from the table of the rule set that applies.",
	}}
}
