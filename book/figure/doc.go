// Package figure draws the charts of the book as SVG: curves against two
// axes ([Chart]) and bars by category ([Bars]).
//
//	c := figure.Chart{
//		Title:       "Drop along the run",
//		Description: "A straight line from 0 V at 0 ft to 1.2 V at 30 ft.",
//		X:           figure.Axis{Label: "length, one way", Unit: "ft", Max: 30},
//		Y:           figure.Axis{Label: "voltage drop", Unit: "V", Max: 1.5},
//		Lines: []figure.Line{
//			{Name: "10 AWG", Points: []figure.Point{{X: 0, Y: 0}, {X: 30, Y: 1.2}}},
//		},
//	}
//	svg, err := c.SVG()
//
// # Bytes
//
// The same figure is the same bytes on every processor. Numbers are settled
// ([units.Settle]) before they are placed and everything after that is done in
// whole hundredths of a unit of the drawing, so a number that moves by a part
// in 1e12 moves nothing. A line of more than 120 points is thinned, one that
// leaves the axes is cut where it crosses their edge.
//
// # Looks
//
// A figure is 800 units wide on a white ground and shrinks with the page. Text
// is text, in the reader's sans serif. A line is told from another by colour
// and by dash pattern, a bar by colour and by hatching, so neither colour
// vision nor colour print is needed. The title and the description are there
// for screen readers under ids made from the two, so that several figures can
// stand in one page.
//
// # Left out
//
// Interaction, animation, a second vertical axis, shaded areas, error bars,
// automatic ranges: the author of a figure knows which range makes its point.
package figure
