package wire_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// A panel with two branches, and an inverter on cables of its own.
func exampleNetwork() wire.Network {
	return wire.Network{
		Batteries: []wire.Battery{{Voltage: 13.0 * units.Volt, Resistance: 6 * units.Milliohm}},
		Branches: []wire.Branch{
			{
				Name: "panel", OneWay: 10 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(6)},
				Extra: 2 * units.Milliohm,
			},
			{
				Name: "fridge", Parent: "panel", OneWay: 20 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(10)},
				Load: wire.Load{Power: 60 * units.Watt}, Lowest: units.Some(12 * units.Volt),
			},
			{
				Name: "lamps", Parent: "panel", OneWay: 15 * units.Foot, Conductor: wire.Conductor{Size: wire.AWG(14)},
				Load: wire.Load{Current: 4 * units.Ampere},
			},
			{
				Name: "inverter", OneWay: 4 * units.Foot, Conductor: wire.Conductor{Size: wire.Aught(1)},
				Load: wire.Load{Power: 1500 * units.Watt}, Limit: units.Some(150 * units.Ampere),
			},
		},
	}
}

func ExampleNewHarness() {
	harness, err := wire.NewHarness(exampleNetwork())
	if err != nil {
		fmt.Println(err)
		return
	}
	// One Flow serves for as many solves as one likes.
	var flow wire.Flow
	if err := harness.Solve(&flow, wire.Moment{}); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("bank %.2f, %.1f\n", flow.Voltage, flow.Current)
	for _, p := range flow.Points {
		fmt.Printf("%-8s %.2f  feeder %.1f, loses %.2f\n", p.Name, p.Voltage, p.Current, p.Drop)
	}
	for _, f := range flow.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// bank 12.20 V, 133.2 A
	// panel    12.09 V  feeder 9.1 A, loses 0.11 V
	// fridge   11.84 V  feeder 5.1 A, loses 0.25 V
	// lamps    11.72 V  feeder 4.0 A, loses 0.38 V
	// inverter 12.08 V  feeder 124.2 A, loses 0.12 V
	// caution voltage-below-lowest
	// note feeder-limit-not-given
	// note lowest-voltage-not-given
	// note battery-limit-not-given
}

// The same harness with the inverter switched off.
func ExampleHarness_Solve() {
	network := exampleNetwork()
	harness, err := wire.NewHarness(network)
	if err != nil {
		fmt.Println(err)
		return
	}
	var off wire.Moment
	for _, b := range network.Branches {
		off.Loads = append(off.Loads, b.Load)
	}
	inverter, _ := harness.Index("inverter")
	off.Loads[inverter] = wire.Load{}
	var flow wire.Flow
	if err := harness.Solve(&flow, off); err != nil {
		fmt.Println(err)
		return
	}
	fridge, _ := harness.Index("fridge")
	var point wire.Point = flow.Points[fridge]
	fmt.Printf("%s has %.2f\n", point.Name, point.Voltage)
	// Output: fridge has 12.61 V
}

// An inverter on a cable that cannot feed it, and the largest that it could.
func ExampleFlow() {
	network := exampleNetwork()
	network.Branches[3].Load.Power = 8 * units.Kilowatt
	harness, err := wire.NewHarness(network)
	if err != nil {
		fmt.Println(err)
		return
	}
	var flow wire.Flow
	if err := harness.Solve(&flow, wire.Moment{}); err != nil {
		fmt.Println(err)
		return
	}
	var collapse wire.Collapse
	collapse, collapsed := flow.Collapse.Get()
	fmt.Println("collapsed:", collapsed)
	if most, ok := collapse.Most.Get(); ok {
		fmt.Printf("the inverter could have %.0f of %.0f\n", most, collapse.Load.Power)
	}
	fmt.Printf("all loads together could be %.1f of what they are\n", collapse.Scale)
	// Output:
	// collapsed: true
	// the inverter could have 5986 W of 8000 W
	// all loads together could be 75.1 % of what they are
}

func ExampleHarness_MostPower() {
	harness, err := wire.NewHarness(exampleNetwork())
	if err != nil {
		fmt.Println(err)
		return
	}
	most, err := harness.MostPower("inverter", wire.Moment{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f\n", most)
	// Output: 5986 W
}

// Four batteries in a row, both leads at the first: it works twice as hard as
// the last.
func ExampleShare() {
	lead := wire.Lead{Length: 1 * units.Foot, Conductor: wire.Conductor{Size: wire.Aught(1)}, Extra: 0.1 * units.Milliohm}
	row := wire.Network{
		Links:    []wire.Link{{Plus: lead, Minus: lead}, {Plus: lead, Minus: lead}, {Plus: lead, Minus: lead}},
		Branches: []wire.Branch{{Name: "inverter", Load: wire.Load{Power: 2 * units.Kilowatt}}},
	}
	for _, name := range []string{"first", "second", "third", "fourth"} {
		row.Batteries = append(row.Batteries, wire.Battery{
			Name: name, Voltage: 13.2 * units.Volt, Resistance: 2 * units.Milliohm, Limit: units.Some(100 * units.Ampere),
		})
	}
	for _, minus := range []string{"first", "fourth"} {
		row.Plus, row.Minus = "first", minus
		harness, err := wire.NewHarness(row)
		if err != nil {
			fmt.Println(err)
			return
		}
		var flow wire.Flow
		if err := harness.Solve(&flow, wire.Moment{}); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("minus from the %s:", minus)
		for _, share := range flow.Shares {
			var s wire.Share = share
			fmt.Printf(" %.1f", s.Current)
		}
		fmt.Println()
	}
	// Output:
	// minus from the first: 60.7 A 40.2 A 28.6 A 23.4 A
	// minus from the fourth: 42.1 A 34.4 A 34.4 A 42.1 A
}

func ExampleNetworkError() {
	network := exampleNetwork()
	network.Branches[1].Parent = "lamps"
	network.Branches[2].Parent = "fridge"
	_, err := wire.NewHarness(network)
	var wrong *wire.NetworkError
	fmt.Println(errors.As(err, &wrong), errors.Is(err, wire.ErrCycle))
	fmt.Println(err)
	// Output:
	// true true
	// wire.NewHarness: branch "fridge": it leads back to itself and never to the bank
}
