package wire_test

import (
	"encoding/json"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestContinuousOnBoats: 55 A for hours ask for 68.75 A, and 10 AWG at 105 °C has
// 60 A by 33 CFR 183.425 Table 5. The regulation does not ask for it.
func TestContinuousOnBoats(t *testing.T) {
	boat := wire.Circuit{Installation: wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(10), Insulation: wire.Insulation105},
		Load: 55 * units.Ampere, Continuous: true, Device: units.Some(70 * units.Ampere)}
	p := mustProtect(t, boat)
	saysAll(t, p.Findings())
	if !hasSeverity(p.Findings(), "conductor-below-continuous", working.Caution) {
		t.Errorf("55 A for hours: %v", rules(p.Findings()))
	}
	for _, s := range p.Working().Steps() {
		if s.Name == "k_continuous" && s.Source.Provenance != working.CommonPractice {
			t.Errorf("125 %% on a boat is from %v", s.Source)
		}
	}
	for name, change := range map[string]func(*wire.Circuit){
		"not for hours": func(c *wire.Circuit) { c.Continuous = false },
		"48 A":          func(c *wire.Circuit) { c.Load = 48 * units.Ampere },
		"8 AWG":         func(c *wire.Circuit) { c.Installation.Size = wire.AWG(8) },
		"too much":      func(c *wire.Circuit) { c.Load = 61 * units.Ampere },
	} {
		c := boat
		change(&c)
		if f := mustProtect(t, c).Findings(); has(f, "conductor-below-continuous") {
			t.Errorf("%s: %v", name, rules(f))
		}
	}
	boat.Device = units.Some(60 * units.Ampere)
	if f := finding(t, mustProtect(t, boat).Findings(), "device-below-load"); f.Source.Provenance != working.CommonPractice {
		t.Errorf("60 A for 68.75 A: source %v", f.Source)
	}
	boat.Installation.Rules = wire.NEC2017
	if f := finding(t, mustProtect(t, boat).Findings(), "device-below-load"); f.Source.Body != "NFPA" {
		t.Errorf("by the NEC: source %v", f.Source)
	}
}

// TestNotGivenAsJSON reads back what was written of fields that are not given.
func TestNotGivenAsJSON(t *testing.T) {
	text, err := json.Marshal(wire.Installation{})
	if err != nil {
		t.Fatal(err)
	}
	x := wire.Installation{Rules: wire.NEC2017, Insulation: wire.Insulation90}
	if err := json.Unmarshal(text, &x); err != nil || x != (wire.Installation{}) {
		t.Errorf("an empty installation: %+v, %v", x, err)
	}
	cord := wire.Cord{Size: wire.AWG(10), Conductors: 2, Load: 5 * units.Ampere}
	if text, err = json.Marshal(cord); err != nil {
		t.Fatal(err)
	}
	var back wire.Cord
	if err := json.Unmarshal(text, &back); err != nil || back != cord {
		t.Errorf("a cord: %s read as %+v, %v", text, back, err)
	}
}
