package plan

import (
	"strconv"

	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// nominalLeg is the voltage that the ranges and assemblies below are for.
const nominalLeg = 120 * units.Volt

// The ranges of the voltage at the service point, on a base of 120 V.
//
// ANSI C84.1, voltage ranges at the service point: range A 0.95 to 1.05 of
// nominal, range B 0.917 to 1.058, as the standard prints them in volts.
// Provenance: from memory.
const (
	lowA, highA = 114 * units.Volt, 126 * units.Volt
	lowB, highB = 110 * units.Volt, 127 * units.Volt
)

// c84 cites them.
func c84() working.Source {
	return working.Source{Title: "Electric Power Systems Voltage Ratings", Body: "ANSI", Place: "C84.1, service voltage, ranges A and B", Provenance: working.Memory}
}

// service judges the voltage at the pedestal, and whether there is such a
// service.
func (m *maker) service() {
	s := m.rig.Shore
	if s == nil {
		return
	}
	if units.Compare(s.Voltage, nominalLeg) != 0 || !isAssembly(s.Service) {
		m.find("shore", working.Finding{
			Severity: working.Note, Rule: "service-not-listed",
			Source:  working.Source{Title: "National Electrical Code", Body: "NFPA 70", Edition: "2017", Place: "551.44, 551.46(C)", Provenance: working.Read},
			Numbers: []working.Number{{Name: "service", Value: s.Service}, {Name: "a leg", Value: s.Voltage}},
			Message: "This is none of the power-supply assemblies of recreational vehicles, which are of 15, 20, 30 or 50 A at 120 V a leg.",
			Fix:     "Look at the label by the inlet; hold another system against the code that it is built to.",
		})
	}
	m.twoLegs()
	m.measured()
}

// isAssembly reports whether a service is one of NEC 551.46(C).
func isAssembly(service units.Current) bool {
	for _, rating := range []units.Current{15 * units.Ampere, 20 * units.Ampere, 30 * units.Ampere, 50 * units.Ampere} {
		if units.Compare(service, rating) == 0 {
			return true
		}
	}
	return false
}

// measured judges what a meter showed at the pedestal.
func (m *maker) measured() {
	s := m.rig.Shore
	volts, ok := s.Measured.Get()
	f := working.Finding{Source: c84(), Numbers: []working.Number{{Name: "measured", Value: volts}, {Name: "nominal", Value: s.Voltage}}}
	switch {
	case !ok:
		f.Severity, f.Rule, f.Numbers = working.Note, "pedestal-not-measured", nil
		f.Message = "The voltage at the pedestal is not stated, so it is not judged."
		f.Fix = "Measure it at every pedestal before you plug in, " + units.Between(lowA, highA).String() + " on a leg of 120 V, and once more under load."
	case units.Exceeds(deadBelow, volts):
		f.Severity, f.Rule = working.Caution, "pedestal-dead"
		f.Message = "The pedestal is dead, switched off or not connected, or the meter was: no voltage was read that anything runs on."
		f.Fix = "Look at its breaker and the meter's leads, and measure again before you plug in."
	case units.Compare(s.Voltage, nominalLeg) != 0:
		f = s.otherGrid(volts)
	case units.Exceeds(volts, highB):
		f.Severity, f.Rule = working.Danger, "pedestal-too-high"
		f.Message = "The voltage at the pedestal is above every range for a leg of 120 V: a wrong connection or an open neutral. It destroys what is plugged in and can start a fire."
		f.Fix = "Do not plug in. Switch the pedestal off and have it looked at."
	case units.Exceeds(lowB, volts):
		f.Severity, f.Rule = working.Caution, "pedestal-too-low"
		f.Message = "The voltage at the pedestal is below every range for a leg of 120 V: motors draw more, run hot and may not start."
		f.Fix = "Run no air conditioner on it. Ask for another pedestal, or use less, and measure again."
	case !units.Between(lowA, highA).Contains(volts):
		f.Severity, f.Rule = working.Note, "pedestal-in-range-b"
		f.Message = "The voltage at the pedestal is outside range A of the service, " + units.Between(lowA, highA).String() + ", and inside range B, " +
			units.Between(lowB, highB).String() + ", which is meant to be rare and short."
		f.Fix = "Measure again later and under load, and tell whoever runs the place."
	default:
		return
	}
	m.find("shore", f)
	if ok && units.Compare(s.Voltage, nominalLeg) == 0 {
		m.sheet("shore", rangesSheet(volts))
	}
}

// rangesSheet shows the limits that a voltage at the pedestal was held against.
func rangesSheet(volts units.Voltage) *working.Sheet {
	s := working.NewSheet("The voltage at the pedestal against its ranges")
	s.Given("V_measured", volts, "V", "at the pedestal")
	limit := func(name string, v units.Voltage, what string) {
		s.LookUp(name, v, "V", what, working.Lookup{Source: c84(), Key: "120 V", Row: what})
	}
	limit("V_lowA", lowA, "range A, lowest")
	limit("V_highA", highA, "range A, highest")
	limit("V_lowB", lowB, "range B, lowest")
	limit("V_highB", highB, "range B, highest")
	s.Test("above the lowest of range A", "V_measured >= V_lowA", !units.Exceeds(lowA, volts))
	s.Test("above the lowest of range B", "V_measured >= V_lowB", !units.Exceeds(lowB, volts))
	s.Test("below the highest of range A", "V_measured <= V_highA", !units.Exceeds(volts, highA))
	s.Test("below the highest of range B", "V_measured <= V_highB", !units.Exceeds(volts, highB))
	return s
}

// passThrough holds the transfer relay against the device before it, where
// shore or generator power can pass the inverter.
func (m *maker) passThrough() {
	i := m.rig.Inverter
	if i == nil || m.rig.Shore == nil && m.rig.Generator == nil {
		return
	}
	passes := false
	for _, b := range m.rig.Buses {
		passes = passes || b.Behind == "inverter"
	}
	if !passes {
		return
	}
	passage := inverter.Passage{Relay: i.PassRelay, Feeder: i.PassDevice}
	for n, c := range m.rig.Circuits {
		bus, _ := m.bus(c.Bus)
		if c.To != "inverter" || bus.Kind != loads.Alternating || c.Device == nil {
			continue
		}
		if stated, ok := passage.Feeder.Get(); ok && units.Compare(stated, c.Device.Rating) != 0 {
			m.fail(at("circuits", n, "device.rating"), strconv.Quote(c.Device.Rating.String()), "the device that inverter.pass_device states, "+stated.String())
			return
		}
		passage.Feeder = units.Some(c.Device.Rating)
	}
	check, err := inverter.PassThrough(passage)
	if !m.ok("inverter", err) {
		return
	}
	m.through = leastOf(passage.Relay, passage.Feeder)
	if check.Left.IsSet() {
		m.sheet("inverter", check.Working())
	}
	m.heard("inverter", check.Findings()...)
}
