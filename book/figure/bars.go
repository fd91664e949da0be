package figure

import "example.com/drawbar/units"

const (
	maxCategories = 31
	maxGroups     = 4
)

// Bars is a drawing of amounts by category: a month, a circuit, a choice. A
// bar stands for its value by its length, so 0 is on the axis and no value is
// off it.
type Bars struct {
	Title       string   // heading, at most two lines of about 60 characters
	Description string   // what it shows, for those who cannot see it; at most 2000 characters
	Label       string   // what the categories are, such as "month"
	Categories  []string // 1 to 31, no two alike, short enough to stand side by side
	Y           Axis     // linear, from 0 or below to 0 or above
	Groups      []Group  // 1 to 4, side by side in each category
	Limits      []Limit  // at most 4
}

// A Group is a bar of one kind in every category.
type Group struct {
	Name   string    // in the legend, as of a [Line]; may be empty if there is one group
	Values []float64 // one a category, on the axis
}

const barsOp = "figure.Bars"

// SVG returns the bars as a drawing 800 units wide. A field outside what its
// type states gives a [*units.RangeError] that names it, such as
// Groups[1].Values[11].
func (b Bars) SVG() ([]byte, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	p := plan{title: b.Title, y: b.Y.ticks(run{length: plotHeight})}
	for _, l := range b.Limits {
		p.column = append(p.column, l.Name)
	}
	for _, g := range b.Groups {
		if g.Name != "" {
			p.legend = append(p.legend, g.Name)
		}
	}
	f := p.frame()
	x, err := b.ticks(f.plot.width())
	if err != nil {
		return nil, err
	}
	d := newDrawing(b.Title, b.Description, f.height)
	f.drawHeading(d)
	f.drawGrid(d, nil, p.y)
	b.draw(d, f.plot)
	limits := limitLabels(b.Limits, b.Y, f.plot)
	drawLimits(d, limits, f.plot)
	f.drawAxes(d, x, p.y, b.Label, b.Y.name())
	placeColumn(limits, f.plot)
	drawColumn(d, limits)
	f.drawLegend(d, func(d *drawing, i int, at box) {
		d.bar(box{at.x0, at.y0 + 4*px, at.x1, at.y1 - 4*px}, i)
	})
	return d.bytes(), nil
}

// ticks returns where the categories are along the axis, if they have room.
func (b Bars) ticks(length int) ([]tick, error) {
	const gap = 4 * px
	slot := length / len(b.Categories)
	var t []tick
	for i, name := range b.Categories {
		if textWidth(name, tickSize)+gap > slot {
			return nil, refuse(barsOp, element("Categories", i), name,
				"a shorter name, so that all have room side by side")
		}
		t = append(t, tick{(float64(i) + 0.5) / float64(len(b.Categories)), name})
	}
	return t, nil
}

// draw draws the bars from the level of 0, and that level.
func (b Bars) draw(d *drawing, plot box) {
	level := func(value float64) int { return plot.y1 - along(b.Y.scale().at(value), plot.height()) }
	zero := level(0)
	for g, group := range b.Groups {
		d.hatching(g)
		for i, value := range group.Values {
			// In 20ths of a slot, 16 are for bars.
			slot := plot.width() * 16 / (20 * len(b.Categories) * len(b.Groups))
			x := plot.x0 + plot.width()*(20*i+2)/(20*len(b.Categories)) + g*slot
			y := level(value)
			d.bar(box{x, min(y, zero), x + slot, max(y, zero)}, g)
		}
	}
	d.line(point{plot.x0, zero}, point{plot.x1, zero}, stroke(ink, thinWidth, ""))
}

// check reports the first field out of range.
func (b Bars) check() error {
	if err := checkHead(barsOp, b.Title, b.Description); err != nil {
		return err
	}
	if err := checkText(barsOp, "Label", b.Label, labelSize, longestX); err != nil {
		return err
	}
	if err := checkCount(barsOp, "Categories", len(b.Categories), 1, maxCategories); err != nil {
		return err
	}
	var categories names
	for i, name := range b.Categories {
		if err := categories.add(barsOp, element("Categories", i), name); err != nil {
			return err
		}
	}
	if b.Y.Log {
		return refuse(barsOp, "Y.Log", true, "false, as a bar begins at 0")
	}
	if err := b.Y.check(barsOp, "Y", plotHeight); err != nil {
		return err
	}
	if units.Exceeds(b.Y.Min, 0) {
		return refuse(barsOp, "Y.Min", b.Y.Min, "0 or below, as a bar begins at 0")
	}
	if units.Exceeds(0, b.Y.Max) {
		return refuse(barsOp, "Y.Max", b.Y.Max, "0 or above, as a bar begins at 0")
	}
	return b.checkGroups()
}

func (b Bars) checkGroups() error {
	if err := checkCount(barsOp, "Groups", len(b.Groups), 1, maxGroups); err != nil {
		return err
	}
	var seen names
	for i, g := range b.Groups {
		field := element("Groups", i)
		if g.Name != "" || len(b.Groups) > 1 {
			if err := seen.add(barsOp, field+".Name", g.Name); err != nil {
				return err
			}
		}
		n := len(b.Categories)
		if err := checkCount(barsOp, field+".Values", len(g.Values), n, n); err != nil {
			return err
		}
		for k, value := range g.Values {
			if err := b.Y.checkOn(barsOp, element(field+".Values", k), value); err != nil {
				return err
			}
		}
	}
	return checkLimits(barsOp, b.Limits, b.Y, &seen)
}
