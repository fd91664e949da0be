package units_test

import (
	"math"
	"math/big"
	"testing"
	"time"

	"example.com/drawbar/units"
)

// exactIntegral is the slow twin of the integrals: the sum of the values
// times the step, in so many digits that nothing is rounded before the end.
func exactIntegral[T ~float64](s units.Series[T]) *big.Float {
	const bits = 2400 // from the smallest float64 to the largest
	sum := new(big.Float).SetPrec(bits)
	for _, x := range s.Values {
		sum.Add(sum, new(big.Float).SetFloat64(float64(x)))
	}
	seconds := new(big.Rat).SetFrac64(int64(s.Step), int64(time.Second))
	return sum.Mul(sum, new(big.Float).SetPrec(bits).SetRat(seconds))
}

// offBy returns the relative difference of got from want.
func offBy(got float64, want *big.Float) float64 {
	d := new(big.Float).Sub(new(big.Float).SetFloat64(got), want)
	d.Quo(d, want)
	r, _ := d.Float64()
	return math.Abs(r)
}

func TestEnergyOfYear(t *testing.T) {
	// The sum is rounded once, the product once, a step that is no whole
	// number of seconds once: three halves of a part in 2^52.
	const threeRoundings = 1.5 * 0x1p-52
	plain := func(s units.Series[units.Power]) float64 {
		var sum float64
		for _, x := range s.Values {
			sum += float64(x)
		}
		return sum * s.Step.Seconds()
	}
	spiky := minutes(minutesOfYear, 0, 1)
	for i := range spiky.Values {
		if i%1000 == 0 {
			spiky.Values[i] *= 1e9 // after them a plain sum drops digits of all the rest
		}
	}
	odd := minutes(minutesOfYear, 0, 3000)
	odd.Step = time.Second / 3
	for name, s := range map[string]units.Series[units.Power]{
		"year of minutes":      minutes(minutesOfYear, 0, 3000),
		"charge and discharge": minutes(minutesOfYear, -1000, 1000),
		"standby 0.1 W":        minutes(minutesOfYear, 0.1, 0.1),
		"spikes":               spiky,
		"thirds of a second":   odd,
		"one value":            hours(1234.5),
		"ten tenths":           hours(.1, .1, .1, .1, .1, .1, .1, .1, .1, .1),
		"large and back":       hours(1, 1e100, 1, -1e100), // is 2 W·h; Neumaier's own example
		"smallest float64":     hours(5e-324, 5e-324),
		"nanosecond steps":     {Start: newYear, Step: 1, Values: []units.Power{3, 4}},
	} {
		want := exactIntegral(s)
		got := float64(units.EnergyOf(s))
		t.Logf("%-24s off by %.1e, a plain loop by %.1e", name, offBy(got, want), offBy(plain(s), want))
		if off := offBy(got, want); !(off <= threeRoundings) {
			t.Errorf("EnergyOf(%s) = %v, off by %.2e", name, got, off)
		}
	}
	// The test sees a sum that is not compensated.
	if s := minutes(minutesOfYear, 0.1, 0.1); offBy(plain(s), exactIntegral(s)) < 10*threeRoundings {
		t.Error("a plain sum would pass too")
	}
}

func TestIntegrals(t *testing.T) {
	// 60 W for an hour is 60 Wh; 2 A for half an hour is 1 Ah; 1000 W/m2
	// for an hour is one peak-sun-hour, 1 kWh/m2.
	if got := units.EnergyOf(hours(60)); got != 60*units.WattHour {
		t.Errorf("EnergyOf(60 W, 1 h) = %v, want 60 Wh", got)
	}
	amps := units.Series[units.Current]{Start: newYear, Step: 15 * time.Minute, Values: []units.Current{2, 2}}
	if got := units.ChargeOf(amps); got != 1*units.AmpereHour {
		t.Errorf("ChargeOf(2 A, 30 min) = %v, want 1 Ah", got)
	}
	sun := units.Series[units.Irradiance]{Start: newYear, Step: time.Hour, Values: []units.Irradiance{400, 600}}
	if got := units.IrradiationOf(sun); got != 1*units.KilowattHourPerSquareMetre {
		t.Errorf("IrradiationOf(400 + 600 W/m2, 1 h each) = %v, want 1 kWh/m2", got)
	}
	if got := units.EnergyOf(hours()); got != 0 {
		t.Errorf("EnergyOf an empty series = %v, want 0", got)
	}
	day := minutes(24*60, 0, 500)
	if mean, ok := units.MeanOf(day); !ok || math.Abs(float64(mean.For(units.Day)-units.EnergyOf(day))) > 1e-15*float64(units.EnergyOf(day)) {
		t.Errorf("MeanOf a day times a day = %v, want %v", mean.For(units.Day), units.EnergyOf(day))
	}
}

// "It is NaN or infinite if a value is, or if the sum overflows, and NaN if
// Step is not above zero".
func TestIntegralsNotFinite(t *testing.T) {
	inf, nan := units.Power(math.Inf(1)), units.Power(math.NaN())
	for _, test := range []struct {
		name string
		s    units.Series[units.Power]
		want float64
	}{
		{"NaN", hours(1, nan, 1), math.NaN()},
		{"+Inf", hours(1, inf, 1), math.Inf(1)},
		{"-Inf", hours(-inf, 1), math.Inf(-1)},
		{"both", hours(inf, -inf), math.NaN()},
		{"overflow", hours(math.MaxFloat64, math.MaxFloat64), math.Inf(1)},
		{"overflow of the product", hours(math.MaxFloat64), math.Inf(1)},
		{"no step", units.Series[units.Power]{Start: newYear, Values: []units.Power{1}}, math.NaN()},
		{"step back", units.Series[units.Power]{Start: newYear, Step: -1, Values: []units.Power{1}}, math.NaN()},
	} {
		got := float64(units.EnergyOf(test.s))
		if got != test.want && !(math.IsNaN(got) && math.IsNaN(test.want)) {
			t.Errorf("EnergyOf(%s) = %v, want %v", test.name, got, test.want)
		}
	}
	if mean, ok := units.MeanOf(hours(1, nan)); !ok || mean == mean {
		t.Errorf("MeanOf(1 W, NaN) = %v, %t, want NaN", mean, ok)
	}
}

func TestMeanPeakMin(t *testing.T) {
	nan, inf := units.Power(math.NaN()), units.Power(math.Inf(1))
	for _, test := range []struct {
		s               units.Series[units.Power]
		mean, peak, low units.Power
		peakAt, lowAt   int
	}{
		{hours(5), 5, 5, 5, 0, 0},
		{hours(1, 3, 2), 2, 3, 1, 1, 0},
		{hours(3, 1, 2), 2, 3, 1, 0, 1},
		{hours(-2, -5, -2), -3, -2, -5, 0, 1},    // with their sign
		{hours(1, 4, 1, 4), 2.5, 4, 1, 1, 0},     // the first of equals
		{hours(-inf, inf), nan, inf, -inf, 1, 0}, // ends of the range
		{hours(9, nan, 10, nan), nan, nan, nan, 1, 1},
		{hours(nan), nan, nan, nan, 0, 0},
	} {
		same := func(a, b units.Power) bool { return a == b || a != a && b != b }
		if got, ok := units.MeanOf(test.s); !same(got, test.mean) || !ok {
			t.Errorf("MeanOf(%v) = %v, %t, want %v", test.s.Values, got, ok, test.mean)
		}
		if got, i, ok := units.PeakOf(test.s); !same(got, test.peak) || i != test.peakAt || !ok {
			t.Errorf("PeakOf(%v) = %v, %d, %t, want %v, %d", test.s.Values, got, i, ok, test.peak, test.peakAt)
		}
		if got, i, ok := units.MinOf(test.s); !same(got, test.low) || i != test.lowAt || !ok {
			t.Errorf("MinOf(%v) = %v, %d, %t, want %v, %d", test.s.Values, got, i, ok, test.low, test.lowAt)
		}
	}
	// An empty series has none.
	if x, ok := units.MeanOf(hours()); x != 0 || ok {
		t.Errorf("MeanOf an empty series = %v, %t", x, ok)
	}
	if x, i, ok := units.PeakOf(hours()); x != 0 || i != 0 || ok {
		t.Errorf("PeakOf an empty series = %v, %d, %t", x, i, ok)
	}
	if x, i, ok := units.MinOf(hours()); x != 0 || i != 0 || ok {
		t.Errorf("MinOf an empty series = %v, %d, %t", x, i, ok)
	}
}
