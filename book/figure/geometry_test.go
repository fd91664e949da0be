package figure_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/book/figure"
)

type spots = []figure.Spot

func uv(numbers ...float64) spots {
	var s spots
	for i := 0; i < len(numbers); i += 2 {
		s = append(s, figure.UV(numbers[i], numbers[i+1]))
	}
	return s
}

func TestClip(t *testing.T) {
	for _, test := range []struct {
		name string
		line spots
		want []spots
	}{
		{"all inside", uv(0, 0, 0.5, 1, 1, 0), []spots{uv(0, 0, 0.5, 1, 1, 0)}},
		// Crossings, by similar triangles.
		{"out at the top", uv(0, 0, 1, 2), []spots{uv(0, 0, 0.5, 1)}},
		{"in from the left", uv(-1, 0, 1, 1), []spots{uv(0, 0.5, 1, 1)}},
		{"across a corner", uv(-0.5, 0.25, 0.75, 1.5), []spots{uv(0, 0.75, 0.25, 1)}},
		{"out and back", uv(0, 0.5, 0.25, 1.5, 0.75, 1.5, 1, 0.5),
			[]spots{uv(0, 0.5, 0.125, 1), uv(0.875, 1, 1, 0.5)}},
		{"out and back in one point", uv(0, 0.5, 0.5, 1.5, 1, 0.5),
			[]spots{uv(0, 0.5, 0.25, 1), uv(0.75, 1, 1, 0.5)}},
		{"outside between", uv(0.2, 0.2, 0.2, -1, 0.4, -1, 0.4, 0.2),
			[]spots{uv(0.2, 0.2, 0.2, 0), uv(0.4, 0, 0.4, 0.2)}},
		// Points on an edge are inside.
		{"along the top", uv(0, 1, 1, 1), []spots{uv(0, 1, 1, 1)}},
		{"touches the top", uv(0, 0, 0.5, 1, 1, 0), []spots{uv(0, 0, 0.5, 1, 1, 0)}},
		{"touches from outside", uv(0, 2, 0.5, 1, 1, 2), nil},
		{"ends on the edge", uv(0, 0, 0.5, 1, 0.6, 2), []spots{uv(0, 0, 0.5, 1, 0.5, 1)}},
		// None.
		{"above", uv(0, 2, 1, 3), nil},
		{"left", uv(-2, 0, -1, 1), nil},
		{"touches a corner", uv(-0.5, 0, 0.5, 2), nil},
		{"past a corner", uv(-1, 0.5, 0.5, 2), nil},
		// Far ones.
		{"upright from afar", uv(0.5, -1e9, 0.5, 1e9), []spots{uv(0.5, 0, 0.5, 1)}},
		{"a step from afar", uv(0.25, 0.5, 0.75, 1e9), []spots{uv(0.25, 0.5, 0.25, 1)}},
	} {
		got := figure.Clip(test.line)
		if len(got) == 0 && len(test.want) == 0 {
			continue
		}
		near := cmp.Comparer(func(a, b figure.Spot) bool { return figure.Apart(a, b) < 1e-8 })
		if diff := cmp.Diff(test.want, got, near); diff != "" {
			t.Errorf("%s: clip (-want +got):\n%s", test.name, diff)
		}
	}
}

// What is left of a line is inside, each part begins and ends at an end of
// the line or exactly on an edge, and a point sampled from the line is near
// what is left if and only if it is inside.
func TestClipOfRandomLines(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		var line spots
		for range 2 + random.IntN(6) {
			line = append(line, figure.UV(3*random.Float64()-1, 3*random.Float64()-1))
		}
		parts := figure.Clip(line)
		for _, part := range parts {
			if len(part) < 2 {
				t.Fatalf("a part of %v is %v", line, part)
			}
			for _, s := range part {
				if u, v := figure.Along(s); u < 0 || u > 1 || v < 0 || v > 1 {
					t.Fatalf("%v of %v is outside", s, line)
				}
			}
			for _, s := range (spots{part[0], part[len(part)-1]}) {
				u, v := figure.Along(s)
				if onEdge := u == 0 || u == 1 || v == 0 || v == 1; !onEdge && s != line[0] && s != line[len(line)-1] {
					t.Fatalf("a part of %v ends at %v", line, s)
				}
			}
		}
		for i := range len(line) - 1 {
			f := random.Float64()
			u0, v0 := figure.Along(line[i])
			u1, v1 := figure.Along(line[i+1])
			u, v := u0+f*(u1-u0), v0+f*(v1-v0)
			if math.Abs(u-0.5) < 0.5 && math.Abs(v-0.5) < 0.5 && nearest(u, v, parts) > 1e-9 {
				t.Fatalf("(%v, %v) of %v is inside but not in %v", u, v, line, parts)
			}
		}
	}
}

// nearest returns how far (u, v) is from the parts of a line.
func nearest(u, v float64, parts []spots) float64 {
	least := math.Inf(1)
	for _, part := range parts {
		for i := range len(part) - 1 {
			au, av := figure.Along(part[i])
			bu, bv := figure.Along(part[i+1])
			f := 0.0
			if length2 := (bu-au)*(bu-au) + (bv-av)*(bv-av); length2 > 0 {
				f = min(max(((u-au)*(bu-au)+(v-av)*(bv-av))/length2, 0), 1)
			}
			least = min(least, math.Hypot(u-au-f*(bu-au), v-av-f*(bv-av)))
		}
	}
	return least
}

// A half is rounded away from zero, also where float64 has it a little less:
// 0.00015 times 10 000 is 1.4999999999999998.
func TestHalvesOnALength(t *testing.T) {
	for at, want := range map[float64]int{0: 0, 0.00015: 2, 0.00014: 1, 0.5: 5000, 1: 10_000} {
		if got := figure.OnLength(at, 10_000); got != want {
			t.Errorf("%v of 10 000 is %d, want %d", at, got, want)
		}
	}
}

func TestNameSide(t *testing.T) {
	for _, test := range []struct {
		parts []spots
		want  string
	}{
		{[]spots{uv(0, 0, 1, 0.5)}, "right"},
		{[]spots{uv(1, 0.5, 0, 0)}, "right"}, // at its first end
		{[]spots{uv(0, 0, 0.5, 1)}, "top"},
		{[]spots{uv(0.5, 1, 0, 0)}, "top"},
		{[]spots{uv(0.5, 1, 1, 0)}, "right"},
		{[]spots{uv(0, 0, 0.5, 1), uv(0.6, 1, 1, 0)}, "right"},
		{[]spots{uv(0, 0, 0.5, 1), uv(0.6, 1, 0.9, 0)}, "within"},
		{[]spots{uv(0, 0.5, 0.5, 0)}, "within"},
		// The corner, and that but for rounding.
		{[]spots{uv(0, 0, 1, 1)}, "right"},
		{[]spots{uv(0, 0, 1-1e-15, 1)}, "right"},
		{[]spots{uv(0, 0, 0.5, 1-1e-15)}, "top"},
	} {
		if got := figure.NameSide(test.parts); got != test.want {
			t.Errorf("the name of %v belongs %s, want %s", test.parts, got, test.want)
		}
	}
}

func TestDistance(t *testing.T) {
	a, b := figure.XY(0, 0), figure.XY(400, 300)
	for _, test := range []struct {
		p    figure.PagePoint
		want float64
	}{
		{figure.XY(200, 150), 0}, // half way
		// By the triangle 3, 4, 5: (−3, 4) is at right angles to (4, 3).
		{figure.XY(200-30, 150+40), 50},
		{figure.XY(200+300, 150-400), 500},
		{figure.XY(-30, -40), 50},      // before a
		{figure.XY(430, 340), 50},      // after b
		{figure.XY(400, 300), 0},       // at b
		{figure.XY(-3000, 4000), 5000}, // at right angles at a
	} {
		if got := figure.Distance(test.p, a, b); got != test.want {
			t.Errorf("distance of %v is %v, want %v", test.p, got, test.want)
		}
	}
	if got := figure.Distance(figure.XY(3, 4), a, a); got != 5 {
		t.Errorf("distance of (3, 4) from one point is %v, want 5", got)
	}
}

func TestCrosses(t *testing.T) {
	for _, test := range []struct {
		name string
		p, q figure.PagePoint
		want bool
	}{
		{"through the middle", figure.XY(0, 0), figure.XY(40, 40), true},
		{"from inside", figure.XY(15, 15), figure.XY(90, 0), true},
		{"inside", figure.XY(12, 12), figure.XY(13, 18), true},
		{"along an edge", figure.XY(0, 10), figure.XY(40, 10), true},
		{"to an edge", figure.XY(0, 15), figure.XY(10, 15), true},
		{"across a corner", figure.XY(5, 16), figure.XY(16, 5), true},
		{"past a corner", figure.XY(0, 15), figure.XY(15, 0), false},
		{"past the other corner", figure.XY(15, 30), figure.XY(30, 15), false},
		{"on the line, not in reach", figure.XY(0, 0), figure.XY(9, 9), false},
		{"above", figure.XY(0, 5), figure.XY(40, 9), false},
		{"right", figure.XY(21, 0), figure.XY(25, 40), false},
	} {
		if got := figure.Crosses(figure.XY(10, 10), figure.XY(20, 20), test.p, test.q); got != test.want {
			t.Errorf("%s: %v to %v crosses the box: %v, want %v", test.name, test.p, test.q, got, test.want)
		}
	}
}

// wave returns a line of n points on the page with a spike at one of them.
func wave(n, spike int) [][]figure.PagePoint {
	var points []figure.PagePoint
	for i := range n {
		x := 60_000 * float64(i) / float64(n-1)
		y := 17_000 + 9000*math.Sin(x/7000) + 2000*math.Sin(x/1700)
		if i == spike {
			y = 33_333
		}
		points = append(points, figure.XY(int(x), int(y)))
	}
	return [][]figure.PagePoint{points}
}

func TestThin(t *testing.T) {
	short := wave(figure.MaxPoints, -1)
	if diff := cmp.Diff(short, figure.Thin(short, figure.MaxPoints), comparePoints); diff != "" {
		t.Errorf("a line of %d points is changed:\n%s", figure.MaxPoints, diff)
	}
	for _, n := range []int{figure.MaxPoints + 1, 500, 20_000} {
		full := wave(n, n/3)
		got := figure.Thin(full, figure.MaxPoints)
		if len(got) != 1 || len(got[0]) != figure.MaxPoints {
			t.Fatalf("of %d points %d are kept, want %d", n, len(got[0]), figure.MaxPoints)
		}
		checkOrder(t, full[0], got[0])
		for k, name := range []string{"highest", "lowest", "leftmost", "rightmost"} {
			if want := extreme(full[0], k); extreme(got[0], k) != want {
				t.Errorf("the %s of %d points is lost: %v, want %v", name, n, extreme(got[0], k), want)
			}
		}
		// A quarter of a unit is a tenth of the width of the line.
		for _, p := range full[0] {
			if d := offLine(p, got[0]); d > 25 {
				t.Errorf("of %d points %v is %v hundredths off the thinned line", n, p, d)
				break
			}
		}
	}
}

// Parts are thinned together and keep their ends.
func TestThinOfParts(t *testing.T) {
	var parts [][]figure.PagePoint
	total := 0
	for k := range 58 {
		var part []figure.PagePoint
		for i := range 7 {
			part = append(part, figure.XY(1000*k+100*i, 500*k+70*(i%3)))
		}
		parts = append(parts, part)
	}
	got := figure.Thin(parts, figure.MaxPoints)
	for k, part := range got {
		total += len(part)
		if part[0] != parts[k][0] || part[len(part)-1] != parts[k][6] {
			t.Errorf("part %d begins and ends at %v, want %v", k, part, parts[k])
		}
		checkOrder(t, parts[k], part)
	}
	if len(got) != len(parts) || total != figure.MaxPoints {
		t.Errorf("%d parts of %d points, want %d of %d", len(got), total, len(parts), figure.MaxPoints)
	}
}

// A straight line needs none of the points on it.
func TestThinOfStraightLine(t *testing.T) {
	var points []figure.PagePoint
	for i := range 300 {
		points = append(points, figure.XY(3*i, 2*i))
	}
	got := figure.Thin([][]figure.PagePoint{points}, figure.MaxPoints)
	want := [][]figure.PagePoint{{points[0], points[299]}}
	if diff := cmp.Diff(want, got, comparePoints); diff != "" {
		t.Error(diff)
	}
}

var comparePoints = cmp.Comparer(func(a, b figure.PagePoint) bool { return a == b })

// checkOrder checks that got is some of full in the same order.
func checkOrder(t *testing.T, full, got []figure.PagePoint) {
	t.Helper()
	k := 0
	for _, p := range full {
		if k < len(got) && got[k] == p {
			k++
		}
	}
	if k != len(got) {
		t.Errorf("point %d of the thinned line, %v, is not in order", k, got[k])
	}
}

// extreme returns the smallest y, the largest y, the smallest x or the
// largest x.
func extreme(points []figure.PagePoint, k int) int {
	least := math.MaxInt
	for _, p := range points {
		x, y := figure.Coordinates(p)
		least = min(least, [...]int{y, -y, x, -x}[k])
	}
	return least
}

// offLine returns how far p is from a line.
func offLine(p figure.PagePoint, line []figure.PagePoint) float64 {
	least := math.Inf(1)
	for i := range len(line) - 1 {
		least = min(least, figure.Distance(p, line[i], line[i+1]))
	}
	return least
}

func TestSpread(t *testing.T) {
	for _, test := range []struct {
		name        string
		want, sizes []int
		low, high   int
		got         []int
	}{
		{"none", nil, nil, 0, 100, []int{}},
		{"far apart", []int{10, 50}, []int{10, 10}, 0, 100, []int{10, 50}},
		{"two in one place", []int{50, 50}, []int{10, 20}, 0, 100, []int{42, 57}}, // 15 between them, half of it each, rounded down
		{"three in one place", []int{50, 50, 50}, []int{10, 10, 10}, 0, 100, []int{40, 50, 60}},
		{"at the low end", []int{0, 2}, []int{10, 10}, 0, 100, []int{5, 15}},
		{"at the high end", []int{99, 100}, []int{10, 10}, 0, 100, []int{85, 95}},
		{"no room to spare", []int{0, 100}, []int{50, 50}, 0, 100, []int{25, 75}},
		{"one pushes the next", []int{50, 52, 61}, []int{10, 10, 10}, 0, 100, []int{44, 54, 64}},
	} {
		got, ok := figure.Spread(test.want, test.sizes, test.low, test.high)
		if diff := cmp.Diff(test.got, got); diff != "" || !ok {
			t.Errorf("%s: Spread() = %v, %v, want %v", test.name, got, ok, test.got)
		}
	}
	if got, ok := figure.Spread([]int{10, 20}, []int{50, 51}, 0, 100); ok {
		t.Errorf("two intervals of 101 find room in 100: %v", got)
	}
}

// Spreading moves as little as can be: no other arrangement on a fine grid,
// found by trying all, has a smaller sum of squared moves.
func TestSpreadIsLeast(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		want := []int{random.IntN(24), 0, 0}
		want[1] = want[0] + random.IntN(12)
		want[2] = want[1] + random.IntN(12)
		sizes := []int{2 + 2*random.IntN(4), 2 + 2*random.IntN(4), 2 + 2*random.IntN(4)}
		const low, high = 0, 40
		got, ok := figure.Spread(want, sizes, low, high)
		if !ok {
			t.Fatalf("Spread(%v, %v) has no room", want, sizes)
		}
		cost := func(a, b, c int) int {
			return (a-want[0])*(a-want[0]) + (b-want[1])*(b-want[1]) + (c-want[2])*(c-want[2])
		}
		best := math.MaxInt
		for a := low + sizes[0]/2; a <= high; a++ {
			for b := a + (sizes[0]+sizes[1])/2; b <= high; b++ {
				for c := b + (sizes[1]+sizes[2])/2; c <= high-sizes[2]/2; c++ {
					best = min(best, cost(a, b, c))
				}
			}
		}
		// Means are rounded down, which costs up to one for each.
		if got := cost(got[0], got[1], got[2]); got > best+3 {
			t.Errorf("Spread(%v, %v) = %v costs %d, %d is possible", want, sizes, got, got, best)
		}
	}
}
