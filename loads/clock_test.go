package loads_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

func TestParseClock(t *testing.T) {
	for in, want := range map[string]loads.Clock{
		"18:30": {Hour: 18, Minute: 30}, "5:05": {Hour: 5, Minute: 5}, " 00:00 ": {}, "24:00": {Hour: 24}, "23:59": {Hour: 23, Minute: 59},
	} {
		got, err := loads.ParseClock(in)
		if err != nil || got != want {
			t.Errorf("ParseClock(%q) = %v, %v, want %v", in, got, err, want)
		}
		text, err := got.MarshalText()
		var back loads.Clock
		if err == nil {
			err = back.UnmarshalText(text)
		}
		if err != nil || back != got || string(text) != got.String() {
			t.Errorf("%v is written %q and read %v, %v", got, text, back, err)
		}
	}
	for _, in := range []string{"", "18", "18:3", "18:60", "24:01", "25:00", "-1:00", "018:30", "18:030", "1a:30", "18:b0", "18.30", "18:30:00", "6 pm", "+8:30"} {
		got, err := loads.ParseClock(in)
		var e *units.ParseError
		if !errors.As(err, &e) || e.Input != in || e.Reason == "" || got != (loads.Clock{}) {
			t.Errorf("ParseClock(%q) = %v, %v, want a *units.ParseError", in, got, err)
		}
	}
	kept := loads.Clock{Hour: 7}
	if err := kept.UnmarshalText([]byte("noon")); err == nil || kept != (loads.Clock{Hour: 7}) {
		t.Errorf("an error leaves %v, %v", kept, err)
	}
	if _, err := (loads.Clock{Hour: 24, Minute: 1}).MarshalText(); !errors.Is(err, units.ErrRange) {
		t.Errorf("24:01 is written: %v", err)
	}
}

func TestWindowLength(t *testing.T) {
	for want, w := range map[units.Elapsed]loads.Window{
		11 * units.Hour:  {From: loads.Clock{Hour: 18, Minute: 30}, To: loads.Clock{Hour: 5, Minute: 30}},
		5 * units.Hour:   {From: loads.Clock{Hour: 19, Minute: 30}, To: loads.Clock{Minute: 30}},
		units.Minute:     {From: loads.Clock{Hour: 23, Minute: 59}},
		24 * units.Hour:  {To: loads.Clock{Hour: 24}},
		0:                {From: loads.Clock{Hour: 3}, To: loads.Clock{Hour: 3}},
		4.5 * units.Hour: {From: loads.Clock{Hour: 19, Minute: 30}, To: loads.Clock{Hour: 24}},
	} {
		if got := w.Length(); got != want {
			t.Errorf("%v is %v, want %v", w, got, want)
		}
	}
}

func TestWords(t *testing.T) {
	type words struct {
		Bus  loads.BusKind
		Kind loads.Kind
	}
	for want, w := range map[string]words{
		`{"Bus":"direct","Kind":"constant power"}`: {loads.Direct, loads.ConstantPower},
		`{"Bus":"alternating","Kind":"motor"}`:     {loads.Alternating, loads.Motor},
		`{"Bus":"","Kind":"resistive"}`:            {0, loads.Resistive},
		`{"Bus":"","Kind":"constant current"}`:     {0, loads.ConstantCurrent},
		`{"Bus":"direct","Kind":""}`:               {loads.Direct, 0},
	} {
		text, err := json.Marshal(w)
		if err != nil || string(text) != want {
			t.Errorf("%+v is written %s, %v, want %s", w, text, err, want)
		}
		back := words{loads.Alternating, loads.Motor}
		if err := json.Unmarshal([]byte(want), &back); err != nil || back != w {
			t.Errorf("%s is read %+v, %v", want, back, err)
		}
	}
	for _, text := range []string{`{"Bus":"dc"}`, `{"Kind":"lamp"}`} {
		var e *units.ParseError
		w := words{loads.Direct, loads.Motor}
		if err := json.Unmarshal([]byte(text), &w); !errors.As(err, &e) || w != (words{loads.Direct, loads.Motor}) {
			t.Errorf("%s is read as %+v, %v", text, w, err)
		}
	}
	for _, v := range []interface{ MarshalText() ([]byte, error) }{loads.BusKind(3), loads.Kind(5)} {
		if _, err := v.MarshalText(); !errors.Is(err, units.ErrRange) {
			t.Errorf("%v is written: %v", v, err)
		}
	}
	if got := loads.Kind(5).String() + ", " + loads.BusKind(0).String(); got != "not given, not given" {
		t.Errorf("unknown kinds are %q", got)
	}
	var k loads.Kind
	if err := k.UnmarshalText([]byte(" Constant  POWER ")); err != nil || k != loads.ConstantPower {
		t.Errorf("letter case and spaces matter: %v, %v", k, err)
	}
}
