package loads

import (
	"time"

	"example.com/drawbar/units"
)

// Day returns what the bus called name takes on the date of date, in the zone
// of date, step by step from the first instant that bears the date to the
// last. Step is 1 s or more and divides the day, which has 23 or 25 hours
// where clocks change.
//
// A load with windows takes, in them, its power times its duty, and its
// standby else. A load with hours has no time of day: its energy is spread
// evenly, so the series shows less than the real peaks of such loads, and
// [Total.Connected] is what bounds them.
//
// On a day of 24 hours the integral is the daily energy of the bus. A longer
// day takes more and a shorter one less, as windows and clocks have it.
//
// An unknown bus, a step that does not divide the day, a date of no year from
// 1 to 9999, and a Ledger that [Audit] did not make are each a
// [*units.RangeError].
func (l Ledger) Day(name string, date time.Time, step time.Duration) (units.Series[units.Power], error) {
	const op = "loads.Ledger.Day"
	none := units.Series[units.Power]{}
	if _, ok := l.On(name); !ok {
		return none, &units.RangeError{Op: op, Field: "name", Value: name, Allowed: wording("a bus of the ledger")}
	}
	if len(l.Loads) != len(l.Lines) {
		return none, &units.RangeError{Op: op, Field: "Lines", Value: len(l.Lines), Allowed: wording("one for each of Loads")}
	}
	span, err := civilDay(op, date)
	if err != nil {
		return none, err
	}
	length := span.End.Sub(span.Start)
	if step < time.Second || length%step != 0 {
		return none, &units.RangeError{Op: op, Field: "step", Value: step, Allowed: wording("1 s or more, dividing a day of " + length.String())}
	}
	s := units.Series[units.Power]{Start: span.Start, Step: step, Values: make([]units.Power, length/step)}
	var steady units.Power
	for i := range l.Lines {
		switch v, windows := &l.Lines[i], l.Loads[i].Windows; {
		case v.Bus.Name != name:
		case len(windows) > 0:
			v.addTo(s, windows)
		default:
			steady += v.Average
		}
	}
	for i := range s.Values {
		s.Values[i] += steady
	}
	return s, nil
}

// addTo adds a line that has windows to a day.
func (v *Line) addTo(s units.Series[units.Power], windows []Window) {
	standby := units.Scale(v.StandbyEach, units.Ratio(v.Count))
	for i := range s.Values {
		runs := v.Duty * inWindows(windows, s.Time(i), s.Step)
		s.Values[i] += units.Scale(v.Power, runs) + units.Scale(standby, 1-runs)
	}
}

// inWindows returns the part of d, beginning at t, that is in the windows by
// the clock of the zone of t.
func inWindows(windows []Window, t time.Time, d time.Duration) units.Ratio {
	var in time.Duration
	for end := t.Add(d); t.Before(end); {
		// Up to a change of the clocks, one offset holds.
		piece := end
		if _, change := t.ZoneBounds(); change.After(t) && change.Before(end) {
			piece = change
		}
		for _, w := range windows {
			in += w.within(timeOfDay(t), piece.Sub(t))
		}
		t = piece
	}
	return units.Ratio(float64(in) / float64(d))
}

// timeOfDay returns what the clock shows at t.
func timeOfDay(t time.Time) time.Duration {
	hour, minute, second := t.Clock()
	return time.Duration(hour)*time.Hour + time.Duration(minute)*time.Minute + time.Duration(second)*time.Second
}

// civilDay returns the span of the date of date. Which instants a date has is
// for package units to say.
func civilDay(op string, date time.Time) (units.Span, error) {
	const around = 3 * wholeDay
	year, month, dayOfMonth := date.Date()
	noon := time.Date(year, month, dayOfMonth, 12, 0, 0, 0, date.Location())
	seconds := units.Series[struct{}]{ // which have no size
		Start: noon.Add(-around), Step: time.Second, Values: make([]struct{}, 2*around/time.Second),
	}
	for s := range seconds.Days() {
		if y, m, d := s.Start.Date(); y == year && m == month && d == dayOfMonth {
			return s.Span(), nil
		}
	}
	return units.Span{}, &units.RangeError{Op: op, Field: "date", Value: date, Allowed: wording("a date of the years 1 to 9999")}
}
