package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// agrees holds a value against a number worked by hand.
func agrees(t *testing.T, what string, got units.Value, want string) {
	t.Helper()
	printed, err := units.ParsePrinted(want)
	if err != nil {
		t.Fatal(err)
	}
	if ok, err := printed.Agrees(got); err != nil || !ok {
		t.Errorf("%s: %v, want %s", what, got, want)
	}
}

// TestGapByCharge: 2040 Wh at 12.8 V are 159.4 Ah; 45 A bring them in 3.54 h,
// and a bank that takes 15 A in three times that.
func TestGapByCharge(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	agrees(t, "by energy", p.Use.GapHours.Or(0), "3.15 h")
	agrees(t, "by charge", p.Use.GapByCharge.Or(0), "3.54 h")
	if !strings.Contains(flat(p), "(3.15 h by energy, 3.54 h by charge)") || strings.Contains(flat(p), "lead takes longer") {
		t.Error("both times are not in the text, or lead is")
	}
	slow := planOf(t, func(r *plan.Rig) { r.Bank.ChargeLimit = units.Some(7.5 * units.Ampere) })
	agrees(t, "by energy on 15 A", slow.Use.GapHours.Or(0), "9.44 h")
	agrees(t, "by charge on 15 A", slow.Use.GapByCharge.Or(0), "10.6 h")
	lead := planOf(t, func(r *plan.Rig) {
		r.Bank = plan.Bank{Chemistry: battery.AGM, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt, Parallel: 2}
	})
	if !strings.Contains(flat(lead), "lead takes longer still") {
		t.Error("a lead bank, and nothing said")
	}
}

// TestGapWithoutARoof: 20 A at 14.4 V for 4 h are 1152 Wh of 3109 Wh.
func TestGapWithoutARoof(t *testing.T) {
	drop := func(r *plan.Rig) {
		r.Roof = nil
		r.Circuits = r.Circuits[:6]
	}
	towOnly := func(r *plan.Rig) { drop(r); r.Converter = nil }
	checkSeeded(t, []seeded{
		{"tow only", "use", "use-above-charge", working.Caution, towOnly},
		{"a converter that nothing feeds", "use", "use-above-charge", working.Caution, func(r *plan.Rig) {
			drop(r)
			r.Shore, r.Generator, r.Tow, r.Bonds = nil, nil, nil, r.Bonds[1:]
		}},
		{"a converter that is too small", "use", "use-above-charge", working.Caution, func(r *plan.Rig) { drop(r); r.Converter.Current = 8 * units.Ampere }},
	})
	if !strings.Contains(flat(planOf(t, towOnly)), "nothing that is described does on this day") {
		t.Error("nothing is said of the gap")
	}
	for name, change := range map[string]func(*plan.Rig){
		"shore and converter": drop,
		"driven long enough":  func(r *plan.Rig) { towOnly(r); r.Tow.Hours = 11 * units.Hour },
	} {
		if _, ok := found(planOf(t, change), "use", "use-above-charge"); ok {
			t.Errorf("%s: enough, and found wanting", name)
		}
	}
}
