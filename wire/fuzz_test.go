package wire_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// fuzzRun makes a run from raw numbers, most of them nonsense.
func fuzzRun(current, oneWay, source, allowed, celsius, resistivity, stated float64, gauge int, flags uint8) wire.Run {
	r := wire.Run{
		Current: units.Current(current), OneWay: units.Length(oneWay), Source: units.Voltage(source),
		Conductor: wire.Conductor{Size: wire.AWG(gauge), Strand: wire.Strand(flags & 3)},
	}
	if flags&4 != 0 {
		r.Allowed = units.Some(units.Ratio(allowed))
	}
	if flags&8 != 0 {
		r.Conductor.Temperature = units.Celsius(celsius)
	}
	if flags&16 != 0 {
		r.Conductor.Resistivity = units.Some(units.Resistivity(resistivity))
	}
	if flags&32 != 0 {
		r.Conductor.Stated = units.Some(units.ResistancePerLength(stated))
	}
	if sizes := wire.MetricSizes(); flags&64 != 0 {
		r.Conductor.Size = sizes[uint(gauge)%uint(len(sizes))]
	}
	return r
}

func addSeeds(f *testing.F) {
	f.Add(20.0, 4.572, 12.8, 0.03, 75.0, 1.7e-8, 0.004, 10, uint8(4|8))
	f.Add(8.0, 3.0, 12.0, 0.03, 20.0, 2.1e-8, 0.02, 14, uint8(4|16))
	f.Add(8.0, 3.0, 12.0, 0.03, 20.0, 2.1e-8, 0.02, 0, uint8(32))
	f.Add(16.0, 10.0, 24.0, 0.05, 70.0, 1.7e-8, 0.004, 4, uint8(2|4|64))
	f.Add(math.NaN(), math.Inf(1), -0.0, 0.0, -300.0, math.MaxFloat64, 5e-324, -3, uint8(127))
	f.Add(1e300, 1e300, 1e-300, 1e-300, 150.0, 1e300, 1e300, 99, uint8(4|8|16))
}

// checkOutcome demands a typed error or positive finite numbers.
func checkOutcome(t *testing.T, err error, numbers ...float64) {
	t.Helper()
	if err != nil {
		var e *units.RangeError
		if !errors.As(err, &e) || e.Error() == "" {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		return
	}
	for i, x := range numbers {
		if !(x > 0) || math.IsInf(x, 0) {
			t.Fatalf("number %d of the result is %v", i, x)
		}
	}
}

func FuzzVoltageDrop(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, current, oneWay, source, allowed, celsius, rho, stated float64, gauge int, flags uint8) {
		d, err := wire.VoltageDrop(fuzzRun(current, oneWay, source, allowed, celsius, rho, stated, gauge, flags))
		checkOutcome(t, err, float64(d.Voltage), float64(d.Fraction), float64(d.Heat), float64(d.Resistance))
		_ = d.Working().Text()
		if len(d.Findings()) == 0 {
			t.Fatal("no findings")
		}
	})
}

func FuzzResistance(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, current, oneWay, source, allowed, celsius, rho, stated float64, gauge int, flags uint8) {
		r := fuzzRun(current, oneWay, source, allowed, celsius, rho, stated, gauge, flags)
		p, err := wire.Resistance(r.Conductor)
		checkOutcome(t, err, float64(p.At))
		_ = p.Working().Text()
	})
}

func FuzzLongestRun(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, current, oneWay, source, allowed, celsius, rho, stated float64, gauge int, flags uint8) {
		x, err := wire.LongestRun(fuzzRun(current, oneWay, source, allowed, celsius, rho, stated, gauge, flags))
		checkOutcome(t, err, float64(x.OneWay), float64(x.Loop))
		_ = x.Working().Text()
		if err != nil {
			return
		}
		if d, err := wire.VoltageDrop(x.Run); err == nil && units.Compare(d.Voltage, x.Voltage) != 0 {
			t.Fatalf("the longest run %v drops %v, not %v", x.OneWay, d.Voltage, x.Voltage)
		}
	})
}

func FuzzSmallestSize(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, current, oneWay, source, allowed, celsius, rho, stated float64, gauge int, flags uint8) {
		list := wire.Gauges()
		if flags&64 != 0 {
			list = wire.MetricSizes()
		}
		s, err := wire.SmallestSize(fuzzRun(current, oneWay, source, allowed, celsius, rho, stated, gauge, flags), list)
		checkOutcome(t, err, float64(s.MaxPerLength), float64(s.Drop.Voltage))
		_ = s.Working().Text()
		if err == nil && units.Exceeds(s.Drop.PerLength.At, s.MaxPerLength) {
			t.Fatalf("%v is too small", s.Run.Conductor.Size)
		}
	})
}
