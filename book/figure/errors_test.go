package figure_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

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
		{"title of three lines", func(c *figure.Chart) { c.Title = strings.Repeat("long ", 32) + "text" }, "Title"},
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
