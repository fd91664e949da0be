package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var theTwo = weave.Worked{
	Name:  "two",
	Title: "Two inverters on one bar",
	Question: "A bank of {{voltage}} and {{bank}} feeds a bar over {{feeder}} of 2/0 AWG. On the bar hang two inverters, each on 4 ft of " +
		"1/0 AWG; lengths are one way. The first takes {{first}}, the second {{second}}. Each stops at 10.5 V, and each was tried alone. " +
		"Do both work together?",
	Inputs: []weave.Input{
		{Name: "voltage", Label: voltageInput.Label, Default: "12.6 V", Unit: "V", Low: "10 V", High: "60 V"},
		{Name: "bank", Label: bankInput.Label, Default: "6 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "60 mΩ"},
		{Name: "feeder", Label: "length of the feeder, one way", Default: "6 ft", Unit: "ft", Low: "1 ft", High: "40 ft"},
		{Name: "first", Label: "power that the first takes", Default: "2600 W", Unit: "W", Low: "0 W", High: "6000 W"},
		{Name: "second", Label: "power that the second takes", Default: "2700 W", Unit: "W", Low: "0 W", High: "6000 W"},
	},
	Solve:   solveTwo,
	Helpers: []string{"bothRun", "bothFail"},
}

func solveTwo(in *weave.Inputs) (weave.Answer, error) {
	first := weave.In[units.Power](in, "first")
	second := weave.In[units.Power](in, "second")
	cable := wire.Conductor{Size: wire.Aught(1)}
	cutOff := units.Some(10.5 * units.Volt)
	h, f, err := solve(wire.Network{
		Batteries: oneBank(
			weave.In[units.Voltage](in, "voltage"),
			weave.In[units.Resistance](in, "bank"),
		),
		Branches: []wire.Branch{
			{
				Name:      "bar",
				Conductor: wire.Conductor{Size: wire.Aught(2)},
				OneWay:    weave.In[units.Length](in, "feeder"),
			},
			{
				Name: "first", Parent: "bar",
				Conductor: cable, OneWay: 4 * units.Foot,
				Load:   wire.Load{Power: first},
				Lowest: cutOff,
			},
			{
				Name: "second", Parent: "bar",
				Conductor: cable, OneWay: 4 * units.Foot,
				Load:   wire.Load{Power: second},
				Lowest: cutOff,
			},
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	var one, two wire.Flow
	for i, alone := range []*wire.Flow{&one, &two} {
		only := make([]wire.Load, h.Len())
		only[1+i].Power = []units.Power{first, second}[i]
		err := h.Solve(alone, wire.Moment{Loads: only})
		if err != nil {
			return weave.Answer{}, err
		}
		if c, ok := alone.Collapse.Get(); ok {
			return collapsed(alone, c), nil
		}
	}
	// What is left for the second beside the first, and what it
	// could have with all of the way to itself.
	left, err := h.MostPower("second", wire.Moment{})
	if err != nil {
		return weave.Answer{}, err
	}
	alone, err := h.MostPower("second", wire.Moment{
		Loads: make([]wire.Load, h.Len()),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	var answer weave.Answer
	if c, ok := f.Collapse.Get(); ok {
		answer = bothFail(f, c)
	} else {
		answer = bothRun(f)
	}
	answer.Values = append(answer.Values,
		weave.Show("one", one.Points[1].Voltage, "V", 4),
		weave.Show("two", two.Points[2].Voltage, "V", 4),
		weave.Show("left", left, "W", 4),
		weave.Show("alone", alone, "W", 4))
	answer.Findings = f.Findings()
	return answer, nil
}

func bothFail(f *wire.Flow, c wire.Collapse) weave.Answer {
	return weave.Answer{
		Text: "No. Alone, the first gets {{one}} and the " +
			"second {{two}}. Together there is no voltage at " +
			"which both get their power: they could be " +
			"{{scale}} of what they are. Beside the first, the " +
			"second could have {{left}}; alone on the same " +
			"cables, {{alone}}. Their cut-off comes long " +
			"before that.",
		Values: []weave.Value{
			weave.Show("scale", c.Scale, "%", 3),
		},
		Working: f.Working(c.Branch),
	}
}

func bothRun(f *wire.Flow) weave.Answer {
	return weave.Answer{
		Text: "It settles. Alone, the first gets {{one}} and " +
			"the second {{two}}; together they get {{v1}} and " +
			"{{v2}}, and whether they run there is for their " +
			"cut-off to say. Beside the first, the second " +
			"could have {{left}}; alone on the same cables, " +
			"{{alone}}.",
		Values: []weave.Value{
			weave.Show("v1", f.Points[1].Voltage, "V", 4),
			weave.Show("v2", f.Points[2].Voltage, "V", 4),
		},
		Working: f.Working(2),
	}
}
