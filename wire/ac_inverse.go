package wire

import (
	"math"

	"example.com/drawbar/units"
)

// ACSmallestSize returns the drop with the smallest size of the list that keeps
// it, by r.Method, within r.Allowed, which must be given. The size is in the
// Run of the result. The size of r.Line is not looked at; Stated and
// Resistivity must not be given, and Reactance would be that of every size. The
// list may be in any order; see [Gauges]. The size is the smallest for drop
// alone, and may be too small for heat.
//
// Errors are as for [ACDrop]. If not even the size with the least drop will do,
// or the list is empty, the [*units.RangeError] names Allowed or from.
func ACSmallestSize(r ACRun, from []Size) (AlternatingDrop, error) {
	const op = "wire.ACSmallestSize"
	allowed, err := r.limit(op)
	if err != nil {
		return AlternatingDrop{}, err
	}
	c := r.Line.Conductor
	switch {
	case c.Stated.IsSet():
		return AlternatingDrop{}, &units.RangeError{Op: op, Field: "Stated", Value: c.Stated, Allowed: notGiven{}}
	case c.Resistivity.IsSet():
		return AlternatingDrop{}, &units.RangeError{Op: op, Field: "Resistivity", Value: c.Resistivity, Allowed: notGiven{}}
	case len(from) == 0:
		return AlternatingDrop{}, &units.RangeError{Op: op, Field: "from", Value: emptyList, Allowed: sizeRange{}}
	}
	var best AlternatingDrop
	least := units.Ratio(math.Inf(1))
	for _, size := range from {
		r.Line.Conductor.Size = size
		d, err := acDrop(op, r)
		if err != nil {
			return AlternatingDrop{}, err
		}
		least = min(least, d.Fraction)
		found := best.Run.Line.Conductor.Size
		if !units.Exceeds(d.Fraction, allowed) && (!found.IsValid() || size.Compare(found) < 0) {
			best = d
		}
	}
	if !best.Run.Line.Conductor.Size.IsValid() {
		return AlternatingDrop{}, &units.RangeError{Op: op, Field: "Allowed", Value: allowed, Allowed: units.AtLeast(least)}
	}
	return best, nil
}

// ACLongestRun returns the drop over the longest run that keeps it, by r.Method,
// within r.Allowed, which must be given. The length is the OneWay of the Run of
// the result; that of r is not looked at.
//
// Errors are as for [ACDrop]. A leading current may have no longest run, since
// it raises the voltage; the error then names OneWay.
func ACLongestRun(r ACRun) (AlternatingDrop, error) {
	const op = "wire.ACLongestRun"
	r.OneWay = 1 * units.Metre
	times, err := r.reach(op)
	if err != nil {
		return AlternatingDrop{}, err
	}
	r.OneWay = units.Scale(r.OneWay, times)
	return acDrop(op, r)
}

// ACLargestCurrent returns the drop with the largest current that keeps it, by
// r.Method, within r.Allowed, which must be given. The current is in the Run of
// the result; that of r is not looked at. It is a limit for drop alone: what
// the conductor bears is another matter, and the findings say so.
//
// Errors are as for [ACLongestRun], naming Current.
func ACLargestCurrent(r ACRun) (AlternatingDrop, error) {
	const op = "wire.ACLargestCurrent"
	r.Current = 1 * units.Ampere
	times, err := r.reach(op)
	if err != nil {
		return AlternatingDrop{}, err
	}
	r.Current = units.Scale(r.Current, times)
	return acDrop(op, r)
}

// limit returns the drop that r allows.
func (r ACRun) limit(op string) (units.Ratio, error) {
	allowed, ok := r.Allowed.Get()
	if !ok {
		return 0, &units.RangeError{Op: op, Field: "Allowed", Value: r.Allowed, Allowed: allowedDrops()}
	}
	return allowed, allowedDrops().Check(op, "Allowed", allowed)
}

// reach returns by how much current times length of r may grow until the drop
// is what is allowed; 0 or less, or infinite, if it never is. Both parts of the
// drop, a and b, grow in proportion, so that
//
//	approximate:  k·a = δ·V
//	exact:        (V_load + k·a)² + (k·b)² = V²,  V_load = (1 - δ)·V
func (r ACRun) reach(op string) (units.Ratio, error) {
	allowed, err := r.limit(op)
	if err != nil {
		return 0, err
	}
	if err := r.check(op); err != nil {
		return 0, err
	}
	z, err := acImpedance(op, r.Line)
	if err != nil {
		return 0, err
	}
	d := AlternatingDrop{Run: r, Impedance: z}
	d.parts()
	a := float64(units.RatioOf(d.InPhase, r.Source))
	if r.Method == ACApproximate {
		return units.Ratio(float64(allowed) / a), nil
	}
	b := float64(units.RatioOf(d.Quadrature, r.Source))
	left := float64(1 - allowed)
	gone := float64(allowed * (2 - allowed)) // 1 - left²
	k := gone / (left*a + math.Sqrt(left*left*a*a+(a*a+b*b)*gone))
	if left+k*a < 0 {
		k = math.Inf(1) // a source turned right round: no run has that
	}
	return units.Ratio(k), nil
}
