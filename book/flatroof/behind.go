package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// datasheetInputs are what a panel's datasheet says.
func datasheetInputs(power, voc, vmp, isc, beta string) []weave.Input {
	return []weave.Input{
		{Name: "power", Label: "panel: power", Default: power, Unit: "W", Low: "1 W", High: "2000 W"},
		{Name: "voc", Label: "panel: open-circuit voltage", Default: voc, Unit: "V", Low: "1 V", High: "1500 V"},
		{Name: "vmp", Label: "panel: voltage at maximum power", Default: vmp, Unit: "V", Low: "1 V", High: "1500 V"},
		{Name: "isc", Label: "panel: short-circuit current", Default: isc, Unit: "A", Low: "0.1 A", High: "100 A"},
		{Name: "beta", Label: "panel: coefficient of the open-circuit voltage", Default: beta, Unit: "%/K", Low: "-1 %/K", High: "-0.1 %/K"},
	}
}

var (
	coldestInput = weave.Input{Name: "coldest", Label: "coldest morning", Default: "-22 °C", Unit: "°C", Low: "-90 °C", High: "25 °C"}
	hottestInput = weave.Input{Name: "hottest", Label: "cells in full sun on the hottest day", Default: "75 °C", Unit: "°C", Low: "25 °C", High: "120 °C"}
	bankInput    = weave.Input{Name: "bank", Label: "bank while it is charged", Default: "13.2 V", Unit: "V", Low: "1 V", High: "1000 V"}
)

var thePair = weave.Worked{
	Name:  "pair",
	Title: "Two panels in series on a cold morning",
	Question: "A panel of {{power}} has {{voc}} open. There are {{series}} of them in series on a converting controller whose input withstands " +
		"{{limit}} and which gives at most {{output}}. The vehicle may wake up at {{coldest}}, and at noon the " +
		"cells may be at {{hottest}}. Does the controller live, and does the string still charge?",
	Inputs: append([]weave.Input{
		coldestInput, hottestInput,
		{Name: "series", Label: "panels in series", Default: "2", Low: "1", High: "1000"},
		{Name: "limit", Label: "controller: greatest input voltage", Default: "100 V", Unit: "V", Low: "1 V", High: "1500 V"},
		{Name: "output", Label: "controller: greatest output current", Default: "30 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
		bankInput,
	}, datasheetInputs("220 W", "46.2 V", "38.4 V", "6.12 A", "-0.28 %/K")...),
	Solve:   solvePair,
	Helpers: []string{"datasheet"},
}

func solvePair(in *weave.Inputs) (weave.Answer, error) {
	limit := weave.In[units.Voltage](in, "limit")
	output := weave.In[units.Current](in, "output")
	hookup := solar.Hookup{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel:    datasheet(in),
			Series:   weave.Count(in, "series"),
			Parallel: 1,
		},
		Coldest: weave.Temperature(in, "coldest"),
		Hottest: weave.Temperature(in, "hottest"),
		Controller: solar.Controller{
			Kind:         solar.MPPT,
			InputVoltage: limit,
			Output:       units.Some(output),
		},
		Bank: weave.In[units.Voltage](in, "bank"),
	}
	fit, err := solar.FitController(hookup)
	if err != nil {
		return weave.Answer{}, err
	}
	// The same panels side by side.
	hookup.Array.Parallel = hookup.Array.Series
	hookup.Array.Series = 1
	beside, err := solar.FitController(hookup)
	if err != nil {
		return weave.Answer{}, err
	}
	room := limit - fit.Cold.Voltage
	hot, _ := fit.HotVmp.Get() // both that it needs are given
	return weave.Answer{
		Text: "The labels add up to {{warm}}. On the coldest " +
			"morning the string has {{cold}}; the room to the " +
			"limit is {{room}}. At their best, hot, they " +
			"have {{hot}} for the bank. In parallel they have " +
			"{{beside}} in the cold and give as much power.",
		Values: []weave.Value{
			weave.Show("warm", fit.Cold.Standard, "V", 4),
			weave.Show("cold", fit.Cold.Voltage, "V", 4),
			weave.Show("room", room, "V", 2),
			weave.Show("hot", hot, "V", 3),
			weave.Show("beside", beside.Cold.Voltage, "V", 3),
		},
		Working:  fit.Working(),
		Findings: fit.Findings(),
	}, nil
}

// datasheet reads the panel.
func datasheet(in *weave.Inputs) solar.Panel {
	beta := weave.In[units.PerKelvin](in, "beta")
	return solar.Panel{
		Power:              weave.In[units.Power](in, "power"),
		Voc:                weave.In[units.Voltage](in, "voc"),
		Vmp:                weave.In[units.Voltage](in, "vmp"),
		Isc:                weave.In[units.Current](in, "isc"),
		VoltageCoefficient: units.Some(beta),
		Cells:              solar.CrystallineSilicon,
	}
}

var theSwitch = weave.Worked{
	Name:  "switch",
	Title: "A controller that switches, and one that converts",
	Question: "A house panel of {{power}} and {{vmp}} at its best charges a bank at {{bank}} in full sun, cells at 25 °C. What comes out of a " +
		"PWM controller, and what out of an MPPT controller of {{efficiency}}?",
	Inputs: append([]weave.Input{
		{Name: "bank", Label: "bank while it is charged", Default: "12.8 V", Unit: "V", Low: "1 V", High: "1000 V"},
		{Name: "efficiency", Label: "efficiency of the MPPT controller", Default: "96 %", Unit: "%", Low: "1 %", High: "100 %"},
		coldestInput,
	}, datasheetInputs("276.21 W", "37.957 V", "30.81 V", "9.592 A", "-0.3 %/K")...),
	Solve: solveSwitch,
}

func solveSwitch(in *weave.Inputs) (weave.Answer, error) {
	hookup := solar.Hookup{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel:    datasheet(in),
			Series:   1,
			Parallel: 1,
		},
		Coldest: weave.Temperature(in, "coldest"),
		Controller: solar.Controller{
			Kind:         solar.PWM,
			InputVoltage: 150 * units.Volt,
		},
		Bank: weave.In[units.Voltage](in, "bank"),
	}
	efficiency := weave.In[units.Ratio](in, "efficiency")
	pwm, err := solar.FitController(hookup)
	if err != nil {
		return weave.Answer{}, err
	}
	hookup.Controller.Kind = solar.MPPT
	hookup.Controller.Efficiency = units.Some(efficiency)
	mppt, err := solar.FitController(hookup)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "PWM passes at most {{switched}}, which is " +
			"{{pwm}}. MPPT gives {{converted}}, which is " +
			"{{mppt}}: {{times}} times as much. Watts " +
			"over volts without a loss would be {{label}}.",
		Values: []weave.Value{
			weave.Show("switched", pwm.Charging, "A", 3),
			weave.Show("pwm", pwm.Power, "W", 3),
			weave.Show("converted", mppt.Charging, "A", 3),
			weave.Show("mppt", mppt.Power, "W", 3),
			weave.Show("times",
				units.RatioOf(mppt.Power, pwm.Power), "1", 3),
			weave.Show("label", pwm.Peak.At(hookup.Bank), "A", 3),
		},
		Working:  pwm.Working(),
		Findings: pwm.Findings(),
		Checks:   printedSwitch(pwm, mppt),
	}, nil
}

var theFuses = weave.Worked{
	Name:  "fuses",
	Title: "Fuses in the strings",
	Question: "There are {{parallel}} panels of {{isc}} side by side. Their labels say: maximum series fuse {{label}}. Does each need a fuse, " +
		"which one, and what must the cable behind the joint carry?",
	Inputs: []weave.Input{
		{Name: "parallel", Label: "strings in parallel", Default: "3", Low: "1", High: "1000"},
		{Name: "isc", Label: "short-circuit current of a string", Default: "11 A", Unit: "A", Low: "0.1 A", High: "100 A"},
		{Name: "label", Label: "maximum series fuse on the label", Default: "20 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
	},
	Solve: solveFuses,
}

func solveFuses(in *weave.Inputs) (weave.Answer, error) {
	label := weave.In[units.Current](in, "label")
	array, err := solar.Currents(solar.Strings{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel: solar.Panel{
				Isc:        weave.In[units.Current](in, "isc"),
				SeriesFuse: units.Some(label),
			},
			Series:   1,
			Parallel: weave.Count(in, "parallel"),
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	ratings, err := wire.Ratings(wire.NEC2017)
	if err != nil {
		return weave.Answer{}, err
	}
	fuse, err := ratings.Next(array.StringRequired)
	if err != nil {
		return weave.Answer{}, err
	}
	fits := "which the label allows"
	if units.Exceeds(fuse, label) {
		fits = "which is above the label: none fits"
	}
	return weave.Answer{
		Text: "The others feed {{back}} into one that is " +
			"shorted, against {{label}} on the label. The " +
			"verdict: {{fusing}}. A fuse in a string must " +
			"carry {{string}}, so the standard rating is " +
			"{{fuse}}, {{fits}}. Behind the joint, cable " +
			"and fuse must carry {{all}}.",
		Values: []weave.Value{
			weave.Show("back", array.Backfeed, "A", 3),
			weave.Say("fusing", array.Fusing),
			weave.Show("string", array.StringRequired, "A", 3),
			weave.Show("fuse", fuse, "A", 3),
			weave.Say("fits", fits),
			weave.Show("all", array.Required, "A", 3),
		},
		Working:  array.Working(),
		Findings: array.Findings(),
	}, nil
}
