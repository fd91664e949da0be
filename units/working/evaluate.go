package working

import (
	"math"

	"example.com/drawbar/units"
)

// Evaluate returns the value of a formula with values for its names. Names
// that do not occur in it are no harm. A formula that cannot be read, a
// comparison, a name without a value or with one that is not finite, a
// division by zero, a function outside its domain, and a result too large are
// errors of concrete type [*FormulaError].
func Evaluate(formula string, values map[string]float64) (float64, error) {
	f, err := ParseFormula(formula)
	if err != nil {
		return 0, err
	}
	return f.Evaluate(values)
}

// Holds reports whether a comparison holds, both sides settled as by
// [units.Compare], with values for its names. The errors are those of
// [Evaluate]; a formula that compares nothing is one.
func Holds(comparison string, values map[string]float64) (bool, error) {
	f, err := ParseFormula(comparison)
	if err != nil {
		return false, err
	}
	return f.Holds(values)
}

// Evaluate is [Evaluate] for a formula already read. It allocates only for
// an error.
func (f Formula) Evaluate(values map[string]float64) (float64, error) {
	switch {
	case f.root == nil:
		return 0, f.fail(0, units.ErrSyntax, "empty; write a formula")
	case f.IsComparison():
		return 0, f.fail(0, units.ErrSyntax, "a comparison has no value; write it as a test")
	}
	x, err := f.value(f.root, values)
	if err != nil {
		return 0, err
	}
	return x, nil
}

// Holds is [Holds] for a comparison already read. It allocates only for an
// error.
func (f Formula) Holds(values map[string]float64) (bool, error) {
	op, x, y, err := f.sides(values)
	if err != nil {
		return false, err
	}
	return op.holds(x, y), nil
}

// sides returns the operator and both sides of a comparison.
func (f Formula) sides(values map[string]float64) (op operator, x, y float64, err error) {
	b, ok := f.root.(binary)
	if !ok || !b.op.isComparison() {
		return 0, 0, 0, f.fail(0, units.ErrSyntax, "nothing is compared; write < <= > >= == or != once")
	}
	x, failed := f.value(b.x, values)
	if failed == nil {
		y, failed = f.value(b.y, values)
	}
	if failed != nil {
		return 0, 0, 0, failed
	}
	return b.op, x, y, nil
}

// holds compares settled numbers.
func (o operator) holds(x, y float64) bool {
	switch c := units.Compare(x, y); o {
	case less:
		return c < 0
	case lessEqual:
		return c <= 0
	case greater:
		return c > 0
	case greaterEqual:
		return c >= 0
	case equal:
		return c == 0
	default:
		return c != 0
	}
}

// value returns the finite value of e. Every operation is a statement of its
// own, so that no processor fuses two.
func (f Formula) value(e expr, values map[string]float64) (float64, *FormulaError) {
	switch e := e.(type) {
	case number:
		return e.value, nil
	case constant:
		return e.value(), nil
	case name:
		x, ok := values[e.text]
		switch {
		case !ok:
			return 0, f.fail(e.at, units.ErrRange, e.text+" has no value")
		case !finite(x):
			return 0, f.fail(e.at, units.ErrRange, e.text+" is not a finite number")
		}
		return x, nil
	case negation:
		x, err := f.value(e.x, values)
		return -x, err
	case binary:
		return f.operation(e, values)
	default:
		return f.application(e.(call), values)
	}
}

func (k constant) value() float64 {
	switch k {
	case pct:
		return 0.01
	case deg:
		return math.Pi / 180
	}
	return math.Pi
}

func (f Formula) operation(b binary, values map[string]float64) (float64, *FormulaError) {
	x, err := f.value(b.x, values)
	if err != nil {
		return 0, err
	}
	y, err := f.value(b.y, values)
	if err != nil {
		return 0, err
	}
	var z float64
	switch b.op {
	case add:
		z = x + y
	case sub:
		z = x - y
	case mul:
		z = x * y
	default: // div; comparisons are not inside a formula
		if y == 0 {
			return 0, f.fail(b.at, units.ErrRange, "division by zero")
		}
		z = x / y
	}
	if !finite(z) {
		return 0, f.fail(b.at, units.ErrRange, "too large a number")
	}
	return z, nil
}

func (f Formula) application(c call, values map[string]float64) (float64, *FormulaError) {
	x, err := f.value(c.args[0], values)
	if err != nil {
		return 0, err
	}
	if len(c.args) == 1 {
		return f.applied(c, x, 0)
	}
	for _, a := range c.args[1:] {
		y, err := f.value(a, values)
		if err != nil {
			return 0, err
		}
		if x, err = f.applied(c, x, y); err != nil {
			return 0, err
		}
	}
	return x, nil
}

// applied returns the function of c at x, and at y if it takes two.
func (f Formula) applied(c call, x, y float64) (float64, *FormulaError) {
	z := c.fn.apply(x, y)
	if finite(z) {
		return z, nil
	}
	at := units.Significant(x, shownDigits)
	if len(c.args) > 1 {
		at += ", " + units.Significant(y, shownDigits)
	}
	return 0, f.fail(c.at, units.ErrRange, c.fn.String()+"("+at+") is not a finite number")
}

func finite(x float64) bool { return x-x == 0 }
