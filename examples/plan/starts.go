package plan

import (
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// startsOn says where a motor starts that the inverter or the generator does
// not start. A surge that is not given starts nothing for sure, and what the
// inverter gives is for what hangs on it.
func (m *maker) startsOn(line loads.Line, start inverter.Start) working.Finding {
	f := working.Finding{Severity: working.Note, Source: physics("locked-rotor current times voltage"),
		Fix: "Plan for that, or fit a soft starter whose maker states what it leaves of the start."}
	other, unknown := false, ""
	ask := func(name string, feeds bool, surge units.Opt[units.ApparentPower]) {
		s, ok := surge.Get()
		switch {
		case !feeds:
		case !ok:
			unknown += " Of the " + name + " no surge is given, so it is not judged."
		default:
			other = other || !units.Exceeds(start.Apparent, s)
		}
	}
	if i := m.rig.Inverter; i != nil {
		ask("inverter", m.behind(line.Bus.Name), i.Surge)
	}
	if g := m.rig.Generator; g != nil {
		ask("generator", true, g.Surge)
	}
	const more = "This motor takes more to start than a source named here gives for a moment. "
	switch {
	case other:
		f.Rule, f.Message = "starts-on-some-sources", more+"Another one starts it."
	case m.rig.Shore == nil:
		f.Severity, f.Rule, f.Message = working.Caution, "starts-on-nothing", more+"No other source that is described starts it for sure."+unknown
	case unknown != "":
		f.Rule, f.Message = "starts-on-shore", more+"Shore power starts it."+unknown
	default:
		f.Rule, f.Message = "starts-on-shore-only", more+"It starts on shore power only."
	}
	return f
}

// startsBacked says when the inverter cannot start a motor that hangs on it,
// and when nobody said what it gives for a moment.
func (m *maker) startsBacked(name string, start inverter.Start) {
	f := working.Finding{Severity: working.Caution, Source: physics("locked-rotor current times voltage")}
	surge, ok := m.rig.Inverter.Surge.Get()
	switch {
	case !ok:
		f.Rule = "surge-not-stated"
		f.Message = "This motor hangs on the inverter, of which no surge is given: whether it starts there is not judged."
		f.Fix = "Give inverter.surge and inverter.surge_for from the datasheet."
		f.Numbers = []working.Number{{Name: "start", Value: start.Apparent}, {Name: "surge of the inverter"}}
	case units.Exceeds(start.Apparent, surge):
		f.Rule = "start-above-inverter"
		f.Message = "This motor hangs on the inverter and takes more to start than the inverter gives for a moment: it does not start, and the inverter trips with all that is behind it."
		f.Fix = "Move it to a bus that only shore power or a large generator feeds, or fit a soft starter whose maker states what it leaves of the start."
		f.Numbers = []working.Number{{Name: "start", Value: start.Apparent}, {Name: "surge of the inverter", Value: surge}}
	default:
		return
	}
	m.find(name, f)
}

// startNotStated says that the start of a motor is not looked at. Small ones
// take several times their current too, but from more than there is to start.
func (m *maker) startNotStated(line loads.Line) {
	if line.Kind != loads.Motor || m.rig.Inverter == nil && m.rig.Generator == nil {
		return
	}
	f := working.Finding{
		Severity: working.Note, Rule: "start-not-stated", Source: common("a motor takes several times its running current while it starts"),
		Numbers: []working.Number{{Name: "running", Value: line.Power}, {Name: "locked rotor"}},
		Message: "The locked-rotor current of this motor is not stated: whether inverter or generator can start it is not judged.",
		Fix:     "Read LRA on its label, and give locked_rotor.",
	}
	if m.behind(line.Bus.Name) {
		f.Severity = working.Caution
		f.Message = "This motor hangs on the inverter and its locked-rotor current is not stated: whether it starts there is not judged."
	}
	m.find(line.Name, f)
}
