package units

import (
	"errors"
	"fmt"
	"strconv"
	"time"
)

// ErrShape is what every [*ShapeError] matches under [errors.Is].
var ErrShape = errors.New("different shape")

// A Shape is what two series must have in common to be added, or to be used
// in one calculation step by step.
type Shape struct {
	Start time.Time     // when the first step begins
	Step  time.Duration // length of every step
	Len   int           // number of steps
}

// Shape returns the shape of s.
func (s Series[T]) Shape() Shape { return Shape{s.Start, s.Step, len(s.Values)} }

// Equal reports whether h and o begin at the same instant, whatever zone it
// is written in, and have the same step and length. Use it instead of ==.
func (h Shape) Equal(o Shape) bool {
	return h.Step == o.Step && h.Len == o.Len && h.Start.Equal(o.Start)
}

// Check returns nil if got equals h, else a [*ShapeError] with op, field, got
// and h.
func (h Shape) Check(op, field string, got Shape) error {
	if h.Equal(got) {
		return nil
	}
	return &ShapeError{Op: op, Field: field, Value: got, Want: h}
}

// String returns "8760 × 1h0m0s from 2025-01-01T00:00:00-05:00".
func (h Shape) String() string {
	return fmt.Sprintf("%d × %v from %s", h.Len, h.Step, h.Start.Format(time.RFC3339Nano))
}

// A ShapeError reports a series whose shape is not the one it should have.
type ShapeError struct {
	Op    string // the function, such as "units.AddTo"
	Field string // the series, such as "b"
	Value Shape  // its shape
	Want  Shape  // the shape it should have
}

// Error returns "units.AddTo: b = 24 × 1h0m0s from …, want 48 × 30m0s from …".
func (e *ShapeError) Error() string {
	return fmt.Sprintf("%s: %s = %v, want %v", e.Op, e.Field, e.Value, e.Want)
}

// Unwrap returns [ErrShape].
func (e *ShapeError) Unwrap() error { return ErrShape }

// A Span is the time from Start up to End, End not included.
type Span struct {
	Start time.Time // included
	End   time.Time // not included
}

// Span returns the time that s covers. It is the zero Span for a series that
// [Series.Check] refuses.
func (s Series[T]) Span() Span {
	if !s.valid() {
		return Span{}
	}
	return Span{s.Start, s.End()}
}

// Covers reports whether all of o is in p.
func (p Span) Covers(o Span) bool { return !o.Start.Before(p.Start) && !o.End.After(p.End) }

// String returns "2025-01-01T00:00:00Z to 2025-01-02T00:00:00Z".
func (p Span) String() string {
	return p.Start.Format(time.RFC3339Nano) + " to " + p.End.Format(time.RFC3339Nano)
}

// Check returns nil if Start is in the years 1 to 9999, Step is above zero
// and the span of s fits in a [time.Duration], else a [*RangeError] with op
// and the field followed by ".Start", ".Step" or ".Len".
func (s Series[T]) Check(op, field string) error {
	if !s.validStart() {
		return &RangeError{Op: op, Field: field + ".Start", Value: s.Start,
			Allowed: Span{time.Unix(firstSecond, 0).UTC(), time.Unix(pastSeconds, 0).UTC()}}
	}
	if !(s.Step > 0) {
		return Above(0*Second).Check(op, field+".Step", ElapsedOf(s.Step))
	}
	if most := s.mostSteps(); len(s.Values) > most {
		return &RangeError{Op: op, Field: field + ".Len", Value: len(s.Values), Allowed: stepCount(most)}
	}
	return nil
}

// A stepCount is the largest number of steps a series may have.
type stepCount int

func (n stepCount) String() string { return "<= " + strconv.Itoa(int(n)) }

// CheckSeries is the door for a series that comes from outside: it returns
// what [Series.Check] returns, and else, for the first value that is not
// allowed, the error of allowed with the field followed by ".Values[37]". The
// allowed are [Bounds] or [TemperatureBounds]; the zero Bounds allow every
// finite number.
func CheckSeries[T any, B interface {
	Contains(T) bool
	Check(op, field string, x T) error
}](op, field string, s Series[T], allowed B) error {
	if err := s.Check(op, field); err != nil {
		return err
	}
	for i, x := range s.Values {
		if !allowed.Contains(x) {
			return allowed.Check(op, field+".Values["+strconv.Itoa(i)+"]", x)
		}
	}
	return nil
}
