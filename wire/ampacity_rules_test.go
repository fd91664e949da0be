package wire_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// volts makes a stated system voltage.
func volts(v float64) units.Opt[units.Voltage] { return units.Some(units.Voltage(v)) }

// TestAmpacityByEdition are cells of the published tables, worked by hand with
// the factors that stand beside them.
func TestAmpacityByEdition(t *testing.T) {
	for _, c := range []struct {
		what    string
		x       wire.Installation
		want    units.Current
		governs wire.Governs
		rule    string // where the rule that governed stands
	}{
		{"2008, 14 AWG at 60 °C", wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(14), Insulation: wire.Insulation60},
			20, wire.ByInsulation, "Table 310.16, in a public reprint"},
		{"2023, the same", wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(14), Insulation: wire.Insulation60},
			15, wire.ByInsulation, "Table 310.16, taken to be Table 310.15(B)(16) of 2017 unchanged"},
		{"2017, terminals govern", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation90},
			15, wire.ByTerminals, "110.14(C)"},
		// 8 AWG aluminium at 90 °C: 45 A x 0.87 = 39.15 A, above 35 A of 60 °C terminals
		{"aluminium", wire.Installation{Rules: wire.NEC2017, Metal: wire.Aluminium, Size: wire.AWG(8), Insulation: wire.Insulation90, Ambient: units.Celsius(45)},
			35, wire.ByTerminals, "110.14(C)"},
		{"copper-clad, 75 °C throughout", wire.Installation{Rules: wire.NEC2017, Metal: wire.CopperClad, Size: wire.AWG(8), Insulation: wire.Insulation75, Terminals: wire.Insulation75},
			40, wire.ByInsulation, "Table 310.15(B)(16), aluminium or copper-clad aluminium, read through IRC 2018 Table E3705.1"},
		// 2008 has one band from 61 to 70 °C: 40 A x 0.58; from 2011 on 62 °C has 0.65
		{"2008, 62 °C", wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(10), Insulation: wire.Insulation90, Ambient: units.Celsius(62)},
			23.2, wire.ByInsulation, "Table 310.16, in a public reprint"},
		{"2017, 62 °C", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90, Ambient: units.Celsius(62)},
			26, wire.ByInsulation, "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1"},
		{"80 °C wire by the 75 °C column", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation80, Terminals: wire.Insulation90},
			65, wire.ByInsulation, "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1"},
		{"200 °C wire by the 90 °C column", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation200, Terminals: wire.Insulation90},
			75, wire.ByInsulation, "Table 310.15(B)(16), copper, read through IRC 2018 Table E3705.1"},
		{"16 AWG from memory", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(16), Insulation: wire.Insulation90},
			18, wire.ByInsulation, "Table 310.15(B)(16), 18 and 16 AWG at 90 °C"},
		// two of 1/0 AWG with 75 °C terminals
		{"in parallel", wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation90, Parallel: 2},
			300, wire.ByTerminals, "110.14(C)"},
		{"too thin for parallel", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(1), Insulation: wire.Insulation90, Parallel: 2},
			110, wire.ByTerminals, "110.14(C)"},
		// 20 A is a device limit, one wire's
		{"RV, two side by side", wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(12), Insulation: wire.Insulation105, Parallel: 2},
			20, wire.ByDeviceTable, "Table 552.10(E)(1), park trailers, low voltage"},
		// 60 A x 0.86
		{"engine space", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105, EngineSpace: true, Ambient: units.Celsius(50)},
			51.6, wire.ByInsulation, "183.425 Table 5, free air"},
		// 245 A x 0.82 x 0.6
		{"engine space, four at 120 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.Aught(1), Insulation: wire.Insulation90, EngineSpace: true, Conductors: 4, System: volts(120)},
			120.54, wire.ByInsulation, "183.425 Table 5, free air"},
		// bundling begins at 50 V, not below
		{"three at 50 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105, Conductors: 3, System: volts(50)},
			42, wire.ByInsulation, "183.425 Table 5, free air"},
		{"thirty at 48 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105, Conductors: 30, System: volts(48)},
			60, wire.ByInsulation, "183.425 Table 5, free air"},
		{"two at 120 V", wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105, Conductors: 2, System: volts(120)},
			60, wire.ByInsulation, "183.425 Table 5, free air"},
	} {
		got, err := wire.Ampacity(c.x)
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		if units.Compare(got.Current, c.want) != 0 || got.Governs != c.governs || got.Rule().Place != c.rule {
			t.Errorf("%s: %v by %v, %s; want %v by %v, %s", c.what, got.Current, got.Governs, got.Rule().Place, c.want, c.governs, c.rule)
		}
	}
}

func TestAmpacityRefusesByRuleSet(t *testing.T) {
	boat := wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105}
	for _, c := range []struct {
		field string
		spoil func(*wire.Installation)
	}{
		{"Parallel", func(x *wire.Installation) { x.Parallel = -1 }},
		{"Parallel", func(x *wire.Installation) { x.Parallel = 101 }},
		{"Metal", func(x *wire.Installation) { x.Metal = 3 }},
		{"Metal", func(x *wire.Installation) { x.Metal = wire.Aluminium }},
		{"Metal", func(x *wire.Installation) { x.Rules, x.Metal = wire.RVLowVoltage, wire.CopperClad }},
		{"System", func(x *wire.Installation) { x.System = volts(0) }},
		{"System", func(x *wire.Installation) { x.System = volts(math.NaN()) }},
		{"System", func(x *wire.Installation) { x.Rules, x.System = wire.RVLowVoltage, volts(50) }},
		{"Conductors", func(x *wire.Installation) { x.Conductors = 4 }},
		{"Conductors", func(x *wire.Installation) { x.Rules, x.Conductors, x.System = wire.RVLowVoltage, 4, volts(12) }},
		{"Ambient", func(x *wire.Installation) { x.Ambient = units.Celsius(30.1) }},
		{"Ambient", func(x *wire.Installation) { x.EngineSpace, x.Ambient = true, units.Celsius(50.1) }},
		{"EngineSpace", func(x *wire.Installation) { x.Rules, x.EngineSpace = wire.RVLowVoltage, true }},
		{"EngineSpace", func(x *wire.Installation) { x.Rules, x.EngineSpace = wire.NEC2017, true }},
		// no aluminium below 12 AWG, and what 2023 has of 14 AWG copper-clad is in dispute
		{"Size", func(x *wire.Installation) { x.Rules, x.Metal, x.Size = wire.NEC2023, wire.CopperClad, wire.AWG(14) }},
		{"Size", func(x *wire.Installation) {
			x.Rules, x.Size, x.Insulation = wire.NEC2008, wire.AWG(18), wire.Insulation80
		}},
		// the factors to 2008 begin at 21 °C
		{"Ambient", func(x *wire.Installation) { x.Rules, x.Ambient = wire.NEC2008, units.Celsius(20.5) }},
		{"Ambient", func(x *wire.Installation) { x.Rules, x.Ambient = wire.NEC2008, units.Celsius(80.5) }},
	} {
		x := boat
		c.spoil(&x)
		got, err := wire.Ampacity(x)
		wantRangeError(t, err, "wire.Ampacity", c.field)
		if got != (wire.CarryingCapacity{}) {
			t.Errorf("%s: result %+v, want the zero value", c.field, got)
		}
	}
	if x := (wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(10), Insulation: wire.Insulation90, Ambient: units.Celsius(21)}); mustCarry(t, x).Ambient != 1.04 {
		t.Errorf("21 °C by the edition of 2008: %v", mustCarry(t, x).Ambient)
	}
}

// TestAmpacityFindings: each finding comes with its cause and goes with it.
func TestAmpacityFindings(t *testing.T) {
	for _, c := range []struct {
		rule     string
		severity working.Severity
		with, no wire.Installation
	}{
		{"rule-from-memory", working.Note,
			wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(10), Insulation: wire.Insulation105},
			wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Insulation: wire.Insulation105}},
		{"free-air-table", working.Note,
			wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Insulation: wire.Insulation105},
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105}},
		{"edition-allows-more", working.Caution,
			wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(12), Insulation: wire.Insulation60},
			wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(10), Insulation: wire.Insulation60}},
		{"engine-space-from-memory", working.Note,
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105, EngineSpace: true},
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105}},
		{"bundle-not-counted", working.Caution,
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105, Conductors: 3},
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105, Conductors: 3, System: volts(120)}},
		{"boat-18-awg", working.Caution,
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(18), Insulation: wire.Insulation105},
			wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(16), Insulation: wire.Insulation105}},
		{"table-from-memory", working.Note,
			wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(16), Insulation: wire.Insulation90},
			wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(14), Insulation: wire.Insulation90}},
		{"table-from-memory", working.Note,
			wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(14), Insulation: wire.Insulation90},
			wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(14), Insulation: wire.Insulation90}},
		{"parallel-not-counted", working.Danger,
			wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(1), Insulation: wire.Insulation75, Parallel: 2},
			wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation75, Parallel: 2}},
	} {
		with, without := mustCarry(t, c.with).Findings(), mustCarry(t, c.no).Findings()
		if !hasSeverity(with, c.rule, c.severity) {
			t.Errorf("%s: found %v", c.rule, with)
		}
		if has(without, c.rule) {
			t.Errorf("%s without its cause: found %v", c.rule, without)
		}
		saysAll(t, with)
	}
}

// hasSeverity reports whether a finding of the rule has the severity.
func hasSeverity(findings []working.Finding, rule string, severity working.Severity) bool {
	for _, f := range findings {
		if f.Rule == rule && f.Severity == severity {
			return true
		}
	}
	return false
}

// saysAll wants each finding to say what, with which numbers, what to do and
// by which rule.
func saysAll(t *testing.T, findings []working.Finding) {
	t.Helper()
	for _, f := range findings {
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Errorf("incomplete finding %+v", f)
		}
	}
}

// TestAmpacityLaws are what no table and no correction may break.
func TestAmpacityLaws(t *testing.T) {
	base := wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(8), Insulation: wire.Insulation90, Terminals: wire.Insulation90}
	for name, law := range map[string]func() bool{
		"warmer air never lets more through": func() bool {
			last := units.Current(math.Inf(1))
			for c := -60.0; c <= 85; c += 0.5 {
				x := base
				x.Ambient = units.Celsius(c)
				now := mustCarry(t, x).Corrected
				if now > last {
					return false
				}
				last = now
			}
			return true
		},
		"more conductors never let more through": func() bool {
			last := units.Current(math.Inf(1))
			for n := 0; n <= 60; n++ {
				x := base
				x.Conductors = n
				now := mustCarry(t, x).Current
				if now > last {
					return false
				}
				last = now
			}
			return true
		},
		"aluminium carries less than copper": func() bool {
			for _, size := range wire.Gauges() {
				x := base
				x.Size, x.Metal = size, wire.Aluminium
				al, err := wire.Ampacity(x)
				if err != nil {
					continue
				}
				if x.Metal = wire.Copper; mustCarry(t, x).Current <= al.Current {
					return false
				}
			}
			return true
		},
		"an engine space never helps": func() bool {
			for n := wire.Insulation60; n <= wire.Insulation200; n++ {
				x := wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: n}
				cool := mustCarry(t, x).Current
				if x.EngineSpace = true; mustCarry(t, x).Current > cool {
					return false
				}
			}
			return true
		},
	} {
		if !law() {
			t.Errorf("broken: %s", name)
		}
	}
}

// TestBandsOf2008 pins where the bands of the old table end: what lies a little
// above an end belongs to the next band.
func TestBandsOf2008(t *testing.T) {
	tops := []float64{25, 30, 35, 40, 45, 50, 55, 60, 70, 80}
	for i, top := range tops {
		at, above := wire.AmbientFactor(wire.NEC2008, wire.Insulation90, units.Celsius(top)), wire.AmbientFactor(wire.NEC2008, wire.Insulation90, units.Celsius(top+0.1))
		if above >= at {
			t.Errorf("%v °C: %v, and %v just above", top, at, above)
		}
		if i > 0 && wire.AmbientFactor(wire.NEC2008, wire.Insulation90, units.Celsius(tops[i-1]+0.1)) != at {
			t.Errorf("the band to %v °C does not begin after %v °C", top, tops[i-1])
		}
	}
}

// TestBandsBearNoise: float noise does not carry a temperature over the end of
// its band, and what is more than noise does.
func TestBandsBearNoise(t *testing.T) {
	for celsius, want := range map[float64]units.Ratio{40: 0.91, 40.00000000000001: 0.91, 40.0001: 0.87, 39.99999999999999: 0.91} {
		if f := wire.AmbientFactor(wire.NEC2017, wire.Insulation90, units.Celsius(celsius)); f != want {
			t.Errorf("%v °C: %v, want %v", celsius, f, want)
		}
	}
}

// TestBoatTableIsFreeAir: two bodies print the same numbers from 6 AWG up at 60
// and 75 °C, the Coast Guard for boats and a textbook for free air.
func TestBoatTableIsFreeAir(t *testing.T) {
	printed, compared := secondCopy(t, "wire_free_air.csv", "FREE"), 0
	for _, size := range wire.Gauges() {
		for n, celsius := range map[wire.Insulation]int{wire.Insulation60: 60, wire.Insulation75: 75} {
			p, ok := printed[fmt.Sprintf("FREE-%s-%d", rowName(size), celsius)]
			if !ok || size.Compare(wire.AWG(6)) < 0 {
				continue
			}
			compared++
			if c := mustCarry(t, wire.Installation{Rules: wire.Boat33CFR, Size: size, Insulation: n}); !p.Covers(float64(c.Table)) {
				t.Errorf("%v at %d °C: %v on a boat, %v in free air", size, celsius, c.Table, p)
			}
		}
	}
	if compared != 16 {
		t.Errorf("%d cells compared, want 16", compared)
	}
}

// TestThinWireOfBoats pins the 30 in of 33 CFR 183.425(f).
func TestThinWireOfBoats(t *testing.T) {
	f := finding(t, mustCarry(t, wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(18), Insulation: wire.Insulation105}).Findings(), "boat-18-awg")
	if out := f.Numbers[1].Value.(units.Length); units.Compare(out, 30*units.Inch) != 0 {
		t.Errorf("%v may be out of the sheath, want 30 in", out)
	}
}

// TestEngineSpaceFactors holds the remembered factors to the root that they are
// from, 50 °C on a 30 °C base, to a hundredth; at 200 °C the
// regulation gives 1 and is 6 % kinder. At 80 °C it rounds 0.7746 up to 0.78.
func TestEngineSpaceFactors(t *testing.T) {
	for n := wire.Insulation60; n <= wire.Insulation125; n++ {
		c := mustCarry(t, wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: n, EngineSpace: true})
		rated := n.Temperature().Celsius()
		if root := math.Sqrt((rated - 50) / (rated - 30)); math.Abs(float64(c.Ambient)-root) > 0.0055 {
			t.Errorf("%v: factor %v, the root is %.4f", n, c.Ambient, root)
		}
	}
}

func TestInstallationAsJSON(t *testing.T) {
	want := wire.Installation{Rules: wire.NEC2023, Size: wire.Aught(1), Metal: wire.Aluminium, Insulation: wire.Insulation125,
		System: volts(120), Parallel: 2}
	data, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got wire.Installation
	if err := json.Unmarshal(data, &got); err != nil || got != want {
		t.Errorf("%s reads back as %+v, %v", data, got, err)
	}
}

// TestTableWords: an error about a size names the sizes of the table it means.
func TestTableWords(t *testing.T) {
	for _, c := range []struct {
		x    wire.Installation
		want string
	}{
		{wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(16), Insulation: wire.Insulation75},
			"14 AWG to 500 kcmil of the NEC 2017 table at 75 °C"},
		{wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(20), Insulation: wire.Insulation105},
			"18 AWG to 500 kcmil of the NEC 2008 table at 105 °C"},
		{wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(14), Insulation: wire.Insulation90, Metal: wire.Aluminium},
			"12 AWG to 500 kcmil of the NEC 2023 table at 90 °C"},
		{wire.Installation{Rules: wire.Boat33CFR, Size: wire.Kcmil(250), Insulation: wire.Insulation200},
			"18 AWG to 4/0 AWG of the 33 CFR 183 table at 200 °C"},
	} {
		_, err := wire.Ampacity(c.x)
		if e := wantRange(t, err); e != nil && e.Allowed.String() != c.want {
			t.Errorf("%+v: %q, want %q", c.x, e.Allowed, c.want)
		}
	}
}

func wantRange(t *testing.T, err error) *units.RangeError {
	t.Helper()
	var e *units.RangeError
	if !errors.As(err, &e) {
		t.Errorf("%v, want a *units.RangeError", err)
		return nil
	}
	return e
}

// TestHeatOfThinAndThick pins what a drop is held against: the RV limits below
// 14 AWG, NEC 310.16 at 60 °C, and 33 CFR 183.425 at 105 °C.
func TestHeatOfThinAndThick(t *testing.T) {
	for _, c := range []struct {
		size               wire.Size
		strictest, kindest units.Current
	}{
		{wire.AWG(20), 0, 20}, {wire.AWG(16), 8, 25}, {wire.AWG(12), 20, 45}, {wire.AWG(3), 85, 180},
		{wire.Aught(4), 195, 445}, {wire.Kcmil(500), 320, 0},
	} {
		if s, k := wire.Strictest(c.size), wire.Kindest(c.size); s != c.strictest || k != c.kindest {
			t.Errorf("%v: %v and %v, want %v and %v", c.size, s, k, c.strictest, c.kindest)
		}
	}
	// Between two gauges, with the areas of NEC Chapter 9 Table 8, in mm²:
	// 25 A · 1.5/1.31, 80 A · 10/8.37, 210 A · 35/33.62; 25 mm² has the 180 A of
	// 3 AWG, since 160 A · 25/21.15 is more.
	for area, want := range map[units.Area]units.Current{1.5: 28.6, 10: 95.6, 35: 218.6, 25: 180} {
		got := wire.Kindest(wire.Metric(area * units.SquareMillimetre))
		if off := got/want - 1; off > 0.002 || off < -0.002 {
			t.Errorf("%v mm²: %v, want %v", float64(area), got, want)
		}
	}
	if s := wire.Strictest(wire.Metric(10 * units.SquareMillimetre)); s != 40 {
		t.Errorf("10 mm²: %v by the strictest, want 40 A", s)
	}
}
