package wire

import "example.com/drawbar/units"

// AppendLongestRuns appends to dst the longest run of each size with each
// current, size by size in the order given and current by current within it:
// the table that a handbook prints, each cell with its own working and
// findings. A cell says how far the drop lets the current go, and not that the
// size bears it; read the findings of the cells with short runs.
//
// r gives everything but size and current, its Allowed included. The error is
// that of the first cell that has one, as for [LongestRun]; an empty list of
// sizes or currents is a [*units.RangeError] too. dst is then returned as it
// was. Nothing is allocated if dst has room.
func AppendLongestRuns(dst []Reach, r Run, sizes []Size, currents []units.Current) ([]Reach, error) {
	const op = "wire.AppendLongestRuns"
	switch {
	case len(sizes) == 0:
		return dst, &units.RangeError{Op: op, Field: "sizes", Value: emptyList, Allowed: sizeRange{}}
	case len(currents) == 0:
		return dst, &units.RangeError{Op: op, Field: "currents", Value: emptyList, Allowed: units.Above[units.Current](0)}
	}
	cells := dst
	for _, size := range sizes {
		for _, current := range currents {
			r.Conductor.Size, r.Current = size, current
			x, err := longestRun(op, r)
			if err != nil {
				return dst, err
			}
			cells = append(cells, x)
		}
	}
	return cells, nil
}

// emptyList is the value of a list with nothing in it.
const emptyList wording = "an empty list"
