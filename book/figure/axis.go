package figure

import (
	"math"
	"strconv"

	"example.com/drawbar/units"
)

// An Axis is a range of numbers to draw against. The numbers along it are
// printed plainly, so choose a unit that keeps them short.
type Axis struct {
	Label string // what it is, such as "length, one way"
	Unit  string // its symbol, such as "ft"; empty where the numbers are a count

	// Min and Max are the ends, Min below Max, both within ±10 million. They
	// are apart by 0.001 at least and by a 10 000th of the larger; on a
	// logarithmic axis Min is 0.0001 at least and Max at least 1.1 times Min.
	Min, Max float64

	Log bool // equal factors take equal lengths
}

const (
	largestEnd     = 1e7 // below it no number needs an exponent
	smallestLogEnd = 1e-4
	smallestFactor = 1.1  // Max over Min of a logarithmic axis
	smallestLength = 1e-3 // Max less Min of a linear one
	smallestPart   = 1e-4 // the same over the larger end, so that six digits do
)

// name returns the label with the unit, as in "length, one way (ft)".
func (a Axis) name() string {
	if a.Unit == "" {
		return a.Label
	}
	return a.Label + " (" + a.Unit + ")"
}

// A scale says where numbers are along an axis.
type scale struct {
	log         bool
	low, length float64 // as measure gives them
}

func (a Axis) scale() scale {
	s := scale{log: a.Log}
	s.low = s.measure(a.Min)
	s.length = s.measure(a.Max) - s.low
	return s
}

// measure returns x in a measure in which equal steps take equal lengths.
func (s scale) measure(x float64) float64 {
	x = units.Settle(x)
	if s.log {
		return math.Log10(x)
	}
	return x
}

// at returns where x is along the axis: 0 at Min, 1 at Max.
func (s scale) at(x float64) float64 { return (s.measure(x) - s.low) / s.length }

// farthest is how many lengths of the axis a number may be off it. From there
// float64 still finds the crossing of a line and an edge to 0.01 units.
const farthest = 1e9

// drawable reports whether a point may be at t along an axis. It may not if
// its number is not finite, or not above 0 on a logarithmic axis: t is then
// infinite or NaN.
func drawable(t float64) bool { return math.Abs(t) <= farthest }

// refusePoint returns the error of a number that is not drawable.
func (a Axis) refusePoint(op, field string, x float64) error {
	if a.Log {
		return refuse(op, field, x, "finite and above 0 on a logarithmic axis")
	}
	return refuse(op, field, x, "finite and within a thousand million lengths of the axis")
}

// check checks the axis, the name of which may be so long.
func (a Axis) check(op, field string, longest int) error {
	if err := checkPrintable(op, field+".Label", a.Label); err != nil {
		return err
	}
	if a.Unit != "" {
		if err := checkPrintable(op, field+".Unit", a.Unit); err != nil {
			return err
		}
	}
	if err := checkText(op, field+".Label", a.name(), labelSize, longest); err != nil {
		return err
	}
	return a.checkEnds(op, field)
}

// checkEnds compares settled numbers, as what is drawn is settled. NaN fails
// the first case.
func (a Axis) checkEnds(op, field string) error {
	smallest := -largestEnd
	if a.Log {
		smallest = smallestLogEnd
	}
	low, high := units.Settle(a.Min), units.Settle(a.Max)
	within := plain(smallest) + " to " + plain(largestEnd)
	switch {
	case !(smallest <= low && low <= largestEnd):
		return refuse(op, field+".Min", a.Min, within)
	case !(smallest <= high && high <= largestEnd):
		return refuse(op, field+".Max", a.Max, within)
	case high <= low:
		return refuse(op, field+".Max", a.Max, "above Min = "+plain(a.Min))
	case a.Log && units.Compare(high, smallestFactor*low) < 0:
		return refuse(op, field+".Max", a.Max, "at least "+plain(smallestFactor)+" times Min = "+plain(a.Min))
	case a.Log:
		return nil
	}
	apart := max(smallestLength, smallestPart*max(math.Abs(low), math.Abs(high)))
	if units.Compare(high-low, apart) < 0 {
		return refuse(op, field+".Max", a.Max, "at least "+plain(apart)+" above Min = "+plain(a.Min))
	}
	return nil
}

// plain returns x for an error message.
func plain(x float64) string { return strconv.FormatFloat(units.Settle(x), 'f', -1, 64) }

// checkOn checks a number that must be on the axis.
func (a Axis) checkOn(op, field string, x float64) error {
	low, high := units.Settle(a.Min), units.Settle(a.Max)
	if y := units.Settle(x); !(low <= y && y <= high) {
		return refuse(op, field, x, "on the axis, "+plain(low)+" to "+plain(high))
	}
	return nil
}
