package plan_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
)

// TestBounds: no value goes unchecked because nothing uses it in this rig.
func TestBounds(t *testing.T) {
	for path, change := range map[string]func(*plan.Rig){
		"rules.branch_drop":               func(r *plan.Rig) { r.Rules.BranchDrop = units.Some(-3 * units.Percent) },
		"rules.path_drop":                 func(r *plan.Rig) { r.Rules.PathDrop = units.Some(100 * units.Percent) },
		"buses[0].through_converter":      func(r *plan.Rig) { r.Buses[0].ThroughConverter = units.Some(0 * units.Percent) },
		"loads[15].locked_rotor":          func(r *plan.Rig) { r.Loads[15].LockedRotor = units.Some(-63 * units.Ampere) },
		"loads[5].cut_out":                func(r *plan.Rig) { r.Loads[5].CutOut = units.Some(-11.3 * units.Volt) },
		"bank.typical_voltage":            func(r *plan.Rig) { r.Bank.Typical = units.Some(0 * units.Volt) },
		"inverter.continuous":             func(r *plan.Rig) { r.Inverter.Continuous = -1500 * units.Watt },
		"inverter.apparent":               func(r *plan.Rig) { r.Inverter.Apparent = units.Some(0 * units.VoltAmpere) },
		"inverter.surge":                  func(r *plan.Rig) { r.Inverter.Surge = units.Some(-1 * units.VoltAmpere) },
		"inverter.surge_for":              func(r *plan.Rig) { r.Inverter.SurgeFor = units.Some(0 * units.Second) },
		"inverter.efficiency":             func(r *plan.Rig) { r.Inverter.Efficiency = 0 },
		"inverter.idle":                   func(r *plan.Rig) { r.Inverter.Idle = units.Some(-14 * units.Watt) },
		"inverter.pass_relay":             func(r *plan.Rig) { r.Inverter.PassRelay = units.Some(0 * units.Ampere) },
		"inverter.pass_device":            func(r *plan.Rig) { r.Inverter.PassDevice = units.Some(-20 * units.Ampere) },
		"converter.current":               func(r *plan.Rig) { r.Converter.Current = 0 },
		"converter.voltage":               func(r *plan.Rig) { r.Converter.Voltage = -14.4 * units.Volt },
		"converter.efficiency":            func(r *plan.Rig) { r.Converter.Efficiency = 2 },
		"converter.power_factor":          func(r *plan.Rig) { r.Converter.PowerFactor = 0 },
		"shore.service":                   func(r *plan.Rig) { r.Shore.Service = -30 * units.Ampere },
		"shore.voltage":                   func(r *plan.Rig) { r.Shore.Voltage = 0 },
		"shore.measured":                  volts(-113 * units.Volt),
		"shore.cord_length":               func(r *plan.Rig) { r.Shore.CordLong = units.Some(-25 * units.Foot) },
		"shore.receptacle":                func(r *plan.Rig) { r.Shore.Receptacle = units.Some(0 * units.Ampere) },
		"generator.continuous":            func(r *plan.Rig) { r.Generator.Continuous = -1800 * units.Watt },
		"generator.surge":                 func(r *plan.Rig) { r.Generator.Surge = units.Some(-1 * units.VoltAmpere) },
		"tow.current":                     func(r *plan.Rig) { r.Tow.Current = -20 * units.Ampere },
		"tow.voltage":                     func(r *plan.Rig) { r.Tow.Voltage = 0 },
		"tow.efficiency":                  func(r *plan.Rig) { r.Tow.Efficiency = 1.1 },
		"tow.input_voltage":               func(r *plan.Rig) { r.Tow.Input = -11.8 * units.Volt },
		"tow.hours":                       func(r *plan.Rig) { r.Tow.Hours = -4 * units.Hour },
		"roof.losses[0].lost":             func(r *plan.Rig) { r.Roof.Losses[0].Lost = -1 },
		"circuits[8].current":             func(r *plan.Rig) { r.Circuits[8].Current = units.Some(-27 * units.Ampere) },
		"circuits[8].power":               func(r *plan.Rig) { r.Circuits[8].Power = units.Some(0 * units.Watt) },
		"circuits[1].usual":               func(r *plan.Rig) { r.Circuits[1].Usual = units.Some(-25 * units.Ampere) },
		"circuits[0].device.rating":       func(r *plan.Rig) { r.Circuits[0].Device.Rating = 0 },
		"circuits[0].device.interrupting": func(r *plan.Rig) { r.Circuits[0].Device.Interrupting = units.Some(-1 * units.Ampere) },
		"circuits[0].device.distance":     func(r *plan.Rig) { r.Circuits[0].Device.Distance = units.Some(-1 * units.Inch) },
		"bank.series":                     func(r *plan.Rig) { r.Bank.Series = -1 },
	} {
		rig := demo(t)
		change(&rig)
		wantProblem(t, rig, path, "")
	}
	// An hour more than a day has.
	rig := demo(t)
	rig.Tow.Hours = 25 * units.Hour
	wantProblem(t, rig, "tow.hours", "0 h to 24 h")
}

// TestEnds: an end that nothing declares is a mistake, with the near spelling.
func TestEnds(t *testing.T) {
	for _, c := range []struct {
		path, allowed string
		change        func(*plan.Rig)
	}{
		{"circuits[0].from", `did you mean "bank"?`, func(r *plan.Rig) { r.Circuits[0].From = "bnak" }},
		{"circuits[1].from", "one of bank, inverter", func(r *plan.Rig) { r.Circuits[1].From = "accumulators" }},
		{"circuits[8].to", `did you mean "tow charger"?`, func(r *plan.Rig) { r.Circuits[8].To = "tow chargr" }},
		{"circuits[7].to", `did you mean "bank"?`, func(r *plan.Rig) { r.Circuits[7].To = "Bank" }},
		{"circuits[1].to", `did you mean "dc"?`, func(r *plan.Rig) { r.Circuits[1].To = "DC" }},
		{"circuits[3].from", `did you mean "dc panel"?`, func(r *plan.Rig) { r.Circuits[3].From = "dc pannel" }},
		{"circuits[3].device.at", "dc panel or observer desk", func(r *plan.Rig) { r.Circuits[3].Device.At = "bank" }},
		{"buses[2].name", "another name than", func(r *plan.Rig) {
			r.Buses[2].Name, r.Circuits = "bank", r.Circuits[:9]
			for i := 15; i < 18; i++ {
				r.Loads[i].Bus = "bank"
			}
		}},
		{"places[1]", "not taken", func(r *plan.Rig) { r.Places = []string{"closet", "closet"} }},
		{"places[0]", "not taken", func(r *plan.Rig) { r.Places = []string{"dc panel"} }},
		{"circuits[2].loads[0]", `not on "main"`, func(r *plan.Rig) { r.Circuits[2].Loads[0] = "portable heater" }},
		{"circuits[2].feeder", `did you mean "C2"?`, func(r *plan.Rig) { r.Circuits[2].Feeder = "c2" }},
		{"alarm.bus", `did you mean "backed"?`, func(r *plan.Rig) { r.Alarm = &plan.Alarm{Bus: "baked", What: "radio"} }},
	} {
		rig := demo(t)
		c.change(&rig)
		wantProblem(t, rig, c.path, c.allowed)
	}
	// A place of one's own that two circuits lead to is declared, or refused.
	two := func(r *plan.Rig) { r.Circuits[4].To, r.Circuits[5].To = "closet", "closet" }
	rig := demo(t)
	two(&rig)
	_, err := plan.Make(rig)
	if err == nil || !strings.Contains(err.Error(), "listed in places") {
		t.Errorf("two circuits to a place that is not declared: %v", err)
	}
	p := planOf(t, func(r *plan.Rig) { two(r); r.Places = []string{"closet"} })
	if p.Circuits[4].Route != "dc panel - closet" {
		t.Errorf("%+v", p.Circuits[4])
	}
	// So may a place that is spelt like a machine.
	planOf(t, func(r *plan.Rig) { r.Circuits[4].To, r.Places = "rook", []string{"rook"} })
}

// TestMistakesOfCircuits are those that stop a plan.
func TestMistakesOfCircuits(t *testing.T) {
	for _, c := range []struct {
		path, allowed string
		change        func(*plan.Rig)
	}{
		{"circuits[1].feeder", "not fed by this one", func(r *plan.Rig) { r.Circuits = r.Circuits[:2]; r.Circuits[1].Feeder = "C2" }},
		{"circuits[4].current", "current, power or loads", func(r *plan.Rig) { r.Circuits[4].Loads = nil }},
		{"buses[1].behind", "with an inverter described", func(r *plan.Rig) {
			r.Inverter, r.Converter.Bus, r.Bonds, r.Circuits = nil, "main", r.Bonds[:1], r.Circuits[1:]
		}},
		{"buses[0].behind", "an alternating bus", func(r *plan.Rig) { r.Buses[0].Behind = "inverter" }},
		{"circuits[8].to", `did you mean "tow charger"?`, func(r *plan.Rig) { r.Circuits[8].To = "tow changer" }},
		{"circuits[2].regulated", "to \"tow charger\"", func(r *plan.Rig) { r.Circuits[2].Regulated = true }},
		{"circuits[0].from", "\"bank\", for the direct-current circuit", func(r *plan.Rig) { r.Circuits[0].From, r.Circuits[0].Device.At = "dc", "dc" }},
		{"circuits[0].length", "> 0 m", func(r *plan.Rig) { r.Circuits[0].Length = 0 }},
	} {
		rig := demo(t)
		c.change(&rig)
		wantProblem(t, rig, c.path, c.allowed)
	}
	// Several mistakes of the ledger are reported together, each at its load.
	rig := demo(t)
	rig.Loads[0].Hours, rig.Loads[1].Hours = units.Some(25*units.Hour), units.Some(-1*units.Hour)
	_, err := plan.Make(rig)
	var mistakes *plan.DescriptionError
	if !errors.As(err, &mistakes) || len(mistakes.Problems) != 2 || mistakes.Problems[0].Path != "loads[0].hours" || mistakes.Problems[1].Path != "loads[1].hours" {
		t.Errorf("two mistakes of the ledger: %v", err)
	}
	// No size of the list keeps a drop of 0.01 % over 100 m.
	p := planOf(t, func(r *plan.Rig) {
		r.Circuits[9].Length, r.Rules.BranchDrop = 100*units.Metre, units.Some(0.01*units.Percent)
	})
	said := ""
	for _, f := range p.Findings {
		if f.Part == "C10" && f.Rule == "drop-above-allowed" {
			said = f.Mend
		}
	}
	if !strings.Contains(said, "No size of this run alone is enough") {
		t.Errorf("a drop of 0.01 %% over 100 m: %q", said)
	}
}

// TestNoAttentionNeeded: a rig without a finding above a note says what that
// means.
func TestNoAttentionNeeded(t *testing.T) {
	p := plan.Plan{Rig: "van", Findings: []plan.Finding{{Part: "bank", Rule: "r", Message: "m", Mend: "f"}}}
	if text := p.Text(); !strings.Contains(text, "Nothing was found by the checks of this plan") {
		t.Errorf("got %s", text)
	}
}
