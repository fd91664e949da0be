package units_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

func FuzzPrinted(f *testing.F) {
	for _, s := range []string{"0.770 Ω/kft", "30 A", "-1.72e-8 Ω·m", "1500 W to the nearest 100", "1.5e3 to the nearest 5e2",
		"0", "-0.0 %", "1000000000000000000e280", "1e-300", ".5", "5.", "120°", "9 ohms per 1000 ft", "1 e5", "5 to the nearest 5 to the nearest 5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, err := units.ParsePrinted(s)
		if err != nil {
			if !errors.Is(err, units.ErrSyntax) && !errors.Is(err, units.ErrRange) {
				t.Fatalf("ParsePrinted(%q): untyped error %v", s, err)
			}
			if p != (units.Printed{}) {
				t.Fatalf("ParsePrinted(%q) = %v beside %v", s, p, err)
			}
			return
		}
		roundTripPrinted(t, p)
		x := p.Float()
		if x-x != 0 || !p.Covers(x) {
			t.Errorf("%v does not cover its own %v", p, x)
		}
		// The digits are those of the input, whatever stands around them.
		if kept := strings.TrimLeft(strings.TrimLeft(p.Digits(), "-"), "0"); !strings.Contains(strings.ReplaceAll(s, "E", "e"), strings.SplitN(kept, "e", 2)[0]) {
			t.Errorf("ParsePrinted(%q).Digits() = %q", s, p.Digits())
		}
		if q, err := units.NewPrinted(p.Digits(), p.Unit()); err != nil || q.Digits() != p.Digits() || q.Unit() != p.Unit() {
			t.Errorf("NewPrinted(%q, %q) = %v, %v", p.Digits(), p.Unit(), q, err)
		}
		if !p.Resolution().Covers(p.Resolution().Float()) || p.Resolution().Float() <= 0 {
			t.Errorf("(%v).Resolution() = %v", p, p.Resolution())
		}
		checkPrintedMath(t, p)
	})
}

// checkPrintedMath demands of any p what arithmetic promises.
func checkPrintedMath(t *testing.T, p units.Printed) {
	t.Helper()
	if d, err := p.Sub(p); err != nil || d.Float() != 0 {
		t.Errorf("%v minus itself = %v, %v", p, d, err)
	}
	if c, err := p.Cmp(p); err != nil || c != 0 {
		t.Errorf("%v compared with itself = %d, %v", p, c, err)
	}
	one := units.MustPrinted("1", "")
	if q, err := p.Mul(one); err != nil || q.Unit() != p.Unit() || q.Float() != p.Float() {
		t.Errorf("1 times %v = %v, %v", p, q, err)
	}
	for places := -2; places <= 3; places++ {
		q, err := p.Round(places)
		if err != nil {
			t.Fatalf("(%v).Round(%d): %v", p, places, err)
		}
		if again, err := q.Round(places); err != nil || again != q {
			t.Errorf("(%v).Round(%d) = %v, and again %v, %v", p, places, q, again, err)
		}
		if !q.Covers(p.Float()) {
			t.Errorf("(%v).Round(%d) = %v, which does not cover it", p, places, q)
		}
	}
}
