package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// TestParallelCountAmongTheBundle: four of 1/0 AWG have 4 x 150 A by the 75 °C
// column; there and back they are eight, which NEC Table 310.15(B)(3)(a) takes
// to 70 %.
func TestParallelCountAmongTheBundle(t *testing.T) {
	x := wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation75, Terminals: wire.Insulation75, Parallel: 4}
	silent := mustCarry(t, x)
	if silent.Current != 600*units.Ampere || !hasSeverity(silent.Findings(), "parallel-not-derated", working.Caution) {
		t.Errorf("no word on the bundle: %v, %v", silent.Current, silent.Findings())
	}
	saysAll(t, silent.Findings())
	numbers := finding(t, silent.Findings(), "parallel-not-derated").Numbers
	if n := numbers[len(numbers)-1]; n.String() != "if all lie together 420 A" {
		t.Errorf("if all lie together: %v, want 420 A", n)
	}
	x.Conductors = 8
	told := mustCarry(t, x)
	if units.Compare(told.Current, 420*units.Ampere) != 0 || has(told.Findings(), "parallel-not-derated") {
		t.Errorf("eight together: %v, %v; want 420 A and no finding", told.Current, told.Findings())
	}
	for _, rules := range []wire.RuleSet{wire.NEC2017, wire.NEC2008, wire.RVLowVoltage, wire.Boat33CFR} {
		for n := 1; n < 4; n++ {
			fewer := wire.Installation{Rules: rules, Size: wire.Aught(1), Insulation: wire.Insulation75, Parallel: 4, Conductors: n}
			_, err := wire.Ampacity(fewer)
			wantRangeError(t, err, "wire.Ampacity", "Conductors")
		}
	}
	x.Parallel, x.Conductors = 1, 0
	if one := mustCarry(t, x).Findings(); has(one, "parallel-not-derated") {
		t.Errorf("one conductor: %v", one)
	}
}
