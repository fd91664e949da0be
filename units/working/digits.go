package working

import (
	"math"
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// How many significant digits are printed.
const (
	resultDigits = 4 // of a computed value
	shownDigits  = 6 // of a value that comes from outside, and at least of an operand
	guardDigits  = 2 // that an operand has more than the result, at least
	mostDigits   = 9 // all that package units tells apart
)

// What a formula must give back.
const (
	// exactness is how far a formula may be from the value that the
	// calculator returned, as a part of it.
	exactness = 1e-9
	// noise is how far float64 arithmetic in another order may move an
	// operand, generously. It matters where operands cancel.
	noise = 1e-12
	// resolved is the smallest part of an operand that mostDigits resolve.
	resolved = 1e-8
)

// printSignificant returns x with so many significant digits. Zeros at the
// end are kept where x goes on beyond them, and left out where x is that
// short number: 0.04760 and 2.5.
func printSignificant(x float64, digits int) string {
	text := units.Significant(x, digits)
	if short, err := strconv.ParseFloat(text, 64); err != nil || units.Compare(short, x) == 0 {
		return text
	}
	mantissa, exponent, hasExponent := strings.Cut(text, "e")
	missing := digits - len(strings.TrimLeft(strings.ReplaceAll(mantissa, ".", ""), "-0"))
	if missing > 0 {
		if !strings.Contains(mantissa, ".") {
			mantissa += "."
		}
		mantissa += strings.Repeat("0", missing)
	}
	if hasExponent {
		return mantissa + "e" + exponent
	}
	return mantissa
}

// lastDigit returns one unit of the last of so many significant digits of x,
// 0 for 0.
func lastDigit(x float64, digits int) float64 {
	rounded, err := strconv.ParseFloat(units.Significant(x, digits), 64)
	if err != nil || rounded == 0 || !finite(rounded) {
		return 0
	}
	_, exponent, _ := strings.Cut(strconv.FormatFloat(rounded, 'e', -1, 64), "e")
	first, _ := strconv.Atoi(exponent) // FormatFloat wrote it
	unit, _ := strconv.ParseFloat("1e"+strconv.Itoa(first-digits+1), 64)
	return unit
}

// spread returns how far f moves from its value at, at most, when each
// operand moves by a part of itself.
func (st *Step) spread(f Formula, at, part float64) float64 {
	values := st.values()
	sum := 0.0
	for _, o := range st.Operands {
		widest := 0.0
		for _, moved := range [...]float64{o.Value * (1 + part), o.Value * (1 - part)} {
			values[o.Name] = moved
			if y, err := f.Evaluate(values); err == nil {
				widest = max(widest, math.Abs(y-at))
			}
		}
		values[o.Name] = o.Value
		sum += widest
	}
	return sum
}

// reproduces reports whether got, which f gives, is the value of the step,
// save for rounding in another order. A value of exactly 0 may be a
// difference of operands that settle to the same number ([units.Minus]).
func (st *Step) reproduces(f Formula, got float64) bool {
	part := noise
	if st.Value == 0 {
		part = resolved
	}
	off := math.Abs(got - st.Value)
	return off <= exactness*math.Abs(st.Value) || off <= st.spread(f, got, part)
}

// printFormula fills in the printed digits of a formula step: as many of the
// result, and as few of the operands, as let a reader who puts the printed
// operands into the formula arrive at the printed result. It reports whether
// that is possible.
func (st *Step) printFormula(f Formula) bool {
	for digits := resultDigits; digits > 0; digits-- {
		st.Printed = printSignificant(st.Value, digits)
		st.Resolution = lastDigit(st.Value, digits)
		if st.Value == 0 {
			st.Resolution = st.spread(f, st.Value, resolved)
		}
		guard := max(shownDigits, digits+guardDigits)
		if digits < resultDigits {
			guard = mostDigits // fewer were too few for a longer result
		}
		for ; guard <= mostDigits; guard++ {
			st.printOperands(guard)
			if st.printedAgrees(f) {
				return true
			}
		}
	}
	return st.printCancelled(f)
}

// printCancelled is printFormula where operands cancel to less than a digit of
// the result: that is printed to the power of ten that nine digits of the
// operands resolve, which can be above the result itself. Operands that print
// alike leave only noise, and are refused.
func (st *Step) printCancelled(f Formula) bool {
	st.printOperands(mostDigits)
	left, err := f.Evaluate(st.printedValues())
	resolution := math.Pow(10, math.Ceil(math.Log10(st.spread(f, st.Value, resolved))))
	steps := math.Round(st.Value / resolution)
	if err != nil || left == 0 || !(math.Abs(steps) < 10) {
		return false
	}
	st.Resolution, st.Printed = resolution, printSignificant(steps*resolution, 1)
	return st.printedAgrees(f)
}

// values returns the operands, not rounded.
func (st *Step) values() map[string]float64 {
	values := make(map[string]float64, len(st.Operands))
	for _, o := range st.Operands {
		values[o.Name] = o.Value
	}
	return values
}

// printOperands prints every operand with so many significant digits.
func (st *Step) printOperands(digits int) {
	for i := range st.Operands {
		o := &st.Operands[i]
		o.Printed = units.Significant(o.Value, digits)
	}
}

// printedValues returns the operands as printed.
func (st *Step) printedValues() map[string]float64 {
	values := make(map[string]float64, len(st.Operands))
	for _, o := range st.Operands {
		x, err := strconv.ParseFloat(o.Printed, 64)
		if err == nil {
			values[o.Name] = x
		}
	}
	return values
}

// printedAgrees reports whether f, on the operands as printed, gives the
// result as printed within one unit of its last digit.
func (st *Step) printedAgrees(f Formula) bool {
	got, err := f.Evaluate(st.printedValues())
	if err != nil {
		return false
	}
	printed, err := strconv.ParseFloat(st.Printed, 64)
	return err == nil && !units.Exceeds(math.Abs(got-printed), st.Resolution)
}

// printTest fills in the printed digits of a test step, as few as show what
// the comparison decides.
func (st *Step) printTest(f Formula, o operator, x, y float64) {
	for digits := resultDigits; digits <= mostDigits; digits++ {
		st.Left, st.Right = units.Significant(x, digits), units.Significant(y, digits)
		a, errA := strconv.ParseFloat(st.Left, 64)
		b, errB := strconv.ParseFloat(st.Right, 64)
		if errA == nil && errB == nil && o.holds(a, b) == st.Holds {
			break
		}
	}
	for digits := shownDigits; digits <= mostDigits; digits++ {
		st.printOperands(digits)
		if holds, err := f.Holds(st.printedValues()); err == nil && holds == st.Holds {
			return
		}
	}
}
