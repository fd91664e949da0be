package wire_test

import (
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// conductors are one of each way to know a resistance, and both metals of a
// size's range.
var conductors = map[string]wire.Conductor{
	"gauge":       {Size: wire.AWG(10), Temperature: units.Celsius(30)},
	"aught":       {Size: wire.Aught(4)},
	"solid":       {Size: wire.AWG(14), Strand: wire.Solid, Temperature: units.Celsius(-40)},
	"kcmil":       {Size: wire.Kcmil(250), Temperature: units.Celsius(20)},
	"metric":      {Size: wire.Metric(2.5 * units.SquareMillimetre)},
	"class 1":     {Size: wire.Metric(6 * units.SquareMillimetre), Strand: wire.Solid},
	"flexible":    {Size: wire.Metric(50 * units.SquareMillimetre), Strand: wire.Flexible},
	"resistivity": {Size: wire.AWG(8), Resistivity: units.Some(12.9 * units.OhmCircularMilPerFoot)},
	"stated":      {Stated: units.Some(1.98 * units.OhmPerKilofoot)},
	"named":       {Size: wire.AWG(12), Stated: units.Some(1.98 * units.OhmPerKilofoot)},
}

func TestSheetPerLength(t *testing.T) {
	for name, c := range conductors {
		t.Run(name, func(t *testing.T) {
			p, err := wire.Resistance(c)
			if err != nil {
				t.Fatal(err)
			}
			if name == "stated" || name == "named" {
				if got := p.Working().Steps(); len(got) != 1 || got[0].Name != "r" {
					t.Errorf("a stated resistance has steps %+v, want the one", got)
				}
				return
			}
			unitstest.CheckSheet(t, p.Working())
		})
	}
}

func TestSheetDrop(t *testing.T) {
	for name, c := range conductors {
		t.Run(name, func(t *testing.T) {
			r := lamp()
			r.Conductor = c
			d, err := wire.VoltageDrop(r)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, d.Working())
			r.Allowed = units.None[units.Ratio]()
			r.Current = 33.3333 * units.Milliampere
			if d, err = wire.VoltageDrop(r); err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, d.Working())
		})
	}
}

func TestSheetSelection(t *testing.T) {
	for name, list := range map[string][]wire.Size{"gauges": wire.Gauges(), "metric": wire.MetricSizes(), "one": {wire.Aught(4)}} {
		t.Run(name, func(t *testing.T) {
			s, err := wire.SmallestSize(lamp(), list)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, s.Working())
		})
	}
}

func TestSheetReach(t *testing.T) {
	for name, c := range conductors {
		t.Run(name, func(t *testing.T) {
			r := lamp()
			r.Conductor = c
			x, err := wire.LongestRun(r)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, x.Working())
		})
	}
}

func TestSheetCarryingCapacity(t *testing.T) {
	for name, x := range map[string]wire.Installation{
		"roof":     roof(),
		"thin":     {Rules: wire.NEC2017, Size: wire.AWG(16), Insulation: wire.Insulation105},
		"RV thin":  {Rules: wire.RVLowVoltage, Size: wire.AWG(12), Insulation: wire.Insulation105},
		"RV thick": {Rules: wire.RVLowVoltage, Size: wire.AWG(1), Insulation: wire.Insulation105},
		"boat":     {Rules: wire.Boat33CFR, Size: wire.Aught(1), Insulation: wire.Insulation105},
	} {
		t.Run(name, func(t *testing.T) {
			c, err := wire.Ampacity(x)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, c.Working())
		})
	}
}

func TestSheetFault(t *testing.T) {
	for name, oneWay := range map[string]units.Length{"at the source": 0, "at the end": 10 * units.Foot} {
		t.Run(name, func(t *testing.T) {
			f, err := wire.ShortCircuit(wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm},
				wire.Conductor{Size: wire.AWG(8)}, oneWay)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, f.Working())
		})
	}
}

func TestSheetProtection(t *testing.T) {
	for name, change := range map[string]func(*wire.Circuit){
		"RV":          func(*wire.Circuit) {},
		"RV thick":    func(c *wire.Circuit) { c.Installation.Size = wire.AWG(1) },
		"no device":   func(c *wire.Circuit) { c.Device = units.None[units.Current]() },
		"over limit":  func(c *wire.Circuit) { c.Device = units.Some(25 * units.Ampere) },
		"below load":  func(c *wire.Circuit) { c.Load = 18 * units.Ampere },
		"too weak":    func(c *wire.Circuit) { c.Interrupting = units.Some(100 * units.Ampere) },
		"continuous":  func(c *wire.Circuit) { c.Continuous = true },
		"boat":        func(c *wire.Circuit) { c.Installation.Rules = wire.Boat33CFR },
		"NEC":         func(c *wire.Circuit) { c.Installation.Rules = wire.NEC2017 },
		"next rating": func(c *wire.Circuit) { c.Installation.Rules, c.Installation.Size = wire.NEC2017, wire.AWG(6) },
		"no fault":    func(c *wire.Circuit) { c.Fault = units.None[wire.FaultSource]() },
	} {
		t.Run(name, func(t *testing.T) {
			circuit := branchCircuit()
			change(&circuit)
			p, err := wire.Protect(circuit)
			if err != nil {
				t.Fatal(err)
			}
			unitstest.CheckSheet(t, p.Working())
		})
	}
}
