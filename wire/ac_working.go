package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how both drops came about, step by step.
func (d AlternatingDrop) Working() *working.Sheet {
	r := d.Run
	s := working.NewSheet("Voltage drop in alternating current, " + d.Impedance.name())
	allowed, isLimited := r.Allowed.Get()
	pf, _ := r.PowerFactor.Get()
	s.Given("I", r.Current, "A", "current of the load")
	s.Given("L", r.OneWay, "m", "one-way length, source to load")
	s.Given("V_source", r.Source, "V", "voltage at the source end")
	s.Given("pf", pf, "1", "power factor of the load")
	if isLimited {
		s.Given("δ_allowed", allowed, "%", "drop that is allowed")
	}
	d.Impedance.steps(s, "")
	share := ""
	if r.Parallel > 1 {
		s.Given("N", units.Ratio(r.Parallel), "1", "conductors side by side in each direction")
		share = " / N"
	}
	s.Formula("R_loop", d.Resistance, "Ω", "resistance of the loop, there and back", "r * 2*L"+share)
	s.Formula("X_loop", d.Reactance, "Ω", "reactance of the loop, there and back", "x * 2*L"+share)
	if r.Leading {
		s.Formula("s", d.SinPhi, "1", "sine of the angle; below 0 for a current that leads", "-sin(acos(pf))")
	} else {
		s.Formula("s", d.SinPhi, "1", "sine of the angle by which the current lags", "sin(acos(pf))")
	}
	s.Formula("Z_e", d.Effective, "Ω", "effective impedance of the loop", "R_loop*pf + X_loop*s")
	s.Formula("a", d.InPhase, "V", "drop along the voltage of the load", "I * Z_e")
	s.Formula("b", d.Quadrature, "V", "drop across it", "I * (X_loop*pf - R_loop*s)")
	s.Formula("ΔV_phasor", d.Phasor, "V", "length of both together, which no meter at the ends shows", "sqrt(pow(a, 2) + pow(b, 2))")
	s.Formula("ΔV_approximate", d.Approximate, "V", "approximate drop", "a")
	s.Formula("ΔV_exact", d.Exact, "V", "exact drop, for a source of fixed voltage",
		"a + pow(b, 2) / (V_source + sqrt(pow(V_source, 2) - pow(b, 2)))")
	chosen := "ΔV_" + r.Method.String()
	s.Choose("drop", r.Method.String(), "as asked for", working.Source{})
	s.Formula("ΔV", d.Voltage, "V", "drop, "+r.Method.String(), chosen)
	s.Formula("V_load", d.AtLoad, "V", "voltage left for the load", "V_source - ΔV")
	s.Formula("δ", d.Fraction, "%", "drop as a fraction of the source voltage", "100 * ΔV / V_source")
	s.Formula("P_loop", d.Heat, "W", "heat given off along the loop", "pow(I, 2) * R_loop")
	if isLimited {
		s.Test("drop against what is allowed", "δ <= δ_allowed", !units.Exceeds(d.Fraction, allowed))
	}
	return s
}

// Findings returns what needs attention, worst first: what [Drop.Findings] does,
// and where the approximate drop is more than one part in a hundred off.
func (d AlternatingDrop) Findings() []working.Finding {
	r := Run{Current: d.Run.Current, Source: d.Run.Source, Conductor: d.Run.Line.Conductor, Parallel: d.Run.Parallel}
	f := judged(d.Voltage, d.AtLoad, d.Fraction, r.Source, d.Run.Allowed)
	if d.Run.Method == ACApproximate && units.Exceeds(units.Minus(d.Exact, d.Approximate), units.Scale(d.Exact, roughly)) {
		f = append(f, working.Finding{
			Severity: working.Note,
			Rule:     "approximation-low",
			Message:  "The effective impedance leaves out the part of the drop that turns the voltage, and that part is not small here.",
			Numbers:  []working.Number{{Name: "approximate drop", Value: d.Approximate}, {Name: "exact drop", Value: d.Exact}},
			Fix:      "Use the exact drop.",
			Source:   phasorRule,
		})
	}
	f = append(f, d.Impedance.Findings()...)
	f = append(f, r.pathFindings()...)
	f = append(f, shockFindings(r.Source, r.Source)...)
	working.Sort(f)
	return f
}

// roughly is how far an approximation may be off without a word.
const roughly units.Ratio = 0.01

// phasorRule is the rule behind what is exact.
var phasorRule = working.Source{Title: "addition of phasors", Provenance: working.Derived}

// shockAbove is the voltage, alternating or direct, above which touching is
// taken to be able to kill.
const shockAbove = 50 * units.Volt

// shockFindings says what a source does to who touches it, if the highest
// voltage between its conductors is above 50 V.
func shockFindings(source, highest units.Voltage) []working.Finding {
	if !units.Exceeds(highest, shockAbove) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution,
		Rule:     "lethal-voltage",
		Message:  "This is a voltage that can kill.",
		Numbers:  []working.Number{{Name: "source", Value: source}},
		Fix:      "Leave work on it to a licensed electrician; switch off, lock and measure before touching.",
		Source:   working.Source{Title: "alternating or direct voltage above 50 V", Provenance: working.CommonPractice},
	}}
}
