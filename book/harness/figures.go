package harness

import (
	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// The cable of the inverter example, of which the first figure is.
const (
	halfCharged = 12.2 * units.Volt
	theWay      = 10 * units.Milliohm
)

// voltageByPower draws both states of one load on one cable. A resistor at the
// end of it visits all of them, from no load down to a short circuit: it never
// collapses.
func voltageByPower() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Voltage at the load against its power",
		Description: "A curve like a nose that points to the right. From the top left, where there is no load, it falls slowly, then ever " +
			"faster, and at half of the voltage it turns back to the origin. A straight line, tangent to it at no load, stays above it " +
			"and goes on beyond the nose. A limit is drawn at 10.5 V; the curve passes below it well before the line does.",
		X:      figure.Axis{Label: "power of the load", Unit: "W", Min: 0, Max: 4500},
		Y:      figure.Axis{Label: "voltage at the load", Unit: "V", Min: 0, Max: 13},
		Limits: []figure.Limit{{Name: "10.5 V, it stops", Y: 10.5}},
	}
	held, lost := figure.Line{Name: "where it settles"}, figure.Line{Name: "never held"}
	// In even steps of the current: x is its part of a short circuit, which
	// the last step all but is.
	const steps, all = 100, 0.9999 * units.One
	for i := range steps + 1 {
		load := wire.Load{}
		if i > 0 {
			x := min(units.Ratio(i)/steps, all)
			load.Resistance = units.Some(units.Scale(theWay, units.One/x-units.One))
		}
		_, f, err := solve(oneLoad(halfCharged, theWay, 0, load))
		if err != nil {
			return figure.Chart{}, err
		}
		at := f.Points[0]
		p := figure.Point{X: units.In(at.Power, units.Watt), Y: units.In(at.Voltage, units.Volt)}
		if i <= steps/2 {
			held.Points = append(held.Points, p)
		}
		if i >= steps/2 {
			lost.Points = append(lost.Points, p)
		}
	}
	step := figure.Line{Name: "one step of I = P/E"}
	for _, power := range []units.Power{0, 4500 * units.Watt} {
		left := halfCharged - power.At(halfCharged).Through(theWay)
		step.Points = append(step.Points, figure.Point{X: units.In(power, units.Watt), Y: units.In(left, units.Volt)})
	}
	chart.Lines = []figure.Line{held, lost, step}
	return chart, nil
}

// shareByPlace draws what each of four batteries gives, by where the load is
// taken off.
func shareByPlace() (figure.Bars, error) {
	bars := figure.Bars{
		Title: "What each of four batteries gives of 200 A",
		Description: "Three bars for each battery of the row. With both leads at the first battery the bars fall from far above an equal " +
			"share to far below. With leads at opposite ends the outer two are a little above and the inner two a little below. With " +
			"plus at the second and minus at the third it is the other way round. A limit is drawn at the equal share.",
		Label:  "battery of the row",
		Y:      figure.Axis{Label: "current", Unit: "A", Min: 0, Max: 80},
		Limits: []figure.Limit{{Name: "equal, 50 A", Y: 50}},
	}
	bars.Categories = fourNames
	for _, taken := range []struct{ name, plus, minus string }{
		{"both at the first", "1", "1"},
		{"at opposite ends", "1", "4"},
		{"at the middle two", "2", "3"},
	} {
		f, err := fourOn(taken.plus, taken.minus)
		if err != nil {
			return figure.Bars{}, err
		}
		group := figure.Group{Name: taken.name}
		for _, s := range f.Shares {
			group.Values = append(group.Values, units.In(s.Current, units.Ampere))
		}
		bars.Groups = append(bars.Groups, group)
	}
	return bars, nil
}

// fourOn solves the row of the example with 200 A taken off at two posts.
func fourOn(plus, minus string) (*wire.Flow, error) {
	n := row(4, wire.Battery{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}, 0.3*units.Milliohm)
	n.Plus, n.Minus = plus, minus
	n.Branches = []wire.Branch{{Name: "load", Load: wire.Load{Current: 200 * units.Ampere}}}
	_, f, err := solve(n)
	return f, err
}
