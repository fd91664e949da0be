package flatroof

import (
	"time"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// Inputs that several examples share.
var (
	peakInput = weave.Input{Name: "peak", Label: "panels, by their labels", Default: "440 W", Unit: "W", Low: "1 W", High: "100 kW"}
	dayInput  = weave.Input{Name: "irradiation", Label: "irradiation of the day, level ground", Default: "3.037 kWh/m²", Unit: "kWh/m²",
		Low: "0.01 kWh/m²", High: "15 kWh/m²"}
	gammaInput = weave.Input{Name: "coefficient", Label: "temperature coefficient of power", Default: "-0.35 %/K", Unit: "%/K",
		Low: "-1 %/K", High: "0 %/K"}
)

var theHarvest = weave.Worked{
	Name:  "harvest",
	Title: "A day's harvest",
	Question: "Panels of {{peak}} lie flat on a roof near Chicago. In October level ground has {{irradiation}} on a mean day of the typical " +
		"year. The cells are taken at {{cells}}, the mean of the day weighted by the light, and change their power by {{coefficient}}. " +
		"With the typical losses, what does a day bring?",
	Inputs: []weave.Input{
		peakInput, dayInput, gammaInput,
		{Name: "cells", Label: "temperature of the cells", Default: "30 °C", Unit: "°C", Low: "-60 °C", High: "120 °C"},
	},
	Solve: solveHarvest,
}

func solveHarvest(in *weave.Inputs) (weave.Answer, error) {
	peak := weave.In[units.Power](in, "peak")
	sun := weave.In[units.Irradiation](in, "irradiation")
	gamma := weave.In[units.PerKelvin](in, "coefficient")
	day, err := solar.DailyHarvest(solar.PanelDay{
		Peak:             peak,
		Irradiation:      sun,
		PowerCoefficient: units.Some(gamma),
		CellTemperature:  weave.Temperature(in, "cells"),
		Losses:           solar.TypicalLosses(),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	mean := day.Energy.In(24 * units.Hour)
	return weave.Answer{
		Text: "{{hours}} of full sun make {{nameplate}} by " +
			"the labels. The warmth of the cells and the " +
			"losses leave {{energy}}, or {{mean}} round the " +
			"clock.",
		Values: []weave.Value{
			weave.Show("hours", day.PeakHours, "h", 3),
			weave.Show("nameplate", day.Nameplate, "Wh", 4),
			weave.Show("energy", day.Energy, "Wh", 4),
			weave.Show("mean", mean, "W", 2),
		},
		Working:  day.Working(),
		Findings: day.Findings(),
	}, nil
}

var (
	latitudeInput = weave.Input{Name: "latitude", Label: "latitude, north positive", Default: "40°", Unit: "°", Low: "-90°", High: "90°"}
	dateInput     = weave.Input{Name: "date", Label: "date, such as 15 December", Default: "15 December"}
)

var theDay = weave.Worked{
	Name:  "day",
	Title: "How long and how strong a day can be",
	Question: "The roof stands at {{latitude}} of latitude on {{date}}. How long is the sun up, how much would the roof get if there were " +
		"no air, and what is left of it under a clear and under an overcast sky?",
	Inputs:  []weave.Input{latitudeInput, dateInput},
	Solve:   solveDay,
	Helpers: []string{"dayOfYear"},
}

func solveDay(in *weave.Inputs) (weave.Answer, error) {
	sun, err := solar.SunOn(solar.DayAt{
		Latitude: weave.In[units.Angle](in, "latitude"),
		OfYear:   weave.Parsed(in, "date", dayOfYear),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	clear := units.Scale(sun.AboveAir, 75*units.Percent)
	dull := units.Scale(sun.AboveAir, 25*units.Percent)
	return weave.Answer{
		Text: "The sun is up for {{daylight}} (it " +
			"{{horizon}}). Above the air there are " +
			"{{above}}, which is {{hours}}. About {{clear}} " +
			"come down from a clear sky, {{dull}} from an " +
			"overcast one.",
		Values: []weave.Value{
			weave.Show("daylight", sun.Daylight, "h", 3),
			weave.Say("horizon", sun.Horizon),
			weave.Show("above", sun.AboveAir, "MJ/m²", 3),
			weave.Show("hours", sun.AboveAir, "kWh/m²", 3),
			weave.Show("clear", clear, "kWh/m²", 2),
			weave.Show("dull", dull, "kWh/m²", 2),
		},
		Working:  sun.Working(),
		Findings: sun.Findings(),
		Checks:   printedDay(sun),
	}, nil
}

// dayOfYear reads a date without a year, "15 December", and
// counts it in a year of 365 days.
func dayOfYear(date string) (int, error) {
	t, err := time.Parse("2 January 2006", date+" 2026")
	if err != nil {
		return 0, &units.ParseError{
			Input:  date,
			Want:   "a date such as 15 December",
			Reason: "not a day of a year of 365 days",
		}
	}
	return t.YearDay(), nil
}

var theCells = weave.Worked{
	Name:  "cells",
	Title: "Cells on a hot roof",
	Question: "The datasheet says a nominal cell temperature of 45 °C on an open rack; close to the roof {{nominal}} is nearer. At noon the " +
		"air is at {{air}} with {{light}} on the panels. How hot are the cells, and what do panels of {{peak}} with {{coefficient}} give?",
	Inputs: []weave.Input{
		{Name: "nominal", Label: "nominal operating cell temperature", Default: "50 °C", Unit: "°C", Low: "25 °C", High: "80 °C"},
		{Name: "air", Label: "air round the panels", Default: "30 °C", Unit: "°C", Low: "-60 °C", High: "60 °C"},
		{Name: "light", Label: "irradiance on the panels", Default: "1000 W/m²", Unit: "W/m²", Low: "1 W/m²", High: "1500 W/m²"},
		peakInput, gammaInput,
	},
	Solve: solveCells,
}

func solveCells(in *weave.Inputs) (weave.Answer, error) {
	light := weave.In[units.Irradiance](in, "light")
	peak := weave.In[units.Power](in, "peak")
	gamma := weave.In[units.PerKelvin](in, "coefficient")
	heat, err := solar.CellTemperature(solar.Exposure{
		Air:        weave.Temperature(in, "air"),
		Irradiance: light,
		Nominal:    weave.Temperature(in, "nominal"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	// An hour of this light, nothing lost but by heat.
	hour, err := solar.DailyHarvest(solar.PanelDay{
		Peak:             peak,
		Irradiation:      light.For(units.Hour),
		PowerCoefficient: units.Some(gamma),
		CellTemperature:  heat.Temperature,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	change := units.RatioOf(hour.Energy-hour.Nameplate,
		hour.Nameplate)
	return weave.Answer{
		Text: "The cells are {{rise}} above the air, at " +
			"{{cells}} ({{fahrenheit}}). Their power is " +
			"{{power}}: the temperature changes it by " +
			"{{change}}.",
		Values: []weave.Value{
			weave.Show("rise", heat.Rise, "K", 3),
			weave.Show("cells", heat.Temperature, "°C", 3),
			weave.Show("fahrenheit", heat.Temperature, "°F", 4),
			weave.Show("power", hour.Energy.In(units.Hour), "W", 3),
			weave.Show("change", change, "%", 3),
		},
		Working:  heat.Working(),
		Findings: heat.Findings(),
		Checks:   printedCell(heat),
	}, nil
}
