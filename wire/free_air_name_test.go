package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestFreeAirIsNamed: 2/0 AWG is beyond the RV table, and its 330 A are those of
// 33 CFR 183.425 for a single cable in free air, which no limit hides behind
// the name of the RV rules. 10 AWG is in the table.
func TestFreeAirIsNamed(t *testing.T) {
	x := wire.Installation{Rules: wire.RVLowVoltage, Size: wire.Aught(2), Insulation: wire.Insulation105}
	limit := func(x wire.Installation) string {
		f := finding(t, mustProtect(t, wire.Circuit{Installation: x, Load: 1 * units.Ampere}).Findings(), "no-device-stated")
		return f.Numbers[0].String()
	}
	if got := limit(x); got != "limit by 33 CFR 183 in free air 330 A" {
		t.Errorf("2/0 AWG: %q", got)
	}
	if f := mustCarry(t, x).Findings(); !hasSeverity(f, "free-air-table", working.Note) {
		t.Errorf("alone, as far as is stated: %v", f)
	}
	x.Conductors = 1
	if f := mustCarry(t, x).Findings(); !hasSeverity(f, "free-air-table", working.Note) {
		t.Errorf("alone: %v", f)
	}
	for n := 2; n <= 3; n++ {
		x.Conductors = n
		f := mustCarry(t, x).Findings()
		if !hasSeverity(f, "free-air-table", working.Caution) {
			t.Errorf("%d together: %v", n, f)
		}
		saysAll(t, f)
	}
	x.Size = wire.AWG(10)
	if got := limit(x); got != "limit by RV low voltage 30 A" || has(mustCarry(t, x).Findings(), "free-air-table") {
		t.Errorf("10 AWG: %q", got)
	}
}

// TestCheckNamesFreeAir: of a stated cable nobody knows how it lies.
func TestCheckNamesFreeAir(t *testing.T) {
	q := wire.Quote{Rules: wire.RVLowVoltage, Size: wire.Aught(2), Metal: units.Some(wire.Copper), Insulation: wire.Insulation105,
		Current: stated("200 A"), Device: stated("300 A"), FromSource: stated("0 in")}
	device := func() wire.CheckedClaim {
		c := must[wire.Checked](t)(wire.Check(q))
		if got := hasSeverity(c.Findings(), "free-air-table", working.Caution); got != (q.Size == wire.Aught(2)) {
			t.Errorf("%v: caution %v", q.Size, got)
		}
		for _, l := range c.Lines() {
			if l.Kind == wire.ClaimDevice {
				return l
			}
		}
		t.Fatal("no line on the device")
		return wire.CheckedClaim{}
	}
	if l := device(); !strings.HasSuffix(l.Rule, "by 33 CFR 183 in free air") {
		t.Errorf("2/0 AWG: %v", l)
	}
	q.Size, q.Current, q.Device = wire.AWG(10), stated("18 A"), stated("20 A")
	if l := device(); !strings.HasSuffix(l.Rule, "by RV low voltage") {
		t.Errorf("10 AWG: %v", l)
	}
}
