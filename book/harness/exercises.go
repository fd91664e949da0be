package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var compressorExercise = weave.Exercise{
	Name: "compressor",
	Question: "A compressor that regulates its power takes {{power}} at the end of {{one_way}} of {{size}} on a bank of 12.4 V and 6 mΩ. What " +
		"voltage does it get, and what does the cable take for itself?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the compressor", Default: "120 W", Unit: "W", Low: "10 W", High: "400 W"},
		{Name: "one_way", Label: "length, one way", Default: "25 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "12 AWG", Choices: []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG"}},
	},
	Solve: solveCompressor,
}

func solveCompressor(in *weave.Inputs) (weave.Answer, error) {
	_, f, err := solve(wire.Network{
		Batteries: oneBank(12.4*units.Volt, 6*units.Milliohm),
		Branches: []wire.Branch{{
			Name:      "compressor",
			Conductor: wire.Conductor{Size: weave.Parsed(in, "size", wire.ParseSize)},
			OneWay:    weave.In[units.Length](in, "one_way"),
			Load:      wire.Load{Power: weave.In[units.Power](in, "power")},
		}},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	if c, ok := f.Collapse.Get(); ok {
		return collapsed(f, c), nil
	}
	p := f.Points[0]
	return weave.Answer{
		Text: "It gets {{volts}} and takes {{current}}; the cable loses {{drop}} and turns {{heat}} into heat.",
		Values: []weave.Value{
			weave.Show("volts", p.Voltage, "V", 4),
			weave.Show("current", p.Current, "A", 3),
			weave.Show("drop", p.Drop, "V", 3),
			weave.Show("heat", p.Heat, "W", 3),
		},
		Working: f.Working(0),
	}, nil
}

var mostExercise = weave.Exercise{
	Name: "most",
	Question: "An inverter takes {{power}} for a moment at the end of {{one_way}} of {{size}}, from a bank of {{voltage}} and {{bank}}. Can it be " +
		"fed, and what is the most that could be fed there?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the inverter", Default: "3500 W", Unit: "W", Low: "10 W", High: "8000 W"},
		{Name: "one_way", Label: "length, one way", Default: "12 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "4 AWG", Choices: []string{"8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG"}},
		voltageInput, bankInput,
	},
	Solve: solveMost,
}

func solveMost(in *weave.Inputs) (weave.Answer, error) {
	h, f, err := solve(wire.Network{
		Batteries: oneBank(weave.In[units.Voltage](in, "voltage"), weave.In[units.Resistance](in, "bank")),
		Branches: []wire.Branch{{
			Name:      "inverter",
			Conductor: wire.Conductor{Size: weave.Parsed(in, "size", wire.ParseSize)},
			OneWay:    weave.In[units.Length](in, "one_way"),
			Load:      wire.Load{Power: weave.In[units.Power](in, "power")},
		}},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	most, err := h.MostPower("inverter", wire.Moment{})
	half := f.OpenCircuit / 2
	answer := "Yes, by this arithmetic"
	if f.Collapse.IsSet() {
		answer = "No"
	}
	return weave.Answer{
		Text: "{{answer}}. The most is {{most}}, at {{half}} and {{current}}, with as much again as heat on the way. Whether the cable may carry " +
			"such a current is a question of ampacity, which mostly ends it long before.",
		Values: []weave.Value{
			weave.Say("answer", answer),
			weave.Show("most", most, "W", 4),
			weave.Show("half", half, "V", 3),
			weave.Show("current", most.At(half), "A", 3),
		},
		Working: f.Working(0),
	}, err
}

var longExercise = weave.Exercise{
	Name: "long_row",
	Question: "A row of {{batteries}} alike batteries of 3 mΩ has links of two leads of {{lead}}, both cables at the first. How much of the " +
		"current does the first give, and how much with plus at one end and minus at the other?",
	Inputs: []weave.Input{
		{Name: "batteries", Label: "batteries in the row", Default: "6", Low: "2", High: "12"},
		{Name: "lead", Label: leadInput.Label, Default: "0.3 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "5 mΩ"},
	},
	Solve: solveLong,
}

func solveLong(in *weave.Inputs) (weave.Answer, error) {
	n := row(weave.Count(in, "batteries"), wire.Battery{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm},
		weave.In[units.Resistance](in, "lead"))
	n.Branches = []wire.Branch{{Name: "load", Load: wire.Load{Current: 100 * units.Ampere}}}
	_, one, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	n.Plus, n.Minus = n.Batteries[0].Name, n.Batteries[len(n.Batteries)-1].Name
	_, ends, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{one}} of the whole, where an equal share is {{equal}}. From opposite ends it is {{ends}}.",
		Values: []weave.Value{
			weave.Show("one", one.Shares[0].Fraction, "%", 3),
			weave.Show("equal", units.Ratio(1/float64(len(n.Batteries))), "%", 3),
			weave.Show("ends", ends.Shares[0].Fraction, "%", 3),
		},
		Working: one.ShareWorking(1),
	}, nil
}

var lugExercise = weave.Exercise{
	Name: "lug",
	Question: "Two batteries alike, 3 mΩ each, links of two leads of 0.3 mΩ, plus taken off at the first and minus at the second. The lug of the " +
		"plus link is loose and has {{lug}}. What do the two give of {{current}}, and what heat is in that lug?",
	Inputs: []weave.Input{
		{Name: "lug", Label: "resistance of the loose lug", Default: "3 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "100 mΩ"},
		{Name: "current", Label: "current of the load", Default: "150 A", Unit: "A", Low: "1 A", High: "400 A"},
	},
	Solve: solveLug,
}

func solveLug(in *weave.Inputs) (weave.Answer, error) {
	lug := weave.In[units.Resistance](in, "lug")
	n := row(2, wire.Battery{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}, 0.3*units.Milliohm)
	n.Links[0].Plus.Extra += lug
	n.Plus, n.Minus = "1", "2"
	n.Branches = []wire.Branch{{Name: "load", Load: wire.Load{Current: weave.In[units.Current](in, "current")}}}
	_, f, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	// Plus is taken off at the first, so what the second gives comes
	// through the lug.
	second := f.Shares[1].Current
	return weave.Answer{
		Text: "The first gives {{first}} and the second {{second}}. The lug gets {{heat}} of heat, on the area of a bolt.",
		Values: []weave.Value{
			weave.Show("first", f.Shares[0].Current, "A", 3),
			weave.Show("second", second, "A", 3),
			weave.Show("heat", second.Heating(lug), "W", 3),
		},
		Working: f.ShareWorking(1),
	}, nil
}

var chargedExercise = weave.Exercise{
	Name:     "charged",
	Question: "Two lead batteries alike, 6 mΩ each, one at {{full}} and one at {{low}}, are joined by two leads of 1 mΩ each. What flows at first?",
	Inputs: []weave.Input{
		{Name: "full", Label: "voltage of the charged one", Default: "12.7 V", Unit: "V", Low: "12.3 V", High: "12.9 V"},
		{Name: "low", Label: "voltage of the other", Default: "12.1 V", Unit: "V", Low: "11.5 V", High: "12.3 V"},
	},
	Solve: solveCharged,
}

func solveCharged(in *weave.Inputs) (weave.Answer, error) {
	n := row(2, wire.Battery{Resistance: 6 * units.Milliohm}, 1*units.Milliohm)
	n.Batteries[0].Voltage = weave.In[units.Voltage](in, "full")
	n.Batteries[1].Voltage = weave.In[units.Voltage](in, "low")
	_, f, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text:    "{{idle}}, with no load, less as the two come together. Bring them to one voltage first.",
		Values:  []weave.Value{weave.Show("idle", f.Shares[0].Idle, "A", 3)},
		Working: f.ShareWorking(1),
	}, nil
}
