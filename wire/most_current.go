package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A MostCurrent is the result of [LargestCurrent].
type MostCurrent struct {
	Run        Run              // as used, its Current the answer
	PerLength  PerLength        // resistance of one conductor
	Voltage    units.Voltage    // the drop that is allowed
	Resistance units.Resistance // of the loop
	Current    units.Current    // the largest that keeps the drop
	Heat       units.Power      // given off along the loop by that current
}

// LargestCurrent returns the current that just keeps the drop of r within
// r.Allowed, which must be given:
//
//	I = Allowed · Source / R_loop
//
// It is a limit for drop alone: on a short run it is far above what the
// conductor bears, and the findings say so. r.Current is not looked at. Errors
// are as for [VoltageDrop].
func LargestCurrent(r Run) (MostCurrent, error) {
	const op = "wire.LargestCurrent"
	if err := r.checkCircuit(op); err != nil {
		return MostCurrent{}, err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return MostCurrent{}, err
	}
	p, err := resistance(op, r.Conductor)
	if err != nil {
		return MostCurrent{}, err
	}
	r.Conductor, r.Parallel = p.Conductor, r.sideBySide()
	m := MostCurrent{PerLength: p, Resistance: r.loop(p.At, r.wired(r.OneWay))}
	if m.Voltage, err = r.allowedVoltage(op); err != nil {
		return MostCurrent{}, err
	}
	m.Current = m.Voltage.Across(m.Resistance)
	m.Heat = m.Current.At(m.Voltage)
	r.Current = m.Current
	m.Run = r
	if err := units.Above[units.Power](0).Check(op, "Heat", m.Heat); err != nil {
		return MostCurrent{}, err
	}
	return m, nil
}

// Working returns how the current came about, step by step.
func (m MostCurrent) Working() *working.Sheet {
	s := working.NewSheet("Largest current for an allowed drop, " + m.PerLength.name())
	allowed, _ := m.Run.Allowed.Get()
	s.Given("V_source", m.Run.Source, "V", "voltage at the source end")
	s.Given("δ_allowed", allowed, "%", "drop that is allowed")
	s.Given("L", m.Run.OneWay, "m", "one-way length, source to load")
	s.Formula("ΔV_max", m.Voltage, "V", "drop that is allowed", "V_source * δ_allowed/100")
	m.PerLength.steps(s)
	loopSteps(s, m.Run)
	s.Formula("R_loop", m.Resistance, "Ω", "resistance of the loop, "+m.Run.way(), "r * "+m.Run.loopFormula())
	s.Formula("I", m.Current, "A", "largest current for this drop", "ΔV_max / R_loop")
	s.Formula("P_loop", m.Heat, "W", "heat given off along the loop", "I * ΔV_max")
	return s
}

// Findings returns what needs attention, worst first: whether a conductor
// bears this current at all, since drop does not ask, and what its resistance
// and its path need said.
func (m MostCurrent) Findings() []working.Finding {
	f := append(m.PerLength.Findings(), m.Run.pathFindings()...)
	working.Sort(f)
	return f
}
