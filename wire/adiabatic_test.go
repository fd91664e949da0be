package wire_test

import (
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// lampWire is thin wire behind a large fuse: 86.4 A for its far end.
func lampWire() wire.ShortTime {
	return wire.ShortTime{Size: wire.AWG(16), Core: wire.CorePVC70, Current: 86.4 * units.Ampere}
}

func mustWithstand(t testing.TB, x wire.ShortTime) wire.Withstand {
	t.Helper()
	w, err := wire.Adiabatic(x)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// TestAdiabaticCases: aluminium in a cable has k 76 and 94 (IEC 60364-4-43,
// from memory).
func TestAdiabaticCases(t *testing.T) {
	// t = 115² · 1.31² / 86.4², with 1.31 mm² rounded
	near(t, "how long lamp wire bears it", float64(mustWithstand(t, lampWire()).Longest.Or(0)), 3.04)
	for core, want := range map[wire.Core]float64{wire.CorePVC70: 76, wire.CoreXLPE90: 94} {
		x := lampWire()
		x.Core, x.Metal = core, wire.Aluminium
		if k := mustWithstand(t, x).K; math.Abs(float64(k)-want) > 0.5 {
			t.Errorf("aluminium, %v: k %v, want %v", core, float64(k), want)
		}
	}
	// What lasts longer than 5 s is not known to be borne.
	slow := lampWire()
	slow.Current = 67 * units.Ampere
	if longest := mustWithstand(t, slow).Longest; longest.IsSet() {
		t.Errorf("67 A: %v, want not given", longest)
	}
	slow.Current = 68 * units.Ampere
	if longest := mustWithstand(t, slow).Longest; !longest.IsSet() {
		t.Error("68 A: not given, want 4.9 s")
	}
	huge := wire.ShortTime{Size: wire.Aught(4), Core: wire.CoreXLPE90, Current: 1e-200}
	if w := mustWithstand(t, huge); w.Longest.IsSet() {
		t.Errorf("next to no current: %v", w.Longest)
	}
}

func TestAdiabaticRefuses(t *testing.T) {
	temperatures := func(x *wire.ShortTime, from, to float64) {
		x.Core, x.Initial, x.Final = 0, units.Celsius(from), units.Celsius(to)
	}
	for _, c := range []struct {
		field string
		spoil func(*wire.ShortTime)
	}{
		{"Size", func(x *wire.ShortTime) { x.Size = wire.Size{} }},
		{"Metal", func(x *wire.ShortTime) { x.Metal = wire.CopperClad }},
		{"Core", func(x *wire.ShortTime) { x.Core = wire.SeparateThermoset90 + 1 }},
		{"Initial", func(x *wire.ShortTime) { x.Initial = units.Celsius(70) }},
		{"Final", func(x *wire.ShortTime) { x.Final = units.Celsius(160) }},
		{"Initial", func(x *wire.ShortTime) { x.Core = 0 }},
		{"Initial", func(x *wire.ShortTime) { temperatures(x, -41, 160) }},
		{"Final", func(x *wire.ShortTime) { temperatures(x, 70, 401) }},
		{"Final", func(x *wire.ShortTime) { temperatures(x, 70, 70) }},
		{"Final", func(x *wire.ShortTime) { temperatures(x, 70, math.NaN()) }},
		{"Time", func(x *wire.ShortTime) { x.Time = units.Some(5.01 * units.Second) }},
		{"Current", func(x *wire.ShortTime) { x.Current = 1e200 }},
		{"Let", func(x *wire.ShortTime) { x.Current, x.Time = 1e158, units.Some(5*units.Second) }},
		{"Let", func(x *wire.ShortTime) { x.Current, x.Time = 1e-200, units.Some(5*units.Second) }},
	} {
		x := lampWire()
		c.spoil(&x)
		w, err := wire.Adiabatic(x)
		wantRangeError(t, err, "wire.Adiabatic", c.field)
		if w != (wire.Withstand{}) {
			t.Errorf("%s: result %+v, want the zero value", c.field, w)
		}
	}
	for _, v := range bad {
		x := lampWire()
		x.Time = units.Some(units.Elapsed(v))
		_, err := wire.Adiabatic(x)
		wantRangeError(t, err, "wire.Adiabatic", "Time")
		x = lampWire()
		x.Current = units.Current(v)
		_, err = wire.Adiabatic(x)
		wantRangeError(t, err, "wire.Adiabatic", "Current")
	}
	at5 := lampWire()
	at5.Time = units.Some(5 * units.Second)
	mustWithstand(t, at5)
}

func TestAdiabaticFindings(t *testing.T) {
	x := lampWire()
	x.Time = units.Some(3 * units.Second)
	found := mustWithstand(t, x).Findings()
	saysAll(t, found)
	if len(found) != 1 || !hasSeverity(found, "adiabatic-method", working.Note) {
		t.Errorf("3 s: found %v", found)
	}
	if found = mustWithstand(t, lampWire()).Findings(); len(found[0].Numbers) != 1 {
		t.Errorf("without a time: found %v, want nothing let through", found)
	}
	x.Time = units.Some(3.1 * units.Second)
	found = mustWithstand(t, x).Findings()
	saysAll(t, found)
	if len(found) != 1 || !hasSeverity(found, "withstand-exceeded", working.Danger) {
		t.Errorf("3.1 s: found %v", found)
	}
}

// TestAdiabaticLaws: what the equation says of doubled things.
func TestAdiabaticLaws(t *testing.T) {
	x := lampWire()
	x.Time = units.Some(1 * units.Second)
	base := mustWithstand(t, x)
	twice := x
	twice.Current *= 2
	if w := mustWithstand(t, twice); units.Compare(w.Let, 4*base.Let) != 0 || units.Compare(w.MinArea, 2*base.MinArea) != 0 ||
		units.Compare(4*w.Longest.Or(0), base.Longest.Or(1)) != 0 {
		t.Errorf("twice the current: %+v after %+v", w, base)
	}
	// The least cross-section bears exactly what is let through, for longer than
	// that of a smaller one.
	k := float64(base.K)
	if s := units.In(base.MinArea, units.SquareMillimetre); units.Compare(k*k*s*s, float64(base.Let)) != 0 {
		t.Errorf("%v bears %v of %v", base.MinArea, k*k*s*s, base.Let)
	}
	last := units.JouleIntegral(0)
	for _, size := range wire.Gauges() {
		x.Size = size
		w := mustWithstand(t, x)
		if w.Bears <= last {
			t.Errorf("%v bears %v, less than the size below", size, w.Bears)
		}
		last = w.Bears
	}
}
