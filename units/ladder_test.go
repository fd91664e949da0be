package units_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// ratings are made up, to have uneven gaps.
var ratings = []units.Current{15, 20, 25, 30, 40, 60, 100, 200, 400, 1000}

func ratingLadder(t testing.TB) units.Ladder[units.Current] {
	t.Helper()
	l, err := units.NewLadder("rating", ratings...)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestLadderNextPrev(t *testing.T) {
	l := ratingLadder(t)
	const noStep = -1 // a RangeError
	for _, test := range []struct {
		x          units.Current
		next, prev int
	}{
		{15, 0, 0}, {20, 1, 1}, {1000, 9, 9}, // on a step
		{15.0004, 1, 0}, {14.9996, 0, noStep}, {999.9, 9, 8}, {39, 4, 3}, // between two
		{15.000000000000002, 0, 0}, {14.999999999999998, 0, 0}, {1000.0000000000001, 9, 9}, // float64 noise
		{15.00000004, 0, 0}, {15.00000005, 1, 0}, // nine digits decide, half of the ninth goes up
		{0, 0, noStep}, {-20, 0, noStep}, {1000.1, noStep, 9}, {1e300, noStep, 9}, // beyond an end
		{units.Current(math.NaN()), noStep, noStep},
		{units.Current(math.Inf(1)), noStep, noStep},
		{units.Current(math.Inf(-1)), noStep, noStep},
	} {
		checkStep(t, l, "units.Ladder.Next", l.Next, test.x, test.next, "<= 1 kA")
		checkRow(t, "units.Ladder.NextRow", l.NextRow, test.x, test.next, "<= 1 kA")
		checkStep(t, l, "units.Ladder.Prev", l.Prev, test.x, test.prev, ">= 15 A")
		checkRow(t, "units.Ladder.PrevRow", l.PrevRow, test.x, test.prev, ">= 15 A")
	}
}

func checkStep(t *testing.T, l units.Ladder[units.Current], op string, look func(units.Current) (units.Current, error), x units.Current, want int, allowed string) {
	t.Helper()
	got, err := look(x)
	step, ok := l.At(want)
	if got != step {
		t.Errorf("%s(%v) = %v, want %v", op, x, got, step)
	}
	checkLookUp(t, op, x, err, ok, allowed)
}

func checkRow(t *testing.T, op string, look func(units.Current) (int, error), x units.Current, want int, allowed string) {
	t.Helper()
	got, err := look(x)
	if got != max(want, 0) {
		t.Errorf("%s(%v) = %v, want %v", op, x, got, max(want, 0))
	}
	checkLookUp(t, op, x, err, want >= 0, allowed)
}

// checkLookUp demands no error if ok, else a RangeError that says all.
func checkLookUp(t *testing.T, op string, x units.Current, err error, ok bool, allowed string) {
	t.Helper()
	if ok {
		if err != nil {
			t.Errorf("%s(%v): %v", op, x, err)
		}
		return
	}
	var e *units.RangeError
	if !errors.As(err, &e) {
		t.Errorf("%s(%v): error %v, want a RangeError", op, x, err)
		return
	}
	value, isCurrent := e.Value.(units.Current)
	if same := value == x || value != value && x != x; !isCurrent || !same || e.Op != op || e.Field != "rating" || e.Allowed.String() != allowed {
		t.Errorf("%s(%v): %v, want rating and %s", op, x, err, allowed)
	}
	if _, isBounds := e.Allowed.(units.Bounds[units.Current]); !isBounds {
		t.Errorf("%s(%v): allowed is a %T, want the Bounds", op, x, e.Allowed)
	}
}

func TestLadderBracket(t *testing.T) {
	l := ratingLadder(t)
	for _, test := range []struct {
		x      units.Current
		lo, hi int
		ok     bool
	}{
		{15, 0, 0, true}, {1000, 9, 9, true}, {30.000000000000004, 3, 3, true},
		{17, 0, 1, true}, {15.0004, 0, 1, true}, {999, 8, 9, true}, {59.9, 4, 5, true},
		{14.9, 0, 0, false}, {1001, 0, 0, false}, {units.Current(math.NaN()), 0, 0, false},
		{units.Current(math.Inf(1)), 0, 0, false},
	} {
		lo, hi, err := l.Bracket(test.x)
		if lo != test.lo || hi != test.hi {
			t.Errorf("Bracket(%v) = %d, %d, want %d, %d", test.x, lo, hi, test.lo, test.hi)
		}
		checkLookUp(t, "units.Ladder.Bracket", test.x, err, test.ok, "15 A to 1 kA")
	}
}

func TestLadderSteps(t *testing.T) {
	steps := slices.Clone(ratings)
	l, err := units.NewLadder("rating", steps...)
	if err != nil {
		t.Fatal(err)
	}
	steps[0] = 999 // the ladder has its own
	if got, ok := l.At(0); got != 15 || !ok {
		t.Errorf("At(0) = %v, %t after the caller changed its slice", got, ok)
	}
	if l.Len() != len(ratings) || l.Name() != "rating" || l.String() != "rating: 15 A to 1 kA in 10 steps" {
		t.Errorf("Len = %d, Name = %q, String = %q", l.Len(), l.Name(), l)
	}
	var got []units.Current
	for i, step := range l.All() {
		if at, ok := l.At(i); at != step || !ok {
			t.Errorf("At(%d) = %v, %t, All gives %v", i, at, ok, step)
		}
		got = append(got, step)
	}
	if !slices.Equal(got, ratings) {
		t.Errorf("All gives %v, want %v", got, ratings)
	}
	seen := 0
	for range l.All() {
		if seen++; seen == 3 {
			break
		}
	}
	if seen != 3 {
		t.Errorf("All went on after break: %d", seen)
	}
	for _, i := range []int{-1, len(ratings), math.MaxInt, math.MinInt} {
		if got, ok := l.At(i); got != 0 || ok {
			t.Errorf("At(%d) = %v, %t, want none", i, got, ok)
		}
	}
}

func TestNewLadderErrors(t *testing.T) {
	nan, inf := units.Current(math.NaN()), units.Current(math.Inf(1))
	for name, test := range map[string]struct {
		steps []units.Current
		want  string
	}{
		"none":           {nil, "units.NewLadder: rating = no steps, want one step or more"},
		"NaN":            {[]units.Current{nan}, "units.NewLadder: rating, step 1 = NaN A, want finite"},
		"infinite":       {[]units.Current{15, inf}, "units.NewLadder: rating, step 2 = +Inf A, want finite"},
		"descending":     {[]units.Current{15, 30, 20}, "units.NewLadder: rating, step 3 = 20 A, want above 30 A"},
		"twice":          {[]units.Current{15, 15}, "units.NewLadder: rating, step 2 = 15 A, want above 15 A"},
		"twice, settled": {[]units.Current{15, 15.000000000000002}, "units.NewLadder: rating, step 2 = 15 A, want above 15 A"},
	} {
		l, err := units.NewLadder("rating", test.steps...)
		wantRange(t, name, err)
		if err == nil || err.Error() != test.want || l.Len() != 0 {
			t.Errorf("%s: %v, %v, want %s", name, l, err, test.want)
		}
	}
	set, unset := units.Celsius(20), units.Temperature{}
	for name, steps := range map[string][]units.Temperature{
		"none": nil, "not given": {set, unset}, "descending": {set, units.Celsius(10)}, "NaN": {units.Celsius(math.NaN())},
	} {
		l, err := units.NewTemperatureLadder("ambient", steps...)
		var e *units.RangeError
		if !errors.As(err, &e) || e.Op != "units.NewTemperatureLadder" || !strings.HasPrefix(e.Field, "ambient") || l.Len() != 0 {
			t.Errorf("%s: %v, %v, want a RangeError", name, l, err)
		}
	}
	panics := func(name string, f func()) {
		defer func() {
			if err, ok := recover().(error); !ok || !errors.Is(err, units.ErrRange) {
				t.Errorf("%s panics with %v, want a RangeError", name, err)
			}
		}()
		f()
	}
	panics("MustLadder", func() { units.MustLadder[units.Current]("rating") })
	panics("MustTemperatureLadder", func() { units.MustTemperatureLadder("ambient") })
}

// TestLadderZero quotes the documentation: the zero Ladder has no steps, and
// every look-up in it is a RangeError.
func TestLadderZero(t *testing.T) {
	var l units.Ladder[units.Current]
	_, next := l.Next(15)
	_, nextRow := l.NextRow(15)
	_, prev := l.Prev(15)
	_, prevRow := l.PrevRow(15)
	_, _, bracket := l.Bracket(15)
	for name, err := range map[string]error{"Next": next, "NextRow": nextRow, "Prev": prev, "PrevRow": prevRow, "Bracket": bracket} {
		wantRange(t, name, err)
	}
	if _, ok := l.At(0); ok || l.Len() != 0 || l.Name() != "" || l.String() != "no steps" {
		t.Errorf("zero Ladder: %v", l)
	}
	for range l.All() {
		t.Error("zero Ladder has a step")
	}
}

func TestTemperatureLadder(t *testing.T) {
	// Bands as an ampacity table has them: up to 25 °C, 26-30 °C, 31-35 °C.
	l := units.MustTemperatureLadder("ambient", units.Celsius(25), units.Celsius(30), units.Celsius(35))
	for _, test := range []struct {
		x    units.Temperature
		want int
	}{
		{units.Celsius(-40), 0}, {units.Celsius(0), 0}, {units.Celsius(25), 0}, {units.Fahrenheit(77), 0},
		{units.Celsius(25.5), 1}, {units.Celsius(26), 1}, {units.Fahrenheit(86), 1}, {units.Celsius(30), 1},
		{units.Celsius(30).Add(1e-13), 1}, {units.Celsius(30.4), 2}, {units.Celsius(35), 2},
	} {
		if got, err := l.NextRow(test.x); err != nil || got != test.want {
			t.Errorf("NextRow(%v) = %d, %v, want %d", test.x, got, err, test.want)
		}
	}
	if got, err := l.Prev(units.Celsius(29)); err != nil || got != units.Celsius(25) {
		t.Errorf("Prev(29 °C) = %v, %v", got, err)
	}
	if lo, hi, err := l.Bracket(units.Celsius(27)); err != nil || lo != 0 || hi != 1 {
		t.Errorf("Bracket(27 °C) = %d, %d, %v", lo, hi, err)
	}
	for name, x := range map[string]units.Temperature{"hot": units.Celsius(36), "not given": {}, "NaN": units.Celsius(math.NaN())} {
		_, err := l.Next(x)
		var e *units.RangeError
		if !errors.As(err, &e) || e.Field != "ambient" || e.Allowed.String() != "<= 35 °C" {
			t.Errorf("Next(%s): %v", name, err)
		}
	}
	// 0 °C is a step like any other, and not given is not 0 °C.
	zero := units.MustTemperatureLadder("ambient", units.Celsius(-10), units.Celsius(0), units.Celsius(10))
	if lo, hi, err := zero.Bracket(units.Fahrenheit(32)); err != nil || lo != 1 || hi != 1 {
		t.Errorf("Bracket(32 °F) = %d, %d, %v", lo, hi, err)
	}
	_, _, err := zero.Bracket(units.Temperature{})
	wantRange(t, "Bracket(not given)", err)
}

// slowNext is the obvious look-up that Next must agree with.
func slowNext(steps []units.Current, x units.Current) int {
	for i, step := range steps {
		if units.Compare(step, x) >= 0 {
			return i
		}
	}
	return -1
}

func TestLadderLaws(t *testing.T) {
	laws := map[string]func(l units.Ladder[units.Current], steps []units.Current, x units.Current) bool{
		"Next is the first step that is not below": func(l units.Ladder[units.Current], steps []units.Current, x units.Current) bool {
			i, err := l.NextRow(x)
			want := slowNext(steps, x)
			return (err != nil) == (want < 0) && (err != nil || i == want)
		},
		"Prev is the last step that is not above": func(l units.Ladder[units.Current], steps []units.Current, x units.Current) bool {
			i, err := l.PrevRow(x)
			want := -1
			for j, step := range steps {
				if units.Compare(step, x) <= 0 {
					want = j
				}
			}
			return (err != nil) == (want < 0) && (err != nil || i == want)
		},
		"Bracket is Prev and Next": func(l units.Ladder[units.Current], _ []units.Current, x units.Current) bool {
			lo, hi, err := l.Bracket(x)
			prev, errPrev := l.PrevRow(x)
			next, errNext := l.NextRow(x)
			if err != nil {
				return errPrev != nil || errNext != nil
			}
			return lo == prev && hi == next && hi-lo <= 1
		},
		"a step is its own Next and Prev": func(l units.Ladder[units.Current], steps []units.Current, x units.Current) bool {
			step := steps[int(math.Abs(float64(x)))%len(steps)]
			next, err1 := l.Next(step)
			prev, err2 := l.Prev(step)
			return err1 == nil && err2 == nil && next == step && prev == step
		},
		"float64 noise changes nothing": func(l units.Ladder[units.Current], steps []units.Current, x units.Current) bool {
			step := steps[int(math.Abs(float64(x)))%len(steps)]
			for _, noisy := range []units.Current{step * (1 + 1e-12), step * (1 - 1e-12)} {
				if next, err := l.Next(noisy); err != nil || next != step {
					return false
				}
			}
			return true
		},
	}
	for name, law := range laws {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(7, 8))
			for n := 1; n <= 60; n++ {
				steps := make([]units.Current, n)
				at := units.Current(r.Float64())
				for i := range steps {
					at = units.Settle(at + units.Current(0.001+r.Float64())) // as short as printed ones
					steps[i] = at
				}
				l, err := units.NewLadder("step", steps...)
				if err != nil {
					t.Fatal(err)
				}
				for range 50 {
					if x := units.Current(r.Float64()*float64(n+2) - 1); !law(l, steps, x) {
						t.Fatalf("broken by %v in %v", x, steps)
					}
				}
			}
		})
	}
}

func TestLadderAllocs(t *testing.T) {
	l := ratingLadder(t)
	temperatures := units.MustTemperatureLadder("ambient", units.Celsius(25), units.Celsius(30), units.Celsius(35))
	for name, f := range map[string]func(){
		"Next":             func() { _, _ = l.Next(37) },
		"Next on a step":   func() { _, _ = l.Next(15.000000000000002) },
		"NextRow":          func() { _, _ = l.NextRow(37) },
		"Prev":             func() { _, _ = l.Prev(37) },
		"PrevRow":          func() { _, _ = l.PrevRow(37) },
		"Bracket":          func() { _, _, _ = l.Bracket(37) },
		"Next temperature": func() { _, _ = temperatures.Next(units.Celsius(27)) },
		"At":               func() { _, _ = l.At(3) },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func BenchmarkLadderNext(b *testing.B) {
	l := ratingLadder(b)
	raw := make([]float64, len(ratings))
	for i, step := range ratings {
		raw[i] = float64(step)
	}
	b.Run("n=10/model=ladder", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := l.Next(137); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("n=10/model=ladder on a step", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := l.Next(200); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("n=10/model=raw", func(b *testing.B) {
		b.ReportAllocs()
		x := 137.0
		for b.Loop() {
			i := 0
			for i < len(raw) && raw[i] < x {
				i++
			}
			if i == len(raw) {
				b.Fatal("none")
			}
		}
	})
}
