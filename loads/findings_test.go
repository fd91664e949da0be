package loads_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func has(findings []working.Finding, rule string) bool {
	return slices.ContainsFunc(findings, func(f working.Finding) bool { return f.Rule == rule })
}

// severities are those of every rule of the package: a change of one is a
// change of what the package says of a danger.
func severities() map[string]working.Severity {
	return map[string]working.Severity{
		"voltage-far-from-nameplate": working.Danger,
		"heating-cannot-keep-up":     working.Caution,
		"standby-above-running":      working.Caution,
		"power-factor-not-stated":    working.Note,
		"hours-are-estimates":        working.Note,
		"nothing-must-not-stop":      working.Note,
	}
}

// rules returns the rules of findings, which must be complete, worst first and
// as severe as the table has it.
func rules(t *testing.T, findings []working.Finding) (list []string) {
	t.Helper()
	for i, f := range findings {
		list = append(list, f.Rule)
		if want, ok := severities()[f.Rule]; !ok || f.Severity != want {
			t.Errorf("finding %s is a %v, want %v (in the table: %v)", f.Rule, f.Severity, want, ok)
		}
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Errorf("finding %s is not complete: %+v", f.Rule, f)
		}
		if i > 0 && f.Severity > findings[i-1].Severity {
			t.Errorf("findings are not worst first: %v", list)
		}
	}
	return list
}

func TestLineFindings(t *testing.T) {
	ac := loads.Bus{Name: "ac", Kind: loads.Alternating, Voltage: 120 * units.Volt}
	for _, c := range []struct {
		what   string
		bus    loads.Bus
		change func(*loads.Load)
		want   []string // all of them, in order
	}{
		{"as it should be", battery, func(*loads.Load) {}, nil},
		{"no power factor", ac, func(*loads.Load) {}, []string{"power-factor-not-stated"}},
		{"power factor", ac, func(l *loads.Load) { l.Rating.PowerFactor = units.Some(60 * units.Percent) }, nil},
		{"resistive", ac, func(l *loads.Load) { l.Kind = loads.Resistive }, nil},
		{"standby above running", battery, func(l *loads.Load) { l.Standby = 48.1 * units.Watt }, []string{"standby-above-running"}},
		{"standby as running", battery, func(l *loads.Load) { l.Standby = 48 * units.Watt }, nil},
		{"nameplate 9.6 V on 12 V", battery, func(l *loads.Load) { l.Rating.Voltage = units.Some(9.6 * units.Volt) }, nil},
		{"nameplate 9.5 V on 12 V", battery, func(l *loads.Load) { l.Rating.Voltage = units.Some(9.5 * units.Volt) }, []string{"voltage-far-from-nameplate"}},
		{"nameplate 16 V on 12 V", battery, func(l *loads.Load) { l.Rating.Voltage = units.Some(16 * units.Volt) }, nil},
		{"all at once", ac, func(l *loads.Load) { l.Rating.Voltage, l.Standby = units.Some(230*units.Volt), units.Kilowatt },
			[]string{"voltage-far-from-nameplate", "standby-above-running", "power-factor-not-stated"}},
	} {
		l := fridge()
		c.change(&l)
		if got := rules(t, take(t, c.bus, l).Findings()); !slices.Equal(got, c.want) {
			t.Errorf("%s: findings %v, want %v", c.what, got, c.want)
		}
	}
}

func TestLedgerFindings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*loads.Load)
		want   []string
	}{
		{"nothing marked", func(*loads.Load) {}, []string{"nothing-must-not-stop", "hours-are-estimates"}},
		{"marked", func(l *loads.Load) { l.MustNotStop = true }, []string{"hours-are-estimates"}},
		{"a line's finding", func(l *loads.Load) { l.MustNotStop, l.Standby = true, units.Kilowatt },
			[]string{"standby-above-running", "hours-are-estimates"}},
	} {
		l := fridge()
		c.change(&l)
		if got := rules(t, one(t, battery, l).Findings()); !slices.Equal(got, c.want) {
			t.Errorf("%s: findings %v, want %v", c.what, got, c.want)
		}
	}
}

// TestZeroResultsDoNotPanic asks empty results to explain themselves.
func TestZeroResultsDoNotPanic(t *testing.T) {
	for _, sheet := range []*working.Sheet{
		loads.Line{}.Working(), loads.Draw{}.Working(), loads.Cycling{}.Working(),
		loads.Line{Kind: 9, Bus: loads.Bus{Kind: 9, Voltage: -1}, StandbyEach: 1}.Working(),
		loads.Ledger{Buses: []loads.Total{{}}, Lines: []loads.Line{{}}}.Working(""),
	} {
		if sheet.Text() == "" {
			t.Error("a zero result has no text")
		}
	}
	if got := (loads.Ledger{}).Working("dc"); got != nil || got.Err() == nil {
		t.Errorf("a bus that is not there has the sheet %v", got)
	}
	for _, f := range [][]working.Finding{
		loads.Line{}.Findings(), loads.Draw{}.Findings(), loads.Cycling{}.Findings(),
	} {
		rules(t, f)
	}
	if got := rules(t, loads.Ledger{}.Findings()); len(got) != 2 {
		t.Errorf("the zero Ledger has findings %v", got)
	}
}

// TestPowerFactorText: which of watts and volt-amperes is a bound depends on
// what the nameplate gives.
func TestPowerFactorText(t *testing.T) {
	ac := loads.Bus{Name: "ac", Kind: loads.Alternating, Voltage: 120 * units.Volt}
	for want, rating := range map[string]loads.Rating{
		"its volt-amperes are counted as its watts": {Power: units.Some(48 * units.Watt)},
		"its watts are counted as its volt-amperes": {Current: units.Some(10 * units.Ampere)},
	} {
		l := fridge()
		l.Rating = rating
		f := take(t, ac, l).Findings()
		if len(f) != 1 || f[0].Rule != "power-factor-not-stated" || !strings.Contains(f[0].Message, want) {
			t.Errorf("%v: %+v, want %q", rating, f, want)
		}
	}
}
