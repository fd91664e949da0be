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
}

// takers returns the loads of alternating current, and those of them behind the
// inverter. One without hours on this day may run for hours on another.
func (m *maker) takers() (all, backed []taker) {
	for i, line := range m.book.Lines {
		if line.Bus.Kind == loads.Direct || line.Power == 0 {
			continue
		}
		t := taker{demandOf(line, m.rig.Loads[i].LockedRotor), line.Hours == 0 || !units.Exceeds(forHours, line.Hours)}
		if all = append(all, t); m.behind(line.Bus.Name) {
			backed = append(backed, t)
		}
	}
	return all, backed
}

// sets lists what is too much together and what can run together, on the
// inverter and on the service.
func (m *maker) sets() {
	all, backed := m.takers()
	if m.rig.Inverter != nil {
		m.together("inverter", m.machine().Limit(), backed)
	}
	if m.rig.Shore == nil {
		return
	}
	if m.rig.Converter != nil {
		if use, ok := m.charger(); ok {
			all = append(all, taker{use.Demand(freeName("converter", all)), true})
		}
	}
	service := inverter.Limit{Name: "shore service", Current: units.Some(m.rig.Shore.Service), Voltage: m.rig.Shore.Voltage}
	m.together("shore", service, all)
	service.Share = units.Some(inverter.ContinuousShare)
	m.together("shore", service, slices.DeleteFunc(all, func(t taker) bool { return !t.forHours }))
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
	demands := m.largest(on, takers)
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

// largest returns the demands that a search for sets takes, and says so if
// those are not all.
func (m *maker) largest(on string, takers []taker) (demands []inverter.Demand) {
	for _, t := range takers {
		demands = append(demands, t.Demand)
	}
	if len(demands) <= mostInSets {
		return demands
	}
	slices.SortStableFunc(demands, func(a, b inverter.Demand) int { return units.Compare(b.Power, a.Power) })
	m.find(on, working.Finding{
		Severity: working.Note, Rule: "sets-of-the-largest", Source: physics("sets of 20 loads at most"),
		Numbers: []working.Number{{Name: "largest that is left out", Value: demands[mostInSets].Power}},
		Message: "The sets of loads that are too much together, and those that can run together, are of the 20 largest loads.",
		Fix:     "Join small loads into one row to have them counted.",
	})
	return demands[:mostInSets]
}
