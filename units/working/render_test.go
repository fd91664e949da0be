package working_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func TestSheetMarkdown(t *testing.T) {
	s := working.NewSheet("A * B")
	s.Given("V", 12*units.Volt, "V", "source")
	s.Given("R", 5*units.Milliohm, "mΩ", "loop")
	s.Formula("I", 2400*units.Ampere, "A", "Fault current", "1000 * V / R")
	s.Test("Breaks the fault", "I <= 5000", true)
	s.Choose("Fuse", "class T", "the smallest above ``` the fault", habit)
	const want = "**A \\* B**\n\n" +
		"```text\n" + `Given
  V = 12 V   source
  R = 5 mΩ   loop

Fault current
  I = 1000 · V / R
    = 1000 · 12 / 5
    = 2400 A
  with V in V; R in mΩ` + "\n```\n\n" +
		"```math\n" + `\begin{aligned}
I & = \frac{1000 \cdot V}{R} \\
& = \frac{1000 \cdot 12}{5} \\
& = 2400\,\mathrm{A}
\end{aligned}` + "\n```\n\n" +
		"```text\n" + `Test: Breaks the fault
  I ≤ 5000
  2400 ≤ 5000 holds
  with I in A` + "\n```\n\n" +
		"```math\n" + `\begin{aligned}
& I \le 5000 \\
& 2400 \le 5000
\end{aligned}` + "\n```\n\n" +
		"````text\n" + "Choice: Fuse\n  class T\n      the smallest above ``` the fault\n      common practice" + "\n````"
	if got := s.Markdown(); got != want {
		t.Errorf("Markdown() =\n%s\nwant\n%s", got, want)
	}
}

func TestSheetHTML(t *testing.T) {
	s := working.NewSheet(`<b>&"`)
	s.Given("I", 20*units.Ampere, "A", "<script>alert(1)</script>")
	s.LookUp("A_w", 5*units.SquareMillimetre, "mm²", "area", working.Lookup{Source: working.Source{Title: "R&D <1>", Provenance: working.Memory}, Key: "<10>"})
	s.Formula("J", 4*units.Ampere, "A", "power", "I ^ 2 < 3")
	s.Test("<limit>", "I/A_w <= 5", true)
	s.Choose("x & y", "<this>", "<that>", habit)
	got := s.HTML()
	root := parseXML(t, got)
	if root.tag != "figure" || root.children[0].text != `<b>&"` {
		t.Errorf("the caption is %q", root.children[0].text)
	}
	items := root.find("li")
	if len(items) != 5 {
		t.Fatalf("%d steps, want 5:\n%s", len(items), got)
	}
	for i, want := range [][]string{
		{"<script>alert(1)</script>"},
		{"area", "R&D <1> (from memory); for <10>"},
		{"power"},
		{"<limit>", "with I in A; A_w in mm²", "holds"},
		{"x & y", "<this>", "<that>", "common practice"},
	} {
		var texts []string
		for _, p := range items[i].find("p") {
			if !strings.HasPrefix(p.text, "MISTAKE") {
				texts = append(texts, p.text)
			}
		}
		if strings.Join(texts, "|") != strings.Join(want, "|") {
			t.Errorf("step %d: %q, want %q", i+1, texts, want)
		}
	}
	if code := items[2].find("code"); len(code) != 1 || code[0].text != "I ^ 2 < 3" {
		t.Errorf("a formula that cannot be read is shown as %v", code)
	}
	if n := len(root.find("math")); n != 3 {
		t.Errorf("%d formulas, want 3", n)
	}
}

func TestSheetMath(t *testing.T) {
	s := sample()
	for i, st := range s.Steps() {
		if s.LaTeX(i) != st.LaTeX() || s.MathML(i) != st.MathML() {
			t.Errorf("step %d: the sheet and the step differ", i)
		}
		if (st.Kind == working.ChoiceStep) != (st.MathML() == "") {
			t.Errorf("step %d (%v): MathML() = %q", i, st.Kind, st.MathML())
		}
		if st.Kind != working.ChoiceStep {
			checkMathML(t, st.MathML())
		}
	}
	const want = `\begin{aligned}
R_{\mathrm{loop}} & = \frac{\rho \cdot 2 \cdot L}{A} \cdot 1000 \\
& = \frac{0.017919 \cdot 2 \cdot 4.572}{5.261} \cdot 1000 \\
& = 31.14\,\mathrm{m\Omega}
\end{aligned}`
	if got := s.LaTeX(8); got != want {
		t.Errorf("LaTeX(8) =\n%s\nwant\n%s", got, want)
	}
	const math = `<math display="block"><mtable displaystyle="true"><mtr><mtd style="text-align:right"><mi>δ</mi></mtd><mtd><mo>=</mo></mtd>` +
		`<mtd style="text-align:left"><mrow><mfrac><mrow><mfrac><mrow><mrow><mi mathvariant="normal">Δ</mi><mi>V</mi></mrow></mrow>` +
		`<mrow><msub><mi>V</mi><mtext>s</mtext></msub></mrow></mfrac></mrow><mrow><mn>1</mn><mtext>` + "\u00a0" + `%</mtext></mrow></mfrac></mrow></mtd></mtr>` +
		`<mtr><mtd style="text-align:right"></mtd><mtd><mo>=</mo></mtd>` +
		`<mtd style="text-align:left"><mrow><mfrac><mrow><mfrac><mrow><mn>0.622889</mn></mrow><mrow><mn>12.8</mn></mrow></mfrac></mrow>` +
		`<mrow><mn>1</mn><mtext>` + "\u00a0" + `%</mtext></mrow></mfrac></mrow></mtd></mtr>` +
		`<mtr><mtd style="text-align:right"></mtd><mtd><mo>=</mo></mtd><mtd style="text-align:left"><mrow><mn>4.866</mn></mrow><mtext>` + "\u00a0" + `%</mtext></mtd></mtr></mtable></math>`
	if got := s.MathML(10); got != math {
		t.Errorf("MathML(10) =\n%s\nwant\n%s", got, math)
	}
}

// Units are upright, with what LaTeX does not take as it is replaced.
func TestUnitsInMath(t *testing.T) {
	for _, tt := range []struct {
		v           units.Value
		unit, latex string
	}{
		{2 * units.OhmSquareMillimetrePerMetre, "Ω·mm²/m", `x = 2\,\mathrm{\Omega\cdot mm^{2}/m}`},
		{2 * units.Microohm, "µΩ", `x = 2\,\mathrm{\mu\Omega}`},
		{2 * units.CubicMetre, "m³", `x = 2\,\mathrm{m^{3}}`},
		{units.Celsius(-2), "°C", `x = -2\,\mathrm{{}^{\circ}C}`},
		{2 * units.Percent, "%", `x = 2\,\mathrm{\%}`},
		{2 * units.One, "1", `x = 2`},
		{2 * units.Degree, "°", `x = 2{}^{\circ}`},
		{2 * units.ArcMinute, "′", `x = 2{}^{\prime}`},
		{2 * units.ArcSecond, "″", `x = 2{}^{\prime\prime}`},
		{2 * units.GallonUS, "gal", `x = 2\,\mathrm{gal(US)}`},
		{2e-9 * units.Volt, "V", `x = 2 \times 10^{-9}\,\mathrm{V}`},
	} {
		s := working.NewSheet("unit")
		s.Given("x", tt.v, tt.unit, "")
		if got := s.LaTeX(0); got != tt.latex || s.Err() != nil {
			t.Errorf("%v: LaTeX = %s (%v), want %s", tt.v, got, s.Err(), tt.latex)
		}
		checkMathML(t, s.MathML(0))
	}
	angle := working.NewSheet("")
	angle.Given("φ", 30*units.Degree, "°", "")
	if got, want := angle.Text(), "Given\n  φ = 30°"; got != want {
		t.Errorf("Text() = %q, want %q", got, want)
	}
	st := working.Step{Name: "x", Printed: "2", Unit: `a\b_c {d}`}
	if got, want := st.LaTeX(), `x = 2\,\mathrm{a\backslash b\_c\ \{d\}}`; got != want {
		t.Errorf("LaTeX() = %s, want %s", got, want)
	}
}

// A long formula is broken in front of its outermost operators and goes on
// below its beginning.
func TestTextWraps(t *testing.T) {
	s := working.NewSheet(strings.Repeat("A title that is long enough ", 4))
	names := []string{"first_term", "second_term", "third_term", "fourth_term", "fifth_term"}
	sum := 0.0
	for i, n := range names {
		v := 1.23456789 * float64(i+1)
		sum += v * 2
		s.Given(n, units.Ratio(v), "1", "")
	}
	s.Formula("sum", units.Ratio(sum), "1", "A heading that goes on and on until it does not fit in a line of eighty columns any more",
		"first_term*2 + 2*second_term + 2*(third_term/1 + third_term/1 + fourth_term + fourth_term)/2*1 - third_term*0 + fifth_term*2 - fourth_term*0")
	const want = `A title that is long enough A title that is long enough A title that is long
enough A title that is long enough
============================================================================

Given
  first_term  = 1.23457
  second_term = 2.46914
  third_term  = 3.7037
  fourth_term = 4.93827
  fifth_term  = 6.17284

A heading that goes on and on until it does not fit in a line of eighty columns
any more
  sum = first_term · 2 + 2 · second_term
        + 2 · (third_term / 1 + third_term / 1 + fourth_term + fourth_term) / 2
        · 1 - third_term · 0 + fifth_term · 2 - fourth_term · 0
      = 1.23457 · 2 + 2 · 2.46914
        + 2 · (3.7037 / 1 + 3.7037 / 1 + 4.93827 + 4.93827) / 2 · 1 - 3.7037 · 0
        + 6.17284 · 2 - 4.93827 · 0
      = 37.04`
	if err := s.Err(); err != nil {
		t.Fatal(err)
	}
	if got := s.Text(); got != want {
		t.Errorf("Text() =\n%s\nwant\n%s", got, want)
	}
}

// No text that is put in makes a line longer than 80 columns, or breaks out
// of its line.
func TestTextWidth(t *testing.T) {
	long := strings.Repeat("x", 300)
	words := strings.Repeat("word ", 60)
	nasty := "a\nb\tc\r\x1b[31m\u2028\u202e\xff" + long
	nested := strings.Repeat("sin(", 50) + "1" + strings.Repeat(")", 50)
	value, err := working.Evaluate(nested, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"", long, words, nasty} {
		s := working.NewSheet(text)
		name := strings.Repeat("n", 32)
		s.Given(name, 1*units.Volt, "V", text)
		s.Given(text, 1*units.Volt, "V", text)
		s.Given("V", 1*units.Volt, text, text)
		src := working.Source{Body: text, Title: text, Edition: text, Place: text, Provenance: working.Memory}
		s.Constant("k", 2*units.One, "1", text, src)
		s.LookUp("l", 2*units.One, "1", text, working.Lookup{Source: src, Key: text, Row: text, Between: text})
		s.Formula("p", units.Ratio(value), "1", text, nested)
		s.Formula(name+"2", 1*units.Volt, "V", text, text)
		s.Formula(text, 1*units.Volt, text, text, name+" * "+name)
		s.Choose(text, text, text, src)
		s.Test(text, text, true)
		s.Test(text, nested+" < "+name, true)
		for _, line := range strings.Split(s.Text(), "\n") {
			if utf8.RuneCountInString(line) > 80 {
				t.Errorf("a line of %d columns: %q", utf8.RuneCountInString(line), line)
			}
			if strings.ContainsAny(line, "\t\r\x1b\u2028\u202e") || !utf8.ValidString(line) || strings.TrimRight(line, " ") != line {
				t.Errorf("a line with control characters or blanks at its end: %q", line)
			}
		}
		root := parseXML(t, s.HTML())
		for _, m := range root.find("math") {
			if len(m.children) == 0 {
				t.Error("empty mathematics")
			}
		}
	}
}
