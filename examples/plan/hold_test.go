package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// TestLoopInEveryTime: 173.1 W round and round are 4156 Wh a day; the 3226 Wh
// of the bank then last 3226/(129.5+173.1) = 10.7 h, 10.6 h with its sag, and 3226/(69.6+173.1) =
// 13.3 h.
func TestLoopInEveryTime(t *testing.T) {
	const tail = " until the loop below is mended"
	p := planOf(t, func(*plan.Rig) {})
	agrees(t, "a day of the loop", p.Use.LoopEnergy, "4155 Wh")
	for _, want := range []string{"24.9 h on average use, without sun; only 10.6 h" + tail, "46.3 h without sun; only 13.3 h" + tail, "Wh more" + tail} {
		if !strings.Contains(flat(p), want) {
			t.Errorf("no %q in %.900s", want, flat(p))
		}
	}
	mended := planOf(t, func(r *plan.Rig) { r.Converter.Bus = "main" })
	if strings.Contains(flat(mended), tail) || mended.Use.LoopEnergy != 0 || mended.Bank.AverageWithLoop.IsSet() || mended.Bank.UnattendedWithLoop.IsSet() {
		t.Error("mended, and still in the times")
	}
}

// TestIdleNotStated: what nobody stated is no 0 Wh, and times without it are
// the most there can be.
func TestIdleNotStated(t *testing.T) {
	unknown := planOf(t, func(r *plan.Rig) { r.Inverter.Idle = units.None[units.Power]() })
	text := flat(unknown)
	for _, want := range []string{"usable: at most ", "on average: at most ", "at least ", "to empty, average use at most ", "what the inverter draws for itself is not stated"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %.1200s", want, text)
		}
	}
	if unknown.Use.IdleStated || strings.Contains(text, "of which 0 Wh") {
		t.Error("an idle that is not stated is 0 Wh")
	}
	for name, change := range map[string]func(*plan.Rig){"stated": func(*plan.Rig) {}, "zero": func(r *plan.Rig) { r.Inverter.Idle = units.Some(0 * units.Watt) }} {
		if p := planOf(t, change); !p.Use.IdleStated || strings.Contains(flat(p), "usable: at most") {
			t.Errorf("%s: said to be unknown", name)
		}
	}
}

// TestGreatestCurrentIsJudged: a limit that is not stated leaves 189.4 A open,
// not the mean of 10.1 A.
func TestGreatestCurrentIsJudged(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Bank.DischargeLimit = units.None[units.Current]() })
	count := 0
	for _, f := range p.Findings {
		if f.Rule == "discharge-limit-not-stated" {
			if count++; f.Severity != working.Caution || f.Numbers[0].Value != "189.4 A" {
				t.Errorf("%v %v", f.Severity, f.Numbers)
			}
		}
	}
	if count != 1 {
		t.Errorf("said %d times", count)
	}
}

// TestPartsOfTheCharge: 45 A, 30 A and 20 A are the 95 A.
func TestPartsOfTheCharge(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	want := "charge 95 A, limit with one out 75 A, of that converter 45 A, of that output limit of the controller 30 A, of that tow vehicle 20 A"
	if !strings.Contains(flat(p), want) {
		t.Errorf("no %q", want)
	}
	alone := planOf(t, func(r *plan.Rig) {
		r.Tow, r.Converter, r.Circuits, r.Roof.Controller.OutputLimit = nil, nil, nil, 80*units.Ampere
	})
	if strings.Contains(flat(alone), "of that output limit") {
		t.Error("one source is a part of itself")
	}
}

// TestHours: 117.0 h are 4.9 d, and 99.9 h are hours.
func TestHours(t *testing.T) {
	for h, want := range map[units.Elapsed]string{117: "4.9 d", 99.9: "99.9 h", 334: "14 d", 24.86: "24.9 h"} {
		if got := plan.Hours(h * units.Hour); got != want {
			t.Errorf("%v h: %s, want %s", float64(h), got, want)
		}
	}
}
