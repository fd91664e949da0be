package loads_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/drawbar/loads"
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

// house is the bus of published rows that state none.
var house = loads.Bus{Name: "house", Kind: loads.Alternating, Voltage: 240 * units.Volt}

// plain is a load of a power for so long a day.
func plain(power units.Power, hours units.Elapsed) loads.Load {
	return loads.Load{
		Name: "load", Bus: "house", Kind: loads.ConstantPower, Count: 1,
		Rating: loads.Rating{Power: units.Some(power)}, Hours: units.Some(hours),
	}
}

// listed reads the loads of a list "11 W 1.0 h, 100 W 6 h".
func listed(c *unitstest.Case) (list []loads.Load) {
	for _, item := range strings.Split(c.Text("list"), ",") {
		words := strings.Fields(item)
		if len(words) != 4 {
			c.Fatalf("%q is not a power and hours", item)
		}
		power := got[units.Power](c)(units.Parse[units.Power](words[0] + " " + words[1]))
		hours := got[units.Elapsed](c)(units.Parse[units.Elapsed](words[2] + " " + words[3]))
		list = append(list, plain(power, hours))
	}
	return list
}

func TestPublishedLedger(t *testing.T) {
	audit := func(c *unitstest.Case, list []loads.Load) loads.Ledger {
		return got[loads.Ledger](c)(loads.Audit([]loads.Bus{house}, list))
	}
	unitstest.Published(t, "loads_ledger.csv", map[string]func(*unitstest.Case){
		"line": func(c *unitstest.Case) {
			l := plain(unitstest.In[units.Power](c, "power"), unitstest.In[units.Elapsed](c, "hours"))
			c.Got("energy", got[loads.Line](c)(loads.Take(house, l)).Energy)
		},
		"audit": func(c *unitstest.Case) {
			total := audit(c, listed(c)).Buses[0]
			c.MayGet("energy", total.Energy)
			c.MayGet("connected", total.Connected)
		},
		"year": func(c *unitstest.Case) {
			total := audit(c, listed(c)).Buses[0]
			days := units.RatioOf(unitstest.In[units.Elapsed](c, "days"), units.Day)
			c.Got("energy", units.Scale(total.Energy, days))
		},
		"in_phase": func(c *unitstest.Case) {
			bus := loads.Bus{Name: "house", Kind: loads.Alternating, Voltage: unitstest.In[units.Voltage](c, "voltage")}
			l := plain(0, units.Hour)
			l.Kind = loads.Motor
			l.Rating = loads.Rating{
				Current:     units.Some(unitstest.In[units.Current](c, "current")),
				PowerFactor: units.Some(unitstest.In[units.Ratio](c, "power_factor")),
			}
			lagging := got[loads.Line](c)(loads.Take(bus, l))
			l.Rating = loads.Rating{Power: units.Some(lagging.Power), PowerFactor: units.Some(units.One)}
			c.Got("current", got[loads.Line](c)(loads.Take(bus, l)).Current)
		},
		"load_factor": func(c *unitstest.Case) {
			list := listed(c)
			var at loads.Clock
			for i := range list {
				to := loads.Clock{Hour: at.Hour + int(units.In(list[i].Hours.Or(0), units.Hour))}
				list[i].Name = fmt.Sprint("block ", i)
				list[i].Hours = units.None[units.Elapsed]()
				list[i].Windows = []loads.Window{{From: at, To: to}}
				at = to
			}
			ledger := audit(c, list)
			day := got[units.Series[units.Power]](c)(ledger.Day("house", time.Date(2025, 6, 1, 0, 0, 0, 0, time.UTC), time.Hour))
			peak, _, _ := units.PeakOf(day)
			c.Got("load_factor", units.RatioOf(ledger.Buses[0].Average, peak))
		},
	}, nil)
}
