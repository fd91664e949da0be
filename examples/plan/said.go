package plan

import (
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// said adds what follows from the parts together, and the cautions.
func (m *maker) said() {
	m.starts()
	m.gap()
	m.deadLoads()
	m.alarm()
	m.pedestal()
	m.inlet()
	m.adapter()
	m.plan.Cautions = append(m.plan.Cautions, working.DeferToCode)
	if m.rig.Roof != nil {
		m.plan.Cautions = append(m.plan.Cautions, "Panels in daylight cannot be switched off. Cover them before you open a connection.")
	}
	m.plan.Cautions = append(m.plan.Cautions, "A bank can weld a tool and start a fire. Disconnect it before you work on anything it feeds.")
}

// deadLoads says which loads must not stop and do, as soon as shore power is
// gone.
func (m *maker) deadLoads() {
	for _, l := range m.book.Lines {
		if !l.MustNotStop || !m.dead(l.Bus.Name) {
			continue
		}
		m.find(l.Name, working.Finding{
			Severity: working.Danger, Rule: "must-not-stop-and-dead", Source: physics("who feeds what, as described"),
			Numbers: []working.Number{{Name: "power", Value: l.Power}},
			Message: "This load must not stop, and hangs on \"" + l.Bus.Name + "\", which is dead when shore power is gone. It is in none of the hold-up times.",
			Fix:     "Move it to a bus that the bank or the inverter feeds.",
		})
	}
}

// alarm says when nobody is told that shore power is gone.
func (m *maker) alarm() {
	critical, direct := "", ""
	for _, l := range m.book.Lines {
		if l.MustNotStop && critical == "" {
			critical = l.Name
		}
		if l.Bus.Kind == loads.Direct {
			direct = l.Bus.Name
		}
	}
	if critical == "" || m.rig.Inverter == nil && m.rig.Shore == nil {
		return
	}
	var numbers []working.Number
	if t, ok := m.plan.Bank.AtMustNotStop.Get(); ok {
		numbers = append(numbers, working.Number{Name: "until the bank is empty on what must not stop", Value: t, Unit: "h"})
	}
	f := working.Finding{Severity: working.Caution, Rule: "silent-failover", Numbers: numbers,
		Source: common("an alarm must not depend on what it reports"),
		Fix:    "Fit an alarm that the bank feeds and that somebody far away receives; try it with the plug pulled."}
	switch a := m.rig.Alarm; {
	case a == nil:
		f.Message = "Nobody is told when shore power drops: " + m.takesOver() + " in silence and the bank goes down. \"" + critical + "\" must not stop."
	case m.dead(a.Bus):
		f.Message = "The alarm hangs on \"" + a.Bus + "\", which is dead when shore power is gone."
	default:
		return
	}
	if direct != "" {
		f.Fix += " The bus \"" + direct + "\" keeps its power."
	}
	m.find("alarm", f)
}

// takesOver says what carries on when shore power is gone.
func (m *maker) takesOver() string {
	if m.rig.Inverter != nil {
		return "the inverter takes over"
	}
	return "the bank carries on alone"
}

// dead reports whether a bus is dead without shore power.
func (m *maker) dead(name string) bool {
	b, _ := m.bus(name)
	return b.Kind == loads.Alternating && b.Behind == ""
}

// pedestal says what a voltage that was measured without load is worth.
func (m *maker) pedestal() {
	s := m.rig.Shore
	if s == nil {
		return
	}
	measured, ok := s.Measured.Get()
	if !ok || s.Loaded {
		return
	}
	numbers := []working.Number{{Name: "measured", Value: measured}}
	if drop, ok := m.cordDrop(); ok {
		numbers = append(numbers, working.Number{Name: "the cord alone takes", Value: drop.Voltage}, working.Number{Name: "at", Value: drop.Run.Current})
	}
	m.find("shore", working.Finding{
		Severity: working.Note, Rule: "measured-without-load", Numbers: numbers, Source: physics("Ohm's law"),
		Message: "The pedestal's voltage was read with nothing on. It says nothing about what is left under load.",
		Fix:     "Read it again with a large load running, at the pedestal and inside.",
	})
}

// adapter says when a receptacle is larger than the cord, or smaller than the
// service.
func (m *maker) adapter() {
	s := m.rig.Shore
	if s == nil {
		return
	}
	receptacle, ok := s.Receptacle.Get()
	if ok && units.Exceeds(s.Service, receptacle) {
		m.find("shore", working.Finding{
			Severity: working.Caution, Rule: "outlet-below-service",
			Numbers: []working.Number{{Name: "outlet", Value: receptacle}, {Name: "service of the trailer", Value: s.Service}},
			Source:  common("an adapter changes the plug and not what stands behind it"),
			Message: "The outlet carries less than the trailer's own main lets pass, so the outlet's device opens first, or the outlet and the adapter overheat. What shore power carries is counted by the outlet.",
			Fix:     "Use no more than the outlet carries, and look at both plugs for heat.",
		})
	}
	if !ok || !units.Exceeds(receptacle, s.Service) {
		return
	}
	m.find("shore", working.Finding{
		Severity: working.Caution, Rule: "cord-behind-larger-device",
		Numbers: []working.Number{{Name: "receptacle", Value: receptacle}, {Name: "service of the trailer", Value: s.Service}},
		Source:  common("an adapter changes the plug and not the protection"),
		Message: "The cord and the adapter stand behind a larger device than they are made for. Only the trailer's own main protects them from overload, and the capacity stays that of the trailer.",
		Fix:     "Tap nothing before the trailer's main, keep the cord uncoiled, and look at both plugs for heat.",
	})
}
