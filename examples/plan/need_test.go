package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestFeedersOfABus: what a panel feeds is not on at once.
func TestFeedersOfABus(t *testing.T) {
	small := func(r *plan.Rig) { r.Circuits[1].Device.Rating = 30 * units.Ampere }
	checkSeeded(t, []seeded{
		{"33.3 A at once on 30 A", "C2", "all-at-once-above-device", working.Note, small},
		{"one load above the device", "C2", "device-below-load", working.Caution, func(r *plan.Rig) {
			r.Circuits[1].Device.Rating, r.Circuits[1].Usual = 15*units.Ampere, units.None[units.Current]()
			r.Loads[2].Current = units.Some(20 * units.Ampere)
		}},
	})
	p := planOf(t, small)
	if _, ok := found(p, "C2", "device-below-load"); ok || p.Circuits[1].Current != 30*units.Ampere {
		t.Errorf("a feeder of 30 A: false alarm %v, %v", ok, p.Circuits[1].Current)
	}
	// The largest of what runs: lamps, furnace, detector, refrigerator, freezer,
	// recorder, radar, modem and USB have 3 h or more: 1.6 + 7.8 + 0.08 + 4 + 5 +
	// 0.35 + 3.167 + 0.667 + 1.667 A = 24.33 A.
	p = planOf(t, func(r *plan.Rig) {
		r.Circuits[1].Device.Rating, r.Circuits[1].Usual = 20*units.Ampere, units.None[units.Current]()
	})
	if ok, err := units.MustPrinted("24.33", "A").Agrees(p.Circuits[1].Current); !ok || err != nil {
		t.Errorf("what runs together: %v, want 24.33 A", p.Circuits[1].Current)
	}
	if _, ok := found(p, "C2", "device-below-load"); !ok {
		t.Error("24.33 A for hours on 20 A is not found")
	}
}

// TestStatedCurrentIsNotBelieved where what hangs on the circuit is more.
func TestStatedCurrentIsNotBelieved(t *testing.T) {
	little := units.Some(1 * units.Ampere)
	charger := plan.Circuit{Name: "C11", From: "main panel", To: "converter", Bus: "main", Length: 6 * units.Foot, Size: wire.AWG(12),
		Insulation: wire.Insulation90, Current: little, Device: &plan.Device{Rating: 15 * units.Ampere, At: "main panel"}}
	back := plan.Circuit{Name: "C12", From: "converter", To: "bank", Bus: "dc", Length: 6 * units.Foot, Size: wire.AWG(4),
		Insulation: wire.Insulation105, Current: little, Device: &plan.Device{Rating: 60 * units.Ampere, At: "bank"}}
	tow := plan.Circuit{Name: "C13", From: "tow charger", To: "bank", Bus: "dc", Length: 6 * units.Foot, Size: wire.AWG(4),
		Insulation: wire.Insulation105, Power: units.Some(12 * units.Watt), Device: &plan.Device{Rating: 60 * units.Ampere, At: "bank"}}
	pass := plan.Circuit{Name: "C14", From: "main panel", To: "inverter", Bus: "main", Length: 6 * units.Foot, Size: wire.AWG(12),
		Insulation: wire.Insulation90, Current: little, Device: &plan.Device{Rating: 20 * units.Ampere, At: "main panel"}}
	add := func(c plan.Circuit) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits = append(r.Circuits, c) }
	}
	usual := func(i int) func(*plan.Rig) {
		return func(r *plan.Rig) {
			r.Circuits[i].Current, r.Circuits[i].Usual = little, units.None[units.Current]()
		}
	}
	checkSeeded(t, []seeded{
		{"inverter", "C1", "stated-current-below-load", working.Caution, usual(0)},
		{"bus", "C2", "stated-current-below-load", working.Caution, usual(1)},
		{"controller", "C8", "stated-current-below-load", working.Caution, usual(7)},
		{"tow charger", "C9", "stated-current-below-load", working.Caution, usual(8)},
		{"converter", "C11", "stated-current-below-load", working.Caution, add(charger)},
		{"from the converter", "C12", "stated-current-below-load", working.Caution, add(back)},
		{"from the tow charger", "C13", "stated-current-below-load", working.Caution, add(tow)},
		{"past the inverter", "C14", "stated-current-below-load", working.Caution, add(pass)},
	})
	p := planOf(t, func(r *plan.Rig) { usual(0)(r); add(charger)(r); add(back)(r); add(tow)(r); add(pass)(r) })
	for i, want := range map[int]string{0: "156 A", 10: "6.53 A", 11: "45 A", 12: "20 A"} {
		if ok, err := units.MustPrinted(strings.TrimSuffix(want, " A"), "A").Agrees(p.Circuits[i].Current); !ok || err != nil {
			t.Errorf("%s: %v, want %s", p.Circuits[i].Name, p.Circuits[i].Current, want)
		}
	}
	// The converter runs for hours: 45 A · 1.25 = 56 A, above a device of 50 A.
	p = planOf(t, func(r *plan.Rig) { back.Device.Rating = 50 * units.Ampere; add(back)(r) })
	if _, ok := found(p, "C12", "device-below-load"); !ok {
		t.Error("50 A for a converter that needs 56 A is not found")
	}
	// More than what hangs on it is believed.
	p = planOf(t, func(r *plan.Rig) { r.Circuits[0].Current = units.Some(180 * units.Ampere) })
	if _, ok := found(p, "C1", "stated-current-below-load"); ok || p.Circuits[0].Current != 180*units.Ampere {
		t.Errorf("180 A stated: %v, %v", ok, p.Circuits[0].Current)
	}
}

// TestFeedersOfCircuits: a feeder to a place carries what names it.
func TestFeedersOfCircuits(t *testing.T) {
	chain := func(current units.Opt[units.Current]) func(*plan.Rig) {
		return func(r *plan.Rig) {
			r.Places = []string{"sub panel", "far panel"}
			feed := plan.Circuit{Name: "F1", From: "bank", To: "sub panel", Bus: "dc", Length: 5 * units.Foot, Size: wire.AWG(6),
				Insulation: wire.Insulation105, Current: current, Device: &plan.Device{Rating: 40 * units.Ampere, At: "bank"}}
			next := feed
			next.Name, next.From, next.To, next.Feeder, next.Device = "F2", "sub panel", "far panel", "F1", &plan.Device{Rating: 40 * units.Ampere, At: "sub panel"}
			r.Circuits = append(r.Circuits, feed, next)
			r.Circuits[1].Usual = units.None[units.Current]() // less hangs on it
			r.Circuits[4].From, r.Circuits[4].Feeder, r.Circuits[4].Device.At = "far panel", "F2", "far panel"
			r.Circuits[5].From, r.Circuits[5].Feeder, r.Circuits[5].Device.At = "far panel", "F2", "far panel"
		}
	}
	p := planOf(t, chain(units.None[units.Current]()))
	for i := 10; i < 12; i++ {
		if got := p.Circuits[i].Current; units.Compare(got, 14.8*units.Ampere) != 0 {
			t.Errorf("%s carries %v, want 7.8 A + 7 A", p.Circuits[i].Name, got)
		}
	}
	p = planOf(t, chain(units.Some(2*units.Ampere)))
	for i, name := range map[int]string{10: "F1", 11: "F2"} {
		if _, ok := found(p, name, "stated-current-below-load"); !ok || units.Compare(p.Circuits[i].Current, 7.8*units.Ampere) != 0 {
			t.Errorf("%s: 2 A stated, %v found %v, want 7.8 A", name, p.Circuits[i].Current, ok)
		}
	}
}

// TestFeederWithLoadsOfItsOwn carries what names it as well.
func TestFeederWithLoadsOfItsOwn(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Circuits[5].To, r.Circuits[4].Feeder = "dc panel", "C6" })
	if got := p.Circuits[5].Current; units.Compare(got, 7.8*units.Ampere) != 0 {
		t.Errorf("the pump's circuit feeds the furnace of 7.8 A and carries %v", got)
	}
}

// TestMetricRig: sizes that no rule set here has leave the rest of the plan
// standing.
func TestMetricRig(t *testing.T) {
	metric := func(i int, size string) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits[i].Size = wire.MustSize(size) }
	}
	checkSeeded(t, []seeded{
		{"direct", "C5", "conductor-not-judged", working.Caution, metric(4, "4 mm2")},
		{"alternating", "C10", "conductor-not-judged", working.Caution, metric(9, "2.5 mm2")},
		{"roof", "C7", "conductor-not-judged", working.Caution, metric(6, "6 mm2")},
		{"thin", "C6", "conductor-not-judged", working.Caution, metric(5, "22 AWG")},
	})
	p := planOf(t, func(r *plan.Rig) {
		for i := range r.Circuits {
			r.Circuits[i].Size = wire.MustSize("35 mm2")
		}
		r.Circuits[2].Device = nil
	})
	// No table is needed to see that there is no device, or that it opens in
	// use: 156 A for hours need 195 A.
	if sev, ok := found(p, "C3", "no-device-stated"); !ok || sev != working.Danger {
		t.Errorf("no device on 35 mm²: %v, %v", sev, ok)
	}
	small := planOf(t, func(r *plan.Rig) { metric(0, "50 mm2")(r); r.Circuits[0].Device.Rating = 175 * units.Ampere })
	if _, ok := found(small, "C1", "device-below-load"); !ok {
		t.Error("175 A for an inverter that needs 195 A is not found")
	}
	large := planOf(t, metric(0, "50 mm2"))
	for _, rule := range []string{"device-below-load", "no-device-stated"} {
		if _, ok := found(large, "C1", rule); ok {
			t.Errorf("200 A are in order: %s", rule)
		}
	}
	one := planOf(t, metric(6, "6 mm2"))
	if _, ok := found(one, "C7", "no-device-stated"); ok || one.Circuits[6].Device.Needed {
		t.Errorf("one string needs no device: %v, %+v", ok, one.Circuits[6].Device)
	}
	for _, c := range p.Circuits {
		if c.Drop == 0 || c.Limit.IsSet() || c.Rules == "" || c.Worst < working.Caution {
			t.Errorf("%+v", c)
		}
	}
	if strings.Contains(p.Text(), "  0 A  ") {
		t.Error("a limit of 0 A is printed for what is not judged")
	}
	// The roof's own rule about string fuses holds for any conductor.
	p = planOf(t, func(r *plan.Rig) { metric(6, "6 mm2")(r); r.Roof.Panels, r.Roof.Series = 3, 1 })
	if _, ok := found(p, "C7", "no-device-stated"); !ok {
		t.Error("three strings without a device are not found")
	}
	if _, ok := found(p, "roof", "fuse-each-string"); !ok {
		var rules []string
		for _, f := range p.Findings {
			if f.Part == "roof" {
				rules = append(rules, f.Rule)
			}
		}
		t.Errorf("three strings without fuses: %v", rules)
	}
}

// TestPanelOfABus: a bus and its panel are one place, in either order.
func TestPanelOfABus(t *testing.T) {
	for _, to := range []string{"dc", "dc panel"} {
		for _, from := range []string{"dc", "dc panel"} {
			p := planOf(t, func(r *plan.Rig) {
				r.Circuits[1].To, r.Circuits[2].From, r.Circuits[2].Device.At = to, from, from
			})
			if _, ok := found(p, "C3", "feeder-ends-elsewhere"); ok {
				t.Errorf("%s and %s are one place", to, from)
			}
			if units.Compare(p.Circuits[1].Current, 33.3*units.Ampere) < 0 {
				t.Errorf("to %s: %v", to, p.Circuits[1].Current)
			}
		}
	}
}
