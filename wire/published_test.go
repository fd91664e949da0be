package wire_test

import (
	"encoding"
	"errors"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// conductorOf reads the conductor of a published row.
func conductorOf(c *unitstest.Case) wire.Conductor {
	var w wire.Conductor
	if c.Has("size") {
		w.Size = wire.MustSize(c.Text("size"))
	}
	if c.Has("strand") {
		switch s := c.Text("strand"); s {
		case "solid":
			w.Strand = wire.Solid
		case "flexible":
			w.Strand = wire.Flexible
		case "stranded":
		default:
			c.Fatalf("unknown strand %q", s)
		}
	}
	if c.Has("basis") {
		w.Basis = units.Some(word[wire.Basis](c, "basis"))
	}
	if c.Has("metal") {
		w.Metal = word[wire.Metal](c, "metal")
	}
	if c.Has("coated") {
		w.Coated = c.Text("coated") == "yes"
	}
	if c.Has("temperature") {
		w.Temperature = c.Temperature("temperature")
	}
	if c.Has("resistivity") {
		w.Resistivity = units.Some(unitstest.In[units.Resistivity](c, "resistivity"))
	}
	if c.Has("stated") {
		w.Stated = units.Some(unitstest.In[units.ResistancePerLength](c, "stated"))
	}
	return w
}

// word reads a value of an enumeration.
func word[E any, P interface {
	*E
	encoding.TextUnmarshaler
}](c *unitstest.Case, name string) (e E) {
	if err := P(&e).UnmarshalText([]byte(c.Text(name))); err != nil {
		c.Fatalf("%v", err)
	}
	return e
}

// runOf reads the run of a published row. A source that gives the conductor
// there and back gives total.
func runOf(c *unitstest.Case) wire.Run {
	r := wire.Run{
		Current:   unitstest.In[units.Current](c, "current"),
		Source:    unitstest.In[units.Voltage](c, "source"),
		Conductor: conductorOf(c),
	}
	switch {
	case c.Has("total"):
		r.OneWay = unitstest.In[units.Length](c, "total") / 2
	case c.Has("one_way"):
		r.OneWay = unitstest.In[units.Length](c, "one_way")
	}
	if c.Has("allowed") {
		if limit, err := units.Parse[units.Voltage](c.Text("allowed")); err == nil {
			r.Allowed = units.Some(units.RatioOf(limit, r.Source))
		} else {
			r.Allowed = units.Some(unitstest.In[units.Ratio](c, "allowed"))
		}
	}
	return r
}

func got[T any](c *unitstest.Case) func(T, error) T {
	return func(v T, err error) T {
		if err != nil {
			c.Fatalf("%v", err)
		}
		return v
	}
}

var publishedCalls = map[string]func(*unitstest.Case){
	"geometry": func(c *unitstest.Case) {
		size := wire.MustSize(c.Text("size"))
		c.MayGet("diameter", size.Diameter())
		c.MayGet("area", size.Area())
	},
	"resistance": func(c *unitstest.Case) {
		p := got[wire.PerLength](c)(wire.Resistance(conductorOf(c)))
		c.MayGet("resistance", p.At)
		if c.Has("length") {
			c.Got("wire", p.At.Over(unitstest.In[units.Length](c, "length")))
		}
	},
	"rho": func(c *unitstest.Case) {
		c.Got("resistivity", got[wire.PerLength](c)(wire.Resistance(conductorOf(c))).Rho)
	},
	"mass": func(c *unitstest.Case) {
		c.Got("mass", got[wire.MetalMass](c)(wire.MassOf(conductorOf(c))).PerLength)
	},
	"two-wire": func(c *unitstest.Case) {
		p := got[wire.PerLength](c)(wire.Resistance(conductorOf(c)))
		c.Got("resistance", 2*p.At)
	},
	"drop": func(c *unitstest.Case) {
		d := got[wire.Drop](c)(wire.VoltageDrop(runOf(c)))
		c.MayGet("drop", d.Voltage)
		c.MayGet("percent", d.Fraction)
		c.MayGet("heat", d.Heat)
		c.MayGet("loop", d.Resistance)
	},
	"longest": func(c *unitstest.Case) {
		c.Got("total", got[wire.Reach](c)(wire.LongestRun(runOf(c))).Loop)
	},
	"limit": func(c *unitstest.Case) {
		s := got[wire.Selection](c)(wire.SmallestSize(runOf(c), wire.Gauges()))
		c.Got("limit", s.MaxPerLength)
	},
	"smallest": func(c *unitstest.Case) {
		r := runOf(c)
		s, err := wire.SmallestSize(r, boatStock)
		if e := (*units.RangeError)(nil); errors.As(err, &e) && e.Field == "MaxPerLength" {
			c.GotText("size", "none on the list")
			return
		}
		got[wire.Selection](c)(s, err)
		c.GotText("size", s.Run.Conductor.Size.String())
		c.MayGet("area", s.MinArea)
		c.MayGet("per_wire", s.MaxPerLength.Over(r.OneWay))
	},
}

// boatStock is the list of the marine chart, which has no 3 AWG.
var boatStock = []wire.Size{
	wire.AWG(18), wire.AWG(16), wire.AWG(14), wire.AWG(12), wire.AWG(10), wire.AWG(8), wire.AWG(6), wire.AWG(4),
	wire.AWG(2), wire.AWG(1), wire.Aught(1), wire.Aught(2), wire.Aught(3), wire.Aught(4),
}

func TestPublishedGeometry(t *testing.T) {
	unitstest.Published(t, "wire_geometry.csv", only("geometry", "mass"), nil)
}

func TestPublishedResistance(t *testing.T) {
	unitstest.Published(t, "wire_resistance.csv", only("resistance", "two-wire", "rho"), nil)
}

func TestPublishedDrop(t *testing.T) {
	unitstest.Published(t, "wire_drop.csv", only("drop", "longest", "limit", "smallest"), map[string]string{
		"VD04": "misprint: 20 A over 19.5 ft of 1.26 ohm/kft drops 0.491 V; the source prints 0.366 V",
		"VD19": "misprint: 100 A through 1 km of 2/0 make 2.55 kW; the source prints a hundredth of it",
	})
}

func TestPublishedMarineChart(t *testing.T) {
	const smaller = "the chart gives the size for the smaller metal area of boat cable sized by SAE; by AWG area one size less will do"
	const larger = "the chart counts 10 AWG as 10 500 and 4 AWG as 42 000 circular mils, more than the gauges have: 10 383 and 41 741"
	unitstest.Published(t, "wire_marine_chart.csv", only("smallest"), map[string]string{
		"M3-15-90": smaller, "M3-30-90": smaller, "M3-40-70": smaller,
		"M3-70-40": smaller, "M3-70-50": smaller, "M3-90-30": smaller,
		"M3-20-70": larger, "M3-70-5": larger,
		"M3-60-15":  "the chart gives 6 AWG, 26 250 circular mils, where its own formula needs 26 875",
		"M3-120-60": "the chart gives 4/0 AWG, 211 600 circular mils, where its own formula needs 215 000",
	})
}

func only(calls ...string) map[string]func(*unitstest.Case) {
	m := map[string]func(*unitstest.Case){}
	for _, name := range calls {
		m[name] = publishedCalls[name]
	}
	return m
}
