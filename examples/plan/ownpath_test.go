package plan_test

import (
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// winch adds a load of 150 A on the 12 V bus, and a circuit that names it.
func winch(from, feeder string) func(*plan.Rig) {
	return func(r *plan.Rig) {
		l := r.Loads[1]
		l.Name, l.Current, l.Hours = "winch", units.Some(150*units.Ampere), units.Some(0.05*units.Hour)
		r.Loads = append(r.Loads, l)
		r.Circuits = append(r.Circuits, plan.Circuit{Name: "W", From: from, To: "winch", Bus: "dc", Length: 10 * units.Foot, Size: wire.Aught(2),
			Insulation: wire.Insulation105, Loads: []string{"winch"}, Feeder: feeder, Device: &plan.Device{Rating: 200 * units.Ampere, At: from}})
	}
}

// TestLoadWithItsOwnWay: what hangs on the bank by its own circuit is no load of
// the panel's feeder, and what hangs on the panel is.
func TestLoadWithItsOwnWay(t *testing.T) {
	own := planOf(t, winch("bank", ""))
	if ok, err := units.MustPrinted("33.3", "A").Agrees(own.Circuits[1].Current); !ok || err != nil {
		t.Errorf("the panel's feeder carries %v beside a winch on the bank, want 33.3 A", own.Circuits[1].Current)
	}
	if got := own.Circuits[10].Current; units.Compare(got, 150*units.Ampere) != 0 {
		t.Errorf("the winch takes %v", got)
	}
	for _, rule := range []string{"load-above-ampacity", "current-above-any-ampacity", "device-below-load", "drop-above-allowed"} {
		if _, ok := found(own, "C2", rule); ok {
			t.Errorf("C2: false alarm, %s", rule)
		}
	}
	shown := false
	for _, s := range own.Working() {
		unitstest.CheckSheet(t, s.Sheet)
		for _, step := range s.Sheet.Steps() {
			shown = shown || s.Part == "C2" && step.Name == "I" && units.Compare(units.Current(step.Value), own.Circuits[1].Current) == 0
		}
	}
	if !shown {
		t.Error("no sheet says what C2 carries")
	}
	for name, change := range map[string]func(*plan.Rig){
		"from the panel": winch("dc panel", "C2"), "from the panel, no feeder named": winch("dc panel", ""),
	} {
		p := planOf(t, change)
		if sev, ok := found(p, "C2", "load-above-ampacity"); !ok || sev != working.Danger {
			t.Errorf("%s: 150 A on C2: %v, %v", name, ok, sev)
		}
		if _, ok := found(p, "C2", "current-above-any-ampacity"); ok {
			t.Errorf("%s: one cause is two dangers", name)
		}
	}
	// Where the rule set has no row, what no table allows is still a danger.
	p := planOf(t, and(winch("dc panel", "C2"), func(r *plan.Rig) {
		r.Circuits[1].Size, r.Circuits[1].Usual = wire.MustSize("16 mm2"), units.None[units.Current]()
	}))
	if _, ok := found(p, "C2", "current-above-any-ampacity"); !ok {
		t.Error("150 A on 16 mm² is not found")
	}
}
