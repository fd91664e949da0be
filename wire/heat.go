package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// kindest returns the greatest ampacity that any table here has for s with
// insulation of up to 105 °C, 0 if no table reaches it: 33 CFR 183.425, free
// air.
func kindest(s Size) units.Current { return freeAir(s, Insulation105) }

// freeAir returns what s bears by 33 CFR 183.425, 0 if no gauge there is as
// thick. A size between two gauges has no more than the thicker, and no more
// for its area than the thinner: a thicker conductor has less surface for its
// metal to cool by.
func freeAir(s Size, n Insulation) units.Current {
	column := boatIndex(n)
	for i := range boat425 {
		if boat425[i].size.Compare(s) < 0 {
			continue
		}
		most := boat425[i].amperes[column]
		if i > 0 {
			thinner := boat425[i-1]
			most = min(most, units.Scale(thinner.amperes[column], units.RatioOf(s.Area(), thinner.size.Area())))
		}
		return most
	}
	return 0
}

// strictest returns what a wire in a wall may carry by the strictest table
// here: the RV limit, or NEC 310.16 at 60 °C. A size between two gauges has
// that of the thinner; it is 0 below 18 AWG.
func strictest(s Size) (i units.Current) {
	for _, r := range rvLimits {
		if r.size.Compare(s) <= 0 {
			i = max(i, r.copper)
		}
	}
	for j := range nec2011 {
		if r := &nec2011[j]; r.size.Compare(s) <= 0 {
			i = max(i, r.copper[0])
		}
	}
	return i
}

// heatFinding says what a drop does not tell: whether the conductor bears the
// current. It is a danger if no table lets it, and a caution if not every
// table does.
func heatFinding(i units.Current, s Size) working.Finding {
	most, least := kindest(s), strictest(s)
	f := working.Finding{
		Severity: working.Note,
		Rule:     "ampacity-not-checked",
		Message:  "Drop says nothing about heat: on a short run a conductor far too small for its current passes on drop.",
		Numbers:  []working.Number{{Name: "current", Value: i}},
		Fix: "Check the ampacity of the size and its protection against the code that applies; " +
			"a licensed electrician decides.",
		Source: working.Source{Title: "size by drop and by ampacity, and take the larger", Provenance: working.CommonPractice},
	}
	switch {
	case !s.IsValid():
	case most > 0 && units.Exceeds(i, most):
		f.Severity, f.Rule, f.Source = working.Danger, "current-above-any-ampacity", boatTable
		f.Message = "The current is above what any table allows this conductor with insulation up to 105 °C, even in free air: it overheats, whatever the drop."
		f.Numbers = append(f.Numbers, working.Number{Name: "at most, free air, 105 °C insulation", Value: most})
		f.Fix = "Use a size whose ampacity carries the current, then look at the drop."
	case units.Exceeds(i, least):
		f.Severity, f.Rule, f.Source = working.Caution, "current-above-ampacity-in-wall", nec31016
		if s.Compare(AWG(14)) < 0 {
			f.Source = rvTable
		}
		f.Message = "The current is above what this conductor may carry in a wall, a raceway or a bundle. Passing on drop is not enough."
		f.Numbers = append(f.Numbers, working.Number{Name: "strictest table", Value: least})
	}
	return f
}
