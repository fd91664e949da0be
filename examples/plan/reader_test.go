package plan_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// flat is the text of a plan on one line.
func flat(p plan.Plan) string { return strings.Join(strings.Fields(p.Text()), " ") }

// TestZeroSaysWhatItMeans: where nothing draws, where the bank cannot carry it
// and where something lasts are three things.
func TestZeroSaysWhatItMeans(t *testing.T) {
	critical := func(r *plan.Rig, must bool) {
		for i := range r.Loads {
			r.Loads[i].MustNotStop = must && r.Loads[i].MustNotStop
		}
	}
	for _, c := range []struct {
		what      string
		change    func(*plan.Rig)
		want, not []string
	}{
		{"as it is", func(*plan.Rig) {}, []string{"24.9 h on average use", "to empty, must not stop 59.5 h", "34 % of the use"}, nil},
		{"nothing must not stop", func(r *plan.Rig) { critical(r, false) }, []string{"24.9 h on average use"}, []string{"to empty, must not stop", "Must not stop ", " 0 h"}},
		{"nothing is used", func(r *plan.Rig) {
			r.Loads = []plan.Load{{Name: "lamp", Bus: "main", Kind: loads.Resistive, Power: units.Some(10 * units.Watt), Hours: units.Some(0 * units.Hour)}}
			r.Circuits = nil
			r.Inverter.Idle = units.Some(0 * units.Watt)
		}, []string{"nothing draws on it"}, []string{"of the use", "To close the gap"}},
		{"the bank cannot carry it", func(r *plan.Rig) { r.Bank.DischargeLimit = units.Some(1 * units.Ampere) },
			[]string{"the bank cannot carry average use", "to empty, average use the bank cannot carry it"}, nil},
	} {
		text := flat(planOf(t, c.change))
		for _, want := range c.want {
			if !strings.Contains(text, want) {
				t.Errorf("%s: no %q in %.900s", c.what, want, text)
			}
		}
		for _, not := range c.not {
			if strings.Contains(text, not) {
				t.Errorf("%s: %q in the text", c.what, not)
			}
		}
	}
}

// TestClosingTheGap: hours of a converter that nothing feeds, or that a day
// does not have, close no gap.
func TestClosingTheGap(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*plan.Rig)
		want   string
	}{
		{"as it is", func(*plan.Rig) {}, "3.15 h a day of the converter, on shore power or generator"},
		{"no generator", func(r *plan.Rig) { r.Generator = nil }, "3.15 h a day of the converter, on shore power (3.15 h by energy, 3.54 h by charge) In"},
		{"nothing feeds it", func(r *plan.Rig) { r.Generator, r.Shore, r.Bonds = nil, nil, nil },
			"3.15 h a day of the converter would, but no shore power and no generator is there to feed it: nothing closes the gap"},
		{"more than a day", func(r *plan.Rig) { r.Converter.Current = 5 * units.Ampere },
			"the converter cannot: it would need 31.9 h a day, on shore power or generator (28.3 h by energy, 31.9 h by charge)"},
	} {
		text := strings.ReplaceAll(flat(planOf(t, c.change)), "What needs attention", "In")
		if !strings.Contains(text, c.want) {
			t.Errorf("%s: no %q in %.900s", c.what, c.want, text)
		}
	}
	p := planOf(t, func(r *plan.Rig) { r.Generator, r.Shore, r.Bonds = nil, nil, nil })
	for _, f := range p.Findings {
		if f.Rule == "sun-below-use" {
			for _, n := range f.Numbers {
				if strings.HasPrefix(n.Name, "converter") {
					t.Error("hours of a converter that nothing feeds are among the numbers that decide")
				}
			}
		}
	}
	if strings.Contains(flat(p), "loop below is mended") != p.Bank.WithLoop.IsSet() {
		t.Error("the loop is told of where there is none")
	}
}

// TestNoEmptySections: a heading has something below it.
func TestNoEmptySections(t *testing.T) {
	for what, rig := range rigs(t) {
		p, err := plan.Make(rig)
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(p.Text(), "\n")
		for i, l := range lines {
			if strings.HasPrefix(l, "---") && strings.Trim(l, "-") == "" && (i+2 >= len(lines) || lines[i+2] == "") {
				t.Errorf("%s: nothing below %q", what, lines[i-1])
			}
		}
	}
	if p, _ := plan.Make(bare(t)); strings.Contains(p.Text(), "Sources and what") {
		t.Error("a heading for sources where there are none")
	}
}

// TestRoofSection: the panels' numbers stand under their own heading.
func TestRoofSection(t *testing.T) {
	_, after, ok := strings.Cut(planOf(t, func(*plan.Rig) {}).Text(), "\nRoof\n----\n")
	roof, _, _ := strings.Cut(after, "\nSources")
	for _, want := range []string{"104.6 V at -22 °C, against 100 V", "92.4 V", "6.12 A", "1069 Wh", "30 A of the MPPT"} {
		if !ok || !strings.Contains(strings.Join(strings.Fields(roof), " "), want) {
			t.Errorf("no %q under Roof: %s", want, roof)
		}
	}
}

// TestMendOfTheRoof: what the panels in parallel would give is worked out, by
// hand 46.2 V x (1 + 0.0028 x 47) = 52.28 V and 2 x 6.12 A.
func TestMendOfTheRoof(t *testing.T) {
	mend := func(change func(*plan.Rig)) string {
		for _, f := range planOf(t, change).Findings {
			if f.Rule == "string-above-controller" {
				return f.Mend
			}
		}
		return "not found"
	}
	if got := mend(func(*plan.Rig) {}); !strings.Contains(got, "2 panels in parallel: 52.3 V on the coldest morning, 12.24 A") {
		t.Error(got)
	}
	if got := mend(func(r *plan.Rig) { r.Roof.Panels, r.Roof.Series = 6, 6 }); !strings.Contains(got, "6 panels in parallel") || !strings.Contains(got, "each string then needs a fuse") {
		t.Error(got)
	}
	if got := mend(func(r *plan.Rig) {
		r.Roof.Panels, r.Roof.Series, r.Roof.Controller.InputLimit = 6, 6, 150*units.Volt
	}); !strings.Contains(got, "the panels into 3 strings of 2, in parallel: 105 V") {
		t.Error(got)
	}
	if got := mend(func(r *plan.Rig) {
		r.Roof.Panels, r.Roof.Series, r.Roof.SeriesFuse = 6, 6, units.None[units.Current]()
	}); !strings.Contains(got, "needs a fuse is not judged") {
		t.Error(got)
	}
	// No string is short enough: nothing is promised.
	if got := mend(func(r *plan.Rig) { r.Roof.Controller.InputLimit = 50 * units.Volt }); strings.Contains(got, "parallel") || !strings.Contains(got, "higher voltage") {
		t.Error(got)
	}
}

// TestOneBlockForTheDrop: what is found of the drop of a circuit is told once,
// with one voltage and one mend, and the mend does mend it.
func TestOneBlockForTheDrop(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	if n := strings.Count(p.Text(), "C3, dc panel - rear hatch:"); n != 1 {
		t.Errorf("C3 is told %d times", n)
	}
	if strings.Contains(p.Text(), "10.41 V") || !strings.Contains(p.Text(), "10.87 V") {
		t.Error("the voltage at the load is not the one that counts from the bank")
	}
	mends := map[string]bool{}
	for _, f := range p.Findings {
		if f.Part == "C3" && f.Severity > 0 {
			mends[f.Mend] = true
			if f.Route != "dc panel - rear hatch" {
				t.Errorf("%s: route %q", f.Rule, f.Route)
			}
		}
	}
	if len(mends) != 1 {
		t.Errorf("mends %v", mends)
	}
	for mend := range mends {
		if !strings.HasPrefix(mend, "Use 8 AWG or larger") {
			t.Error(mend)
		}
	}
	about := func(p plan.Plan, part string) (n int) {
		for _, f := range p.Findings {
			if f.Part == part && slices.Contains([]string{"drop-above-allowed", "path-drop-above-allowed", "below-cut-out"}, f.Rule) {
				n++
			}
		}
		return n
	}
	if n := about(planOf(t, func(r *plan.Rig) { r.Circuits[2].Size = wire.AWG(8) }), "C3"); n != 0 {
		t.Errorf("mended with 8 AWG, and %d are found", n)
	}
	// 12.8 V less 0.171 V in the feeder leaves 0.079 V for 4.8 A over 64 ft,
	// 0.26 ohm/kft: NEC Chapter 9 Table 8 has 0.308 for 4 AWG and 0.245 for 3.
	strict := planOf(t, func(r *plan.Rig) { r.Loads[5].CutOut = units.Some(12.55 * units.Volt) })
	for _, f := range strict.Findings {
		if f.Part == "C3" && f.Rule == "below-cut-out" && !strings.HasPrefix(f.Mend, "Use 3 AWG or larger") {
			t.Errorf("a stricter cut-out: %s", f.Mend)
		}
	}
	if n := about(planOf(t, func(r *plan.Rig) {
		r.Circuits[2].Size = wire.AWG(3)
		r.Loads[5].CutOut = units.Some(12.55 * units.Volt)
	}), "C3"); n != 0 {
		t.Errorf("mended with 3 AWG, and %d are found", n)
	}
	never := planOf(t, func(r *plan.Rig) { r.Loads[5].CutOut = units.Some(12.7 * units.Volt) })
	for _, f := range never.Findings {
		if f.Part == "C3" && f.Rule == "below-cut-out" && !strings.HasPrefix(f.Mend, "No size of this run alone") {
			t.Errorf("a cut-out above what the feeder leaves: %s", f.Mend)
		}
	}
}

// TestOrderOfDangers: what burns or kills comes before what breaks, and that
// before what stops.
func TestOrderOfDangers(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Loads[15].MustNotStop = true
		r.Bonds = append(r.Bonds, plan.Bond{At: "screw in the main panel", With: []string{"shore"}})
	})
	var rules []string
	for _, f := range p.Findings {
		if f.Severity == 2 {
			rules = append(rules, f.Rule)
		}
	}
	want := []string{"several-neutral-bonds", "device-above-limit", "string-above-controller", "charge-above-limit-one-out", "must-not-stop-and-dead"}
	if !slices.Equal(rules, want) {
		t.Errorf("dangers in the order %v, want %v", rules, want)
	}
}

// TestSilentFailover: nothing takes over that is not there.
func TestSilentFailover(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Inverter = nil
		r.Converter.Bus = "main"
		r.Buses[1].Behind = ""
		r.Bonds = r.Bonds[:1]
		r.Circuits = r.Circuits[1:]
		r.Loads[12].MustNotStop = false
	})
	text := flat(p)
	if !strings.Contains(text, "the bank carries on alone in silence") || strings.Contains(text, "the inverter takes over") {
		t.Error("an inverter that is not there takes over")
	}
}

// TestSetsInRows: the rows of the text stand for exactly the sets listed.
func TestSetsInRows(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	_, after, _ := strings.Cut(p.Text(), "\nNot together\n")
	table, _, _ := strings.Cut(after, "\nTogether\n")
	text := strings.Join(strings.Fields(table), " ")
	n := 0
	for _, limit := range []string{" A 30 A", " A 20 A", " A 24 A", " VA 1500 VA", " VA 1800 VA", " VA 2200 VA"} {
		n += strings.Count(text, limit)
	}
	if len(p.Sets) < 20 || n != 11 {
		t.Errorf("%d sets in %d rows: %s", len(p.Sets), n, table)
	}
	// Loads that differ do not stand for each other: the laptops alone leave
	// room beside the microwave once they take less.
	few := planOf(t, func(r *plan.Rig) { r.Loads[11].Power = units.Some(10 * units.Watt) })
	for _, s := range few.Sets {
		if s.On == "inverter" && slices.Contains(s.Loads, "laptops") && slices.Contains(s.Loads, "microwave") && len(s.Loads) == 2 {
			t.Error("20 W beside the microwave are too much")
		}
	}
	if strings.Contains(few.Text(), "(laptops, coffee maker)") {
		t.Error("laptops stand for a coffee maker")
	}
}

// TestWidth: no line is wider than 80 columns, whatever the names, and none
// ends in a space.
func TestWidth(t *testing.T) {
	long := strings.Repeat("a very long name of a load ", 4)
	word := strings.Repeat("Donaudampfschifffahrt", 6)
	wide := strings.Repeat("冷蔵庫", 30)
	for _, name := range []string{long, word, wide} {
		p := planOf(t, func(r *plan.Rig) {
			r.Name, r.Day = name, name
			for _, i := range []int{5, 13, 14, 15, 17} {
				r.Loads[i].Name = name + strings.Repeat("x", i)
			}
			r.Circuits[2].Name, r.Circuits[2].To = name, name
			r.Circuits[2].Loads = []string{r.Loads[5].Name}
			r.Circuits[9].Loads = []string{r.Loads[15].Name}
		})
		for i, line := range strings.Split(p.TextWithWorking(), "\n") {
			if n := working.Columns(line); n > 80 || strings.TrimRight(line, " ") != line {
				t.Errorf("line %d has %d columns or ends in a space: %q", i+1, n, line)
			}
		}
	}
}

// TestDemoIsSaid: whoever holds a plan of an invented rig can see that.
func TestDemoIsSaid(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	data := func(p plan.Plan) string {
		data, err := p.JSON()
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	for _, said := range []bool{false, true} {
		p.Demo = said
		for format, head := range map[string]string{"text": p.Text()[:300], "markdown": p.Markdown()[:300]} {
			if strings.Contains(head, "DEMO, invented data") != said {
				t.Errorf("%s: %q", format, head)
			}
		}
		if strings.Contains(data(p), `"demo": true`) != said {
			t.Errorf("JSON: demo is not %v", said)
		}
	}
}

// TestMarkdownItems: each line of a finding is an item below it, and no name
// breaks a table.
func TestMarkdownItems(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Loads[0].Name = "a|b *c*\nd" })
	text := p.Markdown()
	if !strings.Contains(text, "\n- **DANGER C4, dc panel - observer desk**: ") || !strings.Contains(text, "\n  - Mend: Fit a device") {
		t.Error("findings are not lists")
	}
	if !strings.Contains(text, `| a\|b \*c\* d | dc |`) {
		t.Error("a name breaks the table")
	}
	if with := p.MarkdownWithWorking(); !strings.HasPrefix(with, text) || !strings.Contains(with, "\n## Working\n") || !strings.Contains(with, "```math") {
		t.Error("no working in Markdown")
	}
}

// TestFlooded is a bank whose chemistry has other findings.
func TestFlooded(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Bank = plan.Bank{Chemistry: battery.Flooded, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt, Parallel: 2}
	})
	if _, ok := found(p, "bank", "hydrogen"); !ok {
		t.Error("hydrogen is not said")
	}
}

// TestControllerKind: a PWM controller brings less, by hand 6.12 A x 12.8 V of
// 440 W for one string of two; and a kind that nobody stated is said.
func TestControllerKind(t *testing.T) {
	base := planOf(t, func(*plan.Rig) {})
	if _, ok := found(base, "roof", "controller-kind-not-stated"); ok {
		t.Error("stated, and said not to be")
	}
	open := planOf(t, func(r *plan.Rig) { r.Roof.Controller.Kind = 0 })
	if _, ok := found(open, "roof", "controller-kind-not-stated"); !ok || open.Sun.Harvest != base.Sun.Harvest {
		t.Errorf("not stated: said %v, harvest %v", ok, open.Sun.Harvest)
	}
	pwm := planOf(t, func(r *plan.Rig) { r.Roof.Controller.Kind = solar.PWM })
	if got, want := units.RatioOf(pwm.Sun.Harvest, base.Sun.Harvest), units.Ratio(6.12*12.8/440); units.Compare(got, want) != 0 {
		t.Errorf("a PWM controller leaves %v of the harvest, want %v", got, want)
	}
	if !strings.Contains(pwm.Text(), "PWM controller") {
		t.Error("the kind is not in the text")
	}
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := plan.Read([]byte(strings.Replace(string(data), `"MPPT"`, `"mppt"`, 1))); err == nil || !strings.Contains(err.Error(), `roof.controller.kind = "mppt"`) {
		t.Errorf("a kind that there is not: %v", err)
	}
	for _, s := range pwm.Working() {
		unitstest.CheckSheet(t, s.Sheet)
	}
}

// TestFeederOfABus: the current of a circuit that feeds a whole bus has working,
// of volt-amperes where the bus has alternating current.
func TestFeederOfABus(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Circuits[9].From, r.Circuits[9].To, r.Circuits[9].Loads = "shore", "main", nil
		r.Circuits[9].Device.At = "shore"
	})
	if got := p.Circuits[9].Current; got != 20*units.Ampere {
		t.Errorf("the feeder carries %v, its device lets 20 A pass", got)
	}
	if _, ok := found(p, "C10", "all-at-once-above-device"); !ok {
		t.Error("what all at once comes to goes unsaid")
	}
	for _, s := range p.Working() {
		if s.Sheet.Title() == "C10: Greatest current in use" {
			unitstest.CheckSheet(t, s.Sheet)
			if first := s.Sheet.Steps()[0]; first.Unit != "VA" || first.Value < 4400 {
				t.Errorf("begins with %v %s", first.Value, first.Unit)
			}
			return
		}
	}
	t.Error("no working for the current of the feeder")
}

// TestEditedPlans: a plan that somebody took parts out of, or read back from
// JSON, is still a text.
func TestEditedPlans(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	for i := range p.Sets {
		p.Sets[i].Numbers = nil
	}
	for i := range p.Findings {
		p.Findings[i].Numbers, p.Findings[i].Source = nil, plan.Source{}
	}
	p.Sun, p.Inverter, p.Buses = nil, nil, nil
	if text := p.Text(); !strings.Contains(text, "Not together") || p.Markdown() == "" || p.TextWithWorking() == text {
		t.Error("no text")
	}
	if text := (plan.Plan{}).TextWithWorking(); !strings.Contains(text, "nothing draws on it") {
		t.Errorf("the zero plan: %s", text)
	}
}

// TestNothingFound: a plan with nothing to mend says where else to look.
func TestNothingFound(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	p.Findings = slices.DeleteFunc(p.Findings, func(f plan.Finding) bool { return f.Severity > working.Note })
	if !strings.Contains(flat(p), "Nothing was found by the checks of this plan. What they did not look at is below") {
		t.Error("nothing is said where nothing is found")
	}
}

// TestLongRun: the search for a mend goes on until a size is enough.
func TestLongRun(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Circuits[2].Length = 150 * units.Foot
		r.Circuits[2].Size = wire.AWG(12)
	})
	for _, f := range p.Findings {
		if f.Part == "C3" && f.Rule == "drop-above-allowed" {
			// 3 % of 12 V at 5 A over 300 ft is 0.24 ohm/kft: NEC Chapter 9
			// Table 8 has 0.245 for 3 AWG and 0.194 for 2 AWG.
			if !strings.HasPrefix(f.Mend, "Use 2 AWG or larger") {
				t.Error(f.Mend)
			}
			return
		}
	}
	t.Error("150 ft of 12 AWG are not found")
}

// TestQuantities: numbers of findings are in the units of the tables.
func TestQuantities(t *testing.T) {
	for _, c := range []struct {
		v      units.Value
		unit   string
		digits int
		want   string
	}{
		// The unit that the plan has for its kind.
		{3.109 * units.KilowattHour, "", 4, "3109 Wh"}, {7.56 * units.KilovoltAmpere, "", 4, "7560 VA"}, {1.5 * units.Kilowatt, "", 4, "1500 W"},
		{0.5 * units.Ampere, "", 4, "0.5 A"}, {1 * units.Day, "", 4, "24 h"}, {0 * units.Hour, "", 4, "0 h"},
		// The unit that suits the size.
		{2 * units.Second, "", 4, "2 s"}, {4 * units.Milliohm, "", 4, "4 mΩ"}, {units.Celsius(-22), "", 4, "-22 °C"}, {13.284 * units.Percent, "", 3, "13.3 %"},
		// The unit that is asked for.
		{14 * units.Day, "d", 2, "14 d"}, {units.Ratio(3), "1", 4, "3"}, {41.8 * units.Degree, "°", 4, "41.8°"},
		// A unit that it does not have.
		{12 * units.Volt, "A", 4, "12 V"},
	} {
		if got := plan.Quantity(c.v, c.unit, c.digits); got != c.want {
			t.Errorf("%v in %q: %q, want %q", c.v, c.unit, got, c.want)
		}
	}
}
