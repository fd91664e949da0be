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
	f.Add(math.NaN(), math.Inf(1), math.Copysign(0, -1), 0.0, -300.0, math.MaxFloat64, 5e-324, -3, uint8(127))
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
		if d, err := wire.VoltageDrop(x.Run); err == nil && !toNoise(d.Voltage, x.Voltage) {
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

func FuzzAmpacity(f *testing.F) {
	f.Add(uint8(2), 10, uint8(3), uint8(0), 60.0, 4, true)
	f.Add(uint8(1), 12, uint8(4), uint8(0), 30.0, 0, false)
	f.Add(uint8(3), 0, uint8(4), uint8(9), math.NaN(), -1, true)
	f.Fuzz(func(t *testing.T, rules uint8, gauge int, insulation, terminals uint8, celsius float64, conductors int, hasAmbient bool) {
		x := wire.Installation{Rules: wire.RuleSet(rules), Size: wire.AWG(gauge), Insulation: wire.Insulation(insulation),
			Terminals: wire.Insulation(terminals), Conductors: conductors}
		if hasAmbient {
			x.Ambient = units.Celsius(celsius)
		}
		c, err := wire.Ampacity(x)
		checkOutcome(t, err, float64(c.Current), float64(c.Table), float64(c.Corrected))
		_ = c.Working().Text()
	})
}

func FuzzShortCircuit(f *testing.F) {
	f.Add(13.2, 0.003, 3.0, 10)
	f.Add(13.2, 0.003, 0.0, 99)
	f.Add(math.Inf(1), -1.0, math.NaN(), 0)
	f.Fuzz(func(t *testing.T, volts, ohms, metres float64, gauge int) {
		source := wire.FaultSource{Voltage: units.Voltage(volts), Resistance: units.Resistance(ohms)}
		k, err := wire.ShortCircuit(source, wire.Conductor{Size: wire.AWG(gauge)}, units.Length(metres))
		checkOutcome(t, err, float64(k.Current))
		_ = k.Working().Text()
	})
}

func FuzzProtect(f *testing.F) {
	f.Add(uint8(1), 12, 8.0, 15.0, 10000.0, 0.1, 3.0, 13.3, 0.002, uint8(15))
	f.Add(uint8(2), 6, 52.0, 60.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(1))
	f.Add(uint8(1), 12, 1.7e308, 15.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(17))
	f.Add(uint8(3), -3, math.NaN(), -1.0, math.Inf(1), -1.0, -1.0, 0.0, 0.0, uint8(31))
	f.Add(uint8(1), 12, 8.0, 15.0, 10000.0, 0.1, 3.0, 13.3, 0.002, uint8(47))
	f.Fuzz(func(t *testing.T, rules uint8, gauge int, load, device, breaks, from, metres, volts, ohms float64, flags uint8) {
		c := wire.Circuit{Load: units.Current(load), Continuous: flags&16 != 0, OneWay: units.Length(metres),
			Installation: wire.Installation{Rules: wire.RuleSet(rules), Size: wire.AWG(gauge), Insulation: wire.Insulation105}}
		if flags&1 != 0 {
			c.Device = units.Some(units.Current(device))
		}
		if flags&2 != 0 {
			c.Interrupting = units.Some(units.Current(breaks))
		}
		if flags&4 != 0 {
			c.FromSource = units.Some(units.Length(from))
		}
		if flags&8 != 0 {
			c.Fault = units.Some(wire.FaultSource{Voltage: units.Voltage(volts), Resistance: units.Resistance(ohms)})
		}
		if flags&32 != 0 {
			c.FaultWarm = units.Some(wire.FaultSource{Voltage: units.Voltage(volts), Resistance: units.Resistance(2 * ohms)})
		}
		p, err := wire.Protect(c)
		checkOutcome(t, err, float64(p.Limit), float64(p.Needed))
		_ = p.Working().Text()
		if err == nil && flags&1 == 0 && !has(p.Findings(), "no-device-stated") {
			t.Fatal("a missing device goes unsaid")
		}
	})
}

func FuzzParseRules(f *testing.F) {
	for _, s := range []string{"105 °C", "60C", "RV low voltage", "nec 2017", "", "33 CFR 183", "-300 °C", "1e999 K"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if n, err := wire.ParseInsulation(s); err == nil {
			if again, err := wire.ParseInsulation(n.String()); err != nil || again != n {
				t.Fatalf("%q: %v reads back as %v, %v", s, n, again, err)
			}
		}
		if r, err := wire.ParseRuleSet(s); err == nil {
			if again, err := wire.ParseRuleSet(r.String()); err != nil || again != r {
				t.Fatalf("%q: %v reads back as %v, %v", s, r, again, err)
			}
		}
	})
}
