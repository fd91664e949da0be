package battery_test

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
)

// fuzzBank makes a bank from raw numbers, most of them nonsense.
func fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16) battery.Bank {
	b := battery.Bank{Battery: battery.Battery{
		Chemistry: battery.Chemistry(flags & 7), Capacity: units.Charge(capacity), Voltage: units.Voltage(voltage),
	}, Series: series, Parallel: parallel}
	if flags&8 != 0 {
		b.Battery.RatedOver, b.Battery.Exponent = units.Some(units.Elapsed(over)), units.Some(units.Ratio(exponent))
	}
	if flags&16 != 0 {
		b.Battery.Usable, b.Battery.Aged = units.Some(units.Ratio(usable)), units.Some(units.Ratio(usable))
	}
	if flags&32 != 0 {
		b.Battery.DischargeLimit, b.Battery.ChargeLimit = units.Some(units.Current(limit)), units.Some(units.Current(limit))
	}
	if flags&64 != 0 {
		b.Battery.Resistance = units.Some(units.Resistance(resistance))
	}
	if flags&128 != 0 {
		b.CellTemperature = units.Celsius(celsius)
	}
	if flags&256 != 0 {
		b.Multiplier, b.Vent = units.Some(units.Ratio(exponent)), units.Some(units.Area(resistance))
	}
	if flags&2048 != 0 {
		b.Battery.Cells, b.Battery.ChargeVoltage = units.Some(series), units.Some(units.Voltage(limit))
	}
	if flags&4096 != 0 {
		b.Charging = battery.Charging{Absorption: units.Some(units.Voltage(voltage * usable * 2)), Compensation: units.Some(units.Voltage(-resistance))}
	}
	if flags&8192 != 0 {
		b.Charging.Reference, b.Charging.Coldest, b.Charging.Cells = units.Celsius(over), units.Celsius(celsius), units.Some(parallel)
	}
	return b
}

func addSeeds(f *testing.F) {
	f.Add(360000.0, 12.8, 72000.0, 1.05, 0.9, 100.0, 0.004, -22.0, 1, 2, uint16(4|8|16|32|64|128), 130.0, 1.0)
	f.Add(792000.0, 6.0, 72000.0, 1.25, 0.5, 100.0, 0.002, 15.0, 2, 2, uint16(1|8|64|256), 600.0, 0.7)
	f.Add(792000.0, 12.0, 72000.0, 1.25, 0.5, 1.0, 0.002, 60.0, 1, 1, uint16(3|32), 20.0, 0.2)
	f.Add(math.NaN(), math.Inf(1), math.Copysign(0, -1), 0.0, -300.0, math.MaxFloat64, 5e-324, -273.2, -3, 9999, uint16(511), math.NaN(), 2.0)
	f.Add(360000.0, 12.8, 25.0, 1.05, 0.56, 14.6, 0.004, -22.0, 4, 6, uint16(4|32|128|2048|4096|8192), 130.0, 1.0)
	f.Add(1e307, 2.0, 1e-300, 2.0, 1e-300, 1e308, 1e308, 80.0, 1000, 1000, uint16(2|511&^7), 1e308, 1e-300)
}

// checkFinite demands that every number of a result, of whatever depth, is
// finite.
func checkFinite(t *testing.T, result any) {
	t.Helper()
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Float64:
			if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%s is %v", path, x)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		}
	}
	walk(reflect.ValueOf(result), reflect.TypeOf(result).Name())
}

// checkOutcome demands a typed error or finite numbers that are not negative.
func checkOutcome(t *testing.T, err error, numbers ...float64) {
	t.Helper()
	if err != nil {
		var e *units.RangeError
		if !errors.As(err, &e) || e.Error() == "" {
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

func FuzzHoldUp(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, load, state float64) {
		h := battery.Hold{
			Bank:          fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags),
			StateOfCharge: units.Some(units.Ratio(state)),
		}
		switch flags >> 9 & 3 {
		case 0:
			h.Draw.Power = units.Some(units.Power(load))
		case 1:
			h.Draw.Current = units.Some(units.Current(load))
		default:
			h.Draw.Resistance, h.CutOff = units.Some(units.Resistance(load)), units.Some(units.Voltage(voltage))
		}
		e, err := battery.HoldUp(h)
		checkOutcome(t, err, float64(e.Time), float64(e.Charge), float64(e.Energy), float64(e.Sag.Voltage), float64(e.Sag.Current),
			float64(e.MostPower.Or(0)), float64(e.Usable.Energy))
		checkFinite(t, e)
		if err == nil && units.Exceeds(e.Charge, e.Usable.Charge) {
			t.Fatalf("gives %v of %v usable", e.Charge, e.Usable.Charge)
		}
		_ = e.Working().Text()
		if len(e.Findings()) == 0 {
			t.Fatal("no findings")
		}
	})
}

func FuzzUsable(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, load, _ float64) {
		b := fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags)
		u, err := battery.Usable(b, units.Some(units.Current(load)))
		checkOutcome(t, err, float64(u.Charge), float64(u.Energy), float64(u.Factor), float64(u.Assembly.OpenCircuit))
		checkFinite(t, u)
		if err == nil && units.Exceeds(u.Charge, u.Assembly.Capacity) {
			t.Fatalf("%v usable of %v", u.Charge, u.Assembly.Capacity)
		}
		_, _ = u.Working().Text(), u.Findings()
	})
}

func FuzzAssemble(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, _, _ float64) {
		b := fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags)
		a, err := battery.Assemble(b)
		checkOutcome(t, err, float64(a.Voltage), float64(a.Energy), float64(a.OpenCircuit), float64(a.Resistance.Or(0)))
		checkFinite(t, a)
		if err == nil && (a.Cells < b.Series || a.Batteries < b.Parallel || a.Bank != b) {
			t.Fatalf("%d cells, %d batteries of %+v", a.Cells, a.Batteries, b)
		}
		_, _ = a.Working().Text(), a.Findings()
	})
}

func FuzzVentilate(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, _, _ float64) {
		b := fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags)
		v, err := battery.Ventilate(b)
		checkOutcome(t, err, float64(v.Flow), float64(v.ByFlow), float64(v.Opening))
		checkFinite(t, v)
		if err == nil && (!b.Battery.Chemistry.IsLead() || units.Exceeds(1100*units.SquareMillimetre, v.Opening)) {
			t.Fatalf("%v: openings of %v", b.Battery.Chemistry, v.Opening)
		}
		_, _ = v.Working().Text(), v.Findings()
	})
}

func FuzzFreezingPoint(f *testing.F) {
	for _, s := range []float64{0, 0.228, 0.25, 0.6, 1, 1.1, math.NaN()} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, state float64) {
		z, err := battery.FreezingPoint(units.Ratio(state))
		checkOutcome(t, err, float64(z.StateOfCharge), -z.Point.Celsius())
		checkFinite(t, z)
		if err == nil && (z.Point.Compare(z.LowPoint) > 0 || z.Point.Compare(z.HighPoint) < 0) {
			t.Fatalf("%v freezes at %v, outside its rows %v and %v", state, z.Point, z.LowPoint, z.HighPoint)
		}
		_, _ = z.Working().Text(), z.Findings()
	})
}

func FuzzParseChemistry(f *testing.F) {
	for _, s := range []string{"flooded", " AGM", "LiFePO4", "lithium  iron\tphosphate", "lithium", "", "not given"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		c, err := battery.ParseChemistry(s)
		if err != nil {
			var e *units.ParseError
			if !errors.As(err, &e) || c != 0 {
				t.Fatalf("ParseChemistry(%q) = %v, %v", s, c, err)
			}
			return
		}
		if back, err := battery.ParseChemistry(c.String()); err != nil || back != c {
			t.Fatalf("%v reads back as %v, %v", c, back, err)
		}
	})
}

func FuzzCompensate(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, _, _ float64) {
		v, err := battery.Compensate(fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags))
		checkOutcome(t, err, float64(v.Voltage), float64(v.Limit.Or(0)))
		checkFinite(t, v)
		if err == nil && v.Coldest.Compare(v.Reference) < 0 && units.Exceeds(v.Absorption, v.Voltage) {
			t.Fatalf("at %v, colder than %v, %v falls to %v", v.Coldest, v.Reference, v.Absorption, v.Voltage)
		}
		_, _ = v.Working().Text(), v.Findings()
	})
}

func FuzzCheckLimits(f *testing.F) {
	addSeeds(f)
	f.Fuzz(func(t *testing.T, capacity, voltage, over, exponent, usable, limit, resistance, celsius float64, series, parallel int, flags uint16, load, charge float64) {
		l, err := battery.CheckLimits(battery.Demand{
			Bank:      fuzzBank(capacity, voltage, over, exponent, usable, limit, resistance, celsius, series, parallel, flags),
			Discharge: units.Some(units.Current(load)), Charge: units.Some(units.Current(charge)),
		})
		checkOutcome(t, err, float64(l.Discharge.Or(0)), float64(l.ChargeOneOut.Or(0)), float64(l.DischargeOthers.Or(0)))
		checkFinite(t, l)
		_, _ = l.Working().Text(), l.Findings()
	})
}

func FuzzUnderLoad(f *testing.F) {
	f.Add(12.2, 0.01, 1800.0, 10.5, uint8(0))
	f.Add(12.0, 0.5, 24.0, 10.5, uint8(1))
	f.Add(10.0, 0.2, 0.0, -1.0, uint8(2))
	f.Add(1e300, 1e300, 1e300, math.NaN(), uint8(2))
	f.Fuzz(func(t *testing.T, emf, internal, load, cut float64, kind uint8) {
		c := battery.Circuit{OpenCircuit: units.Voltage(emf), Internal: units.Resistance(internal), CutOff: units.Some(units.Voltage(cut))}
		switch kind % 3 {
		case 0:
			c.Draw.Power = units.Some(units.Power(load))
		case 1:
			c.Draw.Current = units.Some(units.Current(load))
		default:
			c.Draw.Resistance = units.Some(units.Resistance(load))
		}
		s, err := battery.UnderLoad(c)
		checkOutcome(t, err, float64(s.Voltage), float64(s.Current), float64(s.Power), float64(s.Lost))
		checkFinite(t, s)
		if err == nil && units.Exceeds(s.Voltage, c.OpenCircuit) {
			t.Fatalf("%v under load, %v at rest", s.Voltage, c.OpenCircuit)
		}
		_, _ = s.Working().Text(), s.Findings()
	})
}

func FuzzExponentFrom(f *testing.F) {
	f.Add(648000.0, 21600.0, 792000.0, 72000.0, 30.0)
	f.Add(1e300, 1e-300, 5e-324, 1.0, 0.0)
	f.Fuzz(func(t *testing.T, ca, ha, cb, hb, current float64) {
		a := battery.Rating{Capacity: units.Charge(ca), Over: units.Elapsed(ha)}
		x, err := battery.ExponentFrom(a, battery.Rating{Capacity: units.Charge(cb), Over: units.Elapsed(hb)})
		checkOutcome(t, err, float64(x.Value), float64(x.CurrentA), float64(x.CurrentB))
		checkFinite(t, x)
		_, _ = x.Working().Text(), x.Findings()
	})
}

func FuzzDeliver(f *testing.F) {
	f.Add(360000.0, 72000.0, 1.2, 10.0)
	f.Add(360000.0, 72000.0, 1.3, 1.0)
	f.Add(1e300, 1e-300, 2.0, 5e-324)
	f.Fuzz(func(t *testing.T, capacity, over, exponent, current float64) {
		v, err := battery.Deliver(battery.Discharge{
			Rating:   battery.Rating{Capacity: units.Charge(capacity), Over: units.Elapsed(over)},
			Exponent: units.Ratio(exponent), Current: units.Current(current),
		})
		checkOutcome(t, err, float64(v.Charge), float64(v.Time), float64(v.Law))
		checkFinite(t, v)
		if err == nil && units.Exceeds(v.Charge, v.Discharge.Rating.Capacity) {
			t.Fatalf("%v delivered of %v", v.Charge, v.Discharge.Rating.Capacity)
		}
		_, _ = v.Working().Text(), v.Findings()
	})
}
