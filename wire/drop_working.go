package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the drop came about, step by step.
func (d Drop) Working() *working.Sheet {
	s := working.NewSheet("Voltage drop, " + d.PerLength.name())
	d.steps(s)
	return s
}

// steps appends the steps that end in ΔV and δ.
func (d Drop) steps(s *working.Sheet) {
	allowed, isLimited := d.Run.Allowed.Get()
	s.Given("I", d.Run.Current, "A", "current of the load")
	s.Given("L", d.Run.OneWay, "m", "one-way length, source to load")
	s.Given("V_source", d.Run.Source, "V", "voltage at the source end")
	if isLimited {
		s.Given("δ_allowed", allowed, "%", "drop that is allowed")
	}
	d.PerLength.steps(s)
	loopSteps(s, d.Run)
	s.Formula("R_loop", d.Resistance, "Ω", "resistance of the loop, "+d.Run.way(), "r * "+d.Run.loopFormula())
	s.Formula("ΔV", d.Voltage, "V", "voltage lost in the loop", "I * R_loop")
	s.Formula("V_load", d.AtLoad, "V", "voltage left for the load", "V_source - ΔV")
	s.Formula("δ", d.Fraction, "%", "drop as a fraction of the source voltage", "100 * ΔV / V_source")
	s.Formula("P_loop", d.Heat, "W", "heat given off along the loop", "I * ΔV")
	if isLimited {
		s.Test("drop against what is allowed", "δ <= δ_allowed", !units.Exceeds(d.Fraction, allowed))
	}
}

// loopSteps appends what is in the loop of r beside its length.
func loopSteps(s *working.Sheet, r Run) {
	if n := r.sideBySide(); n > 1 {
		s.Given("N", units.Ratio(n), "1", "conductors side by side in each direction")
	}
	if chassis, ok := r.Chassis.Get(); ok {
		s.Given("R_chassis", chassis, "Ω", "resistance of the return through the chassis")
	}
	if contacts, ok := r.Contacts.Get(); ok {
		s.Given("R_contacts", contacts, "Ω", "resistance of joints, fuses and switches")
	}
}

// way says which way the conductors of r go.
func (r Run) way() string {
	if r.Chassis.IsSet() {
		return "there by wire and back by the chassis"
	}
	return "there and back"
}

// loopFormula returns by what r, the resistance per length, is multiplied in
// the loop, and what is added.
func (r Run) loopFormula() string {
	f := "2*L"
	if r.Chassis.IsSet() {
		f = "L"
	}
	if r.sideBySide() > 1 {
		f += " / N"
	}
	return f + r.fixedFormula(" + ")
}

// fixedFormula returns the resistances that do not depend on the conductor,
// each behind sign.
func (r Run) fixedFormula(sign string) (f string) {
	if r.Chassis.IsSet() {
		f += sign + "R_chassis"
	}
	if r.Contacts.IsSet() {
		f += sign + "R_contacts"
	}
	return f
}

// dropRule says where an allowed drop comes from.
var dropRule = working.Source{
	Title: "allowed drop as given; 3 % for sensitive loads and 10 % for others is usual", Provenance: working.CommonPractice,
}

// ohmsLaw is the rule behind what cannot work at all.
var ohmsLaw = working.Source{Title: "Ohm's law", Provenance: working.Derived}

// Findings returns what needs attention, worst first: a load that gets no
// voltage, a drop above what is allowed, a drop that nobody set a limit for,
// conductors in parallel, a return through the chassis, a voltage that can kill,
// and always what is known of the heat, since ampacity and protection are not checked here.
func (d Drop) Findings() []working.Finding {
	f := judged(d.Voltage, d.AtLoad, d.Fraction, d.Run.Source, d.Run.Allowed)
	f = append(f, d.PerLength.Findings()...)
	f = append(f, d.Run.pathFindings()...)
	f = append(f, shockFindings(d.Run.Source, d.Run.Source)...)
	working.Sort(f)
	return f
}

// judged holds a drop against what is allowed.
func judged(drop, atLoad units.Voltage, fraction units.Ratio, source units.Voltage, limit units.Opt[units.Ratio]) []working.Finding {
	allowed, hasAllowed := limit.Get()
	switch {
	case units.Compare(atLoad, 0) <= 0:
		return []working.Finding{{
			Severity: working.Danger,
			Rule:     "run-cannot-carry",
			Message:  "The run would lose all the voltage there is: this current cannot flow, and a short circuit at the load may be too weak to open a fuse.",
			Numbers:  []working.Number{{Name: "drop", Value: drop}, {Name: "source", Value: source}},
			Fix:      "Use a larger size, a shorter run or a higher voltage.",
			Source:   ohmsLaw,
		}}
	case hasAllowed && units.Exceeds(fraction, allowed):
		return []working.Finding{{
			Severity: working.Caution,
			Rule:     "drop-above-allowed",
			Message:  "The drop is above what is allowed.",
			Numbers:  []working.Number{{Name: "drop", Value: fraction}, {Name: "allowed", Value: allowed}, {Name: "voltage at the load", Value: atLoad}},
			Fix:      "Use a larger size or a shorter run.",
			Source:   dropRule,
		}}
	case !hasAllowed:
		return []working.Finding{{
			Severity: working.Note,
			Rule:     "no-allowed-drop",
			Message:  "No allowed drop was given, so the drop is not judged.",
			Numbers:  []working.Number{{Name: "drop", Value: fraction}},
			Fix:      "Say what drop the load can bear.",
			Source:   dropRule,
		}}
	}
	return nil
}
