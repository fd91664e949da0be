package solar_test

import (
	"math"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// plainSun is the arithmetic of a day's sun without types, checks or a result
// to keep.
func plainSun(latitude float64, day int) (joules, hours float64) {
	phi := latitude * math.Pi / 180
	turn := 2 * math.Pi * float64(day) / 365
	distance := 1 + 0.033*math.Cos(turn)
	delta := 0.409 * math.Sin(turn-1.39)
	sunset := math.Acos(max(-1, min(1, -math.Tan(phi)*math.Tan(delta))))
	height := sunset*math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Sin(sunset)
	return 24 * 60 / math.Pi * 0.0820e6 * distance * height, 24 / math.Pi * sunset
}

// plainHarvest is that of a harvest.
func plainHarvest(watts, kilowattHours, gamma, celsius float64, lost []float64) float64 {
	wh := watts * kilowattHours * (1 + gamma*(celsius-25))
	for _, x := range lost {
		wh *= 1 - x
	}
	return wh
}

// TestPlainTwin holds the calculators to the plain loops.
func TestPlainTwin(t *testing.T) {
	for latitude := -88.0; latitude <= 88; latitude += 4 {
		for day := 1; day <= 366; day++ {
			s := sunOn(t, latitude, day)
			joules, hours := plainSun(latitude, day)
			// Near the edge of polar night the heights cancel.
			if math.Abs(joules-float64(s.AboveAir)) > 1e-6 || math.Abs(hours-units.In(s.Daylight, units.Hour)) > 1e-7 {
				t.Fatalf("at %v° on day %d: %v and %v, the plain loop has %v J/m² and %v h", latitude, day, s.AboveAir, s.Daylight, joules, hours)
			}
		}
	}
	r := warm()
	r.Losses = losses(t, 0.02, 0.03, 0.1)
	plain := plainHarvest(440, 3.037, -0.0036, 40, []float64{0.02, 0.03, 0.1})
	if got := units.In(harvest(t, r).Energy, units.WattHour); units.Compare(got, plain) != 0 {
		t.Errorf("harvest %v Wh, the plain loop has %v", got, plain)
	}
}

func TestNoAllocations(t *testing.T) {
	day := solar.DayAt{Latitude: 41.8 * units.Degree, OfYear: 288}
	roof, hookup, exposure, three := warm(), demo(), noon(), threeStrings()
	cold := summer()
	for name, call := range map[string]func() error{
		"SunOn":           func() error { _, err := solar.SunOn(day); return err },
		"DailyHarvest":    func() error { _, err := solar.DailyHarvest(roof); return err },
		"CellTemperature": func() error { _, err := solar.CellTemperature(exposure); return err },
		"ColdVoltage":     func() error { _, err := solar.ColdVoltage(cold); return err },
		"Currents":        func() error { _, err := solar.Currents(three); return err },
		"FitController":   func() error { _, err := solar.FitController(hookup); return err },
		"NewLosses": func() error {
			_, err := solar.NewLosses(solar.Loss{Name: "soiling", Fraction: 2 * units.Percent})
			return err
		},
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkSunOn(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		var sum units.Irradiation
		for i := 0; b.Loop(); i++ {
			s, err := solar.SunOn(solar.DayAt{Latitude: 41.8 * units.Degree, OfYear: 1 + i%365})
			if err != nil {
				b.Fatal(err)
			}
			sum += s.AboveAir
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for i := 0; b.Loop(); i++ {
			joules, _ := plainSun(41.8, 1+i%365)
			sum += joules
		}
		_ = sum
	})
}

func BenchmarkDailyHarvest(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		r := warm()
		r.Losses = solar.TypicalLosses()
		var sum units.Energy
		for i := 0; b.Loop(); i++ {
			r.Irradiation = units.Irradiation(i&7) * units.KilowattHourPerSquareMetre
			h, err := solar.DailyHarvest(r)
			if err != nil {
				b.Fatal(err)
			}
			sum += h.Energy
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		lost := []float64{0.02, 0.03, 0, 0.02, 0.02, 0.005, 0.015, 0.01, 0, 0.03}
		var sum float64
		for i := 0; b.Loop(); i++ {
			sum += plainHarvest(440, float64(i&7), -0.0036, 40, lost)
		}
		_ = sum
	})
}

func BenchmarkFitController(b *testing.B) {
	b.ReportAllocs()
	h := demo()
	for b.Loop() {
		if _, err := solar.FitController(h); err != nil {
			b.Fatal(err)
		}
	}
}
