package inverter_test

import (
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

func noOhms() units.Opt[units.Resistance] { return units.None[units.Resistance]() }

func amperes(a, b units.Current) units.Legs[units.Current] {
	return units.Legs[units.Current]{A: a, B: b}
}

// TestNeutralOfTwoHots: the difference, the sum, or for two legs of three the
// vector in between; worked by hand with Kirchhoff's law.
func TestNeutralOfTwoHots(t *testing.T) {
	for _, c := range []struct {
		p    inverter.Phasing
		a, b units.Current
		want string
	}{
		{inverter.SplitPhase, 40, 40, "0.0"},
		{inverter.SplitPhase, 40, 25, "15.0"},
		{inverter.SplitPhase, 50, 0, "50.0"},
		{inverter.OneHot, 30, 25, "55.0"},
		{inverter.TwoOfThree, 40, 40, "40.0"},
		{inverter.TwoOfThree, 40, 25, "35.0"},
		{inverter.TwoOfThree, 0, 0, "0.0"},
	} {
		for range 2 {
			n := must[inverter.NeutralCurrent](t)(inverter.SharedNeutral(inverter.Multiwire{Phasing: c.p, Current: amperes(c.a, c.b)}))
			wantPrinted(t, c.p.String(), units.In(n.Current, units.Ampere), 1, c.want)
			if n.Most.IsSet() {
				t.Errorf("without a device %v are let through", n.Most)
			}
			c.a, c.b = c.b, c.a
		}
	}
}

func TestNeutralFindings(t *testing.T) {
	some := units.Some[units.Current]
	none := units.None[units.Current]()
	for _, c := range []struct {
		what                    string
		p                       inverter.Phasing
		a, b                    units.Current
		device, supply, neutral units.Opt[units.Current]
		want                    []string
	}{
		{"difference within", inverter.SplitPhase, 12, 9, some(15), none, some(15), nil},
		{"nothing stated", inverter.SplitPhase, 12, 9, none, none, none, nil},
		{"both hots on one leg, in use", inverter.OneHot, 12, 9, some(15), none, some(15), []string{"neutral-overloaded"}},
		{"both hots on one leg, little in use", inverter.OneHot, 2, 3, some(15), none, some(15), []string{"neutral-can-be-overloaded"}},
		{"both hots on one leg, nothing in use", inverter.OneHot, 0, 0, some(15), none, some(15), []string{"neutral-can-be-overloaded"}},
		{"a neutral for the sum", inverter.OneHot, 12, 9, some(15), none, some(30), nil},
		{"a neutral just too small", inverter.OneHot, 12, 9, some(15), none, some(29.9), []string{"neutral-can-be-overloaded"}},
		{"the supply holds the sum down", inverter.OneHot, 8, 7, some(20), some(15), some(15), nil},
		{"the supply is as large as both", inverter.OneHot, 8, 7, some(20), some(50), some(39), []string{"neutral-can-be-overloaded"}},
		{"one leg, no neutral stated", inverter.OneHot, 8, 7, some(20), none, none, []string{"neutral-carries-the-sum"}},
		{"one leg, no device stated", inverter.OneHot, 8, 7, none, none, some(20), []string{"neutral-carries-the-sum"}},
		{"one hot alone", inverter.SplitPhase, 16, 0, some(20), none, some(15), []string{"neutral-overloaded"}},
		{"a thin neutral", inverter.TwoOfThree, 10, 10, some(20), none, some(15), []string{"neutral-can-be-overloaded"}},
		{"two of three within", inverter.TwoOfThree, 10, 10, some(20), none, some(20), nil},
	} {
		t.Run(c.what, func(t *testing.T) {
			n := must[inverter.NeutralCurrent](t)(inverter.SharedNeutral(inverter.Multiwire{Phasing: c.p, Current: amperes(c.a, c.b),
				Device: c.device, Supply: c.supply, Neutral: c.neutral}))
			wantRules(t, n, c.want...)
		})
	}
	// A supply counts only where it feeds both.
	m := multiwire()
	m.Phasing, m.Supply = inverter.SplitPhase, some(1)
	if n := must[inverter.NeutralCurrent](t)(inverter.SharedNeutral(m)); n.Most != some(15) {
		t.Errorf("on split phase %v are let through, want 15 A", n.Most)
	}
}

func TestPhasingIsNeeded(t *testing.T) {
	for _, p := range []inverter.Phasing{0, 4, 255} {
		m, l := multiwire(), twoLegs()
		m.Phasing, l.Phasing = p, p
		_, err := inverter.SharedNeutral(m)
		wantRangeError(t, err, "inverter.SharedNeutral", "Phasing")
		_, err = inverter.OpenNeutral(l)
		wantRangeError(t, err, "inverter.OpenNeutral", "Phasing")
		if p.Angle() != 0 {
			t.Errorf("%v has %v", p, p.Angle())
		}
	}
}

// TestOpenNeutral: the lighter side rises. Worked by hand as two resistances in
// series.
func TestOpenNeutral(t *testing.T) {
	for _, c := range []struct {
		p     inverter.Phasing
		a, b  units.Power
		wantA string
		wantB string
		rule  string
	}{
		{inverter.SplitPhase, 600, 1200, "160.0", "80.0", "open-neutral-overvoltage"},
		{inverter.SplitPhase, 1500, 1500, "120.0", "120.0", "open-neutral-by-chance"},
		{inverter.SplitPhase, 100, 1500, "225.0", "15.0", "open-neutral-overvoltage"},
		{inverter.SplitPhase, 1200, 300, "48.0", "192.0", "open-neutral-overvoltage"},
		{inverter.SplitPhase, 1200, 0, "0.0", "240.0", "open-neutral-overvoltage"}, // whatever is switched on first
		{inverter.SplitPhase, 1130, 1270, "127.0", "113.0", "open-neutral-by-chance"},
		{inverter.SplitPhase, 1129, 1271, "127.1", "112.9", "open-neutral-overvoltage"},
		{inverter.TwoOfThree, 1000, 1000, "103.9", "103.9", "open-neutral-by-chance"}, // 208 V
		{inverter.TwoOfThree, 300, 1200, "166.3", "41.6", "open-neutral-overvoltage"},
		{inverter.OneHot, 1200, 300, "0.0", "0.0", "open-neutral-dead"}, // a rig of one leg
	} {
		l := twoLegs()
		l.Phasing, l.Loads = c.p, units.Legs[units.Power]{A: c.a, B: c.b}
		n := must[inverter.LostNeutral](t)(inverter.OpenNeutral(l))
		wantPrinted(t, "V on leg A", units.In(n.Voltage.A, units.Volt), 1, c.wantA)
		wantPrinted(t, "V on leg B", units.In(n.Voltage.B, units.Volt), 1, c.wantB)
		wantPrinted(t, "V at the most", units.In(n.Highest, units.Volt), 1, "127.0")
		wantRules(t, n, c.rule)
	}
	l := twoLegs()
	l.Highest = units.Some(200 * units.Volt)
	wantRules(t, must[inverter.LostNeutral](t)(inverter.OpenNeutral(l)), "open-neutral-by-chance")
	l.Highest = units.Some(119.9 * units.Volt)
	_, err := inverter.OpenNeutral(l)
	wantRangeError(t, err, "inverter.OpenNeutral", "Highest")
}
