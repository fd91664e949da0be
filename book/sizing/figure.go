package sizing

import (
	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// drawnEfficiency is that of the inverters in the first figure.
const drawnEfficiency = 90 * units.Percent

// currentByVoltage draws the current of three inverters against the voltage
// at their terminals.
func currentByVoltage() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Battery current against voltage",
		Description: "Three falling curves, one for each power, the greatest on top. Each halves from 12 V to 24 V and again to 48 V. A limit " +
			"is drawn at 100 A. At 12 V only the lowest curve is below it; at 48 V all three are.",
		X:      figure.Axis{Label: "voltage at the inverter", Unit: "V", Min: 10, Max: 60},
		Y:      figure.Axis{Label: "current", Unit: "A", Min: 0, Max: 350},
		Limits: []figure.Limit{{Name: "100 A, one battery", Y: 100}},
	}
	for _, power := range []units.Power{3000 * units.Watt, 2000 * units.Watt, 1000 * units.Watt} {
		line := figure.Line{Name: power.String()}
		for volts := 10.0; volts <= 60; volts++ {
			side, err := inverter.BatterySide(inverter.DCSide{
				Machine: inverter.Machine{
					Continuous:    power,
					Efficiency:    drawnEfficiency,
					LowestVoltage: units.Some(units.Scale(units.Volt, units.Ratio(volts))),
				},
				Margin: 100 * units.Percent,
			})
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: volts, Y: units.In(side.Current, units.Ampere)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// The two inverters of the second figure, with the same loads.
func drawnDays() (large, small inverter.Day) {
	energy := 500 * units.WattHour
	large = inverter.Day{Energy: energy, Efficiency: 94 * units.Percent, Idle: units.Some(40 * units.Watt)}
	small = inverter.Day{Energy: energy, Efficiency: 88 * units.Percent, Idle: units.Some(10 * units.Watt)}
	return large, small
}

// energyByHours draws what the two take in a day against the hours on.
func energyByHours() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Energy from the bank against the hours that the inverter is on",
		Description: "Two straight lines that begin close together, just above the level line of the loads. The large inverter's begins a little " +
			"lower, crosses that of the small one within the first two hours, and rises four times as steeply.",
		X: figure.Axis{Label: "hours on in a day", Unit: "h", Min: 0, Max: 24},
		Y: figure.Axis{Label: "energy from the bank", Unit: "Wh", Min: 0, Max: 1600},
	}
	large, small := drawnDays()
	for _, drawn := range []struct {
		name string
		day  inverter.Day
	}{{"large inverter", large}, {"small inverter", small}} {
		line := figure.Line{Name: drawn.name}
		for hours := 1.0; hours <= 24; hours++ { // no load runs while it is off
			drawn.day.On = units.Some(units.Scale(units.Hour, units.Ratio(hours)))
			use, err := inverter.EnergyADay(drawn.day)
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: hours, Y: units.In(use.Energy, units.WattHour)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	loads := units.In(large.Energy, units.WattHour)
	chart.Lines = append(chart.Lines, figure.Line{Name: "the loads", Points: []figure.Point{{X: 0, Y: loads}, {X: 24, Y: loads}}})
	return chart, nil
}

// solvePictured names what the captions need.
func solvePictured(*weave.Inputs) (weave.Answer, error) {
	large, small := drawnDays()
	most, err := inverter.EnergyADay(large)
	if err != nil {
		return weave.Answer{}, err
	}
	least, err := inverter.EnergyADay(small)
	saved := units.Minus(least.Loads, most.Loads)
	more := units.Minus(large.Idle.Or(0), small.Idle.Or(0))
	return weave.Answer{Values: []weave.Value{
		weave.Show("efficiency", drawnEfficiency, "%", 2),
		weave.Show("energy", large.Energy, "Wh", 3),
		weave.Show("large_efficiency", large.Efficiency, "%", 2),
		weave.Show("large_idle", large.Idle.Or(0), "W", 2),
		weave.Show("small_efficiency", small.Efficiency, "%", 2),
		weave.Show("small_idle", small.Idle.Or(0), "W", 2),
		weave.Show("crossing", saved.Lasts(more), "h", 2),
	}}, err
}
