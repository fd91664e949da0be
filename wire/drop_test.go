package wire_test

import (
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// lamp is an everyday run that every field of which can be changed.
func lamp() wire.Run {
	return wire.Run{
		Current:   20 * units.Ampere,
		OneWay:    15 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(10), Temperature: units.Celsius(20)},
		Source:    12.8 * units.Volt,
		Allowed:   units.Some(3 * units.Percent),
	}
}

// questions are the three calculators, with what is common to their results.
var questions = map[string]func(wire.Run) (any, error){
	"wire.VoltageDrop":  func(r wire.Run) (any, error) { v, err := wire.VoltageDrop(r); return v, err },
	"wire.LongestRun":   func(r wire.Run) (any, error) { v, err := wire.LongestRun(r); return v, err },
	"wire.SmallestSize": func(r wire.Run) (any, error) { v, err := wire.SmallestSize(r, wire.Gauges()); return v, err },
	"wire.Resistance":   func(r wire.Run) (any, error) { v, err := wire.Resistance(r.Conductor); return v, err },
}

var zeros = map[string]any{
	"wire.VoltageDrop": wire.Drop{}, "wire.LongestRun": wire.Reach{},
	"wire.SmallestSize": wire.Selection{}, "wire.Resistance": wire.PerLength{},
}

// bad are numbers that no length, current or voltage may be.
var bad = []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, math.Copysign(0, -1)}

func TestEveryFieldIsChecked(t *testing.T) {
	type change struct {
		field string
		spoil func(*wire.Run, float64)
		not   string // a question that does not look at the field
	}
	for _, c := range []change{
		{"Current", func(r *wire.Run, x float64) { r.Current = units.Current(x) }, "wire.Resistance"},
		{"Source", func(r *wire.Run, x float64) { r.Source = units.Voltage(x) }, "wire.Resistance"},
		{"Allowed", func(r *wire.Run, x float64) { r.Allowed = units.Some(units.Ratio(x)) }, "wire.Resistance"},
		{"Resistivity", func(r *wire.Run, x float64) { r.Conductor.Resistivity = units.Some(units.Resistivity(x)) }, ""},
	} {
		for op, ask := range questions {
			if op == c.not {
				continue
			}
			for _, x := range bad {
				r := lamp()
				c.spoil(&r, x)
				got, err := ask(r)
				wantRangeError(t, err, op, c.field)
				if got != zeros[op] {
					t.Errorf("%s with %s = %v: result %+v, want the zero value", op, c.field, x, got)
				}
			}
		}
	}
	for _, x := range bad {
		r := lamp()
		r.OneWay = units.Length(x)
		_, err := wire.VoltageDrop(r)
		wantRangeError(t, err, "wire.VoltageDrop", "OneWay")
		_, err = wire.SmallestSize(r, wire.Gauges())
		wantRangeError(t, err, "wire.SmallestSize", "OneWay")
		r = lamp()
		r.Conductor.Stated = units.Some(units.ResistancePerLength(x))
		_, err = wire.VoltageDrop(r)
		wantRangeError(t, err, "wire.VoltageDrop", "Stated")
	}
}

func wantRangeError(t *testing.T, err error, op, field string) {
	t.Helper()
	var e *units.RangeError
	if !errors.As(err, &e) || !errors.Is(err, units.ErrRange) {
		t.Errorf("%s with a bad %s: %v, want a *units.RangeError", op, field, err)
		return
	}
	if e.Op != op || e.Field != field || e.Allowed.String() == "" {
		t.Errorf("got %v, want an error of %s for %s", err, op, field)
	}
}

func TestConductorIsChecked(t *testing.T) {
	for _, c := range []struct {
		what  string
		wrong wire.Conductor
		field string
	}{
		{"no size", wire.Conductor{}, "Size"},
		{"no size, with a resistivity", wire.Conductor{Resistivity: units.Some(units.OhmCircularMilPerFoot)}, "Size"},
		{"flexible gauge", wire.Conductor{Size: wire.AWG(10), Strand: wire.Flexible}, "Strand"},
		{"unknown strand", wire.Conductor{Size: wire.AWG(10), Strand: 9}, "Strand"},
		{"too cold", wire.Conductor{Size: wire.AWG(10), Temperature: units.Celsius(-40.1)}, "Temperature"},
		{"too warm", wire.Conductor{Size: wire.AWG(10), Temperature: units.Celsius(150.1)}, "Temperature"},
		{"no temperature at all", wire.Conductor{Size: wire.AWG(10), Temperature: units.Celsius(math.NaN())}, "Temperature"},
	} {
		t.Run(c.what, func(t *testing.T) {
			_, err := wire.Resistance(c.wrong)
			wantRangeError(t, err, "wire.Resistance", c.field)
			r := lamp()
			r.Conductor = c.wrong
			_, err = wire.VoltageDrop(r)
			wantRangeError(t, err, "wire.VoltageDrop", c.field)
			_, err = wire.LongestRun(r)
			wantRangeError(t, err, "wire.LongestRun", c.field)
		})
	}
	for _, limit := range []float64{-40, 150} {
		if _, err := wire.Resistance(wire.Conductor{Size: wire.AWG(10), Temperature: units.Celsius(limit)}); err != nil {
			t.Errorf("%v °C is in range: %v", limit, err)
		}
	}
}

func TestResultTooLargeOrSmall(t *testing.T) {
	huge, tiny := lamp(), lamp()
	huge.Current, huge.OneWay = 1e200, 1e200
	tiny.Current, tiny.OneWay = 1e-200, 1e-200
	for _, r := range []wire.Run{huge, tiny} {
		d, err := wire.VoltageDrop(r)
		wantRangeError(t, err, "wire.VoltageDrop", "Heat")
		if d != (wire.Drop{}) {
			t.Errorf("VoltageDrop(%+v) = %+v, want the zero Drop", r, d)
		}
	}
	faint := lamp()
	faint.Current, faint.OneWay, faint.Source = 1e-100, 1e-100, 1e200
	_, err := wire.VoltageDrop(faint)
	wantRangeError(t, err, "wire.VoltageDrop", "Fraction")
	far := lamp()
	far.Current, far.Source = 1e-300, 1e300
	_, err = wire.LongestRun(far)
	wantRangeError(t, err, "wire.LongestRun", "OneWay")
	none := lamp()
	none.Conductor.Resistivity = units.Some(units.Resistivity(1e308))
	_, err = wire.Resistance(none.Conductor)
	wantRangeError(t, err, "wire.Resistance", "PerLength")
}

func TestInverseQuestionsNeedALimit(t *testing.T) {
	r := lamp()
	r.Allowed = units.None[units.Ratio]()
	_, err := wire.LongestRun(r)
	wantRangeError(t, err, "wire.LongestRun", "Allowed")
	_, err = wire.SmallestSize(r, wire.Gauges())
	wantRangeError(t, err, "wire.SmallestSize", "Allowed")
	r = lamp()
	r.Allowed = units.Some[units.Ratio](1)
	_, err = wire.LongestRun(r)
	wantRangeError(t, err, "wire.LongestRun", "Allowed")
}

func TestSmallestSizeRefuses(t *testing.T) {
	r := lamp()
	r.Conductor.Stated = units.Some(2 * units.OhmPerKilofoot)
	_, err := wire.SmallestSize(r, wire.Gauges())
	wantRangeError(t, err, "wire.SmallestSize", "Stated")
	_, err = wire.SmallestSize(lamp(), nil)
	wantRangeError(t, err, "wire.SmallestSize", "from")
	_, err = wire.SmallestSize(lamp(), []wire.Size{wire.AWG(4), {}})
	wantRangeError(t, err, "wire.SmallestSize", "Size")
	r = lamp()
	r.OneWay = 5 * units.Kilometre
	_, err = wire.SmallestSize(r, append(wire.Gauges(), wire.AWG(22)))
	wantRangeError(t, err, "wire.SmallestSize", "MaxPerLength")
	// What is wanted is the resistance of the thickest, wherever it stands.
	thickest, _ := wire.Resistance(wire.Conductor{Size: wire.Kcmil(500), Temperature: units.Celsius(20)})
	if e := (*units.RangeError)(nil); !errors.As(err, &e) || e.Allowed != units.AtLeast(thickest.At) {
		t.Errorf("got %v, want at least %v", err, thickest.At)
	}
}

// TestClaimOnABurningWire: a drop that is quoted right does not make a wire
// right that no table allows.
func TestClaimOnABurningWire(t *testing.T) {
	r := lamp()
	r.Current, r.OneWay, r.Conductor.Size = 400*units.Ampere, 1*units.Foot, wire.AWG(14)
	d, err := wire.VoltageDrop(r)
	if err != nil {
		t.Fatal(err)
	}
	j, err := working.Claim{What: "drop", Stated: units.MustPrinted(units.Fixed(units.In(d.Fraction, units.Percent), 1), "%"),
		Computed: d.Fraction, Unit: "%", SafeSide: working.Higher, Findings: d.Findings()}.Judge()
	if err != nil || j.Verdict != working.Unsafe {
		t.Errorf("verdict %v, %v, want unsafe", j.Verdict, err)
	}
}

// TestDropLaws holds whatever the numbers are.
func TestDropLaws(t *testing.T) {
	base, err := wire.VoltageDrop(lamp())
	if err != nil {
		t.Fatal(err)
	}
	changed := func(change func(*wire.Run)) wire.Drop {
		r := lamp()
		change(&r)
		d, err := wire.VoltageDrop(r)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	same := func(a, b units.Voltage) bool { return units.Compare(a, b) == 0 }
	for law, holds := range map[string]func() bool{
		"twice the current drops twice as much": func() bool {
			return same(changed(func(r *wire.Run) { r.Current *= 2 }).Voltage, 2*base.Voltage)
		},
		"twice the current gives four times the heat": func() bool {
			return units.Compare(changed(func(r *wire.Run) { r.Current *= 2 }).Heat, 4*base.Heat) == 0
		},
		"twice the length drops twice as much": func() bool {
			return same(changed(func(r *wire.Run) { r.OneWay *= 2 }).Voltage, 2*base.Voltage)
		},
		"three gauges thinner has half the area, within 1 %, and twice the drop": func() bool {
			d := changed(func(r *wire.Run) { r.Conductor.Size = wire.AWG(13) })
			return math.Abs(units.In(d.Voltage, 2*base.Voltage)-1) < 0.01
		},
		"each warmer degree drops more": func() bool {
			last := base.Voltage
			for c := 21.0; c <= 150; c++ {
				d := changed(func(r *wire.Run) { r.Conductor.Temperature = units.Celsius(c) })
				if !(d.Voltage > last) {
					return false
				}
				last = d.Voltage
			}
			return true
		},
		"each larger gauge drops less": func() bool {
			last := units.Voltage(math.Inf(1))
			for _, size := range wire.Gauges() {
				d := changed(func(r *wire.Run) { r.Conductor.Size = size })
				if !(d.Voltage < last) {
					return false
				}
				last = d.Voltage
			}
			return true
		},
		"solid drops less than stranded": func() bool {
			return changed(func(r *wire.Run) { r.Conductor.Strand = wire.Solid }).Voltage < base.Voltage
		},
		"source voltage changes the fraction and not the volts": func() bool {
			d := changed(func(r *wire.Run) { r.Source *= 2 })
			return d.Voltage == base.Voltage && units.Compare(2*d.Fraction, base.Fraction) == 0
		},
		"what is lost and what is left are the source": func() bool {
			return same(base.Voltage+base.AtLoad, base.Run.Source)
		},
		"energy is kept: source power is load power and heat": func() bool {
			i := base.Run.Current
			return units.Compare(i.At(base.Run.Source), i.At(base.AtLoad)+base.Heat) == 0
		},
		"the temperature not given is 75 °C and is said": func() bool {
			d := changed(func(r *wire.Run) { r.Conductor.Temperature = units.Temperature{} })
			warm := changed(func(r *wire.Run) { r.Conductor.Temperature = units.Celsius(75) })
			return d == warm && d.Run.Conductor.Temperature == units.Celsius(75)
		},
		"the longest run drops what is allowed": func() bool {
			x, err := wire.LongestRun(lamp())
			if err != nil {
				return false
			}
			d, err := wire.VoltageDrop(x.Run)
			return err == nil && units.Compare(d.Fraction, 3*units.Percent) == 0 && same(d.Voltage, x.Voltage)
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

// TestSmallestSizeIsTheSmallest compares with trying every size.
func TestSmallestSizeIsTheSmallest(t *testing.T) {
	lists := map[string][]wire.Size{"gauges": wire.Gauges(), "metric": wire.MetricSizes(), "jumbled": {
		wire.AWG(4), wire.AWG(12), wire.Aught(2), wire.AWG(8), wire.Metric(6 * units.SquareMillimetre), wire.AWG(10)}}
	for name, list := range lists {
		for _, amperes := range []units.Current{1, 5, 20, 45, 80} {
			for _, feet := range []units.Length{2, 10, 20, 40} {
				r := lamp()
				r.Current, r.OneWay = amperes, feet*units.Foot/units.Metre
				got, err := wire.SmallestSize(r, list)
				var want wire.Size
				for _, size := range list {
					r.Conductor.Size = size
					d, dropErr := wire.VoltageDrop(r)
					if dropErr != nil {
						t.Fatal(dropErr)
					}
					if !units.Exceeds(d.Fraction, 3*units.Percent) && (!want.IsValid() || size.Compare(want) < 0) {
						want = size
					}
				}
				if (err == nil) != want.IsValid() || err == nil && got.Run.Conductor.Size != want {
					t.Errorf("%s, %v over %v: %v, %v, want %v", name, r.Current, r.OneWay, got.Run.Conductor.Size, err, want)
				}
				if err == nil && got.Below.At > 0 && got.Below.At <= got.MaxPerLength {
					t.Errorf("%s, %v over %v: %v below would do too", name, r.Current, r.OneWay, got.Below.Conductor.Size)
				}
			}
		}
	}
}

// TestVerdictsDoNotMoveWithNoise puts the limit on the drop itself.
func TestVerdictsDoNotMoveWithNoise(t *testing.T) {
	r := lamp()
	d, err := wire.VoltageDrop(r)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		factor float64
		rule   bool
	}{{1, false}, {1 - 1e-12, false}, {1 + 1e-12, false}, {1 - 1e-6, true}, {1 + 1e-6, false}} {
		r.Allowed = units.Some(d.Fraction * units.Ratio(c.factor))
		d, err := wire.VoltageDrop(r)
		if err != nil {
			t.Fatal(err)
		}
		if has(d.Findings(), "drop-above-allowed") != c.rule {
			t.Errorf("allowed %v times the drop: found %v, want %v", c.factor, !c.rule, c.rule)
		}
	}
}

func has(findings []working.Finding, rule string) bool {
	for _, f := range findings {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

func TestDropFindings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*wire.Run)
		want   []string // all of them, in order, with the severity
	}{
		{"above what is allowed", func(*wire.Run) {}, []string{"caution drop-above-allowed", "note ampacity-not-checked"}},
		{"within it", func(r *wire.Run) { r.OneWay = 5 * units.Foot }, []string{"note ampacity-not-checked"}},
		{"nothing allowed said", func(r *wire.Run) { r.Allowed = units.None[units.Ratio]() },
			[]string{"note no-allowed-drop", "note ampacity-not-checked"}},
		{"all the voltage lost", func(r *wire.Run) { r.OneWay = 500 * units.Foot },
			[]string{"danger run-cannot-carry", "note ampacity-not-checked"}},
		{"more than in a wall", func(r *wire.Run) { r.Current, r.OneWay = 31*units.Ampere, 1*units.Foot },
			[]string{"caution current-above-ampacity-in-wall"}},
		{"more than in free air", func(r *wire.Run) { r.Current, r.OneWay = 60.1*units.Ampere, 1*units.Foot },
			[]string{"danger current-above-any-ampacity"}},
		{"a thin wire has the limit of the next in the tables", func(r *wire.Run) {
			r.Current, r.OneWay, r.Conductor.Size = 21*units.Ampere, 0.2*units.Foot, wire.AWG(22)
		}, []string{"danger current-above-any-ampacity"}},
		{"a metric size that of the gauges around it", func(r *wire.Run) {
			r.Current, r.OneWay, r.Conductor.Size = 21*units.Ampere, 1*units.Foot, wire.Metric(4*units.SquareMillimetre)
		}, []string{"caution current-above-ampacity-in-wall"}},
		{"beyond the free-air table nothing is a danger", func(r *wire.Run) {
			r.Current, r.OneWay, r.Conductor.Size = 600*units.Ampere, 1*units.Foot, wire.Kcmil(500)
		}, []string{"caution current-above-ampacity-in-wall"}},
		{"area of a metric size taken at its name", func(r *wire.Run) {
			r.Conductor.Size = wire.Metric(50 * units.SquareMillimetre)
			r.Conductor.Resistivity = units.Some(0.0175 * units.OhmSquareMillimetrePerMetre)
		}, []string{"caution nominal-area", "note ampacity-not-checked"}},
	} {
		r := lamp()
		c.change(&r)
		d, err := wire.VoltageDrop(r)
		if err != nil {
			t.Fatal(err)
		}
		findings := d.Findings()
		var got []string
		for i, f := range findings {
			got = append(got, f.Severity.String()+" "+f.Rule)
			if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
				t.Errorf("%s: finding %s is not complete: %+v", c.what, f.Rule, f)
			}
			if i > 0 && f.Severity > findings[i-1].Severity {
				t.Errorf("%s: findings are not worst first: %v", c.what, got)
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: findings %v, want %v", c.what, got, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: findings %v, want %v", c.what, got, c.want)
			}
		}
	}
}

// TestZeroResultsDoNotPanic asks empty results to explain themselves.
func TestZeroResultsDoNotPanic(t *testing.T) {
	for _, sheet := range []*working.Sheet{
		wire.Drop{}.Working(), wire.PerLength{}.Working(), wire.Selection{}.Working(), wire.Reach{}.Working(),
		wire.PerLength{Basis: 9, Conductor: wire.Conductor{Strand: 9}}.Working(),
	} {
		if sheet.Text() == "" {
			t.Error("a zero result has no text")
		}
	}
	if len(wire.Drop{}.Findings()) == 0 || len(wire.Selection{}.Findings()) == 0 || len(wire.Reach{}.Findings()) == 0 {
		t.Error("a zero result has no findings")
	}
	if f := (wire.PerLength{}).Findings(); f != nil {
		t.Errorf("the zero PerLength has findings %v", f)
	}
}
