package inverter

import (
	"slices"
	"strconv"

	"example.com/drawbar/units"
)

// A Kind is how a load starts. The zero value is not stated.
type Kind uint8

// The kinds of loads.
const (
	// SteadyLoad takes no more at its start than running, but for a moment too
	// short to count: a heater, an electronic supply.
	SteadyLoad Kind = iota + 1
	// MotorLoad takes several times its running current until it is up to speed:
	// a pump, a compressor, a fan of more than a few watts.
	MotorLoad
)

var kindWords = [...]string{"not stated", "steady", "motor"}

// String returns "steady", "motor" or "not stated"; a value that is not
// defined prints its number.
func (k Kind) String() string { return word(kindWords[:], "Kind", uint8(k)) }

// word returns the word of a choice, or its number if there is none.
func word(words []string, name string, i uint8) string {
	if int(i) < len(words) {
		return words[i]
	}
	return name + "(" + strconv.Itoa(int(i)) + ")"
}

// checkWord refuses a choice that is not defined.
func checkWord(op, field string, words []string, v interface{ String() string }, i uint8) error {
	if int(i) >= len(words) {
		return &units.RangeError{Op: op, Field: field, Value: v, Allowed: allowed(oneOf(words))}
	}
	return nil
}

// marshalWord returns the word of a choice, empty text for the zero value.
func marshalWord(op, field string, words []string, v interface{ String() string }, i uint8) ([]byte, error) {
	if i == 0 {
		return []byte{}, nil
	}
	if err := checkWord(op, field, words, v, i); err != nil {
		return nil, err
	}
	return []byte(words[i]), nil
}

// unmarshalWord returns the choice that text names; empty text is the zero
// value.
func unmarshalWord(want string, words []string, text []byte) (uint8, error) {
	if len(text) == 0 {
		return 0, nil
	}
	if i := slices.Index(words[1:], string(text)); i >= 0 {
		return uint8(i + 1), nil
	}
	return 0, &units.ParseError{Input: string(text), Want: want, Reason: "want " + oneOf(words[1:])}
}

// oneOf says "a, b or c".
func oneOf(words []string) string {
	text := words[0]
	for i, w := range words[1:] {
		if i == len(words)-2 {
			text += " or " + w
		} else {
			text += ", " + w
		}
	}
	return text
}
