package loads_test

import (
	"math"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// TestLongest: the bus is needed for as long as its longest load is in use,
// whatever its duty, and all day for one that waits.
func TestLongest(t *testing.T) {
	kettle := load("kettle", "mains", loads.Resistive, 1200*units.Watt, 0.5*units.Hour)
	fridge := load("refrigerator", "mains", loads.Motor, 100*units.Watt, 10*units.Hour)
	fridge.Duty = units.Some(30 * units.Percent)
	clock := load("oven with a clock", "mains", loads.ConstantPower, 1400*units.Watt, 0.1*units.Hour)
	clock.Standby = 2 * units.Watt
	for _, c := range []struct {
		list []loads.Load
		want units.Elapsed
	}{
		{nil, 0},
		{[]loads.Load{kettle}, 0.5 * units.Hour},
		{[]loads.Load{fridge, kettle}, 10 * units.Hour},
		{[]loads.Load{kettle, clock, fridge}, 24 * units.Hour},
	} {
		ledger, err := loads.Audit([]loads.Bus{battery, mains}, c.list)
		if err != nil {
			t.Fatal(err)
		}
		if got := ledger.Buses[1].Longest; units.Compare(got, c.want) != 0 || ledger.Buses[0].Longest != 0 {
			t.Errorf("%d loads: longest %v, want %v; on the other bus %v", len(c.list), got, c.want, ledger.Buses[0].Longest)
		}
	}
}

// TestRatedApparentTooLarge: the nameplate's volt-amperes can be too large to
// hold where those at the voltage of the bus are not.
func TestRatedApparentTooLarge(t *testing.T) {
	l := load("lamp", "mains", loads.ConstantCurrent, math.MaxFloat64, units.Hour)
	l.Rating.Voltage, l.Rating.PowerFactor = units.Some(units.Scale(mains.Voltage, 1e9)), units.Some(50*units.Percent)
	v, err := loads.Take(mains, l)
	wantRangeError(t, err, "loads.Take", "RatedApparent")
	if v != (loads.Line{}) {
		t.Errorf("a result %+v", v)
	}
}
