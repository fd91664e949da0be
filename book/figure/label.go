package figure

import (
	"cmp"
	"slices"
)

// A label is the name of a line or a limit, written next to it.
type label struct {
	name  string
	from  point // the end of what it names
	start point // the other end, if the label may stand there instead
	at    point // left end of the text, at half of its height
	look  style
}

const (
	nameLine = 19 * px // height of a name with the space around it
	nameRoom = 16 * px // between two names side by side
)

func (l label) box() box {
	return box{l.at.x, l.at.y - nameLine/2, l.at.x + textWidth(l.name, nameSize), l.at.y + nameLine/2}
}

// placeColumn places labels right of the plot, each as near as can be to the
// height of what it names.
func placeColumn(labels []label, plot box) bool {
	slices.SortStableFunc(labels, func(a, b label) int { return cmp.Compare(a.from.y, b.from.y) })
	var want, sizes []int
	for _, l := range labels {
		want = append(want, l.from.y)
		sizes = append(sizes, nameLine)
	}
	middles, ok := spread(want, sizes, plot.y0-nameLine/2, plot.y1+nameLine/2)
	for i, m := range middles {
		labels[i].at = point{plot.x1 + columnLead, m}
	}
	return ok
}

// placeRow places labels above the plot, each as near as can be to where
// what it names leaves the plot.
func placeRow(labels []label, plot box) bool {
	slices.SortStableFunc(labels, func(a, b label) int { return cmp.Compare(a.from.x, b.from.x) })
	var want, sizes []int
	for _, l := range labels {
		want = append(want, l.from.x)
		sizes = append(sizes, textWidth(l.name, nameSize)+nameRoom)
	}
	middles, ok := spread(want, sizes, plot.x0-nameRoom/2, pageWidth-margin+nameRoom/2)
	for i, m := range middles {
		labels[i].at = point{m - (sizes[i]-nameRoom)/2, plot.y0 - rowHeight/2 - 5*px}
	}
	return ok
}

// placeInside places labels in the plot beside the ends of their lines, or all
// beside their starts, or each where it can be.
func placeInside(labels []label, curves [][][]point, plot box) bool {
	atFrom := func(l label) []point { return l.around(l.from) }
	atStart := func(l label) []point { return l.around(l.start) }
	atEither := func(l label) []point { return append(l.around(l.from), l.around(l.start)...) }
	return placeEach(labels, curves, plot, atFrom) || placeEach(labels, curves, plot, atStart) ||
		placeEach(labels, curves, plot, atEither)
}

// placeEach gives each label the first of its places where no curve and no
// label before it is in the way.
func placeEach(labels []label, curves [][][]point, plot box, places func(label) []point) bool {
	const clear = 3 * px
	for i := range labels {
		l := &labels[i]
		found := slices.ContainsFunc(places(*l), func(p point) bool {
			l.at = p
			b := l.box()
			taken := slices.ContainsFunc(labels[:i], func(other label) bool { return other.box().meets(b) })
			return !taken && plot.grown(-clear).contains(b) && !crossedByAny(b, curves)
		})
		if !found {
			return false
		}
	}
	return true
}

// around returns the places for a label beside p, the best first.
func (l label) around(p point) []point {
	const gap = 9 * px
	w := textWidth(l.name, nameSize)
	right, left, centre := p.x+gap, p.x-gap-w, p.x-w/2
	above, below := p.y-gap-nameLine/2, p.y+gap+nameLine/2
	return []point{{right, p.y}, {centre, above}, {centre, below}, {right, above}, {right, below},
		{left, above}, {left, below}, {left, p.y}}
}

// crossedByAny reports whether a curve passes through b.
func crossedByAny(b box, curves [][][]point) bool {
	for _, parts := range curves {
		for _, part := range parts {
			for i := range len(part) - 1 {
				if b.crossed(part[i], part[i+1]) {
					return true
				}
			}
		}
	}
	return false
}

// drawColumn writes names right of the plot, led to by their lines.
func drawColumn(d *drawing, labels []label) {
	for _, l := range labels {
		to := l.at.x - 6*px
		bend := l.from.x + 10*px
		d.curve([][]point{{l.from, {bend, l.at.y}, {to, l.at.y}}}, l.look, thinWidth)
		d.text(point{l.at.x, l.at.y + drop(nameSize)}, nameSize, l.name, "")
	}
}

// drawRow writes names above the plot, led to by their lines.
func drawRow(d *drawing, labels []label) {
	for _, l := range labels {
		centre := l.at.x + textWidth(l.name, nameSize)/2
		d.curve([][]point{{l.from, {centre, l.at.y + nameLine/2}}}, l.look, thinWidth)
		d.text(point{centre, l.at.y + drop(nameSize)}, nameSize, l.name, middle)
	}
}

// drawInside writes names in the plot.
func drawInside(d *drawing, labels []label) {
	for _, l := range labels {
		d.text(point{l.at.x, l.at.y + drop(nameSize)}, nameSize, l.name, haloed)
	}
}
