package units

// Bounds is the range that an input may have. The zero value allows every
// finite number; neither NaN nor an infinity is ever in bounds.
type Bounds[Q Quantity] struct {
	low, high         Q
	hasLow, hasHigh   bool
	openLow, openHigh bool // the end itself is not allowed
}

// Above returns the bounds of numbers greater than low, low not included.
func Above[Q Quantity](low Q) Bounds[Q] {
	return Bounds[Q]{low: low, hasLow: true, openLow: true}
}

// AtLeast returns the bounds of low and everything greater.
func AtLeast[Q Quantity](low Q) Bounds[Q] { return Bounds[Q]{low: low, hasLow: true} }

// Between returns the bounds from low to high, both included.
func Between[Q Quantity](low, high Q) Bounds[Q] {
	return Bounds[Q]{low: low, high: high, hasLow: true, hasHigh: true}
}

// Below returns b with the additional limit that numbers are smaller than
// high.
func (b Bounds[Q]) Below(high Q) Bounds[Q] {
	b.high, b.hasHigh, b.openHigh = high, true, true
	return b
}

// AtMost returns b with the additional limit that numbers are not greater
// than high.
func (b Bounds[Q]) AtMost(high Q) Bounds[Q] {
	b.high, b.hasHigh, b.openHigh = high, true, false
	return b
}

// Contains reports whether x is finite and in b. Both are compared settled,
// so that a sum that misses a limit by float64 noise is in.
func (b Bounds[Q]) Contains(x Q) bool {
	if !finite(float64(x)) {
		return false
	}
	if b.hasLow {
		if c := Compare(x, b.low); c < 0 || (c == 0 && b.openLow) {
			return false
		}
	}
	if b.hasHigh {
		if c := Compare(x, b.high); c > 0 || (c == 0 && b.openHigh) {
			return false
		}
	}
	return true
}

// Check returns nil if b contains x, else a [*RangeError] with op, field, x
// and b.
func (b Bounds[Q]) Check(op, field string, x Q) error {
	if b.Contains(x) {
		return nil
	}
	return &RangeError{Op: op, Field: field, Value: x, Allowed: b}
}

// String returns "> 0 A", "0 % to 100 %", "finite" and the like.
func (b Bounds[Q]) String() string {
	low, high := "", ""
	if b.hasLow {
		if low = ">= "; b.openLow {
			low = "> "
		}
		low += toString(b.low)
	}
	if b.hasHigh {
		if high = "<= "; b.openHigh {
			high = "< "
		}
		high += toString(b.high)
	}
	switch {
	case low == "" && high == "":
		return "finite"
	case low == "":
		return high
	case high == "":
		return low
	case !b.openLow && !b.openHigh:
		return low[3:] + " to " + high[3:]
	}
	return low + " and " + high
}
