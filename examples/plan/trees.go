package plan

import (
	"slices"
	"strconv"
	"strings"
)

// isFedBy reports whether the circuit of a name is among the feeders of c.
func isFedBy(r Rig, c Circuit, name string) bool {
	for range r.Circuits {
		feeder, known := circuitIn(r, c.Feeder)
		if !known {
			return false
		}
		if feeder.Name == name {
			return true
		}
		c = feeder
	}
	return false
}

// wholeTree reports whether no mistake is known of a circuit and those that it
// feeds, nor of what is at their ends.
func (m *maker) wholeTree(c Circuit) bool {
	for i, other := range m.rig.Circuits {
		if other.Name != c.Name && !isFedBy(m.rig, other, c.Name) {
			continue
		}
		if !m.sound("circuits["+strconv.Itoa(i)+"]") || !m.allSound(m.restsOn(other)) {
			return false
		}
	}
	return true
}

// restsOn returns the paths of what a circuit rests on.
func (m *maker) restsOn(c Circuit) string {
	var paths strings.Builder
	add := func(is bool, more string) {
		if is {
			paths.WriteString(more + " ")
		}
	}
	end := func(name string) bool { return c.From == name || c.To == name }
	_, feeds := m.busNeed(c)
	add(m.isDirect(c.Bus), bankParts)
	add(feeds, loadParts+"converter")
	add(end("inverter"), "buses inverter")
	add(end("converter"), "converter")
	add(end("tow charger"), "tow")
	add(end("roof") || end("controller"), "roof")
	for i, b := range m.rig.Buses {
		// Another that has lost its name may be the one that is meant.
		add(b.Name == c.Bus || b.Name == "", "buses["+strconv.Itoa(i)+"]")
	}
	_, known := m.bus(c.Bus)
	add(!known, "buses")
	for i, l := range m.rig.Loads {
		add(slices.Contains(c.Loads, l.Name), "loads["+strconv.Itoa(i)+"]")
	}
	return paths.String()
}
