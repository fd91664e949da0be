package units_test

import (
	"errors"
	"fmt"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

func TestPrintedArithmetic(t *testing.T) {
	ops := map[string]func(p, q units.Printed) (units.Printed, error){
		"+": units.Printed.Add, "-": units.Printed.Sub, "*": units.Printed.Mul,
	}
	for _, test := range []struct{ p, op, q, want string }{
		// Sums keep the finer decimals.
		{"15 A", "+", "0.50 A", "15.50 A"},
		{"0.1", "+", "0.2", "0.3"},
		{"0.770 Ω/kft", "+", "0.230 ohm/kft", "1.000 Ω/kft"},
		{"12.8 V", "-", "12.80 V", "0.00 V"},
		{"-5 °C", "-", "10 °C", "-15 °C"},
		{"1.72e-8", "+", "2e-10", "1.74e-8"},
		{"1.72e-8", "-", "1.72e-8", "0e-10"},
		{"9e3 W", "+", "1500 W", "1.0500e4 W"},
		{"1500 W to the nearest 100", "+", "50 W", "1550 W"},
		{"999999999999999999", "+", "1", "1000000000000000000"},
		// Products drop the zeros that mean nothing.
		{"40 A", "*", "0.80", "32 A"},
		{"40 A", "*", "80 %", "32 A"},
		{"0.80", "*", "40 A", "32 A"},
		{"80 %", "*", "40 A", "32 A"},
		{"125 %", "*", "80 percent", "100 percent"},
		{"2", "*", "50 %", "100 %"},
		{"50 %", "*", "2", "100 %"},
		{"5 ‰", "*", "40 A", "0.2 A"},
		{"0.71", "*", "0.80", "0.568"},
		{"20", "*", "50", "1000"},
		{"1.720e-8 Ω·m", "*", "2", "3.44e-8 Ω·m"},
		{"5e3", "*", "2e3", "1e7"},
		{"-0.5 V", "*", "0", "0 V"},
		{"5e3 V", "*", "0", "0e0 V"},
		{"1000000000 m", "*", "1000000000", "1000000000000000000 m"},
		{"0.123456789", "*", "0.1000000000000", "0.0123456789"},
	} {
		got, err := ops[test.op](printed(t, test.p), printed(t, test.q))
		if err != nil || got.String() != test.want {
			t.Errorf("%s %s %s = %v, %v, want %s", test.p, test.op, test.q, got, err, test.want)
		}
	}
}

// TestPrintedFactors quotes the documentation of Printed: by hand, 40 times
// 0.71 is 28.4, and that times 0.80 is 22.72.
func TestPrintedFactors(t *testing.T) {
	p := printed(t, "40 A")
	for _, factor := range []string{"0.71", "0.80"} {
		var err error
		if p, err = p.Mul(printed(t, factor)); err != nil {
			t.Fatal(err)
		}
	}
	if want := printed(t, "22.72 A"); p != want {
		t.Errorf("40 A times 0.71 times 0.80 = %v, want %v", p, want)
	}
}

func TestPrintedArithmeticErrors(t *testing.T) {
	a, v := printed(t, "30 A"), printed(t, "12 V")
	_, err := a.Add(v)
	wantUnit(t, "units.Printed.Add", err)
	if want := "units.Printed.Add: 12 V is not in A"; err.Error() != want {
		t.Errorf("message %q, want %q", err, want)
	}
	_, err = a.Sub(printed(t, "12"))
	wantUnit(t, "units.Printed.Sub", err)
	_, err = printed(t, "12").Sub(a)
	wantUnit(t, "units.Printed.Sub", err)
	if want := "units.Printed.Sub: 30 A is not a number without a unit"; err.Error() != want {
		t.Errorf("message %q, want %q", err, want)
	}
	_, err = a.Mul(v)
	wantUnit(t, "units.Printed.Mul", err)
	_, err = a.Mul(a)
	wantUnit(t, "units.Printed.Mul", err)
	_, err = a.Cmp(v)
	wantUnit(t, "units.Printed.Cmp", err)
	_, err = printed(t, "50 %").Cmp(printed(t, "0.5"))
	wantUnit(t, "units.Printed.Cmp", err)

	// Beyond the range.
	most := printed(t, "1000000000000000000")
	_, err = most.Add(printed(t, "1"))
	wantRange(t, "10^18 + 1", err)
	_, err = most.Add(printed(t, "0.1"))
	wantRange(t, "10^18 + 0.1", err)
	_, err = most.Mul(printed(t, "2"))
	wantRange(t, "10^18 * 2", err)
	_, err = printed(t, "0.1234567891").Mul(printed(t, "0.1234567891"))
	wantRange(t, "20 digits", err)
	_, err = printed(t, "1e280").Add(printed(t, "1e-300"))
	wantRange(t, "1e280 + 1e-300", err)
	_, err = printed(t, "1e280").Mul(printed(t, "1e280"))
	wantRange(t, "1e560", err)
	_, err = printed(t, "1e-300").Mul(printed(t, "1e-300"))
	wantRange(t, "1e-600", err)

	// Not given.
	var none units.Printed
	for name, f := range map[string]func() error{
		"Add":        func() error { _, err := a.Add(none); return err },
		"Sub":        func() error { _, err := none.Sub(a); return err },
		"Mul":        func() error { _, err := a.Mul(none); return err },
		"Cmp":        func() error { _, err := none.Cmp(none); return err },
		"Round":      func() error { _, err := none.Round(2); return err },
		"ToNearest":  func() error { _, err := none.ToNearest("5"); return err },
		"Mul by one": func() error { _, err := none.Mul(printed(t, "1")); return err },
	} {
		wantRange(t, name, f())
	}
}

func TestPrintedCmp(t *testing.T) {
	for _, test := range []struct {
		p, q string
		want int
	}{
		{"0.77", "0.770", 0}, {"0.77 Ω/kft", "0.770 ohm/kft", 0}, {"1500 W", "1.5e3 W", 0},
		{"1500 W", "1500 W to the nearest 100", 0}, {"-1", "1", -1}, {"0.1", "1e-2", 1},
		{"0.3333333333333333", "0.33333333333333333", -1}, // exactly: settled they are equal
		{"1e280", "1e-300", 1},
	} {
		p, q := printed(t, test.p), printed(t, test.q)
		if got, err := p.Cmp(q); err != nil || got != test.want {
			t.Errorf("(%v).Cmp(%v) = %d, %v, want %d", p, q, got, err, test.want)
		}
		if got, err := q.Cmp(p); err != nil || got != -test.want {
			t.Errorf("(%v).Cmp(%v) = %d, %v, want %d", q, p, got, err, -test.want)
		}
	}
}

func TestPrintedRound(t *testing.T) {
	for _, test := range []struct {
		text   string
		places int
		want   string
	}{
		{"22.72 A", 0, "23 A"}, {"22.72 A", 1, "22.7 A"}, {"22.72 A", 2, "22.72 A"}, {"22.72 A", 5, "22.72 A"},
		{"22.72 A", 1000, "22.72 A"}, {"22.72 A", -1, "20 A to the nearest 10"},
		// Half away from zero.
		{"0.5", 0, "1"}, {"-0.5", 0, "-1"}, {"1.5", 0, "2"}, {"2.5", 0, "3"}, {"-2.5", 0, "-3"},
		{"0.45", 1, "0.5"}, {"0.44999999999999999", 1, "0.4"}, {"-0.4", 0, "0"}, {"9.96 V", 1, "10.0 V"},
		// Before the point.
		{"1549 W", -2, "1500 W to the nearest 100"}, {"1550 W", -2, "1600 W to the nearest 100"},
		{"49 W", -2, "0 W to the nearest 100"}, {"-50 W", -2, "-100 W to the nearest 100"},
		{"999999999999999999", -18, "1000000000000000000 to the nearest 1000000000000000000"},
		// Already that coarse.
		{"1500 W to the nearest 100", -1, "1500 W to the nearest 100"},
		{"1500 W to the nearest 100", -2, "1500 W to the nearest 100"},
		{"1525.0 to the nearest 2.5", 0, "1525.0 to the nearest 2.5"},
		{"1525.0 to the nearest 2.5", -1, "1530 to the nearest 10"},
		// Powers of ten.
		{"1.549e3 W", -2, "1.5e3 W"}, {"1.549e3 W", 0, "1.549e3 W"}, {"1.549e3 W", -4, "0e4 W"},
		{"1.725e-8", 10, "1.73e-8"}, {"9.96e3", -2, "1.00e4"}, {"5e279", -280, "1e280"},
	} {
		got, err := printed(t, test.text).Round(test.places)
		if err != nil || got.String() != test.want {
			t.Errorf("(%s).Round(%d) = %v, %v, want %s", test.text, test.places, got, err, test.want)
		}
		roundTripPrinted(t, got)
	}
	for _, places := range []int{-19, -1000, -1 << 63} {
		_, err := printed(t, "22.72 A").Round(places)
		wantRange(t, fmt.Sprint("Round ", places), err)
	}
	_, err := printed(t, "2e3").Round(-281)
	wantRange(t, "Round -281", err)
}

// randomPrinted returns a number of 1 to 9 digits without unit, in plain
// digits or with a power of ten.
func randomPrinted(r *rand.Rand) units.Printed {
	digits := fmt.Sprint(r.Int64N(1 + int64(1e9)>>r.IntN(30)))
	if places := r.IntN(10); places > 0 {
		digits = strings.Repeat("0", max(0, places+1-len(digits))) + digits
		digits = digits[:len(digits)-places] + "." + digits[len(digits)-places:]
	}
	if r.IntN(2) == 0 {
		digits = "-" + digits
	}
	if r.IntN(3) == 0 {
		digits += fmt.Sprint("e", r.IntN(20)-10)
	}
	return units.MustPrinted(digits, "")
}

// rational returns p as an exact rational, from its digits.
func rational(t *testing.T, p units.Printed) *big.Rat {
	t.Helper()
	x, ok := new(big.Rat).SetString(p.Digits())
	if !ok {
		t.Fatalf("%v is no number", p)
	}
	return x
}

func TestPrintedLaws(t *testing.T) {
	type numbers struct{ a, b, c units.Printed }
	must := func(p units.Printed, err error) units.Printed {
		if err != nil {
			var e *units.RangeError
			if !errors.As(err, &e) {
				t.Fatal(err)
			}
			return units.Printed{} // a product of three may need too many digits
		}
		return p
	}
	compare := func(p, q units.Printed) int {
		c, err := p.Cmp(q)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	laws := map[string]func(n numbers) bool{
		"a sum commutes, as printed":     func(n numbers) bool { return must(n.a.Add(n.b)) == must(n.b.Add(n.a)) },
		"a product commutes, as printed": func(n numbers) bool { return must(n.a.Mul(n.b)) == must(n.b.Mul(n.a)) },
		"a sum associates": func(n numbers) bool {
			ab, bc := must(n.a.Add(n.b)), must(n.b.Add(n.c))
			if !ab.IsSet() || !bc.IsSet() {
				return true
			}
			left, right := must(ab.Add(n.c)), must(n.a.Add(bc))
			return !left.IsSet() || !right.IsSet() || compare(left, right) == 0
		},
		"Sub undoes Add": func(n numbers) bool {
			ab := must(n.a.Add(n.b))
			return !ab.IsSet() || compare(must(ab.Sub(n.b)), n.a) == 0
		},
		"Add agrees with rationals": func(n numbers) bool {
			ab := must(n.a.Add(n.b))
			return !ab.IsSet() || rational(t, ab).Cmp(new(big.Rat).Add(rational(t, n.a), rational(t, n.b))) == 0
		},
		"Mul agrees with rationals": func(n numbers) bool {
			ab := must(n.a.Mul(n.b))
			return !ab.IsSet() || rational(t, ab).Cmp(new(big.Rat).Mul(rational(t, n.a), rational(t, n.b))) == 0
		},
		"Cmp agrees with rationals": func(n numbers) bool {
			return compare(n.a, n.b) == rational(t, n.a).Cmp(rational(t, n.b)) && compare(n.a, n.b) == -compare(n.b, n.a)
		},
		"Round moves by half a resolution at most": func(n numbers) bool {
			r, err := n.a.Round(2)
			if err != nil {
				return false
			}
			moved := new(big.Rat).Sub(rational(t, r), rational(t, n.a))
			return moved.Abs(moved).Cmp(new(big.Rat).Mul(rational(t, r.Resolution()), big.NewRat(1, 2))) <= 0
		},
		"Round is idempotent": func(n numbers) bool {
			r := must(n.a.Round(1))
			return must(r.Round(1)) == r
		},
		"the text of a result reads back": func(n numbers) bool {
			for _, p := range []units.Printed{must(n.a.Add(n.b)), must(n.a.Mul(n.b)), must(n.a.Round(-1)), n.a.Resolution()} {
				if p.IsSet() {
					roundTripPrinted(t, p)
				}
			}
			return true
		},
	}
	for name, law := range laws {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(3, 4))
			for range 500 {
				n := numbers{randomPrinted(r), randomPrinted(r), randomPrinted(r)}
				if !law(n) {
					t.Fatalf("broken by %v, %v, %v", n.a, n.b, n.c)
				}
			}
		})
	}
}
