package figure_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

// dropChart is voltage drop against length for six sizes of copper at 20 A,
// 12 V: drop = 2 · 20 A · length · resistance over 12 V.
func dropChart() figure.Chart {
	c := figure.Chart{
		Title: "Voltage drop against length at 20 A, 12 V",
		Description: "Six straight lines from 0 % at 0 ft. The thinner the wire the steeper the line: " +
			"14 AWG reaches 3 % at 3 ft, 4 AWG at 29 ft.",
		X:      figure.Axis{Label: "length, one way", Unit: "ft", Max: 60},
		Y:      figure.Axis{Label: "voltage drop", Unit: "%", Max: 12},
		Limits: []figure.Limit{{Name: "3 % limit", Y: 3}},
	}
	// Ohms per 1000 ft at 75 °C, uncoated, stranded. Source: NEC 2017, chapter
	// 9, table 8. Provenance: read.
	for _, w := range []struct {
		name string
		ohms float64
	}{
		{"14 AWG", 3.14}, {"12 AWG", 1.98}, {"10 AWG", 1.24},
		{"8 AWG", 0.778}, {"6 AWG", 0.491}, {"4 AWG", 0.308},
	} {
		c.Lines = append(c.Lines, line(w.name, 0, 60, 13, func(feet float64) float64 {
			return 2 * 20 * feet * w.ohms / 1000 / 12 * 100
		}))
	}
	return c
}

// crowdedChart has eight lines that cross and end close together.
func crowdedChart() figure.Chart {
	c := figure.Chart{
		Title:       "Rested voltage of eight banks against state of charge",
		Description: "Eight waves that rise from 11.6 V to 13.5 V and cross.",
		X:           figure.Axis{Label: "state of charge", Unit: "%", Max: 100},
		Y:           figure.Axis{Label: "voltage", Unit: "V", Min: 11, Max: 14.4},
	}
	for k := range 8 {
		c.Lines = append(c.Lines, line(fmt.Sprintf("bank %d", k+1), 0, 100, 400, func(x float64) float64 {
			return 11.4 + 0.02*x + 0.03*float64(k) + 0.3*math.Sin(x/9+float64(k)/3)
		}))
	}
	return c
}

// logChart has both axes logarithmic and lines that end at its foot.
func logChart() figure.Chart {
	c := figure.Chart{
		Title:       "Time to open against current",
		Description: "Three curves that fall from 100 s near their rating to 0.01 s.",
		X:           figure.Axis{Label: "current", Unit: "A", Min: 10, Max: 10_000, Log: true},
		Y:           figure.Axis{Label: "time", Unit: "s", Min: 0.01, Max: 1000, Log: true},
		Limits:      []figure.Limit{{Name: "5 s", Y: 5}},
	}
	for _, rating := range []float64{15, 30, 60} {
		l := figure.Line{Name: fmt.Sprintf("%v A", rating)}
		for i := range 200 {
			x := 1.2 * rating * math.Pow(1.04, float64(i))
			l.Points = append(l.Points, figure.Point{X: x, Y: 20 * rating * rating / (x*x - 1.2*rating*rating)})
		}
		c.Lines = append(c.Lines, l)
	}
	return c
}

// golden demands that got is what testdata holds under name. With
// DRAWBAR_UPDATE=1 the file is written; look at the picture afterwards.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if os.Getenv("DRAWBAR_UPDATE") == "1" {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s differs (-want +got):\n%s", file, diff)
	}
}

func TestGolden(t *testing.T) {
	for name, f := range map[string]interface{ SVG() ([]byte, error) }{
		"drop.svg": dropChart(), "crowded.svg": crowdedChart(), "log.svg": logChart(), "months.svg": monthBars(),
	} {
		t.Run(name, func(t *testing.T) {
			svg, err := f.SVG()
			if err != nil {
				t.Fatal(err)
			}
			golden(t, name, svg)
			checkDrawing(t, svg)
		})
	}
}

// Of 12 AWG the drop at 15 ft is 2 · 20 A · 15 ft · 1.98 Ω/kft = 1.188 V, 9.9 %
// of 12 V: a quarter along 0 to 60 ft and 9.9/12 up.
func TestCurveGoesThroughItsPoints(t *testing.T) {
	nodes := draw(t, dropChart())
	axes := named(nodes, "path")
	var plot area
	for _, n := range axes { // the axes run down and then to the right
		if p := n.parts(t); len(p[0]) == 3 && p[0][0].x == p[0][1].x && p[0][1].y == p[0][2].y {
			plot = area{p[0][0].x, p[0][0].y, p[0][2].x, p[0][1].y}
			break
		}
	}
	got := curves(nodes, 6)[1].parts(t)[0][3]
	wantX, wantY := plot.x0+(plot.x1-plot.x0)/4, plot.y1-(plot.y1-plot.y0)*9.9/12
	if math.Abs(got.x-wantX) > 0.011 || math.Abs(got.y-wantY) > 0.011 {
		t.Errorf("12 AWG at 15 ft is at %v, want (%.2f, %.2f)", got, wantX, wantY)
	}
}

func TestNamesStandAtLineEnds(t *testing.T) {
	nodes := draw(t, dropChart())
	lines := curves(nodes, 6)
	for i, l := range dropChart().Lines {
		last := lines[i].parts(t)[0]
		end := last[len(last)-1]
		at := slices.IndexFunc(nodes, func(n node) bool { return n.text == l.Name })
		if at < 0 {
			t.Fatalf("no text %q", l.Name)
		}
		b := nodes[at].box(t)
		if i < 4 { // these leave the plot at the top
			if b.y1 > end.y || math.Abs((b.x0+b.x1)/2-end.x) > 10 {
				t.Errorf("%s ends at %v, its name is at %v, want above", l.Name, end, b)
			}
		} else if b.x0 < end.x || math.Abs((b.y0+b.y1)/2-end.y) > 5 {
			t.Errorf("%s ends at %v, its name is at %v, want to the right", l.Name, end, b)
		}
	}
}

// Eight lines that end in one place in the plot leave no room for names there.
func TestLegendWhereNamesHaveNoRoom(t *testing.T) {
	c := dropChart()
	c.Lines = nil
	for k := range 8 {
		c.Lines = append(c.Lines, figure.Line{Name: fmt.Sprintf("a rather long name, %d", k+1),
			Points: []figure.Point{{X: 0, Y: float64(k)}, {X: 30, Y: 6}, {X: 60, Y: float64(k)}, {X: 31, Y: 6}}})
	}
	svg, err := c.SVG()
	if err != nil {
		t.Fatal(err)
	}
	checkDrawing(t, svg)
	nodes := read(t, svg)
	axis := slices.IndexFunc(nodes, func(n node) bool { return n.text == "length, one way (ft)" })
	foot := nodes[axis].number(t, "y")
	for i, l := range c.Lines {
		at := slices.IndexFunc(nodes, func(n node) bool { return n.text == l.Name })
		if at < 0 || nodes[at].number(t, "y") <= foot {
			t.Errorf("%q is not below the chart", l.Name)
		}
		// Its sample is what comes before it, in the style of the line.
		if at > 0 && nodes[at-1].attr["stroke"] != figure.LineColours()[i] {
			t.Errorf("%q has the sample %v, want one in %s", l.Name, nodes[at-1], figure.LineColours()[i])
		}
	}
}

func TestEveryLineHasItsOwnLookInGrey(t *testing.T) {
	seen := map[string]string{}
	for i, n := range curves(draw(t, crowdedChart()), 8) {
		look := n.attr["stroke-dasharray"]
		if i == 7 {
			look = "edged" // tested below
		}
		if other, ok := seen[look]; ok {
			t.Errorf("line %d has the dashes of %s", i, other)
		}
		seen[look] = fmt.Sprintf("line %d", i)
	}
	// The last, yellow, lies on a darker and wider one of the same course.
	nodes := named(draw(t, crowdedChart()), "path")
	last := curves(nodes, 8)[7]
	edge := slices.ContainsFunc(nodes, func(n node) bool {
		return n.attr["d"] == last.attr["d"] && n.attr["stroke"] == "#222222" && n.attr["stroke-width"] == "4.2"
	})
	if !edge {
		t.Error("the yellow line has no edge")
	}
}

// Okabe and Ito print the colours as red, green and blue of 0 to 255: black
// 0 0 0, orange 230 159 0, sky blue 86 180 233, bluish green 0 158 115, yellow
// 240 228 66, blue 0 114 178, vermilion 213 94 0, reddish purple 204 121 167.
// From memory: this pins our transcription only.
func TestColours(t *testing.T) {
	var want []string
	for _, c := range [][3]int{{0, 114, 178}, {213, 94, 0}, {0, 158, 115}, {0, 0, 0},
		{204, 121, 167}, {230, 159, 0}, {86, 180, 233}, {240, 228, 66}} {
		want = append(want, fmt.Sprintf("#%02X%02X%02X", c[0], c[1], c[2]))
	}
	if diff := cmp.Diff(want, figure.LineColours()); diff != "" {
		t.Error(diff)
	}
}

func TestTextIsEscaped(t *testing.T) {
	c := dropChart()
	c.Title = `a < b & "c" > 'd'`
	c.Description = "]]> <script>x</script>"
	c.X.Label = "<x>"
	c.Y.Unit = "&amp;"
	c.Lines[0].Name = "</text>"
	c.Limits[0].Name = "<!--"
	svg, err := c.SVG()
	if err != nil {
		t.Fatal(err)
	}
	nodes := read(t, svg)
	if nodes[1].text != c.Title || nodes[2].text != c.Description {
		t.Errorf("title %q, description %q", nodes[1].text, nodes[2].text)
	}
	var texts []string
	for _, n := range named(nodes, "text") {
		texts = append(texts, n.text)
	}
	for _, want := range []string{c.Title, "<x> (ft)", "voltage drop (&amp;)", "</text>", "<!--"} {
		if !slices.Contains(texts, want) {
			t.Errorf("texts %q lack %q", texts, want)
		}
	}
}

func TestTwoFiguresShareNoIds(t *testing.T) {
	ids := func(c figure.Chart) string { return draw(t, c)[1].attr["id"] }
	a, b, other := dropChart(), dropChart(), dropChart()
	b.Title += ", again"
	other.Description += " Again."
	if ids(a) == ids(b) || ids(a) == ids(other) || ids(b) == ids(other) {
		t.Errorf("ids %q, %q, %q", ids(a), ids(b), ids(other))
	}
}

// The package comment says: "a number that moves by a part in 1e12 moves
// nothing".
func TestNoiseMovesNothing(t *testing.T) {
	for _, c := range []figure.Chart{dropChart(), crowdedChart(), logChart()} {
		want, err := c.SVG()
		if err != nil {
			t.Fatal(err)
		}
		for _, factor := range []float64{1 + 1e-12, 1 - 1e-12} {
			noisy := c
			noisy.X.Min, noisy.X.Max = c.X.Min*factor, c.X.Max/factor
			noisy.Y.Min, noisy.Y.Max = c.Y.Min/factor, c.Y.Max*factor
			noisy.Lines, noisy.Limits = nil, nil
			for _, l := range c.Lines {
				moved := figure.Line{Name: l.Name}
				for i, p := range l.Points {
					f := factor
					if i%2 == 0 {
						f = 1 / factor
					}
					moved.Points = append(moved.Points, figure.Point{X: p.X * f, Y: p.Y / f})
				}
				noisy.Lines = append(noisy.Lines, moved)
			}
			for _, l := range c.Limits {
				noisy.Limits = append(noisy.Limits, figure.Limit{Name: l.Name, Y: l.Y * factor})
			}
			got, err := noisy.SVG()
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("%s: moved by %v the drawing differs:\n%s", c.Title, factor-1, cmp.Diff(string(want), string(got)))
			}
		}
	}
}

func TestChartErrors(t *testing.T) {
	long := strings.Repeat("long ", 60) + "text"
	points := []figure.Point{{X: 0, Y: 1}, {X: 60, Y: 2}}
	for _, test := range []struct {
		name  string
		spoil func(c *figure.Chart)
		field string
	}{
		// Texts.
		{"no title", func(c *figure.Chart) { c.Title = "" }, "Title"},
		{"blank title", func(c *figure.Chart) { c.Title = "  " }, "Title"},
		{"long title", func(c *figure.Chart) { c.Title = long }, "Title"},
		{"long word", func(c *figure.Chart) { c.Title = strings.Repeat("W", 60) }, "Title"},
		{"line break", func(c *figure.Chart) { c.Title = "two\nlines" }, "Title"},
		{"no description", func(c *figure.Chart) { c.Description = "" }, "Description"},
		{"long description", func(c *figure.Chart) { c.Description = strings.Repeat("é", 2001) }, "len(Description)"},
		{"control character", func(c *figure.Chart) { c.Description = "a\x00b" }, "Description"},
		{"not UTF-8", func(c *figure.Chart) { c.Description = "a\xffb" }, "Description"},
		{"unnamed axis", func(c *figure.Chart) { c.X.Label = "" }, "X.Label"},
		{"unnamed axis", func(c *figure.Chart) { c.Y.Label = "" }, "Y.Label"},
		{"long axis", func(c *figure.Chart) { c.X.Label = long }, "X.Label"},
		{"long axis", func(c *figure.Chart) { c.Y.Label = strings.Repeat("x", 40) }, "Y.Label"},
		{"unit", func(c *figure.Chart) { c.Y.Unit = " V" }, "Y.Unit"},
		{"unnamed line", func(c *figure.Chart) { c.Lines[1].Name = "" }, "Lines[1].Name"},
		{"long name", func(c *figure.Chart) { c.Lines[1].Name = long }, "Lines[1].Name"},
		{"two alike", func(c *figure.Chart) { c.Lines[3].Name = c.Lines[1].Name }, "Lines[3].Name"},
		{"line and limit alike", func(c *figure.Chart) { c.Limits[0].Name = c.Lines[1].Name }, "Limits[0].Name"},
		{"unnamed limit", func(c *figure.Chart) { c.Limits[0].Name = "" }, "Limits[0].Name"},
		// Axes.
		{"NaN end", func(c *figure.Chart) { c.X.Min = math.NaN() }, "X.Min"},
		{"NaN end", func(c *figure.Chart) { c.X.Max = math.NaN() }, "X.Max"},
		{"infinite end", func(c *figure.Chart) { c.Y.Max = math.Inf(1) }, "Y.Max"},
		{"infinite end", func(c *figure.Chart) { c.Y.Min = math.Inf(-1) }, "Y.Min"},
		{"far end", func(c *figure.Chart) { c.Y.Max = 1.001e7 }, "Y.Max"},
		{"far end", func(c *figure.Chart) { c.Y.Min = -1.001e7 }, "Y.Min"},
		{"ends alike", func(c *figure.Chart) { c.X.Min = 60.00000000001 }, "X.Max"},
		{"ends exchanged", func(c *figure.Chart) { c.X.Min = 61 }, "X.Max"},
		{"ends too close", func(c *figure.Chart) { c.Y.Max = 0.0009 }, "Y.Max"},
		{"ends too close for their size", func(c *figure.Chart) { c.Y.Min, c.Y.Max = 1e6, 1e6+99 }, "Y.Max"},
		{"logarithm of 0", func(c *figure.Chart) { c.X.Log = true }, "X.Min"},
		{"logarithm of too little", func(c *figure.Chart) { c.X.Log, c.X.Min = true, 0.00009 }, "X.Min"},
		{"less than a factor", func(c *figure.Chart) { c.X.Log, c.X.Min = true, 55 }, "X.Max"},
		// Counts.
		{"no line", func(c *figure.Chart) { c.Lines = nil }, "len(Lines)"},
		{"nine lines", func(c *figure.Chart) {
			for _, name := range []string{"7", "8", "9"} {
				c.Lines = append(c.Lines, figure.Line{Name: name, Points: points})
			}
		}, "len(Lines)"},
		{"no point", func(c *figure.Chart) { c.Lines[4].Points = nil }, "len(Lines[4].Points)"},
		{"one point", func(c *figure.Chart) { c.Lines[4].Points = points[:1] }, "len(Lines[4].Points)"},
		{"five limits", func(c *figure.Chart) { c.Limits = make([]figure.Limit, 5) }, "len(Limits)"},
		// Points.
		{"NaN", func(c *figure.Chart) { c.Lines[2].Points[7].Y = math.NaN() }, "Lines[2].Points[7].Y"},
		{"NaN", func(c *figure.Chart) { c.Lines[2].Points[7].X = math.NaN() }, "Lines[2].Points[7].X"},
		{"infinity", func(c *figure.Chart) { c.Lines[2].Points[0].X = math.Inf(-1) }, "Lines[2].Points[0].X"},
		{"infinity", func(c *figure.Chart) { c.Lines[0].Points[12].Y = math.Inf(1) }, "Lines[0].Points[12].Y"},
		{"too far", func(c *figure.Chart) { c.Lines[0].Points[12].Y = 1.3e10 }, "Lines[0].Points[12].Y"},
		{"the largest", func(c *figure.Chart) { c.Lines[0].Points[12].Y = math.MaxFloat64 }, "Lines[0].Points[12].Y"},
		{"logarithm of 0", func(c *figure.Chart) { c.X.Log, c.X.Min = true, 1 }, "Lines[0].Points[0].X"},
		{"logarithm of -1", func(c *figure.Chart) { c.Y.Log, c.Y.Min, c.Lines[0].Points[0].Y = true, 1, -1 }, "Lines[0].Points[0].Y"},
		{"limit off the axis", func(c *figure.Chart) { c.Limits[0].Y = 12.1 }, "Limits[0].Y"},
		{"limit off the axis", func(c *figure.Chart) { c.Limits[0].Y = -0.1 }, "Limits[0].Y"},
		{"limit not a number", func(c *figure.Chart) { c.Limits[0].Y = math.NaN() }, "Limits[0].Y"},
		// Lines that cannot be drawn.
		{"outside", func(c *figure.Chart) {
			c.Lines[5].Points = []figure.Point{{X: 0, Y: 13}, {X: 60, Y: 14}}
		}, "Lines[5]"},
		{"a dot", func(c *figure.Chart) {
			c.Lines[5].Points = []figure.Point{{X: 1, Y: 1}, {X: 1, Y: 1}}
		}, "Lines[5]"},
		{"a speck", func(c *figure.Chart) {
			c.Lines[5].Points = []figure.Point{{X: 1, Y: 1}, {X: 1.000001, Y: 1}}
		}, "Lines[5]"},
		{"in 59 parts", func(c *figure.Chart) { c.Lines[5] = zigzag(59) }, "Lines[5]"},
	} {
		c := dropChart()
		test.spoil(&c)
		svg, err := c.SVG()
		var bad *units.RangeError
		switch {
		case !errors.As(err, &bad) || !errors.Is(err, units.ErrRange):
			t.Errorf("%s: SVG() error = %v, want a RangeError", test.name, err)
		case bad.Op != "figure.Chart" || bad.Field != test.field || bad.Allowed == nil || bad.Allowed.String() == "":
			t.Errorf("%s: error is about %s %s, want figure.Chart %s: %v", test.name, bad.Op, bad.Field, test.field, err)
		case svg != nil:
			t.Errorf("%s: SVG() gave a drawing with its error", test.name)
		}
	}
}

// zigzag returns a line of the drop chart that is inside it in so many parts.
func zigzag(parts int) figure.Line {
	l := figure.Line{Name: "zigzag"}
	for i := range parts {
		x := 60 * float64(i) / float64(parts)
		l.Points = append(l.Points, figure.Point{X: x, Y: 13}, figure.Point{X: x + 0.2, Y: 11}, figure.Point{X: x + 0.4, Y: 13})
	}
	return l
}

// The comment of Line says: "It may leave the axes and come back, at most 57
// times".
func TestLineInManyParts(t *testing.T) {
	c := dropChart()
	c.Lines = []figure.Line{zigzag(58)}
	parts := curves(draw(t, c), 1)[0].parts(t)
	if len(parts) != 58 {
		t.Errorf("%d parts, want 58", len(parts))
	}
}

// What is refused is refused in words that name the input.
func TestErrorText(t *testing.T) {
	c := dropChart()
	c.Lines[2].Points[7].Y = math.NaN()
	_, err := c.SVG()
	const want = "figure.Chart: Lines[2].Points[7].Y = NaN, want finite and within a thousand million lengths of the axis"
	if err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
}
