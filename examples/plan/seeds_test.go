package plan_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// A seeded is a mistake put into the demo, which does not have it.
type seeded struct {
	name        string
	where, rule string
	severity    working.Severity
	seed        func(*plan.Rig)
}

// checkSeeded sees that the demo without the mistake has no such finding, and
// with it has, of that severity.
func checkSeeded(t *testing.T, list []seeded) {
	t.Helper()
	for _, c := range list {
		t.Run(c.name, func(t *testing.T) {
			if _, ok := found(planOf(t, func(*plan.Rig) {}), c.where, c.rule); ok {
				t.Errorf("%s at %s is found before it is made", c.rule, c.where)
			}
			if s, ok := found(planOf(t, c.seed), c.where, c.rule); !ok || s != c.severity {
				t.Errorf("%s at %s: found %v, %v, want %v", c.rule, c.where, ok, s, c.severity)
			}
		})
	}
}

// volts returns a change of what was measured at the pedestal.
func volts(v units.Voltage) func(*plan.Rig) {
	return func(r *plan.Rig) { r.Shore.Measured = units.Some(v) }
}

func TestPedestal(t *testing.T) {
	checkSeeded(t, []seeded{
		{"two legs on a cord for one", "shore", "pedestal-too-high", working.Danger, volts(240 * units.Volt)},
		{"above range B", "shore", "pedestal-too-high", working.Danger, volts(127.1 * units.Volt)},
		{"below range B", "shore", "pedestal-too-low", working.Caution, volts(109.9 * units.Volt)},
		{"dead", "shore", "pedestal-too-low", working.Caution, volts(0)},
		{"not measured", "shore", "pedestal-not-measured", working.Note, func(r *plan.Rig) { r.Shore.Measured = units.None[units.Voltage]() }},
		{"another grid", "shore", "pedestal-not-judged", working.Note, func(r *plan.Rig) { r.Shore.Voltage = 230 * units.Volt }},
		{"another grid, not listed", "shore", "service-not-listed", working.Note, func(r *plan.Rig) { r.Shore.Voltage = 230 * units.Volt }},
		{"no such service", "shore", "service-not-listed", working.Note, func(r *plan.Rig) { r.Shore.Service = 16 * units.Ampere }},
	})
	// The ends of the ranges of ANSI C84.1, from memory: 114 to 126, 110 to 127.
	for v, inB := range map[units.Voltage]bool{113.9: true, 110: true, 114: false, 126: false, 126.1: true, 127: true} {
		p := planOf(t, volts(v))
		if _, ok := found(p, "shore", "pedestal-in-range-b"); ok != inB {
			t.Errorf("%v in range B: %v, want %v", v, ok, inB)
		}
		for _, rule := range []string{"pedestal-too-low", "pedestal-too-high"} {
			if _, ok := found(p, "shore", rule); ok {
				t.Errorf("%v: %s", v, rule)
			}
		}
	}
}

func TestCord(t *testing.T) {
	size := func(s wire.Size) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Shore.Cord = units.Some(s) }
	}
	checkSeeded(t, []seeded{
		{"12 AWG on 30 A", "shore", "cord-below-service", working.Danger, size(wire.AWG(12))},
		{"10 AWG on 50 A", "shore", "cord-below-service", working.Danger, func(r *plan.Rig) { r.Shore.Service = 50 * units.Ampere }},
		{"metric", "shore", "cord-not-judged", working.Caution, size(wire.MustSize("6 mm2"))},
		{"not stated", "shore", "cord-not-stated", working.Note, func(r *plan.Rig) { r.Shore.Cord = units.None[wire.Size]() }},
	})
	// NFPA 70, 2017, Table 400.5(A)(1), column B, a second copy.
	for gauge, ampacity := range map[int]units.Current{16: 13, 15: 16, 14: 18, 13: 21, 12: 25, 11: 27, 10: 30, 9: 34, 8: 40, 7: 47, 6: 55, 5: 62, 4: 70, 3: 82, 2: 95} {
		for _, off := range []units.Current{0, 0.1} {
			p := planOf(t, func(r *plan.Rig) { r.Shore.Cord, r.Shore.Service = units.Some(wire.AWG(gauge)), ampacity+off })
			if _, ok := found(p, "shore", "cord-below-service"); ok != (off > 0) {
				t.Errorf("%d AWG with %v: below the service %v", gauge, ampacity+off, ok)
			}
		}
	}
}

func TestPassThrough(t *testing.T) {
	relay := func(a units.Current) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Inverter.PassRelay = units.Some(a) }
	}
	feed := plan.Circuit{Name: "C11", From: "main panel", To: "inverter", Bus: "main", Length: 6 * units.Foot, Size: wire.AWG(8),
		Insulation: wire.Insulation90, Device: &plan.Device{Rating: 40 * units.Ampere, At: "main panel"}}
	checkSeeded(t, []seeded{
		{"relay below its device", "inverter", "relay-below-device", working.Danger, relay(15 * units.Ampere)},
		{"device above its relay", "inverter", "relay-below-device", working.Danger, func(r *plan.Rig) { r.Inverter.PassDevice = units.Some(40 * units.Ampere) }},
		{"device of a circuit", "inverter", "relay-below-device", working.Danger, func(r *plan.Rig) {
			r.Inverter.PassDevice = units.None[units.Current]()
			r.Circuits = append(r.Circuits, feed)
		}},
		{"no device", "inverter", "pass-through-device-not-stated", working.Danger, func(r *plan.Rig) { r.Inverter.PassDevice = units.None[units.Current]() }},
		{"no relay", "inverter", "relay-not-stated", working.Caution, func(r *plan.Rig) { r.Inverter.PassRelay = units.None[units.Current]() }},
	})
	// Nothing passes an inverter that only the bank feeds, or that feeds no bus.
	for name, change := range map[string]func(*plan.Rig){
		"no source": func(r *plan.Rig) {
			r.Shore, r.Generator = nil, nil
			r.Bonds = []plan.Bond{{At: "relay", With: []string{"inverter"}}}
		},
		"no bus": func(r *plan.Rig) { r.Buses[1].Behind = "" },
	} {
		p := planOf(t, func(r *plan.Rig) { relay(15 * units.Ampere)(r); change(r) })
		if _, ok := found(p, "inverter", "relay-below-device"); ok {
			t.Errorf("%s: a relay that nothing passes is judged", name)
		}
	}
	rig := demo(t)
	rig.Circuits = append(rig.Circuits, feed)
	wantProblem(t, rig, "circuits[10].device.rating", "inverter.pass_device")
}

// wantProblem makes a plan that one mistake stops.
func wantProblem(t *testing.T, rig plan.Rig, path, allowed string) {
	t.Helper()
	_, err := plan.Make(rig)
	var mistakes *plan.DescriptionError
	if !errors.As(err, &mistakes) || len(mistakes.Problems) != 1 || mistakes.Problems[0].Path != path || !strings.Contains(mistakes.Problems[0].Allowed, allowed) {
		t.Errorf("%v, want one mistake at %s with %q", err, path, allowed)
	}
}

func TestVoltagesOfOneSystem(t *testing.T) {
	// Four cells more make a bank of 25.6 V; the rest goes along.
	doubled := func(r *plan.Rig) {
		r.Bank.Series, r.Bank.Typical = 2, units.Some(26.4*units.Volt)
		r.Inverter.CutOff, r.Converter.Voltage, r.Tow.Voltage = 21.6*units.Volt, 28.8*units.Volt, 28.8*units.Volt
		r.Roof.Series, r.Roof.Controller.InputLimit = 2, 150*units.Volt
	}
	and := func(change func(*plan.Rig)) func(*plan.Rig) {
		return func(r *plan.Rig) { doubled(r); change(r) }
	}
	checkSeeded(t, []seeded{
		{"24 V bank on a 12 V bus", "dc", "bus-unlike-bank", working.Danger, doubled},
		{"24 V bus on a 12 V bank", "dc", "bus-unlike-bank", working.Danger, func(r *plan.Rig) {
			r.Buses[0].Voltage, r.Circuits[1].Usual = 24*units.Volt, units.None[units.Current]()
		}},
		{"12 V inverter on 24 V", "inverter", "cut-off-unlike-bank", working.Danger, and(func(r *plan.Rig) { r.Inverter.CutOff = 10.8 * units.Volt })},
		{"12 V converter on 24 V", "converter", "charger-below-bank", working.Caution, and(func(r *plan.Rig) { r.Converter.Voltage = 14.4 * units.Volt })},
		{"converter too low", "converter", "charger-below-bank", working.Caution, func(r *plan.Rig) { r.Converter.Voltage = 13.2 * units.Volt }},
		{"12 V tow charger on 24 V", "tow vehicle", "charger-below-bank", working.Caution, and(func(r *plan.Rig) { r.Tow.Voltage = 14.4 * units.Volt })},
		{"24 V converter on 12 V", "converter", "charger-above-bank", working.Danger, func(r *plan.Rig) { r.Converter.Voltage = 28.8 * units.Volt }},
		{"24 V tow charger on 12 V", "tow vehicle", "charger-above-bank", working.Danger, func(r *plan.Rig) { r.Tow.Voltage = 28.8 * units.Volt }},
		{"open circuit of two", "bank", "open-circuit-unlike-bank", working.Caution, func(r *plan.Rig) { r.Bank.OpenCircuit = units.Some(26.6 * units.Volt) }},
		{"typical of one in two", "bank", "typical-unlike-bank", working.Caution, and(func(r *plan.Rig) { r.Bank.Typical = units.Some(13.2 * units.Volt) })},
	})
	// A converter between them is in order, and its losses are in the use.
	p := planOf(t, and(func(r *plan.Rig) { r.Buses[0].ThroughConverter = units.Some(80 * units.Percent) }))
	for _, f := range p.Findings {
		switch f.Rule {
		case "bus-unlike-bank", "cut-off-unlike-bank", "charger-below-bank", "charger-above-bank", "typical-unlike-bank":
			t.Errorf("in order, and found: %s at %s", f.Rule, f.Where)
		}
	}
	// 1824 Wh at the bus, of which 80 % arrive, are 2280 Wh at the bank.
	if ok, err := units.MustPrinted("2280", "Wh").Agrees(p.Use.Direct); !ok || err != nil {
		t.Errorf("through a converter of 80 %%: %v", p.Use.Direct)
	}
	// The freezer is fed by the converter's 12 V, not by the bank's 25.6 V.
	if v := p.Circuits[2].AtLoad; units.Exceeds(v, 12*units.Volt) || units.Exceeds(9*units.Volt, v) {
		t.Errorf("%v at the freezer", v)
	}
	for _, cut := range []units.Voltage{12.8, 14} {
		rig := demo(t)
		rig.Inverter.CutOff = cut
		wantProblem(t, rig, "inverter.cut_off", "< 12.8 V, the nominal voltage of the bank")
	}
	rig := demo(t)
	rig.Buses[1].ThroughConverter = units.Some(80 * units.Percent)
	wantProblem(t, rig, "buses[1].through_converter", "a direct bus")
}

func TestWhatWasNotLookedAt(t *testing.T) {
	checkSeeded(t, []seeded{
		{"no circuits", "circuits", "no-circuits", working.Caution, func(r *plan.Rig) { r.Circuits = nil }},
		{"no feeder", "C4", "feeder-not-stated", working.Note, func(r *plan.Rig) { r.Circuits[3].Feeder = "" }},
		{"no feeder elsewhere", "C6", "feeder-not-stated", working.Note, func(r *plan.Rig) { r.Circuits[5].Feeder = "" }},
		{"no feeder on alternating current", "C10", "feeder-not-stated", working.Note, func(r *plan.Rig) {
			r.Circuits = append(r.Circuits, plan.Circuit{Name: "C11", From: "shore", To: "main", Bus: "main", Length: 20 * units.Foot,
				Size: wire.AWG(10), Insulation: wire.Insulation90, Device: &plan.Device{Rating: 30 * units.Ampere, At: "shore"}})
		}},
		{"another feeder", "C5", "feeder-ends-elsewhere", working.Caution, func(r *plan.Rig) { r.Circuits[4].Feeder = "C8" }},
		{"no charger", "bank", "nothing-charges", working.Caution, func(r *plan.Rig) {
			r.Converter, r.Roof, r.Tow = nil, nil, nil
			r.Circuits = r.Circuits[:6]
		}},
		{"nothing must not stop", "alarm", "alarm-not-looked-at", working.Note, func(r *plan.Rig) {
			for i := range r.Loads {
				r.Loads[i].MustNotStop = false
			}
		}},
		{"no shore and no inverter", "alarm", "alarm-not-looked-at", working.Note, func(r *plan.Rig) {
			r.Shore, r.Inverter, r.Converter, r.Bonds, r.Buses[1].Behind = nil, nil, nil, nil, ""
			r.Circuits = r.Circuits[1:]
		}},
		{"hours on a dead bus", "loads", "runs-on-shore-only", working.Note, func(r *plan.Rig) { r.Loads[15].Hours = units.Some(5 * units.Hour) }},
		{"hours on another dead bus", "loads", "runs-on-shore-only", working.Note, func(r *plan.Rig) { r.Converter.Bus, r.Buses[1].Behind = "main", "" }},
		{"hours and no source", "loads", "never-runs", working.Caution, func(r *plan.Rig) {
			r.Loads[15].Hours = units.Some(5 * units.Hour)
			r.Shore, r.Generator, r.Bonds = nil, nil, r.Bonds[1:]
		}},
	})
	// Loads without a circuit are named until all have one.
	if _, ok := found(planOf(t, func(*plan.Rig) {}), "circuits", "loads-without-circuit"); !ok {
		t.Error("loads without a circuit, and nothing said")
	}
	p := planOf(t, func(r *plan.Rig) {
		for i, l := range r.Loads {
			r.Circuits = append(r.Circuits, plan.Circuit{Name: "X" + string(rune('a'+i)), From: l.Bus + " panel", To: "place of " + l.Name, Bus: l.Bus,
				Length: 1 * units.Foot, Size: wire.AWG(10), Insulation: wire.Insulation90, Loads: []string{l.Name}})
		}
	})
	if _, ok := found(p, "circuits", "loads-without-circuit"); ok {
		t.Error("every load has a circuit, and one is said to have none")
	}
	for _, rule := range []string{"feeder-not-stated", "nothing-charges", "alarm-not-looked-at"} {
		for _, f := range planOf(t, func(*plan.Rig) {}).Findings {
			if f.Rule == rule {
				t.Errorf("%s is said of the demo at %s", rule, f.Where)
			}
		}
	}
}

// TestInverterLeftOn: with nothing behind it that must not stop, the inverter
// draws 14 W for itself unless it is switched off.
func TestInverterLeftOn(t *testing.T) {
	stopLogger := func(r *plan.Rig) { r.Loads[12].MustNotStop = false }
	on := planOf(t, stopLogger)
	off := planOf(t, func(r *plan.Rig) { stopLogger(r); r.Inverter.OffWhenIdle = true })
	if got := units.Minus(on.Use.MustNotStop, off.Use.MustNotStop); units.Compare(got, 14*units.Watt) != 0 {
		t.Errorf("left on it takes %v more, want 14 W", got)
	}
	if !units.Exceeds(off.Bank.AtMustNotStop, on.Bank.AtMustNotStop) {
		t.Errorf("%v switched off, %v left on", off.Bank.AtMustNotStop, on.Bank.AtMustNotStop)
	}
	for rule, p := range map[string]plan.Plan{"inverter-left-on": on, "inverter-switched-off": off} {
		if s, ok := found(p, "inverter", rule); !ok || s != working.Note {
			t.Errorf("%s is not said", rule)
		}
	}
	// The day's use has it on: the laptops run.
	if on.Use.Idle != off.Use.Idle || on.Use.Idle == 0 {
		t.Errorf("idle of the day %v and %v", on.Use.Idle, off.Use.Idle)
	}
	nobody := func(r *plan.Rig) {
		for i := range r.Loads {
			if r.Loads[i].Bus == "backed" {
				r.Loads[i].MustNotStop, r.Loads[i].Hours = false, units.Some(0*units.Hour)
			}
		}
	}
	if p := planOf(t, nobody); units.Compare(p.Use.Idle, 336*units.WattHour) != 0 {
		t.Errorf("left on for nobody: %v a day, want 336 Wh", p.Use.Idle)
	}
	if p := planOf(t, func(r *plan.Rig) { nobody(r); r.Inverter.OffWhenIdle = true }); p.Use.Inverted != 0 {
		t.Errorf("switched off: %v a day", p.Use.Inverted)
	}
	for name, change := range map[string]func(*plan.Rig){
		"the logger must not stop": func(*plan.Rig) {},
		"it draws nothing":         func(r *plan.Rig) { stopLogger(r); r.Inverter.Idle = units.Some(0 * units.Watt) },
	} {
		if _, ok := found(planOf(t, change), "inverter", "inverter-left-on"); ok {
			t.Errorf("%s, and the inverter is said to be left on", name)
		}
	}
}

// TestHarvestIsClipped: what the controller does not pass is not counted.
func TestHarvestIsClipped(t *testing.T) {
	output := func(a units.Current) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Roof.Controller.OutputLimit = a }
	}
	base := planOf(t, func(*plan.Rig) {})
	checkSeeded(t, []seeded{{"10 A", "roof", "harvest-clipped", working.Caution, output(10 * units.Ampere)}})
	// Summed apart from this code over 100000 steps of half a sine wave of
	// 3.037 h · 440 W · 0.8 in 10.8296 h of daylight (FAO-56 equations 24, 25 and 34), at
	// 13.2 V.
	for limit, want := range map[units.Current]string{10: "1010.8", 1: "139.1"} {
		p := planOf(t, output(limit))
		if ok, err := units.MustPrinted(want, "Wh").Agrees(p.Sun.Harvest); !ok || err != nil {
			t.Errorf("%v pass %v, want %s Wh", limit, p.Sun.Harvest, want)
		}
		for _, s := range p.Working() {
			unitstest.CheckSheet(t, s)
		}
	}
	if p := planOf(t, output(14*units.Ampere)); p.Sun.Harvest != base.Sun.Harvest {
		t.Errorf("14 A pass the whole day, and %v of %v is counted", p.Sun.Harvest, base.Sun.Harvest)
	}
	// More output never brings less.
	last := units.Energy(0)
	for a := units.Current(0.5); a < 20; a += 0.5 {
		h := planOf(t, output(a)).Sun.Harvest
		if units.Exceeds(last, h) || units.Exceeds(h, base.Sun.Harvest) {
			t.Fatalf("%v passes %v, less than a smaller controller's %v or more than %v", a, h, last, base.Sun.Harvest)
		}
		last = h
	}
	unstated := planOf(t, func(r *plan.Rig) {
		r.Roof.Sun.Latitude, r.Roof.Sun.DayOfYear, r.Roof.Controller.OutputLimit = units.None[units.Angle](), 0, 5*units.Ampere
	})
	said := false
	for _, f := range unstated.Findings {
		said = said || f.Rule == "harvest-clipped" && strings.Contains(f.Message, "Twelve hours")
	}
	if !said {
		t.Error("twelve hours of daylight are assumed and not said")
	}
	night := planOf(t, func(r *plan.Rig) {
		r.Roof.Sun.Latitude, r.Roof.Sun.DayOfYear, r.Roof.Sun.Irradiation = units.Some(80*units.Degree), 355, 0
	})
	if night.Sun.Harvest != 0 {
		t.Errorf("%v in the polar night", night.Sun.Harvest)
	}
}

// like returns n heaters on the main bus.
func like(n int, hours units.Elapsed) (list []plan.Load) {
	for i := range n {
		list = append(list, plan.Load{Name: "heater " + string(rune('a'+i)), Bus: "main", Kind: loads.Resistive,
			Power: units.Some(500 * units.Watt), Hours: units.Some(hours)})
	}
	return list
}

// TestLikeLoadsAreOneRow: twenty equal loads have C(20, 8) sets of eight that
// trip, which are one row.
func TestLikeLoadsAreOneRow(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Loads, r.Converter, r.Circuits = append(r.Loads[:11:11], like(20, 4*units.Hour)...), nil, nil
	})
	var rows []plan.SetLine
	for _, s := range p.Sets {
		if s.On == "shore" {
			rows = append(rows, s)
		}
	}
	// 7 · 500 W / 120 V = 29.2 A fit 30 A, 8 are 33.3 A; 6 are 25 A, above 24 A.
	// C(20, 8) = 125970 and C(20, 6) = 38760.
	if len(rows) != 2 || len(rows[0].Loads) != 8 || !strings.Contains(rows[0].Note, "trips: 33.3 A; so do 125969 more") ||
		len(rows[1].Loads) != 6 || !strings.Contains(rows[1].Note, "too much for hours: 25 A; so do 38759 more") {
		t.Errorf("rows %+v", rows)
	}
}

// TestRowsAreLimited: loads that all differ give many sets, of which the
// smallest are listed and the rest counted.
func TestRowsAreLimited(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		list := like(12, 4*units.Hour)
		for i := range list {
			list[i].Power = units.Some(units.Power(500+i) * units.Watt)
		}
		r.Loads = append(r.Loads[:11:11], list...)
		r.Converter, r.Circuits = nil, nil
	})
	counts := map[string]int{}
	for _, s := range p.Sets {
		counts[s.On]++
	}
	last := p.Sets[len(p.Sets)-1]
	// C(12, 6) = 924 sets of six for hours, of which twenty are listed.
	if counts["shore"] != 42 || len(last.Loads) != 0 || last.Note != "and 904 more: too much for hours" {
		t.Errorf("%v rows, the last %+v", counts, last)
	}
}

// TestShortLoadsAreNotForHours: NEC article 100 has three hours.
func TestShortLoadsAreNotForHours(t *testing.T) {
	for hours, want := range map[units.Elapsed]bool{0: true, 2.9 * units.Hour: false, 3 * units.Hour: true} {
		p := planOf(t, func(r *plan.Rig) {
			r.Loads, r.Converter, r.Circuits = append(r.Loads[:11:11], like(6, hours)...), nil, nil
		})
		got := false
		for _, s := range p.Sets {
			got = got || strings.HasPrefix(s.Note, "too much for hours")
		}
		if got != want {
			t.Errorf("loads of %v: listed for hours %v, want %v", hours, got, want)
		}
	}
}

// TestALoadNamedConverter does not stand in the way of the converter.
func TestALoadNamedConverter(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Loads[17].Name = "converter" })
	both := false
	for _, s := range p.Sets {
		text := strings.Join(s.Loads, ", ")
		both = both || strings.Contains(text, "converter of the bank")
	}
	if !both {
		t.Error("the converter of the bank is in no set")
	}
}

// TestFeedersOfABus: what a panel feeds is not on at once.
func TestFeedersOfABus(t *testing.T) {
	small := func(r *plan.Rig) { r.Circuits[1].Device.Rating = 30 * units.Ampere }
	checkSeeded(t, []seeded{
		{"33.3 A at once on 30 A", "C2", "all-at-once-above-device", working.Note, small},
		{"one load above the device", "C2", "device-below-load", working.Caution, func(r *plan.Rig) {
			r.Circuits[1].Device.Rating, r.Circuits[1].Usual = 15*units.Ampere, units.None[units.Current]()
			r.Loads[2].Current = units.Some(20 * units.Ampere)
		}},
	})
	p := planOf(t, small)
	if _, ok := found(p, "C2", "device-below-load"); ok || p.Circuits[1].Current != 30*units.Ampere {
		t.Errorf("a feeder of 30 A: false alarm %v, %v", ok, p.Circuits[1].Current)
	}
	// The largest of what runs: lamps, furnace, detector, refrigerator, freezer,
	// recorder, radar, modem and USB have 3 h or more: 1.6 + 7.8 + 0.08 + 4 + 5 +
	// 0.35 + 3.167 + 0.667 + 1.667 A = 24.33 A.
	p = planOf(t, func(r *plan.Rig) {
		r.Circuits[1].Device.Rating, r.Circuits[1].Usual = 20*units.Ampere, units.None[units.Current]()
	})
	if ok, err := units.MustPrinted("24.33", "A").Agrees(p.Circuits[1].Current); !ok || err != nil {
		t.Errorf("what runs together: %v, want 24.33 A", p.Circuits[1].Current)
	}
	if _, ok := found(p, "C2", "device-below-load"); !ok {
		t.Error("24.33 A for hours on 20 A is not found")
	}
}

// TestStatedCurrentIsNotBelieved where what hangs on the circuit is more.
func TestStatedCurrentIsNotBelieved(t *testing.T) {
	little := units.Some(1 * units.Ampere)
	charger := plan.Circuit{Name: "C11", From: "main panel", To: "converter", Bus: "main", Length: 6 * units.Foot, Size: wire.AWG(12),
		Insulation: wire.Insulation90, Current: little, Device: &plan.Device{Rating: 15 * units.Ampere, At: "main panel"}}
	back := plan.Circuit{Name: "C12", From: "converter", To: "bank", Bus: "dc", Length: 6 * units.Foot, Size: wire.AWG(4),
		Insulation: wire.Insulation105, Current: little, Device: &plan.Device{Rating: 60 * units.Ampere, At: "bank"}}
	tow := plan.Circuit{Name: "C13", From: "tow charger", To: "bank", Bus: "dc", Length: 6 * units.Foot, Size: wire.AWG(4),
		Insulation: wire.Insulation105, Power: units.Some(12 * units.Watt), Device: &plan.Device{Rating: 60 * units.Ampere, At: "bank"}}
	pass := plan.Circuit{Name: "C14", From: "main panel", To: "inverter", Bus: "main", Length: 6 * units.Foot, Size: wire.AWG(12),
		Insulation: wire.Insulation90, Current: little, Device: &plan.Device{Rating: 20 * units.Ampere, At: "main panel"}}
	add := func(c plan.Circuit) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits = append(r.Circuits, c) }
	}
	usual := func(i int) func(*plan.Rig) {
		return func(r *plan.Rig) {
			r.Circuits[i].Current, r.Circuits[i].Usual = little, units.None[units.Current]()
		}
	}
	checkSeeded(t, []seeded{
		{"inverter", "C1", "stated-current-below-load", working.Caution, usual(0)},
		{"bus", "C2", "stated-current-below-load", working.Caution, usual(1)},
		{"controller", "C8", "stated-current-below-load", working.Caution, usual(7)},
		{"tow charger", "C9", "stated-current-below-load", working.Caution, usual(8)},
		{"converter", "C11", "stated-current-below-load", working.Caution, add(charger)},
		{"from the converter", "C12", "stated-current-below-load", working.Caution, add(back)},
		{"from the tow charger", "C13", "stated-current-below-load", working.Caution, add(tow)},
		{"past the inverter", "C14", "stated-current-below-load", working.Caution, add(pass)},
	})
	p := planOf(t, func(r *plan.Rig) { usual(0)(r); add(charger)(r); add(back)(r); add(tow)(r); add(pass)(r) })
	for i, want := range map[int]string{0: "156 A", 10: "6.53 A", 11: "45 A", 12: "20 A"} {
		if ok, err := units.MustPrinted(strings.TrimSuffix(want, " A"), "A").Agrees(p.Circuits[i].Current); !ok || err != nil {
			t.Errorf("%s: %v, want %s", p.Circuits[i].Name, p.Circuits[i].Current, want)
		}
	}
	// The converter runs for hours: 45 A · 1.25 = 56 A, above a device of 50 A.
	p = planOf(t, func(r *plan.Rig) { back.Device.Rating = 50 * units.Ampere; add(back)(r) })
	if _, ok := found(p, "C12", "device-below-load"); !ok {
		t.Error("50 A for a converter that needs 56 A is not found")
	}
	// More than what hangs on it is believed.
	p = planOf(t, func(r *plan.Rig) { r.Circuits[0].Current = units.Some(180 * units.Ampere) })
	if _, ok := found(p, "C1", "stated-current-below-load"); ok || p.Circuits[0].Current != 180*units.Ampere {
		t.Errorf("180 A stated: %v, %v", ok, p.Circuits[0].Current)
	}
}

// TestFeedersOfCircuits: a feeder to a place carries what names it.
func TestFeedersOfCircuits(t *testing.T) {
	chain := func(current units.Opt[units.Current]) func(*plan.Rig) {
		return func(r *plan.Rig) {
			r.Places = []string{"sub panel", "far panel"}
			feed := plan.Circuit{Name: "F1", From: "bank", To: "sub panel", Bus: "dc", Length: 5 * units.Foot, Size: wire.AWG(6),
				Insulation: wire.Insulation105, Current: current, Device: &plan.Device{Rating: 40 * units.Ampere, At: "bank"}}
			next := feed
			next.Name, next.From, next.To, next.Feeder, next.Device = "F2", "sub panel", "far panel", "F1", &plan.Device{Rating: 40 * units.Ampere, At: "sub panel"}
			r.Circuits = append(r.Circuits, feed, next)
			r.Circuits[4].From, r.Circuits[4].Feeder, r.Circuits[4].Device.At = "far panel", "F2", "far panel"
			r.Circuits[5].From, r.Circuits[5].Feeder, r.Circuits[5].Device.At = "far panel", "F2", "far panel"
		}
	}
	p := planOf(t, chain(units.None[units.Current]()))
	for i := 10; i < 12; i++ {
		if got := p.Circuits[i].Current; units.Compare(got, 14.8*units.Ampere) != 0 {
			t.Errorf("%s carries %v, want 7.8 A + 7 A", p.Circuits[i].Name, got)
		}
	}
	p = planOf(t, chain(units.Some(2*units.Ampere)))
	for i, name := range map[int]string{10: "F1", 11: "F2"} {
		if _, ok := found(p, name, "stated-current-below-load"); !ok || units.Compare(p.Circuits[i].Current, 7.8*units.Ampere) != 0 {
			t.Errorf("%s: 2 A stated, %v found %v, want 7.8 A", name, p.Circuits[i].Current, ok)
		}
	}
}

// TestMetricRig: sizes that no rule set here has leave the rest of the plan
// standing.
func TestMetricRig(t *testing.T) {
	metric := func(i int, size string) func(*plan.Rig) {
		return func(r *plan.Rig) { r.Circuits[i].Size = wire.MustSize(size) }
	}
	checkSeeded(t, []seeded{
		{"direct", "C5", "conductor-not-judged", working.Caution, metric(4, "4 mm2")},
		{"alternating", "C10", "conductor-not-judged", working.Caution, metric(9, "2.5 mm2")},
		{"roof", "C7", "conductor-not-judged", working.Caution, metric(6, "6 mm2")},
		{"thin", "C6", "conductor-not-judged", working.Caution, metric(5, "22 AWG")},
	})
	p := planOf(t, func(r *plan.Rig) {
		for i := range r.Circuits {
			r.Circuits[i].Size = wire.MustSize("35 mm2")
		}
		r.Circuits[2].Device = nil
	})
	said := false
	for _, f := range p.Findings {
		said = said || f.Where == "C3" && f.Rule == "conductor-not-judged" && strings.Contains(f.Message, "No device is stated")
	}
	if !said {
		t.Error("no device, and nothing said")
	}
	for _, c := range p.Circuits {
		if c.Drop == 0 || c.Limit != 0 || c.Rules == "" || c.Worst < working.Caution {
			t.Errorf("%+v", c)
		}
	}
	if strings.Contains(p.Text(), "  0 A  ") {
		t.Error("a limit of 0 A is printed for what is not judged")
	}
	// The roof's own rule about string fuses holds for any conductor.
	p = planOf(t, func(r *plan.Rig) { metric(6, "6 mm2")(r); r.Roof.Panels, r.Roof.Series = 3, 1 })
	if _, ok := found(p, "roof", "fuse-each-string"); !ok {
		var rules []string
		for _, f := range p.Findings {
			if f.Where == "roof" {
				rules = append(rules, f.Rule)
			}
		}
		t.Errorf("three strings without fuses: %v", rules)
	}
}

// TestBounds: no value goes unchecked because nothing uses it in this rig.
func TestBounds(t *testing.T) {
	for path, change := range map[string]func(*plan.Rig){
		"rules.branch_drop":               func(r *plan.Rig) { r.Rules.BranchDrop = units.Some(-3 * units.Percent) },
		"rules.path_drop":                 func(r *plan.Rig) { r.Rules.PathDrop = units.Some(100 * units.Percent) },
		"buses[0].through_converter":      func(r *plan.Rig) { r.Buses[0].ThroughConverter = units.Some(0 * units.Percent) },
		"loads[15].locked_rotor":          func(r *plan.Rig) { r.Loads[15].LockedRotor = units.Some(-63 * units.Ampere) },
		"loads[5].cut_out":                func(r *plan.Rig) { r.Loads[5].CutOut = units.Some(-11.3 * units.Volt) },
		"bank.typical_voltage":            func(r *plan.Rig) { r.Bank.Typical = units.Some(0 * units.Volt) },
		"inverter.continuous":             func(r *plan.Rig) { r.Inverter.Continuous = -1500 * units.Watt },
		"inverter.apparent":               func(r *plan.Rig) { r.Inverter.Apparent = units.Some(0 * units.VoltAmpere) },
		"inverter.surge":                  func(r *plan.Rig) { r.Inverter.Surge = units.Some(-1 * units.VoltAmpere) },
		"inverter.surge_for":              func(r *plan.Rig) { r.Inverter.SurgeFor = units.Some(0 * units.Second) },
		"inverter.efficiency":             func(r *plan.Rig) { r.Inverter.Efficiency = 0 },
		"inverter.idle":                   func(r *plan.Rig) { r.Inverter.Idle = units.Some(-14 * units.Watt) },
		"inverter.pass_relay":             func(r *plan.Rig) { r.Inverter.PassRelay = units.Some(0 * units.Ampere) },
		"inverter.pass_device":            func(r *plan.Rig) { r.Inverter.PassDevice = units.Some(-20 * units.Ampere) },
		"converter.current":               func(r *plan.Rig) { r.Converter.Current = 0 },
		"converter.voltage":               func(r *plan.Rig) { r.Converter.Voltage = -14.4 * units.Volt },
		"converter.efficiency":            func(r *plan.Rig) { r.Converter.Efficiency = 2 },
		"converter.power_factor":          func(r *plan.Rig) { r.Converter.PowerFactor = 0 },
		"shore.service":                   func(r *plan.Rig) { r.Shore.Service = -30 * units.Ampere },
		"shore.voltage":                   func(r *plan.Rig) { r.Shore.Voltage = 0 },
		"shore.measured":                  volts(-113 * units.Volt),
		"shore.cord_length":               func(r *plan.Rig) { r.Shore.CordLong = units.Some(-25 * units.Foot) },
		"shore.receptacle":                func(r *plan.Rig) { r.Shore.Receptacle = units.Some(0 * units.Ampere) },
		"generator.continuous":            func(r *plan.Rig) { r.Generator.Continuous = -1800 * units.Watt },
		"generator.surge":                 func(r *plan.Rig) { r.Generator.Surge = units.Some(-1 * units.VoltAmpere) },
		"tow.current":                     func(r *plan.Rig) { r.Tow.Current = -20 * units.Ampere },
		"tow.voltage":                     func(r *plan.Rig) { r.Tow.Voltage = 0 },
		"tow.efficiency":                  func(r *plan.Rig) { r.Tow.Efficiency = 1.1 },
		"tow.input_voltage":               func(r *plan.Rig) { r.Tow.Input = -11.8 * units.Volt },
		"tow.hours":                       func(r *plan.Rig) { r.Tow.Hours = -4 * units.Hour },
		"roof.losses[0].lost":             func(r *plan.Rig) { r.Roof.Losses[0].Lost = -1 },
		"circuits[8].current":             func(r *plan.Rig) { r.Circuits[8].Current = units.Some(-27 * units.Ampere) },
		"circuits[8].power":               func(r *plan.Rig) { r.Circuits[8].Power = units.Some(0 * units.Watt) },
		"circuits[1].usual":               func(r *plan.Rig) { r.Circuits[1].Usual = units.Some(-25 * units.Ampere) },
		"circuits[0].device.rating":       func(r *plan.Rig) { r.Circuits[0].Device.Rating = 0 },
		"circuits[0].device.interrupting": func(r *plan.Rig) { r.Circuits[0].Device.Interrupting = units.Some(-1 * units.Ampere) },
		"circuits[0].device.distance":     func(r *plan.Rig) { r.Circuits[0].Device.Distance = units.Some(-1 * units.Inch) },
		"bank.series":                     func(r *plan.Rig) { r.Bank.Series = -1 },
	} {
		rig := demo(t)
		change(&rig)
		wantProblem(t, rig, path, "")
	}
	// An hour more than a day has.
	rig := demo(t)
	rig.Tow.Hours = 25 * units.Hour
	wantProblem(t, rig, "tow.hours", "0 s to 1 d")
}

// TestEnds: an end that nothing declares is a mistake, with the near spelling.
func TestEnds(t *testing.T) {
	for _, c := range []struct {
		path, allowed string
		change        func(*plan.Rig)
	}{
		{"circuits[0].from", `did you mean "bank"?`, func(r *plan.Rig) { r.Circuits[0].From = "bnak" }},
		{"circuits[1].from", "one of bank, inverter", func(r *plan.Rig) { r.Circuits[1].From = "accumulators" }},
		{"circuits[8].to", `did you mean "tow charger"?`, func(r *plan.Rig) { r.Circuits[8].To = "tow chargr" }},
		{"circuits[7].to", `did you mean "bank"?`, func(r *plan.Rig) { r.Circuits[7].To = "Bank" }},
		{"circuits[1].to", `did you mean "dc"?`, func(r *plan.Rig) { r.Circuits[1].To = "DC" }},
		{"circuits[3].from", `did you mean "dc panel"?`, func(r *plan.Rig) { r.Circuits[3].From = "dc pannel" }},
		{"circuits[3].device.at", "dc panel or observer desk", func(r *plan.Rig) { r.Circuits[3].Device.At = "bank" }},
		{"buses[2].name", "another name than", func(r *plan.Rig) {
			r.Buses[2].Name, r.Circuits = "bank", r.Circuits[:9]
			for i := 15; i < 18; i++ {
				r.Loads[i].Bus = "bank"
			}
		}},
		{"places[1]", "not taken", func(r *plan.Rig) { r.Places = []string{"closet", "closet"} }},
		{"places[0]", "not taken", func(r *plan.Rig) { r.Places = []string{"dc panel"} }},
		{"circuits[2].loads[0]", `not on "main"`, func(r *plan.Rig) { r.Circuits[2].Loads[0] = "portable heater" }},
		{"circuits[2].feeder", `did you mean "C2"?`, func(r *plan.Rig) { r.Circuits[2].Feeder = "c2" }},
		{"alarm.bus", `did you mean "backed"?`, func(r *plan.Rig) { r.Alarm = &plan.Alarm{Bus: "baked", What: "radio"} }},
	} {
		rig := demo(t)
		c.change(&rig)
		wantProblem(t, rig, c.path, c.allowed)
	}
	// A place of one's own that two circuits lead to is declared, or refused.
	two := func(r *plan.Rig) { r.Circuits[4].To, r.Circuits[5].To = "closet", "closet" }
	rig := demo(t)
	two(&rig)
	_, err := plan.Make(rig)
	if err == nil || !strings.Contains(err.Error(), "listed in places") {
		t.Errorf("two circuits to a place that is not declared: %v", err)
	}
	p := planOf(t, func(r *plan.Rig) { two(r); r.Places = []string{"closet"} })
	if p.Circuits[4].Route != "dc panel - closet" {
		t.Errorf("%+v", p.Circuits[4])
	}
	// So may a place that is spelt like a machine.
	planOf(t, func(r *plan.Rig) { r.Circuits[4].To, r.Places = "rook", []string{"rook"} })
}
