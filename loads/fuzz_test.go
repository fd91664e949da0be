package loads_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// checkOutcome demands typed errors, or numbers that are finite and not
// negative.
func checkOutcome(t *testing.T, err error, numbers ...float64) {
	t.Helper()
	if err != nil {
		if list := rangeErrors(err); len(list) == 0 || err.Error() == "" {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		return
	}
	for i, x := range numbers {
		if !(x >= 0) || math.IsInf(x, 0) {
			t.Fatalf("number %d of the result is %v", i, x)
		}
	}
}

// fuzzLoad makes a load from raw numbers, most of them nonsense.
func fuzzLoad(x, rated, pf, duty, hours, standby float64, count, from, to int, flags uint16) loads.Load {
	l := loads.Load{Name: "load", Bus: "bus", Kind: loads.Kind(flags & 7), Count: count, Standby: units.Power(standby), MustNotStop: flags&8 != 0}
	switch flags >> 4 & 3 {
	case 0:
		l.Rating.Power = units.Some(units.Power(x))
	case 1:
		l.Rating.Current = units.Some(units.Current(x))
	case 2:
		l.Rating.Apparent = units.Some(units.ApparentPower(x))
	default:
		l.Rating.Output, l.Rating.Efficiency = units.Some(units.Power(x)), units.Some(units.Ratio(pf))
	}
	if flags&64 != 0 {
		l.Rating.Voltage = units.Some(units.Voltage(rated))
	}
	if flags&128 != 0 {
		l.Rating.PowerFactor = units.Some(units.Ratio(pf))
	}
	if flags&256 != 0 {
		l.Duty = units.Some(units.Ratio(duty))
	}
	if flags&512 != 0 {
		l.Hours = units.Some(units.Elapsed(hours))
	}
	if flags&1024 != 0 {
		l.Windows = []loads.Window{{From: loads.Clock{Hour: from / 60, Minute: from % 60}, To: loads.Clock{Hour: to / 60, Minute: to % 60}}}
	}
	return l
}

func FuzzTake(f *testing.F) {
	f.Add(12.0, 48.0, 12.0, 0.6, 0.32, 86400.0, 1.5, 1, 0, 0, uint16(2|512|256))
	f.Add(120.0, 12.0, 115.0, 0.6, 0.5, 0.0, 0.0, 2, 1110, 330, uint16(1<<15|3|16|64|128|1024))
	f.Add(120.0, 950.0, 115.0, 0.65, 0.5, 3600.0, 0.0, 2, 0, 0, uint16(1<<15|1|48|512))
	f.Add(math.Inf(1), math.NaN(), 1e-300, 1e300, -1.0, 1e9, 5e-324, -1, -1, 1441, uint16(2047))
	f.Fuzz(func(t *testing.T, volts, x, rated, pf, duty, hours, standby float64, count, from, to int, flags uint16) {
		b := loads.Bus{Name: "bus", Kind: loads.BusKind(1 + flags>>15), Voltage: units.Voltage(volts)}
		l := fuzzLoad(x, rated, pf, duty, hours, standby, count, from, to, flags)
		v, err := loads.Take(b, l)
		checkOutcome(t, err, float64(v.Power), float64(v.Apparent), float64(v.Current), float64(v.Energy),
			float64(v.Average), float64(v.StandbyEnergy), float64(v.RunEnergy), float64(v.Charge.Or(0)))
		_ = v.Working().Text()
		_ = v.Findings()
		ledger, auditErr := loads.Audit([]loads.Bus{b}, []loads.Load{l})
		if (err == nil) != (auditErr == nil) {
			t.Fatalf("Take says %v, Audit %v", err, auditErr)
		}
		if e := (*loads.EntryError)(nil); auditErr != nil && !errors.As(auditErr, &e) {
			t.Fatalf("%v does not say what it is about", auditErr)
		}
		if err != nil {
			return
		}
		day, err := ledger.Day("bus", time.Date(2025, 6, 1, 0, 0, 0, 0, time.UTC), 90*time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := float64(units.EnergyOf(day)), float64(v.Energy); math.Abs(got-want) > 1e-9*want+1e-300 {
			t.Fatalf("the day adds up to %v, want %v", got, want)
		}
	})
}

func FuzzAudit(f *testing.F) {
	f.Add(12.0, 120.0, 48.0, 900.0, 0.6, 86400.0, 1, 2, uint16(2|512), uint16(1|8|512))
	f.Add(12.0, 230.0, 48.0, 66.0, 0.6, 3600.0, 1, 2, uint16(2|1024), uint16(3|32|128|512))
	f.Add(-1.0, math.NaN(), math.Inf(1), 1e308, 2.0, 1e9, 0, -1, uint16(0), uint16(2047))
	f.Fuzz(func(t *testing.T, dc, ac, x, y, pf, hours float64, m, n int, flags, more uint16) {
		buses := []loads.Bus{
			{Name: "bus", Kind: loads.Direct, Voltage: units.Voltage(dc)}, {Name: "ac", Kind: loads.Alternating, Voltage: units.Voltage(ac)},
		}
		first := fuzzLoad(x, dc, pf, pf, hours, 0, m, 1110, 330, flags)
		second := fuzzLoad(y, ac, pf, pf, hours, pf, n, 0, 60, more)
		second.Bus = "ac"
		ledger, err := loads.Audit(buses, []loads.Load{first, second, first})
		if err != nil {
			checkOutcome(t, err)
			if ledger.Lines != nil || ledger.Buses != nil {
				t.Fatalf("%v leaves a ledger", err)
			}
			return
		}
		for _, total := range ledger.Buses {
			var energy, must units.Energy
			for _, v := range ledger.Lines {
				if v.Bus == total.Bus {
					energy += v.Energy
					if v.MustNotStop {
						must += v.Energy
					}
				}
			}
			if energy != total.Energy || must != total.MustNotStop.Energy || must > energy {
				t.Fatalf("%s has %v and %v, its lines %v and %v", total.Bus.Name, total.Energy, total.MustNotStop.Energy, energy, must)
			}
			checkOutcome(t, nil, float64(total.Energy), float64(total.Connected), float64(total.ConnectedCurrent), float64(total.Charge.Or(0)))
			_ = ledger.Working(total.Bus.Name).Text()
		}
		if len(ledger.Findings()) == 0 {
			t.Fatal("no findings")
		}
	})
}

func FuzzLineAt(f *testing.F) {
	f.Add(120.0, 1500.0, 1.0, 104.0, uint8(1), true)
	f.Add(12.0, 84.0, 0.0, 10.8, uint8(3), false)
	f.Add(math.NaN(), -1.0, 5e-324, math.Inf(1), uint8(200), true)
	f.Fuzz(func(t *testing.T, volts, watts, pf, at float64, kind uint8, alternating bool) {
		v := loads.Line{Kind: loads.Kind(kind), Power: units.Power(watts), PowerFactor: units.Ratio(pf),
			Bus: loads.Bus{Kind: loads.Direct, Voltage: units.Voltage(volts)}}
		if alternating {
			v.Bus.Kind = loads.Alternating
		}
		d, err := v.At(units.Voltage(at))
		checkOutcome(t, err, float64(d.Apparent), float64(d.Current))
		_ = d.Working().Text()
		_ = d.Findings()
	})
}

func FuzzHeatingDuty(f *testing.F) {
	f.Add(130.0, 18.0, -7.0, 8792.0, 0.78, true)
	f.Add(math.NaN(), math.Inf(1), -300.0, 0.0, 2.0, false)
	f.Fuzz(func(t *testing.T, loss, inside, outside, input, eta float64, given bool) {
		h := loads.Heating{LossPerKelvin: units.Power(loss), Inside: units.Celsius(inside), Input: units.Power(input), Efficiency: units.Ratio(eta)}
		if given {
			h.Outside = units.Celsius(outside)
		}
		c, err := loads.HeatingDuty(h)
		checkOutcome(t, err, float64(c.Loss), float64(c.Output), float64(c.Needed), float64(c.Running))
		if c.Duty > 1 {
			t.Fatalf("duty %v", c.Duty)
		}
		_ = c.Working().Text()
		_ = c.Findings()
	})
}

func FuzzParseClock(f *testing.F) {
	for _, s := range []string{"18:30", "5:05", "24:00", "24:01", "", "::", "+1:00"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := loads.ParseClock(s)
		if err != nil {
			var e *units.ParseError
			if !errors.As(err, &e) || e.Input != s {
				t.Fatalf("error %v is not a *units.ParseError of %q", err, s)
			}
			return
		}
		if again, err := loads.ParseClock(c.String()); err != nil || again != c {
			t.Fatalf("%q is %v, and that is %v, %v", s, c, again, err)
		}
	})
}
