package solar_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// checkOutcome demands a typed error, or numbers that are finite and not
// negative.
func checkOutcome(t *testing.T, err error, numbers ...float64) (ok bool) {
	t.Helper()
	if err != nil {
		var e *units.RangeError
		if !errors.As(err, &e) || e.Error() == "" {
			t.Fatalf("error %v is not a *units.RangeError", err)
		}
		return false
	}
	for i, x := range numbers {
		if !(x >= 0) || math.IsInf(x, 0) {
			t.Fatalf("number %d of the result is %v", i, x)
		}
	}
	return true
}

// checkExplained demands working that can be followed of every result, and
// of every other no more than that it does not panic.
func checkExplained(t *testing.T, ok bool, x explained) {
	t.Helper()
	sheet, _ := x.Working(), x.Findings()
	if !ok {
		_ = sheet.Text()
		return
	}
	unitstest.CheckSheet(t, sheet)
}

func FuzzSunOn(f *testing.F) {
	f.Add(41.8, 288)
	f.Add(90.0, 1)
	f.Add(-66.56, 172)
	f.Add(0.0, 366)
	f.Add(math.NaN(), 0)
	f.Fuzz(func(t *testing.T, latitude float64, day int) {
		s, err := solar.SunOn(solar.DayAt{Latitude: units.Angle(latitude) * units.Degree, OfYear: day})
		ok := checkOutcome(t, err, float64(s.Daylight), float64(s.AboveAir), float64(s.SunsetAngle), float64(s.InverseDistance))
		checkExplained(t, ok, s)
		if ok && s.Daylight > 24*units.Hour {
			t.Fatalf("a day of %v", s.Daylight)
		}
	})
}

func FuzzDailyHarvest(f *testing.F) {
	f.Add(440.0, 3.037, -0.36, 40.0, 0.2, 0.03, uint8(3))
	f.Add(100.0, 0.0, -0.4, 25.0, 1.0, 0.0, uint8(1))
	f.Add(1e307, 15.0, 0.0, -60.0, 0.0, 0.0, uint8(3))
	f.Add(math.Inf(1), -1.0, math.NaN(), 1e9, 2.0, -1.0, uint8(0))
	f.Fuzz(func(t *testing.T, watts, kilowattHours, gamma, celsius, first, second float64, flags uint8) {
		r := solar.PanelDay{Peak: units.Power(watts), Irradiation: units.Irradiation(kilowattHours) * units.KilowattHourPerSquareMetre}
		if flags&1 != 0 {
			r.PowerCoefficient = units.Some(units.PerKelvin(gamma) * units.PercentPerKelvin)
		}
		if flags&2 != 0 {
			r.CellTemperature = units.Celsius(celsius)
		}
		list, err := solar.NewLosses(solar.Loss{Name: "first", Fraction: units.Ratio(first)}, solar.Loss{Name: "second", Fraction: units.Ratio(second)})
		if checkOutcome(t, err, float64(list.Kept())) {
			r.Losses = list
		}
		h, err := solar.DailyHarvest(r)
		ok := checkOutcome(t, err, float64(h.Energy), float64(h.Nameplate), float64(h.TemperatureFactor), float64(h.PeakHours))
		checkExplained(t, ok, h)
		if len(h.Findings()) == 0 {
			t.Fatal("no findings")
		}
	})
}

func FuzzCellTemperature(f *testing.F) {
	f.Add(30.0, 1000.0, 47.0)
	f.Add(-60.0, 0.0, 25.0)
	f.Add(-27.0, 799.9999999999999, 47.0) // air and rise cancel
	f.Add(math.NaN(), -1.0, 500.0)
	f.Fuzz(func(t *testing.T, air, irradiance, nominal float64) {
		x := solar.Exposure{Air: units.Celsius(air), Irradiance: units.Irradiance(irradiance), Nominal: units.Celsius(nominal)}
		h, err := solar.CellTemperature(x)
		ok := checkOutcome(t, err, float64(h.Rise))
		if ok && (h.Temperature.Compare(x.Air) < 0 || h.Rise > 112.5) { // 60 K · 1500/800
			t.Fatalf("%+v", h)
		}
		checkExplained(t, ok, h)
	})
}

func FuzzColdVoltage(f *testing.F) {
	f.Add(46.2, -0.28, -22.0, 2, uint8(1))
	f.Add(22.5, 0.0, -40.0, 1000, uint8(0))
	f.Add(1e308, -1.0, -90.0, 1000, uint8(3))
	f.Add(math.Inf(1), 0.28, 26.0, 0, uint8(5))
	f.Fuzz(func(t *testing.T, voc, beta, coldest float64, series int, flags uint8) {
		s := solar.ColdString{Rules: solar.NEC2017, Series: series, Coldest: units.Celsius(coldest),
			Panel: solar.Panel{Voc: units.Voltage(voc), Cells: solar.CellType(flags >> 1)}}
		if flags&1 != 0 {
			s.Panel.VoltageCoefficient = units.Some(units.PerKelvin(beta) * units.PercentPerKelvin)
		}
		o, err := solar.ColdVoltage(s)
		ok := checkOutcome(t, err, float64(o.Voltage), float64(o.Standard))
		if ok && units.Exceeds(o.Standard, o.Voltage) {
			t.Fatalf("the cold lowers the voltage: %+v", o)
		}
		checkExplained(t, ok, o)
	})
}

func FuzzCurrents(f *testing.F) {
	f.Add(6.12, 15.0, 10.0, 3, uint8(3))
	f.Add(11.0, 20.0, 1e-9, 1, uint8(0))
	f.Add(math.MaxFloat64, 1e-300, math.NaN(), 1000, uint8(3))
	f.Fuzz(func(t *testing.T, isc, label, fuse float64, parallel int, flags uint8) {
		s := solar.Strings{Rules: solar.NEC2017, Array: solar.Array{Series: 1, Parallel: parallel, Panel: solar.Panel{Isc: units.Current(isc)}}}
		if flags&1 != 0 {
			s.Array.Panel.SeriesFuse = units.Some(units.Current(label))
		}
		if flags&2 != 0 {
			s.StringFuse = units.Some(units.Current(fuse))
		}
		c, err := solar.Currents(s)
		ok := checkOutcome(t, err, float64(c.Required), float64(c.StringRequired), float64(c.Backfeed))
		if ok && c.Fusing == solar.FusingNotJudged && (flags&1 != 0 || parallel == 1) {
			t.Fatalf("not judged: %+v", c)
		}
		checkExplained(t, ok, c)
	})
}

func FuzzFitController(f *testing.F) {
	f.Add(220.0, 46.2, 38.4, 6.12, 5.73, -0.28, 15.0, -22.0, 70.0, 100.0, 30.0, 13.2, 0.95, 2, 1, uint8(3), uint8(1))
	f.Add(276.0, 38.0, 30.8, 9.6, 8.9, -0.28, 20.0, -40.0, 25.0, 50.0, 20.0, 12.8, 1.0, 1, 3, uint8(0), uint8(2))
	f.Add(1e300, 1e153, 1e152, 1e150, 1e149, -1.0, 1e-300, -90.0, 120.0, 1e-300, 1e300, 1e-300, 1e-9, 1000, 1000, uint8(255), uint8(1))
	f.Add(math.NaN(), math.Inf(1), 0.0, -1.0, 7.0, 0.28, 0.0, 99.0, -1.0, 0.0, 0.0, 0.0, 96.0, 0, -1, uint8(255), uint8(9))
	f.Fuzz(func(t *testing.T, watts, voc, vmp, isc, imp, beta, label, coldest, hottest, input, output, bank, eta float64, series, parallel int, flags, kind uint8) {
		h := solar.Hookup{
			Rules: solar.NEC2017, Coldest: units.Celsius(coldest), Bank: units.Voltage(bank),
			Array: solar.Array{Series: series, Parallel: parallel, Panel: solar.Panel{
				Power: units.Power(watts), Voc: units.Voltage(voc), Vmp: units.Voltage(vmp), Isc: units.Current(isc),
				Cells: solar.CellType(flags >> 6),
			}},
			Controller: solar.Controller{Kind: solar.ControllerKind(kind), InputVoltage: units.Voltage(input)},
		}
		if flags&1 != 0 {
			h.Array.Panel.VoltageCoefficient = units.Some(units.PerKelvin(beta) * units.PercentPerKelvin)
		}
		if flags&2 != 0 {
			h.Array.Panel.SeriesFuse, h.Array.Panel.Imp = units.Some(units.Current(label)), units.Some(units.Current(imp))
		}
		if flags&4 != 0 {
			h.Hottest = units.Celsius(hottest)
			h.StringFuse = units.Some(units.Current(label))
		}
		if flags&8 != 0 {
			h.Controller.Output = units.Some(units.Current(output))
		}
		if flags&16 != 0 {
			h.Controller.Efficiency = units.Some(units.Ratio(eta))
		}
		if flags&32 != 0 {
			h.Controller.InputCurrent = units.Some(units.Current(output))
		}
		x, err := solar.FitController(h)
		ok := checkOutcome(t, err, float64(x.Cold.Voltage), float64(x.Currents.Required), float64(x.Charging), float64(x.Power),
			float64(x.OutputRequired), float64(x.Peak), float64(x.Vmp))
		checkExplained(t, ok, x)
		above := units.Exceeds(x.Cold.Voltage, units.Voltage(input))
		if findings := x.Findings(); ok && above != has(findings, "string-above-controller") {
			t.Fatalf("%v on %v: %v", x.Cold.Voltage, units.Voltage(input), findings)
		}
	})
}
