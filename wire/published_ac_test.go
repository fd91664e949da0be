package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// acConductorOf reads the conductor of a row of alternating current.
func acConductorOf(c *unitstest.Case) wire.ACConductor {
	a := wire.ACConductor{Conductor: conductorOf(c)}
	if c.Has("conduit") {
		a.Conduit = word[wire.Conduit](c, "conduit")
	}
	if c.Has("reactance") {
		a.Reactance = units.Some(unitstest.In[units.ResistancePerLength](c, "reactance"))
	}
	return a
}

var publishedACCalls = map[string]func(*unitstest.Case){
	"impedance": func(c *unitstest.Case) {
		z := got[wire.Impedance](c)(wire.ACImpedance(acConductorOf(c)))
		c.MayGet("resistance", z.R)
		c.MayGet("reactance", z.X)
	},
	"effective": func(c *unitstest.Case) {
		d := got[wire.AlternatingDrop](c)(wire.ACDrop(wire.ACRun{Current: 1 * units.Ampere, OneWay: 1 * units.Foot / 2,
			Line: acConductorOf(c), Source: 240 * units.Volt, PowerFactor: units.Some(unitstest.In[units.Ratio](c, "pf"))}))
		c.Got("impedance", d.Effective.Along(1*units.Foot))
	},
	"acdrop": func(c *unitstest.Case) {
		d := got[wire.AlternatingDrop](c)(wire.ACDrop(wire.ACRun{
			Current: unitstest.In[units.Current](c, "current"), OneWay: unitstest.In[units.Length](c, "one_way"),
			Line: acConductorOf(c), Source: unitstest.In[units.Voltage](c, "source"),
			PowerFactor: units.Some(unitstest.In[units.Ratio](c, "pf"))}))
		c.MayGet("phasor", d.Phasor)
		c.MayGet("approximate", d.Approximate)
		c.MayGet("exact", d.Exact)
	},
	"feeder": feeder,
}

// feeder adds the drops of two segments along and across the voltage at the far
// end, which both loads count their angle from.
func feeder(c *unitstest.Case) {
	r, x := unitstest.In[units.ResistancePerLength](c, "r"), unitstest.In[units.ResistancePerLength](c, "x")
	first, second := unitstest.In[units.Current](c, "first"), unitstest.In[units.Current](c, "second")
	pfFirst, pfSecond := unitstest.In[units.Ratio](c, "pf_first"), unitstest.In[units.Ratio](c, "pf_second")
	var along, across units.Voltage
	segment := func(i units.Current, pf units.Ratio, l units.Length) {
		d := got[wire.AlternatingDrop](c)(wire.ACDrop(wire.ACRun{Current: i, OneWay: l, PowerFactor: units.Some(pf), Source: 400 * units.Volt,
			Line: wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(r / 2)}, Reactance: units.Some(x / 2)}}))
		along += d.InPhase
		across += d.Quadrature
	}
	segment(second, pfSecond, unitstest.In[units.Length](c, "to_second"))
	real := units.Scale(first, pfFirst) + units.Scale(second, pfSecond)
	sine := func(pf units.Ratio) units.Ratio { return units.Ratio(math.Sin(math.Acos(float64(pf)))) }
	lagging := units.Scale(first, sine(pfFirst)) + units.Scale(second, sine(pfSecond))
	both := units.Current(math.Hypot(float64(real), float64(lagging)))
	segment(both, units.RatioOf(real, both), unitstest.In[units.Length](c, "to_first"))
	c.MayGet("drop", units.Voltage(math.Hypot(float64(along), float64(across))))
	if c.Has("end") {
		c.Got("sending", units.Voltage(math.Hypot(float64(unitstest.In[units.Voltage](c, "end")+along), float64(across))))
	}
}

func TestPublishedAC(t *testing.T) {
	unitstest.Published(t, "wire_ac.csv", publishedACCalls, map[string]string{
		"FORUM-Ze":      "misprint: 50 A through 0.12 · 0.65 + 0.044 · 0.760 ohm drop 5.57 V; the source prints 5.55 V",
		"OUT-T9-1aught": "slip of one transcription, which has 0.12 where two others have 0.13",
		"OUT-Z9-6":      "slip of one reprint, which has 0.45 where the others have 0.44 and the formula 0.443",
		"FORUM-sign":    "wrong in the source: R cos + X sin with the sine taken as negative, for a current that lags",
	})
}
