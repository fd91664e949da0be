package plan

import (
	"slices"
	"strconv"

	"example.com/drawbar/battery"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// circuits works out every circuit, feeders before what hangs on them.
func (m *maker) circuits() {
	done := map[string]CircuitLine{}
	for _, i := range m.feedersFirst() {
		c := m.rig.Circuits[i]
		if !m.wholeTree(c) {
			continue
		}
		line, ok := m.circuit("circuits["+strconv.Itoa(i)+"]", c, m.feederOf(c, done))
		if ok {
			done[c.Name] = line
		}
	}
	for _, c := range m.rig.Circuits {
		if line, ok := done[c.Name]; ok {
			m.plan.Circuits = append(m.plan.Circuits, line)
		}
	}
}

// feedersFirst returns the circuits so that each comes after its feeder. Those
// without a way up to a first one were refused.
func (m *maker) feedersFirst() (order []int) {
	placed := map[string]bool{"": true}
	for len(order) < len(m.rig.Circuits) {
		before := len(order)
		for i, c := range m.rig.Circuits {
			if !placed[c.Name] && placed[c.Feeder] {
				placed[c.Name] = true
				order = append(order, i)
			}
		}
		if len(order) == before {
			break
		}
	}
	return order
}

// circuit works out one circuit behind its feeder, which may be the zero
// line.
func (m *maker) circuit(path string, c Circuit, feeder CircuitLine) (CircuitLine, bool) {
	line := CircuitLine{Name: c.Name, Route: c.route(), Size: c.Size.String(), Device: deviceOf(c)}
	current, found, ok := m.currentOf(path, c)
	if !ok || current == 0 && m.idle(path, c) {
		return line, false
	}
	line.Current = current
	if usual, ok := c.Usual.Get(); ok && units.Exceeds(usual, current) {
		m.fail(path+".usual", strconv.Quote(usual.String()), "no more than the greatest current, "+current.String())
		return line, false
	}
	drop, dropFound, ok := m.dropOf(path, c, current)
	if !ok {
		return line, false
	}
	line.Drop, line.Fraction, line.Path = drop.Voltage, drop.Fraction, drop.Fraction+feeder.Path
	found = append(found, dropFound...)
	found = append(found, m.pathFinding(c, line, feeder)...)
	found = append(found, m.atLoad(path, c, drop, feeder, &line)...)
	m.oneMend(m.endOf(c, drop.Run, feeder), found)
	protection, ok := m.protectionOf(path, c, current, &line)
	if !ok {
		return line, false
	}
	found = oneDanger(append(found, protection...))
	line.Worst, _ = working.Worst(found)
	line.Checks = m.checksOf(c, line, found)
	m.find(c.Name, found...)
	return line, true
}

// dropOf works out the drop of a circuit at its usual current.
func (m *maker) dropOf(path string, c Circuit, current units.Current) (wire.Drop, []working.Finding, bool) {
	run := wire.Run{
		Current:   c.Usual.Or(current),
		OneWay:    c.Length,
		Conductor: wire.Conductor{Size: c.Size, Metal: c.Metal},
		Source:    m.voltageOf(c),
	}
	judged := !c.Regulated && !c.String
	if c.String && m.rig.Roof != nil {
		run.Source = units.Scale(m.rig.Roof.Voc, units.Ratio(m.rig.Roof.Series))
	}
	if judged {
		run.Allowed = m.rig.Rules.BranchDrop
	}
	drop, err := wire.VoltageDrop(run)
	if !m.ok(path, err) {
		return wire.Drop{}, nil, false
	}
	m.sheet(c.Name, drop.Working())
	var found []working.Finding
	for _, f := range inWords(drop.Findings()) {
		// Heat is checked below, by the protection; that a licensed electrician
		// checks the work is said once, for the whole plan.
		switch f.Rule {
		case "ampacity-not-checked", "current-above-ampacity-in-wall", "lethal-voltage":
			continue
		case "no-allowed-drop":
			if !judged {
				continue
			}
		}
		if f.Rule == "drop-above-allowed" && len(c.Loads) > 0 && m.isDirect(c.Bus) {
			// What reaches the loads is worked out below, from the bank.
			f.Numbers = slices.DeleteFunc(f.Numbers, func(n working.Number) bool { return n.Name == "voltage at the load" })
		}
		found = append(found, f)
	}
	return drop, found, true
}

// pathFinding says when a circuit and its feeders lose too much together.
func (m *maker) pathFinding(c Circuit, line, feeder CircuitLine) []working.Finding {
	if c.Feeder != "" {
		m.sheet(c.Name, pathSheet(line.Fraction, feeder.Path, line.Path))
	}
	allowed, ok := m.rig.Rules.PathDrop.Get()
	if !ok || c.Feeder == "" || !units.Exceeds(line.Path, allowed) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "path-drop-above-allowed", Source: common("drops add along the path from the source"),
		Message: "The circuit and what feeds it lose more together than is allowed.",
		Numbers: []working.Number{{Name: "together", Value: line.Path}, {Name: "what feeds it", Value: feeder.Path}, {Name: "allowed", Value: allowed}},
		Fix:     "Use a larger size in whichever of them loses more.",
	}}
}

// atLoad works out what reaches the loads at the end, which keep their power,
// and whether one cuts out.
func (m *maker) atLoad(path string, c Circuit, drop wire.Drop, feeder CircuitLine, line *CircuitLine) []working.Finding {
	e := m.endOf(c, drop.Run, feeder)
	if e.power == 0 {
		return nil
	}
	supply := m.supplied(e, drop.Resistance)
	sag, err := battery.UnderLoad(supply)
	if tooWeak(err) {
		return []working.Finding{collapse(supply, e.power)}
	}
	if !m.ok(path, err) {
		return nil
	}
	m.sheet(c.Name, sag.Working())
	line.AtLoad = sag.Voltage
	if e.who == "" || !units.Exceeds(e.cutOut, sag.Voltage) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "below-cut-out", Source: physics("Ohm's law with a load of constant power"),
		Message: "What reaches \"" + e.who + "\" is below the voltage at which it cuts out, though the bank is at its nominal voltage.",
		Numbers: []working.Number{{Name: "at the load", Value: sag.Voltage}, {Name: "cut-out", Value: e.cutOut}, {Name: "bank", Value: m.assembly.Voltage}, {Name: "current", Value: sag.Current}},
		Fix:     "Use a larger size.",
	}}
}

// protectionOf holds a circuit against its rule set.
func (m *maker) protectionOf(path string, c Circuit, current units.Current, line *CircuitLine) ([]working.Finding, bool) {
	bus, _ := m.bus(c.Bus)
	rules := m.rig.Rules.Direct
	if bus.Kind == loads.Alternating {
		rules = m.rig.Rules.Alternating
	}
	circuit := wire.Circuit{
		Installation: wire.Installation{Rules: rules, Size: c.Size, Metal: c.Metal, Insulation: c.Insulation,
			Terminals: c.Terminals, Ambient: c.Ambient, Conductors: c.Bundled},
		Load: current, Continuous: c.Continuous || runsForHours(c, bus),
	}
	if c.String {
		// Sun above the nameplate, for hours: the panels' own rule.
		need, err := solar.Currents(m.parallel())
		if !m.ok(path, err) {
			return nil, false
		}
		m.sheet(c.Name, need.Working())
		circuit.Load, circuit.Continuous = need.Required, false
	}
	m.continuous(c, &circuit)
	if i := m.brightest(); c.From == "controller" && units.Exceeds(i, circuit.Load) {
		m.sheet(c.Name, m.fit.Working())
		circuit.Load = i
	}
	var found []working.Finding
	if d := c.Device; d != nil {
		circuit.Device, circuit.Interrupting = units.Some(d.Rating), d.Interrupting
		if at := sourceEnd(c); d.At != at {
			found = append(found, wrongEnd(c, d.At, at))
		} else {
			circuit.FromSource = d.Distance
		}
	}
	if r, ok := m.assembly.Resistance.Get(); ok && bus.Kind == loads.Direct && (!bus.ThroughConverter.IsSet() || m.ahead(c)) && onBank(c) {
		cold, warm := m.feederLoop(c, units.Celsius(20)), m.feederLoop(c, wire.WarmCopper())
		circuit.Fault = units.Some(wire.FaultSource{Voltage: m.assembly.OpenCircuit, Resistance: r + cold})
		if warm != cold {
			circuit.FaultWarm = units.Some(wire.FaultSource{Voltage: m.assembly.OpenCircuit, Resistance: r + warm})
		}
		circuit.OneWay = c.Length
	}
	p, err := wire.Protect(circuit)
	if notTabulated(err) {
		line.Rules = rules.String()
		needsDevice := !c.String || m.rig.Roof == nil || circuit.Device.IsSet() || m.stringNeedsFuse(path)
		line.Device.Needed = needsDevice
		line.asLaid(circuit)
		found = append(found, notJudged(circuit, needsDevice)...)
		return append(found, m.untabled(path, c.Name, circuit, line)...), true
	}
	if !m.ok(path, err) {
		return nil, false
	}
	m.sheet(c.Name, p.Working())
	line.protectedBy(p)
	for _, f := range inWords(p.Findings()) {
		// The panels' own rule says whether their string needs a device.
		if f.Rule == "no-device-stated" && c.String && m.rig.Roof != nil {
			if line.Device.Needed = m.stringNeedsFuse(path); !line.Device.Needed {
				continue
			}
		}
		found = append(found, f)
	}
	return found, true
}

// runsForHours reports whether a circuit ends at a machine that can be at its
// full current for three hours or more, whatever the description says.
func runsForHours(c Circuit, bus Bus) bool {
	return c.To == "inverter" && bus.Kind == loads.Direct || c.From == "controller" || c.To == "tow charger" ||
		c.From == "tow charger" || c.To == "converter" || c.From == "converter"
}

// stringNeedsFuse asks the panels' rule, and keeps what it finds.
func (m *maker) stringNeedsFuse(path string) bool {
	c, err := solar.Currents(m.parallel())
	if !m.ok(path, err) {
		return true
	}
	m.sheet("roof", c.Working())
	m.heard("roof", c.Findings()...)
	return c.Fusing == solar.FusingNeeded
}

// sourceEnd returns the end of a circuit that can burn it: the bank if it is
// at one, else where it comes from.
func sourceEnd(c Circuit) string {
	if c.To == "bank" {
		return c.To
	}
	return c.From
}

// onBank reports whether the bank drives the fault of a circuit.
func onBank(c Circuit) bool { return c.From == "bank" || c.To == "bank" || c.Feeder != "" }

// feederLoop returns the resistance of everything between the bank and a
// circuit, its conductors at the temperature t: 20 °C for the greatest short,
// warm for the least.
func (m *maker) feederLoop(c Circuit, t units.Temperature) (sum units.Resistance) {
	for range m.rig.Circuits {
		feeder, ok := m.circuitNamed(c.Feeder)
		if !ok {
			break
		}
		if p, err := wire.Resistance(wire.Conductor{Size: feeder.Size, Metal: feeder.Metal, Temperature: t}); err == nil {
			sum += p.At.Over(2 * feeder.Length)
		}
		c = feeder
	}
	return sum
}

func wrongEnd(c Circuit, at, source string) working.Finding {
	return working.Finding{
		Severity: working.Danger, Rule: "device-at-wrong-end", Source: common("a device protects what is behind it, seen from the source"),
		Message: "The device sits at \"" + at + "\", but the source that can burn this run is at \"" + source + "\".",
		Numbers: []working.Number{{Name: "length of the run", Value: c.Length}},
		Fix:     "Move the device to the end at the " + source + ".",
	}
}
