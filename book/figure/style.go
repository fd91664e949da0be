package figure

import "strconv"

// A style tells one line from another.
type style struct {
	colour string
	dash   string // lengths on and off; empty: unbroken
	edge   string // colour of an edge along it; empty: none
}

// lineStyles are those of the lines in order.
//
// The colours can be told apart with every common colour vision deficiency.
// Source: M. Okabe, K. Ito, "Color Universal Design (CUD): How to make figures
// and presentations that are friendly to colorblind people", 2008. Provenance:
// memory. The dashes tell the lines apart without any colour.
var lineStyles = [maxLines]style{
	{colour: "#0072B2"},                       // blue
	{colour: "#D55E00", dash: "13 4"},         // vermilion
	{colour: "#009E73", dash: "3 3"},          // bluish green
	{colour: "#000000", dash: "13 3.5 3 3.5"}, // black
	{colour: "#CC79A7", dash: "7 3.5"},        // reddish purple
	{colour: "#E69F00", dash: "13 3 3 3 3 3"}, // orange
	{colour: "#56B4E9", dash: "22 4"},         // sky blue
	{colour: "#F0E442", edge: ink},            // yellow, too light for the ground by itself
}

// limitStyle is that of every limit: thin, as no line is. The edge parts it
// from bars.
var limitStyle = style{colour: ink, edge: ground}

// Widths of lines.
const (
	curveWidth = 240
	thinWidth  = 140 // of limits, axes and what leads to a name
	edgeWidth  = 90  // on either side
)

// Greys of what is not data, and the ground.
const (
	ground   = "#FFFFFF"
	ink      = "#222222" // text and axes
	gridInk  = "#D9D9D9"
	faintInk = "#EDEDED" // grid between numbers
)

// curve draws the parts of a line in its style.
func (d *drawing) curve(parts [][]point, s style, width int) {
	const round = ` stroke-linejoin="round"`
	if s.edge != "" {
		d.path(parts, stroke(s.edge, width+2*edgeWidth, "")+round)
	}
	d.path(parts, stroke(s.colour, width, s.dash)+round)
}

// hatches are how the groups of bars after the first are filled, as the angle
// of their stripes.
var hatches = [maxGroups]string{1: "45", 2: "135", 3: "90"}

// hatching defines the paint of a group of bars, in its colour.
func (d *drawing) hatching(group int) {
	if hatches[group] == "" {
		return
	}
	d.add(`<pattern id="`, d.hatch(group), `" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(`,
		hatches[group], `)">`)
	d.add(`<rect width="6" height="6"`, fill(ground), `/><rect width="2.5" height="6"`, fill(lineStyles[group].colour), "/></pattern>\n")
}

// hatch returns the id of the paint of a group.
func (d *drawing) hatch(group int) string { return "hatch" + strconv.Itoa(group) + "-" + d.id }

// bar draws a bar of a group, whose hatching is defined.
func (d *drawing) bar(b box, group int) {
	colour := lineStyles[group].colour
	paint := colour
	if hatches[group] != "" {
		paint = "url(#" + d.hatch(group) + ")"
	}
	d.rect(b, fill(paint)+stroke(colour, px, ""))
}
