package units

import (
	"iter"
	"time"
)

// Days returns the days of s in order, each a view that shares the values of
// s. A day is a date of the zone of s.Start, and begins at the first instant
// that bears its date, whether or not its clocks show midnight then: it has
// 23 or 25 hours when they change, and a date that a place skipped, as Samoa
// did 2011-12-30, has no view. A value belongs to the day in which its step
// begins. The first day and the last are as much of them as s has. Together
// the days are s: nothing is left out and nothing comes twice.
//
// Where clocks were set back over midnight (Newfoundland until 2011, at
// 00:01), the old date comes again after the new day has begun; those hours
// belong to the new day.
//
// An empty series has no days, nor has one that [Series.Check] refuses.
// No day is allocated.
func (s Series[T]) Days() iter.Seq[Series[T]] {
	return func(yield func(Series[T]) bool) { s.split(dayAfter, yield) }
}

// Months returns the calendar months of s, with the rules of [Series.Days].
func (s Series[T]) Months() iter.Seq[Series[T]] {
	return func(yield func(Series[T]) bool) { s.split(monthAfter, yield) }
}

// A civilDay is a date, counted in days from 1970-01-01.
type civilDay int64

const secondsPerDay = 86400

// dayAfter returns the date after d.
func dayAfter(d civilDay) civilDay { return d + 1 }

// monthAfter returns the first of the month after that of d.
func monthAfter(d civilDay) civilDay {
	year, month, _ := time.Unix(int64(d)*secondsPerDay, 0).UTC().Date()
	return dateOf(time.Date(year, month+1, 1, 0, 0, 0, 0, time.UTC))
}

// split yields the views of s that begin with its first step and then with
// the first one at or after the beginning of next of the date before. It
// looks at the zone once a view, not once a value.
func (s Series[T]) split(next func(civilDay) civilDay, yield func(Series[T]) bool) {
	if !s.valid() {
		return
	}
	for i := 0; i < len(s.Values); {
		t := s.time(i)
		j := s.firstFrom(beginning(next(dayOf(t)), t))
		if !yield(s.view(i, j)) {
			return
		}
		i = j
	}
}

// firstFrom returns the first step that begins at t or later, t being after
// the start, or Len.
func (s Series[T]) firstFrom(t time.Time) int {
	n := (t.Sub(s.Start)-1)/s.Step + 1
	return int(min(n, time.Duration(len(s.Values))))
}

// dateOf returns the date that t bears in its zone.
func dateOf(t time.Time) civilDay {
	_, offset := t.Zone()
	local := t.Unix() + int64(offset)
	d := local / secondsPerDay
	if local%secondsPerDay < 0 {
		d-- // towards the past, not towards 1970
	}
	return civilDay(d)
}

// dayOf returns the day that t belongs to: the latest date borne up to t. It
// is later than the date of t where clocks have just been set back over
// midnight.
func dayOf(t time.Time) civilDay {
	// Offsets are less than a day, so two days ago no date was later than
	// that of t.
	const enough = 48 * time.Hour
	d := dateOf(t)
	for !beginning(d+1, t.Add(-enough)).After(t) {
		d++
	}
	return d
}

// beginning returns the first instant after t that bears the date d or a
// later one in the zone of t, which bears an earlier one. It goes from one
// change of the clocks to the next, since between them dates only grow;
// [time.Date] does not say what it makes of a midnight that does not exist,
// or comes twice.
func beginning(d civilDay, t time.Time) time.Time {
	for {
		_, offset := t.Zone()
		at := max(int64(d)*secondsPerDay-int64(offset), t.Unix())
		_, end := t.ZoneBounds()
		if !end.IsZero() && !end.After(t) {
			// On the last day of a leap year ZoneBounds can give that
			// day's beginning as the end. No clock changes before the
			// year is over.
			end = t.Truncate(secondsPerDay * time.Second).Add(secondsPerDay * time.Second)
		}
		if end.IsZero() || at < end.Unix() {
			return time.Unix(at, 0)
		}
		t = end
	}
}
