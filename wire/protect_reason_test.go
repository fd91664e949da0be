package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestWhyNoDeviceAboveTheAmpacity wants the reason of each rule set and not one
// for all.
func TestWhyNoDeviceAboveTheAmpacity(t *testing.T) {
	boat := wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(14), Insulation: wire.Insulation105, System: volts(120)}
	together := boat
	together.Conductors = 7 // 35 A x 0.5 = 17.5 A; 20 A is the next rating
	thin := boat
	thin.Size, thin.Insulation, thin.Conductors = wire.AWG(18), wire.Insulation60, 3 // 10 A x 0.7 = 7 A; of breakers 15 A is the next
	for why, c := range map[string]wire.Circuit{
		"it is itself a standard rating":          {Installation: boat},
		"the next rating up is above 150 % of it": {Installation: thin, Kind: wire.Breaker},
		"this rule set allows none above it":      {Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Insulation: wire.Insulation105}},
		"240.4(B) allows none above it where more than one receptacle is fed": {Receptacles: true,
			Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation60}},
		// 3 x 380 A = 1140 A, above which 1200 A is the next
		"the next rating up is above 800 A, where 240.4(B) ends": {
			Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.Kcmil(500), Insulation: wire.Insulation75, Parallel: 3}},
		// 100 x 380 A
		"no standard rating is above it": {
			Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.Kcmil(500), Insulation: wire.Insulation75, Parallel: 100}},
	} {
		c.Load = 1 * units.Ampere
		found := false
		for _, s := range mustProtect(t, c).Working().Steps() {
			found = found || s.Kind == working.ChoiceStep && s.Why == why
		}
		if !found {
			t.Errorf("%q is not in\n%s", why, mustProtect(t, c).Working().Text())
		}
	}
	if p := mustProtect(t, wire.Circuit{Load: 1 * units.Ampere, Installation: together}); p.Rule != wire.LimitNextRating {
		t.Errorf("17.5 A: %v", p.Rule)
	}
}

// TestColdRunIsShown: 8 AWG has 0.6282 Ω/kft solid at 20 °C (NBS Handbook 100),
// 2 % more stranded: 2.10 mΩ/m, and 1.28 mΩ in 24 in of conductor.
func TestColdRunIsShown(t *testing.T) {
	c := branchCircuit()
	c.Installation.Size, c.FromSource = wire.AWG(8), units.Some(12*units.Inch)
	steps := map[string]working.Step{}
	for _, s := range mustProtect(t, c).Working().Steps() {
		steps[s.Name] = s
	}
	if r := steps["r_cold"].Value; r < 2.08 || r > 2.12 {
		t.Errorf("the cold conductor has %v Ω/km", r)
	}
	if s := steps["R_near"]; s.Formula == "" || s.Value < 1.27 || s.Value > 1.29 {
		t.Errorf("the cold run: %+v", s)
	}
	c.FromSource = units.Some(0 * units.Inch)
	for _, s := range mustProtect(t, c).Working().Steps() {
		if s.Name == "R_near" {
			t.Error("there is a run up to a device at the source")
		}
	}
}
