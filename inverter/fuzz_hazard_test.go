package inverter_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

func FuzzCanRun(f *testing.F) {
	f.Add(1450.0, 900.0, 80.0, 0.6, 1500.0, uint8(1))
	f.Add(900.0, 900.0, 900.0, 1.0, 2000.0, uint8(2))
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, uint8(0))
	f.Fuzz(func(t *testing.T, a, b, c, factor, most float64, flags uint8) {
		l := inverter.Limit{Name: "limit", Voltage: 120}
		if flags&1 != 0 {
			l.Power = units.Some(units.Power(most))
		}
		if flags&2 != 0 {
			l.Apparent = units.Some(units.ApparentPower(most))
		}
		demands := []inverter.Demand{{Name: "a", Power: units.Power(a)}, {Name: "b", Power: units.Power(b)},
			{Name: "c", Power: units.Power(c), PowerFactor: units.Some(units.Ratio(factor))}, {Name: "like a", Power: units.Power(a)}}
		r, err := inverter.CanRun(l, demands)
		checkOutcome(t, err, r)
		if err != nil {
			return
		}
		want := slowRunnable(l, demands)
		slices.Sort(want)
		if !slices.Equal(membersOf(r.Sets), want) {
			t.Fatalf("sets %v, want %v", membersOf(r.Sets), want)
		}
	})
}

func FuzzMeetings(f *testing.F) {
	f.Add("shore", "generator", "main", "main", "inlet", "inlet", "", "", uint8(3), uint8(3))
	f.Add("", "generator", "main", "", "", "", "line", "", uint8(4), uint8(0))
	f.Fuzz(func(t *testing.T, a, b, panelA, panelB, nameA, nameB, positionA, positionB string, kindA, kindB uint8) {
		reach := func(source, panel, name, position string, kind uint8) inverter.Reach {
			r := inverter.Reach{Source: source, Panel: panel}
			if kind < 128 {
				r.Guards = []inverter.Guard{{Kind: inverter.GuardKind(kind), Name: name, Position: position}}
			}
			return r
		}
		list, err := inverter.Meetings([]inverter.Reach{reach(a, panelA, nameA, positionA, kindA), reach(b, panelB, nameB, positionB, kindB)})
		var e *units.RangeError
		if err != nil && !errors.As(err, &e) {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		for _, m := range list {
			checkOutcome(t, nil, m)
			if (len(m.Findings()) == 0) != (m.Kept == inverter.KeptApart) {
				t.Fatalf("%+v has %v", m, m.Findings())
			}
		}
	})
}

func FuzzCarbonMonoxide(f *testing.F) {
	f.Add("generator", uint8(5))
	f.Add("", uint8(77))
	f.Fuzz(func(t *testing.T, name string, site uint8) {
		x, err := inverter.CarbonMonoxide(inverter.Engine{Name: name, Site: inverter.Site(site)})
		var e *units.RangeError
		if err != nil && !errors.As(err, &e) {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		if len(x.Findings()) != 1 {
			t.Fatal("an engine needs one finding")
		}
	})
}
