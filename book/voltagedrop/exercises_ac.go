package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var tinnedExercise = weave.Exercise{
	Name: "tinned",
	Question: "By NEC table 8, how many ohms has {{length}} of one conductor of {{size}}, stranded, plain and tinned, at {{metal}}? " +
		"And plain from copper and geometry?",
	Inputs: []weave.Input{
		{Name: "length", Label: "length of conductor", Default: "100 ft", Unit: "ft", Low: "1 ft", High: "1000 ft"},
		{Name: "size", Label: "conductor", Default: "12 AWG", Choices: []string{"18 AWG", "14 AWG", "12 AWG", "10 AWG", "6 AWG", "2 AWG", "1/0 AWG"}},
		{Name: "metal", Label: "temperature of the metal", Default: "50 °C", Unit: "°C", Low: "-40 °C", High: "105 °C"},
	},
	Solve: solveTinned,
}

func solveTinned(in *weave.Inputs) (weave.Answer, error) {
	length := weave.In[units.Length](in, "length")
	c := wire.Conductor{
		Size:        weave.Parsed(in, "size", wire.ParseSize),
		Temperature: weave.Temperature(in, "metal"),
	}
	copper, err := wire.Resistance(c)
	if err != nil {
		return weave.Answer{}, err
	}
	c.Basis = units.Some(wire.FromNECTable8)
	plain, err := wire.Resistance(c)
	if err != nil {
		return weave.Answer{}, err
	}
	c.Coated = true
	tinned, err := wire.Resistance(c)
	return weave.Answer{
		Text: "{{plain}} plain and {{tinned}} tinned; {{copper}} from copper and geometry.",
		Values: []weave.Value{
			weave.Show("plain", plain.At.Over(length), "Ω", 3),
			weave.Show("tinned", tinned.At.Over(length), "Ω", 3),
			weave.Show("copper", copper.At.Over(length), "Ω", 3),
		},
		Working: tinned.Working(),
	}, err
}

var chassisExercise = weave.Exercise{
	Name: "frame",
	Question: "A pump of {{current}} at 12.8 V may lose 3 %. Its wire is 10 AWG at 75 °C, and it returns through a chassis of {{chassis}}. How long may " +
		"the wire be? And with a wire back?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the pump", Default: "8 A", Unit: "A", Low: "1 A", High: "20 A"},
		{Name: "chassis", Label: "resistance of the return", Default: "12 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "18 mΩ"},
	},
	Solve: solveFrame,
}

func solveFrame(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		Current:   weave.In[units.Current](in, "current"),
		Conductor: wire.Conductor{Size: wire.AWG(10)},
		Source:    12.8 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	}
	wires, err := wire.LongestRun(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.Chassis = units.Some(weave.In[units.Resistance](in, "chassis"))
	frame, err := wire.LongestRun(run)
	return weave.Answer{
		Text: "{{frame}} through the chassis, {{wires}} with a wire back.",
		Values: []weave.Value{
			weave.Show("frame", frame.OneWay, "ft", 3),
			weave.Show("wires", wires.OneWay, "ft", 3),
		},
		Working: frame.Working(),
	}, err
}

var chargeExercise = weave.Exercise{
	Name: "charges",
	Question: "Through 12 ft one way of 6 AWG at 75 °C, {{charge}} go into a battery at {{slow}}, or at {{fast}}. The charger holds 14.4 V. What do " +
		"the conductors take, and how does that go with the ratio of the currents?",
	Inputs: []weave.Input{
		{Name: "charge", Label: "charge", Default: "120 Ah", Unit: "Ah", Low: "10 Ah", High: "600 Ah"},
		{Name: "slow", Label: "slow current", Default: "20 A", Unit: "A", Low: "2 A", High: "60 A"},
		{Name: "fast", Label: "fast current", Default: "60 A", Unit: "A", Low: "10 A", High: "100 A"},
	},
	Solve: solveCharges,
}

func solveCharges(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{OneWay: 12 * units.Foot, Source: 14.4 * units.Volt, Conductor: wire.Conductor{Size: wire.AWG(6)}}
	charge := weave.In[units.Charge](in, "charge")
	slow, fast := weave.In[units.Current](in, "slow"), weave.In[units.Current](in, "fast")
	slowly, err := steadily(run, slow, charge)
	if err != nil {
		return weave.Answer{}, err
	}
	quickly, err := steadily(run, fast, charge)
	return weave.Answer{
		Text: "{{slowly}} and {{quickly}}: {{times}} times, as the currents are. The charge is current times time, the heat has the current once more.",
		Values: []weave.Value{
			weave.Show("slowly", slowly.Lost, "Wh", 3),
			weave.Show("quickly", quickly.Lost, "Wh", 3),
			weave.Show("times", units.RatioOf(quickly.Lost, slowly.Lost), "1", 3),
		},
		Working: quickly.Working(),
	}, err
}

var warmExercise = weave.Exercise{
	Name: "warmed",
	Question: "A cable of 4 AWG with 105 °C insulation lies alone in air of {{air}} and carries {{current}} for hours. How warm does it become, by steps " +
		"and by the rule of thumb?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current", Default: "120 A", Unit: "A", Low: "1 A", High: "160 A"},
		{Name: "air", Label: "air round the cable", Default: "30 °C", Unit: "°C", Low: "-20 °C", High: "60 °C"},
	},
	Solve: solveWarmed,
}

func solveWarmed(in *weave.Inputs) (weave.Answer, error) {
	cable, err := inverterCable(wire.AWG(4))
	if err != nil {
		return weave.Answer{}, err
	}
	cable.Run.Current = weave.In[units.Current](in, "current")
	cable.Run.OneWay, cable.Run.Source = 5*units.Foot, 12.8*units.Volt
	cable.Ambient = weave.Temperature(in, "air")
	warm, err := wire.WarmDrop(cable)
	return weave.Answer{
		Text: "{{end}} by steps, {{square}} by the rule of thumb; its ampacity in free air is {{ampacity}}.",
		Values: []weave.Value{
			weave.Show("end", warm.Temperature, "°C", 4),
			weave.Show("square", warm.BySquare, "°C", 4),
			weave.Show("ampacity", warm.Run.Ampacity, "A", 3),
		},
		Working: warm.Working(),
	}, err
}

var motorExercise = weave.Exercise{
	Name: "compressor",
	Question: "An air conditioner takes {{current}} at 120 V and a power factor of {{pf}}, lagging, over 150 ft of 10 AWG at 75 °C. What are the drop and " +
		"the mistake of leaving out the power factor?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current", Default: "14 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "pf", Label: "power factor", Default: "80 %", Unit: "%", Low: "20 %", High: "100 %"},
	},
	Solve: solveCompressor,
}

func solveCompressor(in *weave.Inputs) (weave.Answer, error) {
	run := wire.ACRun{
		Current: weave.In[units.Current](in, "current"), OneWay: 150 * units.Foot, Source: 120 * units.Volt,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(10)}},
	}
	without, err := wire.ACDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.PowerFactor = units.Some(weave.In[units.Ratio](in, "pf"))
	drop, err := wire.ACDrop(run)
	return weave.Answer{
		Text: "{{drop}}, or {{percent}}. Without the power factor it would seem to be {{without}}.",
		Values: []weave.Value{
			weave.Show("drop", drop.Exact, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
			weave.Show("without", without.Exact, "V", 3),
		},
		Working: drop.Working(),
	}, err
}

var adapterExercise = weave.Exercise{
	Name: "adapter",
	Question: "A coach with {{first}} on leg A and {{second}} on leg B moves from a 120/240 V pedestal to an adapter on one hot, 50 ft of 10 AWG " +
		"either way. What is in hot and neutral before and after, and what heat in the cord?",
	Inputs: []weave.Input{
		{Name: "first", Label: "current of leg A", Default: "14 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "second", Label: "current of leg B", Default: "10 A", Unit: "A", Low: "0 A", High: "30 A"},
	},
	Solve: solveAdapter,
}

func solveAdapter(in *weave.Inputs) (weave.Answer, error) {
	run := wire.LegRun{
		Currents: units.Legs[units.Current]{A: weave.In[units.Current](in, "first"), B: weave.In[units.Current](in, "second")},
		OneWay:   50 * units.Foot, Source: 120 * units.Volt,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(10)}},
	}
	before, err := wire.LegDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.Supply = wire.OneHot
	afterwards, err := wire.LegDrop(run)
	return weave.Answer{
		Text: "Before: {{hot}} in the busier hot, {{neutral}} in the neutral, {{heat}}. After: {{hot_after}} in both, {{heat_after}}.",
		Values: []weave.Value{
			weave.Show("hot", before.InLine, "A", 3),
			weave.Show("neutral", before.InNeutral, "A", 3),
			weave.Show("heat", before.Heat, "W", 3),
			weave.Show("hot_after", afterwards.InLine, "A", 3),
			weave.Show("heat_after", afterwards.Heat, "W", 3),
		},
		Working: afterwards.Working(),
	}, err
}

var brightExercise = weave.Exercise{
	Name: "bright",
	Question: "Lamps of {{lamps}} on one 120 V leg, a water heater of {{heater}} on the other, and the neutral opens. What do the lamps get, and how many " +
		"times the power they are made for?",
	Inputs: []weave.Input{
		{Name: "lamps", Label: "lamps", Default: "60 W", Unit: "W", Low: "1 W", High: "1000 W"},
		{Name: "heater", Label: "water heater", Default: "1440 W", Unit: "W", Low: "100 W", High: "3000 W"},
	},
	Solve: solveBright,
}

func solveBright(in *weave.Inputs) (weave.Answer, error) {
	open, err := wire.OpenNeutral(wire.SplitLoad{
		Powers:  units.Legs[units.Power]{A: weave.In[units.Power](in, "lamps"), B: weave.In[units.Power](in, "heater")},
		Nominal: 120 * units.Volt,
	})
	return weave.Answer{
		Text: "{{volts}}, and {{times}} times the power, for a moment.",
		Values: []weave.Value{
			weave.Show("volts", open.AtLoad.A, "V", 3),
			weave.Show("times", units.RatioOf(open.Powers.A, open.Load.Powers.A), "1", 3),
		},
		Working: open.Working(),
	}, err
}
