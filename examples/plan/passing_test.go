package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// listed returns the loads of the sets of one source and rule.
func listed(sets []plan.SetLine, on, rule string) (list []string) {
	for _, s := range sets {
		if s.On == on && s.Rule == rule {
			list = append(list, strings.Join(s.Loads, ", "))
		}
	}
	return list
}

func contains(list []string, want string) bool {
	for _, s := range list {
		if s == want {
			return true
		}
	}
	return false
}

// noShore takes the shore away, with its bond.
func noShore(r *plan.Rig) {
	r.Shore, r.Bonds = nil, r.Bonds[1:]
}

// TestGeneratorsLoad: 1440 W and 1500 W on a generator of 1800 W.
func TestGeneratorsLoad(t *testing.T) {
	p := planOf(t, noShore)
	if over := listed(p.Sets, "generator", "too-much-together"); !contains(over, "water heater element, portable heater") {
		t.Errorf("too much on the generator: %q", over)
	}
	if start := listed(p.Sets, "generator", "too-much-to-start"); len(start) != 1 || start[0] != "roof air conditioner" {
		t.Errorf("too much to start: %q", start)
	}
	large := planOf(t, func(r *plan.Rig) {
		noShore(r)
		r.Generator.Continuous, r.Generator.Surge = 8000*units.Watt, units.Some(9000*units.VoltAmpere)
		r.Converter.Bus, r.Inverter.PassDevice = "main", units.Some(30*units.Ampere)
	})
	for _, s := range large.Sets {
		if s.On == "generator" {
			t.Errorf("8 kW are too little for %+v", s)
		}
	}
	if _, ok := found(large, "roof air conditioner", "starts-on-nothing"); ok {
		t.Error("a generator with 9000 VA does not start 7560 VA")
	}
	if len(listed(planOf(t, func(r *plan.Rig) { r.Generator = nil }).Sets, "generator", "too-much-together")) > 0 {
		t.Error("sets on a generator that there is not")
	}
	for _, s := range p.Working() {
		if s.Part == "together on generator" {
			unitstest.CheckSheet(t, s.Sheet)
		}
	}
}

// TestWeakGenerator: the converter takes 784 VA.
func TestWeakGenerator(t *testing.T) {
	of := func(w units.Power) func(*plan.Rig) {
		return func(r *plan.Rig) {
			noShore(r)
			r.Converter.Bus, r.Generator.Continuous = "main", w
		}
	}
	weak, enough := planOf(t, of(600*units.Watt)), planOf(t, of(785*units.Watt))
	if s, ok := found(weak, "converter", "converter-above-generator"); !ok || s != working.Caution {
		t.Errorf("600 W: %v, %v", s, ok)
	}
	if !strings.Contains(flat(weak), "the generator does not carry it") || strings.Contains(flat(weak), "of the converter, on generator") {
		t.Error("600 W close the gap")
	}
	if _, ok := found(enough, "converter", "converter-above-generator"); ok || !strings.Contains(flat(enough), "of the converter, on generator") {
		t.Error("785 W do not close the gap")
	}
}

// TestOutlet: an outlet of 15 A carries 1800 W, and 12 A for hours.
func TestOutlet(t *testing.T) {
	small := func(r *plan.Rig) { r.Shore.Receptacle = units.Some(15 * units.Ampere) }
	checkSeeded(t, []seeded{
		{"15 A by adapter", "shore", "outlet-below-service", working.Caution, small},
	})
	p := planOf(t, small)
	if s := p.Sources[0]; s.Power != 1800*units.Watt || s.Continuous != 1440*units.Watt || s.Numbers[0].Value != "15 A" || s.Numbers[1].Value != "12 A" {
		t.Errorf("the outlet carries %+v", s)
	}
	for _, s := range p.Sets {
		if limit := s.Numbers[1].Value; s.On == "shore" && limit != "15 A" && limit != "12 A" {
			t.Errorf("%q on an outlet of 15 A has the limit %s", s.Loads, limit)
		}
	}
	if over := listed(p.Sets, "shore", "too-much-together"); !contains(over, "water heater element, portable heater") {
		t.Errorf("too much on 15 A: %q", over)
	}
	same := planOf(t, func(r *plan.Rig) { r.Shore.Receptacle = units.Some(30 * units.Ampere) })
	if _, ok := found(same, "shore", "outlet-below-service"); ok {
		t.Error("an outlet of 30 A is below a service of 30 A")
	}
}

// TestPastTheInverter: what is behind it passes a device of 20 A.
func TestPastTheInverter(t *testing.T) {
	const trips = "laptops, coffee maker, microwave"
	if over := listed(planOf(t, func(*plan.Rig) {}).Sets, "shore", "too-much-together"); !contains(over, trips) {
		t.Errorf("20.7 A through 20 A are not listed: %q", over)
	}
	wide := planOf(t, func(r *plan.Rig) { r.Inverter.PassDevice = units.Some(30 * units.Ampere) })
	if over := listed(wide.Sets, "shore", "too-much-together"); contains(over, trips) {
		t.Errorf("20.7 A through 30 A are too much: %q", over)
	}
	relay := planOf(t, func(r *plan.Rig) {
		r.Inverter.PassDevice, r.Inverter.PassRelay = units.Some(30*units.Ampere), units.Some(20*units.Ampere)
	})
	if over := listed(relay.Sets, "shore", "too-much-together"); !contains(over, trips) {
		t.Errorf("20.7 A through a relay of 20 A are not listed: %q", over)
	}
}

// TestConverterOnTheInverter: 784 VA more on 1500 VA until the loop is mended.
func TestConverterOnTheInverter(t *testing.T) {
	const warned = "until the loop is mended, count only on the rows"
	const left = "Not counted there is the converter, which takes 745 W and 784 VA of it"
	asFound := planOf(t, func(*plan.Rig) {})
	if !strings.Contains(flat(asFound), left) {
		t.Errorf("no %q", left)
	}
	if over := listed(asFound.Sets, "inverter", "too-much-together"); !contains(over, "microwave, converter") || !strings.Contains(flat(asFound), warned) {
		t.Errorf("as found: %q", over)
	}
	for name, mend := range map[string]func(*plan.Rig){
		"main":  func(r *plan.Rig) { r.Converter.Bus = "main" },
		"relay": func(r *plan.Rig) { r.Converter.OpensInverting = true },
	} {
		p := planOf(t, mend)
		if over := listed(p.Sets, "inverter", "too-much-together"); contains(over, "microwave, converter") || strings.Contains(flat(p), warned) || strings.Contains(flat(p), left) {
			t.Errorf("%s: mended, and still %q", name, over)
		}
	}
}

// TestStarts: 63 A at 120 V are 7560 VA.
func TestStarts(t *testing.T) {
	backed := func(r *plan.Rig) {
		r.Loads[15].Bus = "backed"
		r.Circuits[9].Bus = "backed"
		r.Circuits[9].From, r.Circuits[9].Device.At = "backed", "backed"
	}
	with := func(more func(*plan.Rig)) func(*plan.Rig) {
		return func(r *plan.Rig) { backed(r); more(r) }
	}
	const who = "roof air conditioner"
	checkSeeded(t, []seeded{
		{"on the inverter", who, "start-above-inverter", working.Caution, backed},
		{"no surge given", who, "surge-not-stated", working.Caution, with(func(r *plan.Rig) {
			r.Inverter.Surge, r.Inverter.SurgeFor = units.None[units.ApparentPower](), units.None[units.Elapsed]()
		})},
		{"no start given", who, "start-not-stated", working.Note, func(r *plan.Rig) { r.Loads[15].LockedRotor = units.None[units.Current]() }},
		{"no start given, on the inverter", who, "start-not-stated", working.Caution, with(func(r *plan.Rig) { r.Loads[15].LockedRotor = units.None[units.Current]() })},
		{"no shore", who, "starts-on-nothing", working.Caution, noShore},
		{"surge of the generator not given", who, "starts-on-shore", working.Note, func(r *plan.Rig) { r.Generator.Surge = units.None[units.ApparentPower]() }},
		{"a large generator", who, "starts-on-some-sources", working.Note, func(r *plan.Rig) { r.Generator.Surge = units.Some(7600 * units.VoltAmpere) }},
	})
	p := planOf(t, backed)
	for _, s := range p.Runs {
		if s.On == "inverter" && contains(s.Loads, who) {
			t.Errorf("what does not start runs: %+v", s)
		}
	}
	for _, change := range []func(*plan.Rig){noShore, with(noShore)} {
		if _, ok := found(planOf(t, change), who, "starts-on-shore-only"); ok {
			t.Error("it starts on shore power, of which there is none")
		}
	}
	strong := planOf(t, with(func(r *plan.Rig) { r.Inverter.Surge = units.Some(7600 * units.VoltAmpere) }))
	if _, ok := found(strong, who, "start-above-inverter"); ok {
		t.Error("7600 VA do not start 7560 VA")
	}
}
