package harness

import (
	"strconv"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var (
	fourNames = []string{"1", "2", "3", "4"}
	eachInput = weave.Input{Name: "each", Label: "resistance of one battery", Default: "3 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "60 mΩ"}
	leadInput = weave.Input{Name: "lead", Label: "resistance of one lead of a link", Default: "0.3 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "20 mΩ"}
)

var theRow = weave.Worked{
	Name:  "row",
	Title: "Four batteries, and where the cables are bolted on",
	Question: "Four batteries alike stand in a row, each {{each}} inside, each link two leads of {{lead}}. A load takes {{current}}; plus is " +
		"taken off at battery {{plus}} and minus at battery {{minus}}. Each battery may give {{limit}}. What does each give, and what " +
		"would it give with plus at one end and minus at the other?",
	Inputs: []weave.Input{
		eachInput, leadInput,
		{Name: "current", Label: "current of the load", Default: "200 A", Unit: "A", Low: "1 A", High: "600 A"},
		{Name: "plus", Label: "battery whose plus post feeds the load", Default: "1", Choices: fourNames},
		{Name: "minus", Label: "battery whose minus post feeds the load", Default: "1", Choices: fourNames},
		{Name: "limit", Label: "greatest current of one battery", Default: "70 A", Unit: "A", Low: "10 A", High: "500 A"},
	},
	Solve:   solveRow,
	Helpers: []string{"row", "hardest"},
}

func solveRow(in *weave.Inputs) (weave.Answer, error) {
	limit := weave.In[units.Current](in, "limit")
	current := weave.In[units.Current](in, "current")
	each := wire.Battery{
		Voltage:    13.2 * units.Volt,
		Resistance: weave.In[units.Resistance](in, "each"),
		Limit:      units.Some(limit),
	}
	n := row(4, each, weave.In[units.Resistance](in, "lead"))
	n.Branches = []wire.Branch{{
		Name: "load", Load: wire.Load{Current: current},
	}}
	n.Plus = weave.Text(in, "plus")
	n.Minus = weave.Text(in, "minus")
	_, f, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	if c, ok := f.Collapse.Get(); ok {
		return collapsed(f, c), nil
	}
	n.Plus, n.Minus = "1", "4"
	_, ends, err := solve(n)
	if err != nil {
		return weave.Answer{}, err
	}
	worst := hardest(f)
	most := units.Scale(limit,
		units.One/f.Shares[worst].Fraction)
	return weave.Answer{
		Text: "In order they give {{s1}}, {{s2}}, {{s3}} and " +
			"{{s4}}. Taken off at opposite ends: {{e1}}, " +
			"{{e2}}, {{e3}} and {{e4}}. Battery {{worst}} " +
			"works hardest, with {{part}} of the whole, so as " +
			"it is wired the row may give {{most}} before one " +
			"of them is above its limit.",
		Values: append(append(
			fourShares("s", f), fourShares("e", ends)...),
			weave.Say("worst", worst+1),
			weave.Show("part", f.Shares[worst].Fraction, "%", 3),
			weave.Show("most", most, "A", 3),
		),
		Working:  f.ShareWorking(1),
		Findings: f.Findings(),
		Checks:   ladderByHand(f, ends),
	}, nil
}

// fourShares shows the currents of a row as s1, s2 and so on.
func fourShares(name string, f *wire.Flow) (values []weave.Value) {
	for i, s := range f.Shares {
		values = append(values,
			weave.Show(name+strconv.Itoa(i+1), s.Current, "A", 3))
	}
	return values
}

var theUnlike = weave.Worked{
	Name:  "unlike",
	Title: "A lithium battery beside an old lead one",
	Question: "To get more ampere-hours, a lithium battery of {{lithium}} and {{r_lithium}} is joined to a lead battery of {{lead}} and " +
		"{{r_lead}} by cables of {{cable}} together. The lead battery may be charged with {{charge}}. The load takes {{current}}. What flows?",
	Inputs: []weave.Input{
		{Name: "lithium", Label: "open-circuit voltage of the lithium battery", Default: "13.3 V", Unit: "V", Low: "12 V", High: "13.8 V"},
		{Name: "r_lithium", Label: "resistance of the lithium battery", Default: "10 mΩ", Unit: "mΩ", Low: "1 mΩ", High: "100 mΩ"},
		{Name: "lead", Label: "open-circuit voltage of the lead battery", Default: "12.4 V", Unit: "V", Low: "11.5 V", High: "13.2 V"},
		{Name: "r_lead", Label: "resistance of the lead battery", Default: "6 mΩ", Unit: "mΩ", Low: "1 mΩ", High: "100 mΩ"},
		{Name: "cable", Label: "resistance of the cables between them", Default: "4 mΩ", Unit: "mΩ", Low: "0.1 mΩ", High: "100 mΩ"},
		{Name: "charge", Label: "greatest charge of the lead battery", Default: "25 A", Unit: "A", Low: "1 A", High: "200 A"},
		{Name: "current", Label: "current of the load, at the lithium battery", Default: "0 A", Unit: "A", Low: "0 A", High: "100 A"},
	},
	Solve: solveUnlike,
}

func solveUnlike(in *weave.Inputs) (weave.Answer, error) {
	r1 := weave.In[units.Resistance](in, "r_lithium")
	r2 := weave.In[units.Resistance](in, "r_lead")
	charge := units.Some(weave.In[units.Current](in, "charge"))
	cable := weave.In[units.Resistance](in, "cable")
	_, f, err := solve(wire.Network{
		Batteries: []wire.Battery{
			{
				Name:       "lithium",
				Voltage:    weave.In[units.Voltage](in, "lithium"),
				Resistance: r1,
				Limit:      units.Some(100 * units.Ampere),
			},
			{
				Name:        "lead",
				Voltage:     weave.In[units.Voltage](in, "lead"),
				Resistance:  r2,
				Limit:       units.Some(100 * units.Ampere),
				ChargeLimit: charge,
			},
		},
		// In the one loop there is, it does not matter which of
		// the two leads has the resistance.
		Links: []wire.Link{{Plus: wire.Lead{Extra: cable}}},
		Branches: []wire.Branch{{
			Name: "load",
			Load: wire.Load{
				Current: weave.In[units.Current](in, "current"),
			},
		}},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	lithium, lead := f.Shares[0], f.Shares[1]
	return weave.Answer{
		Text: "With no load at all the lithium battery gives " +
			"{{idle}}. With the load it gives {{gives}} and the " +
			"lead battery {{lead_gives}}; below 0 it is charged. " +
			"{{heat}} of heat goes into the batteries and the " +
			"cables between them.",
		Values: []weave.Value{
			weave.Show("idle", lithium.Idle, "A", 3),
			weave.Show("gives", lithium.Current, "A", 3),
			weave.Show("lead_gives", lead.Current, "A", 3),
			weave.Show("heat", f.BankHeat, "W", 3),
		},
		Working:  f.ShareWorking(1),
		Findings: f.Findings(),
		Checks:   loopByHand(lithium),
	}, nil
}
