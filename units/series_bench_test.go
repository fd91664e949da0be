package units_test

import (
	"testing"
	"time"

	"example.com/drawbar/units"
)

// "No allocation": everything that runs in a year's loop.
func TestSeriesAllocatesNothing(t *testing.T) {
	a, b := minutes(24*60, 0, 1000), minutes(24*60, 0, 1000)
	dst, hourly := like(a), grid(newYear, time.Hour, 24)
	amps := units.Series[units.Current]{Start: newYear, Step: time.Hour, Values: []units.Current{1, 2}}
	sun := units.Series[units.Irradiance]{Start: newYear, Step: time.Hour, Values: []units.Irradiance{1, 2}}
	noon := newYear.Add(12 * time.Hour)
	var err error
	for name, f := range map[string]func(){
		"AddTo":         func() { err = units.AddTo(dst, a, b) },
		"SubTo":         func() { err = units.SubTo(dst, a, b) },
		"ScaleTo":       func() { err = units.ScaleTo(dst, a, 0.5) },
		"ResampleTo":    func() { err = units.ResampleTo(hourly, a) },
		"CheckSeries":   func() { err = units.CheckSeries("f", "a", a, units.AtLeast(0*units.Watt)) },
		"Check":         func() { err = a.Check("f", "a") },
		"Shape":         func() { err = a.Shape().Check("f", "b", b.Shape()) },
		"EnergyOf":      func() { _ = units.EnergyOf(a) },
		"ChargeOf":      func() { _ = units.ChargeOf(amps) },
		"IrradiationOf": func() { _ = units.IrradiationOf(sun) },
		"MeanOf":        func() { _, _ = units.MeanOf(a) },
		"PeakOf":        func() { _, _, _ = units.PeakOf(a) },
		"MinOf":         func() { _, _, _ = units.MinOf(a) },
		"At":            func() { _, _ = a.At(noon) },
		"Time":          func() { _ = a.Time(7) },
		"Span":          func() { _ = a.Span() },
		"PeriodEnding":  func() { _ = units.PeriodEnding(noon, time.Hour, a.Values) },
	} {
		if n := testing.AllocsPerRun(10, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
		if err != nil {
			t.Errorf("%s = %v", name, err)
		}
	}
}

// "No day is allocated", and no month: a year of them takes what two days
// take, and that is nothing, but for the counters of a coverage run, which
// keep the compiler from inlining the loop.
func TestDaysAllocateNothing(t *testing.T) {
	year := yearOf(2025, loadZone(t, "America/New_York"))
	twoDays := year
	twoDays.Values = year.Values[:48]
	counts := map[string]func(units.Series[units.Power]) int{
		"Days": func(s units.Series[units.Power]) (n int) {
			for range s.Days() {
				n++
			}
			return n
		},
		"Months": func(s units.Series[units.Power]) (n int) {
			for range s.Months() {
				n++
			}
			return n
		},
	}
	for name, count := range counts {
		if few, many := count(twoDays), count(year); few >= many {
			t.Fatalf("%s: %d views in two days, %d in a year", name, few, many)
		}
		few := testing.AllocsPerRun(10, func() { count(twoDays) })
		many := testing.AllocsPerRun(10, func() { count(year) })
		if many != few {
			t.Errorf("%s allocates %v times in two days, %v times in a year", name, few, many)
		}
		if many != 0 && testing.CoverMode() == "" {
			t.Errorf("%s allocates %v times", name, many)
		}
	}
}

// against times series and plain by turns, so that both see the same machine,
// and reports how many times as long series takes.
func against(b *testing.B, series, plain func()) {
	b.ReportAllocs()
	var took, base time.Duration
	for b.Loop() {
		t0 := time.Now()
		series()
		t1 := time.Now()
		plain()
		took += t1.Sub(t0)
		base += time.Since(t1)
	}
	b.ReportMetric(float64(took)/float64(base), "times-plain")
	b.ReportMetric(float64(took.Nanoseconds())/float64(b.N), "ns/series")
}

var benchmarkSink float64

// A day of minutes, against loops over plain float64.
func BenchmarkSeries(b *testing.B) {
	x, y := minutes(24*60, 0, 1000), minutes(24*60, 0, 1000)
	dst, hourly := like(x), grid(newYear, time.Hour, 24)
	px, py, pdst := make([]float64, x.Len()), make([]float64, x.Len()), make([]float64, x.Len())
	for i := range px {
		px[i], py[i] = float64(x.Values[i]), float64(y.Values[i])
	}
	must := func(err error) {
		if err != nil {
			b.Fatal(err)
		}
	}
	b.Run("op=AddTo/n=1440", func(b *testing.B) {
		against(b, func() { must(units.AddTo(dst, x, y)) }, func() {
			px, py := px[:len(pdst)], py[:len(pdst)]
			for i := range pdst {
				pdst[i] = px[i] + py[i]
			}
		})
	})
	b.Run("op=ScaleTo/n=1440", func(b *testing.B) {
		against(b, func() { must(units.ScaleTo(dst, x, 0.5)) }, func() {
			px := px[:len(pdst)]
			for i := range pdst {
				pdst[i] = px[i] * 0.5
			}
		})
	})
	b.Run("op=EnergyOf/n=1440", func(b *testing.B) {
		against(b, func() { benchmarkSink = float64(units.EnergyOf(x)) }, func() {
			var sum float64
			for _, v := range px {
				sum += v
			}
			benchmarkSink = sum * 60
		})
	})
	b.Run("op=ResampleTo/n=1440-to-24", func(b *testing.B) {
		against(b, func() { must(units.ResampleTo(hourly, x)) }, func() {
			for h := range 24 {
				var sum float64
				for _, v := range px[60*h : 60*h+60] {
					sum += v
				}
				pdst[h] = sum / 60
			}
		})
	})
	b.Run("op=ResampleTo/n=24-to-1440", func(b *testing.B) {
		against(b, func() { must(units.ResampleTo(dst, hourly)) }, func() {
			for i := range pdst {
				pdst[i] = px[i/60]
			}
		})
	})
}

// The days of a year of minutes, against asking every minute for its date.
func BenchmarkDays(b *testing.B) {
	s := minutes(minutesOfYear, 0, 1000)
	s.Start = s.Start.In(loadZone(b, "America/New_York"))
	b.Run("n=525600/model=view", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			n := 0
			for range s.Days() {
				n++
			}
			benchmarkSink = float64(n)
		}
	})
	b.Run("n=525600/model=date-per-value", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			n, last := 0, 0
			for i := range s.Values {
				if _, _, day := s.Time(i).Date(); day != last {
					n, last = n+1, day
				}
			}
			benchmarkSink = float64(n)
		}
	})
}
