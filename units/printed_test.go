package units_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// The numbers of this file are made up to have a certain shape; none of them
// is a published value. Expected sums and products are worked by hand.

func printed(t testing.TB, text string) units.Printed {
	t.Helper()
	p, err := units.ParsePrinted(text)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestParsePrinted(t *testing.T) {
	for _, test := range []struct {
		text       string
		digits     string
		unit       string
		full       string
		float      float64
		resolution string
	}{
		// Digits as printed, zeros kept.
		{"0.770 Ω/kft", "0.770", "Ω/kft", "0.770 Ω/kft", 0.770, "0.001 Ω/kft"},
		{"30 A", "30", "A", "30 A", 30, "1 A"},
		{"30.0A", "30.0", "A", "30.0 A", 30, "0.1 A"},
		{"12", "12", "", "12", 12, "1"},
		{"16.7 %", "16.7", "%", "16.7 %", 16.7, "0.1 %"},
		{"120 °", "120", "°", "120°", 120, "1°"},
		{"0.00 V", "0.00", "V", "0.00 V", 0, "0.01 V"},
		// The same digits, written otherwise.
		{".770", "0.770", "", "0.770", 0.77, "0.001"},
		{"12.", "12", "", "12", 12, "1"},
		{"+5 V", "5", "V", "5 V", 5, "1 V"},
		{"007 A", "7", "A", "7 A", 7, "1 A"},
		{" 5   mV ", "5", "mV", "5 mV", 5, "1 mV"},
		// Signs.
		{"-10 °C", "-10", "°C", "-10 °C", -10, "1 °C"},
		{"\u221210.5 °C", "-10.5", "°C", "-10.5 °C", -10.5, "0.1 °C"},
		{"- 5 A", "-5", "A", "-5 A", -5, "1 A"},
		{"-0.0 A", "0.0", "A", "0.0 A", 0, "0.1 A"},
		// Powers of ten.
		{"1.72e-8 Ω·m", "1.72e-8", "Ω·m", "1.72e-8 Ω·m", 1.72e-8, "1e-10 Ω·m"},
		{"1.720E-08 Ω·m", "1.720e-8", "Ω·m", "1.720e-8 Ω·m", 1.72e-8, "1e-11 Ω·m"},
		{"17.2e3", "17.2e3", "", "17.2e3", 17200, "1e2"},
		{"2e0", "2e0", "", "2e0", 2, "1e0"},
		{"-5e3 W", "-5e3", "W", "-5e3 W", -5000, "1e3 W"},
		// Units with digits, and units that no quantity has.
		{"2.5 mm2", "2.5", "mm2", "2.5 mm2", 2.5, "0.1 mm2"},
		{"9.81 m/s^2", "9.81", "m/s^2", "9.81 m/s^2", 9.81, "0.01 m/s^2"},
		{"1.98 Ω/1000 ft", "1.98", "Ω/1000 ft", "1.98 Ω/1000 ft", 1.98, "0.01 Ω/1000 ft"},
		{"1.98 ohms per 1000 ft", "1.98", "ohms per 1000 ft", "1.98 ohms per 1000 ft", 1.98, "0.01 ohms per 1000 ft"},
		{"0.143 USD/kWh", "0.143", "USD/kWh", "0.143 USD/kWh", 0.143, "0.001 USD/kWh"},
		{"3000 cycles", "3000", "cycles", "3000 cycles", 3000, "1 cycles"},
		{"5 e", "5", "e", "5 e", 5, "1 e"},
		{`6"`, "6", `"`, `6 "`, 6, `1 "`},
		// A stated resolution.
		{"1500 W to the nearest 100", "1500", "W", "1500 W to the nearest 100", 1500, "100 W"},
		{"1500 to the nearest 25", "1500", "", "1500 to the nearest 25", 1500, "25"},
		{"12.80 V to the nearest 0.05", "12.80", "V", "12.80 V to the nearest 0.05", 12.8, "0.05 V"},
		{"12.80 V to the nearest .5", "12.80", "V", "12.80 V to the nearest 0.50", 12.8, "0.50 V"},
		{"12.8 V to the nearest 0.1", "12.8", "V", "12.8 V", 12.8, "0.1 V"},
		{"1.5e3 W to the nearest 500", "1.5e3", "W", "1.5e3 W to the nearest 5e2", 1500, "5e2 W"},
		// The ends of the range.
		{"1000000000000000000 m", "1000000000000000000", "m", "1000000000000000000 m", 1e18, "1 m"},
		{"1e280", "1e280", "", "1e280", 1e280, "1e280"},
		{"-1000000000000000000e280", "-1000000000000000000e280", "", "-1000000000000000000e280", -1e298, "1e280"},
		{"1e-300", "1e-300", "", "1e-300", 1e-300, "1e-300"},
		{"0." + strings.Repeat("0", 299) + "1", "0." + strings.Repeat("0", 299) + "1", "", "0." + strings.Repeat("0", 299) + "1",
			1e-300, "0." + strings.Repeat("0", 299) + "1"},
	} {
		p, err := units.ParsePrinted(test.text)
		if err != nil {
			t.Errorf("ParsePrinted(%q): %v", test.text, err)
			continue
		}
		if got := p.Digits(); got != test.digits {
			t.Errorf("ParsePrinted(%q).Digits() = %q, want %q", test.text, got, test.digits)
		}
		if got := p.Unit(); got != test.unit {
			t.Errorf("ParsePrinted(%q).Unit() = %q, want %q", test.text, got, test.unit)
		}
		if got := p.String(); got != test.full {
			t.Errorf("ParsePrinted(%q).String() = %q, want %q", test.text, got, test.full)
		}
		if got := p.Float(); got != test.float {
			t.Errorf("ParsePrinted(%q).Float() = %v, want %v", test.text, got, test.float)
		}
		if got := p.Resolution().String(); got != test.resolution {
			t.Errorf("ParsePrinted(%q).Resolution() = %q, want %q", test.text, got, test.resolution)
		}
		if !p.IsSet() || p.IsZero() {
			t.Errorf("ParsePrinted(%q) is not given", test.text)
		}
		roundTripPrinted(t, p)
	}
}

// roundTripPrinted demands that the text of p reads back as p, twice, and
// that the three ways to it agree.
func roundTripPrinted(t *testing.T, p units.Printed) {
	t.Helper()
	q := p
	for range 2 {
		text, err := q.MarshalText()
		if err != nil {
			t.Fatalf("(%v).MarshalText: %v", q, err)
		}
		if string(text) != q.String() {
			t.Errorf("MarshalText = %q, String = %q", text, q.String())
		}
		if appended, err := q.AppendText([]byte("x")); err != nil || string(appended) != "x"+string(text) {
			t.Errorf("AppendText = %q, %v, MarshalText = %q", appended, err, text)
		}
		q = units.MustPrinted("99", "other")
		if err := q.UnmarshalText(text); err != nil {
			t.Fatalf("UnmarshalText(%q): %v", text, err)
		}
		if q != p {
			t.Fatalf("%q reads back as %#v, want %#v", text, q, p)
		}
	}
}

func TestParsePrintedErrors(t *testing.T) {
	for _, test := range []struct {
		text, want string
	}{
		// No number, or more than one.
		{"", "no number"},
		{"A", "no number"},
		{"6 ft 3 in", "second number"},
		{`5' 6"`, "second number"},
		{"5-6 A", "want a unit"},
		{"12 000 m", "want a unit"},
		{"12.5.1", "want a unit"},
		// Spellings that are another country's or another trade's.
		{"1,500 W", "comma"},
		{"1.72 × 10^-8", "1.72e-8"},
		{"1e401", "exponent"},
		{"1 V; 2 A", "no ';'"},
		{"1 V; x", "no ';'"},
		{"1 a\x01b", "no '\\x01'"},
		{"1 a\xffb", "UTF-8"},
		{strings.Repeat("\xa0", 21), "UTF-8"},
		{"1 " + strings.Repeat("a", 49), "more than 48 bytes"},
		// Resolutions.
		{"1500 W to the nearest", "no resolution"},
		{"1500 W to the nearest x", "no number"},
		{"1500 W to the nearest 100 W", "followed by"},
	} {
		p, err := units.ParsePrinted(test.text)
		var parse *units.ParseError
		if !errors.As(err, &parse) || !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), test.want) {
			t.Errorf("ParsePrinted(%q) = %v, want a ParseError with %q", test.text, err, test.want)
		}
		if p != (units.Printed{}) {
			t.Errorf("ParsePrinted(%q) = %v beside the error", test.text, p)
		}
	}
	for _, text := range []string{
		// Too many digits, too large, too small.
		"1000000000000000001", "-1000000000000000001", "9223372036854775808", "0.1234567890123456789",
		"1e281", "1e-301", "1.0e-300", "0." + strings.Repeat("0", 300) + "1",
		// A resolution finer than the digits, or none.
		"1500 W to the nearest 0.5", "12.8 V to the nearest 0.25", "1500 W to the nearest 0",
		"1500 W to the nearest -100", "1500 W to the nearest 1e19", "1.5e3 W to the nearest 50",
	} {
		_, err := units.ParsePrinted(text)
		wantRange(t, "ParsePrinted("+text+")", err)
	}
}

// wantRange fails unless err is a RangeError that names what it is about.
func wantRange(t *testing.T, what string, err error) {
	t.Helper()
	var e *units.RangeError
	switch {
	case !errors.As(err, &e) || !errors.Is(err, units.ErrRange):
		t.Errorf("%s: error %v, want a RangeError", what, err)
	case e.Op == "" || e.Field == "" || e.Allowed == nil || e.Allowed.String() == "":
		t.Errorf("%s: RangeError %#v leaves something out", what, e)
	}
}

// wantUnit fails unless err is a UnitError of op.
func wantUnit(t *testing.T, op string, err error) {
	t.Helper()
	var e *units.UnitError
	if !errors.As(err, &e) || !errors.Is(err, units.ErrUnit) || e.Op != op || e.Got == "" {
		t.Errorf("error %v, want a UnitError of %s", err, op)
	}
}

func TestNewPrinted(t *testing.T) {
	for _, test := range []struct{ digits, unit, want string }{
		{"0.770", "Ω/kft", "0.770 Ω/kft"},
		{" 12.0 ", " V ", "12.0 V"},
		{"1.72e-8", "Ω·m", "1.72e-8 Ω·m"},
		{"0.80", "", "0.80"},
	} {
		p, err := units.NewPrinted(test.digits, test.unit)
		if err != nil || p.String() != test.want {
			t.Errorf("NewPrinted(%q, %q) = %v, %v, want %s", test.digits, test.unit, p, err, test.want)
		}
		roundTripPrinted(t, p)
	}
	for _, test := range []struct{ digits, unit, want string }{
		{"30 A", "", `followed by " A"`},
		{"30 A", "A", `followed by " A"`},
		{"", "A", "no number"},
		{"30", "3", "want a unit"},
		{"30", strings.Repeat("\xa0", 21), "UTF-8"},
		{"30", "A to the nearest 5", "no resolution"},
		{"30", "A to the nearest", "no resolution"},
		{"30", "to the nearest ten", "no resolution"},
	} {
		_, err := units.NewPrinted(test.digits, test.unit)
		if !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), test.want) {
			t.Errorf("NewPrinted(%q, %q): error %v, want a ParseError with %q", test.digits, test.unit, err, test.want)
		}
	}
	defer func() {
		if err, ok := recover().(error); !ok || !errors.Is(err, units.ErrSyntax) {
			t.Errorf("MustPrinted panics with %v, want a ParseError", err)
		}
	}()
	units.MustPrinted("thirty", "A")
}

func TestPrintedCovers(t *testing.T) {
	for _, test := range []struct {
		text string
		in   []float64
		out  []float64
	}{
		{"0.770 Ω/kft",
			[]float64{0.77, 0.7695, 0.7705, 0.7695 - 1e-14, 0.7705 + 1e-14},
			[]float64{0.76949, 0.77051, 0.769499, -0.77, 0}},
		{"30 A", []float64{29.5, 30.5, 30.499999999999996}, []float64{29.4999, 30.5001}},
		{"30.0 A", []float64{29.95, 30.05}, []float64{29.9499, 30.0501}},
		{"-10 °C", []float64{-10.5, -9.5}, []float64{-10.501, -9.499, 10}},
		{"0 V", []float64{-0.5, 0, 0.5, math.Copysign(0, -1)}, []float64{-0.50001, 0.50001}},
		{"0.0 V", []float64{-0.05, 0.05}, []float64{-0.0501, 0.0501}},
		{"1.72e-8", []float64{1.715e-8, 1.725e-8}, []float64{1.7149e-8, 1.7251e-8}},
		{"17.2e3", []float64{17150, 17250}, []float64{17149, 17251}},
		{"1500 W to the nearest 100", []float64{1450, 1550}, []float64{1449.9, 1550.1}},
		{"1500 to the nearest 25", []float64{1487.5, 1512.5}, []float64{1487.4, 1512.6}},
		// More digits than verdicts look at: nine of them decide.
		{"1054.35026448889", []float64{1054.35026448889, 1054.350264}, []float64{1054.35027, 1054.35025}},
		{"1000000000000000000 to the nearest 1000000000000000000", []float64{5e17, 1.5e18}, []float64{4.9999e17, 1.50001e18}},
		{"-1000000000000000000e280", []float64{-1e298}, []float64{1e298, -1.00000001e298}},
		{"1e-300", []float64{5e-301, 1.5e-300}, []float64{4.9e-301, 0}},
	} {
		p := printed(t, test.text)
		for _, x := range test.in {
			if !p.Covers(x) {
				t.Errorf("%v does not cover %v", p, x)
			}
		}
		for _, x := range append(test.out, math.NaN(), math.Inf(1), math.Inf(-1)) {
			if p.Covers(x) {
				t.Errorf("%v covers %v", p, x)
			}
		}
	}
}

func TestPrintedAgrees(t *testing.T) {
	for _, test := range []struct {
		text string
		v    units.Value
		want bool
	}{
		{"3.60 V", 3.6 * units.Volt, true},
		{"3.60 V", 3595 * units.Millivolt, true},
		{"3.60 V", 3.594 * units.Volt, false},
		{"0.770 Ω/kft", 0.7702 * units.OhmPerKilofoot, true},
		{"0.770 ohm/1000ft", 0.7712 * units.OhmPerKilofoot, false},
		{"16.7 %", units.Ratio(1) / 6, true},
		{"0.80", 80.4 * units.Percent, true},
		{"0.80", 80.6 * units.Percent, false},
		{"77 °F", units.Celsius(25), true},
		{"76 °F", units.Celsius(25), false},
		{"298 K", units.Celsius(25), true},
	} {
		got, err := printed(t, test.text).Agrees(test.v)
		if err != nil || got != test.want {
			t.Errorf("(%s).Agrees(%v) = %t, %v, want %t", test.text, test.v, got, err, test.want)
		}
	}
	// What cannot be measured is an error, not a disagreement.
	for _, test := range []struct {
		text string
		v    units.Value
		want error
	}{
		{"30 A", 30 * units.Volt, units.ErrSyntax},
		{"30", 30 * units.Volt, units.ErrSyntax},
		{"30 °C", units.Temperature{}, units.ErrRange},
		{"30 A", nil, units.ErrRange},
	} {
		if got, err := printed(t, test.text).Agrees(test.v); got || !errors.Is(err, test.want) {
			t.Errorf("(%s).Agrees(%v) = %t, %v, want %v", test.text, test.v, got, err, test.want)
		}
	}
	if got, err := (units.Printed{}).Agrees(30 * units.Ampere); got || !errors.Is(err, units.ErrRange) {
		t.Errorf("not given agrees with 30 A: %t, %v", got, err)
	}
}

func TestAs(t *testing.T) {
	if got, err := units.As[units.ResistancePerLength](printed(t, "0.770 Ω/kft")); err != nil || got != 0.77*units.OhmPerKilofoot {
		t.Errorf("As(0.770 Ω/kft) = %v, %v", got, err)
	}
	if got, err := units.As[units.Resistivity](printed(t, "1.72e-8 Ω·m")); err != nil || got != 1.72e-8*units.OhmMetre {
		t.Errorf("As(1.72e-8 Ω·m) = %v, %v", got, err)
	}
	if got, err := units.As[units.Current](printed(t, "-1500 mA to the nearest 100")); err != nil || got != -1.5*units.Ampere {
		t.Errorf("As(-1500 mA to the nearest 100) = %v, %v", got, err)
	}
	// 9·5/9 K is exactly 5 K when rounded once.
	if got, err := units.As[units.TemperatureChange](printed(t, "9 °F")); err != nil || got != 5*units.Kelvin {
		t.Errorf("As(9 °F) = %v, %v", got, err)
	}
	// A number without unit is a ratio as Parse reads one.
	if got, err := units.As[units.Ratio](printed(t, "1.25")); err != nil || got != 1.25*units.One {
		t.Errorf("As(1.25) = %v, %v", got, err)
	}
	if got, err := units.As[units.Ratio](printed(t, "600 %")); err != nil || got != 6*units.One {
		t.Errorf("As(600 %%) = %v, %v", got, err)
	}
	// The ends of the range, in the largest and the smallest unit.
	if got, err := units.As[units.Irradiation](printed(t, "1000000000000000000e280 kWh/m²")); err != nil || got != 1e298*units.KilowattHourPerSquareMetre {
		t.Errorf("As = %v, %v", got, err)
	}
	if got, err := units.As[units.Area](printed(t, "1e-300 cmil")); err != nil || got == 0 {
		t.Errorf("As = %v, %v", got, err)
	}
}

func TestAsErrors(t *testing.T) {
	for _, text := range []string{"30 A", "30", "30 volts per second", "12"} {
		q, err := units.As[units.Voltage](printed(t, text))
		if q != 0 || !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), "V, mV, kV") {
			t.Errorf("As[Voltage](%s) = %v, %v, want a ParseError that lists the units", text, q, err)
		}
	}
	// Not a compound, though Parse reads one.
	if q, err := units.As[units.Length](units.MustPrinted("6", "ft3in")); !errors.Is(err, units.ErrSyntax) {
		t.Errorf("As[Length](6 ft3in) = %v, %v, want a ParseError", q, err)
	}
	// A percentage that lost its sign.
	if q, err := units.As[units.Ratio](printed(t, "16.7")); !errors.Is(err, units.ErrSyntax) {
		t.Errorf("As[Ratio](16.7) = %v, %v, want a ParseError", q, err)
	}
	_, err := units.As[units.Voltage](units.Printed{})
	wantRange(t, "As(not given)", err)
}

func TestPrintedTemperature(t *testing.T) {
	for _, test := range []struct {
		text string
		want float64
	}{{"75 °C", 75}, {"-0.0 °C", 0}, {"32 °F", 0}, {"2.9815e2 K", 25}, {"104 degF", 40}} {
		got, err := printed(t, test.text).Temperature()
		if err != nil || got != units.Celsius(test.want) {
			t.Errorf("(%s).Temperature() = %v, %v, want %v °C", test.text, got, err, test.want)
		}
	}
	for _, p := range []units.Printed{{}, printed(t, "75"), printed(t, "75 V"), printed(t, "75 °C/W")} {
		if got, err := p.Temperature(); got.IsSet() || !errors.Is(err, units.ErrSyntax) {
			t.Errorf("(%v).Temperature() = %v, %v, want a ParseError", p, got, err)
		}
	}
	_, err := printed(t, "-300 °C").Temperature()
	wantRange(t, "-300 °C", err)
}

func TestPrintedNotGiven(t *testing.T) {
	var none units.Printed
	if none.IsSet() || !none.IsZero() || none.String() != "not given" || none.Digits() != "" || none.Unit() != "" ||
		!math.IsNaN(none.Float()) || none.Covers(0) || none.Covers(math.NaN()) || none.Resolution() != none {
		t.Errorf("zero Printed: %#v", none)
	}
	if zero := printed(t, "0"); zero == none || zero.IsZero() {
		t.Error("a printed 0 is not told from not given")
	}
	text, err := none.MarshalText()
	if err != nil || text == nil || len(text) != 0 {
		t.Errorf("MarshalText() = %q, %v, want empty text", text, err)
	}
	p := printed(t, "30 A")
	if err := p.UnmarshalText(nil); err != nil || p != none {
		t.Errorf("UnmarshalText of nothing: %v, %v", p, err)
	}
	p = printed(t, "30 A")
	if err := p.UnmarshalText([]byte("thirty")); !errors.Is(err, units.ErrSyntax) || p != printed(t, "30 A") {
		t.Errorf("UnmarshalText(thirty): %v, %v", p, err)
	}
	var decoded struct{ A, B units.Printed }
	if err := json.Unmarshal([]byte(`{"A": "0.770 Ω/kft", "B": ""}`), &decoded); err != nil ||
		decoded.A != printed(t, "0.770 Ω/kft") || decoded.B != none {
		t.Errorf("JSON: %v, %v", decoded, err)
	}
}

// TestPrintedFloatIsNearest compares with exact rationals.
func TestPrintedFloatIsNearest(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		p := randomPrinted(r)
		exact, ok := new(big.Rat).SetString(p.Digits())
		if !ok {
			t.Fatalf("%q is no number", p.Digits())
		}
		if want, _ := exact.Float64(); p.Float() != want {
			t.Errorf("(%v).Float() = %v, want %v", p, p.Float(), want)
		}
	}
}

func TestPrintedAllocs(t *testing.T) {
	p := units.MustPrinted("0.770", "Ω/kft")
	long := units.MustPrinted("-1.23456789012345678e-200", "")
	for name, f := range map[string]func(){
		"Float":       func() { _ = p.Float() },
		"Float long":  func() { _ = long.Float() },
		"Covers":      func() { _ = p.Covers(0.7705) },
		"Covers long": func() { _ = long.Covers(1) },
		"Resolution":  func() { _ = p.Resolution() },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkPrintedCovers(b *testing.B) {
	p := units.MustPrinted("0.770", "Ω/kft")
	x := 0.7702
	b.Run("model=printed", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if !p.Covers(x) {
				b.Fatal("not covered")
			}
		}
	})
	b.Run("model=raw", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if math.Abs(x-0.770) > 0.0005 {
				b.Fatal("not covered")
			}
		}
	})
}
