package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

func FuzzSharedNeutral(f *testing.F) {
	f.Add(12.0, 9.0, 15.0, 30.0, 15.0, uint8(2), uint8(15))
	f.Add(math.NaN(), math.MaxFloat64, -1.0, 0.0, math.Inf(1), uint8(1), uint8(15))
	f.Add(1e308, 1e308, 1e308, 1e308, 1.0, uint8(2), uint8(9))
	f.Fuzz(func(t *testing.T, a, b, device, main, neutral float64, supply, flags uint8) {
		m := wire.Multiwire{Currents: amperes(units.Current(a), units.Current(b))}
		if flags&1 != 0 {
			m.Device = units.Some(units.Current(device))
		}
		if flags&2 != 0 {
			m.Main = units.Some(units.Current(main))
		}
		if flags&4 != 0 {
			m.Neutral = units.Some(units.Current(neutral))
		}
		if flags&8 != 0 {
			m.Supply = units.Some(wire.LegSupply(supply & 3))
		}
		n, err := wire.SharedNeutral(m)
		checkOutcome(t, err, 1+float64(n.Current), 1+float64(n.Most.Or(0)))
		_, _ = n.Working().Text(), n.Findings()
		if err == nil && (units.Exceeds(n.Current, m.Currents.Total()) || units.Exceeds(m.Currents.Unbalance(), n.Current)) {
			t.Fatalf("%v in the neutral of %v", n.Current, m.Currents)
		}
	})
}

func FuzzOpenNeutral(f *testing.F) {
	f.Add(1200.0, 300.0, 120.0, 127.0, uint8(0), true)
	f.Add(0.0, 1e308, 1e308, 0.0, uint8(1), false)
	f.Add(math.NaN(), -1.0, 0.0, 0.0, uint8(3), false)
	f.Add(1200.0, 300.0, 120.0, 0.0, uint8(2), false)
	f.Fuzz(func(t *testing.T, a, b, nominal, highest float64, supply uint8, given bool) {
		l := wire.SplitLoad{Powers: watts(units.Power(a), units.Power(b)), Supply: wire.LegSupply(supply & 3), Nominal: units.Voltage(nominal)}
		if given {
			l.Highest = units.Some(units.Voltage(highest))
		}
		v, err := wire.OpenNeutral(l)
		checkOutcome(t, err, 1+float64(v.AtLoad.A), 1+float64(v.AtLoad.B), 1+float64(v.Powers.A), 1+float64(v.Powers.B), float64(v.Highest))
		_ = v.Working().Text()
		if len(v.Findings()) != 1 {
			t.Fatal("an open neutral needs one finding")
		}
		if err == nil && !toNoise(v.AtLoad.Total(), v.Line) {
			t.Fatalf("%v and %v are not %v", v.AtLoad.A, v.AtLoad.B, v.Line)
		}
	})
}

// plainOpen is the arithmetic of an open neutral on split phase.
func plainOpen(a, b, nominal float64) (va, vb float64) {
	return 2 * nominal * b / (a + b), 2 * nominal * a / (a + b)
}

func TestPlainOpenNeutral(t *testing.T) {
	f := must[wire.FloatingNeutral](t)(wire.OpenNeutral(splitLoad()))
	va, vb := plainOpen(1200, 300, 120)
	if !toNoise(f.AtLoad.A, units.Voltage(va)) || !toNoise(f.AtLoad.B, units.Voltage(vb)) {
		t.Errorf("%v, the plain loop has %v and %v", f.AtLoad, va, vb)
	}
}

func BenchmarkOpenNeutral(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		l := splitLoad()
		for i := 0; b.Loop(); i++ {
			l.Powers.A = units.Power(1 + i&1023)
			if _, err := wire.OpenNeutral(l); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		sum := 0.0
		for i := 0; b.Loop(); i++ {
			va, vb := plainOpen(float64(1+i&1023), 300, 120)
			sum += va + vb
		}
		_ = sum
	})
}

func BenchmarkSharedNeutral(b *testing.B) {
	b.ReportAllocs()
	m := multiwire()
	m.Supply = units.Some(wire.NetworkLegs)
	for b.Loop() {
		if _, err := wire.SharedNeutral(m); err != nil {
			b.Fatal(err)
		}
	}
}
