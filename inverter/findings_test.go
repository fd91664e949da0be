package inverter_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// TestHeadroomFindings seeds each mistake in turn and mends it: the finding
// appears with the mistake and goes with it.
func TestHeadroomFindings(t *testing.T) {
	type change func(*inverter.Machine, []inverter.Demand)
	for _, c := range []struct {
		what string
		seed change
		want []string
	}{
		{"nothing", func(*inverter.Machine, []inverter.Demand) {}, nil},
		{"too many watts", func(m *inverter.Machine, _ []inverter.Demand) { m.Continuous = 938 * units.Watt }, []string{"inverter-overload"}},
		{"just enough watts", func(m *inverter.Machine, _ []inverter.Demand) { m.Continuous = 939 * units.Watt }, nil},
		{"more volt-amperes that fit", func(_ *inverter.Machine, d []inverter.Demand) { d[0].PowerFactor = units.Some(10 * units.Percent) }, nil},
		{"too many volt-amperes", func(_ *inverter.Machine, d []inverter.Demand) { d[1].PowerFactor = units.Some(50 * units.Percent) },
			[]string{"inverter-overload-va"}},
		{"no volt-amperes stated", func(m *inverter.Machine, _ []inverter.Demand) { m.ContinuousVA = units.None[units.ApparentPower]() },
			[]string{"inverter-va-not-stated"}},
		{"a power factor not stated", func(_ *inverter.Machine, d []inverter.Demand) { d[0].PowerFactor = units.None[units.Ratio]() },
			[]string{"power-factor-not-stated"}},
		{"a start too large", func(_ *inverter.Machine, d []inverter.Demand) { d[2].Start = units.Some(2100 * units.VoltAmpere) }, []string{"inverter-surge"}},
		{"a start that just fits", func(_ *inverter.Machine, d []inverter.Demand) {
			d[2].Start, d[2].StartFor = units.Some(2085*units.VoltAmpere), units.Some(2*units.Second)
		}, nil},
		{"a start too long", func(_ *inverter.Machine, d []inverter.Demand) {
			d[2].Start, d[2].StartFor = units.Some(2085*units.VoltAmpere), units.Some(2.1*units.Second)
		}, []string{"inverter-surge-too-short"}},
		{"a start of unknown length", func(_ *inverter.Machine, d []inverter.Demand) { d[2].Start = units.Some(2085 * units.VoltAmpere) },
			[]string{"inverter-surge-time-not-stated"}},
		{"a surge of unknown length", func(m *inverter.Machine, d []inverter.Demand) {
			m.SurgeFor, d[2].Start, d[2].StartFor = units.None[units.Elapsed](), units.Some(2085*units.VoltAmpere), units.Some(units.Second)
		}, []string{"inverter-surge-time-not-stated"}},
		{"a start that needs no surge", func(m *inverter.Machine, d []inverter.Demand) { d[2].Start = units.Some(585 * units.VoltAmpere) }, nil},
		{"a motor without a start", func(_ *inverter.Machine, d []inverter.Demand) { d[2].Kind = inverter.MotorLoad }, []string{"start-not-stated"}},
		{"a motor with its start", func(_ *inverter.Machine, d []inverter.Demand) {
			d[2].Kind, d[2].Start = inverter.MotorLoad, units.Some(180*units.VoltAmpere)
		}, nil},
		{"a kind not stated", func(_ *inverter.Machine, d []inverter.Demand) { d[0].Kind, d[2].Kind = 0, 0 }, []string{"kind-not-stated"}},
		{"a start says enough", func(_ *inverter.Machine, d []inverter.Demand) {
			d[2].Kind, d[2].Start = 0, units.Some(180*units.VoltAmpere)
		}, nil},
		{"volt-amperes taken as watts, too many", func(m *inverter.Machine, d []inverter.Demand) {
			m.ContinuousVA, d[1].PowerFactor = units.None[units.ApparentPower](), units.Some(59*units.Percent)
		}, []string{"inverter-overload-va", "inverter-va-not-stated"}},
		{"a surge not stated", func(m *inverter.Machine, d []inverter.Demand) {
			m.Surge, d[2].Start = units.None[units.ApparentPower](), units.Some(100*units.VoltAmpere)
		}, []string{"inverter-surge-not-stated"}},
	} {
		t.Run(c.what, func(t *testing.T) {
			m, d := demoMachine(), []inverter.Demand{logger(), coffeeMaker(), {Name: "pump", Power: 30 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some[units.Ratio](1)}}
			c.seed(&m, d)
			wantRules(t, must[inverter.Headroom](t)(inverter.Check(m, d)), c.want...)
		})
	}
}

// TestStartByTheRuleOfThumb: what is not stated is said with what is usual, and
// where that is from.
func TestStartByTheRuleOfThumb(t *testing.T) {
	d := inverter.Demand{Name: "pump", Power: 30 * units.Watt, Kind: inverter.MotorLoad, PowerFactor: units.Some(60 * units.Percent)}
	f := must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{d})).Findings()[0]
	if got := f.Numbers[0].String() + ", " + f.Numbers[1].String(); got != "running 50 VA, start by the rule of thumb 300 VA" {
		t.Errorf("numbers %s", got)
	}
	if f.Source.Provenance != working.CommonPractice {
		t.Errorf("source %v", f.Source)
	}
	f = must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{{Name: "a"}, {Name: "b"}, d})).Findings()[1]
	if f.Rule != "kind-not-stated" || f.Numbers[0].String() != "demands 2" {
		t.Errorf("finding %v", f)
	}
}

// TestMarginOfAnotherRule: the code is named where its margin is used only.
func TestMarginOfAnotherRule(t *testing.T) {
	for margin, code := range map[units.Ratio]bool{inverter.NECMargin: true, 1.3: false, 1: false} {
		s := dcSide()
		s.Margin = margin
		c := must[inverter.DCCurrent](t)(inverter.BatterySide(s))
		f := c.Findings()[0]
		if got := strings.Contains(f.Source.String(), "National Electrical Code"); got != code {
			t.Errorf("margin %v: source %v", margin, f.Source)
		}
		if strings.Contains(c.Working().Text(), "690.8(B)(1)") != code || f.Numbers[2].Value != margin {
			t.Errorf("margin %v: finding %v and working\n%s", margin, f, c.Working().Text())
		}
	}
}

func TestWorstStartIsTaken(t *testing.T) {
	d := []inverter.Demand{logger(), airConditioner(), coffeeMaker(), {Name: "pump", Power: 30 * units.Watt, Start: units.Some(200 * units.VoltAmpere)}}
	h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), d))
	if h.Starting != 1 || units.Compare(h.Others, (15+900+30)*units.VoltAmpere) != 0 || units.Compare(h.Start, (945+7560)*units.VoltAmpere) != 0 {
		t.Errorf("headroom %+v", h)
	}
	if left, ok := h.SurgeLeft.Get(); !ok || units.Compare(left, -5505*units.VoltAmpere) != 0 {
		t.Errorf("left of the surge %v, want -5505 VA", h.SurgeLeft)
	}
	// Its place in the list does not matter.
	slices.Reverse(d)
	again := must[inverter.Headroom](t)(inverter.Check(demoMachine(), d))
	if again.Starting != 2 || units.Compare(again.Start, h.Start) != 0 {
		t.Errorf("reversed: headroom %+v", again)
	}
	if h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), d[3:])); h.Starting != -1 || h.SurgeLeft.IsSet() {
		t.Errorf("without a start: %+v", h)
	}
}

func TestSetsFindings(t *testing.T) {
	alone := inverter.Demand{Name: "kiln", Power: 4000 * units.Watt}
	o := must[inverter.Overload](t)(inverter.Sets(service30(), []inverter.Demand{logger(), alone}))
	wantRules(t, o, "too-much-together", "power-factor-not-stated")
	if f := o.Findings()[0]; f.Message != "kiln alone is more than the 30 A service carries." || len(f.Numbers) != 2 {
		t.Errorf("finding %v", f)
	}
	// A limit in watts needs no power factor.
	watts := inverter.Limit{Name: "inverter", Power: units.Some(1500 * units.Watt), Share: units.Some(50 * units.Percent)}
	wantRules(t, must[inverter.Overload](t)(inverter.Sets(watts, []inverter.Demand{logger(), alone})), "too-much-for-hours")
	watts.Power = units.Some(8020 * units.Watt)
	wantRules(t, must[inverter.Overload](t)(inverter.Sets(watts, []inverter.Demand{logger(), alone})))
	all := must[inverter.Overload](t)(inverter.Sets(limit(), []inverter.Demand{alone}))
	if f := all.Findings()[0]; len(f.Numbers) != 6 {
		t.Errorf("three limits are exceeded, numbers %v", f.Numbers)
	}
}

func TestPassThroughFindings(t *testing.T) {
	wantRules(t, must[inverter.PassThroughCheck](t)(inverter.PassThrough(passage())))
	wantRules(t, must[inverter.PassThroughCheck](t)(inverter.PassThrough(inverter.Passage{})), "pass-through-device-not-stated", "relay-not-stated")
	equal := inverter.Passage{Relay: units.Some(20 * units.Ampere), Feeder: units.Some(20 * units.Ampere)}
	wantRules(t, must[inverter.PassThroughCheck](t)(inverter.PassThrough(equal)))
}

func TestFaultFindings(t *testing.T) {
	f := inverter.FrameFault{Voltage: 120 * units.Volt, Metal: units.Some(6 * units.Ohm), Device: units.Some(20 * units.Ampere)}
	p := must[inverter.FaultPath](t)(inverter.FaultToFrame(f))
	if p.CanOpen { // 20 A through a device of 20 A
		t.Errorf("a device opens at its rating: %+v", p)
	}
	wantRules(t, p, "fault-cannot-open-device")
	f.Device = units.None[units.Current]()
	wantRules(t, must[inverter.FaultPath](t)(inverter.FaultToFrame(f)), "fault-device-not-stated")
}

func TestGroundFaultProtectionTrips(t *testing.T) {
	n := neutralReturn()
	large := must[inverter.GroundShare](t)(inverter.ParallelNeutral(n)).Findings()[0].Message
	n.Current = 10 * units.Milliampere // 4 mA through ground
	small := must[inverter.GroundShare](t)(inverter.ParallelNeutral(n)).Findings()[0].Message
	const trips = "protection of the site trips"
	if !strings.Contains(large, trips) || strings.Contains(small, trips) {
		t.Errorf("8 A: %s\n4 mA: %s", large, small)
	}
}

// A bank that nothing draws from lasts no time that could be stated.
func TestNothingDrawn(t *testing.T) {
	h := must[inverter.Carried](t)(inverter.CarryTime(inverter.Carry{Efficiency: 0.9, Idle: units.Some(0 * units.Watt), Usable: units.Some(units.WattHour)}))
	if h.Power != 0 || h.Time.IsSet() {
		t.Errorf("carried %+v", h)
	}
}

func TestOtherFindings(t *testing.T) {
	wantRules(t, must[inverter.DCCurrent](t)(inverter.BatterySide(dcSide())), "dc-device-not-checked")
	c := carry()
	wantRules(t, must[inverter.Carried](t)(inverter.CarryTime(c)), "silent-failover")
	c.Idle = units.None[units.Power]()
	wantRules(t, must[inverter.Carried](t)(inverter.CarryTime(c)), "idle-not-stated", "silent-failover")
	wantRules(t, must[inverter.ChargerUse](t)(inverter.ChargerDraw(demoConverter())))
	wantRules(t, must[inverter.ChargerUse](t)(inverter.ChargerDraw(charger())), "refill-at-full-output")
	m := motor()
	wantRules(t, must[inverter.Start](t)(inverter.Starting(m)), "soft-start-share")
	m.SoftStart = units.None[units.Ratio]()
	wantRules(t, must[inverter.Start](t)(inverter.Starting(m)))
}

// TestLoopElsewhere seeds the loop on another source and through a second
// panel.
func TestLoopElsewhere(t *testing.T) {
	feeds := []inverter.Feed{
		{Name: "inverter", From: "house", To: "panel", With: []string{"night"}, Efficiency: 0.9},
		{Name: "feeder", From: "panel", To: "shed", Efficiency: 1},
		{Name: "charger", From: "shed", To: "house", Efficiency: 0.8},
		{Name: "second charger", From: "shed", To: "house", Efficiency: 0.7, Most: units.Some(70 * units.Watt)},
		{Name: "lead", From: "shed", To: "panel", Efficiency: 1}, // back to a panel, not to the bank
	}
	loops := must[[]inverter.Loop](t)(inverter.FeedLoops([]string{"day", "night"}, feeds, "house"))
	if len(loops) != 2 || loops[0].Source != "night" || loops[0].Known || !loops[1].Known {
		t.Fatalf("loops %+v", loops)
	}
	if f := loops[0].Findings()[0]; f.Severity != working.Caution || len(f.Numbers) != 1 || f.Numbers[0].String() != "part that comes back 72 %" {
		t.Errorf("finding %v", f)
	}
	// 70 W / 0.7 / 1 / 0.9 = 111.1 W
	if l := loops[1]; units.Compare(l.Drawn, 111.111111111*units.Watt) != 0 || units.Compare(l.Lost, 41.111111111*units.Watt) != 0 {
		t.Errorf("loop %+v", l)
	}
	if got := must[[]inverter.Loop](t)(inverter.FeedLoops([]string{"day"}, nil, "house")); got != nil {
		t.Errorf("no feeds: %+v", got)
	}
}

func TestWeakestFeedSetsTheLoop(t *testing.T) {
	sources, feeds := demoFeeds("backed panel")
	feeds[3].Most = units.Some(500 * units.Watt) // the inverter is now the weakest
	l := must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank"))[0]
	// 500 W x 0.87 back, 500 W / 0.89 drawn
	if units.Compare(l.Back, 435*units.Watt) != 0 || units.Compare(l.Drawn, 561.797752809*units.Watt) != 0 {
		t.Errorf("loop %+v", l)
	}
	for _, h := range l.Hops {
		if most, ok := h.Most.Get(); ok && units.Exceeds(h.Out, most) {
			t.Errorf("%s gives %v, more than %v", h.Name, h.Out, most)
		}
	}
	// Own draw above what the path carries: nothing comes back.
	feeds[4].Idle = units.Some(600 * units.Watt)
	l = must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank"))[0]
	if l.Back != 0 || !(l.Drawn > 0) || l.Lost != l.Drawn {
		t.Errorf("loop %+v", l)
	}
}

// TestBarelyAboveTheBreaker: 5.9 Ω let 20.34 A flow, which a breaker of 20 A
// may carry for an hour; 1.2 Ω let five times its rating flow.
func TestBarelyAboveTheBreaker(t *testing.T) {
	for ohms, rule := range map[units.Resistance]string{
		5.9 * units.Ohm: "fault-opens-slowly", 1.21 * units.Ohm: "fault-opens-slowly", 1.2 * units.Ohm: "opening-time-not-judged",
	} {
		p, err := inverter.FaultToFrame(inverter.FrameFault{Voltage: 120 * units.Volt, Metal: units.Some(ohms), Device: units.Some(20 * units.Ampere)})
		if err != nil {
			t.Fatal(err)
		}
		wantRules(t, p, rule)
	}
}

// TestIdleAlone: an inverter that is on all day for nothing is said.
func TestIdleAlone(t *testing.T) {
	u, err := inverter.EnergyADay(inverter.Day{Efficiency: 90 * units.Percent, Idle: units.Some(22 * units.Watt), On: units.Some(24 * units.Hour)})
	if err != nil {
		t.Fatal(err)
	}
	wantRules(t, u, "idle-outweighs-loads")
}
