package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"io"
	"math"
	"testing"

	"example.com/drawbar/units"
)

func TestOpt(t *testing.T) {
	some, zero, none := units.Some(12*units.Watt), units.Some(0*units.Watt), units.None[units.Power]()
	var unset units.Opt[units.Power]
	for _, test := range []struct {
		what  string
		o     units.Opt[units.Power]
		value units.Power
		set   bool
		or    units.Power
		text  string
	}{
		{"some", some, 12, true, 12, "12 W"},
		{"an explicit zero", zero, 0, true, 0, "0 W"},
		{"none", none, 0, false, 5, "not given"},
		{"the zero Opt", unset, 0, false, 5, "not given"},
	} {
		if v, set := test.o.Get(); v != test.value || set != test.set {
			t.Errorf("%s: Get = %v, %t", test.what, v, set)
		}
		if test.o.IsSet() != test.set || test.o.IsZero() == test.set {
			t.Errorf("%s: IsSet = %t, IsZero = %t", test.what, test.o.IsSet(), test.o.IsZero())
		}
		if got := test.o.Or(5 * units.Watt); got != test.or {
			t.Errorf("%s: Or = %v, want %v", test.what, got, test.or)
		}
		if got := test.o.String(); got != test.text {
			t.Errorf("%s: String = %q, want %q", test.what, got, test.text)
		}
	}
	if none != unset || zero == none || some == zero || some != units.Some(12*units.Watt) {
		t.Error("== does not tell given from not given, or one value from another")
	}
}

func TestOptText(t *testing.T) {
	for text, want := range map[string]units.Opt[units.Power]{
		"12 W": units.Some(12 * units.Watt), "0 W": units.Some(0 * units.Watt), "": units.None[units.Power](),
	} {
		got := units.Some(99 * units.Watt)
		if err := got.UnmarshalText([]byte(text)); err != nil || got != want {
			t.Errorf("UnmarshalText(%q): %v, %v, want %v", text, got, err, want)
		}
		if back, err := want.MarshalText(); err != nil || string(back) != text {
			t.Errorf("(%v).MarshalText() = %q, %v, want %q", want, back, err, text)
		}
	}
	// Errors are those of T, and leave the value alone.
	o := units.Some(5 * units.Watt)
	if err := o.UnmarshalText([]byte("12 V")); !errors.Is(err, units.ErrSyntax) || o != units.Some(5*units.Watt) {
		t.Errorf("UnmarshalText(12 V): %v, %v", o, err)
	}
	if _, err := units.Some(units.Power(math.NaN())).MarshalText(); !errors.Is(err, units.ErrRange) {
		t.Errorf("MarshalText of NaN: %v", err)
	}
	// A type without text.
	n := units.Some(5)
	for op, f := range map[string]func() error{
		"units.Opt.MarshalText":   func() error { _, err := n.MarshalText(); return err },
		"units.Opt.UnmarshalText": func() error { return n.UnmarshalText([]byte("7")) },
	} {
		var e *units.TextError
		if err := f(); !errors.As(err, &e) || e.Op != op || e.Type != "int" || e.Want == "" || n != units.Some(5) {
			t.Errorf("%s: %v", op, err)
		}
	}
	if _, err := units.None[error]().MarshalText(); err == nil || err.Error() != "units.Opt.MarshalText: error is not an encoding.TextMarshaler" {
		t.Errorf("MarshalText of no error: %v", err)
	}
	if err := new(units.Opt[int]).UnmarshalText(nil); err == nil {
		t.Error("an int was read from empty text")
	}
}

func TestOptFlag(t *testing.T) {
	fs := flag.NewFlagSet("", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	var o units.Opt[units.Power]
	fs.TextVar(&o, "idle", units.None[units.Power](), "idle power")
	if err := fs.Parse([]string{"-idle", "0 W"}); err != nil || o != units.Some(0*units.Watt) {
		t.Errorf("-idle '0 W': %v, %v", o, err)
	}
	if err := fs.Parse([]string{"-idle", "5 V"}); err == nil {
		t.Errorf("-idle '5 V': %v", o)
	}
}

func TestOptJSON(t *testing.T) {
	type input struct {
		Idle    units.Opt[units.Power]       `json:"idle,omitzero"`
		Sense   units.Opt[units.Voltage]     `json:"sense,omitzero"`
		Ambient units.Opt[units.Temperature] `json:"ambient,omitzero"`
		Name    units.Opt[string]            `json:"name,omitzero"`
		Count   units.Opt[int]               `json:"count,omitzero"`
	}
	for _, test := range []struct {
		text string
		want input
		back string // empty: the same as text
	}{
		{`{}`, input{}, ""},
		{`{"idle":null,"name":null,"count":null,"ambient":null}`, input{}, `{}`},
		{`{"idle":"","ambient":""}`, input{}, `{}`},
		{`{"idle":"0 W"}`, input{Idle: units.Some(0 * units.Watt)}, ""},
		{`{"sense":"12 V"}`, input{Sense: units.Some(12 * units.Volt)}, ""},
		{`{"sense":"12\u0020V"}`, input{Sense: units.Some(12 * units.Volt)}, `{"sense":"12 V"}`},
		{`{"ambient":"0 °C"}`, input{Ambient: units.Some(units.Celsius(0))}, ""},
		{`{"name":"","count":0}`, input{Name: units.Some(""), Count: units.Some(0)}, ""},
		{`{"name":"rear","count":2}`, input{Name: units.Some("rear"), Count: units.Some(2)}, ""},
	} {
		var got input
		if err := json.Unmarshal([]byte(test.text), &got); err != nil || got != test.want {
			t.Errorf("%s reads as %+v, %v, want %+v", test.text, got, err, test.want)
		}
		back := test.back
		if back == "" {
			back = test.text
		}
		if text, err := json.Marshal(got); err != nil || string(text) != back {
			t.Errorf("%+v is written %s, %v, want %s", got, text, err, back)
		}
	}
	// Over what was there before: null takes it away, absence does not.
	over := input{Idle: units.Some(5 * units.Watt), Count: units.Some(2)}
	if err := json.Unmarshal([]byte(`{"idle":null}`), &over); err != nil || over != (input{Count: units.Some(2)}) {
		t.Errorf("null over 5 W: %+v, %v", over, err)
	}
	// Without omitzero, what was not given is null.
	if text, err := json.Marshal([]units.Opt[units.Power]{units.None[units.Power](), units.Some(0 * units.Watt)}); err != nil || string(text) != `[null,"0 W"]` {
		t.Errorf("a list is written %s, %v", text, err)
	}
	// Errors leave the value alone.
	for text, want := range map[string]error{`{"idle":"12 V"}`: units.ErrSyntax, `{"idle":12}`: nil, `{"count":"x"}`: nil} {
		got := input{Idle: units.Some(5 * units.Watt), Count: units.Some(2)}
		before := got
		err := json.Unmarshal([]byte(text), &got)
		if err == nil || want != nil && !errors.Is(err, want) || got != before {
			t.Errorf("%s reads as %+v, %v", text, got, err)
		}
	}
	if _, err := json.Marshal(units.Some(units.Power(math.NaN()))); !errors.Is(err, units.ErrRange) {
		t.Errorf("JSON of NaN: %v", err)
	}
}

func TestOptAllocs(t *testing.T) {
	o := units.Some(12 * units.Watt)
	if n := testing.AllocsPerRun(100, func() {
		_, _ = o.Get()
		_ = o.Or(5 * units.Watt)
		_ = o.IsSet()
	}); n != 0 {
		t.Errorf("Get, Or and IsSet allocate %v times", n)
	}
}
