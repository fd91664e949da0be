package wire_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// trailer is a small harness with every kind of part in it.
func trailer() wire.Network {
	b := func(name string, v units.Voltage) wire.Battery {
		return wire.Battery{Name: name, Voltage: v, Resistance: 4 * mOhm,
			Limit: units.Some[units.Current](100), ChargeLimit: units.Some[units.Current](75)}
	}
	link := wire.Lead{Conductor: wire.Conductor{Size: wire.AWG(2)}, Length: 0.4, Extra: 0.3 * mOhm}
	limits := func(b wire.Branch, i units.Current, v units.Voltage) wire.Branch {
		b.Limit, b.Lowest = units.Some(i), units.Some(v)
		return b
	}
	run := func(name, parent string, gauge int, oneWay units.Length, load wire.Load) wire.Branch {
		return wire.Branch{Name: name, Parent: parent, Conductor: wire.Conductor{Size: wire.AWG(gauge)}, OneWay: oneWay, Load: load}
	}
	n := wire.Network{
		Batteries: []wire.Battery{b("near", 13.2), b("far", 13.2)},
		Links:     []wire.Link{{Plus: link, Minus: link}},
		Plus:      "near", Minus: "far",
		Branches: []wire.Branch{
			limits(run("panel", "", 6, 2.5, wire.Load{}), 55, 12),
			limits(run("lamps", "panel", 14, 5, ampsOf(4)), 15, 12),
			limits(run("fridge", "panel", 10, 6, wattsOf(60)), 30, 12),
			limits(run("furnace", "panel", 12, 4, ohmsOf(2)), 20, 12),
			limits(run("inverter", "", 0, 1, wattsOf(1000)), 150, 11.5),
		},
	}
	n.Branches[1].Extra = 5 * mOhm
	n.Branches[3].Return = units.Some(8 * mOhm)
	return n
}

// flowOf solves n, which may collapse.
func flowOf(t *testing.T, n wire.Network) *wire.Flow {
	t.Helper()
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatal(err)
	}
	f := new(wire.Flow)
	if err := h.Solve(f, wire.Moment{}); err != nil {
		t.Fatal(err)
	}
	return f
}

// TestHalfChargedLeadBank is a bank of 12.2 V with an inverter of 1800 W behind
// 10 mΩ: V = (E + √(E² - 4RP))/2 is 10.483 V at 171.7 A, below a cut-off of
// 10.5 V. One round of I = P/E has 10.725 V, and passes.
func TestHalfChargedLeadBank(t *testing.T) {
	f := solved(t, wire.Network{Batteries: bankOf(12.2, 6*mOhm), Branches: []wire.Branch{
		{Name: "inverter", Extra: 4 * mOhm, Load: wattsOf(1800), Lowest: units.Some[units.Voltage](10.5)}}})
	near(t, "volts", float64(f.Points[0].Voltage), 10.483)
	near(t, "amperes", float64(f.Points[0].Current), 171.7)
	if !has(f.Findings(), "voltage-below-lowest") {
		t.Errorf("found %v", rules(f.Findings()))
	}
}

// TestTakeOff is a row of four alike batteries of 3 mΩ, each link 0.3 mΩ a
// lead, with 200 A: 77.1, 52.5, 38.4 and 32.0 A with both leads at the first;
// 54.5, 45.5, 45.5 and 54.5 A with plus at one end and minus at the other.
func TestTakeOff(t *testing.T) {
	row := func(plus, minus string) []float64 {
		link := leadsOf(0.3*mOhm, 0.3*mOhm)
		n := wire.Network{Links: []wire.Link{link, link, link}, Plus: plus, Minus: minus, Branches: []wire.Branch{{Name: "load", Load: ampsOf(200)}}}
		for _, name := range []string{"1", "2", "3", "4"} {
			n.Batteries = append(n.Batteries, wire.Battery{Name: name, Voltage: 13.2, Resistance: 3 * mOhm})
		}
		f := solved(t, n)
		var shares []float64
		for _, s := range f.Shares {
			shares = append(shares, float64(s.Current))
		}
		if got := has(f.Findings(), "share-unequal"); got != (plus == minus) {
			t.Errorf("from %s and %s: share-unequal is %v", plus, minus, got)
		}
		return shares
	}
	for _, c := range []struct {
		plus, minus string
		want        [4]float64
	}{
		{"1", "1", [4]float64{77.1, 52.5, 38.4, 32.0}},
		{"", "", [4]float64{77.1, 52.5, 38.4, 32.0}},
		{"4", "4", [4]float64{32.0, 38.4, 52.5, 77.1}},
		{"1", "4", [4]float64{54.5, 45.5, 45.5, 54.5}},
		{"4", "1", [4]float64{54.5, 45.5, 45.5, 54.5}},
	} {
		for i, got := range row(c.plus, c.minus) {
			if math.Abs(got-c.want[i]) > 0.05 {
				t.Errorf("from %q and %q: battery %d gives %.2f A, want %v", c.plus, c.minus, i+1, got, c.want[i])
			}
		}
	}
	// At the middle, each outer battery has one link more than an inner one,
	// and the row is symmetric.
	middle := row("2", "3")
	if math.Abs(middle[0]-middle[3]) > 1e-9 || math.Abs(middle[1]-middle[2]) > 1e-9 || !(middle[0] < middle[1]) {
		t.Errorf("at the middle: %v", middle)
	}
}

// TestOneCable holds one constant power on one cable against the closed form,
// to within a part in 1e9 of collapse, and beyond it.
func TestOneCable(t *testing.T) {
	const e, r = 12.6, 0.0087
	most := e * e / 4 / r
	for _, part := range []float64{1e-9, 0.1, 0.5, 0.9, 0.999, 1 - 1e-6, 1 - 1e-9, 1 + 1e-9, 1 + 1e-6, 1.5, 1e6, 1e12} {
		f := flowOf(t, wire.Network{Batteries: bankOf(e, 0), Branches: []wire.Branch{feederOf("a", "", r, wattsOf(units.Power(part*most)))}})
		c, collapsed := f.Collapse.Get()
		if collapsed != (part > 1) {
			t.Errorf("%v of the most: collapse is %v", part, collapsed)
			continue
		}
		if !collapsed {
			left := math.Sqrt(1 - part)
			// The square root of what rounding leaves of 1 - part.
			within := 1e-13 + 1e-15/left
			if want := e * (1 + left) / 2; math.Abs(float64(f.Points[0].Voltage)-want) > within*e {
				t.Errorf("%v of the most: %v, want %v", part, float64(f.Points[0].Voltage), want)
			}
			continue
		}
		if got, _ := c.Most.Get(); units.Compare(got, units.Power(most)) != 0 || units.Compare(c.Scale, units.Ratio(1/part)) != 0 {
			t.Errorf("%v of the most: %v and %v, want %v", part, got, c.Scale, most)
		}
		if len(f.Points) != 0 || len(f.Shares) != 0 || f.Voltage != 0 || f.Current != 0 || f.Loads != 0 {
			t.Errorf("%v of the most: a state is shown: %+v", part, f)
		}
	}
}

// TestConstantCurrentCollapse: 12 V behind 10 mΩ cannot drive 1500 A; 1200 A
// leave nothing, so that is the end.
func TestConstantCurrentCollapse(t *testing.T) {
	f := flowOf(t, wire.Network{Batteries: bankOf(12, 4*mOhm), Branches: []wire.Branch{feederOf("winch", "", 6*mOhm, ampsOf(1500))}})
	c, ok := f.Collapse.Get()
	if !ok || units.Compare(c.Scale, 0.8) != 0 || c.Most.IsSet() || c.Branch != 0 {
		t.Errorf("collapse %+v, %v, want at 80 %%", c, ok)
	}
	if got := f.Findings(); len(got) != 1 || got[0].Rule != "harness-collapse" || !strings.Contains(got[0].String(), "current of \"winch\" 1.5 kA") {
		t.Errorf("found %v", got)
	}
}

// TestDirectConductor: 10 m of 4 mΩ/m there and back and 5 mΩ of joints are
// 85 mΩ; one way and a frame of 3 mΩ are 48 mΩ.
func TestHarnessResistances(t *testing.T) {
	c := wire.Conductor{Stated: units.Some(4 * units.MilliohmPerMetre)}
	f := solved(t, wire.Network{Batteries: bankOf(12, 0), Branches: []wire.Branch{
		{Name: "two wires", Conductor: c, OneWay: 10, Extra: 5 * mOhm},
		{Name: "frame", Conductor: c, OneWay: 10, Extra: 5 * mOhm, Return: units.Some(3 * mOhm)},
		{Name: "bar"},
		{Name: "perfect frame", Conductor: c, OneWay: 10, Return: units.Some[units.Resistance](0)},
	}})
	for i, want := range []float64{0.085, 0.048, 0, 0.040} {
		near(t, f.Points[i].Name, float64(f.Points[i].Resistance), want)
	}
}

// TestMoment: what a moment puts in place is the same as if the network said
// so, and the network is as before afterwards.
func TestMoment(t *testing.T) {
	n := trailer()
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatal(err)
	}
	changed := trailer()
	m := wire.Moment{Voltages: []units.Voltage{12.9, 13.0}}
	for i := range changed.Branches {
		m.Loads = append(m.Loads, wire.Load{Current: units.Current(i), Power: units.Power(10 * i)})
		changed.Branches[i].Load = m.Loads[i]
	}
	changed.Batteries[0].Voltage, changed.Batteries[1].Voltage = 12.9, 13.0
	var before, f, after wire.Flow
	n.Branches[0].Name, n.Batteries[0].Voltage = "not the harness's any more", 99
	for _, err := range []error{h.Solve(&before, wire.Moment{}), h.Solve(&f, m), h.Solve(&after, wire.Moment{})} {
		if err != nil {
			t.Fatal(err)
		}
	}
	want := solved(t, changed)
	if d := cmp.Diff(want.Points, f.Points, unitstest.Near(1e-14)) + cmp.Diff(want.Shares, f.Shares, unitstest.Near(1e-12)); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(before.Points, after.Points, unitstest.Near(0)); d != "" {
		t.Error(d)
	}
	// A used Flow gives what a fresh one does, whatever it was used for.
	for _, other := range []wire.Network{spiceTree(), {Batteries: bankOf(1, 1), Branches: []wire.Branch{feederOf("x", "", 1, wattsOf(9))}}} {
		g := flowOf(t, other)
		if err := h.Solve(g, m); err != nil || g.Collapse.IsSet() {
			t.Fatal(err, g.Collapse)
		}
		if d := cmp.Diff(f.Points, g.Points, unitstest.Near(0)) + cmp.Diff(f.Shares, g.Shares, unitstest.Near(0)); d != "" {
			t.Error(d)
		}
	}
}

func TestMostPower(t *testing.T) {
	h, err := wire.NewHarness(trailer())
	if err != nil {
		t.Fatal(err)
	}
	most, err := h.MostPower("inverter", wire.Moment{})
	if err != nil {
		t.Fatal(err)
	}
	i, ok := h.Index("inverter")
	if !ok || i != 4 || h.Len() != 5 {
		t.Fatalf("Index is %d, %v of %d", i, ok, h.Len())
	}
	if _, ok := h.Index("nobody"); ok {
		t.Error("nobody is a branch")
	}
	for _, c := range []struct {
		part units.Ratio
		want bool
	}{{1 - 1e-8, false}, {1 + 1e-8, true}} {
		n := trailer()
		n.Branches[i].Load = wattsOf(units.Scale(most, c.part))
		if got := flowOf(t, n).Collapse.IsSet(); got != c.want {
			t.Errorf("%v of the most: collapse is %v", c.part, got)
		}
	}
	// Nothing limits what sits on the posts of a bank without resistance.
	bare, err := wire.NewHarness(wire.Network{Batteries: bankOf(12, 0), Branches: []wire.Branch{{Name: "a"}}})
	if err != nil {
		t.Fatal(err)
	}
	_, err = bare.MostPower("a", wire.Moment{})
	var out *units.RangeError
	if !errors.As(err, &out) {
		t.Errorf("without resistance: %v", err)
	}
	_, err = h.MostPower("nobody", wire.Moment{})
	checkNetworkError(t, err, "nobody", wire.ErrUnknown)
	over := trailer()
	over.Branches[2].Load = wattsOf(1e5)
	h, err = wire.NewHarness(over)
	if err != nil {
		t.Fatal(err)
	}
	_, err = h.MostPower("inverter", wire.Moment{})
	checkNetworkError(t, err, "inverter", wire.ErrCollapse)
	_, err = h.MostPower("inverter", wire.Moment{Voltages: []units.Voltage{1}})
	if !errors.As(err, &out) || out.Field != "len(Voltages)" {
		t.Errorf("short Voltages: %v", err)
	}
}

// TestDeep solves a chain of 20000 branches, deeper than any stack would bear
// that called itself for each.
func TestDeep(t *testing.T) {
	n := wire.Network{Batteries: bankOf(48, mOhm)}
	for i := range 20000 {
		b := feederOf(strconv.Itoa(i), "", units.Microohm, wire.Load{})
		if i > 0 {
			b.Parent = strconv.Itoa(i - 1)
		}
		n.Branches = append(n.Branches, b)
	}
	n.Branches[19999].Load = wattsOf(960)
	f := solved(t, n)
	// (48 + √(48² - 4·0.021·960))/2, for 1 mΩ and 20000 µΩ.
	near(t, "volts at the end", float64(f.Points[19999].Voltage), (48+math.Sqrt(48*48-4*0.021*960))/2)
}
