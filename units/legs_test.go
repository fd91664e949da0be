package units_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/drawbar/units"
)

func TestLegs(t *testing.T) {
	nan := units.Current(math.NaN())
	type legs = units.Legs[units.Current]
	for _, test := range []struct {
		l                        legs
		total, larger, unbalance units.Current
	}{
		{legs{}, 0, 0, 0},
		{legs{A: 30}, 30, 30, 30},
		{legs{B: 30}, 30, 30, 30},
		{legs{A: 22, B: 41.5}, 63.5, 41.5, 19.5},
		{legs{A: 41.5, B: 22}, 63.5, 41.5, 19.5},
		{legs{A: -5, B: 3}, -2, 3, 8},
		{legs{A: 15.000000000000002, B: 15}, 30, 15.000000000000002, 0}, // settled, they are equal
		{legs{A: nan, B: 3}, nan, nan, nan},
		{legs{A: 3, B: nan}, nan, nan, nan},
	} {
		for _, got := range []struct {
			what      string
			got, want units.Current
		}{
			{"Total", test.l.Total(), test.total}, {"Larger", test.l.Larger(), test.larger}, {"Unbalance", test.l.Unbalance(), test.unbalance},
		} {
			if same := got.got == got.want || got.got != got.got && got.want != got.want; !same || got.got == 0 && math.Signbit(float64(got.got)) {
				t.Errorf("%+v: %s = %v, want %v", test.l, got.what, got.got, got.want)
			}
		}
	}
	if got, want := (legs{A: 10, B: 20}).Plus(legs{A: 1, B: 2}), (legs{A: 11, B: 22}); got != want {
		t.Errorf("Plus = %v, want %v", got, want)
	}
	if got, want := (legs{A: 10, B: 20}).Scale(50*units.Percent), (legs{A: 5, B: 10}); got != want {
		t.Errorf("Scale = %v, want %v", got, want)
	}
}

func TestLegsLaws(t *testing.T) {
	type legs = units.Legs[units.Power]
	laws := map[string]func(l, m legs) bool{
		"the names of the legs do not matter": func(l, _ legs) bool {
			other := legs{A: l.B, B: l.A}
			return l.Total() == other.Total() && l.Larger() == other.Larger() && l.Unbalance() == other.Unbalance()
		},
		"the larger leg is half of total and unbalance": func(l, _ legs) bool {
			return units.Compare(l.Larger(), (l.Total()+l.Unbalance())/2) == 0
		},
		"Plus commutes":      func(l, m legs) bool { return l.Plus(m) == m.Plus(l) },
		"totals add":         func(l, m legs) bool { return units.Compare(l.Plus(m).Total(), l.Total()+m.Total()) == 0 },
		"doubling is adding": func(l, _ legs) bool { return l.Scale(2) == l.Plus(l) },
		"loads on both legs never need more than both": func(l, m legs) bool {
			return !units.Exceeds(l.Plus(m).Larger(), l.Larger()+m.Larger())
		},
	}
	for name, law := range laws {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(9, 10))
			for range 500 {
				l := legs{A: units.Power(5000 * r.Float64()), B: units.Power(5000 * r.Float64())}
				m := legs{A: units.Power(5000 * r.Float64()), B: units.Power(5000 * r.Float64())}
				if !law(l, m) {
					t.Fatalf("broken by %v, %v", l, m)
				}
			}
		})
	}
}

func TestLegsAllocs(t *testing.T) {
	l := units.Legs[units.Current]{A: 22, B: 41.5}
	if n := testing.AllocsPerRun(100, func() {
		_, _, _ = l.Total(), l.Larger(), l.Unbalance()
		_ = l.Plus(l).Scale(0.5)
	}); n != 0 {
		t.Errorf("Legs allocate %v times", n)
	}
}
