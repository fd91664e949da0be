package wire_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// boatQuote is 10 AWG of 105 °C in a boat of 12 V: 60 A by 33 CFR 183.425.
func boatQuote() wire.Quote {
	return wire.Quote{Rules: wire.Boat33CFR, Size: wire.AWG(10), Metal: units.Some(wire.Copper), Insulation: wire.Insulation105,
		Current: stated("55 A"), Device: stated("60 A"), FromSource: stated("0 in")}
}

// TestCheckEngineSpace: in an engine space 60 A are 51.6 A (note 1: 0.86).
func TestCheckEngineSpace(t *testing.T) {
	if l := lineOf(mustCheck(t, boatQuote()), wire.ClaimSize); l.Verdict != working.Agree {
		t.Errorf("outside: %v", l)
	}
	q := boatQuote()
	q.EngineSpace, q.Ambient = true, units.Celsius(50)
	c := mustCheck(t, q)
	if l := lineOf(c, wire.ClaimSize); l.Verdict != working.Unsafe || c.Needed != wire.AWG(8) {
		t.Errorf("inside: %v, needed %v", l, c.Needed)
	}
	near(t, "ampacity", float64(c.Protection.Capacity.Current), 51.6)
}

// TestCheckReachOnBoats: 33 CFR 183.455(b)(2) allows 40 in of sheathed conductor, and
// 183.460 72 in of one that begins on a battery post.
func TestCheckReachOnBoats(t *testing.T) {
	for _, c := range []struct {
		from           string
		enclosed, post bool
		want           working.Verdict
	}{
		{"30 in", false, false, working.Disagree}, {"30 in", true, false, working.Agree}, {"41 in", true, false, working.Unsafe},
		{"60 in", false, false, working.Unsafe}, {"60 in", false, true, working.Agree}, {"73 in", true, true, working.Unsafe},
	} {
		q := boatQuote()
		q.FromSource, q.Enclosed, q.OnBatteryPost = stated(c.from), c.enclosed, c.post
		got := mustCheck(t, q)
		if l := lineOf(got, wire.ClaimPlace); l.Verdict != c.want {
			t.Errorf("sheathed %v, on a post %v: %v, want %v", c.enclosed, c.post, l, c.want)
		}
		if asks := strings.Contains(strings.Join(got.Questions(), "\n"), "What protects the"); asks != (c.want != working.Agree) {
			t.Errorf("%s: asks %v", c.from, got.Questions())
		}
	}
}

// TestCheckWithstand: 14 AWG of copper bears k²·S² = 115² · 2.08² = 57 000 A²s in
// thermoplastic that begins at 70 °C, and less from 105 °C; a short of 201 A for
// 5 s is 202 000, for 0.1 s 4040.
func TestCheckWithstand(t *testing.T) {
	for opens, want := range map[units.Elapsed]bool{5: true, 0.1: false} {
		for _, size := range []wire.Size{wire.AWG(14), wire.Metric(1.5 * units.SquareMillimetre)} {
			q := quotedBranch()
			q.Size, q.Insulation, q.Device, q.Opens = size, wire.Insulation105, stated("15 A"), units.Some(opens)
			got := mustCheck(t, q)
			if found := got.Verdict() == working.Unsafe; found != want || got.Protection.Heated.Bears <= 0 {
				t.Errorf("%v after %v: %v, found %v", size, opens, got.Verdict(), rules(got.Findings()))
			}
			bears := got.Protection.Heated.Bears
			q.Thermoset = true
			if more := mustCheck(t, q).Protection.Heated.Bears; more <= bears {
				t.Errorf("cross-linked bears %v, thermoplastic %v", more, bears)
			}
		}
	}
}

// TestCheckChassisAndContacts: 25 A through 18 ft of 8 AWG drop 0.35 V there (NEC
// Table 8: 0.778 Ω/kft), and through 4 mΩ of chassis or contacts 0.1 V.
func TestCheckChassisAndContacts(t *testing.T) {
	q := quotedFeeder()
	q.Drop, q.Percent, q.Chassis = stated("0.45 V"), units.Printed{}, units.Some(4*units.Milliohm)
	q.Fault = units.Some(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm})
	c := mustCheck(t, q)
	near(t, "through the chassis", float64(c.Voltage), 0.450)
	if lineOf(c, wire.ClaimDrop).Verdict != working.Agree || !has(c.Findings(), "far-fault-not-judged") || c.Protection.AtEnd.Current != 0 {
		t.Errorf("%v, found %v", lineOf(c, wire.ClaimDrop), rules(c.Findings()))
	}
	saysAll(t, c.Findings())
	q.Drop = stated("0.225 V")
	if c := mustCheck(t, q); has(c.Findings(), "drop-of-one-conductor") {
		t.Error("a wire and a chassis taken for two conductors")
	}
	q = quotedFeeder()
	q.Contacts = units.Some(4 * units.Milliohm)
	c = mustCheck(t, q)
	near(t, "with contacts", float64(c.Voltage), 0.800)
	if !has(c.Findings(), "drop-of-one-conductor") || has(c.Findings(), "far-fault-not-judged") {
		t.Errorf("found %v", rules(c.Findings()))
	}
}

// TestCheckAmpacityAboveTheTable: 31.4 A are not the 30 A of the table, and 51.6 A are
// 52 A to the ampere.
func TestCheckAmpacityAboveTheTable(t *testing.T) {
	for text, want := range map[string]working.Verdict{"29 A": working.Agree, "30 A": working.Agree, "31.4 A": working.Disagree,
		"31 A": working.Disagree, "30.0 A": working.Agree, "0.030 kA": working.Agree, "0.031 kA": working.Disagree, "25 A": working.AgreeConservative} {
		q := wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(10), Metal: units.Some(wire.Copper), Ampacity: stated(text)}
		if l := lineOf(mustCheck(t, q), wire.ClaimAmpacity); l.Verdict != want {
			t.Errorf("%v, want %v", l, want)
		}
	}
	q := boatQuote()
	q.EngineSpace = true // 51.6 A
	q.Ampacity = stated("52 A")
	if l := lineOf(mustCheck(t, q), wire.ClaimAmpacity); l.Verdict != working.Agree {
		t.Errorf("to the ampere: %v", l)
	}
}
