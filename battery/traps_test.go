package battery_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// must fails the test on an error.
func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// printedAs demands that v shows as want, with so many decimals of unit.
func printedAs[Q units.Quantity](t *testing.T, what string, v, unit Q, decimals int, want string) {
	t.Helper()
	if got := units.Fixed(units.In(v, unit), decimals); got != want {
		t.Errorf("%s = %s, want %s", what, got, want)
	}
}

func wantRule(t *testing.T, f []working.Finding, rule string, severity working.Severity) {
	t.Helper()
	for _, g := range f {
		if g.Rule == rule {
			if g.Severity != severity {
				t.Errorf("finding %s is a %v, want a %v", rule, g.Severity, severity)
			}
			return
		}
	}
	t.Errorf("no finding %s among %v", rule, rules(f))
}

func wantNoRule(t *testing.T, f []working.Finding, rule string) {
	t.Helper()
	for _, g := range f {
		if g.Rule == rule {
			t.Errorf("finding %s, which is not so: %v", rule, g)
		}
	}
}

func rules(f []working.Finding) []string {
	var names []string
	for _, g := range f {
		names = append(names, g.Rule)
	}
	return names
}

func one(b battery.Battery) battery.Bank { return battery.Bank{Battery: b, Series: 1, Parallel: 1} }

// The traps are rows of a table of errors that owners and web pages make,
// with the right and the wrong answer. Expected values worked apart from this
// library by the formula named.

// Which stores more for a 40 A load: 200 Ah of flooded lead or 100 Ah of
// lithium. Ampere-hours times 12 compares neither.
func TestTrapLeadAgainstLithium(t *testing.T) {
	at := units.Some(40 * units.Ampere)
	lead := must[battery.UsableCharge](t)(battery.Usable(one(battery.Battery{
		Chemistry: battery.Flooded, Capacity: 200 * units.AmpereHour, Voltage: 12.1 * units.Volt,
		RatedOver: units.Some(20 * units.Hour), Exponent: units.Some[units.Ratio](1.2), Usable: units.Some(50 * units.Percent),
	}), at))
	lithium := must[battery.UsableCharge](t)(battery.Usable(one(battery.Battery{
		Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.9 * units.Volt,
		Usable: units.Some(90 * units.Percent),
	}), at))
	printedAs(t, "lead at 40 A", lead.Available, units.AmpereHour, 1, "151.6")
	printedAs(t, "lead", lead.Energy, units.WattHour, 0, "917")
	printedAs(t, "lithium", lithium.Energy, units.WattHour, 0, "1161")
	if !units.Exceeds(lithium.Energy, lead.Energy) {
		t.Error("lead has more, which is the wrong answer")
	}
}

// A half-charged lead bank feeds an inverter near its limit. To take the
// current at rest passes a design that trips.
func TestTrapSagRaisesTheCurrent(t *testing.T) {
	s := must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
		OpenCircuit: 12.2 * units.Volt, Internal: 10 * units.Milliohm,
		Draw: battery.Draw{Power: units.Some(1800 * units.Watt)}, CutOff: units.Some(10.5 * units.Volt),
	}))
	printedAs(t, "voltage", s.Voltage, units.Volt, 3, "10.483")
	printedAs(t, "current", s.Current, units.Ampere, 1, "171.7")
	wantRule(t, s.Findings(), "below-cut-off", working.Caution)
}

// A 2000 W inverter on one battery with a 100 A protection: energy is not
// power.
func TestTrapProtectionOpens(t *testing.T) {
	h := battery.Hold{
		Bank: one(battery.Battery{
			Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt,
			DischargeLimit: units.Some(100 * units.Ampere), Usable: units.Some(90 * units.Percent),
		}),
		Draw: battery.Draw{Power: units.Some(units.Power(2000 / 0.9))},
	}
	e := must[battery.Endurance](t)(battery.HoldUp(h))
	printedAs(t, "current", e.Sag.Current, units.Ampere, 1, "173.6")
	if e.Time != 0 || e.End != battery.ByProtection {
		t.Errorf("HoldUp lasts %v, ended by %v; want 0 s, ended by the discharge limit", e.Time, e.End)
	}
	printedAs(t, "most power behind an inverter of 90 %", units.Scale(e.MostPower.Or(0), 0.9), units.Watt, 0, "1152")
	wantRule(t, e.Findings(), "discharge-above-limit", working.Caution)
	h.Bank.Parallel = 2
	e = must[battery.Endurance](t)(battery.HoldUp(h))
	if e.Time == 0 || e.End != battery.ByDepth {
		t.Errorf("with two strings HoldUp lasts %v, ended by %v", e.Time, e.End)
	}
	wantNoRule(t, e.Findings(), "discharge-above-limit")
}

// An old battery and a new one of another kind are not one bank: there is no
// way to add their ampere-hours, since a Bank holds one Battery. What would
// flow between them is the sag of one on the other.
func TestTrapMixedChemistries(t *testing.T) {
	lithium, lead, cable := 10*units.Milliohm, 6*units.Milliohm, 4*units.Milliohm
	s := must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
		OpenCircuit: 13.3*units.Volt - 12.4*units.Volt, Internal: lithium + lead + cable,
		Draw: battery.Draw{Resistance: units.Some[units.Resistance](0)},
	}))
	printedAs(t, "circulating current", s.Current, units.Ampere, 1, "45.0")
}

// An 80 A charger on two batteries of 50 A each, of which one drops out.
func TestTrapOneDropsOut(t *testing.T) {
	d := battery.Demand{
		Bank: battery.Bank{Battery: battery.Battery{
			Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt,
			ChargeLimit: units.Some(50 * units.Ampere),
		}, Series: 1, Parallel: 2},
		Charge: units.Some(80 * units.Ampere),
	}
	l := must[battery.Limits](t)(battery.CheckLimits(d))
	printedAs(t, "each of two", l.ChargeEach.Or(0), units.Ampere, 1, "40.0")
	printedAs(t, "the one that is left", l.ChargeOthers.Or(0), units.Ampere, 1, "80.0")
	wantRule(t, l.Findings(), "charge-above-limit-one-out", working.Danger)
	d.Charge = units.Some(50 * units.Ampere)
	l = must[battery.Limits](t)(battery.CheckLimits(d))
	wantNoRule(t, l.Findings(), "charge-above-limit-one-out")
	d.Charge = units.Some(100.1 * units.Ampere)
	l = must[battery.Limits](t)(battery.CheckLimits(d))
	wantRule(t, l.Findings(), "charge-above-limit", working.Danger)
}

// Lithium cells at exactly 0 °C: a given zero is not a missing one.
func TestTrapZeroDegrees(t *testing.T) {
	for _, c := range []struct {
		cells units.Temperature
		rule  string
	}{
		{units.Celsius(0), "lithium-too-cold-to-charge"},
		{units.Fahrenheit(32), "lithium-too-cold-to-charge"},
		{units.Celsius(-22), "lithium-too-cold-to-charge"},
		{units.Temperature{}, "lithium-temperature-unknown"},
		{units.Celsius(4.9), "lithium-cold"},
		{units.Celsius(25), ""},
		{units.Celsius(45), ""},
		{units.Celsius(45.1), "too-hot-to-charge"},
	} {
		b := one(lithium140())
		b.CellTemperature, b.Charging = c.cells, off()
		var found []string
		for _, f := range must[battery.Assembly](t)(battery.Assemble(b)).Findings() {
			found = append(found, f.Rule)
			if f.Numbers[0].Value != units.Value(c.cells) {
				t.Errorf("%v: finding %s counts with %v", c.cells, f.Rule, f.Numbers[0].Value)
			}
		}
		var want []string
		if c.rule != "" {
			want = []string{c.rule}
		}
		if !cmp.Equal(found, want) {
			t.Errorf("lithium at %v: findings %v, want %v", c.cells, found, want)
		}
	}
	k := must[units.Temperature](t)(units.ParseTemperature("273.15 K"))
	b := one(lithium140())
	b.CellTemperature = k
	wantRule(t, must[battery.Assembly](t)(battery.Assemble(b)).Findings(), "lithium-too-cold-to-charge", working.Caution)
}

// An aged cold bank: a multiplier above 1 says how much more to buy, so it
// divides.
func TestTrapMultiplierDivides(t *testing.T) {
	b := one(battery.Battery{
		Chemistry: battery.AGM, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt,
		Usable: units.Some(50 * units.Percent), Aged: units.Some(80 * units.Percent),
	})
	b.Multiplier = units.Some[units.Ratio](1.40)
	u := must[battery.UsableCharge](t)(battery.Usable(b, units.None[units.Current]()))
	printedAs(t, "usable", u.Charge, units.AmpereHour, 1, "57.1")
	b.Multiplier = units.Some(71 * units.Percent)
	_, err := battery.Usable(b, units.None[units.Current]())
	wantRangeError(t, err, "battery.Usable", "Multiplier")
}

// Stored with a small drain ahead of the switch, for days and not for months.
func TestTrapStorageDrain(t *testing.T) {
	e := must[battery.Endurance](t)(battery.HoldUp(battery.Hold{
		Bank: one(battery.Battery{
			Chemistry: battery.Flooded, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt,
			Usable: units.Some(50 * units.Percent),
		}),
		Draw: battery.Draw{Current: units.Some(0.12*units.Ampere + 0.04*units.Ampere + 0.15*units.Ampere + 0.14*units.Ampere)},
	}))
	printedAs(t, "storage", e.Time, units.Day, 2, "4.63")
}

// A flooded battery with a small drain in a cold snap of -20 °C: the freezing
// point goes with the charge.
func TestTrapFreezing(t *testing.T) {
	left := 90*units.AmpereHour - (0.4 * units.Ampere).For(7*units.Day)
	state := units.RatioOf(left, 100*units.AmpereHour)
	printedAs(t, "state of charge", state, units.Percent, 1, "22.8")
	f := must[battery.Freezing](t)(battery.FreezingPoint(state))
	if !f.Warmer || units.Fixed(f.Point.Celsius(), 1) != "-17.2" {
		t.Errorf("FreezingPoint(%v) = %+v, want above -17.2 °C", state, f)
	}
	wantRule(t, f.Findings(), "below-freezing-table", working.Caution)
	full := must[battery.Freezing](t)(battery.FreezingPoint(1))
	if units.Celsius(-20).Compare(full.Point) <= 0 || units.Celsius(-20).Compare(f.Point) > 0 {
		t.Errorf("at -20 °C: full freezes at %v, 22.8 %% at %v", full.Point, f.Point)
	}
}

// Vent openings of two strings of two 6 V batteries: the wrong answer is an
// eighth of it.
func TestTrapVentOpenings(t *testing.T) {
	b := battery.Bank{Battery: battery.Battery{
		Chemistry: battery.Flooded, Capacity: 225 * units.AmpereHour, Voltage: 6 * units.Volt,
	}, Series: 2, Parallel: 2}
	v := must[battery.Ventilation](t)(battery.Ventilate(b))
	printedAs(t, "air", v.Flow, units.CubicMetrePerHour, 2, "2.70")
	printedAs(t, "opening", v.Opening, units.SquareCentimetre, 1, "75.6")
	for _, c := range []struct {
		vent     units.Opt[units.Area]
		severity working.Severity
	}{
		{units.None[units.Area](), working.Caution},
		{units.Some[units.Area](0), working.Danger},
		{units.Some(1100 * units.SquareMillimetre), working.Danger}, // one rule met is not the other met
		{units.Some(75.6 * units.SquareCentimetre), working.Note},
	} {
		b.Vent = c.vent
		wantRule(t, must[battery.Assembly](t)(battery.Assemble(b)).Findings(), "hydrogen", c.severity)
	}
}

// lithium140 is a battery of the invented demo.
func lithium140() battery.Battery {
	return battery.Battery{
		Chemistry: battery.LithiumIronPhosphate, Capacity: 140 * units.AmpereHour, Voltage: 12.8 * units.Volt,
		Usable: units.Some(90 * units.Percent), Resistance: units.Some(4 * units.Milliohm),
		DischargeLimit: units.Some(100 * units.Ampere), ChargeLimit: units.Some(75 * units.Ampere),
		ChargeLow: units.Celsius(0), ChargeHigh: units.Celsius(45),
	}
}

// off is a charger that does not correct its voltage.
func off() battery.Charging { return battery.Charging{Compensation: units.Some(0 * units.Volt)} }

func demoBank() battery.Bank {
	return battery.Bank{Battery: lithium140(), Series: 1, Parallel: 2, CellTemperature: units.Celsius(-22), Charging: off()}
}

// Expected values of the invented demo, worked by hand with published
// formulas.
func TestDemoBank(t *testing.T) {
	u := must[battery.UsableCharge](t)(battery.Usable(demoBank(), units.None[units.Current]()))
	printedAs(t, "usable energy", u.Energy, units.WattHour, 0, "3226")
	if r, ok := u.Assembly.Resistance.Get(); !ok || units.Compare(r, 2*units.Milliohm) != 0 {
		t.Errorf("resistance %v, want 2 mΩ", r)
	}
	findings := u.Findings()
	wantRule(t, findings, "lithium-too-cold-to-charge", working.Caution)
	wantNoRule(t, findings, "hydrogen")
}

// Expected values of the invented demo, worked by hand with published
// formulas.
func TestDemoHoldUp(t *testing.T) {
	for _, c := range []struct {
		what     string
		power    units.Power
		unit     units.Elapsed
		decimals int
		want     string
	}{
		{"what must never stop", 54.2 * units.Watt, units.Hour, 1, "59.5"},
		// The converter that hangs on the inverter: 767 W in, 594 W out.
		{"the same with the feed loop", 54.2*units.Watt + 173*units.Watt, units.Hour, 1, "14.2"},
		{"everything, an October day", (3109 * units.WattHour).In(units.Day), units.Hour, 0, "25"},
		{"a day with nobody there", 70 * units.Watt, units.Hour, 0, "46"},
		{"what must never stop, with October sun", 54.2*units.Watt - (1069 * units.WattHour).In(units.Day), units.Day, 0, "14"},
	} {
		e := must[battery.Endurance](t)(battery.HoldUp(battery.Hold{
			Bank: demoBank(), Draw: battery.Draw{Power: units.Some(c.power)}, CutOff: units.Some(10.8 * units.Volt),
		}))
		if e.End != battery.ByDepth {
			t.Errorf("%s: ended by %v", c.what, e.End)
		}
		printedAs(t, c.what, e.Time, c.unit, c.decimals, c.want)
	}
}

// Expected values of the invented demo, worked by hand with published
// formulas.
func TestDemoOneBatteryOut(t *testing.T) {
	d := battery.Demand{
		Bank:      demoBank(),
		Discharge: units.Some(156 * units.Ampere),
		Charge:    units.Some(45*units.Ampere + 30*units.Ampere + 20*units.Ampere),
	}
	l := must[battery.Limits](t)(battery.CheckLimits(d))
	printedAs(t, "discharge with one out", l.DischargeOneOut.Or(0), units.Ampere, 0, "100")
	printedAs(t, "charge with one out", l.ChargeOneOut.Or(0), units.Ampere, 0, "75")
	wantRule(t, l.Findings(), "discharge-above-limit-one-out", working.Caution)
	wantRule(t, l.Findings(), "charge-above-limit-one-out", working.Danger)
	wantNoRule(t, l.Findings(), "discharge-above-limit")
	wantNoRule(t, l.Findings(), "charge-above-limit")
}

// The demo's variant: two flooded batteries in the same locker.
func TestDemoFloodedVariant(t *testing.T) {
	b := demoBank()
	b.Battery = battery.Battery{Chemistry: battery.Flooded, Capacity: 200 * units.AmpereHour, Voltage: 12 * units.Volt}
	u := must[battery.UsableCharge](t)(battery.Usable(b, units.None[units.Current]()))
	printedAs(t, "usable energy", u.Energy, units.WattHour, 0, "2400")
	wantRule(t, u.Findings(), "hydrogen", working.Caution)
	wantRule(t, u.Findings(), "lead-freezes-if-flat", working.Caution)
	wantNoRule(t, u.Findings(), "lithium-too-cold-to-charge")
	before := must[battery.UsableCharge](t)(battery.Usable(demoBank(), units.None[units.Current]()))
	if less := 1 - units.RatioOf(u.Energy, before.Energy); less < 0.2 || less > 0.35 {
		t.Errorf("usable energy falls by %v, want about 30 %%", less)
	}
}

// Two measured discharges of one 12 V 17 Ah valve-regulated battery, whose
// tests did not begin equally full: 19.387 Ah in 6.370 h and 18.267 Ah in
// 34.468 h to 10.8 V. Source: Sulzer et al., J. Electrochem. Soc. 166 (2019),
// telemetry, integrated by trapezoids. Provenance: derived.
func TestMeasuredPairContradictsItself(t *testing.T) {
	x := must[battery.Exponent](t)(battery.ExponentFrom(
		battery.Rating{Capacity: 19.387 * units.AmpereHour, Over: 6.370 * units.Hour},
		battery.Rating{Capacity: 18.267 * units.AmpereHour, Over: 34.468 * units.Hour},
	))
	wantRule(t, x.Findings(), "exponent-below-one", working.Caution)
	_, err := battery.Deliver(battery.Discharge{Rating: x.A, Exponent: x.Value, Current: units.Ampere})
	wantRangeError(t, err, "battery.Deliver", "Exponent")
	// The same charges divided by how full the authors found the battery.
	x = must[battery.Exponent](t)(battery.ExponentFrom(
		battery.Rating{Capacity: 19.387 * units.AmpereHour, Over: 6.370 * units.Hour},
		battery.Rating{Capacity: 20.530 * units.AmpereHour, Over: 34.468 / 0.88976 * units.Hour},
	))
	wantNoRule(t, x.Findings(), "exponent-below-one")
	if !cmp.Equal(float64(x.Value), 1.033, unitstest.Near(0.01)) {
		t.Errorf("exponent %v, want about the 1.033 fitted over the series", x.Value)
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
