package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// solveRule works what the rule of thumb is tried on.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	at := 12 * units.Volt
	f, err := fourOn("1", "1")
	if err != nil {
		return weave.Answer{}, err
	}
	equal := units.Scale(f.Current, 0.25*units.One)
	return weave.Answer{Values: []weave.Value{
		weave.Show("power", 1800*units.Watt, "W", 4),
		weave.Show("current", (1800 * units.Watt).At(at), "A", 3),
		weave.Show("equal", equal, "A", 3),
		weave.Show("first", f.Shares[0].Current, "A", 3),
		weave.Show("last", f.Shares[3].Current, "A", 3),
		weave.Show("times", units.RatioOf(f.Shares[0].Current, f.Shares[3].Current), "1", 2),
	}}, err
}

func solveEqual(*weave.Inputs) (weave.Answer, error) {
	n := row(4, wire.Battery{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}, 0.3*units.Milliohm)
	n.Branches = []wire.Branch{{Name: "load", Load: wire.Load{Current: 200 * units.Ampere}}}
	_, f, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	whole := 4 * 100 * units.Ampere
	return weave.Answer{
		Text: "Only if all work alike. With both leads at the first, that one carries {{part}} of the whole, so it is at its 100 A when the row " +
			"gives {{most}}, not {{whole}}. If its protection opens then, the other three have to carry it all.",
		Values: []weave.Value{
			weave.Show("part", f.Shares[0].Fraction, "%", 3),
			weave.Show("most", units.Scale(100*units.Ampere, units.One/f.Shares[0].Fraction), "A", 3),
			weave.Show("whole", whole, "A", 3),
		},
	}, nil
}

func solveStep(*weave.Inputs) (weave.Answer, error) {
	power := 1800 * units.Watt
	_, f, err := solve(oneLoad(halfCharged, theWay, 0, wire.Load{Power: power}))
	if err != nil {
		return weave.Answer{}, err
	}
	label := power.At(12 * units.Volt)
	return weave.Answer{
		Text: "{{power}} over 12 V is {{label}}. At the end of a real cable on a real bank it is {{current}}, {{more}} more, and the heat in the " +
			"cable grows with the square of that.",
		Values: []weave.Value{
			weave.Show("power", power, "W", 4),
			weave.Show("label", label, "A", 3),
			weave.Show("current", f.Points[0].Current, "A", 4),
			weave.Show("more", units.RatioOf(f.Points[0].Current-label, label), "%", 2),
		},
	}, nil
}

func solveLess(*weave.Inputs) (weave.Answer, error) {
	h, _, err := solve(oneLoad(halfCharged, theWay, 0, wire.Load{}))
	if err != nil {
		return weave.Answer{}, err
	}
	most, err := h.MostPower("load", wire.Moment{})
	if err != nil {
		return weave.Answer{}, err
	}
	// A hair below the most, where there still is a state.
	_, f, err := solve(oneLoad(halfCharged, theWay, 0, wire.Load{Power: units.Scale(most, 0.999999*units.One)}))
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "A heater does. An inverter keeps its power, and up to {{most}} here it gets it; there it has {{volts}}, draws {{current}}, and the " +
			"bank and the cable take as much heat as the load takes power. One watt more has no answer at all.",
		Values: []weave.Value{
			weave.Show("most", most, "W", 4),
			weave.Show("volts", f.Points[0].Voltage, "V", 2),
			weave.Show("current", f.Points[0].Current, "A", 3),
		},
	}, nil
}

// solvePieces has three drops of which each is within 3 %.
func solvePieces(*weave.Inputs) (weave.Answer, error) {
	_, f, err := solve(wire.Network{
		Batteries: oneBank(12.8*units.Volt, 8*units.Milliohm),
		Branches: []wire.Branch{
			{Name: "panel", Conductor: wire.Conductor{Size: wire.AWG(6)}, OneWay: 10 * units.Foot, Load: wire.Load{Current: 25 * units.Ampere}},
			{Name: "pump", Parent: "panel", Conductor: wire.Conductor{Size: wire.AWG(12)}, OneWay: 11 * units.Foot,
				Load: wire.Load{Current: 8 * units.Ampere}},
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	panel, pump := f.Points[0], f.Points[1]
	part := func(v units.Voltage) units.Ratio { return units.RatioOf(v, f.OpenCircuit) }
	return weave.Answer{
		Text: "The pump's own run loses {{own}} and the feeder {{feeder}}, both within it. The pump is {{all}} short of the battery at rest, since " +
			"drops add and the bank takes part: another {{bank}}.",
		Values: []weave.Value{
			weave.Show("own", part(pump.Drop), "%", 2),
			weave.Show("feeder", part(panel.Drop), "%", 2),
			weave.Show("bank", part(f.OpenCircuit-f.Voltage), "%", 2),
			weave.Show("all", part(f.OpenCircuit-pump.Voltage), "%", 2),
		},
	}, nil
}

func solveMoreHours(*weave.Inputs) (weave.Answer, error) {
	_, f, err := solve(wire.Network{
		Batteries: []wire.Battery{
			{Name: "lithium", Voltage: 13.3 * units.Volt, Resistance: 10 * units.Milliohm},
			{Name: "lead", Voltage: 12.4 * units.Volt, Resistance: 6 * units.Milliohm},
		},
		Links: []wire.Link{{Plus: wire.Lead{Extra: 4 * units.Milliohm}}},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "With everything switched off, {{idle}} flow from the lithium battery into the lead one. What leaves it is not there in the evening, " +
			"and the lead battery is charged by something that does not know how.",
		Values: []weave.Value{weave.Show("idle", f.Shares[0].Idle, "A", 3)},
	}, nil
}
