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
	if len(rows) != 2 {
		t.Fatalf("rows %+v", rows)
	}
	for i, want := range []struct {
		rule, together string
		count          int
	}{{"too-much-together", "33.33 A", 8}, {"too-much-for-hours", "25 A", 6}} {
		r := rows[i]
		if len(r.Loads) != 0 || len(r.Any) != 1 || r.Any[0].Count != want.count || len(r.Any[0].Of) != 20 || r.Rule != want.rule || r.Numbers[0].Value != want.together {
			t.Errorf("row %+v", r)
		}
	}
	if text := flat(p); !strings.Contains(text, "any 8 of (heater a, heater b,") {
		t.Errorf("the choice is not in the text: %s", text)
	}
}

// TestRowsAreLimited: loads that all differ give many sets, of which the
// smallest are listed and the rest counted.
func TestRowsAreLimited(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		list := like(14, 4*units.Hour)
		for i := range list {
			list[i].Power = units.Some(units.Scale(100*units.Watt, units.Ratio(i+2)*units.Ratio(i+3)/8))
		}
		r.Loads = append(r.Loads[:11:11], list...)
		r.Converter, r.Circuits = nil, nil
	})
	text := flat(p)
	if n := strings.Count(text, " 30 A shore "); len(p.Sets) < 50 || n > 20 || !strings.Contains(text, " more rows, all in JSON") {
		t.Errorf("%d sets, %d rows: %s", len(p.Sets), n, text)
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
			got = got || s.Rule == "too-much-for-hours"
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
