package ledger

import (
	"fmt"
	"slices"
	"time"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// solveRule counts a refrigerator in three ways.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	count := func(power units.Power, hours units.Elapsed) (loads.Line, error) {
		l := load("refrigerator", "ac", loads.Motor, power)
		l.Hours = units.Some(hours)
		return loads.Take(rigBuses()[1], l)
	}
	// Watts of the guide's list, for a third of a day.
	guide, err := count(725*units.Watt, 8*units.Hour)
	if err != nil {
		return weave.Answer{}, err
	}
	listed := lowUse()[1]
	book, err := count(listed.power, listed.hours)
	if err != nil {
		return weave.Answer{}, err
	}
	ours, err := lineOf("fridge")
	return weave.Answer{Values: []weave.Value{
		weave.Show("plate", guide.Power, "W", 3),
		weave.Show("guide", guide.Energy, "Wh", 3),
		weave.Show("book", book.Energy, "Wh", 3),
		weave.Show("ours", ours.Energy, "Wh", 3),
	}}, err
}

// lineOf returns a line of the trailer's ledger.
func lineOf(name string) (loads.Line, error) {
	ledger, _, err := rig()
	if err != nil {
		return loads.Line{}, err
	}
	i := slices.IndexFunc(ledger.Lines, func(v loads.Line) bool { return v.Name == name })
	if i < 0 {
		return loads.Line{}, fmt.Errorf("no line %q in the ledger", name)
	}
	return ledger.Lines[i], nil
}

// solveLines gives every line of the ledger to the table in the text.
func solveLines(*weave.Inputs) (weave.Answer, error) {
	ledger, _, err := rig()
	if err != nil {
		return weave.Answer{}, err
	}
	values := []weave.Value{weave.Show("at_once", ledger.Buses[0].ConnectedCurrent, "A", 3)}
	for _, line := range ledger.Lines {
		name := line.Name
		values = append(values,
			weave.Show(name+"_power", line.Power, "W", 4),
			weave.Show(name+"_time", line.Running, "h", 3),
			weave.Show(name+"_energy", line.Energy, "Wh", 3))
		if charge, ok := line.Charge.Get(); ok {
			values = append(values, weave.Show(name+"_charge", charge, "Ah", 3))
		}
	}
	night, step, err := dayShape(ledger)
	return weave.Answer{Values: append(values,
		weave.Show("night", night, "%", 2), weave.Show("coffee_step", step, "W", 3))}, err
}

// dayShape returns the share of the 12 V bus that is used between 18:00 and
// 07:00, and the mean at 120 V over the half hour in which coffee is made.
func dayShape(ledger loads.Ledger) (night units.Ratio, coffee units.Power, err error) {
	dc, err := rigDay(ledger, "dc")
	if err != nil {
		return 0, 0, err
	}
	var dark units.Energy
	for i, power := range dc.Values {
		if hour := dc.Time(i).Hour(); hour >= 18 || hour < 7 {
			dark += power.For(units.ElapsedOf(dc.Step))
		}
	}
	ac, err := rigDay(ledger, "ac")
	if err != nil {
		return 0, 0, err
	}
	coffee, _ = ac.At(ac.Start.Add(6*time.Hour + 30*time.Minute))
	return units.RatioOf(dark, units.EnergyOf(dc)), coffee, nil
}

func solveSum(*weave.Inputs) (weave.Answer, error) {
	ledger, bank, err := rig()
	if err != nil {
		return weave.Answer{}, err
	}
	dc, ac := ledger.Buses[0], ledger.Buses[1]
	low, high := dc.Charge.Or(0), ac.Energy.At(ac.Bus.Voltage)
	total := dc.Energy + bank.Energy
	return weave.Answer{
		Text: "The trailer's 12 V loads take {{low}} and its 120 V loads {{high}}, each at its own voltage; the sum, {{sum}}, is of no " +
			"battery. Add energies, carry them to the bank, then divide once: {{right}}.",
		Values: []weave.Value{
			weave.Show("low", low, "Ah", 3),
			weave.Show("high", high, "Ah", 2),
			weave.Show("sum", low+high, "Ah", 3),
			weave.Show("right", total.At(bank.Day.Voltage.Or(0)), "Ah", 3),
		},
	}, nil
}

func solveLabel(*weave.Inputs) (weave.Answer, error) {
	line, err := lineOf("fridge")
	return weave.Answer{
		Text: "The refrigerator's label says {{label}}, and in a day of 24 hours that would be {{wrong}}. Its thermostat lets it run for " +
			"{{duty}} of them: {{right}}. The label makes it {{times}} times too much.",
		Values: []weave.Value{
			weave.Show("label", line.Current, "A", 2),
			weave.Show("wrong", line.Current.For(24*units.Hour), "Ah", 2),
			weave.Show("duty", line.Duty, "%", 2),
			weave.Show("right", line.Charge.Or(0), "Ah", 3),
			weave.Show("times", units.RatioOf(1*units.One, line.Duty), "1", 2),
		},
	}, err
}

func solveGas(*weave.Inputs) (weave.Answer, error) {
	line, err := lineOf("furnace")
	if err != nil {
		return weave.Answer{}, err
	}
	lamps, err := lineOf("lamps")
	if err != nil {
		return weave.Answer{}, err
	}
	winter, err := heating(130*units.Watt, units.Celsius(-7))
	return weave.Answer{
		Text: "Its blower takes {{power}} to move the heat. In the October night of the ledger it uses {{energy}}, {{times}} times what all the " +
			"lamps use, and with {{outside}} outside, as in the example of the furnace, it would use {{winter}} a day. " +
			"When the bank is empty the gas does not help: " +
			"without its blower the furnace does not light.",
		Values: []weave.Value{
			weave.Show("power", line.Power, "W", 3),
			weave.Show("energy", line.Energy, "Wh", 3),
			weave.Show("outside", winter.Heating.Outside, "°C", 2),
			weave.Show("winter", line.Power.For(winter.Running), "Wh", 3),
			weave.Show("times", units.RatioOf(line.Energy, lamps.Energy), "1", 2),
		},
	}, err
}

// solveStandby adds up what appliances take while they are off. The watts are
// averages of FSEC-PF-344-98, table 1.
func solveStandby(*weave.Inputs) (weave.Answer, error) {
	var list []loads.Load
	for _, off := range []struct {
		name  string
		watts units.Power
	}{
		{"microwave oven", 3 * units.Watt}, {"DVD player", 4.5 * units.Watt}, {"clock radio", 1.7 * units.Watt},
		{"mini stereo system", 9.4 * units.Watt}, {"computer", 2 * units.Watt},
	} {
		l := load(off.name, "ac", loads.ConstantPower, 50*units.Watt) // never runs
		l.Hours, l.Standby = units.Some[units.Elapsed](0), off.watts
		list = append(list, l)
	}
	ledger, err := loads.Audit(rigBuses(), list)
	if err != nil {
		return weave.Answer{}, err
	}
	_, rigSide, err := rig()
	if err != nil {
		return weave.Answer{}, err
	}
	off := rigSide.Day
	off.Energy, off.Longest = ledger.Buses[1].Energy, units.Some(ledger.Buses[1].Longest)
	side, err := inverter.EnergyADay(off)
	return weave.Answer{
		Text: "A microwave oven, a DVD player, a clock radio, a small stereo and a computer, all of them off, take {{watts}} together by the " +
			"averages of a published list (FSEC-PF-344-98, table 1). That is {{energy}} a day, and with the {{idle}} of the inverter that they " +
			"keep on it is {{charge}} out of the bank with nothing in use.",
		Values: []weave.Value{
			weave.Show("watts", ledger.Buses[1].Average, "W", 3),
			weave.Show("energy", ledger.Buses[1].StandbyEnergy, "Wh", 3),
			weave.Show("idle", side.Day.Idle.Or(0), "W", 3),
			weave.Show("charge", side.Charge.Or(0), "Ah", 3),
		},
	}, err
}

func solveLarge(*weave.Inputs) (weave.Answer, error) {
	oven, err := lineOf("oven")
	if err != nil {
		return weave.Answer{}, err
	}
	freezer, err := lineOf("freezer")
	return weave.Answer{
		Text: "The microwave takes {{oven_power}} for {{minutes}}: {{oven}}. The freezer takes {{freezer_power}} and runs for {{hours}}: " +
			"{{freezer}}. Power chooses the inverter and the fuse; power times time empties the bank.",
		Values: []weave.Value{
			weave.Show("oven_power", oven.Power, "W", 4),
			weave.Show("minutes", oven.Running, "min", 2),
			weave.Show("oven", oven.Energy, "Wh", 3),
			weave.Show("freezer_power", freezer.Power, "W", 3),
			weave.Show("hours", freezer.Running, "h", 2),
			weave.Show("freezer", freezer.Energy, "Wh", 3),
		},
	}, err
}
