package weave

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units/working"
)

// opening returns the title and the question of the chapter.
func (w *weaver) opening() []element {
	return []element{
		heading{level: 1, text: w.chapter.Title},
		prose{"**" + escape(w.chapter.Question) + "**"},
	}
}

// compose returns what b prints.
func (w *weaver) compose(b Block) ([]element, error) {
	switch b := b.(type) {
	case Prose:
		return w.prose(b)
	case Formula:
		m, err := newMath(b)
		return []element{m}, err
	case Numbers:
		return nil, w.numbers(b)
	case Worked:
		return w.worked(b)
	case Figure:
		d, err := w.draw(b, nil)
		return []element{d}, err
	case Table:
		return table(b)
	case Misconception:
		return w.misconception(b)
	case Caution:
		text, err := w.text("Text", b.Text, nil)
		return []element{box{"Caution", text}}, err
	case Exercise:
		return w.exercise(b)
	}
	return nil, errors.New("no block")
}

func (w *weaver) prose(b Prose) ([]element, error) {
	text, err := w.fill(string(b), nil)
	if err == nil {
		err = checkProse(text, &w.level)
	}
	return []element{prose{text}}, err
}

func (w *weaver) numbers(b Numbers) error {
	a := w.solved[b.Name].answer
	if a.Text != "" || a.Working != nil || a.Findings != nil || a.Checks != nil || a.Figure.Name != "" {
		return errors.New("prints nothing, but its answer has more than Values")
	}
	return nil
}

func table(b Table) ([]element, error) {
	if strings.TrimSpace(b.Title) == "" || b.Rows == nil {
		return nil, errors.New("no Title or no Rows")
	}
	rows, err := b.Rows()
	if err != nil {
		return nil, err
	}
	return comparisonElements(b.Title, rows)
}

// subheading returns a heading one level below the section that is open.
func (w *weaver) subheading(text, id string) heading {
	const section = 2
	return heading{level: min(w.level, section) + 1, text: text, id: id}
}

func (w *weaver) worked(b Worked) ([]element, error) {
	s := w.solved[b.Name]
	if len(b.Inputs) == 0 || strings.TrimSpace(b.Title) == "" {
		return nil, errors.New("no Title or no Inputs")
	}
	question, err := w.text("Question", b.Question, s)
	if err != nil {
		return nil, err
	}
	answer, err := w.answer(s, "**Answer.** ")
	if err != nil {
		return nil, err
	}
	listing, err := w.listing(b)
	if err != nil {
		return nil, err
	}
	id := "example-" + b.Name
	elements := []element{w.subheading(b.Title, id), prose{question}, givenGrid(s)}
	elements = append(append(elements, answer...), listing...)
	return []element{section{kind: "example", elements: elements}}, nil
}

// givenGrid returns the inputs with what they may be.
func givenGrid(s *solved) grid {
	g := grid{header: []string{"Given", "Value", "Sensible range", "Name"}, right: make([]bool, 4)}
	for _, p := range s.inputs.inputs {
		r := s.inputs.read[p.Name]
		value, allowed := r.text, r.allowed
		if r.usual != "" {
			value += " (in the chapter: " + r.usual + ")"
		}
		if allowed == "" {
			allowed = "any"
		}
		g.rows = append(g.rows, []string{p.Label, value, allowed, p.Name})
	}
	return g
}

// answer returns what every answered block prints: sentences, findings,
// working, comparison, figure. The sentences follow lead.
func (w *weaver) answer(s *solved, lead string) ([]element, error) {
	a := s.answer
	text, err := w.text("Text of the answer", a.Text, s)
	if err != nil {
		return nil, err
	}
	elements := []element{prose{lead + text}}
	for _, f := range sortedFindings(a.Findings) {
		elements = append(elements, findingBox(f))
	}
	if a.Working != nil {
		elements = append(elements, sheet{a.Working})
	}
	compared, err := checks(s)
	if err != nil {
		return nil, err
	}
	elements = append(elements, compared...)
	if a.Figure.Name != "" || a.Figure.Draw != nil || a.Figure.Bars != nil {
		d, err := w.draw(a.Figure, s)
		if err != nil {
			return nil, fmt.Errorf("figure %q: %w", a.Figure.Name, err)
		}
		elements = append(elements, d)
	}
	return elements, nil
}

func checks(s *solved) ([]element, error) {
	switch {
	case len(s.answer.Checks) == 0:
		return nil, nil
	case s.changed:
		return []element{prose{"The published results are for the inputs of the chapter, so there is no comparison here."}}, nil
	}
	return comparisonElements("Compared with print", s.answer.Checks)
}

// sortedFindings returns a copy of f, worst first.
func sortedFindings(f []working.Finding) []working.Finding {
	f = slices.Clone(f)
	working.Sort(f)
	return f
}

func findingBox(f working.Finding) box {
	word := f.Severity.String()
	return box{
		word: strings.ToUpper(word[:1]) + word[1:],
		text: escape(strings.TrimPrefix(f.String(), word+": ")),
	}
}

// listing returns the source of the solve function and its helpers, and how
// to run it again.
func (w *weaver) listing(b Worked) ([]element, error) {
	solve, err := w.functions.of(b.Solve)
	if err != nil {
		return nil, err
	}
	text, err := solve.printed()
	if err != nil {
		return nil, err
	}
	for _, name := range b.Helpers {
		helper := w.functions[name]
		if helper == nil {
			return nil, &UnknownError{Kind: "function", Name: name, Known: w.functions.names()}
		}
		more, err := helper.printed()
		if err != nil {
			return nil, err
		}
		text += "\n\n" + more
	}
	other := otherInput(b, w.solved[b.Name])
	command := "go run ./book show " + w.chapter.Topic + " -example " + b.Name + " \\\n" +
		"    -set " + other.Input + "=" + strconv.Quote(other.Value)
	return []element{
		prose{"The code that computed it:"}, code{"go", text},
		prose{"To change an input and run it again:"}, code{"sh", command},
	}, nil
}

// otherInput returns a setting of b that gives another answer than s: of the
// first input that has one, and the default of the first where none has.
func otherInput(b Worked, s *solved) Setting {
	for _, p := range b.Inputs {
		for _, value := range s.inputs.read[p.Name].others {
			set := Setting{Input: p.Name, Value: value}
			other, err := solve(b.Solve, b.Inputs, []Setting{set})
			if err == nil && other.changed && other.inputs.read[p.Name].text != s.inputs.read[p.Name].text {
				return set
			}
		}
	}
	return Setting{Input: b.Inputs[0].Name, Value: b.Inputs[0].Default}
}

func (w *weaver) misconception(b Misconception) ([]element, error) {
	s := w.solved[b.Name]
	if strings.TrimSpace(b.Claim) == "" {
		return nil, errors.New("no Claim")
	}
	answer, err := w.answer(s, "")
	if err != nil {
		return nil, err
	}
	if !slices.ContainsFunc(s.answer.Values, func(v Value) bool { return v.number && s.used[v.name] }) {
		return nil, errors.New("its text has no value made by Show")
	}
	claim := prose{"**“" + escape(b.Claim) + "”**"}
	return []element{section{kind: "misconception", elements: append([]element{claim}, answer...)}}, nil
}

func (w *weaver) exercise(b Exercise) ([]element, error) {
	s := w.solved[b.Name]
	text, err := w.text("Question", b.Question, s)
	if err != nil {
		return nil, err
	}
	for _, p := range b.Inputs {
		if !strings.Contains(b.Question, "{{"+p.Name+"}}") {
			return nil, fmt.Errorf("the question does not mention {{%s}}", p.Name)
		}
	}
	answer, err := w.answer(s, "")
	if err != nil {
		return nil, err
	}
	w.exercises++
	number := strconv.Itoa(w.exercises)
	elements := []element{w.subheading("Exercise "+number, "exercise-"+number), prose{text}}
	if w.alone != "" && len(b.Inputs) > 0 { // to change the next of them
		elements = append(elements, givenGrid(s))
	}
	return []element{question{number: number, elements: elements, answer: answer}}, nil
}

// draw draws f; own is the example that it belongs to, if any.
func (w *weaver) draw(f Figure, own *solved) (drawing, error) {
	switch {
	case !plainName.MatchString(f.Name):
		return drawing{}, fmt.Errorf("figure name %q, want lower case letters, digits and _", f.Name)
	case w.figures[f.Name]:
		return drawing{}, errors.New("another figure has the same name")
	case (f.Draw == nil) == (f.Bars == nil):
		return drawing{}, errors.New("want one of Draw and Bars")
	}
	w.figures[f.Name] = true
	caption, err := w.text("Caption", f.Caption, own)
	if err != nil {
		return drawing{}, err
	}
	d := drawing{name: f.Name, folder: "book/" + w.chapter.Topic, caption: caption}
	var chart figure.Chart
	var bars figure.Bars
	if f.Draw != nil {
		if chart, err = f.Draw(); err == nil {
			d.alt = alternative(chart.Title, chart.Description)
			d.svg, err = chart.SVG()
		}
	} else if bars, err = f.Bars(); err == nil {
		d.alt = alternative(bars.Title, bars.Description)
		d.svg, err = bars.SVG()
	}
	if w.alternatives[d.alt] {
		err = errors.Join(err, errors.New("another figure has the same title and description"))
	}
	w.alternatives[d.alt] = true
	return d, err
}

// alternative returns the text for who does not see a figure.
func alternative(title, description string) string {
	return strings.TrimRight(title, ".") + ". " + description
}
