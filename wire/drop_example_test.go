package wire_test

import (
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// The tables in print differ, each for a reason; the caller says which.
func ExampleBasis() {
	for _, c := range []wire.Conductor{
		{Size: wire.AWG(12), Basis: units.Some(wire.FromNBSHandbook100), Strand: wire.Solid, Temperature: units.Celsius(20)},
		{Size: wire.AWG(12), Basis: units.Some(wire.FromNECTable8), Strand: wire.Solid},
		{Size: wire.AWG(12), Basis: units.Some(wire.FromNECTable8)},
		{Size: wire.AWG(12)},
		{Size: wire.AWG(12), Basis: units.Some(wire.FromNECTable8), Coated: true},
	} {
		p, err := wire.Resistance(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.3f Ω/kft, %v, %v, %v\n", units.In(p.At, units.OhmPerKilofoot), p.Basis, c.Strand, p.Conductor.Temperature)
	}
	// Output:
	// 1.588 Ω/kft, NBS Handbook 100, solid, 20 °C
	// 1.930 Ω/kft, NEC Table 8, solid, 75 °C
	// 1.980 Ω/kft, NEC Table 8, stranded, 75 °C
	// 1.970 Ω/kft, copper and geometry, stranded, 75 °C
	// 2.050 Ω/kft, NEC Table 8, stranded, 75 °C
}

// Aluminium and copper-clad aluminium of the same gauge number drop more.
func ExampleMetal() {
	for _, metal := range []wire.Metal{wire.Copper, wire.CopperClad, wire.Aluminium} {
		p, err := wire.Resistance(wire.Conductor{Size: wire.Aught(1), Metal: metal})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.3f Ω/kft\n", metal, units.In(p.At, units.OhmPerKilofoot))
	}
	// Output:
	// copper: 0.122 Ω/kft
	// copper-clad aluminium: 0.189 Ω/kft
	// aluminium: 0.201 Ω/kft
}

func ExampleMassOf() {
	for _, metal := range []wire.Metal{wire.Copper, wire.Aluminium} {
		var m wire.MetalMass
		m, err := wire.MassOf(wire.Conductor{Size: wire.Aught(4), Metal: metal})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.2f in 10 m\n", metal, m.PerLength.Over(10*units.Metre))
	}
	// Output:
	// copper: 9.72 kg in 10 m
	// aluminium: 2.96 kg in 10 m
}

func ExampleLargestCurrent() {
	var m wire.MostCurrent
	m, err := wire.LargestCurrent(wire.Run{
		OneWay:    2 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(4)},
		Source:    12 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f by drop, %v\n", m.Current, m.Findings()[0].Rule)
	// Output: 292 A by drop, current-above-any-ampacity
}

// A table of longest runs, feet one way, by size and current.
func ExampleAppendLongestRuns() {
	currents := []units.Current{5 * units.Ampere, 10 * units.Ampere, 20 * units.Ampere}
	run := wire.Run{Source: 12.8 * units.Volt, Allowed: units.Some(3 * units.Percent)}
	cells, err := wire.AppendLongestRuns(nil, run, []wire.Size{wire.AWG(14), wire.AWG(10), wire.AWG(6)}, currents)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, x := range cells {
		if i%len(currents) == 0 {
			fmt.Printf("%7v", x.Run.Conductor.Size)
		}
		fmt.Printf("%6.1f", units.In(x.OneWay, units.Foot))
		if i%len(currents) == len(currents)-1 {
			fmt.Println()
		}
	}
	// Output:
	// 14 AWG  12.3   6.1   3.1
	//  10 AWG  31.0  15.5   7.7
	//   6 AWG  78.4  39.2  19.6
}

func ExampleACDrop() {
	run := wire.ACRun{
		Current:     14 * units.Ampere,
		OneWay:      75 * units.Foot,
		Line:        wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(10)}},
		Source:      120 * units.Volt,
		PowerFactor: units.Some(85 * units.Percent),
	}
	var drop wire.AlternatingDrop
	drop, err := wire.ACDrop(run)
	if err != nil {
		fmt.Println(err)
		return
	}
	var method wire.ACMethod = drop.Run.Method
	fmt.Printf("%v drop %.3f, approximate %.3f, and |I·Z| is %.3f\n", method, drop.Exact, drop.Approximate, drop.Phasor)
	// Output: exact drop 2.204 V, approximate 2.197 V, and |I·Z| is 2.522 V
}

// The metal round a conductor changes both parts.
func ExampleACImpedance() {
	for conduit := wire.PVCConduit; conduit <= wire.SteelConduit; conduit++ {
		var z wire.Impedance
		z, err := wire.ACImpedance(wire.ACConductor{Conductor: wire.Conductor{Size: wire.Aught(4)}, Conduit: conduit})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.3f and %.3f Ω/kft\n", conduit, units.In(z.R, units.OhmPerKilofoot), units.In(z.X, units.OhmPerKilofoot))
	}
	// Output:
	// PVC: 0.062 and 0.041 Ω/kft
	// aluminium: 0.067 and 0.041 Ω/kft
	// steel: 0.063 and 0.051 Ω/kft
}

// What the neutral carries depends on how the legs stand to each other.
func ExampleLegDrop() {
	run := wire.LegRun{
		Currents: units.Legs[units.Current]{A: 40 * units.Ampere, B: 25 * units.Ampere},
		OneWay:   100 * units.Foot,
		Line:     wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(6)}},
		Source:   120 * units.Volt,
	}
	for supply := wire.SplitPhase; supply <= wire.OneHot; supply++ {
		run.Supply = supply
		var v wire.LegVoltages
		v, err := wire.LegDrop(run)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %.0f in the neutral; %.1f and %.1f\n", supply, v.InNeutral, v.AtLoad.A, v.AtLoad.B)
	}
	// Output:
	// 120/240 V split phase: 15 A in the neutral; 117.3 V and 119.5 V
	// 120/208 V network: 35 A in the neutral; 116.8 V and 118.4 V
	// one hot for both legs: 65 A in the neutral; 113.6 V and 113.6 V
}

// 1200 W on one leg and 300 W on the other, and the neutral comes loose.
func ExampleOpenNeutral() {
	var v wire.FloatingNeutral
	v, err := wire.OpenNeutral(wire.SplitLoad{
		Powers:  units.Legs[units.Power]{A: 1200 * units.Watt, B: 300 * units.Watt},
		Nominal: 120 * units.Volt,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	f := v.Findings()[0]
	fmt.Println(v.AtLoad.A, v.AtLoad.B, f.Severity, f.Rule)
	// Output: 48 V 192 V danger open-neutral-overvoltage
}

// A multiwire circuit on a panel whose two hots come from one inverter.
func ExampleSharedNeutral() {
	var n wire.NeutralCurrent
	n, err := wire.SharedNeutral(wire.Multiwire{
		Supply:   units.Some(wire.OneHot),
		Currents: units.Legs[units.Current]{A: 12 * units.Ampere, B: 9 * units.Ampere},
		Device:   units.Some(15 * units.Ampere),
		Neutral:  units.Some(15 * units.Ampere),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Current, "in the neutral, and up to", n.Most)
	for _, f := range n.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 21 A in the neutral, and up to 30 A
	// danger neutral-overloaded
}

// Warm copper drops more than the air round it says.
func ExampleWarmDrop() {
	var d wire.WarmedDrop
	d, err := wire.WarmDrop(wire.WarmRun{
		Run: wire.Run{
			OneWay:    6 * units.Foot,
			Conductor: wire.Conductor{Size: wire.Aught(1)},
			Source:    12.8 * units.Volt,
		},
		Power:    units.Some(2000 * units.Watt),
		Ampacity: 285 * units.Ampere,
		Rated:    units.Celsius(105),
		Ambient:  units.Celsius(40),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f after %d steps, %.1f by the rule of thumb\n", d.Temperature, d.Steps, d.BySquare)
	fmt.Printf("%.0f mV warm, %.0f mV at %v\n", units.In(d.Drop.Voltage, units.Millivolt), units.In(d.AtAmbient.Voltage, units.Millivolt), d.Run.Ambient)
	if s, ok := d.Step(1); ok {
		var first wire.WarmStep = s
		fmt.Printf("the first step goes from %v to %.1f\n", first.From, first.To)
	}
	// Output:
	// 60.3 °C after 11 steps, 63.3 °C by the rule of thumb
	// 222 mV warm, 206 mV at 40 °C
	// the first step goes from 40 °C to 58.8 °C
}

// The same charge loses three times as much in a third of the time.
func ExampleEnergyLost() {
	run := wire.Run{OneWay: 15 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(8)}, Source: 12.8 * units.Volt}
	const steady, hard = 10 * units.Ampere, 30 * units.Ampere
	for _, load := range []units.Series[units.Current]{
		hourly(steady, steady, steady, steady, steady, steady), hourly(hard, hard, 0, 0, 0, 0),
	} {
		var x wire.Loss
		x, err := wire.EnergyLost(run, load)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.2f lost of %.0f\n", x.Lost, x.FromSource)
	}
	// Output:
	// 14.03 Wh lost of 768 Wh
	// 42.08 Wh lost of 768 Wh
}

// Any step of a load explains itself.
func ExampleEnergyLostIn() {
	run := wire.Run{OneWay: 15 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(8)}, Source: 12.8 * units.Volt}
	var step wire.LossStep
	step, err := wire.EnergyLostIn(run, hourly(60*units.Watt, 240*units.Watt), 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("step %d: %.2f, %.3f, %.2f\n", step.Index, step.Run.Current, step.Drop, step.Lost)
	// Output: step 1: 19.44 A, 0.454 V, 8.83 Wh
}

// Two voltages and a current: a lug that nobody sees.
func ExampleMeasureJoint() {
	var j wire.Joint
	j, err := wire.MeasureJoint(wire.JointReading{
		Before:  12.80 * units.Volt,
		After:   12.35 * units.Volt,
		Current: 30 * units.Ampere,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(j.Resistance, j.Heat, j.Findings()[0].Rule)
	// Output: 15 mΩ 13.5 W joint-hot
}
