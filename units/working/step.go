package working

import "strings"

// A Kind is what a [Step] does.
type Kind uint8

// The kinds of steps.
const (
	GivenStep    Kind = iota // an input, as the calculation used it
	ConstantStep             // a cited constant
	LookUpStep               // a value from a table
	FormulaStep              // a computed value
	ChoiceStep               // what was chosen, and by which rule
	TestStep                 // a comparison
)

var kindWords = []string{"given", "constant", "look-up", "formula", "choice", "test"}

// String returns "given", "constant", "look-up", "formula", "choice" or
// "test".
func (k Kind) String() string { return wordFor(kindWords, uint8(k), "Kind") }

// A Step is one step of a [Sheet]. It is complete: what a formula needs of
// earlier steps stands in its operands.
type Step struct {
	Kind Kind   // what it does
	Name string // the symbol declared; empty for a choice and a test
	What string // in words

	Unit       string  // of Value, as package units writes it; "1" for a plain number
	Value      float64 // not rounded, in Unit
	Printed    string  // Value as printed, without the unit
	Resolution float64 // one unit of the last digit that Printed stands for, trimmed zeros counted, in Unit

	Formula  string    // of a formula or a test, as it was written
	Operands []Operand // of a formula or a test, in order of appearance

	Source Source // of a constant, a look-up or a choice
	Lookup Lookup // of a look-up

	Chosen string // of a choice
	Why    string // of a choice

	Left, Right string // both sides of a test, as printed
	Holds       bool   // whether it holds

	Err error // the mistake in this step, nil if there is none
}

// An Operand is a symbol of a formula with the number put in for it.
type Operand struct {
	Name    string  // the symbol
	Unit    string  // of Value
	Value   float64 // not rounded, in Unit
	Printed string  // Value as put in, with guard digits
}

// A Lookup says where a value was found.
type Lookup struct {
	Source  Source // the table
	Key     string // what was looked up, such as "10 AWG"
	Row     string // the row used, such as "30 A"; empty if it is the key
	Between string // the rows interpolated between, such as "20 °C and 25 °C"; empty if none
}

// String returns "for 10 AWG, row 30 A, between 20 °C and 25 °C", as far as
// it is given.
func (l Lookup) String() string {
	var parts []string
	for _, p := range [...]struct{ word, text string }{{"for ", l.Key}, {"row ", l.Row}, {"between ", l.Between}} {
		if text := oneLine(p.text); text != "" {
			parts = append(parts, p.word+text)
		}
	}
	return strings.Join(parts, ", ")
}

// parsed returns the formula of the step and the same with the printed
// operands in it; ok is false if it cannot be read, or is a comparison where
// a formula is wanted or the reverse.
func (s Step) parsed() (symbols, numbers expr, ok bool) {
	f, err := ParseFormula(s.Formula)
	if err != nil || f.IsComparison() != (s.Kind == TestStep) {
		return nil, nil, false
	}
	return f.root, substitute(f.root, s.Operands), true
}

// lines returns what is shown of a formula or a test, line by line: in
// symbols, in numbers where there are any, and what both sides of a test come
// to where they are more than a number each.
func (s Step) lines() (lines []expr, ok bool) {
	symbols, numbers, ok := s.parsed()
	if !ok {
		return nil, false
	}
	lines = []expr{symbols}
	if len(s.Operands) > 0 {
		lines = append(lines, numbers)
	}
	comparison, isTest := numbers.(binary)
	if s.Kind != TestStep || !isTest {
		return lines, true
	}
	x, okX := printedNumber(s.Left)
	y, okY := printedNumber(s.Right)
	sides := expr(binary{op: comparison.op, x: x, y: y})
	switch {
	case !okX || !okY:
	case isPlain(comparison.x) && isPlain(comparison.y):
		lines[len(lines)-1] = sides
	default:
		lines = append(lines, sides)
	}
	return lines, true
}

// isPlain reports whether e is one number.
func isPlain(e expr) bool {
	if n, ok := e.(negation); ok {
		e = n.x
	}
	_, ok := e.(number)
	return ok
}

// outcome says in words whether the test holds.
func (s Step) outcome() string {
	if s.Holds {
		return "holds"
	}
	return "does not hold"
}
