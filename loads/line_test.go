package loads_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

var battery = loads.Bus{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt}

// fridge is an everyday load that every field of which can be changed.
func fridge() loads.Load {
	l := load("refrigerator", "dc", loads.ConstantPower, 48*units.Watt, 24*units.Hour)
	l.Duty = units.Some(32 * units.Percent)
	l.Standby = 1.5 * units.Watt
	return l
}

func take(t testing.TB, b loads.Bus, l loads.Load) loads.Line {
	t.Helper()
	l.Bus = b.Name
	v, err := loads.Take(b, l)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// wantRangeError demands a *units.RangeError of op for field among err.
func wantRangeError(t *testing.T, err error, op, field string) {
	t.Helper()
	if !errors.Is(err, units.ErrRange) {
		t.Errorf("%s with a bad %s: %v, want a *units.RangeError", op, field, err)
		return
	}
	for _, e := range rangeErrors(err) {
		if e.Op == op && e.Field == field && e.Allowed.String() != "" {
			return
		}
	}
	t.Errorf("got %v, want an error of %s for %s", err, op, field)
}

// rangeErrors returns all of them that err wraps.
func rangeErrors(err error) []*units.RangeError {
	if list, ok := err.(interface{ Unwrap() []error }); ok {
		var all []*units.RangeError
		for _, e := range list.Unwrap() {
			all = append(all, rangeErrors(e)...)
		}
		return all
	}
	var e *units.RangeError
	if errors.As(err, &e) {
		return []*units.RangeError{e}
	}
	return nil
}

var notNumbers = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1}

func TestEveryNumberIsChecked(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(*loads.Bus, *loads.Load, float64)
		also  []float64 // bad too
	}{
		{"Bus.Voltage", func(b *loads.Bus, _ *loads.Load, x float64) { b.Voltage = units.Voltage(x) }, []float64{0}},
		{"Duty", func(_ *loads.Bus, l *loads.Load, x float64) { l.Duty = units.Some(units.Ratio(x)) }, []float64{1.001}},
		{"Hours", func(_ *loads.Bus, l *loads.Load, x float64) { l.Hours = units.Some(units.Elapsed(x)) }, []float64{86401}},
		{"Standby", func(_ *loads.Bus, l *loads.Load, x float64) { l.Standby = units.Power(x) }, nil},
		{"Rating.Power", func(_ *loads.Bus, l *loads.Load, x float64) { l.Rating.Power = units.Some(units.Power(x)) }, nil},
		{"Rating.Current", func(_ *loads.Bus, l *loads.Load, x float64) {
			l.Rating = loads.Rating{Current: units.Some(units.Current(x))}
		}, nil},
		{"Rating.Apparent", func(b *loads.Bus, l *loads.Load, x float64) {
			b.Kind = loads.Alternating
			l.Rating = loads.Rating{Apparent: units.Some(units.ApparentPower(x))}
		}, nil},
		{"Rating.Output", func(_ *loads.Bus, l *loads.Load, x float64) {
			l.Rating = loads.Rating{Output: units.Some(units.Power(x)), Efficiency: units.Some(units.One)}
		}, nil},
		{"Rating.Efficiency", func(_ *loads.Bus, l *loads.Load, x float64) {
			l.Rating = loads.Rating{Output: units.Some(units.Watt), Efficiency: units.Some(units.Ratio(x))}
		}, []float64{0, 1.001}},
		{"Rating.Voltage", func(_ *loads.Bus, l *loads.Load, x float64) { l.Rating.Voltage = units.Some(units.Voltage(x)) }, []float64{0}},
		{"Rating.PowerFactor", func(b *loads.Bus, l *loads.Load, x float64) {
			b.Kind = loads.Alternating
			l.Rating.PowerFactor = units.Some(units.Ratio(x))
		}, []float64{0, 1.001}},
	} {
		for _, x := range append(c.also, notNumbers...) {
			b, l := battery, fridge()
			c.spoil(&b, &l, x)
			got, err := loads.Take(b, l)
			wantRangeError(t, err, "loads.Take", c.field)
			if n := len(rangeErrors(err)); n != 1 {
				t.Errorf("%s = %v: %d errors, want the one: %v", c.field, x, n, err)
			}
			if got != (loads.Line{}) {
				t.Errorf("%s = %v: a result %+v", c.field, x, got)
			}
		}
	}
}

func TestEveryWordIsChecked(t *testing.T) {
	at := func(hour, minute int) loads.Clock { return loads.Clock{Hour: hour, Minute: minute} }
	windows := func(w ...loads.Window) func(*loads.Bus, *loads.Load) {
		return func(_ *loads.Bus, l *loads.Load) { l.Hours, l.Windows = units.None[units.Elapsed](), w }
	}
	for _, c := range []struct {
		what, field string
		spoil       func(*loads.Bus, *loads.Load)
	}{
		{"bus without a name", "Bus.Name", func(b *loads.Bus, l *loads.Load) { b.Name, l.Bus = "", "" }},
		{"bus of no kind", "Bus.Kind", func(b *loads.Bus, _ *loads.Load) { b.Kind = 0 }},
		{"bus of an unknown kind", "Bus.Kind", func(b *loads.Bus, _ *loads.Load) { b.Kind = 3 }},
		{"another bus", "Bus", func(_ *loads.Bus, l *loads.Load) { l.Bus = "ac" }},
		{"no name", "Name", func(_ *loads.Bus, l *loads.Load) { l.Name = "" }},
		{"no kind", "Kind", func(_ *loads.Bus, l *loads.Load) { l.Kind = 0 }},
		{"unknown kind", "Kind", func(_ *loads.Bus, l *loads.Load) { l.Kind = 5 }},
		{"no count", "Count", func(_ *loads.Bus, l *loads.Load) { l.Count = 0 }},
		{"negative count", "Count", func(_ *loads.Bus, l *loads.Load) { l.Count = -1 }},
		{"no rating", "Rating", func(_ *loads.Bus, l *loads.Load) { l.Rating = loads.Rating{} }},
		{"two ratings", "Rating", func(_ *loads.Bus, l *loads.Load) { l.Rating.Current = units.Some(4 * units.Ampere) }},
		{"output without efficiency", "Rating.Efficiency", func(_ *loads.Bus, l *loads.Load) {
			l.Rating = loads.Rating{Output: units.Some(units.Watt)}
		}},
		{"efficiency without output", "Rating.Efficiency", func(_ *loads.Bus, l *loads.Load) {
			l.Rating.Efficiency = units.Some(units.One)
		}},
		{"volt-amperes of direct current", "Rating.Apparent", func(_ *loads.Bus, l *loads.Load) {
			l.Rating = loads.Rating{Apparent: units.Some(units.VoltAmpere)}
		}},
		{"power factor of direct current", "Rating.PowerFactor", func(_ *loads.Bus, l *loads.Load) {
			l.Rating.PowerFactor = units.Some(units.One)
		}},
		{"power factor of a heater", "Rating.PowerFactor", func(b *loads.Bus, l *loads.Load) {
			b.Kind, l.Kind = loads.Alternating, loads.Resistive
			l.Rating.PowerFactor = units.Some(90 * units.Percent)
		}},
		{"no hours", "Hours", func(_ *loads.Bus, l *loads.Load) { l.Hours = units.None[units.Elapsed]() }},
		{"hours and windows", "Hours", func(_ *loads.Bus, l *loads.Load) { l.Windows = []loads.Window{{To: at(5, 0)}} }},
		{"window of nothing", "Windows[0]", windows(loads.Window{From: at(5, 0), To: at(5, 0)})},
		{"window from 24:00", "Windows[0]", windows(loads.Window{From: at(24, 0), To: at(5, 0)})},
		{"window to 24:01", "Windows[0]", windows(loads.Window{From: at(5, 0), To: at(24, 1)})},
		{"window from 05:60", "Windows[0]", windows(loads.Window{From: at(5, 60), To: at(7, 0)})},
		{"window to -1 h", "Windows[0]", windows(loads.Window{From: at(5, 0), To: at(-1, 0)})},
		{"windows that meet", "Windows[1]", windows(
			loads.Window{From: at(18, 30), To: at(5, 30)}, loads.Window{From: at(5, 29), To: at(6, 0)})},
		{"a window in another", "Windows[1]", windows(
			loads.Window{From: at(23, 0), To: at(1, 0)}, loads.Window{From: at(22, 0), To: at(3, 0)})},
		{"the same window", "Windows[1]", windows(loads.Window{To: at(1, 0)}, loads.Window{To: at(1, 0)})},
		{"a whole day and more", "Windows[1]", windows(loads.Window{To: at(24, 0)}, loads.Window{From: at(12, 0), To: at(13, 0)})},
	} {
		t.Run(c.what, func(t *testing.T) {
			b, l := battery, fridge()
			c.spoil(&b, &l)
			got, err := loads.Take(b, l)
			wantRangeError(t, err, "loads.Take", c.field)
			if n := len(rangeErrors(err)); n != 1 {
				t.Errorf("%d errors, want the one: %v", n, err)
			}
			if got != (loads.Line{}) {
				t.Errorf("a result %+v", got)
			}
		})
	}
}

func TestTouchingWindowsAreApart(t *testing.T) {
	l := fridge()
	l.Hours = units.None[units.Elapsed]()
	l.Windows = []loads.Window{
		{From: loads.Clock{Hour: 22}, To: loads.Clock{Hour: 1}},
		{From: loads.Clock{Hour: 1}, To: loads.Clock{Hour: 22}},
	}
	if v := take(t, battery, l); units.Compare(v.Hours, 24*units.Hour) != 0 || v.Schedule != "22:00 to 01:00, 01:00 to 22:00" {
		t.Errorf("two windows that touch are %v, %q, want 24 h", v.Hours, v.Schedule)
	}
}

func TestResultTooLarge(t *testing.T) {
	for field, spoil := range map[string]func(*loads.Bus, *loads.Load){
		"Energy": func(_ *loads.Bus, l *loads.Load) { l.Rating.Power = units.Some(units.Power(1e308)) },
		"Apparent": func(b *loads.Bus, l *loads.Load) {
			b.Kind = loads.Alternating
			l.Rating = loads.Rating{Power: units.Some(units.Power(1e300)), PowerFactor: units.Some(units.Ratio(1e-300))}
			l.Hours = units.Some[units.Elapsed](0)
		},
		"Current": func(b *loads.Bus, _ *loads.Load) { b.Voltage = 1e-310 },
		"Charge":  func(b *loads.Bus, l *loads.Load) { b.Voltage, l.Standby = 1e-304, 1e3 },
	} {
		b, l := battery, fridge()
		spoil(&b, &l)
		v, err := loads.Take(b, l)
		wantRangeError(t, err, "loads.Take", field)
		if v != (loads.Line{}) {
			t.Errorf("%s too large: a result %+v", field, v)
		}
	}
}

// TestLineLaws holds whatever the numbers are.
func TestLineLaws(t *testing.T) {
	base := take(t, battery, fridge())
	changed := func(change func(*loads.Bus, *loads.Load)) loads.Line {
		b, l := battery, fridge()
		change(&b, &l)
		return take(t, b, l)
	}
	same := func(a, b units.Energy) bool { return units.Compare(a, b) == 0 }
	for law, holds := range map[string]func() bool{
		"twice as many take twice as much": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) { l.Count = 2 })
			return same(v.Energy, 2*base.Energy) && units.Compare(v.Current, 2*base.Current) == 0
		},
		"half the hours at full duty are the same as half the duty": func() bool {
			a := changed(func(_ *loads.Bus, l *loads.Load) { l.Duty = units.Some(0.5 * units.One) })
			b := changed(func(_ *loads.Bus, l *loads.Load) {
				l.Duty, l.Hours = units.None[units.Ratio](), units.Some(12*units.Hour)
			})
			return same(a.Energy, b.Energy) && a.Average == b.Average
		},
		"what always runs has no standby": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) { l.Duty = units.None[units.Ratio]() })
			return v.StandbyEnergy == 0 && same(v.Energy, v.Power.For(24*units.Hour))
		},
		"what never runs takes its standby all day": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) { l.Hours = units.Some(0 * units.Hour) })
			return same(v.Energy, 36*units.WattHour) && v.RunEnergy == 0
		},
		"the parts are the whole": func() bool {
			return same(base.RunEnergy+base.StandbyEnergy, base.Energy) && same(base.Average.For(24*units.Hour), base.Energy)
		},
		"charge times voltage is energy": func() bool {
			return same(base.Charge.Or(0).At(12*units.Volt), base.Energy)
		},
		"amperes at a voltage are their watts": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) {
				l.Rating = loads.Rating{Current: units.Some(4 * units.Ampere), Voltage: units.Some(12 * units.Volt)}
			})
			return same(v.Energy, base.Energy)
		},
		"a nameplate of another voltage follows its kind": func() bool {
			at := func(k loads.Kind) units.Power {
				return changed(func(b *loads.Bus, l *loads.Load) {
					b.Voltage, l.Kind, l.Rating.Voltage = 24*units.Volt, k, units.Some(12*units.Volt)
				}).Power
			}
			return units.Compare(at(loads.Resistive), 192*units.Watt) == 0 &&
				units.Compare(at(loads.ConstantCurrent), 96*units.Watt) == 0 &&
				at(loads.ConstantPower) == 48*units.Watt && at(loads.Motor) == 48*units.Watt
		},
		"volt-amperes with a power factor are their watts": func() bool {
			v := changed(func(b *loads.Bus, l *loads.Load) {
				b.Kind = loads.Alternating
				l.Rating = loads.Rating{Apparent: units.Some(80 * units.VoltAmpere), PowerFactor: units.Some(60 * units.Percent)}
			})
			return same(v.Energy, base.Energy) && units.Compare(v.Current.ApparentAt(12*units.Volt), 80*units.VoltAmpere) == 0 && !v.Charge.IsSet()
		},
		"a power factor that is not given is 1, and said": func() bool {
			v := changed(func(b *loads.Bus, _ *loads.Load) { b.Kind = loads.Alternating })
			return v.PowerFactor == 1 && v.PowerFactorAssumed && units.In(v.Apparent, units.VoltAmpere) == units.In(v.Power, units.Watt)
		},
		"0 W is data": func() bool {
			return changed(func(_ *loads.Bus, l *loads.Load) { l.Rating.Power = units.Some(0 * units.Watt) }).Power == 0
		},
		"at its own voltage a line takes what the ledger has": func() bool {
			d, err := base.At(12 * units.Volt)
			return err == nil && d.Power == base.Power && d.Current == base.Current
		},
		"a lower voltage never lowers the current of a motor": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) { l.Kind = loads.Motor })
			last := v.Current
			for u := 11.9; u > 9; u -= 0.1 {
				d, err := v.At(units.Voltage(u))
				if err != nil || !(d.Current > last) {
					return false
				}
				last = d.Current
			}
			return true
		},
		"a lamp driver keeps its current": func() bool {
			v := changed(func(_ *loads.Bus, l *loads.Load) { l.Kind = loads.ConstantCurrent })
			d, err := v.At(10.5 * units.Volt)
			return err == nil && units.Compare(d.Current, v.Current) == 0 && d.Power < v.Power
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

func TestDrawIsChecked(t *testing.T) {
	v := take(t, battery, fridge())
	for _, x := range append(notNumbers, 0) {
		d, err := v.At(units.Voltage(x))
		wantRangeError(t, err, "loads.Line.At", "u")
		if d != (loads.Draw{}) {
			t.Errorf("at %v V: a result %+v", x, d)
		}
	}
	_, err := loads.Line{}.At(units.Volt)
	wantRangeError(t, err, "loads.Line.At", "Apparent")
	_, err = v.At(1e-310)
	wantRangeError(t, err, "loads.Line.At", "Current")
}

func TestRatingText(t *testing.T) {
	for want, r := range map[string]loads.Rating{
		"nothing":     {},
		"7 A at 12 V": {Current: units.Some(7 * units.Ampere), Voltage: units.Some(12 * units.Volt)},
		"80 VA, power factor 0.6": {
			Apparent: units.Some(80 * units.VoltAmpere), PowerFactor: units.Some(60 * units.Percent),
		},
		"output 950 W, efficiency 65 %": {Output: units.Some(950 * units.Watt), Efficiency: units.Some(65 * units.Percent)},
		"48 W and 4 A":                  {Power: units.Some(48 * units.Watt), Current: units.Some(4 * units.Ampere)},
	} {
		if got := r.String(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
	l := fridge()
	l.Rating.Current = units.Some(4 * units.Ampere)
	if _, err := loads.Take(battery, l); err == nil || !strings.Contains(err.Error(), "Rating = 48 W and 4 A, want exactly one of") {
		t.Errorf("two ratings are reported as %v", err)
	}
}
