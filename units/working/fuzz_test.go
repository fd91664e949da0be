package working_test

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// slowEvaluate computes a formula straight from Go's own tree: the slow and
// obvious twin of Evaluate. It is NaN where there is no finite value.
func slowEvaluate(n ast.Expr, values map[string]float64) float64 {
	x := slowValue(n, values)
	if math.IsInf(x, 0) {
		return math.NaN()
	}
	return x
}

func slowValue(n ast.Expr, values map[string]float64) float64 {
	switch n := n.(type) {
	case *ast.ParenExpr:
		return slowEvaluate(n.X, values)
	case *ast.BasicLit:
		x, _ := strconv.ParseFloat(n.Value, 64)
		return x
	case *ast.Ident:
		switch n.Name {
		case "pi":
			return math.Pi
		case "pct":
			return 0.01
		case "deg":
			return math.Pi / 180
		}
		if x, ok := values[n.Name]; ok {
			return x
		}
	case *ast.UnaryExpr:
		return -slowEvaluate(n.X, values)
	case *ast.BinaryExpr:
		x, y := slowEvaluate(n.X, values), slowEvaluate(n.Y, values)
		switch n.Op {
		case token.ADD:
			return x + y
		case token.SUB:
			return x - y
		case token.MUL:
			return x * y
		case token.QUO:
			return x / y // by zero: infinite, or 0/0
		}
	case *ast.CallExpr:
		var args []float64
		for _, a := range n.Args {
			args = append(args, slowEvaluate(a, values))
		}
		return slowCall(n.Fun.(*ast.Ident).Name, args)
	}
	return math.NaN()
}

func slowCall(name string, x []float64) float64 {
	for _, a := range x {
		if math.IsNaN(a) {
			return a
		}
	}
	one := map[string]func(float64) float64{"sqrt": math.Sqrt, "exp": math.Exp, "ln": math.Log, "log10": math.Log10,
		"sin": math.Sin, "cos": math.Cos, "tan": math.Tan, "asin": math.Asin, "acos": math.Acos, "atan": math.Atan,
		"abs":   math.Abs,
		"floor": func(x float64) float64 { return math.Floor(units.Settle(x)) },
		"ceil":  func(x float64) float64 { return math.Ceil(units.Settle(x)) }}
	two := map[string]func(x, y float64) float64{"pow": math.Pow, "min": math.Min, "max": math.Max}
	if f, ok := one[name]; ok {
		return f(x[0])
	}
	for _, y := range x[1:] {
		x[0] = two[name](x[0], y)
	}
	return x[0]
}

func FuzzFormula(f *testing.F) {
	for _, tt := range formulaTests {
		f.Add(tt.in, 1.5, -2.0, 3.0)
	}
	for _, tt := range badFormulas {
		f.Add(tt.in, 0.0, 1e300, -1e-300)
	}
	f.Fuzz(func(t *testing.T, text string, a, b, c float64) {
		formula, err := working.ParseFormula(text)
		var fe *working.FormulaError
		if err != nil {
			if !errors.As(err, &fe) || !errors.Is(err, units.ErrSyntax) || fe.Offset < 0 || fe.Offset > len(text) ||
				!utf8.ValidString(err.Error()) {
				t.Fatalf("ParseFormula(%q): %#v", text, err)
			}
			showMistake(t, text)
			return
		}
		again, err := working.ParseFormula(formula.String())
		if err != nil || again.String() != formula.String() {
			t.Fatalf("ParseFormula(%q) = %v, read back %v, %v", text, formula, again, err)
		}
		if again.LaTeX() != formula.LaTeX() || again.MathML() != formula.MathML() || again.Text() != formula.Text() {
			t.Fatalf("ParseFormula(%q) = %v looks otherwise when read back", text, formula)
		}
		checkMathML(t, formula.MathML())
		checkBraces(t, formula.LaTeX())
		values := map[string]float64{"a": a, "b": b, "c": c, "x": a, "y": b}
		if formula.IsComparison() {
			x, errX := formula.Holds(values)
			y, errY := again.Holds(values)
			if x != y || (errX == nil) != (errY == nil) {
				t.Fatalf("%v: %v, %v, read back %v, %v", formula, x, errX, y, errY)
			}
			return
		}
		x, errX := formula.Evaluate(values)
		y, errY := again.Evaluate(values)
		if math.Float64bits(x) != math.Float64bits(y) || (errX == nil) != (errY == nil) {
			t.Fatalf("%v = %v, %v, read back %v, %v", formula, x, errX, y, errY)
		}
		tree, err := parser.ParseExpr(text)
		if err != nil {
			t.Fatal(err)
		}
		slow := slowEvaluate(tree, values)
		switch {
		case errX != nil && (!errors.As(errX, &fe) || !errors.Is(errX, units.ErrRange) || !(math.IsNaN(slow) || notFinite(a, b, c))):
			t.Fatalf("%v: %v, the slow twin gives %v", formula, errX, slow)
		case errX == nil && (math.Float64bits(x) != math.Float64bits(slow) || math.IsInf(x, 0) || math.IsNaN(x)):
			t.Fatalf("%v = %v, the slow twin gives %v", formula, x, slow)
		}
	})
}

func notFinite(values ...float64) bool {
	for _, x := range values {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return true
		}
	}
	return false
}

// showMistake demands that text, as a formula that cannot be read, stays in
// its sheet.
func showMistake(t *testing.T, text string) {
	s := working.NewSheet("fuzz")
	s.Formula("v", 1*units.One, "1", text, text)
	if s.Err() == nil {
		t.Fatalf("a sheet has no mistake with the formula %q", text)
	}
	checkWidth(t, s.Text())
	parseXML(t, s.HTML())
}

func checkWidth(t *testing.T, text string) {
	for _, line := range strings.Split(text, "\n") {
		if n := working.Columns(line); n > 80 {
			t.Fatalf("a line of %d columns:\n%s", n, text)
		}
	}
}

// checkBraces demands that groups and brackets are closed.
func checkBraces(t *testing.T, latex string) {
	plain := strings.NewReplacer(`\{`, "", `\}`, "").Replace(latex)
	if strings.Count(plain, "{") != strings.Count(plain, "}") || strings.Count(plain, `\left`) != strings.Count(plain, `\right`) {
		t.Fatalf("brackets are open in %s", latex)
	}
}

// FuzzSheet records anything: nothing panics, lines keep their width, HTML is
// well-formed, and a sheet without a mistake can be followed by hand.
func FuzzSheet(f *testing.F) {
	f.Add("Title", "a", 1.5, "V", "what", "2 * a", 3.0, true)
	f.Add("", "", math.NaN(), "", "", "", math.Inf(1), false)
	f.Add("```", "x_1", 0.0, "mV", "<a href=\"\">\x00\xff", "x_1 < 2", -1.0, true)
	f.Add("a\nb", "ρ", 12.8000001, "V", strings.Repeat("w", 200), "ρ - 12.8", 1e-7, true)
	f.Fuzz(func(t *testing.T, title, name string, x float64, unit, what, formula string, y float64, holds bool) {
		s := working.NewSheet(title)
		src := working.Source{Title: what, Provenance: working.Read}
		s.Given(name, units.Voltage(x), unit, what)
		s.Constant(name+"c", units.Celsius(x), unit, what, src)
		s.LookUp(name+"l", units.Ratio(x), "%", what, working.Lookup{Source: src, Key: formula, Row: name, Between: unit})
		s.Formula("v", units.Voltage(y), unit, what, formula)
		s.Test(what, formula, holds)
		s.Choose(what, formula, title, src)
		if len(s.Steps()) != 6 {
			t.Fatalf("%d steps, want 6", len(s.Steps()))
		}
		checkWidth(t, s.Text())
		parseXML(t, s.HTML())
		_ = s.Markdown()
		for _, st := range s.Steps() {
			if math := st.MathML(); math != "" {
				checkMathML(t, math)
			}
			checkBraces(t, st.LaTeX())
			if st.Kind != working.FormulaStep || st.Err != nil {
				continue
			}
			operands := map[string]float64{}
			for _, o := range st.Operands {
				operands[o.Name], _ = strconv.ParseFloat(o.Printed, 64)
			}
			printed, _ := strconv.ParseFloat(st.Printed, 64)
			got, err := working.Evaluate(st.Formula, operands)
			if err != nil || units.Exceeds(math.Abs(got-printed), st.Resolution) {
				t.Fatalf("%s with %v gives %v, %v, printed is %s", st.Formula, operands, got, err, st.Printed)
			}
		}
	})
}

// FuzzJudge compares anything: nothing panics, a danger is never lost, and
// without one the verdict is one of the others.
func FuzzJudge(f *testing.F) {
	f.Add("3.60 V", 3.564, "V", uint8(0), uint8(0))
	f.Add("2.0 %", 0.04684, "", uint8(1), uint8(2))
	f.Add("25 °C", 25.0, "°F", uint8(2), uint8(1))
	f.Add("1e280", math.MaxFloat64, "", uint8(9), uint8(9))
	f.Fuzz(func(t *testing.T, text string, x float64, unit string, side, severity uint8) {
		p, err := units.ParsePrinted(text)
		if err != nil && text != "" {
			return
		}
		for _, v := range []units.Value{units.Voltage(x), units.Ratio(x), units.Celsius(x), nil} {
			c := working.Claim{Stated: p, Computed: v, Unit: unit, SafeSide: working.Side(side),
				Findings: []working.Finding{{Severity: working.Severity(severity), Rule: "r"}}}
			j, err := c.Judge()
			if j.String() == "" || strings.Contains(j.String(), "NaN") {
				t.Fatalf("%+v: %q", c, j)
			}
			if (severity >= uint8(working.Danger)) != (j.Verdict == working.Unsafe) {
				t.Fatalf("%+v: %v", c, j)
			}
			if j.Verdict != working.Unsafe && (err != nil || !p.IsSet() || v == nil) != (j.Verdict == working.NotStated) {
				t.Fatalf("%+v: %v, %v", c, j, err)
			}
			if d := j.Difference.Or(0); notFinite(float64(d), j.Width, j.Off.Or(0)) {
				t.Fatalf("%+v: not finite: %+v", c, j)
			}
		}
	})
}
