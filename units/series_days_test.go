package units_test

import (
	"fmt"
	"iter"
	"math"
	"slices"
	"testing"
	"time"

	"example.com/drawbar/units"
)

// numbered returns n steps from start on, each with its own value.
func numbered(start time.Time, step time.Duration, n int) units.Series[units.Power] {
	s := grid(start, step, n)
	for i := range s.Values {
		s.Values[i] = units.Power(i)
	}
	return s
}

// steps returns the number of steps of step from one instant to another.
func steps(from, to time.Time, step time.Duration) int { return int(to.Sub(from) / step) }

// yearOf returns the hours of a civil year.
func yearOf(year int, zone *time.Location) units.Series[units.Power] {
	start := time.Date(year, time.January, 1, 0, 0, 0, 0, zone)
	return numbered(start, time.Hour, steps(start, time.Date(year+1, time.January, 1, 0, 0, 0, 0, zone), time.Hour))
}

// slowSplit is the slow twin of Days and Months: it asks for the date of
// every step, which must be short enough not to miss a first instant, and
// begins a view where the date is later than any before.
func slowSplit(s units.Series[units.Power]) (days, months []units.Series[units.Power]) {
	if s.Len() == 0 {
		return nil, nil
	}
	latest, day, month := 0, 0, 0 // the latest date, such as 20250131; where views began
	at := s.Start
	for i := range s.Values {
		y, m, d := at.Date()
		date := 10000*y + 100*int(m) + d
		if i > 0 && date > latest {
			days, day = append(days, slice(s, day, i)), i
			if date/100 > latest/100 {
				months, month = append(months, slice(s, month, i)), i
			}
		}
		latest = max(latest, date)
		at = at.Add(s.Step)
	}
	return append(days, slice(s, day, s.Len())), append(months, slice(s, month, s.Len()))
}

func slice(s units.Series[units.Power], i, j int) units.Series[units.Power] {
	return units.Series[units.Power]{Start: s.Time(i), Step: s.Step, Values: s.Values[i:j]}
}

// partition reports in what the views fail to be s: in order, each value in
// exactly one, no view empty, sharing memory, with the right start and zone.
func partition(s units.Series[units.Power], views iter.Seq[units.Series[units.Power]]) error {
	i := 0
	for v := range views {
		switch {
		case v.Len() == 0:
			return fmt.Errorf("an empty view at step %d", i)
		case i+v.Len() > s.Len():
			return fmt.Errorf("%d steps too many", i+v.Len()-s.Len())
		case &v.Values[0] != &s.Values[i] || cap(v.Values) != len(v.Values):
			return fmt.Errorf("view at step %d has other memory than s, or more", i)
		case !v.Start.Equal(s.Time(i)) || v.Start.Location() != s.Start.Location() || v.Step != s.Step:
			return fmt.Errorf("view at step %d is %v", i, v.Shape())
		}
		i += v.Len()
	}
	if i != s.Len() {
		return fmt.Errorf("the views have %d steps, want %d", i, s.Len())
	}
	return nil
}

// sameViews reports the first difference of two lists of views.
func sameViews(got iter.Seq[units.Series[units.Power]], want []units.Series[units.Power]) error {
	i := 0
	for v := range got {
		if i >= len(want) {
			return fmt.Errorf("one view too many: %v", v.Shape())
		}
		if w := want[i]; !v.Shape().Equal(w.Shape()) || &v.Values[0] != &w.Values[0] {
			return fmt.Errorf("view %d is %v, want %v", i, v.Shape(), w.Shape())
		}
		i++
	}
	if i != len(want) {
		return fmt.Errorf("%d views, want %d", i, len(want))
	}
	return nil
}

// "Together the days are s: nothing is left out and nothing comes twice." In
// every zone, over the year in which Samoa skipped a date and Newfoundland
// set its clocks back over midnight, and over a leap year under today's rules.
func TestDaysInEveryZone(t *testing.T) {
	const step = 15 * time.Minute // divides every offset in use
	if len(everyZone) != 312 {
		t.Fatalf("%d zones, want 312", len(everyZone))
	}
	s := numbered(newYear, step, 374*96)
	for _, name := range everyZone {
		zone := loadZone(t, name)
		for _, year := range []int{2011, 2024} {
			// From before a new year to after the next, so that no view
			// is cut where it would begin by itself.
			s.Start = time.Date(year-1, time.December, 28, 10, 0, 0, 0, time.UTC).In(zone)
			days, months := slowSplit(s)
			for what, err := range map[string]error{
				"Days":         partition(s, s.Days()),
				"Months":       partition(s, s.Months()),
				"twin, Days":   sameViews(s.Days(), days),
				"twin, Months": sameViews(s.Months(), months),
			} {
				if err != nil {
					t.Errorf("%s, %d, %s: %v", name, year, what, err)
				}
			}
		}
	}
}

// Zones and times at which dates did what a program does not expect. What
// each case is called is what the IANA time zone database has of it; the
// twin, asking every half minute, is what is checked against.
func TestDaysAtOddTimes(t *testing.T) {
	const step = 30 * time.Second
	for _, test := range []struct {
		zone, what string
		from       time.Time
		days       int
	}{
		{"America/Havana", "midnight does not exist", time.Date(2024, time.March, 8, 0, 0, 0, 0, time.UTC), 5},
		{"America/Havana", "midnight comes twice", time.Date(2024, time.November, 1, 0, 0, 0, 0, time.UTC), 5},
		{"Asia/Beirut", "midnight does not exist", time.Date(2024, time.March, 29, 0, 0, 0, 0, time.UTC), 5},
		{"Asia/Beirut", "from midnight back to 23:00", time.Date(2024, time.October, 25, 0, 0, 0, 0, time.UTC), 5},
		{"America/Sao_Paulo", "midnight does not exist", time.Date(2018, time.November, 2, 0, 0, 0, 0, time.UTC), 5},
		{"America/Sao_Paulo", "from midnight back to 23:00", time.Date(2018, time.February, 16, 0, 0, 0, 0, time.UTC), 5},
		{"Africa/Cairo", "midnight does not exist", time.Date(2024, time.April, 24, 0, 0, 0, 0, time.UTC), 5},
		{"Asia/Amman", "midnight does not exist", time.Date(2021, time.March, 24, 0, 0, 0, 0, time.UTC), 5},
		{"America/Santiago", "midnight does not exist", time.Date(2024, time.September, 6, 0, 0, 0, 0, time.UTC), 5},
		{"America/St_Johns", "from 00:01 back to 23:01", time.Date(2010, time.November, 5, 0, 0, 0, 0, time.UTC), 5},
		{"America/St_Johns", "from 00:01 back to 22:01", time.Date(1988, time.October, 28, 0, 0, 0, 0, time.UTC), 5},
		{"Australia/Lord_Howe", "half an hour", time.Date(2025, time.April, 4, 0, 0, 0, 0, time.UTC), 5},
		{"Pacific/Apia", "no 30 December", time.Date(2011, time.December, 28, 0, 0, 0, 0, time.UTC), 6},
		{"Pacific/Kwajalein", "no 21 August", time.Date(1993, time.August, 18, 0, 0, 0, 0, time.UTC), 6},
		{"Pacific/Kwajalein", "back 23 hours", time.Date(1969, time.September, 28, 0, 0, 0, 0, time.UTC), 6},
		{"America/Juneau", "back 24 hours", time.Date(1867, time.October, 16, 0, 0, 0, 0, time.UTC), 6},
		{"Asia/Manila", "no 31 December", time.Date(1844, time.December, 28, 0, 0, 0, 0, time.UTC), 6},
		{"Africa/Monrovia", "ahead 44 min 30 s", time.Date(1972, time.January, 5, 0, 0, 0, 0, time.UTC), 5},
		{"America/New_York", "last day of a leap year", time.Date(2040, time.December, 29, 0, 0, 0, 0, time.UTC), 6},
		{"America/Asuncion", "last day of a leap year, summer", time.Date(2020, time.December, 29, 0, 0, 0, 0, time.UTC), 6},
		{"Pacific/Auckland", "last day of a leap year, summer", time.Date(2040, time.December, 29, 0, 0, 0, 0, time.UTC), 6},
	} {
		all := numbered(test.from.In(loadZone(t, test.zone)), step, test.days*2880)
		want, months := slowSplit(all)
		if err := sameViews(all.Days(), want); err != nil {
			t.Errorf("%s, %s: %v", test.zone, test.what, err)
		}
		if err := sameViews(all.Months(), months); err != nil {
			t.Errorf("%s, %s, months: %v", test.zone, test.what, err)
		}
		// A series that begins in the middle of a day, be it while an old
		// date comes again, has the same boundaries from there on.
		for i := 2 * 2880; i < all.Len(); i += 37 {
			s := slice(all, i, all.Len())
			rest := slices.Clone(want)
			for !rest[0].End().After(s.Start) {
				rest = rest[1:]
			}
			rest[0] = slice(all, i, i+steps(s.Start, rest[0].End(), step))
			if err := sameViews(s.Days(), rest); err != nil {
				t.Fatalf("%s, %s, from %v: %v", test.zone, test.what, s.Start, err)
			}
		}
	}
}

// nthWeekday returns the n-th such day of a month, or the last for n < 0, by
// counting.
func nthWeekday(n int, day time.Weekday, year int, month time.Month) time.Time {
	var found []time.Time
	for d := time.Date(year, month, 1, 0, 0, 0, 0, time.UTC); d.Month() == month; d = d.AddDate(0, 0, 1) {
		if d.Weekday() == day {
			found = append(found, d)
		}
	}
	if n < 0 {
		return found[len(found)-1]
	}
	return found[n-1]
}

// Lengths of days where a law says when clocks change. The laws are cited
// from memory.
func TestDayLengthsByLaw(t *testing.T) {
	for _, law := range []struct {
		name, zone    string
		first, last   int // years
		short, long   func(year int) time.Time
		hours, longer int
	}{
		{"Energy Policy Act of 2005, section 110 (15 U.S.C. 260a): second Sunday of March, first of November",
			"America/New_York", 2007, 2040,
			func(year int) time.Time { return nthWeekday(2, time.Sunday, year, time.March) },
			func(year int) time.Time { return nthWeekday(1, time.Sunday, year, time.November) }, 23, 25},
		{"Public Law 99-359 of 1986: first Sunday of April, last of October",
			"America/Chicago", 1987, 2006,
			func(year int) time.Time { return nthWeekday(1, time.Sunday, year, time.April) },
			func(year int) time.Time { return nthWeekday(-1, time.Sunday, year, time.October) }, 23, 25},
		{"Directive 2000/84/EC: last Sundays of March and October",
			"Europe/Berlin", 2002, 2040,
			func(year int) time.Time { return nthWeekday(-1, time.Sunday, year, time.March) },
			func(year int) time.Time { return nthWeekday(-1, time.Sunday, year, time.October) }, 23, 25},
	} {
		zone := loadZone(t, law.zone)
		for year := law.first; year <= law.last; year++ {
			want := map[string]int{
				law.short(year).Format(time.DateOnly): law.hours,
				law.long(year).Format(time.DateOnly):  law.longer,
			}
			days := 0
			for day := range yearOf(year, zone).Days() {
				date := day.Start.Format(time.DateOnly)
				if hour := day.Start.Hour(); hour != 0 {
					t.Errorf("%s: %s begins at %d:00", law.zone, date, hour)
				}
				length, odd := want[date]
				if !odd {
					length = 24
				}
				if day.Len() != length {
					t.Errorf("%s: %s has %d hours, want %d (%s)", law.zone, date, day.Len(), length, law.name)
				}
				days++
			}
			inYear := time.Date(year, time.December, 31, 0, 0, 0, 0, time.UTC).YearDay()
			if days != inYear {
				t.Errorf("%s: %d has %d days, want %d", law.zone, year, days, inYear)
			}
		}
	}
}

// viewsFrom returns when each day begins and how long it is, as text.
func viewsFrom(s units.Series[units.Power]) (days []string) {
	for d := range s.Days() {
		days = append(days, fmt.Sprintf("%s %v", d.Start.Format("2006-01-02 15:04"), d.End().Sub(d.Start)))
	}
	return days
}

// Dates written out by hand. That Samoa went without 2011-12-30 is its
// International Date Line Act 2011; that Newfoundland changed its clocks at
// 00:01 until 2011, and Cuba and Brazil (until 2019) at midnight, is in the
// IANA time zone database. From memory, all of them.
func TestDaysByHand(t *testing.T) {
	at := func(zone string, year int, month time.Month, day int) units.Series[units.Power] {
		start := time.Date(year, month, day, 0, 0, 0, 0, loadZone(t, zone))
		return numbered(start, time.Minute, 3*24*60)
	}
	for _, test := range []struct {
		s    units.Series[units.Power]
		want []string
	}{
		{at("Pacific/Apia", 2011, time.December, 28),
			[]string{"2011-12-28 00:00 24h0m0s", "2011-12-29 00:00 24h0m0s", "2011-12-31 00:00 24h0m0s"}},
		{at("America/Havana", 2024, time.March, 9),
			[]string{"2024-03-09 00:00 24h0m0s", "2024-03-10 01:00 23h0m0s", "2024-03-11 00:00 24h0m0s", "2024-03-12 00:00 1h0m0s"}},
		{at("America/Havana", 2024, time.November, 2),
			[]string{"2024-11-02 00:00 24h0m0s", "2024-11-03 00:00 25h0m0s", "2024-11-04 00:00 23h0m0s"}},
		{at("America/Sao_Paulo", 2018, time.November, 3),
			[]string{"2018-11-03 00:00 24h0m0s", "2018-11-04 01:00 23h0m0s", "2018-11-05 00:00 24h0m0s", "2018-11-06 00:00 1h0m0s"}},
		{at("America/Sao_Paulo", 2018, time.February, 17), // 23:00 comes twice
			[]string{"2018-02-17 00:00 25h0m0s", "2018-02-18 00:00 24h0m0s", "2018-02-19 00:00 23h0m0s"}},
		{at("America/St_Johns", 2010, time.November, 6), // 00:01 on the 7th is 23:01 on the 6th
			[]string{"2010-11-06 00:00 24h0m0s", "2010-11-07 00:00 25h0m0s", "2010-11-08 00:00 23h0m0s"}},
		{at("Australia/Lord_Howe", 2025, time.April, 5),
			[]string{"2025-04-05 00:00 24h0m0s", "2025-04-06 00:00 24h30m0s", "2025-04-07 00:00 23h30m0s"}},
		{at("UTC", 2024, time.February, 28),
			[]string{"2024-02-28 00:00 24h0m0s", "2024-02-29 00:00 24h0m0s", "2024-03-01 00:00 24h0m0s"}},
	} {
		if got := viewsFrom(test.s); !slices.Equal(got, test.want) {
			t.Errorf("days from %v:\ngot  %q\nwant %q", test.s.Start, got, test.want)
		}
	}
	// Months, in hours. March has 743 and November 721 under the Act of 2005.
	var months []int
	for m := range yearOf(2025, loadZone(t, "America/New_York")).Months() {
		months = append(months, m.Len())
	}
	if want := []int{744, 672, 743, 720, 744, 720, 744, 744, 720, 744, 721, 744}; !slices.Equal(months, want) {
		t.Errorf("months of 2025 in New York = %v, want %v", months, want)
	}
}

// "A value belongs to the day in which its step begins."
func TestDaysOfSteps(t *testing.T) {
	day := func(d int, clock string) time.Time {
		c, err := time.Parse("15:04:05", clock)
		if err != nil {
			t.Fatal(err)
		}
		return time.Date(2025, time.January, d, c.Hour(), c.Minute(), c.Second(), 0, time.UTC)
	}
	for _, test := range []struct {
		name  string
		start time.Time
		step  time.Duration
		n     int
		want  []int // values a day
	}{
		{"on midnight", day(1, "00:00:00"), time.Hour, 48, []int{24, 24}},
		{"half past", day(1, "00:30:00"), time.Hour, 48, []int{24, 24}},
		{"from noon", day(1, "12:00:00"), time.Hour, 48, []int{12, 24, 12}},
		{"begins just before midnight", day(1, "23:59:59"), time.Second, 2, []int{1, 1}},
		{"begins a fraction before midnight", day(1, "23:59:59").Add(time.Second - 1), 1, 3, []int{1, 2}},
		{"seven hours", day(1, "00:00:00"), 7 * time.Hour, 8, []int{4, 3, 1}},
		{"a day", day(1, "06:00:00"), 24 * time.Hour, 3, []int{1, 1, 1}},
		{"longer than a day", day(1, "06:00:00"), 36 * time.Hour, 3, []int{1, 1, 1}},
		{"one value", day(1, "06:00:00"), time.Hour, 1, []int{1}},
		{"empty", day(1, "00:00:00"), time.Hour, 0, nil},
		{"no step", day(1, "00:00:00"), 0, 3, nil},
		{"backwards", day(1, "00:00:00"), -time.Hour, 3, nil},
		{"292 years a step", day(1, "00:00:00"), math.MaxInt64, 1, []int{1}},
	} {
		var got []int
		for d := range grid(test.start, test.step, test.n).Days() {
			got = append(got, d.Len())
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %v values a day, want %v", test.name, got, test.want)
		}
	}
	// Before 1970, and in zones with one offset only.
	for _, zone := range []*time.Location{time.UTC, time.FixedZone("", -12*3600), time.FixedZone("far", 100*3600)} {
		s := numbered(time.Date(1903, time.December, 30, 18, 0, 0, 1, zone), time.Hour, 100)
		days, _ := slowSplit(s)
		if err := sameViews(s.Days(), days); err != nil {
			t.Errorf("1903 in %v: %v", zone, err)
		}
	}
}

func TestDaysAddUp(t *testing.T) {
	s := minutes(minutesOfYear, -300, 2000)
	s.Start = s.Start.In(loadZone(t, "America/Denver"))
	whole := float64(units.EnergyOf(s))
	for name, views := range map[string]iter.Seq[units.Series[units.Power]]{"days": s.Days(), "months": s.Months()} {
		var sum float64
		for v := range views {
			sum += float64(units.EnergyOf(v))
		}
		if math.Abs(sum-whole) > kept*whole {
			t.Errorf("the %s add up to %v, want %v", name, sum, whole)
		}
	}
}

// A loop may be left early, and begun again.
func TestDaysLeftEarly(t *testing.T) {
	days := yearOf(2025, time.UTC).Days()
	for range 2 {
		count := 0
		for range days {
			if count++; count == 3 {
				break
			}
		}
		if count != 3 {
			t.Errorf("%d days before the break, want 3", count)
		}
	}
}

// Appending to a day leaves the next one alone.
func TestDaysDoNotReachFurther(t *testing.T) {
	s := yearOf(2025, time.UTC)
	for day := range s.Days() {
		_ = append(day.Values, -1)
	}
	for i, x := range s.Values {
		if x != units.Power(i) {
			t.Fatalf("value %d was overwritten", i)
		}
	}
}
