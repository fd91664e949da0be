package working

import "strings"

// A notation decides where brackets are needed.
type notation bool

const (
	inLine  notation = false // a / b
	stacked notation = true  // a fraction bar
)

// needsBrackets reports whether e, shown as an operand, needs brackets to be
// read as what it is: it must hold as strongly as required, and behind an
// operator or a minus it must not begin with a minus. A minus in front of a
// product needs none: -a·b is the same either way.
func needsBrackets(e expr, required int, behind bool, n notation) bool {
	return strength(e, n) < required || behind && required > adding && leadsWithMinus(e, n)
}

// strength returns how strongly e holds together as it is shown.
func strength(e expr, n notation) int {
	if _, _, ok := scaled(e); ok {
		return closed
	}
	switch e := e.(type) {
	case negation:
		return multiplying
	case binary:
		if e.op == div && n == stacked {
			return closed
		}
		return e.op.strength()
	}
	return closed
}

// leadsWithMinus reports whether e is shown with a minus in front.
func leadsWithMinus(e expr, n notation) bool {
	if isMinus(e) {
		return true
	}
	b, ok := e.(binary)
	return ok && !(b.op == div && n == stacked) &&
		!needsBrackets(b.x, b.op.strength(), false, n) && leadsWithMinus(b.x, n)
}

func isMinus(e expr) bool {
	_, ok := e.(negation)
	return ok
}

// isBase reports whether e carries an exponent without brackets.
func isBase(e expr) bool {
	switch e := e.(type) {
	case number:
		return !strings.Contains(e.text, "e")
	case name:
		return true
	case constant:
		return e == pi
	case call:
		return e.fn == abs || e.fn == floor || e.fn == ceil
	}
	return false
}
