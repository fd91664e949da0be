package figure

import "math"

// What the tests look at from outside.
const (
	MaxPoints  = maxPoints
	PlotHeight = plotHeight / px
	// What is left of the page by the widest numbers and names.
	NarrowestPlot = (pageWidth-2*margin-axisRoom-tickRoom-columnLead-longestName)/px - 90
)

// A PagePoint is a place on the page in hundredths of a unit.
type PagePoint = point

// A Spot is a place against the axes.
type Spot = spot

// XY returns a PagePoint.
func XY(x, y int) PagePoint { return point{x, y} }

// Coordinates returns those of p.
func Coordinates(p PagePoint) (x, y int) { return p.x, p.y }

// UV returns a Spot.
func UV(u, v float64) Spot { return spot{u, v} }

// TextWidth is textWidth in units of the drawing.
func TextWidth(text string, size int) float64 { return float64(textWidth(text, size)) / px }

// TickTexts returns the numbers along an axis of so many units, in order.
func TickTexts(a Axis, length int, level bool) []string {
	var texts []string
	for _, t := range numbered(a.ticks(run{length: length * px, level: level})) {
		texts = append(texts, t.text)
	}
	return texts
}

// Internals under test.
var (
	Clip     = clip
	OnLength = along
	Thin     = thin
	Spread   = spread
	Decimal  = decimal
	Distance = distance
)

// Crosses reports whether the straight line from p to q has a point in the
// box with these corners.
func Crosses(corner, opposite, p, q PagePoint) bool {
	return box{corner.x, corner.y, opposite.x, opposite.y}.crossed(p, q)
}

// NameSide says where the name of a line with these parts belongs.
func NameSide(parts [][]Spot) string {
	_, s := end(parts)
	return [...]string{within: "within", right: "right", top: "top"}[s]
}

// LineColours returns the colours of the lines in order.
func LineColours() []string {
	var colours []string
	for _, s := range lineStyles {
		colours = append(colours, s.colour)
	}
	return colours
}

// Along returns where a Spot is.
func Along(s Spot) (u, v float64) { return s.u, s.v }

// Apart returns the larger of the distances of two Spots along the axes.
func Apart(a, b Spot) float64 { return max(math.Abs(a.u-b.u), math.Abs(a.v-b.v)) }
