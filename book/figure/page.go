package figure

// px is one unit of the drawing. Places and lengths on the page are counted in
// hundredths of it, as whole numbers: they need no rounding when written, and
// comparing two of them gives the same answer on every processor.
const px = 100

// Measures of every page.
const (
	pageWidth  = 800 * px
	plotHeight = 340 * px
	margin     = 16 * px
)

// Font sizes in units. At 160 mm of printed width 14 units are 8 points.
const (
	titleSize = 18
	labelSize = 15 // of what names an axis
	tickSize  = 14 // of the numbers along an axis
	nameSize  = 14 // of the name of a line, a limit or a group of bars
)

// A point is a place on the page, y downwards.
type point struct{ x, y int }

// A box is an area of the page, y0 above y1.
type box struct{ x0, y0, x1, y1 int }

func (b box) width() int  { return b.x1 - b.x0 }
func (b box) height() int { return b.y1 - b.y0 }

// grown returns b with a border of width d around it.
func (b box) grown(d int) box { return box{b.x0 - d, b.y0 - d, b.x1 + d, b.y1 + d} }

// contains reports whether all of a is in b.
func (b box) contains(a box) bool {
	return b.x0 <= a.x0 && a.x1 <= b.x1 && b.y0 <= a.y0 && a.y1 <= b.y1
}

// meets reports whether a and b have more than an edge in common.
func (b box) meets(a box) bool {
	return b.x0 < a.x1 && a.x0 < b.x1 && b.y0 < a.y1 && a.y0 < b.y1
}

// crossed reports whether the straight line from p to q has a point in b.
func (b box) crossed(p, q point) bool {
	if max(p.x, q.x) < b.x0 || min(p.x, q.x) > b.x1 || max(p.y, q.y) < b.y0 || min(p.y, q.y) > b.y1 {
		return false
	}
	// It passes by only if all corners are on one side of it.
	left, right := 0, 0
	for _, c := range [...]point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}} {
		switch side := (q.x-p.x)*(c.y-p.y) - (q.y-p.y)*(c.x-p.x); {
		case side > 0:
			left++
		case side < 0:
			right++
		}
	}
	return left < 4 && right < 4
}
