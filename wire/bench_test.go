package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// plainDrop is the arithmetic of a drop without types, checks or a result to
// keep: the least that anybody could do.
func plainDrop(amperes, metres, gauge, celsius, volts float64) (drop, atLoad, fraction, heat float64) {
	d := 0.005 * 0.0254 * math.Pow(92, (36-gauge)/39)
	area := math.Pi / 4 * d * d
	rho := 1 / 58e6 * (1 + 0.00393*(celsius-20)) * 1.02
	drop = amperes * rho / area * 2 * metres
	return drop, volts - drop, drop / volts, amperes * drop
}

// TestPlainTwin holds the calculator to the plain loop, so that a slip in one
// of them shows. It is no check of the physics, which the published rows are.
func TestPlainTwin(t *testing.T) {
	for _, gauge := range []int{-3, 0, 4, 10, 16, 20} {
		for _, celsius := range []float64{-40, 20, 75, 150} {
			r := lamp()
			r.Conductor.Size, r.Conductor.Temperature = wire.AWG(gauge), units.Celsius(celsius)
			d, err := wire.VoltageDrop(r)
			if err != nil {
				t.Fatal(err)
			}
			drop, atLoad, fraction, heat := plainDrop(20, float64(r.OneWay), float64(gauge), celsius, 12.8)
			for name, pair := range map[string][2]float64{
				"drop": {float64(d.Voltage), drop}, "at load": {float64(d.AtLoad), atLoad},
				"fraction": {float64(d.Fraction), fraction}, "heat": {float64(d.Heat), heat},
			} {
				if units.Compare(pair[0], pair[1]) != 0 {
					t.Errorf("%v at %v °C: %s is %v, the plain loop has %v", r.Conductor.Size, celsius, name, pair[0], pair[1])
				}
			}
		}
	}
}

func TestNoAllocations(t *testing.T) {
	r := lamp()
	list, circuit := wire.Gauges(), branchCircuit()
	for name, call := range map[string]func() error{
		"Resistance":   func() error { _, err := wire.Resistance(r.Conductor); return err },
		"VoltageDrop":  func() error { _, err := wire.VoltageDrop(r); return err },
		"LongestRun":   func() error { _, err := wire.LongestRun(r); return err },
		"Ampacity":     func() error { _, err := wire.Ampacity(roof()); return err },
		"Protect":      func() error { _, err := wire.Protect(circuit); return err },
		"SmallestSize": func() error { _, err := wire.SmallestSize(r, list); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkVoltageDrop(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		r := lamp()
		var sum units.Voltage
		for i := 0; b.Loop(); i++ {
			r.Current = units.Current(1 + i&63)
			d, err := wire.VoltageDrop(r)
			if err != nil {
				b.Fatal(err)
			}
			sum += d.Voltage
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		r := lamp()
		var sum float64
		for i := 0; b.Loop(); i++ {
			drop, _, _, _ := plainDrop(float64(1+i&63), float64(r.OneWay), 10, 20, 12.8)
			sum += drop
		}
		_ = sum
	})
}

func BenchmarkSmallestSize(b *testing.B) {
	b.ReportAllocs()
	r, list := lamp(), wire.Gauges()
	for b.Loop() {
		if _, err := wire.SmallestSize(r, list); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWorking(b *testing.B) {
	b.ReportAllocs()
	d, err := wire.VoltageDrop(lamp())
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		_ = d.Working().Text()
	}
}
