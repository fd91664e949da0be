package inverter_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// everyday inputs of each calculator.
func day() inverter.Day {
	return inverter.Day{Energy: 845 * units.WattHour, Efficiency: 0.89, Idle: units.Some(14 * units.Watt), On: units.Some(24 * units.Hour), Voltage: units.Some(12.8 * units.Volt)}
}

func carry() inverter.Carry {
	return inverter.Carry{AC: 110 * units.Watt, Efficiency: 0.9, Idle: units.Some(20 * units.Watt), DC: 35 * units.Watt,
		Loop: 173 * units.Watt, Usable: units.Some(2048 * units.WattHour)}
}

func charger() inverter.Charger {
	c := demoConverter()
	c.Energy = units.Some(2400 * units.WattHour)
	return c
}

func motor() inverter.Motor {
	return inverter.Motor{LockedRotor: 63 * units.Ampere, Voltage: 120 * units.Volt, SoftStart: units.Some(40 * units.Percent)}
}

func neutralReturn() inverter.NeutralReturn {
	return inverter.NeutralReturn{Current: 20 * units.Ampere, Neutral: 40 * units.Milliohm, Ground: 60 * units.Milliohm}
}

func frameFault() inverter.FrameFault {
	return inverter.FrameFault{Voltage: 120 * units.Volt, Metal: units.Some(0.3 * units.Ohm), Earth: units.Some(25 * units.Ohm), Device: units.Some(20 * units.Ampere)}
}

func passage() inverter.Passage {
	return inverter.Passage{Relay: units.Some(30 * units.Ampere), Feeder: units.Some(20 * units.Ampere)}
}

func dcSide() inverter.DCSide {
	return inverter.DCSide{Machine: demoMachine(), Margin: inverter.NECMargin}
}

// limit has every kind of limit.
func limit() inverter.Limit {
	l := service30()
	l.Power, l.Apparent, l.Share = units.Some(3600*units.Watt), units.Some(3600*units.VoltAmpere), units.Some(80*units.Percent)
	return l
}

// A field is an input, how to spoil it, and what it may be.
type field struct {
	op, name string
	call     func(x float64) (any, error)
	zero     bool    // 0 is in range
	most     float64 // the end of its range; 0: none
}

// try spoils one field of an everyday input.
func try[In, Out any](op, name string, everyday func() In, spoil func(*In, float64), ask func(In) (Out, error), zero bool, most float64) field {
	return field{op: op, name: name, zero: zero, most: most, call: func(x float64) (any, error) {
		in := everyday()
		spoil(&in, x)
		return ask(in)
	}}
}

func checkMachine(m inverter.Machine) (inverter.Headroom, error) {
	return inverter.Check(m, []inverter.Demand{microwave()})
}

func checkDemand(d inverter.Demand) (inverter.Headroom, error) {
	return inverter.Check(demoMachine(), []inverter.Demand{logger(), d})
}

func setsOf(l inverter.Limit) (inverter.Overload, error) {
	return inverter.Sets(l, []inverter.Demand{microwave(), logger()})
}

func oneFeed() inverter.Feed {
	return inverter.Feed{Name: "inverter", From: "bank", To: "panel", Efficiency: 0.9, Idle: units.Some(14 * units.Watt), Most: units.Some(1500 * units.Watt)}
}

func loopsOf(f inverter.Feed) ([]inverter.Loop, error) {
	return inverter.FeedLoops([]string{"bank"}, []inverter.Feed{f}, "bank")
}

func fields() []field {
	type (
		m = *inverter.Machine
		d = *inverter.Demand
	)
	const check, sets = "inverter.Check", "inverter.Sets"
	return []field{
		try(check, "Continuous", demoMachine, func(m m, x float64) { m.Continuous = units.Power(x) }, checkMachine, false, 0),
		try(check, "ContinuousVA", demoMachine, func(m m, x float64) { m.ContinuousVA = units.Some(units.ApparentPower(x)) }, checkMachine, false, 0),
		try(check, "Surge", demoMachine, func(m m, x float64) { m.Surge = units.Some(units.ApparentPower(x)) }, checkMachine, false, 0),
		try(check, "SurgeFor", demoMachine, func(m m, x float64) { m.SurgeFor = units.Some(units.Elapsed(x)) }, checkMachine, false, 0),
		try(check, "Efficiency", demoMachine, func(m m, x float64) { m.Efficiency = units.Ratio(x) }, checkMachine, false, 1),
		try(check, "Idle", demoMachine, func(m m, x float64) { m.Idle = units.Some(units.Power(x)) }, checkMachine, true, 0),
		try(check, "LowestVoltage", demoMachine, func(m m, x float64) { m.LowestVoltage = units.Some(units.Voltage(x)) }, checkMachine, false, 0),
		try(check, "PassThrough", demoMachine, func(m m, x float64) { m.PassThrough = units.Some(units.Current(x)) }, checkMachine, false, 0),
		try(check, "demands[1].Power", microwave, func(d d, x float64) { d.Power = units.Power(x) }, checkDemand, true, 0),
		try(check, "demands[1].PowerFactor", microwave, func(d d, x float64) { d.PowerFactor = units.Some(units.Ratio(x)) }, checkDemand, false, 1),
		try(check, "demands[1].Apparent", airConditioner, func(d d, x float64) { d.Apparent = units.Some(units.ApparentPower(x)) }, checkDemand, false, 0),
		try(check, "demands[1].Start", airConditioner, func(d d, x float64) { d.Start = units.Some(units.ApparentPower(x)) }, checkDemand, false, 0),
		try(check, "demands[1].StartFor", airConditioner, func(d d, x float64) { d.StartFor = units.Some(units.Elapsed(x)) }, checkDemand, false, 0),
		try(sets, "Power", limit, func(l *inverter.Limit, x float64) { l.Power = units.Some(units.Power(x)) }, setsOf, false, 0),
		try(sets, "Apparent", limit, func(l *inverter.Limit, x float64) { l.Apparent = units.Some(units.ApparentPower(x)) }, setsOf, false, 0),
		try(sets, "Current", limit, func(l *inverter.Limit, x float64) { l.Current = units.Some(units.Current(x)) }, setsOf, false, 0),
		try(sets, "Voltage", limit, func(l *inverter.Limit, x float64) { l.Voltage = units.Voltage(x) }, setsOf, false, 0),
		try(sets, "Share", limit, func(l *inverter.Limit, x float64) { l.Share = units.Some(units.Ratio(x)) }, setsOf, false, 1),
		try("inverter.BatterySide", "Margin", dcSide, func(s *inverter.DCSide, x float64) { s.Margin = units.Ratio(x) }, inverter.BatterySide, false, 0),
		try("inverter.EnergyADay", "Energy", day, func(d *inverter.Day, x float64) { d.Energy = units.Energy(x) }, inverter.EnergyADay, true, 0),
		try("inverter.EnergyADay", "Efficiency", day, func(d *inverter.Day, x float64) { d.Efficiency = units.Ratio(x) }, inverter.EnergyADay, false, 1),
		try("inverter.EnergyADay", "Idle", day, func(d *inverter.Day, x float64) { d.Idle = units.Some(units.Power(x)) }, inverter.EnergyADay, true, 0),
		try("inverter.EnergyADay", "On", day, func(d *inverter.Day, x float64) { d.On = units.Some(units.Elapsed(x)) }, inverter.EnergyADay, false, 86400),
		try("inverter.EnergyADay", "Voltage", day, func(d *inverter.Day, x float64) { d.Voltage = units.Some(units.Voltage(x)) }, inverter.EnergyADay, false, 0),
		try("inverter.CarryTime", "AC", carry, func(c *inverter.Carry, x float64) { c.AC = units.Power(x) }, inverter.CarryTime, true, 0),
		try("inverter.CarryTime", "Efficiency", carry, func(c *inverter.Carry, x float64) { c.Efficiency = units.Ratio(x) }, inverter.CarryTime, false, 1),
		try("inverter.CarryTime", "Idle", carry, func(c *inverter.Carry, x float64) { c.Idle = units.Some(units.Power(x)) }, inverter.CarryTime, true, 0),
		try("inverter.CarryTime", "DC", carry, func(c *inverter.Carry, x float64) { c.DC = units.Power(x) }, inverter.CarryTime, true, 0),
		try("inverter.CarryTime", "Loop", carry, func(c *inverter.Carry, x float64) { c.Loop = units.Power(x) }, inverter.CarryTime, true, 0),
		try("inverter.CarryTime", "Usable", carry, func(c *inverter.Carry, x float64) { c.Usable = units.Some(units.Energy(x)) }, inverter.CarryTime, false, 0),
		try("inverter.ChargerDraw", "Current", charger, func(c *inverter.Charger, x float64) { c.Current = units.Current(x) }, inverter.ChargerDraw, false, 0),
		try("inverter.ChargerDraw", "Voltage", charger, func(c *inverter.Charger, x float64) { c.Voltage = units.Voltage(x) }, inverter.ChargerDraw, false, 0),
		try("inverter.ChargerDraw", "Efficiency", charger, func(c *inverter.Charger, x float64) { c.Efficiency = units.Ratio(x) }, inverter.ChargerDraw, false, 1),
		try("inverter.ChargerDraw", "PowerFactor", charger, func(c *inverter.Charger, x float64) { c.PowerFactor = units.Ratio(x) }, inverter.ChargerDraw, false, 1),
		try("inverter.ChargerDraw", "Supply", charger, func(c *inverter.Charger, x float64) { c.Supply = units.Voltage(x) }, inverter.ChargerDraw, false, 0),
		try("inverter.ChargerDraw", "Energy", charger, func(c *inverter.Charger, x float64) { c.Energy = units.Some(units.Energy(x)) }, inverter.ChargerDraw, false, 0),
		try("inverter.Starting", "LockedRotor", motor, func(m *inverter.Motor, x float64) { m.LockedRotor = units.Current(x) }, inverter.Starting, false, 0),
		try("inverter.Starting", "Voltage", motor, func(m *inverter.Motor, x float64) { m.Voltage = units.Voltage(x) }, inverter.Starting, false, 0),
		try("inverter.Starting", "SoftStart", motor, func(m *inverter.Motor, x float64) { m.SoftStart = units.Some(units.Ratio(x)) }, inverter.Starting, false, 1),
		try("inverter.ParallelNeutral", "Current", neutralReturn, func(n *inverter.NeutralReturn, x float64) { n.Current = units.Current(x) }, inverter.ParallelNeutral, false, 0),
		try("inverter.ParallelNeutral", "Neutral", neutralReturn, func(n *inverter.NeutralReturn, x float64) { n.Neutral = units.Resistance(x) }, inverter.ParallelNeutral, false, 0),
		try("inverter.ParallelNeutral", "Ground", neutralReturn, func(n *inverter.NeutralReturn, x float64) { n.Ground = units.Resistance(x) }, inverter.ParallelNeutral, false, 0),
		try("inverter.FaultToFrame", "Voltage", frameFault, func(f *inverter.FrameFault, x float64) { f.Voltage = units.Voltage(x) }, inverter.FaultToFrame, false, 0),
		try("inverter.FaultToFrame", "Metal", frameFault, func(f *inverter.FrameFault, x float64) { f.Metal = units.Some(units.Resistance(x)) }, inverter.FaultToFrame, false, 0),
		try("inverter.FaultToFrame", "Earth", frameFault, func(f *inverter.FrameFault, x float64) { f.Earth = units.Some(units.Resistance(x)) }, inverter.FaultToFrame, false, 0),
		try("inverter.FaultToFrame", "Device", frameFault, func(f *inverter.FrameFault, x float64) { f.Device = units.Some(units.Current(x)) }, inverter.FaultToFrame, false, 0),
		try("inverter.PassThrough", "Relay", passage, func(p *inverter.Passage, x float64) { p.Relay = units.Some(units.Current(x)) }, inverter.PassThrough, false, 0),
		try("inverter.PassThrough", "Feeder", passage, func(p *inverter.Passage, x float64) { p.Feeder = units.Some(units.Current(x)) }, inverter.PassThrough, false, 0),
		try("inverter.EnergyADay", "Longest", day, func(d *inverter.Day, x float64) { d.Longest = units.Some(units.Elapsed(x)) }, inverter.EnergyADay, true, 86400),
		try("inverter.FeedLoops", "feeds[0].Efficiency", oneFeed, func(f *inverter.Feed, x float64) { f.Efficiency = units.Ratio(x) }, loopsOf, false, 1),
		try("inverter.FeedLoops", "feeds[0].Idle", oneFeed, func(f *inverter.Feed, x float64) { f.Idle = units.Some(units.Power(x)) }, loopsOf, true, 0),
		try("inverter.FeedLoops", "feeds[0].Most", oneFeed, func(f *inverter.Feed, x float64) { f.Most = units.Some(units.Power(x)) }, loopsOf, false, 0),
	}
}

func TestEveryFieldIsChecked(t *testing.T) {
	for _, f := range fields() {
		t.Run(f.op+" "+f.name, func(t *testing.T) {
			wrong := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1}
			if !f.zero {
				wrong = append(wrong, 0, math.Copysign(0, -1))
			}
			if f.most > 0 {
				wrong = append(wrong, f.most*1.001, 88*f.most)
				if _, err := f.call(f.most); err != nil {
					t.Errorf("%v is in range: %v", f.most, err)
				}
			}
			for _, x := range wrong {
				got, err := f.call(x)
				wantRangeError(t, err, f.op, f.name)
				if !reflect.ValueOf(got).IsZero() {
					t.Errorf("%v: result %+v, want the zero value", x, got)
				}
			}
			if f.zero {
				if _, err := f.call(0); err != nil {
					t.Errorf("0 is in range: %v", err)
				}
			}
		})
	}
}

func TestDemandOutOfShape(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*inverter.Demand)
	}{
		{"demands[1].Name", func(d *inverter.Demand) { d.Name = "" }},
		// 1450 W do not come with 1400 VA.
		{"demands[1].Apparent", func(d *inverter.Demand) {
			d.PowerFactor, d.Apparent = units.None[units.Ratio](), units.Some(1400*units.VoltAmpere)
		}},
		// Either of the two is given, so that they cannot contradict.
		{"demands[1].PowerFactor", func(d *inverter.Demand) { d.Apparent = units.Some(1450 * units.VoltAmpere) }},
	} {
		d := microwave()
		c.spoil(&d)
		_, err := checkDemand(d)
		wantRangeError(t, err, "inverter.Check", c.field)
		_, err = inverter.Sets(limit(), []inverter.Demand{logger(), d})
		wantRangeError(t, err, "inverter.Sets", c.field)
	}
}

func TestMachineGivesNoMoreWattsThanVoltAmperes(t *testing.T) {
	m := demoMachine()
	m.ContinuousVA = units.Some(1499 * units.VoltAmpere)
	_, err := inverter.Check(m, nil)
	wantRangeError(t, err, "inverter.Check", "ContinuousVA")
}

func TestLowestVoltageIsNeeded(t *testing.T) {
	s := dcSide()
	s.Machine.LowestVoltage = units.None[units.Voltage]()
	_, err := inverter.BatterySide(s)
	wantRangeError(t, err, "inverter.BatterySide", "LowestVoltage")
	s = dcSide()
	s.Margin = 0.99
	_, err = inverter.BatterySide(s)
	wantRangeError(t, err, "inverter.BatterySide", "Margin")
	s.Margin = 1
	if _, err = inverter.BatterySide(s); err != nil {
		t.Errorf("a margin of 1 is in range: %v", err)
	}
}

func TestSetsOutOfShape(t *testing.T) {
	_, err := inverter.Sets(inverter.Limit{Name: "x"}, nil)
	wantRangeError(t, err, "inverter.Sets", "Limit")
	l := limit()
	l.Name = ""
	_, err = inverter.Sets(l, nil)
	wantRangeError(t, err, "inverter.Sets", "Name")
	_, err = inverter.Sets(limit(), []inverter.Demand{logger(), microwave(), logger()})
	wantRangeError(t, err, "inverter.Sets", "demands[2].Name")
	many := make([]inverter.Demand, 21)
	for i := range many {
		many[i] = inverter.Demand{Name: fmt.Sprint(i), Power: units.Watt}
	}
	_, err = inverter.Sets(limit(), many)
	wantRangeError(t, err, "inverter.Sets", "len(demands)")
	if _, err = inverter.Sets(limit(), many[:20]); err != nil {
		t.Errorf("20 demands are taken: %v", err)
	}
}

func TestTooLargeToHold(t *testing.T) {
	const most = math.MaxFloat64
	huge := inverter.Demand{Name: "huge", Power: most, PowerFactor: units.Some[units.Ratio](1)}
	second := huge
	second.Name = "second"
	_, err := inverter.Check(demoMachine(), []inverter.Demand{huge, second})
	wantRangeError(t, err, "inverter.Check", "Power")
	_, err = inverter.Sets(limit(), []inverter.Demand{huge, second})
	wantRangeError(t, err, "inverter.Sets", "Power")
	s := dcSide()
	s.Machine.ContinuousVA, s.Machine.Surge, s.Machine.Continuous = units.None[units.ApparentPower](), units.None[units.ApparentPower](), most
	_, err = inverter.BatterySide(s)
	wantRangeError(t, err, "inverter.BatterySide", "Power")
	d := day()
	d.Energy = most
	_, err = inverter.EnergyADay(d)
	wantRangeError(t, err, "inverter.EnergyADay", "Energy")
	d = day()
	d.Voltage = units.Some(units.Voltage(1e-320))
	_, err = inverter.EnergyADay(d)
	wantRangeError(t, err, "inverter.EnergyADay", "Charge")
	c := carry()
	c.AC, c.DC = most, most
	_, err = inverter.CarryTime(c)
	wantRangeError(t, err, "inverter.CarryTime", "Power")
	c = carry()
	c.AC, c.Usable = 1e300, units.Some(units.Energy(1e-300))
	_, err = inverter.CarryTime(c)
	wantRangeError(t, err, "inverter.CarryTime", "Time")
	x := charger()
	x.Current = most
	_, err = inverter.ChargerDraw(x)
	wantRangeError(t, err, "inverter.ChargerDraw", "Output")
	x = charger()
	x.Energy, x.Current = units.Some(units.Energy(1e-300)), 1e300
	_, err = inverter.ChargerDraw(x)
	wantRangeError(t, err, "inverter.ChargerDraw", "Time")
	m := motor()
	m.LockedRotor = most
	_, err = inverter.Starting(m)
	wantRangeError(t, err, "inverter.Starting", "Apparent")
	n := neutralReturn()
	n.Ground, n.Neutral = most, most
	_, err = inverter.ParallelNeutral(n)
	wantRangeError(t, err, "inverter.ParallelNeutral", "Ground")
	f := frameFault()
	f.Metal = units.Some(units.Resistance(1e-320))
	_, err = inverter.FaultToFrame(f)
	wantRangeError(t, err, "inverter.FaultToFrame", "Current")
	a, b := oneFeed(), oneFeed()
	b.Name, b.From, b.To, b.Most = "charger", "panel", "bank", units.Some(units.Power(most))
	a.Most = units.None[units.Power]()
	_, err = inverter.FeedLoops([]string{"bank"}, []inverter.Feed{a, b}, "bank")
	wantRangeError(t, err, "inverter.FeedLoops", "Drawn")
}
