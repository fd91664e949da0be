package wire_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// limited is a run that may drop 3 %.
func limited() wire.ACRun {
	r := roofUnit()
	r.Allowed = units.Some(3 * units.Percent)
	return r
}

// acAnswers are the inverse questions of alternating current.
var acAnswers = map[string]func(wire.ACRun) (wire.AlternatingDrop, error){
	"wire.ACLongestRun":     wire.ACLongestRun,
	"wire.ACLargestCurrent": wire.ACLargestCurrent,
	"wire.ACSmallestSize": func(r wire.ACRun) (wire.AlternatingDrop, error) {
		return wire.ACSmallestSize(r, wire.Gauges()[3:]) // Table 9 begins at 14 AWG
	},
}

func TestACInverseLaws(t *testing.T) {
	for _, leading := range []bool{false, true} {
		for method := wire.ACExact; method <= wire.ACApproximate; method++ {
			for _, pf := range []units.Ratio{0.2, 0.5, 0.85, 1} {
				for _, size := range []wire.Size{wire.AWG(10), wire.Aught(1), wire.Kcmil(250)} {
					r := limited()
					r.Method, r.PowerFactor, r.Leading, r.Line.Conductor.Size = method, units.Some(pf), leading, size
					for _, op := range []string{"wire.ACLongestRun", "wire.ACLargestCurrent"} {
						d, err := acAnswers[op](r)
						if err != nil {
							below := must[wire.AlternatingDrop](t)(wire.ACDrop(r)).Approximate <= 0
							if !(below && method == wire.ACApproximate) {
								t.Errorf("%s of %+v: %v", op, r, err)
							}
							continue
						}
						if units.Compare(d.Fraction, 3*units.Percent) != 0 || d != must[wire.AlternatingDrop](t)(wire.ACDrop(d.Run)) {
							t.Errorf("%s of %+v drops %v", op, r, d.Fraction)
						}
					}
				}
			}
		}
	}
}

// TestACSmallestSizeIsTheSmallest tries every size, of a list in any order.
func TestACSmallestSizeIsTheSmallest(t *testing.T) {
	list := []wire.Size{wire.AWG(4), wire.AWG(12), wire.Kcmil(500), wire.AWG(10), wire.Aught(1), wire.AWG(8), wire.AWG(6)}
	for _, amperes := range []units.Current{2, 10, 30, 80, 200, 500} {
		r := limited()
		r.Current = amperes
		var want wire.Size
		for _, size := range list {
			r.Line.Conductor.Size = size
			d := must[wire.AlternatingDrop](t)(wire.ACDrop(r))
			if !units.Exceeds(d.Fraction, 3*units.Percent) && (!want.IsValid() || size.Compare(want) < 0) {
				want = size
			}
		}
		got, err := wire.ACSmallestSize(r, list)
		if got.Run.Line.Conductor.Size != want || (err == nil) != want.IsValid() {
			t.Errorf("%v: %v, %v, want %v", amperes, got.Run.Line.Conductor.Size, err, want)
		}
	}
}

func TestACInverseRefuses(t *testing.T) {
	for op, ask := range acAnswers {
		r := limited()
		r.Allowed = units.None[units.Ratio]()
		d, err := ask(r)
		wantZero(t, d, err, op, "Allowed")
		for _, x := range bad {
			r = limited()
			r.Allowed = units.Some(units.Ratio(x))
			d, err = ask(r)
			wantZero(t, d, err, op, "Allowed")
			r = limited()
			r.Source = units.Voltage(x)
			d, err = ask(r)
			wantZero(t, d, err, op, "Source")
		}
		r = limited()
		r.Line.Conduit = 7
		d, err = ask(r)
		wantZero(t, d, err, op, "Conduit")
	}
	r := limited()
	for r.Method = wire.ACExact; r.Method <= wire.ACApproximate; r.Method++ {
		r.Leading, r.PowerFactor, r.Line = true, units.Some[units.Ratio](0.01),
			wire.ACConductor{Conductor: wire.Conductor{Size: wire.Kcmil(500)}, Conduit: wire.SteelConduit}
		d, err := wire.ACLongestRun(r)
		wantZero(t, d, err, "wire.ACLongestRun", "OneWay")
		d, err = wire.ACLargestCurrent(r)
		wantZero(t, d, err, "wire.ACLargestCurrent", "Current")
	}
	r = limited()
	for field, ask := range map[string]func() (wire.AlternatingDrop, error){
		"from": func() (wire.AlternatingDrop, error) { return wire.ACSmallestSize(r, nil) },
		"Stated": func() (wire.AlternatingDrop, error) {
			r := r
			r.Line.Conductor.Stated = units.Some(units.OhmPerKilofoot)
			return wire.ACSmallestSize(r, wire.Gauges())
		},
		"Resistivity": func() (wire.AlternatingDrop, error) {
			r := r
			r.Line.Conductor.Resistivity = units.Some(units.OhmCircularMilPerFoot)
			return wire.ACSmallestSize(r, wire.Gauges())
		},
		"Reactance": func() (wire.AlternatingDrop, error) { return wire.ACSmallestSize(r, wire.Gauges()) }, // 20 AWG
		"Allowed": func() (wire.AlternatingDrop, error) {
			r := r
			r.OneWay = 5000 * units.Foot
			return wire.ACSmallestSize(r, []wire.Size{wire.AWG(2), wire.Kcmil(500), wire.AWG(1)})
		},
	} {
		d, err := ask()
		wantZero(t, d, err, "wire.ACSmallestSize", field)
		if e := (*units.RangeError)(nil); field == "Allowed" && errors.As(err, &e) {
			r := r
			r.OneWay, r.Line.Conductor.Size = 5000*units.Foot, wire.Kcmil(500)
			if want := units.AtLeast(must[wire.AlternatingDrop](t)(wire.ACDrop(r)).Fraction); e.Allowed != want {
				t.Errorf("allowed is %v, want %v", e.Allowed, want)
			}
		}
	}
}

// fuzzACInverse feeds an inverse question with raw numbers.
func fuzzACInverse(f *testing.F, ask func(wire.ACRun) (wire.AlternatingDrop, error)) {
	f.Add(14.0, 22.0, 120.0, 0.85, 0.03, 0.0001, 10, uint8(0))
	f.Add(100.0, 90.0, 240.0, 0.1, 0.99, 0.1, 0, uint8(255))
	f.Add(math.NaN(), math.Inf(1), -1.0, 2.0, -1.0, -1.0, 99, uint8(63))
	f.Fuzz(func(t *testing.T, current, oneWay, source, pf, allowed, reactance float64, gauge int, flags uint8) {
		r := wire.ACRun{Current: units.Current(current), OneWay: units.Length(oneWay), Source: units.Voltage(source),
			Leading: flags&1 != 0, Method: wire.ACMethod(flags >> 1 & 1), PowerFactor: units.Some(units.Ratio(pf)),
			Allowed: units.Some(units.Ratio(allowed)),
			Line:    wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(gauge)}, Conduit: wire.Conduit(flags >> 2 & 3)}}
		if flags&16 != 0 {
			r.Line.Reactance = units.Some(units.ResistancePerLength(reactance))
		}
		d, err := ask(r)
		checkOutcome(t, err, float64(d.Heat), float64(d.Run.OneWay), float64(d.Run.Current))
		if err == nil && units.Exceeds(d.Fraction, r.Allowed.Or(0)+1e-6) {
			t.Fatalf("%v drop of %v allowed: %+v", d.Fraction, r.Allowed, d.Run)
		}
	})
}

func FuzzACLongestRun(f *testing.F) {
	fuzzACInverse(f, func(r wire.ACRun) (wire.AlternatingDrop, error) { return wire.ACLongestRun(r) })
}

func FuzzACLargestCurrent(f *testing.F) {
	fuzzACInverse(f, func(r wire.ACRun) (wire.AlternatingDrop, error) { return wire.ACLargestCurrent(r) })
}

func FuzzACSmallestSize(f *testing.F) {
	list := wire.Gauges()[3:]
	fuzzACInverse(f, func(r wire.ACRun) (wire.AlternatingDrop, error) { return wire.ACSmallestSize(r, list) })
}

func ExampleACSmallestSize() {
	run := wire.ACRun{
		Current: 14 * units.Ampere, OneWay: 75 * units.Foot, Source: 120 * units.Volt,
		PowerFactor: units.Some(85 * units.Percent), Allowed: units.Some(3 * units.Percent),
	}
	drop, err := wire.ACSmallestSize(run, []wire.Size{wire.AWG(14), wire.AWG(12), wire.AWG(10), wire.AWG(8)})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v drops %.1f\n", drop.Run.Line.Conductor.Size, drop.Fraction)
	// Output: 10 AWG drops 1.8 %
}

func ExampleACLongestRun() {
	drop, err := wire.ACLongestRun(wire.ACRun{
		Current: 14 * units.Ampere, Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(12)}}, Source: 120 * units.Volt,
		PowerFactor: units.Some(85 * units.Percent), Allowed: units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f ft\n", units.In(drop.Run.OneWay, units.Foot))
	// Output: 74.0 ft
}

func ExampleACLargestCurrent() {
	drop, err := wire.ACLargestCurrent(wire.ACRun{
		OneWay: 75 * units.Foot, Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(12)}}, Source: 120 * units.Volt,
		PowerFactor: units.Some(85 * units.Percent), Allowed: units.Some(3 * units.Percent),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f\n", drop.Run.Current)
	// Output: 13.8 A
}
