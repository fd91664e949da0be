package units

import (
	"errors"
	"strconv"

	dec "github.com/shopspring/decimal"
)

// ErrUnit is what every [*UnitError] matches under [errors.Is].
var ErrUnit = errors.New("units do not match")

// A UnitError reports two printed numbers, or two amounts of money, whose
// units or currencies do not go together.
type UnitError struct {
	Op   string // the function, such as "units.Printed.Add"
	Got  string // the number that does not match, such as "3 V"
	Want string // what it should be in, such as "A"; empty for no unit
}

// Error returns "units.Printed.Add: 3 V is not in A".
func (e *UnitError) Error() string {
	want := "in " + e.Want
	if e.Want == "" {
		want = "a number without a unit"
	}
	return e.Op + ": " + e.Got + " is not " + want
}

// Unwrap returns [ErrUnit].
func (e *UnitError) Unwrap() error { return ErrUnit }

// The operations of this file take the digits of a [Printed] as exact, as the
// factors of a code are. Results are exact too, with the resolution of their
// last digit; it says nothing about the accuracy of what went in.

// Add returns p + q with the decimals of the finer one, in the unit of p. A q
// in another unit is a [*UnitError]; a sum beyond the range of a Printed, or
// an operand that was not given, is a [*RangeError].
func (p Printed) Add(q Printed) (Printed, error) {
	return p.combine("units.Printed.Add", q, dec.Decimal.Add)
}

// Sub returns p - q as [Printed.Add] returns p + q.
func (p Printed) Sub(q Printed) (Printed, error) {
	return p.combine("units.Printed.Sub", q, dec.Decimal.Sub)
}

// combine returns the sum or the difference of p and q.
func (p Printed) combine(op string, q Printed, f func(a, b dec.Decimal) dec.Decimal) (Printed, error) {
	if err := p.alike(op, q); err != nil {
		return Printed{}, err
	}
	return fitted(op, f(p.decimal(), q.decimal()), p.sci || q.sci, p.unit)
}

// Mul returns p times q, without zeros at the end of its decimals: 40 A times
// 0.80 is 32 A. One of the two is a factor, without a unit or in a unit of
// [Ratio] such as %, and the product is in the unit of the other. Two units
// are a [*UnitError]; a product beyond the range of a Printed, or an operand
// that was not given, is a [*RangeError].
func (p Printed) Mul(q Printed) (Printed, error) {
	const op = "units.Printed.Mul"
	if err := given(op, p, q); err != nil {
		return Printed{}, err
	}
	x, factor := p, q
	if p.unit == "" || (p.isRatio() && q.unit != "") {
		x, factor = q, p
	}
	f, err := factor.factor(op)
	if err != nil {
		return Printed{}, err
	}
	sci := p.sci || q.sci
	return fitted(op, trimmed(x.decimal().Mul(f), sci), sci, x.unit)
}

// factor returns p as a number; it has no unit, or one of [Ratio], else the
// error is a [*UnitError].
func (p Printed) factor(op string) (dec.Decimal, error) {
	switch {
	case p.unit == "":
		return p.decimal(), nil
	case p.isRatio():
		return p.decimal().Mul(dec.RequireFromString(ratioKind.find(p.unit).num)), nil
	}
	return dec.Decimal{}, &UnitError{Op: op, Got: p.String(), Want: "a unit of ratio such as %"}
}

func (p Printed) isRatio() bool { return p.unit != "" && ratioKind.find(p.unit) != nil }

// trimmed returns d without trailing zeros behind the point, and without any
// trailing zeros if all are to go.
func trimmed(d dec.Decimal, all bool) dec.Decimal {
	if d.Sign() == 0 {
		return dec.Decimal{}
	}
	highest := int32(0)
	if all {
		highest = maxLastTen
	}
	for d.Exponent() < highest && d.Shift(-d.Exponent()-1).IsInteger() {
		d = d.Round(-d.Exponent() - 1)
	}
	return d
}

// Cmp returns -1, 0 or +1 as the number p is below, equal to or above q,
// exactly. A q in another unit is a [*UnitError]; an operand that was not
// given is a [*RangeError].
func (p Printed) Cmp(q Printed) (int, error) { return p.cmp("units.Printed.Cmp", q) }

func (p Printed) cmp(op string, q Printed) (int, error) {
	if err := p.alike(op, q); err != nil {
		return 0, err
	}
	return p.decimal().Cmp(q.decimal()), nil
}

// Round returns p rounded half away from zero to so many decimals, before the
// point if places is negative: 22.72 A to 0 is 23 A, 1549 W to -2 is 1500 W
// to the nearest 100. A number whose resolution is that coarse, or coarser,
// is returned as it is. Places below -18 (-280 with a power of ten), or a p
// that was not given, are a [*RangeError].
func (p Printed) Round(places int) (Printed, error) {
	const op = "units.Printed.Round"
	if err := given(op, p); err != nil {
		return Printed{}, err
	}
	most := maxZeros // before the point
	if p.sci {
		most = maxLastTen
	}
	if places < -most {
		return Printed{}, &RangeError{Op: op, Field: "places", Value: places, Allowed: wording("-" + strconv.Itoa(most) + " or more")}
	}
	if places > -minLastTen || dec.New(p.step, int32(p.exp)).Cmp(dec.New(1, int32(-places))) >= 0 {
		return p, nil
	}
	d := p.decimal().Round(int32(places))
	if p.sci || places >= 0 {
		return fitted(op, d, p.sci, p.unit)
	}
	r := shaped(d.IntPart(), 0, false, p.unit)
	r.step = int64(pow10int[-places])
	return r, nil
}

// maxZeros is how many digits Round can turn to zeros: those of maxCoef.
const maxZeros = 18

// decimal returns the number without its unit.
func (p Printed) decimal() dec.Decimal { return dec.New(p.coef, int32(p.exp)) }

// given returns a [*RangeError] if an operand is no number.
func given(op string, operands ...Printed) error {
	for _, p := range operands {
		if !p.IsSet() {
			return &RangeError{Op: op, Field: "operand", Value: p, Allowed: wording("a number")}
		}
	}
	return nil
}

// alike returns an error unless p and q are numbers of one unit.
func (p Printed) alike(op string, q Printed) error {
	if err := given(op, p, q); err != nil {
		return err
	}
	if p.unit != q.unit && plainUnit(p.unit) != plainUnit(q.unit) {
		return &UnitError{Op: op, Got: q.String(), Want: p.unit}
	}
	return nil
}

// fitted returns d as a Printed, or the [*RangeError] of op.
func fitted(op string, d dec.Decimal, sci bool, unit string) (Printed, error) {
	exp := d.Exponent()
	if exp < minLastTen || exp > maxLastTen || d.Abs().Shift(-exp).Cmp(dec.New(maxCoef, 0)) > 0 {
		return Printed{}, &RangeError{Op: op, Field: "result", Value: d.InexactFloat64(), Allowed: printedRange}
	}
	return shaped(d.CoefficientInt64(), int16(exp), sci, unit), nil
}

// shaped returns coef·10^exp, if sci with a power of ten behind one digit and
// its decimals.
func shaped(coef int64, exp int16, sci bool, unit string) Printed {
	p := Printed{coef: coef, step: 1, exp: exp, sci: sci, unit: unit}
	if sci {
		p.ten = exp + int16(decimal{coef: magnitude(coef)}.len()) - 1
	}
	return p
}
