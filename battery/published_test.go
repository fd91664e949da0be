package battery_test

import (
	"strconv"
	"testing"

	"example.com/drawbar/battery"
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

// optional reads a given that a row may leave out.
func optional[Q units.Quantity](c *unitstest.Case, name string) units.Opt[Q] {
	if !c.Has(name) {
		return units.None[Q]()
	}
	return units.Some(unitstest.In[Q](c, name))
}

func count(c *unitstest.Case, name string) int {
	n, err := strconv.Atoi(c.Text(name))
	if err != nil {
		c.Fatalf("given %s: %v", name, err)
	}
	return n
}

func bankOf(c *unitstest.Case) battery.Bank {
	multiplier := optional[units.Ratio](c, "multiplier")
	if c.Has("factor") { // what the cold leaves, printed instead of how much more to buy
		multiplier = units.Some(1 / unitstest.In[units.Ratio](c, "factor"))
	}
	return battery.Bank{
		Battery: battery.Battery{
			Chemistry:  got[battery.Chemistry](c)(battery.ParseChemistry(c.Text("chemistry"))),
			Voltage:    unitstest.In[units.Voltage](c, "voltage"),
			Capacity:   unitstest.In[units.Charge](c, "capacity"),
			RatedOver:  optional[units.Elapsed](c, "over"),
			Usable:     optional[units.Ratio](c, "usable"),
			Aged:       optional[units.Ratio](c, "aged"),
			Resistance: optional[units.Resistance](c, "internal"),
		},
		Series: count(c, "series"), Parallel: count(c, "parallel"),
		Multiplier: multiplier,
	}
}

func ratingOf(c *unitstest.Case, name, over string) battery.Rating {
	return battery.Rating{Capacity: unitstest.In[units.Charge](c, name), Over: unitstest.In[units.Elapsed](c, over)}
}

func exponentOf(c *unitstest.Case) battery.Exponent {
	return got[battery.Exponent](c)(battery.ExponentFrom(ratingOf(c, "a", "a_over"), ratingOf(c, "b", "b_over")))
}

var publishedCalls = map[string]func(*unitstest.Case){
	"deliver": func(c *unitstest.Case) {
		v := got[battery.Delivery](c)(battery.Deliver(battery.Discharge{
			Rating:   ratingOf(c, "capacity", "over"),
			Exponent: unitstest.In[units.Ratio](c, "exponent"),
			Current:  unitstest.In[units.Current](c, "current"),
		}))
		c.MayGet("time", v.Time)
		c.MayGet("charge", v.Charge)
		c.MayGet("rated", v.Rated)
	},
	"third": func(c *unitstest.Case) {
		x := exponentOf(c)
		v := got[battery.Delivery](c)(battery.Deliver(battery.Discharge{
			Rating: x.B, Exponent: x.Value, Current: unitstest.In[units.Current](c, "current"),
		}))
		c.Got("charge", v.Charge)
	},
	"load": func(c *unitstest.Case) {
		s := got[battery.Sag](c)(battery.UnderLoad(battery.Circuit{
			OpenCircuit: unitstest.In[units.Voltage](c, "emf"),
			Internal:    unitstest.In[units.Resistance](c, "internal"),
			Draw: battery.Draw{
				Power:      optional[units.Power](c, "power"),
				Resistance: optional[units.Resistance](c, "resistance"),
			},
		}))
		c.MayGet("current", s.Current)
		c.MayGet("voltage", s.Voltage)
		c.MayGet("power", s.Power)
	},
	"bank": func(c *unitstest.Case) {
		a := got[battery.Assembly](c)(battery.Assemble(bankOf(c)))
		c.MayGet("voltage", a.Voltage)
		c.MayGet("capacity", a.Capacity)
		c.MayGet("energy", a.Energy)
		c.MayGet("resistance", a.Resistance.Or(0))
	},
	"usable": func(c *unitstest.Case) {
		u := got[battery.UsableCharge](c)(battery.Usable(bankOf(c), units.None[units.Current]()))
		c.Got("charge", u.Charge)
	},
	"holdup": func(c *unitstest.Case) {
		e := got[battery.Endurance](c)(battery.HoldUp(battery.Hold{
			Bank: bankOf(c), Draw: battery.Draw{Current: optional[units.Current](c, "current")},
		}))
		c.Got("time", e.Time)
	},
	"freezing": func(c *unitstest.Case) {
		f := got[battery.Freezing](c)(battery.FreezingPoint(unitstest.In[units.Ratio](c, "state")))
		c.Got("point", f.Point)
	},
	"vent": func(c *unitstest.Case) {
		v := got[battery.Ventilation](c)(battery.Ventilate(bankOf(c)))
		c.Got("opening", v.Opening)
	},
}

func only(calls ...string) map[string]func(*unitstest.Case) {
	m := map[string]func(*unitstest.Case){}
	for _, name := range calls {
		m[name] = publishedCalls[name]
	}
	return m
}

func TestPublishedPeukert(t *testing.T) {
	unitstest.Published(t, "battery_peukert.csv", only("deliver", "third"), map[string]string{
		"PK-PX4": "C/I^k takes the 20 h capacity for one at 1 A: 100 Ah rated over 20 h lasts 20 h at 5 A by definition",
	})
}

func TestPublishedCircuit(t *testing.T) {
	unitstest.Published(t, "battery_circuit.csv", only("load"), nil)
}

func TestPublishedBank(t *testing.T) {
	unitstest.Published(t, "battery_bank.csv", only("bank", "usable", "holdup"), map[string]string{
		"BK-Z5": "series adds volts only: the page multiplies all eight batteries by 350 Ah and then by 24 V",
	})
}

func TestPublishedLead(t *testing.T) {
	unitstest.Published(t, "battery_lead.csv", only("freezing", "vent"), nil)
}
