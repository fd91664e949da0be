package working

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// The small enumerations of this package are an index into a list of words;
// these three functions are their String, MarshalText and UnmarshalText.

// wordFor returns the i-th word, or typ and i for one that is not defined.
func wordFor(words []string, i uint8, typ string) string {
	if int(i) < len(words) {
		return words[i]
	}
	return typ + "(" + strconv.Itoa(int(i)) + ")"
}

// marshalWord returns the i-th word; one that is not defined is a
// [*units.RangeError].
func marshalWord(words []string, i uint8, typ string) ([]byte, error) {
	if int(i) < len(words) {
		return []byte(words[i]), nil
	}
	return nil, &units.RangeError{Op: "working.MarshalText", Field: typ, Value: i, Allowed: oneOf(words)}
}

// unmarshalWord returns the index of text among words; any other text is a
// [*units.ParseError].
func unmarshalWord(words []string, text []byte, what string) (uint8, error) {
	for i, w := range words {
		if w == string(text) {
			return uint8(i), nil
		}
	}
	return 0, &units.ParseError{Input: string(text), Want: what, Reason: "want " + oneOf(words).String()}
}

// oneOf is the allowed range of an enumeration.
type oneOf []string

func (w oneOf) String() string { return "one of " + strings.Join(w, "; ") }
