package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// recorded is the output of the simulator for one of the netlists that are in
// testdata/harness.
func recorded(netlist string) working.Source {
	return working.Source{Body: "ngspice 39", Title: "circuit simulator, recorded output",
		Place: "testdata/harness/" + netlist + ".txt", Provenance: working.Read}
}

// simulated compares with the simulator, six digits of what it has.
func simulated() ([]weave.Row, error) {
	var rows []weave.Row
	for _, part := range []func() ([]weave.Row, error){simulatedInverter, simulatedRows, simulatedUnlike, simulatedLimit, simulatedMost} {
		more, err := part()
		if err != nil {
			return nil, err
		}
		rows = append(rows, more...)
	}
	return rows, nil
}

func simulatedInverter() ([]weave.Row, error) {
	_, f, err := solve(oneLoad(12.2*units.Volt, 6*units.Milliohm, 4.2*units.Milliohm, wire.Load{Power: 1750 * units.Watt}))
	if err != nil {
		return nil, err
	}
	return numbersOf(recorded("inverter"),
		number("1750 W on 12.2 V behind 6 + 4.2 mΩ: voltage", f.Points[0].Voltage, "10.5000", "V"),
		number("the same: current", f.Points[0].Current, "166.667", "A"),
	), nil
}

// simulatedRows is four batteries with an inverter and lamps, taken off in two
// ways.
func simulatedRows() ([]weave.Row, error) {
	n := row(4, wire.Battery{Voltage: 13.25 * units.Volt, Resistance: 2.8 * units.Milliohm}, 0)
	for i := range n.Links {
		n.Links[i].Plus.Extra, n.Links[i].Minus.Extra = 0.31*units.Milliohm, 0.27*units.Milliohm
	}
	n.Branches = []wire.Branch{
		{Name: "inverter", Extra: 1.8 * units.Milliohm, Load: wire.Load{Power: 2400 * units.Watt}},
		{Name: "lamps", Extra: 48 * units.Milliohm, Load: wire.Load{Current: 9 * units.Ampere}},
	}
	n.Plus, n.Minus = "1", "1"
	_, one, err := solve(n)
	if err != nil {
		return nil, err
	}
	n.Minus = "4"
	_, opposite, err := solve(n)
	if err != nil {
		return nil, err
	}
	return append(numbersOf(recorded("oneend"),
		number("four batteries, leads at one end: first", one.Shares[0].Current, "77.0763", "A"),
		number("second", one.Shares[1].Current, "52.0138", "A"),
		number("third", one.Shares[2].Current, "37.7256", "A"),
		number("fourth", one.Shares[3].Current, "31.2520", "A"),
		number("inverter on it", one.Points[0].Voltage, "12.6939", "V"),
	), numbersOf(recorded("opposite"),
		number("leads at opposite ends: first", opposite.Shares[0].Current, "55.8406", "A"),
		number("second", opposite.Shares[1].Current, "45.4408", "A"),
		number("third", opposite.Shares[2].Current, "44.4537", "A"),
		number("fourth", opposite.Shares[3].Current, "52.6748", "A"),
		number("inverter on it", opposite.Points[0].Voltage, "12.6709", "V"),
	)...), nil
}

// simulatedUnlike is two and three unlike batteries.
func simulatedUnlike() ([]weave.Row, error) {
	link := func(plus, minus units.Resistance) wire.Link {
		return wire.Link{Plus: wire.Lead{Extra: plus}, Minus: wire.Lead{Extra: minus}}
	}
	_, idle, err := solve(wire.Network{
		Batteries: []wire.Battery{
			{Name: "lithium", Voltage: 13.3 * units.Volt, Resistance: 10 * units.Milliohm},
			{Name: "lead", Voltage: 12.4 * units.Volt, Resistance: 6 * units.Milliohm},
		},
		Links: []wire.Link{link(2.5*units.Milliohm, 1.5*units.Milliohm)},
	})
	if err != nil {
		return nil, err
	}
	_, mixed, err := solve(wire.Network{
		Batteries: []wire.Battery{
			{Name: "one", Voltage: 13.3 * units.Volt, Resistance: 10 * units.Milliohm},
			{Name: "two", Voltage: 12.9 * units.Volt, Resistance: 4 * units.Milliohm},
			{Name: "three", Voltage: 12.4 * units.Volt, Resistance: 6 * units.Milliohm},
		},
		Links: []wire.Link{link(0.8*units.Milliohm, 1.1*units.Milliohm), link(2.2*units.Milliohm, 0.6*units.Milliohm)},
		Plus:  "two", Minus: "three",
		Branches: []wire.Branch{{Name: "box", Extra: 10 * units.Milliohm,
			Load: wire.Load{Power: 140 * units.Watt, Resistance: units.Some(3.3 * units.Ohm)}}},
	})
	if err != nil {
		return nil, err
	}
	return append(numbersOf(recorded("idle"),
		number("lithium beside lead, no load: lithium", idle.Shares[0].Current, "45.0000", "A"),
		number("voltage of the pair", idle.Voltage, "12.8500", "V"),
	), numbersOf(recorded("mixed"),
		number("13.3, 12.9 and 12.4 V in a row, small load: first", mixed.Shares[0].Current, "40.5775", "A"),
		number("second", mixed.Shares[1].Current, "20.7180", "A"),
		number("third, which is charged", mixed.Shares[2].Current, "-46.3842", "A"),
	)...), nil
}

// simulatedLimit is two inverters a part in a thousand from collapse.
func simulatedLimit() ([]weave.Row, error) {
	_, f, err := solve(wire.Network{
		Batteries: oneBank(12.4*units.Volt, 5*units.Milliohm),
		Branches: []wire.Branch{
			{Name: "bar", Extra: 0.8 * units.Milliohm},
			{Name: "large", Parent: "bar", Extra: 2.6 * units.Milliohm, Load: wire.Load{Power: 3500 * units.Watt}},
			{Name: "small", Parent: "bar", Extra: 9 * units.Milliohm, Load: wire.Load{Power: 1312 * units.Watt}},
			{Name: "lamps", Parent: "bar", Extra: 60 * units.Milliohm, Load: wire.Load{Current: 14.8 * units.Ampere}},
		},
	})
	if err != nil {
		return nil, err
	}
	return numbersOf(recorded("limit"),
		number("two inverters just before collapse: the larger", f.Points[1].Voltage, "6.51835", "V"),
		number("the smaller", f.Points[2].Voltage, "5.91972", "V"),
	), nil
}

// simulatedMost is the most power at one place beside other loads.
func simulatedMost() ([]weave.Row, error) {
	h, err := wire.NewHarness(wire.Network{
		Batteries: oneBank(12.6*units.Volt, 5*units.Milliohm),
		Branches: []wire.Branch{
			{Name: "bar", Extra: 2 * units.Milliohm, Load: wire.Load{Resistance: units.Some(0.6 * units.Ohm)}},
			{Name: "other", Parent: "bar", Extra: 6 * units.Milliohm, Load: wire.Load{Power: 400 * units.Watt}},
			{Name: "inverter", Parent: "bar", Extra: 4.4 * units.Milliohm},
		},
	})
	if err != nil {
		return nil, err
	}
	most, err := h.MostPower("inverter", wire.Moment{})
	return numbersOf(recorded("most"), number("most power beside 400 W and a heater", most, "3241.55", "W")), err
}
