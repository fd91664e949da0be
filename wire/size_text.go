package wire

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// ParseSize returns the size written s: "10 AWG", "AWG 10", "#10", "4/0",
// "0000 AWG", "1/0 AWG", "250 kcmil", "250 MCM", "2.5 mm2", "2.5 mm²". A bare
// number is refused, since 4 may be a gauge or square millimetres; "4/0" and
// "0000" can only be a gauge and need no unit. Every error has concrete type
// [*units.ParseError].
func ParseSize(s string) (Size, error) {
	text := strings.ToLower(strings.Join(strings.Fields(s), ""))
	if digitsApart(s) {
		text = "" // "1 0 AWG" is not 10 AWG
	}
	fail := func(reason string) (Size, error) {
		return Size{}, &units.ParseError{Input: s, Want: "conductor size", Reason: reason}
	}
	number, named := cutGaugeName(text)
	switch aughts, isAught := parseAught(number); {
	case isAught:
		if size := Aught(aughts); size.IsValid() {
			return size, nil
		}
		return fail("want 1/0, 2/0, 3/0 or 4/0")
	case named:
		n, err := strconv.ParseUint(number, 10, 16)
		if err != nil || n == 0 || !AWG(int(n)).IsValid() {
			return fail("want a gauge from 40 to 1, or 1/0 to 4/0")
		}
		return AWG(int(n)), nil
	}
	if number, ok := cutSuffixes(text, "kcmil", "mcm"); ok {
		n, err := strconv.ParseUint(number, 10, 16)
		if size := Kcmil(int(n)); err == nil && size.IsValid() {
			return size, nil
		}
		return fail("want 250, 300, 350, 400 or 500 kcmil")
	}
	if number, ok := cutSuffixes(text, "mm²", "mm2", "mm^2", "sqmm"); ok {
		if area, err := units.Parse[units.Area](number + " mm2"); err == nil {
			if size := Metric(area); size.IsValid() {
				return size, nil
			}
		}
		return fail("want a nominal area of IEC 60228, 0.5 to 120 mm²")
	}
	return fail("want a gauge such as 10 AWG or 4/0, or kcmil, or mm²")
}

// digitsApart reports whether white space stands between two digits of s.
func digitsApart(s string) bool {
	fields := strings.Fields(s)
	for i := 1; i < len(fields); i++ {
		before, after := fields[i-1][len(fields[i-1])-1], fields[i][0]
		if '0' <= before && before <= '9' && '0' <= after && after <= '9' {
			return true
		}
	}
	return false
}

// MustSize is [ParseSize] for literals in tests and examples; it panics on
// an error.
func MustSize(s string) Size {
	size, err := ParseSize(s)
	if err != nil {
		panic(err)
	}
	return size
}

// cutGaugeName returns s without the words that mark a gauge, and whether it
// had one.
func cutGaugeName(s string) (number string, named bool) {
	for _, prefix := range [...]string{"awg", "#", "no."} {
		if rest, ok := strings.CutPrefix(s, prefix); ok {
			return rest, true
		}
	}
	return cutSuffixes(s, "awg", "ga.", "ga", "gauge")
}

func cutSuffixes(s string, suffixes ...string) (rest string, ok bool) {
	for _, suffix := range suffixes {
		if rest, ok := strings.CutSuffix(s, suffix); ok {
			return rest, true
		}
	}
	return s, false
}

// parseAught reads "3/0" and "000" as 3. The count may be one that no gauge
// has.
func parseAught(s string) (n int, ok bool) {
	if s != "" && strings.Trim(s, "0") == "" {
		return len(s), true
	}
	count, ok := strings.CutSuffix(s, "/0")
	if !ok {
		return 0, false
	}
	u, err := strconv.ParseUint(count, 10, 8)
	return int(u), err == nil
}

// String returns "10 AWG", "4/0 AWG", "250 kcmil", "2.5 mm²", or "no size".
func (s Size) String() string {
	switch {
	case s.system == gauge && s.n <= 0:
		return strconv.Itoa(1-int(s.n)) + "/0 AWG"
	case s.system == gauge:
		return strconv.Itoa(int(s.n)) + " AWG"
	case s.system == kcmil:
		return strconv.Itoa(int(s.n)) + " kcmil"
	case s.system == metric:
		return units.Significant(float64(s.n)/100, 6) + " mm²"
	}
	return "no size"
}

// MarshalText returns what String returns, or empty text for the zero Size.
func (s Size) MarshalText() ([]byte, error) {
	if !s.IsValid() {
		return []byte{}, nil
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads what [ParseSize] reads, with the same errors; empty
// text is the zero Size.
func (s *Size) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*s = Size{}
		return nil
	}
	size, err := ParseSize(string(text))
	if err == nil {
		*s = size
	}
	return err
}
