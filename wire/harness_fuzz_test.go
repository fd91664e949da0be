package wire_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// FuzzHarness builds a network from a seed and then spoils one of its numbers
// with a raw one. What comes out is a typed error, a collapse, or a state with
// positive voltages whose energy balances; where the numbers are those of a
// vehicle the slow twin must agree.
func FuzzHarness(f *testing.F) {
	f.Add(uint64(1), 1.0, 0.0, uint8(0))
	f.Add(uint64(2), 20.0, 12.0, uint8(1))
	f.Add(uint64(3), 40.0, 1e-300, uint8(2))
	f.Add(uint64(4), 5.0, 1e300, uint8(3))
	f.Add(uint64(5), 5.0, math.NaN(), uint8(4))
	f.Add(uint64(6), 90.0, math.Inf(1), uint8(5))
	f.Add(uint64(7), 3.0, -1.0, uint8(6))
	f.Fuzz(func(t *testing.T, seed uint64, heavy, x float64, where uint8) {
		if !(0 < heavy && heavy < 1000) {
			heavy = 1
		}
		r := rand.New(rand.NewPCG(seed, 1))
		n := randomNetwork(r, 6, heavy)
		if where == 0 {
			checkTwin(t, n)
			return
		}
		spoil(&n, r, x, where)
		h, err := wire.NewHarness(n)
		if err != nil {
			checkTyped(t, err)
			return
		}
		var flow wire.Flow
		if err := h.Solve(&flow, wire.Moment{}); err != nil {
			checkTyped(t, err)
			return
		}
		checkFlow(t, n, &flow)
		if most, err := h.MostPower(n.Branches[0].Name, wire.Moment{}); err != nil {
			checkTyped(t, err)
		} else if !(most >= 0) || math.IsInf(float64(most), 0) {
			t.Fatalf("%+v: most power %v", n, most)
		}
	})
}

// spoil puts x into one place of n, or a name in the place of another.
func spoil(n *wire.Network, r *rand.Rand, x float64, where uint8) {
	b, bat := &n.Branches[r.IntN(len(n.Branches))], &n.Batteries[r.IntN(len(n.Batteries))]
	switch where % 14 {
	case 0:
		b.Parent = "n" + strconv.Itoa(r.IntN(9))
	case 1:
		b.Load.Power = units.Power(x)
	case 2:
		b.Load.Current = units.Current(x)
	case 3:
		b.Load.Resistance = units.Some(units.Resistance(x))
	case 4:
		b.Extra = units.Resistance(x)
	case 5:
		bat.Voltage = units.Voltage(x)
	case 6:
		bat.Resistance = units.Resistance(x)
	case 7:
		b.OneWay, b.Conductor.Size = units.Length(x), wire.AWG(10)
	case 8:
		b.Lowest, b.Limit = units.Some(units.Voltage(x)), units.Some(units.Current(x))
	case 9:
		bat.Limit, bat.ChargeLimit = units.Some(units.Current(x)), units.Some(units.Current(x))
	case 10:
		for i := range n.Links {
			n.Links[i].Plus.Extra = units.Resistance(x)
		}
	case 11:
		b.Name = n.Branches[0].Name
	case 12:
		n.Plus = b.Name
	default:
		for i := range n.Branches {
			n.Branches[i].Load.Power = units.Power(x)
		}
	}
}

func checkTyped(t *testing.T, err error) {
	t.Helper()
	var out *units.RangeError
	var network *wire.NetworkError
	if !errors.As(err, &out) && !errors.As(err, &network) || err.Error() == "" {
		t.Fatalf("error %v has no type of this library", err)
	}
}

// checkFlow demands that a flow is whole.
func checkFlow(t *testing.T, n wire.Network, f *wire.Flow) {
	t.Helper()
	for _, g := range f.Findings() {
		if g.String() == "" {
			t.Fatal("an empty finding")
		}
	}
	for i := range n.Branches {
		_ = f.Working(i).Text()
	}
	for i := range n.Batteries {
		_ = f.ShareWorking(i).Text()
	}
	if c, ok := f.Collapse.Get(); ok {
		if !(c.Scale > 0 && c.Scale <= 1+1e-9) || len(f.Points) != 0 {
			t.Fatalf("%+v: collapse %+v with %d points", n, c, len(f.Points))
		}
		if most, ok := c.Most.Get(); ok && !(most >= 0 && units.Compare(most, c.Load.Power) <= 0) {
			t.Fatalf("%+v: the load could have %v", n, most)
		}
		return
	}
	turnover := float64(f.Loads + f.Heat + f.BankHeat)
	for _, s := range f.Shares {
		turnover += math.Abs(float64(s.Current.At(s.Battery.Voltage)))
	}
	for _, p := range f.Points {
		if !(p.Voltage > 0 && p.Voltage <= f.OpenCircuit) || !(p.Drop >= 0) || !(p.Current >= 0) {
			t.Fatalf("%+v: point %+v", n, p)
		}
		if want := p.Load.At(p.Voltage); !(math.Abs(float64(p.Drawn-want)) <= 1e-9*float64(want)) {
			t.Fatalf("%+v: point %+v", n, p)
		}
	}
	if off := float64(f.Supplied - f.Loads - f.Heat - f.BankHeat); !(math.Abs(off) <= 1e-8*turnover) {
		t.Fatalf("%+v: energy is off by %v of %v", n, off, turnover)
	}
}
