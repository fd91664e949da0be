package voltagedrop

import (
	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// dropByLength draws the drop of a 20 A load against length, a line a size.
func dropByLength() (figure.Chart, error) {
	chart := figure.Chart{
		Title:       "Voltage drop against length",
		Description: "Straight lines from the origin, one for each size, the thinnest the steepest. A limit is drawn across.",
		X:           figure.Axis{Label: "length, one way", Unit: "ft", Min: 0, Max: 40},
		Y:           figure.Axis{Label: "voltage drop", Unit: "%", Min: 0, Max: 12},
		Limits:      []figure.Limit{{Name: "3 %", Y: 3}},
	}
	for _, gauge := range []int{14, 12, 10, 8, 6, 4} {
		line := figure.Line{Name: wire.AWG(gauge).String(), Points: []figure.Point{{X: 0, Y: 0}}}
		for feet := 2.0; feet <= 40; feet += 2 {
			run := wire.Run{
				Current:   20 * units.Ampere,
				Conductor: wire.Conductor{Size: wire.AWG(gauge)},
				Source:    12.8 * units.Volt,
			}
			run.OneWay = units.Scale(units.Foot, units.Ratio(feet))
			drop, err := wire.VoltageDrop(run)
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: feet, Y: units.In(drop.Fraction, units.Percent)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}
