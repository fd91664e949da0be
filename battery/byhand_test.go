package battery_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// Exponents that need no logarithm: so many times the current, so many times
// shorter.
func TestExponentsByHand(t *testing.T) {
	rating := func(ah, h float64) battery.Rating {
		return battery.Rating{Capacity: units.Scale(units.AmpereHour, units.Ratio(ah)), Over: units.Elapsed(h * 3600)}
	}
	for _, c := range []struct {
		a, b battery.Rating
		want float64
	}{
		{rating(80, 8), rating(40, 1), 1.5},   // 4 times the current, 8 = 4^1.5 times shorter
		{rating(100, 20), rating(50, 5), 2},   // twice, 4 = 2^2
		{rating(100, 20), rating(100, 10), 1}, // twice, twice
		{rating(90, 9), rating(30, 1), 2},     // 3 times, 9
	} {
		x := must[battery.Exponent](t)(battery.ExponentFrom(c.a, c.b))
		if !cmp.Equal(float64(x.Value), c.want, unitstest.Near(1e-12)) {
			t.Errorf("%v and %v: exponent %v, want %v", c.a, c.b, float64(x.Value), c.want)
		}
	}
}

// The law itself: both ratings of a datasheet have one I^k·t. The ratings are
// those of an NREL test battery (NREL/TP-6A20-64641), and of an invented one.
func TestExponentMakesOnePeukertCapacity(t *testing.T) {
	hours := func(ah, h float64) battery.Rating {
		return battery.Rating{Capacity: units.Charge(ah * 3600), Over: units.Elapsed(h * 3600)}
	}
	for _, pair := range [][2]battery.Rating{
		{hours(60, 1), hours(93, 10)}, {hours(93, 10), hours(100, 20)}, {hours(60, 1), hours(100, 20)},
		{hours(180, 6), hours(220, 20)}, {hours(220, 20), hours(260, 48)},
	} {
		x := must[battery.Exponent](t)(battery.ExponentFrom(pair[0], pair[1]))
		capacity := func(r battery.Rating) float64 {
			return math.Pow(float64(r.Capacity)/float64(r.Over), float64(x.Value)) * float64(r.Over)
		}
		if a, b := capacity(pair[0]), capacity(pair[1]); !cmp.Equal(a, b, unitstest.Near(1e-12)) || !(x.Value > 1 && x.Value < 1.3) {
			t.Errorf("%v: exponent %v, I^k·t is %v and %v", pair, float64(x.Value), a, b)
		}
	}
}

// Ventilation by hand: 0.05 · cells · mA per Ah · Ah / 1000 m³/h, 28 cm² for
// each of them, 11 cm² at least.
func TestVentilationByHand(t *testing.T) {
	for _, c := range []struct {
		kind             battery.Chemistry
		volts            units.Voltage
		ah               float64
		series, parallel int
		flow             float64 // m³/h
		opening          float64 // cm²
	}{
		{battery.Flooded, 12, 200, 1, 1, 1.2, 33.6},   // 6 cells, 20 mA
		{battery.Flooded, 6, 225, 2, 2, 2.7, 75.6},    // 6 cells, 450 Ah
		{battery.AGM, 12, 100, 1, 1, 0.24, 11},        // 6.72 cm² by the air
		{battery.Gel, 12, 100, 2, 2, 0.96, 26.88},     // 12 cells, 8 mA, 200 Ah
		{battery.Flooded, 2, 1000, 24, 1, 24, 672},    // 24 cells
		{battery.Flooded, 8, 125, 3, 1, 1.5, 42},      // 12 cells
		{battery.Flooded, 12.8, 200, 1, 1, 1.2, 33.6}, // written as it rests: still 6 cells
	} {
		v := must[battery.Ventilation](t)(battery.Ventilate(battery.Bank{Battery: battery.Battery{
			Chemistry: c.kind, Voltage: c.volts, Capacity: units.Charge(c.ah * 3600),
		}, Series: c.series, Parallel: c.parallel}))
		if units.Compare(units.In(v.Flow, units.CubicMetrePerHour), c.flow) != 0 || units.Compare(units.In(v.Opening, units.SquareCentimetre), c.opening) != 0 {
			t.Errorf("%+v: %v, %v", c, v.Flow, v.Opening)
		}
	}
}

// The most power respects limit, source and cut-off, whichever is least: 12 V
// behind 10 mΩ, worked by hand in each row.
func TestMostPower(t *testing.T) {
	for _, c := range []struct {
		what       string
		limit      units.Current
		resistance units.Opt[units.Resistance]
		cut        units.Opt[units.Voltage]
		want       units.Power
	}{
		{"limit: 100 A · (12 V - 1 V)", 100, units.Some(10 * units.Milliohm), units.None[units.Voltage](), 1100},
		{"limit, cut-off below: the same", 100, units.Some(10 * units.Milliohm), units.Some(10.9 * units.Volt), 1100},
		{"cut-off 11.5 V: 50 A · 11.5 V", 100, units.Some(10 * units.Milliohm), units.Some(11.5 * units.Volt), 575},
		{"cut-off at rest: nothing", 100, units.Some(10 * units.Milliohm), units.Some(12 * units.Volt), 0},
		{"cut-off at rest, no resistance: nothing", 100, units.None[units.Resistance](), units.Some(12 * units.Volt), 0},
		{"cut-off above rest: nothing", 100, units.None[units.Resistance](), units.Some(12.5 * units.Volt), 0},
		{"source: 600 A · 6 V", 5000, units.Some(10 * units.Milliohm), units.None[units.Voltage](), 3600},
		{"source, a cut-off below half: the same", 5000, units.Some(10 * units.Milliohm), units.Some(5 * units.Volt), 3600},
		{"no resistance: 100 A · 12 V", 100, units.None[units.Resistance](), units.Some(11 * units.Volt), 1200},
	} {
		h := battery.Hold{Bank: one(battery.Battery{
			Chemistry: battery.AGM, Capacity: 100 * units.AmpereHour, Voltage: 12 * units.Volt,
			DischargeLimit: units.Some(c.limit), Resistance: c.resistance,
		}), Draw: battery.Draw{Power: units.Some(10 * units.Watt)}, CutOff: c.cut}
		most, ok := must[battery.Endurance](t)(battery.HoldUp(h)).MostPower.Get()
		if !ok || units.Compare(most, c.want) != 0 {
			t.Errorf("%s: %v, want %v", c.what, most, c.want)
		}
	}
}

// A wrench across the terminals has a resistance too.
func TestShortCircuitThroughSomething(t *testing.T) {
	for _, c := range []struct {
		load  units.Resistance
		short bool
	}{
		{0, true},
		{0.5 * units.Milliohm, true}, // 12.8 V / 2.5 mΩ
		{1.99 * units.Milliohm, true},
		{2 * units.Milliohm, false}, // half the voltage: the most that a source can give
		{10 * units.Milliohm, false},
	} {
		s := must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
			OpenCircuit: 12.8 * units.Volt, Internal: 2 * units.Milliohm, Draw: battery.Draw{Resistance: units.Some(c.load)},
		}))
		if c.short {
			wantFindings(t, c.load.String(), s.Findings(), "danger short-circuit")
		} else {
			wantFindings(t, c.load.String(), s.Findings(), "note cut-off-not-stated")
		}
	}
	// The most power there is, which is had at half the voltage, is no short.
	s := must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
		OpenCircuit: 12 * units.Volt, Internal: 500 * units.Milliohm, Draw: battery.Draw{Power: units.Some(72 * units.Watt)},
	}))
	wantNoRule(t, s.Findings(), "short-circuit")
}

// Where each figure comes from. Only the full cells were read; the rest is
// common practice or remembered, and must say so.
func TestFiguresSayWhereTheyComeFrom(t *testing.T) {
	const read, memory, practice = working.Read, working.Memory, working.CommonPractice
	type row struct{ cell, full, plan, hard, hours, k, low, high, chargeLow, chargeHigh, most, gas working.Provenance }
	for c, want := range map[battery.Chemistry]row{
		battery.Flooded: {practice, read, practice, practice, practice, practice, practice, practice, 0, practice, practice, memory},
		battery.AGM:     {practice, practice, practice, practice, practice, practice, practice, practice, 0, practice, practice, memory},
		battery.Gel:     {practice, practice, practice, practice, practice, practice, practice, practice, 0, practice, practice, memory},
		battery.LithiumIronPhosphate: {practice, read, practice, practice, memory, practice, practice, practice,
			practice, practice, practice, practice},
	} {
		f := must[battery.Figures](t)(c.Figures())
		got := row{f.CellVoltage.Source.Provenance, f.OpenCircuit.Source.Provenance, f.PlanningDepth.Source.Provenance,
			f.HardDepth.Source.Provenance, f.RatedOver.Source.Provenance, f.Exponent.Source.Provenance,
			f.ExponentLow.Source.Provenance, f.ExponentHigh.Source.Provenance, f.ChargeLow.Source.Provenance,
			f.ChargeHigh.Source.Provenance, f.ChargeVoltage.Source.Provenance, f.Gassing.Source.Provenance}
		if got != want {
			t.Errorf("%v: provenances %v, want %v", c, got, want)
		}
	}
}

// The sources of the steps that a sheet cites, and of the findings.
func TestSourcesOfSheetsAndFindings(t *testing.T) {
	vent := must[battery.Ventilation](t)(battery.Ventilate(lead()))
	want := map[string]working.Provenance{"I_gas": working.Memory, "q": working.Read, "r": working.Read, "A_min": working.Read}
	for _, step := range vent.Working().Steps() {
		if p, ok := want[step.Name]; ok && step.Source.Provenance != p {
			t.Errorf("%s: %v, want %v", step.Name, step.Source.Provenance, p)
		}
		delete(want, step.Name)
	}
	if len(want) != 0 {
		t.Errorf("no step for %v", want)
	}
	cold := must[battery.Freezing](t)(battery.FreezingPoint(0.1))
	if p := cold.Findings()[0].Source.Provenance; p != working.Read {
		t.Errorf("freezing table: %v, want read", p)
	}
}

// Above 45 °C lithium ages faster, above 60 °C it is not charged: one source
// says both, in the same words wherever it is cited.
func TestLithiumWarm(t *testing.T) {
	f := must[battery.Figures](t)(battery.LithiumIronPhosphate.Figures())
	for _, c := range []struct {
		cells float64
		limit units.Temperature
		want  []string
	}{
		{45, units.Temperature{}, nil},
		{45.1, units.Temperature{}, []string{"note lithium-warm"}},
		{60, units.Temperature{}, []string{"note lithium-warm"}},
		{60.1, units.Temperature{}, []string{"caution too-hot-to-charge"}},
		{50, units.Celsius(45), []string{"caution too-hot-to-charge"}}, // the datasheet beats it
		{4.9, units.Temperature{}, []string{"note lithium-cold"}},
		{5, units.Temperature{}, nil},
		{0, units.Temperature{}, []string{"caution lithium-too-cold-to-charge"}},
	} {
		b := one(battery.Battery{Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt, ChargeHigh: c.limit})
		b.CellTemperature, b.Charging = units.Celsius(c.cells), off()
		findings := must[battery.Assembly](t)(battery.Assemble(b)).Findings()
		wantFindings(t, b.CellTemperature.String(), findings, c.want...)
		for _, g := range findings {
			if g.Source != f.ChargeHigh.Source || g.Source != f.ChargeLow.Source {
				t.Errorf("%v: %s cites %v, not %v", b.CellTemperature, g.Rule, g.Source, f.ChargeHigh.Source)
			}
		}
	}
}

// The limit of the datasheet counts, and freezing counts whatever it says.
func TestLithiumTooCold(t *testing.T) {
	for _, c := range []struct {
		cells, low float64
		want       string
	}{
		{7, 7, "caution lithium-too-cold-to-charge"},
		{7.1, 7, ""},
		{5.1, 5, ""},
		{0, -10, "caution lithium-too-cold-to-charge"},
		{0.1, -10, "note lithium-cold"},
		{-10, -10, "caution lithium-too-cold-to-charge"},
	} {
		b := one(battery.Battery{Chemistry: battery.LithiumIronPhosphate, Capacity: 100 * units.AmpereHour, Voltage: 12.8 * units.Volt, ChargeLow: units.Celsius(c.low)})
		b.CellTemperature, b.Charging = units.Celsius(c.cells), off()
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		wantFindings(t, b.CellTemperature.String(), must[battery.Assembly](t)(battery.Assemble(b)).Findings(), want...)
	}
}
