package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the ampacity came about, step by step.
func (c CarryingCapacity) Working() *working.Sheet {
	s := working.NewSheet("Ampacity of " + c.Installation.Size.String() + " copper, " + c.Installation.Insulation.String() +
		" insulation, by " + c.Installation.Rules.String())
	c.steps(s)
	return s
}

// source says which table the ampacity is from.
func (c CarryingCapacity) source() working.Source {
	x := c.Installation
	switch {
	case c.Governs == ByDeviceTable:
		return rvTable
	case x.Rules == NEC2017 && x.Size.Compare(AWG(14)) < 0:
		return necFine
	case x.Rules == NEC2017:
		return nec31016
	}
	return boatTable
}

// steps appends the steps that end in I_z.
func (c CarryingCapacity) steps(s *working.Sheet) {
	x := c.Installation
	s.Choose("rule set", x.Rules.String(), "as given", working.Source{})
	row := x.Size.String() + ", " + c.Column.String()
	if c.Governs == ByDeviceTable {
		row = x.Size.String()
	}
	at := working.Lookup{Source: c.source(), Key: x.Size.String(), Row: row}
	if x.Rules != NEC2017 {
		if x.Rules == RVLowVoltage && c.Governs != ByDeviceTable {
			s.Choose("table", "free air", "the RV table ends at 10 AWG", thickPractice)
		}
		s.LookUp("I_z", c.Current, "A", "ampacity by the table", at)
		return
	}
	s.LookUp("I_table", c.Table, "A", "ampacity by the table", at)
	if x.Insulation > Insulation90 {
		s.Choose("column", c.Column.String(), "there is none for "+x.Insulation.String(), nec31016)
	}
	s.LookUp("k_ambient", c.Ambient, "1", "correction for the ambient temperature", working.Lookup{Source: necAmbient,
		Key: x.Ambient.String(), Row: "band with " + x.Ambient.String() + ", " + c.Column.String()})
	bundle := "not more than three conductors"
	if x.Conductors > 3 {
		bundle = units.Significant(float64(x.Conductors), 4) + " conductors"
	}
	s.LookUp("k_bundle", c.Bundle, "1", "adjustment for conductors together", working.Lookup{Source: necBundle, Key: bundle, Row: bundle})
	if c.Terminals == 0 {
		s.Choose("terminals", "not judged", "the table has no column for them at this size", nec31016)
		s.Formula("I_z", c.Current, "A", "ampacity: what the insulation bears", "I_table * k_ambient * k_bundle")
		return
	}
	s.Formula("I_corrected", c.Corrected, "A", "what the insulation bears", "I_table * k_ambient * k_bundle")
	s.LookUp("I_terminals", c.Terminals, "A", "what the terminals bear, not corrected", working.Lookup{Source: necTerminals,
		Key: "terminals " + x.Terminals.String(), Row: x.Size.String() + ", " + min(x.Terminals, Insulation90).String()})
	s.Formula("I_z", c.Current, "A", "ampacity: the lesser of the two", "min(I_corrected, I_terminals)")
}

// Findings returns what needs attention: a table that is from memory, or one
// used beyond what it is for.
func (c CarryingCapacity) Findings() []working.Finding {
	x := c.Installation
	numbers := []working.Number{{Name: "ampacity", Value: c.Current}, {Name: "in a wall, by the strictest table", Value: strictest(x.Size)}}
	switch {
	case c.Governs == ByDeviceTable:
		return []working.Finding{{
			Severity: working.Note, Rule: "rule-from-memory", Numbers: numbers, Source: rvTable,
			Message: "The low-voltage limits of recreational vehicles are used from memory. Those for 18 and 16 AWG are for stranded wire only.",
			Fix:     "Confirm the limit in the standard that applies before you rely on it.",
		}}
	case x.Rules == RVLowVoltage:
		return []working.Finding{{
			Severity: working.Note, Rule: "free-air-table", Numbers: numbers, Source: thickPractice,
			Message: "The RV table ends at 10 AWG. This is a free-air value: a cable in a bundle, a conduit or an insulated wall carries less.",
			Fix:     "Lay the cable singly in free air, or use the NEC table with its corrections.",
		}}
	}
	return nil
}

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
	s.Formula("R_loop", f.Loop, "mΩ", "resistance of the run, there and back", "1000 * r * 2*L")
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
