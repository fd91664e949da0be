package wire_test

import (
	"math"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// multiwire is a multiwire circuit of 15 A on a panel whose hots are one.
func multiwire() wire.Multiwire {
	return wire.Multiwire{Supply: units.Some(wire.OneHot), Currents: amperes(12, 9),
		Device: units.Some(15 * units.Ampere), Main: units.Some(30 * units.Ampere), Neutral: units.Some(15 * units.Ampere)}
}

// splitLoad is a heavy and a light leg.
func splitLoad() wire.SplitLoad {
	return wire.SplitLoad{Powers: watts(1200, 300), Nominal: 120 * units.Volt}
}

func amperes(a, b units.Current) units.Legs[units.Current] {
	return units.Legs[units.Current]{A: a, B: b}
}

func watts(a, b units.Power) units.Legs[units.Power] { return units.Legs[units.Power]{A: a, B: b} }

// wantDecimals demands that x, printed to one decimal, is want.
func wantDecimals(t *testing.T, what string, x float64, want string) {
	t.Helper()
	if got := units.Fixed(x, 1); got != want {
		t.Errorf("%s = %s, want %s", what, got, want)
	}
}

var supplies = []wire.LegSupply{wire.SplitPhase, wire.NetworkLegs, wire.OneHot}

func TestAnglesOfLegs(t *testing.T) {
	for supply, degrees := range map[wire.LegSupply]units.Angle{wire.SplitPhase: 180, wire.NetworkLegs: 120, wire.OneHot: 0, 3: 0, 255: 0} {
		if got := supply.Angle(); got != degrees*units.Degree {
			t.Errorf("%v: %v", supply, got)
		}
	}
}

// TestNeutralOfTwoHots: the difference, the sum, or for two legs of three the
// vector in between; worked by hand with Kirchhoff's law.
func TestNeutralOfTwoHots(t *testing.T) {
	for _, c := range []struct {
		supply wire.LegSupply
		a, b   units.Current
		want   string
	}{
		{wire.SplitPhase, 40, 40, "0.0"},
		{wire.SplitPhase, 40, 25, "15.0"},
		{wire.SplitPhase, 50, 0, "50.0"},
		{wire.OneHot, 30, 25, "55.0"},
		{wire.NetworkLegs, 40, 40, "40.0"},
		{wire.NetworkLegs, 40, 25, "35.0"},
		{wire.NetworkLegs, 0, 0, "0.0"},
	} {
		for range 2 {
			m := wire.Multiwire{Supply: units.Some(c.supply), Currents: amperes(c.a, c.b)}
			n := must[wire.NeutralCurrent](t)(wire.SharedNeutral(m))
			wantDecimals(t, c.supply.String(), units.In(n.Current, units.Ampere), c.want)
			if n.Most.IsSet() {
				t.Errorf("without a device %v are let through", n.Most)
			}
			c.a, c.b = c.b, c.a
		}
	}
}

// TestBothCalculatorsSayOneNeutral: a circuit and a feeder of the same currents
// have the same in the neutral, found by a root and by adding phasors.
func TestBothCalculatorsSayOneNeutral(t *testing.T) {
	for _, supply := range supplies {
		for _, b := range []units.Current{0, 3, 25, 40, 41} {
			r := panel()
			r.Supply, r.Currents.B = supply, b
			v := must[wire.LegVoltages](t)(wire.LegDrop(r))
			n := must[wire.NeutralCurrent](t)(wire.SharedNeutral(wire.Multiwire{Supply: units.Some(supply), Currents: r.Currents}))
			if !equal(n.Current, v.InNeutral) {
				t.Errorf("%v, %v: %v, of a feeder %v", supply, r.Currents, n.Current, v.InNeutral)
			}
		}
	}
}

func TestNeutralFindings(t *testing.T) {
	some := units.Some[units.Current]
	none := units.None[units.Current]()
	const inUse, canBe, sum = "danger neutral-overloaded", "danger neutral-can-be-overloaded", "danger neutral-carries-the-sum"
	for _, c := range []struct {
		what                  string
		supply                wire.LegSupply
		a, b                  units.Current
		device, main, neutral units.Opt[units.Current]
		want                  []string
	}{
		{"difference within", wire.SplitPhase, 12, 9, some(15), none, some(15), nil},
		{"nothing stated", wire.SplitPhase, 12, 9, none, none, none, nil},
		{"both hots on one leg, in use", wire.OneHot, 12, 9, some(15), none, some(15), []string{inUse}},
		{"both hots on one leg, little in use", wire.OneHot, 2, 3, some(15), none, some(15), []string{canBe}},
		{"both hots on one leg, nothing in use", wire.OneHot, 0, 0, some(15), none, some(15), []string{canBe}},
		{"a neutral for the sum", wire.OneHot, 12, 9, some(15), none, some(30), nil},
		{"a neutral just too small", wire.OneHot, 12, 9, some(15), none, some(29.9), []string{canBe}},
		{"the main holds the sum down", wire.OneHot, 8, 7, some(20), some(15), some(15), nil},
		{"the main is as large as both", wire.OneHot, 8, 7, some(20), some(50), some(39), []string{canBe}},
		{"one leg, no neutral stated", wire.OneHot, 8, 7, some(20), none, none, []string{sum}},
		{"one leg, no device stated", wire.OneHot, 8, 7, none, none, some(20), []string{sum}},
		{"one hot alone", wire.SplitPhase, 16, 0, some(20), none, some(15), []string{inUse}},
		{"a thin neutral", wire.NetworkLegs, 10, 10, some(20), none, some(15), []string{canBe}},
		{"two of three within", wire.NetworkLegs, 10, 10, some(20), none, some(20), nil},
	} {
		n := must[wire.NeutralCurrent](t)(wire.SharedNeutral(wire.Multiwire{Supply: units.Some(c.supply), Currents: amperes(c.a, c.b),
			Device: c.device, Main: c.main, Neutral: c.neutral}))
		wantSaid(t, c.what, n.Findings(), c.want...)
	}
	// A main device counts only where it feeds both.
	m := multiwire()
	m.Supply, m.Main = units.Some(wire.SplitPhase), some(1)
	if n := must[wire.NeutralCurrent](t)(wire.SharedNeutral(m)); n.Most != some(15) {
		t.Errorf("on split phase %v are let through, want 15 A", n.Most)
	}
}

// TestTrapBothLegsFromOneHot: a 120 V inverter on both legs of a panel with a
// multiwire circuit. The neutral carries the sum, 55 A of 30 A and 25 A, and not
// the difference.
func TestTrapBothLegsFromOneHot(t *testing.T) {
	m := wire.Multiwire{Supply: units.Some(wire.OneHot), Currents: amperes(30, 25)}
	n := must[wire.NeutralCurrent](t)(wire.SharedNeutral(m))
	wantDecimals(t, "A in the neutral", units.In(n.Current, units.Ampere), "55.0")
	wantSaid(t, "from an inverter", n.Findings(), "danger neutral-carries-the-sum")
	// By an adapter on a 30 A supply its device holds the sum down.
	m.Device, m.Main, m.Neutral = units.Some(50*units.Ampere), units.Some(30*units.Ampere), units.Some(50*units.Ampere)
	m.Currents = amperes(16, 12)
	wantSaid(t, "by an adapter", must[wire.NeutralCurrent](t)(wire.SharedNeutral(m)).Findings())
}

// TestOpenNeutral: the lighter side rises. Worked by hand as two resistances in
// series.
func TestOpenNeutral(t *testing.T) {
	const over, chance, dead = "danger open-neutral-overvoltage", "caution open-neutral-by-chance", "caution open-neutral-dead"
	for _, c := range []struct {
		supply       wire.LegSupply
		a, b         units.Power
		wantA, wantB string
		finding      string
	}{
		{wire.SplitPhase, 600, 1200, "160.0", "80.0", over},
		{wire.SplitPhase, 1500, 1500, "120.0", "120.0", chance},
		{wire.SplitPhase, 100, 1500, "225.0", "15.0", over},
		{wire.SplitPhase, 1200, 300, "48.0", "192.0", over},
		{wire.SplitPhase, 1200, 0, "0.0", "240.0", over}, // whatever is switched on first
		{wire.SplitPhase, 1130, 1270, "127.0", "113.0", chance},
		{wire.SplitPhase, 1129, 1271, "127.1", "112.9", over},
		{wire.NetworkLegs, 1000, 1000, "103.9", "103.9", chance}, // 208 V
		{wire.NetworkLegs, 300, 1200, "166.3", "41.6", over},
		{wire.OneHot, 1200, 300, "0.0", "0.0", dead}, // a rig of one leg
	} {
		l := splitLoad()
		l.Supply, l.Powers = c.supply, watts(c.a, c.b)
		f := must[wire.FloatingNeutral](t)(wire.OpenNeutral(l))
		wantDecimals(t, "V on leg A", units.In(f.AtLoad.A, units.Volt), c.wantA)
		wantDecimals(t, "V on leg B", units.In(f.AtLoad.B, units.Volt), c.wantB)
		wantDecimals(t, "V at the most", units.In(f.Highest, units.Volt), "127.0")
		wantSaid(t, c.supply.String(), f.Findings(), c.finding)
		// Both are in series: one current, and the square of the voltage in each.
		if f.Line > 0 && c.b > 0 && !equal(f.Powers.A.At(f.AtLoad.A), f.Powers.B.At(f.AtLoad.B)) {
			t.Errorf("%v: %v at %v are two currents", c, f.Powers, f.AtLoad)
		}
		if !equal(f.AtLoad.Total(), f.Line) || f.Line == 0 && f.Powers != watts(0, 0) {
			t.Errorf("%v: %v between the legs, %v and %v", c, f.Line, f.AtLoad, f.Powers)
		}
	}
	l := splitLoad()
	l.Highest = units.Some(200 * units.Volt)
	f := must[wire.FloatingNeutral](t)(wire.OpenNeutral(l))
	wantSaid(t, "loads that stand it", f.Findings(), chance)
	usual := must[wire.FloatingNeutral](t)(wire.OpenNeutral(splitLoad()))
	if stated, taken := f.Findings()[0].Source.Title, usual.Findings()[0].Source.Title; strings.Contains(stated, "C84.1") || !strings.Contains(taken, "C84.1") {
		t.Errorf("of a stated limit %q, of the usual range %q", stated, taken)
	}
}

// TestTrapOpenNeutral: 120 V on both legs is the wrong answer, and a rig of one
// leg is dead instead.
func TestTrapOpenNeutral(t *testing.T) {
	l := splitLoad()
	f := must[wire.FloatingNeutral](t)(wire.OpenNeutral(l))
	if !equal(f.AtLoad.A, 48*units.Volt) || !equal(f.AtLoad.B, 192*units.Volt) {
		t.Errorf("%v, want 48 V and 192 V", f.AtLoad)
	}
	wantSaid(t, "two legs", f.Findings(), "danger open-neutral-overvoltage")
	l.Supply = wire.OneHot
	wantSaid(t, "one leg", must[wire.FloatingNeutral](t)(wire.OpenNeutral(l)).Findings(), "caution open-neutral-dead")
}

func TestSharedNeutralIsChecked(t *testing.T) {
	refused := func(field string, spoil func(*wire.Multiwire)) {
		t.Helper()
		m := multiwire()
		spoil(&m)
		n, err := wire.SharedNeutral(m)
		wantZero(t, n, err, "wire.SharedNeutral", field)
	}
	for _, x := range notAtLeastZero {
		refused("Currents.A", func(m *wire.Multiwire) { m.Currents.A = units.Current(x) })
		refused("Currents.B", func(m *wire.Multiwire) { m.Currents.B = units.Current(x) })
	}
	for _, x := range bad {
		stated := units.Some(units.Current(x))
		refused("Device", func(m *wire.Multiwire) { m.Device = stated })
		refused("Main", func(m *wire.Multiwire) { m.Main = stated })
		refused("Neutral", func(m *wire.Multiwire) { m.Neutral = stated })
	}
	// What is not said of the supply is not guessed.
	refused("Supply", func(m *wire.Multiwire) { m.Supply = units.None[wire.LegSupply]() })
	for _, s := range []wire.LegSupply{3, 255} {
		refused("Supply", func(m *wire.Multiwire) { m.Supply = units.Some(s) })
	}
	refused("Current", func(m *wire.Multiwire) { m.Currents = amperes(math.MaxFloat64, math.MaxFloat64) })
	refused("Most", func(m *wire.Multiwire) {
		m.Device, m.Main = units.Some[units.Current](math.MaxFloat64), units.None[units.Current]()
	})
}

func TestOpenNeutralIsChecked(t *testing.T) {
	refused := func(field string, spoil func(*wire.SplitLoad)) {
		t.Helper()
		l := splitLoad()
		spoil(&l)
		f, err := wire.OpenNeutral(l)
		wantZero(t, f, err, "wire.OpenNeutral", field)
	}
	for _, x := range notAtLeastZero {
		refused("Powers.A", func(l *wire.SplitLoad) { l.Powers.A = units.Power(x) })
		refused("Powers.B", func(l *wire.SplitLoad) { l.Powers.B = units.Power(x) })
	}
	for _, x := range bad {
		refused("Nominal", func(l *wire.SplitLoad) { l.Nominal = units.Voltage(x) })
		refused("Highest", func(l *wire.SplitLoad) { l.Highest = units.Some(units.Voltage(x)) })
	}
	for _, s := range []wire.LegSupply{3, 255} {
		refused("Supply", func(l *wire.SplitLoad) { l.Supply = s })
	}
	refused("Powers", func(l *wire.SplitLoad) { l.Powers = watts(0, 0) })
	refused("Powers", func(l *wire.SplitLoad) { l.Powers = watts(math.MaxFloat64, math.MaxFloat64) })
	refused("Highest", func(l *wire.SplitLoad) { l.Highest = units.Some(119.9 * units.Volt) })
	refused("Highest", func(l *wire.SplitLoad) { l.Nominal, l.Supply = math.MaxFloat64, wire.OneHot })
	refused("AtLoad", func(l *wire.SplitLoad) {
		l.Nominal, l.Highest = math.MaxFloat64, units.Some[units.Voltage](math.MaxFloat64)
	})
}

func TestSheetNeutralCurrent(t *testing.T) {
	for _, supply := range supplies {
		m := multiwire()
		m.Supply = units.Some(supply)
		unitstest.CheckSheet(t, must[wire.NeutralCurrent](t)(wire.SharedNeutral(m)).Working())
		m.Main = units.None[units.Current]()
		unitstest.CheckSheet(t, must[wire.NeutralCurrent](t)(wire.SharedNeutral(m)).Working())
		m.Device, m.Neutral = units.None[units.Current](), units.None[units.Current]()
		unitstest.CheckSheet(t, must[wire.NeutralCurrent](t)(wire.SharedNeutral(m)).Working())
	}
}

func TestSheetFloatingNeutral(t *testing.T) {
	for _, supply := range supplies {
		for _, p := range []units.Legs[units.Power]{watts(1200, 300), watts(0, 300), watts(1, 1)} {
			l := wire.SplitLoad{Powers: p, Supply: supply, Nominal: 120 * units.Volt}
			unitstest.CheckSheet(t, must[wire.FloatingNeutral](t)(wire.OpenNeutral(l)).Working())
			l.Highest = units.Some(130 * units.Volt)
			unitstest.CheckSheet(t, must[wire.FloatingNeutral](t)(wire.OpenNeutral(l)).Working())
		}
	}
}

// TestNoNeutralPanics explains results that no calculator made.
func TestNoNeutralPanics(t *testing.T) {
	odd := wire.NeutralCurrent{Circuit: wire.Multiwire{Supply: units.Some[wire.LegSupply](9)}}
	if odd.Working().Text() == "" || odd.Findings() != nil || (wire.NeutralCurrent{}).Findings() != nil {
		t.Errorf("found %v", rules(odd.Findings()))
	}
	open := wire.FloatingNeutral{Load: wire.SplitLoad{Supply: 9}}
	if open.Working().Text() == "" || len(open.Findings()) != 1 {
		t.Errorf("found %v", rules(open.Findings()))
	}
}

func TestPublishedNeutral(t *testing.T) {
	legs := func(c *unitstest.Case) units.Legs[units.Power] {
		return watts(unitstest.In[units.Power](c, "leg_a"), unitstest.In[units.Power](c, "leg_b"))
	}
	unitstest.Published(t, "wire_neutral.csv", map[string]func(*unitstest.Case){
		"open neutral": func(c *unitstest.Case) {
			f := got[wire.FloatingNeutral](c)(wire.OpenNeutral(wire.SplitLoad{Powers: legs(c), Nominal: unitstest.In[units.Voltage](c, "nominal")}))
			c.Got("on_leg_a", f.AtLoad.A)
			c.Got("on_leg_b", f.AtLoad.B)
		},
		"neutral": func(c *unitstest.Case) {
			nominal := unitstest.In[units.Voltage](c, "nominal")
			currents := amperes(legs(c).A.At(nominal), legs(c).B.At(nominal))
			n := got[wire.NeutralCurrent](c)(wire.SharedNeutral(wire.Multiwire{Supply: units.Some(wire.SplitPhase), Currents: currents}))
			c.Got("shared", n.Current)
			v := got[wire.LegVoltages](c)(wire.LegDrop(wire.LegRun{Currents: currents, OneWay: 1 * units.Metre, Source: nominal,
				Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.Kcmil(500)}}}))
			c.Got("feeder", v.InNeutral)
		},
	}, nil)
}
