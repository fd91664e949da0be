package wire_test

import (
	"testing"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// must returns v, or ends the test.
func must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// moreConductors are one of each basis that a caller chooses, and each metal.
var moreConductors = map[string]wire.Conductor{
	"Table 8":           {Size: wire.AWG(12), Basis: units.Some(wire.FromNECTable8), Temperature: units.Celsius(40)},
	"Table 8 solid":     {Size: wire.AWG(12), Strand: wire.Solid, Basis: units.Some(wire.FromNECTable8)},
	"Table 8 coated":    {Size: wire.Aught(4), Coated: true, Basis: units.Some(wire.FromNECTable8)},
	"Table 8 aluminium": {Size: wire.Kcmil(500), Metal: wire.Aluminium, Basis: units.Some(wire.FromNECTable8), Temperature: units.Celsius(90)},
	"handbook":          {Size: wire.AWG(12), Basis: units.Some(wire.FromNBSHandbook100)},
	"handbook solid":    {Size: wire.AWG(7), Strand: wire.Solid, Basis: units.Some(wire.FromNBSHandbook100), Temperature: units.Celsius(20)},
	"tinned metric":     {Size: wire.Metric(16 * units.SquareMillimetre), Strand: wire.Flexible, Coated: true},
	"metric by area":    {Size: wire.Metric(16 * units.SquareMillimetre), Basis: units.Some(wire.FromCopper)},
	"aluminium":         {Size: wire.AWG(2), Metal: wire.Aluminium},
	"aluminium metric":  {Size: wire.Metric(25 * units.SquareMillimetre), Metal: wire.Aluminium, Strand: wire.Solid, Basis: units.Some(wire.FromMetal)},
	"copper-clad":       {Size: wire.Aught(1), Metal: wire.CopperClad},
	"copper-clad solid": {Size: wire.AWG(12), Metal: wire.CopperClad, Strand: wire.Solid, Temperature: units.Celsius(-40)},
}

// TestSheetPerLengthByBasis checks the working of every basis.
func TestSheetPerLengthByBasis(t *testing.T) {
	for name, c := range moreConductors {
		t.Run(name, func(t *testing.T) {
			p := must[wire.PerLength](t)(wire.Resistance(c))
			unitstest.CheckSheet(t, p.Working())
			if want, ok := c.Basis.Get(); ok && p.Basis != want {
				t.Errorf("basis %v, want %v", p.Basis, want)
			}
		})
	}
}

// loops are ways to make a loop of more than two conductors.
var loops = map[string]func(*wire.Run){
	"plain":    func(*wire.Run) {},
	"parallel": func(r *wire.Run) { r.Parallel = 3 },
	"chassis":  func(r *wire.Run) { r.Chassis = units.Some(2 * units.Milliohm) },
	"contacts": func(r *wire.Run) { r.Contacts = units.Some(3 * units.Milliohm) },
	"all": func(r *wire.Run) {
		r.Parallel, r.Chassis, r.Contacts = 2, units.Some(1*units.Milliohm), units.Some(2*units.Milliohm)
	},
}

// TestSheetDropByLoop checks the four questions of a run for every loop.
func TestSheetDropByLoop(t *testing.T) {
	for name, change := range loops {
		t.Run(name, func(t *testing.T) {
			r := lamp()
			change(&r)
			unitstest.CheckSheet(t, must[wire.Drop](t)(wire.VoltageDrop(r)).Working())
			unitstest.CheckSheet(t, must[wire.Reach](t)(wire.LongestRun(r)).Working())
			unitstest.CheckSheet(t, must[wire.Selection](t)(wire.SmallestSize(r, wire.Gauges())).Working())
			unitstest.CheckSheet(t, must[wire.MostCurrent](t)(wire.LargestCurrent(r)).Working())
		})
	}
	for name, c := range moreConductors {
		r := lamp()
		r.Conductor = c
		t.Run(name, func(t *testing.T) {
			unitstest.CheckSheet(t, must[wire.Drop](t)(wire.VoltageDrop(r)).Working())
		})
	}
}

func TestSheetMostCurrent(t *testing.T) {
	unitstest.CheckSheet(t, must[wire.MostCurrent](t)(wire.LargestCurrent(lamp())).Working())
}

func TestSheetMetalMass(t *testing.T) {
	for name, c := range map[string]wire.Conductor{
		"stranded":    {Size: wire.AWG(10)},
		"solid":       {Size: wire.AWG(10), Strand: wire.Solid},
		"kcmil":       {Size: wire.Kcmil(250), Metal: wire.Aluminium},
		"copper-clad": {Size: wire.Aught(2), Metal: wire.CopperClad},
		"metric":      {Size: wire.Metric(35 * units.SquareMillimetre), Strand: wire.Flexible},
		"tinned":      {Size: wire.Metric(35 * units.SquareMillimetre), Coated: true},
	} {
		t.Run(name, func(t *testing.T) {
			unitstest.CheckSheet(t, must[wire.MetalMass](t)(wire.MassOf(c)).Working())
		})
	}
}

// roofUnit is an air conditioner on a long cord.
func roofUnit() wire.ACRun {
	return wire.ACRun{Current: 14 * units.Ampere, OneWay: 75 * units.Foot, Source: 120 * units.Volt,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(10)}}, PowerFactor: units.Some[units.Ratio](0.85)}
}

// acChanges are what an alternating-current run may have that the plain one
// does not.
var acChanges = map[string]func(*wire.ACRun){
	"plain":       func(*wire.ACRun) {},
	"unity":       func(r *wire.ACRun) { r.PowerFactor = units.None[units.Ratio]() },
	"leading":     func(r *wire.ACRun) { r.Leading = true },
	"approximate": func(r *wire.ACRun) { r.Method = wire.ACApproximate },
	"limited":     func(r *wire.ACRun) { r.Allowed = units.Some(3 * units.Percent) },
	"parallel":    func(r *wire.ACRun) { r.Line.Conductor.Size, r.Parallel = wire.Aught(2), 2 },
	"steel":       func(r *wire.ACRun) { r.Line.Conductor.Size, r.Line.Conduit = wire.Kcmil(500), wire.SteelConduit },
	"aluminium":   func(r *wire.ACRun) { r.Line.Conductor.Size, r.Line.Conductor.Metal = wire.AWG(2), wire.Aluminium },
	"cool":        func(r *wire.ACRun) { r.Line.Conductor.Temperature = units.Celsius(30) },
	"from copper": func(r *wire.ACRun) { r.Line.Conductor.Basis = units.Some(wire.FromCopper) },
	"stated": func(r *wire.ACRun) {
		r.Line.Conductor = wire.Conductor{Stated: units.Some(1.2 * units.OhmPerKilofoot)}
		r.Line.Reactance = units.Some(0.05 * units.OhmPerKilofoot)
	},
	"no reactance": func(r *wire.ACRun) {
		r.Line.Conductor.Size, r.Line.Reactance = wire.AWG(16), units.Some(0*units.OhmPerKilofoot)
	},
}

func TestSheetAlternatingDrop(t *testing.T) {
	for name, change := range acChanges {
		t.Run(name, func(t *testing.T) {
			r := roofUnit()
			change(&r)
			unitstest.CheckSheet(t, must[wire.AlternatingDrop](t)(wire.ACDrop(r)).Working())
		})
	}
}

func TestSheetImpedance(t *testing.T) {
	for name, change := range acChanges {
		t.Run(name, func(t *testing.T) {
			r := roofUnit()
			change(&r)
			z := must[wire.Impedance](t)(wire.ACImpedance(r.Line))
			if name == "stated" {
				if steps := z.Working().Steps(); len(steps) != 2 {
					t.Errorf("an impedance that was stated has steps %+v, want the two", steps)
				}
				return
			}
			unitstest.CheckSheet(t, z.Working())
		})
	}
}

// panel is a feeder of two unequal legs.
func panel() wire.LegRun {
	return wire.LegRun{Currents: units.Legs[units.Current]{A: 40 * units.Ampere, B: 25 * units.Ampere}, OneWay: 100 * units.Foot,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(6)}}, Source: 120 * units.Volt}
}

var legChanges = map[string]func(*wire.LegRun){
	"plain":    func(*wire.LegRun) {},
	"balanced": func(r *wire.LegRun) { r.Currents.B = r.Currents.A },
	"one leg":  func(r *wire.LegRun) { r.Currents.B = 0 },
	"network":  func(r *wire.LegRun) { r.Supply = wire.NetworkLegs },
	"one hot":  func(r *wire.LegRun) { r.Supply, r.Currents = wire.OneHot, units.Legs[units.Current]{A: 15, B: 10} },
	"lagging":  func(r *wire.LegRun) { r.PowerFactors = units.Legs[units.Ratio]{A: 0.8, B: 0.95} },
	"network, lagging": func(r *wire.LegRun) {
		r.Supply, r.PowerFactors = wire.NetworkLegs, units.Legs[units.Ratio]{A: 0.8, B: 0.95}
	},
	"thin neutral": func(r *wire.LegRun) { r.Neutral.Conductor.Size = wire.AWG(8) },
	"stated neutral": func(r *wire.LegRun) {
		r.Neutral = wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(1 * units.OhmPerKilofoot)},
			Reactance: units.Some(0.05 * units.OhmPerKilofoot)}
	},
	"limited": func(r *wire.LegRun) { r.Allowed = units.Some(1 * units.Percent) },
}

func TestSheetLegVoltages(t *testing.T) {
	for name, change := range legChanges {
		t.Run(name, func(t *testing.T) {
			r := panel()
			change(&r)
			unitstest.CheckSheet(t, must[wire.LegVoltages](t)(wire.LegDrop(r)).Working())
		})
	}
}

// inverterRun is an inverter's cable, warm.
func inverterRun() wire.WarmRun {
	return wire.WarmRun{
		Run: wire.Run{OneWay: 6 * units.Foot, Source: 12.8 * units.Volt, Conductor: wire.Conductor{Size: wire.Aught(1)},
			Allowed: units.Some(3 * units.Percent)},
		Power: units.Some(2000 * units.Watt), Ampacity: 285 * units.Ampere, Rated: units.Celsius(105), Ambient: units.Celsius(40),
	}
}

var warmChanges = map[string]func(*wire.WarmRun){
	"constant power":   func(*wire.WarmRun) {},
	"constant current": func(w *wire.WarmRun) { w.Power, w.Run.Current = units.None[units.Power](), 200*units.Ampere },
	"at its ampacity": func(w *wire.WarmRun) {
		w.Power, w.Run.Current, w.Ambient = units.None[units.Power](), 285, units.Temperature{}
	},
	"parallel": func(w *wire.WarmRun) {
		w.Power, w.Run.Parallel = units.Some(4000*units.Watt), 2
	},
	"chassis": func(w *wire.WarmRun) {
		w.Run.Chassis, w.Run.Contacts = units.Some(1*units.Milliohm), units.Some(1*units.Milliohm)
	},
	"Table 8":     func(w *wire.WarmRun) { w.Run.Conductor.Basis = units.Some(wire.FromNECTable8) },
	"aluminium":   func(w *wire.WarmRun) { w.Run.Conductor.Metal = wire.Aluminium },
	"copper-clad": func(w *wire.WarmRun) { w.Run.Conductor.Metal = wire.CopperClad },
	"metric":      func(w *wire.WarmRun) { w.Run.Conductor.Size = wire.Metric(50 * units.SquareMillimetre) },
	"handbook":    func(w *wire.WarmRun) { w.Run.Conductor.Basis = units.Some(wire.FromNBSHandbook100) },
}

func TestSheetWarmedDrop(t *testing.T) {
	for name, change := range warmChanges {
		t.Run(name, func(t *testing.T) {
			w := inverterRun()
			change(&w)
			d := must[wire.WarmedDrop](t)(wire.WarmDrop(w))
			unitstest.CheckSheet(t, d.Working())
		})
	}
}

func TestSheetWarmStep(t *testing.T) {
	for name, change := range warmChanges {
		t.Run(name, func(t *testing.T) {
			w := inverterRun()
			change(&w)
			d := must[wire.WarmedDrop](t)(wire.WarmDrop(w))
			for n := 1; n <= d.Steps; n++ {
				s, ok := d.Step(n)
				if !ok {
					t.Fatalf("no step %d of %d", n, d.Steps)
				}
				unitstest.CheckSheet(t, s.Working())
			}
		})
	}
}

// hourly makes a series of hours from midday.
func hourly[Q wire.CurrentOrPower](values ...Q) units.Series[Q] {
	return units.Series[Q]{Start: time.Date(2025, 7, 1, 12, 0, 0, 0, time.UTC), Step: time.Hour, Values: values}
}

func TestSheetLoss(t *testing.T) {
	for name, change := range loops {
		t.Run(name, func(t *testing.T) {
			r := lamp()
			change(&r)
			unitstest.CheckSheet(t, must[wire.Loss](t)(wire.EnergyLost(r, hourly[units.Current](0, 10, 20, 5))).Working())
			unitstest.CheckSheet(t, must[wire.Loss](t)(wire.EnergyLost(r, hourly[units.Power](0, 100, 150))).Working())
			unitstest.CheckSheet(t, must[wire.Loss](t)(wire.EnergyLost(r, hourly[units.Power](0, 0))).Working())
		})
	}
}

func TestSheetLossStep(t *testing.T) {
	for name, change := range loops {
		t.Run(name, func(t *testing.T) {
			r := lamp()
			change(&r)
			unitstest.CheckSheet(t, must[wire.LossStep](t)(wire.EnergyLostIn(r, hourly[units.Current](0, 10, 20, 5), 2)).Working())
			unitstest.CheckSheet(t, must[wire.LossStep](t)(wire.EnergyLostIn(r, hourly[units.Power](0, 100, 150), 1)).Working())
		})
	}
}

// terminal is a reading on both sides of a bad lug.
func terminal() wire.JointReading {
	return wire.JointReading{Before: 12.80 * units.Volt, After: 12.35 * units.Volt, Current: 30 * units.Ampere}
}

func TestSheetJoint(t *testing.T) {
	for name, change := range map[string]func(*wire.JointReading){
		"plain":   func(*wire.JointReading) {},
		"wire":    func(r *wire.JointReading) { r.Between = units.Some(2 * units.Milliohm) },
		"digits":  func(r *wire.JointReading) { r.Resolution = units.Some(10 * units.Millivolt) },
		"across":  func(r *wire.JointReading) { r.Before, r.After = 45*units.Millivolt, 0 },
		"nothing": func(r *wire.JointReading) { r.After = r.Before },
	} {
		t.Run(name, func(t *testing.T) {
			r := terminal()
			change(&r)
			unitstest.CheckSheet(t, must[wire.Joint](t)(wire.MeasureJoint(r)).Working())
		})
	}
}

// TestZeroDropResultsDoNotPanic asks empty results to explain themselves.
func TestZeroDropResultsDoNotPanic(t *testing.T) {
	for _, text := range []string{
		wire.MostCurrent{}.Working().Text(), wire.MetalMass{}.Working().Text(), wire.AlternatingDrop{}.Working().Text(),
		wire.Impedance{}.Working().Text(), wire.LegVoltages{}.Working().Text(), wire.FloatingNeutral{}.Working().Text(), wire.NeutralCurrent{}.Working().Text(),
		wire.WarmedDrop{}.Working().Text(), wire.WarmStep{}.Working().Text(), wire.Loss{}.Working().Text(),
		wire.LossStep{}.Working().Text(), wire.Joint{}.Working().Text(),
	} {
		if text == "" {
			t.Error("a zero result has no text")
		}
	}
	if n := len(wire.MostCurrent{}.Findings()) + len(wire.AlternatingDrop{}.Findings()) + len(wire.LegVoltages{}.Findings()) +
		len(wire.FloatingNeutral{}.Findings()) + len(wire.WarmedDrop{}.Findings()) + len(wire.Loss{}.Findings()) +
		len(wire.LossStep{}.Findings()) + len(wire.MetalMass{}.Findings()) + len(wire.Joint{}.Findings()); n < 9 {
		t.Errorf("zero results have %d findings", n)
	}
	if f := append(wire.Impedance{}.Findings(), wire.WarmStep{}.Findings()...); f != nil {
		t.Errorf("the zero Impedance and WarmStep have findings %v", f)
	}
}
