package battery_test

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// lead is a flooded bank with every number of its own.
func lead() battery.Bank {
	return battery.Bank{Battery: battery.Battery{
		Chemistry: battery.Flooded, Capacity: 220 * units.AmpereHour, Voltage: 6 * units.Volt,
		RatedOver: units.Some(20 * units.Hour), Exponent: units.Some[units.Ratio](1.25),
		Resistance: units.Some(2 * units.Milliohm),
	}, Series: 2, Parallel: 2, CellTemperature: units.Celsius(15), Charging: battery.Charging{Compensation: units.Some(-4 * units.Millivolt)}}
}

func feed(t *testing.T, p units.Power, change func(*battery.Hold)) battery.Endurance {
	t.Helper()
	h := battery.Hold{Bank: lead(), Draw: battery.Draw{Power: units.Some(p)}}
	change(&h)
	return must[battery.Endurance](t)(battery.HoldUp(h))
}

func same(*battery.Hold) {}

func TestHoldUpLaws(t *testing.T) {
	base := feed(t, 600*units.Watt, same)
	for law, holds := range map[string]func() bool{
		"more power never lasts longer, nor gives more energy": func() bool {
			last, energy := units.Elapsed(math.Inf(1)), units.Energy(math.Inf(1))
			for p := 10 * units.Watt; p < 3000*units.Watt; p += 10 * units.Watt {
				e := feed(t, p, same)
				if !(e.Time < last) || units.Exceeds(e.Energy, energy) {
					return false
				}
				last, energy = e.Time, e.Energy
			}
			return true
		},
		"twice the strings last more than twice as long": func() bool {
			return feed(t, 600*units.Watt, func(h *battery.Hold) { h.Bank.Parallel = 4 }).Time > 2*base.Time
		},
		"series and parallel of one count hold the same energy": func() bool {
			a := must[battery.Assembly](t)(battery.Assemble(lead()))
			b := lead()
			b.Series, b.Parallel = 4, 1
			c := must[battery.Assembly](t)(battery.Assemble(b))
			return a.Energy == c.Energy && a.Batteries == c.Batteries && c.Voltage == 2*a.Voltage && c.Cells == 2*a.Cells
		},
		"charge is current over time": func() bool {
			return units.Compare(base.Sag.Current.For(base.Time), base.Charge) == 0
		},
		"energy of the load is its power over time": func() bool {
			return units.Compare(base.Energy, (600*units.Watt).For(base.Time)) == 0
		},
		"energy is kept: what leaves the cells feeds the load and heats the resistance": func() bool {
			out := base.Charge.At(base.Sag.Circuit.OpenCircuit)
			return units.Compare(out, base.Energy+base.Sag.Lost.For(base.Time)) == 0
		},
		"half way down lasts the rest": func() bool {
			half := feed(t, 600*units.Watt, func(h *battery.Hold) { h.StateOfCharge = units.Some(75 * units.Percent) })
			return units.Compare(2*half.Time, base.Time) == 0
		},
		"at the depth there is nothing left": func() bool {
			e := feed(t, 600*units.Watt, func(h *battery.Hold) { h.StateOfCharge = units.Some(50 * units.Percent) })
			return e.Time == 0 && e.End == battery.ByDepth
		},
		"below the depth neither": func() bool {
			e := feed(t, 600*units.Watt, func(h *battery.Hold) { h.StateOfCharge = units.Some[units.Ratio](0) })
			return e.Time == 0 && e.Charge == 0
		},
		"leads cost time": func() bool {
			return feed(t, 600*units.Watt, func(h *battery.Hold) { h.Leads = units.Some(5 * units.Milliohm) }).Time < base.Time
		},
		"a cut-off above the voltage stops the load, one below does not": func() bool {
			u := base.Sag.Voltage
			stops := feed(t, 600*units.Watt, func(h *battery.Hold) { h.CutOff = units.Some(u) })
			runs := feed(t, 600*units.Watt, func(h *battery.Hold) { h.CutOff = units.Some(u - units.Millivolt) })
			return stops.End == battery.ByCutOff && stops.Time == 0 && runs.Time == base.Time
		},
		"protection is named before the cut-off": func() bool {
			e := feed(t, 600*units.Watt, func(h *battery.Hold) {
				h.CutOff, h.Bank.Battery.DischargeLimit = units.Some(12*units.Volt), units.Some(units.Ampere)
			})
			return e.End == battery.ByProtection
		},
		"the most power within the limit draws the limit": func() bool {
			limit := func(h *battery.Hold) { h.Bank.Battery.DischargeLimit = units.Some(50 * units.Ampere) }
			most, ok := feed(t, 600*units.Watt, limit).MostPower.Get()
			return ok && units.Compare(feed(t, most, limit).Sag.Current, 100*units.Ampere) == 0
		},
		"beyond half the short-circuit current the limit adds no power": func() bool {
			most, ok := feed(t, 600*units.Watt, func(h *battery.Hold) {
				h.Bank.Battery.DischargeLimit = units.Some(50 * units.Kiloampere)
			}).MostPower.Get()
			// 12 V behind 2 mΩ: V²/(4R) = 18 kW.
			return ok && units.Compare(most, 18*units.Kilowatt) == 0
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

func TestPeukertLaws(t *testing.T) {
	rating := battery.Rating{Capacity: 100 * units.AmpereHour, Over: 20 * units.Hour}
	deliver := func(i units.Current, k units.Ratio) battery.Delivery {
		return must[battery.Delivery](t)(battery.Deliver(battery.Discharge{Rating: rating, Exponent: k, Current: i}))
	}
	for law, holds := range map[string]func() bool{
		"an exponent of 1 takes nothing off": func() bool { return deliver(80, 1).Charge == rating.Capacity },
		"twice the current lasts 2^k less": func() bool {
			ratio := float64(deliver(10, 1.2).Time) / float64(deliver(20, 1.2).Time)
			return units.Compare(ratio, math.Pow(2, 1.2)) == 0
		},
		"the exponent that was put in comes out of two deliveries": func() bool {
			a, b := deliver(8, 1.27), deliver(31, 1.27)
			x := must[battery.Exponent](t)(battery.ExponentFrom(battery.Rating{Capacity: a.Charge, Over: a.Time}, battery.Rating{Capacity: b.Charge, Over: b.Time}))
			return cmp.Equal(float64(x.Value), 1.27, unitstest.Near(1e-12))
		},
		"either order of ratings gives one exponent": func() bool {
			r := battery.Rating{Capacity: 60 * units.AmpereHour, Over: units.Hour}
			x := must[battery.Exponent](t)(battery.ExponentFrom(r, rating))
			y := must[battery.Exponent](t)(battery.ExponentFrom(rating, r))
			return units.Compare(x.Value, y.Value) == 0
		},
		"no current gives more than the rating": func() bool {
			v := deliver(1, 1.3)
			return v.Law > 1 && v.Charge == rating.Capacity && units.Compare(v.Time, 100*units.Hour) == 0
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

// The root returned is the one that a load starting from rest settles at.
func TestConstantPowerTakesTheHigherVoltage(t *testing.T) {
	for _, internal := range []units.Resistance{0, 0.001, 0.01, 0.1} {
		for _, p := range []units.Power{1, 100, 320} {
			s := must[battery.Sag](t)(battery.UnderLoad(battery.Circuit{
				OpenCircuit: 12, Internal: internal, Draw: battery.Draw{Power: units.Some(p)},
			}))
			// The slow way: let the current follow the voltage until it settles.
			u := 12 * units.Volt
			for range 10000 {
				u = 12*units.Volt - p.At(u).Through(internal)
			}
			if !cmp.Equal(s.Voltage, u, unitstest.Near(1e-9)) || s.Voltage < 6*units.Volt {
				t.Errorf("%v behind %v: %v, settles at %v", p, internal, s.Voltage, u)
			}
			if !cmp.Equal(s.Power, p, unitstest.Near(1e-12)) {
				t.Errorf("%v behind %v takes %v", p, internal, s.Power)
			}
		}
	}
}

func TestFreezingIsMonotonic(t *testing.T) {
	last := units.Celsius(0)
	for s := units.Ratio(0); s <= 1; s += 0.01 {
		f := must[battery.Freezing](t)(battery.FreezingPoint(s))
		if f.Point.Compare(last) > 0 {
			t.Errorf("at %v it freezes at %v, fuller but warmer than %v", s, f.Point, last)
		}
		if f.Warmer != (units.Compare(s, 0.25) < 0) {
			t.Errorf("at %v: Warmer = %v", s, f.Warmer)
		}
		last = f.Point
	}
	mid := must[battery.Freezing](t)(battery.FreezingPoint(0.625))
	// Half way between -31 °F and -62 °F.
	if units.Fixed(mid.Point.Fahrenheit(), 1) != "-46.5" {
		t.Errorf("half way between two rows: %v", mid.Point)
	}
}

// Every chemistry: datasheet beats default, and each default has a source.
func TestDatasheetBeatsDefault(t *testing.T) {
	for _, c := range battery.Chemistries() {
		f := must[battery.Figures](t)(c.Figures())
		voltage := 4 * f.CellVoltage.Value
		plain := must[battery.Assembly](t)(battery.Assemble(one(battery.Battery{
			Chemistry: c, Capacity: 100 * units.AmpereHour, Voltage: voltage,
		})))
		if plain.Depth != f.PlanningDepth.Value || plain.Exponent != f.Exponent.Value || plain.RatedOver != f.RatedOver.Value ||
			plain.ChargeLow != f.ChargeLow.Value || plain.ChargeHigh != f.ChargeHigh.Value || plain.Cells != 4 ||
			units.Compare(plain.OpenCircuit, 4*f.OpenCircuit.Value) != 0 || plain.Resistance.IsSet() {
			t.Errorf("%v: defaults %+v are not the figures %+v", c, plain, f)
		}
		given := must[battery.Assembly](t)(battery.Assemble(one(battery.Battery{
			Chemistry: c, Capacity: 100 * units.AmpereHour, Voltage: voltage, RatedOver: units.Some(3 * units.Hour),
			Exponent: units.Some[units.Ratio](1.11), Usable: units.Some[units.Ratio](1), OpenCircuit: units.Some(1.1 * voltage),
			ChargeLow: units.Celsius(-20), ChargeHigh: units.Celsius(70), Resistance: units.Some(units.Milliohm),
		})))
		if given.Depth != 1 || given.Exponent != 1.11 || given.RatedOver != 3*units.Hour || given.OpenCircuit != 1.1*voltage ||
			given.ChargeLow != units.Celsius(-20) || given.ChargeHigh != units.Celsius(70) || given.Resistance.Or(0) != units.Milliohm {
			t.Errorf("%v: the datasheet does not beat the default: %+v", c, given)
		}
		for name, src := range map[string]working.Source{
			"CellVoltage": f.CellVoltage.Source, "OpenCircuit": f.OpenCircuit.Source, "PlanningDepth": f.PlanningDepth.Source,
			"HardDepth": f.HardDepth.Source, "RatedOver": f.RatedOver.Source, "Exponent": f.Exponent.Source,
			"ExponentLow": f.ExponentLow.Source, "ExponentHigh": f.ExponentHigh.Source, "ChargeHigh": f.ChargeHigh.Source, "Gassing": f.Gassing.Source,
		} {
			if src.Provenance == working.Unstated || src.Title == "" {
				t.Errorf("%v: %s has no source", c, name)
			}
		}
		if !(f.ExponentLow.Value <= f.Exponent.Value && f.Exponent.Value <= f.ExponentHigh.Value &&
			f.PlanningDepth.Value <= f.HardDepth.Value && f.CellVoltage.Value < f.OpenCircuit.Value) {
			t.Errorf("%v: figures out of order: %+v", c, f)
		}
	}
}

// A second transcription of the figures: it pins ours, no more, since all but
// the full flooded and the full lithium cell are common practice or memory.
func TestFiguresAsTranscribedTwice(t *testing.T) {
	type row struct {
		cell, full   string // V, of one cell; full of six flooded cells is 12.65 V
		plan, hard   units.Ratio
		hours        units.Elapsed
		low, k, high float64
		charge       string
		gassing      float64 // mA for each Ah
		most         string  // of one cell while charged; 0 V is none
	}
	for c, want := range map[battery.Chemistry]row{
		battery.Flooded:              {"2", "2.1083", 0.5, 0.8, 20, 1.2, 1.3, 1.6, "not given to 50 °C", 20, "0 V"},
		battery.AGM:                  {"2", "2.1333", 0.5, 0.8, 20, 1.05, 1.15, 1.15, "not given to 50 °C", 8, "0 V"},
		battery.Gel:                  {"2", "2.1333", 0.5, 0.8, 20, 1.1, 1.25, 1.25, "not given to 50 °C", 8, "0 V"},
		battery.LithiumIronPhosphate: {"3.2", "3.3511", 0.8, 1, 5, 1, 1, 1.05, "0 °C to 60 °C", 0, "3.65 V"},
	} {
		f := must[battery.Figures](t)(c.Figures())
		got := row{
			units.Significant(float64(f.CellVoltage.Value), 5), units.Significant(float64(f.OpenCircuit.Value), 5),
			units.Settle(f.PlanningDepth.Value), units.Settle(f.HardDepth.Value), f.RatedOver.Value / units.Hour,
			float64(f.ExponentLow.Value), float64(f.Exponent.Value), float64(f.ExponentHigh.Value),
			f.ChargeLow.Value.String() + " to " + f.ChargeHigh.Value.String(), units.In(f.Gassing.Value, units.Milliampere), f.ChargeVoltage.Value.String(),
		}
		if got != want {
			t.Errorf("%v: figures %+v, want %+v", c, got, want)
		}
	}
}

func TestChemistryText(t *testing.T) {
	for _, c := range battery.Chemistries() {
		text, err := c.MarshalText()
		var back battery.Chemistry
		if err != nil || back.UnmarshalText(text) != nil || back != c {
			t.Errorf("%v does not read back: %q, %v", c, text, err)
		}
		if c.IsLead() == c.IsLithium() {
			t.Errorf("%v is lead and lithium alike", c)
		}
	}
	for text, want := range map[string]battery.Chemistry{
		"Flooded": battery.Flooded, "agm": battery.AGM, " GEL ": battery.Gel, "lfp": battery.LithiumIronPhosphate,
		"LiFePO4": battery.LithiumIronPhosphate, "Lithium  Iron Phosphate": battery.LithiumIronPhosphate,
	} {
		if got, err := battery.ParseChemistry(text); err != nil || got != want {
			t.Errorf("ParseChemistry(%q) = %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "lithium", "lead-acid", "not given", "Chemistry(9)"} {
		var c battery.Chemistry
		if err := c.UnmarshalText([]byte(text)); err == nil || c != 0 {
			t.Errorf("%q is read as %v, %v", text, c, err)
		}
	}
	for _, c := range []battery.Chemistry{0, 9} {
		_, err := c.MarshalText()
		wantRangeError(t, err, "battery.Chemistry.MarshalText", "Chemistry")
		_, err = c.Figures()
		wantRangeError(t, err, "battery.Chemistry.Figures", "Chemistry")
	}
	names := []string{battery.Chemistry(0).String(), battery.Chemistry(9).String(), battery.ByDepth.String(),
		battery.ByCutOff.String(), battery.ByProtection.String(), battery.End(7).String()}
	if want := []string{"not given", "Chemistry(9)", "depth", "cut-off voltage", "discharge limit", "End(7)"}; !slices.Equal(names, want) {
		t.Errorf("names %q, want %q", names, want)
	}
}
