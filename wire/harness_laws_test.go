package wire_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// harnessNoise is what rounding leaves in a sum over a small harness that is
// not near collapse, as a part of the largest number in it.
const harnessNoise = 1e-12

// harnessLaws are what must hold whatever the network is. Each gets a network
// that stands, and its flow.
var harnessLaws = map[string]func(t *testing.T, r *rand.Rand, n wire.Network, f *wire.Flow){
	"energy balances": func(t *testing.T, _ *rand.Rand, _ wire.Network, f *wire.Flow) {
		turnover := 0.0 // a battery may give only what another takes
		for _, s := range f.Shares {
			turnover += math.Abs(float64(s.Current.At(s.Battery.Voltage)))
		}
		if off := float64(f.Supplied - f.Loads - f.Heat - f.BankHeat); math.Abs(off) > 1e-9*turnover {
			t.Errorf("%v supplied, %v + %v + %v used: %v off", f.Supplied, f.Loads, f.Heat, f.BankHeat, off)
		}
	},
	"currents balance": func(t *testing.T, _ *rand.Rand, n wire.Network, f *wire.Flow) {
		sum := map[string]units.Current{}
		for i, p := range f.Points {
			sum[n.Branches[i].Parent] += p.Current
		}
		for _, p := range f.Points {
			if off := float64(p.Current - p.Drawn - sum[p.Name]); math.Abs(off) > harnessNoise*float64(f.Current) {
				t.Errorf("%s: %v comes in, %v is drawn, %v goes on", p.Name, p.Current, p.Drawn, sum[p.Name])
			}
		}
		var batteries units.Current
		for _, s := range f.Shares {
			batteries += s.Current
		}
		for what, total := range map[string]units.Current{"into the branches": sum[""], "from the batteries": batteries} {
			if off := float64(total - f.Current); math.Abs(off) > 1e-10*(1+float64(f.Current)) {
				t.Errorf("%v %s, %v in all", total, what, f.Current)
			}
		}
	},
	"loads get what they ask": func(t *testing.T, _ *rand.Rand, _ wire.Network, f *wire.Flow) {
		for _, p := range f.Points {
			if want := p.Load.At(p.Voltage); math.Abs(float64(p.Drawn-want)) > 1e-9*float64(want) {
				t.Errorf("%s draws %v, wants %v", p.Name, p.Drawn, want)
			}
			if p.Load == wattsOf(p.Load.Power) && math.Abs(float64(p.Power-p.Load.Power)) > 1e-9*float64(p.Load.Power) {
				t.Errorf("%s gets %v of %v", p.Name, p.Power, p.Load.Power)
			}
		}
	},
	"voltage is lost on the way": func(t *testing.T, _ *rand.Rand, n wire.Network, f *wire.Flow) {
		at := map[string]units.Voltage{"": f.Voltage}
		for _, p := range f.Points {
			at[p.Name] = p.Voltage
		}
		for i, p := range f.Points {
			lost := at[n.Branches[i].Parent] - p.Voltage
			if math.Abs(float64(lost-p.Drop)) > 1e-9*float64(f.OpenCircuit) || p.Drop < 0 || p.Voltage > f.OpenCircuit {
				t.Errorf("%s: %v is lost, the drop is %v", p.Name, lost, p.Drop)
			}
		}
	},
	"more load raises no voltage": func(t *testing.T, r *rand.Rand, n wire.Network, f *wire.Flow) {
		i := r.IntN(len(n.Branches))
		n.Branches = append([]wire.Branch{}, n.Branches...)
		switch load := &n.Branches[i].Load; r.IntN(3) {
		case 0:
			load.Current += 0.5
		case 1:
			load.Power += 5
		default:
			load.Resistance = units.Some(0.8 * load.Resistance.Or(20))
		}
		g := flowOf(t, n)
		for k := range g.Points { // none after a collapse, which is no higher
			if g.Points[k].Voltage > f.Points[k].Voltage*(1+harnessNoise) {
				t.Errorf("more at %s raises %s from %v to %v", n.Branches[i].Name, n.Branches[k].Name, f.Points[k].Voltage, g.Points[k].Voltage)
			}
		}
		if len(g.Points) > 0 && !(g.Points[i].Voltage < f.Points[i].Voltage) {
			t.Errorf("more at %s does not lower it", n.Branches[i].Name)
		}
	},
	"a thicker feeder lowers no load's voltage": func(t *testing.T, r *rand.Rand, n wire.Network, f *wire.Flow) {
		// Only where each load draws no less at less voltage: a heater that
		// gets more takes more, and the others get less.
		for _, b := range n.Branches {
			if b.Load.Resistance.IsSet() {
				return
			}
		}
		i := r.IntN(len(n.Branches))
		n.Branches = append([]wire.Branch{}, n.Branches...)
		n.Branches[i].Extra *= 0.5
		for k, p := range solved(t, n).Points {
			if p.Voltage < f.Points[k].Voltage*(1-harnessNoise) {
				t.Errorf("a thicker feeder to %s lowers %s", n.Branches[i].Name, p.Name)
			}
		}
	},
	"the order of declaration does not matter": func(t *testing.T, r *rand.Rand, n wire.Network, f *wire.Flow) {
		n.Branches = append([]wire.Branch{}, n.Branches...)
		r.Shuffle(len(n.Branches), func(i, j int) { n.Branches[i], n.Branches[j] = n.Branches[j], n.Branches[i] })
		g := solved(t, n)
		h, err := wire.NewHarness(n)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range f.Points {
			i, ok := h.Index(p.Name)
			if !ok {
				t.Fatal("lost a branch")
			}
			if d := cmp.Diff(p, g.Points[i], unitstest.Near(1e-9)); d != "" {
				t.Error(d)
			}
		}
	},
	"a row turned round is the same row": func(t *testing.T, _ *rand.Rand, n wire.Network, f *wire.Flow) {
		last := len(n.Batteries) - 1
		turned := n
		turned.Batteries, turned.Links = make([]wire.Battery, last+1), make([]wire.Link, last)
		for i := range turned.Batteries {
			turned.Batteries[i] = n.Batteries[last-i]
		}
		for i := range turned.Links {
			turned.Links[i] = n.Links[last-1-i]
		}
		g := solved(t, turned)
		for i, s := range f.Shares {
			if off := float64(g.Shares[last-i].Current - s.Current); math.Abs(off) > 1e-10*(1+float64(f.Current)) {
				t.Errorf("battery %d of %d gives %v, turned round %v", i, last+1, s.Current, g.Shares[last-i].Current)
			}
		}
	},
	"linear loads add": func(t *testing.T, r *rand.Rand, n wire.Network, _ *wire.Flow) {
		// The drops of two sets of constant currents are those of both
		// together, with heaters in place and voltages measured from no load.
		h, err := wire.NewHarness(n)
		if err != nil {
			t.Fatal(err)
		}
		drops := func(scaleA, scaleB float64, a, b []float64) []float64 {
			m := wire.Moment{}
			for i := range n.Branches {
				m.Loads = append(m.Loads, wire.Load{Current: units.Current(scaleA*a[i] + scaleB*b[i]), Resistance: n.Branches[i].Load.Resistance})
			}
			var f, idle wire.Flow
			if err := h.Solve(&f, m); err != nil {
				t.Fatal(err)
			}
			for i := range m.Loads {
				m.Loads[i].Current = 0
			}
			if err := h.Solve(&idle, m); err != nil {
				t.Fatal(err)
			}
			var list []float64
			for i := range f.Points {
				list = append(list, float64(idle.Points[i].Voltage-f.Points[i].Voltage))
			}
			return list
		}
		var a, b []float64
		for range n.Branches {
			a, b = append(a, r.Float64()), append(b, r.Float64())
		}
		onlyA, onlyB, both := drops(1, 0, a, b), drops(0, 1, a, b), drops(2, 3, a, b)
		for i := range both {
			if want := 2*onlyA[i] + 3*onlyB[i]; math.Abs(both[i]-want) > harnessNoise*13 {
				t.Errorf("%s: 2a + 3b drops %v, the parts %v", n.Branches[i].Name, both[i], want)
			}
		}
	},
	"twice everything is twice everything": func(t *testing.T, _ *rand.Rand, n wire.Network, f *wire.Flow) {
		// Twice the voltages and currents, four times the powers.
		n.Batteries = append([]wire.Battery{}, n.Batteries...)
		for i := range n.Batteries {
			n.Batteries[i].Voltage *= 2
		}
		n.Branches = append([]wire.Branch{}, n.Branches...)
		for i := range n.Branches {
			n.Branches[i].Load.Current *= 2
			n.Branches[i].Load.Power *= 4
		}
		for i, p := range solved(t, n).Points {
			// Powers of two round alike, so this is exact.
			if p.Voltage != 2*f.Points[i].Voltage || p.Current != 2*f.Points[i].Current {
				t.Errorf("%s: %v and %v, want twice %v and %v", p.Name, p.Voltage, p.Current, f.Points[i].Voltage, f.Points[i].Current)
			}
		}
	},
}

func TestHarnessLaws(t *testing.T) {
	for name, law := range harnessLaws {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(3, 8))
			tried := 0
			for k := range 300 {
				n := randomNetwork(r, 12, 0.3+float64(k%5))
				if f := flowOf(t, n); !f.Collapse.IsSet() {
					tried++
					law(t, r, n, f)
				}
			}
			if tried < 150 {
				t.Errorf("%d networks stand: no good test", tried)
			}
		})
	}
}
