package inverter_test

import (
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// started is an everyday headroom with a start.
func started(t testing.TB) inverter.Headroom {
	motor := airConditioner()
	motor.Power, motor.Apparent, motor.Start = 300*units.Watt, units.Some(400*units.VoltAmpere), units.Some(1600*units.VoltAmpere)
	motor.StartFor = units.Some(units.Second / 2)
	return must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{logger(), motor, coffeeMaker(), {Name: "fan", Power: 30 * units.Watt}}))
}

func TestSheetHeadroom(t *testing.T) {
	unitstest.CheckSheet(t, started(t).Working())
	bare := inverter.Machine{Continuous: 1500 * units.Watt, Efficiency: 0.9}
	unitstest.CheckSheet(t, must[inverter.Headroom](t)(inverter.Check(bare, []inverter.Demand{airConditioner()})).Working())
	unitstest.CheckSheet(t, must[inverter.Headroom](t)(inverter.Check(bare, nil)).Working())
}

func TestSheetDCCurrent(t *testing.T) {
	s := dcSide()
	unitstest.CheckSheet(t, must[inverter.DCCurrent](t)(inverter.BatterySide(s)).Working())
	s.Margin = 1.5
	unitstest.CheckSheet(t, must[inverter.DCCurrent](t)(inverter.BatterySide(s)).Working())
}

func TestSheetDayUse(t *testing.T) {
	d := day()
	unitstest.CheckSheet(t, must[inverter.DayUse](t)(inverter.EnergyADay(d)).Working())
	d.On, d.Longest = units.None[units.Elapsed](), units.Some(8*units.Hour)
	unitstest.CheckSheet(t, must[inverter.DayUse](t)(inverter.EnergyADay(d)).Working())
	d.Voltage, d.Idle = units.None[units.Voltage](), units.None[units.Power]()
	unitstest.CheckSheet(t, must[inverter.DayUse](t)(inverter.EnergyADay(d)).Working())
}

func TestSheetCarried(t *testing.T) {
	c := carry()
	unitstest.CheckSheet(t, must[inverter.Carried](t)(inverter.CarryTime(c)).Working())
	c.Usable, c.Idle = units.None[units.Energy](), units.None[units.Power]()
	unitstest.CheckSheet(t, must[inverter.Carried](t)(inverter.CarryTime(c)).Working())
}

func TestSheetChargerUse(t *testing.T) {
	unitstest.CheckSheet(t, must[inverter.ChargerUse](t)(inverter.ChargerDraw(charger())).Working())
	unitstest.CheckSheet(t, must[inverter.ChargerUse](t)(inverter.ChargerDraw(demoConverter())).Working())
}

func TestSheetStart(t *testing.T) {
	m := motor()
	unitstest.CheckSheet(t, must[inverter.Start](t)(inverter.Starting(m)).Working())
	m.SoftStart = units.None[units.Ratio]()
	unitstest.CheckSheet(t, must[inverter.Start](t)(inverter.Starting(m)).Working())
}

func TestSheetOverload(t *testing.T) {
	for name, change := range map[string]func(*inverter.Limit){
		"all":      func(*inverter.Limit) {},
		"no share": func(l *inverter.Limit) { l.Share = units.None[units.Ratio]() },
		"a share":  func(l *inverter.Limit) { l.Share = units.Some(50 * units.Percent) },
		"power": func(l *inverter.Limit) {
			l.Apparent, l.Current = units.None[units.ApparentPower](), units.None[units.Current]()
		},
		"apparent": func(l *inverter.Limit) { l.Power, l.Current = units.None[units.Power](), units.None[units.Current]() },
		"none too much": func(l *inverter.Limit) {
			l.Power, l.Apparent, l.Current = units.None[units.Power](), units.Some(50*units.KilovoltAmpere), units.None[units.Current]()
		},
	} {
		t.Run(name, func(t *testing.T) {
			l := limit()
			change(&l)
			unitstest.CheckSheet(t, must[inverter.Overload](t)(inverter.Sets(l, append(onService(t), microwave()))).Working())
		})
	}
}

func TestSheetBondCount(t *testing.T) {
	sources, bonds := demoBonds()
	for _, c := range must[[]inverter.BondCount](t)(inverter.Bonding(sources, bonds)) {
		unitstest.CheckSheet(t, c.Working())
	}
	// Without a place there is nothing to add up.
	none := must[[]inverter.BondCount](t)(inverter.Bonding(sources, nil))
	if err := none[0].Working().Err(); err != nil {
		t.Error(err)
	}
}

func TestSheetGroundShare(t *testing.T) {
	unitstest.CheckSheet(t, must[inverter.GroundShare](t)(inverter.ParallelNeutral(neutralReturn())).Working())
}

func TestSheetFaultPath(t *testing.T) {
	f := frameFault()
	unitstest.CheckSheet(t, must[inverter.FaultPath](t)(inverter.FaultToFrame(f)).Working())
	f.Device = units.None[units.Current]()
	earth := f
	f.Earth, earth.Metal = units.None[units.Resistance](), units.None[units.Resistance]()
	unitstest.CheckSheet(t, must[inverter.FaultPath](t)(inverter.FaultToFrame(f)).Working())
	unitstest.CheckSheet(t, must[inverter.FaultPath](t)(inverter.FaultToFrame(earth)).Working())
	f.Metal = units.None[units.Resistance]()
	if err := must[inverter.FaultPath](t)(inverter.FaultToFrame(f)).Working().Err(); err != nil {
		t.Error(err)
	}
}

func TestSheetPassThroughCheck(t *testing.T) {
	unitstest.CheckSheet(t, must[inverter.PassThroughCheck](t)(inverter.PassThrough(passage())).Working())
	if err := must[inverter.PassThroughCheck](t)(inverter.PassThrough(inverter.Passage{})).Working().Err(); err != nil {
		t.Error(err)
	}
}

func TestSheetLoop(t *testing.T) {
	sources, feeds := demoFeeds("backed panel")
	feeds[3].Idle = units.Some(14 * units.Watt)
	for _, l := range must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank")) {
		unitstest.CheckSheet(t, l.Working())
	}
	feeds[3].Most, feeds[4].Most = units.None[units.Power](), units.None[units.Power]()
	for _, l := range must[[]inverter.Loop](t)(inverter.FeedLoops(sources, feeds, "bank")) {
		if err := l.Working().Err(); err != nil {
			t.Error(err)
		}
	}
}

func TestSheetRunnable(t *testing.T) {
	for _, share := range []units.Opt[units.Ratio]{units.None[units.Ratio](), units.Some(80 * units.Percent)} {
		l := limit()
		l.Share = share
		kiln := inverter.Demand{Name: "kiln", Power: 9000 * units.Watt}
		unitstest.CheckSheet(t, must[inverter.Runnable](t)(inverter.CanRun(l, append(onService(t), microwave(), kiln))).Working())
	}
}

func TestSheetMeeting(t *testing.T) {
	for _, m := range must[[]inverter.Meeting](t)(inverter.Meetings(cabin())) {
		unitstest.CheckSheet(t, m.Working())
	}
}

// TestNothingPanics explains results that no calculator made.
func TestNothingPanics(t *testing.T) {
	for _, r := range []result{
		inverter.Headroom{}, inverter.Headroom{Starting: 3}, inverter.Headroom{Starting: -7}, inverter.DCCurrent{}, inverter.DayUse{},
		inverter.Carried{}, inverter.ChargerUse{}, inverter.Start{}, inverter.Overload{}, inverter.Overload{Sets: []inverter.Set{{Members: 1 << 31}}},
		inverter.BondCount{}, inverter.BondCount{Bonds: 3}, inverter.GroundShare{}, inverter.FaultPath{}, inverter.PassThroughCheck{},
		inverter.Runnable{}, inverter.Runnable{Sets: []inverter.Set{{Members: 1 << 31}}, Never: 1 << 31, Cut: true}, inverter.Meeting{}, inverter.Meeting{Kept: 9, ByKind: 9},
		inverter.Loop{}, inverter.Loop{Known: true}, inverter.Loop{Hops: []inverter.Hop{{}}},
	} {
		_ = r.Working().Text()
		_ = r.Findings()
	}
}
