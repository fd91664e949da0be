package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

var theNextRating = weave.Worked{
	Name:  "next",
	Title: "Between two ratings: which rule answers",
	Question: "A load of {{current}}, not for hours, on {{size}} with {{insulation}} insulation by the {{rules}}, terminals {{terminals}}. " +
		"Several receptacles on it: {{receptacles}}. Is a {{fuse}} breaker allowed?",
	Inputs: []weave.Input{
		{Name: "current", Label: "greatest current of the load", Default: "52 A", Unit: "A", Low: "1 A", High: "400 A"},
		{Name: "size", Label: "conductor", Default: "6 AWG"},
		{Name: "insulation", Label: "insulation", Default: "90 °C", Choices: classInput.Choices},
		{Name: "terminals", Label: "rating of the terminals", Default: "60 °C", Choices: classInput.Choices},
		{Name: "fuse", Label: "rating of the breaker", Default: "60 A", Unit: "A", Low: "10 A", High: "500 A"},
		{Name: "receptacles", Label: "several receptacles for portable loads", Default: "no", Choices: []string{"no", "yes"}},
		{Name: "rules", Label: "edition of the code", Default: "NEC 2017", Choices: []string{"NEC 2008", "NEC 2017", "NEC 2023"}},
	},
	Solve: solveNext,
}

func solveNext(in *weave.Inputs) (weave.Answer, error) {
	rules := weave.Parsed(in, "rules", wire.ParseRuleSet)
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	ends := weave.Parsed(in, "terminals", wire.ParseInsulation)
	breaker := weave.In[units.Current](in, "fuse")
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      rules,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: class,
			Terminals:  ends,
		},
		Load:        weave.In[units.Current](in, "current"),
		Kind:        wire.Breaker,
		Device:      units.Some(breaker),
		Receptacles: weave.Text(in, "receptacles") == "yes",
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The conductor may carry {{ampacity}}, limited by " +
			"the {{by}}. The code allows a device of {{limit}}, " +
			"by the rule: {{rule}}. A rule of the house that " +
			"allows none above the ampacity stops at {{below}}, " +
			"and the load needs {{needed}}.",
		Values: []weave.Value{
			weave.Show("ampacity", p.Capacity.Current, "A", 3),
			weave.Say("by", p.Capacity.Governs),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Say("rule", p.Rule),
			weave.Show("below", p.Below, "A", 3),
			weave.Show("needed", p.Needed, "A", 3),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}

var theQuote = weave.Worked{
	Name:  "quote",
	Title: "A quoted fuse, checked",
	Question: "A quote says: pump circuit, {{current}}, {{size}}, {{insulation}} insulation, fuse {{quoted}}. The installer has a boat's table " +
		"by which such a wire carries more than that. Is the fuse right in a recreational vehicle? (A quote without a fuse is entered as none.)",
	Inputs: []weave.Input{
		{Name: "current", Label: "greatest current of the load", Default: "8 A", Unit: "A", Low: "0.5 A", High: "200 A"},
		{Name: "size", Label: "conductor", Default: "12 AWG"},
		classInput,
		{Name: "quoted", Label: "fuse as quoted, or none", Default: "40 A"},
		rulesInput,
	},
	Solve:   solveQuote,
	Helpers: []string{"parseQuoted", "parseDevice"},
}

func solveQuote(in *weave.Inputs) (weave.Answer, error) {
	rules := weave.Parsed(in, "rules", wire.ParseRuleSet)
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	quoted := weave.Parsed(in, "quoted", parseQuoted)
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      rules,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: class,
		},
		Load:   weave.In[units.Current](in, "current"),
		Device: weave.Parsed(in, "quoted", parseDevice),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	verdict, err := working.Claim{
		What:     "greatest device for the wire",
		Stated:   quoted,
		Computed: p.Limit,
		Unit:     "A",
		SafeSide: working.Lower,
		Findings: p.Findings(),
	}.Judge()
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{verdict}}. By the rule set {{by}} the wire may " +
			"have {{limit}} at most; the smallest rating that " +
			"carries the load is {{smallest}}.",
		Values: []weave.Value{
			weave.Say("verdict", verdict),
			weave.Say("by", p.Circuit.Installation.Rules),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("smallest", p.Smallest, "A", 3),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}

// parseQuoted reads a rating as quoted; "none" is a quote without
// one.
func parseQuoted(s string) (units.Printed, error) {
	if s == "none" {
		return units.Printed{}, nil
	}
	return units.ParsePrinted(s)
}

// parseDevice reads the same as a device; what is not stated stays
// not stated.
func parseDevice(s string) (units.Opt[units.Current], error) {
	if s == "none" {
		return units.None[units.Current](), nil
	}
	rating, err := units.Parse[units.Current](s)
	return units.Some(rating), err
}
