package wire_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// A twin is a network solved the slow and obvious way: plus and minus
// conductors, links and batteries are elements of their own in one dense
// system of Kirchhoff's equations, and the loads are put in as currents, again
// and again, from the no-load voltages down, until nothing moves.
type twin struct {
	n       wire.Network
	idle    []float64   // volts at each branch without load
	z       [][]float64 // by how much an ampere at one branch lowers another
	battery [][]float64 // what each battery gives of an ampere at each branch
	charge  []float64   // what each battery gives without load
}

// newTwin sets up and inverts the equations. Unknown are the potentials of all
// posts and branch ends, and then the currents of all elements.
func newTwin(n wire.Network) *twin {
	bats, brs := len(n.Batteries), len(n.Branches)
	post := func(i int, minus bool) int { return 2*i + sideOf(minus) }
	end := func(i int, minus bool) int { return 2*bats + 2*i + sideOf(minus) }
	where := map[string]int{}
	for i, b := range n.Branches {
		where[b.Name] = i
	}
	battery := map[string]int{"": 0}
	for i, b := range n.Batteries {
		battery[b.Name] = i
	}
	type element struct {
		from, to   int
		ohms, volt float64
	}
	var elements []element
	for i, b := range n.Batteries {
		elements = append(elements, element{post(i, true), post(i, false), float64(b.Resistance), float64(b.Voltage)})
	}
	for i, l := range n.Links {
		elements = append(elements, element{post(i, false), post(i+1, false), float64(l.Plus.Extra), 0},
			element{post(i, true), post(i+1, true), float64(l.Minus.Extra), 0})
	}
	for i, b := range n.Branches {
		plus, minus := post(battery[n.Plus], false), post(battery[n.Minus], true)
		if b.Parent != "" {
			plus, minus = end(where[b.Parent], false), end(where[b.Parent], true)
		}
		elements = append(elements, element{plus, end(i, false), 0.3 * float64(b.Extra), 0},
			element{end(i, true), minus, 0.7 * float64(b.Extra), 0})
	}
	nodes := 2 * (bats + brs)
	size := nodes + len(elements)
	a := make([][]float64, size)
	for i := range a {
		a[i] = make([]float64, 2*size)
		a[i][size+i] = 1
	}
	a[0][0] = 1 // one potential is chosen, in place of one balance of currents
	for k, e := range elements {
		row := nodes + k
		for sign, node := range map[float64]int{-1: e.from, 1: e.to} {
			if node != 0 {
				a[node][row] += sign
			}
			a[row][node] += sign
		}
		a[row][row] += e.ohms
	}
	for i, b := range n.Branches {
		if r, ok := b.Load.Resistance.Get(); ok {
			p, m, g := end(i, false), end(i, true), 1/float64(r)
			a[p][p] -= g
			a[p][m] += g
			a[m][m] -= g
			a[m][p] += g
		}
	}
	invertInPlace(a)
	inverse := func(i, j int) float64 { return a[i][size+j] }
	t := &twin{n: n}
	fromVolts := func(i int) (sum float64) {
		for k, e := range elements {
			sum += inverse(i, nodes+k) * e.volt
		}
		return sum
	}
	fromAmpere := func(i, branch int) float64 {
		return inverse(i, end(branch, false)) - inverse(i, end(branch, true))
	}
	for i := range n.Branches {
		t.idle = append(t.idle, fromVolts(end(i, false))-fromVolts(end(i, true)))
		var row []float64
		for j := range n.Branches {
			row = append(row, -(fromAmpere(end(i, false), j) - fromAmpere(end(i, true), j)))
		}
		t.z = append(t.z, row)
	}
	for k := range n.Batteries {
		t.charge = append(t.charge, fromVolts(nodes+k))
		var row []float64
		for j := range n.Branches {
			row = append(row, fromAmpere(nodes+k, j))
		}
		t.battery = append(t.battery, row)
	}
	return t
}

func sideOf(minus bool) int {
	if minus {
		return 1
	}
	return 0
}

// invertInPlace puts the inverse of the left half of a into its right half.
func invertInPlace(a [][]float64) {
	for c := range a {
		best := c
		for r := c; r < len(a); r++ {
			if math.Abs(a[r][c]) > math.Abs(a[best][c]) {
				best = r
			}
		}
		a[c], a[best] = a[best], a[c]
		pivot := a[c][c]
		for j := range a[c] {
			a[c][j] /= pivot
		}
		for r := range a {
			if factor := a[r][c]; r != c && factor != 0 {
				for j := range a[r] {
					a[r][j] -= factor * a[c][j]
				}
			}
		}
	}
}

// verdict is what a twin comes to.
type verdict int

const (
	stands verdict = iota
	collapses
	undecided // too near the limit to be told by going on
)

// solve puts scale times the loads in, power in place of that of branch only
// unless only is below 0.
func (t *twin) solve(scale float64, only int, power float64) (volts, drawn []float64, v verdict) {
	volts = append([]float64{}, t.idle...)
	drawn = make([]float64, len(volts))
	for range 20000 {
		moved := 0.0
		for i, b := range t.n.Branches {
			watts := scale * float64(b.Load.Power)
			if i == only {
				watts = power
			}
			drawn[i] = scale*float64(b.Load.Current) + watts/volts[i]
		}
		for i := range volts {
			next := t.idle[i]
			for j, amps := range drawn {
				next -= t.z[i][j] * amps
			}
			if !(next > 0) {
				return nil, nil, collapses
			}
			moved = max(moved, math.Abs(next-volts[i])/next)
			volts[i] = next
		}
		if moved < 1e-15 {
			return volts, drawn, stands
		}
	}
	return volts, drawn, undecided
}

// limit halves its way to the largest scale, or the largest power of a branch.
func (t *twin) limit(high float64, only int) float64 {
	low := 0.0
	for range 40 {
		scale, x := 1.0, low+(high-low)/2
		if only < 0 {
			scale = x
		}
		if _, _, v := t.solve(scale, only, x); v == collapses {
			high = x
		} else {
			low = x
		}
	}
	return low
}

// randomNetwork makes a network of at most so many branches: any shape, loads
// of all kinds, feeders of no resistance among them, one to four batteries.
func randomNetwork(r *rand.Rand, most int, heavy float64) wire.Network {
	var n wire.Network
	for i := range 1 + r.IntN(4) {
		n.Batteries = append(n.Batteries, wire.Battery{Name: "b" + strconv.Itoa(i),
			Voltage: units.Voltage(12 + 2*r.Float64()), Resistance: units.Resistance(1+9*r.Float64()) * mOhm})
		if i > 0 {
			n.Links = append(n.Links, leadsOf(units.Resistance(r.IntN(4))*mOhm/2, units.Resistance(r.IntN(4))*mOhm/2))
		}
	}
	n.Plus, n.Minus = n.Batteries[r.IntN(len(n.Batteries))].Name, n.Batteries[r.IntN(len(n.Batteries))].Name
	for i := range 1 + r.IntN(most) {
		b := wire.Branch{Name: "n" + strconv.Itoa(i), Extra: units.Resistance(r.IntN(8)) * 3 * mOhm}
		if i > 0 && r.IntN(4) > 0 {
			b.Parent = "n" + strconv.Itoa(r.IntN(i))
		}
		if r.IntN(2) == 0 {
			b.Load.Power = units.Power(heavy * 60 * r.Float64())
		}
		if r.IntN(3) == 0 {
			b.Load.Current = units.Current(heavy * 5 * r.Float64())
		}
		if r.IntN(3) == 0 {
			b.Load.Resistance = units.Some(units.Resistance(0.5 + 10*r.Float64()))
		}
		n.Branches = append(n.Branches, b)
	}
	// Declared in any order, children before parents too.
	r.Shuffle(len(n.Branches), func(i, j int) { n.Branches[i], n.Branches[j] = n.Branches[j], n.Branches[i] })
	return n
}

// TestHarnessTwin holds random networks against the slow twin: voltages,
// battery currents, and whether there is a state at all.
func TestHarnessTwin(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 4))
	count := map[verdict]int{}
	for k := range 400 {
		n := randomNetwork(r, 9, 1+float64(k%8)*6)
		count[checkTwin(t, n)]++
	}
	if count[stands] < 100 || count[collapses] < 100 {
		t.Errorf("%d stand, %d collapse: the networks are no good test", count[stands], count[collapses])
	}
}

// checkTwin compares a network with its twin and returns what the twin says.
// Near the limit the twin comes to rest slowly, so that its last steps, 1e-15
// of the voltage, leave an error that the square root of what is left makes
// larger: 1e-9 is asked.
func checkTwin(t *testing.T, n wire.Network) verdict {
	t.Helper()
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatalf("%+v: %v", n, err)
	}
	var f wire.Flow
	if err := h.Solve(&f, wire.Moment{}); err != nil {
		t.Fatalf("%+v: %v", n, err)
	}
	slow := newTwin(n)
	volts, drawn, v := slow.solve(1, -1, 0)
	if v == undecided {
		return v
	}
	if got := f.Collapse.IsSet(); got != (v == collapses) {
		t.Fatalf("%+v: collapse is %v, the twin says %v", n, got, v == collapses)
	}
	if v == collapses {
		return v
	}
	const within = 1e-9
	for i, p := range f.Points {
		if !(math.Abs(float64(p.Voltage)-volts[i]) <= within*volts[i]) {
			t.Errorf("%+v: %s has %v, the twin %v", n, p.Name, float64(p.Voltage), volts[i])
		}
	}
	for k, s := range f.Shares {
		want := slow.charge[k]
		for j, amps := range drawn {
			want += slow.battery[k][j] * amps
		}
		if !(math.Abs(float64(s.Current)-want) <= within*(math.Abs(want)+float64(f.Current)+1)) {
			t.Errorf("%+v: battery %d gives %v, the twin says %v", n, k, float64(s.Current), want)
		}
	}
	return v
}

// twinLimit is how near the twin tells a limit. Beyond it by a part d the twin
// goes on for about 3/√d rounds before it falls, so that 20000 tell a part in
// 1e7.
const twinLimit = 2e-7

// TestHarnessLimits holds the largest scale and the largest power against
// halving with the twin.
func TestHarnessLimits(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	scales, powers, standing := 0, 0, 0
	off := func(got, want float64) bool { return !(math.Abs(got-want) <= twinLimit*want) }
	for k := range 80 {
		n := randomNetwork(r, 4, 1+100*float64(k%3))
		f, slow := flowOf(t, n), newTwin(n)
		c, collapsed := f.Collapse.Get()
		if !collapsed {
			standing++
			checkMost(t, n, slow, r.IntN(len(n.Branches)))
			continue
		}
		scales++
		if want := slow.limit(1, -1); off(float64(c.Scale), want) {
			t.Errorf("%+v: scale %v, the twin has %v", n, float64(c.Scale), want)
		}
		if most, ok := c.Most.Get(); ok {
			powers++
			if want := slow.limit(float64(c.Load.Power), c.Branch); off(float64(most), want) {
				t.Errorf("%+v: most power %v, the twin has %v", n, float64(most), want)
			}
		}
	}
	if scales < 20 || powers < 3 || standing < 20 {
		t.Errorf("%d scales, %d powers and %d standing compared: no good test", scales, powers, standing)
	}
}

// checkMost holds the largest power of a branch of a standing network against
// the twin. Nothing limits it at the posts of a bank, of which there is none
// without resistance here.
func checkMost(t *testing.T, n wire.Network, slow *twin, branch int) {
	t.Helper()
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatal(err)
	}
	most, err := h.MostPower(n.Branches[branch].Name, wire.Moment{})
	if err != nil {
		t.Fatal(err)
	}
	if want := slow.limit(2*float64(most), branch); !(math.Abs(float64(most)-want) <= twinLimit*want) {
		t.Errorf("%+v: %s could have %v, the twin says %v", n, n.Branches[branch].Name, float64(most), want)
	}
}

// TestWeightiest: of all loads of a collapsed harness, a thousandth less of the
// one that is named lets the others have most.
func TestWeightiest(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 6))
	compared := 0
	for range 200 {
		n := randomNetwork(r, 6, 40)
		c, collapsed := flowOf(t, n).Collapse.Get()
		if !collapsed {
			continue
		}
		// Where constant currents bring one place to 0 V, every load counts by
		// its part in that place alone, which is another question.
		powers := true
		for _, b := range n.Branches {
			powers = powers && b.Load.Current == 0
		}
		if !powers {
			continue
		}
		compared++
		relief := make([]float64, len(n.Branches))
		for i := range n.Branches {
			less := n
			less.Branches = append([]wire.Branch{}, n.Branches...)
			less.Branches[i].Load.Power *= 0.999
			// Little relief may be enough to stand; then all loads by 1.1.
			for j := range less.Branches {
				less.Branches[j].Load.Power *= 1.1
			}
			relief[i] = float64(flowOf(t, less).Collapse.Or(wire.Collapse{}).Scale)
		}
		for i := range relief {
			// Two that weigh nearly the same may change places along a
			// thousandth.
			if relief[i] > relief[c.Branch]*(1+1e-6) {
				t.Errorf("%+v: %s is named, %s weighs more: %v", n, n.Branches[c.Branch].Name, n.Branches[i].Name, relief)
			}
		}
	}
	if compared < 10 {
		t.Errorf("%d compared: no good test", compared)
	}
}
