package usable

import (
	"fmt"
	"math"

	"example.com/drawbar/battery"
	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

// chargeByCurrent draws what comes out of the first battery against current,
// a line an exponent.
func chargeByCurrent() (figure.Chart, error) {
	lead := leadBattery()
	rating := battery.Rating{Capacity: lead.Capacity, Over: lead.RatedOver.Or(0)}
	chart := figure.Chart{
		Title: "Charge against current, by Peukert's exponent",
		Description: fmt.Sprintf("Three lines that are level at %v up to the rated current of %v and then fall. On the right the line of the "+
			"smallest exponent is still near the top, and that of the largest has lost more than half.", lead.Capacity, rating.Current()),
		X: figure.Axis{Label: "steady current", Unit: "A", Min: 0, Max: 100},
		Y: figure.Axis{Label: "charge from full to empty", Unit: "Ah", Min: 0, Max: 220},
	}
	for _, k := range []units.Ratio{1.05 * units.One, 1.2 * units.One, 1.4 * units.One} {
		line := figure.Line{Name: "k = " + units.Significant(float64(k), 3)}
		for amperes := 1.0; amperes <= 100; amperes++ {
			v, err := battery.Deliver(battery.Discharge{
				Rating:   rating,
				Exponent: k,
				Current:  units.Scale(units.Ampere, units.Ratio(amperes)),
			})
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: amperes, Y: units.In(v.Charge, units.AmpereHour)})
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}

// picturedLithium is one battery of 100 Ah.
func picturedLithium() battery.Bank { return lithiumBank(100*units.AmpereHour, 1) }

// picturedLead is the battery of the first example with a resistance.
func picturedLead() battery.Bank {
	b := leadBattery()
	b.Resistance = units.Some(5 * units.Milliohm)
	return single(b)
}

func holdUp(b battery.Bank, p units.Power) (battery.Endurance, error) {
	return battery.HoldUp(battery.Hold{Bank: b, Draw: battery.Draw{Power: units.Some(p)}})
}

// hoursByPower draws how long two banks feed a constant power.
func hoursByPower() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Hours at a constant power",
		Description: "Two falling lines on logarithmic scales. At small power lead lasts a little longer, in the middle they cross, and above " +
			"that lead falls away faster. The lithium line ends where the current reaches its limit; the lead line goes on.",
		X: figure.Axis{Label: "power at the bank", Unit: "W", Min: 10, Max: 2000, Log: true},
		Y: figure.Axis{Label: "time to the usual depth", Unit: "h", Min: 0.1, Max: 200, Log: true},
	}
	for _, b := range []struct {
		name string
		bank battery.Bank
	}{{"flooded, 200 Ah", picturedLead()}, {"lithium, 100 Ah", picturedLithium()}} {
		line := figure.Line{Name: b.name}
		for step := range 94 {
			watts := math.Pow(10, 1+float64(step)/40) // 10 W to beyond 2 kW
			run, err := holdUp(b.bank, units.Scale(units.Watt, units.Ratio(watts)))
			ended := err == nil && run.End != battery.ByDepth
			if ended { // by its limit: the line goes on to the most it can feed
				run, err = holdUp(b.bank, run.MostPower.Or(0))
			}
			if err != nil {
				return figure.Chart{}, err
			}
			line.Points = append(line.Points, figure.Point{X: units.In(run.Sag.Power, units.Watt), Y: units.In(run.Time, units.Hour)})
			if ended {
				break
			}
		}
		chart.Lines = append(chart.Lines, line)
	}
	return chart, nil
}
