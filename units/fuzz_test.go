package units_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
)

// FuzzParse reads any text as any type. What is read goes to text and back
// without a change; what is not gives one of the two errors that Parse
// promises, and no value.
func FuzzParse(f *testing.F) {
	names := subjectNames()
	all := subjects()
	for _, text := range []string{
		// numbers with units of several types
		"12.8 V", "300Ah", "6 ft 3 in", `6'3"`, "2.5 mm2", "13.5 kBtu/h", "30%", "0.3", "1.98 ohm/1000 ft",
		`45° 30' 15"`, "1 d 2 h 3 min 4.5 s", "5 lb 3 oz", "9 °F", "0.393 %/K", "5 kW·h/m^2",
		// the ends of float64
		"1e308 mm²", "5e-324 V", "1e-400 V", "1e309 %", "0e400 d",
		// what must be refused
		"", "-", "--1 V", "1,5 V", "NaN", "Inf V", "0x1p3 V", "1_0 V", "1e999 V", "1 1", "0.3 1", "1 m m", "mmmmmmmm", "\xff\xfe", "1 \xc2",
	} {
		for kind := range names {
			f.Add(uint8(kind), text)
		}
	}
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		name := names[int(kind)%len(names)]
		x, err := all[name].parse(text)
		if err != nil {
			checkParseError(t, err, x, "units.Parse")
			return
		}
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("Parse[%s](%q) = %v", name, text, x)
		}
		checkText(t, name, all[name], x)
	})
}

// FuzzParseTemperature reads any text as a temperature, with the promises of
// FuzzParse.
func FuzzParseTemperature(f *testing.F) {
	for _, text := range []string{
		"77 °F", "-10C", "298.15 K", "0 °C", "-0 °C", "32 deg F", "-459.67 °F", "0 K", "1e308 °C", "5e-324 °C",
		"", "77", "-500 °F", "-1 K", "1e309 °C", "1e999 K", "77 °F 3", "NaN °C", "--1 °C", "\xff °C",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := units.ParseTemperature(text)
		if err != nil {
			checkParseError(t, err, v.Celsius(), "units.ParseTemperature")
			return
		}
		first, err := v.MarshalText()
		if err != nil || !v.IsSet() {
			t.Fatalf("ParseTemperature(%q) = %v, which is written %q, %v", text, v, first, err)
		}
		var back units.Temperature
		if err := back.UnmarshalText(first); back != v || err != nil {
			t.Fatalf("%#v is written %q and read as %#v, %v", v, first, back, err)
		}
		if again, err := back.AppendText(nil); string(again) != string(first) || err != nil {
			t.Fatalf("%#v is written %q, read, and written %q, %v", v, first, again, err)
		}
	})
}

// checkParseError checks that err is of a type that is promised and x zero.
func checkParseError(t *testing.T, err error, x float64, op string) {
	t.Helper()
	var syntax *units.ParseError
	var limits *units.RangeError
	switch {
	case x != 0:
		t.Fatalf("%v with the value %v", err, x)
	case errors.As(err, &syntax):
		if syntax.Reason == "" || !errors.Is(err, units.ErrSyntax) {
			t.Fatalf("%#v", err)
		}
	case errors.As(err, &limits):
		if limits.Op != op || !errors.Is(err, units.ErrRange) {
			t.Fatalf("%#v", err)
		}
	default:
		t.Fatalf("an error of type %T: %v", err, err)
	}
}

// FuzzSettle checks the laws of settled comparison over any two numbers.
func FuzzSettle(f *testing.F) {
	for _, pair := range [][2]float64{
		{15, 15.000000000000002}, {15, 15.0004}, {0, 5e-324}, {0.5000000005, 0.5}, {-1e22, 1e22},
		{999999999.5, 1e9}, {math.MaxFloat64, math.Inf(1)}, {math.NaN(), 1}, {1.00000001, 1}, {0x1p-1022, 0x1p-1023},
	} {
		f.Add(pair[0], pair[1])
	}
	f.Fuzz(func(t *testing.T, x, y float64) {
		checkSettle(t, x, y)
		checkSettle(t, x, x*(1+1e-9))
		if got, want := units.Compare(x, y), units.CompareSettled; !math.IsNaN(x-x) && !math.IsNaN(y-y) && got != want(x, y) {
			t.Fatalf("Compare(%v, %v) = %d, settled %d", x, y, got, want(x, y))
		}
	})
}

// FuzzFormat prints any number as any type and compares with the slow twins.
func FuzzFormat(f *testing.F) {
	for i, x := range []float64{0, 2.5, 0.05, -2.5, 999.9995, 0.9999995, 1e7, 9999999.5, 0.0001, 1e-5, 12345.6789, 1e22, 1e-22} {
		f.Add(uint8(i), x, uint8(i))
	}
	names := subjectNames()
	all := subjects()
	f.Fuzz(func(t *testing.T, kind uint8, x float64, precision uint8) {
		// The twins divide in float64, which must hold the quotient.
		const most = 1e280
		if size := math.Abs(x); x != 0 && !(size < most && size > 1/most) {
			return
		}
		name := names[int(kind)%len(names)]
		s := all[name]
		checkFormat(t, name, s.of(x), x, units.Rows(s.zero), int(precision%9))
	})
}
