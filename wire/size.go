package wire

import (
	"fmt"

	"example.com/drawbar/units"
)

// A Size is a standard conductor size: American wire gauge, thousands of
// circular mils, or square millimetres. It is small, comparable and usable as
// a map key. The zero Size is not a size and every calculator refuses it.
//
// A gauge is not an area in disguise: 4 AWG and 4/0 AWG are different sizes,
// and neither is 4 mm². The boat and vehicle cable that SAE J1127 and J1128
// describe has 3 to 12 % less metal than the AWG of the same number and is
// not covered.
type Size struct {
	system system
	// n is the gauge number (0 for 1/0, -3 for 4/0), the thousands of
	// circular mils, or hundredths of a square millimetre.
	n int32
}

type system uint8

const (
	noSystem system = iota
	gauge
	kcmil
	metric
)

// The gauges of ASTM B258 that wiring of this kind uses.
const (
	thickestGauge = -3 // 4/0
	thinnestGauge = 40
)

// AWG returns American wire gauge n: 40 to 1 for themselves, 0 for 1/0, -1
// for 2/0, -2 for 3/0, -3 for 4/0. Any other n gives a Size that is not
// valid.
func AWG(n int) Size {
	if n < thickestGauge || n > thinnestGauge {
		return Size{}
	}
	return Size{gauge, int32(n)}
}

// Aught returns American wire gauge n/0, n from 1 to 4: Aught(4) is 4/0. Any
// other n gives a Size that is not valid.
func Aught(n int) Size {
	if n < 1 {
		return Size{}
	}
	return AWG(1 - n)
}

// Kcmil returns the size of n thousand circular mils: 250, 300, 350, 400 or
// 500. Any other n gives a Size that is not valid.
func Kcmil(n int) Size {
	for _, s := range stockKcmil {
		if s == n {
			return Size{kcmil, int32(n)}
		}
	}
	return Size{}
}

// Metric returns the size of so many square millimetres, one of the nominal
// areas of IEC 60228 from 0.5 to 120: Metric(2.5*units.SquareMillimetre). Any
// other area gives a Size that is not valid.
func Metric(nominal units.Area) Size {
	mm2 := units.In(nominal, units.SquareMillimetre)
	for _, r := range iec60228 {
		if units.Compare(mm2, float64(r.hundredths)/100) == 0 {
			return Size{metric, r.hundredths}
		}
	}
	return Size{}
}

// stockKcmil is the thicker stock of NEC Chapter 9 Table 8, which names them
// by area.
var stockKcmil = [...]int{250, 300, 350, 400, 500}

// IsValid reports whether s is a size.
func (s Size) IsValid() bool { return s.system != noSystem }

// Gauge returns the gauge number n of s as [AWG] takes it, and whether s is a
// gauge.
func (s Size) Gauge() (n int, ok bool) { return int(s.n), s.system == gauge }

// IsMetric reports whether s is named in square millimetres.
func (s Size) IsMetric() bool { return s.system == metric }

// Compare returns -1, 0 or +1 as the metal area of s is smaller than, equal
// to or larger than that of t, settled. Sizes that are not valid come first.
func (s Size) Compare(t Size) int { return units.Compare(s.Area(), t.Area()) }

// check returns a [*units.RangeError] if s is not a size.
func (s Size) check(op, field string) error {
	if s.IsValid() {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: s, Allowed: sizeRange{}}
}

// sizeRange says in words which sizes there are.
type sizeRange struct{}

// String names the sizes.
func (sizeRange) String() string {
	return "40 AWG to 4/0 AWG, 250 to 500 kcmil, or 0.5 to 120 mm² of IEC 60228"
}

var _ fmt.Stringer = sizeRange{}
