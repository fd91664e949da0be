package figure

import "strconv"

// What a chart may hold at most; a reader cannot tell more apart.
const (
	maxLines  = 8
	maxLimits = 4
	maxPoints = 120 // drawn of one line, as thin says
)

// A Chart is a drawing of lines against two axes.
type Chart struct {
	Title       string  // heading, at most two lines of about 60 characters
	Description string  // what it shows, for those who cannot see it; at most 2000 characters
	X, Y        Axis    // the range drawn
	Lines       []Line  // 1 to 8; the order sets colour and dash pattern
	Limits      []Limit // at most 4
}

// A Line is a curve through points, joined in the order given. It may leave
// the axes and come back, at most 57 times; what is outside is not drawn.
type Line struct {
	Name   string  // its label, at most about 25 characters, unlike all others of the chart
	Points []Point // 2 or more
}

// A Point is a place in the units of the axes. Both numbers are finite and
// not farther from the axis than a thousand million times its length; on a
// logarithmic axis they are above 0.
type Point struct {
	X float64 // along
	Y float64 // up
}

// SVG returns the chart as a drawing 800 units wide. A name stands at the end
// of its line or, if the names have no room there, below the chart with a
// sample of its line. A field outside what its type states, or a line that
// nowhere shows, gives a [*units.RangeError] that names the field, such as
// Lines[2].Points[7].Y.
func (c Chart) SVG() ([]byte, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	lines, err := c.clipped()
	if err != nil {
		return nil, err
	}
	y := c.Y.ticks(run{length: plotHeight})
	l, ok := c.layOut(lines, y, false)
	if !ok {
		l, _ = c.layOut(lines, y, true)
	}
	for i, parts := range l.curves {
		if len(parts) == 0 {
			return nil, refuse(chartOp, element("Lines", i), c.Lines[i].Name, "a line longer than a dot")
		}
	}
	return c.draw(l, y), nil
}

// clipped returns the parts of each line that are on the axes.
func (c Chart) clipped() ([][][]spot, error) {
	const most = (maxPoints - 4) / 2 // each has two ends, and a line four extremes
	lines := make([][][]spot, len(c.Lines))
	for i, line := range c.Lines {
		spots, err := c.place(line.Points, element("Lines", i)+".Points")
		if err != nil {
			return nil, err
		}
		lines[i] = clip(spots)
		switch n := len(lines[i]); {
		case n == 0:
			return nil, refuse(chartOp, element("Lines", i), line.Name, "a line that passes through the plot")
		case n > most:
			return nil, refuse(chartOp, element("Lines", i), line.Name,
				"a line in at most "+strconv.Itoa(most)+" parts inside the axes")
		}
	}
	return lines, nil
}

// place returns where the points of a field are against the axes.
func (c Chart) place(points []Point, field string) ([]spot, error) {
	x, y := c.X.scale(), c.Y.scale()
	spots := make([]spot, len(points))
	for i, p := range points {
		s := spot{x.at(p.X), y.at(p.Y)}
		switch {
		case !drawable(s.u):
			return nil, c.X.refusePoint(chartOp, element(field, i)+".X", p.X)
		case !drawable(s.v):
			return nil, c.Y.refusePoint(chartOp, element(field, i)+".Y", p.Y)
		}
		spots[i] = s
	}
	return spots, nil
}

// draw returns the document.
func (c Chart) draw(l layout, y []tick) []byte {
	f := l.frame
	x := c.X.ticks(run{length: f.plot.width(), level: true})
	d := newDrawing(c.Title, c.Description, f.height)
	f.drawHeading(d)
	f.drawGrid(d, x, y)
	drawLimits(d, l.limits, f.plot)
	for i := len(l.curves) - 1; i >= 0; i-- { // the first ends up on top
		d.curve(l.curves[i], lineStyles[i], curveWidth)
	}
	f.drawAxes(d, x, y, c.X.name(), c.Y.name())
	drawColumn(d, l.column)
	drawRow(d, l.row)
	drawInside(d, l.inside)
	f.drawLegend(d, func(d *drawing, i int, at box) {
		level := (at.y0 + at.y1) / 2
		d.curve([][]point{{{at.x0, level}, {at.x1, level}}}, lineStyles[i], curveWidth)
	})
	return d.bytes()
}

const chartOp = "figure.Chart"

// check reports the first field out of range.
func (c Chart) check() error {
	if err := checkHead(chartOp, c.Title, c.Description); err != nil {
		return err
	}
	if err := c.X.check(chartOp, "X", longestX); err != nil {
		return err
	}
	if err := c.Y.check(chartOp, "Y", plotHeight); err != nil {
		return err
	}
	if err := checkCount(chartOp, "Lines", len(c.Lines), 1, maxLines); err != nil {
		return err
	}
	var seen names
	for i, line := range c.Lines {
		field := element("Lines", i)
		if err := seen.add(chartOp, field+".Name", line.Name); err != nil {
			return err
		}
		if n := len(line.Points); n < 2 {
			return refuse(chartOp, "len("+field+".Points)", n, "2 or more")
		}
	}
	return checkLimits(chartOp, c.Limits, c.Y, &seen)
}
