package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// verdicts returns the verdict on each check of circuit i.
func verdicts(p plan.Plan, i int) map[string]working.Verdict {
	list := map[string]working.Verdict{}
	for _, c := range p.Circuits[i].Checks {
		list[c.Name] = c.Verdict
	}
	return list
}

// and makes changes one after another.
func and(changes ...func(*plan.Rig)) func(*plan.Rig) {
	return func(r *plan.Rig) {
		for _, change := range changes {
			change(r)
		}
	}
}

// TestWhatNeedsNoTable: shorts and places are judged for a size that no row is
// for.
func TestWhatNeedsNoTable(t *testing.T) {
	thin := on(5, "22 AWG", 15*units.Ampere) // the pump's, behind 7 ft of 6 AWG
	metric := on(0, "50 mm2", 200*units.Ampere)
	away := func(r *plan.Rig) { r.Circuits[0].Device.Distance = units.Some(3 * units.Foot) }
	checkSeeded(t, []seeded{
		{"burst", "C6", "interrupting-too-low", working.Danger, and(thin, breaking(5, 1600*units.Ampere))},
	})
	// 18 ft of 22 AWG, 19.9 mΩ/ft at 75 °C, are 358 mΩ; with 6.9 mΩ of the feeder
	// and 2 mΩ of the bank 13.3 V drive 36.3 A.
	checkSeeded(t, []seeded{
		{"too weak", "C6", "far-fault-too-weak", working.Danger, on(5, "22 AWG", 37*units.Ampere)},
		{"slow", "C6", "far-fault-slow", working.Caution, on(5, "22 AWG", 12.5*units.Ampere)},
		{"far from the bank", "C1", "device-far-from-source", working.Danger, and(metric, away)},
	})
	for rule, change := range map[string]func(*plan.Rig){
		"far-fault-too-weak":   on(5, "22 AWG", 35*units.Ampere),
		"far-fault-slow":       on(5, "22 AWG", 11.8*units.Ampere),
		"interrupting-too-low": and(thin, breaking(5, 1800*units.Ampere)),
	} {
		if _, ok := found(planOf(t, change), "C6", rule); ok {
			t.Errorf("%s: false alarm", rule)
		}
	}
	if _, ok := found(planOf(t, metric), "C1", "device-far-from-source"); ok {
		t.Error("8 in from the bank: false alarm")
	}
	// The very same shorts as with a size that has a row, of the same metal.
	row, none := planOf(t, func(*plan.Rig) {}), planOf(t, thin)
	if a, b := row.Circuits[5].Fault, none.Circuits[5].Fault; a != b {
		t.Errorf("at the device %v and %v", a, b)
	}
}

// TestNothingJudgedDoesNotAgree: what no check was made of is not stated.
func TestNothingJudgedDoesNotAgree(t *testing.T) {
	p := planOf(t, and(on(9, "2.5 mm2", 16*units.Ampere), on(4, "4 mm2", 15*units.Ampere),
		func(r *plan.Rig) { r.Bank.Resistance = units.None[units.Resistance]() }, breaking(4, 5*units.Ampere), breaking(9, 5*units.Ampere)))
	for _, i := range []int{4, 9} {
		for name, verdict := range verdicts(p, i) {
			if name == "device" || name == "interrupting" || name == "place" {
				if verdict != working.NotStated {
					t.Errorf("%s: %s %v", p.Circuits[i].Name, name, verdict)
				}
			}
		}
		if _, ok := found(p, p.Circuits[i].Name, "fault-not-given"); !ok {
			t.Errorf("%s: nothing says why", p.Circuits[i].Name)
		}
		if p.Circuits[i].Device.Least == 0 || p.Circuits[i].Insulation == 0 {
			t.Errorf("%+v", p.Circuits[i])
		}
	}
	burst := verdicts(planOf(t, and(on(4, "4 mm2", 15*units.Ampere), breaking(4, 5*units.Ampere))), 4)
	if burst["interrupting"] != working.Unsafe {
		t.Errorf("5 A against a bank: %v", burst)
	}
	// Furnace, 3.5 h: 7.8 A · 1.25.
	if got := p.Circuits[4].Device.Least; units.Compare(got, 9.75*units.Ampere) != 0 {
		t.Errorf("least %v, want 9.75 A", got)
	}
	text := p.Text()
	if strings.Contains(text, ": .\n") || !strings.Contains(strings.Join(strings.Fields(text), " "), "C5 by RV low voltage, which has no row for 4 mm².") {
		t.Error("a table that there is not is cited")
	}
}
