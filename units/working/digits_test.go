package working_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// What is printed of a result, and put in for an operand.
func TestPrintedDigits(t *testing.T) {
	tests := []struct {
		name       string
		a, b       float64 // operands, plain numbers
		formula    string
		v          float64 // the result, exactly
		printed    string
		resolution float64
		operand    string // a as put in
	}{
		// four digits, zeros kept where the number goes on
		{"plain", 1, 3, "a / b", 1. / 3, "0.3333", 1e-4, "1"},
		{"zero at the end", 0.047602, 1, "a * b", 0.047602, "0.04760", 1e-5, "0.047602"},
		{"two zeros", 12.0002, 1, "a * b", 12.0002, "12.00", 0.01, "12.0002"},
		{"a whole number that is not quite", 120.002, 1, "a * b", 120.002, "120.0", 0.1, "120.002"},
		{"large", 123456, 1, "a * b", 123456, "123500", 100, "123456"},
		{"very large", 12345678, 100, "a * b", 1234567800, "1.235e+09", 1e6, "1.23457e+07"},
		{"very large, zero at the end", 12304e5, 1, "a * b", 12304e5, "1.230e+09", 1e6, "1.2304e+09"},
		{"small", 1.23456e-7, 1, "a * b", 1.23456e-7, "1.235e-07", 1e-10, "1.23456e-07"},
		{"negative", -0.047602, 1, "a * b", -0.047602, "-0.04760", 1e-5, "-0.047602"},
		{"rounds up a decade", 0.99996, 1, "a * b", 0.99996, "1.000", 1e-3, "0.99996"},

		// short where the number is short
		{"whole", 15, 2, "a * b", 30, "30", 0.01, "15"},
		{"half", 5, 2, "a / b", 2.5, "2.5", 1e-3, "5"},
		{"noise is not digits", 0.1, 3, "a * b", 0.1 * 3, "0.3", 1e-4, "0.1"},
		{"zero", 0, 3, "a * b", 0, "0", 0, "0"},

		// as many operand digits as cancellation needs
		{"six", 12.8123, 12.4, "a - b", 12.8123 - 12.4, "0.4123", 1e-4, "12.8123"},
		{"seven", 12.812342, 12.8, "a - b", 12.812342 - 12.8, "0.01234", 1e-5, "12.81234"},
		{"eight", 12.80123412, 12.8, "a - b", 12.80123412 - 12.8, "0.001234", 1e-6, "12.801234"},
		{"nine", 12.80012341, 12.8, "a - b", 12.80012341 - 12.8, "0.0001234", 1e-7, "12.8001234"},

		// and fewer result digits where nine do not suffice
		{"three", 12.800012345, 12.8, "a - b", 12.800012345 - 12.8, "1.23e-05", 1e-7, "12.8000123"},
		{"two", 12.800012341, 12.8, "1 / (a - b)", 1 / (12.800012341 - 12.8), "81000", 1000, "12.8000123"}, // 81030.7; six digits divide by zero
		{"one", 12.80000012, 12.8, "a - b", 12.80000012 - 12.8, "1e-07", 1e-7, "12.8000001"},
		{"none: less than the operands resolve", 12.80000006, 12.8, "a - b", 12.80000006 - 12.8, "0", 1e-6, "12.8000001"},
		{"none: a settled difference", 26.99999994, 27, "a - b", 26.99999994 - 27., "0", 1e-6, "26.9999999"},
	}
	for _, tt := range tests {
		s := working.NewSheet(tt.name)
		s.Given("a", units.Ratio(tt.a), "1", "")
		s.Given("b", units.Ratio(tt.b), "1", "")
		s.Formula("c", units.Ratio(tt.v), "1", "", tt.formula)
		if err := s.Err(); err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		unitstest.CheckSheet(t, s)
		st := s.Steps()[2]
		if st.Printed != tt.printed || math.Abs(st.Resolution-tt.resolution) > 1e-9*tt.resolution || st.Operands[0].Printed != tt.operand {
			t.Errorf("%s: printed %s (to %v) from %s, want %s (to %v) from %s", tt.name,
				st.Printed, st.Resolution, st.Operands[0].Printed, tt.printed, tt.resolution, tt.operand)
		}
	}
}

// Inputs, constants and look-ups are printed as they are, up to six digits.
func TestPrintedInputs(t *testing.T) {
	for _, tt := range []struct {
		v       units.Value
		unit    string
		printed string
		shown   string // the unit as shown
	}{
		{20 * units.Ampere, "A", "20", "A"},
		{15 * units.Foot, "m", "4.572", "m"},
		{units.Ratio(1. / 3), "1", "0.333333", "1"},
		{units.Ratio(1. / 3), "%", "33.3333", "%"},
		{units.Fahrenheit(77), "C", "25", "°C"},
		{units.Celsius(25), "K", "298.15", "K"},
		{5 * units.SquareMillimetre, "mm2", "5", "mm²"},
	} {
		s := working.NewSheet("input")
		s.Given("x", tt.v, tt.unit, "")
		if st := s.Steps()[0]; st.Err != nil || st.Printed != tt.printed || st.Unit != tt.shown {
			t.Errorf("%v in %s is printed %s %s (%v), want %s %s", tt.v, tt.unit, st.Printed, st.Unit, st.Err, tt.printed, tt.shown)
		}
	}
}

// A difference of equals may be zero in the calculator and noise in the
// formula, and the other way round.
func TestDifferenceOfEquals(t *testing.T) {
	a, b := 0.1*3, 0.3 // not equal as float64
	s := working.NewSheet("difference")
	s.Given("a", units.Ratio(a), "1", "")
	s.Given("b", units.Ratio(b), "1", "")
	s.Formula("c", units.Minus(units.Ratio(a), units.Ratio(b)), "1", "", "a - b")
	s.Formula("d", units.Minus(units.Ratio(a), units.Ratio(b)), "1", "", "3*(a/3) - b")
	unitstest.CheckSheet(t, s)
	if st := s.Steps()[2]; st.Printed != "0" || !(st.Resolution > 0) {
		t.Errorf("the difference is printed %s to %v", st.Printed, st.Resolution)
	}
}

// Zero stands for the difference of operands that settle to the same number,
// and for no other.
func TestDifferenceOfSettledEquals(t *testing.T) {
	for _, tt := range []struct {
		a     float64
		wrong bool
	}{{26.99999996, false}, {27.00000004, false}, {26.999997, true}} {
		s := working.NewSheet("difference")
		s.Given("a", units.Ratio(tt.a), "1", "")
		s.Given("b", 27*units.One, "1", "")
		s.Formula("c", 0*units.One, "1", "", "a - b")
		if err := s.Err(); (err != nil) != tt.wrong {
			t.Errorf("%v - 27 as 0: %v", tt.a, err)
		}
		if !tt.wrong {
			unitstest.CheckSheet(t, s)
		}
	}
}

// At a domain's edge the neighbours of an operand may have no value.
func TestNoiseAtTheEdge(t *testing.T) {
	s := working.NewSheet("edge")
	s.Given("x", 1*units.One, "1", "")
	s.Formula("y", 0*units.Radian, "rad", "", "acos(x)")
	s.Formula("z", units.Ratio(1e-13), "1", "", "acos(x) + 1e-13")
	unitstest.CheckSheet(t, s)
}

// Tests print as many digits as show what they decide.
func TestTestDigits(t *testing.T) {
	for _, tt := range []struct {
		I          float64
		comparison string
		holds      bool
		text       string // the last line of the comparison
	}{
		{12.34567, "I <= 15", true, "12.35 ≤ 15 holds"},
		{15.000000000000002, "I <= 15", true, "15 ≤ 15 holds"},
		{15.0004, "I <= 15", false, "15.0004 ≤ 15 does not hold"},
		{15.0000004, "I <= 15", false, "15.0000004 ≤ 15 does not hold"},
		{15.0004, "I - 15 <= 0", false, "0.0004 ≤ 0 does not hold"},
		{-15, "-I >= 15", true, "15 ≥ 15 holds"},
		{15, "I != 14", true, "15 ≠ 14 holds"},
		{1. / 3, "3 * I >= 1", true, "1 ≥ 1 holds"},
	} {
		s := working.NewSheet("test")
		s.Given("I", units.Current(tt.I), "A", "")
		s.Test("limit", tt.comparison, tt.holds)
		if err := s.Err(); err != nil {
			t.Errorf("%v %s: %v", tt.I, tt.comparison, err)
		}
		if got := s.Text(); !strings.Contains(got, "\n  "+tt.text+"\n") {
			t.Errorf("%v %s: want %q in\n%s", tt.I, tt.comparison, tt.text, got)
		}
	}
	s := working.NewSheet("test")
	s.Test("numbers alone", "2 < 3", true)
	if got, want := s.Text(), "test\n====\n\nTest: numbers alone\n  2 < 3 holds"; got != want {
		t.Errorf("Text() = %q, want %q", got, want)
	}
}

// Whatever the operands: the sheet has no mistake, and a reader who puts the
// printed operands in arrives at the printed result.
func TestGuardDigits(t *testing.T) {
	formulas := []string{"a * b / c", "a + b - c", "a - b", "a * (1 + b * (c - 20))", "pow(a, 1.2) * exp(-b / 1000)",
		"sqrt(a*a + b*b) - c", "ln(a / b) / pct", "max(a, b) - min(a, b)", "a / (b + c)", "pow(a - b, 2)"}
	r := rand.New(rand.NewPCG(3, 4))
	lost, full := 0, 0
	for range 5_000 {
		formula := formulas[r.IntN(len(formulas))]
		values := map[string]float64{}
		s := working.NewSheet(formula)
		for _, name := range []string{"a", "b", "c"} {
			x := math.Pow(10, 6*r.Float64()-3)
			if b := values["a"]; name == "b" && r.IntN(3) == 0 {
				x = b * (1 + math.Pow(10, -8*r.Float64())) // cancels
			}
			values[name] = x
			s.Given(name, units.Ratio(x), "1", "")
		}
		v, err := working.Evaluate(formula, values)
		if err != nil {
			continue
		}
		s.Formula("v", units.Ratio(v), "1", "", formula)
		var se *working.StepError
		if err := s.Err(); errors.As(err, &se) && strings.Contains(se.Reason, "lost") {
			lost++
			continue
		} else if err != nil {
			t.Fatalf("%s with %v: %v", formula, values, err)
		}
		unitstest.CheckSheet(t, s)
		st := s.Steps()[3]
		if first, err := strconv.ParseFloat(st.Printed, 64); err == nil && st.Resolution < 1.1e-3*math.Abs(first) {
			full++
		}
	}
	if lost > 50 || full < 4_000 {
		t.Errorf("%d results lost, %d printed to four digits, of 5000", lost, full)
	}
}
