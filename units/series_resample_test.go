package units_test

import (
	"encoding/binary"
	"errors"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/drawbar/units"
)

// kept is how near an integral must come to what it was, relative to the
// integral of the absolute values.
const kept = 1e-12

// grid returns a series of n zeros.
func grid(start time.Time, step time.Duration, n int) units.Series[units.Power] {
	return units.Series[units.Power]{Start: start, Step: step, Values: make([]units.Power, n)}
}

// exactMeans is the slow twin of ResampleTo: for each step of dst, the sum
// over all of src of value times overlap, over the step, in fractions. A
// second result is the same of the absolute values.
func exactMeans(dst, src units.Series[units.Power]) (means, sizes []*big.Rat) {
	nanoseconds := func(d time.Duration) *big.Rat { return new(big.Rat).SetInt64(int64(d)) }
	for i := range dst.Values {
		mean, size := new(big.Rat), new(big.Rat)
		for j, x := range src.Values {
			from, to := dst.Time(i), dst.Time(i+1)
			if src.Time(j).After(from) {
				from = src.Time(j)
			}
			if src.Time(j + 1).Before(to) {
				to = src.Time(j + 1)
			}
			if overlap := to.Sub(from); overlap > 0 {
				part := new(big.Rat).Mul(new(big.Rat).SetFloat64(float64(x)), nanoseconds(overlap))
				mean.Add(mean, part)
				size.Add(size, part.Abs(part))
			}
		}
		means = append(means, mean.Quo(mean, nanoseconds(dst.Step)))
		sizes = append(sizes, size.Quo(size, nanoseconds(dst.Step)))
	}
	return means, sizes
}

func TestResampleTo(t *testing.T) {
	src := hours(100, 200, 400, 0)
	for _, test := range []struct {
		name  string
		after time.Duration
		step  time.Duration
		want  []units.Power
	}{
		// Worked by hand.
		{"same grid", 0, time.Hour, []units.Power{100, 200, 400, 0}},
		{"up, halves", 0, 30 * time.Minute, []units.Power{100, 100, 200, 200, 400, 400, 0, 0}},
		{"down, two hours", 0, 2 * time.Hour, []units.Power{150, 200}},
		{"down, whole", 0, 4 * time.Hour, []units.Power{175}},
		{"a part of it", time.Hour, time.Hour, []units.Power{200, 400}},
		{"inside one step", 70 * time.Minute, 10 * time.Minute, []units.Power{200, 200}},
		{"shifted by half", 30 * time.Minute, time.Hour, []units.Power{150, 300, 200}},
		{"shifted by a quarter", 15 * time.Minute, time.Hour, []units.Power{125, 250, 300}},
		{"an hour and a half", 0, 90 * time.Minute, []units.Power{400. / 3, 1000. / 3}},
		{"head, whole and tail", 30 * time.Minute, 150 * time.Minute, []units.Power{260}}, // (50+200+400)/2.5
		{"ends with a step", 3*time.Hour - 1, 1, []units.Power{400}},
		{"begins with a step", 3 * time.Hour, 1, []units.Power{0}},
		{"nothing wanted", time.Hour, time.Hour, nil},
	} {
		dst := grid(newYear.Add(test.after), test.step, len(test.want))
		if err := units.ResampleTo(dst, src); err != nil || !slices.Equal(dst.Values, test.want) {
			t.Errorf("%s: ResampleTo = %v, %v, want %v", test.name, dst.Values, err, test.want)
		}
	}
}

func TestResampleToAgreesWithTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	steps := []time.Duration{1, 7, 1000, time.Minute, 7 * time.Minute, time.Hour, 90*time.Minute + 1, 25 * time.Hour}
	for range 2000 {
		src := grid(newYear, steps[r.IntN(len(steps))], 1+r.IntN(20))
		for i := range src.Values {
			src.Values[i] = units.Power(r.NormFloat64() * 1000)
		}
		span := src.End().Sub(src.Start)
		after := time.Duration(r.Int64N(int64(span)))
		step := 1 + time.Duration(r.Int64N(int64(span-after)))
		dst := grid(newYear.Add(after), step, min(40, int((span-after)/step)))
		if err := units.ResampleTo(dst, src); err != nil {
			t.Fatalf("ResampleTo(%v, %v) = %v", dst.Shape(), src.Shape(), err)
		}
		sameMeans(t, dst, src)
	}
}

// sameMeans checks dst, value by value and in total, against the twin.
func sameMeans(t *testing.T, dst, src units.Series[units.Power]) {
	t.Helper()
	means, sizes := exactMeans(dst, src)
	sum, total, size := new(big.Rat), new(big.Rat), new(big.Rat)
	for i, got := range dst.Values {
		if !near(float64(got), means[i], sizes[i]) {
			t.Fatalf("ResampleTo(%v, %v): value %d = %v, want %s", dst.Shape(), src.Shape(), i, float64(got), means[i].FloatString(20))
		}
		sum.Add(sum, new(big.Rat).SetFloat64(float64(got)))
		total.Add(total, means[i])
		size.Add(size, sizes[i])
	}
	if got, _ := sum.Float64(); !near(got, total, size) {
		t.Fatalf("ResampleTo(%v, %v): sum %v, want %s", dst.Shape(), src.Shape(), got, total.FloatString(20))
	}
}

// near reports whether got is want within kept, relative to size. Numbers
// near the smallest float64 have fewer digits.
func near(got float64, want, size *big.Rat) bool {
	d := new(big.Rat).Sub(new(big.Rat).SetFloat64(got), want)
	off, _ := d.Abs(d).Float64()
	most, _ := size.Float64()
	return off <= kept*most+100*math.SmallestNonzeroFloat64
}

func TestResampleLaws(t *testing.T) {
	src := minutes(7*24*60, -500, 2000)
	energy := func(s units.Series[units.Power]) float64 { return float64(units.EnergyOf(s)) }
	magnitude := like(src)
	for i, x := range src.Values {
		magnitude.Values[i] = units.Power(math.Abs(float64(x)))
	}
	size := energy(magnitude)
	for _, step := range []time.Duration{time.Second, 7 * time.Second, time.Minute, 7 * time.Minute, 15 * time.Minute,
		time.Hour, 90 * time.Minute, 24 * time.Hour, 7 * 24 * time.Hour} {
		dst := grid(src.Start, step, int(src.End().Sub(src.Start)/step))
		if err := units.ResampleTo(dst, src); err != nil {
			t.Fatal(err)
		}
		// The energy is kept.
		if d := math.Abs(energy(dst) - energy(src)); d > kept*size {
			t.Errorf("step %v: energy changes by %.2g of %.3g", step, d, size)
		}
		// A mean is within its values.
		low, _, _ := units.MinOf(src)
		high, _, _ := units.PeakOf(src)
		for i, x := range dst.Values {
			if x < low || x > high {
				t.Fatalf("step %v: value %d = %v is outside %v to %v", step, i, x, low, high)
			}
		}
		// Up and down again is what it was; a second time down changes
		// nothing.
		back := like(src)
		if err := units.ResampleTo(back, dst); err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(energy(back) - energy(src)); d > kept*size {
			t.Errorf("step %v and back: energy changes by %.2g of %.3g", step, d, size)
		}
		if time.Minute%step == 0 {
			for i, x := range back.Values {
				if d := math.Abs(float64(x - src.Values[i])); d > kept*2000 {
					t.Fatalf("step %v and back: value %d = %v, was %v", step, i, x, src.Values[i])
				}
			}
		}
	}
	// It is linear: the sum resampled is the sum of the resampled.
	other := minutes(7*24*60+1, 0, 1000)
	other.Values = other.Values[:src.Len()]
	sum, a := like(src), grid(src.Start.Add(100*time.Second), 7*time.Minute+1, 1000)
	b, c := like(a), like(a)
	if err := errors.Join(units.AddTo(sum, src, other), units.ResampleTo(a, src), units.ResampleTo(b, other),
		units.ResampleTo(c, sum), units.AddTo(b, a, b)); err != nil {
		t.Fatal(err)
	}
	for i := range c.Values {
		if d := math.Abs(float64(c.Values[i] - b.Values[i])); d > kept*3000 {
			t.Fatalf("value %d: sum resampled %v, sum of resampled %v", i, c.Values[i], b.Values[i])
		}
	}
}

// "A NaN or an infinity of src reaches the steps of dst that it overlaps and
// no others."
func TestResampleToNotFinite(t *testing.T) {
	for _, bad := range []units.Power{units.Power(math.NaN()), units.Power(math.Inf(1)), units.Power(math.Inf(-1))} {
		src := hours(1, 1, 1, bad, 1, 1)
		for _, test := range []struct {
			step time.Duration
			bad  []bool
		}{
			{3 * time.Hour, []bool{false, true}},
			{90 * time.Minute, []bool{false, false, true, false}},
			{2 * time.Hour, []bool{false, true, false}},
			{30 * time.Minute, []bool{5: false, 6: true, 7: true, 11: false}},
		} {
			dst := grid(newYear, test.step, len(test.bad))
			if err := units.ResampleTo(dst, src); err != nil {
				t.Fatal(err)
			}
			for i, x := range dst.Values {
				if test.bad[i] && !(x == bad || x != x) || !test.bad[i] && x != 1 {
					t.Errorf("%v in hour 3, step %v: value %d = %v", bad, test.step, i, x)
				}
			}
		}
	}
}

func TestResampleToErrors(t *testing.T) {
	src := hours(1, 2, 3)
	memory := make([]units.Power, 6)
	shared := hours(memory[:3]...)
	for _, test := range []struct {
		name     string
		dst, src units.Series[units.Power]
		field    string
	}{
		// No silent extrapolation.
		{"begins too early", grid(newYear.Add(-1), time.Hour, 1), src, "dst"},
		{"ends too late", grid(newYear.Add(1), time.Hour, 3), src, "dst"},
		{"too long", grid(newYear, time.Hour, 4), src, "dst"},
		{"long before", grid(newYear.AddDate(-400, 0, 0), time.Hour, 3), src, "dst"},
		{"long after", grid(newYear.AddDate(400, 0, 0), time.Hour, 3), src, "dst"},
		{"longer than a Duration can be late", grid(newYear, math.MaxInt64, 1), src, "dst"},
		{"src empty", grid(newYear, time.Hour, 1), hours(), "dst"},
		// No series.
		{"dst without a step", grid(newYear, 0, 3), src, "dst.Step"},
		{"dst backwards", grid(newYear, -time.Hour, 3), src, "dst.Step"},
		{"src without a step", grid(newYear, time.Hour, 3), grid(newYear, 0, 3), "src.Step"},
		{"dst spans too long", tooLong(3), src, "dst.Len"},
		{"src spans too long", grid(newYear, time.Hour, 3), tooLong(3), "src.Len"},
		{"dst at no time", grid(time.Unix(math.MaxInt64, 0), time.Hour, 3), src, "dst.Start"},
		// Memory.
		{"dst is src", shared, shared, "dst.Values"},
		{"dst is a part of src", hours(memory[:2]...), shared, "dst.Values"},
		{"dst overlaps src", hours(memory[2:4]...), shared, "dst.Values"},
	} {
		before := slices.Clone(test.dst.Values)
		err := units.ResampleTo(test.dst, test.src)
		var got *units.RangeError
		if !errors.As(err, &got) || got.Op != "units.ResampleTo" || got.Field != test.field || !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v, want a RangeError of %s", test.name, err, test.field)
		}
		if !slices.Equal(test.dst.Values, before) {
			t.Errorf("%s: dst was changed", test.name)
		}
		if test.field == "dst" && (got.Value != test.dst.Span() || got.Allowed != test.src.Span()) {
			t.Errorf("%s: %v does not name both spans", test.name, err)
		}
	}
	// Neighbours in one array do not share memory.
	if err := units.ResampleTo(hours(memory[3:]...), shared); err != nil {
		t.Errorf("neighbours in one array: %v", err)
	}
}

// FuzzResample wants a typed error, or the means and with them the integral.
func FuzzResample(f *testing.F) {
	raw := func(watts ...float64) (b []byte) {
		for _, x := range watts {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
		return b
	}
	f.Add(int64(0), int64(time.Hour), int64(time.Minute), uint8(60), raw(100, 0, 2))
	f.Add(int64(-1), int64(time.Hour), int64(time.Hour), uint8(1), raw(1))
	f.Add(int64(5*time.Minute), int64(7*time.Minute), int64(time.Hour), uint8(2), raw(1, 2, 3, 4, -5, 6, 7, 8, 9, 10, 1e300, 5e-324))
	f.Add(int64(0), int64(math.MaxInt64), int64(1), uint8(3), raw(1))
	f.Add(int64(0), int64(0), int64(-5), uint8(3), raw(math.NaN(), math.Inf(1)))
	f.Fuzz(func(t *testing.T, after, srcStep, dstStep int64, n uint8, watts []byte) {
		src := grid(newYear, time.Duration(srcStep), min(len(watts)/8, 64))
		finite := true
		for i := range src.Values {
			x := math.Float64frombits(binary.LittleEndian.Uint64(watts[8*i:]))
			finite = finite && math.Abs(x) < 1e300 // a sum of 64 does not overflow
			src.Values[i] = units.Power(x)
		}
		dst := grid(newYear.Add(time.Duration(after)), time.Duration(dstStep), int(n)%64)
		err := units.ResampleTo(dst, src)
		covered := dst.Step > 0 && src.Step > 0 && (len(dst.Values) == 0 ||
			after >= 0 && float64(after)+float64(dstStep)*float64(dst.Len()) < float64(srcStep)*float64(src.Len())*(1-1e-9))
		switch {
		case err != nil && !errors.Is(err, units.ErrRange):
			t.Fatalf("%v is not typed", err)
		case err != nil && covered && float64(srcStep)*float64(src.Len()) < math.MaxInt64:
			t.Fatalf("%v, though covered", err)
		case err == nil && finite:
			sameMeans(t, dst, src)
		}
	})
}
