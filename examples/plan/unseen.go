package plan

import (
	"strconv"
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// unseen says what the plan did not look at, since a plan without findings
// reads like a rig without faults.
func (m *maker) unseen() {
	m.unwired()
	m.unwiredMachines()
	m.feeders()
	m.uncharged()
	m.onShoreOnly()
	m.unheard()
}

// asDescribed is the source of what follows from what is left out.
func asDescribed() working.Source { return physics("what the description has, and has not") }

// unwired says which loads have no circuit.
func (m *maker) unwired() {
	if len(m.rig.Circuits) == 0 {
		m.find("circuits", working.Finding{
			Severity: working.Caution, Rule: "no-circuits", Source: asDescribed(),
			Message: "No circuit is described: no conductor, no fuse and no voltage drop was looked at.",
			Fix:     "Describe the wiring, first what begins at the bank.",
		})
		return
	}
	wired := map[string]bool{}
	for _, c := range m.rig.Circuits {
		for _, name := range c.Loads {
			wired[name] = true
		}
	}
	var without []string
	for _, l := range m.rig.Loads {
		if !wired[l.Name] {
			without = append(without, l.Name)
		}
	}
	if len(without) > 0 {
		m.find("circuits", working.Finding{
			Severity: working.Note, Rule: "loads-without-circuit", Source: asDescribed(),
			Message: "No circuit names these loads, so the wiring to them was not looked at: " + few(without) + ".",
			Fix:     "Describe their circuits, with the loads by name.",
		})
	}
}

// few lists some names and counts the rest.
func few(names []string) string {
	const most = 6
	if len(names) <= most+1 {
		return strings.Join(names, ", ")
	}
	return strings.Join(names[:most], ", ") + " and " + strconv.Itoa(len(names)-most) + " more"
}

// feeders says where the way back to the source is not described.
func (m *maker) feeders() {
	for _, c := range m.rig.Circuits {
		feeder, ok := m.circuitNamed(c.Feeder)
		switch {
		case ok && !samePlace(m.rig, feeder.To, c.From):
			m.find(c.Name, working.Finding{
				Severity: working.Caution, Rule: "feeder-ends-elsewhere", Source: asDescribed(),
				Message: "The feeder of this circuit ends at \"" + feeder.To + "\", and the circuit begins at \"" + c.From + "\".",
				Numbers: []working.Number{{Name: "length of the feeder", Value: feeder.Length}},
				Fix:     "Look at which circuit feeds it, or give both ends one name.",
			})
		case !ok && m.wantsFeeder(c):
			upTo := "up to the bank"
			if !m.isDirect(c.Bus) {
				upTo = "up to the inverter, the generator or the shore inlet"
			}
			m.find(c.Name, working.Finding{
				Severity: working.Note, Rule: "feeder-not-stated", Source: asDescribed(),
				Message: "No feeder is named: what is lost on the way to this circuit and the fault that its device must break are not looked at.",
				Fix:     "Name the circuit that feeds it in feeder, and describe that one " + upTo + ".",
			})
		}
	}
}

// wantsFeeder reports whether something must feed a circuit: one of direct
// current that begins at no machine, or one that begins where another ends.
func (m *maker) wantsFeeder(c Circuit) bool {
	for _, name := range machines() {
		if c.From == name {
			return false
		}
	}
	bus, _ := m.bus(c.Bus)
	if bus.Kind == loads.Direct {
		return !bus.ThroughConverter.IsSet()
	}
	for _, other := range m.rig.Circuits {
		if samePlace(m.rig, other.To, c.From) {
			return true
		}
	}
	return false
}

// uncharged says when nothing fills the bank.
func (m *maker) uncharged() {
	if m.rig.Converter != nil || m.rig.Roof != nil || m.rig.Tow != nil {
		return
	}
	m.find("bank", working.Finding{
		Severity: working.Caution, Rule: "nothing-charges", Source: asDescribed(),
		Numbers: []working.Number{{Name: "usable", Value: m.plan.Bank.Usable}, {Name: "use a day", Value: m.plan.Use.Energy}},
		Message: "Nothing that is described charges the bank, so charging was not looked at and the bank only goes down.",
		Fix:     "Describe converter, roof or tow.",
	})
}

// onShoreOnly says which loads have hours on this day and hang on a bus that is
// dead without shore or generator. Those that must not stop are found
// elsewhere.
func (m *maker) onShoreOnly() {
	var names []string
	var energy units.Energy
	for _, l := range m.book.Lines {
		if l.Energy > 0 && !l.MustNotStop && m.dead(l.Bus.Name) {
			names = append(names, l.Name)
			energy += l.Energy
		}
	}
	if len(names) == 0 {
		return
	}
	f := working.Finding{
		Severity: working.Note, Rule: "runs-on-shore-only", Source: physics("who feeds what, as described"),
		Numbers: []working.Number{{Name: "a day", Value: energy}},
		Message: "These loads have hours on this day and run on shore or generator only; the bank's use and hours leave them out: " + few(names) + ".",
		Fix:     "Give them 0 h on a day without, or move them to a bus that the bank or the inverter feeds.",
	}
	if m.rig.Shore == nil && m.rig.Generator == nil {
		f.Severity, f.Rule = working.Caution, "never-runs"
		f.Message = "These loads have hours on this day, and no source that is described feeds them: " + few(names) + "."
		f.Fix = "Describe shore or generator, or move them to a bus that the bank or the inverter feeds."
	}
	m.find("loads", f)
}

// unheard says why nobody asked for an alarm.
func (m *maker) unheard() {
	f := working.Finding{Severity: working.Note, Rule: "alarm-not-looked-at", Source: asDescribed()}
	critical := false
	for _, l := range m.rig.Loads {
		critical = critical || l.MustNotStop
	}
	switch {
	case !critical:
		f.Message = "Whether anybody is told when the power is gone was not looked at, since no load is marked must_not_stop."
		f.Fix = "Mark what must go on with nobody there: medicine, pets, a freezer, a detector."
	case m.rig.Inverter == nil && m.rig.Shore == nil:
		f.Message = "Neither shore nor inverter is described, so whether anybody is told when the power is gone was not looked at. Loads must not stop here, and the bank can run empty."
		f.Fix = "Fit an alarm on the voltage of the bank that somebody far away receives."
	default:
		return
	}
	m.find("alarm", f)
}
