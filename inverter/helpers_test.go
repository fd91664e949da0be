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
	return inverter.Demand{Name: "microwave", Power: 1450 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some[units.Ratio](1)}
}

func logger() inverter.Demand {
	return inverter.Demand{Name: "data logger", Power: 9 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some(60 * units.Percent)}
}

func laptops() inverter.Demand {
	return inverter.Demand{Name: "laptops", Power: 80 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some(60 * units.Percent)}
}

func coffeeMaker() inverter.Demand {
	return inverter.Demand{Name: "coffee maker", Power: 900 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some[units.Ratio](1)}
}

func airConditioner() inverter.Demand {
	return inverter.Demand{Name: "air conditioner", Power: 1390 * units.Watt, Kind: inverter.MotorLoad, Apparent: units.Some(1464 * units.VoltAmpere),
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

// severities are those of every rule of the package: a change of one is a
// change of what the package says of a danger.
func severities() map[string]working.Severity {
	return map[string]working.Severity{
		"carbon-monoxide-gathers":        working.Danger,
		"earth-is-no-fault-path":         working.Danger,
		"fault-cannot-open-device":       working.Danger,
		"fault-opens-slowly":             working.Danger,
		"load-current-in-ground":         working.Danger,
		"no-bond-on-earthed-source":      working.Danger,
		"pass-through-device-not-stated": working.Danger,
		"relay-below-device":             working.Danger,
		"several-neutral-bonds":          working.Danger,
		"sources-not-kept-apart":         working.Danger,
		"bank-feeds-its-own-charger":     working.Caution,
		"carbon-monoxide":                working.Caution,
		"fault-device-not-stated":        working.Caution,
		"idle-not-stated":                working.Caution,
		"inverter-overload":              working.Caution,
		"inverter-overload-va":           working.Caution,
		"inverter-surge":                 working.Caution,
		"inverter-surge-not-stated":      working.Caution,
		"inverter-surge-too-short":       working.Caution,
		"no-fault-path":                  working.Caution,
		"no-neutral-bond":                working.Caution,
		"relay-not-stated":               working.Caution,
		"too-much-for-hours":             working.Caution,
		"too-much-together":              working.Caution,
		"transfer-not-stated":            working.Caution,
		"dc-device-not-checked":          working.Note,
		"idle-outweighs-loads":           working.Note,
		"inverter-surge-time-not-stated": working.Note,
		"inverter-va-not-stated":         working.Note,
		"kind-not-stated":                working.Note,
		"one-neutral-bond":               working.Note,
		"opening-time-not-judged":        working.Note,
		"power-factor-not-stated":        working.Note,
		"refill-at-full-output":          working.Note,
		"sets-cut-short":                 working.Note,
		"silent-failover":                working.Note,
		"soft-start-share":               working.Note,
		"start-not-stated":               working.Note,
	}
}

// wantRules demands these rules, in order, each complete, worst first and as
// severe as the table has it.
func wantRules(t *testing.T, r interface{ Findings() []working.Finding }, want ...string) {
	t.Helper()
	if got := rules(r); !slices.Equal(got, want) {
		t.Errorf("findings %q, want %q", got, want)
	}
	list := r.Findings()
	for i, f := range list {
		if severity, ok := severities()[f.Rule]; !ok || f.Severity != severity {
			t.Errorf("finding %s is a %v, want %v (in the table: %v)", f.Rule, f.Severity, severity, ok)
		}
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Errorf("finding %s is not complete: %+v", f.Rule, f)
		}
		if i > 0 && f.Severity > list[i-1].Severity {
			t.Errorf("findings are not worst first: %v", list)
		}
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
