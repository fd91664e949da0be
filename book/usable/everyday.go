package usable

import (
	"errors"

	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

// Inputs that several examples share.
var (
	currentInput = weave.Input{Name: "current", Label: "steady current of the load", Default: "40 A", Unit: "A", Low: "0.1 A", High: "400 A"}
	kInput       = weave.Input{Name: "k", Label: "Peukert's exponent", Default: "1.2", Unit: "1", Low: "1", High: "2"}
	depthInput   = weave.Input{Name: "depth", Label: "part that may be taken out", Default: "50 %", Unit: "%", Low: "5 %", High: "100 %"}
	overInput    = weave.Input{Name: "over", Label: "time that the label is for", Default: "20 h", Unit: "h", Low: "0.1 h", High: "200 h"}
)

var theLabel = weave.Worked{
	Name:  "lead",
	Title: "What a label gives at a current",
	Question: "A flooded battery of {{voltage}} is marked {{capacity}} over {{over}}, its exponent is {{k}}, and {{depth}} of it may be " +
		"taken. What can be used at {{current}}?",
	Inputs: []weave.Input{
		{Name: "capacity", Label: "capacity as marked", Default: "200 Ah", Unit: "Ah", Low: "20 Ah", High: "600 Ah"},
		{Name: "voltage", Label: "nominal voltage", Default: "12 V", Unit: "V", Low: "2 V", High: "48 V"},
		overInput, kInput, depthInput, currentInput,
	},
	Solve: solveLead,
}

func solveLead(in *weave.Inputs) (weave.Answer, error) {
	over := weave.In[units.Elapsed](in, "over")
	k := weave.In[units.Ratio](in, "k")
	depth := weave.In[units.Ratio](in, "depth")
	current := weave.In[units.Current](in, "current")
	use, err := battery.Usable(battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  weave.In[units.Charge](in, "capacity"),
			Voltage:   weave.In[units.Voltage](in, "voltage"),
			RatedOver: units.Some(over),
			Exponent:  units.Some(k),
			Usable:    units.Some(depth),
		},
		Series: 1, Parallel: 1,
	}, units.Some(current))
	if err != nil {
		return weave.Answer{}, err
	}
	marked := use.Assembly.Capacity
	return weave.Answer{
		Text: "The label belongs to {{rated}}. At {{current}} " +
			"there are {{available}} in it, {{factor}} of the " +
			"label; {{behind}} stay behind. {{depth}} of what " +
			"there is makes {{usable}}, or {{energy}}, and " +
			"lasts {{hours}}.",
		Values: []weave.Value{
			weave.Show("rated", use.Delivery.Rated, "A", 3),
			weave.Show("available", use.Available, "Ah", 4),
			weave.Show("factor", use.Factor, "%", 3),
			weave.Show("behind", marked-use.Available, "Ah", 3),
			weave.Show("usable", use.Charge, "Ah", 3),
			weave.Show("energy", use.Energy, "Wh", 3),
			weave.Show("hours", use.Charge.Lasts(current), "h", 3),
		},
		Working:  use.Working(),
		Findings: use.Findings(),
	}, nil
}

var theComparison = weave.Worked{
	Name:  "against",
	Title: "Lead against lithium, in watt-hours",
	Question: "The same {{current}}: which has more to give, {{lead_capacity}} of flooded lead-acid (exponent {{k}}, {{depth}} of it) or " +
		"{{capacity}} of lithium iron phosphate ({{lithium_depth}} of it)?",
	Inputs: []weave.Input{
		{Name: "lead_capacity", Label: "lead-acid, as marked over 20 h", Default: "200 Ah", Unit: "Ah", Low: "20 Ah", High: "600 Ah"},
		kInput, depthInput,
		{Name: "capacity", Label: "lithium, as marked", Default: "100 Ah", Unit: "Ah", Low: "20 Ah", High: "600 Ah"},
		{Name: "lithium_depth", Label: "part of lithium that may be taken", Default: "80 %", Unit: "%", Low: "5 %", High: "100 %"},
		currentInput,
	},
	Solve: solveAgainst,
}

func solveAgainst(in *weave.Inputs) (weave.Answer, error) {
	k := weave.In[units.Ratio](in, "k")
	leadDepth := weave.In[units.Ratio](in, "depth")
	depth := weave.In[units.Ratio](in, "lithium_depth")
	at := units.Some(weave.In[units.Current](in, "current"))
	lead, leadErr := battery.Usable(battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.Flooded,
			Capacity:  weave.In[units.Charge](in, "lead_capacity"),
			Voltage:   12 * units.Volt,
			Exponent:  units.Some(k),
			Usable:    units.Some(leadDepth),
		},
		Series: 1, Parallel: 1,
	}, at)
	lithium, err := battery.Usable(battery.Bank{
		Battery: battery.Battery{
			Chemistry: battery.LithiumIronPhosphate,
			Capacity:  weave.In[units.Charge](in, "capacity"),
			Voltage:   12.8 * units.Volt,
			Usable:    units.Some(depth),
		},
		Series: 1, Parallel: 1,
	}, at)
	if err := errors.Join(leadErr, err); err != nil {
		return weave.Answer{}, err
	}
	share := units.RatioOf(lithium.Energy, lead.Energy)
	return weave.Answer{
		Text: "Lead gives {{lead_charge}}, which at " +
			"{{lead_volts}} is {{lead}}; lithium {{charge}}, " +
			"which at {{volts}} is {{lithium}}: {{share}} of " +
			"what lead gives, from a label that is {{labels}} " +
			"of lead's.",
		Values: []weave.Value{
			weave.Show("lead_charge", lead.Charge, "Ah", 3),
			weave.Show("lead_volts", lead.Assembly.Voltage, "V", 3),
			weave.Show("lead", lead.Energy, "Wh", 3),
			weave.Show("charge", lithium.Charge, "Ah", 3),
			weave.Show("volts", lithium.Assembly.Voltage, "V", 3),
			weave.Show("lithium", lithium.Energy, "Wh", 4),
			weave.Show("share", share, "%", 3),
			weave.Show("labels", units.RatioOf(
				lithium.Assembly.Capacity,
				lead.Assembly.Capacity), "%", 3),
		},
		Working: lithium.Working(),
		Findings: append(lead.Findings(),
			lithium.Findings()...),
	}, nil
}

var theHours = weave.Worked{
	Name:  "hours",
	Title: "Hours at a constant power",
	Question: "A refrigerator, a fan and lamps take {{power}} together on average, measured at the bank. {{batteries}} lithium batteries of " +
		"{{capacity}} are {{state}} charged. How long do they last?",
	Inputs: []weave.Input{
		{Name: "power", Label: "mean power at the bank", Default: "85 W", Unit: "W", Low: "1 W", High: "1000 W"},
		{Name: "capacity", Label: "capacity of one battery", Default: "140 Ah", Unit: "Ah", Low: "10 Ah", High: "1000 Ah"},
		{Name: "batteries", Label: "batteries side by side", Default: "2", Low: "1", High: "12"},
		{Name: "state", Label: "state of charge", Default: "90 %", Unit: "%", Low: "0 %", High: "100 %"},
	},
	Solve:   solveHours,
	Helpers: []string{"lithiumBank"},
}

func solveHours(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	capacity := weave.In[units.Charge](in, "capacity")
	batteries := weave.Count(in, "batteries")
	state := weave.In[units.Ratio](in, "state")
	run, err := battery.HoldUp(battery.Hold{
		Bank:          lithiumBank(capacity, batteries),
		Draw:          battery.Draw{Power: units.Some(power)},
		StateOfCharge: units.Some(state),
		CutOff:        units.Some(11 * units.Volt),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	marked := run.Usable.Assembly.Energy
	return weave.Answer{
		Text: "{{hours}}, ended by the {{end}}; the loads get " +
			"{{energy}} at {{current}} and {{voltage}}. The " +
			"label, {{marked}}, over the watts would have " +
			"said {{by_label}}.",
		Values: []weave.Value{
			weave.Show("hours", run.Time, "h", 3),
			weave.Say("end", run.End),
			weave.Show("energy", run.Energy, "Wh", 4),
			weave.Show("current", run.Sag.Current, "A", 3),
			weave.Show("voltage", run.Sag.Voltage, "V", 4),
			weave.Show("marked", marked, "Wh", 4),
			weave.Show("by_label", marked.Lasts(power), "h", 3),
		},
		Working:  run.Working(),
		Findings: run.Findings(),
	}, nil
}

// lithiumBank is so many batteries side by side, at room
// temperature, with the figures of their datasheet.
func lithiumBank(each units.Charge, n int) battery.Bank {
	return battery.Bank{
		Battery: battery.Battery{
			Chemistry:      battery.LithiumIronPhosphate,
			Capacity:       each,
			Voltage:        12.8 * units.Volt,
			Usable:         units.Some(80 * units.Percent),
			Resistance:     units.Some(4 * units.Milliohm),
			DischargeLimit: units.Some(100 * units.Ampere),
			ChargeLimit:    units.Some(75 * units.Ampere),
		},
		Series: 1, Parallel: n,
		CellTemperature: units.Celsius(20),
		Charging: battery.Charging{ // turned off
			Compensation: units.Some(0 * units.Volt),
		},
	}
}

var theDatasheet = weave.Worked{
	Name:  "exponent",
	Title: "The exponent from two rows of a datasheet",
	Question: "A datasheet says {{a}} over {{a_over}} and {{b}} over {{b_over}}. What is the exponent, and what does the battery give at " +
		"{{current}}?",
	Inputs: []weave.Input{
		{Name: "current", Label: "steady current of the load", Default: "20 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
		{Name: "a", Label: "capacity of one row", Default: "180 Ah", Unit: "Ah", Low: "0.1 Ah", High: "10000 Ah"},
		{Name: "a_over", Label: "its time", Default: "6 h", Unit: "h", Low: "0.01 h", High: "1000 h"},
		{Name: "b", Label: "capacity of the other row", Default: "220 Ah", Unit: "Ah", Low: "0.1 Ah", High: "10000 Ah"},
		{Name: "b_over", Label: "its time", Default: "20 h", Unit: "h", Low: "0.01 h", High: "1000 h"},
	},
	Solve: solveExponent,
}

func solveExponent(in *weave.Inputs) (weave.Answer, error) {
	x, errK := battery.ExponentFrom(battery.Rating{
		Capacity: weave.In[units.Charge](in, "a"),
		Over:     weave.In[units.Elapsed](in, "a_over"),
	}, battery.Rating{
		Capacity: weave.In[units.Charge](in, "b"),
		Over:     weave.In[units.Elapsed](in, "b_over"),
	})
	current := weave.In[units.Current](in, "current")
	if errK != nil {
		return weave.Answer{}, errK
	}
	v, err := battery.Deliver(battery.Discharge{
		Rating: x.B, Exponent: x.Value, Current: current,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "k is {{k}}, good between {{from}} and {{to}}. At " +
			"{{current}} the battery gives {{charge}}, from " +
			"full to empty in {{hours}}.",
		Values: []weave.Value{
			weave.Show("k", x.Value, "1", 4),
			weave.Show("from", min(x.CurrentA, x.CurrentB), "A", 3),
			weave.Show("to", max(x.CurrentA, x.CurrentB), "A", 3),
			weave.Show("charge", v.Charge, "Ah", 4),
			weave.Show("hours", v.Time, "h", 3),
		},
		Working:  x.Working(),
		Findings: append(x.Findings(), v.Findings()...),
	}, nil
}
