package units_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/drawbar/units"
)

const minutesOfYear = 365 * 24 * 60

// minutes returns n one-minute values from newYear on, repeatably random,
// between low and high.
func minutes(n int, low, high units.Power) units.Series[units.Power] {
	r := rand.New(rand.NewPCG(1, uint64(n)))
	s := units.Series[units.Power]{Start: newYear, Step: time.Minute, Values: make([]units.Power, n)}
	for i := range s.Values {
		s.Values[i] = low + units.Power(r.Float64()*float64(high-low))
	}
	return s
}

// like returns a series of the shape of s with values of its own, all 0.
func like[T any](s units.Series[T]) units.Series[T] {
	s.Values = make([]T, len(s.Values))
	return s
}

func TestSeriesArithmetic(t *testing.T) {
	a, b := hours(100, -5, 0), hours(20, 7, 0.5)
	for name, want := range map[string][]units.Power{
		"AddTo": {120, 2, 0.5}, "SubTo": {80, -12, -0.5}, "ScaleTo": {50, -2.5, 0},
	} {
		dst := like(a)
		if err := arithmetic[name](dst, a, b); err != nil || !slices.Equal(dst.Values, want) {
			t.Errorf("%s(%v, %v) = %v, %v, want %v", name, a.Values, b.Values, dst.Values, err, want)
		}
	}
}

// arithmetic are the step-by-step operations, ScaleTo without its second
// term.
var arithmetic = map[string]func(dst, a, b units.Series[units.Power]) error{
	"AddTo": units.AddTo[units.Power],
	"SubTo": units.SubTo[units.Power],
	"ScaleTo": func(dst, a, _ units.Series[units.Power]) error {
		return units.ScaleTo(dst, a, 50*units.Percent)
	},
}

// "The Values of dst may be those of a or b."
func TestSeriesArithmeticInPlace(t *testing.T) {
	for name, op := range arithmetic {
		a, b := minutes(100, -10, 10), minutes(101, -10, 10)
		b.Values = b.Values[:100]
		want := like(a)
		if err := op(want, a, b); err != nil {
			t.Fatal(name, err)
		}
		onA, onB := like(a), like(b)
		copy(onA.Values, a.Values)
		copy(onB.Values, b.Values)
		if err := op(onA, onA, b); err != nil || !slices.Equal(onA.Values, want.Values) {
			t.Errorf("%s(a, a, b) = %v, differs from dst apart", name, err)
		}
		if err := op(onB, a, onB); err != nil || !slices.Equal(onB.Values, want.Values) {
			t.Errorf("%s(b, a, b) = %v, differs from dst apart", name, err)
		}
	}
	a := hours(1, 2, 3)
	if err := units.AddTo(a, a, a); err != nil || !slices.Equal(a.Values, []units.Power{2, 4, 6}) {
		t.Errorf("AddTo(a, a, a) = %v, %v", a.Values, err)
	}
}

// "memory that overlaps without beginning together is a *RangeError"
func TestSeriesArithmeticOverlap(t *testing.T) {
	memory := make([]units.Power, 10)
	part := func(i int) units.Series[units.Power] { return hours(memory[i : i+4]...) }
	apart := hours(0, 0, 0, 0)
	for name, op := range arithmetic {
		for _, test := range []struct {
			what      string
			dst, a, b units.Series[units.Power]
			want      string // "" is no error
		}{
			{"a one before dst", part(1), part(0), apart, "a"},
			{"a one after dst", part(0), part(1), apart, "a"},
			{"b one before dst", part(1), apart, part(0), "b"},
			{"b three after dst", part(0), apart, part(3), "b"},
			{"b overlaps, a is dst", part(0), part(0), part(3), "b"},
			{"next to each other", part(0), part(4), apart, ""},
			{"next to each other", part(4), apart, part(0), ""},
		} {
			if name == "ScaleTo" && test.want == "b" {
				continue // has no b
			}
			err := op(test.dst, test.a, test.b)
			var got *units.RangeError
			switch {
			case test.want == "":
				if err != nil {
					t.Errorf("%s, %s: %v", name, test.what, err)
				}
			case !errors.As(err, &got) || got.Op != "units."+name || got.Field != "dst.Values" ||
				got.Value != "overlapping "+test.want+".Values":
				t.Errorf("%s, %s: %v, want a RangeError about %s", name, test.what, err, test.want)
			}
		}
	}
	err := units.AddTo(part(1), part(0), apart)
	if want := "units.AddTo: dst.Values = overlapping a.Values, want memory of their own"; err.Error() != want {
		t.Errorf("error = %q, want %q", err, want)
	}
}

func TestSeriesArithmeticShapes(t *testing.T) {
	good := hours(1, 2, 3)
	later := hours(1, 2, 3)
	later.Start = newYear.Add(time.Hour)
	halves := hours(1, 2, 3)
	halves.Step = 30 * time.Minute
	for name, op := range arithmetic {
		for what, other := range map[string]units.Series[units.Power]{
			"shorter": hours(1, 2), "longer": hours(1, 2, 3, 4), "empty": hours(), "later": later, "half hours": halves,
		} {
			dst := hours(7, 7, 7)
			refuse := func(field string, err error) {
				t.Helper()
				want := units.ShapeError{Op: "units." + name, Field: field, Value: other.Shape(), Want: dst.Shape()}
				var got *units.ShapeError
				if !errors.As(err, &got) || *got != want {
					t.Errorf("%s with %s %s = %v, want %v", name, field, what, err, &want)
				}
				if !slices.Equal(dst.Values, []units.Power{7, 7, 7}) {
					t.Errorf("%s with %s %s wrote %v", name, field, what, dst.Values)
				}
			}
			refuse("a", op(dst, other, good))
			if name != "ScaleTo" {
				refuse("b", op(dst, good, other))
			}
		}
		none := hours(1)
		none.Step = 0
		var got *units.RangeError
		if err := op(none, none, none); !errors.As(err, &got) || got.Field != "dst.Step" {
			t.Errorf("%s without a step = %v, want a RangeError", name, err)
		}
		if err := op(hours(), hours(), hours()); err != nil {
			t.Errorf("%s of empty series = %v", name, err)
		}
	}
}

// The shape is an instant, not the zone it is written in.
func TestSeriesArithmeticZones(t *testing.T) {
	a, b := hours(1, 2), hours(3, 4)
	b.Start = b.Start.In(loadZone(t, "Asia/Tokyo"))
	dst := like(a)
	if err := units.AddTo(dst, a, b); err != nil || !slices.Equal(dst.Values, []units.Power{4, 6}) {
		t.Errorf("AddTo over two zones = %v, %v", dst.Values, err)
	}
}

func TestSeriesArithmeticNotFinite(t *testing.T) {
	inf, nan := units.Power(math.Inf(1)), units.Power(math.NaN())
	a, dst := hours(1, nan, inf, inf), hours(0, 0, 0, 0)
	if err := units.SubTo(dst, a, hours(1, 1, 1, inf)); err != nil {
		t.Fatal(err)
	}
	if v := dst.Values; v[0] != 0 || v[1] == v[1] || v[2] != inf || v[3] == v[3] {
		t.Errorf("SubTo = %v, want 0, NaN, +Inf, NaN as float64 has it", v)
	}
}

func TestSeriesLaws(t *testing.T) {
	const rounding = 4e-16 // of the larger term: two roundings
	a, b := minutes(5000, 0, 2000), minutes(5001, 0, 2000)
	b.Values = b.Values[:5000]
	for name, law := range map[string]func(sum, back units.Series[units.Power]) error{
		"adding, then subtracting": func(sum, back units.Series[units.Power]) error {
			return errors.Join(units.AddTo(sum, a, b), units.SubTo(back, sum, b))
		},
		"subtracting, then adding": func(sum, back units.Series[units.Power]) error {
			return errors.Join(units.SubTo(sum, a, b), units.AddTo(back, b, sum))
		},
		"three times, then a third": func(sum, back units.Series[units.Power]) error {
			return errors.Join(units.ScaleTo(sum, a, 3), units.ScaleTo(back, sum, units.Ratio(1)/3))
		},
		"twice is with itself": func(sum, back units.Series[units.Power]) error {
			return errors.Join(units.AddTo(sum, a, a), units.ScaleTo(back, sum, 0.5))
		},
	} {
		sum, back := like(a), like(a)
		if err := law(sum, back); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if slices.Equal(sum.Values, a.Values) {
			t.Errorf("%s: nothing happened", name)
		}
		for i, x := range a.Values {
			scale := math.Max(float64(x), float64(b.Values[i]))
			if d := math.Abs(float64(back.Values[i] - x)); d > rounding*scale {
				t.Fatalf("%s: value %d comes back as %v, was %v", name, i, float64(back.Values[i]), float64(x))
			}
		}
	}
}

// Series of float32 and of plain float64 are series too.
func TestSeriesOfFloats(t *testing.T) {
	a := units.Series[float32]{Start: newYear, Step: time.Second, Values: []float32{1, 2}}
	if err := units.ScaleTo(a, a, 1.5); err != nil || !slices.Equal(a.Values, []float32{1.5, 3}) {
		t.Errorf("ScaleTo = %v, %v", a.Values, err)
	}
	half := units.Series[float32]{Start: newYear, Step: 2 * time.Second, Values: make([]float32, 1)}
	if err := units.ResampleTo(half, a); err != nil || half.Values[0] != 2.25 {
		t.Errorf("ResampleTo = %v, %v", half.Values, err)
	}
}
