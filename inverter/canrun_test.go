package inverter_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// slowRunnable is the obvious twin of CanRun: of all sets that are not too much
// those that lie in no other.
func slowRunnable(l inverter.Limit, demands []inverter.Demand) (kept []inverter.Members) {
	var fit []inverter.Members
	over := slowSets(l, demands)
	// A set is too much if a set that is alike is among those that are.
	tooMuch := func(m inverter.Members) bool {
		return slices.ContainsFunc(over, func(o inverter.Members) bool { return o&^m == 0 })
	}
	for m := inverter.Members(1); m < 1<<len(demands); m++ {
		if firstOfAlike(demands, m) && !tooMuch(m) {
			fit = append(fit, m)
		}
	}
	for _, m := range fit {
		if !slices.ContainsFunc(fit, func(o inverter.Members) bool { return m != o && m&^o == 0 }) {
			kept = append(kept, m)
		}
	}
	return kept
}

func membersOf(sets []inverter.Set) (list []inverter.Members) {
	for _, s := range sets {
		list = append(list, s.Members)
	}
	slices.Sort(list)
	return list
}

func TestCanRunSlowTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		demands, l := randomDemands(r, r.IntN(9)), limit()
		for i := range demands {
			if i > 0 && r.IntN(3) == 0 { // some that are alike
				demands[i].Power, demands[i].PowerFactor = demands[i-1].Power, demands[i-1].PowerFactor
			}
		}
		l.Power = units.Some(units.Power(500 + r.IntN(4000)))
		got := must[inverter.Runnable](t)(inverter.CanRun(l, demands))
		want := slowRunnable(l, demands)
		slices.Sort(want)
		if !slices.Equal(membersOf(got.Sets), want) || got.Cut {
			t.Fatalf("CanRun(%+v, %+v) = %+v, want %v", l, demands, got.Sets, want)
		}
		for i, s := range got.Sets {
			if i > 0 && got.Sets[i-1].Members.Len() < s.Members.Len() {
				t.Fatalf("sets are not in order of size: %+v", got.Sets)
			}
		}
		over := must[inverter.Overload](t)(inverter.Sets(l, demands))
		wantOver := slowSets(l, demands)
		slices.Sort(wantOver)
		if !slices.Equal(membersOf(over.Sets), wantOver) || over.Cut {
			t.Fatalf("Sets(%+v, %+v) = %+v, want %v", l, demands, over.Sets, wantOver)
		}
	}
}

// equalLoads are n loads that differ in nothing but their names.
func equalLoads(n int, power units.Power) (list []inverter.Demand) {
	for i := range n {
		list = append(list, inverter.Demand{Name: fmt.Sprint("heater ", i+1), Power: power})
	}
	return list
}

// TestEqualLoads: loads that are alike are one set and not thousands.
func TestEqualLoads(t *testing.T) {
	list := append(equalLoads(19, 400*units.Watt), inverter.Demand{Name: "lamp", Power: 100 * units.Watt})
	o := must[inverter.Overload](t)(inverter.Sets(service30(), list))
	// 10 x 400 W = 33.3 A; 9 x 400 W = 30 A, and the lamp on top is too much.
	if len(o.Sets) != 2 || o.Cut {
		t.Fatalf("%d sets", len(o.Sets))
	}
	first := o.Names(o.Sets[0].Members)
	if len(first) != 1 || !strings.HasPrefix(first[0], "any 10 of heater 1, heater 2, ") || !strings.HasSuffix(first[0], ", heater 19") {
		t.Errorf("names %q", first)
	}
	if got := o.Names(o.Sets[1].Members); len(got) != 2 || got[1] != "lamp" || !strings.HasPrefix(got[0], "any 9 of heater 1,") {
		t.Errorf("names %q", got)
	}
	r := must[inverter.Runnable](t)(inverter.CanRun(service30(), list))
	if len(r.Sets) != 2 || r.Cut || r.Sets[0].Members.Len() != 9 || r.Sets[1].Members.Len() != 9 {
		t.Fatalf("sets %+v", r.Sets)
	}
	if got := r.Names(r.Sets[0].Members); len(got) != 1 || !strings.HasPrefix(got[0], "any 9 of heater 1,") {
		t.Errorf("names %q", got)
	}
	if got := r.Names(r.Sets[1].Members); len(got) != 2 || !strings.HasPrefix(got[0], "any 8 of heater 1,") || got[1] != "lamp" {
		t.Errorf("names %q", got)
	}
	// All of a kind are named, and each alone is one finding for all.
	all := must[inverter.Runnable](t)(inverter.CanRun(service30(), list[:3]))
	if got := all.Names(all.Sets[0].Members); !slices.Equal(got, []string{"heater 1", "heater 2", "heater 3"}) {
		t.Errorf("names %q", got)
	}
	kilns := must[inverter.Overload](t)(inverter.Sets(service30(), equalLoads(2, 4000*units.Watt)))
	if f := kilns.Findings()[0]; len(kilns.Sets) != 1 || f.Message != "any 1 of heater 1, heater 2 alone is more than the 30 A service carries." {
		t.Errorf("finding %v", f)
	}
}

// TestSetsAreCut: twenty loads that differ by a watt have 184,756 halves.
func TestSetsAreCut(t *testing.T) {
	var list []inverter.Demand
	for i := range 20 {
		list = append(list, inverter.Demand{Name: fmt.Sprint(i), Power: units.Power(300 + i), PowerFactor: units.Some[units.Ratio](1)})
	}
	o := must[inverter.Overload](t)(inverter.Sets(service30(), list))
	r := must[inverter.Runnable](t)(inverter.CanRun(service30(), list))
	if !o.Cut || len(o.Sets) != 1000 || !r.Cut || len(r.Sets) != 1000 {
		t.Errorf("cut %v at %d, %v at %d", o.Cut, len(o.Sets), r.Cut, len(r.Sets))
	}
	wantRules(t, r, "sets-cut-short")
	if f := o.Findings(); f[len(f)-1].Rule != "sets-cut-short" || f[len(f)-1].Numbers[0].String() != "sets 1000" {
		t.Errorf("finding %v", f[len(f)-1])
	}
	for _, s := range o.Sets {
		if s.Members.Len() != o.Sets[0].Members.Len() {
			t.Errorf("a larger set before all smaller ones: %+v", s)
		}
	}
	// What there is of them holds.
	for _, s := range r.Sets {
		for i, d := range list {
			fits := !units.Exceeds(s.Power+d.Power, 3600*units.Watt)
			if s.OverCurrent || !s.Members.Has(i) && fits {
				t.Fatalf("%+v is no largest set", s)
			}
		}
	}
}

func TestCanRunFindings(t *testing.T) {
	kiln := inverter.Demand{Name: "kiln", Power: 4000 * units.Watt}
	r := must[inverter.Runnable](t)(inverter.CanRun(service30(), []inverter.Demand{logger(), kiln, microwave()}))
	wantRules(t, r, "too-much-together", "power-factor-not-stated")
	if r.Never != 1<<1 || len(r.Sets) != 1 || r.Sets[0].Members != 0b101 {
		t.Errorf("result %+v", r)
	}
	if f := r.Findings()[0]; f.Fix != "Run it from another source, or take a smaller one." {
		t.Errorf("finding %v", f)
	}
	kiln.PowerFactor = units.Some[units.Ratio](1)
	only := must[inverter.Runnable](t)(inverter.CanRun(service30(), []inverter.Demand{kiln}))
	wantRules(t, only, "too-much-together")
	if only.Sets != nil {
		t.Errorf("nothing runs, in the sets %+v", only.Sets)
	}
	wantRules(t, must[inverter.Runnable](t)(inverter.CanRun(service30(), nil)))
	// Watts need no power factor.
	watts := inverter.Limit{Name: "inverter", Power: units.Some(1500 * units.Watt)}
	wantRules(t, must[inverter.Runnable](t)(inverter.CanRun(watts, equalLoads(2, units.Watt))))
}

// CanRun refuses what Sets refuses.
func TestCanRunOutOfShape(t *testing.T) {
	_, err := inverter.CanRun(inverter.Limit{Name: "x"}, nil)
	wantRangeError(t, err, "inverter.CanRun", "Limit")
	_, err = inverter.CanRun(limit(), equalLoads(21, units.Watt))
	wantRangeError(t, err, "inverter.CanRun", "len(demands)")
	_, err = inverter.CanRun(limit(), []inverter.Demand{logger(), logger()})
	wantRangeError(t, err, "inverter.CanRun", "demands[1].Name")
	_, err = inverter.CanRun(limit(), []inverter.Demand{{Name: "x", Power: -1}})
	wantRangeError(t, err, "inverter.CanRun", "demands[0].Power")
	_, err = inverter.CanRun(limit(), equalLoads(2, 1.7e308))
	wantRangeError(t, err, "inverter.CanRun", "Power")
}

// TestSmallestAreKept: where sets are cut the smallest are there, though they
// come last in the list.
func TestSmallestAreKept(t *testing.T) {
	var list []inverter.Demand
	for i := range 18 {
		list = append(list, inverter.Demand{Name: fmt.Sprint(i), Power: units.Power(300 + i)})
	}
	list = append(list, inverter.Demand{Name: "kiln", Power: 1801 * units.Watt}, inverter.Demand{Name: "oven", Power: 1802 * units.Watt})
	o := must[inverter.Overload](t)(inverter.Sets(service30(), list))
	if !o.Cut || o.Sets[0].Members != 1<<18|1<<19 {
		t.Errorf("cut %v, first %v", o.Cut, o.Names(o.Sets[0].Members))
	}
}

// TestWorkingOfSets: each set is worked out, all together if there is none, and
// the code is named where its share is used only.
func TestWorkingOfSets(t *testing.T) {
	over := must[inverter.Overload](t)(inverter.Sets(service30(), []inverter.Demand{microwave(), coffeeMaker(), {Name: "kiln", Power: 4000 * units.Watt}}))
	within := must[inverter.Overload](t)(inverter.Sets(service30(), []inverter.Demand{microwave(), logger()}))
	for text, want := range map[string][2]bool{over.Working().Text(): {true, false}, within.Working().Text(): {false, true}} {
		if strings.Contains(text, "S_set1") != want[0] || strings.Contains(text, "S_all") != want[1] {
			t.Errorf("sets %v, all together %v wanted in\n%s", want[0], want[1], text)
		}
	}
	for share, code := range map[units.Ratio]bool{inverter.ContinuousShare: true, 0.5: false} {
		l := service30()
		l.Share = units.Some(share)
		o := must[inverter.Overload](t)(inverter.Sets(l, []inverter.Demand{microwave(), coffeeMaker(), {Name: "kiln", Power: 4000 * units.Watt}}))
		if strings.Contains(o.Working().Text(), "210.20") != code || strings.Contains(o.Findings()[0].Source.String(), "210.20") != code {
			t.Errorf("share %v: %v and\n%s", share, o.Findings()[0], o.Working().Text())
		}
	}
	// A member that there is not, just behind the last.
	within.Sets = []inverter.Set{{Members: 0b111}}
	if got := within.Names(0b111); len(got) != 2 {
		t.Errorf("names %q", got)
	}
	_ = within.Working().Text()
}

// Watts and volt-amperes can be the same number.
func TestApparentOfAResistance(t *testing.T) {
	d := microwave()
	d.PowerFactor, d.Apparent = units.None[units.Ratio](), units.Some(1450*units.VoltAmpere)
	if _, err := checkDemand(d); err != nil {
		t.Error(err)
	}
}
