package units

import (
	"math"
	"strconv"

	"golang.org/x/exp/constraints"
)

// A decimal is a number as it is compared and printed: coef·10^exp, where
// coef has exactly settledDigits digits or is 0.
type decimal struct {
	neg  bool
	coef uint64
	exp  int
}

// settledDigits is how many significant digits a verdict looks at. Nine are
// far more than any handbook's and far fewer than float64 noise can reach.
const settledDigits = 9

var pow10 = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

var pow10int = [...]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11,
	1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18}

// settle returns x, which is finite, to nine significant digits.
func settle(x float64) decimal {
	if x == 0 {
		return decimal{}
	}
	// The shortest digits that read back as x are what a person would have
	// typed, so that a decimal tie such as 0.5000000005 is seen as one.
	var buf [32]byte
	return settleDigits(strconv.AppendFloat(buf[:0], x, 'e', -1, 64))
}

// settleDigits returns the number b, written as by verb e of strconv with 18
// digits at most and not zero, to nine significant digits.
func settleDigits(b []byte) decimal {
	d := decimal{neg: b[0] == '-'}
	if d.neg {
		b = b[1:]
	}
	i, places := 0, 0
	for ; b[i] != 'e'; i++ {
		if b[i] == '.' {
			continue
		}
		d.coef = d.coef*10 + uint64(b[i]-'0')
		places++
	}
	negExp := b[i+1] == '-'
	for _, c := range b[i+2:] {
		d.exp = d.exp*10 + int(c-'0')
	}
	if negExp {
		d.exp = -d.exp
	}
	d.exp -= places - 1
	return d.rounded(places, settledDigits)
}

// rounded returns d, whose coef has so many digits, with exactly want digits,
// half away from zero.
func (d decimal) rounded(digits, want int) decimal {
	switch {
	case d.coef == 0:
		return decimal{}
	case digits <= want:
		d.coef *= pow10int[want-digits]
		d.exp -= want - digits
		return d
	case want < 0:
		return decimal{}
	}
	drop := digits - want
	unit := pow10int[drop]
	rest := d.coef % unit
	d.coef /= unit
	d.exp += drop
	if rest >= unit-rest {
		d.coef++
	}
	if d.coef == pow10int[want] && want > 0 {
		d.coef /= 10
		d.exp++
	}
	return d
}

// float returns the float64 nearest to d.
func (d decimal) float() float64 {
	var x float64
	switch {
	case d.coef == 0:
		return 0
	case 0 <= d.exp && d.exp < len(pow10):
		x = float64(d.coef) * pow10[d.exp] // one rounding: both factors are exact
	case -len(pow10) < d.exp && d.exp < 0:
		x = float64(d.coef) / pow10[-d.exp]
	default:
		var buf [32]byte
		b := strconv.AppendUint(buf[:0], d.coef, 10)
		b = append(b, 'e')
		b = strconv.AppendInt(b, int64(d.exp), 10)
		x, _ = strconv.ParseFloat(string(b), 64) // too large is ±Inf, as in any sum
	}
	if d.neg {
		return -x
	}
	return x
}

// cmp compares two settled numbers as scaled integers.
func (d decimal) cmp(e decimal) int {
	switch {
	case d == e:
		return 0
	case d.coef == 0:
		return sign(!e.neg, -1)
	case e.coef == 0:
		return sign(d.neg, -1)
	case d.neg != e.neg:
		return sign(d.neg, -1)
	case d.exp != e.exp:
		return sign((d.exp < e.exp) != d.neg, -1)
	}
	return sign((d.coef < e.coef) != d.neg, -1)
}

// sign returns s if yes, else -s.
func sign(yes bool, s int) int {
	if yes {
		return s
	}
	return -s
}

// Settle returns x rounded to nine significant digits, half away from zero:
// the value that verdicts compare and text prints. It is idempotent. NaN and
// infinities are returned as they are.
func Settle[T constraints.Float](x T) T {
	if f := float64(x); finite(f) {
		return T(settle(f).float())
	}
	return x
}

// Compare returns -1, 0 or +1 as a is below, equal to or above b, once both
// are settled: 15.000000000000002 A equals 15 A, 15.0004 A is above it. The
// settled numbers are compared as integers and nothing is allocated.
// A NaN is below everything but a NaN, as in [cmp.Compare].
func Compare[T constraints.Float](a, b T) int {
	x, y := float64(a), float64(b)
	if !finite(x) || !finite(y) {
		return compareOpen(x, y)
	}
	// Numbers this far apart settle to different ones: nine digits resolve
	// a part in 1e8 at worst.
	gap := 2e-8 * max(math.Abs(x), math.Abs(y))
	switch d := x - y; {
	case d > gap:
		return 1
	case -d > gap:
		return -1
	}
	return settle(x).cmp(settle(y))
}

// compareOpen compares x and y when one of them is not finite.
func compareOpen(x, y float64) int {
	switch {
	case math.IsNaN(x) && math.IsNaN(y), x == y:
		return 0
	case math.IsNaN(x), x < y:
		return -1
	}
	return 1
}

// Exceeds reports whether a is above b once both are settled as by
// [Settle]. It is false if either is NaN.
func Exceeds[T constraints.Float](a, b T) bool {
	return !math.IsNaN(float64(b)) && Compare(a, b) > 0
}

// Minus returns a - b, and exactly zero where a and b are finite and settle
// to the same number, so that a difference can be tested against zero.
func Minus[T constraints.Float](a, b T) T {
	if finite(float64(a)) && Compare(a, b) == 0 {
		return 0
	}
	return a - b
}

// finite reports whether x is neither NaN nor infinite.
func finite(x float64) bool { return x-x == 0 }
