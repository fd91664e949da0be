package inverter

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Names returns the names of members, in the order of the demands.
func (o Overload) Names(members Members) (names []string) {
	for i := range members.All() {
		if i < len(o.Demands) {
			names = append(names, o.Demands[i].Name)
		}
	}
	return names
}

// Working returns each set of the result, step by step.
func (o Overload) Working() *working.Sheet {
	s := working.NewSheet("What is too much together: " + o.Limit.Name)
	o.limitSteps(s)
	demandSteps(s, o.Demands)
	for i, set := range o.Sets {
		o.setSteps(s, set, "_set"+strconv.Itoa(i+1))
	}
	if len(o.Sets) == 0 {
		o.setSteps(s, o.Together, "_all")
	}
	return s
}

// limitSteps appends the limit and what may be used of it.
func (o Overload) limitSteps(s *working.Sheet) {
	l := o.Limit
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
}

// setSteps appends the sums and comparisons of one set.
func (o Overload) setSteps(s *working.Sheet, set Set, suffix string) {
	names := o.Names(set.Members)
	if len(names) == 0 {
		return
	}
	what := strings.Join(names, ", ")
	sum := func(symbol string) string {
		var terms []string
		for i := range set.Members.All() {
			terms = append(terms, symbol+"_"+strconv.Itoa(i+1))
		}
		return strings.Join(terms, " + ")
	}
	if o.Limit.Power.IsSet() {
		s.Formula("P"+suffix, set.Power, "W", what, sum("P"))
		s.Test(what, "P"+suffix+" <= P_may", !set.OverPower)
	}
	if o.Limit.Apparent.IsSet() || o.Limit.Current.IsSet() {
		s.Formula("S"+suffix, set.Apparent, "VA", what+", added plainly", sum("S"))
	}
	if o.Limit.Apparent.IsSet() {
		s.Test(what, "S"+suffix+" <= S_may", !set.OverApparent)
	}
	if o.Limit.Current.IsSet() {
		s.Formula("I"+suffix, set.Current, "A", what, "S"+suffix+" / V")
		s.Test(what, "I"+suffix+" <= I_may", !set.OverCurrent)
	}
}

// Findings returns one finding for each set, and that power factors were not
// stated.
func (o Overload) Findings() (f []working.Finding) {
	for _, set := range o.Sets {
		names := o.Names(set.Members)
		message := strings.Join(names, " and ") + " together are more than " + o.Limit.Name + " carries"
		if len(names) == 1 {
			message = names[0] + " alone is more than " + o.Limit.Name + " carries"
		}
		rule, source := "too-much-together", plainSum
		if share, ok := o.Limit.Share.Get(); ok {
			rule = "too-much-for-hours"
			message += " at " + share.String() + " of its rating"
			if units.Compare(share, ContinuousShare) == 0 {
				message += ", which is the limit for hours"
				source = necContinuous
			}
		}
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: rule, Source: source, Numbers: o.numbers(set),
			Message: message + ".",
			Fix:     "Run fewer of them at a time.",
		})
	}
	if o.Unstated > 0 && (o.Limit.Apparent.IsSet() || o.Limit.Current.IsSet()) {
		f = append(f, powerFactorNotStated(o.Unstated, o.Together.Apparent))
	}
	return f
}

// numbers are those of the limits that a set exceeds.
func (o Overload) numbers(set Set) (n []working.Number) {
	share := o.Limit.Share.Or(1)
	if set.OverPower {
		n = append(n, working.Number{Name: "together", Value: set.Power},
			working.Number{Name: "limit", Value: units.Scale(o.Limit.Power.Or(0), share)})
	}
	if set.OverApparent {
		n = append(n, working.Number{Name: "together", Value: set.Apparent},
			working.Number{Name: "limit", Value: units.Scale(o.Limit.Apparent.Or(0), share)})
	}
	if set.OverCurrent {
		n = append(n, working.Number{Name: "together", Value: set.Current},
			working.Number{Name: "limit", Value: units.Scale(o.Limit.Current.Or(0), share)})
	}
	return n
}
