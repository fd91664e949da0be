package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// plainRow is a row of the table as somebody in a hurry has it.
type plainRow struct {
	gauge         int
	c60, c75, c90 float64
}

var (
	plainTable = []plainRow{{14, 15, 20, 25}, {12, 20, 25, 30}, {10, 30, 35, 40}, {8, 40, 50, 55}, {6, 55, 65, 75}, {4, 70, 85, 95}, {3, 85, 100, 115}, {2, 95, 115, 130}}
	plainAir   = [][2]float64{{30, 1}, {35, 0.96}, {40, 0.91}, {45, 0.87}, {50, 0.82}, {55, 0.76}, {60, 0.71}, {65, 0.65}, {70, 0.58}}
	plainCount = [][2]float64{{3, 1}, {6, 0.8}, {9, 0.7}, {20, 0.5}}
	plainBands = []float64{10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200}
)

// atMost returns the second of the first pair whose first is not below x.
func atMost(pairs [][2]float64, x float64) float64 {
	for _, p := range pairs {
		if x <= p[0] {
			return p[1]
		}
	}
	return 0
}

// plainAmpacity is the least that anybody could do for 90 °C insulation on 60 °C
// terminals: no types, no checks, no result to keep.
func plainAmpacity(gauge int, celsius float64, conductors int) float64 {
	for _, r := range plainTable {
		if r.gauge == gauge {
			return math.Min(r.c90*atMost(plainAir, celsius)*atMost(plainCount, float64(conductors)), r.c60)
		}
	}
	return 0
}

// plainProtect adds what the load needs, the next rating and both faults.
func plainProtect(load, volts, ohms, metres, from float64, gauge int) (needed, device, end, near float64) {
	needed = load * 1.25
	for _, rating := range plainBands {
		if device = rating; rating >= needed {
			break
		}
	}
	d := 0.005 * 0.0254 * math.Pow(92, (36-float64(gauge))/39)
	r := 1 / 58e6 * 1.02 / (math.Pi / 4 * d * d)
	return needed, device, volts / (ohms + r*(1+0.00393*55)*2*metres), volts / (ohms + r*2*from)
}

// necCircuit is what the plain loop can do too.
func necCircuit() wire.Circuit {
	c := branchCircuit()
	c.Installation, c.Continuous = roof(), true
	return c
}

// TestPlainAmpacityTwin holds both to each other, so that a slip in one shows.
func TestPlainAmpacityTwin(t *testing.T) {
	for _, gauge := range []int{14, 12, 10, 8, 6, 4, 3, 2} {
		for _, celsius := range []float64{26, 30, 41.5, 60, 70} {
			for _, n := range []int{0, 3, 4, 9, 20} {
				x := wire.Installation{Rules: wire.NEC2023, Size: wire.AWG(gauge), Insulation: wire.Insulation90, Ambient: units.Celsius(celsius), Conductors: n}
				if got, want := float64(mustCarry(t, x).Current), plainAmpacity(gauge, celsius, n); units.Compare(got, want) != 0 {
					t.Errorf("%d AWG, %v °C, %d: %v, the plain loop has %v", gauge, celsius, n, got, want)
				}
			}
		}
	}
	c := necCircuit()
	p := mustProtect(t, c)
	needed, device, end, near := plainProtect(float64(c.Load), 13.3, 0.002, float64(c.OneWay), float64(c.FromSource.Or(0)), 10)
	for name, pair := range map[string][2]float64{"needed": {float64(p.Needed), needed}, "device": {float64(p.Smallest), device},
		"end": {float64(p.AtEnd.Current), end}, "near": {float64(p.AtDevice.Current), near}} {
		if units.Compare(pair[0], pair[1]) != 0 {
			t.Errorf("%s is %v, the plain loop has %v", name, pair[0], pair[1])
		}
	}
}

func TestNoAmpacityAllocations(t *testing.T) {
	aluminium := wire.Installation{Rules: wire.NEC2008, Size: wire.AWG(8), Insulation: wire.Insulation75, Metal: wire.Aluminium}
	boat := wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(8), Insulation: wire.Insulation125, System: volts(120), Conductors: 6, EngineSpace: true}
	circuit := branchCircuit()
	circuit.Opens = units.Some(0.1 * units.Second)
	parts, stated := inverterPath, units.Some(300*units.Ampere)
	for name, call := range map[string]func() error{
		"aluminium":    func() error { _, err := wire.Ampacity(aluminium); return err },
		"boat":         func() error { _, err := wire.Ampacity(boat); return err },
		"Protect":      func() error { _, err := wire.Protect(circuit); return err },
		"CordAmpacity": func() error { _, err := wire.CordAmpacity(shoreCord()); return err },
		"Adiabatic":    func() error { _, err := wire.Adiabatic(lampWire()); return err },
		"FreeAir":      func() error { _, err := wire.FreeAir(hanging()); return err },
		"WeakestPart":  func() error { _, err := wire.WeakestPart(10, stated, parts); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

// bench runs one of a pair of benchmarks; each call gets another number.
func bench(b *testing.B, name string, call func(i int) float64) {
	b.Run(name, func(b *testing.B) {
		b.ReportAllocs()
		sum := 0.0
		for i := 0; b.Loop(); i++ {
			sum += call(i)
		}
		if !(sum > 0) {
			b.Fatal(sum)
		}
	})
}

func BenchmarkAmpacity(b *testing.B) {
	x := roof()
	bench(b, "model=calculator", func(i int) float64 {
		x.Conductors = i & 15
		c, err := wire.Ampacity(x)
		if err != nil {
			b.Fatal(err)
		}
		return float64(c.Current)
	})
	bench(b, "model=plain", func(i int) float64 { return plainAmpacity(10, 60, i&15) })
}

func BenchmarkProtect(b *testing.B) {
	c := necCircuit()
	bench(b, "model=calculator", func(i int) float64 {
		c.Load = units.Current(1 + i&7)
		p, err := wire.Protect(c)
		if err != nil {
			b.Fatal(err)
		}
		return float64(p.AtEnd.Current)
	})
	bench(b, "model=plain", func(i int) float64 {
		_, _, end, _ := plainProtect(float64(1+i&7), 13.3, 0.002, 3.048, 0.1524, 10)
		return end + plainAmpacity(10, 60, 4)
	})
}

func BenchmarkCordAmpacity(b *testing.B) {
	x := shoreCord()
	bench(b, "model=calculator", func(int) float64 {
		c, err := wire.CordAmpacity(x)
		if err != nil {
			b.Fatal(err)
		}
		return float64(c.Current)
	})
}

func BenchmarkAdiabatic(b *testing.B) {
	x := lampWire()
	bench(b, "model=calculator", func(i int) float64 {
		x.Current = units.Current(80 + i&15)
		w, err := wire.Adiabatic(x)
		if err != nil {
			b.Fatal(err)
		}
		return float64(w.Bears)
	})
	bench(b, "model=plain", func(i int) float64 {
		current, s := float64(80+i&15), 1.3087
		return 115 * 115 * s * s / (current * current)
	})
}
