package weave

import "strings"

// An Error reports what is wrong with a chapter, and where.
type Error struct {
	Chapter string // the topic
	Block   string // such as `worked example "cable"` or "prose, block 3"; empty for the chapter itself
	Problem string // what is missing, empty, unknown or unused
	Err     error  // what caused it, or nil
}

// Error returns `chapter voltagedrop: worked example "cable": ...`.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString("chapter " + e.Chapter)
	if e.Block != "" {
		b.WriteString(": " + e.Block)
	}
	if e.Problem != "" {
		b.WriteString(": " + e.Problem)
	}
	if e.Err != nil {
		b.WriteString(": " + e.Err.Error())
	}
	return b.String()
}

// Unwrap returns the cause, if there is one.
func (e *Error) Unwrap() error { return e.Err }

// An InputError reports a value that an input does not take.
type InputError struct {
	Input   string // its name
	Value   string // as given
	Allowed string // such as "1 A to 100 A"
	Err     error  // what found it: a [*units.RangeError], a [*units.ParseError] or an error of the reader
}

// Error returns "current = 900 A, want 1 A to 100 A".
func (e *InputError) Error() string {
	return e.Input + " = " + e.Value + ", want " + e.Allowed
}

// Unwrap returns what found it.
func (e *InputError) Unwrap() error { return e.Err }

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
