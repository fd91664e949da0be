package wire_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// roundTrip writes an input as JSON and reads it back.
func roundTrip[T comparable](t *testing.T, want T) string {
	t.Helper()
	data, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var got T
	if err := json.Unmarshal(data, &got); err != nil || got != want {
		t.Errorf("%s reads back as %+v, %v", data, got, err)
	}
	return string(data)
}

func TestInputsAsJSON(t *testing.T) {
	run := lamp()
	for _, field := range []string{"Metal", "Coated", "Basis", "Parallel", "Chassis", "Contacts"} {
		if text := roundTrip(t, run); strings.Contains(text, field) {
			t.Errorf("%s was not given, and is in %s", field, text)
		}
	}
	run.Conductor.Metal, run.Conductor.Coated = wire.Aluminium, true
	run.Conductor.Basis, run.Parallel = units.Some(wire.FromNECTable8), 2
	run.Chassis, run.Contacts = units.Some(0*units.Ohm), units.Some(3*units.Milliohm)
	if text := roundTrip(t, run); !strings.Contains(text, `"NEC Table 8"`) || !strings.Contains(text, `"aluminium"`) {
		t.Errorf("%s does not say metal and basis in words", text)
	}
	for _, change := range acChanges {
		r := roofUnit()
		change(&r)
		roundTrip(t, r)
	}
	for _, change := range legChanges {
		r := panel()
		change(&r)
		roundTrip(t, r)
	}
	for _, change := range warmChanges {
		w := inverterRun()
		change(&w)
		roundTrip(t, w)
	}
	for _, supply := range supplies {
		l, m := splitLoad(), multiwire()
		l.Supply, m.Supply = supply, units.Some(supply)
		roundTrip(t, l)
		roundTrip(t, m)
	}
	reading := terminal()
	reading.Resolution = units.Some(10 * units.Millivolt)
	roundTrip(t, reading)
}
