package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the loss follows from the means over the load; the
// working of a single step is that of [EnergyLostIn].
func (x Loss) Working() *working.Sheet {
	s := working.NewSheet("Energy lost in the conductors over a load, " + x.PerLength.name())
	s.Given("V_source", x.Run.Source, "V", "voltage at the source end")
	s.Given("L", x.Run.OneWay, "m", "one-way length, source to load")
	s.Given("I_mean", x.Mean, "A", "mean of the currents of the load, over all its steps")
	s.Given("I_rms", x.RMS, "A", "root of the mean of their squares, which makes the heat")
	s.Given("I_peak", x.Run.Current, "A", "current of the step with the most")
	s.Given("t", x.Time, "h", "time that the load covers")
	x.PerLength.steps(s)
	loopSteps(s, x.Run)
	s.Formula("R_loop", x.Resistance, "Ω", "resistance of the loop, "+x.Run.way(), "r * "+x.Run.loopFormula())
	s.Formula("E_lost", x.Lost, "Wh", "energy lost as heat", "pow(I_rms, 2) * R_loop * t")
	s.Formula("E_source", x.FromSource, "Wh", "energy that the source gave", "V_source * I_mean * t")
	s.Formula("E_load", x.ToLoad, "Wh", "energy left for the load", "E_source - E_lost")
	if x.FromSource > 0 {
		s.Formula("δ_E", x.Fraction, "%", "energy lost as a fraction of what the source gave", "100 * E_lost / E_source")
	}
	s.Formula("E_day", x.ADay, "Wh", "energy lost in 24 h at that rate", "pow(I_rms, 2) * R_loop * 24")
	s.Formula("δ_peak", x.PeakDrop, "%", "drop in the step with the most current", "100 * I_peak * R_loop / V_source")
	if allowed, ok := x.Run.Allowed.Get(); ok {
		s.Given("δ_allowed", allowed, "%", "drop that is allowed")
		s.Test("drop of the peak against what is allowed", "δ_peak <= δ_allowed", !units.Exceeds(x.PeakDrop, allowed))
	}
	return s
}

// Findings returns what needs attention, worst first: the drop of the peak, the
// heat at the peak, and that means over steps hide loss.
func (x Loss) Findings() []working.Finding {
	atLoad := units.Minus(x.Run.Source, x.Run.Current.Through(x.Resistance))
	f := judged(x.Run.Current.Through(x.Resistance), atLoad, x.PeakDrop, x.Run.Source, x.Run.Allowed)
	f = append(f, working.Finding{
		Severity: working.Note,
		Rule:     "loss-of-means",
		Message:  "Each value of a load is a mean over its step. A load that switches within the step loses more than its mean.",
		Numbers:  []working.Number{{Name: "mean current", Value: x.Mean}, {Name: "root mean square", Value: x.RMS}, {Name: "lost a day", Value: x.ADay}},
		Fix:      "Use steps that are short beside the switching of the load.",
		Source:   lossSource,
	})
	f = append(f, x.PerLength.Findings()...)
	f = append(f, x.Run.pathFindings()...)
	f = append(f, shockFindings(x.Run.Source, x.Run.Source)...)
	working.Sort(f)
	return f
}

// Working returns how the loss of the step came about.
func (x LossStep) Working() *working.Sheet {
	s := working.NewSheet("Energy lost in step " + units.Significant(float64(x.Index), 9) + " of a load, " + x.PerLength.name())
	s.Given("V_source", x.Run.Source, "V", "voltage at the source end")
	s.Given("L", x.Run.OneWay, "m", "one-way length, source to load")
	s.Given("t", x.Time, "h", "length of the step")
	x.PerLength.steps(s)
	loopSteps(s, x.Run)
	s.Formula("R_loop", x.Resistance, "Ω", "resistance of the loop, "+x.Run.way(), "r * "+x.Run.loopFormula())
	if power, ok := x.Power.Get(); ok {
		s.Given("P", power, "W", "power of the load")
		s.Formula("I", x.Run.Current, "A", "current of the load at the voltage that is left for it",
			"P / (V_source/2 * (1 + sqrt(1 - 4*P*R_loop/pow(V_source, 2))))")
	} else {
		s.Given("I", x.Run.Current, "A", "current of the load")
	}
	s.Formula("ΔV", x.Drop, "V", "voltage lost in the loop", "I * R_loop")
	s.Formula("E_lost", x.Lost, "Wh", "energy lost as heat in the step", "I * ΔV * t")
	return s
}

// Findings returns what needs attention in the conductor and its path.
func (x LossStep) Findings() []working.Finding {
	f := append(x.PerLength.Findings(), x.Run.pathFindings()...)
	working.Sort(f)
	return f
}
