package figure

// What the tests look at from outside.
const (
	MaxPoints  = maxPoints
	PlotHeight = plotHeight / px
	// What is left of the page by the widest numbers and names.
	NarrowestPlot = (pageWidth-2*margin-axisRoom-tickRoom-columnLead-longestName)/px - 80
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
	Thin     = thin
	Spread   = spread
	Decimal  = decimal
	Distance = distance
)

// LineColours returns the colours of the lines in order.
func LineColours() []string {
	var colours []string
	for _, s := range lineStyles {
		colours = append(colours, s.colour)
	}
	return colours
}
