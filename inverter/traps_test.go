package inverter_test

import (
	"slices"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// The tests of this file are mistakes that are made in practice: the right
// answer is given and the wrong one is not. Numbers are worked by hand from
// the formulas that the functions state, or from where a comment says.

func wantNot(t *testing.T, what string, x float64, decimals int, wrong string) {
	t.Helper()
	if units.Fixed(x, decimals) == wrong {
		t.Errorf("%s = %s, the wrong answer", what, wrong)
	}
}

// Amperes at 120 V are no amperes of the bank: 1200 W for half an hour.
func TestTrapChargeCrossesNoVoltage(t *testing.T) {
	u := must[inverter.DayUse](t)(inverter.EnergyADay(inverter.Day{Energy: (1200 * units.Watt).For(units.Hour / 2),
		Efficiency: 88 * units.Percent, Idle: units.Some(0 * units.Watt), On: units.Some(units.Hour / 2), Voltage: units.Some(12.5 * units.Volt)}))
	wantPrinted(t, "Ah", units.In(u.Charge.Or(0), units.AmpereHour), 2, "54.55")
	wantNot(t, "Ah", units.In(u.Charge.Or(0), units.AmpereHour), 2, "5.00")
}

// A microwave is marked by the heat it makes, 65 % of what the plug takes.
func TestTrapMicrowaveInput(t *testing.T) {
	input := units.Scale(1000*units.Watt, 1/0.65)
	m := inverter.Machine{Continuous: input, Efficiency: 88 * units.Percent, LowestVoltage: units.Some(11.5 * units.Volt)}
	c := must[inverter.DCCurrent](t)(inverter.BatterySide(inverter.DCSide{Machine: m, Margin: 1}))
	wantPrinted(t, "A", units.In(c.Current, units.Ampere), 1, "152.0")
	wantNot(t, "A", units.In(c.Current, units.Ampere), 1, "98.8")
	h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), []inverter.Demand{{Name: "microwave", Power: input, Kind: inverter.SteadyLoad, PowerFactor: units.Some[units.Ratio](1)}}))
	wantRules(t, h, "inverter-overload", "inverter-overload-va")
}

// Own use counts for every hour that the inverter is on.
func TestTrapIdleAllDay(t *testing.T) {
	u := must[inverter.DayUse](t)(inverter.EnergyADay(inverter.Day{Energy: (30 * units.Watt).For(8 * units.Hour),
		Efficiency: 90 * units.Percent, Idle: units.Some(22 * units.Watt), On: units.Some(24 * units.Hour)}))
	wantPrinted(t, "Wh", units.In(u.Energy, units.WattHour), 0, "795")
	wantNot(t, "Wh", units.In(u.Energy, units.WattHour), 0, "267")
	wantRules(t, u, "idle-outweighs-loads")
}

// An idle of 0 W that was given is data; one that was not is a finding, and
// neither is some usual 20 W.
func TestTrapIdleOfZero(t *testing.T) {
	d := inverter.Day{Efficiency: 1, Idle: units.Some(0 * units.Watt), On: units.Some(24 * units.Hour)}
	u := must[inverter.DayUse](t)(inverter.EnergyADay(d))
	if u.Energy != 0 || !u.Day.Idle.IsSet() {
		t.Errorf("0 W for 24 h are %v", u.Energy)
	}
	wantRules(t, u)
	d.Idle = units.None[units.Power]()
	wantRules(t, must[inverter.DayUse](t)(inverter.EnergyADay(d)), "idle-not-stated")
}

// Energy is not power: 2000 W from one battery of 100 A.
func TestTrapCurrentOfOneBattery(t *testing.T) {
	m := inverter.Machine{Continuous: 2000 * units.Watt, Efficiency: 90 * units.Percent, LowestVoltage: units.Some(12.8 * units.Volt)}
	c := must[inverter.DCCurrent](t)(inverter.BatterySide(inverter.DCSide{Machine: m, Margin: 1}))
	wantPrinted(t, "A", units.In(c.Current, units.Ampere), 1, "173.6")
}

// P over nominal volts, 166.7 A, is far too little for a 2000 W inverter.
func TestTrapLowestVoltage(t *testing.T) {
	m := inverter.Machine{Continuous: 2000 * units.Watt, Efficiency: 88 * units.Percent, LowestVoltage: units.Some(10.5 * units.Volt)}
	c := must[inverter.DCCurrent](t)(inverter.BatterySide(inverter.DCSide{Machine: m, Margin: inverter.NECMargin}))
	wantPrinted(t, "A", units.In(c.Current, units.Ampere), 1, "216.5")
	wantNot(t, "A", units.In(c.Current, units.Ampere), 1, "166.7")
	wantPrinted(t, "A required", units.In(c.Required, units.Ampere), 1, "270.6")
}

// The bridge carries amperes, not watts: 900 W of poor power factor on 1200 VA.
func TestTrapPowerFactor(t *testing.T) {
	m := inverter.Machine{Continuous: 1200 * units.Watt, ContinuousVA: units.Some(1200 * units.VoltAmpere), Efficiency: 1}
	h := must[inverter.Headroom](t)(inverter.Check(m, []inverter.Demand{{Name: "load", Power: 900 * units.Watt, Kind: inverter.SteadyLoad, PowerFactor: units.Some(62 * units.Percent)}}))
	wantPrinted(t, "VA", units.In(h.Apparent, units.VoltAmpere), 0, "1452")
	wantRules(t, h, "inverter-overload-va")
}

// A start is LRA times volts, with a soft starter its share; not twice the
// running watts.
func TestTrapStartOfACompressor(t *testing.T) {
	motor := inverter.Motor{LockedRotor: 63 * units.Ampere, Voltage: 120 * units.Volt}
	plain := must[inverter.Start](t)(inverter.Starting(motor))
	wantPrinted(t, "VA", units.In(plain.Apparent, units.VoltAmpere), 0, "7560")
	motor.SoftStart = units.Some(40 * units.Percent)
	soft := must[inverter.Start](t)(inverter.Starting(motor))
	wantPrinted(t, "VA", units.In(soft.Apparent, units.VoltAmpere), 0, "3024")
	for start, want := range map[units.ApparentPower]string{plain.Apparent: "inverter-surge", soft.Apparent: "inverter-surge-time-not-stated"} {
		m := inverter.Machine{Continuous: 2000 * units.Watt, ContinuousVA: units.Some(2000 * units.VoltAmpere),
			Surge: units.Some(4000 * units.VoltAmpere), Efficiency: 88 * units.Percent}
		h := must[inverter.Headroom](t)(inverter.Check(m, []inverter.Demand{{Name: "air conditioner", Power: 1414 * units.Watt,
			PowerFactor: units.Some[units.Ratio](1), Start: units.Some(start)}}))
		wantRules(t, h, want)
	}
	// It then runs 1.43 h from 2304 Wh, not 8 h.
	h := must[inverter.Carried](t)(inverter.CarryTime(inverter.Carry{AC: 1414 * units.Watt, Efficiency: 88 * units.Percent,
		Idle: units.Some(0 * units.Watt), Usable: units.Some((200 * units.AmpereHour * 0.9).At(12.8 * units.Volt))}))
	wantPrinted(t, "h", units.In(h.Time.Or(0), units.Hour), 2, "1.43")
}

// ampereLoads are loads of a 120 V service, by their amperes.
func ampereLoads(amperes ...units.Current) (demands []inverter.Demand) {
	for i, a := range amperes {
		demands = append(demands, inverter.Demand{Name: string(rune('A' + i)), Power: a.At(120 * units.Volt), PowerFactor: units.Some[units.Ratio](1)})
	}
	return demands
}

// A soft starter changes the first second and not the running current.
func TestTrapSoftStarterDoesNotRun(t *testing.T) {
	loads := ampereLoads(13*units.Ampere, 13*units.Ampere, 8*units.Ampere)
	loads[0].Start = units.Some((13 * units.Ampere).ApparentAt(120 * units.Volt))
	o := must[inverter.Overload](t)(inverter.Sets(service30(), loads))
	wantPrinted(t, "A", units.In(o.Together.Current, units.Ampere), 1, "34.0")
	wantNot(t, "A", units.In(o.Together.Current, units.Ampere), 1, "26.2")
	wantRules(t, o, "too-much-together")
}

// The whole panel on the inverter, the converter's breaker left on.
func TestTrapConverterOnInverter(t *testing.T) {
	loops := must[[]inverter.Loop](t)(inverter.FeedLoops([]string{"bank"}, []inverter.Feed{
		{Name: "inverter", From: "bank", To: "panel", Efficiency: 90 * units.Percent, Idle: units.Some(20 * units.Watt)},
		{Name: "converter", From: "panel", To: "bank", Efficiency: 85 * units.Percent, Most: units.Some((55 * units.Ampere).At(14.2 * units.Volt))},
	}, "bank"))
	if len(loops) != 1 {
		t.Fatalf("loops %+v", loops)
	}
	wantPrinted(t, "W", units.In(loops[0].Lost, units.Watt), 1, "259.9")
	h := must[inverter.Carried](t)(inverter.CarryTime(inverter.Carry{Efficiency: 90 * units.Percent, Idle: units.Some(0 * units.Watt),
		Loop: loops[0].Lost, Usable: units.Some(2304 * units.WattHour)}))
	wantPrinted(t, "h", units.In(h.Time.Or(0), units.Hour), 2, "8.86")
}

// The time counts losses, own use and the 12 V side, and nobody is told.
func TestTrapSilentFailover(t *testing.T) {
	h := must[inverter.Carried](t)(inverter.CarryTime(inverter.Carry{AC: 110 * units.Watt, Efficiency: 90 * units.Percent,
		Idle: units.Some(20 * units.Watt), DC: 35 * units.Watt, Usable: units.Some(2048 * units.WattHour)}))
	wantPrinted(t, "W", units.In(h.Power, units.Watt), 1, "177.2")
	wantPrinted(t, "h", units.In(h.Time.Or(0), units.Hour), 2, "11.56")
	wantNot(t, "h", units.In(h.Time.Or(0), units.Hour), 2, "18.62")
	wantRules(t, h, "silent-failover")
}

// Two generators of 2000 W through one outlet of 30 A are 3600 W, and 2880 W
// for hours.
func TestTrapOneOutlet(t *testing.T) {
	l := service30()
	l.Power = units.Some(4000 * units.Watt)
	for amperes, want := range map[units.Current][2]bool{
		24 * units.Ampere:   {false, false}, // 2880 W
		24.1 * units.Ampere: {false, true},
		30 * units.Ampere:   {false, true}, // 3600 W
		30.1 * units.Ampere: {true, true},
	} {
		for hours := range want {
			limit := l
			if hours == 1 {
				limit.Share = units.Some(inverter.ContinuousShare)
			}
			o := must[inverter.Overload](t)(inverter.Sets(limit, ampereLoads(amperes)))
			if o.Together.OverCurrent != want[hours] {
				t.Errorf("%v, hours %v: %+v", amperes, hours == 1, o.Together)
			}
		}
	}
}

// The charger, not the generator before it, sets the pace of a refill.
func TestTrapChargerSetsThePace(t *testing.T) {
	u := must[inverter.ChargerUse](t)(inverter.ChargerDraw(inverter.Charger{Current: 45 * units.Ampere, Voltage: 14.2 * units.Volt,
		Efficiency: 85 * units.Percent, PowerFactor: 1, Supply: 120 * units.Volt, Energy: units.Some(2400 * units.WattHour)}))
	wantPrinted(t, "h", units.In(u.Time.Or(0), units.Hour), 2, "3.76")
	wantNot(t, "h", units.In(u.Time.Or(0), units.Hour), 2, "0.80")
}

// The relay of 15 A decides, not the 20 A of the wire.
func TestTrapRelayBehindFeeder(t *testing.T) {
	p := inverter.Passage{Relay: units.Some(15 * units.Ampere), Feeder: units.Some(20 * units.Ampere)}
	c := must[inverter.PassThroughCheck](t)(inverter.PassThrough(p))
	if c.MaxDevice != units.Some(15*units.Ampere) {
		t.Errorf("greatest device %v, want 15 A", c.MaxDevice)
	}
	wantRules(t, c, "relay-below-device")
}

// Two bonds: the ground wire is a parallel neutral.
func TestTrapSecondBond(t *testing.T) {
	g := must[inverter.GroundShare](t)(inverter.ParallelNeutral(inverter.NeutralReturn{Current: 20 * units.Ampere,
		Neutral: 40 * units.Milliohm, Ground: 60 * units.Milliohm}))
	wantPrinted(t, "A", units.In(g.Ground, units.Ampere), 1, "8.0")
	wantRules(t, g, "load-current-in-ground")
}

// A ground rod clears no fault, and a floating neutral shows none.
func TestTrapGroundRodAndFloatingNeutral(t *testing.T) {
	fault := inverter.FrameFault{Voltage: 120 * units.Volt, Device: units.Some(20 * units.Ampere)}
	floating := must[inverter.FaultPath](t)(inverter.FaultToFrame(fault))
	if floating.Current != 0 || floating.CanOpen {
		t.Errorf("floating neutral: %+v", floating)
	}
	wantRules(t, floating, "no-fault-path")
	fault.Earth = units.Some(25 * units.Ohm)
	rod := must[inverter.FaultPath](t)(inverter.FaultToFrame(fault))
	wantPrinted(t, "A", units.In(rod.Current, units.Ampere), 1, "4.8")
	if rod.CanOpen {
		t.Error("a ground rod opens the breaker")
	}
	wantRules(t, rod, "earth-is-no-fault-path")
	fault.Metal = units.Some(0.3 * units.Ohm)
	bonded := must[inverter.FaultPath](t)(inverter.FaultToFrame(fault))
	wantPrinted(t, "A through metal", units.In(bonded.MetalShare, units.Ampere), 0, "400")
	if !bonded.CanOpen {
		t.Error("the bond does not open the breaker")
	}
	wantRules(t, bonded, "opening-time-not-judged")
}

// 0, 1 and 2 bonds are three different findings.
func TestTrapThreeFindingsOfBonds(t *testing.T) {
	var found []string
	for n := range 3 {
		bonds := []inverter.Bond{{Name: "a"}, {Name: "b"}}[:n]
		counts := must[[]inverter.BondCount](t)(inverter.Bonding([]inverter.Source{{Name: "generator"}}, bonds))
		found = append(found, rules(counts[0])...)
	}
	want := []string{"no-neutral-bond", "one-neutral-bond", "several-neutral-bonds"}
	if !slices.Equal(found, want) {
		t.Errorf("findings %q, want %q", found, want)
	}
}

// Shore and generator closed on one circuit, and two shore cords plugged into
// one panel, are both forbidden.
func TestTrapTwoSourcesOnOnePanel(t *testing.T) {
	for _, guards := range [][2]inverter.Guard{
		{{Kind: inverter.OneInlet, Name: "shore inlet"}, {Kind: inverter.NoGuard}},
		{{Kind: inverter.OneInlet, Name: "50 A inlet"}, {Kind: inverter.OneInlet, Name: "20 A inlet"}},
	} {
		list := must[[]inverter.Meeting](t)(inverter.Meetings([]inverter.Reach{
			{Source: "first", Panel: "main", Guards: guards[:1]}, {Source: "second", Panel: "main", Guards: guards[1:]}}))
		wantRules(t, list[0], "sources-not-kept-apart")
	}
}
