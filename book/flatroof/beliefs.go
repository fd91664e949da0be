package flatroof

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// roof is that of the first example with the sun of a day, cells at 25 °C.
func roof(sun units.Irradiation) solar.PanelDay {
	return solar.PanelDay{Peak: 440 * units.Watt, Irradiation: sun, Losses: solar.TypicalLosses()}
}

// hundred is 100 W with the sun of a day.
func hundred(sun units.Irradiation) solar.PanelDay {
	r := roof(sun)
	r.Peak = 100 * units.Watt
	return r
}

// harvests returns the harvest of each roof.
func harvests(roofs ...solar.PanelDay) ([]solar.DayHarvest, error) {
	var days []solar.DayHarvest
	for _, r := range roofs {
		h, err := solar.DailyHarvest(r)
		if err != nil {
			return nil, err
		}
		days = append(days, h)
	}
	return days, nil
}

// solveRule compares what a map promises with what a flat roof brings.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	december := hundred(greensboroDecember)
	// Near what the hours of that December come to, weighted by the light.
	december.PowerCoefficient, december.CellTemperature = units.Some(-0.4*units.PercentPerKelvin), units.Celsius(20)
	h, err := harvests(roof(chicago().in(10)), roof(chicago().in(12)), roof(chicago().in(7)),
		hundred(greensboroTilted), hundred(greensboroFlat), december)
	if err != nil {
		return weave.Answer{}, err
	}
	october, worst, best, tilted, flat, december100 := h[0], h[1], h[2], h[3], h[4], h[5]
	var sum units.Ratio
	for _, loss := range solar.TypicalLosses().All() {
		sum += loss.Fraction
	}
	return weave.Answer{Values: []weave.Value{
		weave.Show("thumb", units.Scale(october.Nameplate, 75*units.Percent), "Wh", 4),
		weave.Show("worst", worst.Energy, "Wh", 3),
		weave.Show("best", best.Energy, "Wh", 4),
		weave.Show("times", units.RatioOf(best.Energy, worst.Energy), "1", 2),
		weave.Show("tilted_hours", tilted.PeakHours, "h", 2),
		weave.Show("flat_hours", flat.PeakHours, "h", 2),
		weave.Show("december_hours", december100.PeakHours, "h", 2),
		weave.Show("promised", tilted.Energy, "Wh", 3),
		weave.Show("december", december100.Energy, "Wh", 3),
		weave.Show("sum", sum, "%", 3),
		weave.Show("lost", solar.TypicalLosses().Lost(), "%", 4),
	}}, nil
}

func solveWatts(*weave.Inputs) (weave.Answer, error) {
	october := roof(chicago().in(10))
	october.PowerCoefficient, october.CellTemperature = units.Some(-0.35*units.PercentPerKelvin), units.Celsius(30)
	h, err := solar.DailyHarvest(october)
	if err != nil {
		return weave.Answer{}, err
	}
	sun, err := solar.SunOn(solar.DayAt{Latitude: 41.8 * units.Degree, OfYear: 288})
	return weave.Answer{
		Text: "Near Chicago in the middle of October it is up for {{daylight}}. The mean day brings {{energy}}, so while the sun is up " +
			"the panels give {{mean}} in the mean, of {{peak}} on their labels.",
		Values: []weave.Value{
			weave.Show("daylight", sun.Daylight, "h", 3),
			weave.Show("energy", h.Energy, "Wh", 4),
			weave.Show("mean", h.Energy.In(sun.Daylight), "W", 2),
			weave.Show("peak", h.Day.Peak, "W", 3),
		},
	}, err
}

// solveHot puts the same light on panels in a heat wave and in clear frost.
func solveHot(*weave.Inputs) (weave.Answer, error) {
	var powers [2]units.Power
	var cells [2]units.Temperature
	for i, air := range []units.Temperature{units.Celsius(38), units.Celsius(-5)} {
		heat, err := solar.CellTemperature(solar.Exposure{
			Air: air, Irradiance: 1000 * units.WattPerSquareMetre, Nominal: units.Celsius(50),
		})
		if err != nil {
			return weave.Answer{}, err
		}
		hour, err := solar.DailyHarvest(solar.PanelDay{
			Peak: 440 * units.Watt, Irradiation: heat.Exposure.Irradiance.For(units.Hour),
			PowerCoefficient: units.Some(-0.35 * units.PercentPerKelvin), CellTemperature: heat.Temperature,
		})
		if err != nil {
			return weave.Answer{}, err
		}
		powers[i], cells[i] = hour.Energy.In(units.Hour), heat.Temperature
	}
	return weave.Answer{
		Text: "The length of the day helps, not its heat. The same light makes {{hot}} in cells of {{hot_cells}}, on a day of 38 °C, and {{cool}} in " +
			"cells of {{cool_cells}}, on a day of -5 °C. Heat has taken {{lost}}.",
		Values: []weave.Value{
			weave.Show("hot", powers[0], "W", 3),
			weave.Show("hot_cells", cells[0], "°C", 3),
			weave.Show("cool", powers[1], "W", 3),
			weave.Show("cool_cells", cells[1], "°C", 3),
			weave.Show("lost", units.RatioOf(powers[1]-powers[0], powers[1]), "%", 2),
		},
	}, nil
}

func solveNorth(*weave.Inputs) (weave.Answer, error) {
	north, err := solar.SunOn(solar.DayAt{Latitude: 60 * units.Degree, OfYear: 166})
	if err != nil {
		return weave.Answer{}, err
	}
	equator, err := solar.SunOn(solar.DayAt{OfYear: 166})
	return weave.Answer{
		Text: "Not in summer. On 15 June level ground at {{latitude}} has {{north}} above the air, the equator {{equator}}: the sun is lower " +
			"and stays for {{daylight}}. December pays for it.",
		Values: []weave.Value{
			weave.Show("latitude", north.Day.Latitude, "°", 2),
			weave.Show("north", north.AboveAir, "kWh/m²", 3),
			weave.Show("equator", equator.AboveAir, "kWh/m²", 3),
			weave.Show("daylight", north.Daylight, "h", 3),
		},
	}, err
}

func solveLosses(*weave.Inputs) (weave.Answer, error) {
	var ten []solar.Loss
	var sum units.Ratio
	for _, name := range []string{"dirt", "shade", "snow", "mismatch", "wires", "plugs", "first light", "label", "age", "outages"} {
		loss := solar.Loss{Name: name, Fraction: 10 * units.Percent}
		ten = append(ten, loss)
		sum += loss.Fraction
	}
	list, err := solar.NewLosses(ten...)
	return weave.Answer{
		Text: "Then {{count}} losses of 10 % would take {{sum}} and the roof would bring nothing. Each takes its part of what the one " +
			"before has left: together they take {{lost}}, and {{kept}} is left.",
		Values: []weave.Value{
			weave.Say("count", list.Len()),
			weave.Show("sum", sum, "%", 3),
			weave.Show("lost", list.Lost(), "%", 3),
			weave.Show("kept", list.Kept(), "%", 3),
		},
	}, err
}

// solveShort compares the current of a shorted panel with that of the panel
// at work and with its fuse.
func solveShort(*weave.Inputs) (weave.Answer, error) {
	const power, fuse = 220 * units.Watt, 15 * units.Ampere
	c, err := solar.Currents(solar.Strings{Rules: solar.NEC2017,
		Array: solar.Array{Panel: solar.Panel{Isc: 6.12 * units.Ampere}, Series: 1, Parallel: 1}})
	atWork := power.At(38.4 * units.Volt)
	return weave.Answer{
		Text: "A panel that gives {{work}} at its best gives {{short}} into a short, {{more}} more. A fuse of {{fuse}} carries that for ever. " +
			"The fuse is there for what other strings or the bank feed in; the short itself burns as long as the sun shines.",
		Values: []weave.Value{
			weave.Show("work", atWork, "A", 3),
			weave.Show("short", c.ShortCircuit, "A", 3),
			weave.Show("more", units.RatioOf(c.ShortCircuit-atWork, atWork), "%", 1),
			weave.Show("fuse", fuse, "A", 2),
		},
	}, err
}
