package usable

import (
	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

var labelExercise = weave.Exercise{
	Name: "label",
	Question: "Two flooded batteries are marked {{capacity}}, one over {{short}} and one over {{long}}; both have the exponent {{k}}. What does " +
		"each give at {{current}}?",
	Inputs: []weave.Input{
		{Name: "capacity", Label: "capacity as marked", Default: "200 Ah", Unit: "Ah", Low: "1 Ah", High: "2000 Ah"},
		{Name: "short", Label: "time of one label", Default: "20 h", Unit: "h", Low: "1 h", High: "200 h"},
		{Name: "long", Label: "time of the other label", Default: "100 h", Unit: "h", Low: "1 h", High: "200 h"},
		kInput,
		{Name: "current", Label: "steady current", Default: "25 A", Unit: "A", Low: "0.1 A", High: "400 A"},
	},
	Solve: solveLabels,
}

func solveLabels(in *weave.Inputs) (weave.Answer, error) {
	d := battery.Discharge{
		Rating: battery.Rating{
			Capacity: weave.In[units.Charge](in, "capacity"),
			Over:     weave.In[units.Elapsed](in, "short"),
		},
		Exponent: weave.In[units.Ratio](in, "k"),
		Current:  weave.In[units.Current](in, "current"),
	}
	long := weave.In[units.Elapsed](in, "long")
	short, err := battery.Deliver(d)
	if err != nil {
		return weave.Answer{}, err
	}
	d.Rating.Over = long
	slow, err := battery.Deliver(d)
	return weave.Answer{
		Text: "{{one}} and {{other}}. The same number of ampere-hours over a longer time is a smaller battery.",
		Values: []weave.Value{
			weave.Show("one", short.Charge, "Ah", 3),
			weave.Show("other", slow.Charge, "Ah", 3),
		},
		Working: slow.Working(),
	}, err
}

var reserveExercise = weave.Exercise{
	Name: "reserve",
	Question: "A label says {{capacity}} over {{over}}, and a reserve capacity of {{minutes}}, which is the time that it feeds {{reserve}}. " +
		"What is the exponent?",
	Inputs: []weave.Input{
		{Name: "capacity", Label: "capacity as marked", Default: "105 Ah", Unit: "Ah", Low: "1 Ah", High: "2000 Ah"},
		overInput,
		{Name: "minutes", Label: "reserve capacity", Default: "180 min", Unit: "min", Low: "1 min", High: "6000 min"},
		{Name: "reserve", Label: "current it is for", Default: "25 A", Unit: "A", Low: "1 A", High: "400 A"},
	},
	Solve: solveReserve,
}

func solveReserve(in *weave.Inputs) (weave.Answer, error) {
	minutes := weave.In[units.Elapsed](in, "minutes")
	reserve := weave.In[units.Current](in, "reserve").For(minutes)
	x, err := battery.ExponentFrom(
		battery.Rating{Capacity: weave.In[units.Charge](in, "capacity"), Over: weave.In[units.Elapsed](in, "over")},
		battery.Rating{Capacity: reserve, Over: minutes},
	)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The reserve is a second row of a datasheet: {{reserve_charge}} over {{reserve_time}}. With the label it makes k {{k}}. {{worst}}",
		Values: []weave.Value{
			weave.Show("reserve_charge", reserve, "Ah", 3),
			weave.Show("reserve_time", minutes, "h", 3),
			weave.Show("k", x.Value, "1", 3),
			weave.Say("worst", x.Findings()[0].Message),
		},
		Working: x.Working(),
	}, nil
}

var nightExercise = weave.Exercise{
	Name: "night",
	Question: "A breathing machine takes {{power}} at the battery for {{night}}. The battery is AGM, {{capacity}}, full in the evening, and half " +
		"of it may be taken. Does it last the night, and what of it is then used?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power at the battery", Default: "45 W", Unit: "W", Low: "1 W", High: "200 W"},
		{Name: "night", Label: "length of the night", Default: "9 h", Unit: "h", Low: "1 h", High: "16 h"},
		{Name: "capacity", Label: "capacity as marked over 20 h", Default: "100 Ah", Unit: "Ah", Low: "10 Ah", High: "500 Ah"},
	},
	Solve: solveNight,
}

func solveNight(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	night := weave.In[units.Elapsed](in, "night")
	run, err := battery.HoldUp(battery.Hold{
		Bank: single(battery.Battery{
			Chemistry:  battery.AGM,
			Capacity:   weave.In[units.Charge](in, "capacity"),
			Voltage:    12 * units.Volt,
			Resistance: units.Some(5 * units.Milliohm),
		}),
		Draw: battery.Draw{Power: units.Some(power)},
	})
	taken := units.RatioOf(run.Sag.Current.For(night), run.Usable.Available)
	return weave.Answer{
		Text: "It lasts {{time}} to half, and the night takes {{taken}} of the charge. Somebody depends on it, so ask the same of the battery old and " +
			"cold, and have an alarm that works when nothing else does.",
		Values: []weave.Value{
			weave.Show("time", run.Time, "h", 3),
			weave.Show("taken", taken, "%", 2),
		},
		Working: run.Working(),
	}, err
}

var stringsExercise = weave.Exercise{
	Name: "strings",
	Question: "{{days}} days of {{energy}} each are to come out of strings of two 6 V batteries of {{capacity}}, at a mean of {{current}}, half of the " +
		"charge being used, in a cold with the multiplier {{multiplier}}. How many strings, and how many if the cold is forgotten?",
	Inputs: []weave.Input{
		{Name: "days", Label: "days", Default: "3", Low: "1", High: "14"},
		{Name: "energy", Label: "energy of a day", Default: "1.1 kWh", Unit: "kWh", Low: "0.1 kWh", High: "10 kWh"},
		{Name: "capacity", Label: "capacity of one battery over 20 h", Default: "225 Ah", Unit: "Ah", Low: "50 Ah", High: "500 Ah"},
		{Name: "current", Label: "mean current", Default: "5 A", Unit: "A", Low: "0.5 A", High: "100 A"},
		{Name: "multiplier", Label: "multiplier of the cold", Default: "1.59", Unit: "1", Low: "1", High: "2"},
	},
	Solve: solveStrings,
}

func solveStrings(in *weave.Inputs) (weave.Answer, error) {
	days := weave.Count(in, "days")
	need := units.Scale(weave.In[units.Energy](in, "energy"), units.Ratio(days))
	at := units.Some(weave.In[units.Current](in, "current"))
	bank := battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  weave.In[units.Charge](in, "capacity"),
			Voltage:   6 * units.Volt,
			Usable:    units.Some(50 * units.Percent),
		},
		Series: 2,
	}
	warm, err := enough(bank, at, need)
	if err != nil {
		return weave.Answer{}, err
	}
	bank.Multiplier = units.Some(weave.In[units.Ratio](in, "multiplier"))
	cold, err := enough(bank, at, need)
	return weave.Answer{
		Text: "{{cold}} strings, which give {{energy_cold}} where {{need}} are needed; {{warm}} if the cold is forgotten.",
		Values: []weave.Value{
			weave.Say("cold", cold.Assembly.Bank.Parallel),
			weave.Show("energy_cold", cold.Energy, "kWh", 3),
			weave.Show("need", need, "kWh", 3),
			weave.Say("warm", warm.Assembly.Bank.Parallel),
		},
		Working: cold.Working(),
	}, err
}

// enough adds strings until need can be taken out.
func enough(bank battery.Bank, at units.Opt[units.Current], need units.Energy) (use battery.UsableCharge, err error) {
	for bank.Parallel = 1; ; bank.Parallel++ {
		use, err = battery.Usable(bank, at)
		if err != nil || units.Compare(use.Energy, need) >= 0 {
			return use, err
		}
	}
}

var leadsExercise = weave.Exercise{
	Name: "leads",
	Question: "A bank rests at {{rest}} and has {{inside}} inside. A load of {{power}} stops at {{cut_off}}. What resistance may cables and links have, " +
		"there and back, if it is to run?",
	Inputs: []weave.Input{
		{Name: "rest", Label: "voltage at rest", Default: "12.2 V", Unit: "V", Low: "11.5 V", High: "14 V"},
		{Name: "inside", Label: "resistance of the bank", Default: "2.5 mΩ", Unit: "mΩ", Low: "0.1 mΩ", High: "20 mΩ"},
		{Name: "power", Label: "power at the battery side", Default: "1500 W", Unit: "W", Low: "100 W", High: "3000 W"},
		{Name: "cut_off", Label: "voltage at which it stops", Default: "10.8 V", Unit: "V", Low: "9 V", High: "11 V"},
	},
	Solve: solveLeads,
}

func solveLeads(in *weave.Inputs) (weave.Answer, error) {
	rest := weave.In[units.Voltage](in, "rest")
	inside := weave.In[units.Resistance](in, "inside")
	power := weave.In[units.Power](in, "power")
	cutOff := weave.In[units.Voltage](in, "cut_off")
	current := power.At(cutOff)
	whole := (rest - cutOff).Per(current)
	// What the answer says, put back into the circuit.
	back, err := battery.UnderLoad(battery.Circuit{OpenCircuit: rest, Internal: whole, Draw: battery.Draw{Power: units.Some(power)}})
	return weave.Answer{
		Text: "Less than {{leads}}. At the cut-off the load takes {{current}}, and {{lost}} may be lost on the way; the bank itself takes its share. " +
			"Put back, the whole {{whole}} leaves {{voltage}}, which is just too little.",
		Values: []weave.Value{
			weave.Show("leads", whole-inside, "mΩ", 3),
			weave.Show("current", current, "A", 4),
			weave.Show("lost", rest-cutOff, "V", 3),
			weave.Show("whole", whole, "mΩ", 3),
			weave.Show("voltage", back.Voltage, "V", 4),
		},
		Working: back.Working(),
	}, err
}

var chargeExercise = weave.Exercise{
	Name: "charge",
	Question: "{{batteries}} lithium batteries, each with a charge limit of {{limit}}, are charged with {{charge}} in all. Within the limits? And with one " +
		"battery out?",
	Inputs: []weave.Input{
		{Name: "batteries", Label: "batteries side by side", Default: "3", Low: "2", High: "12"},
		{Name: "limit", Label: "charge limit of one", Default: "50 A", Unit: "A", Low: "5 A", High: "200 A"},
		{Name: "charge", Label: "charge current, all sources", Default: "120 A", Unit: "A", Low: "1 A", High: "600 A"},
	},
	Solve: solveCharge,
}

func solveCharge(in *weave.Inputs) (weave.Answer, error) {
	bank := lithiumBank(100*units.AmpereHour, weave.Count(in, "batteries"))
	bank.Battery.ChargeLimit = units.Some(weave.In[units.Current](in, "limit"))
	limits, err := battery.CheckLimits(battery.Demand{
		Bank: bank, Charge: units.Some(weave.In[units.Current](in, "charge")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	worst := limits.Findings()[0] // the limits are given, so there is one
	return weave.Answer{
		Text: "All in, the bank may take {{all}}, and each battery sees {{each}}. With one out it may take {{out}}, and each of the others " +
			"sees {{others}}. {{worst}}",
		Values: []weave.Value{
			weave.Show("all", limits.Charge.Or(0), "A", 3),
			weave.Show("each", limits.ChargeEach.Or(0), "A", 3),
			weave.Show("out", limits.ChargeOneOut.Or(0), "A", 3),
			weave.Show("others", limits.ChargeOthers.Or(0), "A", 3),
			weave.Say("worst", worst.Message),
		},
		Working: limits.Working(),
	}, nil
}

var winterExercise = weave.Exercise{
	Name: "winter",
	Question: "A flooded battery is left for the winter {{left}} charged, and a forgotten lamp takes it down to {{down}}. Where does the electrolyte freeze, " +
		"before and after?",
	Inputs: []weave.Input{
		{Name: "left", Label: "state of charge, left with", Default: "80 %", Unit: "%", Low: "25 %", High: "100 %"},
		{Name: "down", Label: "state of charge, come down to", Default: "30 %", Unit: "%", Low: "25 %", High: "100 %"},
	},
	Solve: solveWinter,
}

func solveWinter(in *weave.Inputs) (weave.Answer, error) {
	left := weave.In[units.Ratio](in, "left")
	down := weave.In[units.Ratio](in, "down")
	before, err := battery.FreezingPoint(left)
	if err != nil {
		return weave.Answer{}, err
	}
	after, err := battery.FreezingPoint(down)
	return weave.Answer{
		Text: "At {{before}} before and at {{after}} after. A frozen battery bursts and must not be charged.",
		Values: []weave.Value{
			weave.Show("before", before.Point, "°C", 2),
			weave.Show("after", after.Point, "°C", 2),
		},
		Working: after.Working(),
	}, err
}
