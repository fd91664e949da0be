package units

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
)

// An Opt is a value that may not have been given, told apart from a value
// that was given as zero: no idle power stated, or 0 W stated. The zero value
// is not given. An Opt is comparable if T is.
//
// Tag a field of an input omitzero and it is left out of JSON when not given.
type Opt[T any] struct {
	value T // the zero T if not set, so that == works
	set   bool
}

// Some returns v as given.
func Some[T any](v T) Opt[T] { return Opt[T]{value: v, set: true} }

// None returns a T that was not given, as the zero Opt is.
func None[T any]() Opt[T] { return Opt[T]{} }

// Get returns the value and whether it was given. If it was not, the value
// is the zero T.
func (o Opt[T]) Get() (T, bool) { return o.value, o.set }

// Or returns the value if it was given, else other.
func (o Opt[T]) Or(other T) T {
	if o.set {
		return o.value
	}
	return other
}

// IsSet reports whether the value was given.
func (o Opt[T]) IsSet() bool { return o.set }

// IsZero reports whether the value was not given; a given zero is not.
// Package encoding/json asks it for omitzero.
func (o Opt[T]) IsZero() bool { return !o.set }

// String returns the value as fmt prints it, or "not given".
func (o Opt[T]) String() string {
	if !o.set {
		return "not given"
	}
	return fmt.Sprint(o.value)
}

// A TextError reports a type that has no text to be read from or written as.
type TextError struct {
	Op   string // "units.Opt.MarshalText" or "units.Opt.UnmarshalText"
	Type string // the Go type, such as "float64"
	Want string // the interface it lacks, such as "encoding.TextMarshaler"
}

// Error returns "units.Opt.MarshalText: float64 is not an
// encoding.TextMarshaler".
func (e *TextError) Error() string { return e.Op + ": " + e.Type + " is not an " + e.Want }

// MarshalText returns the text of the value, or empty text if it was not
// given. It is a [*TextError] if T has no MarshalText; other errors are those
// of T.
func (o Opt[T]) MarshalText() ([]byte, error) {
	m, ok := any(&o.value).(encoding.TextMarshaler)
	switch {
	case !ok:
		return nil, &TextError{Op: "units.Opt.MarshalText", Type: typeName[T](), Want: "encoding.TextMarshaler"}
	case !o.set:
		return []byte{}, nil
	}
	return m.MarshalText()
}

// UnmarshalText reads the text of a value; empty text is "not given". It is a
// [*TextError] if T has no UnmarshalText; other errors are those of T, and
// leave o alone.
func (o *Opt[T]) UnmarshalText(text []byte) error {
	var v T
	u, ok := any(&v).(encoding.TextUnmarshaler)
	if !ok {
		return &TextError{Op: "units.Opt.UnmarshalText", Type: typeName[T](), Want: "encoding.TextUnmarshaler"}
	}
	if len(text) == 0 {
		*o = Opt[T]{}
		return nil
	}
	if err := u.UnmarshalText(text); err != nil {
		return err
	}
	*o = Some(v)
	return nil
}

func typeName[T any]() string { return reflect.TypeFor[T]().String() }

// MarshalJSON returns the JSON of the value, or null if it was not given.
func (o Opt[T]) MarshalJSON() ([]byte, error) {
	if !o.set {
		return []byte("null"), nil
	}
	return json.Marshal(o.value)
}

// UnmarshalJSON reads the JSON of a value; null is "not given", and so is ""
// for a T that is written as text. Errors are those of T and of package
// encoding/json, and leave o alone.
func (o *Opt[T]) UnmarshalJSON(data []byte) error {
	var v T
	_, isText := any(&v).(encoding.TextUnmarshaler)
	if s := string(data); s == "null" || s == `""` && isText {
		*o = Opt[T]{}
		return nil
	}
	if err := json.Unmarshal(data, &v); err != nil {
		return err
	}
	*o = Some(v)
	return nil
}
