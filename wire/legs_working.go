package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the voltages of both legs came about, step by step.
func (v LegVoltages) Working() *working.Sheet {
	r, p := v.Run, v.phasors()
	s := working.NewSheet("Two legs and their neutral, " + r.Supply.String() + ", " + v.Line.name())
	s.Given("E", r.Source, "V", "voltage of a leg at the source")
	s.Given("L", r.OneWay, "m", "one-way length, source to load")
	s.Given("I_A", r.Currents.A, "A", "current of leg A")
	s.Given("pf_A", r.PowerFactors.A, "1", "power factor of leg A, by the voltage of the source")
	s.Given("I_B", r.Currents.B, "A", "current of leg B")
	s.Given("pf_B", r.PowerFactors.B, "1", "power factor of leg B, by the voltage of the source")
	s.Constant("c", units.Ratio(p.cos), "1", "cosine of the angle of leg B, "+r.Supply.String(), legSource)
	s.Constant("q", units.Ratio(p.sin), "1", "sine of that angle", legSource)
	v.Line.steps(s, "")
	if v.Neutral == v.Line {
		s.Formula("r_neutral", v.Neutral.R, "Ω/m", "resistance of the neutral per length, like a hot", "r")
		s.Formula("x_neutral", v.Neutral.X, "Ω/m", "reactance of the neutral per length, like a hot", "x")
	} else {
		v.Neutral.steps(s, "_neutral")
	}
	s.Formula("R_L", v.LineR, "Ω", "resistance of a hot, one way", "r * L")
	s.Formula("X_L", v.LineX, "Ω", "reactance of a hot, one way", "x * L")
	s.Formula("R_N", v.NeutralR, "Ω", "resistance of the neutral, one way", "r_neutral * L")
	s.Formula("X_N", v.NeutralX, "Ω", "reactance of the neutral, one way", "x_neutral * L")
	amps := func(name string, x float64, what, formula string) {
		s.Formula(name, units.Current(x), "A", what, formula)
	}
	amps("a_x", p.ax, "current of leg A along the voltage of leg A", "I_A * pf_A")
	amps("a_y", p.ay, "current of leg A across it", "-I_A * sin(acos(pf_A))")
	amps("b_x", p.bx, "current of leg B along the voltage of leg A", "I_B * (c*pf_B + q*sin(acos(pf_B)))")
	amps("b_y", p.by, "current of leg B across it", "I_B * (q*pf_B - c*sin(acos(pf_B)))")
	amps("n_x", p.nx, "current of the neutral, along", "a_x + b_x")
	amps("n_y", p.ny, "current of the neutral, across", "a_y + b_y")
	s.Formula("I_N", v.InNeutral, "A", "current of the neutral", "sqrt(pow(n_x, 2) + pow(n_y, 2))")
	v.voltageSteps(s, p)
	return s
}

// legSource is where the angles of the legs are from.
var legSource = working.Source{Title: "angle between the legs of the supply: half a turn, a third of a turn, or none",
	Provenance: working.Definition}

// voltageSteps appends the voltages at the load.
func (v LegVoltages) voltageSteps(s *working.Sheet, p legPhasors) {
	hotA, hotB := [2]string{"a_x", "a_y"}, [2]string{"b_x", "b_y"}
	if v.Run.Supply == OneHot {
		hotA, hotB = [2]string{"n_x", "n_y"}, [2]string{"n_x", "n_y"}
	}
	volts := func(name string, x units.Voltage, what, formula string) { s.Formula(name, x, "V", what, formula) }
	along := func(from string, hot [2]string) string {
		return from + " - (R_L*" + hot[0] + " - X_L*" + hot[1] + ") - (R_N*n_x - X_N*n_y)"
	}
	across := func(from string, hot [2]string) string {
		return from + " - (R_L*" + hot[1] + " + X_L*" + hot[0] + ") - (R_N*n_y + X_N*n_x)"
	}
	volts("V_Ax", units.Voltage(p.vax), "voltage of leg A at the load, along", along("E", hotA))
	volts("V_Ay", units.Voltage(p.vay), "voltage of leg A at the load, across", across("0", hotA))
	volts("V_A", v.AtLoad.A, "voltage of leg A at the load", "sqrt(pow(V_Ax, 2) + pow(V_Ay, 2))")
	volts("ΔV_A", v.Drop.A, "drop of leg A; below 0 it rises", "E - V_A")
	volts("V_Bx", units.Voltage(p.vbx), "voltage of leg B at the load, along", along("E*c", hotB))
	volts("V_By", units.Voltage(p.vby), "voltage of leg B at the load, across", across("E*q", hotB))
	volts("V_B", v.AtLoad.B, "voltage of leg B at the load", "sqrt(pow(V_Bx, 2) + pow(V_By, 2))")
	volts("ΔV_B", v.Drop.B, "drop of leg B; below 0 it rises", "E - V_B")
	s.Formula("δ_A", v.Fraction.A, "%", "drop of leg A as a fraction of the source voltage", "100 * ΔV_A / E")
	s.Formula("δ_B", v.Fraction.B, "%", "drop of leg B as a fraction of the source voltage", "100 * ΔV_B / E")
	volts("V_AB", v.LineLine, "voltage from leg to leg at the load", "sqrt(pow(V_Ax - V_Bx, 2) + pow(V_Ay - V_By, 2))")
	heat := "R_L*(pow(I_A, 2) + pow(I_B, 2)) + R_N*pow(I_N, 2)"
	if v.Run.Supply == OneHot {
		heat = "(R_L + R_N) * pow(I_N, 2)"
	}
	s.Formula("P", v.Heat, "W", "heat given off along all conductors", heat)
	if allowed, ok := v.Run.Allowed.Get(); ok {
		s.Given("δ_allowed", allowed, "%", "drop that is allowed")
		s.Test("leg A against what is allowed", "δ_A <= δ_allowed", !units.Exceeds(v.Fraction.A, allowed))
		s.Test("leg B against what is allowed", "δ_B <= δ_allowed", !units.Exceeds(v.Fraction.B, allowed))
	}
}

// Findings returns what needs attention, worst first: the leg that drops more,
// a leg that rises or is above the range of its supply, what the neutral carries, and the heat of hots and neutral.
func (v LegVoltages) Findings() []working.Finding {
	r := v.Run
	worst, left := v.Drop.A, v.AtLoad.A
	if units.Exceeds(v.Drop.B, v.Drop.A) {
		worst, left = v.Drop.B, v.AtLoad.B
	}
	f := judged(worst, left, v.Fraction.Larger(), r.Source, r.Allowed)
	f = append(f, v.angleFindings()...)
	f = append(f, v.highFindings()...)
	f = append(f, v.neutralFinding(), r.Line.Conductor.heat(v.InLine))
	if n := r.Neutral.Conductor.heat(v.InNeutral); n.Severity > working.Note {
		n.Rule = "neutral-" + n.Rule
		f = append(f, n)
	}
	f = append(f, v.Line.Findings()...)
	f = append(f, shockFindings(r.Source, max(r.Source, v.AtLoad.Larger(), v.LineLine))...)
	working.Sort(f)
	return f
}

// neutralFinding says what the neutral carries, and what if it opens.
func (v LegVoltages) neutralFinding() working.Finding {
	f := working.Finding{
		Severity: working.Note,
		Rule:     "shared-neutral",
		Message:  "The legs share the neutral. Where it opens, the lighter leg goes toward 240 V and no breaker trips.",
		Numbers:  []working.Number{{Name: "leg A", Value: v.Run.Currents.A}, {Name: "leg B", Value: v.Run.Currents.B}, {Name: "neutral", Value: v.InNeutral}},
		Fix:      "Keep the neutral's joints where they can be seen, and never break it before the hots.",
		Source:   phasorRule,
	}
	switch v.Run.Supply {
	case NetworkLegs:
		f.Severity, f.Rule = working.Caution, "neutral-carries-a-leg"
		f.Message = "Two legs of 120/208 V are a third of a turn apart. The neutral carries as much as a leg and counts as a conductor " +
			"that carries current; from leg to leg there are 208 V, not 240 V."
		f.Fix = "Size the neutral as a hot, and look up whether the 240 V loads run on 208 V."
	case OneHot:
		f.Severity, f.Rule = working.Caution, "legs-add"
		f.Message = "Both legs are on one hot: hot and neutral carry the sum of both, and there are no 240 V."
		f.Fix = "Keep the sum within the receptacle and the cord that feed the adapter."
	}
	return f
}

const (
	// usualLeg is the nominal voltage that a source from 100 V to 140 V is taken
	// for. Any other source is its own nominal voltage.
	usualLeg = 120 * units.Volt
	// farAbove is how far above nominal what runs on a leg is commonly made to
	// stand: common practice, 10 %.
	farAbove units.Ratio = 0.1
)

var farAboveRule = working.Source{Title: "appliances are made for 10 % above the nominal voltage", Provenance: working.CommonPractice}

// nominal returns the voltage that the range of the supply is counted from.
func (r LegRun) nominal() units.Voltage {
	if r.Source >= 100*units.Volt && r.Source <= 140*units.Volt {
		return usualLeg
	}
	return r.Source
}

// highFindings returns, of the higher leg, that it is above what its loads
// stand, or at least above the source.
func (v LegVoltages) highFindings() []working.Finding {
	nominal, high := v.Run.nominal(), v.AtLoad.Larger()
	top, far := units.Scale(nominal, HighLeg), units.Scale(nominal, 1+farAbove)
	f := working.Finding{Source: rangeSource,
		Numbers: []working.Number{{Name: "leg A", Value: v.AtLoad.A}, {Name: "leg B", Value: v.AtLoad.B}, {Name: "source", Value: v.Run.Source}},
		Fix: "Connect nothing to that leg until both have been measured; use a larger or shorter neutral, bring the legs nearer to each other, " +
			"or have the supply put right by a licensed electrician.",
	}
	switch {
	case units.Exceeds(high, far):
		f.Severity, f.Rule, f.Source = working.Danger, "leg-far-above-range", farAboveRule
		f.Message = "A leg is far above the range of its supply: what runs on it overheats or fails, and no breaker trips."
		f.Numbers = append(f.Numbers, working.Number{Name: "highest that loads commonly stand", Value: far})
	case units.Exceeds(high, top):
		f.Severity, f.Rule = working.Caution, "leg-above-range"
		f.Message = "A leg is above the usual range of its supply, and what runs on it wears out early."
		f.Numbers = append(f.Numbers, working.Number{Name: "top of the range", Value: top})
	case units.Exceeds(0, min(v.Drop.A, v.Drop.B)):
		f.Severity, f.Rule, f.Source = working.Note, "leg-rises", phasorRule
		f.Message = "The lighter leg is above the source, since the neutral's drop adds to it. That much is usual with unbalanced legs; " +
			"more of it than the conductors explain means that the neutral is failing."
		f.Fix = "Move loads to the lighter leg; compare with a measurement."
	default:
		return nil
	}
	return []working.Finding{f}
}

// angleFindings says, of a load that lags, where its angle is counted from.
func (v LegVoltages) angleFindings() []working.Finding {
	pf := v.Run.PowerFactors
	if pf.A == 1 && pf.B == 1 {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note,
		Rule:     "power-factor-at-source",
		Message: "The power factors are counted from the voltage of the source. That of a load is counted at the load, " +
			"where a long run with much drop makes the drop larger than this.",
		Numbers: []working.Number{{Name: "power factor of leg A", Value: pf.A}, {Name: "power factor of leg B", Value: pf.B}},
		Fix:     "Where the drop is near what is allowed, work out each leg by itself with its power factor at the load.",
		Source:  phasorRule,
	}}
}
