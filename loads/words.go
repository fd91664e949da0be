package loads

import (
	"slices"
	"strings"

	"example.com/drawbar/units"
)

// notGiven is what the zero of a kind prints.
const notGiven = "not given"

// A wording is what is allowed, where no number says it.
type wording string

func (w wording) String() string { return string(w) }

// word returns the word of kind i, which counts from 1.
func word(words []string, i uint8) string {
	if i >= 1 && int(i) <= len(words) {
		return words[i-1]
	}
	return notGiven
}

// marshalWord returns the word of kind i; the zero kind has empty text.
func marshalWord(op, field string, words []string, i uint8) ([]byte, error) {
	if i == 0 {
		return []byte{}, nil
	}
	if int(i) > len(words) {
		return nil, &units.RangeError{Op: op, Field: field, Value: i, Allowed: oneOf(words)}
	}
	return []byte(words[i-1]), nil
}

// unmarshalWord returns the kind that text names; empty text is the zero kind.
func unmarshalWord(want string, words []string, text []byte) (uint8, error) {
	if len(text) == 0 {
		return 0, nil
	}
	plain := strings.ToLower(strings.Join(strings.Fields(string(text)), " "))
	i := slices.Index(words, plain)
	if i < 0 {
		return 0, &units.ParseError{Input: string(text), Want: want, Reason: "want " + oneOf(words).String()}
	}
	return uint8(i + 1), nil
}

// oneOf says which words are allowed.
func oneOf(words []string) wording {
	last := len(words) - 1
	return wording(strings.Join(words[:last], ", ") + " or " + words[last])
}
