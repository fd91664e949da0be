package inverter_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// checkOutcome demands a typed error, or numbers that are finite and not
// below zero and a working that can be read.
func checkOutcome(t *testing.T, err error, r result, numbers ...float64) {
	t.Helper()
	_ = r.Working().Text()
	_ = r.Findings()
	if err != nil {
		var e *units.RangeError
		if !errors.As(err, &e) || e.Error() == "" {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		return
	}
	for i, x := range numbers {
		if !(x >= 0) || math.IsInf(x, 0) {
			t.Fatalf("number %d of the result is %v", i, x)
		}
	}
}

// fuzzDemand makes a demand of raw numbers.
func fuzzDemand(name string, power, second, start, lasts float64, flags uint8) inverter.Demand {
	d := inverter.Demand{Name: name, Power: units.Power(power)}
	if flags&1 != 0 {
		d.Apparent = units.Some(units.ApparentPower(second))
	}
	if flags&2 != 0 {
		d.PowerFactor = units.Some(units.Ratio(second))
	}
	if flags&4 != 0 {
		d.Start = units.Some(units.ApparentPower(start))
	}
	if flags&8 != 0 {
		d.StartFor = units.Some(units.Elapsed(lasts))
	}
	return d
}

func FuzzCheck(f *testing.F) {
	f.Add(1500.0, 1500.0, 3000.0, 2.0, 0.89, 1450.0, 0.95, 7560.0, 0.5, uint8(14), uint8(7))
	f.Add(1500.0, 1500.0, 3000.0, 2.0, 89.0, math.NaN(), -1.0, math.Inf(1), 0.0, uint8(255), uint8(0))
	f.Fuzz(func(t *testing.T, watts, va, surge, holds, efficiency, power, second, start, lasts float64, flags, has uint8) {
		m := inverter.Machine{Continuous: units.Power(watts), Efficiency: units.Ratio(efficiency)}
		if has&1 != 0 {
			m.ContinuousVA = units.Some(units.ApparentPower(va))
		}
		if has&2 != 0 {
			m.Surge = units.Some(units.ApparentPower(surge))
		}
		if has&4 != 0 {
			m.SurgeFor = units.Some(units.Elapsed(holds))
		}
		d := []inverter.Demand{logger(), fuzzDemand("fuzzed", power, second, start, lasts, flags)}
		h, err := inverter.Check(m, d)
		checkOutcome(t, err, h, float64(h.Power), float64(h.Apparent), float64(h.Start))
		if err == nil && units.Exceeds(h.Power, m.Continuous) && !slices.Contains(rules(h), "inverter-overload") {
			t.Fatal("an overload goes unsaid")
		}
	})
}

func FuzzSets(f *testing.F) {
	f.Add(1450.0, 900.0, 80.0, 0.6, 1500.0, 1500.0, 30.0, 120.0, 0.8, uint8(15))
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, -1.0, 0.0, 0.0, 80.0, uint8(9))
	f.Fuzz(func(t *testing.T, a, b, c, factor, watts, va, amperes, volts, share float64, flags uint8) {
		l := inverter.Limit{Name: "limit", Voltage: units.Voltage(volts)}
		if flags&1 != 0 {
			l.Power = units.Some(units.Power(watts))
		}
		if flags&2 != 0 {
			l.Apparent = units.Some(units.ApparentPower(va))
		}
		if flags&4 != 0 {
			l.Current = units.Some(units.Current(amperes))
		}
		if flags&8 != 0 {
			l.Share = units.Some(units.Ratio(share))
		}
		demands := []inverter.Demand{{Name: "a", Power: units.Power(a)}, {Name: "b", Power: units.Power(b)},
			{Name: "c", Power: units.Power(c), PowerFactor: units.Some(units.Ratio(factor))}}
		o, err := inverter.Sets(l, demands)
		checkOutcome(t, err, o, float64(o.Together.Power), float64(o.Together.Apparent), float64(o.Together.Current))
		if err != nil {
			return
		}
		var got []inverter.Members
		for _, s := range o.Sets {
			got = append(got, s.Members)
		}
		want := slowSets(l, demands)
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Fatalf("sets %v, want %v", got, want)
		}
	})
}

func FuzzBatterySide(f *testing.F) {
	f.Add(1500.0, 0.89, 10.8, 1.25)
	f.Add(math.Inf(1), 89.0, 0.0, math.NaN())
	f.Fuzz(func(t *testing.T, watts, efficiency, volts, margin float64) {
		c, err := inverter.BatterySide(inverter.DCSide{Margin: units.Ratio(margin), Machine: inverter.Machine{
			Continuous: units.Power(watts), Efficiency: units.Ratio(efficiency), LowestVoltage: units.Some(units.Voltage(volts))}})
		checkOutcome(t, err, c, float64(c.Power), float64(c.Current), float64(c.Required))
		if err == nil && units.Exceeds(c.Current, c.Required) {
			t.Fatalf("required %v of %v", c.Required, c.Current)
		}
	})
}

func FuzzEnergyADay(f *testing.F) {
	f.Add(3.042e6, 0.89, 14.0, 86400.0, 12.8, uint8(3))
	f.Add(math.NaN(), -1.0, math.Inf(1), 1e9, 0.0, uint8(0))
	f.Fuzz(func(t *testing.T, joules, efficiency, idle, on, volts float64, flags uint8) {
		d := inverter.Day{Energy: units.Energy(joules), Efficiency: units.Ratio(efficiency), On: units.Some(units.Elapsed(on))}
		if flags&1 != 0 {
			d.Idle = units.Some(units.Power(idle))
		}
		if flags&2 != 0 {
			d.Voltage = units.Some(units.Voltage(volts))
		}
		u, err := inverter.EnergyADay(d)
		checkOutcome(t, err, u, float64(u.Loads), float64(u.Idle), float64(u.Energy), float64(u.Charge.Or(0)))
	})
}

func FuzzCarryTime(f *testing.F) {
	f.Add(110.0, 0.9, 20.0, 35.0, 173.0, 7.4e6, uint8(3))
	f.Add(0.0, 1.0, 0.0, 0.0, 0.0, 1.0, uint8(3))
	f.Fuzz(func(t *testing.T, ac, efficiency, idle, dc, loop, joules float64, flags uint8) {
		c := inverter.Carry{AC: units.Power(ac), Efficiency: units.Ratio(efficiency), DC: units.Power(dc), Loop: units.Power(loop)}
		if flags&1 != 0 {
			c.Idle = units.Some(units.Power(idle))
		}
		if flags&2 != 0 {
			c.Usable = units.Some(units.Energy(joules))
		}
		h, err := inverter.CarryTime(c)
		checkOutcome(t, err, h, float64(h.Inverter), float64(h.Power), float64(h.Time.Or(0)))
	})
}

func FuzzChargerDraw(f *testing.F) {
	f.Add(45.0, 14.4, 0.87, 0.95, 120.0, 8.64e6, true)
	f.Add(0.0, math.Inf(1), 87.0, math.NaN(), -1.0, 0.0, false)
	f.Fuzz(func(t *testing.T, amperes, volts, efficiency, factor, supply, joules float64, has bool) {
		c := inverter.Charger{Current: units.Current(amperes), Voltage: units.Voltage(volts), Efficiency: units.Ratio(efficiency),
			PowerFactor: units.Ratio(factor), Supply: units.Voltage(supply)}
		if has {
			c.Energy = units.Some(units.Energy(joules))
		}
		u, err := inverter.ChargerDraw(c)
		checkOutcome(t, err, u, float64(u.Output), float64(u.Power), float64(u.Apparent), float64(u.Current), float64(u.Time.Or(0)))
	})
}

func FuzzStarting(f *testing.F) {
	f.Add(63.0, 120.0, 0.4, true)
	f.Add(math.NaN(), math.Inf(1), 40.0, true)
	f.Add(1e200, 1e200, 0.0, false)
	f.Fuzz(func(t *testing.T, amperes, volts, share float64, soft bool) {
		m := inverter.Motor{LockedRotor: units.Current(amperes), Voltage: units.Voltage(volts)}
		if soft {
			m.SoftStart = units.Some(units.Ratio(share))
		}
		s, err := inverter.Starting(m)
		checkOutcome(t, err, s, float64(s.Current), float64(s.Apparent))
		if err == nil && units.Exceeds(s.Current, m.LockedRotor) {
			t.Fatalf("starting takes %v of %v", s.Current, m.LockedRotor)
		}
	})
}

func FuzzFaultToFrame(f *testing.F) {
	f.Add(120.0, 0.3, 25.0, 20.0, uint8(7))
	f.Add(120.0, 0.0, 1e-320, math.NaN(), uint8(2))
	f.Fuzz(func(t *testing.T, volts, metal, earth, device float64, flags uint8) {
		fault := inverter.FrameFault{Voltage: units.Voltage(volts)}
		if flags&1 != 0 {
			fault.Metal = units.Some(units.Resistance(metal))
		}
		if flags&2 != 0 {
			fault.Earth = units.Some(units.Resistance(earth))
		}
		if flags&4 != 0 {
			fault.Device = units.Some(units.Current(device))
		}
		p, err := inverter.FaultToFrame(fault)
		checkOutcome(t, err, p, float64(p.Current), float64(p.MetalShare), float64(p.EarthShare))
		if err == nil && len(p.Findings()) != 1 {
			t.Fatal("a fault needs one finding")
		}
	})
}

func FuzzParallelNeutral(f *testing.F) {
	f.Add(20.0, 0.04, 0.06)
	f.Add(math.Inf(1), 1e-320, -1.0)
	f.Fuzz(func(t *testing.T, amperes, neutral, ground float64) {
		n := inverter.NeutralReturn{Current: units.Current(amperes), Neutral: units.Resistance(neutral), Ground: units.Resistance(ground)}
		g, err := inverter.ParallelNeutral(n)
		checkOutcome(t, err, g, float64(g.Ground), float64(g.Rest))
		if err == nil && math.Abs(float64(g.Ground+g.Rest-n.Current)) > 1e-12*float64(n.Current) {
			t.Fatalf("%v and %v are not %v", g.Ground, g.Rest, n.Current)
		}
	})
}

func FuzzPassThrough(f *testing.F) {
	f.Add(15.0, 20.0, uint8(3))
	f.Add(math.NaN(), -1.0, uint8(1))
	f.Fuzz(func(t *testing.T, relay, feeder float64, flags uint8) {
		var p inverter.Passage
		if flags&1 != 0 {
			p.Relay = units.Some(units.Current(relay))
		}
		if flags&2 != 0 {
			p.Feeder = units.Some(units.Current(feeder))
		}
		k, err := inverter.PassThrough(p)
		checkOutcome(t, err, k, float64(k.MaxDevice.Or(0)))
		if err == nil && flags&3 == 3 && slices.Contains(rules(k), "relay-below-device") != units.Exceeds(units.Current(feeder), units.Current(relay)) {
			t.Fatalf("findings %v of %+v", rules(k), p)
		}
	})
}

// FuzzFeedLoops reads a graph of up to six places from bytes, and counts its
// loops by trying all orders of places.
func FuzzFeedLoops(f *testing.F) {
	f.Add([]byte{0, 1, 1, 0}, 0.9, 100.0)
	f.Add([]byte{0, 1, 1, 2, 2, 0, 1, 0, 2, 1, 0, 2, 3, 0, 0, 3}, 0.5, 1e308)
	f.Fuzz(func(t *testing.T, edges []byte, efficiency, most float64) {
		var feeds []inverter.Feed
		var arrows [6][6]int
		for i := 0; i+1 < len(edges) && i < 40; i += 2 {
			from, to := edges[i]%6, edges[i+1]%6
			if from == to {
				continue
			}
			arrows[from][to]++
			feeds = append(feeds, inverter.Feed{Name: fmt.Sprint("feed ", i), From: fmt.Sprint(from), To: fmt.Sprint(to),
				Efficiency: units.Ratio(efficiency), Most: units.Some(units.Power(most))})
		}
		loops, err := inverter.FeedLoops([]string{"source"}, feeds, "0")
		for _, l := range loops {
			checkOutcome(t, err, l, float64(l.Drawn), float64(l.Back), float64(l.Lost))
		}
		if err != nil {
			checkOutcome(t, err, inverter.Loop{})
			return
		}
		if want := countLoops(arrows, 0, 1); len(loops) != want {
			t.Fatalf("%d loops, want %d", len(loops), want)
		}
	})
}

// countLoops counts the ways from place to 0, with the places in seen left
// out.
func countLoops(arrows [6][6]int, place, seen int) int {
	n := 0
	if place != 0 {
		n = arrows[place][0]
	}
	for to := 1; to < 6; to++ {
		if seen>>to&1 == 0 {
			n += arrows[place][to] * countLoops(arrows, to, seen|1<<to)
		}
	}
	return n
}
