package plan

import (
	"encoding"
	"errors"
	"fmt"
	"strconv"

	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// mainPanel is what shore service and generator feed.
const mainPanel = "the main panel"

// hazards says which sources can feed a panel at once, and what an engine
// breathes out.
func (m *maker) hazards() {
	meetings, err := inverter.Meetings(m.reaches())
	if !m.ok("generator", err) {
		return
	}
	for _, one := range meetings {
		where := "inverter"
		if one.Panel == mainPanel {
			where = "generator"
		}
		m.sheet(where, one.Working())
		m.find(where, one.Findings()...)
	}
	if m.rig.Generator == nil {
		return
	}
	exhaust, err := inverter.CarbonMonoxide(inverter.Engine{Name: "the generator", Site: m.rig.Generator.Site})
	if !m.ok("generator", err) {
		return
	}
	m.find("generator", exhaust.Findings()...)
}

// guards refuses what a description in Go can have and none in text.
func (m *maker) guards() {
	check := func(path string, v encoding.TextMarshaler) {
		var limits *units.RangeError
		if _, err := v.MarshalText(); errors.As(err, &limits) {
			m.fail(path, strconv.Quote(fmt.Sprint(v)), limits.Allowed.String())
		}
	}
	if i := m.rig.Inverter; i != nil {
		check("inverter.transfer", i.Transfer)
	}
	if g := m.rig.Generator; g != nil {
		check("generator.transfer", g.Transfer)
		check("generator.site", g.Site)
	}
}

// reaches lists the sources of each panel, the main panel being one of those
// behind the inverter.
func (m *maker) reaches() (list []inverter.Reach) {
	r := m.rig
	if r.Shore != nil && r.Generator != nil {
		list = append(list, reach("shore power", mainPanel, r.Generator.Transfer), reach("the generator", mainPanel, r.Generator.Transfer))
	}
	if r.Inverter == nil || r.Shore == nil && r.Generator == nil {
		return list
	}
	transfer := r.Inverter.Transfer
	if transfer == 0 && r.Inverter.PassRelay.IsSet() {
		transfer = inverter.TransferSwitch
	}
	for _, b := range r.Buses {
		if b.Kind == loads.Alternating && b.Behind == "inverter" {
			panel := strconv.Quote(b.Name)
			list = append(list, reach(mainPanel, panel, transfer), reach("the inverter", panel, transfer))
		}
	}
	return list
}

// reach is a source of a panel whose two sources have the same guard.
func reach(source, panel string, guard inverter.GuardKind) inverter.Reach {
	r := inverter.Reach{Source: source, Panel: panel}
	switch guard {
	case 0:
	case inverter.NoGuard:
		r.Guards = []inverter.Guard{{Kind: guard}}
	default:
		r.Guards = []inverter.Guard{{Kind: guard, Name: "what feeds " + panel}}
	}
	return r
}

// reachNote says how the generator reaches the main panel.
func reachNote(guard inverter.GuardKind, shore bool) string {
	switch {
	case !shore && (guard == 0 || guard == inverter.NoGuard):
		return "no shore power is described"
	}
	switch guard {
	case 0:
		return "how it is kept apart from shore power is not stated"
	case inverter.OneInlet:
		return "through the shore inlet"
	case inverter.NoGuard:
		return "nothing keeps it apart from shore power"
	}
	return "kept apart from shore power by: " + guard.String()
}

// bondsDescribed says so if the description has no word of bonds, of which a
// count would be no count. An empty list says that there are none.
func (m *maker) bondsDescribed() bool {
	if m.rig.Bonds != nil {
		return true
	}
	m.find("bonds", working.Finding{
		Severity: working.Caution, Rule: "bonds-not-described", Source: common("one bond of neutral and ground, at the active source"),
		Message: "Where neutral and ground are joined is not described, so nothing is judged: no bond leaves a fault undetected, a second puts load current on the frame.",
		Fix:     "Find where they are joined with each source, or have it measured, and state it; an empty list states that they are joined nowhere.",
	})
	return false
}
