package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var theQuote = weave.Worked{
	Name:  "quote",
	Title: "A seller's number, checked",
	Question: "A quote says: panels of {{peak}}, flat on the roof, {{claimed}} a day, enough for the winter. In December level ground near " +
		"Chicago has {{irradiation}} on a mean day. Does that hold?",
	Inputs: []weave.Input{
		{Name: "peak", Label: "panels, by their labels", Default: "400 W", Unit: "W", Low: "1 W", High: "100 kW"},
		{Name: "claimed", Label: "harvest of a day as quoted", Default: "2.0 kWh"},
		{Name: "irradiation", Label: "irradiation of the day, level ground", Default: "1.403 kWh/m²", Unit: "kWh/m²",
			Low: "0.01 kWh/m²", High: "15 kWh/m²"},
	},
	Solve: solveQuote,
}

func solveQuote(in *weave.Inputs) (weave.Answer, error) {
	sun := weave.In[units.Irradiation](in, "irradiation")
	claimed := weave.Parsed(in, "claimed", units.ParsePrinted)
	day, err := solar.DailyHarvest(solar.PanelDay{
		Peak:        weave.In[units.Power](in, "peak"),
		Irradiation: sun,
		Losses:      solar.TypicalLosses(),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	verdict, err := working.Claim{
		What:     "harvest of a winter day",
		Stated:   claimed,
		Computed: day.Energy,
		SafeSide: working.Lower,
		Findings: day.Findings(),
	}.Judge()
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The verdict is: {{verdict}}. The day brings " +
			"{{energy}} from {{hours}} of full sun.",
		Values: []weave.Value{
			weave.Say("verdict", verdict),
			weave.Show("energy", day.Energy, "kWh", 2),
			weave.Show("hours", day.PeakHours, "h", 2),
		},
		Working:  day.Working(),
		Findings: day.Findings(),
	}, nil
}
