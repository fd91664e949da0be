package plan_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
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
		{"dead", "shore", "pedestal-dead", working.Caution, volts(0)},
		{"not measured", "shore", "pedestal-not-measured", working.Note, func(r *plan.Rig) { r.Shore.Measured = units.None[units.Voltage]() }},
		{"another grid", "shore", "pedestal-not-judged", working.Note, func(r *plan.Rig) {
			r.Shore.Voltage, r.Shore.Measured = 230*units.Volt, units.Some(208*units.Volt)
		}},
		{"another grid, low", "shore", "pedestal-too-low", working.Caution, func(r *plan.Rig) {
			r.Shore.Voltage, r.Shore.Measured = 230*units.Volt, units.Some(206*units.Volt)
		}},
		{"another grid, high", "shore", "pedestal-too-high", working.Danger, func(r *plan.Rig) {
			r.Shore.Voltage, r.Shore.Measured = 230*units.Volt, units.Some(254*units.Volt)
		}},
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
		{"24 V bank on a 12 V bus", "bus dc", "bus-unlike-bank", working.Danger, doubled},
		{"24 V bus on a 12 V bank", "bus dc", "bus-unlike-bank", working.Danger, func(r *plan.Rig) {
			r.Buses[0].Voltage, r.Circuits[1].Usual = 24*units.Volt, units.None[units.Current]()
		}},
		{"12 V inverter on 24 V", "inverter", "cut-off-unlike-bank", working.Danger, and(func(r *plan.Rig) { r.Inverter.CutOff = 10.8 * units.Volt })},
		{"12 V converter on 24 V", "converter", "charger-below-bank", working.Caution, and(func(r *plan.Rig) { r.Converter.Voltage = 14.4 * units.Volt })},
		{"converter too low", "converter", "charger-below-bank", working.Caution, func(r *plan.Rig) { r.Converter.Voltage = 13.2 * units.Volt }},
		{"12 V tow charger on 24 V", "tow vehicle", "charger-below-bank", working.Caution, and(func(r *plan.Rig) { r.Tow.Voltage = 14.4 * units.Volt })},
		{"24 V converter on 12 V", "converter", "charger-above-bank", working.Danger, func(r *plan.Rig) { r.Converter.Voltage = 28.8 * units.Volt }},
		{"24 V tow charger on 12 V", "tow vehicle", "charger-above-bank", working.Danger, func(r *plan.Rig) { r.Tow.Voltage = 28.8 * units.Volt }},
		{"a bus of 240 V on a service of 120 V", "bus main", "bus-unlike-shore", working.Danger, func(r *plan.Rig) { r.Buses[2].Voltage = 240 * units.Volt }},
		// 14.4 V of the converter, six lead-acid cells of -4 mV/K, at -10 °C: 15.24 V on a bank that may have 14.6 V.
		{"compensation left on", "bank", "compensation-on-lithium", working.Danger, func(r *plan.Rig) {
			r.Bank.Compensation, r.Bank.Coldest = units.Some(-4*units.Millivolt), units.Celsius(-10)
		}},
		{"compensation on, and warm", "bank", "compensation-on-lithium", working.Caution, func(r *plan.Rig) {
			r.Bank.Compensation, r.Bank.Coldest = units.Some(-4*units.Millivolt), units.Celsius(30)
		}},
		{"a coil of hot cells", "roof", "hot-string-below-bank", working.Caution, func(r *plan.Rig) {
			r.Roof.Series, r.Roof.Vmp, r.Roof.Voc, r.Roof.Isc, r.Roof.Power, r.Roof.Hottest = 1, 14*units.Volt, 17*units.Volt, 12*units.Ampere, 150*units.Watt, units.Celsius(75)
		}},
		{"aluminium", "C10", "metal-not-copper", working.Caution, func(r *plan.Rig) { r.Circuits[9].Metal = wire.Aluminium }},
		{"a hot roof space", "C10", "device-above-limit", working.Danger, func(r *plan.Rig) {
			r.Circuits[9].Ambient, r.Circuits[9].Bundled = units.Celsius(60), 9
		}},
		{"open circuit of two", "bank", "open-circuit-unlike-bank", working.Caution, func(r *plan.Rig) { r.Bank.OpenCircuit = units.Some(26.6 * units.Volt) }},
		{"typical of one in two", "bank", "typical-unlike-bank", working.Caution, and(func(r *plan.Rig) { r.Bank.Typical = units.Some(13.2 * units.Volt) })},
	})
	// A converter between them is in order, and its losses are in the use.
	p := planOf(t, and(func(r *plan.Rig) {
		r.Buses[0].ThroughConverter, r.Circuits[1].Usual = units.Some(80*units.Percent), units.None[units.Current]()
	}))
	for _, f := range p.Findings {
		switch f.Rule {
		case "bus-unlike-bank", "cut-off-unlike-bank", "charger-below-bank", "charger-above-bank", "typical-unlike-bank":
			t.Errorf("in order, and found: %s at %s", f.Rule, f.Part)
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
