package plan_test

import (
	"slices"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// tied puts the demo's two panels, of 6.12 A each, in parallel on a PWM
// controller of that output limit, with a fuse of that rating at the bank.
func tied(limit, fuse units.Current) func(*plan.Rig) {
	return func(r *plan.Rig) {
		r.Roof.Series, r.Roof.Controller.Kind, r.Roof.Controller.OutputLimit = 1, solar.PWM, limit
		r.Circuits[7].Device.Rating = fuse
	}
}

// TestPanelsTiedToTheBank: a PWM controller passes on what the panels bring,
// whatever is on its label. By NEC 690.8 conductor and device need
// 12.24 A · 1.25 · 1.25 = 19.1 A.
func TestPanelsTiedToTheBank(t *testing.T) {
	checkSeeded(t, []seeded{
		{"above the controller", "C8", "device-below-load", working.Caution, tied(10*units.Ampere, 15*units.Ampere)},
		{"just below 19.1 A", "C8", "device-below-load", working.Caution, tied(10*units.Ampere, 19*units.Ampere)},
		{"within the controller", "C8", "device-below-load", working.Caution, tied(13*units.Ampere, 17.5*units.Ampere)},
		{"stated too low", "C8", "stated-current-below-load", working.Caution, func(r *plan.Rig) {
			tied(10*units.Ampere, 40*units.Ampere)(r)
			r.Circuits[7].Current = units.Some(10 * units.Ampere)
		}},
	})
	for _, limit := range []units.Current{10, 13} {
		p := planOf(t, tied(limit, 20))
		if _, ok := found(p, "C8", "device-below-load"); ok {
			t.Errorf("20 A for 19.1 A, with %v on the label: false alarm", limit)
		}
		if got := p.Circuits[7].Current; units.Compare(got, max(limit, 12.24)) != 0 {
			t.Errorf("C8 with %v on the label: %v", limit, got)
		}
		// 45 A, the panels, and 20 A from the tow vehicle.
		want := map[units.Current]string{10: "77.24 A", 13: "78 A"}[limit]
		at := slices.IndexFunc(p.Findings, func(f plan.Finding) bool { return f.Rule == "charge-above-limit-one-out" })
		if at < 0 || p.Findings[at].Numbers[0].Value != want {
			t.Errorf("with %v on the label %s are not found to charge the bank", limit, want)
		}
	}
	// A converting controller keeps to its limit.
	p := planOf(t, func(r *plan.Rig) { tied(10, 15)(r); r.Roof.Controller.Kind = solar.MPPT })
	if _, ok := found(p, "C8", "device-below-load"); ok || p.Circuits[7].Current != 10*units.Ampere {
		t.Errorf("MPPT: %v", p.Circuits[7].Current)
	}
}
