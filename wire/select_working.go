package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the size was found and what its drop is.
func (s Selection) Working() *working.Sheet {
	w := working.NewSheet("Smallest size for an allowed drop")
	w.Given("L", s.Run.OneWay, "m", "one-way length, source to load")
	limitSteps(w, s.Run, s.Voltage)
	loopSteps(w, s.Run)
	w.Formula("r_max", s.MaxPerLength, "Ω/m", "greatest resistance of one conductor per length", s.Run.maxFormula())
	chosen := s.Run.Conductor.Size.String()
	s.Drop.PerLength.steps(w)
	if s.MinArea > 0 {
		w.Formula("A_min", s.MinArea, "mm²", "least metal area", "ρ / r_max")
	}
	w.Test(chosen+" against the greatest resistance", "r <= r_max", !units.Exceeds(s.Drop.PerLength.At, s.MaxPerLength))
	if s.Below.At > 0 {
		w.Given("r_below", s.Below.At, "Ω/m", "resistance of "+s.Below.Conductor.Size.String()+", the next smaller on the list")
		w.Test(s.Below.Conductor.Size.String()+" against it", "r_below <= r_max", !units.Exceeds(s.Below.At, s.MaxPerLength))
		w.Choose("size", chosen, "smallest on the list with r at most r_max", working.Source{})
	} else {
		w.Choose("size", chosen, "smallest on the list, and enough", working.Source{})
	}
	w.Formula("ΔV", s.Drop.Voltage, "V", "drop with "+chosen, s.Run.dropFormula())
	w.Formula("δ", s.Drop.Fraction, "%", "drop as a fraction of the source voltage", "100 * ΔV / V_source")
	return w
}

// Findings returns the findings of the drop with the size selected.
func (s Selection) Findings() []working.Finding { return s.Drop.Findings() }

// Working returns how the length came about, step by step.
func (x Reach) Working() *working.Sheet {
	s := working.NewSheet("Longest run for an allowed drop, " + x.PerLength.name())
	limitSteps(s, x.Run, x.Voltage)
	x.PerLength.steps(s)
	loopSteps(s, x.Run)
	s.Formula("L_loop", x.Loop, "m", "conductor "+x.Run.way(), x.Run.reachFormula())
	if x.Run.Chassis.IsSet() {
		s.Formula("L", x.OneWay, "m", "longest one-way length, source to load", "L_loop")
	} else {
		s.Formula("L", x.OneWay, "m", "longest one-way length, source to load", "L_loop / 2")
	}
	return s
}

// isPlain reports whether the loop of r is two conductors and nothing else.
func (r Run) isPlain() bool {
	return r.sideBySide() == 1 && !r.Chassis.IsSet() && !r.Contacts.IsSet()
}

// maxFormula returns the formula of the greatest resistance per length.
func (r Run) maxFormula() string {
	if r.isPlain() {
		return "ΔV_max / (I * 2*L)"
	}
	f := "(ΔV_max/I" + r.fixedFormula(" - ") + ")"
	if r.sideBySide() > 1 {
		f += " * N"
	}
	if r.Chassis.IsSet() {
		return f + " / L"
	}
	return f + " / (2*L)"
}

// dropFormula returns the formula of the drop from the resistance per length.
func (r Run) dropFormula() string {
	if r.isPlain() {
		return "I * r * 2*L"
	}
	return "I * (r * " + r.loopFormula() + ")"
}

// reachFormula returns the formula of the conductor that a drop allows.
func (r Run) reachFormula() string {
	if r.isPlain() {
		return "ΔV_max / (I * r)"
	}
	f := "(ΔV_max/I" + r.fixedFormula(" - ") + ")"
	if r.sideBySide() > 1 {
		f += " * N"
	}
	return f + " / r"
}

// Findings returns what is known of the heat, since ampacity is not checked,
// and what the conductor's resistance needs said, worst first.
func (x Reach) Findings() []working.Finding {
	f := append(x.PerLength.Findings(), x.Run.pathFindings()...)
	f = append(f, shockFindings(x.Run.Source, x.Run.Source)...)
	working.Sort(f)
	return f
}

// limitSteps appends the steps that end in the allowed drop in volts.
func limitSteps(s *working.Sheet, r Run, limit units.Voltage) {
	allowed, _ := r.Allowed.Get()
	s.Given("V_source", r.Source, "V", "voltage at the source end")
	s.Given("δ_allowed", allowed, "%", "drop that is allowed")
	s.Given("I", r.Current, "A", "current of the load")
	s.Formula("ΔV_max", limit, "V", "drop that is allowed", "V_source * δ_allowed/100")
}
