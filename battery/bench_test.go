package battery_test

import (
	"math"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
)

// plainHoldUp is the arithmetic of a hold-up without types, checks or a
// result to keep: the least that anybody could do. Amperes, volts, ohms,
// ampere-hours, hours.
func plainHoldUp(watts, volts, ohms, ampereHours, hours, exponent, depth, state float64) (t, u, i float64) {
	u = (volts + math.Sqrt(volts*volts-4*ohms*watts)) / 2
	i = watts / u
	factor := math.Pow(ampereHours/(i*hours), exponent-1)
	if factor > 1 {
		factor = 1
	}
	return ampereHours * factor * (depth - (1 - state)) / i, u, i
}

// TestPlainTwin holds the calculator to the plain arithmetic.
func TestPlainTwin(t *testing.T) {
	for _, watts := range []float64{5, 60, 600, 2400} {
		for _, exponent := range []float64{1, 1.1, 1.3, 2} {
			h := battery.Hold{Bank: lead(), Draw: battery.Draw{Power: units.Some(units.Power(watts))}, StateOfCharge: units.Some(93 * units.Percent)}
			h.Bank.Battery.Exponent = units.Some(units.Ratio(exponent))
			e := must[battery.Endurance](t)(battery.HoldUp(h))
			hours, u, i := plainHoldUp(watts, 12, 0.002, 440, 20, exponent, 0.5, 0.93)
			for name, pair := range map[string][2]float64{
				"time": {units.In(e.Time, units.Hour), hours}, "voltage": {float64(e.Sag.Voltage), u}, "current": {float64(e.Sag.Current), i},
			} {
				if units.Compare(pair[0], pair[1]) != 0 {
					t.Errorf("%v W, exponent %v: %s is %v, plain %v", watts, exponent, name, pair[0], pair[1])
				}
			}
		}
	}
}

func TestNoAllocations(t *testing.T) {
	h := hold()
	b, d := h.Bank, battery.Demand{Bank: h.Bank, Discharge: units.Some(20 * units.Ampere)}
	r := battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour}
	for name, call := range map[string]func() error{
		"Assemble":    func() error { _, err := battery.Assemble(b); return err },
		"Usable":      func() error { _, err := battery.Usable(b, d.Discharge); return err },
		"HoldUp":      func() error { _, err := battery.HoldUp(h); return err },
		"CheckLimits": func() error { _, err := battery.CheckLimits(d); return err },
		"UnderLoad": func() error {
			_, err := battery.UnderLoad(battery.Circuit{OpenCircuit: 12, Internal: 0.01, Draw: h.Draw})
			return err
		},
		"Deliver": func() error {
			_, err := battery.Deliver(battery.Discharge{Rating: r, Exponent: 1.2, Current: 9})
			return err
		},
		"ExponentFrom": func() error {
			_, err := battery.ExponentFrom(r, battery.Rating{Capacity: 60 * units.AmpereHour, Over: units.Hour})
			return err
		},
		"FreezingPoint": func() error { _, err := battery.FreezingPoint(0.4); return err },
		"Compensate":    func() error { _, err := battery.Compensate(leftOn()); return err },
		"Ventilate":     func() error { _, err := battery.Ventilate(lead()); return err },
		"Figures":       func() error { _, err := battery.Gel.Figures(); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkHoldUp(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		h := battery.Hold{Bank: lead()}
		var sum units.Elapsed
		for i := 0; b.Loop(); i++ {
			h.Draw.Power = units.Some(units.Power(600 + i&63))
			e, err := battery.HoldUp(h)
			if err != nil {
				b.Fatal(err)
			}
			sum += e.Time
		}
		_ = sum
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		var sum float64
		for i := 0; b.Loop(); i++ {
			t, _, _ := plainHoldUp(float64(600+i&63), 12, 0.002, 440, 20, 1.25, 0.5, 1)
			sum += t
		}
		_ = sum
	})
}

func BenchmarkUnderLoad(b *testing.B) {
	b.ReportAllocs()
	c := battery.Circuit{OpenCircuit: 12.2, Internal: 0.01, Draw: battery.Draw{Power: units.Some(1800 * units.Watt)}}
	for b.Loop() {
		if _, err := battery.UnderLoad(c); err != nil {
			b.Fatal(err)
		}
	}
}
