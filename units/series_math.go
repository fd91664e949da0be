package units

import (
	"unsafe"

	"golang.org/x/exp/constraints"
)

// The functions of this file write to dst, whose Values the caller has made,
// and allocate nothing unless they fail. On an error dst is as it was.

// AddTo sets dst to a + b, step by step. The three must have one shape: a
// different one is a [*ShapeError], a shape that [Series.Check] refuses a
// [*RangeError]. The Values of dst may be those of a or b; memory that
// overlaps without beginning together is a [*RangeError].
func AddTo[T constraints.Float](dst, a, b Series[T]) error {
	if err := checkTerms("units.AddTo", dst, a, b); err != nil {
		return err
	}
	to := dst.Values
	x, y := a.Values[:len(to)], b.Values[:len(to)]
	for i := range to {
		to[i] = x[i] + y[i]
	}
	return nil
}

// SubTo sets dst to a - b, with the rules and errors of [AddTo].
func SubTo[T constraints.Float](dst, a, b Series[T]) error {
	if err := checkTerms("units.SubTo", dst, a, b); err != nil {
		return err
	}
	to := dst.Values
	x, y := a.Values[:len(to)], b.Values[:len(to)]
	for i := range to {
		to[i] = x[i] - y[i]
	}
	return nil
}

// ScaleTo sets dst to a times ratio, with the rules and errors of [AddTo].
func ScaleTo[T constraints.Float](dst, a Series[T], ratio Ratio) error {
	if err := checkTerms("units.ScaleTo", dst, a, a); err != nil {
		return err
	}
	to := dst.Values
	x := a.Values[:len(to)]
	for i := range to {
		to[i] = T(float64(x[i]) * float64(ratio))
	}
	return nil
}

// checkTerms checks dst against the terms of a step-by-step operation.
func checkTerms[T any](op string, dst, a, b Series[T]) error {
	if err := dst.Check(op, "dst"); err != nil {
		return err
	}
	want := dst.Shape()
	if err := want.Check(op, "a", a.Shape()); err != nil {
		return err
	}
	if err := want.Check(op, "b", b.Shape()); err != nil {
		return err
	}
	if len(dst.Values) == 0 {
		return nil
	}
	if &dst.Values[0] != &a.Values[0] {
		if err := checkApart(op, dst, a, "a"); err != nil {
			return err
		}
	}
	if &dst.Values[0] != &b.Values[0] {
		return checkApart(op, dst, b, "b")
	}
	return nil
}

// checkApart refuses a dst that would overwrite values of src, called name,
// before they are read. Neither is empty.
func checkApart[T any](op string, dst, src Series[T], name string) error {
	if !overlap(dst.Values, src.Values) {
		return nil
	}
	return &RangeError{Op: op, Field: "dst.Values", Value: "overlapping " + name + ".Values",
		Allowed: wording("memory of their own")}
}

// overlap reports whether a and b, neither of them empty, have memory in
// common. Only addresses are compared; package slices does the same, but
// keeps it to itself.
func overlap[T any](a, b []T) bool {
	return uintptr(unsafe.Pointer(&a[0])) <= uintptr(unsafe.Pointer(&b[len(b)-1])) &&
		uintptr(unsafe.Pointer(&b[0])) <= uintptr(unsafe.Pointer(&a[len(a)-1]))
}
