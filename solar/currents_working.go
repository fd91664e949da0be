package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the currents came about, step by step.
func (c CircuitCurrents) Working() *working.Sheet {
	s := working.NewSheet("Currents of an array and its strings")
	s.Choose("rule set", c.Strings.Rules.String(), "as given", working.Source{})
	c.steps(s)
	return s
}

// steps appends the steps that end in the required currents and the fuses.
func (c CircuitCurrents) steps(s *working.Sheet) {
	s.Given("I_sc", c.Strings.Array.Panel.Isc, "A", "short-circuit current of a string")
	s.Given("m", units.Ratio(c.Strings.Array.Parallel), "1", "strings in parallel")
	s.Constant("k_sun", sunFactor, "1", "for sun brighter than the rating", necCurrent)
	s.Constant("k_continuous", continuousFactor, "1", "for a current of three hours or more", necContinuous)
	s.Formula("I_all", c.ShortCircuit, "A", "short-circuit current of all strings", "m * I_sc")
	s.Formula("I_max", c.Maximum, "A", "greatest current of all strings", "k_sun * I_all")
	s.Formula("I_required", c.Required, "A", "required of conductors and fuses behind the joint", "k_continuous * I_max")
	s.Formula("I_string_max", c.StringMaximum, "A", "greatest current of one string", "k_sun * I_sc")
	s.Formula("I_string", c.StringRequired, "A", "required of conductors and fuses of one string", "k_continuous * I_string_max")
	s.Formula("I_back", c.Backfeed, "A", "what the others feed into a shorted string", "(m - 1) * I_string_max")
	label, stated := c.Strings.Array.Panel.SeriesFuse.Get()
	if stated {
		s.Given("I_label", label, "A", "maximum series fuse of the panels")
		s.Test("what the others feed against it", "I_back <= I_label", !units.Exceeds(c.Backfeed, label))
	}
	why := "maximum series fuse is not given"
	switch {
	case c.Strings.Array.Parallel == 1:
		why = "there is only one"
	case stated:
		why = "by the comparison above"
	}
	s.Choose("fuse in each string", c.Fusing.String(), why, necStrings)
	if fuse, ok := c.Strings.StringFuse.Get(); ok {
		s.Given("I_fuse", fuse, "A", "fuse in each string as stated")
		s.Test("fuse against what the string needs", "I_string <= I_fuse", !units.Exceeds(c.StringRequired, fuse))
		if stated {
			s.Test("fuse against the label", "I_fuse <= I_label", !units.Exceeds(fuse, label))
		}
	}
}

// Findings returns what is wrong or missing with the fuses of the strings,
// worst first; nothing if there is nothing.
func (c CircuitCurrents) Findings() []working.Finding {
	f := append(c.fuseFindings(), c.needFindings()...)
	working.Sort(f)
	return f
}

// fuseFindings looks at the fuses stated.
func (c CircuitCurrents) fuseFindings() (f []working.Finding) {
	fuse, stated := c.Strings.StringFuse.Get()
	if !stated {
		return nil
	}
	label, hasLabel := c.Strings.Array.Panel.SeriesFuse.Get()
	if hasLabel && units.Exceeds(fuse, label) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "string-fuse-above-label", Source: necStrings,
			Numbers: []working.Number{{Name: "fuse", Value: fuse}, {Name: "maximum series fuse", Value: label}},
			Message: "The fuse of a string is above the maximum series fuse of its panels: a shorted panel can burn before it opens.",
			Fix:     "Fit a fuse not above the label.",
		})
	}
	if units.Exceeds(c.StringRequired, fuse) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "string-fuse-below-need", Source: necContinuous,
			Numbers: []working.Number{{Name: "fuse", Value: fuse}, {Name: "needed", Value: c.StringRequired}},
			Message: "The fuse of a string is smaller than 156 % of its short-circuit current and may open in bright sun.",
			Fix:     "Fit the standard rating not below what is needed, if the label allows it.",
		})
	}
	return f
}

// needFindings looks at whether fuses are needed and possible.
func (c CircuitCurrents) needFindings() (f []working.Finding) {
	label, _ := c.Strings.Array.Panel.SeriesFuse.Get()
	back := working.Number{Name: "fed back", Value: c.Backfeed}
	limit := working.Number{Name: "maximum series fuse", Value: label}
	if c.Fusing == FusingNeeded && !c.Strings.StringFuse.IsSet() {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "fuse-each-string", Source: necStrings, Numbers: []working.Number{back, limit},
			Message: "The other strings can feed more into a shorted one than its panels are made for, and no fuse in the strings is stated.",
			Fix:     "Fit a fuse in each string, not below 156 % of its short-circuit current and not above the label.",
		})
	}
	if c.Fusing == FusingNeeded && units.Exceeds(c.StringRequired, label) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "no-string-fuse-fits", Source: necStrings,
			Numbers: []working.Number{{Name: "needed", Value: c.StringRequired}, limit},
			Message: "The strings need fuses, but what such a fuse must carry is above the label of the panels.",
			Fix:     "Use fewer strings in parallel, or panels with a higher maximum series fuse.",
		})
	}
	if c.Fusing == FusingNotJudged && c.Strings.Array.Parallel > 1 {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "series-fuse-not-stated", Source: necStrings, Numbers: []working.Number{back},
			Message: "The maximum series fuse of the panels is not given, so whether the strings need fuses is not judged.",
			Fix:     "Read it from the label of the panels.",
		})
	}
	return f
}
