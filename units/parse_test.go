package units_test

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		want       float64
	}{
		// as people write it
		{"Voltage", "12.8 V", 12.8},
		{"Charge", "300Ah", 1080000},
		{"Length", "6 ft 3 in", 1.905},
		{"Length", `6'3"`, 1.905},
		{"Area", "2.5 mm2", 2.5e-6},
		{"Power", "13.5 kBtu/h", 3956.459447325},
		{"Ratio", "30%", 0.3},
		{"TemperatureChange", "9 °F", 5},
		{"PerKelvin", "0.393 %/°C", 0.00393},
		{"ResistancePerLength", "1.98 ohm/1000 ft", 1.98 / 304.8},
		{"ResistancePerLength", "1.24 ohm/1000ft", 1.24 / 304.8},
		{"Irradiation", "5.2 kWh/m²", 18720000},
		{"Volume", "40 gal", 0.15141647136},
		{"Volume", "40 gal (US)", 0.15141647136},
		{"Energy", "1 kBtu", 1055055.85262},

		// spaces
		{"Voltage", "  12.8 V\t\n", 12.8},
		{"Voltage", "12.8\u00a0V", 12.8},
		{"Voltage", "12.8\u202fV", 12.8},
		{"Voltage", "- 12.8 V", -12.8},
		{"Length", "6ft3in", 1.905},
		{"Length", "6  ft  3  in", 1.905},
		{"Energy", "5 kW · h", 1.8e7},
		{"Power", "5 Btu (IT) / h", 5 * 1055.05585262 / 3600},

		// signs, the minus sign among them
		{"Current", "+5 A", 5},
		{"Current", "-5 A", -5},
		{"Current", "\u22125 A", -5},
		{"Length", "-6 ft 3 in", -1.905},
		{"Current", "-0 A", 0},

		// decimals
		{"Current", ".5 A", 0.5},
		{"Current", "5. A", 5},
		{"Current", "007.50 A", 7.5},
		{"Current", "0 A", 0},

		// exponents; an e that begins a word is none
		{"Current", "1e3 A", 1000},
		{"Current", "1E3A", 1000},
		{"Current", "1.5e+3 mA", 1.5},
		{"Current", "15e-1 A", 1.5},
		{"Current", "1e0000000000000003 A", 1000},

		// characters that differ between keyboards
		{"Resistance", "4.7 \u2126", 4.7}, // ohm sign
		{"Resistance", "4.7 \u03a9", 4.7}, // Greek capital omega
		{"Resistance", "4 \u00b5Ω", 4e-6}, // micro sign
		{"Resistance", "4 \u03bcΩ", 4e-6}, // Greek mu
		{"Resistance", "4 uohm", 4e-6},    // neither
		{"Resistivity", "1 Ω*mm^2/m", 1e-6},
		{"Resistivity", "1 Ωmm²/m", 1e-6},
		{"Angle", "30º", 0.523598775598298873},
		{"Length", "6’3”", 1.905},
		{"Length", "6′3″", 1.905},
		{"JouleIntegral", "5 A²·s", 5},
		{"PerKelvin", "0.004 K^-1", 0.004},
		{"PerKelvin", "0.004 K⁻¹", 0.004},
		{"PerKelvin", "0.004 1/K", 0.004},

		// compounds
		{"Length", "6 ft 3.25 in", 1.91135},
		{"Length", "0 ft 3 in", 0.0762},
		{"Mass", "5 lb 3 oz", 2.353010419375},
		{"Angle", `45° 30' 15"`, 45.50416666666667 * math.Pi / 180},
		{"Angle", "45° 15″", 45.004166666666667 * math.Pi / 180},
		{"Elapsed", "1 d 2 h 3 min 4.5 s", 93784.5},
		{"Elapsed", "1h30min", 5400},
		{"Elapsed", "1 d 30 min", 88200},

		// a ratio without a unit, up to 2
		{"Ratio", "0.3", 0.3},
		{"Ratio", "-0.3", -0.3},
		{"Ratio", "2", 2},
		{"Ratio", "2.000", 2},
		{"Ratio", "1e-3", 0.001},
		{"Ratio", "250 %", 2.5},
		{"Ratio", "5 ‰", 0.005},

		// the ends of float64
		{"Voltage", "1.7976931348623157e308 V", math.MaxFloat64},
		{"Voltage", "5e-324 V", math.SmallestNonzeroFloat64},
		{"Voltage", "0e400 V", 0},
		{"Voltage", "0." + strings.Repeat("0", 300) + "1e301 V", 1},
		{"Area", "1.5e314 mm²", 1.5e308},
	} {
		x, err := subjects()[c.kind].parse(c.text)
		if x != c.want || math.Signbit(x) != math.Signbit(c.want) || err != nil {
			t.Errorf("Parse[%s](%q) = %v, %v, want %v", c.kind, c.text, x, err, c.want)
		}
	}
}

// TestParseErrors holds the messages, each whole: they teach what to write.
func TestParseErrors(t *testing.T) {
	const (
		volts  = "; want one of V, mV, kV"
		watts  = "; want one of W, mW, kW, Btu(IT)/h, kBtu(IT)/h, hp(mech), hp(elec), hp(metric)"
		ratios = "; want one of %, ‰"
		times  = "; want one of s, ms, min, h, d"
		metres = "; want one of m, mm, cm, km, ft, in, mil, mi"
		areas  = "; want one of mm², cm², m², cmil, kcmil, in², ft²"
		comma  = "a comma may mean thousands or decimals; write 1200 or 1.2"
	)
	for _, c := range []struct{ kind, text, words, reason string }{
		// nothing, or no number
		{"Voltage", "", "voltage", "empty; want a number and a unit: V, mV, kV"},
		{"Voltage", " \t", "voltage", "empty; want a number and a unit: V, mV, kV"},
		{"Voltage", "-", "voltage", "no number"},
		{"Voltage", "V", "voltage", `no number before "V"`},
		{"Voltage", ". V", "voltage", `no number before "."`},
		{"Voltage", "twelve volts", "voltage", `no number before "twelve"`},
		{"Voltage", "µµµµµµµµµµµµµµµµµµµµ", "voltage", `no number before "µµµµµµµµµµ"`},
		{"Voltage", "1234567890µ", "voltage", `unknown unit "µ"` + volts},
		{"Voltage", "vvvvvvvvvvvvvvvvvvvµ", "voltage", `no number before "vvvvvvvvvvvvvvvvvvv"`},

		// no unit
		{"Voltage", "12.8", "voltage", "no unit" + volts},
		{"Voltage", "12.8 12.8 V", "voltage", "no unit" + volts},
		{"Voltage", "1.2.3 V", "voltage", `unknown unit "."` + volts},
		{"Length", "6 ft 3", "length", "no unit" + metres},
		{"Ratio", "0.3 0.4", "ratio", "no unit" + ratios},

		// the unit of something else, or of nothing
		{"Voltage", "12.8 A", "voltage", `unknown unit "A"` + volts},
		{"Voltage", "12.8 furlongs", "voltage", `unknown unit "furlongs"` + volts},
		{"Area", "5 mm", "area", `unknown unit "mm"` + areas},
		{"Length", "5 m m", "length", `unknown unit "m m"` + metres},
		{"Elapsed", "5 m s", "elapsed time", `unknown unit "m s"` + times},
		{"Elapsed", "5 m", "elapsed time", `unknown unit "m"` + times},
		{"Voltage", "12.8 " + strings.Repeat("V", 30), "voltage", `unknown unit "` + strings.Repeat("V", 30) + `"` + volts},
		{"Voltage", "12.8 " + strings.Repeat("m", 60), "voltage", `unknown unit "` + strings.Repeat("m", 60) + `"` + volts},
		{"Voltage", "5^V", "voltage", `unknown unit "^V"` + volts},

		// a prefix that differs by its case
		{"Power", "5 MW", "power", `unknown unit "MW"` + watts},
		{"Energy", "5 mJ", "energy", `unknown unit "mJ"; want one of Wh, kWh, J, kJ, MJ, Btu(IT), Btu(th), kBtu(IT)`},

		// a ratio out of its range, or with what is no unit to read
		{"Ratio", "30", "ratio", "a number without a unit must not be above 2; write it with % if that is meant"},
		{"Ratio", "-30", "ratio", "a number without a unit must not be above 2; write it with % if that is meant"},
		{"Ratio", "2.0000000000000000000001", "ratio", "a number without a unit must not be above 2; write it with % if that is meant"},
		{"Ratio", "0.3 1", "ratio", `unknown unit "1"` + ratios},
		{"Ratio", "30 1", "ratio", `unknown unit "1"` + ratios},

		// not numbers
		{"Voltage", "NaN V", "voltage", `no number before "NaN"`},
		{"Voltage", "Inf V", "voltage", `no number before "Inf"`},
		{"Voltage", "+Inf V", "voltage", `no number before "Inf"`},
		{"Voltage", "0x10 V", "voltage", `unknown unit "x"` + volts},
		{"Voltage", "1_000 V", "voltage", `unknown unit "_"` + volts},
		{"Voltage", "1e V", "voltage", `unknown unit "e V"` + volts},
		{"Voltage", "1/2 V", "voltage", `unknown unit "/"` + volts},
		{"Voltage", "½ V", "voltage", `no number before "½"`},
		{"Voltage", "１２ V", "voltage", `no number before "１２"`},

		// commas
		{"Voltage", "1,200 V", "voltage", comma},
		{"Voltage", "1,2 V", "voltage", comma},
		{"Voltage", "1.200,5 V", "voltage", comma},
		{"Voltage", "12 V, 3 V", "voltage", `unknown unit "V,"` + volts},

		// signs
		{"Voltage", "--5 V", "voltage", `no number before "-5"`},
		{"Voltage", "+-5 V", "voltage", `no number before "-5"`},
		{"Voltage", "- - 5 V", "voltage", `no number before "-"`},
		{"Length", "6 ft -3 in", "length", `unknown unit "ft -"` + metres},

		// compounds
		{"Length", "3 in 6 ft", "length", `nothing may follow in, found "6 ft"`},
		{"Length", "6 ft 3 m", "length", "m cannot follow ft"},
		{"Length", "6 ft 3 ft", "length", "ft cannot follow ft"},
		{"Length", "6 ft 12 in", "length", "12 in is not less than 1 ft"},
		{"Length", "6.5 ft 3 in", "length", "only the last part of a compound may have a fraction"},
		{"Length", "1e1 ft 3 in", "length", "only the last part of a compound may have a fraction"},
		{"Length", "6 ft 3 in 1 in", "length", `nothing may follow in, found "1 in"`},
		{"Length", "2 m 30 cm", "length", `nothing may follow m, found "30 cm"`},
		{"Mass", "5 lb 16 oz", "mass", "16 oz is not less than 1 lb"},
		{"Angle", "45° 60′", "angle", "60 ′ is not less than 1 °"},
		{"Elapsed", "1 h 60 min", "elapsed time", "60 min is not less than 1 h"},
		{"Elapsed", "1 h 1 d", "elapsed time", "d cannot follow h"},
		{"Voltage", "12.8 V 5 A", "voltage", `nothing may follow V, found "5 A"`},

		// more than exact arithmetic is asked to do
		{"Voltage", "1e401 V", "voltage", "exponent beyond 400"},
		{"Voltage", "1e-401 V", "voltage", "exponent beyond 400"},
		{"Voltage", "1e99999999999999999999 V", "voltage", "exponent beyond 400"},
		{"Voltage", strings.Repeat("1", 801) + " V", "voltage", "too many digits"},
	} {
		x, err := subjects()[c.kind].parse(c.text)
		want := &units.ParseError{Input: c.text, Want: c.words, Reason: c.reason}
		var got *units.ParseError
		if !errors.As(err, &got) || *got != *want || x != 0 {
			t.Errorf("Parse[%s](%q) = %v, %v\nwant %v", c.kind, c.text, x, err, want)
		}
		if !errors.Is(err, units.ErrSyntax) || errors.Is(err, units.ErrRange) {
			t.Errorf("Parse[%s](%q): %v must be ErrSyntax and not ErrRange", c.kind, c.text, err)
		}
	}
}

func TestParseErrorMessage(t *testing.T) {
	_, err := units.Parse[units.Current]("20 V")
	want := `parsing "20 V" as current: unknown unit "V"; want one of A, mA, kA`
	if err == nil || err.Error() != want {
		t.Errorf("Parse[Current] says %v, want %s", err, want)
	}
}

// TestParseRange quotes "or *RangeError if the value is too large, or too
// small and not zero, for a float64".
func TestParseRange(t *testing.T) {
	for _, c := range []struct{ kind, text, words string }{
		{"Voltage", "1e309 V", "voltage"},
		{"Voltage", "-1e309 V", "voltage"},
		{"Voltage", "1e306 kV", "voltage"},
		{"Voltage", "1.7976931348623159e308 V", "voltage"},
		{"Voltage", "2e-324 V", "voltage"},
		{"Voltage", "1e-322 mV", "voltage"},
		{"Ratio", "1e-350", "ratio"},
		{"Elapsed", "1e308 d", "elapsed time"},
	} {
		x, err := subjects()[c.kind].parse(c.text)
		var got *units.RangeError
		if !errors.As(err, &got) || !errors.Is(err, units.ErrRange) || x != 0 {
			t.Errorf("Parse[%s](%q) = %v, %v, want a RangeError", c.kind, c.text, x, err)
			continue
		}
		want := "units.Parse: " + c.words + " = " + c.text + ", want 0 or a size from 5e-324 to 1.8e308 in SI units"
		if got.Error() != want {
			t.Errorf("Parse[%s](%q) says %q, want %q", c.kind, c.text, got, want)
		}
	}
}

// TestParseRoundsOnce compares with exact arithmetic over random decimals:
// the value is the float64 nearest to digits times factor.
func TestParseRoundsOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for kind, s := range subjects() {
		for _, row := range units.Rows(s.zero) {
			if row.Symbol == "1" {
				continue
			}
			for range 200 {
				number := randomDecimal(r)
				want, _ := new(big.Rat).Mul(rat(t, number), factor(t, row)).Float64()
				got, err := s.parse(number + " " + row.Symbol)
				if got != want || err != nil {
					t.Errorf("Parse[%s](%q) = %v, %v, want %v", kind, number+" "+row.Symbol, got, err, want)
				}
			}
		}
	}
}

// randomDecimal returns 1 to 25 digits with a point and an exponent at times.
func randomDecimal(r *rand.Rand) string {
	var b strings.Builder
	if r.IntN(4) == 0 {
		b.WriteByte('-')
	}
	b.WriteByte(byte('1' + r.IntN(9)))
	point := r.IntN(25)
	for i := range r.IntN(25) {
		if i == point {
			b.WriteByte('.')
		}
		b.WriteByte(byte('0' + r.IntN(10)))
	}
	if r.IntN(2) == 0 {
		fmt.Fprintf(&b, "e%d", r.IntN(61)-30)
	}
	return b.String()
}

func TestMustParse(t *testing.T) {
	if got := units.MustParse[units.Current]("20 A"); got != 20*units.Ampere {
		t.Errorf("MustParse = %v, want 20 A", got)
	}
	defer func() {
		err, _ := recover().(error)
		if !errors.Is(err, units.ErrSyntax) {
			t.Errorf("MustParse of no current panics with %v, want a ParseError", err)
		}
	}()
	units.MustParse[units.Current]("20 V")
}
