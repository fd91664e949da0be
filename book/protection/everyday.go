package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// Inputs that several examples share.
var (
	rulesInput = weave.Input{Name: "rules", Label: "rule set", Default: "RV low voltage",
		Choices: []string{"RV low voltage", "NEC 2017", "33 CFR 183"}}
	classInput = weave.Input{Name: "insulation", Label: "insulation", Default: "105 °C",
		Choices: []string{"60 °C", "75 °C", "90 °C", "105 °C"}}
	voltageInput = weave.Input{Name: "voltage", Label: "open-circuit voltage of the bank", Default: "13.2 V",
		Unit: "V", Low: "10 V", High: "60 V"}
	bankInput = weave.Input{Name: "bank", Label: "resistance of the bank, links included", Default: "3 mΩ",
		Unit: "mΩ", Low: "0.1 mΩ", High: "100 mΩ"}
)

// parseRules returns the rule set that is called name.
func parseRules(name string) (wire.RuleSet, error) {
	for _, r := range []wire.RuleSet{
		wire.RVLowVoltage, wire.NEC2017, wire.Boat33CFR,
	} {
		if r.String() == name {
			return r, nil
		}
	}
	return 0, &units.ParseError{
		Input: name, Want: "rule set", Reason: "unknown",
	}
}

// parseClass returns the class of insulation rated so many °C.
func parseClass(rated string) (wire.Insulation, error) {
	t, err := units.ParseTemperature(rated)
	if err != nil {
		return 0, err
	}
	class, ok := wire.InsulationOf(t)
	if !ok {
		return 0, &units.ParseError{
			Input: rated, Want: "insulation", Reason: "no class",
		}
	}
	return class, nil
}

var theBranch = weave.Worked{
	Name:  "branch",
	Title: "A 12 V branch and its fuse",
	Question: "A water pump takes {{current}} through {{size}} wire with {{insulation}} insulation, in the wall of a recreational " +
		"vehicle. Which fuse does it need, which is the greatest the wire may have, and is {{fuse}} right?",
	Inputs: []weave.Input{
		{Name: "current", Label: "greatest current of the load", Default: "8 A", Unit: "A", Low: "0.5 A", High: "200 A"},
		{Name: "size", Label: "conductor", Default: "12 AWG"},
		classInput,
		{Name: "fuse", Label: "rating of the fuse", Default: "15 A", Unit: "A", Low: "1 A", High: "500 A"},
		rulesInput,
	},
	Solve:   solveBranch,
	Helpers: []string{"parseRules", "parseClass"},
}

func solveBranch(in *weave.Inputs) (weave.Answer, error) {
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      weave.Parsed(in, "rules", parseRules),
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: weave.Parsed(in, "insulation", parseClass),
		},
		Load:   weave.In[units.Current](in, "current"),
		Device: units.Some(weave.In[units.Current](in, "fuse")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The smallest rating that carries {{needed}} is " +
			"{{smallest}}. By the rule set {{by}} the wire may " +
			"have a device of {{limit}} at most. If anything " +
			"speaks against the fuse asked about, it follows.",
		Values: []weave.Value{
			weave.Show("needed", p.Needed, "A", 3),
			weave.Show("smallest", p.Smallest, "A", 3),
			weave.Say("by", p.Circuit.Installation.Rules),
			weave.Show("limit", p.Limit, "A", 3),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}

var theInverter = weave.Worked{
	Name:  "inverter",
	Title: "The inverter cable",
	Question: "An inverter gives {{power}} and turns {{efficiency}} of what it takes into that. It works down to {{lowest}}. " +
		"Does {{size}} single cable with {{insulation}} insulation do, and a {{fuse}} fuse?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power that the inverter gives", Default: "2000 W", Unit: "W", Low: "100 W", High: "3000 W"},
		{Name: "efficiency", Label: "efficiency", Default: "88 %", Unit: "%", Low: "70 %", High: "100 %"},
		{Name: "lowest", Label: "lowest voltage it works at", Default: "10.5 V", Unit: "V", Low: "10 V", High: "60 V"},
		{Name: "size", Label: "conductor", Default: "2/0 AWG"},
		classInput,
		{Name: "fuse", Label: "rating of the fuse", Default: "300 A", Unit: "A", Low: "5 A", High: "500 A"},
	},
	Solve:   solveInverter,
	Helpers: []string{"inverterCurrent"},
}

func solveInverter(in *weave.Inputs) (weave.Answer, error) {
	current := inverterCurrent(
		weave.In[units.Power](in, "power"),
		weave.In[units.Ratio](in, "efficiency"),
		weave.In[units.Voltage](in, "lowest"),
	)
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      wire.RVLowVoltage,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: weave.Parsed(in, "insulation", parseClass),
		},
		Load:       current,
		Continuous: true,
		Device:     units.Some(weave.In[units.Current](in, "fuse")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "It takes {{current}} from a tired battery. For " +
			"hours of that the fuse must carry {{needed}}, and " +
			"the next rating up is {{smallest}}. The cable may " +
			"have {{limit}}; it is held against the fuse, not " +
			"against the load.",
		Values: []weave.Value{
			weave.Show("current", current, "A", 4),
			weave.Show("needed", p.Needed, "A", 4),
			weave.Show("smallest", p.Smallest, "A", 3),
			weave.Show("limit", p.Limit, "A", 3),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}

// inverterCurrent returns what the battery gives: the power over
// the efficiency and the voltage.
func inverterCurrent(
	power units.Power, efficiency units.Ratio, v units.Voltage,
) units.Current {
	return power.At(units.Scale(v, efficiency))
}

var theRoof = weave.Worked{
	Name:  "roof",
	Title: "Wires under a roof in summer, by the NEC",
	Question: "Wires of {{size}} with {{insulation}} insulation run under a roof where the air reaches {{ambient}}. " +
		"{{wires}} of them, all carrying current, lie in one raceway; the terminals are rated {{terminals}}. What may each carry?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "10 AWG"},
		{Name: "insulation", Label: "insulation", Default: "90 °C", Choices: classInput.Choices},
		{Name: "terminals", Label: "rating of the terminals", Default: "60 °C", Choices: classInput.Choices},
		{Name: "ambient", Label: "air round the wires", Default: "60 °C", Unit: "°C", Low: "-40 °C", High: "85 °C"},
		{Name: "wires", Label: "conductors that carry current together", Default: "4", Low: "1", High: "60"},
	},
	Solve: solveRoof,
}

func solveRoof(in *weave.Inputs) (weave.Answer, error) {
	c, err := wire.Ampacity(wire.Installation{
		Rules:      wire.NEC2017,
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: weave.Parsed(in, "insulation", parseClass),
		Terminals:  weave.Parsed(in, "terminals", parseClass),
		Ambient:    weave.Temperature(in, "ambient"),
		Conductors: weave.Count(in, "wires"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}}, limited by the {{by}}. The table " +
			"has {{table}}; the air makes it {{air}} of that, " +
			"and the company of the others {{bundle}} of what " +
			"is left.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Say("by", c.Governs),
			weave.Show("table", c.Table, "A", 3),
			weave.Show("air", c.Ambient, "1", 2),
			weave.Show("bundle", c.Bundle, "1", 2),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}
