package weave

import (
	"errors"
	"fmt"
	"strings"

	"example.com/drawbar/units"
)

// An Error reports what is wrong with a chapter, and where.
type Error struct {
	Chapter string // the topic
	Block   string // such as `worked example "cable"` or "prose, block 3"; empty for the chapter itself
	Err     error  // what is missing, empty, unknown, unused or wrong
}

// Error returns `chapter voltagedrop: worked example "cable": ...`.
func (e *Error) Error() string {
	text := "chapter " + e.Chapter
	if e.Block != "" {
		text += ": " + e.Block
	}
	return text + ": " + e.Err.Error()
}

// Unwrap returns what is wrong.
func (e *Error) Unwrap() error { return e.Err }

// An InputError reports a value that an input does not take.
type InputError struct {
	Input   string // its name
	Value   string // as given
	Allowed string // such as "1 A to 100 A"; empty if only Err says it
	Err     error  // what found it: a [*units.RangeError], a [*units.ParseError] or an error of the reader
}

// Error returns "current = 900 A, want 1 A to 100 A", with the reason behind
// it if the value cannot be read at all, or what Err says where nothing can
// be listed.
func (e *InputError) Error() string {
	if e.Allowed == "" {
		return fmt.Sprintf("%s = %s: %v", e.Input, e.Value, e.Err)
	}
	text := e.Input + " = " + e.Value + ", want " + e.Allowed
	if unread, ok := errors.AsType[*units.ParseError](e.Err); ok {
		text += ": " + unread.Reason
	}
	return text
}

// Unwrap returns what found it.
func (e *InputError) Unwrap() error { return e.Err }

// A NoAnswerError reports changed inputs, each within its range, for which the
// solve function gives an error: together they have no answer.
type NoAnswerError struct {
	Err error // what the solve function returned, such as a [*units.RangeError]
}

// Error returns "these inputs have no answer: " and what Err says.
func (e *NoAnswerError) Error() string { return "these inputs have no answer: " + e.Err.Error() }

// Unwrap returns what the solve function returned.
func (e *NoAnswerError) Unwrap() error { return e.Err }

// An UnknownError reports a name that does not exist.
type UnknownError struct {
	Kind  string   // "topic", "example" or "input"
	Name  string   // as given
	Known []string // what exists
}

// Error returns `no input "curent"; there are current, one_way`.
func (e *UnknownError) Error() string {
	if len(e.Known) == 0 {
		return "no " + e.Kind + ` "` + e.Name + `"; there is none`
	}
	return "no " + e.Kind + ` "` + e.Name + `"; there are ` + strings.Join(e.Known, ", ")
}
