package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns the last step of the iteration and the drop that it ends in;
// the working of any step is that of [WarmedDrop.Step].
func (d WarmedDrop) Working() *working.Sheet {
	s := working.NewSheet("Voltage drop with the conductor warmed by its load, " + d.Drop.PerLength.name())
	last, _ := d.Step(d.Steps)
	last.steps(s)
	s.Choose("steps of the iteration", units.Significant(float64(d.Steps), 6), "the last one no longer moves the temperature", riseSource)
	s.Formula("T_end", d.Temperature, "°C", "temperature of the conductor", "T_to")
	s.Formula("R_loop", d.Drop.Resistance, "Ω", "resistance of the loop, "+d.Run.Run.way(), "r_from * "+d.Run.Run.loopFormula())
	s.Formula("ΔV", d.Drop.Voltage, "V", "voltage lost in the loop", "I * R_loop")
	s.Formula("δ", d.Drop.Fraction, "%", "drop as a fraction of the source voltage", "100 * ΔV / V_source")
	s.Formula("T_square", d.BySquare, "°C", "the rule of thumb, for comparison", "T_a + (T_r - T_b) * pow(λ, 2)")
	s.Given("ΔV_a", d.AtAmbient.Voltage, "V", "drop before the conductor has warmed, which has a working of its own")
	s.Formula("k", units.RatioOf(d.Drop.Voltage, d.AtAmbient.Voltage), "1", "warm drop over cold drop", "ΔV / ΔV_a")
	return s
}

// Findings returns what needs attention, worst first: a conductor above its
// rating, and what [Drop.Findings] says of the drop.
func (d WarmedDrop) Findings() []working.Finding {
	var f []working.Finding
	if !d.Run.Rated.IsSet() || d.Temperature.Compare(d.Run.Rated) > 0 {
		f = append(f, working.Finding{
			Severity: working.Danger,
			Rule:     "conductor-above-rated",
			Message:  "The current warms the conductor beyond what its insulation is rated for: it ages fast, and can fail and burn.",
			Numbers:  []working.Number{{Name: "conductor", Value: d.Temperature}, {Name: "rated", Value: d.Run.Rated}, {Name: "air", Value: d.Run.Ambient}},
			Fix:      "Use a larger size, cooler air or less current.",
			Source:   riseSource,
		})
	}
	f = append(f, d.Drop.Findings()...)
	working.Sort(f)
	return f
}

// Working returns how the step came about.
func (w WarmStep) Working() *working.Sheet {
	s := working.NewSheet("A step toward the temperature of the conductor, " + w.PerLength.name())
	w.steps(s)
	return s
}

// Findings returns what needs attention in the conductor of the step.
func (w WarmStep) Findings() []working.Finding { return w.PerLength.Findings() }

// steps appends the step.
func (w WarmStep) steps(s *working.Sheet) {
	r := w.Run.Run
	s.Given("V_source", r.Source, "V", "voltage at the source end")
	s.Given("L", r.OneWay, "m", "one-way length, source to load")
	s.Given("I_z", w.Run.Ampacity, "A", "ampacity of one conductor")
	s.Given("T_b", w.Run.Base, "°C", "air that it belongs to")
	s.Given("T_a", w.Run.Ambient, "°C", "air round the conductor")
	s.Given("T_from", w.From, "°C", "temperature that the step begins with")
	w.Rated.steps(s)
	s.Formula("T_r", w.Run.Rated, "°C", "conductor temperature that the ampacity belongs to", "T")
	s.Formula("r_r", w.Rated.At, "Ω/m", perLengthWhat+" at T_r", "r")
	w.fromSteps(s)
	loopSteps(s, r)
	if power, ok := w.Run.Power.Get(); ok {
		s.Given("P", power, "W", "power of the load, at any voltage")
		s.Formula("R_from", r.loop(w.PerLength.At, r.wired(r.OneWay)), "Ω", "resistance of the loop, "+r.way(), "r_from * "+r.loopFormula())
		s.Formula("V_load", w.AtLoad, "V", "voltage left for the load", "V_source/2 * (1 + sqrt(1 - 4*P*R_from/pow(V_source, 2)))")
		s.Formula("I", w.Current, "A", "current of the load", "P / V_load")
		s.Choose("root", "the higher voltage", "a load of constant power runs there; the lower one is not stable", ohmOfPower)
	} else {
		s.Given("I", w.Current, "A", "current of the load")
	}
	each := "I"
	if r.sideBySide() > 1 {
		each = "I/N"
	}
	s.Formula("λ", w.Load, "1", "current of one conductor over its ampacity", each+" / I_z")
	s.Formula("T_to", w.To, "°C", "temperature that the step ends with", "T_a + (T_r - T_b) * pow(λ, 2) * r_from/r_r")
}

// fromSteps appends the resistance at the temperature that the step begins
// with, from that at T_r.
func (w WarmStep) fromSteps(s *working.Sheet) {
	const what = perLengthWhat + " at the temperature that the step begins with"
	c := w.Rated.Conductor
	switch {
	case w.Rated.Basis == FromNECTable8:
		s.Formula("r_from", w.PerLength.At, "Ω/m", what, "r_r * (1 + α_75*(T_from - T_75)) / (1 + α_75*(T_r - T_75))")
	case c.Metal == CopperClad:
		s.Formula("ρ_Cu2", Copper.resistivity(w.From), "Ω·mm²/m", "resistivity of the copper skin there", "ρ_20 * (1 + α_20*(T_from - T_20))")
		s.Formula("ρ_Al2", Aluminium.resistivity(w.From), "Ω·mm²/m", "resistivity of the aluminium core there",
			"ρ_Al20 * (1 + α_Al20*(T_from - T_20))")
		s.Formula("r_from", w.PerLength.At, "Ω/m", what, "r_r * (x_Cu/ρ_Cu + (1 - x_Cu)/ρ_Al) / (x_Cu/ρ_Cu2 + (1 - x_Cu)/ρ_Al2)")
	default:
		s.Formula("r_from", w.PerLength.At, "Ω/m", what, "r_r * (1 + α_20*(T_from - T_20)) / (1 + α_20*(T_r - T_20))")
	}
}
