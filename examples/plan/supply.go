package plan

import (
	"strconv"
	"strings"

	"example.com/drawbar/battery"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// machine returns the described inverter as package inverter takes it.
func (m *maker) machine() inverter.Machine {
	i := m.rig.Inverter
	return inverter.Machine{Continuous: i.Continuous, ContinuousVA: units.Some(i.Apparent.Or(units.Scale(units.VoltAmpere, units.RatioOf(i.Continuous, units.Watt)))),
		Surge: i.Surge, SurgeFor: i.SurgeFor, Efficiency: i.Efficiency, Idle: i.Idle, LowestVoltage: units.Some(i.CutOff), PassThrough: i.PassRelay}
}

// inverterLine works out the battery side of the inverter.
func (m *maker) inverterLine() {
	if m.rig.Inverter == nil {
		return
	}
	side, err := inverter.BatterySide(inverter.DCSide{Machine: m.machine(), Margin: inverter.NECMargin})
	if !m.ok("inverter", err) {
		return
	}
	m.sheet("inverter", side.Working())
	m.side = side
	m.plan.Inverter = &InverterLine{Current: side.Current, Required: side.Required}
}

// headroom puts the largest load behind the inverter on top of what must not
// stop.
func (m *maker) headroom() {
	var together []inverter.Demand
	var largest loads.Line
	for i, line := range m.book.Lines {
		switch {
		case !m.behind(line.Bus.Name):
		case line.MustNotStop:
			together = append(together, demandOf(line, m.rig.Loads[i].LockedRotor))
		case line.Power > largest.Power:
			largest = line
		}
	}
	if largest.Power > 0 {
		together = append(together, demandOf(largest, m.load(largest.Name).LockedRotor))
	}
	if len(together) == 0 || m.rig.Inverter == nil {
		return
	}
	h, err := inverter.Check(m.machine(), together)
	if !m.ok("inverter", err) {
		return
	}
	m.sheet("inverter", h.Working())
	m.heard("inverter", h.Findings()...)
	m.plan.Inverter.Largest, m.plan.Inverter.PowerLeft = largest.Name, h.PowerLeft
	m.plan.Inverter.ApparentLeft = h.ApparentLeft
}

// charger works out the converter, and how long it needs for what the sun
// leaves open.
func (m *maker) charger() (inverter.ChargerUse, bool) {
	c := m.rig.Converter
	bus, _ := m.bus(c.Bus)
	ask := inverter.Charger{Current: c.Current, Voltage: c.Voltage, Efficiency: c.Efficiency, PowerFactor: c.PowerFactor, Supply: bus.Voltage}
	if gap := m.open(); units.Exceeds(gap, 0) {
		ask.Energy = units.Some(gap)
	}
	use, err := inverter.ChargerDraw(ask)
	if m.ok("converter", err) {
		m.sheet("converter", use.Working())
		return use, true
	}
	return use, false
}

// sources lists what each source can carry.
func (m *maker) sources() {
	r, list := m.rig, &m.plan.Sources
	if s := r.Shore; s != nil {
		full := s.outlet().At(s.Voltage)
		hours := units.Scale(full, s.forHours())
		m.sheet("shore", service(*s, full, hours))
		*list = append(*list, SourceLine{Name: "shore", Power: full, Continuous: hours, Numbers: numbersOf([]working.Number{
			{Name: "service of one leg", Value: s.outlet()}, {Name: "for hours", Value: units.Scale(s.outlet(), s.forHours())}})})
	}
	if r.Inverter != nil && m.plan.Inverter != nil {
		*list = append(*list, SourceLine{Name: "bank and inverter", Power: r.Inverter.Continuous, Continuous: r.Inverter.Continuous, Surge: r.Inverter.Surge,
			Numbers: numbersOf([]working.Number{{Name: "from the bank at full load", Value: m.plan.Inverter.Current}})})
	}
	if g := r.Generator; g != nil {
		*list = append(*list, SourceLine{Name: "generator", Power: g.Continuous, Continuous: g.Continuous, Surge: g.Surge, Numbers: []Number{}, Guard: g.Transfer})
	}
	if t := r.Tow; t != nil {
		p := t.Current.At(t.Voltage)
		m.sheet("tow vehicle", driving(*t, p, p.For(t.Hours)))
		*list = append(*list, SourceLine{Name: "tow vehicle", Power: p, Continuous: p,
			Numbers: numbersOf([]working.Number{{Name: "on a travel day", Value: p.For(t.Hours)}})})
	}
	if r.Converter == nil {
		return
	}
	if use, ok := m.charger(); ok {
		m.closeGap(use)
		m.weakGenerator(use)
		m.plan.drawn.power, m.plan.drawn.apparent = use.Power, use.Apparent
		*list = append(*list, SourceLine{Name: "converter", Power: use.Output, Continuous: use.Output,
			Numbers: numbersOf([]working.Number{{Name: "taken from what feeds it", Value: use.Current}})})
	}
}

// feeds describes who feeds what, for the paths that lead from the bank back
// to it.
func (m *maker) feeds() (sources []string, feeds []inverter.Feed) {
	sources = []string{"inverter"}
	for _, b := range m.rig.Buses {
		if b.Behind == "inverter" {
			feeds = append(feeds, inverter.Feed{Name: "inverter", From: "bank", To: b.Name, With: sources, Efficiency: m.rig.Inverter.Efficiency})
		}
	}
	c := m.rig.Converter
	back := inverter.Feed{Name: "converter", From: c.Bus, To: "bank", Efficiency: c.Efficiency,
		Most: units.Some(c.Current.At(m.rig.Bank.Typical.Or(m.assembly.Voltage)))}
	if c.OpensInverting {
		sources = append(sources, "shore")
		back.With = []string{"shore"}
	}
	return sources, append(feeds, back)
}

// loops finds a charger that the bank feeds through the inverter.
func (m *maker) loops() {
	if m.rig.Inverter == nil || m.rig.Converter == nil {
		return
	}
	sources, feeds := m.feeds()
	loops, err := inverter.FeedLoops(sources, feeds, "bank")
	if !m.ok("converter", err) {
		return
	}
	for _, l := range loops {
		m.sheet("converter", l.Working())
		m.heard("converter", l.Findings()...)
		m.plan.Use.Loop += l.Lost
	}
	u := &m.plan.Use
	if u.LoopEnergy = u.Loop.For(day); u.Loop > 0 {
		s := working.NewSheet("What the loop takes in a day")
		s.Given("P_loop", u.Loop, "W", "lost on the way round")
		s.Formula("E_loop", u.LoopEnergy, "Wh", "in a day, on top of the use", "24 * P_loop")
		m.sheet("use", s)
	}
}

// bonds counts the neutral-ground bonds with each source.
func (m *maker) bonds() {
	var sources []inverter.Source
	if m.rig.Shore != nil {
		sources = append(sources, inverter.Source{Name: "shore", Earthed: true})
	}
	if m.rig.Generator != nil {
		sources = append(sources, inverter.Source{Name: "generator"})
	}
	if m.rig.Inverter != nil {
		sources = append(sources, inverter.Source{Name: "inverter"})
	}
	if len(sources) == 0 || !m.bondsDescribed() {
		return
	}
	var bonds []inverter.Bond
	for _, b := range m.rig.Bonds {
		bonds = append(bonds, inverter.Bond{Name: b.At, With: b.With})
	}
	counts, err := inverter.Bonding(sources, bonds)
	if !m.ok("bonds", err) {
		return
	}
	for _, c := range counts {
		m.sheet(c.Source.Name, c.Working())
		if c.Bonds != 1 {
			m.heard(c.Source.Name, c.Findings()...)
		}
	}
}

// limits holds the bank against everything that draws from it or charges it
// at once.
func (m *maker) limits() {
	demand := battery.Demand{Bank: m.batteries(), Discharge: units.Some(m.drawn())}
	var in units.Current
	var names []string
	var each []units.Current
	add := func(name string, i units.Current) { names, each, in = append(names, name), append(each, i), in+i }
	if c := m.rig.Converter; c != nil {
		add("converter", c.Current)
	}
	if m.rig.Roof != nil {
		name := "output limit of the controller"
		if m.aboveController() {
			name = "all strings by way of the PWM controller, which cannot limit them"
			m.sheet("bank", m.fit.Working())
		}
		add(name, m.controllerOutput())
	}
	if t := m.rig.Tow; t != nil {
		add("tow vehicle", t.Current)
	}
	if len(names) > 0 {
		m.sheet("bank", sumOfCurrents("What charges the bank at once", names, each, in))
	}
	demand.Charge = units.Some(in)
	l, err := battery.CheckLimits(demand)
	if !m.ok("bank", err) {
		return
	}
	m.sheet("bank", l.Working())
	m.heard("bank", withParts(l.Findings(), names, each)...)
}

// withParts puts what a sum of charging currents is made of beside it.
func withParts(found []working.Finding, names []string, each []units.Current) []working.Finding {
	for i, f := range found {
		if !strings.HasPrefix(f.Rule, "charge-above-limit") || len(names) < 2 {
			continue
		}
		for j, name := range names {
			found[i].Numbers = append(found[i].Numbers, working.Number{Name: "of that " + name, Value: each[j]})
		}
		found[i].Message += " Counted is all that is described, also what never meets, such as driving and standing on shore power."
	}
	return found
}

// drawn returns the most that can leave the bank at once: the inverter at full
// load and its lowest voltage, and every load of direct current.
func (m *maker) drawn() (sum units.Current) {
	var names []string
	var each []units.Current
	add := func(name string, i units.Current) { names, each, sum = append(names, name), append(each, i), sum+i }
	if m.plan.Inverter != nil {
		add("inverter, at full load and lowest voltage", m.plan.Inverter.Current)
		m.sheet("bank", m.side.Working())
	}
	for i, b := range m.rig.Buses {
		line := m.plan.Buses[i]
		if b.Kind != loads.Direct || line.Peak == 0 {
			continue
		}
		current := line.Current
		if kept, ok := b.ThroughConverter.Get(); ok {
			current = units.Scale(line.Peak, units.RatioOf(units.One, kept)).At(m.assembly.Voltage)
		}
		add("loads of "+b.Name+" at once", current)
	}
	if len(names) > 0 {
		m.sheet("bank", sumOfCurrents("What draws on the bank at once", names, each, sum))
	}
	return sum
}

// starts says which motors the inverter or the generator cannot start.
func (m *maker) starts() {
	for i, l := range m.rig.Loads {
		locked, ok := l.LockedRotor.Get()
		line, known := m.line(l.Name)
		if !known || line.Bus.Kind == loads.Direct {
			continue
		}
		if !ok {
			m.startNotStated(line)
			continue
		}
		start, err := inverter.Starting(inverter.Motor{LockedRotor: locked, Voltage: line.Bus.Voltage})
		if !m.ok("loads["+strconv.Itoa(i)+"]", err) {
			continue
		}
		m.sheet(l.Name, start.Working())
		numbers := []working.Number{{Name: "start", Value: start.Apparent}}
		small := false
		add := func(name string, surge units.Opt[units.ApparentPower]) {
			if s, ok := surge.Get(); ok && units.Exceeds(start.Apparent, s) {
				numbers = append(numbers, working.Number{Name: "surge of the " + name, Value: s})
				small = true
			}
		}
		if m.rig.Inverter != nil {
			add("inverter", m.rig.Inverter.Surge)
		}
		if m.rig.Generator != nil {
			add("generator", m.rig.Generator.Surge)
		}
		if m.behind(line.Bus.Name) {
			m.startsBacked(l.Name, start)
		}
		if small {
			f := m.startsOn(line, start)
			f.Numbers = numbers
			m.find(l.Name, f)
		}
	}
}
