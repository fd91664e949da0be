package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

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
				t.Errorf("%s is said of the demo at %s", rule, f.Part)
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
	if !units.Exceeds(off.Bank.AtMustNotStop.Or(0), on.Bank.AtMustNotStop.Or(0)) {
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
			unitstest.CheckSheet(t, s.Sheet)
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
