package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestPlaceOfDevice pins how far each rule lets a device sit from the source,
// and what is said a hair beyond: 18 in (NEC 552.10(E)(4)); 7 in, 40 in sheathed
// (33 CFR 183.455(b)); 72 in on a battery post (183.460, from memory).
func TestPlaceOfDevice(t *testing.T) {
	const none = "none"
	for _, c := range []struct {
		rules    wire.RuleSet
		inches   float64
		enclosed bool
		post     bool
		rule     string
		severity working.Severity
	}{
		{wire.RVLowVoltage, 18, false, false, none, 0},
		{wire.RVLowVoltage, 18.01, false, false, "device-far-from-source", working.Danger},
		{wire.RVLowVoltage, 18.01, true, true, "device-far-from-source", working.Danger},
		{wire.Boat33CFR, 7, false, false, none, 0},
		{wire.Boat33CFR, 7.01, false, false, "device-far-from-source", working.Caution},
		{wire.Boat33CFR, 40, false, false, "device-far-from-source", working.Caution},
		{wire.Boat33CFR, 40.01, false, false, "device-far-from-source", working.Danger},
		{wire.Boat33CFR, 40, true, false, none, 0},
		{wire.Boat33CFR, 40.01, true, false, "device-far-from-source", working.Danger},
		{wire.Boat33CFR, 7, false, true, none, 0},
		{wire.Boat33CFR, 7.01, false, true, "place-from-memory", working.Note},
		{wire.Boat33CFR, 72, true, true, "place-from-memory", working.Note},
		{wire.Boat33CFR, 72.01, true, true, "device-far-from-source", working.Danger},
		{wire.NEC2017, 0, false, false, none, 0},
		{wire.NEC2008, 1, false, false, "distance-not-judged", working.Note},
		{wire.NEC2023, 100, false, false, "distance-not-judged", working.Note},
	} {
		circuit := branchCircuit()
		circuit.Installation.Rules, circuit.FromSource = c.rules, units.Some(units.Length(c.inches)*units.Inch)
		circuit.Enclosed, circuit.OnBatteryPost = c.enclosed, c.post
		found := mustProtect(t, circuit).Findings()
		saysAll(t, found)
		if c.rule != none && !hasSeverity(found, c.rule, c.severity) {
			t.Errorf("%v at %v in: found %v, want %v %s", c.rules, c.inches, found, c.severity, c.rule)
		}
		for _, rule := range []string{"device-far-from-source", "place-from-memory", "distance-not-judged"} {
			if rule != c.rule && has(found, rule) {
				t.Errorf("%v at %v in: found %s", c.rules, c.inches, rule)
			}
		}
	}
}

// TestSlowFaultBoundary pins the factor of three below which a device is slow.
func TestSlowFaultBoundary(t *testing.T) {
	base := branchCircuit()
	base.FromSource = units.None[units.Length]()
	end := mustProtect(t, base).AtEnd.Current
	for _, c := range []struct {
		share float64 // of the fault, that the device has
		rule  string
		found bool
	}{
		{1.0 / 3, "far-fault-slow", false}, {1.0/3 + 1e-6, "far-fault-slow", true}, {1 - 1e-6, "far-fault-slow", true},
		{1 - 1e-6, "far-fault-too-weak", false}, {1, "far-fault-too-weak", true}, {1, "far-fault-slow", false},
	} {
		circuit := base
		circuit.Device = units.Some(units.Scale(end, units.Ratio(c.share)))
		if got := has(mustProtect(t, circuit).Findings(), c.rule); got != c.found {
			t.Errorf("a device of %v of the fault: %s is %v, want %v", c.share, c.rule, got, c.found)
		}
	}
	// At the interrupting rating a device is adequate, above it not.
	near := mustProtect(t, base).AtDevice.Current
	for share, want := range map[float64]bool{1: false, 1 - 1e-6: true} {
		circuit := base
		circuit.Interrupting = units.Some(units.Scale(near, units.Ratio(share)))
		if got := hasSeverity(mustProtect(t, circuit).Findings(), "interrupting-too-low", working.Danger); got != want {
			t.Errorf("interrupting %v of the fault: %v, want %v", share, got, want)
		}
	}
}

// TestDeviceLimits is what each rule set allows, with the rule.
func TestDeviceLimits(t *testing.T) {
	for _, c := range []struct {
		what  string
		x     wire.Installation
		kind  wire.DeviceKind
		limit units.Current
		below units.Current
		rule  wire.LimitRule
		place string
	}{
		// 240.4(D) caps what 240.4(B) would allow: 14 AWG has 20 A by its 75 °C column
		{"14 AWG", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation75, Terminals: wire.Insulation75},
			wire.AnyDevice, 15, 15, wire.LimitSmallConductor, "240.4(D), as public summaries give it"},
		{"12 AWG aluminium", wire.Installation{Rules: wire.NEC2023, Metal: wire.Aluminium, Size: wire.AWG(12), Insulation: wire.Insulation90, Terminals: wire.Insulation90},
			wire.AnyDevice, 15, 15, wire.LimitSmallConductor, "240.4(D), as public summaries give it"},
		{"2008", wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(14), Insulation: wire.Insulation60},
			wire.AnyDevice, 15, 15, wire.LimitSmallConductor, "240.4(D), taken to be that of 2017"},
		// 25 A x 0.35 = 8.75 A: breakers begin at 15 A and, from 2023 on, at 10 A
		{"a breaker of 2017", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation90, Conductors: 41},
			wire.Breaker, 15, 0, wire.LimitSmallConductor, "240.4(D), as public summaries give it"},
		{"a breaker of 2023", wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(14), Insulation: wire.Insulation90, Conductors: 41},
			wire.Breaker, 10, 0, wire.LimitNextRating, "240.4(B)"},
		{"a fuse of 2017", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation90, Conductors: 41},
			wire.Fuse, 10, 6, wire.LimitNextRating, "240.4(B)"},
		// two of 500 kcmil have 760 A, and 800 A is the last that 240.4(B) reaches; three have 1140 A
		{"760 A", wire.Installation{Rules: wire.NEC2017, Size: wire.Kcmil(500), Insulation: wire.Insulation75, Parallel: 2},
			wire.AnyDevice, 800, 700, wire.LimitNextRating, "240.4(B)"},
		{"1140 A", wire.Installation{Rules: wire.NEC2017, Size: wire.Kcmil(500), Insulation: wire.Insulation75, Parallel: 3},
			wire.AnyDevice, 1140, 1000, wire.LimitAmpacity, "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1"},
		{"boat, 12 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(12), Insulation: wire.Insulation105, System: volts(12)},
			wire.AnyDevice, 67.5, 40, wire.LimitBoat, "183.455(c)(1): 150 % of Table 5 under 50 V"},
		// 105 A is no rating of NEC 240.6(A); 110 A is the next and not above 157.5 A
		{"boat, 120 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(4), Insulation: wire.Insulation60, System: volts(120)},
			wire.Breaker, 110, 100, wire.LimitNextRating, "183.455(c)(2): Table 5 at 50 V and more, or the next rating up to 150 % of it"},
		{"boat, 120 V, 45 A is a rating of the NEC and none of vehicle fuses",
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(12), Insulation: wire.Insulation105, System: volts(120)},
			wire.AnyDevice, 45, 45, wire.LimitAmpacity, "183.455(c)(2): Table 5 at 50 V and more, or the next rating up to 150 % of it"},
		{"boat, 120 V, a rating", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(12), Insulation: wire.Insulation90, System: volts(120)},
			wire.AnyDevice, 40, 40, wire.LimitAmpacity, "183.455(c)(2): Table 5 at 50 V and more, or the next rating up to 150 % of it"},
		{"RV", wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(16), Insulation: wire.Insulation60, System: volts(24)},
			wire.AnyDevice, 8, 7.5, wire.LimitSmallConductor, "Table 552.10(E)(1), park trailers, low voltage"},
		{"RV, thick", wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Insulation: wire.Insulation105},
			wire.AnyDevice, 80, 80, wire.LimitAmpacity, "183.425 Table 5, free air"},
	} {
		p := mustProtect(t, wire.Circuit{Installation: c.x, Kind: c.kind, Load: 1 * units.Ampere})
		if units.Compare(p.Limit, c.limit) != 0 || units.Compare(p.Below, c.below) != 0 || p.Rule != c.rule || p.LimitSource().Place != c.place {
			t.Errorf("%s: limit %v, below %v by %v, %s; want %v, %v by %v, %s", c.what, p.Limit, p.Below, p.Rule, p.LimitSource().Place,
				c.limit, c.below, c.rule, c.place)
		}
		saysAll(t, p.Findings())
	}
}

// TestSmallConductorFindings pins 5.6 A and 8 A for hours, and the note on
// devices, for 18 and 16 AWG under the NEC only.
func TestSmallConductorFindings(t *testing.T) {
	for _, c := range []struct {
		gauge int
		load  units.Current
		hours bool
		found bool
	}{{18, 5.6, true, false}, {18, 5.61, true, true}, {18, 5.61, false, false}, {16, 8, true, false}, {16, 8.01, true, true}} {
		p := mustProtect(t, wire.Circuit{Load: c.load, Continuous: c.hours,
			Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(c.gauge), Insulation: wire.Insulation90}})
		if got := hasSeverity(p.Findings(), "small-conductor-continuous", working.Danger); got != c.found {
			t.Errorf("%d AWG, %v: %v, want %v", c.gauge, c.load, got, c.found)
		}
		if !hasSeverity(p.Findings(), "small-conductor-device", working.Note) {
			t.Errorf("%d AWG: found %v", c.gauge, p.Findings())
		}
	}
	for _, x := range []wire.Installation{
		{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation90},
		{Rules: wire.RVLowVoltage, Size: wire.AWG(18), Insulation: wire.Insulation90},
	} {
		if found := mustProtect(t, wire.Circuit{Installation: x, Load: 1 * units.Ampere}).Findings(); has(found, "small-conductor-device") {
			t.Errorf("%v %v: found %v", x.Rules, x.Size, found)
		}
	}
}

// TestContinuousConductor: two in parallel have twice what 125 % is held
// against; 170 A of 1/0 AWG bears 136 A for hours.
func TestContinuousConductor(t *testing.T) {
	for _, c := range []struct {
		parallel int
		load     units.Current
		found    bool
	}{{1, 120, false}, {1, 120.1, true}, {2, 240, false}, {2, 240.1, true}} {
		p := mustProtect(t, wire.Circuit{Load: c.load, Continuous: true,
			Installation: wire.Installation{Rules: wire.NEC2023, Size: wire.Aught(1), Insulation: wire.Insulation75, Parallel: c.parallel}})
		if got := hasSeverity(p.Findings(), "conductor-below-continuous", working.Danger); got != c.found {
			t.Errorf("%d of them, %v: %v, want %v", c.parallel, c.load, got, c.found)
		}
	}
}

// TestAboveAmpacityByRule: a boat allows 150 %, and says what that means.
func TestAboveAmpacityByRule(t *testing.T) {
	circuit := branchCircuit()
	circuit.Installation.Rules, circuit.Device = wire.Boat33CFR, units.Some(60*units.Ampere)
	found := mustProtect(t, circuit).Findings()
	if !hasSeverity(found, "device-above-ampacity", working.Note) {
		t.Errorf("60 A on 45 A of a boat: found %v", found)
	}
	circuit.Device = units.Some(67.5 * units.Ampere)
	if found := mustProtect(t, circuit).Findings(); has(found, "device-above-limit") {
		t.Errorf("at 150 %%: found %v", found)
	}
	circuit.Device = units.Some(67.6 * units.Ampere)
	if found := mustProtect(t, circuit).Findings(); !hasSeverity(found, "device-above-limit", working.Danger) {
		t.Errorf("above 150 %%: found %v", found)
	}
}

// TestOpeningTime: the far short of branchCircuit is 371 A or so; 12 AWG of 105
// °C thermoplastic bears k²S² with k = 226·√(ln(394.5/339.5)) = 87.6 and S = 3.31
// mm², so 84 100 A²s: 0.6 s.
func TestOpeningTime(t *testing.T) {
	circuit := branchCircuit()
	longest, ok := mustProtect(t, circuit).Heated.Longest.Get()
	end := mustProtect(t, circuit).AtEnd.Current
	if want := 84100 / (float64(end) * float64(end)); !ok || math.Abs(float64(longest)/want-1) > 0.002 {
		t.Errorf("it bears %v for %v, want %v s", end, longest, want)
	}
	for _, c := range []struct {
		share     units.Ratio // of what it bears
		thermoset bool
		found     bool
	}{{1, false, false}, {1.001, false, true}, {1.001, true, false}} {
		circuit.Opens, circuit.Thermoset = units.Some(units.Scale(longest, c.share)), c.thermoset
		if got := hasSeverity(mustProtect(t, circuit).Findings(), "withstand-exceeded", working.Danger); got != c.found {
			t.Errorf("%v of what it bears, thermoset %v: %v, want %v", c.share, c.thermoset, got, c.found)
		}
	}
	// Cross-linked insulation bears 250 °C: k from 105 °C is 226·√(ln(484.5/339.5)), 134.8.
	circuit.Thermoset, circuit.Opens = true, units.None[units.Elapsed]()
	if more := mustProtect(t, circuit).Heated; math.Abs(float64(more.K)-134.8) > 0.05 || more.Let != 0 {
		t.Errorf("thermoset: k %v, let through %v", float64(more.K), more.Let)
	}
	// Beyond 5 s the method does not hold, and is refused rather than kind.
	circuit.Opens = units.Some(5.001 * units.Second)
	_, err := wire.Protect(circuit)
	wantRangeError(t, err, "wire.Protect", "Opens")
	circuit.Opens, circuit.Fault = units.Some(1*units.Second), units.None[wire.FaultSource]()
	_, err = wire.Protect(circuit)
	wantRangeError(t, err, "wire.Protect", "Opens")
	circuit = branchCircuit()
	circuit.Kind = 3
	_, err = wire.Protect(circuit)
	wantRangeError(t, err, "wire.Protect", "Kind")
	// 200 °C insulation is not thermoplastic, and copper-clad has no factor.
	for _, spoil := range []func(*wire.Circuit){
		func(c *wire.Circuit) { c.Installation.Insulation = wire.Insulation200 },
		func(c *wire.Circuit) {
			c.Installation.Rules, c.Installation.Metal, c.Installation.Insulation = wire.NEC2017, wire.CopperClad, wire.Insulation90
		},
	} {
		circuit = branchCircuit()
		spoil(&circuit)
		circuit.Opens = units.Some(1 * units.Second)
		p := mustProtect(t, circuit)
		saysAll(t, p.Findings())
		if p.Heated != (wire.Withstand{}) || !hasSeverity(p.Findings(), "withstand-not-judged", working.Note) {
			t.Errorf("%+v: %+v, found %v", circuit.Installation, p.Heated, p.Findings())
		}
	}
}

// TestFaultOfOtherMetals: aluminium at 75 °C has 1.65 times the resistance of
// copper (NEC Chapter 9 Table 8: 0.808 against 0.491 ohm/kft at 6 AWG), and two
// in parallel have half of one.
func TestFaultOfOtherMetals(t *testing.T) {
	circuit := branchCircuit()
	circuit.Installation = wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation90}
	copper := mustProtect(t, circuit).AtEnd.Loop
	circuit.Installation.Metal = wire.Aluminium
	if r := units.RatioOf(mustProtect(t, circuit).AtEnd.Loop, copper); math.Abs(float64(r)-0.808/0.491) > 0.01 {
		t.Errorf("aluminium has %v of the resistance, want 1.646", float64(r))
	}
	circuit.Installation = wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(2), Insulation: wire.Insulation90}
	one := mustProtect(t, circuit)
	circuit.Installation.Parallel = 2
	two := mustProtect(t, circuit)
	if units.Compare(2*two.AtEnd.Loop, one.AtEnd.Loop) != 0 || units.Compare(2*two.AtDevice.Loop, one.AtDevice.Loop) != 0 {
		t.Errorf("two have %v and %v, one has %v and %v", two.AtEnd.Loop, two.AtDevice.Loop, one.AtEnd.Loop, one.AtDevice.Loop)
	}
	if units.Compare(2*two.Heated.ShortTime.Current, two.AtEnd.Current) != 0 {
		t.Errorf("each carries %v of %v", two.Heated.ShortTime.Current, two.AtEnd.Current)
	}
}

// TestNonStandardDevice: a 10 A breaker is none of the list before 2023.
func TestNonStandardDevice(t *testing.T) {
	for _, c := range []struct {
		rules  wire.RuleSet
		kind   wire.DeviceKind
		device units.Current
		found  bool
	}{
		{wire.NEC2017, wire.Breaker, 10, true}, {wire.NEC2023, wire.Breaker, 10, false}, {wire.NEC2017, wire.Fuse, 10, false},
		{wire.NEC2017, wire.AnyDevice, 11, false}, {wire.NEC2017, wire.Fuse, 7000, true}, {wire.RVLowVoltage, wire.Fuse, 11, false},
	} {
		p := mustProtect(t, wire.Circuit{Load: 1, Kind: c.kind, Device: units.Some(c.device),
			Installation: wire.Installation{Rules: c.rules, Size: wire.AWG(12), Insulation: wire.Insulation90}})
		saysAll(t, p.Findings())
		if got := hasSeverity(p.Findings(), "device-not-standard", working.Note); got != c.found {
			t.Errorf("%v, %v of %v: %v, want %v", c.rules, c.kind, c.device, got, c.found)
		}
	}
}

// finding returns the one of the rule.
func finding(t *testing.T, findings []working.Finding, rule string) working.Finding {
	t.Helper()
	for _, f := range findings {
		if f.Rule == rule {
			return f
		}
	}
	t.Fatalf("found %v, want %s", findings, rule)
	return working.Finding{}
}

// TestFixNamesWhatFits: the advice on a device above its limit names ratings
// between the load and the limit, one where there is one, and none where there
// is none.
func TestFixNamesWhatFits(t *testing.T) {
	for _, c := range []struct {
		load units.Current
		want string
	}{
		{8, "Fit a device of 10 A to 20 A."}, {16, "Fit a device of 20 A."},
		{20.1, "Use a larger conductor; no device would suit this one and the load."},
		{10000, "Use a larger conductor; no device would suit this one and the load."},
	} {
		circuit := branchCircuit()
		circuit.Load, circuit.Device = c.load, units.Some(25*units.Ampere)
		if f := finding(t, mustProtect(t, circuit).Findings(), "device-above-limit"); f.Fix != c.want {
			t.Errorf("%v: %q, want %q", c.load, f.Fix, c.want)
		}
	}
	// A place that is not stated cites the rule of the boat, or of the vehicle.
	for rules, want := range map[wire.RuleSet]string{
		wire.Boat33CFR: "183.455(b): 7 in from the source, 40 in if sheathed or enclosed", wire.RVLowVoltage: "552.10(E)(4), as an article on it says: 18 in from the source",
	} {
		circuit := branchCircuit()
		circuit.Installation.Rules, circuit.FromSource = rules, units.None[units.Length]()
		if f := finding(t, mustProtect(t, circuit).Findings(), "place-not-stated"); f.Source.Place != want {
			t.Errorf("%v: %q, want %q", rules, f.Source.Place, want)
		}
	}
}

func TestRatingsOf(t *testing.T) {
	_, err := wire.RatingsOf(wire.NEC2017, 3)
	wantRangeError(t, err, "wire.RatingsOf", "Kind")
	_, err = wire.RatingsOf(9, wire.Fuse)
	wantRangeError(t, err, "wire.RatingsOf", "Rules")
	vehicle, err := wire.RatingsOf(wire.RVLowVoltage, wire.Breaker)
	if err != nil {
		t.Fatal(err)
	}
	if first, _ := vehicle.At(0); first != 1*units.Ampere {
		t.Errorf("vehicle fuses begin at %v", first)
	}
}
