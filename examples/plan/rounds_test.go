package plan_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// slips are mistakes of a description in Go, each of which is one by itself,
// found by another part of what makes a plan.
func slips() map[string]func(*plan.Rig) {
	return map[string]func(*plan.Rig){
		// By its limits.
		"circuits[0].length": func(r *plan.Rig) { r.Circuits[0].Length = -4 * units.Foot },
		"loads[3].hours":     func(r *plan.Rig) { r.Loads[3].Hours = units.Some(25 * units.Hour) },
		"roof.coldest":       func(r *plan.Rig) { r.Roof.Coldest = units.Celsius(-100) },
		// By a name.
		"loads[17].bus": func(r *plan.Rig) { r.Loads[17].Bus = "mian" },
		"alarm.bus":     func(r *plan.Rig) { r.Alarm = &plan.Alarm{Bus: "baked", What: "radio"} },
		// By the ledger.
		"loads[1]":                   func(r *plan.Rig) { r.Loads[1].Power = units.Some(84 * units.Watt) },
		"loads[0].power_factor":      func(r *plan.Rig) { r.Loads[0].PowerFactor = units.Some(80 * units.Percent) },
		"loads[6].windows[1]":        func(r *plan.Rig) { r.Loads[6].Windows = append(r.Loads[6].Windows, evening()) },
		"loads[15].locked_rotor":     func(r *plan.Rig) { r.Loads[15].LockedRotor = units.Some(6 * units.Ampere) },
		"circuits[5].feeder":         func(r *plan.Rig) { r.Circuits[5].Feeder = r.Circuits[5].Name },
		"inverter.cut_off":           func(r *plan.Rig) { r.Inverter.CutOff = 20 * units.Volt },
		"roof.power":                 func(r *plan.Rig) { r.Roof.Power = 900 * units.Watt },
		"bonds[1].at":                func(r *plan.Rig) { r.Bonds[1].At = r.Bonds[0].At },
		"generator.site":             func(r *plan.Rig) { r.Generator.Site = 99 },
		"circuits[4].usual":          func(r *plan.Rig) { r.Circuits[4].Usual = units.Some(9 * units.Ampere) },
		"loads[5].power":             func(r *plan.Rig) { r.Loads[5].Power = units.Some(0 * units.Watt) },
		"circuits[9].device.at":      func(r *plan.Rig) { r.Circuits[9].Device.At = "moon" },
		"shore.service":              func(r *plan.Rig) { r.Shore.Service = 0 },
		"rules.branch_drop":          func(r *plan.Rig) { r.Rules.BranchDrop = units.Some(100 * units.Percent) },
		"tow.hours":                  func(r *plan.Rig) { r.Tow.Hours = 30 * units.Hour },
		"buses[2].through_converter": func(r *plan.Rig) { r.Buses[2].ThroughConverter = units.Some(90 * units.Percent) },
	}
}

// evening meets the window of the night-call recorder.
func evening() loads.Window {
	return loads.Window{From: loads.Clock{Hour: 20}, To: loads.Clock{Hour: 23}}
}

// pathsOf returns where an error says that the mistakes are.
func pathsOf(t *testing.T, err error) (paths []string) {
	t.Helper()
	var mistakes *plan.DescriptionError
	if err != nil && !errors.As(err, &mistakes) {
		t.Fatal(err)
	}
	if err != nil {
		for _, p := range mistakes.Problems {
			paths = append(paths, p.Path)
		}
	}
	slices.Sort(paths)
	return paths
}

// hides says which mistakes are looked for only where there is none in what
// they rest on: panels are judged whole, and no circuit without its rules.
func hides() map[string][]string {
	return map[string][]string{
		"roof.coldest":      {"roof.power"},
		"rules.branch_drop": {"circuits[4].usual", "loads[5].power"},
	}
}

// TestTwoMistakesAtOnce: two mistakes are the two that they are alone, neither
// less nor more, in Go as in text, unless one rests on what the other is in.
func TestTwoMistakesAtOnce(t *testing.T) {
	for first, change := range slips() {
		for second, also := range slips() {
			if second < first {
				continue // done the other way round
			}
			rig := demo(t)
			change(&rig)
			want := []string{first}
			if second != first {
				also(&rig)
				want = append(want, second)
			}
			if slices.Contains(hides()[first], second) {
				want = []string{first}
			}
			if slices.Contains(hides()[second], first) {
				want = []string{second}
			}
			slices.Sort(want)
			_, err := plan.Make(rig)
			if got := pathsOf(t, err); !slices.Equal(got, want) {
				t.Errorf("got %v, want %v", got, want)
			}
		}
	}
}

// TestReadingHidesNothing: a mistake of the text is told together with all that
// the calculators refuse.
func TestReadingHidesNothing(t *testing.T) {
	for path, change := range slips() {
		rig := demo(t)
		change(&rig)
		data, err := json.Marshal(rig)
		if err != nil {
			continue // no text has it
		}
		text := bytes.Replace(data, []byte(`"name":"Field base of the count"`), []byte(`"nmae":"Field base"`), 1)
		if bytes.Equal(text, data) {
			t.Fatal("no name to misspell")
		}
		want := []string{"nmae", path}
		slices.Sort(want)
		if _, err := plan.Read(text); !slices.Equal(pathsOf(t, err), want) {
			t.Errorf("got %v, want %v", err, want)
		}
	}
}
