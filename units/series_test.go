package units_test

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.com/drawbar/units"
)

// newYear is where most series of these tests begin.
var newYear = time.Date(2025, time.January, 1, 0, 0, 0, 0, time.UTC)

// hours returns the hourly series of watts from newYear on.
func hours(watts ...units.Power) units.Series[units.Power] {
	return units.Series[units.Power]{Start: newYear, Step: time.Hour, Values: watts}
}

// tooLong returns a series of n values, each step half of what a
// time.Duration holds.
func tooLong(n int) units.Series[units.Power] {
	return units.Series[units.Power]{Start: newYear, Step: math.MaxInt64 / 2, Values: make([]units.Power, n)}
}

func TestSeriesTime(t *testing.T) {
	s := hours(10, 20, 30)
	for _, test := range []struct {
		s    units.Series[units.Power]
		i    int
		want time.Time
	}{
		// In the series, its end included.
		{s, 0, newYear},
		{s, 2, newYear.Add(2 * time.Hour)},
		{s, 3, newYear.Add(3 * time.Hour)},
		{hours(), 0, newYear},
		{tooLong(2), 2, newYear.Add(math.MaxInt64 - 1)},
		// Outside of it.
		{s, -1, time.Time{}},
		{s, 4, time.Time{}},
		{hours(), 1, time.Time{}},
		// No series.
		{units.Series[units.Power]{Start: newYear, Values: s.Values}, 0, time.Time{}},
		{units.Series[units.Power]{Start: newYear, Step: -1, Values: s.Values}, 0, time.Time{}},
		{tooLong(3), 0, time.Time{}},
	} {
		if got := test.s.Time(test.i); !got.Equal(test.want) {
			t.Errorf("(%v).Time(%d) = %v, want %v", test.s.Shape(), test.i, got, test.want)
		}
		if last := test.s.Len(); test.i == last {
			if got := test.s.End(); !got.Equal(test.want) {
				t.Errorf("(%v).End() = %v, want %v", test.s.Shape(), got, test.want)
			}
		}
	}
	if got := tooLong(3).End(); !got.IsZero() {
		t.Errorf("End of a series too long = %v, want the zero Time", got)
	}
}

func TestSeriesTimeKeepsZone(t *testing.T) {
	s := hours(10, 20, 30)
	s.Start = s.Start.In(loadZone(t, "America/New_York"))
	for _, got := range []time.Time{s.Time(1), s.End(), s.Span().Start, s.Span().End} {
		if got.Location() != s.Start.Location() {
			t.Errorf("%v is not in the zone of Start", got)
		}
	}
}

func TestSeriesAt(t *testing.T) {
	s := hours(10, 20, 30)
	for _, test := range []struct {
		s     units.Series[units.Power]
		after time.Duration // of newYear
		i     int           // -1: not in the series
	}{
		// The start of a step is in it, its end in the next.
		{s, 0, 0},
		{s, time.Hour - 1, 0},
		{s, time.Hour, 1},
		{s, 3*time.Hour - 1, 2},
		{tooLong(2), math.MaxInt64/2 - 1, 0},
		{tooLong(2), math.MaxInt64/2 + 1, 1},
		// Outside.
		{s, -1, -1},
		{s, 3 * time.Hour, -1},
		{s, math.MaxInt64, -1},
		{s, math.MinInt64, -1},
		{tooLong(2), math.MaxInt64, -1},
		{hours(), 0, -1},
		// No series.
		{units.Series[units.Power]{Start: newYear, Values: s.Values}, 0, -1},
		{units.Series[units.Power]{Start: newYear, Step: -time.Hour, Values: s.Values}, 0, -1},
		{tooLong(3), 0, -1},
	} {
		at := newYear.Add(test.after)
		i, ok := test.s.Index(at)
		x, xok := test.s.At(at)
		if wantOK := test.i >= 0; ok != wantOK || xok != wantOK {
			t.Errorf("(%v) at %v: Index says %t, At %t, want %t", test.s.Shape(), at, ok, xok, wantOK)
			continue
		}
		if ok && (i != test.i || x != test.s.Values[test.i]) {
			t.Errorf("(%v) at %v: step %d, %v, want step %d", test.s.Shape(), at, i, x, test.i)
		}
		if !ok && (i != 0 || x != 0) {
			t.Errorf("(%v) at %v: %d, %v, want zeros", test.s.Shape(), at, i, x)
		}
	}
	// Further away than a Duration can say.
	for _, at := range []time.Time{{}, newYear.AddDate(1000, 0, 0)} {
		if i, ok := s.Index(at); ok {
			t.Errorf("Index(%v) = %d, want none", at, i)
		}
	}
}

func TestSeriesTimeAndIndexAgree(t *testing.T) {
	s := units.Series[float64]{Start: newYear, Step: 7*time.Minute + 1, Values: make([]float64, 1000)}
	for i := range s.Values {
		if got, ok := s.Index(s.Time(i)); got != i || !ok {
			t.Fatalf("Index(Time(%d)) = %d, %t", i, got, ok)
		}
		if got, ok := s.Index(s.Time(i + 1).Add(-1)); got != i || !ok {
			t.Fatalf("Index(Time(%d)-1ns) = %d, %t", i+1, got, ok)
		}
	}
}

func TestPeriodEnding(t *testing.T) {
	values := []units.Irradiance{0, 100, 300}
	s := units.PeriodEnding(newYear.Add(time.Hour), time.Hour, values)
	if !s.Start.Equal(newYear) || s.Step != time.Hour || &s.Values[0] != &values[0] || s.Len() != 3 {
		t.Errorf("PeriodEnding at 01:00 = %v, want hours from %v with the same values", s.Shape(), newYear)
	}
	// The hour that ends at the last label is the last one.
	if last := newYear.Add(3 * time.Hour); !s.End().Equal(last) {
		t.Errorf("End() = %v, want the last label %v", s.End(), last)
	}
	// On the day clocks go forward, hours ending 01:00, 03:00 (02:00 does
	// not exist) are one after the other.
	ny := loadZone(t, "America/New_York")
	day := units.PeriodEnding(time.Date(2025, time.March, 9, 1, 0, 0, 0, ny), time.Hour, make([]units.Power, 23))
	if got := day.Time(2).Format("15:04 MST"); got != "03:00 EDT" {
		t.Errorf("the second hour ends at %s, want 03:00 EDT", got)
	}
}

func TestShape(t *testing.T) {
	s := hours(10, 20)
	other := s
	other.Start = s.Start.In(loadZone(t, "Asia/Tokyo"))
	if !s.Shape().Equal(other.Shape()) {
		t.Errorf("%v and %v are one instant, but not Equal", s.Start, other.Start)
	}
	for _, test := range []struct {
		name string
		o    units.Shape
	}{
		{"start", units.Shape{Start: newYear.Add(1), Step: time.Hour, Len: 2}},
		{"step", units.Shape{Start: newYear, Step: time.Hour + 1, Len: 2}},
		{"length", units.Shape{Start: newYear, Step: time.Hour, Len: 3}},
	} {
		if s.Shape().Equal(test.o) {
			t.Errorf("shapes of a different %s are Equal", test.name)
		}
		err := s.Shape().Check("pkg.Func", "Load", test.o)
		want := units.ShapeError{Op: "pkg.Func", Field: "Load", Value: test.o, Want: s.Shape()}
		var got *units.ShapeError
		if !errors.As(err, &got) || *got != want || !errors.Is(err, units.ErrShape) {
			t.Errorf("Check(%v) = %v, want %v", test.o, err, &want)
		}
	}
	if err := s.Shape().Check("pkg.Func", "Load", other.Shape()); err != nil {
		t.Errorf("Check of the same shape = %v", err)
	}
}

func TestSeriesCheck(t *testing.T) {
	for _, test := range []struct {
		s    units.Series[units.Power]
		want string // "" is no error
	}{
		{hours(1, 2), ""},
		{hours(), ""},
		{hours(units.Power(math.NaN())), ""}, // values are the business of CheckSeries
		{tooLong(2), ""},
		{units.Series[units.Power]{Start: newYear}, "f: Load.Step = 0 s, want > 0 s"},
		{units.Series[units.Power]{Step: -time.Second}, "f: Load.Step = -1 s, want > 0 s"},
		{tooLong(3), "f: Load.Len = 3, want <= 2"},
		// The zero Time is the first instant allowed.
		{units.Series[units.Power]{Step: time.Hour}, ""},
		{units.Series[units.Power]{Start: time.Time{}.Add(-1), Step: time.Hour},
			"f: Load.Start = 0000-12-31 23:59:59.999999999 +0000 UTC, want 0001-01-01T00:00:00Z to 10000-01-01T00:00:00Z"},
		{units.Series[units.Power]{Start: newYear.AddDate(7975, 0, 0).Add(-1), Step: time.Hour}, ""},
		{units.Series[units.Power]{Start: newYear.AddDate(7975, 0, 0), Step: time.Hour},
			"f: Load.Start = 10000-01-01 00:00:00 +0000 UTC, want 0001-01-01T00:00:00Z to 10000-01-01T00:00:00Z"},
	} {
		err := test.s.Check("f", "Load")
		switch {
		case test.want == "":
			if err != nil {
				t.Errorf("(%v).Check = %v, want nil", test.s.Shape(), err)
			}
		case err == nil || err.Error() != test.want || !errors.Is(err, units.ErrRange):
			t.Errorf("(%v).Check = %v, want %s", test.s.Shape(), err, test.want)
		}
	}
}

func TestCheckSeries(t *testing.T) {
	nan, inf := units.Power(math.NaN()), units.Power(math.Inf(1))
	for _, test := range []struct {
		s       units.Series[units.Power]
		allowed units.Bounds[units.Power]
		want    string
	}{
		{hours(0, 5), units.AtLeast(0 * units.Watt), ""},
		{hours(), units.AtLeast(0 * units.Watt), ""},
		{hours(-5), units.Bounds[units.Power]{}, ""},
		{hours(1, -2, -3), units.AtLeast(0 * units.Watt), "f: Load.Values[1] = -2 W, want >= 0 W"},
		{hours(1, nan), units.Bounds[units.Power]{}, "f: Load.Values[1] = NaN W, want finite"},
		{hours(inf, nan), units.Bounds[units.Power]{}, "f: Load.Values[0] = +Inf W, want finite"},
		{units.Series[units.Power]{}, units.Bounds[units.Power]{}, "f: Load.Step = 0 s, want > 0 s"},
	} {
		err := units.CheckSeries("f", "Load", test.s, test.allowed)
		switch {
		case test.want == "":
			if err != nil {
				t.Errorf("CheckSeries(%v, %v) = %v, want nil", test.s.Values, test.allowed, err)
			}
		case err == nil || err.Error() != test.want || !errors.Is(err, units.ErrRange):
			t.Errorf("CheckSeries(%v, %v) = %v, want %s", test.s.Values, test.allowed, err, test.want)
		}
	}
}

func TestCheckSeriesOfTemperatures(t *testing.T) {
	s := units.Series[units.Temperature]{Start: newYear, Step: time.Hour,
		Values: []units.Temperature{units.Celsius(20), {}}}
	err := units.CheckSeries("f", "Ambient", s, units.TemperatureBounds{Low: units.Celsius(-40)})
	var got *units.RangeError
	if !errors.As(err, &got) || got.Field != "Ambient.Values[1]" || got.Value != (units.Temperature{}) {
		t.Errorf("CheckSeries with a temperature not given = %v", err)
	}
}

func TestSpan(t *testing.T) {
	day := units.Span{Start: newYear, End: newYear.Add(24 * time.Hour)}
	for _, test := range []struct {
		from, to time.Duration
		want     bool
	}{
		{0, 24 * time.Hour, true},
		{time.Hour, 2 * time.Hour, true},
		{-1, time.Hour, false},
		{time.Hour, 24*time.Hour + 1, false},
		{-1, 24*time.Hour + 1, false},
	} {
		o := units.Span{Start: newYear.Add(test.from), End: newYear.Add(test.to)}
		if got := day.Covers(o); got != test.want {
			t.Errorf("(%v).Covers(%v) = %t", day, o, got)
		}
	}
	if got, want := hours(1, 2, 3).Span(), (units.Span{Start: newYear, End: newYear.Add(3 * time.Hour)}); got != want {
		t.Errorf("Span() = %v, want %v", got, want)
	}
	if got := (units.Series[units.Power]{Start: newYear}).Span(); got != (units.Span{}) {
		t.Errorf("Span of a series without a step = %v, want the zero Span", got)
	}
}

// Whatever the numbers in a Series, no method may panic.
func TestSeriesNeverPanics(t *testing.T) {
	starts := []time.Time{{}, newYear, time.Unix(math.MaxInt64, 0), time.Unix(math.MinInt64, 0)}
	steps := []time.Duration{math.MinInt64, -1, 0, 1, time.Hour, 40 * 24 * time.Hour, math.MaxInt64}
	for _, start := range starts {
		for _, step := range steps {
			for n := range 4 {
				s := units.Series[float64]{Start: start, Step: step, Values: make([]float64, n)}
				if n > 0 {
					s.Values[0] = 1
				}
				_ = fmt.Sprint(s.End(), s.Span(), s.Shape(), s.Time(-1), s.Time(n))
				want := n
				if s.Check("f", "s") != nil {
					want = 0
				}
				days, months := 0, 0
				for d := range s.Days() {
					days += d.Len()
				}
				for m := range s.Months() {
					months += m.Len()
				}
				if days != want || months != want {
					t.Errorf("(%v) has %d steps in days, %d in months, want %d", s.Shape(), days, months, want)
				}
				for _, at := range starts {
					if i, ok := s.Index(at); ok && (i < 0 || i >= n) {
						t.Errorf("(%v).Index(%v) = %d", s.Shape(), at, i)
					}
				}
				dst := units.Series[float64]{Start: start, Step: step, Values: make([]float64, n)}
				if err := units.ResampleTo(dst, s); (err == nil) != (s.Check("f", "s") == nil) {
					t.Errorf("ResampleTo(%v) onto its own grid = %v", s.Shape(), err)
				}
			}
		}
	}
}
