package working_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var someValues = map[string]float64{"a": 7, "b": 3, "c": 2, "x": 0.5, "zero": 0, "big": 1e200,
	"T": 25, "nan": math.NaN(), "inf": math.Inf(1)}

func TestEvaluate(t *testing.T) {
	// The expected values are arithmetic that can be done in the head, or
	// the textbook value of the function.
	tests := []struct {
		in   string
		want float64
	}{
		// order of operations
		{"a-b-c", 2},
		{"a-(b-c)", 6},
		{"a-b*c", 1},
		{"(a-b)*c", 8},
		{"a/b*b", 7},
		{"12/b/c", 2},
		{"12/(b/c)", 8},
		{"-a*b", -21},
		{"-(a+b)", -10},
		{"a - -b", 10},
		{"2*-c", -4},

		// functions
		{"pow(c, 10)", 1024},
		{"pow(-c, 3)", -8},
		{"pow(4, x)", 2},
		{"-pow(c, 2)", -4},
		{"pow(c, pow(c, 3))", 256},
		{"sqrt(9)", 3},
		{"exp(0)", 1},
		{"ln(exp(c))", 2},
		{"log10(1000)", 3},
		{"sin(30*deg)", 0.5},
		{"cos(60 * deg)", 0.5},
		{"tan(45*deg)", 1},
		{"asin(1)/deg", 90},
		{"acos(0)/deg", 90},
		{"atan(1)*4/pi", 1},
		{"min(a, b, c)", 2},
		{"max(a, b, c)", 7},
		{"abs(b-a)", 4},
		{"floor(a/c)", 3},
		{"ceil(a/c)", 4},
		{"floor(-a/c)", -4},
		{"ceil(-a/c)", -3},

		// rounding looks at the settled number: float64 has 0.1*3/0.1 just
		// above 3, and (0.1+0.7)*10 just below 8
		{"ceil(0.1*3/0.1)", 3},
		{"floor((0.1+0.7)*10)", 8},

		// constants
		{"5*pct", 0.05},
		{"x/pct", 50},
		{"180*deg/pi", 1},
		{"T - 20", 5},
		{"1e-3*1e3", 1},
	}
	for _, tt := range tests {
		got, err := working.Evaluate(tt.in, someValues)
		if err != nil || math.Abs(got-tt.want) > 1e-14*math.Abs(tt.want) {
			t.Errorf("Evaluate(%q) = %v, %v, want %v", tt.in, got, err, tt.want)
		}
	}
}

func TestEvaluateErrors(t *testing.T) {
	tests := []struct {
		in, at, reason string
		cause          error
	}{
		{"1 + a/zero", "/zero", "division by zero", units.ErrRange},
		{"a/(b-3)", "/(b-3)", "division by zero", units.ErrRange},
		{"1/zero + 1", "/zero + 1", "division by zero", units.ErrRange},
		{"big*big", "*big", "too large", units.ErrRange},
		{"big*1e150/1e300", "*1e150/1e300", "too large", units.ErrRange},
		{"1 + sqrt(-a)", "sqrt(-a)", "sqrt(-7)", units.ErrRange},
		{"ln(zero)", "ln(zero)", "ln(0)", units.ErrRange},
		{"log10(-a)", "log10(-a)", "log10(-7)", units.ErrRange},
		{"asin(a)", "asin(a)", "asin(7)", units.ErrRange},
		{"acos(c)", "acos(c)", "acos(2)", units.ErrRange},
		{"exp(big)", "exp(big)", "exp(1e+200)", units.ErrRange},
		{"pow(-a, x)", "pow(-a, x)", "pow(-7, 0.5)", units.ErrRange},
		{"pow(zero, -1)", "pow(zero, -1)", "pow(0, -1)", units.ErrRange},
		{"pow(unknown, 2)", "unknown, 2)", "unknown has no value", units.ErrRange},
		{"pow(2, unknown)", "unknown)", "unknown has no value", units.ErrRange},
		{"-unknown", "unknown", "unknown has no value", units.ErrRange},
		{"nan*0", "nan*0", "nan is not a finite number", units.ErrRange},
		{"0*inf", "inf", "inf is not a finite number", units.ErrRange},
		{"a < b", "a < b", "a comparison has no value", units.ErrSyntax},
		{"a ^ b", "^ b", "pow(x, y)", units.ErrSyntax},
	}
	for _, tt := range tests {
		got, err := working.Evaluate(tt.in, someValues)
		var fe *working.FormulaError
		if !errors.As(err, &fe) || got != 0 || !errors.Is(err, tt.cause) ||
			!strings.Contains(fe.Reason, tt.reason) || tt.in[fe.Offset:] != tt.at {
			t.Errorf("Evaluate(%q) = %v, %+v, want %q at %q", tt.in, got, fe, tt.reason, tt.at)
		}
	}
	if _, err := (working.Formula{}).Evaluate(nil); !errors.Is(err, units.ErrSyntax) {
		t.Errorf("the zero Formula: Evaluate = %v, want units.ErrSyntax", err)
	}
	if _, err := (working.Formula{}).Holds(nil); !errors.Is(err, units.ErrSyntax) {
		t.Errorf("the zero Formula: Holds = %v, want units.ErrSyntax", err)
	}
}

func TestHolds(t *testing.T) {
	const above = 15.000000000000002 // the next float64 above 15
	values := map[string]float64{"I": above, "limit": 15, "more": 15.0004}
	tests := []struct {
		in   string
		want bool
	}{
		// settled: noise does not decide
		{"I <= limit", true},
		{"I > limit", false},
		{"I == limit", true},
		{"I != limit", false},
		{"I >= limit", true},
		{"I < limit", false},

		// a difference that a book could print does
		{"more <= limit", false},
		{"more > limit", true},
		{"more == limit", false},
		{"more != limit", true},
		{"more >= limit", true},
		{"limit < more", true},

		{"2*I <= 30 + 1", true},
		{"-1 < 1", true},
	}
	for _, tt := range tests {
		got, err := working.Holds(tt.in, values)
		if err != nil || got != tt.want {
			t.Errorf("Holds(%q) = %v, %v, want %v", tt.in, got, err, tt.want)
		}
	}
	for in, cause := range map[string]error{"I + 1": units.ErrSyntax, "I <": units.ErrSyntax,
		"1/0 < I": units.ErrRange, "I < J": units.ErrRange} {
		if got, err := working.Holds(in, values); got || !errors.Is(err, cause) {
			t.Errorf("Holds(%q) = %v, %v, want %v", in, got, err, cause)
		}
	}
}

func TestEvaluateNoAllocs(t *testing.T) {
	f, err := working.ParseFormula("a * (1 + b * (T - 20)) * min(c, x) / pow(c, 2)")
	if err != nil {
		t.Fatal(err)
	}
	test, err := working.ParseFormula("a + b <= c")
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func(){
		"Evaluate": func() { _, _ = f.Evaluate(someValues) },
		"Holds":    func() { _, _ = test.Holds(someValues) },
	} {
		if n := testing.AllocsPerRun(100, call); n != 0 {
			t.Errorf("Formula.%s allocates %v times, want 0", name, n)
		}
	}
}
