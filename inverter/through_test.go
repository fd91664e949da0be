package inverter_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// passing is a service of 30 A, of which what demand 0 and 1 take passes a
// device of 20 A.
func passing() (inverter.Limit, []inverter.Demand) {
	return inverter.Limit{Name: "the service", Current: units.Some(30 * units.Ampere), Voltage: 120 * units.Volt,
			Passes: 0b11, Through: units.Some(20 * units.Ampere)},
		[]inverter.Demand{
			{Name: "oven", Power: 1440 * units.Watt, PowerFactor: units.Some(units.One)},
			{Name: "kettle", Power: 1200 * units.Watt, PowerFactor: units.Some(units.One)},
			{Name: "heater", Power: 1200 * units.Watt, PowerFactor: units.Some(units.One)},
		}
}

// TestThrough: 12 A and 10 A are 22 A and fit 30 A, but not the 20 A that they
// pass; 12 A and the other 10 A do.
func TestThrough(t *testing.T) {
	l, demands := passing()
	over := must[inverter.Overload](t)(inverter.Sets(l, demands))
	run := must[inverter.Runnable](t)(inverter.CanRun(l, demands))
	if len(over.Sets) != 1 || over.Sets[0].Members != 0b011 || !over.Sets[0].OverThrough || over.Sets[0].OverCurrent {
		t.Fatalf("too much: %+v", over.Sets)
	}
	if got := over.Sets[0].Through; units.Compare(got, 22*units.Ampere) != 0 {
		t.Errorf("%v pass, want 22 A", got)
	}
	// The kettle and the heater take alike and do not stand for each other.
	if len(run.Sets) != 2 || run.Sets[0].Members != 0b101 || run.Sets[1].Members != 0b110 {
		t.Errorf("can run: %+v", run.Sets)
	}
	if names := strings.Join(run.Names(0b101), ", "); names != "oven, heater" {
		t.Errorf("names %q", names)
	}
	numbers := over.Findings()[0].Numbers
	if len(numbers) != 2 || numbers[1].Value != units.Value(20*units.Ampere) {
		t.Errorf("numbers %v", numbers)
	}
	unitstest.CheckSheet(t, over.Working())
	unitstest.CheckSheet(t, run.Working())
	// Without the device 22 A run.
	l.Through = units.None[units.Current]()
	if over := must[inverter.Overload](t)(inverter.Sets(l, demands)); len(over.Sets) != 1 || over.Sets[0].Members != 0b111 {
		t.Errorf("without the device: %+v", over.Sets)
	}
}

// TestThroughByCount holds every subset of random demands against plain sums.
func TestThroughByCount(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		demands := randomDemands(r, 1+r.IntN(7))
		all := inverter.Members(1)<<len(demands) - 1
		l := inverter.Limit{Name: "the generator", Power: units.Some(units.Power(500 + r.IntN(4000))), Voltage: 120 * units.Volt,
			Passes: inverter.Members(r.IntN(128)) & all, Through: units.Some(units.Current(4 + r.IntN(20)))}
		over := must[inverter.Overload](t)(inverter.Sets(l, demands))
		run := must[inverter.Runnable](t)(inverter.CanRun(l, demands))
		for m := inverter.Members(1); m <= all; m++ {
			var watts units.Power
			var passes units.ApparentPower
			for i := range m.All() {
				watts += demands[i].Power
				if l.Passes.Has(i) {
					passes += demands[i].Apparent.Or(demands[i].Power.Apparent(demands[i].PowerFactor.Or(1)))
				}
			}
			want := units.Exceeds(watts, l.Power.Or(0)) || units.Exceeds(passes.At(l.Voltage), l.Through.Or(0))
			got, fits := false, false
			for _, s := range over.Sets {
				got = got || s.Members&^m == 0
			}
			for _, s := range run.Sets {
				fits = fits || m&^s.Members == 0
			}
			if got != want || fits == want {
				t.Fatalf("%b of %+v on %+v: too much %v, runs %v, want %v", m, demands, l, got, fits, want)
			}
		}
	}
}

func TestBadThrough(t *testing.T) {
	for name, spoil := range map[string]func(*inverter.Limit){
		"Through": func(l *inverter.Limit) { l.Through = units.Some(units.Current(math.NaN())) },
		"Voltage": func(l *inverter.Limit) {
			l.Current, l.Power, l.Voltage = units.None[units.Current](), units.Some(1*units.Watt), 0
		},
	} {
		l, demands := passing()
		spoil(&l)
		_, err := inverter.Sets(l, demands)
		_, also := inverter.CanRun(l, demands)
		var limits, alsoLimits *units.RangeError
		if !errors.As(err, &limits) || !errors.As(also, &alsoLimits) || limits.Field != name || alsoLimits.Field != name {
			t.Errorf("%s: %v, %v", name, err, also)
		}
	}
}
