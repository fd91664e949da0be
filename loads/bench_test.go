package loads_test

import (
	"testing"
	"time"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// plainTake is the arithmetic of a line without types, checks or a result to
// keep: the least that anybody could do.
func plainTake(volts, watts, count, hours, duty, standby float64) (energy, charge, average, current float64) {
	running := hours * duty
	energy = watts*count*running + standby*count*(24-running)
	return energy, energy / volts, energy / 24, watts * count / volts
}

// TestPlainTwin holds the calculator to the plain loop.
func TestPlainTwin(t *testing.T) {
	for _, count := range []int{1, 6} {
		for _, hours := range []float64{0, 0.15, 11, 24} {
			for _, duty := range []float64{0, 0.32, 1} {
				l := fridge()
				l.Count, l.Hours, l.Duty = count, units.Some(units.Elapsed(hours)*units.Hour), units.Some(units.Ratio(duty))
				v := take(t, battery, l)
				energy, charge, average, current := plainTake(12, 48, float64(count), hours, duty, 1.5)
				for name, pair := range map[string][2]float64{
					"energy": {units.In(v.Energy, units.WattHour), energy}, "charge": {units.In(v.Charge.Or(0), units.AmpereHour), charge},
					"average": {float64(v.Average), average}, "current": {float64(v.Current), current},
				} {
					if units.Compare(pair[0], pair[1]) != 0 {
						t.Errorf("%d for %v h at %v: %s is %v, the plain loop has %v", count, hours, duty, name, pair[0], pair[1])
					}
				}
			}
		}
	}
}

func TestNoAllocations(t *testing.T) {
	l, line, h := fridge(), take(t, battery, fridge()), cabin()
	for name, call := range map[string]func() error{
		"Take":        func() error { _, err := loads.Take(battery, l); return err },
		"At":          func() error { _, err := line.At(11.5 * units.Volt); return err },
		"HeatingDuty": func() error { _, err := loads.HeatingDuty(h); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkTake(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		l := fridge()
		var sum units.Energy
		for i := 0; b.Loop(); i++ {
			l.Count = 1 + i&7
			v, err := loads.Take(battery, l)
			if err != nil {
				b.Fatal(err)
			}
			sum += v.Energy
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for i := 0; b.Loop(); i++ {
			energy, _, _, _ := plainTake(12, 48, float64(1+i&7), 24, 0.32, 1.5)
			sum += energy
		}
		_ = sum
	})
}

func BenchmarkAudit(b *testing.B) {
	b.ReportAllocs()
	buses, list := demoBuses(), demoLoads()
	for b.Loop() {
		if _, err := loads.Audit(buses, list); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDay(b *testing.B) {
	b.ReportAllocs()
	ledger, date := demo(b), time.Date(2025, 10, 14, 0, 0, 0, 0, time.UTC)
	for b.Loop() {
		if _, err := ledger.Day("dc", date, time.Minute); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWorking(b *testing.B) {
	b.ReportAllocs()
	ledger := demo(b)
	for b.Loop() {
		_ = ledger.Working("dc").Text()
	}
}
