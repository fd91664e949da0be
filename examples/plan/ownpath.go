package plan

import (
	"slices"

	"example.com/drawbar/loads"
	"example.com/drawbar/units/working"
)

// behindFeeder returns the loads of a bus that get their current through a
// circuit that feeds it: all but those with a way of their own from a source.
func (m *maker) behindFeeder(c Circuit, bus string) (list []loads.Line) {
	for _, l := range m.book.Lines {
		if l.Bus.Name == bus && !m.ownWay(l.Name, c) {
			list = append(list, l)
		}
	}
	return list
}

// ownWay reports whether a load is named by a circuit whose feeders lead to a
// source, and not by way of c.
func (m *maker) ownWay(load string, c Circuit) bool {
	for _, d := range m.rig.Circuits {
		if slices.Contains(d.Loads, load) && m.avoids(d, c) {
			return true
		}
	}
	return false
}

// avoids reports whether the way from a source to d is described, and c is not
// on it.
func (m *maker) avoids(d, c Circuit) bool {
	for range m.rig.Circuits {
		if d.Name == c.Name {
			return false
		}
		feeder, ok := m.circuitNamed(d.Feeder)
		if !ok {
			break
		}
		d = feeder
	}
	return slices.Contains(machines(), d.From)
}

// oneDanger leaves out what the drop says of a load above every table where the
// rule set says that it is above its own: the cause is one.
func oneDanger(found []working.Finding) []working.Finding {
	if !slices.ContainsFunc(found, func(f working.Finding) bool { return f.Rule == "load-above-ampacity" }) {
		return found
	}
	return slices.DeleteFunc(found, func(f working.Finding) bool { return f.Rule == "current-above-any-ampacity" })
}
