package plan

import (
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// open returns what the sun of the day leaves open of the use; below zero if
// it brings more.
func (m *maker) open() units.Energy {
	gap := m.plan.Use.Energy
	if m.plan.Sun != nil {
		gap -= m.plan.Sun.Harvest
	}
	return gap
}

// closeGap works out how long the converter needs for what the sun leaves open:
// by energy, at the voltage of charging, and by charge, which is what a bank
// keeps. A bank that may be charged with less than the converter gives sets the
// pace.
func (m *maker) closeGap(use inverter.ChargerUse) {
	gap := m.open()
	if !use.Time.IsSet() {
		return
	}
	pace := use.Charger.Current
	if each, ok := m.rig.Bank.ChargeLimit.Get(); ok {
		pace = min(pace, units.Scale(each, units.Ratio(max(m.rig.Bank.Parallel, 1))))
	}
	at := pace.At(use.Charger.Voltage)
	byEnergy := gap.Lasts(at)
	charge := gap.At(m.assembly.Voltage)
	byCharge := charge.Lasts(pace)
	m.plan.Use.GapHours, m.plan.Use.GapByCharge = units.Some(byEnergy), units.Some(byCharge)
	m.plan.lead = m.rig.Bank.Chemistry.IsLead()
	s := working.NewSheet("Time to close the gap")
	s.Given("E_gap", gap, "Wh", "what the sun leaves open of the use")
	s.Given("V_bank", m.assembly.Voltage, "V", "nominal voltage of the bank")
	s.Given("I", pace, "A", "the converter's, or the most that the bank may be charged with")
	s.Given("V_charge", use.Charger.Voltage, "V", "of the bank while it charges")
	s.Formula("P", at, "W", "into the bank", "I * V_charge")
	s.Formula("t_energy", byEnergy, "h", "by energy", "E_gap / P")
	s.Formula("Q_gap", charge, "Ah", "by charge", "E_gap / V_bank")
	s.Formula("t_charge", byCharge, "h", "by charge", "Q_gap / I")
	m.sheet("converter", s)
}

// weakGenerator says when the generator does not carry the converter at full
// output.
func (m *maker) weakGenerator(use inverter.ChargerUse) {
	g := m.rig.Generator
	if g == nil {
		return
	}
	// Sold by its watts, it promises no more volt-amperes.
	limit := g.Continuous.Apparent(units.One)
	if m.plan.weak = units.Exceeds(use.Apparent, limit); !m.plan.weak {
		return
	}
	m.find("converter", working.Finding{
		Severity: working.Caution, Rule: "converter-above-generator", Source: physics("what the converter takes at full output"),
		Numbers: []working.Number{{Name: "converter", Value: use.Apparent}, {Name: "generator", Value: limit}},
		Message: "The generator does not carry the converter at full output: it trips or stalls as soon as the bank takes a charge. It is not counted on to close a gap.",
		Fix:     "Set the converter lower if it has a setting for that, or take a larger generator.",
	})
}

// gap says when what charges the bank does not keep up with what leaves it.
func (m *maker) gap() {
	sun, u := m.plan.Sun, m.plan.Use
	if sun == nil {
		m.gapWithoutSun()
		return
	}
	if !units.Exceeds(u.Energy, sun.Harvest) {
		return
	}
	numbers := []working.Number{{Name: "harvest a day", Value: sun.Harvest}, {Name: "use a day", Value: u.Energy}}
	if t, ok := m.plan.Bank.AtAverage.Get(); ok {
		numbers = append(numbers, working.Number{Name: "without sun", Value: t, Unit: "h"})
	}
	if t, ok := u.GapHours.Get(); ok && m.plan.feeding() != "" {
		numbers = append(numbers, working.Number{Name: "converter a day for the rest", Value: t, Unit: "h"},
			working.Number{Name: "the same by charge", Value: u.GapByCharge.Or(0), Unit: "h"})
	}
	m.find("roof", working.Finding{
		Severity: working.Caution, Rule: "sun-below-use", Numbers: numbers, Source: physics("energy in and out of the bank"),
		Message: "The roof does not keep up with the loads on this day: the bank goes down.",
		Fix:     "Use less, add panel or another source, or plan hours of shore power or generator.",
	})
}

// gapWithoutSun is gap for a rig without panels: the tow vehicle charges while
// it drives, and the converter while something feeds it.
func (m *maker) gapWithoutSun() {
	u, tow := m.plan.Use, m.rig.Tow
	if m.rig.Converter == nil && tow == nil {
		return // nothing charges at all, which is found elsewhere
	}
	numbers := []working.Number{{Name: "use a day", Value: u.Energy}}
	var driven units.Energy
	if tow != nil {
		driven = tow.Current.At(tow.Voltage).For(tow.Hours)
		numbers = append(numbers, working.Number{Name: "tow vehicle on a travel day", Value: driven})
	}
	if t, ok := u.GapHours.Get(); ok && m.plan.feeding() != "" {
		if !units.Exceeds(max(t, u.GapByCharge.Or(0)), day) {
			return
		}
		numbers = append(numbers, working.Number{Name: "converter a day", Value: u.GapByCharge.Or(t), Unit: "h"})
	}
	if !units.Exceeds(u.Energy, driven) {
		return
	}
	if t, ok := m.plan.Bank.AtAverage.Get(); ok {
		numbers = append(numbers, working.Number{Name: "without a charge", Value: t, Unit: "h"})
	}
	m.find("use", working.Finding{
		Severity: working.Caution, Rule: "use-above-charge", Numbers: numbers, Source: physics("energy in and out of the bank"),
		Message: "What charges the bank does not keep up with the loads on this day: the bank goes down.",
		Fix:     "Use less, or add a source; a travel day charges only while it is driven.",
	})
}
