package units

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Quantity is the closed set of linear quantities of this package: every
// float64 type it defines, each in coherent SI units. [Temperature] is not
// one, since two temperatures cannot be added. Other packages can write
// generic functions over Quantity; their types cannot join it.
type Quantity interface {
	~float64
	Value
}

// A kind is the table row that makes a float64 type a quantity: what it is
// called, and the units it is read and written in.
type kind struct {
	typ  string // the Go type, for %#v
	name string // in plain words, for errors
	// units[0] writes the text that is read back exactly.
	units []unit
	// chains are the compounds that people write, largest unit first.
	chains [][]string
	// bare is the largest number read without a unit; 0 reads none.
	bare float64
}

// A unit is one way to write a quantity. Its factor to coherent SI is
// num/den, both as defined, so that reading rounds once; float is the
// exported constant of that unit, which TestFactors holds to num/den.
type unit struct {
	symbol string
	num    string // decimal digits, with an exponent at most
	den    uint64
	float  float64
	show   bool     // String may choose it
	also   []string // read too
}

// itself is the symbol of a number that is not divided by a unit. It is a
// unit to [Measure] in, not one to read.
const itself = "1"

// maxUnit is more than the longest spelling has, in bytes.
const maxUnit = 48

// find returns the unit written s. Letter case matters only in a prefix m or
// M: MW and mW differ by a thousand million, so neither is read for the
// other, but Miles are miles.
func (k *kind) find(s string) *unit {
	if len(s) > maxUnit {
		return nil
	}
	s = plainUnit(s)
	if u := k.match(s, func(a, b string) bool { return a == b }); u != nil || s == "" {
		return u
	}
	if s[0]|0x20 == 'm' && k.find(s[1:]) != nil {
		return k.match(s, func(a, b string) bool { return a[:1] == b[:1] && strings.EqualFold(a, b) })
	}
	return k.match(s, strings.EqualFold)
}

// match returns the unit with a spelling that is the same as s, which is
// plain. Where a spelling has a space, s may be written together, but not the
// other way round: "m m" is not a millimetre.
func (k *kind) match(s string, same func(spelling, s string) bool) *unit {
	is := func(spelling string) bool {
		spelling = plainUnit(spelling)
		return same(spelling, s) || same(strings.ReplaceAll(spelling, " ", ""), s)
	}
	for i := range k.units {
		if u := &k.units[i]; is(u.symbol) || slices.ContainsFunc(u.also, is) {
			return u
		}
	}
	return nil
}

// unitSpellings folds the characters that differ between keyboards. A
// multiplication sign is a space.
var unitSpellings = strings.NewReplacer(
	"\u00b5", "u", "\u03bc", "u", // micro sign, Greek mu
	"\u2126", "ohm", "\u03a9", "ohm", // ohm sign, Greek Omega
	"²", "2", "³", "3", "^2", "2", "^3", "3", "^-1", "-1", "⁻¹", "-1",
	" · ", " ", "·", " ", "⋅", " ", " * ", " ", "*", " ",
	" / ", "/", " /", "/", "/ ", "/", " (", "(",
	"°", "deg", "º", "deg", "′", "'", "’", "'", "″", `"`, "”", `"`,
)

// plainUnit returns s with one spelling of each character and single spaces.
func plainUnit(s string) string {
	plain := true
	for i := range len(s) {
		plain = plain && ' ' < s[i] && s[i] < utf8.RuneSelf && s[i] != '^' && s[i] != '*'
	}
	if plain {
		return s
	}
	return unitSpellings.Replace(strings.Join(strings.Fields(s), " "))
}

// accepted lists the units that a parse error offers.
func (k *kind) accepted() string {
	var b strings.Builder
	for _, u := range k.units {
		if u.symbol == itself {
			continue
		}
		if b.Len() > 0 {
			b.WriteString(", ")
		}
		b.WriteString(u.symbol)
	}
	return b.String()
}
