package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The cases of this file are invented, as those of cases_test.go; each tells a
// right rule from one that is plausible and wrong.

// TestSameWireUnderEachRule: 12 AWG of 105 °C at 12 V in a recreational vehicle
// has 20 A, not the 67.5 A that is right on a boat.
func TestSameWireUnderEachRule(t *testing.T) {
	for rules, want := range map[wire.RuleSet]units.Current{
		wire.RVLowVoltage: 20, wire.NEC2008: 20, wire.NEC2017: 20, wire.NEC2023: 20, wire.Boat33CFR: 67.5,
	} {
		p := mustProtect(t, wire.Circuit{Load: 8 * units.Ampere,
			Installation: wire.Installation{Rules: rules, Size: wire.AWG(12), Insulation: wire.Insulation105}})
		if units.Compare(p.Limit, want) != 0 {
			t.Errorf("%v: %v, want %v", rules, p.Limit, want)
		}
	}
}

// TestNoFuseIsNoDefault: 8 A on 10 ft of 14 AWG without a fuse. It is a danger
// with 201 A behind it, and no rating is put in its place.
func TestNoFuseIsNoDefault(t *testing.T) {
	p := mustProtect(t, wire.Circuit{Load: 8 * units.Ampere, OneWay: 10 * units.Foot,
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(14), Insulation: wire.Insulation105},
		Fault:        units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm})})
	near(t, "fault", float64(p.AtEnd.Current), 201)
	if found := p.Findings(); !hasSeverity(found, "no-device-stated", working.Danger) || p.Circuit.Device.IsSet() {
		t.Errorf("found %v, device %v", found, p.Circuit.Device)
	}
}

// TestTwoThinWiresAreNotOne: two of 10 AWG behind one 60 A fuse have 30 A, since
// one loose joint puts all 60 A in the other.
func TestTwoThinWiresAreNotOne(t *testing.T) {
	for _, rules := range []wire.RuleSet{wire.RVLowVoltage, wire.NEC2017} {
		p := mustProtect(t, wire.Circuit{Load: 50 * units.Ampere, Device: units.Some(60 * units.Ampere),
			Installation: wire.Installation{Rules: rules, Size: wire.AWG(10), Insulation: wire.Insulation90, Parallel: 2}})
		for _, rule := range []string{"parallel-not-counted", "device-above-limit", "load-above-ampacity"} {
			if !hasSeverity(p.Findings(), rule, working.Danger) {
				t.Errorf("%v: found %v, want %s", rules, p.Findings(), rule)
			}
		}
		if p.Limit != 30*units.Ampere {
			t.Errorf("%v: limit %v, want 30 A", rules, p.Limit)
		}
	}
}

// TestLampWireBehindTheMainFuse: 15 ft of 16 AWG behind 300 A. Its own
// resistance limits the fault to 86.4 A; the fuse never opens, and the wire has
// seconds.
func TestLampWireBehindTheMainFuse(t *testing.T) {
	circuit := wire.Circuit{Load: 2 * units.Ampere, Device: units.Some(300 * units.Ampere), OneWay: 15 * units.Foot,
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(16), Insulation: wire.Insulation75},
		Fault:        units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm})}
	p := mustProtect(t, circuit)
	near(t, "fault at the end", float64(p.AtEnd.Current), 86.4)
	near(t, "fault at the source", float64(p.AtDevice.Current), 4400)
	// k from 75 to 160 °C is 111.3: 111.3² · 1.31² / I²
	i := float64(p.AtEnd.Current)
	near(t, "how long the wire bears it", float64(p.Heated.Longest.Or(0)), 111.3*111.3*1.31*1.31/(i*i))
	if !hasSeverity(p.Findings(), "far-fault-too-weak", working.Danger) {
		t.Errorf("found %v", p.Findings())
	}
	circuit.Device = units.Some(5 * units.Ampere)
	if found := mustProtect(t, circuit).Findings(); has(found, "far-fault-too-weak") {
		t.Errorf("with 5 A: found %v", found)
	}
}

// TestSecondBatteryBurstsTheFuse: 3000 A is enough for one battery and not for
// two side by side.
func TestSecondBatteryBurstsTheFuse(t *testing.T) {
	for n, want := range map[int]bool{1: false, 2: true} {
		bank, err := wire.FaultBank{Voltage: 13.3 * units.Volt, Resistance: 4 * units.Milliohm, Parallel: n, Links: 0.8 * units.Milliohm}.Source()
		if err != nil {
			t.Fatal(err)
		}
		p := mustProtect(t, wire.Circuit{Load: 150 * units.Ampere, Device: units.Some(300 * units.Ampere), OneWay: 3 * units.Foot,
			Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.Aught(4), Insulation: wire.Insulation105},
			Fault:        units.Some(bank), FromSource: units.Some(0 * units.Inch), Interrupting: units.Some(3 * units.Kiloampere)})
		if got := hasSeverity(p.Findings(), "interrupting-too-low", working.Danger); got != want {
			t.Errorf("%d batteries, %v: %v, want %v", n, p.AtDevice.Current, got, want)
		}
	}
}

// TestFuseAtTheWrongEnd: six feet from the battery at the inverter, and at the
// solar controller ten feet off. What burns is the cable before the fuse.
func TestFuseAtTheWrongEnd(t *testing.T) {
	bank := units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm})
	for _, c := range []struct {
		what   string
		size   wire.Size
		from   units.Length
		oneWay units.Length
		device units.Current
		fault  float64 // of the cable as warm as in Table 8, at the far end
	}{
		{"inverter", wire.Aught(2), 36 * units.Inch, 3 * units.Foot, 300, 3687},
		{"controller", wire.AWG(8), 10 * units.Foot, 10 * units.Foot, 40, 711},
	} {
		circuit := wire.Circuit{Load: 30 * units.Ampere, Device: units.Some(c.device), OneWay: c.oneWay, Fault: bank,
			Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: c.size, Insulation: wire.Insulation105},
			FromSource:   units.Some(c.from)}
		p := mustProtect(t, circuit)
		near(t, c.what, float64(p.AtEnd.Current), c.fault)
		if !hasSeverity(p.Findings(), "device-far-from-source", working.Danger) {
			t.Errorf("%s: found %v", c.what, p.Findings())
		}
		circuit.FromSource = units.Some(6 * units.Inch)
		if found := mustProtect(t, circuit).Findings(); has(found, "device-far-from-source") {
			t.Errorf("%s, moved to the battery: found %v", c.what, found)
		}
	}
}

// TestStricterHouseRule: 6 AWG with 60 °C terminals and 52 A. The code permits
// 60 A; a house rule of no device above the ampacity has 50 A, which is below
// the load, so it asks for a larger wire and not for a verdict of danger.
func TestStricterHouseRule(t *testing.T) {
	p := mustProtect(t, wire.Circuit{Load: 52 * units.Ampere, Device: units.Some(60 * units.Ampere),
		Installation: wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(6), Insulation: wire.Insulation60}})
	if p.Limit != 60*units.Ampere || p.Below != 50*units.Ampere || !units.Exceeds(p.Needed, p.Below) {
		t.Errorf("limit %v, below %v, needed %v", p.Limit, p.Below, p.Needed)
	}
	if worst, _ := working.Worst(p.Findings()); worst != working.Note {
		t.Errorf("found %v, want notes", p.Findings())
	}
}

// TestCordBehindAnAdapter: 10/3 on a 50 A receptacle is usual, and worth a
// caution; 13.5 A on a 16 AWG household cord is over its table, whatever the
// drop.
func TestCordBehindAnAdapter(t *testing.T) {
	x := shoreCord()
	x.Device = units.Some(50 * units.Ampere)
	if found := mustCord(t, x).Findings(); len(found) != 1 || !hasSeverity(found, "cord-behind-larger-device", working.Caution) {
		t.Errorf("found %v", found)
	}
	thin := wire.Cord{Size: wire.AWG(16), Conductors: 2, Load: 13.5 * units.Ampere, Device: units.Some(20 * units.Ampere)}
	if c := mustCord(t, thin); c.Current != 13*units.Ampere || !hasSeverity(c.Findings(), "cord-above-table", working.Danger) {
		t.Errorf("%v, found %v", c.Current, c.Findings())
	}
}
