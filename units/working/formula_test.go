package working_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// formulaTests have one tree in each of its notations. The expected ones were
// written by hand from the rules of arithmetic, not copied from a run.
var formulaTests = []struct{ in, golang, text, latex string }{
	// atoms
	{"V", "V", "V", `V`},
	{"0.5", "0.5", "0.5", `0.5`},
	{".5", "0.5", "0.5", `0.5`},
	{"1e-3", "1e-3", "1e-3", `1 \times 10^{-3}`},
	{"2.5e+6", "2.5e+6", "2.5e+6", `2.5 \times 10^{6}`},
	{"1e00", "1e00", "1e00", `1 \times 10^{0}`},
	{"pi", "pi", "π", `\pi`},
	{"pct", "pct", "1 %", `1\,\%`},
	{"deg", "deg", "1°", `1^{\circ}`},
	{" ( ( V ) ) ", "V", "V", `V`},

	// names
	{"ρ_20", "ρ_20", "ρ_20", `\rho_{20}`},
	{"ΔV", "ΔV", "ΔV", `\Delta V`},
	{"δρ_Cu", "δρ_Cu", "δρ_Cu", `\delta \rho_{\mathrm{Cu}}`},
	{"Δ", "Δ", "Δ", `\Delta`},
	{"SoC", "SoC", "SoC", `\mathrm{SoC}`},
	{"ρCu", "ρCu", "ρCu", `\mathrm{\rho Cu}`},
	{"V_load_min", "V_load_min", "V_load_min", `V_{\mathrm{load,min}}`},
	{"η_μ", "η_μ", "η_μ", `\eta_{\mathrm{\mu}}`},
	{"Φ", "Φ", "Φ", `\Phi`},
	{"é", "é", "é", `é`},

	// products, quotients, sums
	{"a*b*c", "a * b * c", "a · b · c", `a \cdot b \cdot c`},
	{"a*(b*c)", "a * (b * c)", "a · (b · c)", `a \cdot \left(b \cdot c\right)`},
	{"a-b-c", "a - b - c", "a - b - c", `a - b - c`},
	{"a-(b-c)", "a - (b - c)", "a - (b - c)", `a - \left(b - c\right)`},
	{"a+(b-c)", "a + (b - c)", "a + (b - c)", `a + \left(b - c\right)`},
	{"(a-b)+c", "a - b + c", "a - b + c", `a - b + c`},
	{"a/(b/c)", "a / (b / c)", "a / (b / c)", `\frac{a}{\frac{b}{c}}`},
	{"a/b/c", "a / b / c", "a / b / c", `\frac{\frac{a}{b}}{c}`},
	{"a/b*c", "a / b * c", "a / b · c", `\frac{a}{b} \cdot c`},
	{"a*(b/c)", "a * (b / c)", "a · (b / c)", `a \cdot \frac{b}{c}`},
	{"a/(b*c)", "a / (b * c)", "a / (b · c)", `\frac{a}{b \cdot c}`},
	{"a*(b+c)/(d-e)", "a * (b + c) / (d - e)", "a · (b + c) / (d - e)", `\frac{a \cdot \left(b + c\right)}{d - e}`},
	{"a+b*c", "a + b * c", "a + b · c", `a + b \cdot c`},

	// minus
	{"-(a+b)", "-(a + b)", "-(a + b)", `-\left(a + b\right)`},
	{"-a*b", "-a * b", "-a · b", `-a \cdot b`},
	{"-(a*b)", "-(a * b)", "-a · b", `-a \cdot b`},
	{"-(-a*b)", "-(-a * b)", "-(-a · b)", `-\left(-a \cdot b\right)`},
	{"-(-a)", "-(-a)", "-(-a)", `-\left(-a\right)`},
	{"a - -b", "a - -b", "a - (-b)", `a - \left(-b\right)`},
	{"a+(-b)*c", "a + -b * c", "a + (-b · c)", `a + \left(-b \cdot c\right)`},
	{"2*-3", "2 * (-3)", "2 · (-3)", `2 \cdot \left(-3\right)`},
	{"a/-b", "a / (-b)", "a / (-b)", `\frac{a}{-b}`},
	{"a + -b/c", "a + -b / c", "a + (-b / c)", `a + \frac{-b}{c}`},
	{"-(a/b)", "-(a / b)", "-a / b", `-\frac{a}{b}`},
	{"-b-c", "-b - c", "-b - c", `-b - c`},
	{"a-(-b+c)", "a - (-b + c)", "a - (-b + c)", `a - \left(-b + c\right)`},
	{"a < -b", "a < -b", "a < -b", `a < -b`},

	// powers
	{"pow(-a,2)", "pow(-a, 2)", "(-a)²", `{\left(-a\right)}^{2}`},
	{"-pow(a,2)", "-pow(a, 2)", "-a²", `-{a}^{2}`},
	{"pow(a,pow(b,c))", "pow(a, pow(b, c))", "a^(b^c)", `{a}^{{b}^{c}}`},
	{"pow(pow(a,b),c)", "pow(pow(a, b), c)", "(a^b)^c", `{\left({a}^{b}\right)}^{c}`},
	{"pow(x,-12)", "pow(x, -12)", "x⁻¹²", `{x}^{-12}`},
	{"pow(x,0.5)", "pow(x, 0.5)", "x^0.5", `{x}^{0.5}`},
	{"pow(x,-0.5)", "pow(x, -0.5)", "x^(-0.5)", `{x}^{-0.5}`},
	{"pow(a/b,k-1)", "pow(a / b, k - 1)", "(a / b)^(k - 1)", `{\left(\frac{a}{b}\right)}^{k - 1}`},
	{"pow(1e-5,x)", "pow(1e-5, x)", "(1e-5)^x", `{\left(1 \times 10^{-5}\right)}^{x}`},
	{"pow(pi,2)", "pow(pi, 2)", "π²", `{\pi}^{2}`},
	{"pow(sin(x),2)", "pow(sin(x), 2)", "(sin(x))²", `{\left(\sin\left(x\right)\right)}^{2}`},
	{"pow(abs(x),2)", "pow(abs(x), 2)", "abs(x)²", `{\left|x\right|}^{2}`},
	{"pow(5*pct,2)", "pow(5 * pct, 2)", "(5 %)²", `{\left(5\,\%\right)}^{2}`},
	{"a*pow(b,2)", "a * pow(b, 2)", "a · b²", `a \cdot {b}^{2}`},

	// per cent and degrees
	{"a*(5*pct)", "a * (5 * pct)", "a · 5 %", `a \cdot 5\,\%`},
	{"a*5*pct", "a * 5 * pct", "a · 5 · 1 %", `a \cdot 5 \cdot 1\,\%`},
	{"x/pct", "x / pct", "x / 1 %", `\frac{x}{1\,\%}`},
	{"sin(30*deg)", "sin(30 * deg)", "sin(30°)", `\sin\left(30^{\circ}\right)`},
	{"-30*deg", "-30 * deg", "-30 · 1°", `-30 \cdot 1^{\circ}`},
	{"2*pi", "2 * pi", "2 · π", `2 \cdot \pi`},

	// functions
	{"sqrt(a*a+b*b)", "sqrt(a * a + b * b)", "√(a · a + b · b)", `\sqrt{a \cdot a + b \cdot b}`},
	{"exp(-t/τ)", "exp(-t / τ)", "exp(-t / τ)", `\exp\left(\frac{-t}{\tau}\right)`},
	{"ln(x)+log10(x)", "ln(x) + log10(x)", "ln(x) + log10(x)", `\ln\left(x\right) + \log_{10}\left(x\right)`},
	{"cos(x)*tan(x)", "cos(x) * tan(x)", "cos(x) · tan(x)", `\cos\left(x\right) \cdot \tan\left(x\right)`},
	{"asin(x)+acos(x)+atan(x)", "asin(x) + acos(x) + atan(x)", "asin(x) + acos(x) + atan(x)",
		`\arcsin\left(x\right) + \arccos\left(x\right) + \arctan\left(x\right)`},
	{"min(a,-b,c+d)", "min(a, -b, c + d)", "min(a, -b, c + d)", `\min\left(a, -b, c + d\right)`},
	{"max(a,b)-c", "max(a, b) - c", "max(a, b) - c", `\max\left(a, b\right) - c`},
	{"floor(a/b)", "floor(a / b)", "floor(a / b)", `\left\lfloor \frac{a}{b}\right\rfloor `},
	{"ceil(a)", "ceil(a)", "ceil(a)", `\left\lceil a\right\rceil `},

	// comparisons
	{"a+b<=c", "a + b <= c", "a + b ≤ c", `a + b \le c`},
	{"a>=b", "a >= b", "a ≥ b", `a \ge b`},
	{"a>b", "a > b", "a > b", `a > b`},
	{"a==b", "a == b", "a = b", `a = b`},
	{"a!=b", "a != b", "a ≠ b", `a \ne b`},
}

func TestFormulaNotations(t *testing.T) {
	for _, tt := range formulaTests {
		f, err := working.ParseFormula(tt.in)
		if err != nil {
			t.Errorf("ParseFormula(%q): %v", tt.in, err)
			continue
		}
		for _, got := range [...]struct{ method, got, want string }{
			{"String", f.String(), tt.golang},
			{"Text", f.Text(), tt.text},
			{"LaTeX", f.LaTeX(), tt.latex},
		} {
			if got.got != got.want {
				t.Errorf("ParseFormula(%q).%s() = %s, want %s", tt.in, got.method, got.got, got.want)
			}
		}
		again, err := working.ParseFormula(f.String())
		if err != nil || again.String() != f.String() {
			t.Errorf("ParseFormula(%q) read back = %q, %v", f.String(), again.String(), err)
		}
	}
}

func TestFormulaMathML(t *testing.T) {
	tests := []struct{ in, want string }{
		{"a-(b-c)", `<mi>a</mi><mo>−</mo><mrow><mo form="prefix" fence="true">(</mo><mrow><mi>b</mi><mo>−</mo><mi>c</mi></mrow><mo form="postfix" fence="true">)</mo></mrow>`},
		{"a/(b/c)", `<mfrac><mrow><mi>a</mi></mrow><mrow><mfrac><mrow><mi>b</mi></mrow><mrow><mi>c</mi></mrow></mfrac></mrow></mfrac>`},
		{"pow(ρ_20,2)", `<msup><mrow><msub><mi>ρ</mi><mn>20</mn></msub></mrow><mrow><mn>2</mn></mrow></msup>`},
		{"-ΔV_load_min", `<mo form="prefix">−</mo><msub><mrow><mi mathvariant="normal">Δ</mi><mi>V</mi></mrow><mtext>load,min</mtext></msub>`},
		{"a<b", `<mi>a</mi><mo>&lt;</mo><mi>b</mi>`},
		{"sqrt(SoC)", `<msqrt><mi>SoC</mi></msqrt>`},
		{"log10(30*deg)", `<msub><mi>log</mi><mn>10</mn></msub><mo>` + "\u2061" + `</mo><mrow><mo form="prefix" fence="true">(</mo><mrow><mn>30</mn><mtext>°</mtext></mrow><mo form="postfix" fence="true">)</mo></mrow>`},
		{"max(pi,5*pct)", `<mi>max</mi><mo>` + "\u2061" + `</mo><mrow><mo form="prefix" fence="true">(</mo><mrow><mi>π</mi><mo>,</mo><mn>5</mn><mtext>` + "\u00a0" + `%</mtext></mrow><mo form="postfix" fence="true">)</mo></mrow>`},
		{"abs(1.2e-05)", `<mrow><mo form="prefix" fence="true">|</mo><mrow><mrow><mn>1.2</mn><mo>×</mo><msup><mn>10</mn><mrow><mo form="prefix">−</mo><mn>5</mn></mrow></msup></mrow></mrow><mo form="postfix" fence="true">|</mo></mrow>`},
	}
	for _, tt := range tests {
		f, err := working.ParseFormula(tt.in)
		if err != nil {
			t.Errorf("ParseFormula(%q): %v", tt.in, err)
			continue
		}
		want := `<math display="block"><mrow>` + tt.want + `</mrow></math>`
		if got := f.MathML(); got != want {
			t.Errorf("ParseFormula(%q).MathML() =\n%s, want\n%s", tt.in, got, want)
		}
	}
	for _, tt := range formulaTests {
		f, _ := working.ParseFormula(tt.in)
		checkMathML(t, f.MathML())
	}
}

// badFormulas have where the fault is, as the text from there on, and a part
// of the reason that must be given.
var badFormulas = []struct{ in, at, reason string }{
	// what people write instead
	{"a^2", "^2", "write pow(x, y)"},
	{"a**2", "**2", "write pow(x, y)"},
	{"5%", "%", "write x * pct"},
	{"a % b", "% b", "write x * pct"},
	{"2 × a", "× a", "write *"},
	{"2·a", "·a", "write *"},
	{"2⋅a", "⋅a", "write *"},
	{"a÷b", "÷b", "write /"},
	{"a − b", "− b", "write -"},
	{"a – b", "– b", "write -"},
	{"a²", "²", "write pow(x, 2)"},
	{"a³", "³", "write pow(x, 3)"},
	{"√a", "√a", "write sqrt(x)"},
	{"sin(30°)", "°)", "write x * deg"},
	{"a ≤ b", "≤ b", "write <="},
	{"a ≥ b", "≥ b", "write >="},
	{"a ≠ b", "≠ b", "write !="},
	{"2*π", "π", "write pi"},
	{"a = b", "= b", "behind the ="},
	{"1,5 * a", ",5 * a", "write 1.5"},
	{"a && b", "&& b", "two comparisons"},
	{"a || b", "|| b", "two comparisons"},
	{"V_s[1]", "[1]", "write one name"},
	{"run.Current", "Current", "with _ before the subscript"},
	{"2a", "a", ""},
	{"2(a)", "2(a)", "write * for a product"},
	{"R(a)", "R(a)", "not a function"},
	{"--a", "--a", "space"},
	{"a++b", "++b", "write one +"},
	{"a<-b", "<-b", "space between < and -"},
	{"a//b", "//b", "comment"},
	{"a/*b", "/*b", "comment"},
	{"a; b", "; b", "one formula"},
	{"a ? b : c", "? b : c", "not allowed"},
	{"min(a, b...)", "...)", "every argument"},

	// Go that is not in the language
	{`"text"`, `"text"`, "text"},
	{"`text`", "`text`", "text"},
	{"'x'", "'x'", "text"},
	{"[]int", "[]int", "[ ]"},
	{"func() {}", "{}", "{ }"},
	{"func(a)", "func(a)", "write numbers"},
	{"x.(y)", "x.(y)", "write numbers"},
	{"chan a", "chan a", "write numbers"},
	{"*a", "*a", "both sides"},
	{"+a", "+a", "both sides"},
	{"!a", "!a", "opposite"},
	{"a << b", "<< b", "write + - * /"},
	{"a & b", "& b", "not allowed"},
	{"a\n+ b", "\n+ b", "not allowed"},
	{"a\x00", "\x00", "not allowed"},
	{"a\xff", "a\xff", "UTF-8"},

	// numbers
	{"0x1F", "0x1F", "decimal"},
	{"1_000", "1_000", "decimal"},
	{"1E3", "1E3", "1.2e3"},
	{"2i", "2i", "decimal"},
	{"010", "010", "write 10"},
	{"00.5", "00.5", "write 0.5"},
	{"000", "000", "write 0"},
	{"08", "8", "begin with 0"},
	{"1.", "1.", "behind the point"},
	{"1.e3", "1.e3", "behind the point"},
	{"1e999", "1e999", "too large"},
	{"1.23456789012345678901", "1.23456789012345678901", "20 characters"},

	// names
	{"_a", "_a", "begins with a letter"},
	{"a_", "a_", "subscript is missing"},
	{"a__b", "a__b", "subscript is missing"},
	{strings.Repeat("a", 33), strings.Repeat("a", 33), "32 characters"},
	{"sqrt", "sqrt", "write sqrt(x)"},
	{"a + min", "min", "write min(x, y, …)"},
	{"pow", "pow", "write pow(x, y)"},

	// calls
	{"pow(a)", "pow(a)", "write pow(x, y)"},
	{"sqrt(a, b)", "sqrt(a, b)", "write sqrt(x)"},
	{"min(a)", "min(a)", "write min(x, y, …)"},
	{"sqrt(a^b)", "^b)", "pow"},
	{"sqrt(010)", "010)", "write 10"},
	{"(a)(b)", "(a)(b)", "write *"},

	// comparisons
	{"a < b < c", "< b < c", "step of its own"},
	{"(a < b)", "< b)", "step of its own"},
	{"1 + (a == b)", "== b)", "step of its own"},
	{"010 < a", "010 < a", "write 10"},
	{"a < 010", "010", "write 10"},

	// unfinished
	{"", "", "empty"},
	{"  ", "  ", "empty"},
	{"a +", "", "ends here"},
	{"(a", "", "ends here"},
	{"a)", ")", ""},
	{"a b", "b", ""},

	// too much
	{strings.Repeat("a+", 700) + "a", "", "1000 bytes"},
	{strings.Repeat("(", 400) + "a" + strings.Repeat(")", 400), "", "60 operators"},
	{strings.Repeat("-(", 90) + "a" + strings.Repeat(")", 90), "", "60 operators"},
	{strings.Repeat("a+", 90) + "a", "", "60 operators"},
}

func TestParseFormulaErrors(t *testing.T) {
	for _, tt := range badFormulas {
		f, err := working.ParseFormula(tt.in)
		var fe *working.FormulaError
		if !errors.As(err, &fe) || !errors.Is(err, units.ErrSyntax) {
			t.Errorf("ParseFormula(%q) = %v, %v, want a *FormulaError that is units.ErrSyntax", tt.in, f, err)
			continue
		}
		if f.String() != "" || f.Text() != "" || f.LaTeX() != "" || f.MathML() != "" || f.Names() != nil {
			t.Errorf("ParseFormula(%q) gives a formula beside its error: %v", tt.in, f)
		}
		if fe.Formula != tt.in || !strings.Contains(fe.Reason, tt.reason) {
			t.Errorf("ParseFormula(%q) = %+v, want a reason with %q", tt.in, fe, tt.reason)
		}
		if fe.Offset < 0 || fe.Offset > len(tt.in) {
			t.Errorf("ParseFormula(%q): offset %d is outside", tt.in, fe.Offset)
		} else if tt.reason != "1000 bytes" && tt.reason != "60 operators" && tt.in[fe.Offset:] != tt.at {
			t.Errorf("ParseFormula(%q): fault at %q, want at %q: %v", tt.in, tt.in[fe.Offset:], tt.at, err)
		}
		if len(err.Error()) > 1000 {
			t.Errorf("ParseFormula(%.20q…): message of %d bytes", tt.in, len(err.Error()))
		}
	}
}

func TestFormulaErrorText(t *testing.T) {
	_, err := working.ParseFormula("a ^ 2")
	if got, want := err.Error(), `formula "a ^ 2", at "^ 2": ^ is not a power; write pow(x, y)`; got != want {
		t.Errorf("Error() = %s, want %s", got, want)
	}
	_, err = working.ParseFormula("a +")
	if got, want := err.Error(), `formula "a +", at the end: the formula ends here; expected operand, found 'EOF'`; got != want {
		t.Errorf("Error() = %s, want %s", got, want)
	}
	far := &working.FormulaError{Formula: "a", Offset: 99, Reason: "why"}
	if got, want := far.Error(), `formula "a", at the end: why`; got != want {
		t.Errorf("Error() = %s, want %s", got, want)
	}
}

func TestFormulaNames(t *testing.T) {
	f, err := working.ParseFormula("-a * min(b, a, ρ_20) / (c - pi) <= b")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Join(f.Names(), " "), "a b ρ_20 c"; got != want {
		t.Errorf("Names() = %s, want %s", got, want)
	}
	if !f.IsComparison() {
		t.Error("IsComparison() = false, want true")
	}
}
