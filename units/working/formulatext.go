package working

import (
	"strings"
)

// A piece is a stretch of a shown formula that is not broken across lines.
// All but the first begin with the operator that joins them, or stand behind
// the comma of an argument.
type piece struct {
	text  string
	depth int // how deep in the formula a line would break in front of it
}

// textOperators are the operators as a reader knows them.
var textOperators = [...]string{add: "+", sub: "-", mul: "·", div: "/", less: "<",
	lessEqual: "≤", greater: ">", greaterEqual: "≥", equal: "=", notEqual: "≠"}

// A textWriter writes a formula in plain text.
type textWriter struct {
	pieces []piece
	nested int // brackets around the place where it writes
}

// pieces returns the pieces of e.
func pieces(e expr) []piece {
	w := textWriter{pieces: make([]piece, 1, 8)}
	w.write(e)
	return w.pieces
}

// joined returns the pieces in one line.
func joined(p []piece) string {
	texts := make([]string, len(p))
	for i := range p {
		texts[i] = p[i].text
	}
	return strings.Join(texts, " ")
}

// put appends to the last piece.
func (w *textWriter) put(s string) { w.pieces[len(w.pieces)-1].text += s }

// part begins a new piece at a joint of the given strength.
func (w *textWriter) part(strength int) {
	w.pieces = append(w.pieces, piece{depth: w.nested*closed + strength})
}

func (w *textWriter) write(e expr) {
	if n, sign, ok := scaled(e); ok {
		w.put(n.text + scaleText(sign))
		return
	}
	switch e := e.(type) {
	case number:
		w.put(e.text)
	case constant:
		w.put("π") // pct and deg are scaled
	case name:
		w.put(e.text)
	case negation:
		w.put("-")
		w.operand(e.x, multiplying, true)
	case binary:
		w.operand(e.x, e.op.strength(), false)
		w.part(e.op.strength())
		w.put(textOperators[e.op] + " ")
		w.operand(e.y, e.op.strength()+1, true)
	case call:
		w.call(e)
	}
}

func scaleText(sign constant) string {
	if sign == deg {
		return "°"
	}
	return " %"
}

// operand writes e, in brackets where they are needed.
func (w *textWriter) operand(e expr, required int, behind bool) {
	if needsBrackets(e, required, behind, inLine) {
		w.bracket("(", e)
		return
	}
	w.write(e)
}

// bracket writes open, which ends in a parenthesis, then the arguments.
func (w *textWriter) bracket(open string, args ...expr) {
	w.put(open)
	w.nested++
	for i, a := range args {
		if i > 0 {
			w.put(",")
			w.part(comparing)
		}
		w.write(a)
	}
	w.nested--
	w.put(")")
}

func (w *textWriter) call(c call) {
	switch c.fn {
	case pow:
		w.power(c.args[0], c.args[1])
	case sqrt:
		w.bracket("√(", c.args...)
	default:
		w.bracket(c.fn.String()+"(", c.args...)
	}
}

// power writes x to the y: a whole number as a superscript, anything else
// behind ^.
func (w *textWriter) power(x, y expr) {
	if isBase(x) {
		w.write(x)
	} else {
		w.bracket("(", x)
	}
	if s, ok := superscript(y); ok {
		w.put(s)
		return
	}
	w.put("^")
	if isBase(y) {
		w.write(y)
		return
	}
	w.bracket("(", y)
}

// superscript returns e as superscript digits if it is a whole number.
func superscript(e expr) (string, bool) {
	minus := ""
	if n, ok := e.(negation); ok {
		minus, e = "⁻", n.x
	}
	n, ok := e.(number)
	if !ok || strings.Trim(n.text, "0123456789") != "" {
		return "", false
	}
	return minus + superscripts.Replace(n.text), true
}

var superscripts = strings.NewReplacer("0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
	"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
