package figure_test

import (
	"errors"
	"fmt"
	"regexp"
	"strings"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/units"
)

// printTexts prints the words that stand in a drawing, a line for each font
// size.
func printTexts(svg []byte) {
	bySize := map[string][]string{}
	for _, m := range regexp.MustCompile(`<text [^>]*font-size="(\d+)"[^>]*>([^<]*)<`).FindAllSubmatch(svg, -1) {
		bySize[string(m[1])] = append(bySize[string(m[1])], string(m[2]))
	}
	for _, size := range []string{"18", "15", "14"} {
		fmt.Println(strings.Join(bySize[size], " | "))
	}
}

func ExampleChart() {
	c := figure.Chart{
		Title:       "Drop of 10 AWG copper at 20 A",
		Description: "A straight line from 0 V at 0 ft to 1.5 V at 30 ft; it crosses 0.36 V at 7 ft.",
		X:           figure.Axis{Label: "length, one way", Unit: "ft", Max: 30},
		Y:           figure.Axis{Label: "voltage drop", Unit: "V", Max: 2},
		Limits:      []figure.Limit{{Name: "3 % of 12 V", Y: 0.36}},
	}
	drop := figure.Line{Name: "10 AWG"}
	for run := 0 * units.Foot; !units.Exceeds(run, 30*units.Foot); run += 5 * units.Foot {
		loop := (1.24 * units.OhmPerKilofoot).Over(2 * run)
		v := (20 * units.Ampere).Through(loop)
		drop.Points = append(drop.Points, figure.Point{X: units.In(run, units.Foot), Y: units.In(v, units.Volt)})
	}
	c.Lines = append(c.Lines, drop)
	svg, err := c.SVG()
	if err != nil {
		fmt.Println(err)
		return
	}
	printTexts(svg)
	// Output:
	// Drop of 10 AWG copper at 20 A
	// length, one way (ft) | voltage drop (V)
	// 0 | 5 | 10 | 15 | 20 | 25 | 30 | 0.0 | 0.5 | 1.0 | 1.5 | 2.0 | 10 AWG | 3 % of 12 V
}

func ExampleChart_SVG() {
	c := figure.Chart{
		Title:       "Charge against time",
		Description: "A line that rises.",
		X:           figure.Axis{Label: "time", Unit: "h", Min: 0, Max: 12, Log: true},
		Y:           figure.Axis{Label: "state of charge", Unit: "%", Max: 100},
		Lines:       []figure.Line{{Name: "bank", Points: []figure.Point{{X: 1, Y: 20}, {X: 12, Y: 95}}}},
	}
	_, err := c.SVG()
	fmt.Println(err)
	var bad *units.RangeError
	if errors.As(err, &bad) {
		fmt.Println(bad.Field)
	}
	// Output:
	// figure.Chart: X.Min = 0, want 0.0001 to 10000000
	// X.Min
}

func ExampleAxis() {
	_, err := figure.Chart{
		Title: "T", Description: "D",
		X: figure.Axis{Label: "current", Unit: "A", Min: 100, Max: 10},
	}.SVG()
	fmt.Println(err)
	// Output:
	// figure.Chart: X.Max = 10, want above Min = 100
}

func ExampleLine() {
	// What is off the axes is cut off at their edge: this line leaves the
	// chart at the top, half way.
	svg, err := figure.Chart{
		Title: "T", Description: "D",
		X:     figure.Axis{Label: "x", Max: 10},
		Y:     figure.Axis{Label: "y", Max: 10},
		Lines: []figure.Line{{Name: "steep", Points: []figure.Point{{X: 0, Y: 0}, {X: 10, Y: 20}}}},
	}.SVG()
	fmt.Println(err)
	fmt.Println(regexp.MustCompile(`d="([^"]*)"[^>]*#0072B2`).FindStringSubmatch(string(svg))[1])
	// Output:
	// <nil>
	// M65.81,425 409.91,85
}

func ExamplePoint() {
	_, err := figure.Chart{
		Title: "T", Description: "D",
		X:     figure.Axis{Label: "x", Max: 10},
		Y:     figure.Axis{Label: "y", Min: 1, Max: 10, Log: true},
		Lines: []figure.Line{{Name: "a", Points: []figure.Point{{X: 0, Y: 1}, {X: 10, Y: 0}}}},
	}.SVG()
	fmt.Println(err)
	// Output:
	// figure.Chart: Lines[0].Points[1].Y = 0, want finite and above 0 on a logarithmic axis
}

func ExampleLimit() {
	_, err := figure.Chart{
		Title: "T", Description: "D",
		X:      figure.Axis{Label: "x", Max: 10},
		Y:      figure.Axis{Label: "drop", Unit: "%", Max: 10},
		Lines:  []figure.Line{{Name: "a", Points: []figure.Point{{X: 0, Y: 0}, {X: 10, Y: 5}}}},
		Limits: []figure.Limit{{Name: "allowed", Y: 12}},
	}.SVG()
	fmt.Println(err)
	// Output:
	// figure.Chart: Limits[0].Y = 12, want on the axis, 0 to 10
}

func ExampleBars() {
	svg, err := figure.Bars{
		Title:       "Use a day by season",
		Description: "Summer uses twice as much as spring and autumn; winter lies between.",
		Label:       "season",
		Categories:  []string{"spring", "summer", "autumn", "winter"},
		Y:           figure.Axis{Label: "energy a day", Unit: "kWh", Max: 4},
		Groups: []figure.Group{
			{Name: "lights and pump", Values: []float64{0.8, 0.7, 0.9, 1.1}},
			{Name: "refrigerator", Values: []float64{0.9, 2.7, 0.8, 1.2}},
		},
		Limits: []figure.Limit{{Name: "bank", Y: 2.4}},
	}.SVG()
	if err != nil {
		fmt.Println(err)
		return
	}
	printTexts(svg)
	// Output:
	// Use a day by season
	// season | energy a day (kWh)
	// spring | summer | autumn | winter | 0.0 | 0.5 | 1.0 | 1.5 | 2.0 | 2.5 | 3.0 | 3.5 | 4.0 | bank | lights and pump | refrigerator
}

func ExampleBars_SVG() {
	_, err := figure.Bars{
		Title: "T", Description: "D", Label: "month",
		Categories: []string{"Jan", "Feb"},
		Y:          figure.Axis{Label: "energy", Unit: "kWh", Min: 1, Max: 4},
		Groups:     []figure.Group{{Values: []float64{2, 3}}},
	}.SVG()
	fmt.Println(err)
	// Output:
	// figure.Bars: Y.Min = 1, want 0 or below, as a bar begins at 0
}

func ExampleGroup() {
	_, err := figure.Bars{
		Title: "T", Description: "D", Label: "month",
		Categories: []string{"Jan", "Feb"},
		Y:          figure.Axis{Label: "energy", Unit: "kWh", Max: 4},
		Groups:     []figure.Group{{Values: []float64{2, 5}}},
	}.SVG()
	fmt.Println(err)
	// Output:
	// figure.Bars: Groups[0].Values[1] = 5, want on the axis, 0 to 4
}
