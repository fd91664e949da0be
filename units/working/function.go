package working

import (
	"math"

	"example.com/drawbar/units"
)

// A function is one of those that a formula may call.
type function byte

const (
	pow function = iota
	sqrt
	exp
	ln
	log10
	sin
	cos
	tan
	asin
	acos
	atan
	minimum
	maximum
	abs
	floor
	ceil
)

// many is the number of arguments of a function that takes two or more.
const many = -2

var functions = [...]struct {
	name  string
	args  int
	latex string // the command in front of the bracketed arguments, if that is how it is set
}{
	pow: {"pow", 2, ""}, sqrt: {"sqrt", 1, ""},
	exp: {"exp", 1, `\exp`}, ln: {"ln", 1, `\ln`}, log10: {"log10", 1, `\log_{10}`},
	sin: {"sin", 1, `\sin`}, cos: {"cos", 1, `\cos`}, tan: {"tan", 1, `\tan`},
	asin: {"asin", 1, `\arcsin`}, acos: {"acos", 1, `\arccos`}, atan: {"atan", 1, `\arctan`},
	minimum: {"min", many, `\min`}, maximum: {"max", many, `\max`},
	abs: {"abs", 1, ""}, floor: {"floor", 1, ""}, ceil: {"ceil", 1, ""},
}

// String returns the name as it is written in a formula.
func (f function) String() string { return functions[f].name }

// functionNamed returns the function written s.
func functionNamed(s string) (function, bool) {
	for f := range functions {
		if functions[f].name == s {
			return function(f), true
		}
	}
	return 0, false
}

// apply returns the value of f, NaN outside its domain. Rounding up or down
// looks at the settled number, so that 15.000000000000002 rounds up to 15.
func (f function) apply(x, y float64) float64 {
	switch f {
	case pow:
		return math.Pow(x, y)
	case sqrt:
		return math.Sqrt(x)
	case exp:
		return math.Exp(x)
	case ln:
		return math.Log(x)
	case log10:
		return math.Log10(x)
	case sin:
		return math.Sin(x)
	case cos:
		return math.Cos(x)
	case tan:
		return math.Tan(x)
	case asin:
		return math.Asin(x)
	case acos:
		return math.Acos(x)
	case atan:
		return math.Atan(x)
	case minimum:
		return min(x, y)
	case maximum:
		return max(x, y)
	case abs:
		return math.Abs(x)
	case floor:
		return math.Floor(units.Settle(x))
	default: // ceil
		return math.Ceil(units.Settle(x))
	}
}
