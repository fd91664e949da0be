package inverter_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// slowSets is the obvious twin of Sets: every set is added up, and kept if it
// is too much and no set kept before lies within it. Of sets that are alike
// the first is looked at.
func slowSets(l inverter.Limit, demands []inverter.Demand) (kept []inverter.Members) {
	share := l.Share.Or(1)
	tooMuch := func(m int) bool {
		var p units.Power
		var s units.ApparentPower
		for i, d := range demands {
			if m>>i&1 == 1 {
				p += d.Power
				s += d.Apparent.Or(d.Power.Apparent(d.PowerFactor.Or(1)))
			}
		}
		power, hasPower := l.Power.Get()
		apparent, hasApparent := l.Apparent.Get()
		current, hasCurrent := l.Current.Get()
		return hasPower && units.Exceeds(p, units.Scale(power, share)) ||
			hasApparent && units.Exceeds(s, units.Scale(apparent, share)) ||
			hasCurrent && units.Exceeds(s.At(l.Voltage), units.Scale(current, share))
	}
	for size := 1; size <= len(demands); size++ {
		for m := 1; m < 1<<len(demands); m++ {
			if !firstOfAlike(demands, inverter.Members(m)) {
				continue
			}
			within := slices.ContainsFunc(kept, func(k inverter.Members) bool { return k&^inverter.Members(m) == 0 })
			if inverter.Members(m).Len() == size && !within && tooMuch(m) {
				kept = append(kept, inverter.Members(m))
			}
		}
	}
	return kept
}

// firstOfAlike reports whether members are, of demands that are alike, the
// first ones.
func firstOfAlike(demands []inverter.Demand, m inverter.Members) bool {
	apparent := func(d inverter.Demand) units.ApparentPower {
		return d.Apparent.Or(d.Power.Apparent(d.PowerFactor.Or(1)))
	}
	for i, d := range demands {
		for j, e := range demands[:i] {
			if m.Has(i) && !m.Has(j) && d.Power == e.Power && apparent(d) == apparent(e) {
				return false
			}
		}
	}
	return true
}

func randomDemands(r *rand.Rand, n int) (demands []inverter.Demand) {
	for i := range n {
		d := inverter.Demand{Name: fmt.Sprint("load ", i), Power: units.Power(r.IntN(1500))}
		if r.IntN(3) > 0 {
			d.PowerFactor = units.Some(units.Ratio(0.5 + 0.5*r.Float64()))
		}
		demands = append(demands, d)
	}
	return demands
}

func TestSetsSlowTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		demands, l := randomDemands(r, r.IntN(9)), limit()
		l.Power = units.Some(units.Power(500 + r.IntN(4000)))
		o := must[inverter.Overload](t)(inverter.Sets(l, demands))
		var got []inverter.Members
		for i, s := range o.Sets {
			got = append(got, s.Members)
			if i > 0 && o.Sets[i-1].Members.Len() > s.Members.Len() {
				t.Fatalf("sets are not in order of size: %+v", o.Sets)
			}
		}
		want := slowSets(l, demands)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Fatalf("Sets(%+v, %+v) = %v, want %v", l, demands, got, want)
		}
	}
}

// hold tries each law a hundred times.
func hold(t *testing.T, laws map[string]func(t *testing.T)) {
	for name, law := range laws {
		t.Run(name, func(t *testing.T) {
			for range 100 {
				law(t)
			}
		})
	}
}

func TestLawsOfAMachine(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	hold(t, map[string]func(t *testing.T){
		"more running never leaves more": func(t *testing.T) {
			demands := randomDemands(r, 5)
			some := must[inverter.Headroom](t)(inverter.Check(demoMachine(), demands[:4]))
			all := must[inverter.Headroom](t)(inverter.Check(demoMachine(), demands))
			if units.Exceeds(all.PowerLeft, some.PowerLeft) || units.Exceeds(all.ApparentLeft, some.ApparentLeft) {
				t.Errorf("%+v leaves more than %+v", all, some)
			}
		},
		"volt-amperes are never below watts": func(t *testing.T) {
			h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), randomDemands(r, 5)))
			if units.Compare(float64(h.Apparent), float64(h.Power)) < 0 {
				t.Errorf("%v of %v", h.Apparent, h.Power)
			}
		},
		"a lower voltage draws more current": func(t *testing.T) {
			s := dcSide()
			s.Machine.Continuous, s.Machine.ContinuousVA = units.Power(1+r.IntN(4000)), units.None[units.ApparentPower]()
			s.Machine.Surge = units.None[units.ApparentPower]()
			high := must[inverter.DCCurrent](t)(inverter.BatterySide(s))
			s.Machine.LowestVoltage = units.Some(10.5 * units.Volt)
			low := must[inverter.DCCurrent](t)(inverter.BatterySide(s))
			if units.Compare(low.Current, high.Current) <= 0 || units.Compare(low.Power, high.Power) != 0 {
				t.Errorf("%+v and %+v", low, high)
			}
		},
		"twice the hours are twice the idle": func(t *testing.T) {
			d := day()
			hours := units.Elapsed(1 + r.IntN(43200))
			d.On = units.Some(hours)
			once := must[inverter.DayUse](t)(inverter.EnergyADay(d))
			d.On = units.Some(2 * hours)
			twice := must[inverter.DayUse](t)(inverter.EnergyADay(d))
			if units.Compare(twice.Idle, 2*once.Idle) != 0 || twice.Loads != once.Loads {
				t.Errorf("%+v and %+v", once, twice)
			}
		},
	})
}

func TestLawsOfPaths(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	hold(t, map[string]func(t *testing.T){
		"energy out and lost is energy in, round a loop": func(t *testing.T) {
			sources, feeds := demoFeeds("backed panel")
			feeds[3].Efficiency, feeds[4].Efficiency = units.Ratio(0.5+r.Float64()/2), units.Ratio(0.5+r.Float64()/2)
			feeds[3].Most = units.Some(units.Power(100 + r.IntN(1500)))
			l := must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank"))[0]
			var lost units.Power
			for i, h := range l.Hops {
				lost += h.In - h.Out
				if i > 0 && h.In != l.Hops[i-1].Out {
					t.Errorf("what comes out does not go in: %+v", l.Hops)
				}
			}
			if units.Compare(lost, l.Lost) != 0 || units.Compare(l.Back+l.Lost, l.Drawn) != 0 {
				t.Errorf("loop %+v loses %v", l, lost)
			}
		},
		"two bonds share the current": func(t *testing.T) {
			n := neutralReturn()
			n.Ground = units.Resistance(0.001 + r.Float64())
			g := must[inverter.GroundShare](t)(inverter.ParallelNeutral(n))
			if units.Compare(g.Ground.Through(n.Ground), g.Rest.Through(n.Neutral)) != 0 {
				t.Errorf("the two paths do not have one voltage: %+v", g)
			}
		},
	})
}

func TestMembers(t *testing.T) {
	m := inverter.Members(0b1011)
	if got := slices.Collect(m.All()); !slices.Equal(got, []int{0, 1, 3}) || m.Len() != 3 {
		t.Errorf("%b has %v", m, got)
	}
	for i, want := range map[int]bool{-1: false, 0: true, 2: false, 3: true, 31: false, 32: false, 64: false} {
		if m.Has(i) != want {
			t.Errorf("%b has %d: %v", m, i, !want)
		}
	}
	for i := range m.All() { // leaving early
		if i == 1 {
			break
		}
	}
}

// TestNoiseMovesNoVerdict puts loads exactly at a limit and a part in 1e12 off.
func TestNoiseMovesNoVerdict(t *testing.T) {
	for _, noise := range []units.Ratio{1 - 1e-12, 1, 1 + 1e-12} {
		d := []inverter.Demand{{Name: "a", Power: units.Scale(1000*units.Watt, noise), PowerFactor: units.Some[units.Ratio](1), Kind: inverter.SteadyLoad},
			{Name: "b", Power: 500 * units.Watt, PowerFactor: units.Some[units.Ratio](1), Kind: inverter.SteadyLoad}}
		h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), d))
		if h.PowerLeft != 0 || h.ApparentLeft != 0 || len(h.Findings()) != 0 {
			t.Errorf("noise %v: %+v", float64(noise), h)
		}
		if o := must[inverter.Overload](t)(inverter.Sets(demoMachine().Limit(), d)); len(o.Sets) != 0 {
			t.Errorf("noise %v: %+v", float64(noise), o.Sets)
		}
	}
}
