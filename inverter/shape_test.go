package inverter_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// TestSurgeAndStart: a surge is not below what is given for hours, and a start
// not below running.
func TestSurgeAndStart(t *testing.T) {
	m := demoMachine()
	m.ContinuousVA, m.Surge = units.Some(1600*units.VoltAmpere), units.Some(1599*units.VoltAmpere)
	_, err := inverter.Check(m, nil)
	wantRangeError(t, err, "inverter.Check", "Surge")
	m.ContinuousVA = units.None[units.ApparentPower]() // 1500 W then count as 1500 VA
	if _, err = inverter.Check(m, nil); err != nil {
		t.Error(err)
	}
	m.Surge = units.Some(1499 * units.VoltAmpere)
	_, err = inverter.Check(m, nil)
	wantRangeError(t, err, "inverter.Check", "Surge")
	m.Surge = units.Some(1500 * units.VoltAmpere)
	if _, err = inverter.Check(m, nil); err != nil {
		t.Error(err)
	}
	d := airConditioner() // 1464 VA running
	d.Start = units.Some(1463 * units.VoltAmpere)
	_, err = checkDemand(d)
	wantRangeError(t, err, "inverter.Check", "demands[1].Start")
	_, err = inverter.Sets(limit(), []inverter.Demand{logger(), d})
	wantRangeError(t, err, "inverter.Sets", "demands[1].Start")
	d.Start = units.Some(1464 * units.VoltAmpere)
	if _, err = checkDemand(d); err != nil {
		t.Error(err)
	}
	d = inverter.Demand{Name: "off", Start: units.Some(0 * units.VoltAmpere)}
	_, err = checkDemand(d)
	wantRangeError(t, err, "inverter.Check", "demands[1].Start")
}

// TestHoursOn: no load runs while the inverter is off.
func TestHoursOn(t *testing.T) {
	for _, c := range []struct {
		energy      units.Energy
		longest, on units.Opt[units.Elapsed]
		bad         bool
		used        units.Elapsed
	}{
		{units.WattHour, units.None[units.Elapsed](), units.None[units.Elapsed](), false, 24 * units.Hour},
		{0, units.None[units.Elapsed](), units.None[units.Elapsed](), false, 24 * units.Hour},
		{0, units.None[units.Elapsed](), units.Some(0 * units.Hour), false, 0},
		{units.WattHour, units.None[units.Elapsed](), units.Some(0 * units.Hour), true, 0},
		{units.WattHour, units.Some(0 * units.Hour), units.Some(0 * units.Hour), true, 0},
		{units.WattHour, units.None[units.Elapsed](), units.Some(1 * units.Second), false, 1 * units.Second},
		{units.WattHour, units.Some(3 * units.Hour), units.Some(2.9 * units.Hour), true, 0},
		{units.WattHour, units.Some(3 * units.Hour), units.Some(3 * units.Hour), false, 3 * units.Hour},
		{0, units.Some(3 * units.Hour), units.Some(2.9 * units.Hour), true, 0}, // in use, if for nothing
		{units.WattHour, units.Some(24 * units.Hour), units.None[units.Elapsed](), false, 24 * units.Hour},
		{units.WattHour, units.Some(24 * units.Hour), units.Some(24.1 * units.Hour), true, 0},
	} {
		d := day()
		d.Energy, d.Longest, d.On = c.energy, c.longest, c.on
		u, err := inverter.EnergyADay(d)
		if c.bad {
			wantRangeError(t, err, "inverter.EnergyADay", "On")
		} else if err != nil || u.On != c.used || u.Day != d || units.Compare(u.Idle, (14*units.Watt).For(c.used)) != 0 {
			t.Errorf("%+v: %+v, %v; want %v on", d, u, err, c.used)
		}
	}
	d := day()
	d.Longest, d.On = units.Some(3*units.Hour), units.Some(2*units.Hour)
	if _, err := inverter.EnergyADay(d); err == nil || !strings.Contains(err.Error(), "On = 2 h, want 3 h to 1 d") {
		t.Errorf("the error does not say how long: %v", err)
	}
}

func TestNamesAreChecked(t *testing.T) {
	sources, feeds := demoFeeds("backed panel")
	for _, c := range []struct {
		field string
		spoil func(sources []string, feeds []inverter.Feed)
	}{
		{"sources[1]", func(s []string, _ []inverter.Feed) { s[1] = "" }},
		{"sources[2]", func(s []string, _ []inverter.Feed) { s[2] = "shore" }},
		{"feeds[1].Name", func(_ []string, f []inverter.Feed) { f[1].Name = "" }},
		{"feeds[1].From", func(_ []string, f []inverter.Feed) { f[1].From = "" }},
		{"feeds[1].To", func(_ []string, f []inverter.Feed) { f[1].To = "" }},
		{"feeds[3].To", func(_ []string, f []inverter.Feed) { f[3].To = "bank" }},
		{"feeds[0].With", func(_ []string, f []inverter.Feed) { f[0].With = []string{"shroe"} }},
		{"bank", func(_ []string, f []inverter.Feed) { f[3].From, f[4].To = "another bank", "another bank" }},
	} {
		s := append([]string(nil), sources...)
		f := append([]inverter.Feed(nil), feeds...)
		c.spoil(s, f)
		got, err := inverter.FeedLoops(s, f, "bank")
		wantRangeError(t, err, "inverter.FeedLoops", c.field)
		if got != nil {
			t.Errorf("%s: result %+v", c.field, got)
		}
	}
	_, err := inverter.FeedLoops(nil, feeds, "bank")
	wantRangeError(t, err, "inverter.FeedLoops", "sources")
	_, err = inverter.FeedLoops(sources, feeds, "")
	wantRangeError(t, err, "inverter.FeedLoops", "bank")

	active, bonds := demoBonds()
	bonds[1].Name = bonds[0].Name
	_, err = inverter.Bonding(active, bonds)
	wantRangeError(t, err, "inverter.Bonding", "bonds[1].Name")
	bonds[1].Name = ""
	_, err = inverter.Bonding(active, bonds)
	wantRangeError(t, err, "inverter.Bonding", "bonds[1].Name")
	bonds[1] = inverter.Bond{Name: "screw", With: []string{"shore", "genertor"}}
	_, err = inverter.Bonding(active, bonds)
	wantRangeError(t, err, "inverter.Bonding", "bonds[1].With")
	_, err = inverter.Bonding(nil, bonds)
	wantRangeError(t, err, "inverter.Bonding", "sources")
	// The message names what there is.
	_, err = inverter.Bonding(active, bonds)
	var e *units.RangeError
	if !errors.As(err, &e) || !strings.Contains(e.Error(), "genertor") || !strings.Contains(e.Error(), "shore, inverter, generator") {
		t.Errorf("error %v", err)
	}
}

// TestTooManyPaths gives a graph whose paths double with each layer.
func TestTooManyPaths(t *testing.T) {
	var feeds []inverter.Feed
	for layer := range 30 {
		from, to := fmt.Sprint("layer ", layer), fmt.Sprint("layer ", layer+1)
		if layer == 0 {
			from = "bank"
		}
		for _, name := range []string{"left", "right"} {
			feeds = append(feeds, inverter.Feed{Name: name, From: from, To: to, Efficiency: 1})
		}
	}
	if loops := must[[]inverter.Loop](t)(inverter.FeedLoops([]string{"bank"}, feeds, "bank")); len(loops) != 0 {
		t.Errorf("dead ends are loops: %d", len(loops))
	}
	feeds = append(feeds, inverter.Feed{Name: "charger", From: "layer 30", To: "bank", Efficiency: 1})
	_, err := inverter.FeedLoops([]string{"bank"}, feeds, "bank")
	wantRangeError(t, err, "inverter.FeedLoops", "feeds")
}
