package units_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/big"
	"testing"

	"example.com/drawbar/units"
)

// TestFahrenheitExact quotes "exact for every multiple of 9 away from 32":
// from absolute zero to 2000 °F, both ways.
func TestFahrenheitExact(t *testing.T) {
	n := 0
	for k := -54; 32+9*k <= 2000; k++ {
		n++
		f, c := float64(32+9*k), float64(5*k)
		if got := units.Fahrenheit(f); got != units.Celsius(c) {
			t.Errorf("Fahrenheit(%v) = %v, want %v °C", f, got.Celsius(), c)
		}
		if got := units.Celsius(c).Fahrenheit(); got != f {
			t.Errorf("Celsius(%v) is %v °F, want %v", c, got, f)
		}
		parsed, err := units.ParseTemperature(fmt.Sprintf("%v °F", f))
		if parsed != units.Celsius(c) || err != nil {
			t.Errorf("%v °F is read as %v, %v, want %v °C", f, parsed, err, c)
		}
	}
	if n != 273 {
		t.Errorf("%d points, want 273", n)
	}
}

// TestFahrenheitWhole quotes "rounded once for every whole number".
func TestFahrenheitWhole(t *testing.T) {
	for f := -459; f <= 2000; f++ {
		want, _ := big.NewRat(int64(f-32)*5, 9).Float64()
		if got := units.Fahrenheit(float64(f)).Celsius(); got != want {
			t.Errorf("Fahrenheit(%d) = %v °C, want %v", f, got, want)
		}
	}
}

// Fixed points of the scales; where they come from is beside them.
func TestTemperatureScales(t *testing.T) {
	for _, c := range []struct {
		celsius, fahrenheit, kelvin float64
	}{
		{0, 32, 273.15},       // ice, by definition of the scales
		{100, 212, 373.15},    // steam, by definition of the older ones
		{-40, -40, 233.15},    // where they meet
		{-273.15, -459.67, 0}, // absolute zero, exact
		{25, 77, 298.15},      // the standard temperature of panels
		{30, 86, 303.15},      // the ambient of conductor tables
		{75, 167, 348.15},     // ratings of terminals
		{37, 98.6, 310.15},    // a body
		{20, 68, 293.15},      // of resistance tables
	} {
		temperature := units.Celsius(c.celsius)
		if got := temperature.Celsius(); got != c.celsius {
			t.Errorf("Celsius(%v).Celsius() = %v", c.celsius, got)
		}
		if got := temperature.Fahrenheit(); units.Compare(got, c.fahrenheit) != 0 {
			t.Errorf("%v °C is %v °F, want %v", c.celsius, got, c.fahrenheit)
		}
		if got := temperature.Kelvin(); units.Compare(got, c.kelvin) != 0 {
			t.Errorf("%v °C is %v K, want %v", c.celsius, got, c.kelvin)
		}
		if got := units.Fahrenheit(c.fahrenheit); got.Compare(temperature) != 0 {
			t.Errorf("%v °F is %v, want %v °C", c.fahrenheit, got, c.celsius)
		}
	}
}

func TestParseTemperature(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"77 °F", 25}, {"77F", 25}, {"77 degF", 25}, {"77 deg F", 25}, {"77 ° F", 25}, {"77 fahrenheit", 25},
		{"-10C", -10}, {"-10 °C", -10}, {"\u221210 º C", -10}, {"- 10 degrees Celsius", -10}, {"25 c", 25},
		{"298.15 K", 25}, {"298.15 kelvins", 25}, {"0 K", -273.15}, {"-459.67 °F", -273.15},
		{"98.6 °F", 37}, {"100.4 °F", 38}, {"0 °F", -160.0 / 9}, {"1e2 °C", 100}, {" 0 °C ", 0}, {"-0 °C", 0},
		{"1e308 °C", 1e308},
	} {
		got, err := units.ParseTemperature(c.text)
		if got != units.Celsius(c.want) || err != nil || math.Signbit(got.Celsius()) != (c.want < 0) {
			t.Errorf("ParseTemperature(%q) = %v, %v, want %v °C", c.text, got.Celsius(), err, c.want)
		}
	}
}

func TestParseTemperatureErrors(t *testing.T) {
	const scales = "°C, °F, K"
	for _, c := range []struct{ text, reason string }{
		{"", "empty; want a number and a unit: " + scales},
		{"  ", "empty; want a number and a unit: " + scales},
		{"20", "no unit; want one of " + scales},
		{"20 °", `unknown unit "°"; want one of ` + scales},
		{"20 V", `unknown unit "V"; want one of ` + scales},
		{"20 °C 5", `unknown unit "°C 5"; want one of ` + scales},
		{"warm", `no number before "warm"`},
		{"--20 °C", `no number before "-20"`},
		{"NaN °C", `no number before "NaN"`},
		{"20,5 °C", "a comma may mean thousands or decimals; write 1200 or 1.2"},
		{"1e999 °C", "exponent beyond 400"},
	} {
		got, err := units.ParseTemperature(c.text)
		want := units.ParseError{Input: c.text, Want: "temperature", Reason: c.reason}
		var e *units.ParseError
		if !errors.As(err, &e) || *e != want || got.IsSet() {
			t.Errorf("ParseTemperature(%q) = %v, %v\nwant %v", c.text, got, err, &want)
		}
	}
	for _, text := range []string{"-273.16 °C", "-459.68 °F", "-1 K", "-1e308 °C", "1e309 °C", "-500 °F"} {
		got, err := units.ParseTemperature(text)
		want := "units.ParseTemperature: temperature = " + text + ", want >= -273.15 °C"
		if !errors.Is(err, units.ErrRange) || err.Error() != want || got.IsSet() {
			t.Errorf("ParseTemperature(%q) = %v, %v, want %s", text, got, err, want)
		}
	}
}

// TestTemperatureGiven tells 0 °C, which is data, from no temperature.
func TestTemperatureGiven(t *testing.T) {
	var none units.Temperature
	zero := units.Celsius(0)
	if none.IsSet() || !none.IsZero() || !zero.IsSet() || zero.IsZero() || none == zero {
		t.Error("the zero value must be told from 0 °C")
	}
	if got := none.Or(units.Celsius(20)); got != units.Celsius(20) {
		t.Errorf("not given or 20 °C is %v", got)
	}
	if got := zero.Or(units.Celsius(20)); got != zero {
		t.Errorf("0 °C or 20 °C is %v", got)
	}
	if got := none.Add(5 * units.Kelvin); got != none {
		t.Errorf("5 K above not given is %v", got)
	}
	if got := zero.Add(5 * units.Kelvin); got != units.Celsius(5) {
		t.Errorf("5 K above 0 °C is %v", got)
	}
	if got := units.Fahrenheit(32); got != zero {
		t.Errorf("32 °F is %v", got)
	}
	if got := units.Celsius(25).Sub(units.Celsius(-10)); got != 35*units.Kelvin {
		t.Errorf("from -10 °C to 25 °C are %v", got)
	}
}

// TestTemperatureCompare holds that what is left of a sum near 0 °C is 0 °C,
// so that no limit at 0 °C turns on float64 noise.
func TestTemperatureCompare(t *testing.T) {
	left := units.Celsius(-0.3).Add(0.1).Add(0.2)
	if left.Celsius() == 0 {
		t.Fatal("the sum has no noise, so it shows nothing")
	}
	for _, c := range []struct {
		a, b units.Temperature
		want int
	}{
		{left, units.Celsius(0), 0},
		{units.Celsius(1e-12), units.Celsius(-1e-12), 0},
		{units.Celsius(1e-5), units.Celsius(0), 1},
		{units.Celsius(-1e-5), units.Celsius(0), -1},
		{units.Celsius(30), units.Fahrenheit(86), 0},
		{units.Celsius(30.00001), units.Celsius(30), 1},
		{units.Celsius(-40), units.Celsius(150), -1},
		{units.Celsius(math.NaN()), units.Celsius(0), -1},
		{units.Celsius(math.Inf(1)), units.Celsius(0), 1},
	} {
		if got := c.a.Compare(c.b); got != c.want {
			t.Errorf("(%v °C).Compare(%v °C) = %d, want %d", c.a.Celsius(), c.b.Celsius(), got, c.want)
		}
		if got := c.b.Compare(c.a); got != -c.want {
			t.Errorf("(%v °C).Compare(%v °C) = %d, want %d", c.b.Celsius(), c.a.Celsius(), got, -c.want)
		}
	}
	// The eight edges of a table of ambients, in °F and °C, fall on their
	// own side.
	for _, f := range []float64{50, 59, 68, 77, 86, 95, 104, 113} {
		edge := units.Celsius((f - 32) / 9 * 5)
		in := units.TemperatureBounds{Low: edge, High: edge}
		if !in.Contains(units.Fahrenheit(f)) || in.Contains(units.Fahrenheit(f+0.01)) || in.Contains(units.Fahrenheit(f-0.01)) {
			t.Errorf("%v °F must be at %v and its neighbours not", f, edge)
		}
	}
}

func TestTemperatureFormat(t *testing.T) {
	var none units.Temperature
	for _, c := range []struct {
		format string
		v      units.Temperature
		want   string
	}{
		{"%v", units.Celsius(25), "25 °C"}, {"%s", units.Celsius(-40), "-40 °C"},
		{"%v", units.Celsius(0), "0 °C"}, {"%v", units.Fahrenheit(0), "-17.7778 °C"},
		{"%.1f", units.Celsius(20.25), "20.3 °C"}, {"%.2e", units.Celsius(20), "2.00e+01 °C"},
		{"%g", units.Fahrenheit(0), "-17.7777778 °C"}, {"%.3v", units.Celsius(20.25), "20.3 °C"},
		{"[%9v]", units.Celsius(25), "[    25 °C]"}, {"[%-9v]", units.Celsius(25), "[25 °C    ]"},
		{"%+v", units.Celsius(25), "+25 °C"}, {"%06.1f", units.Celsius(5), "5.0 °C"}, {"%08.1f", units.Celsius(5), "005.0 °C"},
		{"%#v", units.Celsius(25), "units.Celsius(25)"}, {"%d", units.Celsius(25), "%!d(units.Temperature=25 °C)"},
		// what is left of a sum
		{"%v", units.Celsius(-0.3).Add(0.1).Add(0.2), "0 °C"}, {"%g", units.Celsius(-0.3).Add(0.1).Add(0.2), "0 °C"},
		// what is no number
		{"%v", units.Celsius(math.NaN()), "NaN °C"}, {"%.1f", units.Celsius(math.Inf(-1)), "-Inf °C"},
		{"%#v", units.Celsius(math.Inf(-1)), "units.Celsius(math.Inf(-1))"},
		// not given
		{"%v", none, "not given"}, {"%s", none, "not given"}, {"%.1f", none, "not given"}, {"%e", none, "not given"},
		{"[%12v]", none, "[   not given]"}, {"[%-12v]", none, "[not given   ]"}, {"[%012v]", none, "[   not given]"},
		{"%#v", none, "units.Temperature{}"}, {"%d", none, "%!d(units.Temperature=not given)"},
	} {
		if got := fmt.Sprintf(c.format, c.v); got != c.want {
			t.Errorf("Sprintf(%q, %#v) = %q, want %q", c.format, c.v, got, c.want)
		}
	}
}

// TestTemperatureText quotes "MarshalText returns the exact Celsius reading,
// or empty text if t was not given".
func TestTemperatureText(t *testing.T) {
	for _, c := range []struct {
		v    units.Temperature
		text string
	}{
		{units.Temperature{}, ""},
		{units.Celsius(0), "0 °C"}, {units.Celsius(math.Copysign(0, -1)), "0 °C"},
		{units.Celsius(-40), "-40 °C"}, {units.Fahrenheit(0), "-17.77777777777778 °C"},
		{units.Celsius(0.30000000000000004), "0.30000000000000004 °C"}, {units.Celsius(2.7e-17), "2.7e-17 °C"},
		{units.Celsius(-273.15), "-273.15 °C"}, {units.Celsius(math.MaxFloat64), "1.7976931348623157e+308 °C"},
		{units.Celsius(5e-324), "5e-324 °C"},
	} {
		text, err := c.v.MarshalText()
		if string(text) != c.text || err != nil {
			t.Errorf("MarshalText of %#v = %q, %v, want %q", c.v, text, err, c.text)
		}
		if more, err := c.v.AppendText([]byte("at ")); string(more) != "at "+c.text || err != nil {
			t.Errorf("AppendText of %#v = %q, %v", c.v, more, err)
		}
		back := units.Celsius(1)
		if err := back.UnmarshalText(text); back != c.v || err != nil {
			t.Errorf("UnmarshalText(%q) = %#v, %v, want %#v", text, back, err, c.v)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -273.16, -1e300} {
		text, err := units.Celsius(bad).MarshalText()
		if text != nil || !errors.Is(err, units.ErrRange) {
			t.Errorf("MarshalText of %v °C = %q, %v, want a RangeError", bad, text, err)
		}
	}
	kept := units.Celsius(20)
	if err := kept.UnmarshalText([]byte("20")); err == nil || kept != units.Celsius(20) {
		t.Errorf("after %v the temperature is %v, want it left alone", err, kept)
	}
}

func TestTemperatureJSON(t *testing.T) {
	type site struct {
		Low  units.Temperature `json:",omitzero"`
		High units.Temperature `json:",omitzero"`
		Here units.Temperature
	}
	in := site{Low: units.Celsius(0)}
	text, err := json.Marshal(in)
	if want := `{"Low":"0 °C","Here":""}`; string(text) != want || err != nil {
		t.Errorf("Marshal = %s, %v, want %s", text, err, want)
	}
	var out site
	if err := json.Unmarshal(text, &out); out != in || err != nil {
		t.Errorf("Unmarshal(%s) = %+v, %v, want %+v", text, out, err, in)
	}
}

func TestTemperatureBounds(t *testing.T) {
	low, high := units.Celsius(-40), units.Celsius(150)
	for _, c := range []struct {
		bounds  units.TemperatureBounds
		text    string
		in, out []units.Temperature
	}{
		{units.TemperatureBounds{}, "given and finite", []units.Temperature{units.Celsius(-300), units.Celsius(1e300)}, nil},
		{units.TemperatureBounds{Low: low}, ">= -40 °C", []units.Temperature{low, units.Fahrenheit(-40), units.Celsius(1e9)}, []units.Temperature{units.Celsius(-40.001)}},
		{units.TemperatureBounds{High: high}, "<= 150 °C", []units.Temperature{high, units.Celsius(-300)}, []units.Temperature{units.Celsius(150.001)}},
		{units.TemperatureBounds{Low: low, High: high}, "-40 °C to 150 °C", []units.Temperature{low, high, units.Celsius(0)}, []units.Temperature{units.Celsius(-41), units.Celsius(151)}},
		{units.TemperatureBounds{Low: units.Celsius(0)}, ">= 0 °C", []units.Temperature{units.Celsius(-1e-13)}, []units.Temperature{units.Celsius(-1e-5)}},
	} {
		if got := c.bounds.String(); got != c.text {
			t.Errorf("String() = %q, want %q", got, c.text)
		}
		for _, x := range c.in {
			if !c.bounds.Contains(x) || c.bounds.Check("op", "field", x) != nil {
				t.Errorf("%v must contain %#v", c.bounds, x)
			}
		}
		for _, x := range append(c.out, units.Temperature{}, units.Celsius(math.NaN()), units.Celsius(math.Inf(1)), units.Celsius(math.Inf(-1))) {
			err := c.bounds.Check("wire.VoltageDrop", "Ambient", x)
			var e *units.RangeError
			if c.bounds.Contains(x) || !errors.As(err, &e) || e.Op != "wire.VoltageDrop" || e.Field != "Ambient" || e.Allowed != c.bounds {
				t.Errorf("%v must not contain %#v: %#v", c.bounds, x, err)
			}
		}
	}
}
