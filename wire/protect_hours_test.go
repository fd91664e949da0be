package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// TestPartForHours: NEC 210.20(A) asks for the load and 125 % of what of it is
// continuous: 8 A of which 4 A run for hours need 9 A.
func TestPartForHours(t *testing.T) {
	of := func(part units.Current, continuous bool) wire.Protection {
		c := branchCircuit()
		c.Load, c.Continuous, c.ForHours = 8*units.Ampere, continuous, units.Some(part)
		return mustProtect(t, c)
	}
	for part, want := range map[units.Current]units.Current{0: 8, 4: 9, 8: 10} {
		for _, continuous := range []bool{true, false} {
			if got := of(part, continuous).Needed; got != want {
				t.Errorf("%v for hours: needed %v, want %v", part, got, want)
			}
		}
	}
	small := branchCircuit()
	small.Load, small.Continuous, small.Device = 8*units.Ampere, false, units.Some(8.9*units.Ampere)
	if has(mustProtect(t, small).Findings(), "device-below-load") {
		t.Error("8.9 A for 8 A not for hours: false alarm")
	}
	small.ForHours = units.Some(4 * units.Ampere)
	if !has(mustProtect(t, small).Findings(), "device-below-load") {
		t.Error("8.9 A for 9 A is not found")
	}
	// 240.4(D) has 5.6 A for hours on 18 AWG.
	thin := wire.Circuit{Load: 7 * units.Ampere, Device: units.Some(7 * units.Ampere),
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(18), Insulation: wire.Insulation90}}
	for part, want := range map[units.Current]bool{5.6: false, 5.7: true} {
		thin.ForHours = units.Some(part)
		if got := has(mustProtect(t, thin).Findings(), "small-conductor-continuous"); got != want {
			t.Errorf("%v for hours on 18 AWG: %v, want %v", part, got, want)
		}
	}
}

func TestPartForHoursRefuses(t *testing.T) {
	for _, x := range []float64{-1, 8.1, math.NaN(), math.Inf(1), math.Inf(-1)} {
		c := branchCircuit()
		c.Load, c.ForHours = 8*units.Ampere, units.Some(units.Current(x))
		p, err := wire.Protect(c)
		wantRangeError(t, err, "wire.Protect", "ForHours")
		if p != (wire.Protection{}) {
			t.Errorf("%v: %+v", x, p)
		}
	}
}
