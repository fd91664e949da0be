package plan

import (
	"slices"
	"strconv"
	"strings"

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
		m.overloads("inverter", m.machine().Limit(), backed, "over")
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
		m.overloads("shore", service, all, "trips")
	}
	if len(hours) > 0 {
		service.Share = units.Some(inverter.ContinuousShare)
		m.overloads("shore", service, hours, "too much for hours")
	}
}

// freeName returns name, or with words added if a demand bears it.
func freeName(name string, demands []inverter.Demand) string {
	for slices.ContainsFunc(demands, func(d inverter.Demand) bool { return d.Name == name }) {
		name += " of the bank"
	}
	return name
}

// How many loads a search for sets takes, and how many sets a plan lists for
// one limit.
const (
	mostInSets = 20
	mostRows   = 20
)

// overloads lists the smallest sets above a limit that are not listed yet.
func (m *maker) overloads(on string, limit inverter.Limit, demands []inverter.Demand, what string) {
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
	kinds := kindsOf(o)
	rest := max(0, len(kinds)-mostRows)
	kinds = kinds[:len(kinds)-rest]
	o.Sets = nil
	for _, k := range kinds {
		o.Sets = append(o.Sets, k.set)
		m.plan.Sets = append(m.plan.Sets, SetLine{On: on, Loads: o.Names(k.set.Members), Note: noteOf(k, what)})
	}
	if rest > 0 {
		m.plan.Sets = append(m.plan.Sets, SetLine{On: on, Loads: []string{}, Note: "and " + strconv.Itoa(rest) + " more: " + what})
	}
	m.sheet(o.Working())
}

// A setKind is a set and how many more differ from it in nothing but which of
// several like loads are in it.
type setKind struct {
	set   inverter.Set
	alike int
}

// kindsOf gathers the sets of an overload, in its order.
func kindsOf(o inverter.Overload) (kinds []setKind) {
	like := make([]int, len(o.Demands)) // index of the first demand like this one
	for i, d := range o.Demands {
		like[i] = slices.IndexFunc(o.Demands, func(e inverter.Demand) bool {
			d.Name = e.Name
			return d == e
		})
	}
	index := map[string]int{}
	for _, s := range o.Sets {
		var key []string
		for i := range s.Members.All() {
			key = append(key, strconv.Itoa(like[i]))
		}
		slices.Sort(key)
		k, ok := index[strings.Join(key, " ")]
		if !ok {
			k = len(kinds)
			index[strings.Join(key, " ")] = k
			kinds = append(kinds, setKind{set: s, alike: -1})
		}
		kinds[k].alike++
	}
	return kinds
}

// noteOf says what a set exceeds.
func noteOf(k setKind, what string) string {
	note := what + ": " + units.Significant(float64(k.set.Apparent), 4) + " VA"
	if k.set.OverCurrent {
		note = what + ": " + units.Significant(float64(k.set.Current), 3) + " A"
	} else if k.set.OverPower {
		note = what + ": " + units.Significant(float64(k.set.Power), 4) + " W"
	}
	if k.alike > 0 {
		note += "; so do " + strconv.Itoa(k.alike) + " more sets of loads like these"
	}
	return note
}
