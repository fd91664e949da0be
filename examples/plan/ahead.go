package plan

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// ahead reports whether a circuit leads from the bank to the converter of its
// bus, and so has the voltage of the bank.
func (m *maker) ahead(c Circuit) bool {
	bus, _ := m.bus(c.Bus)
	return c.From == "bank" && bus.ThroughConverter.IsSet()
}

// voltageOf returns the nominal voltage of a circuit.
func (m *maker) voltageOf(c Circuit) units.Voltage {
	if m.ahead(c) {
		return m.assembly.Voltage
	}
	bus, _ := m.bus(c.Bus)
	return bus.Voltage
}

// atBank returns what a current of the bus of a circuit is ahead of the
// converter.
func (m *maker) atBank(c Circuit, i units.Current) units.Current {
	bus, _ := m.bus(c.Bus)
	kept := bus.ThroughConverter.Or(units.One)
	return units.Scale(i.At(bus.Voltage), units.RatioOf(units.One, kept)).At(m.assembly.Voltage)
}

// scaled returns what hangs on a circuit that leads to the converter of its bus,
// from what hangs behind that.
func (m *maker) scaled(c Circuit, n need) need {
	if !m.ahead(c) {
		return n
	}
	return need{all: m.atBank(c, n.all), running: m.atBank(c, n.running), hours: m.atBank(c, n.hours)}
}

// currentAhead is the sheet of the current of such a circuit.
func (m *maker) currentAhead(c Circuit, all units.Current) *working.Sheet {
	bus, _ := m.bus(c.Bus)
	kept := bus.ThroughConverter.Or(units.One)
	power := units.Scale(all.At(m.assembly.Voltage), kept)
	s := working.NewSheet(titleOfCurrent)
	s.Given("P", power, "W", "behind the converter, at once")
	s.Given("η", kept, "%", "efficiency of the converter")
	s.Given("V_bank", m.assembly.Voltage, "V", "nominal voltage of the bank")
	s.Formula("I", all, "A", "ahead of the converter", "P / (η/100) / V_bank")
	return s
}

// feederOf returns what is ahead of a circuit, of the lines that are done: the
// zero line behind a converter, which makes good what is lost before it.
func (m *maker) feederOf(c Circuit, done map[string]CircuitLine) CircuitLine {
	if feeder, ok := m.circuitNamed(c.Feeder); ok && m.ahead(feeder) && !m.ahead(c) {
		return CircuitLine{}
	}
	return done[c.Feeder]
}
