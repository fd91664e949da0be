package battery_test

import (
	"slices"
	"testing"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// wantFindings demands exactly the findings, each as its severity and its
// rule, in any order; each complete and the worst first.
func wantFindings(t *testing.T, what string, findings []working.Finding, want ...string) {
	t.Helper()
	var got []string
	for i, f := range findings {
		got = append(got, f.Severity.String()+" "+f.Rule)
		if f.Message == "" || f.Fix == "" || len(f.Numbers) == 0 || f.Source == (working.Source{}) {
			t.Errorf("%s: finding %s is not complete: %+v", what, f.Rule, f)
		}
		if i > 0 && f.Severity > findings[i-1].Severity {
			t.Errorf("%s: findings are not worst first: %v", what, got)
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("%s: findings %v, want %v", what, got, want)
	}
}

// TestBankFindings puts in and takes out what a bank brings with it.
func TestBankFindings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*battery.Bank)
		worst  working.Severity
		want   []string
	}{
		{"lead, mild, no openings stated", func(*battery.Bank) {}, working.Caution, []string{"caution hydrogen"}},
		{"openings large enough", func(b *battery.Bank) { b.Vent = units.Some(100 * units.SquareCentimetre) }, working.Note, []string{"note hydrogen"}},
		{"openings too small", func(b *battery.Bank) { b.Vent = units.Some(units.SquareCentimetre) }, working.Danger, []string{"danger hydrogen"}},
		{"temperature unknown", func(b *battery.Bank) { b.CellTemperature = units.Temperature{} }, working.Caution, []string{"caution hydrogen", "note lead-temperature-unknown"}},
		{"just above freezing", func(b *battery.Bank) { b.CellTemperature = units.Celsius(0.1) }, working.Caution, []string{"caution hydrogen"}},
		{"at freezing", func(b *battery.Bank) { b.CellTemperature = units.Celsius(0) }, working.Caution, []string{"caution hydrogen", "note lead-freezes-if-flat"}},
		{"colder than the end of the table", func(b *battery.Bank) { b.CellTemperature = units.Celsius(-17.3) }, working.Caution, []string{"caution hydrogen", "caution lead-freezes-if-flat"}},
		{"planned to a charge that freezes", func(b *battery.Bank) {
			b.CellTemperature, b.Battery.Usable = units.Celsius(-17.3), units.Some(75*units.Percent)
		}, working.Danger, []string{"caution hydrogen", "danger lead-freezes"}},
		{"planned below the table", func(b *battery.Bank) {
			b.CellTemperature, b.Battery.Usable = units.Celsius(-5), units.Some(78*units.Percent)
		}, working.Caution, []string{"caution hydrogen", "caution lead-may-freeze"}},
		{"too hot to charge", func(b *battery.Bank) { b.CellTemperature = units.Celsius(50.1) }, working.Caution, []string{"caution hydrogen", "caution too-hot-to-charge"}},
		{"lithium", func(b *battery.Bank) {
			b.Battery, b.Charging = lithium140(), off()
		}, working.Note, nil},
		{"lithium whose datasheet allows the cold", func(b *battery.Bank) {
			b.Battery, b.Charging, b.CellTemperature = lithium140(), off(), units.Celsius(-5)
			b.Battery.ChargeLow = units.Celsius(-10)
		}, working.Caution, []string{"caution lithium-too-cold-to-charge"}},
	} {
		b := lead()
		c.change(&b)
		findings := must[battery.Assembly](t)(battery.Assemble(b)).Findings()
		wantFindings(t, c.what, findings, c.want...)
		if worst, ok := working.Worst(findings); ok && worst != c.worst {
			t.Errorf("%s: worst is a %v, want a %v", c.what, worst, c.worst)
		}
	}
	v := must[battery.Ventilation](t)(battery.Ventilate(lead()))
	wantFindings(t, "ventilation", v.Findings(), "caution hydrogen")
}

func TestUsableFindings(t *testing.T) {
	warm := func(c battery.Chemistry) battery.Bank {
		b := one(battery.Battery{Chemistry: c, Capacity: 100 * units.AmpereHour, Voltage: 12.6 * units.Volt, Usable: units.Some(50 * units.Percent)})
		b.CellTemperature, b.Charging = units.Celsius(20), off()
		if c.IsLead() {
			b.Charging.Compensation = units.Some(-5 * units.Millivolt)
		}
		return b
	}
	for _, c := range []struct {
		what   string
		kind   battery.Chemistry
		at     units.Opt[units.Current]
		change func(*battery.Bank)
		want   []string
	}{
		{"lithium, all given", battery.LithiumIronPhosphate, units.Some(50 * units.Ampere), func(b *battery.Bank) {
			b.Battery.Exponent = units.Some[units.Ratio](1)
		}, nil},
		{"lithium, no exponent, fast", battery.LithiumIronPhosphate, units.Some(50 * units.Ampere), func(*battery.Bank) {}, []string{"note exponent-is-a-default"}},
		{"lithium, no exponent, slow", battery.LithiumIronPhosphate, units.Some(10 * units.Ampere), func(*battery.Bank) {}, nil},
		{"no depth", battery.LithiumIronPhosphate, units.None[units.Current](), func(b *battery.Bank) {
			b.Battery.Usable = units.None[units.Ratio]()
		}, []string{"note depth-is-a-default"}},
		{"lead without a rate", battery.Flooded, units.None[units.Current](), func(*battery.Bank) {}, []string{"caution hydrogen", "note rate-not-given"}},
		{"lead below the rated current", battery.Flooded, units.Some(2 * units.Ampere), func(*battery.Bank) {},
			[]string{"caution hydrogen", "note below-rated-current", "note peukert-steady-current"}},
		{"lead above it", battery.Gel, units.Some(20 * units.Ampere), func(*battery.Bank) {},
			[]string{"caution hydrogen", "note exponent-is-a-default", "note peukert-steady-current"}},
		{"lead above it, exponent given", battery.AGM, units.Some(20 * units.Ampere), func(b *battery.Bank) {
			b.Battery.Exponent = units.Some[units.Ratio](1.1)
		}, []string{"caution hydrogen", "note peukert-steady-current"}},
		{"lead too deep", battery.AGM, units.Some(5 * units.Ampere), func(b *battery.Bank) {
			b.Battery.Usable = units.Some(81 * units.Percent)
		}, []string{"caution hydrogen", "caution depth-beyond-practice", "note peukert-steady-current"}},
	} {
		b := warm(c.kind)
		c.change(&b)
		wantFindings(t, c.what, must[battery.UsableCharge](t)(battery.Usable(b, c.at)).Findings(), c.want...)
	}
}

func TestHoldUpFindings(t *testing.T) {
	for _, c := range []struct {
		what   string
		change func(*battery.Hold)
		want   []string
	}{
		{"all given and within", func(*battery.Hold) {}, nil},
		{"no cut-off", func(h *battery.Hold) { h.CutOff = units.None[units.Voltage]() }, []string{"note cut-off-not-stated"}},
		{"cut off", func(h *battery.Hold) { h.CutOff = h.OpenCircuit }, []string{"caution below-cut-off"}},
		{"above the limit", func(h *battery.Hold) { h.Bank.Battery.DischargeLimit = units.Some(10 * units.Ampere) }, []string{"caution discharge-above-limit"}},
		{"no limit", func(h *battery.Hold) { h.Bank.Battery.DischargeLimit = units.None[units.Current]() }, []string{"caution discharge-limit-not-stated"}},
		{"no resistance", func(h *battery.Hold) { h.Bank.Battery.Resistance = units.None[units.Resistance]() }, []string{"note resistance-not-stated"}},
		{"flat", func(h *battery.Hold) { h.StateOfCharge = units.Some(10 * units.Percent) }, []string{"caution already-at-depth"}},
		{"a given zero of charge", func(h *battery.Hold) { h.StateOfCharge = units.Some[units.Ratio](0) }, []string{"caution already-at-depth"}},
		{"short circuit", func(h *battery.Hold) {
			h.Draw = battery.Draw{Resistance: units.Some[units.Resistance](0)}
		}, []string{"danger short-circuit", "caution discharge-above-limit"}},
	} {
		h := hold()
		h.Bank.Battery.Exponent = units.Some[units.Ratio](1)
		c.change(&h)
		e := must[battery.Endurance](t)(battery.HoldUp(h))
		wantFindings(t, c.what, e.Findings(), append(c.want, "note voltage-taken-as-constant")...)
	}
}

func TestLimitFindings(t *testing.T) {
	amperes := func(x float64) units.Opt[units.Current] { return units.Some(units.Current(x)) }
	none := units.None[units.Current]()
	for _, c := range []struct {
		what              string
		parallel          int
		discharge, charge units.Opt[units.Current]
		unlimited         bool
		want              []string
	}{
		{"within, with one out too", 3, amperes(200), amperes(150), false, []string{"note sharing-taken-as-equal"}},
		{"above with one out", 3, amperes(200.1), amperes(150.1), false, []string{"note sharing-taken-as-equal", "caution discharge-above-limit-one-out", "danger charge-above-limit-one-out"}},
		{"noise is not above", 3, amperes(200 * (1 + 1e-12)), amperes(150 * (1 + 1e-12)), false, []string{"note sharing-taken-as-equal"}},
		{"above the limit", 3, amperes(300.1), amperes(225.1), false, []string{"note sharing-taken-as-equal", "caution discharge-above-limit", "danger charge-above-limit"}},
		{"one string", 1, amperes(100), amperes(75), false, []string{"note one-string"}},
		{"one string, above", 1, amperes(101), amperes(76), false, []string{"note one-string", "caution discharge-above-limit", "danger charge-above-limit"}},
		{"nothing demanded", 2, none, none, false, []string{"note sharing-taken-as-equal", "note discharge-not-demanded", "note charge-not-demanded"}},
		{"none demanded, given as zero", 2, amperes(0), amperes(0), false, []string{"note sharing-taken-as-equal"}},
		{"no limits", 2, amperes(1), amperes(1), true, []string{"note sharing-taken-as-equal", "caution discharge-limit-not-stated", "caution charge-limit-not-stated"}},
	} {
		d := battery.Demand{Bank: demoBank(), Discharge: c.discharge, Charge: c.charge}
		d.Bank.Parallel, d.Bank.CellTemperature = c.parallel, units.Celsius(20)
		if c.unlimited {
			d.Bank.Battery.DischargeLimit, d.Bank.Battery.ChargeLimit = none, none
		}
		wantFindings(t, c.what, must[battery.Limits](t)(battery.CheckLimits(d)).Findings(), c.want...)
	}
}

func TestOtherFindings(t *testing.T) {
	wantFindings(t, "exponent", must[battery.Exponent](t)(battery.ExponentFrom(
		battery.Rating{Capacity: 180 * units.AmpereHour, Over: 6 * units.Hour},
		battery.Rating{Capacity: 220 * units.AmpereHour, Over: 20 * units.Hour},
	)).Findings(), "note exponent-from-two-ratings")
	for _, c := range []struct {
		times units.Ratio // the current of the second rating, which lasts an hour, over the first
		over  units.Elapsed
		want  []string
	}{
		{4, 16 * units.Hour, []string{"note exponent-from-two-ratings"}}, // 2
		{4, 17 * units.Hour, []string{"caution exponent-above-two", "note exponent-from-two-ratings"}},
		{4, 4 * units.Hour, []string{"note exponent-from-two-ratings"}}, // 1
		{4, 3.9 * units.Hour, []string{"caution exponent-below-one", "note exponent-from-two-ratings"}},
	} {
		x := must[battery.Exponent](t)(battery.ExponentFrom(
			battery.Rating{Capacity: (5 * units.Ampere).For(c.over), Over: c.over},
			battery.Rating{Capacity: units.Scale(5*units.AmpereHour, c.times), Over: units.Hour},
		))
		wantFindings(t, "exponent "+c.over.String(), x.Findings(), c.want...)
	}
	wantFindings(t, "freezing within the table", must[battery.Freezing](t)(battery.FreezingPoint(0.25)).Findings())
	wantFindings(t, "freezing below it", must[battery.Freezing](t)(battery.FreezingPoint(0.2)).Findings(), "caution below-freezing-table")
}

// TestColdIsNotSilent: known cold without a multiplier is said, and goes with
// the multiplier, with the warmth, and comes back for lithium.
func TestColdIsNotSilent(t *testing.T) {
	for _, c := range []struct {
		what     string
		change   func(*battery.Bank)
		found    bool
		severity working.Severity
	}{
		{"lead at 15 °C", func(*battery.Bank) {}, true, working.Note},
		{"lead at -25 °C", func(b *battery.Bank) { b.CellTemperature = units.Celsius(-25) }, true, working.Caution},
		{"lithium at -5 °C", func(b *battery.Bank) { b.Battery, b.CellTemperature = lithium140(), units.Celsius(-5) }, true, working.Caution},
		{"lead at 5 °C", func(b *battery.Bank) { b.CellTemperature = units.Celsius(5) }, true, working.Caution},
		{"lead at 5.1 °C", func(b *battery.Bank) { b.CellTemperature = units.Celsius(5.1) }, true, working.Note},
		{"at 20 °C", func(b *battery.Bank) { b.CellTemperature = units.Celsius(20) }, false, 0},
		{"with its multiplier", func(b *battery.Bank) { b.Multiplier = units.Some[units.Ratio](1.4) }, false, 0},
		{"temperature unknown, which has a finding of its own", func(b *battery.Bank) { b.CellTemperature = units.Temperature{} }, false, 0},
	} {
		b := lead()
		c.change(&b)
		u, err := battery.Usable(b, units.None[units.Current]())
		if err != nil {
			t.Fatal(err)
		}
		found, severity := false, working.Severity(0)
		for _, f := range u.Findings() {
			if f.Rule == "cold-not-counted" {
				found, severity = true, f.Severity
			}
		}
		if found != c.found || severity != c.severity {
			t.Errorf("%s: found %v as %v", c.what, found, severity)
		}
	}
}
