package plan

import (
	"strconv"
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// titleOfCurrent is that of the sheets in this file, each of which says where
// the greatest current of a circuit comes from.
const titleOfCurrent = "Greatest current in use"

// currentOfPower is for a circuit whose power is known.
func currentOfPower(p units.Power, v units.Voltage, i units.Current) *working.Sheet {
	s := working.NewSheet(titleOfCurrent)
	s.Given("P", p, "W", "all that hangs on the circuit, at once")
	s.Given("V", v, "V", "voltage of the bus")
	s.Formula("I", i, "A", "greatest current in use", "P / V")
	return s
}

// currentOfBus is for a circuit that feeds a whole bus.
func currentOfBus(b BusLine) *working.Sheet {
	if b.Apparent == 0 {
		return currentOfPower(b.Peak, b.Voltage, b.Current)
	}
	s := working.NewSheet(titleOfCurrent)
	s.Given("S", b.Apparent, "VA", "all loads of the bus, at once")
	s.Given("V", b.Voltage, "V", "voltage of the bus")
	s.Formula("I", b.Current, "A", "greatest current in use", "S / V")
	return s
}

// currentOfLoads is for a circuit with the loads at its end named.
func (m *maker) currentOfLoads(names []string, sum units.Current) *working.Sheet {
	s := working.NewSheet(titleOfCurrent)
	var terms []string
	for i, name := range names {
		line, _ := m.line(name)
		n := strconv.Itoa(i + 1)
		s.Given("V_"+n, line.Bus.Voltage, "V", "voltage of the bus of "+name)
		if line.Apparent > 0 && line.PowerFactor != units.One {
			s.Given("S_"+n, line.Apparent, "VA", name+", running")
			s.Formula("I_"+n, line.Current, "A", name+", running", "S_"+n+" / V_"+n)
		} else {
			s.Given("P_"+n, line.Power, "W", name+", running")
			s.Formula("I_"+n, line.Current, "A", name+", running", "P_"+n+" / V_"+n)
		}
		terms = append(terms, "I_"+n)
	}
	s.Formula("I", sum, "A", "all of them at once", strings.Join(terms, " + "))
	return s
}

// currentOfStrings is for the run from the panels.
func currentOfStrings(isc units.Current, n int, i units.Current) *working.Sheet {
	s := working.NewSheet(titleOfCurrent)
	s.Given("I_sc", isc, "A", "short-circuit current of a panel, and so of a string")
	s.Given("m", units.Ratio(n), "1", "strings in parallel")
	s.Formula("I", i, "A", "of all strings", "m * I_sc")
	return s
}

// currentOfTow is for the run from the tow vehicle to its charger.
func currentOfTow(t Tow, i units.Current) *working.Sheet {
	s := working.NewSheet(titleOfCurrent)
	s.Given("I_out", t.Current, "A", "of the charger, into the bank")
	s.Given("V_out", t.Voltage, "V", "of the bank meanwhile")
	s.Given("η", t.Efficiency, "1", "efficiency of the charger")
	s.Given("V_in", t.Input, "V", "at its input, at worst")
	s.Formula("I", i, "A", "that the charger takes", "I_out * V_out / η / V_in")
	return s
}

// service is the sheet of what the shore service carries.
func service(s Shore, full, hours units.Power) *working.Sheet {
	w := working.NewSheet("What the service carries")
	w.Given("I", s.outlet(), "A", "service or outlet, the smaller, one leg")
	w.Given("V", s.Voltage, "V", "nominal voltage")
	w.Formula("P", full, "W", "at a power factor of 1", "I * V")
	share := s.forHours()
	source := working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017", Place: "210.20, 215.3: 125 % of a continuous load", Provenance: working.Read}
	if share == units.One {
		source = common("the rating of the service, which is not of the NEC")
	}
	w.Constant("x", share, "%", "part that loads of three hours or more may take", source)
	w.Formula("P_hours", hours, "W", "for hours", "x*pct * P")
	w.Formula("I_hours", units.Scale(s.outlet(), share), "A", "for hours", "x*pct * I")
	return w
}

// driving is the sheet of what the tow vehicle brings on a travel day.
func driving(t Tow, p units.Power, e units.Energy) *working.Sheet {
	s := working.NewSheet("What the tow vehicle brings on a travel day")
	s.Given("I", t.Current, "A", "into the bank")
	s.Given("V", t.Voltage, "V", "of the bank meanwhile")
	s.Given("t", t.Hours, "h", "driven")
	s.Formula("P", p, "W", "into the bank", "I * V")
	s.Formula("E", e, "Wh", "into the bank", "P * t")
	return s
}

// sumOfCurrents is the sheet of everything that charges the bank, or draws on
// it, at once.
func sumOfCurrents(title string, names []string, each []units.Current, sum units.Current) *working.Sheet {
	s := working.NewSheet(title)
	var terms []string
	for i, name := range names {
		term := "I_" + strconv.Itoa(i+1)
		s.Given(term, each[i], "A", name)
		terms = append(terms, term)
	}
	s.Formula("I", sum, "A", "at once", strings.Join(terms, " + "))
	return s
}

// allBuses is the sheet of the energy of all loads.
func (m *maker) allBuses() *working.Sheet {
	s := working.NewSheet("A day of all loads on all buses")
	var terms []string
	var sum units.Energy
	for i, b := range m.plan.Buses {
		term := "E_" + strconv.Itoa(i+1)
		s.Given(term, b.Energy, "Wh", "on "+b.Name)
		terms, sum = append(terms, term), sum+b.Energy
	}
	s.Formula("E", sum, "Wh", "on all buses", strings.Join(terms, " + "))
	return s
}

// shownCurrent keeps the working of the greatest current of a circuit, and of
// what its device leaves of it.
func (m *maker) shownCurrent(c Circuit, hangs need, used units.Current) {
	if s := m.hanging(c, hangs); s != nil {
		m.sheet(c.Name, s)
	}
	if c.Device == nil || units.Compare(used, hangs.all) == 0 {
		return
	}
	s := working.NewSheet("Current that the device lets pass")
	s.Given("I_all", hangs.all, "A", "all that hangs on the circuit, at once")
	s.Given("I_device", c.Device.Rating, "A", "rating of the device")
	s.Given("I_runs", hangs.running, "A", "largest of what runs together")
	s.Test("all at once above the device", "I_all > I_device", units.Exceeds(hangs.all, c.Device.Rating))
	s.Formula("I", used, "A", "the circuit is worked out for", "max(I_device, I_runs)")
	m.sheet(c.Name, s)
}

// hanging returns the working of all that hangs on a circuit, nil if it is
// stated or in the working of its loads.
func (m *maker) hanging(c Circuit, hangs need) *working.Sheet {
	roof, tow, inverter := m.rig.Roof, m.rig.Tow, m.plan.Inverter
	bus, _ := m.bus(c.Bus)
	direct := bus.Kind == loads.Direct
	switch {
	case m.ahead(c):
		return m.currentAhead(c, hangs.all)
	case len(c.Loads) > 0:
		return m.currentOfLoads(c.Loads, hangs.all)
	case c.String && roof != nil:
		return currentOfStrings(roof.Isc, m.strings(), hangs.all)
	case c.To == "inverter" && direct && inverter != nil:
		return m.side.Working()
	case c.From == "controller" && m.aboveController():
		return m.fit.Working()
	case c.To == "tow charger" && tow != nil:
		return currentOfTow(*tow, hangs.all)
	}
	for _, b := range m.plan.Buses {
		if !samePlace(m.rig, c.To, b.Name) {
			continue
		}
		if units.Compare(b.Current, hangs.all) == 0 {
			return currentOfBus(b)
		}
		var names []string
		var sum units.Current
		for _, l := range m.behindFeeder(c, b.Name) {
			names, sum = append(names, l.Name), sum+l.Current
		}
		if len(names) > 0 && units.Compare(sum, hangs.all) == 0 {
			return m.currentOfLoads(names, hangs.all)
		}
	}
	return nil
}
