package units

import "strings"

// Quantity is the closed set of linear quantities of this package: every
// float64 type it defines, each in coherent SI units. [Temperature] is not
// one, since two temperatures cannot be added. Other packages can write
// generic functions over Quantity; their types cannot join it.
type Quantity interface {
	~float64
	kind() *kind
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

// find returns the unit written s. Letter case matters only where it tells
// two units apart: a first letter m or M must match, for mW and MW differ by
// a thousand million.
func (k *kind) find(s string) *unit {
	s = plainUnit(s)
	for i := range k.units {
		if u := &k.units[i]; u.is(s, func(a, b string) bool { return a == b }) {
			return u
		}
	}
	for i := range k.units {
		if u := &k.units[i]; u.is(s, sameButCase) {
			return u
		}
	}
	return nil
}

func (u *unit) is(s string, same func(a, b string) bool) bool {
	if same(plainUnit(u.symbol), s) {
		return true
	}
	for _, a := range u.also {
		if same(plainUnit(a), s) {
			return true
		}
	}
	return false
}

func sameButCase(a, b string) bool {
	if a == "" || b == "" || (a[0]|0x20 == 'm' && a[0] != b[0]) {
		return false
	}
	return strings.EqualFold(a, b)
}

// unitSpellings folds the characters that differ between keyboards.
var unitSpellings = strings.NewReplacer(
	"\u00b5", "u", "\u03bc", "u", // micro sign, Greek mu
	"\u2126", "ohm", "\u03a9", "ohm", // ohm sign, Greek Omega
	"²", "2", "³", "3", "^", "", "·", "", "⋅", "", "*", "", " ", "",
	"°", "deg", "º", "deg", "′", "'", "’", "'", "″", `"`, "”", `"`,
)

func plainUnit(s string) string { return unitSpellings.Replace(s) }

// accepted lists the units that a parse error offers.
func (k *kind) accepted() string {
	var b strings.Builder
	for i, u := range k.units {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(u.symbol)
	}
	return b.String()
}
