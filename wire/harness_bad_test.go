package wire_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// checkNetworkError demands a *NetworkError about name with a cause.
func checkNetworkError(t *testing.T, err error, name string, cause error) {
	t.Helper()
	var e *wire.NetworkError
	if !errors.As(err, &e) || e.Name != name || !errors.Is(err, cause) || e.Error() == "" {
		t.Errorf("error %v, want one about %q: %v", err, name, cause)
	}
}

func TestNetworkErrors(t *testing.T) {
	for what, c := range map[string]struct {
		change func(*wire.Network)
		name   string
		cause  error
	}{
		"no battery":       {func(n *wire.Network) { n.Batteries, n.Links = nil, nil }, "", wire.ErrNoBattery},
		"no link":          {func(n *wire.Network) { n.Links = nil }, "", wire.ErrLinks},
		"too many links":   {func(n *wire.Network) { n.Links = make([]wire.Link, 2) }, "", wire.ErrLinks},
		"unnamed battery":  {func(n *wire.Network) { n.Batteries[1].Name = "" }, "", wire.ErrUnnamed},
		"battery twice":    {func(n *wire.Network) { n.Batteries[1].Name = "near" }, "near", wire.ErrDuplicate},
		"unknown plus":     {func(n *wire.Network) { n.Plus = "middle" }, "middle", wire.ErrUnknown},
		"unknown minus":    {func(n *wire.Network) { n.Minus = "middle" }, "middle", wire.ErrUnknown},
		"unnamed branch":   {func(n *wire.Network) { n.Branches[2].Name = "" }, "", wire.ErrUnnamed},
		"branch twice":     {func(n *wire.Network) { n.Branches[2].Name = "lamps" }, "lamps", wire.ErrDuplicate},
		"orphan":           {func(n *wire.Network) { n.Branches[2].Parent = "attic" }, "attic", wire.ErrUnknown},
		"own parent":       {func(n *wire.Network) { n.Branches[2].Parent = "fridge" }, "fridge", wire.ErrCycle},
		"two feed another": {func(n *wire.Network) { n.Branches[1].Parent, n.Branches[2].Parent = "fridge", "lamps" }, "lamps", wire.ErrCycle},
		"hangs on a circle": {func(n *wire.Network) {
			n.Branches[1].Parent, n.Branches[2].Parent, n.Branches[3].Parent = "furnace", "furnace", "fridge"
		}, "fridge", wire.ErrCycle},
	} {
		t.Run(what, func(t *testing.T) {
			n := trailer()
			c.change(&n)
			h, err := wire.NewHarness(n)
			checkNetworkError(t, err, c.name, c.cause)
			if h != nil {
				t.Error("there is a harness all the same")
			}
		})
	}
}

// TestHarnessBadNumbers puts every wrong number into every field.
func TestHarnessBadNumbers(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	aboveZero, atLeastZero := []float64{nan, inf, -inf, 0, -1}, []float64{nan, inf, -inf, -1}
	for field, c := range map[string]struct {
		bad []float64
		set func(n *wire.Network, x float64)
	}{
		`Batteries["far"].Voltage`:       {aboveZero, func(n *wire.Network, x float64) { n.Batteries[1].Voltage = units.Voltage(x) }},
		`Batteries["far"].Resistance`:    {aboveZero, func(n *wire.Network, x float64) { n.Batteries[1].Resistance = units.Resistance(x) }},
		`Batteries["far"].Limit`:         {aboveZero, func(n *wire.Network, x float64) { n.Batteries[1].Limit = units.Some(units.Current(x)) }},
		`Batteries["far"].ChargeLimit`:   {aboveZero, func(n *wire.Network, x float64) { n.Batteries[1].ChargeLimit = units.Some(units.Current(x)) }},
		`Links[0].Plus.Length`:           {atLeastZero, func(n *wire.Network, x float64) { n.Links[0].Plus.Length = units.Length(x) }},
		`Links[0].Minus.Length`:          {atLeastZero, func(n *wire.Network, x float64) { n.Links[0].Minus.Length = units.Length(x) }},
		`Links[0].Plus.Extra`:            {atLeastZero, func(n *wire.Network, x float64) { n.Links[0].Plus.Extra = units.Resistance(x) }},
		`Links[0].Minus.Extra`:           {atLeastZero, func(n *wire.Network, x float64) { n.Links[0].Minus.Extra = units.Resistance(x) }},
		`Branches["fridge"].OneWay`:      {atLeastZero, func(n *wire.Network, x float64) { n.Branches[2].OneWay = units.Length(x) }},
		`Branches["fridge"].Return`:      {atLeastZero, func(n *wire.Network, x float64) { n.Branches[2].Return = units.Some(units.Resistance(x)) }},
		`Branches["fridge"].Extra`:       {atLeastZero, func(n *wire.Network, x float64) { n.Branches[2].Extra = units.Resistance(x) }},
		`Branches["fridge"].Lowest`:      {aboveZero, func(n *wire.Network, x float64) { n.Branches[2].Lowest = units.Some(units.Voltage(x)) }},
		`Branches["fridge"].Limit`:       {aboveZero, func(n *wire.Network, x float64) { n.Branches[2].Limit = units.Some(units.Current(x)) }},
		`Branches["fridge"].Load.Power`:  {atLeastZero, func(n *wire.Network, x float64) { n.Branches[2].Load.Power = units.Power(x) }},
		`Branches["lamps"].Load.Current`: {atLeastZero, func(n *wire.Network, x float64) { n.Branches[1].Load.Current = units.Current(x) }},
		`Branches["lamps"].Load.Resistance`: {aboveZero, func(n *wire.Network, x float64) {
			n.Branches[1].Load.Resistance = units.Some(units.Resistance(x))
		}},
		`Branches["fridge"].Conductor.Stated`: {aboveZero, func(n *wire.Network, x float64) {
			n.Branches[2].Conductor.Stated = units.Some(units.ResistancePerLength(x))
		}},
		`Links[0].Plus.Conductor.Stated`: {aboveZero, func(n *wire.Network, x float64) {
			n.Links[0].Plus.Conductor.Stated = units.Some(units.ResistancePerLength(x))
		}},
		// Finite numbers whose sum or product is not.
		`Branches["fridge"].resistance`: {[]float64{1.5e308}, func(n *wire.Network, x float64) {
			n.Branches[2].Extra, n.Branches[2].Return = units.Resistance(x), units.Some(units.Resistance(x))
		}},
		`Links[0].Minus.resistance`: {[]float64{1e308}, func(n *wire.Network, x float64) {
			n.Links[0].Minus.Length, n.Links[0].Minus.Conductor.Stated = units.Length(x), units.Some(units.ResistancePerLength(x))
		}},
		`resistance of the bank`: {[]float64{1e308}, func(n *wire.Network, x float64) {
			n.Batteries[0].Resistance, n.Batteries[1].Resistance = units.Resistance(x), units.Resistance(x)
		}},
		// A million times the best battery.
		`Batteries["near"].Resistance`: {[]float64{4001}, func(n *wire.Network, x float64) { n.Batteries[0].Resistance = units.Resistance(x) }},
		`Links[0].Plus`:                {[]float64{4001}, func(n *wire.Network, x float64) { n.Links[0].Plus.Extra = units.Resistance(x) }},
		`Links[0].Minus`:               {[]float64{4001}, func(n *wire.Network, x float64) { n.Links[0].Minus.Extra = units.Resistance(x) }},
	} {
		for _, x := range c.bad {
			n := trailer()
			c.set(&n, x)
			h, err := wire.NewHarness(n)
			checkField(t, err, field)
			if h != nil {
				t.Errorf("%s = %v: there is a harness all the same", field, x)
			}
		}
	}
	// A bank known by its voltage alone is allowed.
	if _, err := wire.NewHarness(wire.Network{Batteries: bankOf(12, 0)}); err != nil {
		t.Error(err)
	}
	_, err := wire.NewHarness(wire.Network{Batteries: bankOf(12, -1)})
	checkField(t, err, "Batteries[0].Resistance")
}

// checkField demands a *RangeError about a field.
func checkField(t *testing.T, err error, field string) {
	t.Helper()
	var e *units.RangeError
	if !errors.As(err, &e) || e.Field != field || e.Error() == "" {
		t.Errorf("error %v, want a *RangeError about %s", err, field)
	}
}

// TestBadMoments: a refused moment leaves nothing of an earlier one.
func TestBadMoments(t *testing.T) {
	h, err := wire.NewHarness(trailer())
	if err != nil {
		t.Fatal(err)
	}
	bad := make([]wire.Load, 5)
	bad[1].Current = -1
	huge := make([]wire.Load, 5)
	huge[3].Resistance = units.Some[units.Resistance](1e-320)
	for field, m := range map[string]wire.Moment{
		"len(Loads)":                     {Loads: make([]wire.Load, 4)},
		"len(Voltages)":                  {Voltages: []units.Voltage{12}},
		"Voltages[1]":                    {Voltages: []units.Voltage{12, 0}},
		`Branches["lamps"].Load.Current`: {Loads: bad},
		"Voltage":                        {Loads: huge},
	} {
		var f wire.Flow
		if err := h.Solve(&f, wire.Moment{}); err != nil {
			t.Fatal(err)
		}
		err := h.Solve(&f, m)
		checkField(t, err, field)
		if len(f.Points) != 0 || len(f.Shares) != 0 || f.Loads != 0 || f.OpenCircuit != 0 || f.Findings() != nil {
			t.Errorf("%s: %+v is left", field, f)
		}
	}
	checkField(t, h.Solve(nil, wire.Moment{}), "f")
	var zero wire.Harness
	checkNetworkError(t, zero.Solve(new(wire.Flow), wire.Moment{}), "", wire.ErrNoBattery)
	checkNetworkError(t, (*wire.Harness)(nil).Solve(new(wire.Flow), wire.Moment{}), "", wire.ErrNoBattery)
	_, err = zero.MostPower("a", wire.Moment{})
	checkNetworkError(t, err, "", wire.ErrNoBattery)
	// Sums that no float64 holds.
	n := wire.Network{Batteries: bankOf(1e300, 0), Branches: []wire.Branch{{Name: "a", Load: ampsOf(1e300)}}}
	if h, err = wire.NewHarness(n); err != nil {
		t.Fatal(err)
	}
	checkField(t, h.Solve(new(wire.Flow), wire.Moment{}), "Supplied")
}

// TestBridge is a row taken off crosswise whose links make a bridge of it: a
// current drawn from the ends flows backwards through the battery in the
// middle, so a high voltage there is against all others.
func TestBridge(t *testing.T) {
	n := wire.Network{Plus: "1", Minus: "3", Links: []wire.Link{leadsOf(100*mOhm, 0), leadsOf(0, 100*mOhm)}, Branches: []wire.Branch{{Name: "a", Load: ampsOf(10)}}}
	for _, name := range []string{"1", "2", "3"} {
		n.Batteries = append(n.Batteries, wire.Battery{Name: name, Voltage: 13, Resistance: mOhm})
	}
	f := solved(t, n)
	if !(f.Shares[1].Current < 0) {
		t.Errorf("the middle gives %v", f.Shares[1].Current)
	}
	checkTwin(t, n)
	n.Batteries[1].Voltage = 1300
	h, err := wire.NewHarness(n)
	if err != nil {
		t.Fatal(err)
	}
	checkField(t, h.Solve(new(wire.Flow), wire.Moment{}), "OpenCircuit")
}

// TestEditedFlow: results that were never solved, or changed by hand, answer
// without panic.
func TestEditedFlow(t *testing.T) {
	var none *wire.Flow
	flows := []*wire.Flow{none, new(wire.Flow), flowOf(t, trailer()), flowOf(t, trailer()), flowOf(t, trailer())}
	flows[2].Points = flows[2].Points[:2]
	flows[2].Shares = append(flows[2].Shares, wire.Share{}, wire.Share{})
	flows[3].Points = append(flows[3].Points, wire.Point{}, wire.Point{})
	flows[3].Collapse = units.Some(wire.Collapse{Branch: 99})
	flows[4].Points, flows[4].Shares = append(flows[4].Points, wire.Point{}), nil
	for k, f := range flows {
		for i := -1; i < 8; i++ {
			_, _ = f.Working(i).Text(), f.ShareWorking(i).Text()
		}
		for _, g := range f.Findings() {
			if g.String() == "" {
				t.Errorf("flow %d: an empty finding", k)
			}
		}
	}
}
