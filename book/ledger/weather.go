package ledger

import (
	"time"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

var theFurnace = weave.Worked{
	Name:  "furnace",
	Title: "A furnace's hours from the cold",
	Question: "A trailer loses {{loss}} of heat for each kelvin of difference. It is {{inside}} inside and {{outside}} outside, the mean " +
		"of a winter day. The furnace burns {{input}} at {{efficiency}}, and its blower takes {{blower}} at 12 V. How long does the " +
		"blower run, and what does that take?",
	Inputs: []weave.Input{
		{Name: "loss", Label: "heat lost for each kelvin", Default: "130 W", Unit: "W", Low: "1 W", High: "5000 W"},
		{Name: "inside", Label: "temperature inside", Default: "18 °C", Unit: "°C", Low: "-20 °C", High: "40 °C"},
		{Name: "outside", Label: "mean temperature outside", Default: "-7 °C", Unit: "°C", Low: "-60 °C", High: "50 °C"},
		{Name: "input", Label: "burnt while it runs", Default: "30 kBtu(IT)/h", Unit: "kBtu(IT)/h", Low: "1 kBtu(IT)/h", High: "200 kBtu(IT)/h"},
		{Name: "efficiency", Label: "of that, into the rooms", Default: "78 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "blower", Label: "current of the blower", Default: "8 A", Unit: "A", Low: "0.1 A", High: "100 A"},
	},
	Solve: solveFurnace,
}

func solveFurnace(in *weave.Inputs) (weave.Answer, error) {
	cycling, err := loads.HeatingDuty(loads.Heating{
		LossPerKelvin: weave.In[units.Power](in, "loss"),
		Inside:        weave.Temperature(in, "inside"),
		Outside:       weave.Temperature(in, "outside"),
		Input:         weave.In[units.Power](in, "input"),
		Efficiency:    weave.In[units.Ratio](in, "efficiency"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	weather := cycling.Heating
	colder := weather.Inside.Sub(weather.Outside)
	dc := rigBuses()[0]
	blower := weave.In[units.Current](in, "blower")
	line, err := loads.Take(dc, loads.Load{
		Name: "blower", Bus: dc.Name, Kind: loads.Motor, Count: 1,
		Rating: loads.Rating{Current: units.Some(blower)},
		Hours:  units.Some(24 * units.Hour),
		Duty:   units.Some(cycling.Duty),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "With {{colder}} between inside and outside the " +
			"furnace runs for {{duty}} of the time, {{running}} " +
			"a day, and its blower takes {{charge}}, " +
			"{{energy}}. The furnace gives {{heat}} while it " +
			"runs against a loss of {{lost}}.",
		Values: []weave.Value{
			weave.Show("colder", colder, "K", 3),
			weave.Show("duty", cycling.Duty, "%", 3),
			weave.Show("running", cycling.Running, "h", 3),
			weave.Show("charge", line.Charge.Or(0), "Ah", 3),
			weave.Show("energy", line.Energy, "Wh", 4),
			weave.Show("heat", cycling.Output, "W", 3),
			weave.Show("lost", cycling.Loss, "W", 3),
		},
		Working:  cycling.Working(),
		Findings: cycling.Findings(),
	}, nil
}

var theNight = weave.Worked{
	Name:  "night",
	Title: "A schedule that passes midnight, and the day as a series",
	Question: "A recorder of {{power}} runs from {{from}} to {{to}} every night and takes {{standby}} in between, at 12 V. What is that a " +
		"day, and what does the day look like hour by hour?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power while it records", Default: "4.2 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "standby", Label: "power while it waits", Default: "0.3 W", Unit: "W", Low: "0 W", High: "500 W"},
		{Name: "from", Label: "begins at", Default: "18:30"},
		{Name: "to", Label: "ends at", Default: "05:30"},
	},
	Solve: solveNight,
}

func solveNight(in *weave.Inputs) (weave.Answer, error) {
	recorder := load("recorder", "dc", loads.ConstantPower,
		weave.In[units.Power](in, "power"))
	recorder.Standby = weave.In[units.Power](in, "standby")
	recorder.Windows = []loads.Window{{
		From: weave.Parsed(in, "from", loads.ParseClock),
		To:   weave.Parsed(in, "to", loads.ParseClock),
	}}
	ledger, err := loads.Audit(rigBuses(), []loads.Load{recorder})
	if err != nil {
		return weave.Answer{}, err
	}
	date := time.Date(2025, time.October, 14, 0, 0, 0, 0, time.UTC)
	day, err := ledger.Day("dc", date, time.Hour)
	if err != nil {
		return weave.Answer{}, err
	}
	begins := recorder.Windows[0].From.Hour
	line := ledger.Lines[0]
	return weave.Answer{
		Text: "The window is {{hours}} long: {{run}} while it " +
			"records and {{wait}} while it waits, {{energy}} a " +
			"day. Of {{steps}} hourly means, the " +
			"one from {{at}}, in which it begins, is {{mean}}, " +
			"and the first of the day is {{first}}. All steps " +
			"add up to {{sum}} again.",
		Values: []weave.Value{
			weave.Show("hours", line.Hours, "h", 3),
			weave.Show("run", line.RunEnergy, "Wh", 3),
			weave.Show("wait", line.StandbyEnergy, "Wh", 3),
			weave.Show("energy", line.Energy, "Wh", 3),
			weave.Say("steps", day.Len()),
			weave.Say("at", day.Time(begins).Format("15:04")),
			weave.Show("mean", day.Values[begins], "W", 3),
			weave.Show("first", day.Values[0], "W", 3),
			weave.Show("sum", units.EnergyOf(day), "Wh", 3),
		},
		Working:  line.Working(),
		Findings: line.Findings(),
	}, nil
}
