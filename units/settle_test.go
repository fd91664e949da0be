package units_test

import (
	"cmp"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/drawbar/units"
)

func TestSettle(t *testing.T) {
	for _, c := range []struct{ x, want float64 }{
		// the noise of a sum goes, what a person typed stays
		{15.000000000000002, 15},
		{0.30000000000000004, 0.3},
		{15.0004, 15.0004},
		{12.3456789, 12.3456789},
		{15.00000004, 15.0000000}, {15.00000005, 15.0000001},
		// nine digits, half away from zero; the tie is the decimal one
		{1234567894, 1234567890}, {1234567895, 1234567900}, {-1234567895, -1234567900},
		{0.5000000005, 0.500000001}, {0.50000000049999, 0.5},
		{999999999.5, 1e9}, {999999999.4, 999999999},
		// zero has no sign
		{0, 0}, {math.Copysign(0, -1), 0},
		// extremes
		{math.MaxFloat64, 1.79769313e308}, {-math.MaxFloat64, -1.79769313e308},
		{math.SmallestNonzeroFloat64, math.SmallestNonzeroFloat64},
		{1.23456789123e-300, 1.23456789e-300}, {1.23456789123e23, 1.23456789e23}, {9.87654321e22, 9.87654321e22},
		{math.Inf(1), math.Inf(1)}, {math.Inf(-1), math.Inf(-1)},
	} {
		if got := units.Settle(c.x); got != c.want || math.Signbit(got) != math.Signbit(c.want) {
			t.Errorf("Settle(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	if got := units.Settle(math.NaN()); !math.IsNaN(got) {
		t.Errorf("Settle(NaN) = %v", got)
	}
	if got := units.Settle(float32(0.1)); got != 0.1 {
		t.Errorf("Settle(float32(0.1)) = %v", got)
	}
	if got := units.Settle(15.000000000000002 * units.Ampere); got != 15*units.Ampere {
		t.Errorf("Settle(15.000000000000002 A) = %v", float64(got))
	}
}

// order lists numbers that settle apart, in order, with neighbours that
// settle to each of them.
func order() [][]float64 {
	inf := math.Inf(1)
	return [][]float64{
		{math.NaN()},
		{-inf},
		{-math.MaxFloat64},
		{-15.0004},
		{-15, -15.000000000000002, -14.999999999999998, -15 * (1 + 1e-12)},
		{-1e-300},
		{-math.SmallestNonzeroFloat64},
		{0, math.Copysign(0, -1)},
		{math.SmallestNonzeroFloat64},
		{1e-300},
		{0.3, 0.30000000000000004},
		{0.999999999},
		{1, 1 - 1e-12, 1 + 1e-12},
		{14.9999999},
		{15, 15.000000000000002, 14.999999999999998, 15 * (1 - 1e-12)},
		{15.0000001},
		{15.0004},
		{1e22, 1e22 * (1 + 1e-12)},
		{1.00000001e22},
		{math.MaxFloat64},
		{inf},
	}
}

// TestCompare compares every pair of order, with both of its functions.
func TestCompare(t *testing.T) {
	for i, as := range order() {
		for j, bs := range order() {
			for _, a := range as {
				for _, b := range bs {
					checkCompare(t, a, b, cmp.Compare(i, j))
				}
			}
		}
	}
}

func checkCompare(t *testing.T, a, b float64, want int) {
	t.Helper()
	if got := units.Compare(a, b); got != want {
		t.Errorf("Compare(%v, %v) = %d, want %d", a, b, got, want)
	}
	if !math.IsNaN(a-a) && !math.IsNaN(b-b) && units.CompareSettled(a, b) != want {
		t.Errorf("CompareSettled(%v, %v) = %d, want %d", a, b, units.CompareSettled(a, b), want)
	}
	exceeds := want > 0 && !math.IsNaN(b)
	if got := units.Exceeds(a, b); got != exceeds {
		t.Errorf("Exceeds(%v, %v) = %t, want %t", a, b, got, exceeds)
	}
}

// TestExceeds holds the sentence that ratings rest on: a load that float64
// noise lifts above its limit stays within it, a real excess does not.
func TestExceeds(t *testing.T) {
	limit := 15 * units.Ampere
	for _, c := range []struct {
		current units.Current
		want    bool
	}{
		{15.000000000000002 * units.Ampere, false},
		{15.00000001 * units.Ampere, false}, // the ninth digit is the last
		{15.0000001 * units.Ampere, true},
		{15.0004 * units.Ampere, true},
		{15 * units.Ampere, false},
		{units.Current(math.NaN()), false},
		{units.Current(math.Inf(1)), true},
	} {
		if got := units.Exceeds(c.current, limit); got != c.want {
			t.Errorf("Exceeds(%v A, 15 A) = %t, want %t", float64(c.current), got, c.want)
		}
	}
	if units.Exceeds(limit, units.Current(math.NaN())) {
		t.Error("nothing exceeds NaN")
	}
	if got := units.Compare(math.NaN(), math.NaN()); got != 0 {
		t.Errorf("Compare(NaN, NaN) = %d", got)
	}
}

func TestMinus(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct{ a, b, want float64 }{
		{15.0004, 15, 0.0004000000000008441}, // as float64 has it
		{15.000000000000002, 15, 0},
		{15, 15.000000000000002, 0},
		{0.30000000000000004, 0.3, 0},
		{-0.30000000000000004, -0.3, 0},
		{3, 5, -2},
		{1e-300, 0, 1e-300},
		{math.MaxFloat64, -math.MaxFloat64, inf},
		// what is no number is not hidden behind a zero
		{nan, nan, nan}, {inf, inf, nan}, {nan, 1, nan}, {1, nan, nan},
		{inf, 1, inf}, {1, inf, -inf},
	} {
		got := units.Minus(c.a, c.b)
		if got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) || got == 0 && math.Signbit(got) {
			t.Errorf("Minus(%v, %v) = %v, want %v", c.a, c.b, got, c.want)
		}
	}
}

// TestCompareFastPath compares the fast path with the slow one, where they
// part: numbers a few parts in 1e8 or 1e9 apart, of every size and sign.
func TestCompareFastPath(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 200_000 {
		x := math.Ldexp(r.Float64()-0.5, r.IntN(2200)-1100)
		y := x * (1 + (r.Float64()-0.5)*math.Pow(10, -float64(r.IntN(12))))
		if r.IntN(8) == 0 {
			y = -y
		}
		if math.IsInf(y, 0) {
			continue
		}
		if got, want := units.Compare(x, y), units.CompareSettled(x, y); got != want {
			t.Fatalf("Compare(%v, %v) = %d, settled %d", x, y, got, want)
		}
	}
}

// TestSettleLaws checks laws over random numbers; FuzzSettle checks the same
// over others.
func TestSettleLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 20_000 {
		x := randomFloat(r)
		checkSettle(t, x, x*(1+(r.Float64()-0.5)*1e-8))
		checkSettle(t, x, randomFloat(r))
		checkSettle(t, math.Float64frombits(r.Uint64()), math.Float64frombits(r.Uint64()))
	}
}

// checkSettle checks, for any x and y, that Settle is idempotent and agrees
// with its twin, that Compare is an order that agrees with it, and that
// neither a Compare nor a printed number moves with a part in 1e12.
func checkSettle(t *testing.T, x, y float64) {
	t.Helper()
	if sum := units.Compare(x, y) + units.Compare(y, x); sum != 0 {
		t.Fatalf("Compare(%v, %v) and its reverse add up to %d", x, y, sum)
	}
	if math.IsNaN(x-x) || math.IsNaN(y-y) {
		return
	}
	settled := units.Settle(x)
	if again := units.Settle(settled); again != settled {
		t.Fatalf("Settle(%v) = %v, settled again %v", x, settled, again)
	}
	if want := settledTwin(x).InexactFloat64(); settled != want {
		t.Fatalf("Settle(%v) = %v, the slow twin has %v", x, settled, want)
	}
	if got, want := units.Compare(x, y), settledTwin(x).Cmp(settledTwin(y)); got != want {
		t.Fatalf("Compare(%v, %v) = %d, the slow twin has %d", x, y, got, want)
	}
	if difference := units.Minus(x, y); (difference == 0) != (units.Compare(x, y) == 0) {
		t.Fatalf("Minus(%v, %v) = %v, Compare says %d", x, y, difference, units.Compare(x, y))
	}
	if nearTie(x) {
		return
	}
	for _, moved := range []float64{x * (1 + 1e-12), x * (1 - 1e-12)} {
		if units.Compare(moved, y) != units.Compare(x, y) || units.Significant(moved, 9) != units.Significant(x, 9) {
			t.Fatalf("%v moved by 1e-12 to %v: a verdict or a printed number moved", x, moved)
		}
	}
}

// nearTie reports whether x is within two parts in 1e12 of where Settle
// rounds the other way, or so small or large that 1e-12 of it is no float64.
func nearTie(x float64) bool {
	if size := math.Abs(x); size < 1e-290 || size > 1e307 {
		return true
	}
	d := shortest(x)
	rest := d.Sub(significantTwin(d, 9)).Abs()
	// A tie is half a step of the ninth digit from where it rounds to.
	magnitude := d.NumDigits() - 1 + int(d.Exponent())
	tie := shortest(5).Shift(int32(magnitude - 9))
	room := d.Abs().Mul(shortest(2e-12))
	return tie.Sub(rest).Abs().Cmp(room) <= 0
}
