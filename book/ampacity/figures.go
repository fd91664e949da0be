package ampacity

import (
	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// staircase calls step for each band of the table of factors from 10 °C up to
// the warmest that class has, with its ends.
func staircase(x wire.Installation, step func(from, to float64, c wire.CarryingCapacity)) error {
	for top := 15.0; top <= 85 && top < x.Insulation.Temperature().Celsius(); top += 5 {
		x.Ambient = units.Celsius(top)
		c, err := wire.Ampacity(x)
		if err != nil {
			return err
		}
		step(top-5, top, c)
	}
	return nil
}

// ampacityByAir draws what a 10 AWG wire bears against the temperature of the
// air, a staircase for each class of insulation.
func ampacityByAir() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "What the insulation of 10 AWG bears in warm air",
		Description: "Three descending staircases against the temperature of the air, the lowest for the coolest insulation. Each ends " +
			"in the last band below the rating of its insulation. A limit is drawn at 30 A; the staircases are at it one after the other.",
		X:      figure.Axis{Label: "air round the wire", Unit: "°C", Min: 10, Max: 85},
		Y:      figure.Axis{Label: "ampacity", Unit: "A", Min: 0, Max: 50},
		Limits: []figure.Limit{{Name: "terminals, 60 °C", Y: 30}},
	}
	for _, class := range []wire.Insulation{wire.Insulation90, wire.Insulation75, wire.Insulation60} {
		line := figure.Line{Name: class.String()}
		x := wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: class}
		err := staircase(x, func(from, to float64, c wire.CarryingCapacity) {
			amperes := units.In(c.Corrected, units.Ampere)
			line.Points = append(line.Points, figure.Point{X: from, Y: amperes}, figure.Point{X: to, Y: amperes})
		})
		if err != nil {
			return figure.Chart{}, err
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// factorByAir draws the factor for warm air three times: as the code prints
// it, as the root, and by the heat balance.
func factorByAir() (figure.Chart, error) {
	class := wire.Insulation75
	chart := figure.Chart{
		Title: "What warm air leaves: the table, the root, the balance",
		Description: "Three descending lines through 100 % at 30 °C: a smooth root, the staircase of the code that touches it at the end of each " +
			"step, and the heat balance of a 6 AWG cable, which is nearly on the root and a little below it in warm air. All fall steeply towards 75 °C.",
		X: figure.Axis{Label: "air round the wire", Unit: "°C", Min: 10, Max: 75},
		Y: figure.Axis{Label: "of the ampacity at 30 °C", Unit: "%", Min: 0, Max: 125},
	}
	code := figure.Line{Name: "NEC 2017"}
	err := staircase(wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(6), Insulation: class}, func(from, to float64, c wire.CarryingCapacity) {
		percent := units.In(c.Ambient, units.Percent)
		code.Points = append(code.Points, figure.Point{X: from, Y: percent}, figure.Point{X: to, Y: percent})
	})
	if err != nil {
		return figure.Chart{}, err
	}
	root, physics := figure.Line{Name: "root"}, figure.Line{Name: "heat balance"}
	x := wire.FreeAirCable{Size: wire.AWG(6), Metal: class.Temperature()}
	base, err := wire.FreeAir(x) // in air of 30 °C
	if err != nil {
		return figure.Chart{}, err
	}
	for celsius := 10.0; celsius < 75; celsius++ {
		x.Ambient = units.Celsius(celsius)
		b, err := wire.FreeAir(x)
		if err != nil {
			return figure.Chart{}, err
		}
		root.Points = append(root.Points, figure.Point{X: celsius, Y: units.In(rootFactor(class, x.Ambient), units.Percent)})
		physics.Points = append(physics.Points, figure.Point{X: celsius, Y: units.In(units.RatioOf(b.Current, base.Current), units.Percent)})
	}
	chart.Lines = []figure.Line{code, root, physics}
	return chart, nil
}

// ampacityBySize draws the rule sets against the area of the metal.
func ampacityBySize() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Ampacity by size, and by who is asked",
		Description: "Five rising lines against the area of the metal from 18 AWG to 4/0. The heat balance in free air and the boat's table for " +
			"the same insulation run close together at the top; below them the NEC's column for 90 °C and its column for 60 °C. The RV limit is a " +
			"short line at the bottom, on that for 60 °C from 14 AWG to 10 AWG, where it ends.",
		X: figure.Axis{Label: "metal", Unit: "mm²", Min: 0.8, Max: 120, Log: true},
		Y: figure.Axis{Label: "ampacity", Unit: "A", Min: 5, Max: 600, Log: true},
	}
	gauges := []int{18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3}
	for _, s := range []struct {
		name     string
		x        wire.Installation
		from, to int // in gauges
	}{
		{"boat, 105 °C", wire.Installation{Rules: wire.Boat33CFR, Insulation: wire.Insulation105}, 0, len(gauges)},
		{"NEC 2017, 90 °C", wire.Installation{Rules: wire.NEC2017, Insulation: wire.Insulation90, Terminals: wire.Insulation90}, 2, len(gauges)},
		{"NEC 2017, 60 °C", wire.Installation{Rules: wire.NEC2017, Insulation: wire.Insulation60}, 2, len(gauges)},
		{"RV low voltage", wire.Installation{Rules: wire.RVLowVoltage, Insulation: wire.Insulation105}, 0, 5},
	} {
		line := figure.Line{Name: s.name}
		for _, n := range gauges[s.from:s.to] {
			s.x.Size = wire.AWG(n)
			c, err := wire.Ampacity(s.x)
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, point(s.x.Size, c.Current))
		}
		chart.Lines = append(chart.Lines, line)
	}
	physics := figure.Line{Name: "heat balance, 105 °C"}
	for _, n := range gauges {
		b, err := wire.FreeAir(wire.FreeAirCable{Size: wire.AWG(n), Metal: wire.Insulation105.Temperature()})
		if err != nil {
			return figure.Chart{}, err
		}
		physics.Points = append(physics.Points, point(wire.AWG(n), b.Current))
	}
	chart.Lines = append(chart.Lines, physics)
	return chart, nil
}

// point is a size and a current.
func point(size wire.Size, i units.Current) figure.Point {
	return figure.Point{X: units.In(size.Area(), units.SquareMillimetre), Y: units.In(i, units.Ampere)}
}
