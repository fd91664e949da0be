package units

import (
	"strings"

	dec "github.com/shopspring/decimal"
)

// Money is an exact decimal amount in one currency: "1234.50 USD". It keeps
// the decimals it was written with, 18 at most, and everything that has to be
// rounded is rounded to them, half away from zero: write 1200.00 USD, not
// 1200 USD, where cents count, or set them with [Money.Round].
//
// The currency is three capital letters, as an ISO 4217 code is. It is not
// looked up in the list of that standard, and nothing is converted.
//
// Money is an immutable, comparable value. Two are == if they are written
// alike; 5.5 USD and 5.50 USD are not, and [Money.Equal] finds them equal. The
// digits without the point are at most 10^18. The zero value is no amount: it
// is "not given", as [Money.IsSet] tells, and every operation refuses it;
// start a sum from "0.00 USD".
type Money struct {
	amount Printed // never with a power of ten or a stated resolution
}

// What decimals a [Money] may have.
const (
	maxPlaces   = 18
	placesRange = wording("0 to 18 decimals")
)

// ParseMoney reads an amount and a currency, "1234.50 USD" or "-20 EUR". Every
// error has concrete type [*ParseError], or [*RangeError] if there are too
// many digits.
func ParseMoney(text string) (Money, error) {
	const want = "amount of money"
	p, rest, err := digitsOf{"units.ParseMoney", want, text}.parse(text)
	if err != nil {
		return Money{}, err
	}
	currency := strings.TrimSpace(rest)
	switch {
	case !isCurrency(currency):
		return Money{}, &ParseError{Input: text, Want: want, Reason: "want a currency of three capital letters behind the number, as in 12.50 USD"}
	case p.sci:
		return Money{}, &ParseError{Input: text, Want: want, Reason: "want plain digits, without a power of ten"}
	case -p.exp > maxPlaces:
		return Money{}, &RangeError{Op: "units.ParseMoney", Field: "amount", Value: text, Allowed: placesRange}
	}
	p.unit = currency
	return Money{p}, nil
}

// MustMoney is [ParseMoney] for literals in tests and examples; it panics on
// an error.
func MustMoney(text string) Money {
	m, err := ParseMoney(text)
	if err != nil {
		panic(err)
	}
	return m
}

func isCurrency(s string) bool {
	if len(s) != 3 {
		return false
	}
	for _, c := range []byte(s) {
		if c < 'A' || c > 'Z' {
			return false
		}
	}
	return true
}

// IsSet reports whether m is an amount.
func (m Money) IsSet() bool { return m.amount.IsSet() }

// IsZero reports whether m is the zero value, which is no amount; for an
// amount of nothing see [Money.Sign]. Package encoding/json asks it for
// omitzero.
func (m Money) IsZero() bool { return m.amount.IsZero() }

// Amount returns the amount as printed; its unit is the currency.
func (m Money) Amount() Printed { return m.amount }

// Currency returns the three letters, empty if m was not given.
func (m Money) Currency() string { return m.amount.unit }

// Add returns m + n with the decimals of the one that has more. Another
// currency is a [*UnitError]; a sum of too many digits, or an operand that
// was not given, is a [*RangeError].
func (m Money) Add(n Money) (Money, error) {
	p, err := m.amount.combine("units.Money.Add", n.amount, dec.Decimal.Add)
	return Money{p}, err
}

// Sub returns m - n as [Money.Add] returns m + n.
func (m Money) Sub(n Money) (Money, error) {
	p, err := m.amount.combine("units.Money.Sub", n.amount, dec.Decimal.Sub)
	return Money{p}, err
}

// Times returns n times m, exactly. A product of too many digits, or an m
// that was not given, is a [*RangeError].
func (m Money) Times(n int) (Money, error) {
	return m.scaled("units.Money.Times", dec.NewFromInt(int64(n)))
}

// Mul returns m times a printed factor, which has no unit or one of [Ratio]
// such as %, rounded once to the decimals of m. A factor with another unit is
// a [*UnitError]; a product of too many digits, or an operand that was not
// given, is a [*RangeError].
func (m Money) Mul(factor Printed) (Money, error) {
	const op = "units.Money.Mul"
	if err := given(op, m.amount, factor); err != nil {
		return Money{}, err
	}
	f, err := factor.factor(op)
	if err != nil {
		return Money{}, err
	}
	return m.scaled(op, f)
}

// Scale returns m times a computed ratio, settled as by [Settle], rounded to
// the decimals of m. A ratio that is not finite, a product of too many digits
// or an m that was not given is a [*RangeError].
func (m Money) Scale(ratio Ratio) (Money, error) {
	const op = "units.Money.Scale"
	if err := (Bounds[Ratio]{}).Check(op, "ratio", ratio); err != nil {
		return Money{}, err
	}
	s := settle(float64(ratio))
	f := dec.New(int64(s.coef), int32(s.exp))
	if s.neg {
		f = f.Neg()
	}
	return m.scaled(op, f)
}

// scaled returns m times f, rounded to the decimals of m.
func (m Money) scaled(op string, f dec.Decimal) (Money, error) {
	if err := given(op, m.amount); err != nil {
		return Money{}, err
	}
	d := m.amount.decimal().Mul(f)
	return m.rounded(op, d, m.places())
}

// Over returns m shared among n, rounded to so many decimals, 0 to 18: the
// price of one of 12 from the price of all. The shares of a rounded division
// need not add up to m. An n that is not above 0, decimals out of range, too
// many digits or an m that was not given is a [*RangeError].
func (m Money) Over(n, places int) (Money, error) {
	const op = "units.Money.Over"
	switch {
	case n <= 0:
		return Money{}, &RangeError{Op: op, Field: "n", Value: n, Allowed: wording("1 or more")}
	case places < 0 || places > maxPlaces:
		return Money{}, &RangeError{Op: op, Field: "places", Value: places, Allowed: placesRange}
	}
	if err := given(op, m.amount); err != nil {
		return Money{}, err
	}
	d := m.amount.decimal().DivRound(dec.NewFromInt(int64(n)), int32(places))
	return m.rounded(op, d, places)
}

// Round returns m with so many decimals, 0 to 18, rounded half away from
// zero or filled up with zeros. Decimals out of range, too many digits or an
// m that was not given is a [*RangeError].
func (m Money) Round(places int) (Money, error) {
	const op = "units.Money.Round"
	if places < 0 || places > maxPlaces {
		return Money{}, &RangeError{Op: op, Field: "places", Value: places, Allowed: placesRange}
	}
	if err := given(op, m.amount); err != nil {
		return Money{}, err
	}
	return m.rounded(op, m.amount.decimal(), places)
}

func (m Money) places() int { return -int(m.amount.exp) }

// rounded returns d in the currency of m with so many decimals.
func (m Money) rounded(op string, d dec.Decimal, places int) (Money, error) {
	p, err := fitted(op, d.Round(int32(places)), false, m.amount.unit)
	return Money{p}, err
}

// Cmp returns -1, 0 or +1 as m is less than, equal to or more than n,
// exactly. Another currency is a [*UnitError]; an operand that was not given
// is a [*RangeError].
func (m Money) Cmp(n Money) (int, error) { return m.amount.cmp("units.Money.Cmp", n.amount) }

// Equal reports whether m and n are the same amount of the same currency,
// whatever their decimals, or both not given.
func (m Money) Equal(n Money) bool {
	if m == n {
		return true
	}
	c, err := m.Cmp(n)
	return err == nil && c == 0
}

// Sign returns -1, 0 or +1 as m is negative, nothing or positive; 0 if m was
// not given.
func (m Money) Sign() int { return m.amount.decimal().Sign() }

// String returns "1234.50 USD", or "not given".
func (m Money) String() string { return m.amount.String() }

// AppendText appends what [Money.MarshalText] returns.
func (m Money) AppendText(b []byte) ([]byte, error) { return m.amount.AppendText(b) }

// MarshalText returns what [Money.String] does, which reads back as m, or
// empty text if m was not given.
func (m Money) MarshalText() ([]byte, error) { return m.amount.MarshalText() }

// UnmarshalText reads what [ParseMoney] reads, with the same errors; empty
// text is "not given".
func (m *Money) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*m = Money{}
		return nil
	}
	n, err := ParseMoney(string(text))
	if err == nil {
		*m = n
	}
	return err
}
