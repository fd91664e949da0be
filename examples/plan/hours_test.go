package plan_test

import (
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// heater puts the portable heater of 12.5 A on a breaker of its own.
func heater(hours units.Elapsed, rating units.Current) func(*plan.Rig) {
	return func(r *plan.Rig) {
		r.Loads[17].Hours = units.Some(hours)
		r.Circuits[9] = plan.Circuit{Name: "C10", From: "main panel", To: "bedroom", Bus: "main", Length: 18 * units.Foot, Size: wire.AWG(12),
			Insulation: wire.Insulation90, Loads: []string{"portable heater"}, Device: &plan.Device{Rating: rating, At: "main panel"}}
	}
}

// TestLoadsThatRunForHours: a device needs 125 % of what runs for three hours
// or more, and the whole of the rest.
func TestLoadsThatRunForHours(t *testing.T) {
	rated := func(i int, a units.Current) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits[i].Device.Rating = a }
	}
	checkSeeded(t, []seeded{
		// 12.5 A · 1.25 = 15.6 A.
		{"heater of 8 h", "C10", "device-below-load", working.Caution, heater(8*units.Hour, 15*units.Ampere)},
		{"heater of 3 h", "C10", "device-below-load", working.Caution, heater(3*units.Hour, 15*units.Ampere)},
		// Radar and USB, 5 h and 3 h: (3.167 A + 1.667 A) · 1.25 = 6.04 A.
		{"radar and USB", "C4", "device-below-load", working.Caution, rated(3, 6*units.Ampere)},
		// 33.33 A at once, of which 15.32 A without a pause: 37.16 A.
		{"feeder", "C2", "device-below-load", working.Caution, rated(1, 35*units.Ampere)},
		{"a size that no table has", "C4", "device-below-load", working.Caution, on(3, "2.5 mm2", 6*units.Ampere)},
	})
	for name, c := range map[string]struct {
		part   string
		change func(*plan.Rig)
	}{
		"2.9 h":                {"C10", heater(2.9*units.Hour, 15*units.Ampere)},
		"20 A for the heater":  {"C10", heater(8*units.Hour, 20*units.Ampere)},
		"7.5 A at the desk":    {"C4", rated(3, 7.5*units.Ampere)},
		"a freezer that rests": {"C3", rated(2, 6*units.Ampere)},
		"40 A for the panel":   {"C2", rated(1, 40*units.Ampere)},
		"metric":               {"C4", on(3, "2.5 mm2", 6.1*units.Ampere)},
		// It opens before all is on; what runs together is 24.33 A, and 28.2 A
		// with a quarter of 15.32 A.
		"30 A for the panel": {"C2", rated(1, 30*units.Ampere)},
	} {
		if _, ok := found(planOf(t, c.change), c.part, "device-below-load"); ok {
			t.Errorf("%s: false alarm", name)
		}
	}
	p := planOf(t, func(r *plan.Rig) {
		r.Circuits[1].Device.Rating, r.Circuits[1].Usual = 28*units.Ampere, units.None[units.Current]()
	})
	for _, f := range p.Findings {
		if f.Part == "C2" && f.Rule == "device-below-load" && f.Numbers[1].Value != "28.16 A" {
			t.Errorf("what the feeder needs: %v", f.Numbers)
		}
	}
	if _, ok := found(p, "C2", "device-below-load"); !ok {
		t.Error("28 A for 28.2 A is not found")
	}
	// The mend begins at the next standard rating above 6.04 A.
	for _, f := range planOf(t, func(*plan.Rig) {}).Findings {
		if f.Part == "C4" && f.Rule == "device-above-limit" && f.Mend != "Fit a device of 7.5 A to 15 A." {
			t.Errorf("mend of C4: %s", f.Mend)
		}
	}
}
