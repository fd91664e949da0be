package protection

import (
	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// limitBySize draws the greatest device of each size under the three rule
// sets.
func limitBySize() (figure.Bars, error) {
	bars := figure.Bars{
		Title: "Greatest device by size, in three rule sets",
		Description: "Three bars for each size, the thinnest first. From 14 to 10 AWG the RV limit and that of the NEC are alike, and the " +
			"boat's is far above both. From 8 AWG up the RV bar is far above the NEC's: its table has ended, and free air takes its place.",
		Label: "conductor",
		Y:     figure.Axis{Label: "greatest device", Unit: "A", Min: 0, Max: 200},
	}
	gauges := []int{16, 14, 12, 10, 8, 6}
	for _, n := range gauges {
		bars.Categories = append(bars.Categories, wire.AWG(n).String())
	}
	for _, rules := range []wire.RuleSet{wire.RVLowVoltage, wire.NEC2017, wire.Boat33CFR} {
		group := figure.Group{Name: rules.String()}
		for _, n := range gauges {
			p, err := wire.Protect(wire.Circuit{
				Installation: wire.Installation{Rules: rules, Size: wire.AWG(n), Insulation: wire.Insulation105},
				Load:         1 * units.Ampere,
			})
			if err != nil {
				return figure.Bars{}, err
			}
			group.Values = append(group.Values, units.In(p.Limit, units.Ampere))
		}
		bars.Groups = append(bars.Groups, group)
	}
	return bars, nil
}

// faultByLength draws the short at the end of a run against its length.
func faultByLength() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Short circuit at the end of a run",
		Description: "Five curves that fall from one point at the battery, one for each size, the thinnest steepest. Limits are drawn at " +
			"300 A and at 20 A. The three thinner sizes pass below 300 A one after the other, the thinnest within a few feet; none " +
			"passes below 20 A.",
		X:      figure.Axis{Label: "length, one way", Unit: "ft", Min: 0, Max: 40},
		Y:      figure.Axis{Label: "fault current", Unit: "A", Min: 10, Max: 10000, Log: true},
		Limits: []figure.Limit{{Name: "300 A main fuse", Y: 300}, {Name: "20 A fuse", Y: 20}},
	}
	for _, size := range []wire.Size{wire.Aught(1), wire.AWG(4), wire.AWG(8), wire.AWG(12), wire.AWG(16)} {
		line := figure.Line{Name: size.String()}
		for feet := 0.0; feet <= 40; feet += 0.5 {
			f, err := wire.ShortCircuit(houseBank(), wire.Conductor{Size: size}, units.Scale(units.Foot, units.Ratio(feet)))
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: feet, Y: units.In(f.Current, units.Ampere)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// borneByCurrent draws how long each size bears a short, up to 5 s.
func borneByCurrent() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "How long a conductor bears a short",
		Description: "Five parallel lines that fall to the right, the thinnest conductor the farthest to the left. Each begins at 5 s, where the method " +
			"ends. Twice the current is borne for a quarter of the time. A limit is drawn at 0.1 s.",
		X:      figure.Axis{Label: "current of the short", Unit: "A", Min: 50, Max: 20000, Log: true},
		Y:      figure.Axis{Label: "time", Unit: "s", Min: 0.01, Max: 10, Log: true},
		Limits: []figure.Limit{{Name: "0.1 s", Y: 0.1}},
	}
	for _, size := range []wire.Size{wire.AWG(16), wire.AWG(12), wire.AWG(8), wire.AWG(4), wire.Aught(2)} {
		line := figure.Line{Name: size.String()}
		for current := 50.0; current <= 20000; current *= 1.02 {
			w, err := wire.Adiabatic(wire.ShortTime{Size: size, Core: wire.CorePVC70, Current: units.Scale(units.Ampere, units.Ratio(current))})
			if err != nil {
				return figure.Chart{}, err
			}
			if longest, ok := w.Longest.Get(); ok {
				line.Points = append(line.Points, figure.Point{X: current, Y: units.In(longest, units.Second)})
			}
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}
