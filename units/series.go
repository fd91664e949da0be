package units

import (
	"math"
	"time"
)

// A Series is a quantity over time in steps of one length. Value i is the
// mean over the step that begins at Start + i*Step and ends where the next
// one begins: a Series[Power] of a load's watts, a Series[Irradiance] of a
// weather file. What holds at one end of a step, such as the charge left in
// a battery, is no mean; a field with such values says so in its name
// (ChargeAtEnd).
//
// A Series is usable as it is written: Start in the years 1 to 9999, Step
// above zero, and a span of at most 292 years, which is what a
// [time.Duration] holds. [Series.Check] and [CheckSeries] are the doors.
// Start carries the time zone, and only [Series.Days] and [Series.Months]
// look at it.
//
// Values need not be finite. Arithmetic passes NaN and infinities on as
// float64 does, so a total is finite only if every value is; use
// [CheckSeries] to learn which one is not.
//
// Left out on purpose: gaps, uneven steps, interpolation between means,
// moving windows, and functions applied value by value, for which a loop
// over Values is shorter and faster.
type Series[T any] struct {
	Start  time.Time     // when the first step begins
	Step   time.Duration // length of every step, > 0
	Values []T           // means over the steps
}

// PeriodEnding returns the series of data labelled with the end of each
// period, as weather files and utility meters label "hour ending 01:00" the
// hour from 00:00 to 01:00. The first label is one step after the Start. The
// values are not copied.
func PeriodEnding[T any](firstLabel time.Time, step time.Duration, values []T) Series[T] {
	return Series[T]{Start: firstLabel.Add(-step), Step: step, Values: values}
}

// Len returns the number of values.
func (s Series[T]) Len() int { return len(s.Values) }

// Time returns when step i begins, in the zone of Start. Step Len would
// begin at the end of the series; for an i that is not 0 to Len, and for a
// series that [Series.Check] refuses, Time returns the zero Time.
func (s Series[T]) Time(i int) time.Time {
	if !s.valid() || i < 0 || i > len(s.Values) {
		return time.Time{}
	}
	return s.time(i)
}

// time is [Series.Time] for an i that is in range.
func (s Series[T]) time(i int) time.Time {
	return s.Start.Add(time.Duration(i) * s.Step)
}

// End returns when the last step ends, which is the Start of an empty
// series. It is the zero Time for a series that [Series.Check] refuses.
func (s Series[T]) End() time.Time { return s.Time(len(s.Values)) }

// Index returns the step that t is in. The start of a step is in it, its end
// is in the next. Outside the series, and for one that [Series.Check]
// refuses, ok is false.
func (s Series[T]) Index(t time.Time) (i int, ok bool) {
	if !s.valid() || t.Before(s.Start) {
		return 0, false
	}
	// Where t is further away than a Duration can say, Sub gives the
	// longest, in which no valid series has a step left.
	n := t.Sub(s.Start) / s.Step
	if n >= time.Duration(len(s.Values)) {
		return 0, false
	}
	return int(n), true
}

// At returns the mean over the step that t is in, by [Series.Index].
func (s Series[T]) At(t time.Time) (x T, ok bool) {
	i, ok := s.Index(t)
	if !ok {
		return x, false
	}
	return s.Values[i], true
}

// The first instants of the years 1 and 10000 in UTC, in Unix time. Between
// them no sum of an instant and a Duration overflows.
const (
	firstSecond = -62_135_596_800
	pastSeconds = 253_402_300_800
)

// valid reports whether [Series.Check] returns nil.
func (s Series[T]) valid() bool {
	return s.validStart() && s.Step > 0 && len(s.Values) <= s.mostSteps()
}

func (s Series[T]) validStart() bool {
	t := s.Start.Unix()
	return firstSecond <= t && t < pastSeconds
}

// mostSteps returns how many steps a time.Duration holds, for a Step > 0.
func (s Series[T]) mostSteps() int {
	return int(min(math.MaxInt64/s.Step, math.MaxInt))
}

// view returns the steps from i up to j, sharing the values. Its capacity
// ends with it, so that appending to it leaves s alone.
func (s Series[T]) view(i, j int) Series[T] {
	return Series[T]{Start: s.time(i), Step: s.Step, Values: s.Values[i:j:j]}
}
