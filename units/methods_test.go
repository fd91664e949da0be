package units_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
)

// TestMethods checks each change of dimension on numbers that a person can
// multiply in the head, in units other than SI, so that a factor that was
// lost or taken twice shows.
func TestMethods(t *testing.T) {
	const h = units.Hour
	for _, c := range []struct {
		what      string
		got, want units.Value
	}{
		{"20 A through 50 mΩ", (20 * units.Ampere).Through(50 * units.Milliohm), 1 * units.Volt},
		{"10 A at 12 V", (10 * units.Ampere).At(12 * units.Volt), 120 * units.Watt},
		{"10 A at 120 V", (10 * units.Ampere).ApparentAt(120 * units.Volt), 1.2 * units.KilovoltAmpere},
		{"20 A heating 50 mΩ", (20 * units.Ampere).Heating(50 * units.Milliohm), 20 * units.Watt},
		{"5 A for 3 h", (5 * units.Ampere).For(3 * h), 15 * units.AmpereHour},
		{"200 A let through for 0.4 s", (200 * units.Ampere).LetThrough(0.4 * units.Second), 16000 * units.AmpereSquaredSecond},
		{"12 V across 4 Ω", (12 * units.Volt).Across(4 * units.Ohm), 3 * units.Ampere},
		{"2 V per 5 A", (2 * units.Volt).Per(5 * units.Ampere), 0.4 * units.Ohm},
		{"60 W at 12 V", (60 * units.Watt).At(12 * units.Volt), 5 * units.Ampere},
		{"60 W for 3 h", (60 * units.Watt).For(3 * h), 180 * units.WattHour},
		{"900 W at power factor 0.6", (900 * units.Watt).Apparent(0.6), 1500 * units.VoltAmpere},
		{"1500 VA at power factor 0.6", (1500 * units.VoltAmpere).Real(0.6), 900 * units.Watt},
		{"3600 VA at 120 V", (3600 * units.VoltAmpere).At(120 * units.Volt), 30 * units.Ampere},
		{"1280 Wh at 12.8 V", (1280 * units.WattHour).At(12.8 * units.Volt), 100 * units.AmpereHour},
		{"1200 Wh in 24 h", (1200 * units.WattHour).In(24 * h), 50 * units.Watt},
		{"how long 1200 Wh feeds 60 W", (1200 * units.WattHour).Lasts(60 * units.Watt), 20 * h},
		{"100 Ah at 12.8 V", (100 * units.AmpereHour).At(12.8 * units.Volt), 1280 * units.WattHour},
		{"100 Ah in 20 h", (100 * units.AmpereHour).In(20 * h), 5 * units.Ampere},
		{"how long 100 Ah feeds 5 A", (100 * units.AmpereHour).Lasts(5 * units.Ampere), 20 * h},
		{"100 m of 2 mm², 0.02 Ω·mm²/m", (0.02 * units.OhmSquareMillimetrePerMetre).Of(100*units.Metre, 2*units.SquareMillimetre), 1 * units.Ohm},
		{"0.02 Ω·mm²/m over 2 mm²", (0.02 * units.OhmSquareMillimetrePerMetre).Over(2 * units.SquareMillimetre), 10 * units.MilliohmPerMetre},
		{"2 Ω/kft over 500 ft", (2 * units.OhmPerKilofoot).Over(500 * units.Foot), 1 * units.Ohm},
		{"1 Ω along 500 ft", (1 * units.Ohm).Along(500 * units.Foot), 2 * units.OhmPerKilofoot},
		{"2 m by 3 m", (2 * units.Metre).By(3 * units.Metre), 6 * units.SquareMetre},
		{"6 m² by 2 m", (6 * units.SquareMetre).By(2 * units.Metre), 12 * units.CubicMetre},
		{"180 km in 2 h", (180 * units.Kilometre).In(2 * h), 90 * units.KilometrePerHour},
		{"90 km/h for 2 h", (90 * units.KilometrePerHour).For(2 * h), 180 * units.Kilometre},
		{"30 m³/h for 2 h", (30 * units.CubicMetrePerHour).For(2 * h), 60 * units.CubicMetre},
		{"60 m³ in 2 h", (60 * units.CubicMetre).In(2 * h), 30 * units.CubicMetrePerHour},
		{"20 kg/km over 500 m", (20 * units.GramPerMetre).Over(500 * units.Metre), 10 * units.Kilogram},
		{"10 kg along 500 m", (10 * units.Kilogram).Along(500 * units.Metre), 20 * units.GramPerMetre},
		{"800 W/m² on 2 m²", (800 * units.WattPerSquareMetre).On(2 * units.SquareMetre), 1600 * units.Watt},
		{"500 W/m² for 4 h", (500 * units.WattPerSquareMetre).For(4 * h), 2 * units.KilowattHourPerSquareMetre},
		{"2 kWh/m² on 3 m²", (2 * units.KilowattHourPerSquareMetre).On(3 * units.SquareMetre), 6 * units.KilowattHour},
		{"2 kWh/m² in 4 h", (2 * units.KilowattHourPerSquareMetre).In(4 * h), 500 * units.WattPerSquareMetre},
		{"-0.4 %/K over 25 K", (-0.4 * units.PercentPerKelvin).Over(25 * units.Kelvin), -10 * units.Percent},
		{"period of 50 Hz", (50 * units.Hertz).Period(), 20 * units.Millisecond},
		{"a quarter of 12 V", units.Scale(12*units.Volt, 25*units.Percent), 3 * units.Volt},
		{"3 V of 12 V", units.RatioOf(3*units.Volt, 12*units.Volt), 25 * units.Percent},
		{"90 minutes", units.ElapsedOf(90 * time.Minute), 1.5 * h},
	} {
		// Formatted values carry the type's unit and nine settled digits.
		if got, want := fmt.Sprintf("%g %T", c.got, c.got), fmt.Sprintf("%g %T", c.want, c.want); got != want {
			t.Errorf("%s is %s, want %s", c.what, got, want)
		}
	}
	for what, pair := range map[string][2]float64{
		"sine of 30°":    {(30 * units.Degree).Sin(), 0.5},
		"cosine of 60°":  {(60 * units.Degree).Cos(), 0.5},
		"tangent of 45°": {(45 * units.Degree).Tan(), 1},
	} {
		if units.Compare(pair[0], pair[1]) != 0 {
			t.Errorf("%s is %v, want %v", what, pair[0], pair[1])
		}
	}
}

func TestElapsedDuration(t *testing.T) {
	for _, c := range []struct {
		in   units.Elapsed
		want time.Duration
	}{
		{0, 0}, {1.5 * units.Hour, 90 * time.Minute}, {-2 * units.Second, -2 * time.Second},
		{0.4e-9, 0}, {0.5e-9, 1}, {-0.5e-9, -1}, // half away from zero
		{292 * 365 * units.Day, 292 * 365 * 24 * time.Hour},
	} {
		if got, err := c.in.Duration(); err != nil || got != c.want {
			t.Errorf("%v: Duration() = %v, %v, want %v", float64(c.in), got, err, c.want)
		}
	}
	for _, in := range []units.Elapsed{units.Elapsed(math.NaN()), units.Elapsed(math.Inf(1)), units.Elapsed(math.Inf(-1)), 1e10, -1e10, 1 << 63 / 1e9} {
		got, err := in.Duration()
		var e *units.RangeError
		if !errors.As(err, &e) || e.Op != "units.Elapsed.Duration" || got != 0 {
			t.Errorf("%v: Duration() = %v, %v, want a *units.RangeError", float64(in), got, err)
		}
	}
}

func ExampleElapsed_Duration() {
	d, err := (2.5 * units.Hour).Duration()
	fmt.Println(d, err)
	_, err = (300 * 365 * units.Day).Duration()
	fmt.Println(err)
	// Output:
	// 2h30m0s <nil>
	// units.Elapsed.Duration: Elapsed = 109500 d, want -106752 d to 106752 d
}

func ExampleElapsedOf() {
	fmt.Println((60 * units.Watt).For(units.ElapsedOf(90 * time.Minute)))
	// Output: 90 Wh
}

func ExampleScale() {
	fmt.Println(units.Scale(280*units.AmpereHour, 90*units.Percent))
	// Output: 252 Ah
}

func ExampleRatioOf() {
	fmt.Println(units.RatioOf(0.6*units.Volt, 12*units.Volt))
	// Output: 5 %
}
