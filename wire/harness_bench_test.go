package wire_test

import (
	"math"
	"strconv"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// wideTree is a harness of so many branches: a tree with four below each, and a
// load of each kind in turn. The voltage falls by some per cent whatever the
// number.
func wideTree(branches int) wire.Network {
	n := wire.Network{Batteries: bankOf(13.2, mOhm)}
	each := 60 / float64(branches)
	for i := range branches {
		b := feederOf(strconv.Itoa(i), strconv.Itoa((i-1)/4), 4*mOhm, wire.Load{})
		switch i % 3 {
		case 0:
			b.Load.Power = units.Power(12 * each)
		case 1:
			b.Load.Current = units.Current(each)
		default:
			b.Load.Resistance = units.Some(units.Resistance(12 / each))
		}
		if i == 0 {
			b.Parent = ""
		}
		n.Branches = append(n.Branches, b)
	}
	return n
}

// plainTree is the same tree as columns of float64, parents first, without
// types, checks, names or a result to keep: the least that anybody could do.
type plainTree struct {
	parent                      []int
	r, amps, watts, siemens     []float64
	v, j, y, shrink, heat, drop []float64
}

func newPlainTree(n wire.Network) *plainTree {
	p := &plainTree{}
	for _, b := range n.Branches {
		up, err := strconv.Atoi(b.Parent)
		if err != nil {
			up = -1
		}
		g := 0.0
		if r, ok := b.Load.Resistance.Get(); ok {
			g = 1 / float64(r)
		}
		p.parent = append(p.parent, up)
		p.r, p.amps = append(p.r, float64(b.Extra)), append(p.amps, float64(b.Load.Current))
		p.watts, p.siemens = append(p.watts, float64(b.Load.Power)), append(p.siemens, g)
	}
	for _, list := range []*[]float64{&p.v, &p.j, &p.y, &p.shrink, &p.heat, &p.drop} {
		*list = make([]float64, len(p.parent))
	}
	return p
}

// newton is Newton's method on the tree, and the drops and heat afterwards.
func (p *plainTree) newton(e, inside float64) (sum float64) {
	for k := range p.v {
		p.v[k] = e
	}
	root := e
	for moved := 1.0; moved > 1e-10; {
		moved = 0
		for k, v := range p.v {
			amps := p.watts[k] / v
			p.j[k], p.y[k] = p.amps[k]+2*amps, p.siemens[k]-amps/v
		}
		var j, y float64
		for k := len(p.v) - 1; k >= 0; k-- {
			p.shrink[k] = 1 / (1 + p.r[k]*p.y[k])
			if up := p.parent[k]; up >= 0 {
				p.j[up] += p.j[k] * p.shrink[k]
				p.y[up] += p.y[k] * p.shrink[k]
			} else {
				j += p.j[k] * p.shrink[k]
				y += p.y[k] * p.shrink[k]
			}
		}
		root = (e - inside*j) / (1 + inside*y)
		for k := range p.v {
			above := root
			if up := p.parent[k]; up >= 0 {
				above = p.v[up]
			}
			v := (above - p.r[k]*p.j[k]) * p.shrink[k]
			moved = max(moved, math.Abs(v-p.v[k])/v)
			p.v[k] = v
		}
	}
	for k, v := range p.v {
		p.j[k] = p.amps[k] + p.watts[k]/v + p.siemens[k]*v
	}
	for k := len(p.v) - 1; k >= 0; k-- {
		if up := p.parent[k]; up >= 0 {
			p.j[up] += p.j[k]
		}
		p.drop[k] = p.r[k] * p.j[k]
		p.heat[k] = p.drop[k] * p.j[k]
		sum += p.heat[k]
	}
	return sum
}

// TestPlainTree holds the plain loop to the solver, so that the benchmark
// compares two ways to one result.
func TestPlainTree(t *testing.T) {
	n := wideTree(1000)
	f, p := solved(t, n), newPlainTree(n)
	heat := p.newton(13.2, 0.001)
	if math.Abs(heat-float64(f.Heat)) > 1e-9*heat {
		t.Errorf("heat %v, the plain loop has %v", f.Heat, heat)
	}
	for k, q := range f.Points {
		if math.Abs(p.v[k]-float64(q.Voltage)) > 1e-9*p.v[k] {
			t.Fatalf("%s has %v, the plain loop %v", q.Name, q.Voltage, p.v[k])
		}
	}
	if !(f.Points[999].Voltage < 0.98*13.2) {
		t.Errorf("hardly a drop: %v", f.Points[999].Voltage)
	}
}

// TestHarnessRounds: the cost is linear, since a round costs the same for each
// branch and their number does not grow with the branches, nor that of a
// search after collapse.
func TestHarnessRounds(t *testing.T) {
	for _, branches := range []int{10, 1000, 10000} {
		n := wideTree(branches)
		if f := flowOf(t, n); f.Rounds > 5 || f.Collapse.IsSet() {
			t.Errorf("%d branches: %d rounds", branches, f.Rounds)
		}
		linear := withoutPower(n)
		if f := flowOf(t, linear); f.Rounds != 1 {
			t.Errorf("%d branches without constant power: %d rounds", branches, f.Rounds)
		}
		for i := range n.Branches {
			n.Branches[i].Load.Power *= 1000
			linear.Branches[i].Load.Current *= 1000
		}
		if f := flowOf(t, linear); f.Rounds > 8 || !f.Collapse.IsSet() {
			t.Errorf("%d branches without constant power: %d rounds to find the limit", branches, f.Rounds)
		}
		if f := flowOf(t, n); f.Rounds > 150 || !f.Collapse.IsSet() {
			t.Errorf("%d branches: %d rounds to find the limit", branches, f.Rounds)
		}
	}
}

// withoutPower is n without constant power.
func withoutPower(n wire.Network) wire.Network {
	n.Branches = append([]wire.Branch{}, n.Branches...)
	for i := range n.Branches {
		n.Branches[i].Load.Power = 0
	}
	return n
}

// TestHarnessNoAllocations: a Flow used again costs no memory, whether the
// harness stands or collapses, with batteries and with a moment.
func TestHarnessNoAllocations(t *testing.T) {
	for name, change := range map[string]func(n *wire.Network, m *wire.Moment){
		"stands":    func(*wire.Network, *wire.Moment) {},
		"collapses": func(n *wire.Network, _ *wire.Moment) { n.Branches[4].Load.Power = 20000 },
		"moment": func(n *wire.Network, m *wire.Moment) {
			m.Loads, m.Voltages = make([]wire.Load, 5), []units.Voltage{12, 12.5}
		},
	} {
		n, m := trailer(), wire.Moment{}
		change(&n, &m)
		h, err := wire.NewHarness(n)
		if err != nil {
			t.Fatal(err)
		}
		var f wire.Flow
		solve := func() {
			if err := h.Solve(&f, m); err != nil {
				t.Fatal(err)
			}
		}
		solve()
		if n := testing.AllocsPerRun(100, solve); n != 0 {
			t.Errorf("%s: a solve allocates %v times", name, n)
		}
	}
}

func BenchmarkHarness(b *testing.B) {
	for _, branches := range []int{10, 1000, 10000} {
		n := wideTree(branches)
		h, err := wire.NewHarness(n)
		if err != nil {
			b.Fatal(err)
		}
		size := "n=" + strconv.Itoa(branches)
		perBranch := func(b *testing.B) {
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(branches), "ns/branch")
		}
		solve := func(name string, m wire.Moment) {
			b.Run(size+"/"+name, func(b *testing.B) {
				b.ReportAllocs()
				var f wire.Flow
				if err := h.Solve(&f, m); err != nil {
					b.Fatal(err)
				}
				for b.Loop() {
					if err := h.Solve(&f, m); err != nil {
						b.Fatal(err)
					}
				}
				perBranch(b)
			})
		}
		heavy := wire.Moment{}
		for i := range n.Branches {
			load := n.Branches[i].Load
			load.Power *= 1000
			heavy.Loads = append(heavy.Loads, load)
		}
		solve("solve", wire.Moment{})
		solve("collapse", heavy)
		b.Run(size+"/plain", func(b *testing.B) {
			b.ReportAllocs()
			p := newPlainTree(n)
			sum := 0.0
			for b.Loop() {
				sum += p.newton(13.2, 0.001)
			}
			_ = sum
			perBranch(b)
		})
		b.Run(size+"/compile", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := wire.NewHarness(n); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
