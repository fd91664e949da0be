package wire_test

import (
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// A 10/3 shore cord: hot and neutral carry current, the ground does not.
func ExampleCordAmpacity() {
	c, err := wire.CordAmpacity(wire.Cord{Size: wire.AWG(10), Conductors: 2, Load: 24 * units.Ampere, Device: units.Some(50 * units.Ampere)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Current, "by", c.Rule().Place)
	for _, f := range c.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 30 A by Table 400.5(A)(1)
	// caution cord-behind-larger-device
}

// The worked example of a textbook: 200 A for 0.4 s through PVC-insulated copper
// need 1.10 mm² (Linsley, Basic Electrical Installation Work, p. 250).
func ExampleAdiabatic() {
	w, err := wire.Adiabatic(wire.ShortTime{
		Size:    wire.Metric(1.5 * units.SquareMillimetre),
		Core:    wire.CorePVC70,
		Current: 200 * units.Ampere,
		Time:    units.Some(0.4 * units.Second),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g at least; bears it for %.2g\n", w.MinArea, w.Longest.Or(0))
	_, err = wire.Adiabatic(wire.ShortTime{Size: wire.AWG(16), Core: wire.CorePVC70, Current: 20 * units.Ampere, Time: units.Some(6 * units.Second)})
	fmt.Println(err)
	// Output:
	// 1.1 mm² at least; bears it for 0.74 s
	// wire.Adiabatic: Time = 6 s, want > 0 s and <= 5 s
}

// The free-air table of an old code has 105 A for 6 AWG at 90 °C.
func ExampleFreeAir() {
	b, err := wire.FreeAir(wire.FreeAirCable{Size: wire.AWG(6), Metal: units.Celsius(90)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g with a surface of %.3g; the air carries off %.3g a metre, %.3g is radiated\n",
		b.Current, b.Surface, b.Convection, b.Radiation)
	// Output: 114.1 A with a surface of 81.2 °C; the air carries off 12.9 W a metre, 9.05 W is radiated
}

func ExampleWeakestPart() {
	p, err := wire.WeakestPart(180*units.Ampere, units.Some(300*units.Ampere), []wire.Part{
		{Name: "cable", Rating: 330 * units.Ampere},
		{Name: "battery switch", Rating: 100 * units.Ampere},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Weak.Name, p.Weak.Rating)
	for _, f := range p.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// battery switch 100 A
	// danger load-above-part
	// danger device-above-part
}

// Two batteries beside each other halve the resistance.
func ExampleFaultBank_Source() {
	source, err := wire.FaultBank{
		Voltage: 13.3 * units.Volt, Resistance: 4 * units.Milliohm,
		Parallel: 2, Links: 0.8 * units.Milliohm,
	}.Source()
	if err != nil {
		fmt.Println(err)
		return
	}
	fault, err := wire.ShortCircuit(source, wire.Conductor{}, 0)
	fmt.Println(source.Resistance, fault.Current, err)
	// Output: 2.8 mΩ 4.75 kA <nil>
}

// A breaker of 10 A is a standard one from 2023 on.
func ExampleRatingsOf() {
	for _, rules := range []wire.RuleSet{wire.NEC2017, wire.NEC2023} {
		ladder, err := wire.RatingsOf(rules, wire.Breaker)
		if err != nil {
			fmt.Println(err)
			return
		}
		first, _ := ladder.At(0)
		fmt.Println(rules, first)
	}
	// Output:
	// NEC 2017 15 A
	// NEC 2023 10 A
}

// The edition is part of the name, since 2011 took values back.
func ExampleCarryingCapacity_Rule() {
	for _, rules := range []wire.RuleSet{wire.NEC2008, wire.NEC2017} {
		c, err := wire.Ampacity(wire.Installation{Rules: rules, Size: wire.AWG(12), Insulation: wire.Insulation60})
		fmt.Println(c.Current, c.Rule().Edition, err)
	}
	// Output:
	// 25 A 1990s to 2008 <nil>
	// 20 A 2017 <nil>
}

func ExampleProtection_LimitSource() {
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(14), Insulation: wire.Insulation75, Terminals: wire.Insulation75},
		Load:         12 * units.Ampere,
	})
	fmt.Println(p.Capacity.Current, p.Limit, p.LimitSource().Place, err)
	// Output: 20 A 15 A 240.4(D), as public summaries give it <nil>
}

// Dry air of 300 K has a Prandtl number of 0.707 in textbooks.
func ExampleAirProperties() {
	b, err := wire.FreeAir(wire.FreeAirCable{Size: wire.AWG(6), Metal: units.Celsius(90), Ambient: units.Celsius(-25)})
	if err != nil {
		fmt.Println(err)
		return
	}
	air := func(a wire.AirProperties) string { return fmt.Sprintf("%.3f", float64(a.Prandtl)) }
	fmt.Println(b.Film.Compare(b.Surface) < 0, air(b.Air))
	// Output: true 0.708
}

func ExampleCordType() {
	var kind wire.CordType
	err := kind.UnmarshalText([]byte("portable cable"))
	fmt.Println(kind == wire.PortableCable, err)
	// Output: true <nil>
}

// Aluminium of a size carries less than copper, and has a column of its own.
func ExampleMetal_ampacity() {
	for _, metal := range []wire.Metal{wire.Copper, wire.Aluminium} {
		c, err := wire.Ampacity(wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Metal: metal, Insulation: wire.Insulation75,
			Terminals: wire.Insulation75})
		fmt.Println(metal, c.Current, err)
	}
	// Output:
	// copper 65 A <nil>
	// aluminium 50 A <nil>
}
