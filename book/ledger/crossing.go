package ledger

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

var theKettle = weave.Worked{
	Name:  "kettle",
	Title: "120 V through an inverter: what leaves the bank",
	Question: "A kettle of {{power}} at {{volts}} is on for {{hours}} a day, through an inverter of {{efficiency}} that idles at {{idle}} " +
		"and is left on for {{left}} besides. How many ampere-hours leave a bank at {{bank}}?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the kettle", Default: "1200 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "volts", Label: "voltage it runs at", Default: "120 V", Unit: "V", Low: "10 V", High: "480 V"},
		{Name: "hours", Label: "in use a day", Default: "0.5 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "efficiency", Label: "efficiency of the inverter", Default: "88 %", Unit: "%", Low: "5 %", High: "100 %"},
		idleInput,
		{Name: "left", Label: "inverter on besides that, a day, the rest of it at most", Default: "0.5 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "bank", Label: "voltage of the bank", Default: "12.5 V", Unit: "V", Low: "5 V", High: "120 V"},
	},
	Solve: solveKettle,
}

func solveKettle(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	kettle := load("kettle", "ac", loads.Resistive, power)
	hours := weave.In[units.Elapsed](in, "hours")
	kettle.Hours = units.Some(hours)
	on := hours + weave.In[units.Elapsed](in, "left")
	on = min(on, 24*units.Hour) // the rest of the day at most
	ledger, err := loads.Audit([]loads.Bus{{
		Name: "ac", Kind: loads.Alternating,
		Voltage: weave.In[units.Voltage](in, "volts"),
	}}, []loads.Load{kettle})
	if err != nil {
		return weave.Answer{}, err
	}
	idle := weave.In[units.Power](in, "idle")
	voltage := weave.In[units.Voltage](in, "bank")
	ac := ledger.Buses[0]
	bank, err := inverter.EnergyADay(inverter.Day{
		Energy:     ac.Energy,
		Longest:    units.Some(ac.Longest),
		Efficiency: weave.In[units.Ratio](in, "efficiency"),
		Idle:       units.Some(idle),
		On:         units.Some(on),
		Voltage:    units.Some(voltage),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	amperes := ledger.Lines[0].Current
	return weave.Answer{
		Text: "{{charge}}. The kettle takes {{amperes}}, and " +
			"that times its time seems to be {{wrong}}; but " +
			"those would be ampere-hours at its own voltage, " +
			"and a bank has another. {{energy}} leave the bank " +
			"for {{used}} at the kettle.",
		Values: []weave.Value{
			weave.Show("charge", bank.Charge.Or(0), "Ah", 3),
			weave.Show("amperes", amperes, "A", 3),
			weave.Show("wrong", amperes.For(hours), "Ah", 3),
			weave.Show("energy", bank.Energy, "Wh", 3),
			weave.Show("used", ac.Energy, "Wh", 3),
		},
		Working:  bank.Working(),
		Findings: bank.Findings(),
	}, nil
}

var theOven = weave.Worked{
	Name:  "oven",
	Title: "A microwave marked by what comes out",
	Question: "The door says {{output}}, which is {{yield}} of what the oven takes. Its power factor is {{factor}}. " +
		"It runs for {{hours}} a day behind an inverter of {{efficiency}}, with the bank sagging to {{low}}. What does it take?",
	Inputs: []weave.Input{
		{Name: "output", Label: "cooking power marked", Default: "1000 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "yield", Label: "of what it takes, into the food", Default: "65 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "factor", Label: "power factor", Default: "95 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "hours", Label: "in use a day", Default: "0.2 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "efficiency", Label: "efficiency of the inverter", Default: "88 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "low", Label: "voltage of the bank under load", Default: "11.5 V", Unit: "V", Low: "5 V", High: "120 V"},
	},
	Solve: solveOven,
}

func solveOven(in *weave.Inputs) (weave.Answer, error) {
	ac := rigBuses()[1]
	output := weave.In[units.Power](in, "output")
	yield := weave.In[units.Ratio](in, "yield")
	factor := weave.In[units.Ratio](in, "factor")
	line, err := loads.Take(ac, loads.Load{
		Name: "oven", Bus: ac.Name, Count: 1,
		Kind:  loads.ConstantPower,
		Hours: units.Some(weave.In[units.Elapsed](in, "hours")),
		Rating: loads.Rating{
			Output:      units.Some(output),
			Efficiency:  units.Some(yield),
			PowerFactor: units.Some(factor),
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	efficiency := weave.In[units.Ratio](in, "efficiency")
	low := weave.In[units.Voltage](in, "low")
	fromBank := units.Scale(line.Power, units.One/efficiency)
	return weave.Answer{
		Text: "{{plug}} from the plug, {{apparent}} for the " +
			"inverter to carry, and {{current}} out of the bank. " +
			"In a day it is {{energy}} at the plug.",
		Values: []weave.Value{
			weave.Show("plug", line.Power, "W", 4),
			weave.Show("apparent", line.Apparent, "VA", 4),
			weave.Show("current", fromBank.At(low), "A", 3),
			weave.Show("energy", line.Energy, "Wh", 3),
		},
		Working:  line.Working(),
		Findings: line.Findings(),
	}, nil
}

var theDesk = weave.Worked{
	Name:  "desk",
	Title: "Volt-amperes: full before the watts are",
	Question: "At a desk {{laptops}} laptops of {{laptop}} each and a battery charger of {{charger}}, power factor {{factor}} all of them, " +
		"hang on a small inverter of {{rated}}, {{hours}} a day. Does it carry them?",
	Inputs: []weave.Input{
		{Name: "laptops", Label: "how many laptops", Default: "2", Low: "1", High: "10"},
		{Name: "laptop", Label: "power of one laptop", Default: "40 W", Unit: "W", Low: "0 W", High: "1000 W"},
		{Name: "charger", Label: "power of the charger", Default: "120 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "factor", Label: "power factor", Default: "60 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "hours", Label: "in use a day", Default: "4 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "rated", Label: "rating of the inverter", Default: "300 VA", Unit: "VA", Low: "10 VA", High: "100000 VA"},
	},
	Solve: solveDesk,
}

func solveDesk(in *weave.Inputs) (weave.Answer, error) {
	laptops := load("laptops", "ac", loads.ConstantPower,
		weave.In[units.Power](in, "laptop"))
	laptops.Count = weave.Count(in, "laptops")
	charger := load("charger", "ac", loads.ConstantPower,
		weave.In[units.Power](in, "charger"))
	list := []loads.Load{laptops, charger}
	factor := weave.In[units.Ratio](in, "factor")
	hours := weave.In[units.Elapsed](in, "hours")
	for i := range list {
		list[i].Rating.PowerFactor = units.Some(factor)
		list[i].Hours = units.Some(hours)
	}
	rated := weave.In[units.ApparentPower](in, "rated")
	ledger, err := loads.Audit(rigBuses(), list)
	if err != nil {
		return weave.Answer{}, err
	}
	ac, _ := ledger.On("ac")
	verdict := "not more than"
	if units.Exceeds(ac.ConnectedApparent, rated) {
		verdict = "more than"
	}
	return weave.Answer{
		Text: "{{watts}} are {{apparent}}, {{verdict}} the " +
			"inverter is rated for, and {{current}} at 120 V. " +
			"The energy of a day, {{energy}}, is of watts alone.",
		Values: []weave.Value{
			weave.Show("watts", ac.Connected, "W", 3),
			weave.Show("apparent", ac.ConnectedApparent, "VA", 3),
			weave.Say("verdict", verdict),
			weave.Show("current", ac.ConnectedCurrent, "A", 3),
			weave.Show("energy", ac.Energy, "Wh", 3),
		},
		Working:  ledger.Working("ac"),
		Findings: ledger.Findings(),
	}, nil
}
