package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The cases of this file are invented; each tells a right answer from one that
// is plausible and wrong. near allows the 0.6 % that our copper and NEC Chapter 9
// Table 8 differ by; where a case says Table 8, that is the basis asked for.

var byTable8 = units.Some(wire.FromNECTable8)

// severityOf returns the severity of a finding by its rule.
func severityOf(t *testing.T, f []working.Finding, rule string) working.Severity {
	t.Helper()
	for _, x := range f {
		if x.Rule == rule {
			return x.Severity
		}
	}
	t.Fatalf("no finding %s among %v", rule, rules(f))
	return 0
}

// TestCopperCladDropsHalfAgain: 10 % of copper by volume on aluminium of 61 %:
// 0.188 Ω/kft and 0.376 V where copper has 0.122 and 0.244 V, between 1 and 2 AWG.
func TestCopperCladDropsHalfAgain(t *testing.T) {
	run := wire.Run{Current: 200 * units.Ampere, OneWay: 5 * units.Foot, Source: 12.8 * units.Volt,
		Conductor: wire.Conductor{Size: wire.Aught(1), Metal: wire.CopperClad}}
	clad := must[wire.Drop](t)(wire.VoltageDrop(run))
	near(t, "ohms per 1000 ft", units.In(clad.PerLength.At, units.OhmPerKilofoot), 0.188)
	near(t, "drop", float64(clad.Voltage), 0.376)
	if !has(clad.Findings(), "metal-not-copper") {
		t.Errorf("found %v", rules(clad.Findings()))
	}
	run.Conductor = wire.Conductor{Size: wire.Aught(1), Basis: byTable8}
	copper := must[wire.Drop](t)(wire.VoltageDrop(run))
	if !equal(copper.Voltage, 0.244*units.Volt) || has(copper.Findings(), "metal-not-copper") {
		t.Errorf("copper drops %v, found %v", copper.Voltage, rules(copper.Findings()))
	}
	for gauge, thinner := range map[int]bool{1: false, 2: true} {
		p := must[wire.PerLength](t)(wire.Resistance(wire.Conductor{Size: wire.AWG(gauge)}))
		if (p.At > clad.PerLength.At) != thinner {
			t.Errorf("%d AWG has %v, copper-clad 1/0 %v", gauge, p.At, clad.PerLength.At)
		}
	}
}

// TestTwoThinWiresAreNotAThickOne: two 10 AWG for 60 A. One that opens leaves the
// other with all of it, twice what a wall allows.
func TestTwoThinWiresAreNotAThickOne(t *testing.T) {
	run := wire.Run{Current: 60 * units.Ampere, OneWay: 6 * units.Foot, Source: 12.8 * units.Volt, Parallel: 2,
		Conductor: wire.Conductor{Size: wire.AWG(10)}}
	f := must[wire.Drop](t)(wire.VoltageDrop(run)).Findings()
	if severityOf(t, f, "parallel-below-1/0") != working.Danger {
		t.Errorf("found %v", rules(f))
	}
	for n, left := range map[int]units.Current{2: 60, 3: 30} {
		run.Parallel = n
		for _, x := range must[wire.Drop](t)(wire.VoltageDrop(run)).Findings() {
			if x.Rule == "parallel-below-1/0" && (x.Numbers[0].Value != 60*units.Ampere/units.Current(n) || x.Numbers[1].Value != left*units.Ampere) {
				t.Errorf("60 A on %d: %v", n, x.Numbers)
			}
		}
	}
	run.Parallel = 2
	run.Current = 20 * units.Ampere // what is left bears it
	if s := severityOf(t, must[wire.Drop](t)(wire.VoltageDrop(run)).Findings(), "parallel-below-1/0"); s != working.Caution {
		t.Errorf("20 A on two 10 AWG: %v", s)
	}
	run.Conductor.Size = wire.Aught(1)
	f = must[wire.Drop](t)(wire.VoltageDrop(run)).Findings()
	if severityOf(t, f, "conductors-in-parallel") != working.Note || has(f, "parallel-below-1/0") {
		t.Errorf("1/0 AWG: found %v", rules(f))
	}
	run.Parallel = 1
	if f := must[wire.Drop](t)(wire.VoltageDrop(run)).Findings(); has(f, "conductors-in-parallel") {
		t.Errorf("one alone: found %v", rules(f))
	}
}

// TestDropsAddByTable8: feeder and branch within 3 % each, 0.552 V and 4.60 %
// together, in the digits of the table.
func TestDropsAddByTable8(t *testing.T) {
	var sum units.Voltage
	for _, r := range []wire.Run{
		{Current: 30 * units.Ampere, OneWay: 8 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(6), Basis: byTable8}},
		{Current: 8 * units.Ampere, OneWay: 10 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(12), Basis: byTable8}},
	} {
		r.Source = 12 * units.Volt
		sum += must[wire.Drop](t)(wire.VoltageDrop(r)).Voltage
	}
	if got := units.Fixed(float64(sum), 3); got != "0.552" {
		t.Errorf("together %s V, want 0.552", got)
	}
}

// TestChargeWireByContacts: 14.0 V against 13.3 V through 38 ft of 10 AWG, 20 mΩ of
// contacts and 10 mΩ of battery: 5.63 A and 28.2 Ah in 5 h, not the fuse's 30 A.
func TestChargeWireByContacts(t *testing.T) {
	push := units.RatioOf(0.7*units.Volt, 14*units.Volt)
	m := must[wire.MostCurrent](t)(wire.LargestCurrent(wire.Run{OneWay: 38 * units.Foot, Source: 14 * units.Volt,
		Conductor: wire.Conductor{Size: wire.AWG(10), Basis: byTable8}, Contacts: units.Some(30 * units.Milliohm), Allowed: units.Some(push)}))
	if got := units.Fixed(float64(m.Current), 2); got != "5.63" {
		t.Errorf("%s A, want 5.63", got)
	}
	if got := units.Fixed(units.In(m.Current.For(5*units.Hour), units.AmpereHour), 1); got != "28.2" {
		t.Errorf("%s Ah, want 28.2", got)
	}
}

// TestHouseholdCord: 13.5 A through 50 ft of 16 AWG from 115 V leave 108.3 V and
// make 90.9 W of heat.
func TestHouseholdCord(t *testing.T) {
	d := must[wire.AlternatingDrop](t)(wire.ACDrop(wire.ACRun{Current: 13.5 * units.Ampere, OneWay: 50 * units.Foot, Source: 115 * units.Volt,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(16), Basis: byTable8}, Reactance: units.Some(0 * units.OhmPerKilofoot)}}))
	if got := units.Fixed(float64(d.AtLoad), 1); got != "108.3" {
		t.Errorf("%s V, want 108.3", got)
	}
	if got := units.Fixed(float64(d.Heat), 1); got != "90.9" {
		t.Errorf("%s W, want 90.9", got)
	}
	if !has(d.Findings(), "current-above-ampacity-in-wall") {
		t.Errorf("found %v", rules(d.Findings()))
	}
}

// TestShortRunByTable8: 4 AWG passes 200 A over 2 ft on drop, 0.246 V.
func TestShortRunByTable8(t *testing.T) {
	d := must[wire.Drop](t)(wire.VoltageDrop(wire.Run{Current: 200 * units.Ampere, OneWay: 2 * units.Foot, Source: 12 * units.Volt,
		Conductor: wire.Conductor{Size: wire.AWG(4), Basis: byTable8}, Allowed: units.Some(3 * units.Percent)}))
	if got := units.Fixed(float64(d.Voltage), 3); got != "0.246" || has(d.Findings(), "drop-above-allowed") {
		t.Errorf("%s V, want 0.246; found %v", got, rules(d.Findings()))
	}
	if !has(d.Findings(), "current-above-any-ampacity") {
		t.Errorf("found %v", rules(d.Findings()))
	}
}

// TestShoreLegs: 120/208 V is not 120/240 V, and an adapter adds.
func TestShoreLegs(t *testing.T) {
	for supply, want := range map[wire.LegSupply]struct {
		rule     string
		severity working.Severity
	}{
		wire.SplitPhase:  {"shared-neutral", working.Note},
		wire.NetworkLegs: {"neutral-carries-a-leg", working.Caution},
		wire.OneHot:      {"legs-add", working.Caution},
	} {
		r := panel()
		r.Supply = supply
		f := must[wire.LegVoltages](t)(wire.LegDrop(r)).Findings()
		if got := severityOf(t, f, want.rule); got != want.severity {
			t.Errorf("%v: %v", supply, got)
		}
		for _, other := range []string{"shared-neutral", "neutral-carries-a-leg", "legs-add"} {
			if other != want.rule && has(f, other) {
				t.Errorf("%v: found %v", supply, rules(f))
			}
		}
	}
	r := panel()
	r.Supply = wire.NetworkLegs
	v := must[wire.LegVoltages](t)(wire.LegDrop(r))
	if !(200*units.Volt < v.LineLine && v.LineLine < 208*units.Volt) {
		t.Errorf("from leg to leg %v, want a little below 208 V", v.LineLine)
	}
}
