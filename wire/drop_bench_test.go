package wire_test

import (
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// dayOfMinutes is a load that varies within a day.
func dayOfMinutes() units.Series[units.Current] {
	load := units.Series[units.Current]{Start: time.Unix(0, 0).UTC(), Step: time.Minute, Values: make([]units.Current, 24*60)}
	for i := range load.Values {
		load.Values[i] = units.Current(i % 20)
	}
	return load
}

func TestDropQuestionsAllocateNothing(t *testing.T) {
	r, list, load := lamp(), wire.Gauges(), dayOfMinutes()
	watts := hourly[units.Power](10, 100, 150)
	r.Parallel, r.Contacts = 2, units.Some(1*units.Milliohm)
	tabulated := r
	tabulated.Conductor.Basis = byTable8
	for name, call := range map[string]func() error{
		"VoltageDrop":    func() error { _, err := wire.VoltageDrop(r); return err },
		"by Table 8":     func() error { _, err := wire.VoltageDrop(tabulated); return err },
		"LongestRun":     func() error { _, err := wire.LongestRun(r); return err },
		"SmallestSize":   func() error { _, err := wire.SmallestSize(r, list); return err },
		"LargestCurrent": func() error { _, err := wire.LargestCurrent(r); return err },
		"MassOf":         func() error { _, err := wire.MassOf(r.Conductor); return err },
		"ACImpedance":    func() error { _, err := wire.ACImpedance(roofUnit().Line); return err },
		"ACDrop":         func() error { _, err := wire.ACDrop(roofUnit()); return err },
		"LegDrop":        func() error { _, err := wire.LegDrop(panel()); return err },
		"WarmDrop":       func() error { _, err := wire.WarmDrop(inverterRun()); return err },
		"EnergyLost":     func() error { _, err := wire.EnergyLost(r, load); return err },
		"in powers":      func() error { _, err := wire.EnergyLost(r, watts); return err },
		"EnergyLostIn":   func() error { _, err := wire.EnergyLostIn(r, load, 7); return err },
		"MeasureJoint":   func() error { _, err := wire.MeasureJoint(terminal()); return err },
		"OpenNeutral":    func() error { _, err := wire.OpenNeutral(splitLoad()); return err },
		"SharedNeutral":  func() error { _, err := wire.SharedNeutral(multiwire()); return err },
	} {
		if err := call(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

// plainAC is the arithmetic of a drop in alternating current, of values at hand.
func plainAC(amperes, metres, r, x, pf, volts float64) (exact, heat float64) {
	r, x = 2*r*metres, 2*x*metres
	s := math.Sqrt(1 - pf*pf)
	a, b := amperes*(r*pf+x*s), amperes*(x*pf-r*s)
	return volts - (math.Sqrt(volts*volts-b*b) - a), amperes * amperes * r
}

// plainLoss is the sum of squares of a load.
func plainLoss(load []float64, ohms, seconds float64) (joules float64) {
	for _, i := range load {
		joules += i * i
	}
	return joules * ohms * seconds
}

// plainWarm iterates the temperature of a copper conductor.
func plainWarm(amperes, ampacity, ambient, base, rated float64) float64 {
	t := ambient
	load := amperes / ampacity
	for {
		next := ambient + (rated-base)*load*load*(1+0.00393*(t-20))/(1+0.00393*(rated-20))
		if math.Abs(next-t) < 1e-10 {
			return next
		}
		t = next
	}
}

// TestPlainTwins holds calculators to the plain loops that they are timed
// against.
func TestPlainTwins(t *testing.T) {
	d := must[wire.AlternatingDrop](t)(wire.ACDrop(roofUnit()))
	exact, heat := plainAC(14, float64(75*units.Foot), 1.2/304.8, 0.05/304.8, 0.85, 120)
	if units.Compare(exact, float64(d.Exact)) != 0 || units.Compare(heat, float64(d.Heat)) != 0 {
		t.Errorf("%v and %v, the plain loop has %v and %v", d.Exact, d.Heat, exact, heat)
	}
	load := dayOfMinutes()
	x := must[wire.Loss](t)(wire.EnergyLost(lamp(), load))
	if joules := plainLoss(plainValues(load), float64(x.Resistance), 60); units.Compare(joules, float64(x.Lost)) != 0 {
		t.Errorf("%v, the plain loop has %v J", x.Lost, joules)
	}
	w := must[wire.WarmedDrop](t)(wire.WarmDrop(steady(200 * units.Ampere)))
	if celsius := plainWarm(200, 285, 40, 30, 105); units.Compare(celsius, w.Temperature.Celsius()) != 0 {
		t.Errorf("%v, the plain loop has %v °C", w.Temperature, celsius)
	}
}

func plainValues(load units.Series[units.Current]) []float64 {
	plain := make([]float64, load.Len())
	for i, x := range load.Values {
		plain[i] = float64(x)
	}
	return plain
}

func BenchmarkACDrop(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		r := roofUnit()
		var sum units.Voltage
		for i := 0; b.Loop(); i++ {
			r.Current = units.Current(1 + i&15)
			sum += must[wire.AlternatingDrop](b)(wire.ACDrop(r)).Exact
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for i := 0; b.Loop(); i++ {
			exact, heat := plainAC(float64(1+i&15), 22.86, 0.0039, 0.00016, 0.85, 120)
			sum += exact + heat
		}
		_ = sum
	})
}

func BenchmarkLegDrop(b *testing.B) {
	b.ReportAllocs()
	r := panel()
	for b.Loop() {
		if _, err := wire.LegDrop(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWarmDrop(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		w := steady(200 * units.Ampere)
		for b.Loop() {
			if _, err := wire.WarmDrop(w); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for b.Loop() {
			sum += plainWarm(200, 285, 40, 30, 105)
		}
		_ = sum
	})
}

func BenchmarkEnergyLost(b *testing.B) {
	load := dayOfMinutes()
	b.Run("n=1440/calculator", func(b *testing.B) {
		b.ReportAllocs()
		r := lamp()
		for b.Loop() {
			if _, err := wire.EnergyLost(r, load); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("n=1440/plain", func(b *testing.B) {
		b.ReportAllocs()
		plain := plainValues(load)
		var sum float64
		for b.Loop() {
			sum += plainLoss(plain, 0.03, 60)
		}
		_ = sum
	})
}

func BenchmarkLongestRuns(b *testing.B) {
	b.ReportAllocs()
	sizes, currents := wire.Gauges(), []units.Current{1, 2, 5, 10, 20, 50, 100, 200}
	cells := make([]wire.Reach, 0, len(sizes)*len(currents))
	for b.Loop() {
		if _, err := wire.AppendLongestRuns(cells, lamp(), sizes, currents); err != nil {
			b.Fatal(err)
		}
	}
}
