package wire_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// fuzzConductor makes a conductor from raw numbers.
func fuzzConductor(gauge int, metal, basis, flags uint8, celsius float64) wire.Conductor {
	c := wire.Conductor{Size: wire.AWG(gauge), Metal: wire.Metal(metal % 4), Strand: wire.Strand(flags & 3), Coated: flags&4 != 0}
	if flags&8 != 0 {
		c.Temperature = units.Celsius(celsius)
	}
	if flags&16 != 0 {
		c.Basis = units.Some(wire.Basis(basis % 8))
	}
	if sizes := wire.MetricSizes(); flags&32 != 0 {
		c.Size = sizes[uint(gauge)%uint(len(sizes))]
	}
	return c
}

func FuzzMassOf(f *testing.F) {
	f.Add(10, uint8(0), uint8(0), uint8(0), 20.0)
	f.Add(3, uint8(0), uint8(1), uint8(2|4|32), 20.0)
	f.Add(99, uint8(3), uint8(7), uint8(255), math.NaN())
	f.Fuzz(func(t *testing.T, gauge int, metal, basis, flags uint8, celsius float64) {
		c := fuzzConductor(gauge, metal, basis, flags, celsius)
		m, err := wire.MassOf(c)
		checkOutcome(t, err, float64(m.PerLength), float64(m.Area))
		_, _ = m.Working().Text(), m.Findings()
		p, err := wire.Resistance(c)
		checkOutcome(t, err, float64(p.At))
		_, _ = p.Working().Text(), p.Findings()
	})
}

func FuzzLargestCurrent(f *testing.F) {
	f.Add(15.0, 12.8, 0.03, 0.001, 0.002, 2, 10, uint8(3))
	f.Add(math.NaN(), math.Inf(1), 0.0, -1.0, 1e308, -1, 99, uint8(255))
	f.Fuzz(func(t *testing.T, oneWay, source, allowed, chassis, contacts float64, parallel, gauge int, flags uint8) {
		r := wire.Run{OneWay: units.Length(oneWay), Source: units.Voltage(source), Parallel: parallel,
			Allowed: units.Some(units.Ratio(allowed)), Conductor: wire.Conductor{Size: wire.AWG(gauge)}}
		if flags&1 != 0 {
			r.Chassis = units.Some(units.Resistance(chassis))
		}
		if flags&2 != 0 {
			r.Contacts = units.Some(units.Resistance(contacts))
		}
		m, err := wire.LargestCurrent(r)
		checkOutcome(t, err, float64(m.Current), float64(m.Heat), float64(m.Resistance))
		_, _ = m.Working().Text(), m.Findings()
		if err != nil {
			return
		}
		if d, err := wire.VoltageDrop(m.Run); err == nil && !toNoise(d.Voltage, m.Voltage) {
			t.Fatalf("the largest current %v drops %v, not %v", m.Current, d.Voltage, m.Voltage)
		}
		if x, err := wire.LongestRun(m.Run); err == nil && r.Chassis.Or(0)+r.Contacts.Or(0) == 0 && !toNoise(x.OneWay, r.OneWay) {
			t.Fatalf("with the largest current %v the longest run is %v, not %v", m.Current, x.OneWay, r.OneWay)
		}
	})
}

func FuzzACDrop(f *testing.F) {
	f.Add(14.0, 22.0, 120.0, 0.85, 0.0001, 75.0, 10, 1, uint8(0))
	f.Add(100.0, 90.0, 240.0, 0.5, 0.1, 30.0, 0, 2, uint8(255))
	f.Add(math.NaN(), math.Inf(1), -1.0, 2.0, -1.0, 999.0, 99, -1, uint8(63))
	f.Add(1e200, 1e200, 1e-200, 1e-200, 1e200, 20.0, 10, 0, uint8(4))
	f.Fuzz(func(t *testing.T, current, oneWay, source, pf, reactance, celsius float64, gauge, parallel int, flags uint8) {
		r := wire.ACRun{Current: units.Current(current), OneWay: units.Length(oneWay), Source: units.Voltage(source), Parallel: parallel,
			Leading: flags&1 != 0, Method: wire.ACMethod(flags >> 1 & 3), PowerFactor: units.Some(units.Ratio(pf)),
			Line: wire.ACConductor{Conductor: fuzzConductor(gauge, flags>>3, 0, flags&12, celsius), Conduit: wire.Conduit(flags >> 5 & 3)}}
		if flags&16 != 0 {
			r.Line.Reactance = units.Some(units.ResistancePerLength(reactance))
		}
		d, err := wire.ACDrop(r)
		checkOutcome(t, err, float64(d.Heat), float64(d.Resistance))
		_, _ = d.Working().Text(), d.Findings()
		if err != nil {
			return
		}
		if units.Exceeds(d.Approximate, d.Exact) {
			t.Fatalf("the approximate drop %v is above the exact one %v", d.Approximate, d.Exact)
		}
		z, err := wire.ACImpedance(r.Line)
		if err != nil || z != d.Impedance {
			t.Fatalf("impedance %+v, %v, in the drop %+v", z, err, d.Impedance)
		}
	})
}

func FuzzACImpedance(f *testing.F) {
	f.Add(10, uint8(0), uint8(0), uint8(0), 75.0, 0.0)
	f.Add(3, uint8(1), uint8(5), uint8(255), 1e9, math.NaN())
	f.Fuzz(func(t *testing.T, gauge int, metal, basis, flags uint8, celsius, reactance float64) {
		a := wire.ACConductor{Conductor: fuzzConductor(gauge, metal, basis, flags, celsius), Conduit: wire.Conduit(flags >> 6)}
		if flags&64 != 0 {
			a.Reactance = units.Some(units.ResistancePerLength(reactance))
		}
		z, err := wire.ACImpedance(a)
		checkOutcome(t, err, float64(z.R))
		_, _ = z.Working().Text(), z.Findings()
	})
}

func FuzzLegDrop(f *testing.F) {
	f.Add(40.0, 25.0, 1.0, 0.8, 30.0, 120.0, 6, 8, uint8(0))
	f.Add(30.0, 25.0, 0.0, 0.0, 30.0, 120.0, 10, 99, uint8(2))
	f.Add(math.NaN(), -1.0, 2.0, math.Inf(1), 0.0, 0.0, 99, 0, uint8(7))
	f.Add(1e300, 1e300, 0.5, 0.5, 1e300, 1e-300, 6, 6, uint8(1))
	f.Fuzz(func(t *testing.T, a, b, pfA, pfB, oneWay, source float64, gauge, neutral int, supply uint8) {
		r := wire.LegRun{Currents: units.Legs[units.Current]{A: units.Current(a), B: units.Current(b)},
			PowerFactors: units.Legs[units.Ratio]{A: units.Ratio(pfA), B: units.Ratio(pfB)}, Supply: wire.LegSupply(supply & 3),
			OneWay: units.Length(oneWay), Source: units.Voltage(source),
			Line:    wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(gauge)}},
			Neutral: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(neutral)}}}
		v, err := wire.LegDrop(r)
		checkOutcome(t, err, float64(v.Heat), float64(v.InLine))
		_, _ = v.Working().Text(), v.Findings()
		if err == nil && units.Exceeds(v.InNeutral, v.Run.Currents.Total()) {
			t.Fatalf("the neutral carries %v of %v", v.InNeutral, v.Run.Currents)
		}
	})
}

func FuzzWarmDrop(f *testing.F) {
	f.Add(200.0, 2000.0, 285.0, 105.0, 30.0, 40.0, 2.0, 12.8, 0, uint8(1))
	f.Add(285.0, 0.0, 285.0, 105.0, 30.0, 30.0, 2.0, 12.8, 0, uint8(14))
	f.Add(math.NaN(), -1.0, 0.0, 999.0, math.Inf(1), -300.0, 0.0, 0.0, 99, uint8(255))
	f.Add(0.0, 9000.0, 285.0, 105.0, 30.0, 40.0, 5.0, 12.8, 10, uint8(1))
	f.Fuzz(func(t *testing.T, current, power, ampacity, rated, base, ambient, oneWay, source float64, gauge int, flags uint8) {
		w := wire.WarmRun{Run: wire.Run{Current: units.Current(current), OneWay: units.Length(oneWay), Source: units.Voltage(source),
			Conductor: wire.Conductor{Size: wire.AWG(gauge)}}, Ampacity: units.Current(ampacity), Rated: units.Celsius(rated)}
		if flags&1 != 0 {
			w.Power, w.Run.Current = units.Some(units.Power(power)), 0
		}
		if flags&2 != 0 {
			w.Base = units.Celsius(base)
		}
		if flags&4 != 0 {
			w.Ambient = units.Celsius(ambient)
		}
		d, err := wire.WarmDrop(w)
		checkOutcome(t, err, float64(d.Drop.Voltage), float64(d.AtAmbient.Voltage))
		_, _ = d.Working().Text(), d.Findings()
		if err != nil {
			return
		}
		if d.Temperature.Compare(d.Run.Ambient) < 0 || units.Exceeds(d.AtAmbient.Voltage, d.Drop.Voltage) {
			t.Fatalf("the load cools the conductor: %+v", d)
		}
		if _, ok := d.Step(d.Steps); !ok {
			t.Fatalf("no step %d", d.Steps)
		}
	})
}

// fuzzLoad makes a load of four steps.
func fuzzLoad[Q wire.CurrentOrPower](a, b, c, d float64, step int64) units.Series[Q] {
	return units.Series[Q]{Start: time.Unix(0, 0).UTC(), Step: time.Duration(step), Values: []Q{Q(a), Q(b), Q(c), Q(d)}}
}

func addLoads(f *testing.F) {
	f.Add(0.0, 10.0, 20.0, 5.0, int64(time.Hour), 4.5, 12.8, 10, 1)
	f.Add(0.0, 0.0, 0.0, 0.0, int64(1), 4.5, 12.8, 10, 1)
	f.Add(math.NaN(), -1.0, math.Inf(1), 1e308, int64(-1), 0.0, 0.0, 99, -1)
	f.Add(1.0, 2.0, 3.0, 1e300, int64(time.Hour), 1e-300, 1e300, 10, 9)
	f.Add(0.0, 11.5625, 0.0, 59.77777777777777, int64(51), 40.5, 109.8, 10, 1)
}

// toNoise reports whether a and b are the same but for the noise of float64. A
// settled comparison flips where a value sits on the edge of its ninth digit.
func toNoise[Q units.Quantity](a, b Q) bool {
	return math.Abs(float64(a)-float64(b)) <= 1e-11*math.Abs(float64(b))
}

// checkLoss demands of a loss that its energies are finite and add up.
func checkLoss(t *testing.T, x wire.Loss, err error) {
	t.Helper()
	checkOutcome(t, err, float64(x.Resistance), float64(x.Time))
	_, _ = x.Working().Text(), x.Findings()
	if err == nil && (!toNoise(x.Lost+x.ToLoad, x.FromSource) || x.Lost < 0) {
		t.Fatalf("lost %v and left %v of %v", x.Lost, x.ToLoad, x.FromSource)
	}
}

func FuzzEnergyLost(f *testing.F) {
	addLoads(f)
	f.Fuzz(func(t *testing.T, a, b, c, d float64, step int64, oneWay, source float64, gauge, parallel int) {
		r := wire.Run{OneWay: units.Length(oneWay), Source: units.Voltage(source), Parallel: parallel, Conductor: wire.Conductor{Size: wire.AWG(gauge)}}
		x, err := wire.EnergyLost(r, fuzzLoad[units.Current](a, b, c, d, step))
		if !errors.Is(err, units.ErrShape) {
			checkLoss(t, x, err)
		}
		x, err = wire.EnergyLost(r, fuzzLoad[units.Power](a, b, c, d, step))
		if !errors.Is(err, units.ErrShape) {
			checkLoss(t, x, err)
		}
	})
}

func FuzzEnergyLostIn(f *testing.F) {
	addLoads(f)
	f.Fuzz(func(t *testing.T, a, b, c, d float64, step int64, oneWay, source float64, gauge, i int) {
		r := wire.Run{OneWay: units.Length(oneWay), Source: units.Voltage(source), Conductor: wire.Conductor{Size: wire.AWG(gauge)}}
		x, err := wire.EnergyLostIn(r, fuzzLoad[units.Power](a, b, c, d, step), i)
		checkOutcome(t, err, float64(x.Resistance), float64(x.Time))
		_, _ = x.Working().Text(), x.Findings()
	})
}

func FuzzMeasureJoint(f *testing.F) {
	f.Add(12.8, 12.35, 30.0, 0.002, 0.01, uint8(3))
	f.Add(math.NaN(), -1.0, 0.0, -1.0, math.Inf(1), uint8(255))
	f.Add(1e308, 0.0, 1e308, 0.0, 1e308, uint8(2))
	f.Fuzz(func(t *testing.T, before, after, current, between, resolution float64, flags uint8) {
		r := wire.JointReading{Before: units.Voltage(before), After: units.Voltage(after), Current: units.Current(current)}
		if flags&1 != 0 {
			r.Between = units.Some(units.Resistance(between))
		}
		if flags&2 != 0 {
			r.Resolution = units.Some(units.Voltage(resolution))
		}
		j, err := wire.MeasureJoint(r)
		checkOutcome(t, err)
		_, _ = j.Working().Text(), j.Findings()
		if err == nil && (j.Heat < 0 || j.Resistance < 0 || math.IsInf(float64(j.AtTwice), 0)) {
			t.Fatalf("joint %+v", j)
		}
	})
}
