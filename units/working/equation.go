package working

import "strings"

// An equation is a step as typeset mathematics: a left side and what it
// equals, line by line. A test has no left side, and its lines are
// comparisons.
type equation struct {
	name   string
	lines  []expr
	result expr   // the number at the end, nil for none
	unit   string // of the result
}

// equation returns the step as mathematics; ok is false where there is none.
func (s Step) equation() (q equation, ok bool) {
	if s.Kind <= FormulaStep && reasonAgainstName(s.Name) != "" {
		return q, false
	}
	switch s.Kind {
	case GivenStep, ConstantStep, LookUpStep:
		q = equation{name: s.Name, unit: s.Unit}
		q.result, ok = printedNumber(s.Printed)
		return q, ok
	case FormulaStep:
		q = equation{name: s.Name, unit: s.Unit}
		q.result, _ = printedNumber(s.Printed)
		q.lines, ok = s.lines()
	case TestStep:
		q.lines, ok = s.lines()
	}
	return q, ok
}

// LaTeX returns the step as LaTeX mathematics without delimiters: the
// symbol, the formula, the same in numbers and the result, aligned. It is
// empty for a choice, and where there is nothing that can be read.
func (s Step) LaTeX() string {
	q, ok := s.equation()
	if !ok {
		return ""
	}
	var rows []string
	for _, e := range q.lines {
		rows = append(rows, latexOf(e))
	}
	if q.result != nil {
		rows = append(rows, latexOf(q.result)+latexUnit(q.unit))
	}
	left, join := "", ""
	if q.name != "" {
		left, join = latexSymbol(q.name)+" ", "= "
	}
	if len(rows) == 1 {
		return left + join + rows[0]
	}
	return "\\begin{aligned}\n" + left + "& " + join + strings.Join(rows, " \\\\\n& "+join) + "\n\\end{aligned}"
}

// MathML returns the step as a MathML Core element, a row for each line of
// [Step.LaTeX], and empty where that is.
func (s Step) MathML() string {
	q, ok := s.equation()
	if !ok {
		return ""
	}
	var rows []string
	for _, e := range q.lines {
		rows = append(rows, mathMLOf(e))
	}
	if q.result != nil {
		rows = append(rows, mathMLOf(q.result)+mathUnit(q.unit))
	}
	var b mathSetter
	b.put(mathOpen, `<mtable displaystyle="true">`)
	for i, row := range rows {
		b.put("<mtr>")
		if q.name != "" {
			b.put(cellRight)
			if i == 0 {
				b.symbol(q.name)
			}
			b.put("</mtd><mtd><mo>=</mo></mtd>")
		}
		b.put(cellLeft, row, "</mtd></mtr>")
	}
	b.put("</mtable>", mathClose)
	return b.String()
}

// MathML Core leaves the alignment of cells to style sheets.
const (
	cellRight = `<mtd style="text-align:right">`
	cellLeft  = `<mtd style="text-align:left">`
)

// LaTeX returns step i, counted from 0, as [Step.LaTeX] does; empty if there
// is none.
func (s *Sheet) LaTeX(i int) string { return s.step(i).LaTeX() }

// MathML returns step i, counted from 0, as [Step.MathML] does; empty if
// there is none.
func (s *Sheet) MathML(i int) string { return s.step(i).MathML() }

// step returns step i, or one that shows nothing.
func (s *Sheet) step(i int) Step {
	if s == nil || i < 0 || i >= len(s.steps) {
		return Step{Kind: ChoiceStep}
	}
	return s.steps[i]
}
