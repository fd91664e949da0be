package plan

import (
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units/working"
)

// A wanted run is one that a machine of the description must have.
type wantedRun struct {
	machine string
	kind    loads.BusKind
	from    string // the other end that tells it from the machine's other runs; empty for any but those
}

// inverterRun is the first of the runs that are missed.
const inverterRun = "bank - inverter"

// unwiredMachines says which runs of the inverter and the chargers no circuit
// describes. The cable of the inverter, the thickest that the bank can burn, is
// a caution; what else is left out is said.
func (m *maker) unwiredMachines() {
	if len(m.rig.Circuits) == 0 {
		return // no circuit at all is found elsewhere
	}
	var atBank, others []string
	want := func(is bool, list *[]string, route string, run wantedRun) {
		if is && !m.hasRun(run) {
			*list = append(*list, route)
		}
	}
	r := m.rig
	want(r.Inverter != nil, &atBank, inverterRun, wantedRun{"inverter", loads.Direct, ""})
	want(r.Converter != nil, &atBank, "converter - bank", wantedRun{"converter", loads.Direct, ""})
	want(r.Roof != nil, &atBank, "controller - bank", wantedRun{"controller", loads.Direct, ""})
	want(r.Tow != nil, &atBank, "tow charger - bank", wantedRun{"tow charger", loads.Direct, ""})
	want(r.Converter != nil, &others, "what feeds the converter", wantedRun{"converter", loads.Alternating, ""})
	want(r.Roof != nil, &others, "roof - controller", wantedRun{"controller", loads.Direct, "roof"})
	want(r.Tow != nil, &others, "tow vehicle - tow charger", wantedRun{"tow charger", loads.Direct, "tow vehicle"})
	if len(atBank) > 0 {
		severity := working.Note
		if atBank[0] == inverterRun {
			severity = working.Caution
		}
		m.find("circuits", working.Finding{
			Severity: severity, Rule: "bank-runs-without-circuit", Source: asDescribed(),
			Message: "No circuit describes these runs, so their conductors and devices were not looked at; the bank drives a short in them: " + strings.Join(atBank, ", ") + ".",
			Fix:     "Describe each, with its device at the bank.",
		})
	}
	if len(others) > 0 {
		m.find("circuits", working.Finding{
			Severity: working.Note, Rule: "runs-without-circuit", Source: asDescribed(),
			Message: "No circuit describes these runs, so they were not looked at: " + strings.Join(others, ", ") + ".",
			Fix:     "Describe their circuits.",
		})
	}
}

// hasRun reports whether a circuit is that run. What comes from the panels or
// the tow vehicle is not the run towards the bank.
func (m *maker) hasRun(w wantedRun) bool {
	for _, c := range m.rig.Circuits {
		bus, _ := m.bus(c.Bus)
		other := c.From
		switch {
		case bus.Kind != w.kind || c.From != w.machine && c.To != w.machine:
			continue
		case c.From == w.machine:
			other = c.To
		}
		if other == w.from || w.from == "" && other != "roof" && other != "tow vehicle" {
			return true
		}
	}
	return false
}
