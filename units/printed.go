package units

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	dec "github.com/shopspring/decimal"
)

// A Printed is a number as a book, a code or a quote prints it: its digits
// with the zeros kept, and its unit. A table cell, a factor, a limit and a
// rating stay decimal, so that 40 A times 0.71 times 0.80 is 22.72 A and not
// nearly that.
//
// What is printed says how fine it is: its resolution is the unit of its
// last digit, 0.001 Ω/kft of "0.770 Ω/kft", unless a coarser one is stated,
// as in "1500 W to the nearest 100". [Printed.Covers] and [Printed.Agrees]
// tell whether a computed number is the same to that resolution.
//
// A Printed is an immutable, comparable value. Two are == if they are printed
// alike; "0.77" and "0.770" are not, and [Printed.Cmp] finds them equal. The
// unit is kept as written and is not checked, for books print more units than
// this package knows; it is the same as another if the two differ only in
// characters that keyboards lack (Ω and ohm, mm² and mm2).
//
// The digits without point and exponent are at most 10^18, the last one worth
// from 1e-300 to 1e280, which keeps every Printed within a float64. A minus
// on zero and zeros in front are not kept. The zero value is no number: it is
// "not given", as [Printed.IsSet] tells, and every operation refuses it.
type Printed struct {
	coef int64  // the digits without the point; the number is coef·10^exp
	step int64  // the resolution in units of the last digit; 0 if not given
	exp  int16  // above 0 only if sci
	ten  int16  // the power of ten as written, if sci
	sci  bool   // written with a power of ten
	unit string // as written; empty for none
}

const (
	maxCoef     = 1_000_000_000_000_000_000 // twice it and more fits an int64
	minLastTen  = -300
	maxLastTen  = 280
	nearestText = " to the nearest "
	notUTF8     = "not valid UTF-8"
)

// printedRange is the range of a [Printed], as its documentation states it.
const printedRange = wording("digits up to 10^18, the last worth 1e-300 to 1e280")

// ParsePrinted reads a number as printed: "0.770 Ω/kft", "30 A", "16.7 %",
// "1.72e-8 Ω·m", "-10 °C", "12". The grammar is
//
//	printed    = digits [ unit ] [ " to the nearest " resolution ]
//	digits     = [ sign ] number, as [Parse] has it
//	resolution = number
//
// A unit begins with a letter or one of % ‰ ° ′ ″ ' ". The resolution is in
// that unit, and a whole multiple of what the last digit is worth. A compound,
// such as feet and inches, is not one printed number. Every error has
// concrete type [*ParseError], or [*RangeError] if there are too many digits.
func ParsePrinted(text string) (Printed, error) {
	body, nearest, coarse := strings.Cut(strings.TrimSpace(text), nearestText)
	p, unit, err := digitsOf{"units.ParsePrinted", "printed number", text}.parse(body)
	if err != nil {
		return Printed{}, err
	}
	if p, err = p.in(text, unit); err != nil || !coarse {
		return p, err
	}
	return p.ToNearest(nearest)
}

// NewPrinted returns the number printed digits, which may have an exponent
// but no unit, in unit, which may be empty. Digits and unit are as in
// [ParsePrinted], and so are the errors.
func NewPrinted(digits, unit string) (Printed, error) {
	p, rest, err := digitsOf{"units.NewPrinted", "printed number", digits}.parse(digits)
	if err != nil {
		return Printed{}, err
	}
	if rest != "" {
		return Printed{}, &ParseError{Input: digits, Want: "digits", Reason: "followed by " + strconv.Quote(rest)}
	}
	return p.in(unit, unit)
}

// MustPrinted is [NewPrinted] for the literals of tables and tests; it panics
// on an error.
func MustPrinted(digits, unit string) Printed {
	p, err := NewPrinted(digits, unit)
	if err != nil {
		panic(err)
	}
	return p
}

// digitsOf says in errors which function reads what from which text.
type digitsOf struct{ op, want, input string }

// parse reads the number at the front of s, which is part of the input, and
// returns what follows it.
func (d digitsOf) parse(s string) (p Printed, rest string, err error) {
	if !utf8.ValidString(s) {
		return p, "", &ParseError{Input: d.input, Want: d.want, Reason: notUTF8}
	}
	negative, s := cutSign(strings.TrimSpace(s))
	number, rest, reason := cutNumber(s)
	if reason != "" {
		return p, "", &ParseError{Input: d.input, Want: d.want, Reason: reason}
	}
	mantissa, ten := number, 0
	if i := strings.IndexAny(number, "eE"); i >= 0 {
		mantissa, p.sci = number[:i], true
		ten, _ = strconv.Atoi(number[i+1:]) // cutNumber has checked it
	}
	whole, fraction, _ := strings.Cut(mantissa, ".")
	exp := ten - len(fraction)
	p.coef, err = strconv.ParseInt(whole+fraction, 10, 64)
	if err != nil || p.coef > maxCoef || exp < minLastTen || exp > maxLastTen {
		return p, "", &RangeError{Op: d.op, Field: "digits", Value: number, Allowed: printedRange}
	}
	if negative {
		p.coef = -p.coef
	}
	p.step, p.exp, p.ten = 1, int16(exp), int16(ten)
	return p, rest, nil
}

// in returns p in the unit written s, which is part of input.
func (p Printed) in(input, s string) (Printed, error) {
	unit := strings.Join(strings.Fields(s), " ")
	if reason := noUnit(unit); reason != "" {
		return Printed{}, &ParseError{Input: input, Want: "printed number", Reason: reason}
	}
	p.unit = unit
	return p, nil
}

// noUnit returns why s cannot be a unit, or "". Spaces in s are single.
func noUnit(s string) string {
	first, _ := utf8.DecodeRuneInString(s)
	switch {
	case s == "":
		return ""
	case !utf8.ValidString(s):
		return notUTF8
	case len(s) > maxUnit:
		return "the unit has more than " + strconv.Itoa(maxUnit) + " bytes"
	case !unicode.IsLetter(first) && !strings.ContainsRune("%‰°º′″'’\"”", first):
		return "want a unit, or nothing, at " + strconv.Quote(firstWord(s)) + "; a power of ten is written 1.72e-8"
	case strings.Contains(" "+s+" ", nearestText):
		return "no resolution behind " + strconv.Quote(strings.TrimSpace(nearestText))
	}
	for i, r := range s {
		switch {
		case !unicode.IsPrint(r) || strings.ContainsRune(",;=<>", r):
			return "a unit has no " + strconv.QuoteRune(r)
		case '0' <= r && r <= '9' && !mayHaveDigit(s[:i]):
			return "want one number and one unit, not a second number at " + strconv.Quote(firstWord(s[i:]))
		}
	}
	return ""
}

// mayHaveDigit reports whether a unit that begins with s may go on with a
// digit: mm2, m^2, Ω/1000 ft, ohms per 1000 ft.
func mayHaveDigit(s string) bool {
	t := strings.TrimRight(s, " ")
	if strings.HasSuffix(t, "/") || strings.HasSuffix(t, "per") {
		return true
	}
	last, _ := utf8.DecodeLastRuneInString(s)
	return unicode.IsLetter(last) || strings.ContainsRune("0123456789^.(-", last)
}

// ToNearest returns p with a coarser resolution than its last digit has:
// 1500 W ToNearest("100"). The resolution is a number in the unit of p, a
// whole multiple of what the last digit is worth; anything else is a
// [*ParseError] or a [*RangeError].
func (p Printed) ToNearest(resolution string) (Printed, error) {
	const op = "units.Printed.ToNearest"
	if err := given(op, p); err != nil {
		return Printed{}, err
	}
	r, err := NewPrinted(resolution, "")
	if err != nil {
		return Printed{}, err
	}
	steps := r.decimal().Shift(-int32(p.exp))
	if !steps.IsInteger() || steps.Sign() <= 0 || steps.Cmp(dec.New(maxCoef, 0)) > 0 {
		last := shaped(1, p.exp, p.sci, "")
		return Printed{}, &RangeError{Op: op, Field: "resolution", Value: r,
			Allowed: wording("a whole multiple of " + last.String() + ", 10^18 of them at most")}
	}
	p.step = steps.IntPart()
	return p, nil
}

// IsSet reports whether p is a number.
func (p Printed) IsSet() bool { return p.step != 0 }

// IsZero reports whether p is the zero value, which is no number. It is false
// for a printed 0. Package encoding/json asks it for omitzero.
func (p Printed) IsZero() bool { return p.step == 0 }

// Unit returns the unit as written, empty if there is none.
func (p Printed) Unit() string { return p.unit }

// Digits returns the digits as printed, zeros kept: "0.770", "1.72e-8"; empty
// text if p was not given.
func (p Printed) Digits() string { return string(p.appendDigits(nil)) }

func (p Printed) appendDigits(b []byte) []byte {
	if !p.IsSet() {
		return b
	}
	places := int(p.ten) - int(p.exp)
	d := decimal{neg: p.coef < 0, coef: magnitude(p.coef), exp: -places}
	b = d.appendFixed(b, places)
	if p.sci {
		b = strconv.AppendInt(append(b, 'e'), int64(p.ten), 10)
	}
	return b
}

func magnitude(coef int64) uint64 {
	if coef < 0 {
		return uint64(-coef) // no coefficient is as small as the smallest int64
	}
	return uint64(coef)
}

// String returns the digits, the unit, and the resolution if it is coarser
// than the last digit: "0.770 Ω/kft", "1500 W to the nearest 100". If p was
// not given, it is "not given".
func (p Printed) String() string {
	if !p.IsSet() {
		return "not given"
	}
	return string(p.appendText(nil))
}

func (p Printed) appendText(b []byte) []byte {
	b = p.appendDigits(b)
	if p.unit != "" {
		u := unit{symbol: p.unit}
		b = u.appendSymbol(b)
	}
	if p.step > 1 {
		b = p.Resolution().appendDigits(append(b, nearestText...))
	}
	return b
}

// Float returns the float64 nearest to p as a number of its unit, NaN if p
// was not given.
func (p Printed) Float() float64 {
	if !p.IsSet() {
		return math.NaN()
	}
	return nearest(p.coef < 0, magnitude(p.coef), int(p.exp))
}

// nearest returns the float64 nearest to mag·10^exp.
func nearest(negative bool, mag uint64, exp int) float64 {
	var buf [32]byte
	b := buf[:0]
	if negative {
		b = append(b, '-')
	}
	b = append(strconv.AppendUint(b, mag, 10), 'e')
	x, _ := strconv.ParseFloat(string(strconv.AppendInt(b, int64(exp), 10)), 64) // within range, see Printed
	return x
}

// Resolution returns the step from p to the next number of its resolution:
// 0.001 Ω/kft for 0.770 Ω/kft. It is not given if p is not.
func (p Printed) Resolution() Printed {
	if !p.IsSet() {
		return Printed{}
	}
	return shaped(p.step, p.exp, p.sci, p.unit)
}

// Covers reports whether x, a number of the unit of p, is what p prints:
// within half of the resolution, both ends included and compared settled as
// by [Compare]. So 0.7695 and 0.7705 are covered by "0.770". It is false if x
// is not finite or p was not given.
func (p Printed) Covers(x float64) bool {
	return p.IsSet() && finite(x) && Compare(x, p.edge(-1)) >= 0 && Compare(x, p.edge(1)) <= 0
}

// edge returns the number half a resolution below or above p.
func (p Printed) edge(side int64) float64 {
	twice := 2*p.coef + side*p.step
	return nearest(twice < 0, 5*magnitude(twice), int(p.exp)-1)
}

// Agrees is [Printed.Covers] for a quantity or a temperature, which is
// measured in the unit of p; a number without unit is a [Ratio]. The errors
// are those of [Measure], and a [*RangeError] if p was not given.
func (p Printed) Agrees(v Value) (bool, error) {
	if err := given("units.Printed.Agrees", p); err != nil {
		return false, err
	}
	symbol := p.unit
	if symbol == "" {
		symbol = itself
	}
	x, _, err := Measure(v, symbol)
	return err == nil && p.Covers(x), err
}

// As returns p as a quantity, rounded once. A unit that Q does not have is a
// [*ParseError]; so is a missing one, but that a number without unit is a
// [Ratio] within the limit of [Parse]. If p was not given, the error is a
// [*RangeError].
func As[Q Quantity](p Printed) (Q, error) {
	if err := given("units.As", p); err != nil {
		return 0, err
	}
	k := Q(0).kind()
	if p.unit == "" {
		return Parse[Q](p.Digits())
	}
	u := k.find(p.unit)
	if u == nil {
		return 0, &ParseError{Input: p.String(), Want: k.name, Reason: "unknown unit; want one of " + k.accepted()}
	}
	x, _ := toFloat(exactly(p.Digits(), u)) // in range, for a Printed leaves room
	return Q(x), nil
}

// Temperature returns p, in °C, °F or K, as a temperature, with the errors
// of [ParseTemperature].
func (p Printed) Temperature() (Temperature, error) {
	return ParseTemperature(p.Digits() + " " + p.unit)
}

// AppendText appends what [Printed.MarshalText] returns.
func (p Printed) AppendText(b []byte) ([]byte, error) { return p.appendText(b), nil }

// MarshalText returns what [Printed.String] does, which reads back as p, or
// empty text if p was not given.
func (p Printed) MarshalText() ([]byte, error) { return p.appendText([]byte{}), nil }

// UnmarshalText reads what [ParsePrinted] reads, with the same errors; empty
// text is "not given".
func (p *Printed) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = Printed{}
		return nil
	}
	q, err := ParsePrinted(string(text))
	if err == nil {
		*p = q
	}
	return err
}
