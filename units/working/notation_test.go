package working_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units/working"
)

// This file reads the three notations back as a person does, with the rules
// of school: powers before a minus in front, that and products before sums,
// no minus behind an operator. What is read must have the value of the
// formula. Fraction bars, roots and superscripts bracket what they span; the
// base of a power is bracketed by nothing but brackets.

// spanned is the bracket of a fraction bar or a root.
const spanned = "\x01"

func readText(s string) string {
	s = raisedAt.ReplaceAllStringFunc(s, func(digits string) string {
		return "^(" + strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4",
			"⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9").Replace(digits) + ")"
	})
	return strings.NewReplacer("·", "*", "√", "sqrt", "π", "pi", " %", "%").Replace(s)
}

func readLaTeX(s string) string {
	var b strings.Builder
	rest := s
	group := func() string { // what the braces that follow hold
		depth := 0
		for i, c := range rest {
			switch c {
			case '{':
				depth++
			case '}':
				if depth--; depth == 0 {
					inside := rest[1:i]
					rest = rest[i+1:]
					return readLaTeX(inside)
				}
			}
		}
		panic("braces do not match in " + s)
	}
	for rest != "" {
		cut := func(prefix string) bool {
			after, ok := strings.CutPrefix(rest, prefix)
			rest = after
			return ok
		}
		switch {
		case cut(`\frac`):
			b.WriteString("(" + spanned + "(" + group() + ")/(" + group() + ")" + spanned + ")")
		case cut(`\sqrt`):
			b.WriteString("sqrt(" + group() + ")")
		case strings.HasPrefix(rest, `^{\circ}`):
			rest = rest[len(`^{\circ}`):]
			b.WriteString("°")
		case cut("^"):
			b.WriteString("^(" + group() + ")")
		case strings.HasPrefix(rest, "{"):
			b.WriteString(group())
		case cut(`\left\lfloor `):
			b.WriteString("floor(")
		case cut(`\left\lceil `):
			b.WriteString("ceil(")
		case cut(`\left|`):
			b.WriteString("abs(")
		case cut(`\right\rfloor `), cut(`\right\rceil `), cut(`\right|`):
			b.WriteString(")")
		case cut(`\left`), cut(`\right`):
		case cut(`\cdot`), cut(`\times`):
			b.WriteString("*")
		case cut(`\log_{10}`):
			b.WriteString("log10")
		case cut(`\arc`):
			b.WriteString("a")
		case cut(`\,\%`):
			b.WriteString("%")
		case cut(`\`):
		default:
			b.WriteByte(rest[0])
			rest = rest[1:]
		}
	}
	return b.String()
}

func readMathML(e element) string {
	inside := ""
	for _, c := range e.children {
		inside += readMathML(c)
	}
	switch e.tag {
	case "mfrac":
		return "(" + spanned + "(" + readMathML(e.children[0]) + ")/(" + readMathML(e.children[1]) + ")" + spanned + ")"
	case "msup":
		return readMathML(e.children[0]) + "^(" + readMathML(e.children[1]) + ")"
	case "msqrt":
		return "sqrt(" + inside + ")"
	}
	for _, f := range [...][2]string{{"|", "abs"}, {"⌊", "floor"}, {"⌈", "ceil"}} {
		if strings.HasPrefix(inside, f[0]) {
			return f[1] + "(" + inside[len(f[0]):len(inside)-len(f[0])] + ")"
		}
	}
	return strings.NewReplacer("⋅", "*", "×", "*", "−", "-", "π", "pi", "\u2061", "", "\u00a0%", "%", "arc", "a").Replace(e.text + inside)
}

// A reader computes what is written, by the rules above.
type reader struct {
	text, rest string
	values     map[string]float64
}

func (r *reader) peek() byte {
	r.rest = strings.TrimLeft(r.rest, " \n")
	if r.rest == "" {
		return 0
	}
	return r.rest[0]
}

func (r *reader) take(c byte) bool {
	if r.peek() != c {
		return false
	}
	r.rest = r.rest[1:]
	return true
}

func (r *reader) fail(format string, args ...any) float64 {
	panic(fmt.Sprintf(format, args...) + " at " + strconv.Quote(r.rest) + " in " + strconv.Quote(r.text))
}

func (r *reader) sum() float64 {
	minus := r.take('-')
	x := r.product()
	if minus {
		x = -x
	}
	for {
		switch {
		case r.take('+'):
			x += r.product()
		case r.take('-'):
			x -= r.product()
		default:
			return x
		}
	}
}

func (r *reader) product() float64 {
	x := r.power()
	for {
		switch {
		case r.take('*'):
			x *= r.power()
		case r.take('/'):
			x /= r.power()
		default:
			return x
		}
	}
}

// power reads x^y%: brackets are needed around any base but a number without
// exponent, a name, and a pair of brackets.
func (r *reader) power() float64 {
	x, mayHaveExponent := r.atom()
	if r.take('^') {
		if !mayHaveExponent {
			r.fail("the base needs brackets")
		}
		y, _ := r.atom()
		x = math.Pow(x, y)
		if r.peek() == '^' {
			r.fail("which power is first?")
		}
	}
	switch {
	case r.take('%'):
		x *= 0.01
	case strings.HasPrefix(r.rest, "°"):
		r.rest = r.rest[len("°"):]
		x *= math.Pi / 180
	default:
		return x
	}
	if r.peek() == '^' {
		r.fail("the base needs brackets")
	}
	return x
}

var (
	raisedAt = regexp.MustCompile(`[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+`)
	numberAt = regexp.MustCompile(`^[0-9.]+(e[-+]?[0-9]+)?`)
	wordAt   = regexp.MustCompile(`^[a-z]+(10)?`)
)

func (r *reader) atom() (x float64, mayHaveExponent bool) {
	if r.take('(') {
		bar := r.take(spanned[0])
		x = r.sum()
		if bar && !r.take(spanned[0]) || !r.take(')') {
			r.fail("want )")
		}
		return x, !bar
	}
	if n := numberAt.FindString(r.rest); n != "" {
		r.rest = r.rest[len(n):]
		x, _ = strconv.ParseFloat(n, 64)
		return x, !strings.Contains(n, "e")
	}
	word := wordAt.FindString(r.rest)
	r.rest = r.rest[len(word):]
	if word == "" {
		return r.fail("want a number, a name or a bracket"), false
	}
	if !r.take('(') {
		if word == "pi" {
			return math.Pi, true
		}
		x, ok := r.values[word]
		if !ok {
			r.fail("unknown %q", word)
		}
		return x, true
	}
	args := []float64{r.sum()}
	for r.take(',') {
		args = append(args, r.sum())
	}
	if !r.take(')') {
		r.fail("want )")
	}
	return schoolFunctions[word](args), word == "abs" || word == "floor" || word == "ceil"
}

var schoolFunctions = map[string]func(x []float64) float64{
	"sqrt": func(x []float64) float64 { return math.Sqrt(x[0]) },
	"exp":  func(x []float64) float64 { return math.Exp(x[0]) },
	"ln":   func(x []float64) float64 { return math.Log(x[0]) },
	"sin":  func(x []float64) float64 { return math.Sin(x[0]) },
	"cos":  func(x []float64) float64 { return math.Cos(x[0]) },
	"atan": func(x []float64) float64 { return math.Atan(x[0]) },
	"abs":  func(x []float64) float64 { return math.Abs(x[0]) },
	"min":  func(x []float64) float64 { return min(x[0], x[1]) },
	"max":  func(x []float64) float64 { return max(x[0], x[1]) },
}

func readBack(text string, values map[string]float64) (x float64, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%v", p)
		}
	}()
	r := reader{text: text, rest: text, values: values}
	x = r.sum()
	if r.peek() != 0 {
		r.fail("want the end")
	}
	return x, nil
}

// randomFormula returns a formula in Go syntax with many parentheses.
func randomFormula(r *rand.Rand, depth int) string {
	if depth == 0 {
		atoms := [...]string{"a", "b", "c", "2", "0.5", "1e-05", "pi", "pct", "30*deg", "5*pct"}
		return atoms[r.IntN(len(atoms))]
	}
	x := "(" + randomFormula(r, depth-1) + ")"
	y := "(" + randomFormula(r, r.IntN(depth)) + ")"
	if r.IntN(2) == 0 {
		x, y = y, x
	}
	switch r.IntN(12) {
	case 0, 1:
		return x + "+" + y
	case 2, 3:
		return x + "-" + y
	case 4, 5:
		return x + "*" + y
	case 6, 7:
		return x + "/" + y
	case 8:
		return "-" + x
	case 9:
		return "pow(" + x + "," + [...]string{"2", "-3", "0.5", "(a-b)", "-c"}[r.IntN(5)] + ")"
	case 10:
		return [...]string{"sqrt", "exp", "ln", "sin", "cos", "atan", "abs"}[r.IntN(7)] + x
	}
	return [...]string{"min", "max"}[r.IntN(2)] + "(" + x + "," + y + ")"
}

func TestNotationsReadBack(t *testing.T) {
	values := map[string]float64{"a": 1.3, "b": 0.7, "c": 2.9}
	r := rand.New(rand.NewPCG(1, 2))
	checked := 0
	for range 5_000 {
		in := randomFormula(r, 1+r.IntN(5))
		f, err := working.ParseFormula(in)
		if err != nil {
			t.Fatalf("ParseFormula(%q): %v", in, err)
		}
		want, err := f.Evaluate(values)
		if err != nil {
			continue // outside the domain of a function
		}
		checked++
		for notation, text := range map[string]string{
			"Text":   readText(f.Text()),
			"LaTeX":  readLaTeX(f.LaTeX()),
			"MathML": readMathML(parseXML(t, f.MathML())),
		} {
			// Brackets around products are left out, so the last bits differ.
			got, err := readBack(text, values)
			if err != nil || math.Abs(got-want) > 1e-9*math.Abs(want) && math.Abs(want) > 1e-9 {
				t.Fatalf("%s of %s reads as %v, %v, want %v:\n%s", notation, f, got, err, want, text)
			}
		}
	}
	if checked < 2_500 {
		t.Errorf("only %d formulas had a value", checked)
	}
}

// The reading above must itself see a bracket that is missing or misplaced.
func TestReadBackSees(t *testing.T) {
	values := map[string]float64{"a": 1.3, "b": 0.7, "c": 2.9}
	for _, tt := range []struct {
		text string
		want float64 // NaN: cannot be read
	}{
		{"a - b - c", 1.3 - 0.7 - 2.9},
		{"a / b · c", 1.3 / 0.7 * 2.9},
		{"-a²", -1.69},
		{"a - -b", math.NaN()},
		{"a^b^c", math.NaN()},
		{"sin(a)²", math.NaN()},
		{"1e-05²", math.NaN()},
		{"5 %²", math.NaN()},
		{"a b", math.NaN()},
	} {
		got, err := readBack(readText(tt.text), values)
		if math.IsNaN(tt.want) != (err != nil) || err == nil && math.Abs(got-tt.want) > 1e-12 {
			t.Errorf("%q reads as %v, %v, want %v", tt.text, got, err, tt.want)
		}
	}
	if _, err := readBack(readLaTeX(`\frac{a}{b}^{2}`), values); err == nil {
		t.Error("a power of a fraction without brackets is read")
	}
}
