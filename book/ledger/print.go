package ledger

import (
	"time"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// The sources of the comparison.
var (
	wenham = working.Source{Body: "Wenham et al.", Title: "Applied Photovoltaics", Edition: "table of the Department of Primary Industries and Energy, 1993",
		Place: "table 9.1, low column", Provenance: working.Read}
	guide = working.Source{Body: "US DOE", Title: "Estimating Appliance and Home Electronic Energy Use",
		Place: "as reproduced by a university course page", Provenance: working.Read}
	sedha = working.Source{Body: "Sedha", Title: "A Textbook of Applied Electronics", Place: "ch. 3, as a textbook companion works it out",
		Provenance: working.Read}
	bird = working.Source{Body: "Bird", Title: "Electrical Circuit Theory and Technology", Place: "ch. 16, problem 11, as a textbook companion works it out",
		Provenance: working.Read}
	mehta = working.Source{Body: "Mehta and Mehta", Title: "Principles of Power System", Place: "example 3.10, as a textbook companion works it out",
		Provenance: working.Read}
	practices = working.Source{Title: "text quoting the suggested practices for photovoltaic power and the NEC, 24 V inverter of 2500 W",
		Provenance: working.Read}
)

// A listed load is a load of a published ledger.
type listed struct {
	name   string
	power  units.Power
	hours  units.Elapsed
	digits string // its energy a day in Wh, as printed
}

// lowUse is a published ledger, which prints 5052 W and 1554 Wh as its sums.
func lowUse() []listed {
	const h, w = units.Hour, units.Watt
	return []listed{
		{"kitchen lights", 11 * w, 1 * h, "11"},
		{"refrigerator", 100 * w, 6 * h, "600"},
		{"microwave oven", 650 * w, 0.17 * h, "111"},
		{"toaster", 600 * w, 0.03 * h, "18"},
		{"laundry lights", 11 * w, 0.25 * h, "3"},
		{"iron", 500 * w, 0.17 * h, "85"},
		{"washing machine", 500 * w, 0.22 * h, "110"},
		{"dryer", 1800 * w, 0.2 * h, "360"},
		{"sewing machine", 15 * w, 0.07 * h, "1"},
		{"water pumps", 300 * w, 0.25 * h, "75"},
		{"lounge lights", 15 * w, 1 * h, "15"},
		{"television", 25 * w, 0.5 * h, "13"},
		{"video recorder", 100 * w, 0.5 * h, "50"},
		{"stereo", 60 * w, 0.5 * h, "30"},
		{"radio", 10 * w, 0.33 * h, "3"},
		{"vacuum cleaner", 100 * w, 0.13 * h, "13"},
		{"lights of bedroom 1", 11 * w, 0.5 * h, "6"},
		{"lights of bedroom 2", 11 * w, 0.5 * h, "6"},
		{"lights of bedroom 3", 11 * w, 0.5 * h, "6"},
		{"bathroom lights", 11 * w, 0.17 * h, "2"},
		{"outside lights", 11 * w, 0.17 * h, "2"},
		{"power tools", 200 * w, 0.17 * h, "34"},
	}
}

// house is the bus of published examples that state none.
func house() loads.Bus {
	return loads.Bus{Name: "house", Kind: loads.Alternating, Voltage: 240 * units.Volt}
}

// plain is a load of the house.
func plain(name string, power units.Power, hours units.Elapsed) loads.Load {
	l := load(name, "house", loads.ConstantPower, power)
	l.Hours = units.Some(hours)
	return l
}

// printedLedger compares line by line, then the sums.
func printedLedger() ([]weave.Row, error) {
	var list []loads.Load
	for _, p := range lowUse() {
		list = append(list, plain(p.name, p.power, p.hours))
	}
	ledger, err := loads.Audit([]loads.Bus{house()}, list)
	if err != nil {
		return nil, err
	}
	var rows []weave.Row
	for i, p := range lowUse() {
		rows = append(rows, weave.Row{What: p.name + ", " + p.power.String() + ", " + p.hours.String(), Ours: ledger.Lines[i].Energy,
			Printed: units.MustPrinted(p.digits, "Wh"), Source: wenham})
	}
	total := ledger.Buses[0]
	// The losses are half of the energy used: of 1.5 parts 1 arrives.
	lossy, err := inverter.EnergyADay(inverter.Day{
		Energy: total.Energy, Efficiency: units.RatioOf(2*units.WattHour, 3*units.WattHour), Idle: units.Some[units.Power](0),
	})
	return append(rows,
		weave.Row{What: "all powers together", Ours: total.Connected, Printed: units.MustPrinted("5052", "W"), Source: wenham},
		weave.Row{What: "all energy a day", Ours: total.Energy, Printed: units.MustPrinted("1554", "Wh"), Source: wenham,
			Within: "11 Wh", Why: "the source adds 22 lines that it has rounded to 1 Wh"},
		weave.Row{What: "with losses of half as much again", Ours: lossy.Energy, Printed: units.MustPrinted("2331", "Wh"), Source: wenham,
			Within: "17 Wh", Why: "the same, and half as much again"},
	), err
}

// printedOthers compares with single results of other books.
func printedOthers() ([]weave.Row, error) {
	computer, err := loads.Audit([]loads.Bus{house()}, []loads.Load{
		plain("computer", 120*units.Watt, 4*units.Hour), plain("monitor", 150*units.Watt, 4*units.Hour),
	})
	if err != nil {
		return nil, err
	}
	evening, err := loads.Audit([]loads.Bus{house()}, []loads.Load{
		plain("stereo", 500*units.Watt, 3*units.Hour), plain("air conditioner", 2400*units.Watt, 3*units.Hour),
	})
	if err != nil {
		return nil, err
	}
	corrected, err := inPhase()
	if err != nil {
		return nil, err
	}
	factor, err := stationDay()
	if err != nil {
		return nil, err
	}
	current, err := inverterHour()
	return []weave.Row{
		{What: "computer 120 W and monitor 150 W, 4 h a day: a year", Ours: units.Scale(computer.Buses[0].Energy, 365*units.One),
			Printed: units.MustPrinted("394", "kWh"), Source: guide},
		{What: "stereo 500 W and air conditioner 2400 W, 3 h", Ours: evening.Buses[0].Energy, Printed: units.MustPrinted("8.7", "kWh"), Source: sedha},
		{What: "50 A at power factor 0.6: current once it is 1", Ours: corrected, Printed: units.MustPrinted("30.0", "A"), Source: bird},
		{What: "day of a power station in six blocks: mean over peak", Ours: factor, Printed: units.MustPrinted("0.714", ""), Source: mehta},
		{What: "2500 W through 85 % at 22 V: current from the bank", Ours: current, Printed: units.MustPrinted("134", "A"), Source: practices},
	}, err
}

// inPhase returns the current of a motor of 50 A at a power factor of 0.6 once
// the factor is 1.
func inPhase() (units.Current, error) {
	motor := loads.Load{
		Name: "motor", Bus: "house", Kind: loads.Motor, Count: 1, Hours: units.Some(1 * units.Hour),
		Rating: loads.Rating{Current: units.Some(50 * units.Ampere), PowerFactor: units.Some(60 * units.Percent)},
	}
	lagging, err := loads.Take(house(), motor)
	if err != nil {
		return 0, err
	}
	motor.Rating = loads.Rating{Power: units.Some(lagging.Power), PowerFactor: units.Some(units.One)}
	line, err := loads.Take(house(), motor)
	return line.Current, err
}

// stationDay returns mean over peak of a day in six blocks.
func stationDay() (units.Ratio, error) {
	var list []loads.Load
	for _, block := range []struct {
		from, to int
		power    units.Power
	}{
		{0, 6, 40000 * units.Kilowatt}, {6, 10, 50000 * units.Kilowatt}, {10, 12, 60000 * units.Kilowatt},
		{12, 16, 50000 * units.Kilowatt}, {16, 20, 70000 * units.Kilowatt}, {20, 24, 40000 * units.Kilowatt},
	} {
		l := load("block", "house", loads.ConstantPower, block.power)
		l.Windows = during(block.from, 0, block.to, 0)
		list = append(list, l)
	}
	ledger, err := loads.Audit([]loads.Bus{house()}, list)
	if err != nil {
		return 0, err
	}
	day, err := ledger.Day("house", time.Date(2025, time.June, 1, 0, 0, 0, 0, time.UTC), time.Hour)
	if err != nil {
		return 0, err
	}
	peak, _, _ := units.PeakOf(day)
	return units.RatioOf(ledger.Buses[0].Average, peak), nil
}

// inverterHour returns the current from the bank of an inverter of 2500 W, by
// way of the charge of an hour.
func inverterHour() (units.Current, error) {
	ledger, err := loads.Audit([]loads.Bus{house()}, []loads.Load{plain("full load", 2500*units.Watt, 1*units.Hour)})
	if err != nil {
		return 0, err
	}
	bank, err := inverter.EnergyADay(inverter.Day{
		Energy: ledger.Buses[0].Energy, Efficiency: 85 * units.Percent, Idle: units.Some[units.Power](0), Voltage: units.Some(22 * units.Volt),
	})
	return bank.Charge.Or(0).In(1 * units.Hour), err
}
