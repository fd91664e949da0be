package units

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"unicode/utf8"
)

// shownDigits is how many significant digits String gives.
const shownDigits = 6

// toString returns v as its String method documents.
func toString[Q Quantity](v Q) string {
	var buf [48]byte
	return string(appendShown(buf[:0], float64(v), v.kind(), shownDigits))
}

// appendShown appends x, in SI, with its most suitable unit.
func appendShown(b []byte, x float64, k *kind, digits int) []byte {
	if !finite(x) {
		return k.units[0].appendSymbol(strconv.AppendFloat(b, x, 'g', -1, 64))
	}
	u := k.suitable(x, digits)
	return u.appendSymbol(u.count(x).appendSignificant(b, digits))
}

// count returns the number of u in x, which is finite, settled.
func (u *unit) count(x float64) decimal {
	const leastNormal = 0x1p-1022
	n := x / u.float
	if a := math.Abs(n); u.float == 1 || x == 0 || a >= leastNormal && finite(a) {
		return settle(n)
	}
	// The quotient is beyond float64, as with 1e307 in per cent, or has lost
	// digits below it.
	const digits = 17
	var buf [32]byte
	return settleDigits(u.appendCount(buf[:0], x, 'e', digits-1))
}

// appendCount appends the number of u in x with so many digits as
// [big.Float.Append] counts them, from the exact quotient.
func (u *unit) appendCount(b []byte, x float64, format byte, digits int) []byte {
	const bits = 200 // far more than 17 digits need
	r := new(big.Rat).SetFloat64(x)
	r.Quo(r, u.factor())
	return new(big.Float).SetPrec(bits).SetRat(r).Append(b, format, digits)
}

func (u *unit) appendSymbol(b []byte) []byte {
	switch u.symbol {
	case "°", "′", "″":
		return append(b, u.symbol...)
	}
	return append(append(b, ' '), u.symbol...)
}

// suitable returns the largest of the shown units in which x is at least 1
// as printed, or the smallest of them. For 0 it is the first unit.
func (k *kind) suitable(x float64, digits int) *unit {
	if x == 0 {
		return &k.units[0]
	}
	var best, least *unit
	for i := range k.units {
		u := &k.units[i]
		if !u.show {
			continue
		}
		if least == nil || u.float < least.float {
			least = u
		}
		if (best == nil || u.float > best.float) && u.count(x).significant(digits).magnitude() >= 0 {
			best = u
		}
	}
	if best == nil {
		return least
	}
	return best
}

// significant returns d, which is settled, to so many digits, 1 to 9.
func (d decimal) significant(digits int) decimal {
	return d.rounded(settledDigits, min(max(digits, 1), settledDigits))
}

// magnitude returns the power of ten of the first digit of d.
func (d decimal) magnitude() int { return d.exp + d.len() - 1 }

// Significant returns x with at most so many significant digits, 1 to 9,
// settled first and then rounded half away from zero, without trailing
// zeros, and with an exponent only below 0.0001 and from 10 million up.
func Significant(x float64, digits int) string {
	if !finite(x) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	var buf [32]byte
	return string(settle(x).appendSignificant(buf[:0], digits))
}

func (d decimal) appendSignificant(b []byte, digits int) []byte {
	d = d.significant(digits)
	for d.coef != 0 && d.coef%10 == 0 {
		d.coef /= 10
		d.exp++
	}
	const low, high = -4, 7 // exponents of the first digit printed plainly
	first := d.magnitude()
	if d.coef != 0 && (first < low || first >= high) {
		return d.appendExponent(b, d.len()-1)
	}
	return d.appendFixed(b, max(0, -d.exp))
}

// len returns how many digits d.coef has, 1 for 0.
func (d decimal) len() int {
	n := 1
	for c := d.coef; c >= 10; c /= 10 {
		n++
	}
	return n
}

// Fixed returns x with so many decimals, settled first and then rounded half
// away from zero. It is how a column of a table is printed.
func Fixed(x float64, decimals int) string {
	if !finite(x) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	var buf [48]byte
	return string(settle(x).appendFixed(buf[:0], max(decimals, 0)))
}

// appendFixed appends d with so many decimals.
func (d decimal) appendFixed(b []byte, decimals int) []byte {
	if places := -d.exp; places > decimals {
		n := d.len()
		d = d.rounded(n, n-(places-decimals))
	}
	if d.neg && d.coef != 0 {
		b = append(b, '-')
	}
	var buf [24]byte
	digits := strconv.AppendUint(buf[:0], d.coef, 10)
	if d.coef == 0 {
		d.exp = 0
	}
	point := len(digits) + d.exp // digits before the point
	if point <= 0 {
		b = append(b, '0')
	}
	for i := range point {
		b = append(b, digitAt(digits, i))
	}
	if decimals > 0 {
		b = append(b, '.')
	}
	for i := range decimals {
		b = append(b, digitAt(digits, point+i))
	}
	return b
}

// digitAt returns the i-th digit, or a 0 outside of them.
func digitAt(digits []byte, i int) byte {
	if 0 <= i && i < len(digits) {
		return digits[i]
	}
	return '0'
}

// appendExponent appends d as one digit, so many decimals and an exponent.
func (d decimal) appendExponent(b []byte, decimals int) []byte {
	n := d.len()
	exp := d.exp + n - 1
	if n > decimals+1 {
		r := d.rounded(n, decimals+1)
		exp += r.len() + r.exp - n - d.exp
		d, n = r, r.len()
	}
	if d.coef == 0 {
		exp = 0
	}
	b = decimal{neg: d.neg, coef: d.coef, exp: 1 - n}.appendFixed(b, decimals)
	b = append(b, 'e')
	if exp < 0 {
		b = append(b, '-')
		exp = -exp
	} else {
		b = append(b, '+')
	}
	if exp < 10 {
		b = append(b, '0')
	}
	return strconv.AppendInt(b, int64(exp), 10)
}

// format implements the verbs of every quantity.
func format[Q Quantity](s fmt.State, verb rune, v Q) {
	formatValue(s, verb, float64(v), v.kind())
}

func formatValue(s fmt.State, verb rune, x float64, k *kind) {
	var buf [64]byte
	b := buf[:0]
	prec, hasPrec := s.Precision()
	u := &k.units[0]
	switch {
	case verb == 'v' && s.Flag('#'):
		b = append(b, "units."+k.typ+"("...)
		b = append(appendGo(b, x), ')')
	case verb == 'v' || verb == 's':
		if !hasPrec {
			prec = shownDigits
		}
		b = appendShown(b, x, k, prec)
	case !finite(x) && (verb == 'e' || verb == 'f' || verb == 'F' || verb == 'g'):
		b = u.appendSymbol(strconv.AppendFloat(b, x, 'g', -1, 64))
	case verb == 'f' || verb == 'F':
		if !hasPrec {
			prec = shownDigits
		}
		b = u.appendSymbol(u.count(x).appendFixed(b, prec))
	case verb == 'e':
		if !hasPrec {
			prec = shownDigits
		}
		b = u.appendSymbol(u.count(x).appendExponent(b, prec))
	case verb == 'g':
		if !hasPrec {
			prec = settledDigits
		}
		b = u.appendSymbol(u.count(x).appendSignificant(b, prec))
	default:
		b = append(b, "%!"+string(verb)+"(units."+k.typ+"="...)
		b = append(appendShown(b, x, k, shownDigits), ')')
	}
	writePadded(s, b)
}

// appendGo appends x as a Go expression.
func appendGo(b []byte, x float64) []byte {
	switch {
	case finite(x):
		return strconv.AppendFloat(b, x, 'g', -1, 64)
	case x > 0:
		return append(b, "math.Inf(1)"...)
	case x < 0:
		return append(b, "math.Inf(-1)"...)
	}
	return append(b, "math.NaN()"...)
}

// writePadded writes b, which is not empty, with the sign flags and the width
// of s. The width counts characters, the unit's among them. Zeros pad only a
// number.
func writePadded(s fmt.State, b []byte) {
	signed := b[0] == '-' || b[0] == '+'
	number := isDigit(b[0]) || signed && isDigit(b[1])
	if number && !signed {
		switch {
		case s.Flag('+'):
			b, signed = append([]byte{'+'}, b...), true
		case s.Flag(' '):
			b, signed = append([]byte{' '}, b...), true
		}
	}
	width, _ := s.Width()
	pad := max(0, width-utf8.RuneCount(b))
	switch {
	case s.Flag('-'):
		_, _ = s.Write(b)
		pads(s, pad, ' ')
	case s.Flag('0') && number:
		if signed {
			_, _ = s.Write(b[:1])
			b = b[1:]
		}
		pads(s, pad, '0')
		_, _ = s.Write(b)
	default:
		pads(s, pad, ' ')
		_, _ = s.Write(b)
	}
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func pads(s fmt.State, n int, c byte) {
	for range n {
		_, _ = s.Write([]byte{c})
	}
}

// appendText appends v in the first unit of its kind, with digits that read
// back exactly.
func appendText[Q Quantity](b []byte, v Q) ([]byte, error) {
	k := v.kind()
	x := float64(v)
	if !finite(x) {
		return b, &RangeError{Op: "units.MarshalText", Field: k.name, Value: v, Allowed: Bounds[Q]{}}
	}
	u := &k.units[0]
	return u.appendSymbol(u.appendExact(b, x)), nil
}

// appendExact appends the number of u in x that reads back as x. A number
// that was read with 15 digits or fewer is written with the same.
func (u *unit) appendExact(b []byte, x float64) []byte {
	switch {
	case x == 0:
		return append(b, '0')
	case u.float == 1:
		return appendShortest(b, x)
	}
	// 17 digits always suffice: they are closer than half a step of x.
	const few, enough = 15, 17
	start := len(b)
	for digits := few; ; digits++ {
		b = u.appendCount(b[:start], x, 'g', digits)
		if back, _ := exactly(string(b[start:]), u).Float64(); back == x || digits == enough {
			return b
		}
	}
}

// appendShortest appends x with the fewest digits, plainly where that is
// short.
func appendShortest(b []byte, x float64) []byte {
	if a := math.Abs(x); a >= 1e-6 && a < 1e15 {
		return strconv.AppendFloat(b, x, 'f', -1, 64)
	}
	return strconv.AppendFloat(b, x, 'e', -1, 64)
}

// unmarshal reads text into v, which is left alone on an error.
func unmarshal[Q Quantity](v *Q, text []byte) error {
	q, err := Parse[Q](string(text))
	if err == nil {
		*v = q
	}
	return err
}
