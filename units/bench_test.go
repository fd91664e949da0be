package units_test

import (
	"fmt"
	"testing"

	"example.com/drawbar/units"
)

// chains is how many values a chain benchmark works through in one operation,
// so that what is timed is arithmetic and not the loop.
const chains = 1024

// ramp returns chains values from low up, spread over a third of it.
func ramp[T ~float64](low T) []T {
	out := make([]T, chains)
	for i := range out {
		out[i] = low + low/3*T(i)/chains
	}
	return out
}

// raw returns the numbers of q without their type.
func raw[Q ~float64](q []Q) []float64 {
	out := make([]float64, len(q))
	for i, x := range q {
		out[i] = float64(x)
	}
	return out
}

func reportChains(b *testing.B) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/chains, "ns/chain")
}

// BenchmarkDropRatio carries a current through a resistance and compares the
// drop with the voltage: I·R/V.
func BenchmarkDropRatio(b *testing.B) {
	current, resistance, voltage := ramp(20*units.Ampere), ramp(10*units.Milliohm), ramp(12*units.Volt)
	b.Run("typed", func(b *testing.B) {
		b.ReportAllocs()
		out := make([]units.Ratio, chains)
		for b.Loop() {
			for i := range out {
				out[i] = units.RatioOf(current[i].Through(resistance[i]), voltage[i])
			}
		}
		reportChains(b)
	})
	b.Run("raw", func(b *testing.B) {
		b.ReportAllocs()
		i, r, v := raw(current), raw(resistance), raw(voltage)
		out := make([]float64, chains)
		for b.Loop() {
			for k := range out {
				out[k] = i[k] * r[k] / v[k]
			}
		}
		reportChains(b)
	})
}

// BenchmarkEnergy adds up power for a time.
func BenchmarkEnergy(b *testing.B) {
	power, time := ramp(150*units.Watt), ramp(90*units.Minute)
	b.Run("typed", func(b *testing.B) {
		b.ReportAllocs()
		out := make([]units.Energy, 1)
		for b.Loop() {
			for i := range power {
				out[0] += power[i].For(time[i])
			}
		}
		reportChains(b)
	})
	b.Run("raw", func(b *testing.B) {
		b.ReportAllocs()
		p, t := raw(power), raw(time)
		out := make([]float64, 1)
		for b.Loop() {
			for i := range p {
				out[0] += p[i] * t[i]
			}
		}
		reportChains(b)
	})
}

// BenchmarkConductor works out a resistance from a metal and its shape, and
// the current that a voltage drives through it: V/(ρ·L/A).
func BenchmarkConductor(b *testing.B) {
	rho, length := ramp(0.0172*units.OhmSquareMillimetrePerMetre), ramp(15*units.Foot)
	area, voltage := ramp(2.5*units.SquareMillimetre), ramp(12*units.Volt)
	b.Run("typed", func(b *testing.B) {
		b.ReportAllocs()
		out := make([]units.Current, chains)
		for b.Loop() {
			for i := range out {
				out[i] = voltage[i].Across(rho[i].Of(length[i], area[i]))
			}
		}
		reportChains(b)
	})
	b.Run("raw", func(b *testing.B) {
		b.ReportAllocs()
		p, l, a, v := raw(rho), raw(length), raw(area), raw(voltage)
		out := make([]float64, chains)
		for b.Loop() {
			for i := range out {
				out[i] = v[i] / (p[i] * l[i] / a[i])
			}
		}
		reportChains(b)
	})
}

func BenchmarkSettle(b *testing.B) {
	for name, x := range map[string]units.Current{"short": 15 * units.Ampere, "long": 15.000000000000002 * units.Ampere} {
		b.Run("digits="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				units.Settle(x)
			}
		})
	}
}

func BenchmarkCompare(b *testing.B) {
	limit := 15 * units.Ampere
	for name, x := range map[string]units.Current{"far": 12 * units.Ampere, "near": 15.000000000000002 * units.Ampere} {
		b.Run("apart="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				units.Compare(x, limit)
			}
		})
	}
}

func BenchmarkParse(b *testing.B) {
	for name, text := range map[string]string{"plain": "15 ft", "compound": "6 ft 3 in"} {
		b.Run("text="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := units.Parse[units.Length](text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkAppendText(b *testing.B) {
	for name, call := range map[string]func(){"coherent": appendTo(12.8 * units.Volt), "counted": appendTo(100 * units.AmpereHour)} {
		b.Run("unit="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				call()
			}
		})
	}
}

func BenchmarkString(b *testing.B) {
	v := 1.188 * units.Volt
	b.ReportAllocs()
	for b.Loop() {
		_ = v.String()
	}
}

func BenchmarkSprintf(b *testing.B) {
	v := 1.188 * units.Volt
	b.ReportAllocs()
	for b.Loop() {
		_ = fmt.Sprintf("%9.3f", v)
	}
}
