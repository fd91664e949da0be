package units_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"example.com/drawbar/units"
)

func TestIn(t *testing.T) {
	for _, c := range []struct{ got, want float64 }{
		{units.In(1500*units.Watt, units.Kilowatt), 1.5},
		{units.In(100*units.AmpereHour, units.AmpereHour), 100},
		{units.In(15*units.Foot, units.Metre), 4.572},
		{units.In(30*units.Percent, units.Percent), 30},
	} {
		if units.Compare(c.got, c.want) != 0 {
			t.Errorf("In = %v, want %v", c.got, c.want)
		}
	}
}

func TestMeasure(t *testing.T) {
	for _, c := range []struct {
		v      units.Value
		symbol string
		want   float64
		unit   string
	}{
		{1500 * units.Watt, "kW", 1.5, "kW"},
		{1500 * units.Watt, "kilowatts", 1.5, "kW"},
		{25 * units.Ohm, "ohm", 25, "Ω"},
		{2.5 * units.SquareMillimetre, "mm2", 2.5, "mm²"},
		{30 * units.Percent, "%", 30, "%"},
		{30 * units.Percent, "1", 0.3, "1"},
		{units.PerKelvin(0.00393), "1/K", 0.00393, "1/K"},
		{units.Celsius(25), "°C", 25, "°C"},
		{units.Celsius(25), "F", 77, "°F"},
		{units.Celsius(25), "kelvin", 298.15, "K"},
		{units.Celsius(0), "degC", 0, "°C"},
	} {
		x, unit, err := units.Measure(c.v, c.symbol)
		if units.Compare(x, c.want) != 0 || unit != c.unit || err != nil {
			t.Errorf("Measure(%v, %q) = %v, %q, %v, want %v, %q", c.v, c.symbol, x, unit, err, c.want, c.unit)
		}
	}
}

// wrapped is a Value, because it embeds one, and no quantity.
type wrapped struct{ units.Voltage }

func TestMeasureErrors(t *testing.T) {
	volts := 12 * units.Volt
	var none *units.Voltage
	for _, c := range []struct {
		v      units.Value
		symbol string
		want   string
		is     error
	}{
		{volts, "A", `parsing "A" as a unit of voltage: want one of V, mV, kV`, units.ErrSyntax},
		{volts, "", `parsing "" as a unit of voltage: want one of V, mV, kV`, units.ErrSyntax},
		{volts, "MV", `parsing "MV" as a unit of voltage: want one of V, mV, kV`, units.ErrSyntax},
		{30 * units.Percent, "A", `parsing "A" as a unit of ratio: want one of %, ‰, 1`, units.ErrSyntax},
		{units.Celsius(20), "V", `parsing "V" as a unit of temperature: want one of °C, °F, K`, units.ErrSyntax},
		{units.Temperature{}, "°C", "units.Measure: temperature = not given, want given and finite", units.ErrRange},
		{nil, "V", "units.Measure: v = <nil>, want a quantity or a temperature", units.ErrRange},
		{&volts, "V", "units.Measure: v = *units.Voltage, want a quantity or a temperature", units.ErrRange},
		{none, "V", "units.Measure: v = *units.Voltage, want a quantity or a temperature", units.ErrRange},
		{wrapped{volts}, "V", "units.Measure: v = units_test.wrapped, want a quantity or a temperature", units.ErrRange},
	} {
		x, unit, err := units.Measure(c.v, c.symbol)
		if x != 0 || unit != "" || !errors.Is(err, c.is) || err.Error() != c.want {
			t.Errorf("Measure(%T, %q) = %v, %q, %v, want %s", c.v, c.symbol, x, unit, err, c.want)
		}
	}
}

// extremes are the float64 that text has most trouble with.
func extremes() []float64 {
	return []float64{
		0, 1, 0.1, 1.0 / 3, math.Pi, 1e-6, 1e15, 1e22, 1e23, 123456789012345678,
		math.MaxFloat64, math.Nextafter(math.MaxFloat64, 0), math.SmallestNonzeroFloat64,
		0x1p-1022, math.Nextafter(0x1p-1022, 0), 0x1p-1060, 3 * math.SmallestNonzeroFloat64,
		math.Nextafter(1, 2), math.Nextafter(1, 0), 0x1p53 + 2, 5e-324, 8.41e21, 2.2250738585072011e-308,
	}
}

// TestTextRoundTrip quotes "MarshalText reads back exactly", for every type,
// extremes and numbers of any bits among the values.
func TestTextRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for name, s := range subjects() {
		values := extremes()
		for range 300 {
			values = append(values, math.Float64frombits(r.Uint64()), r.NormFloat64()*1e3, float64(r.IntN(1000))/100*units.Rows(s.zero)[0].Float)
		}
		for _, x := range values {
			checkText(t, name, s, x)
			checkText(t, name, s, -x)
		}
	}
}

// checkText checks that x goes to text and back, twice, without a change.
func checkText(t *testing.T, name string, s subject, x float64) {
	t.Helper()
	text, err := s.marshal(x)
	more, appendErr := s.append([]byte("= "), x)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		if text != nil || !errors.Is(err, units.ErrRange) || string(more) != "= " || !errors.Is(appendErr, units.ErrRange) {
			t.Fatalf("MarshalText of %s(%v) = %q, %v, AppendText %q, %v, want a RangeError", name, x, text, err, more, appendErr)
		}
		return
	}
	if err != nil || appendErr != nil || "= "+string(text) != string(more) {
		t.Fatalf("MarshalText of %s(%v) = %q, %v, AppendText %q, %v", name, x, text, err, more, appendErr)
	}
	back, err := s.parse(string(text))
	if back != x || err != nil {
		t.Fatalf("%s(%v) is written %q and read as %v, %v", name, x, text, back, err)
	}
	if again, err := s.marshal(back); string(again) != string(text) || err != nil {
		t.Fatalf("%s(%v) is written %q, read, and written %q, %v", name, x, text, again, err)
	}
	if read, err := s.unmarshal(1, text); read != x || err != nil {
		t.Fatalf("UnmarshalText(%q) of %s = %v, %v, want %v", text, name, read, err, x)
	}
}

// TestTextStays holds that a number of 15 digits or fewer is written as it
// was read, in every unit that MarshalText uses.
func TestTextStays(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for name, s := range subjects() {
		symbol := units.Rows(s.zero)[0].Symbol
		for range 200 {
			text := withUnit(strconv.FormatFloat(float64(1+r.IntN(1e6))/1e3, 'f', -1, 64), symbol)
			x, err := s.parse(text)
			if err != nil {
				t.Fatal(err)
			}
			if again, err := s.marshal(x); string(again) != text || err != nil {
				t.Errorf("%s reads %q and writes %q, %v", name, text, again, err)
			}
		}
	}
}

func TestMarshalText(t *testing.T) {
	for _, c := range []struct {
		kind string
		x    float64
		want string
	}{
		{"Voltage", 12.8, "12.8 V"},
		{"Voltage", 0, "0 V"},
		{"Voltage", math.Copysign(0, -1), "0 V"},
		{"Voltage", -1e-7, "-1e-07 V"},
		{"Voltage", 1e15, "1e+15 V"},
		{"Power", 1500, "1500 W"}, // not the unit that suits: one for all
		{"Charge", 360000, "100 Ah"},
		{"Ratio", 0.3, "30 %"},
		{"Area", 2.5e-6, "2.5 mm²"},
		{"Angle", math.Pi / 4, "45°"},
		{"VolumeFlow", 1, "3600 m³/h"},
		{"Resistance", 0.00198, "0.00198 Ω"},
		// 15 digits if they read back as the value, else 16 or 17
		{"Energy", 1, "0.0002777777777777778 Wh"},
		{"Area", 2.4999999999999998e-6, "2.4999999999999998 mm²"},
		{"Ratio", 0.30000000000000004, "30.000000000000004 %"},
		// beyond what the unit can count in float64
		{"Area", 1e305, "1e+311 mm²"},
		{"Energy", 5e-324, "1.37240457178124e-327 Wh"},
	} {
		text, err := subjects()[c.kind].marshal(c.x)
		if string(text) != c.want || err != nil {
			t.Errorf("MarshalText of %s(%v) = %q, %v, want %q", c.kind, c.x, text, err, c.want)
		}
	}
	_, err := subjects()["Voltage"].marshal(math.NaN())
	if want := "units.MarshalText: voltage = NaN V, want finite"; err == nil || err.Error() != want {
		t.Errorf("MarshalText of NaN says %v, want %s", err, want)
	}
}

// TestUnmarshalText quotes "reads what Parse reads, with the same errors",
// and leaves the value alone on an error.
func TestUnmarshalText(t *testing.T) {
	for name, s := range subjects() {
		for _, text := range []string{"", "12 furlongs", "1e400 " + units.Rows(s.zero)[0].Symbol} {
			x, err := s.unmarshal(7, []byte(text))
			_, want := s.parse(text)
			if x != 7 || err == nil || err.Error() != want.Error() {
				t.Errorf("UnmarshalText(%q) of %s leaves %v with %v, want 7 with %v", text, name, x, err, want)
			}
		}
		if x, err := s.unmarshal(7, []byte("2 "+units.Rows(s.zero)[0].Symbol)); err != nil || x == 7 {
			t.Errorf("UnmarshalText of %s = %v, %v", name, x, err)
		}
	}
}

// TestJSON carries quantities through a document as values, as keys and in
// pointers.
func TestJSON(t *testing.T) {
	type load struct {
		Name  string
		Power units.Power
		Idle  *units.Power `json:",omitempty"`
		Drop  map[units.Current]units.Voltage
		Share units.Ratio
	}
	idle := units.Power(0)
	in := load{"fan", 12.5 * units.Watt, &idle, map[units.Current]units.Voltage{10 * units.Ampere: 0.3 * units.Volt, 20 * units.Ampere: 0.6 * units.Volt}, 30 * units.Percent}
	text, err := json.Marshal(in)
	want := `{"Name":"fan","Power":"12.5 W","Idle":"0 W","Drop":{"10 A":"0.3 V","20 A":"0.6 V"},"Share":"30 %"}`
	if string(text) != want || err != nil {
		t.Fatalf("Marshal = %s, %v, want %s", text, err, want)
	}
	var out load
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if out.Power != in.Power || out.Idle == nil || *out.Idle != 0 || out.Share != in.Share || !maps.Equal(out.Drop, in.Drop) {
		t.Errorf("Unmarshal = %+v, want %+v", out, in)
	}
	for _, bad := range []string{`{"Power":"12.5 V"}`, `{"Drop":{"10 V":"1 V"}}`} {
		if err := json.Unmarshal([]byte(bad), &out); !errors.Is(err, units.ErrSyntax) {
			t.Errorf("Unmarshal(%s) = %v, want a ParseError", bad, err)
		}
	}
	if err := json.Unmarshal([]byte(`{"Power":12.5}`), &out); err == nil {
		t.Error("a bare number in JSON has no unit and must be refused")
	}
	if _, err := json.Marshal(units.Voltage(math.Inf(1))); !errors.Is(err, units.ErrRange) {
		t.Errorf("Marshal of an infinity = %v, want a RangeError", err)
	}
}

// TestNoAllocs lists what must not allocate.
func TestNoAllocs(t *testing.T) {
	volts, limit, hot := 12.8*units.Volt, 15*units.Volt, units.Celsius(75)
	bounds, ambient := units.Between(0*units.Volt, limit), units.TemperatureBounds{Low: units.Celsius(-40), High: hot}
	var number float64
	var truth bool
	calls := map[string]func(){
		"Settle":            func() { number = float64(units.Settle(volts)) },
		"Compare, far":      func() { truth = units.Compare(volts, limit) < 0 },
		"Compare, near":     func() { truth = units.Compare(limit, 15.000000000000002*units.Volt) < 0 },
		"Exceeds":           func() { truth = units.Exceeds(limit, limit) },
		"Minus":             func() { number = float64(units.Minus(limit, limit)) },
		"In":                func() { number = units.In(volts, units.Millivolt) },
		"Bounds":            func() { truth = bounds.Contains(limit) && bounds.Check("op", "field", volts) == nil },
		"Temperature":       func() { number = float64(hot.Sub(units.Fahrenheit(77))) },
		"TemperatureBounds": func() { truth = ambient.Check("op", "field", hot) == nil },
		"typed chain": func() {
			drop := (20 * units.Ampere).Through(0.01 * units.Ohm)
			number = float64(units.RatioOf(units.Scale(drop, 0.97), volts))
		},
		// A type whose first unit is the coherent one needs no exact
		// arithmetic for its text.
		"AppendText of Voltage":     appendTo(volts),
		"AppendText of Current":     appendTo(1e-9 * units.Ampere),
		"AppendText of Length":      appendTo(15 * units.Foot),
		"AppendText of Mass":        appendTo(100 * units.Pound),
		"AppendText of Power":       appendTo(units.Power(1) / 3),
		"AppendText of Elapsed":     appendTo(1.5 * units.Hour),
		"AppendText of Temperature": appendTo(hot),
		"AppendText of none":        appendTo(units.Temperature{}),
	}
	for _, name := range slices.Sorted(maps.Keys(calls)) {
		if n := testing.AllocsPerRun(100, calls[name]); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
	_, _ = number, truth
}

// appendTo returns the call of v's AppendText with a buffer that is long
// enough.
func appendTo[V encoding.TextAppender](v V) func() {
	buf := make([]byte, 0, 64)
	return func() {
		if text, err := v.AppendText(buf); err != nil || cap(text) != cap(buf) {
			panic("AppendText failed or grew its buffer")
		}
	}
}
