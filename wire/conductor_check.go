package wire

import "example.com/drawbar/units"

// check reports the first field out of range.
func (c Conductor) check(op string) error {
	if c.Metal > CopperClad {
		return &units.RangeError{Op: op, Field: "Metal", Value: c.Metal, Allowed: wording("copper, aluminium or copper-clad aluminium")}
	}
	if stated, ok := c.Stated.Get(); ok {
		return units.Above[units.ResistancePerLength](0).Check(op, "Stated", stated)
	}
	if err := c.Size.check(op, "Size"); err != nil {
		return err
	}
	if rho, ok := c.Resistivity.Get(); ok {
		return units.Above[units.Resistivity](0).Check(op, "Resistivity", rho)
	}
	if field, value, want := c.misfit(); want != "" {
		return &units.RangeError{Op: op, Field: field, Value: value, Allowed: want}
	}
	if c.Temperature.IsSet() {
		return metalTemperatures.Check(op, "Temperature", c.Temperature)
	}
	return nil
}

// misfit returns the first field that the basis of c has nothing for, and what
// it takes; want is empty if all of them fit.
func (c Conductor) misfit() (field string, value any, want wording) {
	if c.Strand > Flexible || c.Strand == Flexible && !c.Size.IsMetric() {
		return "Strand", c.Strand, "stranded or solid; flexible for a metric size only, else give Stated"
	}
	switch c.basis() {
	case FromCopper:
		return c.misfitOfMetal(c.Metal == Copper)
	case FromMetal:
		return c.misfitOfMetal(c.Metal != Copper)
	case FromIEC60228:
		return c.misfitOfIEC()
	case FromNECTable8:
		return c.misfitOfTable8()
	case FromNBSHandbook100:
		return c.misfitOfHandbook()
	}
	b, _ := c.Basis.Get()
	return "Basis", b, "a metal or a table; for the other two give Resistivity or Stated"
}

// misfitOfMetal is misfit for resistivity and geometry.
func (c Conductor) misfitOfMetal(isRight bool) (field string, value any, want wording) {
	switch {
	case !isRight:
		return "Metal", c.Metal, "copper by FromCopper, the other metals by FromMetal"
	case c.Coated:
		return "Coated", c.Coated, "false: only FromNECTable8 and FromIEC60228 know what tin costs"
	case c.Strand == Flexible:
		return "Strand", c.Strand, "stranded or solid; the lay of fine strands is in FromIEC60228 only"
	}
	return "", nil, ""
}

// misfitOfIEC is misfit for IEC 60228.
func (c Conductor) misfitOfIEC() (field string, value any, want wording) {
	switch {
	case !c.Size.IsMetric():
		return "Basis", FromIEC60228, "another for a gauge or kcmil: IEC 60228 has metric sizes"
	case c.Metal != Copper:
		return "Metal", c.Metal, "copper; for other metals choose FromMetal or give Stated"
	case c.Coated && c.Strand == Solid:
		return "Coated", c.Coated, "false for a solid metric conductor; else give Stated"
	}
	return "", nil, ""
}

// misfitOfTable8 is misfit for NEC Chapter 9 Table 8.
func (c Conductor) misfitOfTable8() (field string, value any, want wording) {
	switch {
	case c.Metal == CopperClad:
		return "Metal", c.Metal, "copper or aluminium, which NEC Table 8 has"
	case c.Metal == Aluminium && c.Coated:
		return "Coated", c.Coated, "false for aluminium"
	case c.table8() > 0:
		return "", nil, ""
	case c.Strand == Solid && !c.Size.IsMetric() && c.Size.Compare(AWG(8)) > 0:
		return "Strand", c.Strand, "stranded above 8 AWG, as NEC Table 8 has it"
	}
	return "Size", c.Size, "18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1 AWG, 1/0 to 4/0, or 250 to 500 kcmil, which NEC Table 8 has"
}

// misfitOfHandbook is misfit for the table of solid copper.
func (c Conductor) misfitOfHandbook() (field string, value any, want wording) {
	switch {
	case c.Metal != Copper:
		return "Metal", c.Metal, "copper"
	case c.Coated:
		return "Coated", c.Coated, "false: the table is of bare copper"
	case solidResistance(c.Size) == 0:
		return "Size", c.Size, "20 AWG to 4/0 AWG, which the table has"
	}
	return "", nil, ""
}

// wording says in words what a field may be.
type wording string

// String returns the words.
func (w wording) String() string { return string(w) }
