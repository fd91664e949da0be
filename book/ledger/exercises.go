package ledger

import (
	"time"
	_ "time/tzdata" // the same clocks on every machine

	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

var pumpExercise = weave.Exercise{
	Name:     "pump",
	Question: "A water pump is marked {{current}} at 12 V and runs for {{minutes}} a day. What is that in watt-hours and in ampere-hours?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the pump", Default: "7 A", Unit: "A", Low: "0.1 A", High: "200 A"},
		{Name: "minutes", Label: "running a day", Default: "15 min", Unit: "min", Low: "0 min", High: "1440 min"},
	},
	Solve: solvePump,
}

func solvePump(in *weave.Inputs) (weave.Answer, error) {
	line, err := loads.Take(rigBuses()[0], loads.Load{
		Name: "pump", Bus: "dc", Kind: loads.Motor, Count: 1,
		Rating: loads.Rating{Current: units.Some(weave.In[units.Current](in, "current"))},
		Hours:  units.Some(weave.In[units.Elapsed](in, "minutes")),
	})
	return weave.Answer{
		Text: "{{energy}} and {{charge}}. Its {{power}} count only for as long as it runs.",
		Values: []weave.Value{
			weave.Show("energy", line.Energy, "Wh", 3),
			weave.Show("charge", line.Charge.Or(0), "Ah", 3),
			weave.Show("power", line.Power, "W", 3),
		},
		Working: line.Working(),
	}, err
}

var plateExercise = weave.Exercise{
	Name: "plate",
	Question: "A motor's plate says {{current}} at 120 V, power factor {{factor}}. What are its volt-amperes and its watts, and what does it use in " +
		"{{minutes}}?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the motor", Default: "9.5 A", Unit: "A", Low: "0.1 A", High: "200 A"},
		{Name: "factor", Label: "power factor", Default: "80 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "minutes", Label: "running a day", Default: "40 min", Unit: "min", Low: "0 min", High: "1440 min"},
	},
	Solve: solvePlate,
}

func solvePlate(in *weave.Inputs) (weave.Answer, error) {
	line, err := loads.Take(rigBuses()[1], loads.Load{
		Name: "motor", Bus: "ac", Kind: loads.Motor, Count: 1,
		Rating: loads.Rating{
			Current:     units.Some(weave.In[units.Current](in, "current")),
			PowerFactor: units.Some(weave.In[units.Ratio](in, "factor")),
		},
		Hours: units.Some(weave.In[units.Elapsed](in, "minutes")),
	})
	return weave.Answer{
		Text: "{{apparent}}, {{power}} and {{energy}}. The inverter must carry the first; the bank pays for the last.",
		Values: []weave.Value{
			weave.Show("apparent", line.Apparent, "VA", 4),
			weave.Show("power", line.Power, "W", 3),
			weave.Show("energy", line.Energy, "Wh", 3),
		},
		Working: line.Working(),
	}, err
}

var idleExercise = weave.Exercise{
	Name: "idle",
	Question: "A load of {{power}} runs for {{hours}} a night behind an inverter of {{efficiency}} that idles at {{idle}}. What leaves the bank if " +
		"the inverter is on all day, and what if it is on only for the load?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the load", Default: "30 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "hours", Label: "running a night", Default: "8 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "efficiency", Label: "efficiency of the inverter", Default: "90 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "idle", Label: "idle power of the inverter", Default: "22 W", Unit: "W", Low: "0 W", High: "1000 W"},
	},
	Solve: solveIdle,
}

func solveIdle(in *weave.Inputs) (weave.Answer, error) {
	hours := weave.In[units.Elapsed](in, "hours")
	l := load("load", "ac", loads.ConstantPower, weave.In[units.Power](in, "power"))
	l.Hours = units.Some(hours)
	ledger, err := loads.Audit(rigBuses(), []loads.Load{l})
	if err != nil {
		return weave.Answer{}, err
	}
	day := inverter.Day{
		Energy: ledger.Buses[1].Energy, Longest: units.Some(ledger.Buses[1].Longest),
		Efficiency: weave.In[units.Ratio](in, "efficiency"), Idle: units.Some(weave.In[units.Power](in, "idle")),
	}
	all, err := inverter.EnergyADay(day)
	if err != nil {
		return weave.Answer{}, err
	}
	day.On = units.Some(hours)
	night, err := inverter.EnergyADay(day)
	return weave.Answer{
		Text: "{{all}} against {{night}} a day, for {{used}} at the load. The watts are small; the hours are not.",
		Values: []weave.Value{
			weave.Show("all", all.Energy, "Wh", 3),
			weave.Show("night", night.Energy, "Wh", 3),
			weave.Show("used", all.Day.Energy, "Wh", 3),
		},
		Working: all.Working(),
	}, err
}

var driveExercise = weave.Exercise{
	Name: "drive",
	Question: "In a drive of {{hours}} a refrigerator cools with its 12 V element, {{element}}, and other loads take {{other}}. The line from the " +
		"tow vehicle brings {{brought}}. What has the bank gained on arrival?",
	Inputs: []weave.Input{
		{Name: "hours", Label: "length of the drive", Default: "6 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "element", Label: "current of the element", Default: "17.2 A", Unit: "A", Low: "0.1 A", High: "300 A"},
		{Name: "other", Label: "current of other loads", Default: "1.5 A", Unit: "A", Low: "0 A", High: "300 A"},
		{Name: "brought", Label: "current of the charge line", Default: "9 A", Unit: "A", Low: "0 A", High: "300 A"},
	},
	Solve: solveDrive,
}

func solveDrive(in *weave.Inputs) (weave.Answer, error) {
	hours := weave.In[units.Elapsed](in, "hours")
	taken := func(name string, k loads.Kind, current units.Current) loads.Load {
		return loads.Load{
			Name: name, Bus: "dc", Kind: k, Count: 1,
			Rating: loads.Rating{Current: units.Some(current)}, Hours: units.Some(hours),
		}
	}
	ledger, err := loads.Audit(rigBuses(), []loads.Load{
		taken("element", loads.Resistive, weave.In[units.Current](in, "element")),
		taken("other loads", loads.ConstantCurrent, weave.In[units.Current](in, "other")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	used := ledger.Buses[0].Charge.Or(0)
	brought := weave.In[units.Current](in, "brought").For(hours)
	return weave.Answer{
		Text: "{{gained}}: the loads take {{used}} and the line has brought {{arrived}}. A minus sign is a bank that the drive has emptied.",
		Values: []weave.Value{
			weave.Show("gained", brought-used, "Ah", 3),
			weave.Show("used", used, "Ah", 4),
			weave.Show("arrived", brought, "Ah", 3),
		},
		Working: ledger.Working("dc"),
	}, nil
}

var coldExercise = weave.Exercise{
	Name: "cold",
	Question: "Rooms that lose {{loss}} for each kelvin are to be kept at {{inside}} while it is {{outside}} outside, by a furnace that burns {{input}} " +
		"at 78 %. For what part of the time must it run?",
	Inputs: []weave.Input{
		{Name: "loss", Label: "heat lost for each kelvin", Default: "150 W", Unit: "W", Low: "1 W", High: "5000 W"},
		{Name: "inside", Label: "temperature inside", Default: "18 °C", Unit: "°C", Low: "-20 °C", High: "40 °C"},
		{Name: "outside", Label: "mean temperature outside", Default: "-20 °C", Unit: "°C", Low: "-60 °C", High: "50 °C"},
		{Name: "input", Label: "burnt while it runs", Default: "20 kBtu(IT)/h", Unit: "kBtu(IT)/h", Low: "1 kBtu(IT)/h", High: "200 kBtu(IT)/h"},
	},
	Solve: solveCold,
}

func solveCold(in *weave.Inputs) (weave.Answer, error) {
	c, err := loads.HeatingDuty(loads.Heating{
		LossPerKelvin: weave.In[units.Power](in, "loss"),
		Inside:        weave.Temperature(in, "inside"),
		Outside:       weave.Temperature(in, "outside"),
		Input:         weave.In[units.Power](in, "input"),
		Efficiency:    78 * units.Percent,
	})
	verdict := "keeps up"
	if units.Exceeds(c.Needed, 1*units.One) {
		verdict = "cannot keep up: it runs all the time, the rooms cool, and water in them can freeze"
	}
	return weave.Answer{
		Text: "{{needed}}, for {{lost}} lost against {{made}} made. The furnace {{verdict}}.",
		Values: []weave.Value{
			weave.Show("needed", c.Needed, "%", 3),
			weave.Show("lost", c.Loss, "W", 4),
			weave.Show("made", c.Output, "W", 4),
			weave.Say("verdict", verdict),
		},
		Working: c.Working(),
	}, err
}

var clocksExercise = weave.Exercise{
	Name: "clocks",
	Question: "The recorder of {{power}} runs by the clock from 18:30 to 05:30. On {{date}}, in the zone {{zone}}, clocks are changed in the night. " +
		"How long is that day, and what does the recorder use in it?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power while it records", Default: "4.2 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "date", Label: "date", Default: "2025-11-02"},
		{Name: "zone", Label: "time zone", Default: "America/Chicago"},
	},
	Solve: solveClocks,
}

func solveClocks(in *weave.Inputs) (weave.Answer, error) {
	recorder := load("recorder", "dc", loads.ConstantPower, weave.In[units.Power](in, "power"))
	recorder.Windows = during(18, 30, 5, 30)
	zone := weave.Parsed(in, "zone", time.LoadLocation)
	date := weave.Parsed(in, "date", func(s string) (time.Time, error) { return time.Parse(time.DateOnly, s) })
	ledger, err := loads.Audit(rigBuses(), []loads.Load{recorder})
	if err != nil || zone == nil {
		return weave.Answer{}, err
	}
	noon := time.Date(date.Year(), date.Month(), date.Day(), 12, 0, 0, 0, zone)
	day, err := ledger.Day("dc", noon, 30*time.Minute)
	return weave.Answer{
		Text: "{{length}} and {{energy}}; a day like any other has {{usual}}. The ledger is of a usual day, the series knows the date.",
		Values: []weave.Value{
			weave.Show("length", units.ElapsedOf(day.End().Sub(day.Start)), "h", 3),
			weave.Show("energy", units.EnergyOf(day), "Wh", 3),
			weave.Show("usual", ledger.Buses[0].Energy, "Wh", 3),
		},
		Working: ledger.Lines[0].Working(),
	}, err
}
