package figure

import (
	"math"

	"example.com/drawbar/units"
)

// A spot is a place against the axes: from 0 to 1 along each of them, upwards
// and to the right, and beyond that off the axes.
type spot struct{ u, v float64 }

// clip returns the parts of the line through the spots that are on the axes,
// each at least two spots, in the order of the line. Where the line crosses an
// edge, the part ends on that edge exactly.
func clip(line []spot) [][]spot {
	var parts [][]spot
	open := false // the last part ends at line[i], inside
	for i := range len(line) - 1 {
		p, q, ok := visible(line[i], line[i+1])
		if !ok {
			open = false
			continue
		}
		if !open && p == q { // it touches an edge, or the point is doubled
			continue
		}
		if !open {
			parts = append(parts, []spot{p})
		}
		last := len(parts) - 1
		parts[last] = append(parts[last], q)
		open = q == line[i+1]
	}
	return parts
}

// visible returns the part of the straight line from p to q that is on the
// axes, if any. It cuts on one axis, then on the other.
func visible(p, q spot) (from, to spot, ok bool) {
	if p.u, p.v, q.u, q.v, ok = cut(p.u, p.v, q.u, q.v); !ok {
		return spot{}, spot{}, false
	}
	if p.v, p.u, q.v, q.u, ok = cut(p.v, p.u, q.v, q.u); !ok {
		return spot{}, spot{}, false
	}
	return p, q, true
}

// cut returns the part of the straight line from (a, b) to (c, d) whose first
// coordinate is in 0 to 1, if any.
func cut(a, b, c, d float64) (a1, b1, c1, d1 float64, ok bool) {
	if max(a, c) < 0 || min(a, c) > 1 {
		return 0, 0, 0, 0, false
	}
	// The conversion keeps a processor from fusing product and sum.
	second := func(first float64) float64 { return b + float64((d-b)*((first-a)/(c-a))) }
	a1, b1, c1, d1 = a, b, c, d
	if a < 0 || a > 1 {
		a1 = min(max(a, 0), 1)
		b1 = second(a1)
	}
	if c < 0 || c > 1 {
		c1 = min(max(c, 0), 1)
		d1 = second(c1)
	}
	return a1, b1, c1, d1, true
}

// along returns the part t, from 0 to 1, of a length on the page.
func along(t float64, length int) int {
	return int(math.Round(units.Settle(t * float64(length))))
}

// on returns the place of s on a page with this plot.
func (s spot) on(plot box) point {
	return point{plot.x0 + along(s.u, plot.width()), plot.y1 - along(s.v, plot.height())}
}

// onPage returns parts of a line as places on the page. Places that fall
// together are drawn once, and a part that is one place is not drawn.
func onPage(parts [][]spot, plot box) [][]point {
	var drawn [][]point
	for _, part := range parts {
		points := make([]point, 0, len(part))
		for _, s := range part {
			if p := s.on(plot); len(points) == 0 || points[len(points)-1] != p {
				points = append(points, p)
			}
		}
		if len(points) > 1 {
			drawn = append(drawn, points)
		}
	}
	return drawn
}
