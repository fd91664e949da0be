package solar_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// october is the roof of the invented demo in October. Irradiation: monthly
// mean of the TMY2 file 94846, read.
func october() solar.PanelDay {
	losses, err := solar.NewLosses(solar.Loss{Name: "all losses, assumed", Fraction: 20 * units.Percent})
	if err != nil {
		panic(err)
	}
	return solar.PanelDay{
		Peak:        440 * units.Watt,
		Irradiation: 3.037 * units.KilowattHourPerSquareMetre,
		Losses:      losses,
	}
}

// warm is october with everything given.
func warm() solar.PanelDay {
	r := october()
	r.PowerCoefficient = units.Some(-0.36 * units.PercentPerKelvin)
	r.CellTemperature = units.Celsius(40)
	return r
}

// panel is that of the invented demo.
func panel() solar.Panel {
	return solar.Panel{
		Power: 220 * units.Watt, Voc: 46.2 * units.Volt, Vmp: 38.4 * units.Volt, Isc: 6.12 * units.Ampere,
		VoltageCoefficient: units.Some(-0.28 * units.PercentPerKelvin),
		SeriesFuse:         units.Some(15 * units.Ampere),
	}
}

// demo is the array of the invented demo on its controller.
func demo() solar.Hookup {
	return solar.Hookup{
		Rules:   solar.NEC2017,
		Array:   solar.Array{Panel: panel(), Series: 2, Parallel: 1},
		Coldest: units.Celsius(-22),
		Hottest: units.Celsius(70),
		Controller: solar.Controller{
			Kind: solar.MPPT, InputVoltage: 100 * units.Volt, Output: units.Some(30 * units.Ampere),
		},
		Bank: 13.2 * units.Volt,
	}
}

// summer is a string without a coefficient on a mild morning.
func summer() solar.ColdString {
	return solar.ColdString{Rules: solar.NEC2017, Panel: solar.Panel{Voc: 22.5 * units.Volt}, Series: 2, Coldest: units.Celsius(10)}
}

func threeStrings() solar.Strings {
	return solar.Strings{Rules: solar.NEC2017, Array: solar.Array{Panel: panel(), Series: 1, Parallel: 3}}
}

func noon() solar.Exposure {
	return solar.Exposure{Air: units.Celsius(30), Irradiance: 1000 * units.WattPerSquareMetre, Nominal: units.Celsius(47)}
}

// outcome is what a calculator returned, and whether it is the zero value.
type outcome struct {
	zero bool
	err  error
}

func outcomeOf[T comparable](v T, err error) outcome {
	var zero T
	return outcome{v == zero, err}
}

func wantRefused(t *testing.T, what string, o outcome, op, field string) {
	t.Helper()
	var e *units.RangeError
	if !errors.As(o.err, &e) || !errors.Is(o.err, units.ErrRange) {
		t.Errorf("%s: %v, want a *units.RangeError", what, o.err)
		return
	}
	if e.Op != op || e.Field != field || e.Allowed.String() == "" || e.Error() == "" {
		t.Errorf("%s: %v, want an error of %s for %s", what, o.err, op, field)
	}
	if !o.zero {
		t.Errorf("%s: the result is not the zero value", what)
	}
}

// notFinite no field may be; notPositive no field may be that must be above 0.
var (
	notFinite   = []float64{math.NaN(), math.Inf(1), math.Inf(-1)}
	notPositive = append([]float64{0, -1, math.Copysign(0, -1)}, notFinite...)
	notDegrees  = append([]float64{-300, 1000}, notFinite...)
)

func TestSunOnRefuses(t *testing.T) {
	for _, x := range append([]float64{90.1, -90.1}, notFinite...) {
		o := outcomeOf(solar.SunOn(solar.DayAt{Latitude: units.Angle(x) * units.Degree, OfYear: 100}))
		wantRefused(t, "a latitude", o, "solar.SunOn", "Latitude")
	}
	for _, n := range []int{0, -1, 367} {
		o := outcomeOf(solar.SunOn(solar.DayAt{OfYear: n}))
		wantRefused(t, "a day", o, "solar.SunOn", "OfYear")
	}
}

func TestDailyHarvestRefuses(t *testing.T) {
	try := func(field string, bad []float64, spoil func(*solar.PanelDay, float64)) {
		t.Helper()
		for _, x := range bad {
			r := warm()
			spoil(&r, x)
			wantRefused(t, field, outcomeOf(solar.DailyHarvest(r)), "solar.DailyHarvest", field)
		}
	}
	try("Peak", notPositive, func(r *solar.PanelDay, x float64) { r.Peak = units.Power(x) })
	// 150 kWh/m² is a month's.
	try("Irradiation", append([]float64{-1, 15.1, 150}, notFinite...), func(r *solar.PanelDay, x float64) {
		r.Irradiation = units.Irradiation(x) * units.KilowattHourPerSquareMetre
	})
	// 0.36 %/K has lost its sign, −36 %/K its decimal point.
	try("PowerCoefficient", append([]float64{0.36, -36, -1.01}, notFinite...), func(r *solar.PanelDay, x float64) {
		r.PowerCoefficient = units.Some(units.PerKelvin(x) * units.PercentPerKelvin)
	})
	try("CellTemperature", notDegrees, func(r *solar.PanelDay, x float64) { r.CellTemperature = units.Celsius(x) })
	try("Energy", []float64{1e307}, func(r *solar.PanelDay, x float64) { r.Peak = units.Power(x) })
}

func TestNewLossesRefuses(t *testing.T) {
	const op = "solar.NewLosses"
	dirt := solar.Loss{Name: "dirt", Fraction: 2 * units.Percent}
	for _, x := range append([]float64{-0.01, 1.01, 2}, notFinite...) {
		o := outcomeOf(solar.NewLosses(dirt, solar.Loss{Name: "shade", Fraction: units.Ratio(x)}))
		wantRefused(t, "a fraction", o, op, "losses[1].Fraction (shade)")
	}
	wantRefused(t, "no name", outcomeOf(solar.NewLosses(solar.Loss{})), op, "losses[0].Name")
	wantRefused(t, "a name twice", outcomeOf(solar.NewLosses(dirt, dirt)), op, "losses[1].Name")
	var many []solar.Loss
	for i := range solar.MaxLosses + 1 {
		many = append(many, solar.Loss{Name: string(rune('a' + i))})
	}
	wantRefused(t, "too many", outcomeOf(solar.NewLosses(many...)), op, "losses")
	if l, err := solar.NewLosses(many[1:]...); err != nil || l.Len() != solar.MaxLosses {
		t.Errorf("%d losses: %v, %v", solar.MaxLosses, l.Len(), err)
	}
}

func TestCellTemperatureRefuses(t *testing.T) {
	try := func(field string, bad []float64, spoil func(*solar.Exposure, float64)) {
		t.Helper()
		for _, x := range bad {
			e := noon()
			spoil(&e, x)
			wantRefused(t, field, outcomeOf(solar.CellTemperature(e)), "solar.CellTemperature", field)
		}
	}
	try("Air", notDegrees, func(e *solar.Exposure, x float64) { e.Air = units.Celsius(x) })
	try("Air", []float64{0}, func(e *solar.Exposure, _ float64) { e.Air = units.Temperature{} })
	try("Irradiance", append([]float64{-1, 1501}, notFinite...), func(e *solar.Exposure, x float64) { e.Irradiance = units.Irradiance(x) })
	try("Nominal", append([]float64{20}, notDegrees...), func(e *solar.Exposure, x float64) { e.Nominal = units.Celsius(x) })
	try("Nominal", []float64{0}, func(e *solar.Exposure, _ float64) { e.Nominal = units.Temperature{} })
}

// TestHookupRefuses spoils what all three questions of a string look at, and
// asks those that do.
func TestHookupRefuses(t *testing.T) {
	ask := map[string]func(solar.Hookup) outcome{
		"solar.ColdVoltage": func(h solar.Hookup) outcome {
			return outcomeOf(solar.ColdVoltage(solar.ColdString{Rules: h.Rules, Panel: h.Array.Panel, Series: h.Array.Series, Coldest: h.Coldest}))
		},
		"solar.Currents": func(h solar.Hookup) outcome {
			return outcomeOf(solar.Currents(solar.Strings{Rules: h.Rules, Array: h.Array, StringFuse: h.StringFuse}))
		},
		"solar.FitController": func(h solar.Hookup) outcome { return outcomeOf(solar.FitController(h)) },
	}
	try := func(field string, bad []float64, spoil func(*solar.Hookup, float64), ops ...string) {
		t.Helper()
		for _, op := range append(ops, "solar.FitController") {
			for _, x := range bad {
				h := demo()
				spoil(&h, x)
				wantRefused(t, field, ask[op](h), op, field)
			}
		}
	}
	const cold, currents = "solar.ColdVoltage", "solar.Currents"
	counts := []float64{0, -1, 1001}
	one := []float64{0}
	try("Rules", []float64{0, 2}, func(h *solar.Hookup, x float64) { h.Rules = solar.RuleSet(x) }, cold, currents)
	try("Series", counts, func(h *solar.Hookup, x float64) { h.Array.Series = int(x) }, cold, currents)
	try("Voc", notPositive, func(h *solar.Hookup, x float64) { h.Array.Panel.Voc = units.Voltage(x) }, cold)
	// 0.28 %/K has lost its sign and would lower the voltage in the cold, -2.8
	// and -0.028 have a slipped point, -0.0028 is a ratio taken for per cent and
	// -28 per cent taken for a ratio.
	try("VoltageCoefficient", append([]float64{0.28, 0, -1.01, -2.8, -28, -0.028, -0.0028, -0.099}, notFinite...), func(h *solar.Hookup, x float64) {
		h.Array.Panel.VoltageCoefficient = units.Some(units.PerKelvin(x) * units.PercentPerKelvin)
	}, cold)
	try("VoltageCoefficient", one, func(h *solar.Hookup, _ float64) {
		h.Array.Panel.Cells, h.Array.Panel.VoltageCoefficient = solar.ThinFilm, units.None[units.PerKelvin]()
	}, cold)
	try("Cells", []float64{3}, func(h *solar.Hookup, x float64) { h.Array.Panel.Cells = solar.CellType(x) }, cold)
	try("Coldest", append([]float64{25.1}, notDegrees...), func(h *solar.Hookup, x float64) { h.Coldest = units.Celsius(x) }, cold)
	try("Coldest", one, func(h *solar.Hookup, _ float64) { h.Coldest = units.Temperature{} }, cold)
	try("Coldest", []float64{-40.1}, func(h *solar.Hookup, x float64) {
		h.Coldest, h.Array.Panel.VoltageCoefficient = units.Celsius(x), units.None[units.PerKelvin]()
	}, cold)
	try("Voltage", []float64{1e308}, func(h *solar.Hookup, x float64) { h.Array.Panel.Voc = units.Voltage(x) }, cold)
	try("Parallel", counts, func(h *solar.Hookup, x float64) { h.Array.Parallel = int(x) }, currents)
	try("Isc", notPositive, func(h *solar.Hookup, x float64) { h.Array.Panel.Isc = units.Current(x) }, currents)
	try("SeriesFuse", notPositive, func(h *solar.Hookup, x float64) { h.Array.Panel.SeriesFuse = units.Some(units.Current(x)) }, currents)
	try("StringFuse", notPositive, func(h *solar.Hookup, x float64) { h.StringFuse = units.Some(units.Current(x)) }, currents)
	try("Required", []float64{1.5e308}, func(h *solar.Hookup, x float64) { h.Array.Panel.Isc = units.Current(x) }, currents)
	try("Power", notPositive, func(h *solar.Hookup, x float64) { h.Array.Panel.Power = units.Power(x) })
	try("Vmp", notPositive, func(h *solar.Hookup, x float64) { h.Array.Panel.Vmp = units.Voltage(x) })
	try("Hottest", append([]float64{24.9, 121}, notDegrees...), func(h *solar.Hookup, x float64) { h.Hottest = units.Celsius(x) })
	// Each against the others: 46.2 V and 6.12 A are 282.744 W, 220 W at 38.4 V
	// 5.729 A.
	try("Vmp", []float64{46.2, 50}, func(h *solar.Hookup, x float64) { h.Array.Panel.Vmp = units.Voltage(x) }, cold, currents)
	try("Power", []float64{282.8, 2200}, func(h *solar.Hookup, x float64) { h.Array.Panel.Power = units.Power(x) }, cold, currents)
	try("Isc", []float64{5.72, 4.77}, func(h *solar.Hookup, x float64) { h.Array.Panel.Isc = units.Current(x) }, cold, currents)
	try("Imp", append([]float64{6.12, 7}, notPositive...), func(h *solar.Hookup, x float64) {
		h.Array.Panel.Imp = units.Some(units.Current(x))
	}, cold, currents)
	try("Kind", []float64{0, 3}, func(h *solar.Hookup, x float64) { h.Controller.Kind = solar.ControllerKind(x) })
	try("InputVoltage", notPositive, func(h *solar.Hookup, x float64) { h.Controller.InputVoltage = units.Voltage(x) })
	try("InputCurrent", notPositive, func(h *solar.Hookup, x float64) { h.Controller.InputCurrent = units.Some(units.Current(x)) })
	try("Output", notPositive, func(h *solar.Hookup, x float64) { h.Controller.Output = units.Some(units.Current(x)) })
	try("Efficiency", append([]float64{1.01, 96}, notPositive...), func(h *solar.Hookup, x float64) {
		h.Controller.Efficiency = units.Some(units.Ratio(x))
	})
	try("Efficiency", []float64{0.98}, func(h *solar.Hookup, x float64) {
		h.Controller.Kind, h.Controller.Efficiency = solar.PWM, units.Some(units.Ratio(x))
	})
	try("Bank", notPositive, func(h *solar.Hookup, x float64) { h.Bank = units.Voltage(x) })
	try("Peak", []float64{1e308}, func(h *solar.Hookup, x float64) {
		p := &h.Array.Panel
		p.Power, p.Voc, p.Vmp, p.Isc = units.Power(x), 1.2e154, 1.1e154, 1.1e154
	})
	try("OutputRequired", []float64{1.7e308}, func(h *solar.Hookup, x float64) { h.Controller.Output = units.Some(units.Current(x)) })
	try("Offered", []float64{1e-320}, func(h *solar.Hookup, x float64) {
		h.Bank, h.Controller.Output = units.Voltage(x), units.None[units.Current]()
	})
}
