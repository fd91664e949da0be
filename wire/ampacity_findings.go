package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Findings returns what needs attention, worst first: a table that is from
// memory, one used beyond what it is for, one that was taken back, and what
// the rule set does not count.
func (c CarryingCapacity) Findings() []working.Finding {
	f := c.tableFindings()
	f = append(f, c.memoryFindings()...)
	f = append(f, c.editionFindings()...)
	f = append(f, c.boatFindings()...)
	f = append(f, c.parallelFindings()...)
	working.Sort(f)
	return f
}

func (c CarryingCapacity) ampacityNumber() working.Number {
	return working.Number{Name: "ampacity", Value: c.Current}
}

// tableFindings returns what is to be said of the RV rule.
func (c CarryingCapacity) tableFindings() []working.Finding {
	x := c.Installation
	numbers := []working.Number{c.ampacityNumber(), {Name: "in a wall, by the strictest table", Value: strictest(x.Size)}}
	switch {
	case c.Governs == ByDeviceTable:
		return []working.Finding{{
			Severity: working.Note, Rule: "rule-from-memory", Numbers: numbers, Source: rvTable,
			Message: "The low-voltage limits of recreational vehicles are used from memory. Those for 18 and 16 AWG are for stranded wire only.",
			Fix:     "Confirm the limit in the standard that applies before you rely on it.",
		}}
	case !c.isFreeAir():
		return nil
	}
	f := working.Finding{
		Severity: working.Note, Rule: "free-air-table", Numbers: numbers, Source: thickPractice,
		Message: "The RV table ends at 10 AWG. This is a free-air value: a cable in a bundle, a conduit or an insulated wall carries less.",
		Fix:     "Lay the cable singly in free air, or use the NEC table with its corrections.",
	}
	if x.Conductors > 1 {
		f.Severity = working.Caution
		f.Message = "The RV table ends at 10 AWG. This is the value of a single cable in free air, and these lie together: they carry less."
	}
	return []working.Finding{f}
}

// memoryFindings says when the cell of the NEC was not read where it stands.
func (c CarryingCapacity) memoryFindings() []working.Finding {
	if !c.Installation.Rules.isNEC() || c.source().Provenance != working.Memory {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "table-from-memory", Source: c.source(), Numbers: []working.Number{c.ampacityNumber()},
		Message: "This ampacity is used from memory of the edition, or taken over from an earlier one.",
		Fix:     "Confirm it in the edition in force before you rely on it.",
	}}
}

// editionFindings says where an old edition allowed more than those of 2011
// on, of the column and the terminals as they were used.
func (c CarryingCapacity) editionFindings() []working.Finding {
	if c.Installation.Rules != NEC2008 {
		return nil
	}
	later := c.Installation
	later.Rules = NEC2017
	now, err := ampacity("wire.Ampacity", later)
	if err != nil || !units.Exceeds(c.Current, now.Current) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "edition-allows-more", Source: now.Rule(),
		Numbers: []working.Number{c.ampacityNumber(), {Name: "by " + NEC2017.String(), Value: now.Current}},
		Message: "The edition of 2008 allows this conductor more than those from 2011 on, which took the value back.",
		Fix:     "Use the edition in force for anything new; keep the older one for judging what was built by it.",
	}}
}

// boatFindings says what of the regulation is from memory, and what it leaves
// out below 50 V.
func (c CarryingCapacity) boatFindings() (f []working.Finding) {
	x := c.Installation
	if x.Rules != Boat33CFR {
		return nil
	}
	if x.EngineSpace {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "engine-space-from-memory", Source: boatEngine,
			Numbers: []working.Number{c.ampacityNumber(), {Name: "factor", Value: c.Ambient}},
			Message: "The factor for engine spaces is used from memory; for 105 °C insulation an industry standard is reprinted with 0.85.",
			Fix:     "Confirm the factor in 33 CFR 183.425 before you rely on the last per cent.",
		})
	}
	if x.Size == AWG(18) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "boat-18-awg", Source: boatThin,
			Numbers: []working.Number{c.ampacityNumber(), {Name: "out of the sheath at most", Value: boatBare, Unit: "in"}},
			Message: "On a boat 18 AWG is allowed only inside a sheath with other conductors; run by itself a conductor is 16 AWG at least.",
			Fix:     "Use 16 AWG, or a cable with a sheath and no more than 30 in of the conductor out of it.",
		})
	}
	if together := bundleFactor(boatBundleFactors[:], x.Conductors); !x.isHigh() && together < 1 {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "bundle-not-counted", Source: bundlePhysics,
			Numbers: []working.Number{c.ampacityNumber(), {Name: "with the factor of 50 V and more", Value: units.Scale(c.Current, together)}},
			Message: "The regulation adjusts for conductors together only at 50 V and more. They warm each other below that just as well.",
			Fix:     "Keep below the adjusted value if all of them carry their current at once, or lay them apart.",
		})
	}
	return f
}

// parallelFindings says when only one of the conductors in parallel counts, and
// when they count together without a word on how many share a raceway.
func (c CarryingCapacity) parallelFindings() []working.Finding {
	x := c.Installation
	switch {
	case x.Parallel <= 1 || c.Counted > 1 && x.Conductors > 0:
		return nil
	case c.Counted > 1:
		return []working.Finding{c.unbundled()}
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "parallel-not-counted", Source: necParallel,
		Numbers: []working.Number{{Name: "ampacity of one", Value: c.Current}, {Name: "conductors", Value: units.Ratio(x.Parallel), Unit: "1"}},
		Message: "Thin conductors side by side are not one thick one: if a joint of one opens, the others carry all of the current behind a device that permits it.",
		Fix:     "Use one larger conductor, or a device of its own for each, no larger than one may have.",
	}}
}

// unbundled says that conductors in parallel were not derated for each other,
// and what is left if there and back they all lie together.
func (c CarryingCapacity) unbundled() working.Finding {
	x := c.Installation
	together := x
	together.Conductors = 2 * x.Parallel
	f := working.Finding{
		Severity: working.Caution, Rule: "parallel-not-derated", Source: x.Rules.ofEdition(nec2008Bundle, necBundle, nec2023Bundle),
		Numbers: []working.Number{c.ampacityNumber(), {Name: "conductors there and back", Value: units.Ratio(together.Conductors), Unit: "1"}},
		Message: "How many conductors lie together is not stated, so those in parallel are not derated: right only if no more than three share a raceway.",
		Fix:     "State how many share the raceway or bundle, those of the return among them.",
	}
	if all, err := ampacity("wire.Ampacity", together); err == nil {
		f.Numbers = append(f.Numbers, working.Number{Name: "if all lie together", Value: all.Current})
	}
	return f
}
