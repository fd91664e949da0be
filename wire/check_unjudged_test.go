package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// thinQuote is 1.5 mm² of 15 m on a 12 V bank, with a fuse of 200 A: the RV rules
// have no metric row.
func thinQuote() wire.Quote {
	return wire.Quote{
		Rules: wire.RVLowVoltage, Size: wire.Metric(1.5 * units.SquareMillimetre), Metal: units.Some(wire.Copper), Insulation: wire.Insulation105,
		Current: stated("5 A"), Device: stated("200 A"), FromSource: stated("0 in"), Interrupting: stated("5000 A"),
		Length: stated("15 m"), LengthIs: wire.LengthOneWay,
		Fault: units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}),
	}
}

// TestCheckShortsNeedNoRow: IEC 60228 has 12.1 Ω/km for 1.5 mm² at 20 °C, 14.7 Ω/km
// at 75 °C: 13.2 V / (3 mΩ + 30 m · 14.7 mΩ/m) is 29.7 A, which opens no 200 A fuse
// and does so at last, slowly, for one of 15 A.
func TestCheckShortsNeedNoRow(t *testing.T) {
	c := mustCheck(t, thinQuote())
	near(t, "short at the end", float64(c.Protection.AtEnd.Current), 29.7)
	if !hasSeverity(c.Findings(), "far-fault-too-weak", working.Danger) || lineOf(c, wire.ClaimDevice).Verdict != working.Unsafe {
		t.Errorf("found %v, %v", rules(c.Findings()), lineOf(c, wire.ClaimDevice))
	}
	saysAll(t, c.Findings())
	q := thinQuote()
	q.Device = stated("15 A")
	c = mustCheck(t, q)
	if has(c.Findings(), "far-fault-too-weak") || !has(c.Findings(), "far-fault-slow") || c.Verdict() != working.NotStated {
		t.Errorf("of 15 A: %v, found %v", c.Verdict(), rules(c.Findings()))
	}
	q.Parallel, q.Device = 2, stated("50 A") // 58.9 A through two side by side
	if c := mustCheck(t, q); has(c.Findings(), "far-fault-too-weak") || !units.Exceeds(c.Protection.AtEnd.Current, 58*units.Ampere) {
		t.Errorf("two side by side: %v, found %v", c.Protection.AtEnd.Current, rules(c.Findings()))
	}
}

// TestCheckDeviceAboveAnyTable: a device that would burn even a thicker conductor in
// free air is a danger without a row, and gone when the device is that of the
// circuit. The ampacities behind it are those of 33 CFR 183.425 at 105 °C: 20 A of
// 18 AWG, 35 A of 14, 45 A of 12, 80 A of 8 and 285 A of 1/0; aluminium has 61 % of
// the conductivity, so 78 % of the current.
func TestCheckDeviceAboveAnyTable(t *testing.T) {
	for _, c := range []struct {
		rules     wire.RuleSet
		size      wire.Size
		metal     wire.Metal
		bad, good string
	}{
		// 35 A of 14 AWG, 2.081 mm², are 42 A for 2.5 mm².
		{wire.RVLowVoltage, wire.Metric(2.5 * units.SquareMillimetre), wire.Copper, "43 A", "42 A"},
		{wire.RVLowVoltage, wire.AWG(22), wire.Copper, "50 A", "20 A"},
		{wire.RVLowVoltage, wire.Aught(1), wire.CopperClad, "250 A", "200 A"},
		{wire.RVLowVoltage, wire.AWG(8), wire.Aluminium, "200 A", "60 A"},
		{wire.NEC2017, wire.AWG(14), wire.Aluminium, "40 A", "30 A"},
		{wire.Boat33CFR, wire.Metric(2.5 * units.SquareMillimetre), wire.Copper, "70 A", "60 A"},
	} {
		q := wire.Quote{Rules: c.rules, Size: c.size, Metal: units.Some(c.metal), Insulation: wire.Insulation105,
			Current: stated("5 A"), Device: stated(c.bad), FromSource: stated("0 in")}
		got := mustCheck(t, q)
		if !hasSeverity(got.Findings(), "device-above-any-table", working.Danger) || lineOf(got, wire.ClaimDevice).Verdict != working.Unsafe {
			t.Errorf("%s on %v %v: found %v", c.bad, c.size, c.metal, rules(got.Findings()))
		}
		saysAll(t, got.Findings())
		q.Device = stated(c.good)
		if got := mustCheck(t, q); has(got.Findings(), "device-above-any-table") {
			t.Errorf("%s on %v %v is above any table", c.good, c.size, c.metal)
		}
		q.Parallel, q.Device = 4, stated(c.bad)
		if got := mustCheck(t, q); c.bad != "200 A" && has(got.Findings(), "device-above-any-table") {
			t.Errorf("%s on four of %v %v is above any table", c.bad, c.size, c.metal)
		}
	}
	q := wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Metric(300 * units.SquareMillimetre), Current: stated("5 A"), Device: stated("500 A")}
	if got := mustCheck(t, q); has(got.Findings(), "device-above-any-table") {
		t.Error("no gauge of the table is as thick as 300 mm²")
	}
}

// TestCheckWithoutAFactor: what no factor is known for is no mistake of the quote.
// What is wrong without it stays wrong, and what would agree is not stated.
func TestCheckWithoutAFactor(t *testing.T) {
	for what, spoil := range map[string]func(*wire.Quote){
		"4 conductors together": func(q *wire.Quote) { q.Conductors = 4 },
		"40 °C round":           func(q *wire.Quote) { q.Ambient = units.Celsius(40) },
	} {
		for _, by := range []wire.RuleSet{wire.RVLowVoltage, wire.Boat33CFR} {
			q := wire.Quote{Rules: by, Size: wire.AWG(10), Metal: units.Some(wire.Copper), Insulation: wire.Insulation105,
				Current: stated("25 A"), Device: stated("30 A"), FromSource: stated("0 in"), Ampacity: stated("30 A")}
			if has(mustCheck(t, q).Findings(), "factor-not-known") {
				t.Errorf("%v: a factor is missed without a need", by)
			}
			spoil(&q)
			c := mustCheck(t, q)
			for _, kind := range []wire.ClaimKind{wire.ClaimSize, wire.ClaimDevice, wire.ClaimAmpacity} {
				if l := lineOf(c, kind); l.Verdict != working.NotStated || !strings.Contains(l.Rule, what) {
					t.Errorf("%v, %s: %v", by, what, l)
				}
			}
			if asked := strings.Join(c.Questions(), "\n"); !strings.Contains(asked, what) || !hasSeverity(c.Findings(), "factor-not-known", working.Caution) {
				t.Errorf("%v, %s: asks %q, found %v", by, what, asked, rules(c.Findings()))
			}
			saysAll(t, c.Findings())
			q.Device = stated("100 A")
			if l := lineOf(mustCheck(t, q), wire.ClaimDevice); l.Verdict != working.Unsafe {
				t.Errorf("%v, %s, 100 A: %v", by, what, l)
			}
		}
	}
	// The NEC has both factors, and 33 CFR 183 that for conductors from 50 V up.
	q := wire.Quote{Rules: wire.NEC2023, Size: wire.AWG(10), Conductors: 4, Ambient: units.Celsius(40)}
	if c := mustCheck(t, q); has(c.Findings(), "factor-not-known") || c.Protection.Capacity.Bundle == 1 || c.Protection.Capacity.Ambient == 1 {
		t.Errorf("found %v", rules(c.Findings()))
	}
	q = wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(10), Conductors: 4, Voltage: units.Some(120 * units.Volt)}
	if c := mustCheck(t, q); has(c.Findings(), "factor-not-known") || c.Protection.Capacity.Bundle == 1 {
		t.Errorf("found %v", rules(c.Findings()))
	}
}

// TestCheckSaysWhyNotJudged: the row of a size that is there is not said to be
// missing.
func TestCheckSaysWhyNotJudged(t *testing.T) {
	for _, c := range []struct {
		q    wire.Quote
		want string
	}{
		{wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(1), Metal: units.Some(wire.CopperClad)}, "has no copper-clad aluminium: its table is of copper"},
		{wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(8), Metal: units.Some(wire.Aluminium)}, "33 CFR 183 has no aluminium: its table is of copper"},
		{wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Metric(70 * units.SquareMillimetre)}, "has no row for 70 mm² of copper"},
		{wire.Quote{Rules: wire.NEC2017, Size: wire.AWG(18), Insulation: wire.Insulation60}, "has no row for 18 AWG of copper at 60 °C"},
	} {
		got := mustCheck(t, c.q)
		asked := strings.Join(got.Questions(), "\n")
		if l := lineOf(got, wire.ClaimSize); !strings.Contains(l.Rule, c.want) || !strings.Contains(asked, c.want) {
			t.Errorf("%v; asks %q, want %q", l, asked, c.want)
		}
		for _, f := range got.Findings() {
			if f.Rule == "conductor-not-judged" && !strings.Contains(f.Message, c.want) {
				t.Errorf("%s, want %q", f.Message, c.want)
			}
		}
	}
}
