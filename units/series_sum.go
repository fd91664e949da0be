package units

import (
	"math"

	"golang.org/x/exp/constraints"
)

// EnergyOf returns the energy of s: the sum of its means times the step. The
// sum is compensated, so a year of minutes is right to the last digits. It is
// NaN or infinite if a value is, or if the sum overflows, and NaN if Step is
// not above zero; an empty series has none.
func EnergyOf(s Series[Power]) Energy { return Energy(integral(s)) }

// ChargeOf returns the charge that s carries, as [EnergyOf] does for energy.
func ChargeOf(s Series[Current]) Charge { return Charge(integral(s)) }

// IrradiationOf returns the irradiation of s, as [EnergyOf] does for energy.
func IrradiationOf(s Series[Irradiance]) Irradiation { return Irradiation(integral(s)) }

// MeanOf returns the mean of s over its whole span, of a sum compensated as
// for [EnergyOf]; it is not finite if a value is not, or if the sum
// overflows. An empty series has none: ok is false.
func MeanOf[T constraints.Float](s Series[T]) (mean T, ok bool) {
	if len(s.Values) == 0 {
		return 0, false
	}
	return T(sum(s.Values) / float64(len(s.Values))), true
}

// PeakOf returns the largest value of s and the first step that has it:
// values are compared with their sign, -5 W is below 0 W. If there is a NaN,
// the first of them is returned, since then nothing is known to be largest.
// An empty series has none: ok is false.
func PeakOf[T constraints.Float](s Series[T]) (x T, i int, ok bool) {
	return extreme(s, func(a, b T) bool { return a > b })
}

// MinOf returns the smallest value of s, with the rules of [PeakOf].
func MinOf[T constraints.Float](s Series[T]) (x T, i int, ok bool) {
	return extreme(s, func(a, b T) bool { return a < b })
}

// extreme returns the first value that is beyond all before it, and not
// followed by one beyond it.
func extreme[T constraints.Float](s Series[T], beyond func(a, b T) bool) (x T, i int, ok bool) {
	for j, y := range s.Values {
		switch {
		case y != y:
			return y, j, true
		case j == 0 || beyond(y, x):
			x, i = y, j
		}
	}
	return x, i, len(s.Values) > 0
}

// integral returns the sum of s times the step in seconds.
func integral[T constraints.Float](s Series[T]) float64 {
	if !(s.Step > 0) {
		return math.NaN()
	}
	return sum(s.Values) * s.Step.Seconds()
}

// sum returns the sum of values as if added in twice the precision of
// float64 and rounded at the end: algorithm Sum2 of Ogita, Rump and Oishi,
// Accurate Sum and Dot Product, SIAM J. Sci. Comput. 26 (2005), with Knuth's
// error of one addition, which needs no branch. (Cited from memory; the
// accuracy is tested.)
func sum[T constraints.Float](values []T) float64 {
	var total, lost float64
	for _, v := range values {
		x := float64(v)
		t := total + x
		y := t - total
		lost += (total - (t - y)) + (x - y)
		total = t
	}
	if r := total + lost; finite(r) {
		return r
	}
	return total // what was lost is NaN beside an infinite total
}
