package working

import (
	"slices"
	"strings"
)

// Text returns the sheet as plain text for a terminal or a code block, at
// most 80 columns wide and without a final newline. Numbers stand in a
// formula without units, for its symbols stand for numbers of the units that
// the line below it names. A mistake is shown where it is.
func (s *Sheet) Text() string {
	var parts []string
	if title := oneLine(s.Title()); title != "" {
		lines := wrap("", title)
		rule := 0
		for _, l := range lines {
			rule = max(rule, Columns(l))
		}
		parts = append(parts, strings.Join(append(lines, strings.Repeat("=", rule)), "\n"))
	}
	if s != nil {
		for _, b := range blocks(s.steps) {
			parts = append(parts, strings.Join(b.lines(), "\n"))
		}
	}
	return strings.Join(parts, "\n\n")
}

// A block is the steps that stand together in plain text: the inputs in a
// row, the constants, the look-ups, or one step of another kind.
type block []Step

func blocks(steps []Step) []block {
	var all []block
	for i, st := range steps {
		if i > 0 && st.Kind == steps[i-1].Kind && st.Kind <= LookUpStep {
			last := &all[len(all)-1]
			*last = append(*last, st)
			continue
		}
		all = append(all, block{st})
	}
	return all
}

var tableHeadings = [...]string{GivenStep: "Given", ConstantStep: "Constant", LookUpStep: "Looked up"}

func (b block) lines() []string {
	st := b[0]
	switch st.Kind {
	case FormulaStep:
		return slices.Concat(st.heading(""), st.formulaLines(), st.mistakeLines())
	case TestStep:
		return slices.Concat(st.heading("Test: "), st.testLines(), st.mistakeLines())
	case ChoiceStep:
		return slices.Concat(st.heading("Choice: "), st.choiceLines(), st.mistakeLines())
	}
	lines := []string{tableHeadings[st.Kind]}
	if st.Kind == ConstantStep && len(b) > 1 {
		lines[0] += "s"
	}
	name, value := b.columns()
	for _, st := range b {
		lines = slices.Concat(lines, st.declaration(name, value), st.origin(), st.mistakeLines())
	}
	return lines
}

// heading returns what the step is about.
func (s Step) heading(kind string) []string {
	what := oneLine(s.What)
	if what == "" {
		what = s.Kind.String()
	}
	return wrap(kind, what)
}

// columns returns the widths that the names and the values of b take.
func (b block) columns() (name, value int) {
	for _, st := range b {
		name, value = max(name, Columns(st.label())), max(value, Columns(st.result()))
	}
	return name, value
}

// label returns the name, cut short if a mistake made it too long.
func (s Step) label() string {
	name := []rune(oneLine(s.Name))
	if len(name) > maxName {
		return string(name[:maxName-1]) + "…"
	}
	return string(name)
}

// result returns the value as printed with its unit.
func (s Step) result() string {
	return withUnit(oneLine(s.Printed), oneLine(s.Unit))
}

func withUnit(number, unit string) string {
	switch unit {
	case "1", "":
		return number
	case "°", "′", "″":
		return number + unit
	}
	return number + " " + unit
}

// declaration returns "  L = 4.572 m   length, one way" with padded columns.
func (s Step) declaration(name, value int) []string {
	start := "  " + pad(s.label(), name) + " = "
	what := oneLine(s.What)
	full := start + pad(s.result(), value) + "   "
	const least = 24 // columns that make a column of text worth while
	switch {
	case what == "":
		return wrap(start, s.result())
	case Columns(full)+min(Columns(what), least) > width:
		return append(wrap(start, s.result()), wrap(originIndent, what)...)
	}
	return wrap(full, what)
}

func pad(s string, to int) string { return s + strings.Repeat(" ", max(0, to-Columns(s))) }

const originIndent = "      "

// origin returns where the value of a step comes from.
func (s Step) origin() []string {
	if text := s.cited(); text != "" {
		return wrap(originIndent, text)
	}
	return nil
}

// cited returns the source of the step, and what was looked up in it.
func (s Step) cited() string {
	source, lookup := s.Source.String(), s.Lookup.String()
	if source != "" && lookup != "" {
		return source + "; " + lookup
	}
	return source + lookup
}

// formulaLines returns the formula, the same in numbers, what comes out, and
// the units.
func (s Step) formulaLines() []string {
	start := "  " + s.label() + " = "
	below := strings.Repeat(" ", Columns(start)-2) + "= "
	lines, ok := s.lines()
	if !ok {
		return append(wrap(start, oneLine(s.Formula)), wrap(below, s.result())...)
	}
	var text []string
	for _, e := range lines {
		text = append(text, wrapPieces(start, pieces(e))...)
		start = below
	}
	return slices.Concat(text, wrap(below, s.result()), s.unitLines())
}

// unitLines says in which units the operands are.
func (s Step) unitLines() []string {
	if in := s.operandUnits(); in != "" {
		return wrap("  ", in)
	}
	return nil
}

// operandUnits returns "with I in A; L, D in m", empty if all are plain
// numbers.
func (s Step) operandUnits() string {
	var in, names []string // units, and the names in each
	for _, o := range s.Operands {
		unit := oneLine(o.Unit)
		if unit == "1" || unit == "" {
			continue
		}
		i := slices.Index(in, unit)
		if i < 0 {
			in, names = append(in, unit), append(names, oneLine(o.Name))
			continue
		}
		names[i] += ", " + oneLine(o.Name)
	}
	for i := range names {
		names[i] += " in " + in[i]
	}
	if len(names) == 0 {
		return ""
	}
	return "with " + strings.Join(names, "; ")
}

// testLines returns the comparison, the same in numbers, whether it holds,
// and the units.
func (s Step) testLines() []string {
	lines, ok := s.lines()
	if !ok {
		return append(wrap("  ", oneLine(s.Formula)), "  "+s.outcome())
	}
	var text []string
	for i, e := range lines {
		p := pieces(e)
		if i == len(lines)-1 {
			p = append(p, piece{text: s.outcome()})
		}
		text = append(text, wrapPieces("  ", p)...)
	}
	return append(text, s.unitLines()...)
}

func (s Step) choiceLines() []string {
	lines := wrap("  ", oneLine(s.Chosen))
	if why := oneLine(s.Why); why != "" {
		lines = append(lines, wrap(originIndent, why)...)
	}
	return append(lines, s.origin()...)
}

func (s Step) mistakeLines() []string {
	if reason := s.mistake(); reason != "" {
		return wrap(originIndent, reason)
	}
	return nil
}

// mistake returns the error of the step in words for the reader.
func (s Step) mistake() string {
	if s.Err == nil {
		return ""
	}
	return "MISTAKE: " + oneLine(s.Err.Error())
}
