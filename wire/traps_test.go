package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// The cases of this file are invented; each tells a right rule from one that is
// plausible and wrong. Their numbers were worked out by hand from NEC Chapter 9
// Table 8, and are held in the digits they are written in.

// printsAs holds a number against its digits, by hand.
func printsAs(t *testing.T, what string, got float64, places int, want string) {
	t.Helper()
	if text := units.Fixed(got, places); text != want {
		t.Errorf("%s: %s, want %s", what, text, want)
	}
}

// TestFaultsByTable8: each wire's own resistance limits what a short at its far
// end draws, from 13.2 V and 3 mΩ.
func TestFaultsByTable8(t *testing.T) {
	bank := wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}
	for _, c := range []struct {
		what   string
		size   wire.Size
		oneWay units.Length
		places int
		want   string
	}{
		{"branch without a fuse", wire.AWG(14), 10 * units.Foot, 0, "201"},
		{"lamp wire behind a main fuse", wire.AWG(16), 15 * units.Foot, 1, "86.4"},
		{"cable before a fuse at the inverter", wire.Aught(2), 3 * units.Foot, 0, "3687"},
		{"cable before a fuse at the solar controller", wire.AWG(8), 10 * units.Foot, 0, "711"},
		{"at the bank itself", wire.AWG(16), 0, 0, "4400"},
	} {
		f := must[wire.Fault](t)(wire.ShortCircuit(bank, wire.Conductor{Size: c.size, Basis: byTable8}, c.oneWay))
		printsAs(t, c.what, float64(f.Current), c.places, c.want)
	}
	for parallel, want := range map[int]string{1: "2771", 2: "4750"} {
		two := must[wire.FaultSource](t)(wire.FaultBank{Voltage: 13.3 * units.Volt, Resistance: 4 * units.Milliohm, Parallel: parallel, Links: 0.8 * units.Milliohm}.Source())
		f := must[wire.Fault](t)(wire.ShortCircuit(two, wire.Conductor{}, 0))
		printsAs(t, "batteries side by side", float64(f.Current), 0, want)
	}
	// 16 AWG bears 86.4 A for 3.04 s: k 115, 1.31 mm².
	w := must[wire.Withstand](t)(wire.Adiabatic(wire.ShortTime{Size: wire.AWG(16), Core: wire.CorePVC70, Current: 86.4 * units.Ampere}))
	near(t, "how long it bears that", float64(w.Longest.Or(0)), 3.04)
}

// TestCordsByTable8: 25 ft and 50 ft of 10 AWG add, there and back, with 26 A from
// 112 V: 107.16 V is below 108 V. One way only would leave 109.58 V, and pass.
func TestCordsByTable8(t *testing.T) {
	d := must[wire.Drop](t)(wire.VoltageDrop(wire.Run{Current: 26 * units.Ampere, OneWay: (25 + 50) * units.Foot, Source: 112 * units.Volt,
		Conductor: wire.Conductor{Size: wire.AWG(10), Basis: byTable8}}))
	printsAs(t, "left", float64(d.AtLoad), 2, "107.16")
	printsAs(t, "left, counted one way", float64(d.Run.Source-d.Voltage/2), 2, "109.58")
	if !units.Exceeds(108*units.Volt, d.AtLoad) {
		t.Errorf("%v is not below 108 V", d.AtLoad)
	}
}

// TestFuseOfAnInverter: 2000 W by 0.88 at 10.5 V is 216.5 A, 125 % of it 270.6 A and
// the next rating 300 A. The nameplate by 12 V would have 175 A, which opens at
// full load.
func TestFuseOfAnInverter(t *testing.T) {
	load := units.Scale(2000*units.Watt, 1/0.88).At(10.5 * units.Volt)
	printsAs(t, "load", float64(load), 1, "216.5")
	q := quotedCable()
	q.Rules, q.Size, q.Load, q.Current, q.Device = wire.Boat33CFR, wire.Aught(3), units.Some(load), units.Printed{}, stated("300 A")
	q.Drop, q.Percent, q.Ampacity = units.Printed{}, units.Printed{}, units.Printed{}
	c := mustCheck(t, q)
	printsAs(t, "needed", float64(c.Protection.Needed), 1, "270.6")
	if c.Protection.Smallest != 300*units.Ampere || lineOf(c, wire.ClaimDevice).Verdict != working.Agree {
		t.Errorf("smallest %v, %v", c.Protection.Smallest, lineOf(c, wire.ClaimDevice))
	}
	for _, text := range []string{"175 A", "200 A"} {
		q.Device = stated(text)
		if l := lineOf(mustCheck(t, q), wire.ClaimDevice); l.Verdict != working.Disagree {
			t.Errorf("%s: %v", text, l)
		}
	}
}

// TestOneBatteryUnderAnInverter: 2000 W by 0.90 from 12.8 V is 173.6 A, above the
// 100 A that the one battery's protection allows: energy is not power. At 1152 W
// it holds.
func TestOneBatteryUnderAnInverter(t *testing.T) {
	for watts, want := range map[units.Power]bool{2000: true, 1152: false} {
		current := units.Scale(watts, 1/0.9).At(12.8 * units.Volt)
		f := solved(t, wire.Network{
			Batteries: []wire.Battery{{Name: "lithium", Voltage: 12.8, Resistance: 1 * mOhm, Limit: units.Some(100 * units.Ampere)}},
			Branches:  []wire.Branch{{Name: "inverter", Extra: 1 * mOhm, Load: ampsOf(current)}},
		})
		if got := has(f.Findings(), "battery-above-limit"); got != want {
			t.Errorf("%v: %v, found %v", watts, got, rules(f.Findings()))
		}
		if want {
			printsAs(t, "current", float64(f.Shares[0].Current), 1, "173.6")
		}
	}
}

// TestCheckTraps puts the cases of wire and protection that an installer's line can
// fall into to [wire.Check].
func TestCheckTraps(t *testing.T) {
	copper := units.Some(wire.Copper)
	for _, c := range []struct {
		what string
		q    wire.Quote
		kind wire.ClaimKind
		want working.Verdict
		rule string
	}{
		{"no fuse is no default", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(14), Metal: copper, Current: stated("8 A")},
			wire.ClaimDevice, working.Unsafe, "no-device-stated"},
		{"a short run is sized by heat", wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(4), Metal: copper, Insulation: wire.Insulation105,
			Length: stated("2 ft"), Voltage: units.Some(12 * units.Volt), Current: stated("200 A"), Continuous: true,
			Allowed: units.Some(3 * units.Percent), DeviceElsewhere: true}, wire.ClaimSize, working.Unsafe, "load-above-ampacity"},
		{"the boat's fuse in a trailer", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Metal: copper, Insulation: wire.Insulation105,
			Current: stated("20 A"), Device: stated("45 A")}, wire.ClaimDevice, working.Unsafe, "device-above-limit"},
		{"the boat's fuse on a boat", wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(12), Metal: copper, Insulation: wire.Insulation105,
			Current: stated("20 A"), Device: stated("45 A")}, wire.ClaimDevice, working.AgreeConservative, "above the load"},
		{"30 A in a summer roof", wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(10), Metal: copper, Insulation: wire.Insulation90,
			Ambient: units.Celsius(60), Conductors: 4, Ampacity: stated("30 A"), DeviceElsewhere: true}, wire.ClaimAmpacity, working.Disagree, "5 %"},
		{"22.7 A in a summer roof", wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(10), Metal: copper, Insulation: wire.Insulation90,
			Ambient: units.Celsius(60), Conductors: 4, Ampacity: stated("22.7 A"), DeviceElsewhere: true}, wire.ClaimAmpacity, working.Agree, "5 %"},
		{"copper's drop of copper-clad", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(1), Metal: units.Some(wire.CopperClad),
			Length: stated("5 ft"), Current: stated("200 A"), Drop: stated("0.244 V"), DeviceElsewhere: true}, wire.ClaimDrop, working.Disagree, "5 %"},
		{"metal not said", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(1), Length: stated("5 ft"), Current: stated("200 A"),
			Drop: stated("0.244 V"), DeviceElsewhere: true}, wire.ClaimDrop, working.NotStated, "metal"},
		{"two thin wires are not one", wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(10), Metal: copper, Insulation: wire.Insulation90, Parallel: 2,
			Current: stated("50 A"), Device: stated("60 A")}, wire.ClaimDevice, working.Unsafe, "device-above-limit"},
		{"the main fuse alone", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(16), Metal: copper, Insulation: wire.Insulation75, Length: stated("15 ft"),
			Current: stated("2 A"), Device: stated("300 A"), FromSource: stated("0 in"),
			Fault: units.Some(wire.FaultSource{Voltage: 13.2, Resistance: 0.003})}, wire.ClaimDevice, working.Unsafe, "device-above-limit"},
		{"a second battery bursts the fuse", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(4), Metal: copper, Insulation: wire.Insulation105,
			Current: stated("150 A"), Device: stated("300 A"), FromSource: stated("0 in"), Interrupting: stated("3000 A"),
			Fault: units.Some(wire.FaultSource{Voltage: 13.3, Resistance: 0.0028})}, wire.ClaimInterrupting, working.Unsafe, "interrupting-too-low"},
		{"25 A for an afternoon on 30 A", wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(8), Metal: copper, Insulation: wire.Insulation90,
			Current: stated("25 A"), Continuous: true, Device: stated("30 A")}, wire.ClaimDevice, working.Disagree, "below the 31.25 A"},
		{"the next size up is permitted", wire.Quote{Rules: wire.NEC2023, Size: wire.AWG(6), Metal: copper, Insulation: wire.Insulation60,
			Current: stated("52 A"), Device: stated("60 A")}, wire.ClaimDevice, working.Agree, "NEC 2023"},
		{"the fuse at the inverter", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(2), Metal: copper, Insulation: wire.Insulation105,
			Current: stated("150 A"), Device: stated("300 A"), FromSource: stated("72 in")}, wire.ClaimPlace, working.Unsafe, "device-far-from-source"},
		{"the fuse at the solar controller", wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Metal: copper, Insulation: wire.Insulation105,
			Length: stated("10 ft"), Current: stated("30 A"), Device: stated("40 A"), FromSource: stated("10 ft")}, wire.ClaimPlace, working.Unsafe, "device-far-from-source"},
		{"125 % of 200 A asks for 1/0 AWG", wire.Quote{Rules: wire.Boat33CFR, Size: wire.Aught(1), Metal: copper, Insulation: wire.Insulation105,
			Length: stated("2 ft"), Voltage: units.Some(12 * units.Volt), Current: stated("200 A"), Continuous: true, Ampacity: stated("285 A"),
			Allowed: units.Some(3 * units.Percent), DeviceElsewhere: true}, wire.ClaimSize, working.Agree, "heat and drop"},
		{"which 1 AWG has not", wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(1), Metal: copper, Insulation: wire.Insulation105,
			Current: stated("200 A"), Continuous: true, DeviceElsewhere: true}, wire.ClaimSize, working.Disagree, "heat"},
	} {
		got := mustCheck(t, c.q)
		l := lineOf(got, c.kind)
		if l.Verdict != c.want || !strings.Contains(l.Rule, c.rule) {
			t.Errorf("%s: %v, want %v by %s", c.what, l, c.want, c.rule)
		}
		if (got.Verdict() == working.Unsafe) != (c.want == working.Unsafe) && c.want != working.NotStated {
			t.Errorf("%s: the whole is %v", c.what, got.Verdict())
		}
	}
}
