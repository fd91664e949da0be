package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the ampacity came about, step by step.
func (c CarryingCapacity) Working() *working.Sheet {
	x := c.Installation
	s := working.NewSheet("Ampacity of " + x.Size.String() + " " + x.Metal.String() + ", " + x.Insulation.String() +
		" insulation, by " + x.Rules.String())
	c.steps(s)
	return s
}

// Rule returns the rule that governed: the table that the ampacity is from, or
// that on terminals where they bear less.
func (c CarryingCapacity) Rule() working.Source {
	if c.Governs == ByTerminals {
		return necTerminals
	}
	return c.source()
}

// source says which table the ampacity is from.
func (c CarryingCapacity) source() working.Source {
	x := c.Installation
	switch {
	case c.Governs == ByDeviceTable:
		return rvTable
	case !x.Rules.isNEC():
		return boatTable
	case x.Rules == NEC2017 && x.Metal != Copper:
		return nec31016Aluminium
	case x.Rules == NEC2017 && x.Size.Compare(AWG(14)) < 0:
		return necFine
	}
	return x.Rules.ofEdition(nec2008Table, nec31016, nec2023Table)
}

// steps appends the steps that end in I_z.
func (c CarryingCapacity) steps(s *working.Sheet) {
	x := c.Installation
	s.Choose("rule set", x.Rules.String(), "as given", working.Source{})
	row := x.Size.String() + ", " + c.Column.String()
	if c.Governs == ByDeviceTable {
		row = x.Size.String()
	}
	if x.Metal != Copper {
		row += ", aluminium or copper-clad aluminium"
	}
	at := working.Lookup{Source: c.source(), Key: x.Size.String(), Row: row}
	switch {
	case x.Rules.isNEC():
		s.LookUp("I_table", c.Table, "A", "ampacity by the table", at)
		c.necSteps(s)
		return
	case x.EngineSpace || c.Bundle < 1:
		s.LookUp("I_table", c.Table, "A", "ampacity by the table", at)
		c.boatSteps(s)
		return
	case c.isFreeAir():
		s.Choose("table", "free air", "the RV table ends at 10 AWG", thickPractice)
	}
	s.LookUp("I_z", c.Current, "A", "ampacity by the table", at)
}

// bundleKey says how many conductors are together.
func (x Installation) bundleKey(few string) string {
	if x.Conductors > 3 || x.isHigh() && x.Conductors > 2 {
		return units.Significant(float64(x.Conductors), 4) + " conductors"
	}
	return few
}

// boatSteps appends the corrections for boats.
func (c CarryingCapacity) boatSteps(s *working.Sheet) {
	x := c.Installation
	place := "outside engine spaces"
	if x.EngineSpace {
		place = "inside engine spaces, " + c.Column.String()
	}
	s.LookUp("k_place", c.Ambient, "1", "correction for engine spaces", working.Lookup{Source: boatEngine, Key: place, Row: place})
	key := x.bundleKey("fewer than three conductors")
	if !x.isHigh() {
		key = "below 50 V: none"
	}
	s.LookUp("k_bundle", c.Bundle, "1", "adjustment for conductors together", working.Lookup{Source: boatBundle, Key: key, Row: key})
	s.Formula("I_z", c.Current, "A", "ampacity", "I_table * k_place * k_bundle")
}

// necSteps appends the corrections of the NEC and the terminals.
func (c CarryingCapacity) necSteps(s *working.Sheet) {
	x := c.Installation
	if x.Insulation != c.Column {
		s.Choose("column", c.Column.String(), "there is none for "+x.Insulation.String(), c.source())
	}
	s.LookUp("k_ambient", c.Ambient, "1", "correction for the ambient temperature", working.Lookup{
		Source: x.Rules.ofEdition(nec2008Ambient, necAmbient, nec2023Ambient),
		Key:    x.Ambient.String(), Row: "band with " + x.Ambient.String() + ", " + c.Column.String()})
	bundle := x.bundleKey("not more than three conductors")
	s.LookUp("k_bundle", c.Bundle, "1", "adjustment for conductors together", working.Lookup{
		Source: x.Rules.ofEdition(nec2008Bundle, necBundle, nec2023Bundle), Key: bundle, Row: bundle})
	if c.Terminals == 0 {
		s.Choose("terminals", "not judged", "the table has no column for them at this size", c.source())
		s.Formula("I_z", c.Current, "A", "ampacity: what the insulation bears", "I_table * k_ambient * k_bundle")
		return
	}
	s.Formula("I_corrected", c.Corrected, "A", "what the insulation bears", "I_table * k_ambient * k_bundle")
	s.LookUp("I_terminals", c.Terminals, "A", "what the terminals bear, not corrected", working.Lookup{Source: necTerminals,
		Key: "terminals " + x.Terminals.String(), Row: x.Size.String() + ", " + x.Terminals.necColumn().String()})
	if c.Counted > 1 {
		s.Given("n", units.Ratio(c.Counted), "1", "conductors in parallel")
		s.Formula("I_z", c.Current, "A", "ampacity: n times the lesser of the two", "n * min(I_corrected, I_terminals)")
		return
	}
	s.Formula("I_z", c.Current, "A", "ampacity: the lesser of the two", "min(I_corrected, I_terminals)")
}
