package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestCarriedOverIsFromMemory: factors that were read in one edition and are
// used for another are from memory there.
func TestCarriedOverIsFromMemory(t *testing.T) {
	for rules, symbols := range map[wire.RuleSet]string{wire.NEC2017: "k_ambient k_bundle", wire.NEC2008: "k_ambient k_bundle", wire.NEC2023: "k_bundle"} {
		x := wire.Installation{Rules: rules, Size: wire.AWG(10), Insulation: wire.Insulation90, Conductors: 6}
		for _, s := range mustCarry(t, x).Working().Steps() {
			if s.Name != "" && strings.Contains(symbols, s.Name) && s.Lookup.Source.Provenance != working.Memory {
				t.Errorf("%v: %s is from %v", rules, s.Name, s.Lookup.Source)
			}
		}
	}
}

// TestReachOfParkTrailers: the 18 in are those of NEC 552.10(E)(4).
func TestReachOfParkTrailers(t *testing.T) {
	c := branchCircuit()
	c.FromSource = units.Some(19 * units.Inch)
	f := finding(t, mustProtect(t, c).Findings(), "device-far-from-source")
	if !strings.Contains(f.Message, "park trailers") {
		t.Errorf("%q, %v", f.Message, f.Source)
	}
}
