package plan_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// TestTogetherByCount goes through every subset of the loads on 30 A and sees
// which are too much and which can run, by plain sums of volt-amperes: on the
// service of 3600 VA, and of what is behind the inverter on the 20 A, 2400 VA, of
// the device before it.
func TestTogetherByCount(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	// 40 W x 2 at 0.6, 9 W at 0.6, 14.4 V x 45 A at 0.87 and 0.95 for the converter.
	names := []string{"laptops", "data logger", "coffee maker", "microwave", "roof air conditioner", "water heater element", "portable heater", "converter"}
	draw := []float64{80 / 0.6, 9 / 0.6, 900, 1450, 12.2 * 120 / 1, 1440, 1500, 648 / 0.87 / 0.95}
	const backed = 0b10001111
	sum := func(set int) (all float64) {
		for i, va := range draw {
			if set&(1<<i) != 0 {
				all += va
			}
		}
		return all
	}
	set := func(l plan.SetLine) (set int) {
		for i, name := range names {
			if slices.Contains(l.Loads, name) {
				set |= 1 << i
			}
		}
		return set
	}
	var over, run []int
	for _, l := range p.Sets {
		if l.On == "shore" && l.Rule == "too-much-together" {
			over = append(over, set(l))
		}
	}
	for _, l := range p.Runs {
		if l.On == "shore" && l.Rule == "runs-together" {
			run = append(run, set(l))
		}
	}
	for subset := range 1 << len(names) {
		holds := func(of int) bool { return subset&of == of }
		within := func(of int) bool { return subset&^of == 0 }
		if tooMuch := sum(subset) > 3600 || sum(subset&backed) > 2400; slices.ContainsFunc(over, holds) != tooMuch || slices.ContainsFunc(run, within) == tooMuch {
			t.Errorf("%b comes to %v VA: over %v, runs %v", subset, sum(subset), over, run)
		}
	}
}

// TestForHours: only what runs for three hours or more is too much for hours.
func TestForHours(t *testing.T) {
	const both = "roof air conditioner, water heater element"
	listed := func(change func(*plan.Rig)) bool {
		return slices.ContainsFunc(planOf(t, change).Sets, func(s plan.SetLine) bool {
			return s.Rule == "too-much-for-hours" && strings.Join(s.Loads, ", ") == both
		})
	}
	for _, c := range []struct {
		what  string
		hours float64
		want  bool
	}{
		{"none on this day", 0, true}, {"a short while", 0.1, false}, {"just less", 2.99, false}, {"three hours", 3, true}, {"all day", 24, true},
	} {
		if got := listed(func(r *plan.Rig) { r.Loads[16].Hours = units.Some(units.Scale(units.Hour, units.Ratio(c.hours))) }); got != c.want {
			t.Errorf("%s: listed %v", c.what, got)
		}
	}
	for _, s := range planOf(t, func(*plan.Rig) {}).Sets {
		if s.Rule == "too-much-for-hours" && slices.Contains(s.Loads, "microwave") {
			t.Error("a microwave of 0.12 h runs for hours")
		}
	}
}

// TestAlikeTogether: loads that take alike stand for each other.
func TestAlikeTogether(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		for _, name := range []string{"heater a", "heater b"} {
			r.Loads = append(r.Loads, plan.Load{Name: name, Bus: "main", Kind: loads.Resistive, Power: units.Some(1500 * units.Watt), Hours: units.Some(0 * units.Hour)})
		}
	})
	for _, want := range []string{"any 1 of (portable heater, heater a, heater b)", "any 2 of (portable heater, heater a, heater b)",
		"portable heater + heater a + heater b 37.5 A 30 A"} {
		if !strings.Contains(flat(p), want) {
			t.Errorf("three heaters of 1500 W, and no %q", want)
		}
	}
	for _, s := range p.Working() {
		unitstest.CheckSheet(t, s.Sheet)
	}
}

// TestRunsInRows: what can run is told in few rows, and where nothing can run
// beside anything there is no row for it.
func TestRunsInRows(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	_, after, _ := strings.Cut(p.Text(), "\nTogether\n")
	table, _, _ := strings.Cut(after, "\nCircuits\n")
	text := strings.Join(strings.Fields(table), " ")
	// By hand: (1500 + 900 + 133.3 + 15) / 120 + 6.534 A.
	n := 0
	for _, limit := range []string{" A 30 A", " A 20 A", " A 24 A", " VA 1500 VA", " VA 1800 VA"} {
		n += strings.Count(text, limit)
	}
	if n != 11 || !strings.Contains(text, "27.77 A 30 A") {
		t.Errorf("%d rows: %s", n, table)
	}
	weak := planOf(t, func(r *plan.Rig) { r.Shore.Service = 0.1 * units.Ampere })
	if slices.ContainsFunc(weak.Runs, func(s plan.SetLine) bool { return s.On == "shore" }) {
		t.Errorf("on 0.1 A run %v", weak.Runs)
	}
}
