package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestInlet: 24 A through 200 ft of 14 AWG, there and back, at 3.1 mΩ/ft
// are 15 V, which leaves less than 108 V of 113 V, and of 120 V too.
func TestInlet(t *testing.T) {
	thin := func(r *plan.Rig) {
		r.Shore.Cord, r.Shore.CordLong = units.Some(wire.AWG(14)), units.Some(100*units.Foot)
	}
	checkSeeded(t, []seeded{
		{"a thin long cord", "shore", "too-little-at-inlet", working.Caution, thin},
		{"not measured", "shore", "too-little-at-inlet", working.Caution, func(r *plan.Rig) { thin(r); r.Shore.Measured = units.None[units.Voltage]() }},
		{"low at the pedestal", "shore", "too-little-at-inlet", working.Caution, volts(109 * units.Volt)},
	})
	p := planOf(t, thin)
	for _, f := range p.Findings {
		if f.Rule == "too-little-at-inlet" {
			unit := units.MustPrinted(strings.Fields(f.Numbers[0].Value)[0], "V")
			if ok, err := unit.Agrees(97.96 * units.Volt); err != nil || !ok {
				t.Errorf("at the inlet %s, want 113 V less 15.04 V", f.Numbers[0].Value)
			}
		}
	}
	for _, s := range p.Working() {
		if s.Part == "shore" {
			unitstest.CheckSheet(t, s.Sheet)
		}
	}
	// On 230 V the same volts matter less.
	if _, ok := found(planOf(t, func(r *plan.Rig) {
		thin(r)
		r.Shore.Voltage, r.Shore.Measured, r.Shore.Service = 230*units.Volt, units.Some(230*units.Volt), 16*units.Ampere
	}), "shore", "too-little-at-inlet"); ok {
		t.Error("10 V of 230 V are too little")
	}
	if _, ok := found(planOf(t, volts(0)), "shore", "too-little-at-inlet"); ok {
		t.Error("of a dead pedestal the cord is said to be the fault")
	}
}

// TestTwoLegs: the service of 50 A is the one with two legs.
func TestTwoLegs(t *testing.T) {
	fifty := func(r *plan.Rig) { r.Shore.Service, r.Shore.Cord = 50*units.Ampere, units.Some(wire.AWG(6)) }
	checkSeeded(t, []seeded{{"50 A", "shore", "one-leg-only", working.Caution, fifty}})
}

// TestHoursOfAnotherGrid: 80 % for hours is of the NEC, and of 120 V.
func TestHoursOfAnotherGrid(t *testing.T) {
	of := func(v units.Voltage) plan.Plan {
		return planOf(t, func(r *plan.Rig) {
			r.Shore.Voltage, r.Shore.Measured, r.Shore.Service = v, units.Some(v), 16*units.Ampere
		})
	}
	european, american := of(230*units.Volt), of(120*units.Volt)
	if s := european.Sources[0]; s.Power != 3680*units.Watt || s.Continuous != s.Power {
		t.Errorf("16 A at 230 V: %+v", s)
	}
	if s := american.Sources[0]; s.Continuous != 1536*units.Watt {
		t.Errorf("16 A at 120 V: %+v", s)
	}
	if len(listed(european.Sets, "shore", "too-much-for-hours"))+len(listed(european.Runs, "shore", "runs-for-hours")) > 0 {
		t.Error("sets for hours on 230 V")
	}
	if len(listed(american.Sets, "shore", "too-much-for-hours")) == 0 {
		t.Error("no sets for hours on 120 V")
	}
	for _, s := range european.Working() {
		if s.Part == "shore" {
			unitstest.CheckSheet(t, s.Sheet)
		}
	}
}

// TestBusesOfAGenerator: without shore, two voltages on one generator.
func TestBusesOfAGenerator(t *testing.T) {
	checkSeeded(t, []seeded{{"120 V and 230 V", "bus main", "bus-unlike-bus", working.Danger, func(r *plan.Rig) {
		noShore(r)
		r.Buses[2].Voltage = 230 * units.Volt
	}}})
	if _, ok := found(planOf(t, noShore), "bus main", "bus-unlike-bus"); ok {
		t.Error("120 V and 120 V are unlike")
	}
}

// TestTextsDoNotMislead holds what is said where there is no shore, no bank on
// the way, or no such sun.
func TestTextsDoNotMislead(t *testing.T) {
	lone := flat(planOf(t, func(r *plan.Rig) { noShore(r); r.Generator.Transfer = 0 }))
	if strings.Contains(lone, "kept apart from shore power is not stated") || !strings.Contains(lone, "no shore power is described") {
		t.Error("a generator alone has to be kept apart from shore power")
	}
	impossible := planOf(t, func(r *plan.Rig) { r.Roof.Sun.Irradiation = 9 * units.KilowattHourPerSquareMetre })
	if text := flat(impossible); !strings.Contains(text, "more sun is stated than there is, see below") || !strings.Contains(text, "more than the panels have on their nameplates") {
		t.Errorf("9 kWh/m² in October: %.700s", text)
	}
	if text := flat(planOf(t, func(*plan.Rig) {})); strings.Contains(text, "more sun is stated") || strings.Contains(text, "on their nameplates") {
		t.Error("the sun of October is said to be too much")
	}
	lead := planOf(t, func(r *plan.Rig) { *r = leadRig(*r) })
	for _, f := range lead.Findings {
		if strings.Contains(f.Mend, working.DeferToCode) {
			t.Errorf("%s: the whole caution in a mend", f.Rule)
		}
	}
	if _, ok := found(lead, "bank", "hydrogen"); !ok {
		t.Error("no hydrogen")
	}
	branch := plan.Circuit{Name: "C11", From: "backed panel", To: "counter", Bus: "backed", Length: 6 * units.Foot, Size: wire.AWG(12),
		Insulation: wire.Insulation90, Loads: []string{"microwave"}, Device: &plan.Device{Rating: 20 * units.Ampere, At: "backed panel"}}
	feed := branch
	feed.Name, feed.From, feed.To, feed.Loads, feed.Device = "C12", "inverter", "backed panel", nil, &plan.Device{Rating: 20 * units.Ampere, At: "inverter"}
	p := planOf(t, func(r *plan.Rig) { r.Circuits = append(r.Circuits, branch, feed) })
	for _, f := range p.Findings {
		if f.Part == "C11" && f.Rule == "feeder-not-stated" && strings.Contains(f.Mend, "bank") {
			t.Errorf("alternating current up to the bank: %s", f.Mend)
		}
	}
	if _, ok := found(p, "C11", "feeder-not-stated"); !ok {
		t.Error("no feeder, and nothing said")
	}
}

// leadRig is a rig with a bank of flooded batteries.
func leadRig(r plan.Rig) plan.Rig {
	r.Bank = plan.Bank{Chemistry: battery.Flooded, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt, Parallel: 2}
	return r
}
