package weave_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"github.com/google/go-cmp/cmp"
)

// mustWeave returns the sample, woven.
func mustWeave(t testing.TB) *weave.Woven {
	t.Helper()
	w, err := weave.Weave(sample())
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// drawings are SVG elements inside a page; package figure has its own tests.
var drawings = regexp.MustCompile(`(?s)<svg.*?</svg>`)

func TestRenderings(t *testing.T) {
	w := mustWeave(t)
	unitstest.Golden(t, "book/weave/sample.md", []byte(w.Markdown()))
	unitstest.Golden(t, "book/weave/sample.txt", []byte(w.Text()))
	unitstest.Golden(t, "book/weave/sample.html", drawings.ReplaceAll([]byte(w.Fragment()), []byte("<svg/>")))
}

// "The same chapter gives the same bytes each time."
func TestSameBytes(t *testing.T) {
	a, b := mustWeave(t), mustWeave(t)
	if diff := cmp.Diff(a.Files(), b.Files()); diff != "" {
		t.Errorf("two weavings differ:\n%s", diff)
	}
	if a.Text() != b.Text() || a.HTML() != b.HTML() {
		t.Error("two weavings differ as text or HTML")
	}
}

// Rendering must not change what is rendered.
func TestRenderTwice(t *testing.T) {
	w := mustWeave(t)
	text, html, markdown := w.Text(), w.HTML(), w.Markdown()
	if w.Text() != text || w.HTML() != html || w.Markdown() != markdown {
		t.Error("a second rendering differs")
	}
}

func TestFiles(t *testing.T) {
	w := mustWeave(t)
	var names []string
	for _, f := range w.Files() {
		names = append(names, f.Name)
		if strings.HasSuffix(f.Name, ".svg") && !bytes.Contains(f.Data, []byte("<svg")) {
			t.Errorf("%s is no SVG", f.Name)
		}
	}
	// In reading order; the figure of the example comes first.
	if diff := cmp.Diff([]string{"README.md", "lamp.svg", "loss.svg", "shares.svg"}, names); diff != "" {
		t.Error(diff)
	}
	for _, name := range names[1:] {
		if !strings.Contains(w.Markdown(), "]("+name+")") {
			t.Errorf("README.md does not show %s", name)
		}
	}
}

// "Text returns the chapter for a terminal of 80 columns."
func TestTextFits(t *testing.T) {
	for line := range strings.Lines(mustWeave(t).Text()) {
		line = strings.TrimSuffix(line, "\n")
		if n := utf8.RuneCountInString(line); n > 80 {
			t.Errorf("%d columns: %s", n, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("space at the end of %q", line)
		}
		if strings.Contains(line, "\u00a0") {
			t.Errorf("no-break space in %q", line)
		}
	}
}

// pageOutline is what a page is made of.
type pageOutline struct {
	lang     string
	headings []string       // "h1", "h2" in order
	count    map[string]int // of elements
	ids      map[string]int
}

// outline parses a page as strictly as XML is.
func outline(t *testing.T, page string) pageOutline {
	t.Helper()
	o := pageOutline{count: map[string]int{}, ids: map[string]int{}}
	d := xml.NewDecoder(strings.NewReader(page))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return o
		}
		if err != nil {
			t.Fatalf("line %d: %v", bytes.Count([]byte(page)[:d.InputOffset()], []byte("\n"))+1, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		name := start.Name.Local
		o.count[name]++
		if len(name) == 2 && name[0] == 'h' && '1' <= name[1] && name[1] <= '6' {
			o.headings = append(o.headings, name)
		}
		for _, a := range start.Attr {
			switch a.Name.Local {
			case "id":
				o.ids[a.Value]++
			case "lang":
				o.lang = a.Value
			}
		}
	}
}

func TestHTML(t *testing.T) {
	o := outline(t, mustWeave(t).HTML())
	if o.lang != "en-GB" {
		t.Errorf("lang is %q", o.lang)
	}
	for name, want := range map[string]int{
		"h1": 1, "main": 1, "article": 1, "title": 1 + 3, // of the page and of three drawings
		"svg": 3, "aside": 4, "details": 2 + 1, "caption": 2, "dl": 1, "link": 0, "script": 0, "img": 0,
		"section": 1 + 1 + 2, // example, misconception, exercises
	} {
		if o.count[name] != want {
			t.Errorf("%d <%s>, want %d", o.count[name], name, want)
		}
	}
	if o.count["math"] < 3+6+6 { // equations, symbols, steps of the working
		t.Errorf("%d <math>, want 15 at least", o.count["math"])
	}
	last := byte('0')
	for _, h := range o.headings {
		if h[1] > last+1 {
			t.Errorf("<%s> skips a level", h)
		}
		last = h[1]
	}
	for id, n := range o.ids {
		if n > 1 {
			t.Errorf("id %q stands %d times", id, n)
		}
	}
}

// Working is folded where that can be, and what matters is not.
func TestWorkingIsFolded(t *testing.T) {
	w := mustWeave(t)
	folds := regexp.MustCompile(`(?s)<details>.*?</details>`)
	for name, text := range map[string]string{"Markdown": w.Markdown(), "HTML": w.HTML()} {
		shown := folds.ReplaceAllString(text, "")
		if !strings.Contains(text, "<summary>Working: Loss in the cord</summary>") || strings.Contains(shown, "voltage lost\n") {
			t.Errorf("%s: the working is not folded", name)
		}
		for _, want := range []string{"Answer", "The cord is warm", "Compared with print", "func solveLamp"} {
			if !strings.Contains(shown, want) {
				t.Errorf("%s: %s is folded", name, want)
			}
		}
	}
	// Without the blank lines the Markdown inside would not be read.
	if md := w.Markdown(); !strings.Contains(md, "\n\n<details>\n<summary>Working: Loss in the cord</summary>\n\n```text\nGiven\n") ||
		!strings.Contains(md, "```\n\n</details>\n\n") {
		t.Errorf("the fold is not set apart:\n%s", md)
	}
	if strings.Contains(w.Text(), "<details>") {
		t.Error("the text has HTML")
	}
	untitled := working.NewSheet(" ")
	untitled.Given("I", 5*units.Ampere, "A", "current & more")
	for title, want := range map[string]string{"": "Working", "A < B": "Working: A &lt; B"} {
		s := untitled
		if title != "" {
			s = working.NewSheet(title)
		}
		if got := weave.MarkdownSheet(s); !strings.HasPrefix(got, "<details>\n<summary>"+want+"</summary>\n\n") || strings.Contains(got, "**") {
			t.Errorf("title %q: %s", title, got)
		}
	}
}

// "Every chapter ends with these sentences", in each form, and so does what is
// shown of one.
func TestClosing(t *testing.T) {
	example, err := weave.WeaveExample(sample(), "lamp", nil)
	if err != nil {
		t.Fatal(err)
	}
	squeeze := func(s string) string {
		return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune("|>+-", r) }), " ")
	}
	tags := regexp.MustCompile(`<[^>]*>`)
	for part, w := range map[string]*weave.Woven{"chapter": mustWeave(t), "example": example} {
		want := squeeze("Before you act on this " + part + " Caution. " + working.DeferToCode + " " + working.DeferOnVerdict)
		for form, text := range map[string]string{
			"Markdown": strings.ReplaceAll(w.Markdown(), "**", ""),
			"text":     strings.ReplaceAll(w.Text(), "Caution -", "Caution."),
			"HTML":     tags.ReplaceAllString(w.HTML(), ""),
		} {
			if !strings.HasSuffix(squeeze(text), want) {
				t.Errorf("%s as %s does not end with %q", part, form, want)
			}
		}
	}
}

// Math never passes through the Markdown of prose, which would take the
// asterisks and underscores out of it.
func TestMathIsLeftAlone(t *testing.T) {
	w := mustWeave(t)
	for _, want := range []string{
		"```text\nΔV = I · R_loop\nR_loop = 2 · L · r\nΔV ≤ 3 % · V\n```\n\n```math\n",
		`R_{\mathrm{loop}} = 2 \cdot L \cdot r`,
	} {
		if !strings.Contains(w.Markdown(), want) {
			t.Errorf("Markdown lacks %s", want)
		}
	}
	if html := w.HTML(); !strings.Contains(html, "<msub><mi>R</mi><mtext>loop</mtext></msub>") {
		t.Error("HTML lacks the MathML of R_loop")
	}
}

// An exercise alone keeps its number and tells what may be changed.
func TestWeaveExercise(t *testing.T) {
	w, err := weave.WeaveExample(sample(), "two", []weave.Setting{{Input: "current", Value: "15 A"}})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"## Exercise 1\n\nWhat if the lamp takes 15 A?\n", "| current | 15 A (in the chapter: 10 A) | 1 A to 20 A | current |",
		"### Answer to exercise 1\n\nIt takes 1.5 V", "## Before you act on this exercise\n", // 15 A · 0.1 Ω
	} {
		if !strings.Contains(w.Markdown(), want) {
			t.Errorf("lacks %q:\n%s", want, w.Markdown())
		}
	}
	if w, err = weave.WeaveExample(sample(), "none", nil); err != nil {
		t.Fatal(err)
	}
	if md := w.Markdown(); !strings.Contains(md, "## Exercise 2\n") || strings.Contains(md, "| Given |") {
		t.Errorf("want exercise 2 without inputs:\n%s", md)
	}
}

func TestWeaveExample(t *testing.T) {
	w, err := weave.WeaveExample(sample(), "lamp", []weave.Setting{{Input: "current", Value: "10A"}, {Input: "cord", Value: "ROUND  cord"}})
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(w.Text()), " ")
	for _, want := range []string{
		"A lamp takes 10 A from 12 V through a round cord",
		"current of the lamp 10 A (in the chapter:",
		"The round cord takes 1 V, 8.3 % of it all.", // 10 A · 0.1 Ω; 1 V of 12 V
		"so there is no comparison here",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if want := "| current of the lamp | 10 A (in the chapter: 5 A) | 0.1 A to 20 A | current |"; !strings.Contains(w.Markdown(), want) {
		t.Errorf("Markdown lacks %q", want)
	}
	for _, not := range []string{"The rule of thumb", "Compared with print", "Answers"} {
		if strings.Contains(text, not) {
			t.Errorf("has %q", not)
		}
	}
	// Nothing changed, or back to what it was: the comparison is there.
	for _, set := range [][]weave.Setting{nil, {{Input: "current", Value: "1 A"}, {Input: "current", Value: "5 A"}}} {
		w, err = weave.WeaveExample(sample(), "lamp", set)
		if err != nil {
			t.Fatal(err)
		}
		if text := w.Text(); !strings.Contains(text, "Compared with print") || strings.Contains(text, "in the chapter") {
			t.Errorf("%v: want the comparison and nothing changed:\n%s", set, text)
		}
	}
	var names []string
	for _, f := range w.Files() {
		names = append(names, f.Name)
	}
	if diff := cmp.Diff([]string{"README.md", "lamp.svg"}, names); diff != "" {
		t.Error(diff)
	}
}
