package inverter_test

import (
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

func got[T any](c *unitstest.Case) func(T, error) T {
	return func(v T, err error) T {
		if err != nil {
			c.Fatalf("%v", err)
		}
		return v
	}
}

func TestPublishedDC(t *testing.T) {
	unitstest.Published(t, "inverter_dc.csv", map[string]func(*unitstest.Case){
		"battery side": func(c *unitstest.Case) {
			d := got[inverter.DCCurrent](c)(inverter.BatterySide(inverter.DCSide{
				Machine: inverter.Machine{
					Continuous:    unitstest.In[units.Power](c, "power"),
					Efficiency:    unitstest.In[units.Ratio](c, "efficiency"),
					LowestVoltage: units.Some(unitstest.In[units.Voltage](c, "lowest")),
				},
				Margin: unitstest.In[units.Ratio](c, "margin"),
			}))
			c.Got("current", d.Current)
			c.Got("required", d.Required)
		},
		"day": func(c *unitstest.Case) {
			u := got[inverter.DayUse](c)(inverter.EnergyADay(inverter.Day{
				Energy:     unitstest.In[units.Energy](c, "energy"),
				Efficiency: unitstest.In[units.Ratio](c, "efficiency"),
				Idle:       units.Some(unitstest.In[units.Power](c, "idle")),
				On:         units.Some(unitstest.In[units.Elapsed](c, "on")),
				Voltage:    units.Some(unitstest.In[units.Voltage](c, "voltage")),
			}))
			c.Got("dc", u.Energy)
			c.Got("charge", u.Charge.Or(0))
		},
	}, nil)
}

func TestPublishedSums(t *testing.T) {
	unitstest.Published(t, "inverter_sum.csv", map[string]func(*unitstest.Case){
		"together": func(c *unitstest.Case) {
			var demands []inverter.Demand
			for _, text := range strings.Split(c.Text("powers"), " + ") {
				p := got[units.Power](c)(units.Parse[units.Power](text))
				demands = append(demands, inverter.Demand{Name: text, Power: p})
			}
			h := got[inverter.Headroom](c)(inverter.Check(inverter.Machine{Continuous: units.Kilowatt, Efficiency: 1}, demands))
			c.Got("power", h.Power)
		},
		"service": func(c *unitstest.Case) {
			o := got[inverter.Overload](c)(inverter.Sets(service(c), []inverter.Demand{{
				Name: "motor", Power: unitstest.In[units.Power](c, "power"),
				PowerFactor: units.Some(unitstest.In[units.Ratio](c, "factor")),
			}}))
			c.Got("current", o.Together.Current)
		},
	}, nil)
}

func service(c *unitstest.Case) inverter.Limit {
	return inverter.Limit{Name: "service", Current: units.Some(unitstest.In[units.Current](c, "rating")),
		Voltage: unitstest.In[units.Voltage](c, "voltage")}
}
