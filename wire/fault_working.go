package wire

import "example.com/drawbar/units/working"

// Working returns how the fault current came about, step by step.
func (f Fault) Working() *working.Sheet {
	title := "Short circuit at the end of the run"
	if f.OneWay <= 0 {
		title = "Short circuit at the source"
	}
	s := working.NewSheet(title)
	f.steps(s, "I_k")
	return s
}

// steps appends the steps that end in the symbol named.
func (f Fault) steps(s *working.Sheet, symbol string) {
	s.Given("E", f.Source.Voltage, "V", "open-circuit voltage of the source")
	s.Given("R_source", f.Source.Resistance, "mΩ", "resistance of the source")
	if f.OneWay <= 0 {
		s.Formula(symbol, f.Current, "A", "fault current at the source", "1000 * E / R_source")
		return
	}
	f.Conductor.steps(s)
	s.Given("L", f.OneWay, "m", "one-way length from the source to the short")
	if chassis, ok := f.Source.Chassis.Get(); ok {
		s.Given("R_chassis", chassis, "mΩ", "resistance of the return through the chassis")
		s.Formula("R_loop", f.Loop, "mΩ", "resistance of the run and of the chassis", "1000 * r * L + R_chassis")
	} else {
		s.Formula("R_loop", f.Loop, "mΩ", "resistance of the run, there and back", "1000 * r * 2*L")
	}
	s.Formula(symbol, f.Current, "A", "fault current at the end of the run", "1000 * E / (R_source + R_loop)")
}

// Findings returns that a bolted short is an estimate.
func (f Fault) Findings() []working.Finding {
	return []working.Finding{{
		Severity: working.Note, Rule: "bolted-fault",
		Message: "A bolted short is an estimate: the protection inside a battery may end it sooner, and it is no fuse.",
		Numbers: []working.Number{{Name: "fault current", Value: f.Current}},
		Fix:     "Choose interrupting ratings with room above it.",
		Source:  ohmsLaw,
	}}
}
