package wire_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// notAtLeastZero are numbers that no resistance may be.
var notAtLeastZero = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1}

// wantZero demands a range error for a field, and a result without content.
func wantZero[T comparable](t *testing.T, result T, err error, op, field string) {
	t.Helper()
	wantRangeError(t, err, op, field)
	var zero T
	if result != zero {
		t.Errorf("%s with a bad %s: result %+v, want the zero value", op, field, result)
	}
}

func TestLoopFieldsAreChecked(t *testing.T) {
	spoilt := func(field string, spoil func(*wire.Run)) {
		t.Helper()
		r := lamp()
		spoil(&r)
		d, err := wire.VoltageDrop(r)
		wantZero(t, d, err, "wire.VoltageDrop", field)
		x, err := wire.LongestRun(r)
		wantZero(t, x, err, "wire.LongestRun", field)
		s, err := wire.SmallestSize(r, wire.Gauges())
		wantZero(t, s, err, "wire.SmallestSize", field)
		m, err := wire.LargestCurrent(r)
		wantZero(t, m, err, "wire.LargestCurrent", field)
		l, err := wire.EnergyLost(r, hourly[units.Current](1))
		wantZero(t, l, err, "wire.EnergyLost", field)
		i, err := wire.EnergyLostIn(r, hourly[units.Current](1), 0)
		wantZero(t, i, err, "wire.EnergyLostIn", field)
	}
	for _, x := range notAtLeastZero {
		spoilt("Chassis", func(r *wire.Run) { r.Chassis = units.Some(units.Resistance(x)) })
		spoilt("Contacts", func(r *wire.Run) { r.Contacts = units.Some(units.Resistance(x)) })
	}
	for _, n := range []int{-1, 101} {
		spoilt("Parallel", func(r *wire.Run) { r.Parallel = n })
	}
	for _, x := range bad {
		spoilt("Source", func(r *wire.Run) { r.Source = units.Voltage(x) })
		spoilt("Allowed", func(r *wire.Run) { r.Allowed = units.Some(units.Ratio(x)) })
	}
	// An explicit zero is data.
	r := lamp()
	r.Chassis, r.Contacts, r.Parallel = units.Some(units.Resistance(0)), units.Some(units.Resistance(0)), 100
	if _, err := wire.VoltageDrop(r); err != nil {
		t.Error(err)
	}
}

func TestContactsThatTakeAllOfIt(t *testing.T) {
	r := lamp()
	r.Contacts = units.Some(1 * units.Ohm)
	_, err := wire.LongestRun(r)
	wantRangeError(t, err, "wire.LongestRun", "OneWay")
	_, err = wire.SmallestSize(r, wire.Gauges())
	wantRangeError(t, err, "wire.SmallestSize", "MaxPerLength")
}

func TestLargestCurrentRefuses(t *testing.T) {
	for _, x := range bad {
		r := lamp()
		r.OneWay = units.Length(x)
		m, err := wire.LargestCurrent(r)
		wantZero(t, m, err, "wire.LargestCurrent", "OneWay")
		l, err := wire.EnergyLost(r, hourly[units.Power](1))
		wantZero(t, l, err, "wire.EnergyLost", "OneWay")
	}
	r := lamp()
	r.Allowed = units.None[units.Ratio]()
	m, err := wire.LargestCurrent(r)
	wantZero(t, m, err, "wire.LargestCurrent", "Allowed")
	r = lamp()
	r.Conductor.Size = wire.Size{}
	m, err = wire.LargestCurrent(r)
	wantZero(t, m, err, "wire.LargestCurrent", "Size")
	r = lamp()
	r.Source = 1e300
	m, err = wire.LargestCurrent(r)
	wantZero(t, m, err, "wire.LargestCurrent", "Heat")
}

// TestBasisRefuses: what a basis has nothing for is refused and not guessed.
func TestBasisRefuses(t *testing.T) {
	metric := wire.Metric(16 * units.SquareMillimetre)
	for _, c := range []struct {
		what  string
		wrong wire.Conductor
		field string
	}{
		{"no such metal", wire.Conductor{Size: wire.AWG(10), Metal: 3}, "Metal"},
		{"no such metal, stated", wire.Conductor{Stated: units.Some(units.OhmPerKilofoot), Metal: 3}, "Metal"},
		{"no such basis", wire.Conductor{Size: wire.AWG(10), Basis: units.Some[wire.Basis](7)}, "Basis"},
		{"stated, and not given", wire.Conductor{Size: wire.AWG(10), Basis: units.Some(wire.FromStated)}, "Basis"},
		{"resistivity, and not given", wire.Conductor{Size: wire.AWG(10), Basis: units.Some(wire.FromResistivity)}, "Basis"},
		{"aluminium from copper", wire.Conductor{Size: wire.AWG(10), Metal: wire.Aluminium, Basis: units.Some(wire.FromCopper)}, "Metal"},
		{"copper from another metal", wire.Conductor{Size: wire.AWG(10), Basis: units.Some(wire.FromMetal)}, "Metal"},
		{"tinned from geometry", wire.Conductor{Size: wire.AWG(10), Coated: true}, "Coated"},
		{"fine strands from geometry", wire.Conductor{Size: metric, Strand: wire.Flexible, Basis: units.Some(wire.FromCopper)}, "Strand"},
		{"a gauge by IEC 60228", wire.Conductor{Size: wire.AWG(10), Basis: units.Some(wire.FromIEC60228)}, "Basis"},
		{"aluminium by IEC 60228", wire.Conductor{Size: metric, Metal: wire.Aluminium}, "Metal"},
		{"tinned solid by IEC 60228", wire.Conductor{Size: metric, Strand: wire.Solid, Coated: true}, "Coated"},
		{"copper-clad by Table 8", wire.Conductor{Size: wire.AWG(10), Metal: wire.CopperClad, Basis: units.Some(wire.FromNECTable8)}, "Metal"},
		{"coated aluminium by Table 8", wire.Conductor{Size: wire.AWG(10), Metal: wire.Aluminium, Coated: true, Basis: units.Some(wire.FromNECTable8)}, "Coated"},
		{"solid 6 AWG by Table 8", wire.Conductor{Size: wire.AWG(6), Strand: wire.Solid, Basis: units.Some(wire.FromNECTable8)}, "Strand"},
		{"20 AWG by Table 8", wire.Conductor{Size: wire.AWG(20), Basis: units.Some(wire.FromNECTable8)}, "Size"},
		{"odd gauge by Table 8", wire.Conductor{Size: wire.AWG(11), Basis: units.Some(wire.FromNECTable8)}, "Size"},
		{"metric by Table 8", wire.Conductor{Size: metric, Strand: wire.Solid, Basis: units.Some(wire.FromNECTable8)}, "Size"},
		{"aluminium by the handbook", wire.Conductor{Size: wire.AWG(10), Metal: wire.Aluminium, Basis: units.Some(wire.FromNBSHandbook100)}, "Metal"},
		{"tinned by the handbook", wire.Conductor{Size: wire.AWG(10), Coated: true, Basis: units.Some(wire.FromNBSHandbook100)}, "Coated"},
		{"21 AWG by the handbook", wire.Conductor{Size: wire.AWG(21), Basis: units.Some(wire.FromNBSHandbook100)}, "Size"},
		{"kcmil by the handbook", wire.Conductor{Size: wire.Kcmil(250), Basis: units.Some(wire.FromNBSHandbook100)}, "Size"},
		{"metric flexible by the handbook", wire.Conductor{Size: metric, Strand: wire.Flexible, Basis: units.Some(wire.FromNBSHandbook100)}, "Size"},
	} {
		t.Run(c.what, func(t *testing.T) {
			p, err := wire.Resistance(c.wrong)
			wantZero(t, p, err, "wire.Resistance", c.field)
		})
	}
}

func TestMassOfRefuses(t *testing.T) {
	for field, c := range map[string]wire.Conductor{
		"Size":   {},
		"Metal":  {Size: wire.Metric(16 * units.SquareMillimetre), Metal: wire.Aluminium},
		"Strand": {Size: wire.AWG(10), Strand: wire.Flexible},
		"Coated": {Size: wire.Metric(16 * units.SquareMillimetre), Strand: wire.Solid, Coated: true},
	} {
		m, err := wire.MassOf(c)
		wantZero(t, m, err, "wire.MassOf", field)
	}
}

func TestAppendLongestRunsRefuses(t *testing.T) {
	held := make([]wire.Reach, 1, 9)
	amps := []units.Current{1, 2}
	sizes := []wire.Size{wire.AWG(14), wire.AWG(10)}
	for field, ask := range map[string]func() ([]wire.Reach, error){
		"sizes":    func() ([]wire.Reach, error) { return wire.AppendLongestRuns(held, lamp(), nil, amps) },
		"currents": func() ([]wire.Reach, error) { return wire.AppendLongestRuns(held, lamp(), sizes, nil) },
		"Size": func() ([]wire.Reach, error) {
			return wire.AppendLongestRuns(held, lamp(), append(sizes, wire.Size{}), amps)
		},
		"Current": func() ([]wire.Reach, error) {
			return wire.AppendLongestRuns(held, lamp(), sizes, []units.Current{1, -1})
		},
	} {
		cells, err := ask()
		wantRangeError(t, err, "wire.AppendLongestRuns", field)
		if len(cells) != 1 {
			t.Errorf("%s: %d cells, want what was there", field, len(cells))
		}
	}
}

func TestACFieldsAreChecked(t *testing.T) {
	for field, spoil := range map[string]func(*wire.ACRun, float64){
		"Current":     func(r *wire.ACRun, x float64) { r.Current = units.Current(x) },
		"OneWay":      func(r *wire.ACRun, x float64) { r.OneWay = units.Length(x) },
		"Source":      func(r *wire.ACRun, x float64) { r.Source = units.Voltage(x) },
		"PowerFactor": func(r *wire.ACRun, x float64) { r.PowerFactor = units.Some(units.Ratio(x)) },
		"Allowed":     func(r *wire.ACRun, x float64) { r.Allowed = units.Some(units.Ratio(x)) },
	} {
		for _, x := range bad {
			r := roofUnit()
			spoil(&r, x)
			d, err := wire.ACDrop(r)
			wantZero(t, d, err, "wire.ACDrop", field)
		}
	}
	for field, spoil := range map[string]func(*wire.ACRun){
		"PowerFactor": func(r *wire.ACRun) { r.PowerFactor = units.Some[units.Ratio](1.01) },
		"Method":      func(r *wire.ACRun) { r.Method = 2 },
		"Parallel":    func(r *wire.ACRun) { r.Parallel = 101 },
		"Conduit":     func(r *wire.ACRun) { r.Line.Conduit = 3 },
		"Size":        func(r *wire.ACRun) { r.Line.Conductor.Size = wire.Size{} },
		"Temperature": func(r *wire.ACRun) { r.Line.Conductor.Temperature = units.Celsius(151) },
		"Metal":       func(r *wire.ACRun) { r.Line.Conductor.Metal = 9 },
		// not in Table 9
		"Reactance": func(r *wire.ACRun) { r.Line.Conductor.Size = wire.AWG(16) },
		"Coated":    func(r *wire.ACRun) { r.Line.Conductor.Coated = true },
		// nothing that a float64 holds
		"Heat": func(r *wire.ACRun) { r.Current, r.OneWay = 1e-200, 1e-200 },
		"Fraction": func(r *wire.ACRun) {
			r.Current, r.Source, r.PowerFactor, r.Line.Reactance = 1e200, 1e-200, units.None[units.Ratio](), units.Some(0*units.OhmPerMetre)
		},
	} {
		r := roofUnit()
		spoil(&r)
		d, err := wire.ACDrop(r)
		wantZero(t, d, err, "wire.ACDrop", field)
	}
	most := roofUnit()
	most.Parallel = 100
	if _, err := wire.ACDrop(most); err != nil {
		t.Error(err)
	}
	for _, x := range notAtLeastZero {
		a := roofUnit().Line
		a.Reactance = units.Some(units.ResistancePerLength(x))
		z, err := wire.ACImpedance(a)
		wantZero(t, z, err, "wire.ACImpedance", "Reactance")
	}
}

// TestNoExactDropBeyondTheSource: a current whose drop turns the voltage by
// more than there is has no answer, and the error says what current has one.
func TestNoExactDropBeyondTheSource(t *testing.T) {
	r := roofUnit()
	r.Current, r.PowerFactor = 5000*units.Ampere, units.Some(10*units.Percent)
	_, err := wire.ACDrop(r)
	wantRangeError(t, err, "wire.ACDrop", "Current")
	// The loop has 150 ft of 1.2 + j0.05 Ω/kft: 0.18 and 0.0075 Ω. At pf 0.1 the
	// sine is 0.99499, and 120 V over 0.1·0.0075 - 0.99499·0.18 Ω is 672.8 A.
	var e *units.RangeError
	if !errors.As(err, &e) {
		t.Fatal(err)
	}
	for i, ok := range map[units.Current]bool{672 * units.Ampere: true, 674 * units.Ampere: false} {
		r.Current = i
		if _, err := wire.ACDrop(r); (err == nil) != ok {
			t.Errorf("%v: %v, want an answer: %v", i, err, ok)
		}
		if b, isBounds := e.Allowed.(units.Bounds[units.Current]); !isBounds || b.Contains(i) != ok {
			t.Errorf("%v is allowed by %v, want %v", i, e.Allowed, ok)
		}
	}
}

func TestLegFieldsAreChecked(t *testing.T) {
	for field, spoil := range map[string]func(*wire.LegRun){
		"Currents.A":     func(r *wire.LegRun) { r.Currents.A = -1 },
		"Currents.B":     func(r *wire.LegRun) { r.Currents.B = units.Current(math.NaN()) },
		"Currents":       func(r *wire.LegRun) { r.Currents = units.Legs[units.Current]{} },
		"PowerFactors.A": func(r *wire.LegRun) { r.PowerFactors.A = 1.1 },
		"PowerFactors.B": func(r *wire.LegRun) { r.PowerFactors.B = -0.5 },
		"Supply":         func(r *wire.LegRun) { r.Supply = 3 },
		"OneWay":         func(r *wire.LegRun) { r.OneWay = 0 },
		"Source":         func(r *wire.LegRun) { r.Source = units.Voltage(math.Inf(1)) },
		"Allowed":        func(r *wire.LegRun) { r.Allowed = units.Some[units.Ratio](1) },
		"Size":           func(r *wire.LegRun) { r.Line.Conductor.Size = wire.Size{} },
		"Reactance":      func(r *wire.LegRun) { r.Neutral.Conductor.Size = wire.AWG(18) },
		"Heat":           func(r *wire.LegRun) { r.Currents.A = 1e200 },
		"Fraction":       func(r *wire.LegRun) { r.Currents.A, r.OneWay, r.Source = 1e100, 1e60, 1e-300 },
	} {
		r := panel()
		spoil(&r)
		v, err := wire.LegDrop(r)
		wantZero(t, v, err, "wire.LegDrop", field)
	}
}

func TestWarmFieldsAreChecked(t *testing.T) {
	for field, spoil := range map[string]func(*wire.WarmRun){
		"Power":       func(w *wire.WarmRun) { w.Power = units.Some(units.Power(0)) },
		"Current":     func(w *wire.WarmRun) { w.Run.Current = 1 },
		"Source":      func(w *wire.WarmRun) { w.Run.Source = 0 },
		"OneWay":      func(w *wire.WarmRun) { w.Run.OneWay = 0 },
		"Temperature": func(w *wire.WarmRun) { w.Run.Conductor.Temperature = units.Celsius(20) },
		"Stated":      func(w *wire.WarmRun) { w.Run.Conductor.Stated = units.Some(units.OhmPerKilofoot) },
		"Resistivity": func(w *wire.WarmRun) { w.Run.Conductor.Resistivity = units.Some(units.OhmCircularMilPerFoot) },
		"Size":        func(w *wire.WarmRun) { w.Run.Conductor.Size = wire.Size{} },
		"Ampacity":    func(w *wire.WarmRun) { w.Ampacity = 0 },
		"Base":        func(w *wire.WarmRun) { w.Base = units.Celsius(-41) },
		"Ambient":     func(w *wire.WarmRun) { w.Ambient = units.Celsius(151) },
		"Rated":       func(w *wire.WarmRun) { w.Rated = units.Temperature{} },
		"Chassis":     func(w *wire.WarmRun) { w.Run.Chassis = units.Some(units.Resistance(-1)) },
	} {
		w := inverterRun()
		spoil(&w)
		d, err := wire.WarmDrop(w)
		wantZero(t, d, err, "wire.WarmDrop", field)
	}
	for _, rated := range []float64{30, 20, 151, math.NaN()} {
		w := inverterRun()
		w.Rated = units.Celsius(rated)
		d, err := wire.WarmDrop(w)
		wantZero(t, d, err, "wire.WarmDrop", "Rated")
	}
	w := inverterRun()
	w.Power = units.None[units.Power]()
	d, err := wire.WarmDrop(w)
	wantZero(t, d, err, "wire.WarmDrop", "Current")
}

// TestWarmDropHasNoEnd: a conductor beyond 150 °C, and a load beyond what the
// cable can feed, are errors and no results.
func TestWarmDropHasNoEnd(t *testing.T) {
	w := inverterRun()
	w.Power, w.Run.Current = units.None[units.Power](), 500*units.Ampere
	d, err := wire.WarmDrop(w)
	wantZero(t, d, err, "wire.WarmDrop", "Temperature")
	w = inverterRun()
	w.Run.OneWay, w.Power = 60*units.Foot, units.Some(2900*units.Watt)
	d, err = wire.WarmDrop(w)
	wantZero(t, d, err, "wire.WarmDrop", "Power")
	w = inverterRun()
	w.Run.Current, w.Power, w.Ampacity, w.Run.OneWay = 1e-200, units.None[units.Power](), 1e-190, 1e-200
	d, err = wire.WarmDrop(w)
	wantZero(t, d, err, "wire.WarmDrop", "Heat")
}

func TestEnergyLostRefuses(t *testing.T) {
	x, err := wire.EnergyLost(lamp(), hourly[units.Current]())
	wantZero(t, x, err, "wire.EnergyLost", "load")
	for _, wrong := range []float64{-1, math.NaN(), math.Inf(1), 1e9} {
		x, err := wire.EnergyLost(lamp(), hourly(1*units.Ampere, units.Current(wrong), 1))
		wantZero(t, x, err, "wire.EnergyLost", "load.Values[1]")
		x, err = wire.EnergyLost(lamp(), hourly(1*units.Watt, 2, units.Power(wrong)))
		wantZero(t, x, err, "wire.EnergyLost", "load.Values[2]")
		s, err := wire.EnergyLostIn(lamp(), hourly(units.Power(wrong)), 0)
		wantZero(t, s, err, "wire.EnergyLostIn", "load.Values[0]")
	}
	// The most that the loop can carry, and no more.
	d := must[wire.Drop](t)(wire.VoltageDrop(lamp()))
	most := lamp().Source.Across(d.Resistance)
	for factor, ok := range map[units.Ratio]bool{0.999: true, 1.001: false} {
		if _, err := wire.EnergyLost(lamp(), hourly(units.Scale(most, factor))); (err == nil) != ok {
			t.Errorf("%v of the short-circuit current: %v", factor, err)
		}
		if _, err := wire.EnergyLost(lamp(), hourly(units.Scale(most.At(lamp().Source), factor/4))); (err == nil) != ok {
			t.Errorf("%v of the greatest power: %v", factor, err)
		}
	}
	for _, i := range []int{-1, 2} {
		s, err := wire.EnergyLostIn(lamp(), hourly[units.Current](1, 2), i)
		wantZero(t, s, err, "wire.EnergyLostIn", "i")
	}
	noSize := lamp()
	noSize.Conductor = wire.Conductor{}
	x, err = wire.EnergyLost(noSize, hourly[units.Current](1))
	wantZero(t, x, err, "wire.EnergyLost", "Size")
	unusable := hourly[units.Current](1)
	unusable.Step = -time.Second
	x, err = wire.EnergyLost(lamp(), unusable)
	if err == nil || x != (wire.Loss{}) {
		t.Errorf("a series of negative steps: %v", err)
	}
	huge := lamp()
	huge.Source = 1e300
	x, err = wire.EnergyLost(huge, hourly[units.Current](1e300))
	wantZero(t, x, err, "wire.EnergyLost", "FromSource")
	s, err := wire.EnergyLostIn(huge, hourly[units.Current](1e300), 0)
	wantZero(t, s, err, "wire.EnergyLostIn", "Lost")
}

func TestJointIsChecked(t *testing.T) {
	for field, spoil := range map[string]func(*wire.JointReading, float64){
		"Before":     func(r *wire.JointReading, x float64) { r.Before = units.Voltage(x) },
		"Current":    func(r *wire.JointReading, x float64) { r.Current = units.Current(x) },
		"Resolution": func(r *wire.JointReading, x float64) { r.Resolution = units.Some(units.Voltage(x)) },
	} {
		for _, x := range bad {
			r := terminal()
			spoil(&r, x)
			j, err := wire.MeasureJoint(r)
			wantZero(t, j, err, "wire.MeasureJoint", field)
		}
	}
	for _, x := range append(notAtLeastZero, 12.9) {
		r := terminal()
		r.After = units.Voltage(x)
		j, err := wire.MeasureJoint(r)
		wantZero(t, j, err, "wire.MeasureJoint", "After")
	}
	// 0.45 V at 30 A are 15 mΩ: no wire between the probes can have more.
	for _, x := range append(notAtLeastZero, 0.0151) {
		r := terminal()
		r.Between = units.Some(units.Resistance(x))
		j, err := wire.MeasureJoint(r)
		wantZero(t, j, err, "wire.MeasureJoint", "Between")
	}
	for field, r := range map[string]wire.JointReading{
		"Heat":       {Before: 1e200, Current: 1e200},
		"Resistance": {Before: 1e200, Current: 1e-200},
	} {
		j, err := wire.MeasureJoint(r)
		wantZero(t, j, err, "wire.MeasureJoint", field)
	}
}
