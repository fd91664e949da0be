package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

var sizeExercise = weave.Exercise{
	Name: "size",
	Question: "A camp takes {{need}} a day. How many watts of panel does it need flat on the roof in a month of {{irradiation}} a day, with the " +
		"typical losses and cells at 25 °C, if the mean day has to do?",
	Inputs: []weave.Input{
		{Name: "need", Label: "energy of a day, direct current", Default: "900 Wh", Unit: "Wh", Low: "1 Wh", High: "1000 kWh"},
		{Name: "irradiation", Label: "irradiation of the day, level ground", Default: "1.829 kWh/m²", Unit: "kWh/m²",
			Low: "0.01 kWh/m²", High: "15 kWh/m²"},
	},
	Solve: solveSize,
}

func solveSize(in *weave.Inputs) (weave.Answer, error) {
	need := weave.In[units.Energy](in, "need")
	r := roof(weave.In[units.Irradiation](in, "irradiation"))
	trial, err := solar.DailyHarvest(r)
	if err != nil {
		return weave.Answer{}, err
	}
	// The harvest is proportional to the panels.
	r.Peak = units.Scale(r.Peak, units.RatioOf(need, trial.Energy))
	h, err := solar.DailyHarvest(r)
	return weave.Answer{
		Text:    "{{peak}}. About half the days bring less than the mean; what is missing then comes from the bank, or from more panels.",
		Values:  []weave.Value{weave.Show("peak", h.Day.Peak, "W", 3)},
		Working: h.Working(),
	}, err
}

var northExercise = weave.Exercise{
	Name:     "seasons",
	Question: "At {{latitude}} north, how long is the sun up on 15 June and on 15 December, and how many times the December irradiation has June?",
	Inputs: []weave.Input{
		{Name: "latitude", Label: "latitude", Default: "60°", Unit: "°", Low: "0°", High: "66°"},
	},
	Solve: solveSeasons,
}

func solveSeasons(in *weave.Inputs) (weave.Answer, error) {
	latitude := weave.In[units.Angle](in, "latitude")
	june, err := solar.SunOn(solar.DayAt{Latitude: latitude, OfYear: 166})
	if err != nil {
		return weave.Answer{}, err
	}
	december, err := solar.SunOn(solar.DayAt{Latitude: latitude, OfYear: 349})
	return weave.Answer{
		Text: "{{long}} and {{short}}. Above the air June has {{rich}}, December {{poor}}: {{times}} times.",
		Values: []weave.Value{
			weave.Show("long", june.Daylight, "h", 3),
			weave.Show("short", december.Daylight, "h", 3),
			weave.Show("rich", june.AboveAir, "MJ/m²", 3),
			weave.Show("poor", december.AboveAir, "MJ/m²", 2),
			weave.Show("times", units.RatioOf(june.AboveAir, december.AboveAir), "1", 2),
		},
		Working: december.Working(),
	}, err
}

var tableExercise = weave.Exercise{
	Name: "table",
	Question: "No coefficient is to be found for {{series}} silicon panels of {{voc}} in series. By the table, what does the string have at " +
		"{{coldest}}, and what at the label's 25 °C?",
	Inputs: []weave.Input{
		{Name: "series", Label: "panels in series", Default: "3", Low: "1", High: "1000"},
		{Name: "voc", Label: "open-circuit voltage of a panel", Default: "21.7 V", Unit: "V", Low: "1 V", High: "1500 V"},
		{Name: "coldest", Label: "coldest morning", Default: "-25 °C", Unit: "°C", Low: "-40 °C", High: "25 °C"},
	},
	Solve: solveTable,
}

func solveTable(in *weave.Inputs) (weave.Answer, error) {
	c, err := solar.ColdVoltage(solar.ColdString{
		Rules:   solar.NEC2017,
		Panel:   solar.Panel{Voc: weave.In[units.Voltage](in, "voc"), Cells: solar.CrystallineSilicon},
		Series:  weave.Count(in, "series"),
		Coldest: weave.Temperature(in, "coldest"),
	})
	return weave.Answer{
		Text: "{{cold}}, with a factor of {{factor}}, and {{warm}}. A controller whose limit lies between the two is a winter away from its end.",
		Values: []weave.Value{
			weave.Show("cold", c.Voltage, "V", 4),
			weave.Show("factor", c.TableFactor, "1", 3),
			weave.Show("warm", c.Standard, "V", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, err
}

var shadeExercise = weave.Exercise{
	Name: "shade",
	Question: "Panels of {{peak}} have {{irradiation}}. Dirt takes {{dirt}}, the air conditioner's shade {{shade}}, cable and controller " +
		"{{cable}}. What is left of a day, and what do the three take together?",
	Inputs: []weave.Input{
		{Name: "peak", Label: "panels, by their labels", Default: "600 W", Unit: "W", Low: "1 W", High: "100 kW"},
		{Name: "irradiation", Label: "irradiation of the day, level ground", Default: "5.2 kWh/m²", Unit: "kWh/m²",
			Low: "0.01 kWh/m²", High: "15 kWh/m²"},
		{Name: "dirt", Label: "loss by dirt", Default: "5 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "shade", Label: "loss by shade", Default: "25 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "cable", Label: "loss in cable and controller", Default: "8 %", Unit: "%", Low: "0 %", High: "100 %"},
	},
	Solve: solveShade,
}

func solveShade(in *weave.Inputs) (weave.Answer, error) {
	losses, err := solar.NewLosses(
		solar.Loss{Name: "dirt", Fraction: weave.In[units.Ratio](in, "dirt")},
		solar.Loss{Name: "shade", Fraction: weave.In[units.Ratio](in, "shade")},
		solar.Loss{Name: "cable and controller", Fraction: weave.In[units.Ratio](in, "cable")},
	)
	if err != nil {
		return weave.Answer{}, err
	}
	h, err := solar.DailyHarvest(solar.PanelDay{
		Peak:        weave.In[units.Power](in, "peak"),
		Irradiation: weave.In[units.Irradiation](in, "irradiation"),
		Losses:      losses,
	})
	return weave.Answer{
		Text: "{{energy}} of {{nameplate}}: together they take {{lost}}.",
		Values: []weave.Value{
			weave.Show("energy", h.Energy, "Wh", 4),
			weave.Show("nameplate", h.Nameplate, "Wh", 4),
			weave.Show("lost", losses.Lost(), "%", 3),
		},
		Working: h.Working(),
	}, err
}

var stringsExercise = weave.Exercise{
	Name: "strings",
	Question: "Panels of {{isc}} with {{label}} on the label are to lie side by side. How many may there be before each needs a fuse, " +
		"and what do the others feed into a shorted one when there is one more?",
	Inputs: []weave.Input{
		{Name: "isc", Label: "short-circuit current of a panel", Default: "6.12 A", Unit: "A", Low: "0.1 A", High: "100 A"},
		{Name: "label", Label: "maximum series fuse on the label", Default: "15 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
	},
	Solve: solveStrings,
}

func solveStrings(in *weave.Inputs) (weave.Answer, error) {
	x := solar.Strings{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel: solar.Panel{
				Isc:        weave.In[units.Current](in, "isc"),
				SeriesFuse: units.Some(weave.In[units.Current](in, "label")),
			},
			Series:   1,
			Parallel: 1,
		},
	}
	c, err := solar.Currents(x)
	for err == nil && c.Fusing != solar.FusingNeeded {
		x.Array.Parallel++
		c, err = solar.Currents(x)
	}
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{count}}. One more, and {{back}} come back.",
		Values: []weave.Value{
			weave.Say("count", x.Array.Parallel-1),
			weave.Show("back", c.Backfeed, "A", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}

var hotExercise = weave.Exercise{
	Name: "absorption",
	Question: "A panel of 36 cells, 100 W by its label, has cells at 60 °C. It can then give {{power}} at {{vmp}}, and gives {{current}} when it is " +
		"tied to a bank at {{bank}}. Which puts more into the bank, a PWM controller or an MPPT controller of {{efficiency}}?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the hot panel", Default: "85.49 W", Unit: "W", Low: "1 W", High: "2000 W"},
		{Name: "vmp", Label: "its voltage at maximum power", Default: "15.67 V", Unit: "V", Low: "1 V", High: "1500 V"},
		{Name: "current", Label: "its current at the voltage of the bank", Default: "5.7357 A", Unit: "A", Low: "0.1 A", High: "100 A"},
		{Name: "bank", Label: "bank while it is charged", Default: "14.4 V", Unit: "V", Low: "1 V", High: "1000 V"},
		{Name: "efficiency", Label: "efficiency of the MPPT controller", Default: "96 %", Unit: "%", Low: "1 %", High: "100 %"},
	},
	Solve: solveAbsorption,
}

func solveAbsorption(in *weave.Inputs) (weave.Answer, error) {
	efficiency := weave.In[units.Ratio](in, "efficiency")
	vmp := weave.In[units.Voltage](in, "vmp")
	h := solar.Hookup{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel: solar.Panel{
				Power: weave.In[units.Power](in, "power"),
				Voc:   units.Scale(vmp, 125*units.Percent), // not asked for
				Vmp:   vmp,
				// What it gives at the bank's voltage, which is known here, stands
				// in for the short-circuit current.
				Isc: weave.In[units.Current](in, "current"),
			},
			Series:   1,
			Parallel: 1,
		},
		Coldest:    units.Celsius(25), // not asked for
		Controller: solar.Controller{Kind: solar.PWM, InputVoltage: 100 * units.Volt},
		Bank:       weave.In[units.Voltage](in, "bank"),
	}
	pwm, err := solar.FitController(h)
	if err != nil {
		return weave.Answer{}, err
	}
	h.Controller.Kind, h.Controller.Efficiency = solar.MPPT, units.Some(efficiency)
	mppt, err := solar.FitController(h)
	return weave.Answer{
		Text: "PWM puts in {{pwm}}, MPPT {{mppt}}, {{times}} times as much. Converting pays where the panel's voltage is far above the bank's.",
		Values: []weave.Value{
			weave.Show("pwm", pwm.Power, "W", 3),
			weave.Show("mppt", mppt.Power, "W", 3),
			weave.Show("times", units.RatioOf(mppt.Power, pwm.Power), "1", 3),
		},
	}, err
}
