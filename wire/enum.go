package wire

import (
	"strings"

	"example.com/drawbar/units"
)

// The enumerations of this package are text in JSON and elsewhere; these are
// their words, each at the place of its number.
var (
	strandWords = []string{"stranded", "solid", "flexible"}
	basisWords  = []string{"copper and geometry", "IEC 60228", "resistivity given", "resistance stated",
		"metal and geometry", "NEC Table 8", "NBS Handbook 100"}
	governWords = []string{"insulation", "terminals", "device table"}
	limitWords  = []string{"ampacity", "next standard rating", "small conductor", "150 % of ampacity"}
)

// wordOf returns the word of i, or "unknown".
func wordOf(words []string, i uint8) string {
	if int(i) < len(words) {
		return words[i]
	}
	return "unknown"
}

// wordText returns the word of i as text.
func wordText(op string, words []string, i uint8) ([]byte, error) {
	if int(i) < len(words) {
		return []byte(words[i]), nil
	}
	return nil, &units.RangeError{Op: op, Field: "value", Value: i, Allowed: wordList(words)}
}

// readWord finds text among words, in any letter case.
func readWord(want string, words []string, text []byte) (uint8, error) {
	for i, w := range words {
		if strings.EqualFold(w, strings.TrimSpace(string(text))) {
			return uint8(i), nil
		}
	}
	return 0, &units.ParseError{Input: string(text), Want: want, Reason: "want one of " + wordList(words).String()}
}

// wordList is the range of an enumeration.
type wordList []string

// String lists the words.
func (w wordList) String() string { return strings.Join(w, ", ") }

// String returns "copper and geometry", "IEC 60228", "resistivity given",
// "resistance stated", "metal and geometry", "NEC Table 8" or "NBS Handbook
// 100".
func (b Basis) String() string { return wordOf(basisWords, uint8(b)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (b Basis) MarshalText() ([]byte, error) {
	return wordText("wire.Basis.MarshalText", basisWords, uint8(b))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves b alone.
func (b *Basis) UnmarshalText(text []byte) error {
	i, err := readWord("basis", basisWords, text)
	if err == nil {
		*b = Basis(i)
	}
	return err
}

// String returns "insulation", "terminals" or "device table".
func (g Governs) String() string { return wordOf(governWords, uint8(g)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (g Governs) MarshalText() ([]byte, error) {
	return wordText("wire.Governs.MarshalText", governWords, uint8(g))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves g alone.
func (g *Governs) UnmarshalText(text []byte) error {
	i, err := readWord("governing limit", governWords, text)
	if err == nil {
		*g = Governs(i)
	}
	return err
}

// String returns "ampacity", "next standard rating", "small conductor" or
// "150 % of ampacity".
func (l LimitRule) String() string { return wordOf(limitWords, uint8(l)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (l LimitRule) MarshalText() ([]byte, error) {
	return wordText("wire.LimitRule.MarshalText", limitWords, uint8(l))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves l alone.
func (l *LimitRule) UnmarshalText(text []byte) error {
	i, err := readWord("limit rule", limitWords, text)
	if err == nil {
		*l = LimitRule(i)
	}
	return err
}

// String returns "stranded", "solid" or "flexible".
func (s Strand) String() string { return wordOf(strandWords, uint8(s)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (s Strand) MarshalText() ([]byte, error) {
	return wordText("wire.Strand.MarshalText", strandWords, uint8(s))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves s alone.
func (s *Strand) UnmarshalText(text []byte) error {
	i, err := readWord("strand", strandWords, text)
	if err == nil {
		*s = Strand(i)
	}
	return err
}
