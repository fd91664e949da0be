package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// naming returns the findings of a rule that name something.
func naming(list []working.Finding, rule, name string) (found []working.Finding) {
	for _, f := range list {
		if f.Rule == rule && strings.Contains(f.String(), name) {
			found = append(found, f)
		}
	}
	return found
}

func TestHarnessInOrder(t *testing.T) {
	if got := solved(t, trailer()).Findings(); len(got) != 0 {
		t.Errorf("the trailer has %v", got)
	}
}

// TestHarnessFindings puts one mistake into the trailer, which has no finding
// without it, at two places each: the finding names the place.
func TestHarnessFindings(t *testing.T) {
	for _, c := range []struct {
		rule     string
		severity working.Severity
		name     string
		mistake  func(n *wire.Network)
	}{
		{"feeder-above-limit", working.Danger, "fridge", func(n *wire.Network) { n.Branches[2].Limit = units.Some[units.Current](4.5) }},
		{"feeder-above-limit", working.Danger, "panel", func(n *wire.Network) { n.Branches[0].Limit = units.Some[units.Current](12) }},
		{"voltage-below-lowest", working.Caution, "lamps", func(n *wire.Network) { n.Branches[1].OneWay = 40 }},
		{"voltage-below-lowest", working.Caution, "panel", func(n *wire.Network) { n.Branches[0].Lowest = units.Some[units.Voltage](13.5) }},
		{"current-above-any-ampacity", working.Danger, "lamps", func(n *wire.Network) {
			n.Branches[1].Load.Current, n.Branches[1].Limit = 60, units.None[units.Current]()
			n.Branches[0].Limit = units.Some[units.Current](100)
		}},
		{"current-above-ampacity-in-wall", working.Caution, "inverter", func(n *wire.Network) { n.Branches[4].Conductor.Size = wire.AWG(4) }},
		{"battery-above-limit", working.Caution, "far", func(n *wire.Network) { n.Batteries[1].Limit = units.Some[units.Current](30) }},
		{"battery-above-limit", working.Caution, "near", func(n *wire.Network) { n.Batteries[0].Limit = units.Some[units.Current](30) }},
		{"share-unequal", working.Caution, "near", func(n *wire.Network) { n.Minus = "near" }},
		{"share-unequal", working.Caution, "far", func(n *wire.Network) { n.Plus = "far" }},
		{"circulating-current", working.Note, "far", func(n *wire.Network) { n.Batteries[1].Voltage -= 0.02 }},
		// So far apart is a danger, unless it is known what the battery may take.
		{"circulating-current", working.Danger, "near", func(n *wire.Network) {
			n.Batteries[0].Voltage, n.Batteries[0].ChargeLimit = 12.4, units.None[units.Current]()
		}},
		{"circulating-current", working.Caution, "near", func(n *wire.Network) {
			n.Batteries[0].Voltage, n.Batteries[0].ChargeLimit = 12.4, units.Some[units.Current](1000)
		}},
		// 0.1 V is alike, 0.15 V is not, though under load neither is charged.
		{"circulating-current", working.Note, "near", func(n *wire.Network) { n.Batteries[0].Voltage -= 0.1 }},
		{"circulating-current", working.Caution, "near", func(n *wire.Network) { n.Batteries[0].Voltage -= 0.15 }},
		{"battery-charged-above-limit", working.Danger, "near", func(n *wire.Network) {
			n.Batteries[0].Voltage -= 0.15
			n.Batteries[0].ChargeLimit = units.Some[units.Current](10)
		}},
		{"battery-charged-above-limit", working.Danger, "far", func(n *wire.Network) {
			n.Batteries[1].Voltage, n.Batteries[1].ChargeLimit = 12.4, units.Some[units.Current](40)
		}},
		{"feeder-limit-not-given", working.Note, "furnace", func(n *wire.Network) { n.Branches[3].Limit = units.None[units.Current]() }},
		{"lowest-voltage-not-given", working.Note, "fridge", func(n *wire.Network) { n.Branches[2].Lowest = units.None[units.Voltage]() }},
		{"battery-limit-not-given", working.Note, "", func(n *wire.Network) { n.Batteries[1].Limit = units.None[units.Current]() }},
	} {
		t.Run(c.rule+" "+c.name, func(t *testing.T) {
			n := trailer()
			c.mistake(&n)
			got := solved(t, n).Findings()
			found := naming(got, c.rule, c.name)
			if len(found) != 1 || found[0].Severity != c.severity || found[0].Source == (working.Source{}) || len(found[0].Numbers) == 0 {
				t.Errorf("found %v, want one %s %s about %s", got, c.severity, c.rule, c.name)
			}
			for i := 1; i < len(got); i++ {
				if got[i].Severity > got[i-1].Severity {
					t.Errorf("not worst first: %v", got)
				}
			}
		})
	}
}

// TestHarnessEdges: at a limit is within it.
func TestHarnessEdges(t *testing.T) {
	n := wire.Network{Batteries: bankOf(12, 0), Branches: []wire.Branch{
		{Name: "a", Extra: 100 * mOhm, Load: ampsOf(10), Limit: units.Some[units.Current](10), Lowest: units.Some[units.Voltage](11)}}}
	for _, rule := range []string{"feeder-above-limit", "voltage-below-lowest"} {
		if got := solved(t, n).Findings(); has(got, rule) {
			t.Errorf("at the limit: %v", got)
		}
	}
	n.Branches[0].Load.Current = 10.00001
	for _, rule := range []string{"feeder-above-limit", "voltage-below-lowest"} {
		if got := solved(t, n).Findings(); !has(got, rule) {
			t.Errorf("just beyond: %v", got)
		}
	}
}

// TestHarnessCollapseFinding: one inverter too large, and one beside it that
// is not to blame.
func TestHarnessCollapseFinding(t *testing.T) {
	n := trailer()
	n.Branches[4].Load.Power = 20000
	f := flowOf(t, n)
	got := f.Findings()
	if len(got) != 1 || got[0].Rule != "harness-collapse" || got[0].Severity != working.Danger || len(got[0].Numbers) != 3 {
		t.Fatalf("found %v", got)
	}
	for _, part := range []string{`Branch "inverter" weighs most`, `power of "inverter" 20 kW`, "most it could be fed"} {
		if !strings.Contains(got[0].String(), part) {
			t.Errorf("%v says nothing of %q", got[0], part)
		}
	}
	most, ok := f.Collapse.Or(wire.Collapse{}).Most.Get()
	if !ok {
		t.Fatal("no largest power")
	}
	n.Branches[4].Load.Power = 0.999 * most
	if f := flowOf(t, n); f.Collapse.IsSet() || has(f.Findings(), "harness-collapse") {
		t.Error("the largest power cannot be fed")
	}
	// Put elsewhere, it appears there.
	n.Branches[4].Load.Power, n.Branches[2].Load.Power = 1000, 4000
	if c := flowOf(t, n).Collapse.Or(wire.Collapse{}); c.Branch != 2 {
		t.Errorf("collapse %+v, want the fridge", c)
	}
	// Two too large by themselves: nothing is left for either.
	n.Branches[4].Load.Power = 40000
	if c, ok := flowOf(t, n).Collapse.Get(); !ok || c.Most.IsSet() {
		t.Errorf("collapse %+v, %v", c, ok)
	}
}

// TestUnlikeByHalfAVolt: 0.5 V at 12.8 V is the bound of what must not be joined.
func TestUnlikeByHalfAVolt(t *testing.T) {
	for lead, want := range map[units.Voltage]working.Severity{12.8: working.Caution, 12.79: working.Danger} {
		f := solved(t, wire.Network{
			Batteries: []wire.Battery{{Name: "lithium", Voltage: 13.3, Resistance: 10 * mOhm}, {Name: "lead", Voltage: lead, Resistance: 6 * mOhm}},
			Links:     []wire.Link{leadsOf(2*mOhm, 2*mOhm)},
		})
		if found := naming(f.Findings(), "circulating-current", "lead"); len(found) != 1 || found[0].Severity != want {
			t.Errorf("13.3 V beside %v: found %v, want %v", lead, found, want)
		}
	}
}

// TestMixedBank is a lithium battery of 13.3 V and 10 mΩ beside a lead one of
// 12.4 V and 6 mΩ with 4 mΩ of cable: 45.0 A flow from one into the other.
func TestMixedBank(t *testing.T) {
	f := solved(t, wire.Network{
		Batteries: []wire.Battery{{Name: "lithium", Voltage: 13.3, Resistance: 10 * mOhm}, {Name: "lead", Voltage: 12.4, Resistance: 6 * mOhm}},
		Links:     []wire.Link{leadsOf(2*mOhm, 2*mOhm)},
	})
	near(t, "amperes", float64(f.Shares[0].Idle), 45.0)
	near(t, "amperes into the lead one", float64(f.Shares[1].Current), -45.0)
	if found := naming(f.Findings(), "circulating-current", "lead"); len(found) != 1 || found[0].Severity != working.Danger {
		t.Errorf("found %v", f.Findings())
	}
	if f.Shares[0].Fraction != 0 || f.Current != 0 {
		t.Errorf("shares of nothing: %+v", f.Shares)
	}
}

// TestListed: with many, the note names three and counts the rest.
func TestListed(t *testing.T) {
	for _, c := range []struct {
		n    wire.Network
		want string
	}{
		{spiceTree(), `for 126 feeders, among them "1", "2", "3", so`},
		{wire.Network{Batteries: bankOf(12, mOhm), Branches: []wire.Branch{feederOf("a", "", mOhm, ampsOf(1)), feederOf("b", "", mOhm, ampsOf(1))}}, `for feeders "a", "b", so`},
		{wire.Network{Batteries: bankOf(12, mOhm), Branches: []wire.Branch{feederOf("a", "", mOhm, ampsOf(1))}}, `for feeder "a", so`},
	} {
		if got := naming(solved(t, c.n).Findings(), "feeder-limit-not-given", c.want); len(got) != 1 {
			t.Errorf("found %v, want one with %s", solved(t, c.n).Findings(), c.want)
		}
	}
}

// TestOneBatteryHasNoOthers: what is said of a row is not said of one battery,
// and a share of nothing is not unequal.
func TestOneBatteryHasNoOthers(t *testing.T) {
	findings := func(batteries []wire.Battery, links []wire.Link, draw units.Current) []working.Finding {
		h, err := wire.NewHarness(wire.Network{Batteries: batteries, Links: links,
			Branches: []wire.Branch{{Name: "panel", Conductor: wire.Conductor{Size: wire.AWG(2)}, OneWay: 1 * units.Foot, Load: wire.Load{Current: draw}}}})
		if err != nil {
			t.Fatal(err)
		}
		var f wire.Flow
		if err := h.Solve(&f, wire.Moment{}); err != nil {
			t.Fatal(err)
		}
		return f.Findings()
	}
	one := wire.Battery{Name: "house", Voltage: 12.8 * units.Volt, Resistance: 3 * units.Milliohm, Limit: units.Some(50 * units.Ampere)}
	said := false
	for _, f := range findings([]wire.Battery{one}, nil, 60*units.Ampere) {
		if f.Rule == "battery-above-limit" {
			said = true
			if strings.Contains(f.Message+f.Fix, "others") || strings.Contains(f.Fix, "row") {
				t.Errorf("of one battery: %s %s", f.Message, f.Fix)
			}
		}
	}
	if !said {
		t.Error("60 A of 50 A goes unsaid")
	}
	two := one
	two.Name, two.Voltage = "other", 12.4*units.Volt
	for _, f := range findings([]wire.Battery{one, two}, []wire.Link{{Plus: wire.Lead{Extra: 1 * units.Milliohm}}}, 0) {
		if f.Rule == "share-unequal" {
			t.Errorf("of no current: %v", f.Numbers)
		}
	}
}
