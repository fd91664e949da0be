package usable

import (
	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

var theSag = weave.Worked{
	Name:  "sag",
	Title: "The voltage decides, not the charge",
	Question: "Two flooded batteries side by side, of {{capacity}} and {{inside}} each, are {{state}} charged and rest at {{rest}}; {{depth}} of their " +
		"charge may be taken. An inverter takes {{power}} from them through {{leads}} of cable and links, and stops at {{cut_off}}. Does it run?",
	Inputs: []weave.Input{
		{Name: "capacity", Label: "capacity of one battery", Default: "200 Ah", Unit: "Ah", Low: "20 Ah", High: "600 Ah"},
		{Name: "inside", Label: "resistance inside one battery", Default: "5 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "50 mΩ"},
		{Name: "state", Label: "state of charge", Default: "50 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "depth", Label: "part that may be taken out", Default: "75 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "rest", Label: "voltage at rest", Default: "12.2 V", Unit: "V", Low: "11.5 V", High: "13 V"},
		{Name: "power", Label: "power at the battery side", Default: "1800 W", Unit: "W", Low: "10 W", High: "3500 W"},
		{Name: "leads", Label: "cables and links, there and back", Default: "7.5 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "50 mΩ"},
		{Name: "cut_off", Label: "voltage at which it stops", Default: "10.5 V", Unit: "V", Low: "9 V", High: "11.4 V"},
	},
	Solve: solveSag,
}

func solveSag(in *weave.Inputs) (weave.Answer, error) {
	inside := weave.In[units.Resistance](in, "inside")
	state := weave.In[units.Ratio](in, "state")
	depth := weave.In[units.Ratio](in, "depth")
	rest := weave.In[units.Voltage](in, "rest")
	power := weave.In[units.Power](in, "power")
	leads := weave.In[units.Resistance](in, "leads")
	cutOff := weave.In[units.Voltage](in, "cut_off")
	run, err := battery.HoldUp(battery.Hold{
		Bank: battery.Bank{
			Battery: battery.Battery{
				Chemistry:  battery.Flooded,
				Capacity:   weave.In[units.Charge](in, "capacity"),
				Voltage:    12 * units.Volt,
				Usable:     units.Some(depth),
				Resistance: units.Some(inside),
			},
			Series: 1, Parallel: 2,
		},
		Draw:          battery.Draw{Power: units.Some(power)},
		StateOfCharge: units.Some(state),
		OpenCircuit:   units.Some(rest),
		Leads:         units.Some(leads),
		CutOff:        units.Some(cutOff),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	// What one gets who leaves out that the sag raises the current.
	naive := power.At(rest)
	before := run.Sag.Circuit.Internal
	naiveVolts := rest - naive.Through(before)
	// The current that brings the voltage just to the cut-off.
	atCutOff := (rest - cutOff).Across(before)
	lasts := run.Charge.Lasts(run.Sag.Current)
	return weave.Answer{
		Text: "Power over voltage at rest is {{naive}}, which " +
			"would leave {{naive_volts}}. In truth it settles " +
			"at {{current}} and {{voltage}}. It runs for " +
			"{{time}}, ended by the {{end}}; the charge alone " +
			"would last {{by_charge}}. A load of {{most}} is " +
			"just at the cut-off. {{heat}} are lost as heat " +
			"before the inverter.",
		Values: []weave.Value{
			weave.Show("naive", naive, "A", 4),
			weave.Show("naive_volts", naiveVolts, "V", 4),
			weave.Show("current", run.Sag.Current, "A", 4),
			weave.Show("voltage", run.Sag.Voltage, "V", 4),
			weave.Show("time", run.Time, "h", 3),
			weave.Say("end", run.End),
			weave.Show("by_charge", lasts, "min", 3),
			weave.Show("most", atCutOff.At(cutOff), "W", 4),
			weave.Show("heat", run.Sag.Lost, "W", 3),
		},
		Working:  run.Working(),
		Findings: run.Findings(),
	}, nil
}

var theDropout = weave.Worked{
	Name:  "oneout",
	Title: "One battery out under an inverter",
	Question: "{{batteries}} lithium batteries of {{capacity}}, each with its own protection, feed an inverter that takes {{power}}. " +
		"Sun and alternator together charge with {{charge}}. One battery's protection opens. What do the others see?",
	Inputs: []weave.Input{
		{Name: "batteries", Label: "batteries side by side", Default: "2", Low: "2", High: "12"},
		{Name: "capacity", Label: "capacity of one battery", Default: "140 Ah", Unit: "Ah", Low: "10 Ah", High: "1000 Ah"},
		{Name: "power", Label: "power at the battery side", Default: "1800 W", Unit: "W", Low: "10 W", High: "6000 W"},
		{Name: "charge", Label: "greatest charge current, all sources", Default: "90 A", Unit: "A", Low: "0 A", High: "600 A"},
	},
	Solve:   solveOneOut,
	Helpers: []string{"lithiumBank"},
}

func solveOneOut(in *weave.Inputs) (weave.Answer, error) {
	n := weave.Count(in, "batteries")
	each := weave.In[units.Charge](in, "capacity")
	power := weave.In[units.Power](in, "power")
	charge := weave.In[units.Current](in, "charge")
	hold := battery.Hold{
		Bank:   lithiumBank(each, n),
		Draw:   battery.Draw{Power: units.Some(power)},
		CutOff: units.Some(11 * units.Volt),
	}
	all, err := battery.HoldUp(hold)
	if err != nil {
		return weave.Answer{}, err
	}
	limits, err := battery.CheckLimits(battery.Demand{
		Bank:      hold.Bank,
		Discharge: units.Some(all.Sag.Current),
		Charge:    units.Some(charge),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	hold.Bank.Parallel = n - 1
	left, err := battery.HoldUp(hold)
	if err != nil {
		return weave.Answer{}, err
	}
	one := hold.Bank.Battery
	seen := limits.DischargeOthers.Or(0)
	return weave.Answer{
		Text: "All in, the inverter takes {{current}}, {{share}} " +
			"from each, and runs {{time}}. With one out each of " +
			"the others would see {{others}} out, of {{limit}} " +
			"allowed, and {{charged}} in, of {{charge_limit}} " +
			"allowed. The inverter then runs {{left}}, ended by " +
			"the {{end}}; a load of up to {{most}} stays within " +
			"the limit.",
		Values: []weave.Value{
			weave.Show("current", all.Sag.Current, "A", 4),
			weave.Show("share", limits.DischargeEach.Or(0), "A", 3),
			weave.Show("time", all.Time, "h", 3),
			weave.Show("others", seen, "A", 4),
			weave.Show("limit", one.DischargeLimit.Or(0), "A", 3),
			weave.Show("charged", limits.ChargeOthers.Or(0),
				"A", 3),
			weave.Show("charge_limit", one.ChargeLimit.Or(0),
				"A", 3),
			weave.Show("left", left.Time, "h", 3),
			weave.Say("end", left.End),
			weave.Show("most", left.MostPower.Or(0), "W", 4),
		},
		Working:  limits.Working(),
		Findings: limits.Findings(),
	}, nil
}

var theCold = weave.Worked{
	Name:  "cold",
	Title: "Cold and old",
	Question: "Two flooded 6 V batteries of {{capacity}} in series have {{aged}} of their capacity left. It is {{cells}} in the compartment, for " +
		"which a sizing worksheet prints {{multiplier}}. How long do they feed {{current}}?",
	Inputs: []weave.Input{
		{Name: "capacity", Label: "capacity as marked over 20 h", Default: "225 Ah", Unit: "Ah", Low: "20 Ah", High: "600 Ah"},
		{Name: "aged", Label: "left of the capacity by age", Default: "80 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "cells", Label: "temperature of the cells", Default: "-1 °C", Unit: "°C", Low: "-40 °C", High: "50 °C"},
		{Name: "multiplier", Label: "multiplier of the cold", Default: "1.40", Unit: "1", Low: "1", High: "2"},
		kInput,
		{Name: "current", Label: "steady current of the load", Default: "15 A", Unit: "A", Low: "0.1 A", High: "400 A"},
	},
	Solve: solveCold,
}

func solveCold(in *weave.Inputs) (weave.Answer, error) {
	aged := weave.In[units.Ratio](in, "aged")
	k := weave.In[units.Ratio](in, "k")
	multiplier := weave.In[units.Ratio](in, "multiplier")
	current := weave.In[units.Current](in, "current")
	bank := battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  weave.In[units.Charge](in, "capacity"),
			Voltage:   6 * units.Volt,
			Exponent:  units.Some(k),
			Usable:    units.Some(50 * units.Percent),
			Aged:      units.Some(aged),
		},
		Series: 2, Parallel: 1,
		CellTemperature: weave.Temperature(in, "cells"),
		Multiplier:      units.Some(multiplier),
		Vent:            units.Some(60 * units.SquareCentimetre),
	}
	use, err := battery.Usable(bank, units.Some(current))
	if err != nil {
		return weave.Answer{}, err
	}
	marked := use.Assembly.Capacity
	half := units.Scale(marked, use.Assembly.Depth)
	return weave.Answer{
		Text: "{{hours}}: there are {{usable}}, or {{energy}}. " +
			"Half the label is {{half}}, which would last " +
			"{{by_label}}. There is {{share}} of that.",
		Values: []weave.Value{
			weave.Show("usable", use.Charge, "Ah", 3),
			weave.Show("energy", use.Energy, "Wh", 3),
			weave.Show("hours", use.Charge.Lasts(current), "h", 3),
			weave.Show("half", half, "Ah", 4),
			weave.Show("by_label", half.Lasts(current), "h", 3),
			weave.Show("share", units.RatioOf(use.Charge, half),
				"%", 3),
		},
		Working:  use.Working(),
		Findings: use.Findings(),
	}, nil
}
