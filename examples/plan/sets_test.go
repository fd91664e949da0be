package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// like returns n heaters on the main bus.
func like(n int, hours units.Elapsed) (list []plan.Load) {
	for i := range n {
		list = append(list, plan.Load{Name: "heater " + string(rune('a'+i)), Bus: "main", Kind: loads.Resistive,
			Power: units.Some(500 * units.Watt), Hours: units.Some(hours)})
	}
	return list
}

// TestLikeLoadsAreOneRow: twenty equal loads have C(20, 8) sets of eight that
// trip, which are one row.
func TestLikeLoadsAreOneRow(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Loads, r.Converter, r.Circuits = append(r.Loads[:11:11], like(20, 4*units.Hour)...), nil, nil
	})
	var rows []plan.SetLine
	for _, s := range p.Sets {
		if s.On == "shore" {
			rows = append(rows, s)
		}
	}
	// 7 · 500 W / 120 V = 29.2 A fit 30 A, 8 are 33.3 A; 6 are 25 A, above 24 A.
	// C(20, 8) = 125970 and C(20, 6) = 38760.
	if len(rows) != 2 || len(rows[0].Loads) != 8 || !strings.Contains(rows[0].Note, "trips: 33.3 A; so do 125969 more") ||
		len(rows[1].Loads) != 6 || !strings.Contains(rows[1].Note, "too much for hours: 25 A; so do 38759 more") {
		t.Errorf("rows %+v", rows)
	}
}

// TestRowsAreLimited: loads that all differ give many sets, of which the
// smallest are listed and the rest counted.
func TestRowsAreLimited(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		list := like(12, 4*units.Hour)
		for i := range list {
			list[i].Power = units.Some(units.Power(500+i) * units.Watt)
		}
		r.Loads = append(r.Loads[:11:11], list...)
		r.Converter, r.Circuits = nil, nil
	})
	counts := map[string]int{}
	for _, s := range p.Sets {
		counts[s.On]++
	}
	last := p.Sets[len(p.Sets)-1]
	// C(12, 6) = 924 sets of six for hours, of which twenty are listed.
	if counts["shore"] != 42 || len(last.Loads) != 0 || last.Note != "and 904 more: too much for hours" {
		t.Errorf("%v rows, the last %+v", counts, last)
	}
}

// TestShortLoadsAreNotForHours: NEC article 100 has three hours.
func TestShortLoadsAreNotForHours(t *testing.T) {
	for hours, want := range map[units.Elapsed]bool{0: true, 2.9 * units.Hour: false, 3 * units.Hour: true} {
		p := planOf(t, func(r *plan.Rig) {
			r.Loads, r.Converter, r.Circuits = append(r.Loads[:11:11], like(6, hours)...), nil, nil
		})
		got := false
		for _, s := range p.Sets {
			got = got || strings.HasPrefix(s.Note, "too much for hours")
		}
		if got != want {
			t.Errorf("loads of %v: listed for hours %v, want %v", hours, got, want)
		}
	}
}

// TestALoadNamedConverter does not stand in the way of the converter.
func TestALoadNamedConverter(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Loads[17].Name = "converter" })
	both := false
	for _, s := range p.Sets {
		text := strings.Join(s.Loads, ", ")
		both = both || strings.Contains(text, "converter of the bank")
	}
	if !both {
		t.Error("the converter of the bank is in no set")
	}
}
