package flatroof

import (
	"fmt"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// harvestByMonth draws what the same roof brings in two places.
func harvestByMonth() (figure.Bars, error) {
	bars := figure.Bars{
		Title: "Harvest of a flat roof through the year",
		Description: "Two bars for each month, of 440 W near Chicago and near Miami. Chicago rises from December, below 600 Wh, to July, above " +
			"2300 Wh, and is above Miami in June and July only. Miami never falls below 1200 Wh.",
		Label:      "month",
		Categories: []string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
		Y:          figure.Axis{Label: "harvest of a day", Unit: "Wh", Min: 0, Max: 2500},
	}
	for _, place := range []struct {
		name string
		year typicalYear
	}{{"Chicago, 41.8° N", chicago()}, {"Miami, 25.8° N", miami()}} {
		group := figure.Group{Name: place.name}
		for month := 1; month <= 12; month++ {
			h, err := solar.DailyHarvest(roof(place.year.in(month)))
			if err != nil {
				return figure.Bars{}, err
			}
			group.Values = append(group.Values, units.In(h.Energy, units.WattHour))
		}
		bars.Groups = append(bars.Groups, group)
	}
	return bars, nil
}

// aboveAir draws the irradiation above the air against the day of the year,
// a curve for each of three latitudes.
func aboveAir() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Irradiation above the air through the year",
		Description: "Three curves that are highest in June, for 25°, 40° and 55° north. In June they lie close together, between 11 and 12 kWh/m² a day. In " +
			"winter they part: at 25° a little above 6 kWh/m², at 40° below 4, at 55° a little above 1.",
		X: figure.Axis{Label: "day of the year", Unit: "d", Min: 0, Max: 365},
		Y: figure.Axis{Label: "irradiation of a day", Unit: "kWh/m²", Min: 0, Max: 12},
	}
	for _, degrees := range []int{25, 40, 55} {
		line := figure.Line{Name: fmt.Sprintf("%d° N", degrees)}
		for day := 1; day <= 365; day += 4 {
			sun, err := solar.SunOn(solar.DayAt{Latitude: units.Scale(units.Degree, units.Ratio(degrees)), OfYear: day})
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: float64(day), Y: units.In(sun.AboveAir, units.KilowattHourPerSquareMetre)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// coldVoltage draws the open-circuit voltage of two panels in series against
// the temperature, by the coefficient and by the table.
func coldVoltage() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Open-circuit voltage of two panels in series",
		Description: "A straight line, by the coefficient, falls from 109 V at -40 °C to 92 V at 25 °C and passes the limit of 100 V near -4 °C. " +
			"The table's staircase is above it below 25 °C and passes the limit at 5 °C.",
		X:      figure.Axis{Label: "coldest morning", Unit: "°C", Min: -40, Max: 25},
		Y:      figure.Axis{Label: "open-circuit voltage", Unit: "V", Min: 85, Max: 120},
		Limits: []figure.Limit{{Name: "100 V input", Y: 100}},
	}
	coefficient, table := figure.Line{Name: "by coefficient"}, figure.Line{Name: "by the table"}
	for degrees := -40; degrees <= 25; degrees++ {
		c, err := solar.ColdVoltage(solar.ColdString{
			Rules:   solar.NEC2017,
			Panel:   solar.Panel{Voc: 46.2 * units.Volt, VoltageCoefficient: units.Some(-0.28 * units.PercentPerKelvin)},
			Series:  2,
			Coldest: units.Celsius(float64(degrees)),
		})
		if err != nil {
			return figure.Chart{}, err
		}
		by, _ := c.ByTable.Get() // the table goes from -40 °C to 25 °C
		coefficient.Points = append(coefficient.Points, figure.Point{X: float64(degrees), Y: units.In(c.Voltage, units.Volt)})
		// Between two whole degrees the colder band holds: a step at the warm end.
		if n := len(table.Points); n > 0 && table.Points[n-1].Y != units.In(by, units.Volt) {
			table.Points = append(table.Points, figure.Point{X: float64(degrees), Y: table.Points[n-1].Y})
		}
		table.Points = append(table.Points, figure.Point{X: float64(degrees), Y: units.In(by, units.Volt)})
	}
	chart.Lines = []figure.Line{coefficient, table}
	return chart, nil
}
