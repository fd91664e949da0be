package figure_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/book/figure"
)

func TestTicks(t *testing.T) {
	const wide, high = 620, figure.PlotHeight
	for _, test := range []struct {
		name  string
		axis  figure.Axis
		level bool
		want  string
	}{
		// Linear: 1, 2, 5 times a power of ten, at most eleven level and nine upright.
		{"from 0", figure.Axis{Max: 60}, true, "0 10 20 30 40 50 60"},
		{"from 0", figure.Axis{Max: 12}, false, "0 2 4 6 8 10 12"},
		{"step 0.05", figure.Axis{Max: 0.37}, false, "0.00 0.05 0.10 0.15 0.20 0.25 0.30 0.35"},
		{"ends between steps", figure.Axis{Min: 10.7, Max: 14.4}, false, "11.0 11.5 12.0 12.5 13.0 13.5 14.0"},
		{"through 0", figure.Axis{Min: -1.5, Max: 2}, false, "−1.5 −1.0 −0.5 0.0 0.5 1.0 1.5 2.0"},
		{"below 0", figure.Axis{Min: -40, Max: -10}, false, "−40 −35 −30 −25 −20 −15 −10"},
		{"wide numbers", figure.Axis{Min: 9.9e6, Max: 1e7}, true, "9 900 000 9 920 000 9 940 000 9 960 000 9 980 000 10 000 000"},
		{"the smallest", figure.Axis{Max: 0.001}, false, "0.0000 0.0002 0.0004 0.0006 0.0008 0.0010"},
		{"noise at the ends", figure.Axis{Min: 0.1 + 0.2, Max: 0.6 + 0.3}, false, "0.3 0.4 0.5 0.6 0.7 0.8 0.9"},
		// In float64 0.3 over 0.1 is below 3.
		{"noise in a quotient", figure.Axis{Min: -0.5, Max: 0.3}, false, "−0.5 −0.4 −0.3 −0.2 −0.1 0.0 0.1 0.2 0.3"},
		{"noise in a quotient", figure.Axis{Min: -0.3, Max: 0.5}, false, "−0.3 −0.2 −0.1 0.0 0.1 0.2 0.3 0.4 0.5"},
		// Eleven of these would be 62 apart and up to 57 wide.
		{"a gap between", figure.Axis{Max: 1e5}, true, "0 20 000 40 000 60 000 80 000 100 000"},
		// Logarithmic.
		{"three decades", figure.Axis{Min: 10, Max: 1e4, Log: true}, true, "10 20 50 100 200 500 1000 2000 5000 10 000"},
		{"five decades", figure.Axis{Min: 0.01, Max: 1000, Log: true}, false, "0.01 0.1 1 10 100 1000"},
		{"eleven decades", figure.Axis{Min: 1e-4, Max: 1e7, Log: true}, true, "0.0001 0.01 1 100 10 000 1 000 000"},
		{"half a decade", figure.Axis{Min: 3, Max: 9, Log: true}, false, "3 4 5 6 7 8 9"},
		{"within a step", figure.Axis{Min: 3.1, Max: 3.9, Log: true}, false, "3.1 3.2 3.3 3.4 3.5 3.6 3.7 3.8 3.9"},
		{"few and narrow", figure.Axis{Min: 2.1, Max: 19.9, Log: true}, false, "5 10 15"},
	} {
		length := wide
		if !test.level {
			length = high
		}
		got := strings.Join(figure.TickTexts(test.axis, length, test.level), " ")
		// Digits of long numbers stand in threes parted by thin spaces.
		if got := strings.ReplaceAll(got, "\u2009", " "); got != test.want {
			t.Errorf("%s: ticks of %+v are %q, want %q", test.name, test.axis, got, test.want)
		}
	}
}

// Numbers rise by equal steps or equal rules, fit their axis, and are two
// at least, whatever the axis.
func TestTicksOfManyAxes(t *testing.T) {
	for _, low := range []float64{-9e6, -1234.5, -1, 0, 0.003, 7, 99.99, 123456} {
		for _, span := range []float64{0.0013, 0.7, 1, 9.99, 60, 365, 8760, 1.5e6} {
			for _, log := range []bool{false, true} {
				a := figure.Axis{Min: low, Max: low + span, Log: log}
				if span < 1e-4*math.Abs(low+span) || log && (low < 1e-4 || low+span < 1.1*low) {
					continue
				}
				for _, level := range []bool{false, true} {
					length := figure.PlotHeight
					if level {
						length = figure.NarrowestPlot
					}
					texts := figure.TickTexts(a, length, level)
					if len(texts) < 2 || len(texts) > 13 {
						t.Errorf("%+v level=%v has ticks %q, want 2 to 13", a, level, texts)
					}
					last := math.Inf(-1)
					for _, text := range texts {
						plain := strings.NewReplacer("\u2009", "", "−", "-").Replace(text)
						x, err := strconv.ParseFloat(plain, 64)
						if err != nil || x <= last || x < a.Min-1e-9*math.Abs(a.Min) || x > a.Max+1e-9*math.Abs(a.Max) {
							t.Errorf("%+v level=%v has ticks %q", a, level, texts)
						}
						last = x
					}
				}
			}
		}
	}
}

func TestDecimal(t *testing.T) {
	got := map[int]string{}
	want := map[int]string{
		0: "0", 1: "0.01", 9: "0.09", 10: "0.1", 99: "0.99", 100: "1", 101: "1.01", 110: "1.1", 12345: "123.45",
		-1: "-0.01", -150: "-1.5", -200: "-2",
	}
	for n := range want {
		got[n] = figure.Decimal(n)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Widths of texts at size 1000 as set in DejaVu Sans 2.37, measured, in units.
// Liberation Sans sets every one of them narrower.
func TestTextWidth(t *testing.T) {
	for text, measured := range map[string]float64{
		"voltage drop (%)": 8373.0, "length, one way (ft)": 9849.1, "14 AWG": 3983.4, "3 % limit": 4421.9,
		"10\u2009000": 3380.9, "−0.5": 2428.2, "20 °C, 2.5 mm²": 7681.6, "resistance (mΩ)": 7964.4,
		"THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG":            26388.2,
		"the quick brown fox jumps over the lazy dog 0123456789": 28953.1,
		"[{|}]~`^_@#$&*+=<>;:?!/\\\"'":                           15185.1,
	} {
		if got := figure.TextWidth(text, 1000); got < measured-1 || got > 1.03*measured {
			t.Errorf("width of %q is %v, measured %v", text, got, measured)
		}
	}
	// Beyond ASCII: a mark takes no room, a letter or a picture plenty.
	if got, want := figure.TextWidth("e\u0301", 1000), figure.TextWidth("e", 1000); got != want {
		t.Errorf("width of an accented e is %v, of a plain one %v", got, want)
	}
	if figure.TextWidth("Ж", 1000) < 1077 || figure.TextWidth("🔋", 1000) < 1245 {
		t.Error("a wide character has too little room")
	}
}

func TestTitleInTwoLines(t *testing.T) {
	c := dropChart()
	one := draw(t, c)
	c.Title = "Voltage drop against length at 20 A and 12 V, for six sizes of stranded and uncoated copper"
	two := draw(t, c)
	if got, want := two[0].number(t, "height")-one[0].number(t, "height"), 25.0; got != want {
		t.Errorf("a second line makes the page %v higher, want %v", got, want)
	}
	lines := named(two, "text")[:2]
	if lines[0].text+" "+lines[1].text != c.Title {
		t.Errorf("title is drawn as %q and %q", lines[0].text, lines[1].text)
	}
}
