package ampacity

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var theTerminals = weave.Worked{
	Name:  "terminals",
	Title: "A 90 °C wire on terminals that are not",
	Question: "{{size}} copper with {{insulation}} insulation ends in a panel whose terminals are marked {{terminals}}; three conductors, " +
		"air at {{ambient}}. What may it carry, and is its better insulation wasted?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "4 AWG"},
		classInput, terminalInput,
		{Name: "ambient", Label: "air round the wires", Default: "40 °C", Unit: "°C", Low: "-20 °C", High: "55 °C"},
	},
	Solve:   solveTerminals,
	Helpers: []string{"warmestUnhurt"},
}

func solveTerminals(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	ends := weave.Parsed(in, "terminals", wire.ParseInsulation)
	c, err := wire.Ampacity(wire.Installation{
		Rules:      wire.NEC2017,
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: class,
		Terminals:  ends,
		Ambient:    weave.Temperature(in, "ambient"),
		Conductors: 3,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}}, limited by the {{by}}. The " +
			"insulation has {{table}} in its column and bears " +
			"{{corrected}} in this air, the terminals " +
			"{{terminals_bear}}. Not wasted: the room between " +
			"is for warm air and company. Up to {{warmest}} " +
			"this wire carries all that its terminals bear.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Say("by", c.Governs),
			weave.Show("table", c.Table, "A", 3),
			weave.Show("corrected", c.Corrected, "A", 4),
			weave.Show("terminals_bear", c.Terminals, "A", 3),
			weave.Show("warmest", warmestUnhurt(c), "°C", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}

// warmestUnhurt returns the top of the last band of the table, from
// 10 °C on, in which the insulation bears what the terminals do.
func warmestUnhurt(c wire.CarryingCapacity) units.Temperature {
	x, warmest := c.Installation, units.Celsius(10)
	for top := 10.0; top <= 85; top += 5 {
		x.Ambient = units.Celsius(top)
		hot, err := wire.Ampacity(x)
		if err != nil || units.Exceeds(c.Terminals, hot.Corrected) {
			break // no factor is left, or too small a one
		}
		warmest = x.Ambient
	}
	return warmest
}

var theEdition = weave.Worked{
	Name:  "edition",
	Title: "One wire, three editions",
	Question: "{{size}} copper with {{insulation}} insulation, in air of {{ambient}}, terminals that bear as much as the insulation. What did " +
		"the code of 2008 let it carry, and what do those of 2017 and 2023?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "12 AWG", Choices: []string{"14 AWG", "12 AWG", "10 AWG", "3 AWG", "1 AWG"}},
		{Name: "insulation", Label: "insulation and terminals", Default: "60 °C", Choices: terminalInput.Choices},
		{Name: "ambient", Label: "air round the wires", Default: "30 °C", Unit: "°C", Low: "21 °C", High: "55 °C"},
	},
	Solve: solveEdition,
}

func solveEdition(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	x := wire.Installation{
		Rules:      wire.NEC2008,
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: class,
		Terminals:  class,
		Ambient:    weave.Temperature(in, "ambient"),
	}
	old, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	x.Rules = wire.NEC2017
	later, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	x.Rules = wire.NEC2023
	now, err := wire.Ampacity(x)
	return weave.Answer{
		Text: "{{old}} in 2008, {{later}} in 2017 and {{now}} " +
			"in 2023. The copper is the same. An old " +
			"installation is judged by the edition it was " +
			"built by, a new one by the edition in force.",
		Values: []weave.Value{
			weave.Show("old", old.Current, "A", 4),
			weave.Show("later", later.Current, "A", 4),
			weave.Show("now", now.Current, "A", 4),
		},
		Working:  old.Working(),
		Findings: append(old.Findings(), now.Findings()...),
	}, err
}

var theCupboard = weave.Worked{
	Name:  "cupboard",
	Title: "The table for 12 V in a vehicle, beside the furnace",
	Question: "Behind the furnace of a motorhome {{wires}} wires of {{size}} with {{insulation}} insulation are strapped together, in air " +
		"of {{ambient}}. The table for 12 V wiring knows neither heat nor company. What may each carry?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "12 AWG", Choices: []string{"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG"}},
		{Name: "insulation", Label: "insulation", Default: "105 °C", Choices: []string{"75 °C", "90 °C", "105 °C"}},
		{Name: "wires", Label: "conductors that carry current together", Default: "6", Low: "1", High: "60"},
		{Name: "ambient", Label: "air round the wires", Default: "55 °C", Unit: "°C", Low: "-20 °C", High: "70 °C"},
	},
	Solve: solveCupboard,
}

func solveCupboard(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	x := wire.Installation{
		Rules:      wire.RVLowVoltage,
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: class,
	}
	cool, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	// The code has factors. Take the lesser of the two.
	x.Rules = wire.NEC2017
	x.Ambient = weave.Temperature(in, "ambient")
	x.Conductors = weave.Count(in, "wires")
	hot, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The rule for vehicles gives {{rv}} and asks no " +
			"further. By the NEC, which starts here from " +
			"{{table}}, heat and company leave {{hot}}, " +
			"limited by the {{by}}. Keep to the lesser, " +
			"{{lesser}}.",
		Values: []weave.Value{
			weave.Show("rv", cool.Current, "A", 3),
			weave.Show("table", hot.Table, "A", 3),
			weave.Show("hot", hot.Current, "A", 4),
			weave.Say("by", hot.Governs),
			weave.Show("lesser", min(cool.Current, hot.Current),
				"A", 4),
		},
		Working:  hot.Working(),
		Findings: append(cool.Findings(), hot.Findings()...),
	}, nil
}
