package plan

import (
	"slices"

	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// sets lists what is too much together, on the inverter and on the service.
func (m *maker) sets() {
	var backed, all, hours []inverter.Demand
	for i, line := range m.book.Lines {
		if line.Bus.Kind == loads.Direct || line.Power == 0 {
			continue
		}
		d := demandOf(line, m.rig.Loads[i].LockedRotor)
		if all = append(all, d); m.behind(line.Bus.Name) {
			backed = append(backed, d)
		}
		// How long one runs that is off on this day is not known.
		if line.Hours == 0 || !units.Exceeds(forHours, line.Hours) {
			hours = append(hours, d)
		}
	}
	if m.rig.Inverter != nil && len(backed) > 0 {
		m.overloads("inverter", m.machine().Limit(), backed)
	}
	if m.rig.Shore == nil {
		return
	}
	if m.rig.Converter != nil {
		if use, ok := m.charger(); ok {
			charger := use.Demand(freeName("converter", all))
			all, hours = append(all, charger), append(hours, charger)
		}
	}
	service := inverter.Limit{Name: "shore service", Current: units.Some(m.rig.Shore.Service), Voltage: m.rig.Shore.Voltage}
	if len(all) > 0 {
		m.overloads("shore", service, all)
	}
	if len(hours) > 0 {
		service.Share = units.Some(inverter.ContinuousShare)
		m.overloads("shore", service, hours)
	}
}

// freeName returns name, or with words added if a demand bears it.
func freeName(name string, demands []inverter.Demand) string {
	for slices.ContainsFunc(demands, func(d inverter.Demand) bool { return d.Name == name }) {
		name += " of the bank"
	}
	return name
}

// mostInSets is how many loads a search for sets takes.
const mostInSets = 20

// overloads lists the smallest sets above a limit that are not listed yet.
func (m *maker) overloads(on string, limit inverter.Limit, demands []inverter.Demand) {
	if len(demands) > mostInSets {
		demands = slices.Clone(demands)
		slices.SortStableFunc(demands, func(a, b inverter.Demand) int { return units.Compare(b.Power, a.Power) })
		left := demands[mostInSets]
		demands = demands[:mostInSets]
		m.find(on, working.Finding{
			Severity: working.Note, Rule: "sets-of-the-largest", Source: physics("sets of 20 loads at most"),
			Numbers: []working.Number{{Name: "largest that is left out", Value: left.Power}},
			Message: "The sets that are too much together are those of the 20 largest loads.",
			Fix:     "Join small loads into one row to have them counted.",
		})
	}
	o, err := inverter.Sets(limit, demands)
	if !m.ok(on, err) {
		return
	}
	m.sheet("together on "+on, o.Working())
	for _, s := range o.Sets {
		m.plan.Sets = append(m.plan.Sets, setLine(on, o, s))
	}
}
