package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

func TestSheetCarryingCapacityByRule(t *testing.T) {
	for name, x := range map[string]wire.Installation{
		"2008":         {Rules: wire.NEC2008, Size: wire.AWG(14), Insulation: wire.Insulation60},
		"2023":         {Rules: wire.NEC2023, Size: wire.AWG(8), Insulation: wire.Insulation80, Conductors: 7},
		"aluminium":    {Rules: wire.NEC2017, Size: wire.AWG(8), Insulation: wire.Insulation75, Metal: wire.Aluminium},
		"parallel":     {Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation90, Parallel: 3},
		"engine space": {Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105, EngineSpace: true, Conductors: 3},
		"boat, 120 V":  {Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation105, Conductors: 3, System: volts(120)},
	} {
		t.Run(name, func(t *testing.T) { unitstest.CheckSheet(t, mustCarry(t, x).Working()) })
	}
}

func TestSheetProtectionByRule(t *testing.T) {
	for name, change := range map[string]func(*wire.Circuit){
		"part for hours": func(c *wire.Circuit) { c.Continuous, c.ForHours = false, units.Some(3*units.Ampere) },
		"warm": func(c *wire.Circuit) {
			c.FaultWarm = units.Some(wire.FaultSource{Voltage: 12.9 * units.Volt, Resistance: 8 * units.Milliohm})
		},
		"withstand": func(c *wire.Circuit) { c.Opens = units.Some(0.5 * units.Second) },
		"exceeded":  func(c *wire.Circuit) { c.Opens, c.Thermoset = units.Some(4*units.Second), true },
		"parallel": func(c *wire.Circuit) {
			c.Installation = wire.Installation{Rules: wire.NEC2017, Size: wire.Aught(1), Insulation: wire.Insulation90, Parallel: 2}
			c.Opens = units.Some(0.5 * units.Second)
		},
		"aluminium": func(c *wire.Circuit) {
			c.Installation = wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(8), Insulation: wire.Insulation90, Metal: wire.Aluminium}
			c.Opens = units.Some(0.5 * units.Second)
		},
		"boat, 120 V": func(c *wire.Circuit) { c.Installation.Rules, c.Installation.System = wire.Boat33CFR, volts(120) },
	} {
		t.Run(name, func(t *testing.T) {
			circuit := branchCircuit()
			change(&circuit)
			unitstest.CheckSheet(t, mustProtect(t, circuit).Working())
		})
	}
}

func TestSheetCordCapacity(t *testing.T) {
	for name, x := range map[string]wire.Cord{
		"shore":    shoreCord(),
		"warm":     {Size: wire.AWG(10), Conductors: 4, Load: 20 * units.Ampere, Rating: wire.Insulation90, Ambient: units.Celsius(45)},
		"heater":   {Type: wire.HeaterCord, Size: wire.AWG(16), Conductors: 2, Load: 12 * units.Ampere},
		"portable": {Type: wire.PortableCable, Size: wire.AWG(6), Conductors: 3, Rating: wire.Insulation75, Load: 50 * units.Ampere},
		"single":   {Type: wire.PortableCable, Size: wire.AWG(6), Conductors: 1, Rating: wire.Insulation75, Load: 99 * units.Ampere},
		"three":    {Size: wire.AWG(6), Conductors: 3, Load: 50 * units.Ampere},
	} {
		t.Run(name, func(t *testing.T) { unitstest.CheckSheet(t, mustCord(t, x).Working()) })
	}
}

func TestSheetWithstand(t *testing.T) {
	for name, change := range map[string]func(*wire.ShortTime){
		"row":       func(*wire.ShortTime) {},
		"time":      func(x *wire.ShortTime) { x.Time = units.Some(3.3 * units.Second) },
		"slow":      func(x *wire.ShortTime) { x.Current = 20 * units.Ampere },
		"aluminium": func(x *wire.ShortTime) { x.Metal, x.Time = wire.Aluminium, units.Some(1*units.Second) },
		"formula": func(x *wire.ShortTime) {
			x.Core, x.Initial, x.Final = 0, units.Celsius(105), units.Celsius(160)
		},
	} {
		t.Run(name, func(t *testing.T) {
			x := lampWire()
			change(&x)
			unitstest.CheckSheet(t, mustWithstand(t, x).Working())
		})
	}
}

func TestSheetHeatBalance(t *testing.T) {
	for name, x := range map[string]wire.FreeAirCable{
		"hanging": hanging(),
		"thin":    {Size: wire.AWG(20), Metal: units.Celsius(60), Ambient: units.Celsius(-20)},
		"close":   {Size: wire.Aught(4), Metal: units.Celsius(75), Ambient: units.Celsius(70)},
		"metric":  {Size: wire.Metric(120 * units.SquareMillimetre), Metal: units.Celsius(105), Emissivity: units.Some(units.Ratio(0.5))},
	} {
		t.Run(name, func(t *testing.T) { unitstest.CheckSheet(t, mustBalance(t, x).Working()) })
	}
}

func TestSheetPathLimit(t *testing.T) {
	for name, device := range map[string]units.Opt[units.Current]{"device": units.Some(300 * units.Ampere), "none": units.None[units.Current]()} {
		t.Run(name, func(t *testing.T) {
			p, err := wire.WeakestPart(90*units.Ampere, device, inverterPath)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, p.Working())
		})
	}
}

// TestZeroAmpacityResults: results that nobody worked out, or that somebody
// edited, explain themselves as well as they can.
func TestZeroAmpacityResults(t *testing.T) {
	for _, r := range []interface {
		Working() *working.Sheet
		Findings() []working.Finding
	}{
		wire.CarryingCapacity{}, wire.Protection{}, wire.Fault{}, wire.CordCapacity{}, wire.Withstand{}, wire.HeatBalance{}, wire.PathLimit{},
		wire.CordCapacity{Cord: wire.Cord{Type: 9, Rating: 9, Conductors: -5}},
		wire.CarryingCapacity{Installation: wire.Installation{Rules: 9, Insulation: 9, Metal: 9, Conductors: -1}, Governs: 9, Counted: -1},
		wire.Protection{Rule: 9, Circuit: wire.Circuit{Kind: 9, Installation: wire.Installation{Rules: wire.Boat33CFR, Insulation: 9}}},
		wire.Withstand{ShortTime: wire.ShortTime{Core: 99, Metal: 99}, Longest: units.Some(units.Elapsed(-1))},
	} {
		if r.Working().Text() == "" {
			t.Errorf("%+v has no text", r)
		}
		_ = r.Findings()
	}
}
