package plan_test

import (
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// breaking returns a change of what the device of a circuit can break.
func breaking(i int, a units.Current) func(*plan.Rig) {
	return func(r *plan.Rig) { r.Circuits[i].Device.Interrupting = units.Some(a) }
}

// TestFaultBehindAFeederIsCold: a device must break the short on a cold feeder.
// By hand, 7 ft of 6 AWG there and back, 0.491 Ω/kft at 75 °C by NEC Chapter 9
// Table 8 and 0.404 Ω/kft at 20 °C by its note 2: 5.65 mΩ; with 2 mΩ of the
// bank, 13.3 V drive 1738 A, and 1501 A at 75 °C.
func TestFaultBehindAFeederIsCold(t *testing.T) {
	checkSeeded(t, []seeded{
		{"1.6 kA", "C5", "interrupting-too-low", working.Danger, breaking(4, 1600*units.Ampere)},
		{"just below", "C5", "interrupting-too-low", working.Danger, breaking(4, 1730*units.Ampere)},
	})
	p := planOf(t, breaking(4, 1750*units.Ampere))
	if _, ok := found(p, "C5", "interrupting-too-low"); ok {
		t.Error("1750 A break 1738 A: false alarm")
	}
	if ok, err := units.MustPrinted("1740", "A").Agrees(p.Circuits[4].Fault.Or(0)); !ok || err != nil {
		t.Errorf("the short at C5's device: %v", p.Circuits[4].Fault)
	}
	// The short at the far end is that of warm conductors all the way:
	// C3 ends behind 64 ft of 16 AWG, 4.99 Ω/kft at 75 °C, and 14 ft of 6 AWG,
	// 0.491 Ω/kft: 13.3 V / (2 + 319 + 6.9) mΩ = 40.5 A, three times 13.5 A.
	slow := func(a units.Current) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits[2].Device.Rating = a }
	}
	checkSeeded(t, []seeded{
		{"13.6 A", "C3", "far-fault-slow", working.Caution, slow(13.6 * units.Ampere)},
	})
	if _, ok := found(planOf(t, slow(13.4*units.Ampere)), "C3", "far-fault-slow"); ok {
		t.Error("13.4 A on 40.5 A: false alarm")
	}
}
