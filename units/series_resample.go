package units

import (
	"time"

	"golang.org/x/exp/constraints"
)

// ResampleTo sets dst, whose Start, Step and number of Values say the wanted
// grid, to the means of src over the steps of dst. Each value of src counts
// by how much of its step overlaps, so that the integral over the span of
// dst is kept: minutes into hours, hours into quarters, and grids that are
// shifted or have no common divisor. A step of dst that lies within one step
// of src has exactly its value; detail that src does not have is not made up.
//
// A NaN or an infinity of src reaches the steps of dst that it overlaps and
// no others.
//
// Nothing is extrapolated: a dst with values that src does not cover is a
// [*RangeError] whose Value and Allowed are the [Span] of dst and of src. So
// is either if [Series.Check] refuses it, and a dst whose Values share memory
// with those of src. On an error dst is as it was.
func ResampleTo[T constraints.Float](dst, src Series[T]) error {
	const op = "units.ResampleTo"
	if err := dst.Check(op, "dst"); err != nil {
		return err
	}
	if err := src.Check(op, "src"); err != nil {
		return err
	}
	if len(dst.Values) == 0 {
		return nil
	}
	want, have := dst.Span(), src.Span()
	if !have.Covers(want) {
		return &RangeError{Op: op, Field: "dst", Value: want, Allowed: have}
	}
	if err := checkApart(op, dst, src, "src"); err != nil {
		return err
	}
	from := dst.Start.Sub(src.Start)
	for i := range dst.Values {
		dst.Values[i] = meanOver(src, from, from+dst.Step)
		from += dst.Step
	}
	return nil
}

// meanOver returns the mean of s from one time to another, both counted from
// its start and in its span.
func meanOver[T constraints.Float](s Series[T], from, to time.Duration) T {
	first := from / s.Step
	end := (first + 1) * s.Step
	if to <= end {
		return s.Values[first]
	}
	last := (to - 1) / s.Step
	// Counted in steps of s, so that whole steps bring no rounding.
	step := float64(s.Step)
	head := float64(end-from) / step
	tail := float64(to-last*s.Step) / step
	total := sum(s.Values[first+1:last]) + head*float64(s.Values[first]) + tail*float64(s.Values[last])
	return T(total / (float64(to-from) / step))
}
