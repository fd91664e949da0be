package sizing

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var theNeutral = weave.Worked{
	Name:  "neutral",
	Title: "Two legs, and the neutral between them",
	Question: "Heaters of {{first}} hang on one leg of a panel and of {{second}} on the other, {{nominal}} each to a neutral that they share. " +
		"The two hots are: {{phasing}}. What does the neutral carry, and what do the heaters see when it comes loose?",
	Inputs: []weave.Input{
		{Name: "first", Label: "heaters on one leg", Default: "1200 W", Unit: "W", Low: "1 W", High: "20000 W"},
		{Name: "second", Label: "heaters on the other", Default: "300 W", Unit: "W", Low: "0 W", High: "20000 W"},
		{Name: "nominal", Label: "voltage of a leg", Default: "120 V", Unit: "V", Low: "100 V", High: "240 V"},
		{Name: "phasing", Label: "how the hots stand to each other", Default: "split phase",
			Choices: []string{"split phase", "two of three", "one hot"}},
	},
	Solve:   solveNeutral,
	Helpers: []string{"phasingOf"},
}

func solveNeutral(in *weave.Inputs) (weave.Answer, error) {
	nominal := weave.In[units.Voltage](in, "nominal")
	phasing := phasingOf(weave.Text(in, "phasing"))
	heaters := units.Legs[units.Power]{
		A: weave.In[units.Power](in, "first"),
		B: weave.In[units.Power](in, "second"),
	}
	shared, err := inverter.SharedNeutral(inverter.Multiwire{
		Phasing: phasing,
		Current: units.Legs[units.Current]{
			A: heaters.A.At(nominal), B: heaters.B.At(nominal),
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	lost, err := inverter.OpenNeutral(inverter.TwoLegs{
		Phasing: phasing, Loads: heaters, Nominal: nominal,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The neutral carries {{current}}. With it open the " +
			"first leg has {{on_first}} and the other " +
			"{{on_second}}, where {{highest}} is the top of the " +
			"usual range. No breaker opens.",
		Values: []weave.Value{
			weave.Show("current", shared.Current, "A", 3),
			weave.Show("on_first", lost.Voltage.A, "V", 3),
			weave.Show("on_second", lost.Voltage.B, "V", 3),
			weave.Show("highest", lost.Highest, "V", 3),
		},
		Working:  lost.Working(),
		Findings: append(shared.Findings(), lost.Findings()...),
	}, nil
}

// phasingOf returns the phasing of a word.
func phasingOf(word string) inverter.Phasing {
	for _, p := range []inverter.Phasing{
		inverter.SplitPhase, inverter.TwoOfThree,
	} {
		if p.String() == word {
			return p
		}
	}
	return inverter.OneHot
}

// theraja is where the published case of two legs is from.
var theraja = working.Source{Body: "B. L. and A. K. Theraja", Title: "A Textbook of Electrical Technology, vol. III",
	Place: "example 40.28, as a textbook companion works it out", Provenance: working.Read}

// printedNeutral compares with a published case of an open neutral.
func printedNeutral() ([]weave.Row, error) {
	lost, err := inverter.OpenNeutral(inverter.TwoLegs{
		Phasing: inverter.SplitPhase, Loads: units.Legs[units.Power]{A: 250 * units.Kilowatt, B: 400 * units.Kilowatt}, Nominal: 230 * units.Volt,
	})
	const what = "250 kW and 400 kW at 230 V, neutral open: on the "
	return []weave.Row{
		{What: what + "smaller", Ours: lost.Voltage.A, Printed: units.MustPrinted("283", "V"), Source: theraja},
		{What: what + "larger", Ours: lost.Voltage.B, Printed: units.MustPrinted("177", "V"), Source: theraja},
	}, err
}
