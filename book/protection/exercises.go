package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var lampsExercise = weave.Exercise{
	Name: "lamps",
	Question: "Reading lamps take {{current}} together through {{size}} with 105 °C insulation, in the RV rule set. Which is the smallest " +
		"fuse that carries them, and which the greatest that the wire may have?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the lamps", Default: "4.8 A", Unit: "A", Low: "0.1 A", High: "15 A"},
		{Name: "size", Label: "conductor", Default: "14 AWG", Choices: []string{"14 AWG", "12 AWG", "10 AWG"}},
	},
	Solve: solveLamps,
}

func solveLamps(in *weave.Inputs) (weave.Answer, error) {
	current := weave.In[units.Current](in, "current")
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: weave.Parsed(in, "size", wire.ParseSize), Insulation: wire.Insulation105},
		Load:         current,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{smallest}} and {{limit}}. Between the two any rating does; the smaller opens sooner.",
		Values: []weave.Value{
			weave.Show("smallest", p.Smallest, "A", 3),
			weave.Show("limit", p.Limit, "A", 3),
		},
		Working: p.Working(),
	}, nil
}

var afternoonExercise = weave.Exercise{
	Name: "afternoon",
	Question: "An air conditioner of {{cooler}} and a water heater of {{heater}} run together all afternoon on a {{device}} device and " +
		"10 AWG with 75 °C insulation and terminals. By the NEC, what must the device carry, and how much could it carry for hours?",
	Inputs: []weave.Input{
		{Name: "cooler", Label: "current of the air conditioner", Default: "13.0 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "heater", Label: "current of the water heater", Default: "12.0 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "device", Label: "rating of the device", Default: "30 A", Unit: "A", Low: "10 A", High: "100 A"},
	},
	Solve: solveAfternoon,
}

func solveAfternoon(in *weave.Inputs) (weave.Answer, error) {
	load := weave.In[units.Current](in, "cooler") + weave.In[units.Current](in, "heater")
	device := weave.In[units.Current](in, "device")
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation75, Terminals: wire.Insulation75},
		Load:         load,
		Continuous:   true,
		Device:       units.Some(device),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{needed}} for a load of {{load}}, so the next rating is {{next}}, and the wire may have {{limit}}. The device stated carries " +
			"{{most}} for hours; what is above that has to wait.",
		Values: []weave.Value{
			weave.Show("needed", p.Needed, "A", 4),
			weave.Show("load", load, "A", 3),
			weave.Show("next", p.Smallest, "A", 3),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("most", units.Scale(device, units.RatioOf(load, p.Needed)), "A", 3),
		},
		Working: p.Working(),
	}, nil
}

var seriesExercise = weave.Exercise{
	Name: "series",
	Question: "Two batteries of {{voltage}} and {{each}}, links {{links}}. Compare the short at their terminals side by side and one after " +
		"the other. Which needs the fuse that breaks more current, and which the fuse that breaks more voltage?",
	Inputs: []weave.Input{
		{Name: "voltage", Label: "open-circuit voltage of one battery", Default: "13.3 V", Unit: "V", Low: "10 V", High: "30 V"},
		{Name: "each", Label: "resistance of one battery", Default: "4 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "100 mΩ"},
		{Name: "links", Label: "resistance of links and posts", Default: "0.8 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "20 mΩ"},
	},
	Solve: solveSeries,
}

func solveSeries(in *weave.Inputs) (weave.Answer, error) {
	one := weave.In[units.Voltage](in, "voltage")
	each := weave.In[units.Resistance](in, "each")
	links := weave.In[units.Resistance](in, "links")
	two := wire.FaultBank{Voltage: one, Resistance: each, Links: links, Parallel: 2}
	beside, err := shortAtPosts(two)
	if err != nil {
		return weave.Answer{}, err
	}
	two.Parallel, two.Series = 1, 2
	behind, err := shortAtPosts(two)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Side by side {{beside}} at {{low}}, one after the other {{behind}} at {{high}}. The first is the harder short in current, " +
			"the second in voltage, and a fuse has a rating for each.",
		Values: []weave.Value{
			weave.Show("beside", beside.Current, "A", 4),
			weave.Show("low", beside.Source.Voltage, "V", 3),
			weave.Show("behind", behind.Current, "A", 4),
			weave.Show("high", behind.Source.Voltage, "V", 3),
		},
		Working: behind.Working(),
	}, nil
}

// shortAtPosts is the short at the terminals of a bank.
func shortAtPosts(bank wire.FaultBank) (wire.Fault, error) {
	source, err := bank.Source()
	if err != nil {
		return wire.Fault{}, err
	}
	return wire.ShortCircuit(source, wire.Conductor{}, 0)
}

var reachExercise = weave.Exercise{
	Name: "reach",
	Question: "A bank of {{voltage}} and {{bank}} feeds {{size}} copper, taken at 75 °C. How far away may a short be and still draw {{times}} " +
		"times the rating of its {{fuse}} fuse?",
	Inputs: []weave.Input{
		voltageInput, bankInput,
		{Name: "size", Label: "conductor", Default: "16 AWG"},
		{Name: "fuse", Label: "rating of the fuse", Default: "7.5 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "times", Label: "multiple of the rating", Default: "10", Low: "1", High: "20"},
	},
	Solve: solveFuseReach,
}

func solveFuseReach(in *weave.Inputs) (weave.Answer, error) {
	bank := wire.FaultSource{
		Voltage:    weave.In[units.Voltage](in, "voltage"),
		Resistance: weave.In[units.Resistance](in, "bank"),
	}
	c := wire.Conductor{Size: weave.Parsed(in, "size", wire.ParseSize)}
	fuse := weave.In[units.Current](in, "fuse")
	short := units.Scale(fuse, units.Ratio(weave.Count(in, "times")))
	r, err := wire.Resistance(c)
	if err != nil {
		return weave.Answer{}, err
	}
	// What is left for the loop, in lengths of a foot there and back.
	loop := bank.Voltage.Per(short) - bank.Resistance
	feet := units.RatioOf(loop, r.At.Over(2*units.Foot))
	reach := units.Scale(units.Foot, feet)
	f, err := wire.ShortCircuit(bank, c, reach)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{reach}} one way, where the short draws {{short}}.",
		Values: []weave.Value{
			weave.Show("reach", reach, "ft", 3),
			weave.Show("short", f.Current, "A", 3),
		},
		Working: f.Working(),
	}, nil
}

var relayExercise = weave.Exercise{
	Name: "relay",
	Question: "Behind an inverter a panel is fed through its transfer relay of {{relay}}, from a {{breaker}} breaker and by wire that may carry {{wire}}. The loads come " +
		"to {{load}}. Which part limits the path, and which device may it have?",
	Inputs: []weave.Input{
		{Name: "relay", Label: "rating of the relay", Default: "15 A", Unit: "A", Low: "5 A", High: "100 A"},
		{Name: "breaker", Label: "rating of the breaker", Default: "20 A", Unit: "A", Low: "15 A", High: "100 A"},
		{Name: "wire", Label: "ampacity of the wire", Default: "20 A", Unit: "A", Low: "5 A", High: "100 A"},
		{Name: "load", Label: "greatest load", Default: "14 A", Unit: "A", Low: "1 A", High: "100 A"},
	},
	Solve: solveRelay,
}

func solveRelay(in *weave.Inputs) (weave.Answer, error) {
	breaker := weave.In[units.Current](in, "breaker")
	p, err := wire.WeakestPart(weave.In[units.Current](in, "load"), units.Some(breaker), []wire.Part{
		{Name: "transfer relay", Rating: weave.In[units.Current](in, "relay")},
		{Name: "wire", Rating: weave.In[units.Current](in, "wire")},
	})
	return weave.Answer{
		Text: "The {{weak}}: no device above {{limit}}, whatever the rest bears. The breaker stated is {{part}} of that.",
		Values: []weave.Value{
			weave.Say("weak", p.Weak.Name),
			weave.Show("limit", p.Weak.Rating, "A", 3),
			weave.Show("part", units.RatioOf(breaker, p.Weak.Rating), "%", 3),
		},
		Working: p.Working(),
	}, err
}

var clearExercise = weave.Exercise{
	Name:     "clear",
	Question: "A short of {{current}} flows in {{size}} copper ({{core}}). In what time must the device have opened?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the short", Default: "1.2 kA", Unit: "A", Low: "50 A", High: "20 kA"},
		{Name: "size", Label: "conductor", Default: "10 AWG"},
		{Name: "core", Label: "insulation", Default: "XLPE 90 °C core", Choices: cores},
	},
	Solve: solveClear,
}

func solveClear(in *weave.Inputs) (weave.Answer, error) {
	w, err := wire.Adiabatic(wire.ShortTime{
		Size: weave.Parsed(in, "size", wire.ParseSize), Core: weave.Parsed(in, "core", parseCore), Current: weave.In[units.Current](in, "current"),
	})
	return weave.Answer{
		Text: "Within {{longest}}; the conductor bears {{bears}}.",
		Values: []weave.Value{
			weave.Say("longest", borne(w)),
			weave.Show("bears", w.Bears, "A²s", 3),
		},
		Working: w.Working(),
	}, err
}
