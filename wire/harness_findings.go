package wire

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// unequalShare is by how much a battery may exceed an equal share of the
// current before it is remarked on: common practice, 10 %.
const unequalShare units.Ratio = 0.1

// unlikeVoltage is by how much the highest voltage of a row may exceed another
// before its batteries count as unlike: common practice, 0.1 V at 12.8 V.
const unlikeVoltage units.Ratio = 0.0078125

// farUnlike is the same for batteries that must not be joined at all: common
// practice, 0.5 V at 12.8 V. Batteries of one kind and nearly one charge are
// nearer to each other; lithium beside lead is further apart at rest. It is
// told by the voltage where the current that a battery may take is not given;
// where it is, that judges it.
const farUnlike units.Ratio = 0.0390625

var (
	farUnlikeRule = working.Source{
		Title: "batteries more than 0.5 V apart at 12.8 V are not joined", Provenance: working.CommonPractice,
	}
	shareRule = working.Source{
		Title: "batteries in parallel should share within 10 %", Provenance: working.CommonPractice,
	}
	alikeRule = working.Source{
		Title: "batteries within 0.1 V of each other at 12.8 V before they are joined", Provenance: working.CommonPractice,
	}
	givenLimit = working.Source{Title: "limit as given", Provenance: working.CommonPractice}
	twoStates  = working.Source{Title: "constant power behind a resistance: at most E²/4R", Provenance: working.Derived}
)

// Findings returns what needs attention, worst first and then in the order of
// the branches and batteries: a collapse; a feeder above its limit, or above
// what any table of ampacity allows its size; a place below the voltage that
// is allowed; a battery above its limits or its share, and batteries that feed
// each other; and what was not judged for lack of a limit.
func (f *Flow) Findings() []working.Finding {
	if f == nil || f.harness == nil {
		return nil
	}
	var list []working.Finding
	if c, ok := f.Collapse.Get(); ok {
		return []working.Finding{f.collapseFinding(c)}
	}
	for i, p := range f.Points {
		if i < len(f.harness.net.Branches) {
			list = append(list, p.findings(f.harness.net.Branches[i], f.harness.feeders[i])...)
		}
	}
	for _, s := range f.Shares {
		list = append(list, s.findings(f)...)
	}
	list = append(list, f.unjudged()...)
	list = append(list, shockFindings(f.OpenCircuit, f.OpenCircuit)...)
	working.Sort(list)
	return list
}

// nameOf returns the name of a branch, empty if there is no such one.
func (f *Flow) nameOf(branch int) string {
	if f == nil || f.harness == nil || branch < 0 || branch >= len(f.harness.names) {
		return ""
	}
	return f.harness.names[branch]
}

// collapseFinding says what cannot be fed.
func (f *Flow) collapseFinding(c Collapse) working.Finding {
	name := strconv.Quote(f.nameOf(c.Branch))
	g := working.Finding{
		Severity: working.Danger, Rule: "harness-collapse", Source: twoStates,
		Message: "The harness cannot feed these loads at any voltage: the more its voltage sags the more current a " +
			"constant-power load takes, until something cuts out, opens or burns. Branch " + name + " weighs most.",
		Numbers: []working.Number{{Name: "part of the loads that could be fed", Value: c.Scale}},
		Fix:     "Use larger or shorter conductors, a bank of less resistance, a higher voltage, or fewer loads at once.",
	}
	if c.Load.Power > 0 {
		g.Numbers = append(g.Numbers, working.Number{Name: "power of " + name, Value: c.Load.Power})
	} else {
		g.Numbers = append(g.Numbers, working.Number{Name: "current of " + name, Value: c.Load.Current})
	}
	if most, ok := c.Most.Get(); ok {
		g.Numbers = append(g.Numbers, working.Number{Name: "most it could be fed", Value: most})
	}
	return g
}

// findings returns what is wrong at the end of a branch and along its feeder.
func (p Point) findings(b Branch, way feeder) (list []working.Finding) {
	name := "Branch " + strconv.Quote(p.Name)
	if limit, ok := b.Limit.Get(); ok && units.Exceeds(p.Current, limit) {
		list = append(list, working.Finding{
			Severity: working.Danger, Rule: "feeder-above-limit", Source: givenLimit,
			Message: name + ": the feeder carries more than its limit, all that is fed from here taken together.",
			Numbers: []working.Number{{Name: "current", Value: p.Current}, {Name: "limit", Value: limit}, {Name: "heat along it", Value: p.Heat}},
			Fix:     "Use a larger conductor with protection to suit, or move loads to a feeder of their own.",
		})
	}
	if size := way.perLength.Conductor.Size; size.IsValid() && p.Current > 0 {
		if heat := heatFinding(p.Current, size); heat.Severity > working.Note {
			heat.Message = name + ": " + heat.Message
			list = append(list, heat)
		}
	}
	if lowest, ok := b.Lowest.Get(); ok && units.Exceeds(lowest, p.Voltage) {
		list = append(list, working.Finding{
			Severity: working.Caution, Rule: "voltage-below-lowest", Source: givenLimit,
			Message: name + ": the voltage is below what is allowed there.",
			Numbers: []working.Number{{Name: "voltage", Value: p.Voltage}, {Name: "lowest", Value: lowest}, {Name: "drop in this feeder alone", Value: p.Drop}},
			Fix:     "Use a larger or shorter feeder where most is lost on the way, or a bank that sags less.",
		})
	}
	return list
}

// findings returns what is wrong with one battery of the row.
func (s Share) findings(f *Flow) (list []working.Finding) {
	name := "Battery " + strconv.Quote(s.Battery.Name)
	if s.Battery.Name == "" {
		name = "The battery"
	}
	current := working.Number{Name: "current", Value: s.Current}
	equal := units.Scale(f.Current, units.Ratio(1/float64(len(f.Shares))))
	if limit, ok := s.Battery.Limit.Get(); ok && units.Exceeds(s.Current, limit) {
		over := working.Finding{
			Severity: working.Caution, Rule: "battery-above-limit", Source: givenLimit,
			Message: name + " gives more than its limit; its protection can open, and everything goes dark.",
			Numbers: []working.Number{current, {Name: "limit", Value: limit}},
			Fix:     "Draw less, or use a battery that gives more.",
		}
		if len(f.Shares) > 1 {
			over.Message = name + " gives more than its limit; if its protection opens, the others must carry its part too."
			over.Numbers = append(over.Numbers, working.Number{Name: "equal share", Value: equal})
			over.Fix = "Take the harness off at opposite ends of the row, use links of less resistance, or draw less."
		}
		list = append(list, over)
	}
	if f.Current > 0 && len(f.Shares) > 1 && units.Exceeds(s.Current, units.Scale(equal, 1+unequalShare)) {
		list = append(list, working.Finding{
			Severity: working.Caution, Rule: "share-unequal", Source: shareRule,
			Message: name + " carries more than its share, so it is spent and worn before the others.",
			Numbers: []working.Number{current, {Name: "equal share", Value: equal}, {Name: "part of the whole", Value: s.Fraction}},
			Fix:     "Use batteries alike in voltage and resistance, take plus off at one end of the row and minus at the other, or give each battery leads of one length to common bars.",
		})
	}
	return append(list, s.idleFindings(f, name)...)
}

// idleFindings returns what happens to a battery that others of the row charge.
func (s Share) idleFindings(f *Flow, name string) (list []working.Finding) {
	taken, own := -s.Idle, s.Battery.Voltage
	// Told by the voltage at its posts, since a current that is only the
	// rounding of others moves none of its nine digits.
	charged := units.Exceeds(s.Terminal, own)
	if charged || units.Exceeds(own+taken.Through(s.Battery.Resistance), own) {
		g := working.Finding{
			Severity: working.Note, Rule: "circulating-current", Source: alikeRule,
			Message: name + " is charged by the others when nothing is drawn, since its own voltage is lower.",
			Numbers: []working.Number{{Name: "charge without any load", Value: taken}, {Name: "its open-circuit voltage", Value: own}, {Name: "current now", Value: s.Current}},
			Fix:     "Bring batteries to one voltage before they are joined.",
		}
		highest := slices.Max(f.volts)
		switch {
		case !s.Battery.ChargeLimit.IsSet() && units.Exceeds(highest, units.Scale(own, 1+farUnlike)):
			g.Severity, g.Source = working.Danger, farUnlikeRule
			g.Message += " So far apart are only batteries of unlike kind, or full and empty ones: what flows between them is held by nothing but the " +
				"resistance of cables and batteries, and can heat both, burn a cable or make a battery gas."
			g.Numbers = append(g.Numbers, working.Number{Name: "highest open-circuit voltage", Value: highest})
			g.Fix = "Do not join them: take them apart with the circuit switched off, give each kind a bus and a charger of its own, and bring alike ones to one voltage first."
		case charged || units.Exceeds(highest, units.Scale(own, 1+unlikeVoltage)):
			g.Severity = working.Caution
			g.Message += " Batteries of unlike kind, age or charge are joined."
			g.Fix = "Do not join unlike batteries; bring alike ones to one voltage before they are joined."
		}
		list = append(list, g)
	}
	worst := max(taken, -s.Current)
	if limit, ok := s.Battery.ChargeLimit.Get(); ok && units.Exceeds(worst, limit) {
		list = append(list, working.Finding{
			Severity: working.Danger, Rule: "battery-charged-above-limit", Source: givenLimit,
			Message: name + " is charged by the others with more than it may take.",
			Numbers: []working.Number{{Name: "charge", Value: worst}, {Name: "limit", Value: limit}},
			Fix:     "Have the batteries taken apart and checked before anything else is done with them.",
		})
	}
	return list
}

// unjudged says, once each, for how many branches a limit is missing.
func (f *Flow) unjudged() (list []working.Finding) {
	var noLimit, noLowest []string
	noBattery := 0
	for _, s := range f.Shares {
		if !s.Battery.Limit.IsSet() && s.Current > 0 {
			noBattery++
		}
	}
	for i, b := range f.harness.net.Branches {
		if i >= len(f.Points) {
			break
		}
		if p := f.Points[i]; !b.Limit.IsSet() && p.Current > 0 && p.Resistance > 0 {
			noLimit = append(noLimit, b.Name)
		}
		if f.Points[i].Drawn > 0 && !b.Lowest.IsSet() {
			noLowest = append(noLowest, b.Name)
		}
	}
	if len(noLimit) > 0 {
		list = append(list, working.Finding{
			Severity: working.Note, Rule: "feeder-limit-not-given", Source: ohmsLaw,
			Message: "No limit is given for " + listed("feeder", noLimit) + ", so neither ampacity nor protection is judged there.",
			Numbers: []working.Number{{Name: "feeders", Value: units.Ratio(len(noLimit)), Unit: "1"}},
			Fix:     "Give each the limit that its ampacity and protection set.",
		})
	}
	if len(noLowest) > 0 {
		list = append(list, working.Finding{
			Severity: working.Note, Rule: "lowest-voltage-not-given", Source: ohmsLaw,
			Message: "No lowest voltage is given for " + listed("load", noLowest) + ", so what they get is not judged.",
			Numbers: []working.Number{{Name: "loads", Value: units.Ratio(len(noLowest)), Unit: "1"}},
			Fix:     "Say what voltage each load needs.",
		})
	}
	if noBattery > 0 {
		list = append(list, working.Finding{
			Severity: working.Note, Rule: "battery-limit-not-given", Source: ohmsLaw,
			Message: "No limit is given for batteries that carry current, so their currents are not judged.",
			Numbers: []working.Number{{Name: "batteries", Value: units.Ratio(noBattery), Unit: "1"}},
			Fix:     "Give each the greatest current that its maker or its protection allows.",
		})
	}
	return list
}

// listed names a few things of a kind.
func listed(kind string, names []string) string {
	const few = 3
	text := kind + " "
	if len(names) > 1 {
		text = strconv.Itoa(len(names)) + " " + kind + "s, among them "
		if len(names) <= few {
			text = kind + "s "
		}
	}
	quoted := make([]string, 0, few)
	for _, n := range names[:min(few, len(names))] {
		quoted = append(quoted, strconv.Quote(n))
	}
	return text + strings.Join(quoted, ", ")
}
