package loads_test

import (
	"testing"
	"time"
	_ "time/tzdata" // the same zones on every machine

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// at returns a load of 10 W, standby 1 W, in the windows.
func at(windows ...loads.Window) loads.Load {
	l := load("lamp", "dc", loads.ConstantPower, 10*units.Watt, 0)
	l.Hours, l.Windows, l.Standby = units.None[units.Elapsed](), windows, units.Watt
	return l
}

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func TestDayByTheClock(t *testing.T) {
	night := loads.Window{From: loads.Clock{Hour: 18, Minute: 30}, To: loads.Clock{Hour: 5, Minute: 30}}
	early := loads.Window{From: loads.Clock{Hour: 1}, To: loads.Clock{Hour: 3}}
	noon := loads.Window{From: loads.Clock{Hour: 12}, To: loads.Clock{Hour: 13, Minute: 15}}
	for _, c := range []struct {
		what, zone string
		date       string
		window     loads.Window
		steps      []time.Duration
		length     time.Duration
		open       units.Elapsed // how long the window is open that day, by the clock of the zone
	}{
		{"any day", "America/Chicago", "2025-10-14", night, []time.Duration{time.Minute, time.Hour, 24 * time.Hour}, 24 * time.Hour, 11 * units.Hour},
		{"steps across the window's ends", "America/Chicago", "2025-10-14", noon, []time.Duration{3 * time.Hour}, 24 * time.Hour, 1.25 * units.Hour},
		// At 02:00 clocks go to 03:00: an hour of the night is missing.
		{"clocks go forward", "America/Chicago", "2025-03-09", night, []time.Duration{30 * time.Minute, 23 * time.Hour}, 23 * time.Hour, 10 * units.Hour},
		{"clocks go forward in the window", "America/Chicago", "2025-03-09", early, []time.Duration{time.Hour, 23 * time.Hour}, 23 * time.Hour, units.Hour},
		// At 02:00 they go back to 01:00: an hour comes twice.
		{"clocks go back", "America/Chicago", "2025-11-02", night, []time.Duration{time.Hour, 5 * time.Hour}, 25 * time.Hour, 12 * units.Hour},
		{"clocks go back in the window", "America/Chicago", "2025-11-02", early, []time.Duration{time.Hour, 5 * time.Hour, 25 * time.Hour}, 25 * time.Hour, 3 * units.Hour},
		// Lord Howe Island moves by half an hour.
		{"half an hour forward", "Australia/Lord_Howe", "2025-10-05", early, []time.Duration{30 * time.Minute, 23*time.Hour + 30*time.Minute}, 23*time.Hour + 30*time.Minute, 1.5 * units.Hour},
	} {
		t.Run(c.what, func(t *testing.T) {
			ledger := one(t, battery, at(c.window))
			date, err := time.ParseInLocation(time.DateOnly, c.date, zone(t, c.zone))
			if err != nil {
				t.Fatal(err)
			}
			for _, step := range c.steps {
				day, err := ledger.Day("dc", date.Add(13*time.Hour), step)
				if err != nil {
					t.Fatal(err)
				}
				rest := units.ElapsedOf(c.length) - c.open
				want := (10 * units.Watt).For(c.open) + units.Watt.For(rest)
				if got := units.EnergyOf(day); units.Compare(got, want) != 0 {
					t.Errorf("in steps of %v: %v, want %v", step, got, want)
				}
				if !day.Start.Equal(date) || day.End().Sub(day.Start) != c.length {
					t.Errorf("the day is %v, want %v from %v", day.Span(), c.length, date)
				}
			}
		})
	}
}

// TestDaySlowTwin looks at the clock every minute.
func TestDaySlowTwin(t *testing.T) {
	windows := []loads.Window{
		{From: loads.Clock{Hour: 22, Minute: 17}, To: loads.Clock{Hour: 2, Minute: 41}},
		{From: loads.Clock{Hour: 7, Minute: 3}, To: loads.Clock{Hour: 9, Minute: 59}},
	}
	l := at(windows...)
	l.Duty, l.Count = units.Some(40*units.Percent), 3
	ledger := one(t, battery, l)
	day, err := ledger.Day("dc", time.Date(2025, 11, 2, 12, 0, 0, 0, zone(t, "America/Chicago")), 25*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	for i, got := range day.Values {
		var sum float64
		for m := range 25 {
			clock := day.Time(i).Add(time.Duration(m) * time.Minute).Format("15:04")
			watts := 3.0 * 1 // standby
			if clock >= "22:17" || clock < "02:41" || clock >= "07:03" && clock < "09:59" {
				watts = 3 * (0.4*10 + 0.6*1)
			}
			sum += watts / 25
		}
		if units.Compare(got, units.Power(sum)) != 0 {
			t.Errorf("step %d, %v: %v, the slow twin has %v", i, day.Time(i), got, units.Power(sum))
		}
	}
}

func TestDayIsChecked(t *testing.T) {
	ledger := one(t, battery, at(loads.Window{To: loads.Clock{Hour: 1}}))
	date := time.Date(2025, 10, 14, 0, 0, 0, 0, time.UTC)
	const op = "loads.Ledger.Day"
	_, err := ledger.Day("ac", date, time.Hour)
	wantRangeError(t, err, op, "name")
	for _, step := range []time.Duration{0, -time.Hour, time.Millisecond, 7 * time.Hour, 48 * time.Hour} {
		day, err := ledger.Day("dc", date, step)
		wantRangeError(t, err, op, "step")
		if day.Values != nil {
			t.Errorf("step %v gives %v", step, day)
		}
	}
	for _, year := range []int{-1, 0, 10001} {
		_, err = ledger.Day("dc", time.Date(year, 6, 1, 0, 0, 0, 0, time.UTC), time.Hour)
		wantRangeError(t, err, op, "date")
	}
	ledger.Loads = nil
	_, err = ledger.Day("dc", date, time.Hour)
	wantRangeError(t, err, op, "Lines")
	if day, err := one(t, battery, fridge()).Day("dc", time.Date(2025, 11, 2, 0, 0, 0, 0, zone(t, "America/Chicago")), time.Hour); err != nil || day.Len() != 25 {
		t.Errorf("a day of 25 hours has %d, %v", day.Len(), err)
	}
}
