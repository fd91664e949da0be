package solar_test

import (
	"slices"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func has(findings []working.Finding, rule string) bool {
	return slices.ContainsFunc(findings, func(f working.Finding) bool { return f.Rule == rule })
}

// wantFindings demands exactly these rules, worst first and complete.
func wantFindings(t *testing.T, what string, findings []working.Finding, want ...string) {
	t.Helper()
	var rules []string
	for i, f := range findings {
		rules = append(rules, f.Rule)
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Errorf("%s: finding %s is not complete: %+v", what, f.Rule, f)
		}
		if i > 0 && f.Severity > findings[i-1].Severity {
			t.Errorf("%s: not worst first: %v", what, rules)
		}
	}
	if !slices.Equal(rules, want) {
		t.Errorf("%s: findings %v, want %v", what, rules, want)
	}
}

func TestHarvestFindings(t *testing.T) {
	wantFindings(t, "all given", harvest(t, warm()).Findings(), "harvest-not-accepted")
	wantFindings(t, "no temperature", harvest(t, october()).Findings(), "temperature-not-counted", "harvest-not-accepted")
	r := warm()
	r.Losses = solar.Losses{}
	wantFindings(t, "no losses", harvest(t, r).Findings(), "no-losses", "harvest-not-accepted")
	r.Losses = solar.TypicalLosses()
	wantFindings(t, "typical losses", harvest(t, r).Findings(), "harvest-not-accepted")
}

func TestSunFindings(t *testing.T) {
	wantFindings(t, "41.8° N in October", sunOn(t, 41.8, 288).Findings(), "above-the-air")
	wantFindings(t, "60° N in December", sunOn(t, 60, 349).Findings(), "above-the-air", "winter-beyond-55")
	wantFindings(t, "60° S in December", sunOn(t, -60, 349).Findings(), "above-the-air")
	wantFindings(t, "60° S in June", sunOn(t, -60, 166).Findings(), "above-the-air", "winter-beyond-55")
	wantFindings(t, "55° N in December", sunOn(t, 55, 349).Findings(), "above-the-air")
}

func TestCellFindings(t *testing.T) {
	h, err := solar.CellTemperature(noon())
	if err != nil {
		t.Fatal(err)
	}
	wantFindings(t, "noon", h.Findings(), "close-to-the-roof")
}

func TestColdFindings(t *testing.T) {
	cold := func(change func(*solar.ColdString)) []working.Finding {
		s := summer()
		change(&s)
		o, err := solar.ColdVoltage(s)
		if err != nil {
			t.Fatal(err)
		}
		return o.Findings()
	}
	wantFindings(t, "by the table", cold(func(*solar.ColdString) {}), "coefficient-not-stated", "cells-not-stated", "coldest-as-given")
	wantFindings(t, "by the table, silicon", cold(func(s *solar.ColdString) { s.Panel.Cells = solar.CrystallineSilicon }),
		"coefficient-not-stated", "coldest-as-given")
	wantFindings(t, "by the coefficient", cold(func(s *solar.ColdString) {
		s.Panel.VoltageCoefficient = units.Some(-0.3 * units.PercentPerKelvin)
	}), "coldest-as-given")
}

// TestCurrentFindings takes each mistake out and puts it elsewhere.
func TestCurrentFindings(t *testing.T) {
	currents := func(change func(*solar.Strings)) []working.Finding {
		s := threeStrings()
		change(&s)
		c, err := solar.Currents(s)
		if err != nil {
			t.Fatal(err)
		}
		return c.Findings()
	}
	fuse := func(a units.Current) func(*solar.Strings) {
		return func(s *solar.Strings) { s.StringFuse = units.Some(a * units.Ampere) }
	}
	wantFindings(t, "three strings, no fuse", currents(func(*solar.Strings) {}), "fuse-each-string")
	wantFindings(t, "with a fuse", currents(fuse(10)))
	wantFindings(t, "fuse as the label", currents(fuse(15)))
	wantFindings(t, "fuse above the label", currents(fuse(20)), "string-fuse-above-label")
	wantFindings(t, "fuse too small", currents(fuse(8)), "string-fuse-below-need") // 9.5625 A needed
	wantFindings(t, "two strings", currents(func(s *solar.Strings) { s.Array.Parallel = 2 }))
	wantFindings(t, "one string", currents(func(s *solar.Strings) { s.Array.Parallel = 1 }))
	wantFindings(t, "one string, fuse above the label", currents(func(s *solar.Strings) {
		s.Array.Parallel = 1
		fuse(20)(s)
	}), "string-fuse-above-label")
	unknown := func(s *solar.Strings) { s.Array.Panel.SeriesFuse = units.None[units.Current]() }
	wantFindings(t, "label unknown", currents(unknown), "series-fuse-not-stated")
	wantFindings(t, "label unknown, two strings", currents(func(s *solar.Strings) {
		unknown(s)
		s.Array.Parallel = 2
	}), "series-fuse-not-stated")
	wantFindings(t, "label unknown, one string", currents(func(s *solar.Strings) {
		unknown(s)
		s.Array.Parallel = 1
	}))
	wantFindings(t, "a label that no fuse fits", currents(func(s *solar.Strings) {
		s.Array.Panel.SeriesFuse = units.Some(9 * units.Ampere)
	}), "fuse-each-string", "no-string-fuse-fits")
}

// TestFitFindings takes each mistake out and puts it elsewhere. What is
// always said stands at the end.
func TestFitFindings(t *testing.T) {
	always := []string{"coldest-as-given", "fuse-by-the-bank"}
	for _, c := range []struct {
		what   string
		change func(*solar.Hookup)
		want   []string
	}{
		{"the demo", func(*solar.Hookup) {}, []string{"string-above-controller", "input-current-not-stated", "output-clipped"}},
		{"a controller for 150 V", func(h *solar.Hookup) { h.Controller.InputVoltage = 150 * units.Volt },
			[]string{"input-current-not-stated", "output-clipped"}},
		{"parallel", func(h *solar.Hookup) { h.Array.Series, h.Array.Parallel = 1, 2 },
			[]string{"input-current-not-stated", "output-clipped"}},
		{"a milder place", func(h *solar.Hookup) { h.Coldest = units.Celsius(0) },
			[]string{"input-current-not-stated", "output-clipped"}},
		{"input current within", func(h *solar.Hookup) {
			h.Coldest, h.Controller.InputCurrent = units.Celsius(0), units.Some(8*units.Ampere)
		}, []string{"output-clipped"}},
		{"input current near", func(h *solar.Hookup) {
			h.Coldest, h.Controller.InputCurrent = units.Celsius(0), units.Some(7*units.Ampere)
		}, []string{"input-current-near-limit", "output-clipped"}},
		{"input current above", func(h *solar.Hookup) {
			h.Coldest, h.Controller.InputCurrent = units.Celsius(0), units.Some(6*units.Ampere)
		}, []string{"input-current-above-limit", "output-clipped"}},
		{"a higher bank", func(h *solar.Hookup) { h.Coldest, h.Bank = units.Celsius(0), 26*units.Volt },
			[]string{"input-current-not-stated"}},
		{"a bank above the string", func(h *solar.Hookup) { h.Coldest, h.Bank = units.Celsius(0), 80*units.Volt },
			[]string{"string-below-bank", "input-current-not-stated"}},
		{"cells not so hot as to be above the string", func(h *solar.Hookup) { h.Coldest, h.Bank = units.Celsius(0), 65*units.Volt },
			[]string{"input-current-not-stated"}},
		{"a bank above the hot string", func(h *solar.Hookup) { h.Coldest, h.Bank = units.Celsius(0), 66*units.Volt },
			[]string{"hot-string-below-bank", "input-current-not-stated"}},
		{"hottest not stated", func(h *solar.Hookup) {
			h.Coldest, h.Bank, h.Hottest = units.Celsius(0), 66*units.Volt, units.Temperature{}
		},
			[]string{"input-current-not-stated", "hottest-not-stated"}},
		{"a bank above the string, hottest not stated", func(h *solar.Hookup) {
			h.Coldest, h.Bank, h.Hottest = units.Celsius(0), 80*units.Volt, units.Temperature{}
		}, []string{"string-below-bank", "input-current-not-stated"}},
		{"PWM", func(h *solar.Hookup) { h.Coldest, h.Controller.Kind = units.Celsius(0), solar.PWM },
			[]string{"input-current-not-stated", "panels-tied-to-bank"}},
		{"PWM, too much current", func(h *solar.Hookup) {
			h.Coldest, h.Controller.Kind, h.Controller.Output = units.Celsius(0), solar.PWM, units.Some(5*units.Ampere)
		}, []string{"current-above-controller", "input-current-not-stated", "panels-tied-to-bank"}},
		{"three strings", func(h *solar.Hookup) {
			h.Array.Series, h.Array.Parallel, h.Controller.Output = 1, 3, units.None[units.Current]()
		}, []string{"output-limit-not-stated", "fuse-each-string", "input-current-not-stated"}},
		{"three strings with fuses", func(h *solar.Hookup) {
			h.Array.Series, h.Array.Parallel, h.Controller.Output = 1, 3, units.None[units.Current]()
			h.StringFuse = units.Some(10 * units.Ampere)
		}, []string{"output-limit-not-stated", "input-current-not-stated"}},
	} {
		h := demo()
		c.change(&h)
		wantFindings(t, c.what, fit(t, h).Findings(), append(slices.Clone(c.want), always...)...)
	}
	h := demo()
	h.Array.Panel.VoltageCoefficient = units.None[units.PerKelvin]()
	wantFindings(t, "the demo by the table", fit(t, h).Findings(), "string-above-controller", "input-current-not-stated",
		"hot-string-not-judged", "output-clipped", "coefficient-not-stated", "cells-not-stated", "coldest-as-given", "fuse-by-the-bank")
}

// TestZeroResultsDoNotPanic asks empty and edited results to explain
// themselves.
func TestZeroResultsDoNotPanic(t *testing.T) {
	edited := solar.Fit{}
	edited.Cold.Governs, edited.Currents.Fusing, edited.Hookup.Controller.Kind = 9, 9, 9
	for _, x := range []interface {
		Working() *working.Sheet
		Findings() []working.Finding
	}{
		solar.DaySun{}, solar.DaySun{Horizon: 9}, solar.DayHarvest{}, solar.CellHeat{}, solar.ColdOpen{}, solar.CircuitCurrents{}, solar.Fit{}, edited,
	} {
		if x.Working().Text() == "" {
			t.Errorf("%T has no text", x)
		}
		_ = x.Findings()
	}
}

func TestNames(t *testing.T) {
	for got, want := range map[interface{ String() string }]string{
		solar.NEC2017: "NEC 2017", solar.RuleSet(0): "not given",
		solar.RisesAndSets: "rises and sets", solar.NeverRises: "never rises", solar.NeverSets: "never sets", solar.Horizon(9): "unknown",
		solar.CellsNotStated: "not stated", solar.CrystallineSilicon: "crystalline silicon", solar.ThinFilm: "thin film", solar.CellType(9): "unknown",
		solar.ByCoefficient: "maker's coefficient", solar.ByTable: "table", solar.ColdRule(9): "unknown",
		solar.FusingNotJudged: "not judged", solar.FusingNotNeeded: "not needed", solar.FusingNeeded: "fuse each string", solar.Fusing(9): "unknown",
		solar.MPPT: "MPPT", solar.PWM: "PWM", solar.ControllerKind(0): "not given",
	} {
		if got.String() != want {
			t.Errorf("%#v is %q, want %q", got, got.String(), want)
		}
	}
}

// TestBothSidesOfPWM: a PWM controller ties its panels to the bank, so the same
// current flows on both sides and both need 156 % of it (NEC 690.8, from
// memory): two panels of 5.9 A, 5.9 · 2 · 1.25 · 1.25 = 18.44 A, whatever the
// voltage of the bank.
func TestBothSidesOfPWM(t *testing.T) {
	for _, bank := range []units.Voltage{10 * units.Volt, 13 * units.Volt, 26 * units.Volt} {
		f, err := solar.FitController(solar.Hookup{
			Rules: solar.NEC2017, Bank: bank, Coldest: units.Celsius(-10),
			Array: solar.Array{Series: 1, Parallel: 2, Panel: solar.Panel{Power: 100 * units.Watt, Voc: 22 * units.Volt, Vmp: 18 * units.Volt,
				Isc: 5.9 * units.Ampere, VoltageCoefficient: units.Some(-0.3 * units.PercentPerKelvin)}},
			Controller: solar.Controller{Kind: solar.PWM, InputVoltage: 50 * units.Volt, Output: units.Some(11 * units.Ampere)},
		})
		if err != nil {
			t.Fatal(err)
		}
		if units.Compare(f.OutputRequired, 18.4375*units.Ampere) != 0 || units.Exceeds(f.Power, 200*units.Watt) {
			t.Errorf("bank of %v: required %v, power %v", bank, f.OutputRequired, f.Power)
		}
		if !has(f.Findings(), "current-above-controller") {
			t.Errorf("bank of %v: 14.75 A on a controller for 11 A is not found", bank)
		}
	}
}

// TestAboveInputNames: a string above its controller is shown by the way that
// governs, with the table beside the maker's coefficient.
func TestAboveInputNames(t *testing.T) {
	for _, c := range []struct {
		beta  units.Opt[units.PerKelvin]
		names []string
		place string
	}{
		{panel().VoltageCoefficient, []string{"on the coldest morning", "limit", "at 25 °C", "by the table"},
			"690.7(A): the maker's coefficient, and the table only where there is none"},
		{units.None[units.PerKelvin](), []string{"on the coldest morning", "limit", "at 25 °C"},
			"Table 690.7(A), crystalline silicon, read in a public transcription"},
	} {
		h := demo()
		h.Array.Panel.VoltageCoefficient = c.beta
		f := fit(t, h).Findings()[0]
		var names []string
		for _, n := range f.Numbers {
			names = append(names, n.Name)
		}
		if f.Rule != "string-above-controller" || !slices.Equal(names, c.names) || f.Source.Place != c.place {
			t.Errorf("%s has %q by %q, want %q by %q", f.Rule, names, f.Source.Place, c.names, c.place)
		}
	}
}

// TestFusingSaysWhy: the working names what decides about the fuses.
func TestFusingSaysWhy(t *testing.T) {
	label := units.Some(15 * units.Ampere)
	for _, c := range []struct {
		parallel int
		label    units.Opt[units.Current]
		why      string
	}{
		{1, label, "there is only one"}, {1, units.None[units.Current](), "there is only one"},
		{2, label, "by the comparison above"}, {3, label, "by the comparison above"},
		{2, units.None[units.Current](), "maximum series fuse is not given"},
	} {
		s := threeStrings()
		s.Array.Parallel, s.Array.Panel.SeriesFuse = c.parallel, c.label
		x, err := solar.Currents(s)
		if err != nil {
			t.Fatal(err)
		}
		steps := x.Working().Steps()
		i := slices.IndexFunc(steps, func(st working.Step) bool { return st.What == "fuse in each string" })
		if i < 0 || steps[i].Why != c.why {
			t.Errorf("%d strings, label %v: want why %q in %v", c.parallel, c.label, c.why, steps)
		}
	}
}
