package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the sag came about, step by step.
func (g Sag) Working() *working.Sheet {
	s := working.NewSheet("Voltage under load")
	s.Given("V_0", g.Circuit.OpenCircuit, "V", "voltage of the source at rest")
	s.Given("R_i", g.Circuit.Internal, "mΩ", "resistance before the load")
	g.steps(s)
	if g.Circuit.Draw.Power.IsSet() {
		s.Formula("P_lost", g.Lost, "W", "heat before the load", "pow(I, 2) * R_i/1000")
		return s
	}
	s.Formula("P", g.Power, "W", "power of the load", "U * I")
	s.Formula("P_lost", g.Lost, "W", "heat before the load", "pow(I, 2) * R_i/1000")
	return s
}

// nothing is the part of two numbers that nine digits of each do not bring out
// of their difference.
const nothing = 1e-6

// steps appends the steps that end in U and I, from V_0 and R_i.
func (g Sag) steps(s *working.Sheet) {
	d := g.Circuit.Draw
	if p, ok := d.Power.Get(); ok {
		s.Given("P", p, "W", "constant power of the load")
		formula := "(V_0 + sqrt(pow(V_0, 2) - 4*R_i/1000*P)) / 2"
		v := float64(g.Circuit.OpenCircuit)
		switch root := g.Circuit.root(); {
		case root == 0:
			formula = "V_0 / 2" // all that the source can give
		case root < nothing*v*v: // operands as printed may make it less than 0
			formula = "(V_0 + sqrt(max(pow(V_0, 2) - 4*R_i/1000*P, 0))) / 2"
		}
		s.Formula("U", g.Voltage, "V", "voltage at the load: the sag raises the current", formula)
		s.Formula("I", g.Current, "A", "current", "P / U")
	} else if i, ok := d.Current.Get(); ok {
		s.Given("I", i, "A", "constant current of the load")
		if g.Voltage < units.Scale(g.Circuit.OpenCircuit, nothing) {
			s.Given("U", g.Voltage, "V", "voltage at the load: the current is all that the source can give, and next to nothing is left")
		} else {
			s.Formula("U", g.Voltage, "V", "voltage at the load", "V_0 - I*R_i/1000")
		}
	} else {
		s.Given("R_load", d.Resistance.Or(0), "mΩ", "resistance of the load")
		s.Formula("I", g.Current, "A", "current", "1000*V_0 / (R_i + R_load)")
		s.Formula("U", g.Voltage, "V", "voltage at the load", "I * R_load/1000")
	}
	if cut, ok := g.Circuit.CutOff.Get(); ok {
		s.Given("U_cut", cut, "V", "voltage at which the load stops")
		s.Test("voltage against the cut-off", "U > U_cut", !g.belowCutOff())
	}
}

// Working returns how the time came about, step by step.
func (e Endurance) Working() *working.Sheet {
	a := e.Usable.Assembly
	s := working.NewSheet("Hold-up of " + a.Bank.Battery.Chemistry.String())
	a.steps(s)
	if v, ok := e.Hold.OpenCircuit.Get(); ok {
		s.Given("V_0", v, "V", "voltage of the bank at rest, until the end")
	} else {
		s.Formula("V_0", e.Sag.Circuit.OpenCircuit, "V", "voltage of the bank, until the end", "V")
	}
	e.resistanceSteps(s)
	e.Sag.steps(s)
	e.limitSteps(s)
	e.Usable.steps(s)
	s.Given("s", e.StateOfCharge, "%", "state of charge at the beginning")
	if e.share() <= 0 {
		s.Choose("how long", units.Elapsed(0).String(), "the bank begins at or below its depth", working.Source{})
		return s
	}
	s.Formula("C_hold", e.Charge, "Ah", "charge down to the depth", "C_avail * (d - (100 - s))*pct")
	if e.End != ByDepth {
		s.Choose("how long", units.Elapsed(0).String(), "stopped by the "+e.End.String(), working.Source{})
		return s
	}
	s.Formula("t", e.Time, "h", "how long", "C_hold / I")
	s.Formula("E_load", e.Energy, "Wh", "energy that the load gets", "U * I * t")
	return s
}

// resistanceSteps appends the steps that end in R_i.
func (e Endurance) resistanceSteps(s *working.Sheet) {
	e.Usable.Assembly.resistanceSteps(s)
	leads, hasLeads := e.Hold.Leads.Get()
	if hasLeads {
		s.Given("R_leads", leads, "mΩ", "resistance of links and cables, there and back")
	}
	const what = "resistance before the load"
	switch known := e.Usable.Assembly.Resistance.IsSet(); {
	case known && hasLeads:
		s.Formula("R_i", e.Sag.Circuit.Internal, "mΩ", what, "R + R_leads")
	case known:
		s.Formula("R_i", e.Sag.Circuit.Internal, "mΩ", what, "R")
	case hasLeads:
		s.Formula("R_i", e.Sag.Circuit.Internal, "mΩ", what, "R_leads")
	default:
		s.Given("R_i", e.Sag.Circuit.Internal, "mΩ", what+": not known, so no sag is in this")
	}
}

// limitSteps appends the discharge limit, if it is known.
func (e Endurance) limitSteps(s *working.Sheet) {
	one, ok := e.Usable.Assembly.Bank.Battery.DischargeLimit.Get()
	if !ok {
		return
	}
	s.Given("I_max_b", one, "A", "discharge limit of one battery")
	s.Formula("I_max", e.Limit.Or(0), "A", "discharge limit of the bank", "n_p * I_max_b")
	s.Test("current against the discharge limit", "I <= I_max", e.End != ByProtection)
}
