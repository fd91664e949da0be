package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// Inputs that several examples share.
var (
	currentInput = weave.Input{Name: "current", Label: "current of the load", Default: "20 A", Unit: "A", Low: "0.1 A", High: "300 A"}
	oneWayInput  = weave.Input{Name: "one_way", Label: "length, one way", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "200 ft"}
	sizeInput    = weave.Input{Name: "size", Label: "conductor", Default: "10 AWG"}
	metalInput   = weave.Input{Name: "metal", Label: "temperature of the metal", Default: "75 °C", Unit: "°C", Low: "-40 °C", High: "105 °C"}
	sourceInput  = weave.Input{Name: "source", Label: "voltage at the source", Default: "12.8 V", Unit: "V", Low: "6 V", High: "60 V"}
	allowedInput = weave.Input{Name: "allowed", Label: "drop that is allowed", Default: "3 %", Unit: "%", Low: "0.5 %", High: "20 %"}
)

var theFeed = weave.Worked{
	Name:  "feed",
	Title: "What a run loses",
	Question: "A load of {{current}} hangs on {{size}} stranded copper, {{one_way}} from the battery, metal at {{metal}}. " +
		"What is left of {{source}}, and is the drop within {{allowed}}?",
	Inputs: []weave.Input{currentInput, oneWayInput, sizeInput, metalInput, sourceInput, allowedInput},
	Solve:  solveFeed,
}

func solveFeed(in *weave.Inputs) (weave.Answer, error) {
	drop, err := wire.VoltageDrop(wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Temperature: weave.Temperature(in, "metal"),
		},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The run loses {{drop}}, which is {{percent}}, " +
			"and the load gets {{at_load}}. The wire itself " +
			"turns {{heat}} into heat.",
		Values: []weave.Value{
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
			weave.Show("at_load", drop.AtLoad, "V", 4),
			weave.Show("heat", drop.Heat, "W", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
	}, nil
}

var theSize = weave.Worked{
	Name:  "size",
	Title: "Which size is enough",
	Question: "The same {{current}}, {{one_way}} from the battery, metal at {{metal}}. Which size loses no more than {{allowed}} " +
		"of {{source}}?",
	Inputs: []weave.Input{currentInput, oneWayInput, metalInput, sourceInput, allowedInput},
	Solve:  solveSize,
}

func solveSize(in *weave.Inputs) (weave.Answer, error) {
	found, err := wire.SmallestSize(wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Temperature: weave.Temperature(in, "metal"),
		},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	}, wire.Gauges())
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "For the drop, {{size}} is enough: it loses " +
			"{{percent}}. It takes {{area}} of copper at least. " +
			"Whether it bears the heat is another question.",
		Values: []weave.Value{
			weave.Say("size", found.Run.Conductor.Size),
			weave.Show("percent", found.Drop.Fraction, "%", 3),
			weave.Show("area", found.MinArea, "mm²", 3),
		},
		Working:  found.Working(),
		Findings: found.Findings(),
	}, nil
}

var theReach = weave.Worked{
	Name:     "reach",
	Title:    "How far a size reaches",
	Question: "A roll of {{size}} is in the shed. How far from {{source}} can it feed {{current}} within {{allowed}}, metal at {{metal}}?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "8 A", Unit: "A", Low: "0.1 A", High: "300 A"},
		{Name: "size", Label: "conductor", Default: "12 AWG"},
		metalInput, sourceInput, allowedInput,
	},
	Solve: solveReach,
}

func solveReach(in *weave.Inputs) (weave.Answer, error) {
	far, err := wire.LongestRun(wire.Run{
		Current: weave.In[units.Current](in, "current"),
		Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Temperature: weave.Temperature(in, "metal"),
		},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{feet}}, or {{metres}}, one way. The roll " +
			"must hold twice that.",
		Values: []weave.Value{
			weave.Show("feet", far.OneWay, "ft", 3),
			weave.Show("metres", far.OneWay, "m", 3),
		},
		Working:  far.Working(),
		Findings: far.Findings(),
	}, nil
}
