package ampacity

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var conduitExercise = weave.Exercise{
	Name: "conduit",
	Question: "In one conduit {{wires}} wires of {{size}} with 90 °C insulation carry current, and the air is at {{ambient}}. By the NEC of 2017 and " +
		"with terminals of 75 °C, what may each carry?",
	Inputs: []weave.Input{
		{Name: "wires", Label: "conductors that carry current together", Default: "9", Low: "1", High: "60"},
		{Name: "size", Label: "conductor", Default: "12 AWG"},
		{Name: "ambient", Label: "air round the wires", Default: "40 °C", Unit: "°C", Low: "-40 °C", High: "85 °C"},
	},
	Solve: solveConduit,
}

func solveConduit(in *weave.Inputs) (weave.Answer, error) {
	c, err := wire.Ampacity(wire.Installation{
		Rules: wire.NEC2017, Size: weave.Parsed(in, "size", wire.ParseSize),
		Insulation: wire.Insulation90, Terminals: wire.Insulation75,
		Ambient: weave.Temperature(in, "ambient"), Conductors: weave.Count(in, "wires"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}}, limited by the {{by}}.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Say("by", c.Governs),
		},
		Working: c.Working(),
	}, nil
}

var furnaceExercise = weave.Exercise{
	Name: "furnace",
	Question: "A furnace fan takes {{current}} all night through {{size}} with {{insulation}} insulation, by itself, in air of {{ambient}}. By the NEC of " +
		"2017, how much of the wire's ampacity does it use?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the fan", Default: "9 A", Unit: "A", Low: "1 A", High: "20 A"},
		{Name: "size", Label: "conductor", Default: "14 AWG", Choices: []string{"14 AWG", "12 AWG", "10 AWG"}},
		{Name: "insulation", Label: "insulation", Default: "75 °C", Choices: []string{"75 °C", "90 °C", "105 °C"}},
		{Name: "ambient", Label: "air round the wire", Default: "65 °C", Unit: "°C", Low: "-20 °C", High: "70 °C"},
	},
	Solve: solveFurnace,
}

func solveFurnace(in *weave.Inputs) (weave.Answer, error) {
	load := weave.In[units.Current](in, "current")
	c, err := wire.Ampacity(wire.Installation{
		Rules: wire.NEC2017, Size: weave.Parsed(in, "size", wire.ParseSize),
		Insulation: weave.Parsed(in, "insulation", wire.ParseInsulation), Ambient: weave.Temperature(in, "ambient"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{part}} of {{ampacity}}, which is limited by the {{by}}. What is above 100 % wants a thicker wire, better insulation or a cooler way round.",
		Values: []weave.Value{
			weave.Show("part", units.RatioOf(load, c.Current), "%", 3),
			weave.Show("ampacity", c.Current, "A", 3),
			weave.Say("by", c.Governs),
		},
		Working: c.Working(),
	}, nil
}

var neutralExercise = weave.Exercise{
	Name: "neutral",
	Question: "A shore cord for 120/240 V has three conductors of {{size}} and a ground, behind a {{device}} breaker, and carries {{current}} in each leg. What may " +
		"it carry if the neutral has only the difference between the legs, and what if the neutral is loaded too?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "6 AWG", Choices: []string{"8 AWG", "6 AWG", "4 AWG"}},
		{Name: "device", Label: "breaker before the cord", Default: "50 A", Unit: "A", Low: "20 A", High: "60 A"},
		{Name: "current", Label: "current in each leg", Default: "45 A", Unit: "A", Low: "1 A", High: "60 A"},
	},
	Solve: solveNeutral,
}

func solveNeutral(in *weave.Inputs) (weave.Answer, error) {
	cord := wire.Cord{
		Size: weave.Parsed(in, "size", wire.ParseSize), Conductors: 2,
		Load: weave.In[units.Current](in, "current"), Device: units.Some(weave.In[units.Current](in, "device")),
	}
	two, err := wire.CordAmpacity(cord)
	if err != nil {
		return weave.Answer{}, err
	}
	cord.Conductors = 3
	three, err := wire.CordAmpacity(cord)
	return weave.Answer{
		Text: "{{two}} with two conductors that count, {{three}} with three. On one leg of 120 V alone the neutral carries as much as the leg, but then the " +
			"other leg carries nothing: two count.",
		Values: []weave.Value{
			weave.Show("two", two.Current, "A", 3),
			weave.Show("three", three.Current, "A", 3),
		},
		Working: two.Working(),
	}, err
}

var engineExercise = weave.Exercise{
	Name: "engine",
	Question: "A battery cable of {{size}} with {{insulation}} insulation crosses the engine space of a boat. What may it carry, and what does it lose by " +
		"the place?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "2/0 AWG", Choices: []string{"4 AWG", "2 AWG", "1/0 AWG", "2/0 AWG", "4/0 AWG"}},
		{Name: "insulation", Label: "insulation", Default: "75 °C", Choices: boatClasses},
	},
	Solve: solveEngine,
}

func solveEngine(in *weave.Inputs) (weave.Answer, error) {
	c, err := wire.Ampacity(wire.Installation{
		Rules: wire.Boat33CFR, Size: weave.Parsed(in, "size", wire.ParseSize),
		Insulation: weave.Parsed(in, "insulation", wire.ParseInsulation), EngineSpace: true,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}}; the place takes {{lost}} off the table's {{table}}.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Show("lost", c.Table-c.Current, "A", 3),
			weave.Show("table", c.Table, "A", 3),
		},
		Working: c.Working(),
	}, nil
}

var hottestExercise = weave.Exercise{
	Name: "warm",
	Question: "{{size}} with 90 °C insulation has to carry all that its terminals of {{terminals}} bear, three conductors together, by the NEC of 2017. How warm may the " +
		"air be?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "6 AWG", Choices: []string{"12 AWG", "10 AWG", "8 AWG", "6 AWG", "2 AWG", "1/0 AWG"}},
		{Name: "terminals", Label: "rating of the terminals", Default: "75 °C", Choices: terminalInput.Choices},
	},
	Solve: solveHottest,
}

func solveHottest(in *weave.Inputs) (weave.Answer, error) {
	c, err := wire.Ampacity(wire.Installation{
		Rules: wire.NEC2017, Size: weave.Parsed(in, "size", wire.ParseSize), Insulation: wire.Insulation90,
		Terminals: weave.Parsed(in, "terminals", wire.ParseInsulation), Conductors: 3,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{warmest}}, the end of the last band of the table in which the insulation bears {{terminals_bear}}.",
		Values: []weave.Value{
			weave.Show("warmest", warmestUnhurt(c), "°C", 3),
			weave.Show("terminals_bear", c.Terminals, "A", 3),
		},
		Working: c.Working(),
	}, nil
}
