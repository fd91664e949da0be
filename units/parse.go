package units

import (
	"math/big"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Parse returns the quantity written s. The grammar is
//
//	quantity = [ sign ] number unit { number unit }
//	number   = decimal [ ( "e" | "E" ) [ sign ] digits ]
//	decimal  = digits [ "." [ digits ] ] | "." digits
//
// with spaces allowed before a number and a unit: "12.8 V", "300Ah",
// "2.5 mm2", "13.5 kBtu/h", "30%". More than one number makes a compound:
// feet and inches, pounds and ounces, degrees with minutes and seconds,
// days, hours, minutes and seconds, largest first, one sign in front, each
// further part less than one of the unit before it, a fraction only in the
// last. A unit is read in the spellings that people type; letter case matters
// only in a prefix m or M (mW, MW). A [Ratio] may stand without a unit up to
// 2.
//
// The number and the definition of its unit are multiplied exactly and
// rounded once; zero has no sign. Every error has concrete type
// [*ParseError], or [*RangeError] if the value is too large, or too small and
// not zero, for a float64.
func Parse[Q Quantity](s string) (Q, error) {
	k := Q(0).kind()
	sum, err := k.parse(s)
	if err != nil {
		return 0, err
	}
	x, ok := toFloat(sum)
	if !ok {
		return 0, &RangeError{Op: "units.Parse", Field: k.name, Value: s, Allowed: representable{}}
	}
	return Q(x), nil
}

// MustParse is [Parse] for literals in tests and examples; it panics on an
// error.
func MustParse[Q Quantity](s string) Q {
	q, err := Parse[Q](s)
	if err != nil {
		panic(err)
	}
	return q
}

// representable describes the values for which toFloat is ok.
type representable struct{}

func (representable) String() string { return "0 or a size from 5e-324 to 1.8e308 in SI units" }

// toFloat rounds r once. It is not ok if a non-zero r is beyond float64.
func toFloat(r *big.Rat) (x float64, ok bool) {
	x, _ = r.Float64()
	return x, finite(x) && (x != 0 || r.Sign() == 0)
}

// parse returns the value of s in coherent SI units, exactly.
func (k *kind) parse(s string) (*big.Rat, error) {
	fail := func(reason string) (*big.Rat, error) {
		return nil, &ParseError{Input: s, Want: k.name, Reason: reason}
	}
	rest := strings.TrimSpace(s)
	if rest == "" {
		return fail("empty; want a number and a unit: " + k.accepted())
	}
	negative, rest := cutSign(rest)
	sum := new(big.Rat)
	var chain []string // what may follow the units read so far
	var last string    // their smallest
	for part := 0; rest != ""; part++ {
		digits, after, reason := cutNumber(rest)
		if reason != "" {
			return fail(reason)
		}
		name, after := k.cutUnit(after)
		if name == "" && part == 0 && after == "" && k.bare > 0 {
			return k.parseBare(s, digits, negative)
		}
		if name == "" {
			return fail("no unit; want one of " + k.accepted())
		}
		u := k.find(name)
		if u == nil || u.symbol == itself {
			return fail("unknown unit " + strconv.Quote(name) + "; want one of " + k.accepted())
		}
		value := exactly(digits, u)
		if part > 0 {
			next := following(chain, u.symbol)
			if next == nil {
				return fail(u.symbol + " cannot follow " + last)
			}
			if whole := exactly("1", k.find(last)); value.Cmp(whole) >= 0 {
				return fail(digits + " " + u.symbol + " is not less than 1 " + last)
			}
			chain = next
		} else {
			chain = k.chainFrom(u.symbol)
		}
		switch {
		case after != "" && len(chain) == 0:
			return fail("nothing may follow " + u.symbol + ", found " + strconv.Quote(after))
		case after != "" && strings.ContainsAny(digits, ".eE"):
			return fail("only the last part of a compound may have a fraction")
		}
		sum.Add(sum, value)
		last, rest = u.symbol, after
	}
	if last == "" {
		return fail("no number")
	}
	if negative {
		sum.Neg(sum)
	}
	return sum, nil
}

func (k *kind) parseBare(s, digits string, negative bool) (*big.Rat, error) {
	r, _ := new(big.Rat).SetString(digits)
	limit := new(big.Rat).SetFloat64(k.bare)
	if r.Cmp(limit) > 0 {
		text := strconv.FormatFloat(k.bare, 'g', -1, 64)
		return nil, &ParseError{Input: s, Want: k.name,
			Reason: "a number without a unit must not be above " + text + "; write it with % if that is meant"}
	}
	if negative {
		r.Neg(r)
	}
	return r, nil
}

// exactly returns the number written digits times u, unrounded.
func exactly(digits string, u *unit) *big.Rat {
	value, _ := new(big.Rat).SetString(digits) // the syntax is checked
	return value.Mul(value, u.factor())
}

func (u *unit) factor() *big.Rat {
	f, _ := new(big.Rat).SetString(u.num) // a table row of ours
	return f.Quo(f, new(big.Rat).SetUint64(u.den))
}

// chainFrom returns the units that may follow symbol, nil if none.
func (k *kind) chainFrom(symbol string) []string {
	for _, c := range k.chains {
		if next := following(c, symbol); next != nil {
			return next
		}
	}
	return nil
}

// following returns the units of chain behind symbol, nil if symbol is not in
// it. The last of a chain gives an empty slice that is not nil.
func following(chain []string, symbol string) []string {
	for i, s := range chain {
		if s == symbol {
			return chain[i+1:]
		}
	}
	return nil
}

// cutSign takes the sign and the spaces behind it off the front of s. Besides
// the hyphen a minus sign is read.
func cutSign(s string) (negative bool, rest string) {
	for _, sign := range [...]string{"-", "\u2212"} {
		if r, ok := strings.CutPrefix(s, sign); ok {
			return true, strings.TrimSpace(r)
		}
	}
	return false, strings.TrimSpace(strings.TrimPrefix(s, "+"))
}

// The limits on a number's length and exponent keep exact arithmetic cheap;
// no quantity that fits a float64 needs more.
const (
	maxDigits   = 800
	maxExponent = 400
)

// cutNumber splits the number off the front of s. The reason is empty if
// there is one.
func cutNumber(s string) (number, rest, reason string) {
	i, digits := 0, 0
	scan := func() {
		for i < len(s) && '0' <= s[i] && s[i] <= '9' {
			i++
			digits++
		}
	}
	scan()
	if i < len(s) && s[i] == '.' {
		i++
		scan()
	}
	switch {
	case digits == 0:
		return "", "", "no number before " + strconv.Quote(firstWord(s))
	case digits > maxDigits:
		return "", "", "too many digits"
	case i < len(s) && s[i] == ',':
		return "", "", "a comma may mean thousands or decimals; write 1200 or 1.2"
	}
	mantissa := i
	if i < len(s) && s[i]|0x20 == 'e' {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		from := i
		scan()
		if i == from {
			i = mantissa // an e that begins a word
		} else if e, err := strconv.Atoi(s[from:i]); err != nil || e > maxExponent {
			return "", "", "exponent beyond " + strconv.Itoa(maxExponent)
		}
	}
	return s[:i], s[i:], ""
}

// cutUnit splits the unit off the front of s: all of it if that is a unit
// (mm2, Ω/1000 ft), else what stands before the next digit (6ft3in).
func (k *kind) cutUnit(s string) (name, rest string) {
	s = strings.TrimSpace(s)
	i := strings.IndexAny(s, "0123456789")
	if i < 0 || k.find(s) != nil {
		return s, ""
	}
	return strings.TrimSpace(s[:i]), s[i:]
}

func firstWord(s string) string {
	const most = 20
	if i := strings.IndexFunc(s, unicode.IsSpace); i > 0 {
		s = s[:i]
	}
	if len(s) > most {
		cut := most
		for cut > 0 && !utf8.RuneStart(s[cut]) {
			cut--
		}
		s = s[:cut]
	}
	return s
}
