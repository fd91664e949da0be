package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

func TestPublishedCords(t *testing.T) {
	unitstest.Published(t, "wire_cord.csv", map[string]func(*unitstest.Case){
		"cord": func(c *unitstest.Case) {
			x := wire.Cord{Size: wire.MustSize(c.Text("size")), Conductors: countOf(c), Load: 1 * units.Ampere}
			if err := x.Type.UnmarshalText([]byte(c.Text("type"))); err != nil {
				c.Fatalf("%v", err)
			}
			if c.Has("rating") {
				x.Rating, _ = wire.InsulationOf(c.Temperature("rating"))
			}
			if c.Has("device") {
				x.Device = units.Some(unitstest.In[units.Current](c, "device"))
			}
			got := got[wire.CordCapacity](c)(wire.CordAmpacity(x))
			c.MayGet("ampacity", got.Current)
			c.MayGet("bundle", got.Bundle)
			if c.Has("device") {
				fits := map[bool]string{true: "yes", false: "no"}[!has(got.Findings(), "cord-behind-larger-device")]
				c.GotText("fits", fits)
			}
		},
	}, nil)
}

func TestPublishedFaults(t *testing.T) {
	// heatOf answers for a conductor with k, with what else a row gives.
	heatOf := func(c *unitstest.Case, i units.Current, time units.Opt[units.Elapsed]) wire.Withstand {
		x := wire.ShortTime{Size: wire.AWG(10), Current: i, Time: time}
		if c.Has("size") {
			x.Size = wire.MustSize(c.Text("size"))
		}
		if c.Has("core") {
			if err := x.Core.UnmarshalText([]byte(c.Text("core"))); err != nil {
				c.Fatalf("%v", err)
			}
		} else {
			x.Initial, x.Final = c.Temperature("initial"), c.Temperature("final")
		}
		return got[wire.Withstand](c)(wire.Adiabatic(x))
	}
	none := units.None[units.Elapsed]()
	unitstest.Published(t, "wire_fault.csv", map[string]func(*unitstest.Case){
		"k": func(c *unitstest.Case) {
			w := heatOf(c, 1*units.Kiloampere, none)
			c.MayGet("k", w.K)
			c.MayGet("initial", w.ShortTime.Initial)
			c.MayGet("final", w.ShortTime.Final)
		},
		"adiabatic": func(c *unitstest.Case) {
			w := heatOf(c, unitstest.In[units.Current](c, "current"), units.Some(unitstest.In[units.Elapsed](c, "time")))
			c.Got("area", w.MinArea)
		},
		"icea": func(c *unitstest.Case) {
			w := heatOf(c, 1*units.Kiloampere, none)
			c.Got("c", units.Scale(w.K, units.Ratio(units.In(1*units.CircularMil, units.SquareMillimetre))))
		},
		"icea5s": func(c *unitstest.Case) {
			w := heatOf(c, 1*units.Kiloampere, units.Some(5*units.Second))
			c.Got("cmil", units.Ratio(units.In(w.MinArea, units.CircularMil)/1000))
		},
		"fault": func(c *unitstest.Case) {
			f := got[wire.Fault](c)(wire.ShortCircuit(wire.FaultSource{Voltage: unitstest.In[units.Voltage](c, "voltage"),
				Resistance: unitstest.In[units.Resistance](c, "resistance")}, wire.Conductor{}, 0))
			c.Got("current", f.Current)
		},
	}, nil)
}

func TestPublishedFreeAir(t *testing.T) {
	unitstest.Published(t, "wire_free_air.csv", map[string]func(*unitstest.Case){
		"free air": func(c *unitstest.Case) {
			b := got[wire.HeatBalance](c)(wire.FreeAir(wire.FreeAirCable{Size: wire.MustSize(c.Text("size")), Metal: c.Temperature("metal")}))
			c.Got("current", b.Current)
		},
		"thickness": func(c *unitstest.Case) {
			b := got[wire.HeatBalance](c)(wire.FreeAir(wire.FreeAirCable{Size: wire.MustSize(c.Text("size")), Metal: units.Celsius(75)}))
			c.Got("thickness", b.Cable.Thickness.Or(0))
		},
		"strands": func(c *unitstest.Case) {
			b := got[wire.HeatBalance](c)(wire.FreeAir(wire.FreeAirCable{Size: wire.MustSize(c.Text("size")), Metal: units.Celsius(75)}))
			c.Got("diameter", b.Strands)
		},
		"air": func(c *unitstest.Case) {
			a := wire.AirAt(c.Temperature("film"))
			c.Got("density", a.Density)
			c.Got("conductivity", a.Conductivity)
			c.Got("prandtl", a.Prandtl)
		},
	}, nil)
}
