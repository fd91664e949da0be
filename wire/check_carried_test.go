package wire_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestCheckEitherEndOfTheRange: 8 A on 12 AWG may have 10 to 20 A. Both ends are what
// the rules give; between them a device errs to the safe side.
func TestCheckEitherEndOfTheRange(t *testing.T) {
	for text, want := range map[string]working.Verdict{
		"7.5 A": working.Disagree, "10 A": working.Agree, "15 A": working.AgreeConservative, "20 A": working.Agree, "25 A": working.Unsafe,
	} {
		q := quotedBranch()
		q.Size, q.Current, q.Device = wire.AWG(12), stated("8 A"), stated(text)
		if l := lineOf(mustCheck(t, q), wire.ClaimDevice); l.Verdict != want {
			t.Errorf("%v, want %v", l, want)
		}
	}
}

// TestCheckCarriesNothingUnknown: what rests on a current or a length that nobody
// stated is not carried over as if it were known.
func TestCheckCarriesNothingUnknown(t *testing.T) {
	q := quotedBranch()
	q.Current = units.Printed{}
	f := mustCheck(t, q).Findings()
	if !has(f, "device-above-limit") || has(f, "no-device-fits") {
		t.Errorf("found %v", rules(f))
	}
	for _, x := range f {
		if text := x.String(); strings.Contains(text, "needed 0") || strings.Contains(text, "and the load.") {
			t.Errorf("without a load: %s", text)
		}
	}
	q = quotedCable()
	q.Length = units.Printed{}
	if f := mustCheck(t, q).Findings(); has(f, "fault-not-given") {
		t.Errorf("found %v, and the source of it is given", rules(f))
	}
}

// TestCheckJudgesHeatOnce: the note that heat is not checked stands only where no
// table checks it.
func TestCheckJudgesHeatOnce(t *testing.T) {
	q := quotedFeeder()
	q.Current, q.Drop, q.Percent = stated("10 A"), units.Printed{}, units.Printed{}
	if f := mustCheck(t, q).Findings(); has(f, "ampacity-not-checked") {
		t.Errorf("found %v", rules(f))
	}
	q.Size, q.Basis = wire.Metric(10*units.SquareMillimetre), units.None[wire.Basis]()
	if f := mustCheck(t, q).Findings(); !has(f, "ampacity-not-checked") {
		t.Errorf("without a table: found %v", rules(f))
	}
}

// TestCheckPlaces: the short that a device has to break is the one at its place,
// and on a boat the place itself may be right only in a sheath.
func TestCheckPlaces(t *testing.T) {
	q := quotedCable()
	at := mustCheck(t, q).AtDevice.Current
	q.FromSource = stated("7 in")
	away := mustCheck(t, q)
	if !units.Exceeds(at, away.AtDevice.Current) || away.AtDevice != away.Protection.AtDevice {
		t.Errorf("%v at the battery, %v 7 in from it", at, away.AtDevice.Current)
	}
	for text, want := range map[string]working.Verdict{"7 in": working.Agree, "20 in": working.Disagree, "41 in": working.Unsafe} {
		q.Rules, q.FromSource = wire.Boat33CFR, stated(text)
		if l := lineOf(mustCheck(t, q), wire.ClaimPlace); l.Verdict != want {
			t.Errorf("on a boat: %v, want %v", l, want)
		}
	}
}

// TestCheckDeviceOfContinuousLoad: what runs for hours needs 125 % in its device,
// with a row and without one: 31.25 A of 25 A, 270.6 A of 216.5 A and 6.25 A of 5 A.
func TestCheckDeviceOfContinuousLoad(t *testing.T) {
	for _, c := range []struct {
		rules      wire.RuleSet
		size       wire.Size
		insulation wire.Insulation
		load       string
		low, fits  string
	}{
		{wire.NEC2017, wire.AWG(8), wire.Insulation60, "25 A", "30 A", "35 A"},
		{wire.NEC2017, wire.AWG(10), wire.Insulation60, "22 A", "25 A", "30 A"}, // 30 A is the greatest, and 27.5 A is needed
		{wire.RVLowVoltage, wire.AWG(8), wire.Insulation105, "25 A", "30 A", "35 A"},
		{wire.RVLowVoltage, wire.Aught(2), wire.Insulation105, "216.5 A", "250 A", "300 A"},
		{wire.RVLowVoltage, wire.Metric(2.5 * units.SquareMillimetre), wire.Insulation105, "5 A", "6 A", "7.5 A"},
	} {
		q := wire.Quote{Rules: c.rules, Size: c.size, Metal: units.Some(wire.Copper), Insulation: c.insulation,
			Current: stated(c.load), Continuous: true, Device: stated(c.low), FromSource: stated("0 in")}
		got := mustCheck(t, q)
		if l := lineOf(got, wire.ClaimDevice); l.Verdict != working.Disagree || !has(got.Findings(), "device-below-load") {
			t.Errorf("%v: %v, found %v", c.size, l, rules(got.Findings()))
		}
		q.Device = stated(c.fits)
		got = mustCheck(t, q)
		if l := lineOf(got, wire.ClaimDevice); l.Verdict == working.Disagree || has(got.Findings(), "device-below-load") {
			t.Errorf("%v: %v, found %v", c.size, l, rules(got.Findings()))
		}
		q.Device, q.Continuous = stated(c.low), false
		if l := lineOf(mustCheck(t, q), wire.ClaimDevice); l.Verdict == working.Disagree {
			t.Errorf("%v, not for hours: %v", c.size, l)
		}
	}
}

// TestCheckAsksForTheWay: 10 A through 12 AWG of 17 ft drop 4.5 % of 12 V there and
// back (NEC Table 8: 1.98 Ω/kft, 0.67 V), and half of that if 17 ft is both: the
// size rests on it, and it is asked whether a drop is claimed or not.
func TestCheckAsksForTheWay(t *testing.T) {
	asks := func(c wire.Checked) bool {
		return slices.ContainsFunc(c.Questions(), func(s string) bool { return strings.HasPrefix(s, "Is 17 ft the run one way?") })
	}
	q := wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Metal: units.Some(wire.Copper), Insulation: wire.Insulation105,
		Current: stated("10 A"), Length: stated("17 ft"), Voltage: units.Some(12 * units.Volt), Allowed: units.Some(3 * units.Percent), DeviceElsewhere: true}
	if c := mustCheck(t, q); lineOf(c, wire.ClaimSize).Verdict != working.Disagree || !asks(c) {
		t.Errorf("not said: %v, asks %v", lineOf(c, wire.ClaimSize), c.Questions())
	}
	q.LengthIs = wire.LengthThereAndBack
	if c := mustCheck(t, q); !agrees(lineOf(c, wire.ClaimSize).Verdict) || asks(c) {
		t.Errorf("there and back: %v, asks %v", lineOf(c, wire.ClaimSize), c.Questions())
	}
	q.LengthIs, q.Allowed = wire.LengthUnsaid, units.None[units.Ratio]()
	if c := mustCheck(t, q); asks(c) {
		t.Errorf("asks %v, and nothing rests on it", c.Questions())
	}
}

// TestCheckSmallConductors: 240.4(D) allows 7 A on 18 AWG and 10 A on 16 AWG, by
// devices that are listed for them and are no standard ratings.
func TestCheckSmallConductors(t *testing.T) {
	for _, c := range []struct {
		size         wire.Size
		load, device string
		needed       wire.Size
	}{
		{wire.AWG(18), "5 A", "7 A", wire.AWG(18)}, {wire.AWG(18), "7.5 A", "8 A", wire.AWG(16)},
		{wire.AWG(16), "8 A", "10 A", wire.AWG(16)}, {wire.AWG(16), "11 A", "15 A", wire.AWG(14)},
	} {
		for _, kind := range []wire.DeviceKind{wire.AnyDevice, wire.Fuse, wire.Breaker} {
			q := wire.Quote{Rules: wire.NEC2017, Size: c.size, Metal: units.Some(wire.Copper), Insulation: wire.Insulation90, Kind: kind,
				Current: stated(c.load), Device: stated(c.device), FromSource: stated("0 in")}
			got := mustCheck(t, q)
			if l := lineOf(got, wire.ClaimSize); got.Needed != c.needed || (l.Verdict == working.Agree) != (c.size == c.needed) {
				t.Errorf("%s by %v: %v, needed %v, want %v", c.load, kind, l, got.Needed, c.needed)
			}
		}
	}
}

// agrees reports whether a verdict is one of the two that do.
func agrees(v working.Verdict) bool { return v == working.Agree || v == working.AgreeConservative }

// TestCheckTouch: what kills is the voltage, above 50 V, and not the kind of current.
func TestCheckTouch(t *testing.T) {
	for _, c := range []struct {
		volts       units.Voltage
		alternating bool
		want        bool
	}{{12, true, false}, {50, true, false}, {51, true, true}, {120, true, true}, {12, false, false}, {48, false, false}, {400, false, true}} {
		q := acQuote()
		q.Voltage, q.Alternating, q.Current = units.Some(c.volts), c.alternating, stated("2 A")
		q.Fault = units.None[wire.FaultSource]()
		f := mustCheck(t, q).Findings()
		if has(f, "lethal-voltage") != c.want {
			t.Errorf("%v, alternating %v: found %v", c.volts, c.alternating, rules(f))
		}
		saysAll(t, f)
		q.Voltage, q.Fault = units.None[units.Voltage](), units.Some(wire.FaultSource{Voltage: c.volts, Resistance: 0.1})
		if f := mustCheck(t, q).Findings(); has(f, "lethal-voltage") != c.want {
			t.Errorf("of the source, %v: found %v", c.volts, rules(f))
		}
	}
}
