package plan

import (
	"example.com/drawbar/loads"
	"example.com/drawbar/units/working"
)

// passed holds buses of alternating current against the first of them where a
// generator alone feeds them; the shore service has its own check. What it
// feeds passes the inverter as it is.
func (m *maker) passed() {
	if m.rig.Shore != nil || m.rig.Generator == nil {
		return
	}
	var first Bus
	for _, b := range m.rig.Buses {
		switch {
		case b.Kind != loads.Alternating:
		case first.Name == "":
			first = b
		case unlike(b.Voltage, first.Voltage):
			m.find("bus "+b.Name, working.Finding{Severity: working.Danger, Rule: "bus-unlike-bus",
				Source:  common("a bus of alternating current has the voltage of what feeds it"),
				Message: "The generator feeds this bus and \"" + first.Name + "\", which are for different voltages: what is on one of them is damaged, or does not run.",
				Numbers: []working.Number{{Name: "bus", Value: b.Voltage}, {Name: first.Name, Value: first.Voltage}},
				Fix:     "Look at which of the two is stated wrong; a transformer or a leg between them is not described."})
		}
	}
}
