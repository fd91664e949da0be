package units_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/drawbar/units"
)

// The slow twins below work in decimal arithmetic, rounding half away from
// zero at each step that the documentation names.

// settledTwin is what Settle documents: the shortest decimal that reads back
// as x, to nine significant digits.
func settledTwin(x float64) decimal.Decimal { return significantTwin(shortest(x), 9) }

func shortest(x float64) decimal.Decimal {
	return decimal.RequireFromString(strconv.FormatFloat(x, 'e', -1, 64))
}

// significantTwin returns d to so many significant digits.
func significantTwin(d decimal.Decimal, digits int) decimal.Decimal {
	if d.IsZero() {
		return decimal.Decimal{}
	}
	return d.Round(int32(digits-d.NumDigits()) - d.Exponent())
}

// scientificTwin prints d with so many decimals and an exponent.
func scientificTwin(d decimal.Decimal, decimals int) string {
	power := 0
	if d = significantTwin(d, decimals+1); !d.IsZero() {
		power = d.NumDigits() - 1 + int(d.Exponent())
	}
	return fmt.Sprintf("%se%+03d", d.Shift(int32(-power)).StringFixed(int32(decimals)), power)
}

// printedTwin is what Significant documents.
func printedTwin(d decimal.Decimal, digits int) string {
	d = significantTwin(d, digits)
	plain := d.String() // drops trailing zeros
	size := d.Abs()
	if d.IsZero() || size.Cmp(decimal.New(1, -4)) >= 0 && size.Cmp(decimal.New(1, 7)) < 0 {
		return plain
	}
	text := scientificTwin(d, digits-1)
	mantissa, exponent, _ := strings.Cut(text, "e")
	if strings.Contains(mantissa, ".") {
		mantissa = strings.TrimRight(strings.TrimRight(mantissa, "0"), ".")
	}
	return mantissa + "e" + exponent
}

// stringTwin is what String documents: the largest of the shown units in
// which the value is at least 1 as printed, or the smallest.
func stringTwin(x float64, rows []units.Row) string {
	best := rows[0]
	for _, row := range rows {
		if row.Shown && row.Float < best.Float {
			best = row
		}
	}
	one := decimal.New(1, 0)
	for _, row := range rows {
		count := significantTwin(settledTwin(x/row.Float), 6)
		if row.Shown && row.Float > best.Float && count.Abs().Cmp(one) >= 0 {
			best = row
		}
	}
	if x == 0 {
		best = rows[0]
	}
	return withUnit(printedTwin(settledTwin(x/best.Float), 6), best.Symbol)
}

func withUnit(number, symbol string) string {
	if symbol == "°" {
		return number + symbol
	}
	return number + " " + symbol
}

func TestSignificant(t *testing.T) {
	for _, c := range []struct {
		x      float64
		digits int
		want   string
	}{
		{0, 6, "0"},
		{math.Copysign(0, -1), 6, "0"},
		{12.8, 6, "12.8"},
		{1.188, 2, "1.2"},
		{100, 2, "100"},
		{1234567, 2, "1200000"},
		// an exponent only below 0.0001 and from 10 million up
		{0.0001, 6, "0.0001"},
		{0.00009999995, 6, "0.0001"},
		{0.000099999, 6, "9.9999e-05"},
		{9999999, 9, "9999999"},
		{9999999, 6, "1e+07"},
		{12345678, 9, "1.2345678e+07"},
		{1e100, 6, "1e+100"},
		// half away from zero, on the decimal that a person would have typed
		{2.5, 1, "3"}, {-2.5, 1, "-3"}, {0.25, 1, "0.3"}, {2.675, 3, "2.68"}, {1.005, 3, "1.01"},
		// settled first: the noise of a sum is gone
		{0.30000000000000004, 9, "0.3"},
		{15.000000000000002, 9, "15"},
		{0.12345649999999999, 6, "0.123457"},
		// digits outside 1 to 9 are the nearest of them
		{12.3456789012, 20, "12.3456789"}, {12.8, 0, "10"}, {12.8, -3, "10"},
		// what is no number
		{math.NaN(), 6, "NaN"}, {math.Inf(1), 6, "+Inf"}, {math.Inf(-1), 6, "-Inf"},
		// extremes
		{math.MaxFloat64, 9, "1.79769313e+308"},
		{math.SmallestNonzeroFloat64, 9, "5e-324"},
	} {
		if got := units.Significant(c.x, c.digits); got != c.want {
			t.Errorf("Significant(%v, %d) = %q, want %q", c.x, c.digits, got, c.want)
		}
	}
}

func TestFixed(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{12.8, 2, "12.80"},
		{12.8, 0, "13"},
		{0, 2, "0.00"},
		{12.8, -1, "13"},
		// half away from zero
		{2.5, 0, "3"}, {-2.5, 0, "-3"}, {0.05, 1, "0.1"}, {-0.05, 1, "-0.1"}, {0.5, 0, "1"}, {0.49, 0, "0"},
		{1.005, 2, "1.01"}, {999.995, 2, "1000.00"}, {99.95, 1, "100.0"},
		// no negative zero
		{-0.04, 1, "0.0"}, {-0.004, 1, "0.0"}, {math.Copysign(0, -1), 1, "0.0"},
		// settled first: nine digits and then zeros
		{123456789.987, 2, "123456790.00"},
		{0.30000000000000004, 17, "0.30000000000000000"},
		{1e-12, 3, "0.000"},
		{1.5e300, 0, "15" + strings.Repeat("0", 299)},
		{math.SmallestNonzeroFloat64, 325, "0." + strings.Repeat("0", 323) + "50"},
		{math.NaN(), 2, "NaN"}, {math.Inf(1), 2, "+Inf"}, {math.Inf(-1), 2, "-Inf"},
	} {
		if got := units.Fixed(c.x, c.decimals); got != c.want {
			t.Errorf("Fixed(%v, %d) = %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
}

func TestString(t *testing.T) {
	for _, c := range []struct {
		v    fmt.Stringer
		want string
	}{
		{12.8 * units.Volt, "12.8 V"},
		{-12.8 * units.Volt, "-12.8 V"},
		{units.Voltage(0), "0 V"},
		{units.Voltage(math.Copysign(0, -1)), "0 V"},
		{100 * units.AmpereHour, "100 Ah"},
		{30 * units.Percent, "30 %"},
		{45 * units.Degree, "45°"},
		{2.5 * units.SquareMillimetre, "2.5 mm²"},
		{1500 * units.Watt, "1.5 kW"},
		{units.Current(1) / 3, "333.333 mA"},
		// the unit changes where the printed number reaches 1
		{999.9994 * units.Watt, "999.999 W"},
		{999.9995 * units.Watt, "1 kW"},
		{999.9996 * units.Watt, "1 kW"},
		{-999.9995 * units.Watt, "-1 kW"},
		{0.9999994 * units.Volt, "999.999 mV"},
		{0.9999995 * units.Volt, "1 V"},
		{units.Voltage(1 - 1e-12), "1 V"},
		{59.9999 * units.Second, "59.9999 s"},
		{59.99999 * units.Second, "1 min"},
		{86399.99 * units.Second, "1 d"},
		{36 * units.Hour, "1.5 d"},
		// below the smallest unit shown
		{1 * units.Microohm, "1 µΩ"},
		{0.5 * units.Microohm, "0.5 µΩ"},
		{1e-9 * units.Volt, "1e-06 mV"},
		// a unit that is not shown is not chosen
		{1 * units.Mile, "1.60934 km"},
		{1 * units.Joule, "0.000277778 Wh"},
		// beyond what a unit can count in float64; the last two are
		// 4.940656458e-324 J and 9.99988672e-321 J over 3600
		{units.Voltage(1e307), "1e+304 kV"},
		{units.Ratio(1e307), "1e+309 %"},
		{units.Area(1e305), "1e+305 m²"},
		{units.Energy(5e-324), "1.3724e-327 Wh"},
		{units.Energy(1e-320), "2.77775e-324 Wh"},
		// what is no number
		{units.Voltage(math.NaN()), "NaN V"},
		{units.Voltage(math.Inf(1)), "+Inf V"},
		{units.Voltage(math.Inf(-1)), "-Inf V"},
	} {
		if got := c.v.String(); got != c.want {
			t.Errorf("%#v prints %q, want %q", c.v, got, c.want)
		}
	}
}

func TestFormat(t *testing.T) {
	volts, watts := 12.8*units.Volt, 1500*units.Watt
	for _, c := range []struct {
		format string
		v      any
		want   string
	}{
		// the unit that suits, six digits or as many as asked for
		{"%v", volts, "12.8 V"}, {"%s", volts, "12.8 V"},
		{"%v", watts, "1.5 kW"}, {"%s", watts, "1.5 kW"},
		{"%.2v", 1.188 * units.Volt, "1.2 V"}, {"%.2s", 1.188 * units.Volt, "1.2 V"},
		{"%.9v", units.Voltage(1) / 3, "333.333333 mV"},
		{"%.0v", 600 * units.Watt, "600 W"}, {"%.1v", 950 * units.Watt, "1 kW"},

		// the unit of MarshalText
		{"%f", watts, "1500.000000 W"}, {"%F", watts, "1500.000000 W"},
		{"%.1f", watts, "1500.0 W"}, {"%.0f", 2.5 * units.Watt, "3 W"},
		{"%.1f", 0.05 * units.Volt, "0.1 V"}, {"%.0f", -2.5 * units.Watt, "-3 W"},
		{"%e", watts, "1.500000e+03 W"}, {"%.2e", watts, "1.50e+03 W"}, {"%.0e", watts, "2e+03 W"},
		{"%.2e", 9.999 * units.Volt, "1.00e+01 V"}, {"%.3e", units.Voltage(0), "0.000e+00 V"},
		{"%.12e", volts, "1.280000000000e+01 V"}, {"%.1e", 1.25e-7 * units.Volt, "1.3e-07 V"},
		{"%.1e", units.Voltage(1.25e-100), "1.3e-100 V"},
		{"%g", watts, "1500 W"}, {"%g", units.Voltage(1) / 3, "0.333333333 V"}, {"%.2g", watts, "1500 W"},
		{"%.3g", 12345 * units.Watt, "12300 W"},
		{"%.1f", 100 * units.AmpereHour, "100.0 Ah"}, {"%.1f", 0.5 * units.Percent, "0.5 %"},
		{"%.1f", 45 * units.Degree, "45.0°"},

		// the width counts characters, those of the unit among them
		{"[%9v]", volts, "[   12.8 V]"}, {"[%-9v]", volts, "[12.8 V   ]"}, {"[%3v]", volts, "[12.8 V]"},
		{"[%8v]", 25 * units.Ohm, "[    25 Ω]"}, {"[%8v]", 45 * units.Degree, "[     45°]"},
		{"[%9.1f]", volts, "[   12.8 V]"}, {"[%-9.1f]", volts, "[12.8 V   ]"},
		{"[%*v]", []any{9, volts}, "[   12.8 V]"}, {"[%.*f]", []any{2, volts}, "[12.80 V]"},

		// flags
		{"%+v", volts, "+12.8 V"}, {"% v", volts, " 12.8 V"}, {"%+.1f", -volts, "-12.8 V"},
		{"[%09v]", volts, "[00012.8 V]"}, {"[%09v]", -volts, "[-0012.8 V]"}, {"[%+09v]", volts, "[+0012.8 V]"},
		{"[% 09v]", volts, "[ 0012.8 V]"}, {"[%-09v]", volts, "[12.8 V   ]"},

		// what is no number is never padded with zeros
		{"[%09v]", units.Voltage(math.Inf(1)), "[   +Inf V]"}, {"[%09.1f]", units.Voltage(math.NaN()), "[    NaN V]"},
		{"%e", units.Voltage(math.Inf(-1)), "-Inf V"}, {"%g", units.Ratio(math.NaN()), "NaN %"},
		{"%F", units.Ratio(math.Inf(1)), "+Inf %"}, {"%+f", units.Voltage(math.NaN()), "NaN V"},

		// beyond what the unit can count in float64
		{"%.2e", units.Area(1.25e305), "1.25e+311 mm²"}, {"%g", units.Ratio(-1e308), "-1e+310 %"},
		{"%.3g", units.Energy(5e-324), "1.37e-327 Wh"},

		// Go syntax
		{"%#v", volts, "units.Voltage(12.8)"}, {"[%#25v]", volts, "[      units.Voltage(12.8)]"},
		{"%#v", units.Ratio(0.3), "units.Ratio(0.3)"}, {"%#v", units.Voltage(math.NaN()), "units.Voltage(math.NaN())"},
		{"%#v", units.Voltage(math.Inf(1)), "units.Voltage(math.Inf(1))"},
		{"%#v", units.Voltage(math.Inf(-1)), "units.Voltage(math.Inf(-1))"},
		{"[%#021v]", volts, "[  units.Voltage(12.8)]"},

		// verbs that are none for a quantity
		{"%d", volts, "%!d(units.Voltage=12.8 V)"}, {"%x", volts, "%!x(units.Voltage=12.8 V)"},
		{"%q", volts, "%!q(units.Voltage=12.8 V)"}, {"%E", volts, "%!E(units.Voltage=12.8 V)"},
		{"%t", 30 * units.Percent, "%!t(units.Ratio=30 %)"}, {"%ü", volts, "%!ü(units.Voltage=12.8 V)"},
	} {
		args, ok := c.v.([]any)
		if !ok {
			args = []any{c.v}
		}
		if got := fmt.Sprintf(c.format, args...); got != c.want {
			t.Errorf("Sprintf(%q, %#v) = %q, want %q", c.format, c.v, got, c.want)
		}
	}
}

// TestFormatAgreesWithTwin compares every verb with the decimal twins, for
// every type, over values of every size and over ties.
func TestFormatAgreesWithTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for name, s := range subjects() {
		rows := units.Rows(s.zero)
		for range 300 {
			x := randomFloat(r) * rows[0].Float
			checkFormat(t, name, s.of(x), x, rows, r.IntN(8))
		}
	}
}

func checkFormat(t *testing.T, name string, v units.Value, x float64, rows []units.Row, precision int) {
	t.Helper()
	settled := settledTwin(x / rows[0].Float)
	for _, c := range []struct{ got, want string }{
		{v.String(), stringTwin(x, rows)},
		{fmt.Sprintf("%.*f", precision, v), withUnit(settled.StringFixed(int32(precision)), rows[0].Symbol)},
		{fmt.Sprintf("%.*e", precision, v), withUnit(scientificTwin(settled, precision), rows[0].Symbol)},
		{fmt.Sprintf("%.*g", precision+1, v), withUnit(printedTwin(settled, precision+1), rows[0].Symbol)},
	} {
		if c.got != c.want {
			t.Errorf("%s(%v), precision %d: %q, the slow twin has %q", name, x, precision, c.got, c.want)
		}
	}
}

// randomFloat returns a number of ordinary or of any size, a short decimal
// and a tie at times.
func randomFloat(r *rand.Rand) float64 {
	x := float64(r.IntN(2_000_001)-1_000_000) / 1e3
	switch r.IntN(4) {
	case 0:
		x = math.Ldexp(r.Float64()-0.5, r.IntN(200)-100)
	case 1:
		x += 0.0005
	case 2:
		x *= 1 + 1e-12
	}
	return x
}

// TestGoSyntax quotes that %#v is Go syntax: it parses, names the type, and
// its constant is the value, bit for bit.
func TestGoSyntax(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for name, s := range subjects() {
		for _, x := range []float64{0, 1, -12.8, 1e21, 1e-7, math.MaxFloat64, 5e-324, r.NormFloat64()} {
			text := fmt.Sprintf("%#v", s.of(x))
			if got, err := goValue(text, name); got != x || err != nil {
				t.Errorf("%q is %v, %v in Go, want %v", text, got, err, x)
			}
		}
	}
	for _, c := range []float64{-40, 0, 98.6} {
		text := fmt.Sprintf("%#v", units.Celsius(c))
		if got, err := goValue(text, "Celsius"); got != c || err != nil {
			t.Errorf("%q is %v, %v in Go, want %v", text, got, err, c)
		}
	}
	if got := fmt.Sprintf("%#v", units.Temperature{}); got != "units.Temperature{}" {
		t.Errorf("a temperature not given is %q in Go", got)
	}
}

// goValue returns the argument of the Go expression units.name(argument).
func goValue(text, name string) (float64, error) {
	expr, err := parser.ParseExpr(text)
	if err != nil {
		return 0, err
	}
	call, ok := expr.(*ast.CallExpr)
	if !ok || len(call.Args) != 1 || types.ExprString(call.Fun) != "units."+name {
		return 0, fmt.Errorf("not a call of units.%s", name)
	}
	arg, err := types.Eval(token.NewFileSet(), nil, token.NoPos, types.ExprString(call.Args[0]))
	if err != nil {
		return 0, err
	}
	x, _ := constant.Float64Val(constant.ToFloat(arg.Value))
	return x, nil
}
