package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// TestFaultWarm: the device breaks the short of the cold source, and has to
// open on that of the warm one.
func TestFaultWarm(t *testing.T) {
	cold := branchCircuit()
	cold.FromSource = units.None[units.Length]()
	warm := cold
	warm.FaultWarm = units.Some(wire.FaultSource{Voltage: 13.3 * units.Volt, Resistance: 100 * units.Milliohm})
	c, w := mustProtect(t, cold), mustProtect(t, warm)
	if w.AtDevice != c.AtDevice {
		t.Errorf("at the device %v, want %v", w.AtDevice.Current, c.AtDevice.Current)
	}
	if got := w.AtEnd.Source.Resistance; got != 100*units.Milliohm {
		t.Errorf("at the end behind %v", got)
	}
	// 98 mΩ more than 2 mΩ.
	want := (13.3 * units.Volt).Across((13.3 * units.Volt).Per(c.AtEnd.Current) + 98*units.Milliohm)
	if units.Compare(w.AtEnd.Current, want) != 0 {
		t.Errorf("at the end %v, want %v", w.AtEnd.Current, want)
	}
	warm.FaultWarm = cold.Fault
	if same := mustProtect(t, warm); same.AtEnd != c.AtEnd {
		t.Errorf("with the same source %v, want %v", same.AtEnd.Current, c.AtEnd.Current)
	}
}

func TestFaultWarmRefuses(t *testing.T) {
	for _, x := range bad {
		for field, s := range map[string]wire.FaultSource{
			"Voltage":    {Voltage: units.Voltage(x), Resistance: 1},
			"Resistance": {Voltage: 12, Resistance: units.Resistance(x)},
		} {
			c := branchCircuit()
			c.FaultWarm = units.Some(s)
			p, err := wire.Protect(c)
			wantRangeError(t, err, "wire.Protect", field)
			if p != (wire.Protection{}) {
				t.Errorf("%s = %v: %+v", field, x, p)
			}
		}
	}
	alone := branchCircuit()
	alone.FaultWarm, alone.Fault = alone.Fault, units.None[wire.FaultSource]()
	_, err := wire.Protect(alone)
	wantRangeError(t, err, "wire.Protect", "FaultWarm")
	high := branchCircuit()
	high.Installation.Rules = wire.Boat33CFR
	high.FaultWarm = units.Some(wire.FaultSource{Voltage: 50 * units.Volt, Resistance: 1 * units.Milliohm})
	_, err = wire.Protect(high)
	wantRangeError(t, err, "wire.Protect", "Voltage")
}
