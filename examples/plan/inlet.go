package plan

import (
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The voltage that reaches a trailer is judged in parts of the nominal one.
//
// ANSI C84.1 has 108 V on a leg of 120 V as the lowest at the appliances, range
// A of the utilization voltage; EN 50160 has 90 % to 110 % at the supply
// terminals of a public grid. Provenance: from memory.
const (
	lowestAtInlet = 90 * units.Percent
	highestOnGrid = 110 * units.Percent
)

// atInlet cites them.
func atInlet() working.Source {
	return working.Source{Title: "Voltage characteristics of electricity supplied by public distribution systems", Body: "CENELEC",
		Place: "EN 50160, plus and minus 10 %; 108 V of 120 V is range A of the utilization voltage of ANSI C84.1", Provenance: working.Memory}
}

// forHours returns the part of what shore power carries that loads may take
// for hours: that of the NEC on its own voltage. The codes of other grids have
// no such part.
func (s Shore) forHours() units.Ratio {
	if units.Compare(s.Voltage, nominalLeg) != 0 {
		return units.One
	}
	return inverter.ContinuousShare
}

// cordDrop works out what the cord takes at what shore power carries for hours;
// not ok if size or length is not given.
func (m *maker) cordDrop() (wire.Drop, bool) {
	s := m.rig.Shore
	size, hasCord := s.Cord.Get()
	length, hasLength := s.CordLong.Get()
	if !hasCord || !hasLength {
		return wire.Drop{}, false
	}
	drop, err := wire.VoltageDrop(wire.Run{Current: units.Scale(s.outlet(), s.forHours()), OneWay: length,
		Conductor: wire.Conductor{Size: size}, Source: s.Voltage})
	if !m.ok("shore", err) {
		return wire.Drop{}, false
	}
	m.sheet("shore", drop.Working())
	return drop, true
}

// inlet judges what is left of the pedestal's voltage behind the cord.
func (m *maker) inlet() {
	s := m.rig.Shore
	if s == nil {
		return
	}
	drop, ok := m.cordDrop()
	if !ok {
		return
	}
	from, name := s.Measured.Or(s.Voltage), "at the pedestal, nominal"
	if s.Measured.IsSet() {
		name = "measured at the pedestal"
	}
	least := units.Scale(s.Voltage, lowestAtInlet)
	if !units.Exceeds(from, drop.Voltage) || !units.Exceeds(from, units.Scale(least, 50*units.Percent)) {
		return // dead, which is found elsewhere
	}
	left := units.Minus(from, drop.Voltage)
	low := units.Exceeds(least, left)
	sheet := working.NewSheet("What reaches the inlet")
	sheet.Given("V_pedestal", from, "V", name)
	sheet.Given("ΔV", drop.Voltage, "V", "that the cord takes")
	sheet.Formula("V_inlet", left, "V", "at the inlet", "V_pedestal - ΔV")
	sheet.Constant("x", lowestAtInlet, "%", "of nominal, the least", atInlet())
	sheet.Given("V", s.Voltage, "V", "nominal")
	sheet.Formula("V_least", least, "V", "the least", "x*pct * V")
	sheet.Test("at the inlet against the least", "V_inlet >= V_least", !low)
	m.sheet("shore", sheet)
	if !low {
		return
	}
	m.find("shore", working.Finding{
		Severity: working.Caution, Rule: "too-little-at-inlet", Source: atInlet(),
		Numbers: []working.Number{{Name: "at the inlet", Value: left}, {Name: "least", Value: least}, {Name: name, Value: from},
			{Name: "the cord takes", Value: drop.Voltage}, {Name: "at", Value: drop.Run.Current}},
		Message: "Too little voltage reaches the trailer when it takes all that it may: motors draw more, run hot and may not start.",
		Fix:     "Use a shorter or larger cord, another pedestal, or less at once. A meter at the inlet shows what is left.",
	})
}

// otherGrid judges a voltage on a leg of other than 120 V.
func (s Shore) otherGrid(volts units.Voltage) working.Finding {
	f := working.Finding{Source: atInlet(), Numbers: []working.Number{{Name: "measured", Value: volts}, {Name: "nominal", Value: s.Voltage}}}
	switch {
	case units.Exceeds(volts, units.Scale(s.Voltage, highestOnGrid)):
		f.Severity, f.Rule = working.Danger, "pedestal-too-high"
		f.Message = "The voltage at the pedestal is more than a tenth above nominal: a wrong connection or an open neutral. It destroys what is plugged in and can start a fire."
		f.Fix = "Do not plug in. Switch the pedestal off and have it looked at."
	case units.Exceeds(units.Scale(s.Voltage, lowestAtInlet), volts):
		f.Severity, f.Rule = working.Caution, "pedestal-too-low"
		f.Message = "The voltage at the pedestal is more than a tenth below nominal: motors draw more, run hot and may not start."
		f.Fix = "Run no air conditioner on it. Ask for another pedestal, or use less, and measure again."
	default:
		f.Severity, f.Rule = working.Note, "pedestal-not-judged"
		f.Message = "The voltage at the pedestal is within a tenth of nominal and not judged further: the ranges here are for a leg of 120 V."
		f.Fix = "Hold it against the range of the grid that it is on."
	}
	return f
}

// twoLegs says of a service with two legs that only one was looked at.
func (m *maker) twoLegs() {
	s := m.rig.Shore
	if units.Compare(s.Voltage, nominalLeg) != 0 || units.Compare(s.Service, twoLegService) != 0 {
		return
	}
	m.find("shore", working.Finding{
		Severity: working.Caution, Rule: "one-leg-only", Numbers: []working.Number{{Name: "a leg", Value: s.Service}},
		Source:  working.Source{Title: "National Electrical Code", Body: "NFPA 70", Edition: "2017", Place: "551.46(C), 50 A at 120/240 V", Provenance: working.Read},
		Message: "A service of this rating has two legs, and one leg only was looked at: what it carries, what is too much and what can run together hold as if all hung on one. The neutral, and what an open one does, were not looked at.",
		Fix:     "Sort the loads by leg, and look at each leg by itself; each carries this much.",
	})
}

// twoLegService is the assembly of NEC 551.46(C) that has two legs.
const twoLegService = 50 * units.Ampere

// deadBelow is where a meter shows no supply at all.
const deadBelow = 20 * units.Volt
