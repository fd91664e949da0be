package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var lampExercise = weave.Exercise{
	Name: "lamps",
	Question: "Six lamps share {{one_way}} of {{size}} stranded copper at 75 °C and take {{current}} together from 12.8 V. " +
		"What do they lose, in volts and in per cent?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the lamps", Default: "1.5 A", Unit: "A", Low: "0.1 A", High: "20 A"},
		{Name: "one_way", Label: "length, one way", Default: "22 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "18 AWG"},
	},
	Solve: solveLamps,
}

func solveLamps(in *weave.Inputs) (weave.Answer, error) {
	drop, err := wire.VoltageDrop(wire.Run{
		Current:   weave.In[units.Current](in, "current"),
		OneWay:    weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{Size: weave.Parsed(in, "size", wire.ParseSize)},
		Source:    12.8 * units.Volt,
	})
	return weave.Answer{
		Text: "{{drop}}, {{percent}}.",
		Values: []weave.Value{
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
		},
		Working: drop.Working(),
	}, err
}

var pumpExercise = weave.Exercise{
	Name: "pump",
	Question: "A bilge pump takes {{current}}, {{one_way}} away, and may lose 10 % of 12 V. Which gauge is the smallest for the drop, " +
		"with K = 10.75 Ω·cmil/ft? And at 75 °C, stranded?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the pump", Default: "15 A", Unit: "A", Low: "1 A", High: "50 A"},
		{Name: "one_way", Label: "length, one way", Default: "20 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
	},
	Solve: solvePump,
}

func solvePump(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Source:  12 * units.Volt,
		Allowed: units.Some(10 * units.Percent),
	}
	warm, err := wire.SmallestSize(run, wire.Gauges())
	if err != nil {
		return weave.Answer{}, err
	}
	run.Conductor.Resistivity = units.Some(10.75 * units.OhmCircularMilPerFoot)
	byK, err := wire.SmallestSize(run, wire.Gauges())
	return weave.Answer{
		Text: "With K: {{by_k}}, which needs {{area_k}}. Warm and stranded: {{warm}}, which needs {{area_warm}}.",
		Values: []weave.Value{
			weave.Say("by_k", byK.Run.Conductor.Size),
			weave.Show("area_k", byK.MinArea, "cmil", 4),
			weave.Say("warm", warm.Run.Conductor.Size),
			weave.Show("area_warm", warm.MinArea, "cmil", 4),
		},
		Working: byK.Working(),
	}, err
}

var voltageExercise = weave.Exercise{
	Name: "doubled",
	Question: "The same power of {{power}} at 12 V and at 24 V, over {{one_way}} of 8 AWG at 75 °C. Compare the drops in per cent. " +
		"Why is one a quarter of the other?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the load", Default: "240 W", Unit: "W", Low: "10 W", High: "500 W"},
		{Name: "one_way", Label: "length, one way", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "30 ft"},
	},
	Solve: solveDoubled,
}

func solveDoubled(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	run := wire.Run{
		OneWay:    weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{Size: wire.AWG(8)},
		Source:    12 * units.Volt,
	}
	run.Current = power.At(run.Source)
	low, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.Source = 24 * units.Volt
	run.Current = power.At(run.Source)
	high, err := wire.VoltageDrop(run)
	return weave.Answer{
		Text: "{{low}} at 12 V, {{high}} at 24 V. Half the current makes half the drop in volts, and that is a part of twice the voltage.",
		Values: []weave.Value{
			weave.Show("low", low.Fraction, "%", 3),
			weave.Show("high", high.Fraction, "%", 3),
		},
		Working: high.Working(),
	}, err
}

var gaugeExercise = weave.Exercise{
	Name:     "gauges",
	Question: "By what factor does the area grow from 10 AWG to 4 AWG, and from 4 AWG to 4/0 AWG? Is it true that three gauges double it?",
	Solve:    solveGauges,
}

func solveGauges(*weave.Inputs) (weave.Answer, error) {
	ten, seven, four, aught := wire.AWG(10), wire.AWG(7), wire.AWG(4), wire.Aught(4)
	return weave.Answer{
		Text: "{{ten_four}} and {{four_aught}}. Three gauges make {{three}}: double, for every use but a table.",
		Values: []weave.Value{
			weave.Show("ten_four", units.RatioOf(four.Area(), ten.Area()), "1", 4),
			weave.Show("four_aught", units.RatioOf(aught.Area(), four.Area()), "1", 4),
			weave.Show("three", units.RatioOf(seven.Area(), ten.Area()), "1", 4),
		},
	}, nil
}

var heatExercise = weave.Exercise{
	Name: "joint",
	Question: "With {{current}} flowing, a meter across a crimped joint shows {{lost}}. What is its resistance, what heat does it make, " +
		"and how much 10 AWG at 75 °C would lose as much?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current through the joint", Default: "25 A", Unit: "A", Low: "1 A", High: "200 A"},
		{Name: "lost", Label: "voltage across the joint", Default: "180 mV", Unit: "mV", Low: "1 mV", High: "2 V"},
	},
	Solve: solveJoint,
}

func solveJoint(in *weave.Inputs) (weave.Answer, error) {
	current := weave.In[units.Current](in, "current")
	lost := weave.In[units.Voltage](in, "lost")
	wires, err := wire.Resistance(wire.Conductor{Size: wire.AWG(10)})
	if err != nil {
		return weave.Answer{}, err
	}
	joint := lost.Per(current)
	// As many lengths of a foot as have the same resistance.
	feet := units.RatioOf(joint, wires.At.Over(units.Foot))
	return weave.Answer{
		Text: "{{joint}} and {{heat}}, all of it in one place. The same drop as {{feet}} of conductor.",
		Values: []weave.Value{
			weave.Show("joint", joint, "mΩ", 3),
			weave.Show("heat", current.At(lost), "W", 3),
			weave.Show("feet", units.Scale(units.Foot, feet), "ft", 3),
		},
	}, nil
}
