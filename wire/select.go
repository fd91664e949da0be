package wire

import "example.com/drawbar/units"

// gaugeStock is what is sold by gauge and by kcmil from 20 AWG up: the even
// gauges, 3 and 1, the aughts, and the kcmil sizes of NEC Chapter 9 Table 8.
// 20 AWG is not in that table.
var gaugeStock = [...]Size{
	{gauge, 20}, {gauge, 18}, {gauge, 16}, {gauge, 14}, {gauge, 12}, {gauge, 10},
	{gauge, 8}, {gauge, 6}, {gauge, 4}, {gauge, 3}, {gauge, 2}, {gauge, 1},
	{gauge, 0}, {gauge, -1}, {gauge, -2}, {gauge, -3},
	{kcmil, 250}, {kcmil, 300}, {kcmil, 350}, {kcmil, 400}, {kcmil, 500},
}

// Gauges returns the sizes sold by gauge and by kcmil, 20 AWG to 500 kcmil,
// smallest first. The slice is the caller's.
func Gauges() []Size { return append([]Size(nil), gaugeStock[:]...) }

// MetricSizes returns the nominal areas of IEC 60228 from 0.5 to 120 mm²,
// smallest first. The slice is the caller's.
func MetricSizes() []Size {
	sizes := make([]Size, 0, len(iec60228))
	for _, r := range iec60228 {
		sizes = append(sizes, Size{metric, r.hundredths})
	}
	return sizes
}

// A Selection is the result of [SmallestSize].
type Selection struct {
	Run     Run           // as used, its Conductor with the size selected
	Voltage units.Voltage // the drop that is allowed
	// MaxPerLength is the greatest resistance per length of one conductor that
	// keeps the drop.
	MaxPerLength units.ResistancePerLength
	// MinArea is the least metal that has it; 0 if the resistance comes from
	// a table.
	MinArea units.Area
	Drop    Drop // with the size selected
	// Below is the next smaller size of the list and its resistance, which is
	// too great. It is zero if the smallest of the list was enough.
	Below PerLength
}

// SmallestSize returns the smallest size of the list from that keeps the drop
// of r within r.Allowed, which must be given:
//
//	r_max = Allowed · Source / (I · 2L)
//
// less what chassis and contacts take of it, for each of the conductors in
// parallel.
//
// The size in r.Conductor is not looked at; Stated must not be given. The
// list may be in any order; see [Gauges] and [MetricSizes]. The size is the
// smallest for drop alone, and may be too small for heat.
//
// Errors are as for [VoltageDrop]. If not even the largest will do, or the
// list is empty, the [*units.RangeError] names MaxPerLength and the smallest
// resistance of the list.
func SmallestSize(r Run, from []Size) (Selection, error) {
	const op = "wire.SmallestSize"
	if stated, ok := r.Conductor.Stated.Get(); ok {
		return Selection{}, &units.RangeError{Op: op, Field: "Stated", Value: stated, Allowed: notGiven{}}
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return Selection{}, err
	}
	if err := r.check(op); err != nil {
		return Selection{}, err
	}
	s := Selection{Run: r}
	var err error
	if s.Voltage, err = r.allowedVoltage(op); err != nil {
		return Selection{}, err
	}
	left := units.Minus(s.Voltage.Per(r.Current), r.fixed())
	s.MaxPerLength = units.Scale(left.Along(r.wired(r.OneWay)), units.Ratio(r.sideBySide()))
	best, err := s.choose(op, from)
	if err != nil {
		return Selection{}, err
	}
	if best.Rho > 0 {
		s.MinArea = units.Area(float64(best.Rho) / float64(s.MaxPerLength))
	}
	s.Run.Conductor, s.Run.Parallel = best.Conductor, r.sideBySide()
	if s.Drop, err = s.Run.drop(op, best); err != nil {
		return Selection{}, err
	}
	return s, nil
}

// choose returns the smallest size of the list that has at most
// s.MaxPerLength, and notes the next smaller one.
func (s *Selection) choose(op string, from []Size) (best PerLength, err error) {
	if len(from) == 0 {
		return PerLength{}, &units.RangeError{Op: op, Field: "from", Value: "an empty list", Allowed: sizeRange{}}
	}
	var thickest PerLength
	for _, size := range from {
		c := s.Run.Conductor
		c.Size = size
		p, err := resistance(op, c)
		if err != nil {
			return PerLength{}, err
		}
		if thickest.At == 0 || p.At < thickest.At {
			thickest = p
		}
		enough := !units.Exceeds(p.At, s.MaxPerLength)
		if enough && (best.At == 0 || size.Compare(best.Conductor.Size) < 0) {
			best = p
		}
	}
	if best.At == 0 {
		return PerLength{}, &units.RangeError{Op: op, Field: "MaxPerLength", Value: s.MaxPerLength,
			Allowed: units.AtLeast(thickest.At)}
	}
	for _, size := range from {
		if size.Compare(best.Conductor.Size) >= 0 ||
			s.Below.At != 0 && size.Compare(s.Below.Conductor.Size) <= 0 {
			continue
		}
		c := s.Run.Conductor
		c.Size = size
		if s.Below, err = resistance(op, c); err != nil {
			return PerLength{}, err
		}
	}
	return best, nil
}

// notGiven is the only thing allowed for an input that must be left out.
type notGiven struct{}

// String returns "not given".
func (notGiven) String() string { return "not given" }
