package plan_test

import (
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// on returns a change of a circuit: its size and its device.
func on(i int, size string, rating units.Current) func(*plan.Rig) {
	return func(r *plan.Rig) {
		r.Circuits[i].Size, r.Circuits[i].Device.Rating = wire.MustSize(size), rating
	}
}

// TestDeviceAboveAnyTable: a size that the rule set does not know is no licence
// for any device.
func TestDeviceAboveAnyTable(t *testing.T) {
	checkSeeded(t, []seeded{
		{"100 A on 2.5 mm²", "C5", "device-above-any-ampacity", working.Danger, on(4, "2.5 mm2", 100*units.Ampere)},
		{"32 A on 1.5 mm²", "C10", "device-above-any-ampacity", working.Danger, on(9, "1.5 mm2", 32*units.Ampere)},
		{"50 A on 22 AWG", "C6", "device-above-any-ampacity", working.Danger, on(5, "22 AWG", 50*units.Ampere)},
	})
	// 33 CFR 183.425 gives 14 AWG with 105 °C insulation 35 A and 12 AWG 45 A;
	// 2.5 mm² is between them, and 2 AWG and 35 mm² are nearly one size, of 210 A.
	for _, c := range []struct {
		size   string
		rating units.Current
	}{{"2.5 mm2", 35}, {"1.5 mm2", 25}, {"22 AWG", 20}, {"35 mm2", 210}} {
		p := planOf(t, on(4, c.size, c.rating))
		if _, ok := found(p, "C5", "device-above-any-ampacity"); ok {
			t.Errorf("%v on %s is not above any table", c.rating, c.size)
		}
	}
	p := planOf(t, on(4, "2.5 mm2", 100*units.Ampere))
	for _, check := range p.Circuits[4].Checks {
		if check.Name == "device" && check.Verdict != working.Unsafe {
			t.Errorf("100 A on 2.5 mm²: %v", check.Verdict)
		}
	}
	if p.Circuits[4].Worst != working.Danger {
		t.Errorf("worst of 100 A on 2.5 mm²: %v", p.Circuits[4].Worst)
	}
	none := planOf(t, func(r *plan.Rig) { on(4, "2.5 mm2", 1)(r); r.Circuits[4].Device = nil })
	if _, ok := found(none, "C5", "device-above-any-ampacity"); ok {
		t.Error("no device is above nothing")
	}
}
