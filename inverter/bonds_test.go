package inverter_test

import (
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func noOhms() units.Opt[units.Resistance] { return units.None[units.Resistance]() }

// TestBondsCounted are the sources of a rig, one at a time, with the bonds that
// NFPA 70-2017, 551.54(C) and 250.34, and training articles of the trade, have
// for them. Counts and rules are worked by hand from those.
func TestBondsCounted(t *testing.T) {
	shore, generator, portable, machine := inverter.Source{Name: "shore", Earthed: true}, inverter.Source{Name: "onboard generator"},
		inverter.Source{Name: "portable generator"}, inverter.Source{Name: "inverter"}
	all := []inverter.Source{shore, generator, portable, machine}
	closed := func(s inverter.Source, places ...string) (list []inverter.Bond) {
		for _, p := range places {
			list = append(list, inverter.Bond{Name: p, With: []string{s.Name}})
		}
		return list
	}
	for _, c := range []struct {
		what   string
		source inverter.Source
		bonds  []inverter.Bond
		want   int
		rule   string
	}{
		{"upstream at the service", shore, closed(shore, "pedestal service"), 1, "one-neutral-bond"},
		{"a second one in the trailer", shore, closed(shore, "pedestal service", "trailer panel"), 2, "several-neutral-bonds"},
		{"the switch takes the neutral along", generator, append(closed(generator, "generator frame"), closed(shore, "pedestal service")...), 1, "one-neutral-bond"},
		{"the switch leaves the neutral", generator, closed(generator, "generator frame", "pedestal service"), 2, "several-neutral-bonds"},
		{"floating neutral", portable, closed(shore, "pedestal service"), 0, "no-neutral-bond"},
		{"bonding plug", portable, closed(portable, "bonding plug"), 1, "one-neutral-bond"},
		{"inverting", machine, append(closed(machine, "inverter relay"), closed(shore, "pedestal service")...), 1, "one-neutral-bond"},
		{"passing shore through", shore, append(closed(shore, "pedestal service"), closed(machine, "inverter relay")...), 1, "one-neutral-bond"},
		{"the relay sticks", shore, closed(shore, "inverter relay", "pedestal service"), 2, "several-neutral-bonds"},
		// A utility's neutral is earthed whether the service is bonded or not.
		{"a service without its bond", shore, nil, 0, "no-bond-on-earthed-source"},
		// Nothing earths these two: a first fault passes no current.
		{"no bond on the inverter", machine, nil, 0, "no-neutral-bond"},
		{"no bond on the generator", generator, nil, 0, "no-neutral-bond"},
	} {
		t.Run(c.what, func(t *testing.T) {
			for _, b := range must[[]inverter.BondCount](t)(inverter.Bonding(all, c.bonds)) {
				if b.Source != c.source {
					continue
				}
				if b.Bonds != c.want {
					t.Errorf("%d bonds, want %d", b.Bonds, c.want)
				}
				wantRules(t, b, c.rule)
				if n := b.Findings()[0].Numbers; len(n) != 2 || n[0].String() != "bonds "+string(rune('0'+c.want)) || n[1].String() != "wanted 1" {
					t.Errorf("numbers %v, want the count and one", n)
				}
			}
		})
	}
}

// A fault without a path and a count of no bonds are one state of things, and
// say so alike; with a path through soil both are dangers.
func TestNoBondAndNoPathAgree(t *testing.T) {
	count := func(earthed bool) working.Severity {
		return must[[]inverter.BondCount](t)(inverter.Bonding([]inverter.Source{{Name: "source", Earthed: earthed}}, nil))[0].Findings()[0].Severity
	}
	fault := frameFault()
	fault.Metal, fault.Earth = noOhms(), noOhms()
	floating := must[inverter.FaultPath](t)(inverter.FaultToFrame(fault))
	fault.Earth = frameFault().Earth
	earthed := must[inverter.FaultPath](t)(inverter.FaultToFrame(fault))
	if f := floating.Findings()[0]; f.Severity != count(false) || f.Severity != working.Caution {
		t.Errorf("floating: the fault is a %v and the count a %v", f.Severity, count(false))
	}
	if f := earthed.Findings()[0]; f.Severity != count(true) || f.Severity != working.Danger {
		t.Errorf("earthed: the fault is a %v and the count a %v", f.Severity, count(true))
	}
}
