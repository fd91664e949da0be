package inverter_test

import (
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Every number of this file is an expected value of the invented demo, worked
// by hand with published formulas.

func TestDemoBatterySide(t *testing.T) {
	c := must[inverter.DCCurrent](t)(inverter.BatterySide(inverter.DCSide{Machine: demoMachine(), Margin: inverter.NECMargin}))
	wantPrinted(t, "A at 10.8 V", units.In(c.Current, units.Ampere), 0, "156")
	wantPrinted(t, "A required", units.In(c.Required, units.Ampere), 0, "195")
}

func TestDemoDay(t *testing.T) {
	day := inverter.Day{Energy: 845 * units.WattHour, Efficiency: 89 * units.Percent, Idle: units.Some(14 * units.Watt), On: units.Some(24 * units.Hour)}
	u := must[inverter.DayUse](t)(inverter.EnergyADay(day))
	wantPrinted(t, "Wh from the bank", units.In(u.Energy, units.WattHour), 0, "1285")
	wantPrinted(t, "Wh of idle", units.In(u.Idle, units.WattHour), 0, "336")
	// An idle of 0 W that was given is 336 Wh less, and no default.
	day.Idle = units.Some(0 * units.Watt)
	none := must[inverter.DayUse](t)(inverter.EnergyADay(day))
	wantPrinted(t, "Wh saved", units.In(u.Energy-none.Energy, units.WattHour), 0, "336")
	wantRules(t, none)
	day.Idle = units.None[units.Power]()
	wantRules(t, must[inverter.DayUse](t)(inverter.EnergyADay(day)), "idle-not-stated")
}

func TestDemoSetsOnTheInverter(t *testing.T) {
	// Microwave and logger fit: 1459 W and 1465 VA.
	h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{microwave(), logger()}))
	wantPrinted(t, "W", units.In(h.Power, units.Watt), 0, "1459")
	wantPrinted(t, "VA", units.In(h.Apparent, units.VoltAmpere), 0, "1465")
	wantRules(t, h)
	// With both laptops 1598 VA, over.
	h = must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{microwave(), logger(), laptops()}))
	wantPrinted(t, "VA", units.In(h.Apparent, units.VoltAmpere), 0, "1598")
	if left := h.ApparentLeft; units.Compare(left, -98.3333333*units.VoltAmpere) != 0 {
		t.Errorf("left %v, want -98.3333 VA", left)
	}
	wantRules(t, h, "inverter-overload", "inverter-overload-va") // 1539 W too

	backed := []inverter.Demand{laptops(), logger(), coffeeMaker(), microwave()}
	o := must[inverter.Overload](t)(inverter.Sets(demoMachine().Limit(), backed))
	var sets [][]string
	for _, s := range o.Sets {
		sets = append(sets, o.Names(s.Members))
	}
	// 80 + 1450 = 1530 W is over without the logger.
	want := [][]string{{"laptops", "microwave"}, {"coffee maker", "microwave"}}
	if !slices.EqualFunc(sets, want, slices.Equal) {
		t.Errorf("sets %q, want %q", sets, want)
	}
}

func TestDemoStart(t *testing.T) {
	start := must[inverter.Start](t)(inverter.Starting(inverter.Motor{LockedRotor: 63 * units.Ampere, Voltage: 120 * units.Volt}))
	wantPrinted(t, "VA", units.In(start.Apparent, units.VoltAmpere), 0, "7560")
	for name, m := range map[string]inverter.Machine{
		"inverter":  demoMachine(),
		"generator": {Continuous: 1800 * units.Watt, ContinuousVA: units.Some(1800 * units.VoltAmpere), Surge: units.Some(2200 * units.VoltAmpere), Efficiency: 1},
	} {
		h := must[inverter.Headroom](t)(inverter.Check(m, []inverter.Demand{airConditioner()}))
		if got := rules(h); !slices.Equal(got, []string{"inverter-surge"}) {
			t.Errorf("%s: findings %q", name, got)
		}
	}
}

// service30 is the demo's supply.
func service30() inverter.Limit {
	return inverter.Limit{Name: "the 30 A service", Current: units.Some(30 * units.Ampere), Voltage: 120 * units.Volt}
}

// onService are the demo's large loads, by their amperes at 120 V.
func onService(t *testing.T) []inverter.Demand {
	converter := must[inverter.ChargerUse](t)(inverter.ChargerDraw(demoConverter())).Demand("converter")
	return []inverter.Demand{
		airConditioner(),
		{Name: "water heater", Power: 1440 * units.Watt, PowerFactor: units.Some[units.Ratio](1)},
		converter,
	}
}

func demoConverter() inverter.Charger {
	return inverter.Charger{Current: 45 * units.Ampere, Voltage: 14.4 * units.Volt, Efficiency: 87 * units.Percent,
		PowerFactor: 95 * units.Percent, Supply: 120 * units.Volt}
}

func TestDemoSetsOnService(t *testing.T) {
	forHours := service30()
	forHours.Share = units.Some(inverter.ContinuousShare)
	o := must[inverter.Overload](t)(inverter.Sets(forHours, onService(t)))
	if len(o.Sets) != 1 || !slices.Equal(o.Names(o.Sets[0].Members), []string{"air conditioner", "water heater"}) {
		t.Fatalf("for hours: sets %+v", o.Sets)
	}
	wantPrinted(t, "A", units.In(o.Sets[0].Current, units.Ampere), 1, "24.2")
	wantRules(t, o, "too-much-for-hours")

	o = must[inverter.Overload](t)(inverter.Sets(service30(), onService(t)))
	if len(o.Sets) != 1 || o.Sets[0].Members.Len() != 3 {
		t.Fatalf("at all: sets %+v", o.Sets)
	}
	wantPrinted(t, "A", units.In(o.Sets[0].Current, units.Ampere), 1, "30.7")
	wantRules(t, o, "too-much-together")
}

func TestDemoChargers(t *testing.T) {
	u := must[inverter.ChargerUse](t)(inverter.ChargerDraw(demoConverter()))
	wantPrinted(t, "A of the converter", units.In(u.Current, units.Ampere), 1, "6.5")
	quoted := inverter.Charger{Current: 60 * units.Ampere, Voltage: 14.4 * units.Volt, Efficiency: 88 * units.Percent,
		PowerFactor: 98 * units.Percent, Supply: 120 * units.Volt}
	u = must[inverter.ChargerUse](t)(inverter.ChargerDraw(quoted))
	wantPrinted(t, "A of the quoted charger", units.In(u.Current, units.Ampere), 3, "8.349")
	// On 30 A with the air conditioner for hours: 20.549 A against 24 A.
	l := service30()
	l.Share = units.Some(inverter.ContinuousShare)
	o := must[inverter.Overload](t)(inverter.Sets(l, []inverter.Demand{airConditioner(), u.Demand("charger")}))
	wantPrinted(t, "A together", units.In(o.Together.Current, units.Ampere), 3, "20.549")
	wantRules(t, o)
}

// demoFeeds are the demo's sources and who feeds what, the converter on the
// panel named.
func demoFeeds(converterOn string) (sources []string, feeds []inverter.Feed) {
	full := (45 * units.Ampere).At(13.2 * units.Volt)
	return []string{"shore", "bank", "generator"}, []inverter.Feed{
		{Name: "cord", From: "shore", To: "main panel", With: []string{"shore"}, Efficiency: 1},
		{Name: "inlet", From: "generator", To: "main panel", With: []string{"generator"}, Efficiency: 1},
		{Name: "pass-through", From: "main panel", To: "backed panel", With: []string{"shore", "generator"}, Efficiency: 1},
		{Name: "inverter", From: "bank", To: "backed panel", With: []string{"bank"}, Efficiency: 89 * units.Percent,
			Most: units.Some(1500 * units.Watt)},
		{Name: "converter", From: converterOn, To: "bank", Efficiency: 87 * units.Percent, Most: units.Some(full)},
	}
}

func TestDemoFeedLoop(t *testing.T) {
	sources, feeds := demoFeeds("backed panel")
	loops := must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank"))
	if len(loops) != 1 || loops[0].Source != "bank" || loops[0].Path() != "bank - inverter - backed panel - converter - bank" {
		t.Fatalf("loops %+v", loops)
	}
	l := loops[0]
	wantPrinted(t, "W back", units.In(l.Back, units.Watt), 0, "594")
	wantPrinted(t, "W drawn", units.In(l.Drawn, units.Watt), 0, "767")
	wantPrinted(t, "W lost", units.In(l.Lost, units.Watt), 0, "173")
	wantRules(t, l, "bank-feeds-its-own-charger")
	// The must-never-stop loads fall from 59.5 h to 14.2 h: their mean is
	// 54.2 W at the bank, of 3226 Wh usable.
	carry := inverter.Carry{AC: 9 * units.Watt, Efficiency: 89 * units.Percent, Idle: units.Some(14 * units.Watt),
		DC: (0.96 + 19.2 + 1.925 + 8) * units.Watt, Usable: units.Some(3226 * units.WattHour)}
	h := must[inverter.Carried](t)(inverter.CarryTime(carry))
	wantPrinted(t, "W", units.In(h.Power, units.Watt), 1, "54.2")
	wantPrinted(t, "h", units.In(h.Time.Or(0), units.Hour), 1, "59.5")
	carry.Loop = l.Lost
	h = must[inverter.Carried](t)(inverter.CarryTime(carry))
	wantPrinted(t, "h with the loop", units.In(h.Time.Or(0), units.Hour), 1, "14.2")
}

func TestDemoFeedLoopMended(t *testing.T) {
	sources, feeds := demoFeeds("main panel")
	if loops := must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank")); len(loops) != 0 {
		t.Errorf("converter on the main panel: %+v", loops)
	}
	sources, feeds = demoFeeds("backed panel")
	feeds[4].With = []string{"shore", "generator"} // a relay that opens when inverting
	if loops := must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank")); len(loops) != 0 {
		t.Errorf("converter behind a relay: %+v", loops)
	}
}

// demoBonds are the demo's sources and bonds.
func demoBonds() ([]inverter.Source, []inverter.Bond) {
	return []inverter.Source{{Name: "shore", Earthed: true}, {Name: "inverter"}, {Name: "generator"}}, []inverter.Bond{
		{Name: "campground service", With: []string{"shore"}},
		{Name: "inverter relay", With: []string{"inverter"}},
	}
}

func TestDemoBonds(t *testing.T) {
	sources, bonds := demoBonds()
	counts := must[[]inverter.BondCount](t)(inverter.Bonding(sources, bonds))
	for i, want := range []int{1, 1, 0} {
		if counts[i].Bonds != want || counts[i].Source != sources[i] {
			t.Errorf("%s: %+v, want %d bonds", sources[i].Name, counts[i], want)
		}
	}
	if f := counts[0].Findings(); f[0].Severity != working.Note {
		t.Errorf("one bond on shore is flagged: %v", f)
	}
	wantRules(t, counts[2], "no-neutral-bond")
	// The screw left in the main panel makes two bonds on shore.
	counts = must[[]inverter.BondCount](t)(inverter.Bonding(sources, append(bonds, inverter.Bond{Name: "main panel screw"})))
	for i, want := range []int{2, 2, 1} {
		if counts[i].Bonds != want {
			t.Errorf("with the screw, %s: %+v, want %d bonds", sources[i].Name, counts[i], want)
		}
	}
	if worst, _ := working.Worst(counts[0].Findings()); worst != working.Danger {
		t.Errorf("two bonds on shore are %v, want a danger", worst)
	}
}

func TestDemoEfficiencyWithoutPercent(t *testing.T) {
	m := demoMachine()
	m.Efficiency = 89
	_, err := inverter.Check(m, nil)
	wantRangeError(t, err, "inverter.Check", "Efficiency")
	_, err = inverter.BatterySide(inverter.DCSide{Machine: m, Margin: inverter.NECMargin})
	wantRangeError(t, err, "inverter.BatterySide", "Efficiency")
}

func TestDemoPassThrough(t *testing.T) {
	// Relay 30 A behind a 20 A feed.
	c := must[inverter.PassThroughCheck](t)(inverter.PassThrough(inverter.Passage{
		Relay: demoMachine().PassThrough, Feeder: units.Some(20 * units.Ampere)}))
	wantRules(t, c)
}
