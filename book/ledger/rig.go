package ledger

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Inputs that several examples share.
var (
	efficiencyInput = weave.Input{Name: "efficiency", Label: "efficiency of the inverter", Default: "89 %", Unit: "%", Low: "5 %", High: "100 %"}
	idleInput       = weave.Input{Name: "idle", Label: "idle power of the inverter", Default: "14 W", Unit: "W", Low: "0 W", High: "1000 W"}
	bankInput       = weave.Input{Name: "bank", Label: "voltage of the bank", Default: "12.8 V", Unit: "V", Low: "5 V", High: "120 V"}
)

var theLine = weave.Worked{
	Name:  "line",
	Title: "One load: watts, how many, duty, hours",
	Question: "On {{volts}}, {{count}} coolers of {{power}} each are in use for {{hours}} a day and run for {{duty}} of that time. " +
		"In the rest of the day each takes {{standby}}. What is that a day?",
	Inputs: []weave.Input{
		{Name: "count", Label: "how many", Default: "2", Low: "1", High: "50"},
		{Name: "power", Label: "power of one", Default: "45 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "hours", Label: "in use a day", Default: "16 h", Unit: "h", Low: "0 h", High: "24 h"},
		{Name: "duty", Label: "part of that in which it runs", Default: "40 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "standby", Label: "power while it does not run", Default: "0.5 W", Unit: "W", Low: "0 W", High: "500 W"},
		{Name: "volts", Label: "voltage of the bus", Default: "12 V", Unit: "V", Low: "1 V", High: "480 V"},
	},
	Solve: solveLine,
}

func solveLine(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	bus := loads.Bus{
		Name: "the bus", Kind: loads.Direct,
		Voltage: weave.In[units.Voltage](in, "volts"),
	}
	line, err := loads.Take(bus, loads.Load{
		Name: "coolers", Bus: bus.Name, Kind: loads.ConstantPower,
		Count:   weave.Count(in, "count"),
		Rating:  loads.Rating{Power: units.Some(power)},
		Hours:   units.Some(weave.In[units.Elapsed](in, "hours")),
		Duty:    units.Some(weave.In[units.Ratio](in, "duty")),
		Standby: weave.In[units.Power](in, "standby"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{energy}} a day, or {{charge}}. While running " +
			"they take {{together}} and {{current}}; over the " +
			"whole day the mean is {{mean}}.",
		Values: []weave.Value{
			weave.Show("energy", line.Energy, "Wh", 3),
			weave.Show("charge", line.Charge.Or(0), "Ah", 3),
			weave.Show("together", line.Power, "W", 3),
			weave.Show("current", line.Current, "A", 3),
			weave.Show("mean", line.Average, "W", 3),
		},
		Working:  line.Working(),
		Findings: line.Findings(),
	}, nil
}

var theRig = weave.Worked{
	Name:  "rig",
	Title: "A small ledger on two buses",
	Question: "An invented trailer, the field base of a bird count, has loads at 12 V, and others at 120 V behind an inverter of " +
		"{{efficiency}} that idles at {{idle}} all day. On a day in October the furnace runs for {{furnace}} of the time from 21:00 to " +
		"07:00 and both cooling loads for {{cold}} of the day. What leaves a bank at {{bank}} in a day?",
	Inputs: []weave.Input{
		{Name: "furnace", Label: "duty of the furnace in the night", Default: "35 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "cold", Label: "duty of refrigerator and freezer", Default: "32 %", Unit: "%", Low: "0 %", High: "100 %"},
		efficiencyInput, idleInput, bankInput,
	},
	Solve:   solveRig,
	Helpers: []string{"rigLoads", "load", "during", "rigBuses"},
}

func solveRig(in *weave.Inputs) (weave.Answer, error) {
	ledger, err := loads.Audit(rigBuses(), rigLoads(
		weave.In[units.Ratio](in, "furnace"),
		weave.In[units.Ratio](in, "cold"),
	))
	if err != nil {
		return weave.Answer{}, err
	}
	dc, _ := ledger.On("dc")
	ac, _ := ledger.On("ac")
	idle := weave.In[units.Power](in, "idle")
	voltage := weave.In[units.Voltage](in, "bank")
	day := inverter.Day{
		Energy:     ac.Energy,
		Longest:    units.Some(ac.Longest),
		Efficiency: weave.In[units.Ratio](in, "efficiency"),
		Idle:       units.Some(idle),
	}
	bank, err := inverter.EnergyADay(day)
	if err != nil {
		return weave.Answer{}, err
	}
	day.Energy = ac.MustNotStop.Energy // and on for it all day
	must, err := inverter.EnergyADay(day)
	if err != nil {
		return weave.Answer{}, err
	}
	total := dc.Energy + bank.Energy
	mean := dc.MustNotStop.Average + must.Energy.In(24*units.Hour)
	found := append(ledger.Findings(), bank.Findings()...)
	working.Sort(found)
	return weave.Answer{
		Text: "{{dc}} a day at 12 V. The 120 V loads take " +
			"{{ac}}, for which {{ac_bank}} leave the bank, " +
			"{{idle_energy}} of that for being on. Together " +
			"{{total}} or {{charge}} at the bank. What must not " +
			"stop takes {{must}} on average, day and night, the " +
			"inverter that stays on for it included.",
		Values: []weave.Value{
			weave.Show("dc", dc.Energy, "Wh", 4),
			weave.Show("ac", ac.Energy, "Wh", 3),
			weave.Show("ac_bank", bank.Energy, "Wh", 4),
			weave.Show("idle_energy", bank.Idle, "Wh", 3),
			weave.Show("total", total, "Wh", 4),
			weave.Show("charge", total.At(voltage), "Ah", 3),
			weave.Show("must", mean, "W", 3),
		},
		Working:  ledger.Working("dc"),
		Findings: found,
	}, nil
}

// rigLoads are the loads, with the duty of the furnace in the night
// and that of both cooling loads.
func rigLoads(furnace, cold units.Ratio) []loads.Load {
	const h, w = units.Hour, units.Watt
	lamps := load("lamps", "dc", loads.ConstantCurrent, 3.2*w)
	lamps.Count, lamps.Windows = 6, during(17, 30, 22, 0)
	pump := load("pump", "dc", loads.Motor, 84*w)
	pump.Hours = units.Some(0.25 * h)
	blower := load("furnace", "dc", loads.Motor, 93.6*w)
	blower.Windows = during(21, 0, 7, 0)
	blower.Duty = units.Some(furnace)
	alarm := load("detector", "dc", loads.ConstantCurrent, 0.96*w)
	alarm.Hours = units.Some(24 * h)
	fridge := load("fridge", "dc", loads.ConstantPower, 48*w)
	freezer := load("freezer", "dc", loads.ConstantPower, 60*w)
	fridge.Hours, freezer.Hours = units.Some(24*h), units.Some(24*h)
	fridge.Duty, freezer.Duty = units.Some(cold), units.Some(cold)
	ears := load("recorder", "dc", loads.ConstantPower, 4.2*w)
	ears.Windows = during(18, 30, 5, 30)
	radar := load("radar", "dc", loads.ConstantPower, 38*w)
	radar.Windows = during(19, 30, 0, 30)
	modem := load("modem", "dc", loads.ConstantPower, 8*w)
	modem.Hours = units.Some(24 * h)

	laptops := load("laptops", "ac", loads.ConstantPower, 40*w)
	laptops.Count, laptops.Windows = 2, during(18, 30, 22, 30)
	logger := load("logger", "ac", loads.ConstantPower, 9*w)
	logger.Hours = units.Some(24 * h)
	coffee := load("coffee", "ac", loads.Resistive, 900*w)
	coffee.Windows = during(6, 30, 6, 39)
	oven := load("oven", "ac", loads.ConstantPower, 1450*w)
	oven.Windows = append(
		during(12, 10, 12, 13), during(18, 10, 18, 14)...)
	laptops.Rating.PowerFactor = units.Some(60 * units.Percent)
	logger.Rating.PowerFactor = units.Some(60 * units.Percent)
	oven.Rating.PowerFactor = units.Some(95 * units.Percent)

	list := []loads.Load{
		alarm, freezer, ears, modem, logger, // must not stop
		lamps, pump, blower, fridge, radar, laptops, coffee, oven,
	}
	for i := range 5 {
		list[i].MustNotStop = true
	}
	return list
}

// load is one load given by its watts, without a time yet.
func load(
	name, bus string, k loads.Kind, p units.Power,
) loads.Load {
	return loads.Load{
		Name: name, Bus: bus, Kind: k, Count: 1,
		Rating: loads.Rating{Power: units.Some(p)},
	}
}

// during is one window of the day, in hours and minutes.
func during(h1, m1, h2, m2 int) []loads.Window {
	return []loads.Window{{
		From: loads.Clock{Hour: h1, Minute: m1},
		To:   loads.Clock{Hour: h2, Minute: m2},
	}}
}

// rigBuses are the 12 V panel and what hangs on the inverter.
func rigBuses() []loads.Bus {
	const v = units.Volt
	return []loads.Bus{
		{Name: "dc", Kind: loads.Direct, Voltage: 12 * v},
		{Name: "ac", Kind: loads.Alternating, Voltage: 120 * v},
	}
}
