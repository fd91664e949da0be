package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

var publishedAmpacity = map[string]func(*unitstest.Case){
	"ampacity": func(c *unitstest.Case) {
		x := installationOf(c)
		got := got[wire.CarryingCapacity](c)(wire.Ampacity(x))
		c.MayGet("table", got.Table)
		c.MayGet("factor", got.Ambient)
		c.MayGet("bundle", got.Bundle)
		c.MayGet("corrected", got.Corrected)
		c.MayGet("ampacity", got.Current)
	},
	"factor": func(c *unitstest.Case) {
		n, ok := wire.InsulationOf(c.Temperature("insulation"))
		if !ok {
			c.Fatalf("no such class")
		}
		rules := wire.NEC2017
		if c.Has("rules") {
			rules = rulesOf(c)
		}
		c.Got("factor", wire.AmbientFactor(rules, n, c.Temperature("ambient")))
	},
	"device": func(c *unitstest.Case) {
		p := got[wire.Protection](c)(wire.Protect(wire.Circuit{Installation: installationOf(c), Load: 1 * units.Ampere}))
		c.Got("limit", p.Limit)
		c.MayGet("below", p.Below)
	},
	"hours": func(c *unitstest.Case) {
		p := got[wire.Protection](c)(wire.Protect(wire.Circuit{Installation: installationOf(c), Continuous: true, Load: 9 * units.Ampere}))
		for _, f := range p.Findings() {
			if f.Rule == "small-conductor-continuous" {
				c.Got("most", f.Numbers[1].Value)
			}
		}
	},
}

// rulesOf reads the rule set of a published row.
func rulesOf(c *unitstest.Case) wire.RuleSet {
	switch name := c.Text("rules"); name {
	case "NEC":
		return wire.NEC2017
	case "boat":
		return wire.Boat33CFR
	case "RV":
		return wire.RVLowVoltage
	default:
		return got[wire.RuleSet](c)(wire.ParseRuleSet(name))
	}
}

// installationOf reads the conductor of a published row, with terminals as
// good as its insulation.
func installationOf(c *unitstest.Case) wire.Installation {
	x := wire.Installation{Rules: rulesOf(c), Size: wire.MustSize(c.Text("size"))}
	if x.Rules != wire.Boat33CFR && x.Rules != wire.RVLowVoltage {
		x.Terminals = wire.Insulation105
	}
	var ok bool
	if x.Insulation, ok = wire.InsulationOf(c.Temperature("insulation")); !ok {
		c.Fatalf("no such class")
	}
	if c.Has("metal") {
		if err := x.Metal.UnmarshalText([]byte(c.Text("metal"))); err != nil {
			c.Fatalf("%v", err)
		}
	}
	if c.Has("engine") {
		x.EngineSpace = c.Text("engine") == "yes"
	}
	if c.Has("system") {
		x.System = units.Some(unitstest.In[units.Voltage](c, "system"))
	}
	if c.Has("ambient") {
		x.Ambient = c.Temperature("ambient")
	}
	x.Conductors = countOf(c)
	return x
}

// countOf reads how many conductors carry current together.
func countOf(c *unitstest.Case) int {
	if !c.Has("conductors") {
		return 0
	}
	return int(math.Round(float64(unitstest.In[units.Ratio](c, "conductors"))))
}

func TestPublishedAmpacity(t *testing.T) {
	unitstest.Published(t, "wire_ampacity.csv", publishedAmpacity, map[string]string{
		"INDUSTRY-ENG-105": "an industry standard rounds the root of (105-50)/(105-30), 0.856, down to 0.85; the regulation has 0.86",
	})
}

// TestPublishedRatings asks for the rating above each one of the list that was
// typed a second time, so that one that is missing or wrong shows.
func TestPublishedRatings(t *testing.T) {
	unitstest.Published(t, "wire_ratings.csv", map[string]func(*unitstest.Case){
		"rating": func(c *unitstest.Case) {
			rules := wire.NEC2017
			if c.Text("devices") == "vehicle" {
				rules = wire.RVLowVoltage
			}
			ladder, err := wire.Ratings(rules)
			if err != nil {
				c.Fatalf("%v", err)
			}
			next, err := ladder.Next(unitstest.In[units.Current](c, "above") + 1*units.Milliampere)
			if err != nil {
				c.Fatalf("%v", err)
			}
			c.Got("rating", next)
		},
		"rating of": func(c *unitstest.Case) {
			var kind wire.DeviceKind
			if err := kind.UnmarshalText([]byte(c.Text("kind"))); err != nil {
				c.Fatalf("%v", err)
			}
			ladder := got[units.Ladder[units.Current]](c)(wire.RatingsOf(rulesOf(c), kind))
			c.Got("rating", got[units.Current](c)(ladder.Next(unitstest.In[units.Current](c, "above")+1*units.Milliampere)))
		},
	}, nil)
}
