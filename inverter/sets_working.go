package inverter

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Names returns the names of members, in the order of the demands; of demands
// that differ in nothing but their names, "any 2 of kettle, heater, grill".
func (o Overload) Names(members Members) []string { return o.Limit.names(o.Demands, members) }

func (l Limit) names(demands []Demand, members Members) (list []string) {
	for i := range members.All() {
		if i >= len(demands) {
			break
		}
		var all []string
		first, wanted := true, 0
		for j, d := range demands {
			if l.alike(demands, j, i) {
				all = append(all, d.Name)
				if members.Has(j) {
					first = first && j >= i
					wanted++
				}
			}
		}
		switch {
		case wanted == len(all):
			list = append(list, demands[i].Name)
		case first:
			list = append(list, "any "+strconv.Itoa(wanted)+" of "+strings.Join(all, ", "))
		}
	}
	return list
}

// Working returns each set of the result, step by step.
func (o Overload) Working() *working.Sheet {
	s := working.NewSheet("What is too much together: " + o.Limit.Name)
	o.Limit.steps(s)
	demandSteps(s, o.Demands)
	for i, set := range o.Sets {
		o.Limit.setSteps(s, o.Demands, set, "_set"+strconv.Itoa(i+1))
	}
	if len(o.Sets) == 0 {
		o.Limit.setSteps(s, o.Demands, o.Together, "_all")
	}
	return s
}

// steps appends the limit and what may be used of it.
func (l Limit) steps(s *working.Sheet) {
	share, hasShare := l.Share.Get()
	if hasShare {
		source := asGiven
		if units.Compare(share, ContinuousShare) == 0 {
			source = necContinuous
		}
		s.Constant("x", share, "1", "part of the limit that may be used", source)
	}
	limit := func(symbol, unit string, all, used units.Value) {
		if !hasShare {
			s.Given(symbol+"_may", all, unit, "limit of "+l.Name)
			return
		}
		s.Given(symbol+"_max", all, unit, "limit of "+l.Name)
		s.Formula(symbol+"_may", used, unit, "that may be used", "x * "+symbol+"_max")
	}
	if p, ok := l.Power.Get(); ok {
		limit("P", "W", p, units.Scale(p, share))
	}
	if a, ok := l.Apparent.Get(); ok {
		limit("S", "VA", a, units.Scale(a, share))
	}
	if i, ok := l.Current.Get(); ok {
		limit("I", "A", i, units.Scale(i, share))
		s.Given("V", l.Voltage, "V", "of "+l.Name)
	}
	if i, ok := l.Through.Get(); ok {
		if !l.Current.IsSet() {
			s.Given("V", l.Voltage, "V", "of "+l.Name)
		}
		limit("I_through", "A", i, units.Scale(i, share))
	}
}

// setSteps appends the sums and comparisons of one set.
func (l Limit) setSteps(s *working.Sheet, demands []Demand, set Set, suffix string) {
	list := l.names(demands, set.Members)
	if len(list) == 0 {
		return
	}
	what := strings.Join(list, ", ")
	sum := func(symbol string) string { return terms(symbol, set.Members) }
	if l.Power.IsSet() {
		s.Formula("P"+suffix, set.Power, "W", what, sum("P"))
		s.Test(what, "P"+suffix+" <= P_may", !set.OverPower)
	}
	if l.Apparent.IsSet() || l.Current.IsSet() {
		s.Formula("S"+suffix, set.Apparent, "VA", what+", added plainly", sum("S"))
	}
	if l.Apparent.IsSet() {
		s.Test(what, "S"+suffix+" <= S_may", !set.OverApparent)
	}
	if l.Current.IsSet() {
		s.Formula("I"+suffix, set.Current, "A", what, "S"+suffix+" / V")
		s.Test(what, "I"+suffix+" <= I_may", !set.OverCurrent)
	}
	if passing := set.Members & l.Passes; l.Through.IsSet() && passing != 0 {
		s.Formula("I_through"+suffix, set.Through, "A", what+": what passes", "("+terms("S", passing)+") / V")
		s.Test(what+": what passes", "I_through"+suffix+" <= I_through_may", !set.OverThrough)
	}
}

// terms returns the sum of one symbol over members.
func terms(symbol string, members Members) string {
	var list []string
	for i := range members.All() {
		list = append(list, symbol+"_"+strconv.Itoa(i+1))
	}
	return strings.Join(list, " + ")
}

// Findings returns one finding for each set, and what was counted for lack of a
// power factor.
func (o Overload) Findings() (f []working.Finding) {
	for _, set := range o.Sets {
		f = append(f, o.Limit.tooMuch(o.Demands, set))
	}
	if o.Unstated > 0 && o.Limit.inVoltAmperes() {
		f = append(f, powerFactorNotStated(o.Unstated, o.Together.Apparent))
	}
	return append(f, cutShort(o.Cut, len(o.Sets))...)
}

// inVoltAmperes reports whether the limit is of what a power factor changes.
func (l Limit) inVoltAmperes() bool {
	return l.Apparent.IsSet() || l.Current.IsSet() || l.Through.IsSet()
}

// cutShort says that there are more sets, if so.
func cutShort(cut bool, sets int) []working.Finding {
	if !cut {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "sets-cut-short", Source: plainSum,
		Numbers: []working.Number{{Name: "sets", Value: units.Ratio(sets), Unit: "1"}},
		Message: "There are more sets than these.",
		Fix:     "Join small demands into one, or ask about fewer.",
	}}
}

// tooMuch says that a set is more than the limit.
func (l Limit) tooMuch(demands []Demand, set Set) working.Finding {
	list, fix := l.names(demands, set.Members), "Run fewer of them at a time."
	message := strings.Join(list, " and ") + " together are more than " + l.Name + " carries"
	if set.Members.Len() == 1 {
		message = strings.Join(list, "") + " alone is more than " + l.Name + " carries"
		fix = "Run it from another source, or take a smaller one."
	}
	rule, source := "too-much-together", plainSum
	if share, ok := l.Share.Get(); ok {
		rule = "too-much-for-hours"
		message += " at " + share.String() + " of its rating"
		if units.Compare(share, ContinuousShare) == 0 {
			message += ", which is the limit for hours"
			source = necContinuous
		}
	}
	return working.Finding{
		Severity: working.Caution, Rule: rule, Source: source, Numbers: l.exceeded(set),
		Message: message + ".", Fix: fix,
	}
}

// exceeded are the numbers of the limits that a set exceeds.
func (l Limit) exceeded(set Set) (n []working.Number) {
	share := l.Share.Or(1)
	if set.OverPower {
		n = append(n, working.Number{Name: "together", Value: set.Power},
			working.Number{Name: "limit", Value: units.Scale(l.Power.Or(0), share)})
	}
	if set.OverApparent {
		n = append(n, working.Number{Name: "together", Value: set.Apparent},
			working.Number{Name: "limit", Value: units.Scale(l.Apparent.Or(0), share)})
	}
	if set.OverCurrent {
		n = append(n, working.Number{Name: "together", Value: set.Current},
			working.Number{Name: "limit", Value: units.Scale(l.Current.Or(0), share)})
	}
	if set.OverThrough {
		n = append(n, working.Number{Name: "passing together", Value: set.Through},
			working.Number{Name: "limit of what passes", Value: units.Scale(l.Through.Or(0), share)})
	}
	return n
}
