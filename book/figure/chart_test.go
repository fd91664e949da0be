package figure_test

import (
	"bytes"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/book/figure"
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
	// A unit of this axis is half a hundredth of a unit of the page, so odd
	// numbers lie half way between two places.
	halves := dropChart()
	halves.Limits = nil
	halves.Y.Min, halves.Y.Max = 1e6, 1e6+2*100*figure.PlotHeight
	halves.Lines = []figure.Line{line("halves", 0, 60, 31, func(x float64) float64 { return 1e6 + 1 + 500*x })}
	for _, c := range []figure.Chart{dropChart(), crowdedChart(), logChart(), halves} {
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

// Whatever the lines do, what is drawn is on the page and no text covers
// another.
func TestRandomCharts(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	legends, inside := 0, 0
	for n := range 150 {
		log := n%3 == 0
		c := figure.Chart{
			Title: "Random chart", Description: "Lines that wander.",
			X: figure.Axis{Label: "length", Unit: "ft", Min: 1, Max: 1 + math.Pow(10, 4*random.Float64()), Log: log},
			Y: figure.Axis{Label: "drop", Unit: "%", Min: 0.1, Max: 0.2 + math.Pow(10, 3*random.Float64()), Log: n%2 == 0},
		}
		for k := range 1 + random.IntN(8) {
			l := figure.Line{Name: fmt.Sprintf("line %d%s", k, strings.Repeat(" m", random.IntN(9)))}
			x, y := c.X.Min, c.Y.Min+random.Float64()*(c.Y.Max-c.Y.Min)
			for range 2 + random.IntN(200) {
				l.Points = append(l.Points, figure.Point{X: x, Y: max(y, 1e-3)})
				x += (c.X.Max - c.X.Min) * random.Float64() / 60
				y += (c.Y.Max - c.Y.Min) * (random.Float64() - 0.45) / 8
			}
			c.Lines = append(c.Lines, l)
		}
		for k := range random.IntN(5) {
			c.Limits = append(c.Limits, figure.Limit{Name: fmt.Sprintf("limit %d", k),
				Y: c.Y.Min + random.Float64()*(c.Y.Max-c.Y.Min)})
		}
		svg, err := c.SVG()
		if err != nil {
			t.Fatalf("chart %d: %v", n, err)
		}
		checkDrawing(t, svg)
		if bytes.Contains(svg, []byte("paint-order")) {
			inside++
		}
		if draw(t, c)[0].number(t, "height") > 500 {
			legends++
		}
		if t.Failed() {
			t.Fatalf("in chart %d", n)
		}
	}
	t.Logf("%d charts with a legend, %d with names in the plot", legends, inside)
	if legends < 20 || inside < 20 {
		t.Errorf("%d charts with a legend and %d with names in the plot, want 20 of each to prove something", legends, inside)
	}
}
