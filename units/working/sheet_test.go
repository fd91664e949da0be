package working_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// The sources of the sample are invented.
var (
	handbook = working.Source{Body: "Invented Press", Title: "Handbook of Wire", Edition: "3rd ed.", Place: "table 2", Provenance: working.Read}
	recalled = working.Source{Body: "Invented Institute", Title: "Standard 7", Provenance: working.Memory}
	habit    = working.Source{Provenance: working.CommonPractice}
)

// sample returns a sheet with a step of every kind and no mistake: 20 A over
// 2 × 4.572 m of a conductor of 5.261 mm² at 30 °C.
func sample() *working.Sheet {
	const (
		rho     = 1 / 58e6 * (1 + 0.00393*10)      // Ω·m
		loop    = rho * 2 * 15 * 0.3048 / 5.261e-6 // Ω
		lost    = 20 * loop                        // V
		atTwice = 2 * lost / 12.8                  // of the source
	)
	s := working.NewSheet("Voltage drop of the pump run")
	s.Given("I", 20*units.Ampere, "A", "load current")
	s.Given("L", 15*units.Foot, "m", "length of the run, one way and not there and back, measured along the cable")
	s.Given("V_s", 12.8*units.Volt, "V", "at the source")
	s.Given("T", units.Celsius(30), "°C", "of the metal")
	s.Constant("ρ_20", units.Resistivity(1/58e6), "Ω·mm²/m", "resistivity of copper at 20 °C", recalled)
	s.Constant("α_20", 0.393*units.PercentPerKelvin, "1/K", "its temperature coefficient", recalled)
	s.LookUp("A", 5.261*units.SquareMillimetre, "mm²", "area of the conductor",
		working.Lookup{Source: handbook, Key: "10 AWG", Row: "10", Between: "9 and 11"})
	s.Formula("ρ", units.Resistivity(rho), "Ω·mm²/m", "Resistivity of the warm metal", "ρ_20 * (1 + α_20 * (T - 20))")
	s.Formula("R_loop", units.Resistance(loop), "mΩ", "Resistance there and back", "ρ * 2*L / A * 1000")
	s.Formula("ΔV", units.Voltage(lost), "V", "Lost in the loop", "I * R_loop / 1000")
	s.Formula("δ", units.Ratio(lost/12.8), "%", "As a part of the source voltage", "ΔV / V_s / pct")
	s.Constant("δ_max", 3*units.Percent, "%", "limit for lighting", habit)
	s.Test("Drop against the limit", "δ <= δ_max", false)
	s.Test("Twice the current", "2*δ < 10", atTwice < 0.1)
	s.Choose("Conductor", "8 AWG", "the next larger size", working.Source{})
	return s
}

func TestSheetText(t *testing.T) {
	// Worked by hand from 1/58, 0.00393 and the inputs: ρ = 0.0172414 × 1.0393
	// = 0.017919; R = 0.017919 × 9.144 / 5.261 = 0.0311445 Ω; × 20 A = 0.62289
	// V; over 12.8 V 4.8663 %.
	const want = `Voltage drop of the pump run
============================

Given
  I   = 20 A      load current
  L   = 4.572 m   length of the run, one way and not there and back, measured
                  along the cable
  V_s = 12.8 V    at the source
  T   = 30 °C     of the metal

Constants
  ρ_20 = 0.0172414 Ω·mm²/m   resistivity of copper at 20 °C
      Invented Institute, Standard 7 (from memory)
  α_20 = 0.00393 1/K         its temperature coefficient
      Invented Institute, Standard 7 (from memory)

Looked up
  A = 5.261 mm²   area of the conductor
      Invented Press, Handbook of Wire, 3rd ed., table 2; for 10 AWG, row 10,
      between 9 and 11

Resistivity of the warm metal
  ρ = ρ_20 · (1 + α_20 · (T - 20))
    = 0.0172414 · (1 + 0.00393 · (30 - 20))
    = 0.01792 Ω·mm²/m
  with ρ_20 in Ω·mm²/m; α_20 in 1/K; T in °C

Resistance there and back
  R_loop = ρ · 2 · L / A · 1000
         = 0.017919 · 2 · 4.572 / 5.261 · 1000
         = 31.14 mΩ
  with ρ in Ω·mm²/m; L in m; A in mm²

Lost in the loop
  ΔV = I · R_loop / 1000
     = 20 · 31.1445 / 1000
     = 0.6229 V
  with I in A; R_loop in mΩ

As a part of the source voltage
  δ = ΔV / V_s / 1 %
    = 0.622889 / 12.8 / 1 %
    = 4.866 %
  with ΔV, V_s in V

Constant
  δ_max = 3 %   limit for lighting
      common practice

Test: Drop against the limit
  δ ≤ δ_max
  4.866 ≤ 3 does not hold
  with δ, δ_max in %

Test: Twice the current
  2 · δ < 10
  2 · 4.86632 < 10
  9.733 < 10 holds
  with δ in %

Choice: Conductor
  8 AWG
      the next larger size`
	s := sample()
	unitstest.CheckSheet(t, s)
	if got := s.Text(); got != want {
		t.Errorf("Text() =\n%s\nwant\n%s", got, want)
	}
}

func TestSheetSteps(t *testing.T) {
	s := sample()
	steps := s.Steps()
	loop := steps[8]
	if loop.Kind != working.FormulaStep || loop.Name != "R_loop" || loop.Unit != "mΩ" || loop.Printed != "31.14" ||
		loop.Resolution != 0.01 || math.Abs(loop.Value-31.14445) > 1e-4 || loop.Formula != "ρ * 2*L / A * 1000" {
		t.Errorf("step 9 = %+v", loop)
	}
	names := ""
	for _, o := range loop.Operands {
		names += o.Name + "=" + o.Printed + " " + o.Unit + ";"
	}
	if want := "ρ=0.017919 Ω·mm²/m;L=4.572 m;A=5.261 mm²;"; names != want {
		t.Errorf("operands of step 9 = %s, want %s", names, want)
	}
	test := steps[13]
	if test.Kind != working.TestStep || test.Left != "9.733" || test.Right != "10" || !test.Holds {
		t.Errorf("step 14 = %+v", test)
	}

	// The steps are a copy, operands included.
	steps[0].Name = "changed"
	loop.Operands[0].Printed = "99"
	if again := s.Steps(); again[0].Name != "I" || again[8].Operands[0].Printed != "0.017919" {
		t.Errorf("changing the steps changed the sheet: %+v", again[8])
	}
	if s.Title() != "Voltage drop of the pump run" {
		t.Errorf("Title() = %q", s.Title())
	}
}

// Mistakes are kept: which step, why, and the cause to test for.
func TestSheetMistakes(t *testing.T) {
	inA := func(s *working.Sheet) { s.Given("I", 2*units.Ampere, "A", "current") }
	tests := []struct {
		name   string
		record func(s *working.Sheet)
		step   int
		symbol string
		want   string // in the message, which the rendering shows too
		cause  error
	}{
		// values
		{"nil", func(s *working.Sheet) { s.Given("I", nil, "A", "") }, 1, "I", "<nil>", units.ErrRange},
		{"pointer", func(s *working.Sheet) { s.Given("I", new(units.Current), "A", "") }, 1, "I", "*units.Current", units.ErrRange},
		{"NaN", func(s *working.Sheet) { s.Given("I", units.Current(math.NaN()), "A", "") }, 1, "I", "want finite", units.ErrRange},
		{"infinite", func(s *working.Sheet) { s.Given("T", units.Celsius(math.Inf(1)), "K", "") }, 1, "T", "want finite", units.ErrRange},
		{"temperature not given", func(s *working.Sheet) { s.Given("T", units.Temperature{}, "°C", "") }, 1, "T", "not given", units.ErrRange},
		{"wrong unit", func(s *working.Sheet) { s.Given("I", 2*units.Ampere, "V", "") }, 1, "I", "a unit of current", units.ErrSyntax},
		{"no unit", func(s *working.Sheet) { s.Given("I", 2*units.Ampere, "", "") }, 1, "I", "a unit of current", units.ErrSyntax},

		// names
		{"empty name", func(s *working.Sheet) { s.Given("", 2*units.Ampere, "A", "current") }, 1, "current", "a name is missing", nil},
		{"digit first", func(s *working.Sheet) { s.Given("2I", 2*units.Ampere, "A", "") }, 1, "2I", "begins with a letter", nil},
		{"space in it", func(s *working.Sheet) { s.Given("I load", 2*units.Ampere, "A", "") }, 1, "I load", "' ' is not allowed", nil},
		{"function", func(s *working.Sheet) { s.Given("sqrt", 2*units.Ampere, "A", "") }, 1, "sqrt", "has a meaning", nil},
		{"constant", func(s *working.Sheet) { s.Given("pct", 2*units.Ampere, "A", "") }, 1, "pct", "has a meaning", nil},
		{"pi", func(s *working.Sheet) { s.Given("π", 2*units.Ampere, "A", "") }, 1, "π", "has a meaning", nil},
		{"pi in it", func(s *working.Sheet) { s.Given("Δπ", 2*units.Ampere, "A", "") }, 1, "Δπ", "has a meaning", nil},
		{"keyword", func(s *working.Sheet) { s.Given("range", 2*units.Ampere, "A", "") }, 1, "range", "a word of Go", nil},
		{"twice", func(s *working.Sheet) { inA(s); s.Given("I", 3*units.Ampere, "A", "") }, 2, "I", "declared in step 1 already", nil},
		{"twice, by a formula", func(s *working.Sheet) { inA(s); s.Formula("I", 4*units.Ampere, "A", "", "I + I") }, 2, "I", "declared in step 1", nil},

		// sources
		{"no source", func(s *working.Sheet) { s.Constant("I", 2*units.Ampere, "A", "", working.Source{}) }, 1, "I", "no source", nil},
		{"no provenance", func(s *working.Sheet) { s.Constant("I", 2*units.Ampere, "A", "", working.Source{Title: "T"}) }, 1, "I", "none with a provenance", nil},
		{"read nowhere", func(s *working.Sheet) {
			s.LookUp("I", 2*units.Ampere, "A", "", working.Lookup{Source: working.Source{Place: "page 1", Provenance: working.Read}})
		}, 1, "I", "no source", nil},
		{"undefined provenance", func(s *working.Sheet) {
			s.Constant("I", 2*units.Ampere, "A", "", working.Source{Title: "T", Provenance: 99})
		}, 1, "I", "no source", nil},

		// formulas
		{"power", func(s *working.Sheet) { inA(s); s.Formula("J", 4*units.Ampere, "A", "", "I^2") }, 2, "J", "write pow(x, y)", units.ErrSyntax},
		{"unknown symbol", func(s *working.Sheet) { inA(s); s.Formula("J", 4*units.Ampere, "A", "", "I + K + M") }, 2, "J",
			`at "K + M": unknown symbol K; declare it in an earlier step`, units.ErrSyntax},
		{"itself", func(s *working.Sheet) { s.Formula("J", 4*units.Ampere, "A", "", "2*J") }, 1, "J", "unknown symbol J", units.ErrSyntax},
		{"later", func(s *working.Sheet) { s.Formula("J", 4*units.Ampere, "A", "", "2*I"); inA(s) }, 1, "J", "unknown symbol I", units.ErrSyntax},
		{"comparison", func(s *working.Sheet) { inA(s); s.Formula("J", 4*units.Ampere, "A", "", "I < 3") }, 2, "J", "write it as a test", units.ErrSyntax},
		{"division by zero", func(s *working.Sheet) { inA(s); s.Formula("J", 4*units.Ampere, "A", "", "I / (I - 2)") }, 2, "J", "division by zero", units.ErrRange},
		{"wrong value", func(s *working.Sheet) { inA(s); s.Formula("J", 4.00001*units.Ampere, "A", "", "2*I") }, 2, "J",
			"the formula gives 4, the result is 4.00001", nil},
		{"wrong unit of a result", func(s *working.Sheet) { inA(s); s.Formula("J", 4*units.Ampere, "W", "", "2*I") }, 2, "J", "a unit of current", units.ErrSyntax},
		{"lost", func(s *working.Sheet) {
			const a, b = 12.8, 12.8 + 3e-13
			s.Given("a", units.Voltage(a), "V", "")
			s.Given("b", units.Voltage(b), "V", "")
			s.Formula("c", units.Voltage(b)-units.Voltage(a), "V", "", "b - a")
		}, 3, "c", "lost in the rounding", nil},
		{"operand without a value", func(s *working.Sheet) {
			s.Constant("I", 2*units.Ampere, "V", "", handbook)
			s.Formula("J", 4*units.Ampere, "A", "", "2*I")
		}, 1, "I", "a unit of current", units.ErrSyntax},

		// tests
		{"test of nothing", func(s *working.Sheet) { inA(s); s.Test("limit", "I + 1", true) }, 2, "limit", "nothing is compared", units.ErrSyntax},
		{"unreadable test", func(s *working.Sheet) { inA(s); s.Test("limit", "I ≤ 3", true) }, 2, "limit", "write <=", units.ErrSyntax},
		{"unknown symbol in a test", func(s *working.Sheet) { s.Test("limit", "I <= 3", true) }, 1, "limit", "unknown symbol I", units.ErrSyntax},
		{"the other way", func(s *working.Sheet) { inA(s); s.Test("limit", "2*I <= 3", true) }, 2, "limit",
			"the calculator says that it holds, the comparison of 4 and 3 does not hold", nil},
		{"the other way, too", func(s *working.Sheet) { inA(s); s.Test("limit", "I <= 3", false) }, 2, "limit",
			"the calculator says that it does not hold, the comparison of 2 and 3 holds", nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := working.NewSheet("Sheet")
			tt.record(s)
			err := s.Err()
			var se *working.StepError
			if !errors.As(err, &se) || se.Sheet != "Sheet" || se.Step != tt.step || se.Name != tt.symbol {
				t.Fatalf("Err() = %#v, want a *StepError of step %d (%s)", err, tt.step, tt.symbol)
			}
			if !strings.Contains(err.Error(), tt.want) || tt.cause != nil && !errors.Is(err, tt.cause) {
				t.Errorf("Err() = %v, want %q and cause %v", err, tt.want, tt.cause)
			}
			shown := strings.Join(strings.Fields(s.Text()), " ")
			if message := strings.Join(strings.Fields("MISTAKE: "+err.Error()), " "); !strings.Contains(shown, message) {
				t.Errorf("Text() does not show %q:\n%s", message, s.Text())
			}
			if !strings.Contains(s.HTML(), `<p class="mistake">MISTAKE: `) {
				t.Errorf("HTML() does not show the mistake:\n%s", s.HTML())
			}
			if !strings.Contains(s.Markdown(), "MISTAKE: ") {
				t.Errorf("Markdown() does not show the mistake:\n%s", s.Markdown())
			}
		})
	}
}

// The first mistake is the one returned, every mistake is in its step, and
// the steps behind a mistake go on.
func TestSheetFirstMistake(t *testing.T) {
	s := working.NewSheet("Sheet")
	s.Given("V", 12*units.Ampere, "V", "no voltage")
	s.Given("I", 2*units.Ampere, "A", "current")
	s.Formula("P", 24*units.Watt, "W", "power", "V * I")
	s.Formula("J", 4*units.Ampere, "A", "twice", "2 * I")
	if got := s.Err().Error(); !strings.HasPrefix(got, `working "Sheet", step 1 (V): parsing "V"`) {
		t.Errorf("Err() = %s", got)
	}
	steps := s.Steps()
	if steps[1].Err != nil || steps[3].Err != nil || steps[3].Printed != "4" {
		t.Errorf("a mistake spreads: %v, %v", steps[1].Err, steps[3].Err)
	}
	if got := steps[2].Err.Error(); !strings.Contains(got, "V has no value, for its step has a mistake") {
		t.Errorf("step 3: %s", got)
	}
	if steps[0].Printed != "?" || !math.IsNaN(steps[0].Value) {
		t.Errorf("step 1 = %+v, want no value", steps[0])
	}
	if got := s.MathML(0) + s.LaTeX(0); got != "" {
		t.Errorf("the mathematics of a step without value = %s", got)
	}
}

func TestSheetNilAndZero(t *testing.T) {
	for name, s := range map[string]*working.Sheet{"nil": nil, "zero": {}} {
		t.Run(name, func(t *testing.T) {
			if got := s.Text() + s.Markdown() + s.LaTeX(0) + s.MathML(0) + s.LaTeX(-1) + s.Title(); got != "" || len(s.Steps()) != 0 {
				t.Errorf("an empty sheet shows %q", got)
			}
			if got, want := s.HTML(), "<figure class=\"working\">\n<ol>\n</ol>\n</figure>\n"; got != want {
				t.Errorf("HTML() = %q, want %q", got, want)
			}
			s.Given("I", 2*units.Ampere, "A", "current")
			s.Constant("k", 2*units.One, "1", "factor", habit)
			s.LookUp("A", 2*units.SquareMillimetre, "mm²", "area", working.Lookup{Source: handbook})
			s.Formula("J", 4*units.Ampere, "A", "twice", "k * I")
			s.Choose("what", "this", "why", habit)
			s.Test("limit", "I <= 3", true)
			s.Test("limit", "A <= 3", true)
			if name == "zero" {
				unitsErr := s.Err()
				if unitsErr != nil || len(s.Steps()) != 7 {
					t.Errorf("the zero Sheet: %v, %d steps", unitsErr, len(s.Steps()))
				}
				return
			}
			var se *working.StepError
			if err := s.Err(); !errors.As(err, &se) || se.Step != 0 || len(s.Steps()) != 0 || s.Text() != "" {
				t.Errorf("the nil Sheet: Err() = %v, %d steps", err, len(s.Steps()))
			}
		})
	}
}

func TestStepErrorText(t *testing.T) {
	for _, tt := range []struct {
		err  working.StepError
		want string
	}{
		{working.StepError{Sheet: "S", Step: 2, Name: "R", Reason: "why"}, `working "S", step 2 (R): why`},
		{working.StepError{Sheet: "S", Step: 2, Name: "R", Err: units.ErrRange}, `working "S", step 2 (R): out of range`},
		{working.StepError{Sheet: "S", Step: 2, Name: "R", Reason: "why", Err: units.ErrRange}, `working "S", step 2 (R): why: out of range`},
	} {
		if got := tt.err.Error(); got != tt.want {
			t.Errorf("Error() = %s, want %s", got, tt.want)
		}
	}
}

// A step that somebody made or changed by hand shows what it can.
func TestStepByHand(t *testing.T) {
	tests := []struct {
		step  working.Step
		latex string
	}{
		{working.Step{}, ""},
		{working.Step{Kind: 9}, ""},
		{working.Step{Kind: working.ChoiceStep, Chosen: "this"}, ""},
		{working.Step{Name: "I", Printed: "2", Unit: "A"}, `I = 2\,\mathrm{A}`},
		{working.Step{Name: "I", Printed: "-2", Unit: "1"}, `I = -2`},
		{working.Step{Name: "φ", Printed: "30", Unit: "°"}, `\varphi = 30{}^{\circ}`},
		{working.Step{Name: "I", Printed: "two", Unit: "A"}, ""},
		{working.Step{Name: "I", Printed: "1.2.3", Unit: "A"}, ""},
		{working.Step{Name: "I^2", Printed: "2", Unit: "A"}, ""},
		{working.Step{Kind: working.FormulaStep, Name: "I", Printed: "2", Unit: "A"}, ""},
		{working.Step{Kind: working.FormulaStep, Name: "I", Formula: "a < b"}, ""},
		{working.Step{Kind: working.TestStep, Formula: "a + b"}, ""},
		{working.Step{Kind: working.TestStep, Formula: "a < b"}, `a < b`},
		{working.Step{Kind: working.FormulaStep, Name: "I", Formula: "a", Printed: "?", Unit: "A"}, `I = a`},
		{working.Step{Kind: working.FormulaStep, Name: "I", Formula: "a + b", Printed: "3", Unit: "A",
			Operands: []working.Operand{{Name: "a", Printed: "1"}, {Name: "b", Printed: "x"}}},
			"\\begin{aligned}\nI & = a + b \\\\\n& = 1 + b \\\\\n& = 3\\,\\mathrm{A}\n\\end{aligned}"},
	}
	for _, tt := range tests {
		if got := tt.step.LaTeX(); got != tt.latex {
			t.Errorf("%+v.LaTeX() = %s, want %s", tt.step, got, tt.latex)
		}
		math := tt.step.MathML()
		if (math == "") != (tt.latex == "") {
			t.Errorf("%+v.MathML() = %s beside the LaTeX %s", tt.step, math, tt.latex)
		}
		if math != "" {
			checkMathML(t, math)
		}
	}
}

// TestTitled: a copy has its own title and steps, and neither moves with the
// other.
func TestTitled(t *testing.T) {
	s := working.NewSheet("Drop")
	s.Given("I", 20*units.Ampere, "A", "current")
	copied := s.Titled("C1: Drop")
	copied.Given("L", 5*units.Metre, "m", "length")
	s.Given("L", 7*units.Metre, "m", "length")
	if s.Title() != "Drop" || copied.Title() != "C1: Drop" {
		t.Errorf("titles %q and %q", s.Title(), copied.Title())
	}
	a, b := s.Steps(), copied.Steps()
	if len(a) != 2 || len(b) != 2 || a[0].Value != b[0].Value || a[1].Value != 7 || b[1].Value != 5 {
		t.Errorf("steps %v and %v", a, b)
	}
	if s.Err() != nil || copied.Err() != nil {
		t.Errorf("%v, %v", s.Err(), copied.Err())
	}
	var none *working.Sheet
	if none.Titled("x") != nil {
		t.Error("no sheet has a copy")
	}
}
