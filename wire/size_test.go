package wire_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

func TestParseSize(t *testing.T) {
	for _, c := range []struct{ in, want string }{
		// gauges as people write them
		{"10 AWG", "10 AWG"}, {"10AWG", "10 AWG"}, {"AWG 10", "10 AWG"}, {"awg10", "10 AWG"},
		{"#10", "10 AWG"}, {"# 10", "10 AWG"}, {"No. 10", "10 AWG"}, {"10 ga", "10 AWG"},
		{"10 ga.", "10 AWG"}, {"10 gauge", "10 AWG"}, {" 10  awg ", "10 AWG"}, {"1 AWG", "1 AWG"}, {"40 AWG", "40 AWG"},
		// aughts, with and without the word
		{"1/0", "1/0 AWG"}, {"4/0 AWG", "4/0 AWG"}, {"AWG 2/0", "2/0 AWG"}, {"#3/0", "3/0 AWG"},
		{"0", "1/0 AWG"}, {"00", "2/0 AWG"}, {"0000 AWG", "4/0 AWG"},
		// by area
		{"250 kcmil", "250 kcmil"}, {"500MCM", "500 kcmil"}, {"350 Kcmil", "350 kcmil"},
		{"2.5 mm2", "2.5 mm²"}, {"2.5mm²", "2.5 mm²"}, {"0.75 mm^2", "0.75 mm²"}, {"120 sq mm", "120 mm²"}, {"16 MM2", "16 mm²"},
		// more of what people write
		{"#10 AWG", "10 AWG"}, {"AWG #10", "10 AWG"}, {"AWG-10", "10 AWG"}, {"AWG-1", "1 AWG"}, {"10-gauge", "10 AWG"}, {"gauge 10", "10 AWG"},
		{"No 10 AWG", "10 AWG"}, {"4-aught", "4/0 AWG"}, {"2 ought", "2/0 AWG"}, {"1/0-AWG", "1/0 AWG"}, {"4 / 0 ga", "4/0 AWG"},
		{"250000 cmil", "250 kcmil"}, {"500000 circular mils", "500 kcmil"}, {"250-MCM", "250 kcmil"},
		{"2,5 mm²", "2.5 mm²"}, {"2,5mm2", "2.5 mm²"}, {"1.5 sq. mm", "1.5 mm²"}, {"35 mm sq", "35 mm²"}, {"25-mm2", "25 mm²"},
		{"4 square millimetres", "4 mm²"}, {"0,75 mm^2", "0.75 mm²"},
	} {
		got, err := wire.ParseSize(c.in)
		if err != nil || got.String() != c.want {
			t.Errorf("ParseSize(%q) = %v, %v, want %v", c.in, got, err, c.want)
			continue
		}
		again, err := wire.ParseSize(got.String())
		if err != nil || again != got {
			t.Errorf("ParseSize(%q) = %v, %v, want %v back", got, again, err, got)
		}
	}
}

func TestParseSizeRefuses(t *testing.T) {
	for _, c := range []struct{ in, reason string }{
		{"", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		// a bare number may be a gauge or square millimetres
		{"10", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"2.5", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"5/0", "want 1/0, 2/0, 3/0 or 4/0"},
		{"0/0", "want 1/0, 2/0, 3/0 or 4/0"},
		{"00000", "want 1/0, 2/0, 3/0 or 4/0"},
		{"-3 AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"41 AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"10.5 AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"70000 AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"260 kcmil", "want 250, 300, 350, 400 or 500 kcmil"},
		{"3 mm2", "want a nominal area of IEC 60228, 0.5 to 120 mm²"},
		{"x mm2", "want a nominal area of IEC 60228, 0.5 to 120 mm²"},
		{"10 mm", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		// people write 1/0 so
		{"1 0 AWG", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"2 5 0 kcmil", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"1-0 AWG", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"AWG--3", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"10-", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"-AWG 10", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"AWG -3", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"#", "want a gauge from 40 to 1, or 1/0 to 4/0"},
		{"0 AWG 5", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"250 cmil", "want 250000, 300000, 350000, 400000 or 500000 circular mils"},
		{"x kcmil", "want 250, 300, 350, 400 or 500 kcmil"},
		{"1,000 mm2", "want a nominal area of IEC 60228, 0.5 to 120 mm²"},
		{"1,2,5 mm2", "want a nominal area of IEC 60228, 0.5 to 120 mm²"},
		{"2,5", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
		{"10 AWG 10", "want a gauge such as 10 AWG or 4/0, or kcmil, or mm²"},
	} {
		got, err := wire.ParseSize(c.in)
		var parse *units.ParseError
		if !errors.As(err, &parse) || parse.Reason != c.reason || parse.Input != c.in || got != (wire.Size{}) {
			t.Errorf("ParseSize(%q) = %v, %v, want reason %q", c.in, got, err, c.reason)
		}
	}
}

func TestSizeConstructors(t *testing.T) {
	for _, c := range []struct {
		got  wire.Size
		want string
	}{
		{wire.AWG(10), "10 AWG"}, {wire.AWG(0), "1/0 AWG"}, {wire.AWG(-3), "4/0 AWG"}, {wire.AWG(40), "40 AWG"},
		{wire.AWG(-4), "no size"}, {wire.AWG(41), "no size"},
		{wire.Aught(1), "1/0 AWG"}, {wire.Aught(4), "4/0 AWG"}, {wire.Aught(0), "no size"}, {wire.Aught(5), "no size"},
		{wire.Kcmil(250), "250 kcmil"}, {wire.Kcmil(251), "no size"},
		{wire.Metric(2.5 * units.SquareMillimetre), "2.5 mm²"}, {wire.Metric(3 * units.SquareMillimetre), "no size"},
		{wire.Metric(0), "no size"}, {wire.Size{}, "no size"},
	} {
		if c.got.String() != c.want || c.got.IsValid() != (c.want != "no size") {
			t.Errorf("got %v, valid %v, want %v", c.got, c.got.IsValid(), c.want)
		}
	}
	if n, ok := wire.Aught(3).Gauge(); n != -2 || !ok {
		t.Errorf("3/0 AWG: Gauge() = %d, %v, want -2, true", n, ok)
	}
	if _, ok := wire.Kcmil(250).Gauge(); ok {
		t.Error("250 kcmil says it is a gauge")
	}
}

func TestSizesAscend(t *testing.T) {
	for name, list := range map[string][]wire.Size{"Gauges": wire.Gauges(), "MetricSizes": wire.MetricSizes()} {
		for i := 1; i < len(list); i++ {
			if list[i-1].Compare(list[i]) >= 0 || !(list[i-1].Area() < list[i].Area()) || !(list[i-1].Diameter() < list[i].Diameter()) {
				t.Errorf("%s: %v does not come before %v", name, list[i-1], list[i])
			}
		}
	}
	// The two systems interleave by area: 4/0 AWG is 107 mm².
	if wire.Aught(4).Compare(wire.Metric(120*units.SquareMillimetre)) >= 0 || wire.Aught(4).Compare(wire.Metric(95*units.SquareMillimetre)) <= 0 {
		t.Error("4/0 AWG does not lie between 95 and 120 mm²")
	}
	if wire.AWG(4).Compare(wire.Aught(4)) >= 0 {
		t.Error("4 AWG is not below 4/0 AWG")
	}
	if (wire.Size{}).Compare(wire.AWG(40)) >= 0 || (wire.Size{}).Diameter() != 0 {
		t.Error("the zero Size does not come first")
	}
}

func TestSizeText(t *testing.T) {
	sizes := append(append(wire.Gauges(), wire.MetricSizes()...), wire.Size{})
	for _, want := range sizes {
		text, err := want.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		got := wire.AWG(1)
		if err := got.UnmarshalText(text); err != nil || got != want {
			t.Errorf("%v: text %q reads back as %v, %v", want, text, got, err)
		}
	}
	got := wire.AWG(10)
	if err := got.UnmarshalText([]byte("10")); err == nil || got != wire.AWG(10) {
		t.Errorf("UnmarshalText of a bare number: %v, %v, want an error and no change", got, err)
	}
}

func TestMustSizePanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("MustSize of a bare number did not panic")
		}
	}()
	wire.MustSize("10")
}

func FuzzParseSize(f *testing.F) {
	for _, s := range []string{"10 AWG", "4/0", "0000", "250 kcmil", "2.5 mm2", "#8", "", "9999999999999 AWG", "1e3 mm2", "é/0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		size, err := wire.ParseSize(s)
		if err != nil {
			var parse *units.ParseError
			if !errors.As(err, &parse) || size.IsValid() {
				t.Fatalf("ParseSize(%q) = %v, %v", s, size, err)
			}
			return
		}
		again, err := wire.ParseSize(size.String())
		if err != nil || again != size || !(size.Area() > 0) {
			t.Fatalf("ParseSize(%q) = %v, then %v, %v", s, size, again, err)
		}
	})
}

func ExampleParseSize() {
	for _, s := range []string{"4/0", "#10", "250 MCM", "2.5 mm2", "10"} {
		size, err := wire.ParseSize(s)
		fmt.Println(size, err)
	}
	// Output:
	// 4/0 AWG <nil>
	// 10 AWG <nil>
	// 250 kcmil <nil>
	// 2.5 mm² <nil>
	// no size parsing "10" as conductor size: want a gauge such as 10 AWG or 4/0, or kcmil, or mm²
}

func ExampleSize_Area() {
	size := wire.AWG(10)
	fmt.Printf("%v: %.4v, %.3v\n", size, size.Diameter(), size.Area())
	fmt.Println(wire.Metric(50 * units.SquareMillimetre).Area())
	// Output:
	// 10 AWG: 2.588 mm, 5.26 mm²
	// 50 mm²
}

func ExampleSize_Compare() {
	fmt.Println(wire.AWG(4).Compare(wire.Aught(4)))
	// Output: -1
}

func ExampleMetric() {
	fmt.Println(wire.Metric(2.5 * units.SquareMillimetre))
	fmt.Println(wire.Metric(3 * units.SquareMillimetre))
	// Output:
	// 2.5 mm²
	// no size
}

func ExampleAught() {
	fmt.Println(wire.Aught(4), wire.Aught(4) == wire.AWG(-3), wire.Kcmil(250))
	// Output: 4/0 AWG true 250 kcmil
}
