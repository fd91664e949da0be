package wire_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// complete demands of each finding that it says everything, worst first.
func complete(t *testing.T, what string, f []working.Finding) {
	t.Helper()
	for i, x := range f {
		if x.Message == "" || x.Fix == "" || len(x.Numbers) == 0 || x.Source == (working.Source{}) {
			t.Errorf("%s: finding %s is not complete: %+v", what, x.Rule, x)
		}
		if i > 0 && x.Severity > f[i-1].Severity {
			t.Errorf("%s: findings are not worst first: %v", what, rules(f))
		}
	}
}

// said returns severity and rule of each finding.
func said(f []working.Finding) (list []string) {
	for _, x := range f {
		list = append(list, x.Severity.String()+" "+x.Rule)
	}
	return list
}

// wantSaid demands these findings and no other.
func wantSaid(t *testing.T, what string, f []working.Finding, want ...string) {
	t.Helper()
	complete(t, what, f)
	if got := said(f); !slices.Equal(got, want) {
		t.Errorf("%s: findings %v, want %v", what, got, want)
	}
}

func TestPathFindings(t *testing.T) {
	const rest = "note ampacity-not-checked"
	for what, c := range map[string]struct {
		change func(*wire.Run)
		want   []string
	}{
		"plain":   {func(*wire.Run) {}, []string{rest}},
		"chassis": {func(r *wire.Run) { r.Chassis = units.Some(1 * units.Milliohm) }, []string{"caution chassis-return", rest}},
		"parallel": {func(r *wire.Run) { r.Parallel, r.Conductor.Size = 2, wire.Aught(2) },
			[]string{rest, "note conductors-in-parallel"}},
		"thin parallel": {func(r *wire.Run) { r.Parallel = 2 }, []string{"caution parallel-below-1/0", rest}},
		"each bears its share, and one alone does not": {func(r *wire.Run) { r.Parallel, r.Current, r.OneWay = 2, 50*units.Ampere, 1*units.Foot },
			[]string{"danger parallel-below-1/0", rest}},
		"aluminium": {func(r *wire.Run) { r.Conductor.Metal, r.Conductor.Size = wire.Aluminium, wire.AWG(6) },
			[]string{"caution metal-not-copper", rest}},
		"metric by its name": {func(r *wire.Run) {
			r.Conductor = wire.Conductor{Size: wire.Metric(16 * units.SquareMillimetre), Basis: units.Some(wire.FromCopper)}
		}, []string{"caution nominal-area", rest}},
	} {
		r := lamp()
		r.OneWay = 5 * units.Foot
		c.change(&r)
		wantSaid(t, what, must[wire.Drop](t)(wire.VoltageDrop(r)).Findings(), c.want...)
		wantSaid(t, what+", longest", must[wire.Reach](t)(wire.LongestRun(r)).Findings(), c.want...)
		complete(t, what, must[wire.MostCurrent](t)(wire.LargestCurrent(r)).Findings())
		step := must[wire.LossStep](t)(wire.EnergyLostIn(r, hourly(r.Current), 0))
		wantSaid(t, what+", step", step.Findings(), c.want...)
	}
}

// TestOtherMetalsCarryLess: by the root of 0.61, aluminium is with 78 % of the
// current as warm as copper, as the columns of ampacity tables have it: 23.4 A
// where 10 AWG copper has 30 A. At 75 °C the resistivities are 0.034529 and
// 0.020968 Ω·mm²/m, so 23.8 A warm aluminium as 30.54 A warm copper.
func TestOtherMetalsCarryLess(t *testing.T) {
	for amperes, above := range map[units.Current]bool{23 * units.Ampere: false, 23.8 * units.Ampere: true} {
		d := must[wire.Drop](t)(wire.VoltageDrop(wire.Run{Current: amperes, OneWay: 1 * units.Foot, Source: 12 * units.Volt,
			Conductor: wire.Conductor{Size: wire.AWG(10), Metal: wire.Aluminium}, Allowed: units.Some(3 * units.Percent)}))
		if has(d.Findings(), "current-above-ampacity-in-wall") != above {
			t.Errorf("%v: found %v", amperes, rules(d.Findings()))
		}
		complete(t, amperes.String(), d.Findings())
		for _, f := range d.Findings() {
			if n := f.Numbers; f.Rule == "current-above-ampacity-in-wall" && (n[0].Value != amperes || n[2].Value.String() != "30.5413 A") {
				t.Errorf("%v: numbers %v", amperes, n)
			}
		}
	}
}

// TestDirectCurrentNearTable9: "in plastic and up to 4/0 AWG within 4 % of that
// table".
func TestDirectCurrentNearTable9(t *testing.T) {
	for _, size := range wire.Gauges()[3:16] {
		a := wire.ACConductor{Conductor: wire.Conductor{Size: size}}
		table := must[wire.Impedance](t)(wire.ACImpedance(a))
		a.Conductor.Basis = units.Some(wire.FromCopper)
		direct := must[wire.Impedance](t)(wire.ACImpedance(a))
		if ratio := float64(direct.R / table.R); !(0.96 < ratio && ratio < 1.04) || table.X != direct.X || !table.FromTable9 || direct.FromTable9 {
			t.Errorf("%v: %v, in the table %v", size, direct.R, table.R)
		}
	}
}

// TestSheetSaysWhichWay: the loop is called what it is.
func TestSheetSaysWhichWay(t *testing.T) {
	for name, change := range loops {
		r := lamp()
		change(&r)
		text := must[wire.Drop](t)(wire.VoltageDrop(r)).Working().Text()
		if byChassis := strings.Contains(text, "back by the chassis"); byChassis != r.Chassis.IsSet() || byChassis == strings.Contains(text, "there and back") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}

// TestTitlesName: a sheet says which conductor it is about.
func TestTitlesName(t *testing.T) {
	for want, c := range map[string]wire.Conductor{
		"12 AWG copper, stranded, at 75 °C":            {Size: wire.AWG(12)},
		"4 mm² tinned copper, flexible, at 20 °C":      {Size: wire.Metric(4 * units.SquareMillimetre), Strand: wire.Flexible, Coated: true, Temperature: units.Celsius(20)},
		"resistance stated":                            {Stated: units.Some(units.OhmPerKilofoot)},
		"12 AWG, resistance stated":                    {Size: wire.AWG(12), Stated: units.Some(units.OhmPerKilofoot)},
		"12 AWG, resistivity given":                    {Size: wire.AWG(12), Resistivity: units.Some(units.OhmCircularMilPerFoot)},
		"1/0 AWG aluminium, stranded, at 75 °C":        {Size: wire.Aught(1), Metal: wire.Aluminium},
		"2 AWG copper-clad aluminium, solid, at 75 °C": {Size: wire.AWG(2), Metal: wire.CopperClad, Strand: wire.Solid},
	} {
		p := must[wire.PerLength](t)(wire.Resistance(c))
		if got := p.Working().Title(); got != "Resistance of one conductor, "+want {
			t.Errorf("%q, want %q", got, want)
		}
		if (c.Metal != wire.Copper) != has(p.Findings(), "metal-not-copper") {
			t.Errorf("%s: found %v", want, rules(p.Findings()))
		}
	}
	stated := wire.Conductor{Stated: units.Some(units.OhmPerKilofoot), Metal: wire.Aluminium}
	if p := must[wire.PerLength](t)(wire.Resistance(stated)); !has(p.Findings(), "metal-not-copper") {
		t.Errorf("stated aluminium: found %v", rules(p.Findings()))
	}
}

func TestMassFindings(t *testing.T) {
	wantSaid(t, "copper", must[wire.MetalMass](t)(wire.MassOf(wire.Conductor{Size: wire.AWG(2)})).Findings(), "note metal-only")
	wantSaid(t, "aluminium", must[wire.MetalMass](t)(wire.MassOf(wire.Conductor{Size: wire.AWG(2), Metal: wire.Aluminium})).Findings(),
		"caution metal-not-copper", "note metal-only")
}

func TestACFindings(t *testing.T) {
	const rest, shock = "note ampacity-not-checked", "caution lethal-voltage"
	for what, c := range map[string]struct {
		change func(*wire.ACRun)
		want   []string
	}{
		"not judged": {func(*wire.ACRun) {}, []string{shock, "note no-allowed-drop", rest}},
		"within":     {func(r *wire.ACRun) { r.Allowed = units.Some(3 * units.Percent) }, []string{shock, rest}},
		"above":      {func(r *wire.ACRun) { r.Allowed = units.Some(1 * units.Percent) }, []string{"caution drop-above-allowed", shock, rest}},
		"cannot": {func(r *wire.ACRun) { r.OneWay = 5000 * units.Foot; r.PowerFactor = units.None[units.Ratio]() },
			[]string{"danger run-cannot-carry", shock, rest}},
		"too rough": {func(r *wire.ACRun) {
			r.Allowed, r.Method, r.PowerFactor = units.Some(9*units.Percent), wire.ACApproximate, units.Some[units.Ratio](0.3)
		}, []string{shock, "note approximation-low", rest}},
		"rough, and near enough": {func(r *wire.ACRun) {
			r.Allowed, r.Method, r.PowerFactor = units.Some(9*units.Percent), wire.ACApproximate, units.None[units.Ratio]()
		}, []string{shock, rest}},
		"aluminium": {func(r *wire.ACRun) {
			r.Allowed, r.Line.Conductor = units.Some(9*units.Percent), wire.Conductor{Size: wire.AWG(8), Metal: wire.Aluminium}
		}, []string{"caution metal-not-copper", shock, rest}},
		"aluminium from the metal": {func(r *wire.ACRun) {
			r.Allowed = units.Some(9 * units.Percent)
			r.Line.Conductor = wire.Conductor{Size: wire.AWG(8), Metal: wire.Aluminium, Basis: units.Some(wire.FromMetal)}
		}, []string{"caution metal-not-copper", shock, rest}},
	} {
		r := roofUnit()
		c.change(&r)
		wantSaid(t, what, must[wire.AlternatingDrop](t)(wire.ACDrop(r)).Findings(), c.want...)
	}
	// The exact drop, one judged and one not.
	r := roofUnit()
	r.PowerFactor = units.Some[units.Ratio](0.3)
	exact := must[wire.AlternatingDrop](t)(wire.ACDrop(r))
	if has(exact.Findings(), "approximation-low") {
		t.Error("the exact drop is called an approximation")
	}
}

func TestLegFindings(t *testing.T) {
	const rest, shock = "note ampacity-not-checked", "caution lethal-voltage"
	for what, c := range map[string]struct {
		change func(*wire.LegRun)
		want   []string
	}{
		"balanced": {func(r *wire.LegRun) { r.Currents.B = r.Currents.A }, []string{shock, "note shared-neutral", rest}},
		"one leg rises": {func(r *wire.LegRun) { r.Currents.B = 0 },
			[]string{shock, "note leg-rises", "note shared-neutral", rest}},
		"the other rises": {func(r *wire.LegRun) { r.Currents.A = 0 },
			[]string{shock, "note leg-rises", "note shared-neutral", rest}},
		"leg A above": {func(r *wire.LegRun) { r.Allowed = units.Some(1 * units.Percent) },
			[]string{"caution drop-above-allowed", shock, "note shared-neutral", rest}},
		"leg B above": {func(r *wire.LegRun) {
			r.Allowed, r.Currents = units.Some(1*units.Percent), units.Legs[units.Current]{A: 25 * units.Ampere, B: 40 * units.Ampere}
		}, []string{"caution drop-above-allowed", shock, "note shared-neutral", rest}},
		"thin neutral": {func(r *wire.LegRun) {
			r.Currents = units.Legs[units.Current]{A: 45 * units.Ampere, B: 10 * units.Ampere}
			r.Neutral.Conductor.Size = wire.AWG(12)
		}, []string{"caution neutral-current-above-ampacity-in-wall", shock, "note leg-rises", "note shared-neutral", rest}},
		"one hot carries both": {func(r *wire.LegRun) { r.Supply = wire.OneHot },
			[]string{"caution legs-add", "caution current-above-ampacity-in-wall", "caution neutral-current-above-ampacity-in-wall", shock}},
		"aluminium": {func(r *wire.LegRun) { r.Line.Conductor.Metal = wire.Aluminium },
			[]string{"caution metal-not-copper", shock, "note shared-neutral", rest}},
	} {
		r := panel()
		r.Allowed = units.Some(9 * units.Percent)
		c.change(&r)
		wantSaid(t, what, must[wire.LegVoltages](t)(wire.LegDrop(r)).Findings(), c.want...)
	}
	// The leg that drops more is the one in the finding.
	r := panel()
	r.Allowed, r.Currents = units.Some(1*units.Percent), units.Legs[units.Current]{A: 25 * units.Ampere, B: 40 * units.Ampere}
	v := must[wire.LegVoltages](t)(wire.LegDrop(r))
	if n := v.Findings()[0].Numbers; n[0].Value != v.Fraction.B || n[2].Value != v.AtLoad.B {
		t.Errorf("numbers %v of %v", n, v.AtLoad)
	}
}

func TestWarmFindings(t *testing.T) {
	warm := func(i units.Current) []working.Finding {
		w := steady(i)
		w.Run.Allowed = units.Some(9 * units.Percent)
		return must[wire.WarmedDrop](t)(wire.WarmDrop(w)).Findings()
	}
	wantSaid(t, "cool", warm(140*units.Ampere), "caution current-above-ampacity-in-wall")
	wantSaid(t, "hot", warm(280*units.Ampere), "danger conductor-above-rated", "caution current-above-ampacity-in-wall")
	// At its rating, give or take the noise, it is not above it.
	w := steady(285 * units.Ampere)
	w.Ambient = units.Temperature{}
	if f := must[wire.WarmedDrop](t)(wire.WarmDrop(w)).Findings(); has(f, "conductor-above-rated") {
		t.Errorf("at its ampacity: %v", rules(f))
	}
	d := must[wire.WarmedDrop](t)(wire.WarmDrop(inverterRun()))
	if s, ok := d.Step(1); !ok || s.Findings() != nil {
		t.Errorf("a step of plain copper: %v", s.Findings())
	}
}

func TestLossFindings(t *testing.T) {
	r := lamp()
	loss := func(i units.Current) []working.Finding {
		return must[wire.Loss](t)(wire.EnergyLost(r, hourly(i))).Findings()
	}
	wantSaid(t, "within", loss(5), "note loss-of-means", "note ampacity-not-checked")
	wantSaid(t, "above", loss(25), "caution drop-above-allowed", "note loss-of-means", "note ampacity-not-checked")
	r.Allowed = units.None[units.Ratio]()
	wantSaid(t, "not judged", loss(5), "note no-allowed-drop", "note loss-of-means", "note ampacity-not-checked")
}

func TestJointFindings(t *testing.T) {
	at := func(millivolts float64, resolution units.Opt[units.Voltage]) []working.Finding {
		return must[wire.Joint](t)(wire.MeasureJoint(wire.JointReading{Before: units.Scale(units.Millivolt, units.Ratio(millivolts)),
			Current: 10 * units.Ampere, Resolution: resolution})).Findings()
	}
	none := units.None[units.Voltage]()
	wantSaid(t, "0.99 W", at(99, none))
	wantSaid(t, "1 W", at(100, none), "caution joint-warm")
	wantSaid(t, "4.99 W", at(499, none), "caution joint-warm")
	wantSaid(t, "5 W", at(500, none), "danger joint-hot")
	wantSaid(t, "as coarse as the meter", at(10, units.Some(10*units.Millivolt)), "caution readings-too-coarse")
	wantSaid(t, "finer", at(11, units.Some(10*units.Millivolt)))
}

// TestLegAboveItsRange: a leg that rises is judged by 127 V of 120 V and by 10 %
// above nominal, whatever the source is within the usual; 0.05 Ω in the neutral
// lifts the empty leg by 1 V for every 20 A on the other.
func TestLegAboveItsRange(t *testing.T) {
	for _, c := range []struct {
		source units.Voltage
		amps   units.Current
		want   string // of the three rules, empty for none
		is     working.Severity
	}{
		{120, 139, "leg-rises", working.Note},             // 126.95 V
		{120, 141, "leg-above-range", working.Caution},    // 127.05 V
		{120, 239, "leg-above-range", working.Caution},    // 131.95 V
		{120, 241, "leg-far-above-range", working.Danger}, // 132.05 V
		{125, 41, "leg-above-range", working.Caution},     // 127.05 V: the source counts for 120 V
		{130, 1, "leg-above-range", working.Caution},      // so does one that is above it already
		{230, 200, "leg-rises", working.Note},             // 240 V
		{230, 280, "leg-above-range", working.Caution},    // 244 V, of 243.4 V
		{230, 480, "leg-far-above-range", working.Danger}, // 254 V, of 253 V
	} {
		r := wire.LegRun{Currents: units.Legs[units.Current]{A: c.amps}, OneWay: 1 * units.Metre, Source: c.source, Line: wire.ACConductor{
			Conductor: wire.Conductor{Stated: units.Some(0.05 * units.OhmPerMetre)}, Reactance: units.Some(0 * units.OhmPerMetre)}}
		for range 2 {
			var found []working.Finding
			for _, f := range must[wire.LegVoltages](t)(wire.LegDrop(r)).Findings() {
				if strings.HasPrefix(f.Rule, "leg-") {
					found = append(found, f)
				}
			}
			if len(found) != 1 || found[0].Rule != c.want || found[0].Severity != c.is {
				t.Errorf("%v with %v: found %v, want %s", c.source, r.Currents, found, c.want)
			}
			r.Currents = units.Legs[units.Current]{B: c.amps}
		}
	}
}

// TestVoltageThatCanKill: told by the voltage, not by the kind of current; 50 V
// is not above it.
func TestVoltageThatCanKill(t *testing.T) {
	for source, want := range map[units.Voltage]bool{12: false, 48: false, 50: false, 50.1: true, 120: true, 400: true} {
		line := wire.Conductor{Size: wire.AWG(10)}
		direct := wire.Run{Current: 2 * units.Ampere, OneWay: 5 * units.Metre, Source: source, Conductor: line, Allowed: units.Some(3 * units.Percent)}
		quote := wire.Quote{Rules: wire.NEC2017, Size: line.Size, Voltage: units.Some(source), Current: stated("2 A")}
		whole := quote
		whole.Length, whole.LengthIs = stated("5 m"), wire.LengthOneWay
		alternating := whole
		alternating.Alternating, alternating.PowerFactor = true, units.Some[units.Ratio](1)
		for what, found := range map[string][]working.Finding{
			"direct":  must[wire.Drop](t)(wire.VoltageDrop(direct)).Findings(),
			"longest": must[wire.Reach](t)(wire.LongestRun(direct)).Findings(),
			"alternating": must[wire.AlternatingDrop](t)(wire.ACDrop(wire.ACRun{Current: 2 * units.Ampere, OneWay: 5 * units.Metre, Source: source,
				Line: wire.ACConductor{Conductor: line}})).Findings(),
			"legs": must[wire.LegVoltages](t)(wire.LegDrop(wire.LegRun{Currents: units.Legs[units.Current]{A: 2, B: 2}, OneWay: 5 * units.Metre,
				Source: source, Supply: wire.OneHot, Line: wire.ACConductor{Conductor: line}})).Findings(),
			"harness":           solved(t, wire.Network{Batteries: []wire.Battery{{Voltage: source, Resistance: 3 * mOhm}}}).Findings(),
			"quote":             must[wire.Checked](t)(wire.Check(quote)).Findings(),
			"quote with a run":  must[wire.Checked](t)(wire.Check(whole)).Findings(),
			"quote alternating": must[wire.Checked](t)(wire.Check(alternating)).Findings(),
		} {
			if has(found, "lethal-voltage") != want {
				t.Errorf("%s at %v: found %v, want %v", what, source, rules(found), want)
			}
		}
	}
	// 30 V on each leg are 60 V between them.
	if f := must[wire.LegVoltages](t)(wire.LegDrop(wire.LegRun{Currents: units.Legs[units.Current]{A: 2, B: 2}, OneWay: 1 * units.Metre,
		Source: 30, Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(10)}}})).Findings(); !has(f, "lethal-voltage") {
		t.Errorf("two legs of 30 V: found %v", rules(f))
	}
}

// TestLegsSayWhereTheirAngleIs: only of a load that lags.
func TestLegsSayWhereTheirAngleIs(t *testing.T) {
	for pf, want := range map[units.Ratio]bool{0: false, 1: false, 0.8: true} {
		r := panel()
		r.PowerFactors.B = pf
		if f := must[wire.LegVoltages](t)(wire.LegDrop(r)).Findings(); has(f, "power-factor-at-source") != want {
			t.Errorf("power factor %v: found %v", pf, rules(f))
		}
	}
}
