package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// plainFreeAir is the heat balance without types and checks, with its constants
// typed a second time: the current in amperes of a gauge with so many strands
// and so thick an insulation in metres, copper and air in °C.
func plainFreeAir(gauge, over, strands, thick, copper, air float64) float64 {
	solid := 0.005 * 0.0254 * math.Pow(92, (36-gauge)/39)
	inner := solid * over / math.Sqrt(strands)
	outer := inner + 2*thick
	r := 1 / 58e6 * (1 + 0.00393*(copper-20)) * 1.02 / (math.Pi / 4 * solid * solid)
	leaves := func(surface float64) float64 {
		film, rise := (surface+air)/2+273.15, surface-air
		rho := 101325 / (287.05 * film)
		mu := 1.458e-6 * film * math.Sqrt(film) / (film + 110.4)
		k := 2.64638e-3 * film * math.Sqrt(film) / (film + 245.4*math.Pow(10, -12/film))
		ra := 9.80665 * rise * outer * outer * outer * rho * rho * 1006 / (film * mu * k)
		root := 0.60 + 0.387*math.Pow(ra, 1./6)/math.Pow(1+math.Pow(0.559*k/(mu*1006), 0.5625), 8./27)
		s, a := surface+273.15, air+273.15
		return root*root*k*math.Pi*rise + 0.9*5.670374419e-8*math.Pi*outer*(s*s*s*s-a*a*a*a)
	}
	// What crosses the insulation falls as the surface warms, what leaves rises.
	low, high := air, copper
	for range 80 {
		if middle := (low + high) / 2; 2*math.Pi*(copper-middle)/(5*math.Log(outer/inner)) > leaves(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return math.Sqrt(leaves(low) / r)
}

func TestPlainFreeAirTwin(t *testing.T) {
	for _, c := range []struct{ gauge, over, strands, thick float64 }{
		{20, 3, 7, 0.00076}, {10, 3, 7, 0.00076}, {8, 3, 7, 0.00114}, {2, 3, 7, 0.00152}, {1, 5, 19, 0.00203}, {-3, 5, 19, 0.00203},
	} {
		for _, metal := range []float64{60, 105, 150} {
			for _, air := range []float64{-40, 30, 55} {
				b := mustBalance(t, wire.FreeAirCable{Size: wire.AWG(int(c.gauge)), Metal: units.Celsius(metal), Ambient: units.Celsius(air)})
				want := plainFreeAir(c.gauge, c.over, c.strands, c.thick, metal, air)
				if math.Abs(float64(b.Current)/want-1) > 1e-9 {
					t.Errorf("%v at %v °C in %v °C: %v, the plain loop has %v A", b.Cable.Size, metal, air, b.Current, want)
				}
			}
		}
	}
}

func BenchmarkFreeAir(b *testing.B) {
	x := hanging()
	bench(b, "model=calculator", func(i int) float64 {
		x.Metal = units.Celsius(60 + float64(i&31))
		h, err := wire.FreeAir(x)
		if err != nil {
			b.Fatal(err)
		}
		return float64(h.Current)
	})
	bench(b, "model=plain", func(i int) float64 { return plainFreeAir(6, 3, 7, 0.00152, 60+float64(i&31), 30) })
}
