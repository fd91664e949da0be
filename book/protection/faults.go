package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var theLamp = weave.Worked{
	Name:  "lamp",
	Title: "A short at the far end of a thin wire",
	Question: "A lamp of {{current}} hangs on {{one_way}} of {{size}}, tapped straight onto the cable behind the {{fuse}} main fuse. The " +
		"bank has {{voltage}} and {{bank}}. The far end is crushed against the frame. What happens?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the lamp", Default: "2 A", Unit: "A", Low: "0.1 A", High: "100 A"},
		{Name: "size", Label: "conductor", Default: "16 AWG"},
		{Name: "one_way", Label: "length, one way", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "100 ft"},
		{Name: "fuse", Label: "the only fuse before it", Default: "300 A", Unit: "A", Low: "1 A", High: "500 A"},
		voltageInput, bankInput,
	},
	Solve:   solveLamp,
	Helpers: []string{"borne"},
}

func solveLamp(in *weave.Inputs) (weave.Answer, error) {
	fuse := weave.In[units.Current](in, "fuse")
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      wire.RVLowVoltage,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: wire.Insulation105,
		},
		Load:   weave.In[units.Current](in, "current"),
		Device: units.Some(fuse),
		Fault: units.Some(wire.FaultSource{
			Voltage:    weave.In[units.Voltage](in, "voltage"),
			Resistance: weave.In[units.Resistance](in, "bank"),
		}),
		OneWay: weave.In[units.Length](in, "one_way"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	short := p.AtEnd.Current
	metre := p.AtEnd.Conductor.At.Over(units.Metre)
	return weave.Answer{
		Text: "The wire's own resistance holds the short to " +
			"{{short}}, {{part}} of what the fuse carries for " +
			"ever. Each metre of each conductor gets {{heat}} " +
			"of heat, and thermoplastic insulation bears it for " +
			"{{borne}}. For the greatest device that this wire " +
			"may have, {{limit}}, the same short is {{times}} " +
			"times its rating.",
		Values: []weave.Value{
			weave.Show("short", short, "A", 3),
			weave.Show("part", units.RatioOf(short, fuse), "%", 2),
			weave.Show("heat", short.Heating(metre), "W", 3),
			weave.Say("borne", borne(p.Heated)),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("times",
				units.RatioOf(short, p.Limit), "1", 2),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}

var theUpgrade = weave.Worked{
	Name:  "upgrade",
	Title: "One more battery, and the fuse is no longer enough",
	Question: "Lithium batteries of {{voltage}} and {{each}} stand side by side, {{batteries}} of them, behind links of {{links}}. The main " +
		"fuse at the battery terminal is {{fuse}} and can break {{breaks}}. Can it break a short there?",
	Inputs: []weave.Input{
		{Name: "batteries", Label: "batteries side by side", Default: "2", Low: "1", High: "12"},
		{Name: "voltage", Label: "open-circuit voltage", Default: "13.3 V", Unit: "V", Low: "10 V", High: "60 V"},
		{Name: "each", Label: "resistance of one battery", Default: "4 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "100 mΩ"},
		{Name: "links", Label: "resistance of links and posts", Default: "0.8 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "20 mΩ"},
		{Name: "fuse", Label: "rating of the fuse", Default: "300 A", Unit: "A", Low: "5 A", High: "330 A"},
		{Name: "breaks", Label: "interrupting rating of the fuse", Default: "3 kA", Unit: "kA", Low: "0.1 kA", High: "200 kA"},
	},
	Solve:   solveUpgrade,
	Helpers: []string{"shortAtPosts"},
}

func solveUpgrade(in *weave.Inputs) (weave.Answer, error) {
	bank := wire.FaultBank{
		Voltage:    weave.In[units.Voltage](in, "voltage"),
		Resistance: weave.In[units.Resistance](in, "each"),
		Links:      weave.In[units.Resistance](in, "links"),
	}
	fuse := weave.In[units.Current](in, "fuse")
	breaks := weave.In[units.Current](in, "breaks")
	one, err := shortAtPosts(bank)
	if err != nil {
		return weave.Answer{}, err
	}
	bank.Parallel = weave.Count(in, "batteries")
	source, err := bank.Source()
	if err != nil {
		return weave.Answer{}, err
	}
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      wire.RVLowVoltage,
			Size:       wire.Aught(2),
			Insulation: wire.Insulation105,
		},
		Load:         1 * units.Ampere, // not what is asked here
		Device:       units.Some(fuse),
		Interrupting: units.Some(breaks),
		FromSource:   units.Some(0 * units.Inch),
		Fault:        units.Some(source),
		OneWay:       6 * units.Foot,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "One of these batteries alone gives {{before}} " +
			"into a short at its terminal. All of them give " +
			"{{after}}, which is {{part}} of what the fuse can " +
			"break.",
		Values: []weave.Value{
			weave.Show("before", one.Current, "A", 4),
			weave.Show("after", p.AtDevice.Current, "A", 4),
			weave.Show("part",
				units.RatioOf(p.AtDevice.Current, breaks), "%", 3),
		},
		Working:  p.AtDevice.Working(),
		Findings: append(p.Findings(), p.AtDevice.Findings()...),
	}, nil
}

var thePlace = weave.Worked{
	Name:  "place",
	Title: "The fuse at the wrong end",
	Question: "The installer put the {{fuse}} fuse into the inverter's compartment: {{size}} cable runs {{from}} from the battery to " +
		"the fuse and another {{on}} to the inverter. The bank has {{voltage}} and {{bank}}. What does a chafed cable halfway to the fuse draw, and what " +
		"does the rule set {{rules}} say about the place? (In a sheath: {{sheath}}. From the battery post: {{post}}.)",
	Inputs: []weave.Input{
		{Name: "fuse", Label: "rating of the fuse", Default: "300 A", Unit: "A", Low: "5 A", High: "500 A"},
		{Name: "size", Label: "conductor", Default: "2/0 AWG"},
		{Name: "from", Label: "cable from battery to fuse", Default: "72 in", Unit: "in", Low: "1 in", High: "240 in"},
		{Name: "on", Label: "cable from fuse to inverter", Default: "24 in", Unit: "in", Low: "1 in", High: "240 in"},
		rulesInput,
		{Name: "sheath", Label: "sheathed or enclosed up to the fuse", Default: "no", Choices: []string{"no", "yes"}},
		{Name: "post", Label: "begins on the battery post", Default: "yes", Choices: []string{"yes", "no"}},
		{Name: "voltage", Label: voltageInput.Label, Default: "13.2 V", Unit: "V", Low: "10 V", High: "48 V"},
		bankInput,
	},
	Solve: solvePlace,
}

func solvePlace(in *weave.Inputs) (weave.Answer, error) {
	rules := weave.Parsed(in, "rules", wire.ParseRuleSet)
	size := weave.Parsed(in, "size", wire.ParseSize)
	fuse := weave.In[units.Current](in, "fuse")
	from := weave.In[units.Length](in, "from")
	on := weave.In[units.Length](in, "on")
	bank := wire.FaultSource{
		Voltage:    weave.In[units.Voltage](in, "voltage"),
		Resistance: weave.In[units.Resistance](in, "bank"),
	}
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      rules,
			Size:       size,
			Insulation: wire.Insulation105,
		},
		Load:          1 * units.Ampere, // not what is asked here
		Device:        units.Some(fuse),
		FromSource:    units.Some(from),
		Enclosed:      weave.Text(in, "sheath") == "yes",
		OnBatteryPost: weave.Text(in, "post") == "yes",
		Fault:         units.Some(bank),
		OneWay:        from + on,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	ahead, err := wire.ShortCircuit(bank,
		wire.Conductor{Size: size}, from/2)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ahead}}, {{times}} times what the cable may " +
			"carry, and none of it through the fuse. The fuse " +
			"sees a short behind it, {{behind}} at the end of " +
			"the run, and protects that part alone.",
		Values: []weave.Value{
			weave.Show("ahead", ahead.Current, "A", 3),
			weave.Show("times", units.RatioOf(ahead.Current,
				p.Capacity.Current), "1", 2),
			weave.Show("behind", p.AtEnd.Current, "A", 3),
		},
		Working:  ahead.Working(),
		Findings: append(p.Findings(), ahead.Findings()...),
	}, nil
}
