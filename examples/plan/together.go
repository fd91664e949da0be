package plan

import (
	"slices"

	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A taker is a load of alternating current as a source sees it.
type taker struct {
	inverter.Demand
	forHours bool // it may run for three hours or more
	backed   bool // it hangs behind the inverter
}

// takers returns the loads of alternating current. One without hours on this
// day may run for hours on another.
func (m *maker) takers() (all []taker) {
	for i, line := range m.book.Lines {
		if line.Bus.Kind == loads.Direct || line.Power == 0 {
			continue
		}
		all = append(all, taker{demandOf(line, m.rig.Loads[i].LockedRotor),
			line.Hours == 0 || !units.Exceeds(forHours, line.Hours), m.behind(line.Bus.Name)})
	}
	return all
}

// sets lists what is too much together and what can run together: on the
// inverter, with a converter that it feeds, and on the service and the
// generator, of which the loads behind the inverter get what may pass it.
func (m *maker) sets() {
	all := m.takers()
	charger := ""
	if m.rig.Converter != nil {
		if use, ok := m.charger(); ok {
			charger = freeName("converter", all)
			all = append(all, taker{use.Demand(charger), true, m.behind(m.rig.Converter.Bus)})
		}
	}
	if m.rig.Inverter != nil {
		m.together("inverter", m.machine().Limit(), slices.DeleteFunc(slices.Clone(all), func(t taker) bool {
			return !t.backed || t.Name == charger && m.rig.Converter.OpensInverting
		}))
	}
	lasting := slices.DeleteFunc(slices.Clone(all), func(t taker) bool { return !t.forHours })
	through := m.through
	if s := m.rig.Shore; s != nil {
		service := inverter.Limit{Name: "shore service", Current: units.Some(s.outlet()), Voltage: s.Voltage, Through: through}
		m.together("shore", service, all)
		if share := s.forHours(); share < units.One {
			service.Share = units.Some(share)
			m.together("shore", service, lasting)
		}
	}
	if g := m.rig.Generator; g != nil {
		// Sold by its watts, it promises no more volt-amperes.
		engine := inverter.Limit{Name: "the generator", Power: units.Some(g.Continuous), Apparent: units.Some(g.Continuous.Apparent(units.One))}
		if v, ok := m.generatorVoltage(); ok && through.IsSet() {
			engine.Through, engine.Voltage = through, v
		}
		m.together("generator", engine, all)
	}
}

// freeName returns name, or with words added if a load bears it.
func freeName(name string, takers []taker) string {
	for slices.ContainsFunc(takers, func(t taker) bool { return t.Name == name }) {
		name += " of the bank"
	}
	return name
}

// mostInSets is how many loads a search for sets takes.
const mostInSets = 20

// together lists the smallest sets above a limit and the largest within it.
func (m *maker) together(on string, limit inverter.Limit, takers []taker) {
	if len(takers) == 0 {
		return
	}
	demands, passes := m.largest(on, m.starting(on, takers))
	if len(demands) == 0 {
		return
	}
	if limit.Passes = passes; passes == 0 {
		limit.Through = units.None[units.Current]()
	}
	o, err := inverter.Sets(limit, demands)
	if !m.ok(on, err) {
		return
	}
	m.sheet("together on "+on, o.Working())
	for _, s := range o.Sets {
		m.plan.Sets = append(m.plan.Sets, setLine(on, limit, "too-much-", demands, s))
	}
	run, err := inverter.CanRun(limit, demands)
	if !m.ok(on, err) {
		return
	}
	if len(run.Sets) > 0 {
		m.sheet("together on "+on, run.Working())
	}
	for _, s := range run.Sets {
		m.plan.Runs = append(m.plan.Runs, setLine(on, limit, "runs-", demands, s))
	}
	for _, f := range append(o.Findings(), run.Findings()...) {
		if f.Rule == "sets-cut-short" {
			m.find(on, f)
		}
	}
}

// starting returns the takers that the inverter or the generator can start, and
// lists the others as too much by themselves.
func (m *maker) starting(on string, takers []taker) (can []taker) {
	var surge units.Opt[units.ApparentPower]
	switch on {
	case "inverter":
		surge = m.rig.Inverter.Surge
	case "generator":
		surge = m.rig.Generator.Surge
	}
	limit, known := surge.Get()
	for _, t := range takers {
		start := t.Start.Or(0)
		if !known || !units.Exceeds(start, limit) {
			can = append(can, t)
			continue
		}
		m.plan.Sets = append(m.plan.Sets, SetLine{On: on, Rule: "too-much-to-start", Loads: []string{t.Name}, Any: []Choice{}, sum: start,
			Numbers: numbersOf([]working.Number{{Name: "together", Value: start}, {Name: "limit", Value: limit}})})
		s := working.NewSheet("To start " + t.Name)
		s.Given("S_start", start, "VA", "while it starts")
		s.Given("S_surge", limit, "VA", "for a moment, of the "+on)
		s.Formula("x", units.RatioOf(start, limit), "1", "times what it gives", "S_start / S_surge")
		s.Test("start against surge", "S_start <= S_surge", false)
		m.sheet("together on "+on, s)
	}
	return can
}

// largest returns the demands that a search for sets takes, with those behind
// the inverter, and says so if those are not all.
func (m *maker) largest(on string, takers []taker) (demands []inverter.Demand, backed inverter.Members) {
	if len(takers) > mostInSets {
		takers = slices.Clone(takers)
		slices.SortStableFunc(takers, func(a, b taker) int { return units.Compare(b.Power, a.Power) })
		m.find(on, working.Finding{
			Severity: working.Note, Rule: "sets-of-the-largest", Source: physics("sets of 20 loads at most"),
			Numbers: []working.Number{{Name: "largest that is left out", Value: takers[mostInSets].Power}},
			Message: "The sets of loads that are too much together, and those that can run together, are of the 20 largest loads.",
			Fix:     "Join small loads into one row to have them counted.",
		})
		takers = takers[:mostInSets]
	}
	for i, t := range takers {
		if demands = append(demands, t.Demand); t.backed {
			backed |= 1 << i
		}
	}
	return demands, backed
}
