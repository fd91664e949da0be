package solar_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// dice throws inputs that are legal; the seed makes a failure come again.
type dice struct{ *rand.Rand }

func newDice(seed uint64) dice { return dice{rand.New(rand.NewPCG(seed, 1))} }

// between is even in its logarithm.
func (d dice) between(low, high float64) float64 {
	return low * math.Pow(high/low, d.Float64())
}

// degrees is even, and often a whole number.
func (d dice) degrees(low, high float64) units.Temperature {
	x := low + (high-low)*d.Float64()
	if d.IntN(2) == 0 {
		x = math.Round(x)
	}
	return units.Celsius(min(max(x, low), high))
}

// near is x, or x but for noise or a few parts in 10^3 to 10^12.
func (d dice) near(x float64) float64 {
	switch d.IntN(3) {
	case 0:
		return x
	case 1:
		return x * (1 + math.Pow(10, -3-9*d.Float64())*float64(2*d.IntN(2)-1))
	}
	return x * (1 + 1e-15*float64(d.IntN(5)-2))
}

// maybe is set two times out of three.
func maybe[Q any](d dice, x Q) units.Opt[Q] {
	if d.IntN(3) == 0 {
		return units.None[Q]()
	}
	return units.Some(x)
}

func (d dice) panel() solar.Panel {
	voc := units.Voltage(d.between(1, 200))
	vmp := units.Scale(voc, units.Ratio(0.5+0.49*d.Float64()))
	isc := units.Current(d.between(0.01, 50))
	imp := units.Scale(isc, units.Ratio(0.5+0.49*d.Float64()))
	return solar.Panel{
		Power: units.Scale(imp.At(vmp), units.Ratio(0.5+0.5*d.Float64())), Voc: voc, Vmp: vmp, Isc: isc, Imp: maybe(d, imp),
		VoltageCoefficient: maybe(d, -units.PerKelvin(d.between(0.1, 1))*units.PercentPerKelvin),
		SeriesFuse:         maybe(d, units.Current(d.near(float64(2*1.25*isc)))),
		Cells:              solar.CellType(d.IntN(2)),
	}
}

// TestSheetRandomInputs: whatever legal numbers go in, and wherever they
// cancel, the working can be followed by hand.
func TestSheetRandomInputs(t *testing.T) {
	const runs = 400
	d := newDice(7)
	check := func(what any, x explained, err error) {
		t.Helper()
		if err != nil {
			t.Fatalf("%+v: %v", what, err)
		}
		unitstest.CheckSheet(t, x.Working())
		if t.Failed() {
			t.Fatalf("%+v", what)
		}
	}
	for range runs {
		day := solar.DayAt{Latitude: units.Angle(180*d.Float64()-90) * units.Degree, OfYear: 1 + d.IntN(366)}
		if d.IntN(2) == 0 {
			// Near the edge of polar day and night.
			edge := quarter - max(sunOn(t, 0, day.OfYear).Declination, -sunOn(t, 0, day.OfYear).Declination)
			day.Latitude = units.Angle(min(d.near(float64(edge)), float64(quarter))) * units.Angle(2*d.IntN(2)-1)
		}
		s, err := solar.SunOn(day)
		check(day, s, err)

		x := solar.Exposure{Air: d.degrees(-60, 60), Irradiance: units.Irradiance(1500 * d.Float64()), Nominal: d.degrees(25, 80)}
		if d.IntN(2) == 0 {
			// Air and rise cancel, but for a bit.
			x.Air = units.Celsius(-60 * d.Float64())
			light := -x.Air.Celsius() / float64(x.Nominal.Sub(units.Celsius(20))) * 800
			x.Irradiance = units.Irradiance(min(d.near(light), 1500))
		}
		heat, err := solar.CellTemperature(x)
		check(x, heat, err)

		first, second := d.Float64(), 1-math.Pow(10, -12*d.Float64())
		losses, err := solar.NewLosses(solar.Loss{Name: "a", Fraction: units.Ratio(first)}, solar.Loss{Name: "b", Fraction: units.Ratio(second)})
		if err != nil {
			t.Fatal(err)
		}
		p := solar.PanelDay{
			Peak: units.Power(d.between(1e-3, 1e6)), Irradiation: units.Irradiation(d.between(1e-6, 15)) * units.KilowattHourPerSquareMetre,
			PowerCoefficient: maybe(d, -units.PerKelvin(d.Float64())*units.PercentPerKelvin), CellTemperature: d.degrees(-60, 120), Losses: losses,
		}
		h, err := solar.DailyHarvest(p)
		check(p, h, err)

		hook := solar.Hookup{
			Rules: solar.NEC2017, Array: solar.Array{Panel: d.panel(), Series: 1 + d.IntN(20), Parallel: 1 + d.IntN(20)},
			Coldest: d.degrees(-40, 25), Bank: units.Voltage(d.between(1, 1000)),
			Controller: solar.Controller{Kind: solar.MPPT, InputVoltage: units.Voltage(d.between(1, 1000))},
		}
		hook.StringFuse = maybe(d, units.Current(d.near(1.5625*float64(hook.Array.Panel.Isc))))
		hook.Controller.Output = maybe(d, units.Current(d.between(0.1, 500)))
		hook.Controller.InputCurrent = maybe(d, units.Current(d.near(float64(hook.Array.Panel.Isc)*float64(hook.Array.Parallel))))
		if d.IntN(2) == 0 {
			hook.Controller.Kind = solar.PWM
		} else {
			hook.Controller.Efficiency = maybe(d, units.Ratio(1-0.3*d.Float64()))
		}
		if d.IntN(3) > 0 {
			hook.Hottest = d.degrees(25, 120)
		}
		f, err := solar.FitController(hook)
		check(hook, f, err)
		if hot, ok := f.HotVmp.Get(); ok && hot > 0 {
			// The bank where the hot string is, and the string where the limit is.
			hook.Bank, hook.Controller.InputVoltage = units.Voltage(d.near(float64(hot))), units.Voltage(d.near(float64(f.Cold.Voltage)))
			f, err = solar.FitController(hook)
			check(hook, f, err)
		}
	}
}

const quarter = math.Pi / 2 * units.Radian
