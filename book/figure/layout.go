package figure

import "slices"

// A layout is a chart on its page: everything whose place depends on room.
type layout struct {
	frame               frame
	curves              [][][]point // the parts of each line
	limits              []label     // these stand in the column too
	column, row, inside []label
}

// layOut lays a chart out with its lines named below the plot, or else at
// their ends, and reports whether there is room for all names.
func (c Chart) layOut(lines [][][]spot, y []tick, below bool) (layout, bool) {
	p := plan{title: c.Title, y: y}
	for i, parts := range lines {
		switch _, side := end(parts); {
		case below:
			p.legend = append(p.legend, c.Lines[i].Name)
		case side == right:
			p.column = append(p.column, c.Lines[i].Name)
		case side == top:
			p.row = true
		}
	}
	for _, l := range c.Limits {
		p.column = append(p.column, l.Name)
	}
	l := layout{frame: p.frame()}
	plot := l.frame.plot
	for i, parts := range lines {
		l.curves = append(l.curves, thin(onPage(parts, plot), maxPoints))
		if !below {
			l.addLabel(c.Lines[i].Name, i, parts)
		}
	}
	l.limits = limitLabels(c.Limits, c.Y, plot)
	l.column = append(l.column, l.limits...)
	return l, l.placeLabels()
}

// addLabel adds the name of line i to the labels of the side it ends on.
func (l *layout) addLabel(name string, i int, parts [][]spot) {
	s, side := end(parts)
	b := label{name: name, from: s.on(l.frame.plot), start: parts[0][0].on(l.frame.plot), look: lineStyles[i]}
	switch side {
	case right:
		l.column = append(l.column, b)
	case top:
		l.row = append(l.row, b)
	default:
		l.inside = append(l.inside, b)
	}
}

// placeLabels reports whether all labels have found a place.
func (l *layout) placeLabels() bool {
	plot := l.frame.plot
	taken := slices.Clone(l.curves)
	for _, m := range l.limits {
		taken = append(taken, [][]point{{{plot.x0, m.from.y}, m.from}})
	}
	return placeColumn(l.column, plot) && placeRow(l.row, plot) && placeInside(l.inside, taken, plot)
}

// A side is where a line ends.
type side uint8

const (
	within side = iota // in the plot, at its foot or at its left edge
	right
	top
)

// end returns where the name of a line with these parts belongs: at its last
// spot, or at its first if only that is on the right or the upper edge. A line
// cut at the corner ends on both, or beside it by rounding.
func end(parts [][]spot) (spot, side) {
	const edge = 1 - 1e-9
	last := parts[len(parts)-1]
	ends := [...]spot{last[len(last)-1], parts[0][0]}
	for _, s := range ends {
		if s.u > edge {
			return s, right
		}
	}
	for _, s := range ends {
		if s.v > edge {
			return s, top
		}
	}
	return ends[0], within
}
