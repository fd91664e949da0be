package wire

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// ParseSize returns the size written s, in any letter case and spacing:
//
//	10 AWG, AWG 10, 10-AWG, #10, #10 AWG, No. 10, 10 ga, 10 gauge
//	4/0, 4/0 AWG, 0000, 4 aught
//	250 kcmil, 250 MCM, 250000 cmil
//	2.5 mm², 2.5 mm2, 2.5 sq mm, 2,5 mm²
//
// A bare number is refused, since 4 may be a gauge or square millimetres; "4/0"
// and "0000" can only be a gauge and need no unit. Every error has concrete
// type [*units.ParseError].
func ParseSize(s string) (Size, error) {
	text := strings.ToLower(strings.Join(strings.Fields(unhyphened(s)), ""))
	if digitsApart(s) {
		text = "" // "1 0 AWG" is not 10 AWG
	}
	size, want := parseSize(text)
	if want != "" {
		return Size{}, &units.ParseError{Input: s, Want: "conductor size", Reason: want}
	}
	return size, nil
}

// parseSize reads text without spaces and capitals; want says what is wrong.
func parseSize(text string) (size Size, want string) {
	number, named := cutGaugeName(text)
	switch aughts, isAught := parseAught(number); {
	case isAught:
		return orWant(Aught(aughts), "want 1/0, 2/0, 3/0 or 4/0")
	case named:
		n, err := strconv.ParseUint(number, 10, 16)
		if err != nil {
			n = thinnestGauge + 1
		}
		return orWant(AWG(int(n)), "want a gauge from 40 to 1, or 1/0 to 4/0")
	}
	if number, ok := cutSuffixes(text, "kcmil", "mcm"); ok {
		return orWant(parseKcmil(number), "want 250, 300, 350, 400 or 500 kcmil")
	}
	if number, ok := cutSuffixes(text, "circularmils", "cmil"); ok {
		thousands, _ := strings.CutSuffix(number, "000")
		if thousands == number {
			thousands = ""
		}
		return orWant(parseKcmil(thousands), "want 250000, 300000, 350000, 400000 or 500000 circular mils")
	}
	if number, ok := cutSuffixes(text, "mm²", "mm2", "mm^2", "sqmm", "sq.mm", "mmsq", "squaremillimetres", "squaremillimeters"); ok {
		return orWant(parseMetric(number), "want a nominal area of IEC 60228, 0.5 to 120 mm²")
	}
	return Size{}, "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"
}

// orWant returns the size if it is one, else want.
func orWant(s Size, want string) (Size, string) {
	if s.IsValid() {
		return s, ""
	}
	return Size{}, want
}

// parseKcmil reads thousands of circular mils.
func parseKcmil(number string) Size {
	n, err := strconv.ParseUint(number, 10, 16)
	if err != nil {
		return Size{}
	}
	return Kcmil(int(n))
}

// parseMetric reads square millimetres. One comma with a digit or two behind
// it, as in 0,75, is a decimal point: with three it could mean thousands.
func parseMetric(number string) Size {
	if whole, part, ok := strings.Cut(number, ","); ok && len(part) <= 2 {
		number = whole + "." + part
	}
	area, err := units.Parse[units.Area](number + " mm2")
	if err != nil {
		return Size{}
	}
	return Metric(area)
}

// unhyphened returns s without the hyphens that join a number to a word, as in
// "10-gauge". A hyphen that could be a sign stays.
func unhyphened(s string) string {
	var b strings.Builder
	for i := range len(s) {
		if s[i] == '-' && 0 < i && i < len(s)-1 && (isDigit(s[i-1]) && isLetter(s[i+1]) || isLetter(s[i-1]) && isDigit(s[i+1])) {
			continue
		}
		b.WriteByte(s[i])
	}
	return b.String()
}

func isDigit(c byte) bool  { return '0' <= c && c <= '9' }
func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

// digitsApart reports whether white space stands between two digits of s.
func digitsApart(s string) bool {
	fields := strings.Fields(s)
	for i := 1; i < len(fields); i++ {
		if isDigit(fields[i-1][len(fields[i-1])-1]) && isDigit(fields[i][0]) {
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

// cutGaugeName returns s without the words that mark a gauge, "AWG #" in front
// and "gauge" behind, and whether it had one.
func cutGaugeName(s string) (number string, named bool) {
	number = s
	for _, prefix := range [...]string{"awg", "gauge", "no.", "no", "#"} {
		rest, ok := strings.CutPrefix(number, prefix)
		number, named = rest, named || ok
	}
	rest, ok := cutSuffixes(number, "awg", "ga.", "ga", "gauge")
	return rest, named || ok
}

func cutSuffixes(s string, suffixes ...string) (rest string, ok bool) {
	for _, suffix := range suffixes {
		if rest, ok := strings.CutSuffix(s, suffix); ok {
			return rest, true
		}
	}
	return s, false
}

// parseAught reads "3/0", "000" and "3aught" as 3. The count may be one that no
// gauge has.
func parseAught(s string) (n int, ok bool) {
	if s != "" && strings.Trim(s, "0") == "" {
		return len(s), true
	}
	count, ok := cutSuffixes(s, "/0", "aught", "ought")
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
