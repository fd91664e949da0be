package figure_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

// monthBars is made and used energy by month; the numbers are invented.
func monthBars() figure.Bars {
	return figure.Bars{
		Title:       "Energy made and used a day, by month",
		Description: "Harvest is above use from March to September and below it for the rest of the year.",
		Label:       "month",
		Categories:  []string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"},
		Y:           figure.Axis{Label: "energy a day", Unit: "kWh", Max: 4},
		Groups: []figure.Group{
			{Name: "harvest", Values: []float64{0.9, 1.3, 1.9, 2.4, 2.9, 3.3, 3.4, 3.0, 2.3, 1.5, 0.9, 0.7}},
			{Name: "use", Values: []float64{2.1, 2.0, 1.8, 1.6, 1.5, 1.6, 1.8, 1.8, 1.6, 1.7, 1.9, 2.1}},
		},
		Limits: []figure.Limit{{Name: "bank", Y: 1.28}},
	}
}

// bars returns the rectangles of each group, without the ground, the legend
// and what the hatching is made of.
func bars(t *testing.T, b figure.Bars) [][]area {
	t.Helper()
	nodes := draw(t, b)
	nodes = slices.DeleteFunc(named(nodes, "rect"), func(n node) bool { return n.attr["stroke"] == "" })
	var groups [][]area
	for range b.Groups {
		var group []area
		for _, n := range nodes[:len(b.Categories)] {
			x, y := n.number(t, "x"), n.number(t, "y")
			group = append(group, area{x, y, x + n.number(t, "width"), y + n.number(t, "height")})
		}
		groups = append(groups, group)
		nodes = nodes[len(b.Categories):]
	}
	return groups
}

func TestBarsAreAsLongAsTheirValues(t *testing.T) {
	b := monthBars()
	b.Y.Min = -1
	b.Groups[1].Values[3] = -0.5
	b.Groups[1].Values[4] = 0
	perUnit := float64(figure.PlotHeight) / 5
	var foot, last float64
	for g, group := range bars(t, b) {
		for i, a := range group {
			value := b.Groups[g].Values[i]
			if got, want := a.y1-a.y0, math.Abs(value)*perUnit; math.Abs(got-want) > 0.011 {
				t.Errorf("bar of %v is %v long, want %v", value, got, want)
			}
			zero := a.y1
			if value < 0 {
				zero = a.y0
			}
			if foot == 0 {
				foot = zero
			}
			if math.Abs(zero-foot) > 0.011 {
				t.Errorf("bar of %v begins at %v, want %v", value, zero, foot)
			}
		}
		if g > 0 && group[0].x0 <= last {
			t.Errorf("group %d begins at %v, not right of %v", g, group[0].x0, last)
		}
		last = group[0].x0
	}
}

func TestBarsDoNotCoverEachOther(t *testing.T) {
	b := monthBars()
	b.Groups = append(b.Groups, figure.Group{Name: "third", Values: b.Groups[0].Values},
		figure.Group{Name: "fourth", Values: b.Groups[1].Values})
	all := slices.Concat(bars(t, b)...)
	for i, a := range all {
		for _, other := range all[:i] {
			if a.meets(other) {
				t.Errorf("bars %v and %v overlap", a, other)
			}
		}
	}
}

// Each group has a paint of its own that does not need colour, and every
// paint that is used is defined.
func TestBarsInGrey(t *testing.T) {
	b := monthBars()
	b.Groups = append(b.Groups, figure.Group{Name: "third", Values: b.Groups[0].Values},
		figure.Group{Name: "fourth", Values: b.Groups[1].Values})
	nodes := draw(t, b)
	turns := map[string]bool{}
	defined := map[string]bool{}
	for _, n := range named(nodes, "pattern") {
		turns[n.attr["patternTransform"]] = true
		defined["url(#"+n.attr["id"]+")"] = true
	}
	if len(turns) != 3 || len(defined) != 3 {
		t.Errorf("hatchings %v with ids %v, want three", turns, defined)
	}
	used := map[string]bool{}
	for _, n := range named(nodes, "rect") {
		if fill := n.attr["fill"]; strings.HasPrefix(fill, "url(") {
			used[fill] = true
			if !defined[fill] {
				t.Errorf("fill %s is not defined", fill)
			}
		}
	}
	if len(used) != 3 {
		t.Errorf("fills %v, want three hatchings", used)
	}
}

func TestOneGroupNeedsNoName(t *testing.T) {
	b := monthBars()
	b.Groups = b.Groups[:1]
	with := draw(t, b)
	b.Groups[0].Name = ""
	without := draw(t, b)
	if got, want := len(named(without, "text")), len(named(with, "text"))-1; got != want {
		t.Errorf("%d texts without a name, want %d", got, want)
	}
	if with[0].number(t, "height") <= without[0].number(t, "height") {
		t.Error("a figure without a legend is as high as one with it")
	}
}

func TestBarsErrors(t *testing.T) {
	for _, test := range []struct {
		name  string
		spoil func(b *figure.Bars)
		field string
	}{
		{"no title", func(b *figure.Bars) { b.Title = "" }, "Title"},
		{"no description", func(b *figure.Bars) { b.Description = "" }, "Description"},
		{"no label", func(b *figure.Bars) { b.Label = "" }, "Label"},
		{"long label", func(b *figure.Bars) { b.Label = strings.Repeat("x", 60) }, "Label"},
		{"no category", func(b *figure.Bars) { b.Categories = nil }, "len(Categories)"},
		{"32 categories", func(b *figure.Bars) { b.Categories = make([]string, 32) }, "len(Categories)"},
		{"unnamed category", func(b *figure.Bars) { b.Categories[3] = "" }, "Categories[3]"},
		{"categories alike", func(b *figure.Bars) { b.Categories[3] = "Jan" }, "Categories[3]"},
		{"wide category", func(b *figure.Bars) { b.Categories[3] = "of April" }, "Categories[3]"},
		{"logarithmic", func(b *figure.Bars) { b.Y.Log, b.Y.Min = true, 1 }, "Y.Log"},
		{"unnamed axis", func(b *figure.Bars) { b.Y.Label = "" }, "Y.Label"},
		{"axis from above 0", func(b *figure.Bars) { b.Y.Min = 0.1 }, "Y.Min"},
		{"axis to below 0", func(b *figure.Bars) { b.Y.Min, b.Y.Max = -2, -1 }, "Y.Max"},
		{"no group", func(b *figure.Bars) { b.Groups = nil }, "len(Groups)"},
		{"five groups", func(b *figure.Bars) { b.Groups = make([]figure.Group, 5) }, "len(Groups)"},
		{"unnamed group", func(b *figure.Bars) { b.Groups[1].Name = "" }, "Groups[1].Name"},
		{"groups alike", func(b *figure.Bars) { b.Groups[1].Name = "harvest" }, "Groups[1].Name"},
		{"a value missing", func(b *figure.Bars) { b.Groups[1].Values = b.Groups[1].Values[1:] }, "len(Groups[1].Values)"},
		{"NaN", func(b *figure.Bars) { b.Groups[1].Values[11] = math.NaN() }, "Groups[1].Values[11]"},
		{"off the axis", func(b *figure.Bars) { b.Groups[0].Values[6] = 4.01 }, "Groups[0].Values[6]"},
		{"below the axis", func(b *figure.Bars) { b.Groups[0].Values[6] = -0.01 }, "Groups[0].Values[6]"},
		{"limit off the axis", func(b *figure.Bars) { b.Limits[0].Y = 5 }, "Limits[0].Y"},
		{"limit like a group", func(b *figure.Bars) { b.Limits[0].Name = "use" }, "Limits[0].Name"},
	} {
		b := monthBars()
		test.spoil(&b)
		svg, err := b.SVG()
		var bad *units.RangeError
		switch {
		case !errors.As(err, &bad):
			t.Errorf("%s: SVG() error = %v, want a RangeError", test.name, err)
		case bad.Op != "figure.Bars" || bad.Field != test.field:
			t.Errorf("%s: error is about %s %s, want figure.Bars %s: %v", test.name, bad.Op, bad.Field, test.field, err)
		case svg != nil:
			t.Errorf("%s: SVG() gave a drawing with its error", test.name)
		}
	}
}
