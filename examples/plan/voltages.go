package plan

import (
	"strconv"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Voltages of one system go by different names: 12 V, 12.8 V, 13.8 V. Systems
// are apart by a factor of 1.5 or more: 12 V, 24 V, 36 V, 48 V. Common
// practice.
const (
	otherSystem = 125 * units.Percent // between nominal voltages of one system
	// The most that a charger holds a bank at, in parts of its nominal voltage:
	// 16 V to equalise a lead bank of 12 V is 1.33.
	hottestCharge = 140 * units.Percent
	// The least that an inverter of the same system runs down to: 10 V on
	// 13.2 V is 0.76.
	deepestCutOff = 65 * units.Percent
)

// cutOff refuses an inverter that could never run on the bank, since no
// hold-up follows from that.
func (m *maker) cutOff() {
	i := m.rig.Inverter
	if i == nil || m.assembly.Voltage == 0 {
		return
	}
	if below := units.Above[units.Voltage](0).Below(m.assembly.Voltage); !below.Contains(i.CutOff) {
		m.fail("inverter.cut_off", strconv.Quote(i.CutOff.String()), below.String()+", the nominal voltage of the bank")
	}
}

// unlike reports whether a voltage is not of the system of another.
func unlike(a, b units.Voltage) bool {
	return units.Exceeds(a, units.Scale(b, otherSystem)) || units.Exceeds(b, units.Scale(a, otherSystem))
}

// voltages holds bank, buses, inverter and chargers against each other.
func (m *maker) voltages() {
	bank := working.Number{Name: "bank", Value: m.assembly.Voltage}
	apart := func(severity working.Severity, where, rule, message, fix string, numbers ...working.Number) {
		m.find(where, working.Finding{Severity: severity, Rule: rule, Message: message, Fix: fix, Numbers: append(numbers, bank),
			Source: common("nominal voltages of one system differ by less than a quarter")})
	}
	for _, b := range m.rig.Buses {
		if b.Kind == loads.Direct && !b.ThroughConverter.IsSet() && unlike(b.Voltage, m.assembly.Voltage) {
			apart(working.Danger, "bus "+b.Name, "bus-unlike-bank",
				"This bus hangs on the bank and is for another voltage: what is on it is damaged, or does not run.",
				"Look at how many batteries are in series. If a direct-current converter stands between them, state its efficiency in through_converter.",
				working.Number{Name: "bus", Value: b.Voltage})
		}
	}
	if s := m.rig.Shore; s != nil {
		for _, b := range m.rig.Buses {
			if b.Kind == loads.Alternating && unlike(b.Voltage, s.Voltage) {
				m.find("bus "+b.Name, working.Finding{Severity: working.Danger, Rule: "bus-unlike-shore",
					Source:  common("a bus of alternating current has the voltage of the service that feeds it"),
					Message: "This bus is for another voltage than the shore service that feeds it: what is on it is damaged, or does not run.",
					Numbers: []working.Number{{Name: "bus", Value: b.Voltage}, {Name: "shore", Value: s.Voltage}},
					Fix:     "Look at which of the two is stated wrong; a transformer or a leg between them is not described."})
			}
		}
	}
	m.passed()
	if open := m.rig.Bank.OpenCircuit; open.IsSet() && unlike(m.assembly.OpenCircuit, m.assembly.Voltage) {
		apart(working.Caution, "bank", "open-circuit-unlike-bank", "The open-circuit voltage is not that of a bank of this nominal voltage.",
			"Both are those of one battery: look at bank.open_circuit and bank.voltage.", working.Number{Name: "open circuit", Value: m.assembly.OpenCircuit})
	}
	if typical, ok := m.rig.Bank.Typical.Get(); ok && unlike(typical, m.assembly.Voltage) {
		apart(working.Caution, "bank", "typical-unlike-bank", "The typical voltage is not that of a bank of this nominal voltage.",
			"It is that of the whole bank: look at bank.typical_voltage, bank.voltage and bank.series.", working.Number{Name: "typical", Value: typical})
	}
	if i := m.rig.Inverter; i != nil && units.Exceeds(units.Scale(m.assembly.Voltage, deepestCutOff), i.CutOff) {
		apart(working.Danger, "inverter", "cut-off-unlike-bank",
			"The inverter's cut-off is that of a lower system: it may be for another voltage than the bank's, or drain the bank to nothing.",
			"Look at the inverter's input voltage on its label.", working.Number{Name: "cut-off", Value: i.CutOff})
	}
	if c := m.rig.Converter; c != nil {
		m.charging("converter", c.Voltage)
	}
	if t := m.rig.Tow; t != nil {
		m.charging("tow vehicle", t.Voltage)
	}
}

// charging holds the voltage of a charger against the bank.
func (m *maker) charging(where string, v units.Voltage) {
	numbers := []working.Number{{Name: "charger", Value: v}, {Name: "bank, nominal", Value: m.assembly.Voltage}, {Name: "full, at rest", Value: m.assembly.OpenCircuit}}
	source := common("a charger has to be above the voltage of the bank, and within what its maker allows")
	switch {
	case units.Exceeds(v, units.Scale(m.assembly.Voltage, hottestCharge)):
		m.find(where, working.Finding{Severity: working.Danger, Rule: "charger-above-bank", Numbers: numbers, Source: source,
			Message: "This charger is for a bank of a higher voltage: it overcharges this one, which can burst or burn.",
			Fix:     "Set or replace the charger for the voltage of the bank."})
	case !units.Exceeds(v, m.assembly.OpenCircuit):
		m.find(where, working.Finding{Severity: working.Caution, Rule: "charger-below-bank", Numbers: numbers, Source: source,
			Message: "This charger's voltage is not above that of the full bank at rest, so it never fills it.",
			Fix:     "Set or replace the charger for the bank, and look at the voltage that is stated."})
	}
}
