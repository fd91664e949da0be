package wire_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

func ExampleVoltageDrop() {
	drop, err := wire.VoltageDrop(wire.Run{
		Current:   20 * units.Ampere,
		OneWay:    15 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(10)},
		Source:    12.8 * units.Volt,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f of %.1f, %.1f, with copper at %v\n",
		drop.Voltage, drop.Run.Source, drop.Fraction, drop.Run.Conductor.Temperature)
	// Output: 0.743 V of 12.8 V, 5.8 %, with copper at 75 °C
}

// An error names the input, its value and what is allowed.
func ExampleVoltageDrop_error() {
	_, err := wire.VoltageDrop(wire.Run{
		Current:   -2 * units.Ampere,
		OneWay:    15 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(10)},
		Source:    12.8 * units.Volt,
	})
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// wire.VoltageDrop: Current = -2 A, want > 0 A
	// true
}

func ExampleDrop_Working() {
	drop, err := wire.VoltageDrop(wire.Run{
		Current:   10 * units.Ampere,
		OneWay:    6 * units.Metre,
		Conductor: wire.Conductor{Stated: units.Some(5.21 * units.MilliohmPerMetre)},
		Source:    12.8 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(drop.Working().Text())
}

func ExampleDrop_Findings() {
	drop, err := wire.VoltageDrop(wire.Run{
		Current:   20 * units.Ampere,
		OneWay:    15 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(10)},
		Source:    12.8 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range drop.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// caution drop-above-allowed
	// note ampacity-not-checked
}

func ExampleSmallestSize() {
	s, err := wire.SmallestSize(wire.Run{
		Current: 20 * units.Ampere,
		OneWay:  15 * units.Foot,
		Source:  12.8 * units.Volt,
		Allowed: units.Some(3 * units.Percent),
	}, wire.Gauges())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v drops %.1f; %v will not do\n",
		s.Run.Conductor.Size, s.Drop.Fraction, s.Below.Conductor.Size)
	// Output: 6 AWG drops 2.3 %; 8 AWG will not do
}

func ExampleLongestRun() {
	x, err := wire.LongestRun(wire.Run{
		Current:   20 * units.Ampere,
		Conductor: wire.Conductor{Size: wire.AWG(6)},
		Source:    12.8 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ft\n", units.In(x.OneWay, units.Foot))
	// Output: 19.6 ft
}

// A handbook's constant K, in ohm circular mils per foot, is a resistivity.
func ExampleResistance() {
	for _, c := range []wire.Conductor{
		{Size: wire.AWG(8)},
		{Size: wire.AWG(8), Temperature: units.Celsius(20), Strand: wire.Solid},
		{Size: wire.AWG(8), Resistivity: units.Some(12.9 * units.OhmCircularMilPerFoot)},
		{Size: wire.Metric(10 * units.SquareMillimetre)},
	} {
		p, err := wire.Resistance(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.3f ohm per 1000 ft\n", c.Size, units.In(p.At, units.OhmPerKilofoot))
	}
	// Output:
	// 8 AWG: 0.779 ohm per 1000 ft
	// 8 AWG: 0.628 ohm per 1000 ft
	// 8 AWG: 0.781 ohm per 1000 ft
	// 10 mm²: 0.678 ohm per 1000 ft
}

func ExampleGauges() {
	list := wire.Gauges()
	fmt.Println(len(list), list[0], list[len(list)-1])
	fmt.Println(wire.MetricSizes()[:3])
	// Output:
	// 21 20 AWG 500 kcmil
	// [0.5 mm² 0.75 mm² 1 mm²]
}

func ExampleAmpacity() {
	c, err := wire.Ampacity(wire.Installation{
		Rules:      wire.NEC2017,
		Size:       wire.AWG(10),
		Insulation: wire.Insulation90,
		Ambient:    units.Celsius(60),
		Conductors: 4,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Current, "limited by", c.Governs)
	// Output: 22.72 A limited by insulation
}

func ExampleProtect() {
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(14), Insulation: wire.Insulation105},
		Load:         4.8 * units.Ampere,
		Device:       units.Some(30 * units.Ampere),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range p.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	fmt.Println("needed", p.Needed, "limit", p.Limit)
	// Output:
	// danger device-above-limit
	// note place-not-stated
	// note fault-not-given
	// note rule-from-memory
	// needed 4.8 A limit 15 A
}

func ExampleShortCircuit() {
	f, err := wire.ShortCircuit(
		wire.FaultSource{Voltage: 13.3 * units.Volt, Resistance: 2 * units.Milliohm},
		wire.Conductor{Size: wire.AWG(1)}, 4*units.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4v\n", f.Current)
	// Output: 4.118 kA
}

func ExampleRatings() {
	ladder, err := wire.Ratings(wire.NEC2017)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(ladder.Next(270.6 * units.Ampere))
	// Output: 300 A <nil>
}

func ExampleInsulationOf() {
	fmt.Println(wire.InsulationOf(units.Celsius(105)))
	// Output: 105 °C true
}

// Where nothing is said of the temperature, copper is taken as warm as its
// insulation allows, and the result says which basis it had.
func ExampleWarmCopper() {
	p, err := wire.Resistance(wire.Conductor{Size: wire.AWG(12)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Conductor.Temperature == wire.WarmCopper(), p.Basis == wire.FromCopper)
	// Output: true true
}

// The rule that set the limit is part of the result.
func ExampleProtection() {
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: wire.Insulation75},
		Load:         52 * units.Ampere,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var rule wire.LimitRule = p.Rule
	fmt.Println(p.Capacity.Current, p.Limit, rule == wire.LimitNextRating)
	// Output: 55 A 60 A true
}

func ExamplePerLength() {
	p, err := wire.Resistance(wire.Conductor{Size: wire.Metric(10 * units.SquareMillimetre)})
	if err != nil {
		fmt.Println(err)
		return
	}
	var basis wire.Basis = p.Basis
	fmt.Println(basis == wire.FromIEC60228, p.At20)
	// Output: true 1.83 mΩ/m
}
