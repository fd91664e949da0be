package ampacity

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// Inputs that several examples share.
var (
	// codeInput is an edition of the code, which has factors for warm air.
	codeInput = weave.Input{Name: "rules", Label: "edition of the code", Default: "NEC 2017",
		Choices: []string{"NEC 2008", "NEC 2017", "NEC 2023"}}
	classInput = weave.Input{Name: "insulation", Label: "insulation", Default: "90 °C",
		Choices: []string{"60 °C", "75 °C", "90 °C", "105 °C"}}
	terminalInput = weave.Input{Name: "terminals", Label: "rating of the terminals", Default: "60 °C",
		Choices: []string{"60 °C", "75 °C", "90 °C"}}
	wiresInput = weave.Input{Name: "wires", Label: "conductors that carry current together", Default: "4", Low: "1", High: "60"}
	airInput   = weave.Input{Name: "ambient", Label: "air round the wires", Default: "60 °C", Unit: "°C", Low: "21 °C", High: "80 °C"}
)

var theWall = weave.Worked{
	Name:  "wall",
	Title: "Two wires in a wall",
	Question: "Two {{size}} copper conductors with {{insulation}} insulation go through a wall to a row of receptacles, " +
		"air at {{ambient}}, terminals rated {{terminals}}. By the {{rules}}, what may they carry?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "12 AWG"},
		classInput, terminalInput,
		{Name: "ambient", Label: "air round the wires", Default: "30 °C", Unit: "°C", Low: "21 °C", High: "80 °C"},
		codeInput,
	},
	Solve: solveWall,
}

func solveWall(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	ends := weave.Parsed(in, "terminals", wire.ParseInsulation)
	c, err := wire.Ampacity(wire.Installation{
		Rules:      weave.Parsed(in, "rules", wire.ParseRuleSet),
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: class,
		Terminals:  ends,
		Ambient:    weave.Temperature(in, "ambient"),
		Conductors: 2,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}}, limited by the {{by}}. The column " +
			"for {{column}} has {{table}}, which the air makes " +
			"{{corrected}}; in the column of the terminals the " +
			"same size has {{terminals_bear}}. The lesser counts.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 3),
			weave.Say("by", c.Governs),
			weave.Say("column", c.Column),
			weave.Show("table", c.Table, "A", 3),
			weave.Show("corrected", c.Corrected, "A", 4),
			weave.Show("terminals_bear", c.Terminals, "A", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}

var theRoof = weave.Worked{
	Name:  "roof",
	Title: "A bundle under a hot roof",
	Question: "Wires of {{size}} with {{insulation}} insulation run under a roof where the air reaches {{ambient}}. " +
		"{{wires}} of them, all carrying current, lie in one raceway; the terminals are rated {{terminals}}. By the {{rules}}, what may each carry?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "10 AWG"},
		classInput, terminalInput, airInput, wiresInput, codeInput,
	},
	Solve: solveRoof,
}

func solveRoof(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	ends := weave.Parsed(in, "terminals", wire.ParseInsulation)
	c, err := wire.Ampacity(wire.Installation{
		Rules:      weave.Parsed(in, "rules", wire.ParseRuleSet),
		Size:       weave.Parsed(in, "size", wire.ParseSize),
		Insulation: class,
		Terminals:  ends,
		Ambient:    weave.Temperature(in, "ambient"),
		Conductors: weave.Count(in, "wires"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{ampacity}} each, limited by the {{by}}. The " +
			"table has {{table}}; the air leaves {{air}} of " +
			"that, and the company of the others {{bundle}} " +
			"of what is left. The terminals alone would bear " +
			"{{terminals_bear}}.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Say("by", c.Governs),
			weave.Show("table", c.Table, "A", 3),
			weave.Show("air", c.Ambient, "%", 2),
			weave.Show("bundle", c.Bundle, "%", 2),
			weave.Show("terminals_bear", c.Terminals, "A", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}

var theSize = weave.Worked{
	Name:  "size",
	Title: "The other way round: which size",
	Question: "A load of {{current}} has to pass the same roof: air at {{ambient}}, {{wires}} wires together, insulation {{insulation}}, " +
		"terminals {{terminals}}. By the NEC of 2017, which is the smallest copper that carries it?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "30 A", Unit: "A", Low: "1 A", High: "200 A"},
		{Name: "ambient", Label: "air round the wires", Default: "60 °C", Unit: "°C", Low: "-20 °C", High: "85 °C"},
		wiresInput, classInput, terminalInput,
	},
	Solve:   solveSize,
	Helpers: []string{"smallestFor", "tooMuch"},
}

func solveSize(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	ends := weave.Parsed(in, "terminals", wire.ParseInsulation)
	load := weave.In[units.Current](in, "current")
	x := wire.Installation{
		Rules:      wire.NEC2017,
		Insulation: class,
		Terminals:  ends,
		Ambient:    weave.Temperature(in, "ambient"),
		Conductors: weave.Count(in, "wires"),
	}
	c, err := smallestFor(load, x)
	if err != nil {
		return weave.Answer{}, err
	}
	if units.Exceeds(load, c.Current) {
		return tooMuch(c), nil
	}
	x.Size, x.Ambient, x.Conductors = c.Installation.Size,
		units.Celsius(30), 3
	cool, err := wire.Ampacity(x)
	return weave.Answer{
		Text: "{{size}}, which may carry {{ampacity}} there, " +
			"limited by the {{by}}. Alone and in air of 30 °C " +
			"the same wire has {{cool}}.",
		Values: []weave.Value{
			weave.Say("size", c.Installation.Size),
			weave.Show("ampacity", c.Current, "A", 4),
			weave.Say("by", c.Governs),
			weave.Show("cool", cool.Current, "A", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, err
}

// smallestFor returns the ampacity of the thinnest wire, 14 AWG
// to 4/0, that carries the load, or that of 4/0.
func smallestFor(load units.Current, x wire.Installation) (
	c wire.CarryingCapacity, err error,
) {
	for _, n := range []int{
		14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3,
	} {
		x.Size = wire.AWG(n)
		c, err = wire.Ampacity(x)
		if err != nil || !units.Exceeds(load, c.Current) {
			return c, err
		}
	}
	return c, nil
}

// tooMuch is the answer when no size in the table will do.
func tooMuch(c wire.CarryingCapacity) weave.Answer {
	return weave.Answer{
		Text: "None up to {{size}}, which may carry {{ampacity}} " +
			"there: cool the place, split the bundle or the load.",
		Values: []weave.Value{
			weave.Say("size", c.Installation.Size),
			weave.Show("ampacity", c.Current, "A", 4),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}
}
