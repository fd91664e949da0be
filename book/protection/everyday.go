package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// Inputs that several examples share.
var (
	rulesInput = weave.Input{Name: "rules", Label: "rule set", Default: "RV low voltage",
		Choices: []string{"RV low voltage", "NEC 2008", "NEC 2017", "NEC 2023", "33 CFR 183"}}
	classInput = weave.Input{Name: "insulation", Label: "insulation", Default: "105 °C",
		Choices: []string{"60 °C", "75 °C", "90 °C", "105 °C"}}
	voltageInput = weave.Input{Name: "voltage", Label: "open-circuit voltage of the bank", Default: "13.2 V",
		Unit: "V", Low: "10 V", High: "60 V"}
	bankInput = weave.Input{Name: "bank", Label: "resistance of the bank, links included", Default: "3 mΩ",
		Unit: "mΩ", Low: "0.1 mΩ", High: "100 mΩ"}
)

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
	Solve: solveBranch,
}

func solveBranch(in *weave.Inputs) (weave.Answer, error) {
	rules := weave.Parsed(in, "rules", wire.ParseRuleSet)
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      rules,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: class,
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
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	current := inverterCurrent(
		weave.In[units.Power](in, "power"),
		weave.In[units.Ratio](in, "efficiency"),
		weave.In[units.Voltage](in, "lowest"),
	)
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      wire.RVLowVoltage,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: class,
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
