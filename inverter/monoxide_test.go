package inverter_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

func TestCarbonMonoxide(t *testing.T) {
	for site, rule := range map[inverter.Site]string{
		0: "carbon-monoxide", inverter.OpenAir: "carbon-monoxide", inverter.Compartment: "carbon-monoxide",
		inverter.NearOpening: "carbon-monoxide-gathers", inverter.UnderRoof: "carbon-monoxide-gathers", inverter.Inside: "carbon-monoxide-gathers",
	} {
		x := must[inverter.Exhaust](t)(inverter.CarbonMonoxide(inverter.Engine{Name: "the spare generator", Site: site}))
		wantRules(t, x, rule)
		f := x.Findings()[0]
		if !strings.Contains(f.Message, "the spare generator") || !strings.Contains(f.Fix, "alarm") || f.Numbers[0].String() != "from every opening 20 ft" {
			t.Errorf("%v: %v", site, f)
		}
		if rule == "carbon-monoxide-gathers" && !strings.Contains(f.Message, site.String()) {
			t.Errorf("where it runs is not said: %v", f)
		}
	}
	wantRules(t, inverter.Exhaust{Engine: inverter.Engine{Name: "x", Site: 9}, Away: units.Foot}, "carbon-monoxide")
	_, err := inverter.CarbonMonoxide(inverter.Engine{})
	wantRangeError(t, err, "inverter.CarbonMonoxide", "Name")
	_, err = inverter.CarbonMonoxide(inverter.Engine{Name: "x", Site: 6})
	wantRangeError(t, err, "inverter.CarbonMonoxide", "Site")
}

// A choice is a word that is read and written.
func TestChoicesAsText(t *testing.T) {
	for i, want := range []string{"", "open air", "compartment", "near an opening", "under a roof", "inside"} {
		var back inverter.Site
		text, err := inverter.Site(i).MarshalText()
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back != inverter.Site(i) {
			t.Errorf("site %d is %q, %v, and back %v; want %q", i, text, err, back, want)
		}
	}
	for i, want := range []string{"", "transfer switch", "interlock", "one inlet", "none"} {
		var back inverter.GuardKind
		text, err := inverter.GuardKind(i).MarshalText()
		if err != nil || string(text) != want || back.UnmarshalText(text) != nil || back != inverter.GuardKind(i) {
			t.Errorf("guard %d is %q, %v, and back %v; want %q", i, text, err, back, want)
		}
	}
	_, err := inverter.Site(6).MarshalText()
	wantRangeError(t, err, "inverter.Site.MarshalText", "Site")
	_, err = inverter.GuardKind(5).MarshalText()
	wantRangeError(t, err, "inverter.GuardKind.MarshalText", "GuardKind")
	site, guard := inverter.Inside, inverter.Interlock
	var e *units.ParseError
	for _, err := range []error{site.UnmarshalText([]byte("garage")), guard.UnmarshalText([]byte("not stated"))} {
		if !errors.As(err, &e) || !strings.Contains(e.Error(), " or ") {
			t.Errorf("error %v", err)
		}
	}
	if site != inverter.Inside || guard != inverter.Interlock {
		t.Errorf("bad text leaves %v and %v", site, guard)
	}
	for v, want := range map[interface{ String() string }]string{
		inverter.Kind(0): "not stated", inverter.SteadyLoad: "steady", inverter.MotorLoad: "motor", inverter.Kind(3): "Kind(3)",
		inverter.Kept(0): "not stated", inverter.KeptApart: "kept apart", inverter.NotKept: "not kept apart", inverter.Kept(3): "Kept(3)",
		inverter.Site(0): "not stated", inverter.Site(6): "Site(6)", inverter.GuardKind(0): "not stated", inverter.GuardKind(5): "GuardKind(5)",
	} {
		if v.String() != want {
			t.Errorf("got %q, want %q", v, want)
		}
	}
	d := logger()
	d.Kind = 3
	_, err = checkDemand(d)
	wantRangeError(t, err, "inverter.Check", "demands[1].Kind")
}
