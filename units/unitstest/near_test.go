package unitstest_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

type (
	plain  float64
	single float32
	result struct {
		Drop  units.Voltage
		Given units.Opt[units.Ratio]
		Metal units.Temperature
		any   any
		list  []plain
	}
)

func TestNear(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	whole := func(x float64) result {
		return result{
			Drop: units.Voltage(x), Given: units.Some(units.Ratio(x)), Metal: units.Celsius(20 * x),
			any: units.Current(x), list: []plain{1, plain(x)},
		}
	}
	for _, c := range []struct {
		name string
		rel  float64
		x, y any
		want bool
	}{
		// Within rel of the larger, whichever that is.
		{"equal", 1e-9, 1.0, 1.0, true},
		{"inside", 1e-9, 1.0, 1 + 9e-10, true},
		{"inside, below", 1e-9, 1 + 9e-10, 1.0, true},
		{"outside", 1e-9, 1.0, 1 + 1.1e-9, false},
		{"outside, below", 1e-9, 1 + 1.1e-9, 1.0, false},
		{"negative", 1e-9, -1.0, -1 - 9e-10, true},
		{"sign", 1e-9, 1.0, -1.0, false},
		{"small", 1e-9, 1e-300, 2e-300, false},
		{"large", 1e-9, 1e300, 2e300, false},
		{"no rel, last bit", 0, 1.0, math.Nextafter(1, 2), false},
		{"negative rel, equal", -1, 1.0, 1.0, true},
		{"NaN rel", nan, 1.0, 1.1, false},
		// Special values.
		{"zeros", 1e-9, 0.0, math.Copysign(0, -1), true},
		{"nothing is near zero", 1e-9, 0.0, 5e-324, false},
		{"NaN", 1e-9, nan, nan, true},
		{"NaN and a number", 1e-9, nan, 1.0, false},
		{"infinities", 1e-9, inf, inf, true},
		{"opposite infinities", 1e-9, inf, -inf, false},
		{"infinity and a number", 1e-9, inf, math.MaxFloat64, false},
		{"difference beyond float64", 1e-9, math.MaxFloat64, -math.MaxFloat64, false},
		// Defined types, and what holds them.
		{"voltage", 1e-9, 12.8 * units.Volt, 12.8000000001 * units.Volt, true},
		{"other voltage", 1e-9, 12.8 * units.Volt, 12.9 * units.Volt, false},
		{"float32", 1e-6, single(1), single(1 + 5e-7), true},
		{"other float32", 1e-8, single(1), single(1 + 5e-7), false},
		{"types differ", 1, units.Voltage(1), units.Current(1), false},
		{"whole", 1e-9, whole(1), whole(1 + 5e-10), true},
		{"whole, other", 1e-9, whole(1), whole(1 + 5e-9), false},
		{"map", 1e-9, map[string]plain{"a": 1}, map[string]plain{"a": 1 + 5e-10}, true},
		{"given and not", 1, units.Some(units.Ratio(0)), units.None[units.Ratio](), false},
		{"no float at all", 1, "1", "2", false},
		// Temperatures.
		{"temperature", 1e-9, units.Celsius(0), units.Celsius(1e-7), true},
		{"other temperature", 1e-9, units.Celsius(0), units.Celsius(1e-6), false},
		{"no temperature", 1, units.Celsius(0), units.Temperature{}, false},
		{"no temperatures", 0, units.Temperature{}, units.Temperature{}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := cmp.Equal(c.x, c.y, unitstest.Near(c.rel)); got != c.want {
				t.Errorf("%v and %v near %v: %v, want %v", c.x, c.y, c.rel, got, c.want)
			}
		})
	}
}

// Each field alone is seen.
func TestNearSeesEachField(t *testing.T) {
	base := result{Drop: 1, Given: units.Some(1 * units.One), Metal: units.Celsius(20), any: units.Current(1), list: []plain{1}}
	for name, change := range map[string]func(*result){
		"Drop":  func(r *result) { r.Drop = 1.01 },
		"Given": func(r *result) { r.Given = units.Some(1.01 * units.One) },
		"Metal": func(r *result) { r.Metal = units.Celsius(21) },
		"any":   func(r *result) { r.any = units.Current(1.01) },
		"list":  func(r *result) { r.list = []plain{1.01} },
	} {
		other := base
		change(&other)
		if cmp.Equal(base, other, unitstest.Near(1e-3)) {
			t.Errorf("a change of %s goes unseen at 1e-3", name)
		}
		if !cmp.Equal(base, other, unitstest.Near(0.1)) {
			t.Errorf("a change of %s is not near at 0.1", name)
		}
	}
}
