package working

import (
	"strconv"
	"strings"
)

// An expr is a node of a formula. The set is closed: number, constant, name,
// negation, binary, call.
type expr interface{ expr() }

type (
	// A number is a decimal that is not negative.
	number struct {
		text  string // as written, and as it is shown
		value float64
	}
	// A constant is pi, pct or deg.
	constant byte
	// A name is a symbol that the sheet declares.
	name struct {
		text string
		at   int // offset in the formula
	}
	negation struct{ x expr }
	binary   struct {
		op   operator
		at   int // offset of the operator
		x, y expr
	}
	call struct {
		fn   function
		at   int
		args []expr
	}
)

func (number) expr()   {}
func (constant) expr() {}
func (name) expr()     {}
func (negation) expr() {}
func (binary) expr()   {}
func (call) expr()     {}

const (
	pi constant = iota
	pct
	deg
)

var constantNames = [...]string{pi: "pi", pct: "pct", deg: "deg"}

// An operator joins two operands. The comparisons come last.
type operator byte

const (
	add operator = iota
	sub
	mul
	div
	less
	lessEqual
	greater
	greaterEqual
	equal
	notEqual
)

var operatorNames = [...]string{add: "+", sub: "-", mul: "*", div: "/", less: "<",
	lessEqual: "<=", greater: ">", greaterEqual: ">=", equal: "==", notEqual: "!="}

func (o operator) isComparison() bool { return o >= less }

// How strongly a node holds together, in every notation.
const (
	comparing = iota
	adding
	multiplying
	closed // a number, a name, a call, anything in brackets
)

// strength returns how strongly o holds its operands together.
func (o operator) strength() int {
	switch {
	case o.isComparison():
		return comparing
	case o <= sub:
		return adding
	}
	return multiplying
}

// goSyntax appends e as a Go expression that is read back as the same tree.
func goSyntax(b *strings.Builder, e expr) {
	switch e := e.(type) {
	case number:
		b.WriteString(e.text)
	case constant:
		b.WriteString(constantNames[e])
	case name:
		b.WriteString(e.text)
	case negation:
		b.WriteByte('-')
		goOperand(b, e.x, closed)
	case binary:
		goOperand(b, e.x, e.op.strength())
		b.WriteString(" " + operatorNames[e.op] + " ")
		goOperand(b, e.y, e.op.strength()+1)
	case call:
		b.WriteString(e.fn.String())
		b.WriteByte('(')
		for i, a := range e.args {
			if i > 0 {
				b.WriteString(", ")
			}
			goSyntax(b, a)
		}
		b.WriteByte(')')
	}
}

// goOperand appends e, in parentheses unless it holds as strongly as
// required.
func goOperand(b *strings.Builder, e expr, required int) {
	_, isNegation := e.(negation)
	inner, isBinary := e.(binary)
	switch {
	case isNegation && required == closed, isBinary && inner.op.strength() < required:
		b.WriteByte('(')
		goSyntax(b, e)
		b.WriteByte(')')
	default:
		goSyntax(b, e)
	}
}

// scaled returns the number n and the sign of a product n*pct or n*deg,
// which is written as one: 5 %, 30°. A bare pct or deg is 1 % or 1°.
func scaled(e expr) (n number, sign constant, ok bool) {
	one := number{"1", 1}
	switch e := e.(type) {
	case constant:
		return one, e, e != pi
	case binary:
		c, isConstant := e.y.(constant)
		n, isNumber := e.x.(number)
		return n, c, e.op == mul && isConstant && c != pi && isNumber
	}
	return n, sign, false
}

// printedNumber returns the tree of a number as package units prints it.
func printedNumber(text string) (expr, bool) {
	digits, negative := strings.CutPrefix(text, "-")
	if reasonAgainst(digits) != "" {
		return nil, false
	}
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return nil, false
	}
	if negative {
		return negation{number{digits, x}}, true
	}
	return number{digits, x}, true
}

// substitute returns e with the printed values of ops in place of its names.
// A name without one stays.
func substitute(e expr, ops []Operand) expr {
	switch e := e.(type) {
	case name:
		for _, o := range ops {
			if o.Name == e.text {
				if n, ok := printedNumber(o.Printed); ok {
					return n
				}
			}
		}
	case negation:
		return negation{substitute(e.x, ops)}
	case binary:
		e.x, e.y = substitute(e.x, ops), substitute(e.y, ops)
		return e
	case call:
		args := make([]expr, len(e.args))
		for i, a := range e.args {
			args[i] = substitute(a, ops)
		}
		e.args = args
		return e
	}
	return e
}
