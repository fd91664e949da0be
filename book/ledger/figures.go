package ledger

import (
	"cmp"
	"slices"
	"time"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// rig returns the trailer's ledger and its inverter side, both by the defaults
// of the example.
func rig() (loads.Ledger, inverter.DayUse, error) {
	ledger, err := loads.Audit(rigBuses(), rigLoads(35*units.Percent, 32*units.Percent))
	if err != nil {
		return loads.Ledger{}, inverter.DayUse{}, err
	}
	bank, err := inverter.EnergyADay(inverter.Day{
		Energy: ledger.Buses[1].Energy, Longest: units.Some(ledger.Buses[1].Longest),
		Efficiency: 89 * units.Percent, Idle: units.Some(14 * units.Watt), Voltage: units.Some(12.8 * units.Volt),
	})
	return ledger, bank, err
}

// energyByLoad draws what each load takes from the bank, the largest first
// and the small ones together.
func energyByLoad() (figure.Bars, error) {
	ledger, bank, err := rig()
	if err != nil {
		return figure.Bars{}, err
	}
	type part struct {
		name   string
		energy units.Energy
	}
	parts := []part{{"idling", bank.Idle}}
	for _, line := range ledger.Lines {
		energy := line.Energy
		if line.Bus.Kind == loads.Alternating {
			energy = units.Scale(energy, units.One/bank.Day.Efficiency)
		}
		parts = append(parts, part{line.Name, energy})
	}
	slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(b.energy, a.energy) })
	bars := figure.Bars{
		Title: "Energy a day from the bank, by load",
		Description: "Nine bars, the tallest first, and one for the rest. The freezer leads, then the refrigerator, the laptops, the idling " +
			"inverter and the furnace's blower.",
		Label:  "load",
		Y:      figure.Axis{Label: "energy a day", Unit: "Wh", Min: 0, Max: 500},
		Groups: []figure.Group{{}},
	}
	const shown = 9
	rest := part{name: "the rest"}
	for _, p := range parts[shown:] {
		rest.energy += p.energy
	}
	for _, p := range append(parts[:shown:shown], rest) {
		bars.Categories = append(bars.Categories, p.name)
		bars.Groups[0].Values = append(bars.Groups[0].Values, units.In(p.energy, units.WattHour))
	}
	return bars, nil
}

// heating returns how the furnace of the example runs in other weather and
// another trailer.
func heating(loss units.Power, outside units.Temperature) (loads.Cycling, error) {
	return loads.HeatingDuty(loads.Heating{
		LossPerKelvin: loss, Inside: units.Celsius(18), Outside: outside,
		Input: 30 * units.KiloBtuITPerHour, Efficiency: 78 * units.Percent,
	})
}

// furnaceByCold draws the blower's charge a day against the cold outside.
func furnaceByCold() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "What the furnace's blower takes, by the cold outside",
		Description: "Three straight lines from the origin, for a heat loss of 90, 130 and 200 W/K. The steepest reaches the limit of a " +
			"blower that runs all day where it is 34 K colder outside, and stays there.",
		X:      figure.Axis{Label: "colder outside than inside by", Unit: "K", Min: 0, Max: 45},
		Y:      figure.Axis{Label: "charge a day at 12 V", Unit: "Ah", Min: 0, Max: 220},
		Limits: []figure.Limit{{Name: "blower on all day", Y: units.In((8 * units.Ampere).For(24*units.Hour), units.AmpereHour)}},
	}
	for _, rate := range []struct {
		name string
		loss units.Power
	}{{"90 W/K", 90 * units.Watt}, {"130 W/K", 130 * units.Watt}, {"200 W/K", 200 * units.Watt}} {
		line := figure.Line{Name: rate.name}
		for colder := 0.0; colder <= 45; colder++ {
			c, err := heating(rate.loss, units.Celsius(18-colder))
			if err != nil {
				return figure.Chart{}, err
			}
			charge := (8 * units.Ampere).For(c.Running)
			line.Points = append(line.Points, figure.Point{X: colder, Y: units.In(charge, units.AmpereHour)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// rigDay returns a day of a bus in steps of half an hour.
func rigDay(ledger loads.Ledger, bus string) (units.Series[units.Power], error) {
	return ledger.Day(bus, time.Date(2025, time.October, 14, 0, 0, 0, 0, time.UTC), 30*time.Minute)
}

// powerByHour draws the day of both buses as steps of half an hour.
func powerByHour() (figure.Chart, error) {
	ledger, _, err := rig()
	if err != nil {
		return figure.Chart{}, err
	}
	chart := figure.Chart{
		Title: "Power through a day",
		Description: "Two stepped lines over 24 hours. The 12 V bus takes about 80 W in the small hours, 45 W by day, and up to 140 W in the " +
			"evening. The 120 V bus takes 9 W all day, with steps for coffee in the morning, the oven at noon and in the evening, and laptops after it.",
		X: figure.Axis{Label: "time of day", Unit: "h", Min: 0, Max: 24},
		Y: figure.Axis{Label: "power", Unit: "W", Min: 0, Max: 300},
	}
	for _, total := range ledger.Buses {
		day, err := rigDay(ledger, total.Bus.Name)
		if err != nil {
			return figure.Chart{}, err
		}
		line := figure.Line{Name: total.Bus.Voltage.String() + " bus"}
		for i, power := range day.Values {
			y := units.In(power, units.Watt)
			from := day.Time(i).Sub(day.Start)
			line.Points = append(line.Points,
				figure.Point{X: from.Hours(), Y: y}, figure.Point{X: (from + day.Step).Hours(), Y: y})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}
