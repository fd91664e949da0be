package inverter_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// demoMachine is the inverter of the invented demo.
func demoMachine() inverter.Machine {
	return inverter.Machine{
		Continuous:    1500 * units.Watt,
		ContinuousVA:  units.Some(1500 * units.VoltAmpere),
		Surge:         units.Some(3000 * units.VoltAmpere),
		SurgeFor:      units.Some(2 * units.Second),
		Efficiency:    89 * units.Percent,
		Idle:          units.Some(14 * units.Watt),
		LowestVoltage: units.Some(10.8 * units.Volt),
		PassThrough:   units.Some(30 * units.Ampere),
	}
}

// The loads of the invented demo's backed panel, and its air conditioner.
func microwave() inverter.Demand {
	return inverter.Demand{Name: "microwave", Power: 1450 * units.Watt, PowerFactor: units.Some[units.Ratio](1)}
}

func logger() inverter.Demand {
	return inverter.Demand{Name: "data logger", Power: 9 * units.Watt, PowerFactor: units.Some(60 * units.Percent)}
}

func laptops() inverter.Demand {
	return inverter.Demand{Name: "laptops", Power: 80 * units.Watt, PowerFactor: units.Some(60 * units.Percent)}
}

func coffeeMaker() inverter.Demand {
	return inverter.Demand{Name: "coffee maker", Power: 900 * units.Watt, PowerFactor: units.Some[units.Ratio](1)}
}

func airConditioner() inverter.Demand {
	return inverter.Demand{Name: "air conditioner", Power: 1390 * units.Watt, Apparent: units.Some(1464 * units.VoltAmpere),
		Start: units.Some(7560 * units.VoltAmpere)}
}

// A result can be explained.
type result interface {
	Working() *working.Sheet
	Findings() []working.Finding
}

// rules returns the rules of findings, in order.
func rules(r interface{ Findings() []working.Finding }) (list []string) {
	for _, f := range r.Findings() {
		list = append(list, f.Rule)
	}
	return list
}

func wantRules(t *testing.T, r interface{ Findings() []working.Finding }, want ...string) {
	t.Helper()
	if got := rules(r); !slices.Equal(got, want) {
		t.Errorf("findings %q, want %q", got, want)
	}
}

// must returns what a call that has to work returns.
func must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func wantRangeError(t *testing.T, err error, op, field string) {
	t.Helper()
	var e *units.RangeError
	if !errors.As(err, &e) || !errors.Is(err, units.ErrRange) {
		t.Errorf("%s with a bad %s: %v, want a *units.RangeError", op, field, err)
		return
	}
	if e.Op != op || e.Field != field || e.Allowed.String() == "" {
		t.Errorf("got %v, want an error of %s for %s", err, op, field)
	}
}

// wantPrinted demands that x, printed to so many decimals, is want.
func wantPrinted(t *testing.T, what string, x float64, decimals int, want string) {
	t.Helper()
	if got := units.Fixed(x, decimals); got != want {
		t.Errorf("%s = %s, want %s", what, got, want)
	}
}
