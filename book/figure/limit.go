package figure

// A Limit is a level that is held against the lines or bars of a figure.
type Limit struct {
	Name string  // its label, at most about 25 characters, unlike all others of the figure
	Y    float64 // on the axis
}

// checkLimits checks the limits of a figure whose other names are seen.
func checkLimits(op string, limits []Limit, y Axis, seen *names) error {
	if err := checkCount(op, "Limits", len(limits), 0, maxLimits); err != nil {
		return err
	}
	for i, l := range limits {
		field := element("Limits", i)
		if err := seen.add(op, field+".Name", l.Name); err != nil {
			return err
		}
		if err := y.checkOn(op, field+".Y", l.Y); err != nil {
			return err
		}
	}
	return nil
}

// limitLabels returns the label of each limit, which begins where the limit
// ends.
func limitLabels(limits []Limit, y Axis, plot box) []label {
	var labels []label
	for _, l := range limits {
		labels = append(labels, label{name: l.Name, from: spot{1, y.scale().at(l.Y)}.on(plot), look: limitStyle})
	}
	return labels
}

// drawLimits draws the limits of these labels across the plot.
func drawLimits(d *drawing, labels []label, plot box) {
	for _, l := range labels {
		d.curve([][]point{{{plot.x0, l.from.y}, l.from}}, l.look, thinWidth)
	}
}
