package units_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
)

func TestBounds(t *testing.T) {
	const a = units.Ampere
	inf := units.Current(math.Inf(1))
	for _, c := range []struct {
		bounds  units.Bounds[units.Current]
		text    string
		in, out []units.Current
	}{
		{units.Bounds[units.Current]{}, "finite", []units.Current{0, -1e300, 1e300}, nil},
		// 5e-324 is not 0, so it is above; noise below a limit is at it
		{units.Above(0 * a), "> 0 A", []units.Current{1, 5e-324}, []units.Current{0, -1}},
		{units.Above(15 * a), "> 15 A", []units.Current{15.0000001}, []units.Current{15, 15.000000000000002}},
		{units.AtLeast(15 * a), ">= 15 A", []units.Current{15, 14.999999999999998, 16}, []units.Current{14.9999}},
		{units.Between(0*a, 15*a), "0 A to 15 A", []units.Current{0, 7, 15, 15.000000000000002}, []units.Current{-1e-9, 15.0004}},
		{units.Above(0 * a).Below(15 * a), "> 0 A and < 15 A", []units.Current{1, 14.9999}, []units.Current{0, 15, 14.999999999999998}},
		{units.Above(0 * a).AtMost(15 * a), "> 0 A and <= 15 A", []units.Current{1, 15, 15.000000000000002}, []units.Current{0, 15.0004}},
		{units.AtLeast(0 * a).Below(15 * a), ">= 0 A and < 15 A", []units.Current{0, 14.9999}, []units.Current{-1, 15}},
		{units.AtLeast(0 * a).AtMost(15 * a), "0 A to 15 A", []units.Current{0, 15}, []units.Current{-1, 16}},
		{units.Bounds[units.Current]{}.Below(15 * a), "< 15 A", []units.Current{-1e300, 14}, []units.Current{15}},
		{units.Bounds[units.Current]{}.AtMost(15 * a), "<= 15 A", []units.Current{-1e300, 15}, []units.Current{15.1}},
		// the later of two limits on one side counts
		{units.AtLeast(0 * a).AtMost(15 * a).Below(10 * a), ">= 0 A and < 10 A", []units.Current{9}, []units.Current{10}},
		{units.AtLeast(0 * a).Below(10 * a).AtMost(15 * a), "0 A to 15 A", []units.Current{10, 15}, []units.Current{16}},
		// nothing is between limits that have changed places
		{units.Between(15*a, 0*a), "15 A to 0 A", nil, []units.Current{0, 7, 15}},
	} {
		if got := c.bounds.String(); got != c.text {
			t.Errorf("String() = %q, want %q", got, c.text)
		}
		for _, x := range c.in {
			if !c.bounds.Contains(x) || c.bounds.Check("op", "field", x) != nil {
				t.Errorf("%v must contain %v", c.bounds, float64(x))
			}
		}
		for _, x := range append(c.out, inf, -inf, units.Current(math.NaN())) {
			if c.bounds.Contains(x) {
				t.Errorf("%v must not contain %v", c.bounds, float64(x))
			}
			checkOutside(t, c.bounds, x)
		}
	}
}

func checkOutside(t *testing.T, b units.Bounds[units.Current], x units.Current) {
	t.Helper()
	err := b.Check("wire.VoltageDrop", "Current", x)
	var e *units.RangeError
	if !errors.As(err, &e) || !errors.Is(err, units.ErrRange) {
		t.Errorf("Check of %v outside %v = %v, want a RangeError", float64(x), b, err)
		return
	}
	value, _ := e.Value.(units.Current)
	same := value == x || math.IsNaN(float64(x)) && math.IsNaN(float64(value))
	if e.Op != "wire.VoltageDrop" || e.Field != "Current" || !same || e.Allowed != b {
		t.Errorf("Check of %v outside %v = %#v", float64(x), b, e)
	}
}
