package figure

// Room on the page around the plot.
const (
	titleLine   = 25 * px
	rowHeight   = 28 * px // of the names above the plot
	columnLead  = 40 * px // from the plot to the names right of it
	leastRight  = 46 * px // half of the widest number below the plot hangs over
	axisRoom    = 22 * px // of the name of the axis on the left
	tickRoom    = 10 * px // between a number and its axis
	belowPlot   = 58 * px // numbers and name of the axis below
	legendLine  = 23 * px
	sampleWidth = 40 * px // of what a name of the legend stands for
	sampleRoom  = 8 * px  // between that and the name
	entryRoom   = 24 * px // between two entries
	longestX    = 480 * px
	longestName = 210 * px
)

// A plan says what must find room on a page.
type plan struct {
	title  string
	y      []tick   // numbers left of the plot
	row    bool     // whether there are names above the plot
	column []string // names right of the plot
	legend []string // names below the plot
}

// A frame is a page with places for everything.
type frame struct {
	heading []string
	plot    box
	height  int // of the page
	legend  []entry
}

// An entry is a name of the legend.
type entry struct {
	name   string
	sample box // what stands for it is drawn here
}

// frame lays the page out. The width of the plot is what the numbers and the
// names beside it leave, the height of the page what everything needs.
func (p plan) frame() frame {
	f := frame{heading: wrapTitle(p.title)}
	f.plot.x0 = margin + axisRoom + widestTick(p.y) + tickRoom
	f.plot.x1 = pageWidth - leastRight
	for _, name := range p.column {
		f.plot.x1 = min(f.plot.x1, pageWidth-margin-textWidth(name, nameSize)-columnLead)
	}
	f.plot.y0 = margin + len(f.heading)*titleLine + 16*px
	if p.row {
		f.plot.y0 += rowHeight
	}
	f.plot.y1 = f.plot.y0 + plotHeight
	f.height = f.plot.y1 + belowPlot
	if len(p.legend) > 0 {
		f.placeLegend(p.legend)
	}
	f.height += margin / 2
	return f
}

func widestTick(ticks []tick) int {
	w := 0
	for _, t := range ticks {
		w = max(w, textWidth(t.text, tickSize))
	}
	return w
}

// placeLegend adds the legend at the foot of the page, in columns of equal
// width and rows of as equal a length as can be.
func (f *frame) placeLegend(names []string) {
	width := 0
	for _, name := range names {
		width = max(width, sampleWidth+sampleRoom+textWidth(name, nameSize)+entryRoom)
	}
	columns := max(1, (pageWidth-margin-f.plot.x0+entryRoom)/width)
	rows := (len(names) + columns - 1) / columns
	columns = (len(names) + rows - 1) / rows
	top := f.height + 8*px
	for i, name := range names {
		x, y := f.plot.x0+i%columns*width, top+i/columns*legendLine
		f.legend = append(f.legend, entry{name, box{x, y, x + sampleWidth, y + legendLine}})
	}
	f.height = top + rows*legendLine
}

// drop is how far a baseline is below the middle of a line of text.
func drop(size int) int { return size * px * 36 / 100 }

// drawHeading writes the title.
func (f frame) drawHeading(d *drawing) {
	for i, line := range f.heading {
		d.text(point{margin, margin + i*titleLine + titleSize*px}, titleSize, line, bold)
	}
}

// drawGrid draws a line across the plot at every tick.
func (f frame) drawGrid(d *drawing, x, y []tick) {
	plot := f.plot
	colour := func(t tick) string {
		if t.text == "" {
			return faintInk
		}
		return gridInk
	}
	for _, t := range x {
		at := plot.x0 + along(t.at, plot.width())
		d.line(point{at, plot.y0}, point{at, plot.y1}, stroke(colour(t), px, ""))
	}
	for _, t := range y {
		at := plot.y1 - along(t.at, plot.height())
		d.line(point{plot.x0, at}, point{plot.x1, at}, stroke(colour(t), px, ""))
	}
}

// drawAxes draws the two axes with their numbers and names.
func (f frame) drawAxes(d *drawing, x, y []tick, xName, yName string) {
	plot := f.plot
	for _, t := range numbered(x) {
		at := plot.x0 + along(t.at, plot.width())
		d.text(point{at, plot.y1 + 21*px}, tickSize, t.text, middle)
	}
	for _, t := range numbered(y) {
		at := plot.y1 - along(t.at, plot.height())
		d.text(point{plot.x0 - tickRoom, at + drop(tickSize)}, tickSize, t.text, atEnd)
	}
	d.path([][]point{{{plot.x0, plot.y0}, {plot.x0, plot.y1}, {plot.x1, plot.y1}}}, stroke(ink, thinWidth, ""))
	d.text(point{(plot.x0 + plot.x1) / 2, plot.y1 + 46*px}, labelSize, xName, middle)
	turn := point{margin + labelSize*px*3/4, (plot.y0 + plot.y1) / 2}
	d.text(turn, labelSize, yName, middle+turned(turn))
}

// drawLegend writes the names of the legend, with what sample draws for each.
func (f frame) drawLegend(d *drawing, sample func(d *drawing, i int, at box)) {
	for i, e := range f.legend {
		sample(d, i, e.sample)
		base := (e.sample.y0+e.sample.y1)/2 + drop(nameSize)
		d.text(point{e.sample.x1 + sampleRoom, base}, nameSize, e.name, "")
	}
}
