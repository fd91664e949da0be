package plan

import (
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// A need is what hangs on a circuit.
type need struct {
	all units.Current // with everything on at once
	// running is what must pass at the least: the largest single load, or all
	// that run for hours. It is all where nothing is switched by itself.
	running units.Current
	// hours is what of it runs for three hours or more without a pause.
	hours units.Current
}

// withoutPause reports whether a load runs so long that it is continuous: one
// that a thermostat switches is not.
func withoutPause(l loads.Line) bool {
	return !units.Exceeds(forHours, l.Hours) && units.Compare(l.Duty, units.One) == 0
}

// forHours is from when on a load is continuous: NEC article 100, "where the
// maximum current is expected to continue for 3 hours or more".
const forHours = 3 * units.Hour

// currentOf returns the greatest current of a circuit: as stated, of the loads
// at its end, or of what it feeds. A stated one below what hangs on it is not
// believed. A circuit that feeds a bus is not taken to carry all of it at once
// if its device opens before that.
func (m *maker) currentOf(path string, c Circuit) (units.Current, []working.Finding, bool) {
	hangs, known := m.hangsOn(c, len(m.rig.Circuits))
	hangs.running = max(hangs.running, min(hangs.all, c.Usual.Or(0)))
	if stated, ok := m.stated(c); ok {
		if p, ok := c.Power.Get(); ok {
			m.sheet(c.Name, currentOfPower(p, m.voltageOf(c), stated))
		}
		if !known || !units.Exceeds(hangs.running, stated) {
			return stated, nil, true
		}
		if working := m.hanging(c, hangs); working != nil {
			m.sheet(c.Name, working)
		}
		return hangs.running, []working.Finding{{
			Severity: working.Caution, Rule: "stated-current-below-load", Source: physics("the sum of what hangs on the circuit"),
			Message: "The current that is stated is below what hangs on this circuit. The larger one is used.",
			Numbers: []working.Number{{Name: "stated", Value: stated}, {Name: "what hangs on it", Value: hangs.running}},
			Fix:     "State the greatest current, or leave it out; a smaller usual current for the drop goes into usual.",
		}}, true
	}
	if !known {
		m.fail(path+".current", "", "current, power or loads; or an end named \"inverter\", \"controller\", \"tow charger\", \"converter\" or as a bus")
		return 0, nil, false
	}
	if c.Device == nil || !units.Exceeds(hangs.all, c.Device.Rating) || !units.Exceeds(hangs.all, hangs.running) {
		m.shownCurrent(c, hangs, hangs.all)
		return hangs.all, nil, true
	}
	used := max(c.Device.Rating, hangs.running)
	m.shownCurrent(c, hangs, used)
	return used, []working.Finding{{
		Severity: working.Note, Rule: "all-at-once-above-device", Source: common("what a panel feeds is seldom on at once"),
		Message: "Everything that this circuit feeds at once is above its device, which then opens. The circuit is worked out for the device, or for the largest of what runs together if that is more.",
		Numbers: []working.Number{{Name: "all at once", Value: hangs.all}, {Name: "device", Value: c.Device.Rating}, {Name: "largest that runs", Value: hangs.running}},
		Fix:     "Know that it happens, or move loads to another circuit.",
	}}, true
}

// continuous puts into a circuit what of its load runs for hours. Of a load that
// the device cuts short, see [maker.currentOf], that counts by what runs together.
func (m *maker) continuous(c Circuit, circuit *wire.Circuit) {
	if circuit.Continuous {
		return
	}
	hangs, _ := m.hangsOn(c, len(m.rig.Circuits))
	if hangs.hours == 0 {
		return
	}
	if units.Exceeds(hangs.all, circuit.Load) {
		needed := hangs.running + units.Scale(hangs.hours, inverter.NECMargin-units.One)
		if !units.Exceeds(needed, circuit.Load) {
			return
		}
		circuit.Load = hangs.running
	}
	circuit.ForHours = units.Some(min(hangs.hours, circuit.Load))
}

// stated returns the current that a circuit states, by itself or as a power.
func (m *maker) stated(c Circuit) (units.Current, bool) {
	if i, ok := c.Current.Get(); ok {
		return i, true
	}
	if p, ok := c.Power.Get(); ok {
		return p.At(m.voltageOf(c)), true
	}
	return 0, false
}

// hangsOn works out what hangs on a circuit: the machine at its end, its
// loads, the bus that it feeds, and the circuits that name it as their feeder,
// down to a depth.
func (m *maker) hangsOn(c Circuit, depth int) (n need, ok bool) {
	if i, ok := m.machineAt(c); ok {
		return need{all: i, running: i}, true
	}
	if n, ok = m.busNeed(c); len(c.Loads) > 0 {
		ok, n = true, need{}
		for _, name := range c.Loads {
			n.all += m.loadCurrent(name)
			if line, known := m.line(name); known && withoutPause(line) {
				n.hours += line.Current
			}
		}
		n.running = n.all
	}
	var behind, hours units.Current
	for _, next := range m.rig.Circuits {
		if depth == 0 || next.Feeder != c.Name {
			continue
		}
		i, known := m.stated(next)
		hangs, more := m.hangsOn(next, depth-1)
		if known || more {
			behind, ok = behind+max(i, hangs.all), true
			n.running = max(n.running, i, hangs.running)
			hours += hangs.hours
		}
	}
	n.all, n.hours = max(n.all, behind), max(n.hours, hours)
	return m.scaled(c, n), ok
}

// machineAt returns the current of the machine that a circuit leads to or
// from.
func (m *maker) machineAt(c Circuit) (units.Current, bool) {
	bus, _ := m.bus(c.Bus)
	roof, tow, converter, inverter := m.rig.Roof, m.rig.Tow, m.rig.Converter, m.plan.Inverter
	switch {
	case c.String && roof != nil:
		return units.Scale(roof.Isc, units.Ratio(m.strings())), true
	case c.To == "inverter" && bus.Kind == loads.Direct && inverter != nil:
		return inverter.Current, true
	case c.From == "controller" && roof != nil:
		return m.controllerOutput(), true
	case c.To == "tow charger" && tow != nil:
		return units.Scale(tow.Current.At(tow.Voltage), units.RatioOf(units.One, tow.Efficiency)).At(tow.Input), true
	case c.From == "tow charger" && tow != nil:
		return tow.Current, true
	case c.To == "converter" && converter != nil:
		return m.converterInput(), true
	case c.From == "converter" && converter != nil:
		return converter.Current, true
	}
	return 0, false
}

// converterInput returns the alternating current of the converter, 0 if what
// is said of it is refused elsewhere.
func (m *maker) converterInput() units.Current {
	c := m.rig.Converter
	if c == nil {
		return 0
	}
	bus, _ := m.bus(c.Bus)
	use, err := inverter.ChargerDraw(inverter.Charger{Current: c.Current, Voltage: c.Voltage, Efficiency: c.Efficiency, PowerFactor: c.PowerFactor, Supply: bus.Voltage})
	if err != nil {
		return 0
	}
	return use.Current
}

// busNeed works out what hangs on the bus that a circuit feeds, or on the
// buses behind the inverter if it leads alternating current there.
func (m *maker) busNeed(c Circuit) (n need, ok bool) {
	from, _ := m.bus(c.Bus)
	var hours units.Current
	for _, b := range m.rig.Buses {
		passes := c.To == "inverter" && from.Kind == loads.Alternating && b.Behind == "inverter"
		if !passes && !samePlace(m.rig, c.To, b.Name) {
			continue
		}
		ok = true
		for _, l := range m.behindFeeder(c, b.Name) {
			n.all += l.Current
			n.running = max(n.running, l.Current)
			if !units.Exceeds(forHours, l.Hours) {
				hours += l.Current
			}
			if withoutPause(l) {
				n.hours += l.Current
			}
		}
		if m.rig.Converter != nil && m.rig.Converter.Bus == b.Name {
			n.all += m.converterInput()
			hours += m.converterInput()
			n.hours += m.converterInput()
		}
	}
	n.running = max(n.running, hours)
	return n, ok
}
