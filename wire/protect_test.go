package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// branchCircuit is a circuit with nothing to find but that its rule is from
// memory.
func branchCircuit() wire.Circuit {
	return wire.Circuit{
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Insulation: wire.Insulation105},
		Load:         8 * units.Ampere,
		Device:       units.Some(15 * units.Ampere),
		Interrupting: units.Some(10 * units.Kiloampere),
		FromSource:   units.Some(6 * units.Inch),
		Fault:        units.Some(wire.FaultSource{Voltage: 13.3 * units.Volt, Resistance: 2 * units.Milliohm}),
		OneWay:       10 * units.Foot,
	}
}

func rules(findings []working.Finding) (names []string) {
	for _, f := range findings {
		names = append(names, f.Rule)
	}
	return names
}

// TestProtectFindings seeds one mistake at a time into a circuit that has none,
// so that each finding comes with its mistake and goes with it.
func TestProtectFindings(t *testing.T) {
	base, err := wire.Protect(branchCircuit())
	if err != nil {
		t.Fatal(err)
	}
	if got := rules(base.Findings()); len(got) != 1 || got[0] != "rule-from-memory" {
		t.Errorf("a circuit in order has findings %v", got)
	}
	for _, c := range []struct {
		rule     string
		severity working.Severity
		seed     func(*wire.Circuit)
	}{
		{"no-device-stated", working.Danger, func(c *wire.Circuit) { c.Device = units.None[units.Current]() }},
		{"device-above-limit", working.Danger, func(c *wire.Circuit) { c.Device = units.Some(25 * units.Ampere) }},
		{"device-below-load", working.Caution, func(c *wire.Circuit) { c.Device = units.Some(7.5 * units.Ampere) }},
		{"device-below-load", working.Caution, func(c *wire.Circuit) { c.Load, c.Continuous = 12.5*units.Ampere, true }},
		{"load-above-ampacity", working.Danger, func(c *wire.Circuit) { c.Load = 21 * units.Ampere }},
		{"no-device-fits", working.Caution, func(c *wire.Circuit) { c.Load, c.Continuous = 18*units.Ampere, true }},
		{"interrupting-not-stated", working.Note, func(c *wire.Circuit) { c.Interrupting = units.None[units.Current]() }},
		{"interrupting-too-low", working.Danger, func(c *wire.Circuit) { c.Interrupting = units.Some(1 * units.Kiloampere) }},
		{"far-fault-too-weak", working.Danger, func(c *wire.Circuit) { c.OneWay = 400 * units.Foot }},
		{"device-far-from-source", working.Danger, func(c *wire.Circuit) { c.FromSource = units.Some(19 * units.Inch) }},
		{"far-fault-slow", working.Caution, func(c *wire.Circuit) { c.OneWay = 100 * units.Foot }},
		{"fault-not-given", working.Note, func(c *wire.Circuit) { c.Fault = units.None[wire.FaultSource]() }},
		{"device-far-from-source", working.Caution, func(c *wire.Circuit) {
			c.Installation.Rules, c.FromSource = wire.Boat33CFR, units.Some(20*units.Inch)
		}},
		{"device-far-from-source", working.Danger, func(c *wire.Circuit) {
			c.Installation.Rules, c.FromSource = wire.Boat33CFR, units.Some(41*units.Inch)
		}},
		{"distance-not-judged", working.Note, func(c *wire.Circuit) { c.Installation.Rules = wire.NEC2017 }},
		{"conductor-below-continuous", working.Danger, func(c *wire.Circuit) {
			c.Installation.Rules, c.Installation.Size, c.Load, c.Continuous = wire.NEC2017, wire.AWG(6), 48*units.Ampere, true
			c.Device = units.Some(60 * units.Ampere)
		}},
		{"place-not-stated", working.Note, func(c *wire.Circuit) { c.FromSource = units.None[units.Length]() }},
		{"free-air-table", working.Note, func(c *wire.Circuit) { c.Installation.Size = wire.AWG(1) }},
	} {
		circuit := branchCircuit()
		c.seed(&circuit)
		p, err := wire.Protect(circuit)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, f := range p.Findings() {
			if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
				t.Errorf("%s: incomplete finding %+v", c.rule, f)
			}
			found = found || f.Rule == c.rule && f.Severity == c.severity
		}
		if !found {
			t.Errorf("seeded %s: found %v", c.rule, rules(p.Findings()))
		}
	}
	// Exactly at the limit is not above it, and nor is float noise.
	for _, device := range []units.Current{20 * units.Ampere, 20.000000000000004} {
		at := branchCircuit()
		at.Device = units.Some(device)
		if p, err := wire.Protect(at); err != nil || has(p.Findings(), "device-above-limit") {
			t.Errorf("a device of %v at its limit: %v, %v", device, rules(p.Findings()), err)
		}
	}
}

// TestProtectByRuleSet asks the same wire of each rule set. The RV and boat
// numbers are those of the trade's best-known confusion: 12 AWG, 105 °C.
func TestProtectByRuleSet(t *testing.T) {
	for _, c := range []struct {
		rules wire.RuleSet
		limit units.Current
		rule  wire.LimitRule
	}{
		{wire.RVLowVoltage, 20 * units.Ampere, wire.LimitSmallConductor},
		{wire.NEC2017, 20 * units.Ampere, wire.LimitSmallConductor},
		{wire.Boat33CFR, 67.5 * units.Ampere, wire.LimitBoat},
	} {
		circuit := branchCircuit()
		circuit.Installation.Rules = c.rules
		p, err := wire.Protect(circuit)
		if err != nil {
			t.Fatal(err)
		}
		if units.Compare(p.Limit, c.limit) != 0 || p.Rule != c.rule || p.Circuit.Installation.Rules != c.rules {
			t.Errorf("%v: limit %v by rule %v, want %v by %v", c.rules, p.Limit, p.Rule, c.limit, c.rule)
		}
	}
}

// TestNextRatingUp: 6 AWG with 60 °C terminals has 55 A, which is no standard
// rating of the NEC's breakers up to 60 A; 240.4(B) permits 60 A, and a
// stricter rule would take 50 A (NEC 240.4(B), from memory).
func TestNextRatingUp(t *testing.T) {
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation90},
		Load:         52 * units.Ampere,
		Device:       units.Some(60 * units.Ampere),
	})
	if err != nil {
		t.Fatal(err)
	}
	if p.Capacity.Current != 55*units.Ampere || p.Limit != 60*units.Ampere || p.Below != 50*units.Ampere || p.Rule != wire.LimitNextRating {
		t.Errorf("ampacity %v, limit %v, below %v, rule %v; want 55 A, 60 A, 50 A, next rating", p.Capacity.Current, p.Limit, p.Below, p.Rule)
	}
	if has(p.Findings(), "device-above-limit") || !has(p.Findings(), "device-above-ampacity") {
		t.Errorf("a permitted device: found %v", rules(p.Findings()))
	}
	// On a branch circuit with several receptacles the rule does not hold.
	strict, err := wire.Protect(wire.Circuit{Installation: p.Circuit.Installation, Load: 52 * units.Ampere, Receptacles: true,
		Device: units.Some(60 * units.Ampere)})
	if err != nil || strict.Limit != 55*units.Ampere || strict.Rule != wire.LimitAmpacity || !has(strict.Findings(), "device-above-limit") {
		t.Errorf("receptacles: limit %v, rule %v, found %v, %v", strict.Limit, strict.Rule, rules(strict.Findings()), err)
	}
	// Without the rule, 500 kcmil at 75 °C has 380 A: 350 A below, 400 A with it.
	big, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.Kcmil(500), Insulation: wire.Insulation75},
		Load:         300 * units.Ampere,
	})
	if err != nil || big.Below != 350*units.Ampere || big.Limit != 400*units.Ampere {
		t.Errorf("500 kcmil: below %v, limit %v, %v; want 350 A and 400 A", big.Below, big.Limit, err)
	}
}

// TestFaultCases are invented circuits worked by hand from NEC Chapter 9 Table
// 8 (stranded, uncoated, 75 °C): the resistance agrees with ours within 0.6 %.
func TestFaultCases(t *testing.T) {
	bank := wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}
	for _, c := range []struct {
		what   string
		size   wire.Size
		oneWay units.Length
		want   units.Current
	}{
		{"8 A branch without a fuse", wire.AWG(14), 10 * units.Foot, 201 * units.Ampere},
		{"lamp wire behind a 300 A fuse", wire.AWG(16), 15 * units.Foot, 86.4 * units.Ampere},
		{"cable ahead of a far fuse", wire.Aught(2), 3 * units.Foot, 3687 * units.Ampere},
		{"controller cable", wire.AWG(8), 10 * units.Foot, 711 * units.Ampere},
	} {
		f, err := wire.ShortCircuit(bank, wire.Conductor{Size: c.size}, c.oneWay)
		if err != nil {
			t.Fatal(err)
		}
		if off := math.Abs(units.In(f.Current, c.want) - 1); off > 0.006 {
			t.Errorf("%s: %v, want %v within 0.6 %%", c.what, f.Current, c.want)
		}
	}
	// Two batteries of 4 mΩ side by side behind 0.8 mΩ: the parallel ones
	// halve the resistance. 13.3 V / 2.8 mΩ = 4750 A.
	f, err := wire.ShortCircuit(wire.FaultSource{Voltage: 13.3 * units.Volt, Resistance: (4.0/2 + 0.8) * units.Milliohm}, wire.Conductor{}, 0)
	if err != nil || units.Compare(f.Current, 4750*units.Ampere) != 0 {
		t.Errorf("fault at the source: %v, %v, want 4750 A", f.Current, err)
	}
	if !hasSeverity(f.Findings(), "bolted-fault", working.Note) {
		t.Error("a fault says nothing of what it leaves out")
	}
}

func TestProtectRefuses(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*wire.Circuit, float64)
		zero  bool // zero is allowed
	}{
		{"Load", func(c *wire.Circuit, x float64) { c.Load = units.Current(x) }, false},
		{"Device", func(c *wire.Circuit, x float64) { c.Device = units.Some(units.Current(x)) }, false},
		{"Interrupting", func(c *wire.Circuit, x float64) { c.Interrupting = units.Some(units.Current(x)) }, false},
		{"FromSource", func(c *wire.Circuit, x float64) { c.FromSource = units.Some(units.Length(x)) }, true},
		{"OneWay", func(c *wire.Circuit, x float64) { c.OneWay, c.FromSource = units.Length(x), units.None[units.Length]() }, false},
		{"Voltage", func(c *wire.Circuit, x float64) {
			c.Fault = units.Some(wire.FaultSource{Voltage: units.Voltage(x), Resistance: 1})
		}, false},
		{"Resistance", func(c *wire.Circuit, x float64) {
			c.Fault = units.Some(wire.FaultSource{Voltage: 12, Resistance: units.Resistance(x)})
		}, false},
	} {
		for _, x := range bad {
			if x == 0 && c.zero {
				continue
			}
			circuit := branchCircuit()
			c.spoil(&circuit, x)
			p, err := wire.Protect(circuit)
			wantRangeError(t, err, "wire.Protect", c.field)
			if p != (wire.Protection{}) {
				t.Errorf("%s = %v: result %+v, want the zero Protection", c.field, x, p)
			}
		}
	}
	_, err := wire.ShortCircuit(wire.FaultSource{Voltage: 12, Resistance: 1}, wire.Conductor{}, 1)
	wantRangeError(t, err, "wire.ShortCircuit", "Size")
	_, err = wire.ShortCircuit(wire.FaultSource{Voltage: 12, Resistance: 1}, wire.Conductor{}, -1)
	wantRangeError(t, err, "wire.ShortCircuit", "OneWay")
	_, err = wire.ShortCircuit(wire.FaultSource{Voltage: 1e300, Resistance: 1e-300}, wire.Conductor{}, 0)
	wantRangeError(t, err, "wire.ShortCircuit", "Current")
	// A device cannot sit beyond the end of its run, and the boat rule ends at 50 V.
	beyond := branchCircuit()
	beyond.FromSource = units.Some(11 * units.Foot)
	_, err = wire.Protect(beyond)
	wantRangeError(t, err, "wire.Protect", "FromSource")
	high := branchCircuit()
	high.Installation.Rules, high.Fault = wire.Boat33CFR, units.Some(wire.FaultSource{Voltage: 50 * units.Volt, Resistance: 1 * units.Milliohm})
	_, err = wire.Protect(high)
	wantRangeError(t, err, "wire.Protect", "Voltage")
	// 18 AWG with a fuse of 7 A: no breaker has that rating, but the fuse fits.
	fits, err := wire.Protect(wire.Circuit{Load: 5.5 * units.Ampere, Continuous: true, Device: units.Some(7 * units.Ampere),
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(18), Insulation: wire.Insulation90}})
	if err != nil || has(fits.Findings(), "no-device-fits") {
		t.Errorf("a fuse that fits: %v, %v", rules(fits.Findings()), err)
	}
	over := branchCircuit()
	over.Load, over.Continuous = 1.7e308, true
	_, err = wire.Protect(over)
	wantRangeError(t, err, "wire.Protect", "Needed")
	circuit := branchCircuit()
	circuit.Installation.Rules = 0
	_, err = wire.Protect(circuit)
	wantRangeError(t, err, "wire.Protect", "Rules")
}

func TestRatings(t *testing.T) {
	for _, r := range []wire.RuleSet{wire.RVLowVoltage, wire.NEC2017, wire.Boat33CFR} {
		ladder, err := wire.Ratings(r)
		if err != nil {
			t.Fatal(err)
		}
		// 200 A with 125 % and a little: the next up is 300 A in both lists.
		if next, err := ladder.Next(270.6 * units.Ampere); err != nil || next != 300*units.Ampere {
			t.Errorf("%v: next rating above 270.6 A is %v, %v, want 300 A", r, next, err)
		}
		if next, err := ladder.Next(15.000000000000002); err != nil || next != 15*units.Ampere {
			t.Errorf("%v: 15 A with float noise goes to %v, %v", r, next, err)
		}
	}
	_, err := wire.Ratings(0)
	wantRangeError(t, err, "wire.Ratings", "Rules")
}

// TestShortThroughChassis: 10 m of 1 Ω/km and 5 mΩ of chassis are 15 mΩ where two
// conductors are 20 mΩ; with 3 mΩ of the bank 12.6 V drive 700 A, not 547.8 A.
func TestShortThroughChassis(t *testing.T) {
	c := wire.Conductor{Stated: units.Some(0.001 * units.OhmPerMetre)}
	source := wire.FaultSource{Voltage: 12.6 * units.Volt, Resistance: 3 * units.Milliohm}
	two := must[wire.Fault](t)(wire.ShortCircuit(source, c, 10*units.Metre))
	near(t, "amperes with two conductors", float64(two.Current), 547.8)
	source.Chassis = units.Some(5 * units.Milliohm)
	one := must[wire.Fault](t)(wire.ShortCircuit(source, c, 10*units.Metre))
	near(t, "amperes through the chassis", float64(one.Current), 700.0)
	unitstest.CheckSheet(t, one.Working())
	if at := must[wire.Fault](t)(wire.ShortCircuit(source, c, 0)); !equal(at.Current, 4200*units.Ampere) {
		t.Errorf("at the source %v", at.Current)
	}
	source.Chassis = units.Some(-5 * units.Milliohm)
	f, err := wire.ShortCircuit(source, c, 10*units.Metre)
	wantZero(t, f, err, "wire.ShortCircuit", "Chassis")
}

// TestDeviceBreaksTheShortWithoutChassis: what a device must break may be near
// the source, where the chassis is not in the way.
func TestDeviceBreaksTheShortWithoutChassis(t *testing.T) {
	c := branchCircuit()
	c.OneWay, c.FromSource = 10*units.Metre, units.Some[units.Length](0)
	c.Fault = units.Some(wire.FaultSource{Voltage: 12.6 * units.Volt, Resistance: 3 * units.Milliohm, Chassis: units.Some(50 * units.Milliohm)})
	p := must[wire.Protection](t)(wire.Protect(c))
	if !equal(p.AtDevice.Current, 4200*units.Ampere) {
		t.Errorf("at the device %v, want 4200 A", p.AtDevice.Current)
	}
	c.FromSource = units.Some(1 * units.Metre)
	p = must[wire.Protection](t)(wire.Protect(c))
	if want := p.AtDevice.Conductor.At.Over(1 * units.Metre); !equal(p.AtDevice.Loop, want) {
		t.Errorf("to the device %v, want %v", p.AtDevice.Loop, want)
	}
	if want := p.AtEnd.Conductor.At.Over(10*units.Metre) + 50*units.Milliohm; !equal(p.AtEnd.Loop, want) {
		t.Errorf("at the end %v, want %v", p.AtEnd.Loop, want)
	}
	unitstest.CheckSheet(t, p.Working())
}
