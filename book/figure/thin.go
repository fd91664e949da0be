package figure

import "math"

// thin returns the parts of a line with at most so many points in all, in the
// order they had. A line that has no more is returned as it is. Else these are
// kept first: both ends of every part, and the first highest, lowest, leftmost
// and rightmost point of the line. Then, again and again, the point farthest
// from what is drawn so far joins it, so that the worst place is mended first.
//
// The method is that of Douglas and Peucker, "Algorithms for the reduction of
// the number of points required to represent a digitized line or its
// caricature", The Canadian Cartographer 10 (1973), with a count instead of a
// distance to stop at. Provenance: memory.
func thin(parts [][]point, most int) [][]point {
	total := 0
	for _, part := range parts {
		total += len(part)
	}
	if total <= most {
		return parts
	}
	t := newThinning(parts)
	for t.kept < most {
		if !t.keepFarthest() {
			break
		}
	}
	return t.result()
}

// A thinning is a line of which some points are kept so far.
type thinning struct {
	parts [][]point
	keep  [][]bool
	kept  int
	gaps  []gap
}

// A gap is a stretch of one part between two kept points.
type gap struct {
	part, from, to int
	farthest       int     // the point farthest from the straight line across; from if none is off it
	distance       float64 // of that point
}

func newThinning(parts [][]point) *thinning {
	t := &thinning{parts: parts, keep: make([][]bool, len(parts))}
	var extremes [4]struct{ part, i int }
	at := func(k int) point { return parts[extremes[k].part][extremes[k].i] }
	for n, part := range parts {
		t.keep[n] = make([]bool, len(part))
		t.keep[n][0], t.keep[n][len(part)-1] = true, true
		for i, p := range part {
			for k, beyond := range [...]bool{p.y < at(0).y, p.y > at(1).y, p.x < at(2).x, p.x > at(3).x} {
				if beyond {
					extremes[k].part, extremes[k].i = n, i
				}
			}
		}
	}
	for _, e := range extremes {
		t.keep[e.part][e.i] = true
	}
	for n, keep := range t.keep {
		from := 0
		for i, kept := range keep {
			if !kept {
				continue
			}
			t.kept++
			t.addGap(n, from, i)
			from = i
		}
	}
	return t
}

// addGap adds the gap between two points of a part, unless it is empty.
func (t *thinning) addGap(part, from, to int) {
	if to-from < 2 {
		return
	}
	g := gap{part: part, from: from, to: to, farthest: from}
	points := t.parts[part]
	for i := from + 1; i < to; i++ {
		if d := distance(points[i], points[from], points[to]); d > g.distance {
			g.farthest, g.distance = i, d
		}
	}
	if g.distance > 0 {
		t.gaps = append(t.gaps, g)
	}
}

// keepFarthest keeps the point that is farthest off, the first of equals, and
// reports whether there was one.
func (t *thinning) keepFarthest() bool {
	if len(t.gaps) == 0 {
		return false
	}
	best := 0
	for i, g := range t.gaps {
		if g.distance > t.gaps[best].distance {
			best = i
		}
	}
	g := t.gaps[best]
	t.gaps = append(t.gaps[:best], t.gaps[best+1:]...)
	t.keep[g.part][g.farthest] = true
	t.kept++
	t.addGap(g.part, g.from, g.farthest)
	t.addGap(g.part, g.farthest, g.to)
	return true
}

func (t *thinning) result() [][]point {
	out := make([][]point, len(t.parts))
	for n, part := range t.parts {
		for i, p := range part {
			if t.keep[n][i] {
				out[n] = append(out[n], p)
			}
		}
	}
	return out
}

// distance returns how far p is from the straight line that ends at a and b.
// The whole numbers in it are exact in a float64, and root and quotient are
// rounded alike everywhere, so equal distances compare equal.
func distance(p, a, b point) float64 {
	ux, uy := b.x-a.x, b.y-a.y
	vx, vy := p.x-a.x, p.y-a.y
	dot, length2 := ux*vx+uy*vy, ux*ux+uy*uy
	switch {
	case dot <= 0:
		return math.Sqrt(float64(vx*vx + vy*vy))
	case dot >= length2:
		wx, wy := p.x-b.x, p.y-b.y
		return math.Sqrt(float64(wx*wx + wy*wy))
	}
	return math.Abs(float64(ux*vy-uy*vx)) / math.Sqrt(float64(length2))
}
