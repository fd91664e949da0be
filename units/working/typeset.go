package working

// A setter is a notation with fraction bars and superscripts. The calls come
// in reading order; what is inside something is written by the function
// given.
type setter interface {
	number(text string)
	scale(sign constant) // % or ° behind a number
	pi()
	symbol(name string)
	operator(o operator)
	minus() // in front
	function(f function)
	comma()
	fence(f fence, inside func())
	fraction(x, y func())
	power(x, y func())
	root(x func())
}

// A fence is a pair of brackets.
type fence byte

const (
	round    fence = iota
	absolute       // the size of a number
	lower          // rounded down
	upper          // rounded up
)

// typeset writes e to s.
func typeset(s setter, e expr) {
	if n, sign, ok := scaled(e); ok {
		s.number(n.text)
		s.scale(sign)
		return
	}
	switch e := e.(type) {
	case number:
		s.number(e.text)
	case constant:
		s.pi() // pct and deg are scaled
	case name:
		s.symbol(e.text)
	case negation:
		s.minus()
		typesetOperand(s, e.x, multiplying, true)
	case binary:
		if e.op == div {
			s.fraction(func() { typeset(s, e.x) }, func() { typeset(s, e.y) })
			return
		}
		typesetOperand(s, e.x, e.op.strength(), false)
		s.operator(e.op)
		typesetOperand(s, e.y, e.op.strength()+1, true)
	case call:
		typesetCall(s, e)
	}
}

// typesetOperand writes e, in brackets where they are needed.
func typesetOperand(s setter, e expr, required int, behind bool) {
	if needsBrackets(e, required, behind, stacked) {
		s.fence(round, func() { typeset(s, e) })
		return
	}
	typeset(s, e)
}

func typesetCall(s setter, c call) {
	inside := func() {
		for i, a := range c.args {
			if i > 0 {
				s.comma()
			}
			typeset(s, a)
		}
	}
	switch c.fn {
	case pow:
		s.power(func() { typesetBase(s, c.args[0]) }, func() { typeset(s, c.args[1]) })
	case sqrt:
		s.root(inside)
	case abs:
		s.fence(absolute, inside)
	case floor:
		s.fence(lower, inside)
	case ceil:
		s.fence(upper, inside)
	default:
		s.function(c.fn)
		s.fence(round, inside)
	}
}

func typesetBase(s setter, e expr) {
	if isBase(e) {
		typeset(s, e)
		return
	}
	s.fence(round, func() { typeset(s, e) })
}
