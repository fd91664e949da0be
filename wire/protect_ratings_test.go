package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestBoatAtMainsVoltage: 4 AWG at 60 °C has 105 A by 33 CFR 183.425 Table 5. At
// 50 V and more 183.455(c)(2) allows the next rating up, which is 110 A by NEC
// 240.6(A); the vehicle fuses' next, 125 A, would be too much.
func TestBoatAtMainsVoltage(t *testing.T) {
	boat := wire.Circuit{Installation: wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(4), Insulation: wire.Insulation60, System: volts(120)},
		Kind: wire.Breaker, Load: 100 * units.Ampere, Device: units.Some(125 * units.Ampere)}
	if f := mustProtect(t, boat).Findings(); !hasSeverity(f, "device-above-limit", working.Danger) {
		t.Errorf("125 A on 105 A: %v", rules(f))
	}
	boat.Device = units.Some(110 * units.Ampere)
	p := mustProtect(t, boat)
	if p.Smallest != 100*units.Ampere || p.Limit != 110*units.Ampere || has(p.Findings(), "device-above-limit") {
		t.Errorf("110 A: smallest %v, limit %v, %v", p.Smallest, p.Limit, rules(p.Findings()))
	}
	// A breaker of 7.5 A is sold for vehicles; 240.6(A) has none.
	boat.Load, boat.Device = 5*units.Ampere, units.Some(7.5*units.Ampere)
	if f := mustProtect(t, boat).Findings(); !has(f, "device-not-standard") {
		t.Errorf("a breaker of 7.5 A at 120 V: %v", rules(f))
	}
	boat.Installation.System = volts(12)
	if f := mustProtect(t, boat).Findings(); has(f, "device-not-standard") {
		t.Errorf("a breaker of 7.5 A at 12 V: %v", rules(f))
	}
}

// TestListedForThinWire: NEC 240.4(D)(1) and (2) provide devices of 7 and 10 A
// listed for 18 and 16 AWG, though 240.6(A) has no 7 A and, before 2023, no
// breaker of 10 A.
func TestListedForThinWire(t *testing.T) {
	thin := func(size wire.Size, kind wire.DeviceKind, load, device units.Current) wire.Protection {
		return mustProtect(t, wire.Circuit{Kind: kind, Load: load, Continuous: true, Device: units.Some(device),
			Installation: wire.Installation{Rules: wire.NEC2017, Size: size, Insulation: wire.Insulation90}})
	}
	// 5.5 A x 1.25 = 6.875 A
	p := thin(wire.AWG(18), wire.AnyDevice, 5.5, 10)
	if p.Smallest != 7*units.Ampere || p.Below != 7*units.Ampere || has(p.Findings(), "no-device-fits") {
		t.Errorf("18 AWG: smallest %v, below %v, %v", p.Smallest, p.Below, rules(p.Findings()))
	}
	if fix := finding(t, p.Findings(), "device-above-limit").Fix; fix != "Fit a device of 7 A." {
		t.Errorf("18 AWG behind 10 A: %q", fix)
	}
	for _, c := range []struct {
		size             wire.Size
		load, device     units.Current
		smallest, within units.Current
	}{
		{wire.AWG(18), 5.5, 7, 7, 7},
		{wire.AWG(16), 5.5, 10, 10, 10},
	} {
		p := thin(c.size, wire.Breaker, c.load, c.device)
		if f := p.Findings(); p.Smallest != c.smallest || p.Below != c.within || has(f, "device-not-standard") || has(f, "no-device-fits") {
			t.Errorf("%v: smallest %v, below %v, %v", c.size, p.Smallest, p.Below, rules(f))
		}
	}
	// A load beyond the listed device has none, nor does a plain breaker fit.
	if p := thin(wire.AWG(18), wire.Breaker, 6, 15); p.Smallest != 15*units.Ampere || !has(p.Findings(), "device-above-limit") {
		t.Errorf("18 AWG with 7.5 A: smallest %v, %v", p.Smallest, rules(p.Findings()))
	}
	// Check takes the size for enough that its device is enough for.
	c := must[wire.Checked](t)(wire.Check(wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(18), Metal: units.Some(wire.Copper), Insulation: wire.Insulation90,
		Load: units.Some(5.5 * units.Ampere), Continuous: true, Device: stated("7 A")}))
	if c.Needed != wire.AWG(18) {
		t.Errorf("a checked 18 AWG: needed %v", c.Needed)
	}
}
