package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// fao cites a place in FAO-56.
func fao(place string) working.Source {
	return working.Source{Body: "FAO", Title: "Irrigation and Drainage Paper 56, Crop evapotranspiration", Edition: "1998",
		Place: place, Provenance: working.Read}
}

// textbook cites a place in a textbook that open test modules quote.
func textbook(place string) working.Source {
	return working.Source{Body: "Duffie and Beckman", Title: "Solar Engineering of Thermal Processes",
		Place: place + ", as open test modules quote it", Provenance: working.Read}
}

const (
	radiationTable = "annex 2, table 2.6, in a public transcription"
	daylightTable  = "annex 2, table 2.7, in a public transcription"
	cellEquation   = "the table departs from its own equation by up to this in single cells"
)

var (
	modelTests = working.Source{Title: "test modules of an open-source photovoltaic modelling library", Provenance: working.Read}
	dobos      = working.Source{Body: "NREL", Title: "TP-6A20-62641 (Dobos)", Edition: "2014",
		Place: "system losses, as an open-source modelling library quotes them", Provenance: working.Read}
	coldTable = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "table 690.7(A), in a public transcription", Provenance: working.Read}
	singleDiode = working.Source{Title: "single-diode equation of a silicon cell, solved for comparison", Provenance: working.Derived}
)

// A printedSun is what print says of a day.
type printedSun struct {
	what         string
	day          solar.DayAt
	show         func(solar.DaySun) units.Value
	digits, unit string
	source       working.Source
	within, why  string
}

func daylight(s solar.DaySun) units.Value    { return s.Daylight }
func irradiation(s solar.DaySun) units.Value { return s.AboveAir }
func declination(s solar.DaySun) units.Value { return s.Declination }
func sunset(s solar.DaySun) units.Value      { return s.SunsetAngle }
func distance(s solar.DaySun) units.Value    { return s.InverseDistance }

// clearSky is what equation 35 has for a day of sunshine.
func clearSky(s solar.DaySun) units.Value { return units.Scale(s.AboveAir, 75*units.Percent) }

// partSky is the same for a day with sunshine in 7.1 of its 10.9 hours.
func partSky(s solar.DaySun) units.Value {
	sunny := units.RatioOf(7.1*units.Hour, s.Daylight)
	return units.Scale(s.AboveAir, 25*units.Percent+units.Scale(50*units.Percent, sunny))
}

func sunRows(all ...printedSun) ([]weave.Row, error) {
	var rows []weave.Row
	for _, p := range all {
		s, err := solar.SunOn(p.day)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: p.show(s), Printed: units.MustPrinted(p.digits, p.unit), Source: p.source,
			Within: p.within, Why: p.why})
	}
	return rows, nil
}

// printedFAO compares with the worked examples of FAO-56.
func printedFAO() ([]weave.Row, error) {
	spring := solar.DayAt{Latitude: -20 * units.Degree, OfYear: 246}
	may := solar.DayAt{Latitude: -22.9 * units.Degree, OfYear: 135}
	return sunRows(
		printedSun{what: "20° S, 3 September: inverse relative distance", day: spring, show: distance, digits: "0.985", source: fao("example 8")},
		printedSun{what: "20° S, 3 September: declination", day: spring, show: declination, digits: "0.12", unit: "rad", source: fao("example 8")},
		printedSun{what: "20° S, 3 September: sunset hour angle", day: spring, show: sunset, digits: "1.527", unit: "rad", source: fao("example 8")},
		printedSun{what: "20° S, 3 September: above the air", day: spring, show: irradiation, digits: "32.2", unit: "MJ/m²", source: fao("example 8")},
		printedSun{what: "20° S, 3 September: daylight", day: spring, show: daylight, digits: "11.7", unit: "h", source: fao("example 9")},
		printedSun{what: "22.9° S, 15 May: above the air", day: may, show: irradiation, digits: "25.1", unit: "MJ/m²", source: fao("example 10")},
		printedSun{what: "22.9° S, 15 May: daylight", day: may, show: daylight, digits: "10.9", unit: "h", source: fao("example 10")},
		printedSun{what: "22.9° S, 15 May: below the air with 7.1 h of sunshine", day: may, show: partSky, digits: "14.5", unit: "MJ/m²",
			source: fao("example 10")},
		printedSun{what: "22.9° S, 15 May: below a clear sky", day: may, show: clearSky, digits: "18.8", unit: "MJ/m²", source: fao("example 11")},
	)
}

// printedTables compares with cells of published tables.
func printedTables() ([]weave.Row, error) {
	on := func(degrees float64, ofYear int) solar.DayAt {
		return solar.DayAt{Latitude: units.Scale(units.Degree, units.Ratio(degrees)), OfYear: ofYear}
	}
	ra, n := fao(radiationTable), fao(daylightTable)
	return sunRows(
		printedSun{what: "equator, 15 June: above the air", day: on(0, 166), show: irradiation, digits: "33.4", unit: "MJ/m²", source: ra},
		printedSun{what: "24° N, 15 December: above the air", day: on(24, 349), show: irradiation, digits: "23.3", unit: "MJ/m²", source: ra},
		printedSun{what: "40° N, 15 January: above the air", day: on(40, 15), show: irradiation, digits: "15.0", unit: "MJ/m²", source: ra},
		printedSun{what: "40° N, 15 June: above the air", day: on(40, 166), show: irradiation, digits: "41.9", unit: "MJ/m²", source: ra,
			within: "0.16 MJ/m²", why: cellEquation},
		printedSun{what: "60° N, 15 June: above the air", day: on(60, 166), show: irradiation, digits: "41.2", unit: "MJ/m²", source: ra},
		printedSun{what: "60° N, 15 December: above the air", day: on(60, 349), show: irradiation, digits: "2.2", unit: "MJ/m²", source: ra},
		printedSun{what: "64° S, 15 December: above the air", day: on(-64, 349), show: irradiation, digits: "43.9", unit: "MJ/m²", source: ra},
		printedSun{what: "24° N, 15 June: daylight", day: on(24, 166), show: daylight, digits: "13.5", unit: "h", source: n},
		printedSun{what: "40° N, 15 June: daylight", day: on(40, 166), show: daylight, digits: "14.8", unit: "h", source: n},
		printedSun{what: "56° N, 15 May: daylight", day: on(56, 135), show: daylight, digits: "16.0", unit: "h", source: n,
			within: "0.08 h", why: cellEquation},
		printedSun{what: "56° N, 15 December: daylight", day: on(56, 349), show: daylight, digits: "6.7", unit: "h", source: n},
		printedSun{what: "43° N, day 75: sunset hour angle", day: on(43, 75), show: sunset, digits: "87.8", unit: "°",
			source: textbook("example 1.6.3")},
		printedSun{what: "43° N, 15 April: above the air", day: on(43, 105), show: irradiation, digits: "33.8", unit: "MJ/m²",
			source: textbook("example 1.10.1")},
		printedSun{what: "43° N, day 47: declination", day: on(43, 47), show: declination, digits: "-13.0", unit: "°",
			source: textbook("table 1.6.1"), within: "0.15°", why: "the table is by the formula of Cooper (1969), which departs by up to this"},
	)
}

// printedDay compares the day of the example with the tables.
func printedDay(s solar.DaySun) []weave.Row {
	return []weave.Row{
		{What: "above the air", Ours: s.AboveAir, Printed: units.MustPrinted("13.6", "MJ/m²"), Source: fao(radiationTable)},
		{What: "daylight", Ours: s.Daylight, Printed: units.MustPrinted("9.2", "h"), Source: fao(daylightTable)},
	}
}

// printedCell compares the cells of the example with a published case.
func printedCell(h solar.CellHeat) []weave.Row {
	return []weave.Row{{What: "cells", Ours: h.Temperature, Printed: units.MustPrinted("67.5", "°C"), Source: modelTests}}
}

// printedPanels compares harvest, losses and cells with print.
func printedPanels() ([]weave.Row, error) {
	h, err := solar.DailyHarvest(solar.PanelDay{
		Peak: 100 * units.Watt, Irradiation: 0.9 * units.KilowattHourPerSquareMetre,
		PowerCoefficient: units.Some(-0.3 * units.PercentPerKelvin), CellTemperature: units.Celsius(30),
	})
	if err != nil {
		return nil, err
	}
	rows := []weave.Row{
		{What: "100 W, 900 W/m² for an hour, cells at 30 °C, -0.3 %/K", Ours: h.Energy, Printed: units.MustPrinted("88.65", "Wh"), Source: modelTests},
		{What: "ten typical losses together", Ours: solar.TypicalLosses().Lost(), Printed: units.MustPrinted("14.08", "%"), Source: dobos},
	}
	for _, p := range []struct {
		what   string
		x      solar.Exposure
		digits string
	}{
		{"nominal 50 °C, air at 20 °C, 800 W/m²", solar.Exposure{Air: units.Celsius(20), Irradiance: 800 * units.WattPerSquareMetre}, "50.0"},
		{"nominal 50 °C, air at 40 °C, 600 W/m²", solar.Exposure{Air: units.Celsius(40), Irradiance: 600 * units.WattPerSquareMetre}, "62.5"},
	} {
		p.x.Nominal = units.Celsius(50)
		heat, err := solar.CellTemperature(p.x)
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.what, Ours: heat.Temperature, Printed: units.MustPrinted(p.digits, "°C"), Source: modelTests})
	}
	return rows, nil
}

// printedCold compares with the table of the rule set.
func printedCold() ([]weave.Row, error) {
	var rows []weave.Row
	for _, p := range []struct {
		coldest float64
		digits  string
	}{
		{20, "1.02"}, {0, "1.10"}, {-15, "1.16"}, {-16, "1.18"}, {-25, "1.20"}, {-40, "1.25"},
	} {
		c, err := solar.ColdVoltage(solar.ColdString{
			Rules: solar.NEC2017, Series: 1, Coldest: units.Celsius(p.coldest),
			Panel: solar.Panel{Voc: 40 * units.Volt, Cells: solar.CrystallineSilicon},
		})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: "factor at " + c.String.Coldest.String(), Ours: c.TableFactor,
			Printed: units.MustPrinted(p.digits, ""), Source: coldTable})
	}
	return rows, nil
}
