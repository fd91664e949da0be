package units

import (
	"errors"
	"fmt"
	"strconv"
)

// ErrRange is what every [*RangeError] matches under [errors.Is].
var ErrRange = errors.New("out of range")

// ErrSyntax is what every [*ParseError] matches under [errors.Is].
var ErrSyntax = errors.New("invalid syntax")

// A RangeError reports an input, or a result, outside the range that the
// documentation states.
type RangeError struct {
	Op      string       // the function, such as "wire.VoltageDrop"
	Field   string       // the input field or result, such as "Current"
	Value   any          // as given
	Allowed fmt.Stringer // the object the check itself used, such as a [Bounds]
}

// Error returns "wire.VoltageDrop: Current = -2 A, want > 0 A".
func (e *RangeError) Error() string {
	// Nine digits: as many as the check compares, so that 15.00004 A is not
	// refused as 15 A.
	value := fmt.Sprint(e.Value)
	if v, ok := e.Value.(Value); ok {
		value = fmt.Sprintf("%.9v", v)
	}
	return fmt.Sprintf("%s: %s = %s, want %v", e.Op, e.Field, value, e.Allowed)
}

// Unwrap returns [ErrRange].
func (e *RangeError) Unwrap() error { return ErrRange }

// A ParseError reports text that is not a quantity.
type ParseError struct {
	Input  string // the whole text
	Want   string // what it should be, such as "voltage"
	Reason string // in a few words, with the units that are read
}

// Error returns the input, quoted, with what it should have been and why it
// is not.
func (e *ParseError) Error() string {
	return "parsing " + strconv.Quote(e.Input) + " as " + e.Want + ": " + e.Reason
}

// Unwrap returns [ErrSyntax].
func (e *ParseError) Unwrap() error { return ErrSyntax }

// A wording is what is allowed, where no number says it.
type wording string

func (w wording) String() string { return string(w) }
