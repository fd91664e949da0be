package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// laws fails the test for each law that does not hold.
func laws(t *testing.T, all map[string]func() bool) {
	t.Helper()
	for law, holds := range all {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

func equal[Q units.Quantity](a, b Q) bool { return units.Compare(a, b) == 0 }

func TestLoopLaws(t *testing.T) {
	dropOf := func(change func(*wire.Run)) wire.Drop {
		r := lamp()
		change(&r)
		return must[wire.Drop](t)(wire.VoltageDrop(r))
	}
	base := dropOf(func(*wire.Run) {})
	laws(t, map[string]func() bool{
		"not given, one conductor each way": func() bool { return dropOf(func(r *wire.Run) { r.Parallel = 1 }) == base && base.Run.Parallel == 1 },
		"n conductors side by side drop an nth": func() bool {
			return equal(dropOf(func(r *wire.Run) { r.Parallel = 3 }).Voltage, base.Voltage/3)
		},
		"a chassis of the wire's resistance changes nothing": func() bool {
			d := dropOf(func(r *wire.Run) { r.Chassis = units.Some(base.Resistance / 2) })
			return equal(d.Voltage, base.Voltage) && equal(d.Loop, r15())
		},
		"a perfect chassis halves the drop": func() bool {
			return equal(dropOf(func(r *wire.Run) { r.Chassis = units.Some(units.Resistance(0)) }).Voltage, base.Voltage/2)
		},
		"contacts add what they have": func() bool {
			d := dropOf(func(r *wire.Run) { r.Contacts = units.Some(5 * units.Milliohm) })
			return equal(d.Voltage-base.Voltage, 0.1*units.Volt)
		},
		"the largest current drops what is allowed, whatever the loop": func() bool {
			for _, change := range loops {
				r := lamp()
				change(&r)
				m := must[wire.MostCurrent](t)(wire.LargestCurrent(r))
				d := must[wire.Drop](t)(wire.VoltageDrop(m.Run))
				if !equal(d.Fraction, 3*units.Percent) || !equal(m.Heat, d.Heat) || m.Current != m.Run.Current {
					return false
				}
			}
			return true
		},
		"the largest current does not look at the current": func() bool {
			r := lamp()
			a := must[wire.MostCurrent](t)(wire.LargestCurrent(r))
			r.Current = -1
			return must[wire.MostCurrent](t)(wire.LargestCurrent(r)) == a
		},
		"the longest run drops what is allowed, whatever the loop": func() bool {
			for _, change := range loops {
				r := lamp()
				change(&r)
				r.Current = 2 * units.Ampere
				x := must[wire.Reach](t)(wire.LongestRun(r))
				if !equal(must[wire.Drop](t)(wire.VoltageDrop(x.Run)).Fraction, 3*units.Percent) {
					return false
				}
			}
			return true
		},
		"the smallest size keeps the drop and the one below does not, whatever the loop": func() bool {
			for _, change := range loops {
				r := lamp()
				change(&r)
				s := must[wire.Selection](t)(wire.SmallestSize(r, wire.Gauges()))
				r.Conductor.Size = s.Below.Conductor.Size
				below := must[wire.Drop](t)(wire.VoltageDrop(r))
				if units.Exceeds(s.Drop.Fraction, 3*units.Percent) || !units.Exceeds(below.Fraction, 3*units.Percent) {
					return false
				}
			}
			return true
		},
	})
}

// TestBelowIsTheNextSmaller, of a list in any order.
func TestBelowIsTheNextSmaller(t *testing.T) {
	for _, list := range [][]wire.Size{
		{wire.AWG(16), wire.AWG(8), wire.AWG(4), wire.AWG(18), wire.AWG(6)}, {wire.AWG(6), wire.AWG(8), wire.AWG(16), wire.AWG(18)},
	} {
		s := must[wire.Selection](t)(wire.SmallestSize(lamp(), list))
		if s.Run.Conductor.Size != wire.AWG(6) || s.Below.Conductor.Size != wire.AWG(8) {
			t.Errorf("of %v: %v, below it %v", list, s.Run.Conductor.Size, s.Below.Conductor.Size)
		}
	}
}

// r15 is the one-way length of the lamp.
func r15() units.Length { return 15 * units.Foot }

func TestLongestRunsAreTheLongest(t *testing.T) {
	sizes, currents := wire.Gauges(), []units.Current{1, 5, 20, 100}
	room := make([]wire.Reach, 0, len(sizes)*len(currents)+1)
	room = append(room, wire.Reach{})
	cells := must[[]wire.Reach](t)(wire.AppendLongestRuns(room, lamp(), sizes, currents))
	if len(cells) != 1+len(sizes)*len(currents) || cells[0] != (wire.Reach{}) {
		t.Fatalf("%d cells", len(cells))
	}
	for i, x := range cells[1:] {
		r := lamp()
		r.Conductor.Size, r.Current = sizes[i/len(currents)], currents[i%len(currents)]
		if want := must[wire.Reach](t)(wire.LongestRun(r)); x != want {
			t.Errorf("%v, %v: %+v, want %+v", r.Conductor.Size, r.Current, x, want)
		}
	}
	if n := testing.AllocsPerRun(10, func() { _, _ = wire.AppendLongestRuns(room, lamp(), sizes, currents) }); n != 0 {
		t.Errorf("a table with room allocates %v times", n)
	}
}

// TestBasesDiffer: each table in print has a reason to differ, and differs by
// what that reason is worth.
func TestBasesDiffer(t *testing.T) {
	perLength := func(c wire.Conductor) units.ResistancePerLength {
		c.Size = wire.AWG(12)
		return must[wire.PerLength](t)(wire.Resistance(c)).At
	}
	cold, warm := units.Celsius(20), units.Celsius(75)
	handbook, table8 := units.Some(wire.FromNBSHandbook100), units.Some(wire.FromNECTable8)
	for _, c := range []struct {
		what        string
		more, less  wire.Conductor
		from, below float64
	}{
		{"55 K warmer", wire.Conductor{Basis: handbook, Temperature: warm}, wire.Conductor{Basis: handbook, Temperature: cold}, 1.216, 1.217},
		{"2 % of lay", wire.Conductor{Basis: handbook}, wire.Conductor{Basis: handbook, Strand: wire.Solid}, 1.0199, 1.0201},
		{"rounding of Table 8", wire.Conductor{Basis: table8}, wire.Conductor{}, 1, 1.006},
		{"rounding of the handbook", wire.Conductor{Basis: handbook}, wire.Conductor{}, 0.9998, 1.0002},
		{"tin", wire.Conductor{Basis: table8, Coated: true}, wire.Conductor{Basis: table8}, 1.03, 1.04},
		{"aluminium", wire.Conductor{Metal: wire.Aluminium}, wire.Conductor{}, 1.60, 1.66},
		{"copper-clad aluminium", wire.Conductor{Metal: wire.CopperClad}, wire.Conductor{}, 1.5, 1.6},
	} {
		if ratio := float64(perLength(c.more) / perLength(c.less)); !(c.from <= ratio && ratio < c.below) {
			t.Errorf("%s: %v times, want %v to %v", c.what, ratio, c.from, c.below)
		}
	}
	// 25 mm² by its limit and by its name: the name has 5 % more copper, and the
	// working temperature does not change that.
	metric := wire.Conductor{Size: wire.Metric(25 * units.SquareMillimetre)}
	limit := must[wire.PerLength](t)(wire.Resistance(metric))
	metric.Basis = units.Some(wire.FromCopper)
	name := must[wire.PerLength](t)(wire.Resistance(metric))
	if ratio := float64(limit.At / name.At); !(1.02 < ratio && ratio < 1.06) {
		t.Errorf("the limit is %v times what the name says", ratio)
	}
}

func TestMassLaws(t *testing.T) {
	mass := func(c wire.Conductor) units.MassPerLength { return must[wire.MetalMass](t)(wire.MassOf(c)).PerLength }
	laws(t, map[string]func() bool{
		"each larger gauge weighs more": func() bool {
			last := units.MassPerLength(0)
			for _, size := range wire.Gauges() {
				m := mass(wire.Conductor{Size: size})
				if !(m > last) {
					return false
				}
				last = m
			}
			return true
		},
		"each larger metric size weighs more, and less than its name": func() bool {
			last := units.MassPerLength(0)
			for _, size := range wire.MetricSizes() {
				m := mass(wire.Conductor{Size: size})
				if !(m > last) || !(units.In(m, units.GramPerMetre) < 8.89*1.02*units.In(size.Area(), units.SquareMillimetre)) {
					return false
				}
				last = m
			}
			return true
		},
		"aluminium weighs less than a third": func() bool {
			return 3*mass(wire.Conductor{Size: wire.AWG(2), Metal: wire.Aluminium}) < mass(wire.Conductor{Size: wire.AWG(2)})
		},
		"what only resistance asks does not change it": func() bool {
			return mass(wire.Conductor{Size: wire.AWG(2), Temperature: units.Celsius(999), Coated: true,
				Basis: units.Some(wire.FromNECTable8)}) == mass(wire.Conductor{Size: wire.AWG(2)})
		},
	})
}

func TestACLaws(t *testing.T) {
	dropOf := func(change func(*wire.ACRun)) wire.AlternatingDrop {
		r := roofUnit()
		change(&r)
		return must[wire.AlternatingDrop](t)(wire.ACDrop(r))
	}
	base := dropOf(func(*wire.ACRun) {})
	laws(t, map[string]func() bool{
		"without reactance and with pf 1 it is direct current": func() bool {
			d := dropOf(func(r *wire.ACRun) {
				r.PowerFactor, r.Line.Reactance = units.None[units.Ratio](), units.Some(0*units.OhmPerMetre)
				r.Line.Conductor.Basis = units.Some(wire.FromCopper)
			})
			dc := must[wire.Drop](t)(wire.VoltageDrop(wire.Run{Current: 14 * units.Ampere, OneWay: 75 * units.Foot,
				Source: 120 * units.Volt, Conductor: wire.Conductor{Size: wire.AWG(10)}}))
			return equal(d.Exact, dc.Voltage) && equal(d.Approximate, dc.Voltage) && equal(d.Heat, dc.Heat) && d.Quadrature == 0
		},
		"the method chooses which drop is judged, and nothing else": func() bool {
			d := dropOf(func(r *wire.ACRun) { r.Method = wire.ACApproximate })
			return d.Voltage == base.Approximate && base.Voltage == base.Exact && d.Exact == base.Exact
		},
		"the approximate drop is never above the exact one, nor that above the phasor": func() bool {
			for pf := units.Ratio(0.05); pf <= 1; pf += 0.05 {
				for _, leading := range []bool{false, true} {
					d := dropOf(func(r *wire.ACRun) { r.PowerFactor, r.Leading = units.Some(pf), leading })
					if units.Exceeds(d.Approximate, d.Exact) || units.Exceeds(d.Exact, d.Phasor) {
						return false
					}
				}
			}
			return true
		},
		"a leading current in a reactive line raises the voltage": func() bool {
			d := dropOf(func(r *wire.ACRun) {
				r.Line.Conductor.Size, r.PowerFactor, r.Leading = wire.Kcmil(500), units.Some[units.Ratio](0.1), true
			})
			return d.Voltage < 0 && d.AtLoad > d.Run.Source
		},
		"two side by side drop half": func() bool {
			d := dropOf(func(r *wire.ACRun) { r.Parallel = 2 })
			return equal(d.Approximate, base.Approximate/2)
		},
		"warmer resists more and reacts the same": func() bool {
			d := dropOf(func(r *wire.ACRun) { r.Line.Conductor.Temperature = units.Celsius(90) })
			return equal(d.Resistance, units.Scale(base.Resistance, 1+0.00323*15)) && d.Reactance == base.Reactance
		},
		"75 °C said is 75 °C not said": func() bool {
			return dropOf(func(r *wire.ACRun) { r.Line.Conductor.Temperature = units.Celsius(75) }) == base
		},
		"a power factor that settles to one is one": func() bool {
			d := dropOf(func(r *wire.ACRun) { r.PowerFactor = units.Some[units.Ratio](1 + 1e-12) })
			return d.SinPhi == 0 && d == dropOf(func(r *wire.ACRun) { r.PowerFactor = units.Some[units.Ratio](1) })
		},
	})
}

// exactTwin finds the voltage at a load by bisection: the one that, with the
// drop of its own phasor added, makes the source.
func exactTwin(r, x, amperes, pf, source float64) float64 {
	current := complex(amperes*pf, -amperes*math.Sqrt(1-pf*pf))
	drop := current * complex(r, x)
	low, high := 0.0, 2*source
	for range 200 {
		mid := (low + high) / 2
		if v := complex(mid, 0) + drop; math.Hypot(real(v), imag(v)) > source {
			high = mid
		} else {
			low = mid
		}
	}
	return source - low
}

// TestExactDropAgainstBisection also takes the cases of the reference, which
// were worked independently from the values of NEC Table 9.
func TestExactDropAgainstBisection(t *testing.T) {
	for _, c := range []struct {
		amperes, pf, feet, r, x, volts float64
		approximate, exact             float64 // V
	}{
		{30, 1, 100, 1.2, 0.05, 120, 7.2, 7.200375},
		{30, 0.85, 100, 1.2, 0.05, 120, 6.278035, 6.330197},
		{50, 0.9, 150, 0.49, 0.051, 240, 6.948456, 6.961637},
		{12, 0.8, 50, 2, 0.054, 120, 1.95888, 1.966909},
		{100, 0.85, 300, 0.2, 0.044, 240, 11.590706, 11.625344},
		{16, 1, 75, 3.1, 0.058, 120, 7.44, 7.440081},
	} {
		d := must[wire.AlternatingDrop](t)(wire.ACDrop(wire.ACRun{
			Current: units.Current(c.amperes), OneWay: units.Scale(units.Foot, units.Ratio(c.feet)), Source: units.Voltage(c.volts),
			PowerFactor: units.Some(units.Ratio(c.pf)),
			Line: wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(units.Scale(units.OhmPerKilofoot, units.Ratio(c.r)))},
				Reactance: units.Some(units.Scale(units.OhmPerKilofoot, units.Ratio(c.x)))}}))
		twin := exactTwin(2*c.r*c.feet/1000, 2*c.x*c.feet/1000, c.amperes, c.pf, c.volts)
		if math.Abs(float64(d.Exact)-twin) > 1e-9 {
			t.Errorf("%+v: exact %v, by bisection %v", c, d.Exact, twin)
		}
		if math.Abs(float64(d.Exact)-c.exact) > 0.5e-6 || math.Abs(float64(d.Approximate)-c.approximate) > 0.5e-6 {
			t.Errorf("%+v: %v and %v", c, d.Approximate, d.Exact)
		}
	}
}

// legTwin solves two legs with complex numbers.
func legTwin(a, b, pfA, pfB, degrees, r, x, rn, xn, e float64) (va, vb, in float64) {
	at := func(size, degrees float64) complex128 {
		return complex(size*math.Cos(degrees*math.Pi/180), size*math.Sin(degrees*math.Pi/180))
	}
	lag := func(pf float64) float64 { return math.Acos(pf) * 180 / math.Pi }
	ia, ib := at(a, -lag(pfA)), at(b, degrees-lag(pfB))
	n := ia + ib
	ha, hb := ia, ib
	if degrees == 0 {
		ha, hb = n, n
	}
	size := func(z complex128) float64 { return math.Hypot(real(z), imag(z)) }
	return size(at(e, 0) - ha*complex(r, x) - n*complex(rn, xn)), size(at(e, degrees) - hb*complex(r, x) - n*complex(rn, xn)), size(n)
}

// TestLegs takes the cases of the reference, worked from Kirchhoff's law, and
// a twin in complex numbers.
func TestLegs(t *testing.T) {
	degrees := map[wire.LegSupply]float64{wire.SplitPhase: 180, wire.NetworkLegs: 120, wire.OneHot: 0}
	for _, c := range []struct {
		a, b, pfA, pfB float64
		supply         wire.LegSupply
		neutral        float64
	}{
		{40, 40, 1, 1, wire.SplitPhase, 0},
		{40, 25, 1, 1, wire.SplitPhase, 15},
		{50, 0, 1, 1, wire.SplitPhase, 50},
		{30, 30, 1, 0.8, wire.SplitPhase, 18.973666},
		{30, 25, 1, 1, wire.OneHot, 55},
		{40, 40, 1, 1, wire.NetworkLegs, 40},
		{40, 25, 1, 1, wire.NetworkLegs, 35},
	} {
		v := must[wire.LegVoltages](t)(wire.LegDrop(wire.LegRun{
			Currents:     units.Legs[units.Current]{A: units.Current(c.a), B: units.Current(c.b)},
			PowerFactors: units.Legs[units.Ratio]{A: units.Ratio(c.pfA), B: units.Ratio(c.pfB)}, Supply: c.supply,
			OneWay: 1 * units.Metre, Source: 120 * units.Volt,
			Line: wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(0.05 * units.OhmPerMetre)},
				Reactance: units.Some(0.01 * units.OhmPerMetre)},
			Neutral: wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(0.08 * units.OhmPerMetre)},
				Reactance: units.Some(0.02 * units.OhmPerMetre)}}))
		va, vb, in := legTwin(c.a, c.b, c.pfA, c.pfB, degrees[c.supply], 0.05, 0.01, 0.08, 0.02, 120)
		if math.Abs(float64(v.InNeutral)-c.neutral) > 0.5e-6 || math.Abs(float64(v.InNeutral)-in) > 1e-9 ||
			math.Abs(float64(v.AtLoad.A)-va) > 1e-9 || math.Abs(float64(v.AtLoad.B)-vb) > 1e-9 {
			t.Errorf("%+v: %v in the neutral, %v; twin %v, %v, %v", c, v.InNeutral, v.AtLoad, in, va, vb)
		}
	}
	// Legs of 0.05 Ω in every conductor, and no reactance.
	for b, want := range map[units.Current]units.Legs[units.Voltage]{40: {A: 118, B: 118}, 20: {A: 117, B: 120}, 0: {A: 116, B: 122}} {
		v := must[wire.LegVoltages](t)(wire.LegDrop(wire.LegRun{Currents: units.Legs[units.Current]{A: 40 * units.Ampere, B: b},
			OneWay: 1 * units.Metre, Source: 120 * units.Volt,
			Line: wire.ACConductor{Conductor: wire.Conductor{Stated: units.Some(0.05 * units.OhmPerMetre)}, Reactance: units.Some(0 * units.OhmPerMetre)}}))
		if !equal(v.AtLoad.A, want.A) || !equal(v.AtLoad.B, want.B) || !equal(v.LineLine, want.Total()) {
			t.Errorf("40 A and %v: %v and %v between, want %v", b, v.AtLoad, v.LineLine, want)
		}
	}
}

func TestLegLaws(t *testing.T) {
	dropOf := func(change func(*wire.LegRun)) wire.LegVoltages {
		r := panel()
		change(&r)
		return must[wire.LegVoltages](t)(wire.LegDrop(r))
	}
	laws(t, map[string]func() bool{
		"legs may be swapped on opposite legs": func() bool {
			a, b := dropOf(func(*wire.LegRun) {}), dropOf(func(r *wire.LegRun) {
				r.Currents = units.Legs[units.Current]{A: r.Currents.B, B: r.Currents.A}
			})
			return equal(a.AtLoad.A, b.AtLoad.B) && equal(a.AtLoad.B, b.AtLoad.A) && equal(a.Heat, b.Heat)
		},
		"balanced legs are a 240 V run": func() bool {
			v := dropOf(func(r *wire.LegRun) { r.Currents.B = r.Currents.A })
			d := must[wire.AlternatingDrop](t)(wire.ACDrop(wire.ACRun{Current: 40 * units.Ampere, OneWay: 100 * units.Foot,
				Source: 240 * units.Volt, Line: panel().Line}))
			return v.InNeutral == 0 && math.Abs(float64(v.LineLine-d.AtLoad)) < 1e-3 && equal(v.Heat, d.Heat)
		},
		"one leg alone is a 120 V run": func() bool {
			v := dropOf(func(r *wire.LegRun) { r.Currents.B = 0 })
			d := must[wire.AlternatingDrop](t)(wire.ACDrop(wire.ACRun{Current: 40 * units.Ampere, OneWay: 100 * units.Foot,
				Source: 120 * units.Volt, Line: panel().Line}))
			return math.Abs(float64(v.AtLoad.A-d.AtLoad)) < 1e-2 && v.AtLoad.B > 120*units.Volt && equal(v.Heat, d.Heat)
		},
		"a power factor not given is one": func() bool {
			return dropOf(func(*wire.LegRun) {}) == dropOf(func(r *wire.LegRun) { r.PowerFactors = units.Legs[units.Ratio]{A: 1, B: 1} })
		},
		"a neutral not given is like the line": func() bool {
			return dropOf(func(*wire.LegRun) {}) == dropOf(func(r *wire.LegRun) { r.Neutral = r.Line })
		},
		"energy is kept: what the sources give at pf 1 is loads and heat": func() bool {
			v := dropOf(func(r *wire.LegRun) { r.Line.Reactance = units.Some(0 * units.OhmPerMetre) })
			given := v.Run.Currents.Total().At(v.Run.Source)
			return equal(given, v.Run.Currents.A.At(v.AtLoad.A)+v.Run.Currents.B.At(v.AtLoad.B)+v.Heat)
		},
	})
}
