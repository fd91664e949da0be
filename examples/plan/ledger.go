package plan

import (
	"errors"
	"slices"
	"strconv"

	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// rows asks of every load whether it makes a row of the ledger. A mistake in
// one hides none in another, nor in the circuit of another.
func (m *maker) rows() {
	for i, l := range m.rig.Loads {
		path := "loads[" + strconv.Itoa(i) + "]"
		b := slices.IndexFunc(m.rig.Buses, func(b Bus) bool { return b.Name == l.Bus })
		if b < 0 || !m.sound(path) || !m.sound(at("buses", b, "name")) || !m.sound(at("buses", b, "kind")) || !m.sound(at("buses", b, "voltage")) {
			continue
		}
		if line, err := loads.Take(busOf(m.rig.Buses[b]), loadOf(l)); m.ok(path, err) {
			m.locked(i, l, line)
			m.book.Lines = append(m.book.Lines, line) // until ledger has all
		}
	}
}

// ledger audits the loads of the day.
func (m *maker) ledger() {
	var buses []loads.Bus
	for _, b := range m.rig.Buses {
		buses = append(buses, busOf(b))
	}
	var list []loads.Load
	for _, l := range m.rig.Loads {
		list = append(list, loadOf(l))
	}
	ledger, err := loads.Audit(buses, list)
	if !m.auditOK(err) {
		return
	}
	m.book = ledger
	for _, line := range ledger.Lines {
		m.sheet(line.Name, line.Working())
		m.plan.Loads = append(m.plan.Loads, LoadLine{Name: line.Name, Bus: line.Bus.Name, Power: line.Power,
			Energy: line.Energy, MustNotStop: line.MustNotStop})
	}
	for _, t := range ledger.Buses {
		m.sheet("bus "+t.Bus.Name, ledger.Working(t.Bus.Name))
		line := BusLine{Name: t.Bus.Name, Voltage: t.Bus.Voltage, Energy: t.Energy,
			Average: t.Average, Peak: t.Connected, Current: t.ConnectedCurrent}
		if line.Charge, _ = t.Charge.Get(); t.Bus.Kind == loads.Alternating {
			line.Apparent = t.ConnectedApparent
		}
		m.plan.Buses = append(m.plan.Buses, line)
	}
	m.sheet("loads", m.allBuses())
	m.heard("loads", ledger.Findings()...)
}

// locked refuses a motor that takes less to start than to run.
func (m *maker) locked(i int, l Load, line loads.Line) {
	each := units.Scale(line.Current, units.RatioOf(units.One, units.Ratio(line.Count)))
	if start, ok := l.LockedRotor.Get(); ok && units.Exceeds(each, start) {
		m.fail(at("loads", i, "locked_rotor"), strconv.Quote(start.String()), "no less than the current of one when it runs, "+each.String())
	}
}

// busOf returns a described bus as package loads takes it.
func busOf(b Bus) loads.Bus { return loads.Bus{Name: b.Name, Kind: b.Kind, Voltage: b.Voltage} }

// loadOf returns a described load as package loads takes it.
func loadOf(l Load) loads.Load {
	return loads.Load{
		Name: l.Name, Bus: l.Bus, Kind: l.Kind, Count: max(l.Count, 1), Duty: l.Duty, Hours: l.Hours, Windows: l.Windows,
		Standby: l.Standby, MustNotStop: l.MustNotStop,
		Rating: loads.Rating{Power: l.Power, Current: l.Current, Apparent: l.Apparent, PowerFactor: l.PowerFactor},
	}
}

// auditOK keeps every mistake that the audit found, at the place of its load
// or bus.
func (m *maker) auditOK(err error) bool {
	if err == nil {
		return true
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range many.Unwrap() {
			m.auditOK(e)
		}
		return false
	}
	var entry *loads.EntryError
	if errors.As(err, &entry) {
		list := map[string]string{"bus": "buses", "load": "loads"}[entry.Entry]
		return m.ok(list+"["+strconv.Itoa(entry.Index)+"]", entry.Err)
	}
	return m.ok("loads", err)
}

// line returns the ledger's line of a load.
func (m *maker) line(name string) (loads.Line, bool) {
	for _, l := range m.book.Lines {
		if l.Name == name {
			return l, true
		}
	}
	return loads.Line{}, false
}

// loadCurrent returns the current of a load at the voltage of its bus.
func (m *maker) loadCurrent(name string) units.Current {
	l, _ := m.line(name)
	return l.Current
}

// demandOf returns what a load looks like to the source that feeds it. It is
// the one place where a row of the ledger becomes a demand.
func demandOf(line loads.Line, lockedRotor units.Opt[units.Current]) inverter.Demand {
	d := inverter.Demand{Name: line.Name, Power: line.Power, Kind: inverter.SteadyLoad}
	if line.Kind == loads.Motor {
		d.Kind = inverter.MotorLoad
	}
	if !line.PowerFactorAssumed {
		d.Apparent = units.Some(line.Apparent)
	}
	if i, ok := lockedRotor.Get(); ok {
		// One of a row starts, the others run.
		others := units.Scale(line.Apparent, units.One-units.RatioOf(units.One, units.Ratio(line.Count)))
		d.Start = units.Some(i.ApparentAt(line.Bus.Voltage) + others)
	}
	return d
}
