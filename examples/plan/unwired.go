package plan

import (
	"slices"
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units/working"
)

// machinesWithoutCircuit says of which machines on the bank no conductor is
// described: a bank drives a fault in each of those, and a description without
// the thickest cable has nothing to find wrong with it.
func (m *maker) machinesWithoutCircuit() {
	direct := func(has func(Circuit) bool) bool {
		return slices.ContainsFunc(m.rig.Circuits, func(c Circuit) bool {
			bus, _ := m.bus(c.Bus)
			return bus.Kind == loads.Direct && has(c)
		})
	}
	var without []string
	ask := func(there bool, name string, has func(Circuit) bool) {
		if there && !direct(has) {
			without = append(without, name)
		}
	}
	r := m.rig
	ask(r.Inverter != nil, "inverter", func(c Circuit) bool { return c.To == "inverter" })
	ask(r.Converter != nil, "converter", func(c Circuit) bool { return c.From == "converter" || c.To == "converter" })
	ask(r.Roof != nil, "controller", func(c Circuit) bool { return c.From == "controller" })
	ask(r.Tow != nil, "tow charger", func(c Circuit) bool { return c.From == "tow charger" })
	if len(without) == 0 {
		return
	}
	m.find("circuits", working.Finding{
		Severity: working.Caution, Rule: "machines-without-circuit", Source: asDescribed(),
		Message: "No circuit is described between the bank and these, so neither conductor nor fuse was looked at, and the bank can burn each of them: " + strings.Join(without, ", ") + ".",
		Fix:     "Describe the circuit of each, with the device at the bank.",
	})
}
