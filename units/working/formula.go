package working

import (
	"slices"
	"strconv"
	"strings"
)

// A Formula is an expression in the cut-down Go syntax of the package
// comment, read by [ParseFormula]. The zero Formula is empty: it has no
// names and every evaluation of it fails.
type Formula struct {
	_    [0]func() // not comparable: compare the strings
	text string
	root expr
}

// A FormulaError reports a formula that cannot be read or computed.
type FormulaError struct {
	Formula string // the whole of it
	Offset  int    // where in it, in bytes
	Reason  string // in a few words, with what to write instead
	Cause   error  // [units.ErrSyntax] if it cannot be read, [units.ErrRange] if it cannot be computed
}

// Error returns `formula "a ^ 2", at "^ 2": ^ is not a power; write pow(x, y)`
// and the like.
func (e *FormulaError) Error() string {
	at := "the end"
	if 0 <= e.Offset && e.Offset < len(e.Formula) {
		at = strconv.Quote(clip(e.Formula[e.Offset:]))
	}
	return "formula " + strconv.Quote(clip(e.Formula)) + ", at " + at + ": " + e.Reason
}

// Unwrap returns Cause.
func (e *FormulaError) Unwrap() error { return e.Cause }

// clip returns the beginning of s if it is long.
func clip(s string) string {
	const most = 80
	runes := 0
	for i := range s {
		if runes++; runes > most {
			return s[:i] + "…"
		}
	}
	return s
}

func (f Formula) fail(at int, cause error, reason string) *FormulaError {
	return &FormulaError{Formula: f.text, Offset: at, Reason: reason, Cause: cause}
}

// String returns the formula in Go syntax, which is read back as the same
// tree. Parentheses that change nothing are gone.
func (f Formula) String() string {
	if f.root == nil {
		return ""
	}
	var b strings.Builder
	goSyntax(&b, f.root)
	return b.String()
}

// Text returns the formula as it is shown in plain text: "m · v² / 2".
func (f Formula) Text() string {
	if f.root == nil {
		return ""
	}
	return joined(pieces(f.root))
}

// LaTeX returns the formula as LaTeX mathematics, without delimiters.
func (f Formula) LaTeX() string {
	if f.root == nil {
		return ""
	}
	return latexOf(f.root)
}

// MathML returns the formula as a MathML Core element, display style.
func (f Formula) MathML() string {
	if f.root == nil {
		return ""
	}
	return mathOpen + mathMLOf(f.root) + mathClose
}

// IsComparison reports whether f compares two numbers.
func (f Formula) IsComparison() bool {
	b, ok := f.root.(binary)
	return ok && b.op.isComparison()
}

// Names returns the symbols of f, each once, in order of appearance.
func (f Formula) Names() []string {
	var names []string
	eachName(f.root, func(n name) {
		if !slices.Contains(names, n.text) {
			names = append(names, n.text)
		}
	})
	return names
}

// eachName calls do for every name in e, from left to right.
func eachName(e expr, do func(name)) {
	switch e := e.(type) {
	case name:
		do(e)
	case negation:
		eachName(e.x, do)
	case binary:
		eachName(e.x, do)
		eachName(e.y, do)
	case call:
		for _, a := range e.args {
			eachName(a, do)
		}
	}
}
