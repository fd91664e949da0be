package loads

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.com/drawbar/units"
)

// A Clock is what a clock on the wall shows, whatever the zone: 00:00 to
// 24:00. The zero value is midnight, with which a day begins.
type Clock struct {
	Hour   int // 0 to 24
	Minute int // 0 to 59; 0 at 24 h
}

// ParseClock reads "18:30" and "5:05". Every error has concrete type
// [*units.ParseError].
func ParseClock(s string) (Clock, error) {
	hour, minute, ok := strings.Cut(strings.TrimSpace(s), ":")
	h, errH := strconv.ParseUint(hour, 10, 8)
	m, errM := strconv.ParseUint(minute, 10, 8)
	c := Clock{Hour: int(h), Minute: int(m)}
	if !ok || errH != nil || errM != nil || len(hour) > 2 || len(minute) != 2 || !c.valid() {
		return Clock{}, &units.ParseError{Input: s, Want: "a time of day", Reason: "want 00:00 to 24:00"}
	}
	return c, nil
}

// String returns "18:30".
func (c Clock) String() string { return fmt.Sprintf("%02d:%02d", c.Hour, c.Minute) }

// MarshalText returns what String does; a time that no clock shows is a
// [*units.RangeError].
func (c Clock) MarshalText() ([]byte, error) {
	if !c.valid() {
		return nil, &units.RangeError{Op: "loads.Clock.MarshalText", Field: "Clock", Value: c, Allowed: wording("00:00 to 24:00")}
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads what [ParseClock] reads, with the same errors, which
// leave c alone.
func (c *Clock) UnmarshalText(text []byte) error {
	read, err := ParseClock(string(text))
	if err == nil {
		*c = read
	}
	return err
}

func (c Clock) valid() bool {
	return c.Hour >= 0 && c.Minute >= 0 && c.Minute < 60 && (c.Hour < 24 || c.Hour == 24 && c.Minute == 0)
}

// sinceMidnight returns the time of day.
func (c Clock) sinceMidnight() time.Duration {
	return time.Duration(c.Hour)*time.Hour + time.Duration(c.Minute)*time.Minute
}

const wholeDay = 24 * time.Hour

// A Window is a part of every day in which a load is in use. It may pass
// midnight: 18:30 to 05:30 is eleven hours. A whole day is 00:00 to 24:00.
type Window struct {
	From Clock `json:"from"` // when it begins, 00:00 to 23:59
	To   Clock `json:"to"`   // when it ends, not From
}

// String returns "18:30 to 05:30".
func (w Window) String() string { return w.From.String() + " to " + w.To.String() }

// Length returns how long the window is, by the clock; 0 for a window that
// [Audit] refuses.
func (w Window) Length() units.Elapsed {
	if !w.valid() {
		return 0
	}
	return units.ElapsedOf(w.length())
}

func (w Window) valid() bool {
	return w.From.valid() && w.To.valid() && w.From.Hour < 24 && w.From != w.To
}

// length is Length for a window that is valid.
func (w Window) length() time.Duration {
	d := w.To.sinceMidnight() - w.From.sinceMidnight()
	if d <= 0 {
		d += wholeDay
	}
	return d
}

// meets reports whether two windows that are valid have a time in common.
func (w Window) meets(o Window) bool {
	apart := o.From.sinceMidnight() - w.From.sinceMidnight()
	if apart < 0 {
		apart += wholeDay
	}
	return apart < w.length() || wholeDay-apart < o.length()
}

// within returns how much of d, beginning at the time of day from, is in the
// window. d is at most a day.
func (w Window) within(from, d time.Duration) (in time.Duration) {
	begin := w.From.sinceMidnight()
	for day := -wholeDay; day <= wholeDay; day += wholeDay {
		first := max(from, begin+day)
		last := min(from+d, begin+day+w.length())
		in += max(0, last-first)
	}
	return in
}

// checkWindows returns all that is wrong with the windows of a load.
func checkWindows(op string, windows []Window) faults {
	var f faults
	for i, w := range windows {
		field := func() string { return "Windows[" + strconv.Itoa(i) + "]" }
		if !w.valid() {
			f.add(&units.RangeError{Op: op, Field: field(), Value: w, Allowed: wording("00:00 to 24:00, begin and end apart; a whole day is 00:00 to 24:00")})
			continue
		}
		for j, other := range windows[:i] {
			if other.valid() && other.meets(w) {
				f.add(&units.RangeError{Op: op, Field: field(), Value: w, Allowed: wording("apart from windows[" + strconv.Itoa(j) + "], " + other.String())})
			}
		}
	}
	return f
}
