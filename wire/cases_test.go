package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// The cases of this file are invented; each tells a right rule from one that
// is plausible and wrong. They were worked by hand from NEC Chapter 9 Table 8
// (stranded, uncoated, 75 °C), which our copper meets within 0.6 %.
const tableWidth = 0.006

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got/want-1) > tableWidth {
		t.Errorf("%s: %v, want %v within 0.6 %%", what, got, want)
	}
}

// TestShortRunIsSizedByHeat: 200 A for hours over 2 ft. The drop asks for 4
// AWG; 125 % of the current asks for 1/0 even in free air.
func TestShortRunIsSizedByHeat(t *testing.T) {
	byDrop, err := wire.SmallestSize(wire.Run{Current: 200 * units.Ampere, OneWay: 2 * units.Foot, Source: 12 * units.Volt,
		Allowed: units.Some(3 * units.Percent)}, wire.Gauges())
	if err != nil || byDrop.Run.Conductor.Size != wire.AWG(4) {
		t.Fatalf("by drop: %v, %v, want 4 AWG", byDrop.Run.Conductor.Size, err)
	}
	if !has(byDrop.Findings(), "current-above-any-ampacity") {
		t.Errorf("4 AWG with 200 A: found %v", rules(byDrop.Findings()))
	}
	byHeat := wire.Size{}
	for _, size := range wire.Gauges() {
		p, err := wire.Protect(wire.Circuit{Load: 200 * units.Ampere, Continuous: true,
			Installation: wire.Installation{Rules: wire.Boat33CFR, Size: size, Insulation: wire.Insulation105}})
		if err == nil && !byHeat.IsValid() && !units.Exceeds(p.Needed, p.Capacity.Current) {
			byHeat = size
		}
	}
	if byHeat != wire.Aught(1) {
		t.Errorf("by heat: %v, want 1/0 AWG", byHeat)
	}
	short := byDrop.Run
	short.Conductor = wire.Conductor{Size: byHeat}
	if d, err := wire.VoltageDrop(short); err != nil || units.Exceeds(d.Voltage, 0.246*units.Volt) {
		t.Errorf("and its drop is no question: %v, %v", d.Voltage, err)
	}
}

// TestDropsAddAlongThePath: feeder and branch each keep 3 %, the load loses
// 4.60 %, since the feeder carries everybody's current.
func TestDropsAddAlongThePath(t *testing.T) {
	run := func(i units.Current, l units.Length, gauge int) wire.Drop {
		d, err := wire.VoltageDrop(wire.Run{Current: i, OneWay: l, Source: 12 * units.Volt, Conductor: wire.Conductor{Size: wire.AWG(gauge)},
			Allowed: units.Some(3 * units.Percent)})
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	feeder, branch := run(30*units.Ampere, 8*units.Foot, 6), run(8*units.Ampere, 10*units.Foot, 12)
	if has(feeder.Findings(), "drop-above-allowed") || has(branch.Findings(), "drop-above-allowed") {
		t.Error("each by itself keeps 3 %")
	}
	near(t, "together, in volts", float64(feeder.Voltage+branch.Voltage), 0.552)
	near(t, "together, in per cent", units.In(feeder.Fraction+branch.Fraction, units.Percent), 4.60)
}

// TestContinuousLoad: 13 A and 12 A for an afternoon on 30 A. A device must
// have 31.25 A; 30 A is good for 24 A.
func TestContinuousLoad(t *testing.T) {
	p, err := wire.Protect(wire.Circuit{Load: 25 * units.Ampere, Continuous: true, Device: units.Some(30 * units.Ampere),
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90}})
	if err != nil || units.Compare(p.Needed, 31.25*units.Ampere) != 0 || !has(p.Findings(), "device-below-load") {
		t.Errorf("needed %v, found %v, %v", p.Needed, rules(p.Findings()), err)
	}
	p, err = wire.Protect(wire.Circuit{Load: 24 * units.Ampere, Continuous: true, Device: units.Some(30 * units.Ampere),
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90}})
	if err != nil || has(p.Findings(), "device-below-load") {
		t.Errorf("24 A on 30 A: found %v, %v", rules(p.Findings()), err)
	}
}

// TestChargeWireIsNotItsFuse: 14.0 V pushes against 13.3 V through 38 ft of 10
// AWG and 30 mΩ of contacts and battery. That makes 5.63 A, not the 30 A of the
// fuse.
func TestChargeWireIsNotItsFuse(t *testing.T) {
	p, err := wire.Resistance(wire.Conductor{Size: wire.AWG(10)})
	if err != nil {
		t.Fatal(err)
	}
	loop := p.At.Over(2*38*units.Foot) + 30*units.Milliohm
	near(t, "charging current", float64((14.0*units.Volt - 13.3*units.Volt).Across(loop)), 5.63)
}

// TestCordsAdd: own cord and extension together, there and back, with 26 A from
// a pedestal of 112 V. One way only would leave 109.58 V and pass at 108 V.
func TestCordsAdd(t *testing.T) {
	left := 112 * units.Volt
	for _, cord := range []units.Length{25 * units.Foot, 50 * units.Foot} {
		d, err := wire.VoltageDrop(wire.Run{Current: 26 * units.Ampere, OneWay: cord, Source: 112 * units.Volt, Conductor: wire.Conductor{Size: wire.AWG(10)}})
		if err != nil {
			t.Fatal(err)
		}
		left -= d.Voltage
	}
	near(t, "drop of both", float64(112*units.Volt-left), 4.84)
	if !units.Exceeds(108*units.Volt, left) {
		t.Errorf("%v is left, which is not below 108 V", left)
	}
	// An air conditioner on 50 ft of a thin household cord.
	d, err := wire.VoltageDrop(wire.Run{Current: 13.5 * units.Ampere, OneWay: 50 * units.Foot, Source: 115 * units.Volt,
		Conductor: wire.Conductor{Size: wire.AWG(16)}})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "volts at the air conditioner", float64(d.AtLoad), 108.3)
	near(t, "heat in the cord", float64(d.Heat), 90.9)
	if !has(d.Findings(), "current-above-ampacity-in-wall") {
		t.Errorf("found %v", rules(d.Findings()))
	}
}
