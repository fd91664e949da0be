package plan_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// TestSourcesOfAPanel seeds each way in which two sources reach a panel, and
// takes it out again.
func TestSourcesOfAPanel(t *testing.T) {
	for _, c := range []struct {
		what        string
		change      func(*plan.Rig)
		where, rule string
		severity    working.Severity
	}{
		{"one inlet", func(*plan.Rig) {}, "", "", 0},
		{"interlock", func(r *plan.Rig) { r.Generator.Transfer = inverter.Interlock }, "", "", 0},
		{"transfer switch", func(r *plan.Rig) { r.Generator.Transfer = inverter.TransferSwitch }, "", "", 0},
		{"not stated", func(r *plan.Rig) { r.Generator.Transfer = 0 }, "generator", "transfer-not-stated", working.Caution},
		{"none", func(r *plan.Rig) { r.Generator.Transfer = inverter.NoGuard }, "generator", "sources-not-kept-apart", working.Danger},
		{"none, and no shore to meet", func(r *plan.Rig) {
			r.Generator.Transfer, r.Shore, r.Bonds = inverter.NoGuard, nil, r.Bonds[1:]
		}, "", "", 0},
		{"no generator", func(r *plan.Rig) { r.Generator = nil }, "", "", 0},
		{"relay of the inverter not stated", func(r *plan.Rig) { r.Inverter.PassRelay = units.None[units.Current]() }, "inverter", "transfer-not-stated", working.Caution},
		{"switch of the inverter stated", func(r *plan.Rig) {
			r.Inverter.PassRelay, r.Inverter.Transfer = units.None[units.Current](), inverter.TransferSwitch
		}, "", "", 0},
		{"inverter plugged into a live panel", func(r *plan.Rig) { r.Inverter.Transfer = inverter.NoGuard }, "inverter", "sources-not-kept-apart", working.Danger},
		{"inverter and generator alone", func(r *plan.Rig) {
			r.Inverter.Transfer, r.Shore, r.Bonds = inverter.NoGuard, nil, r.Bonds[1:]
		}, "inverter", "sources-not-kept-apart", working.Danger},
	} {
		t.Run(c.what, func(t *testing.T) {
			p := planOf(t, c.change)
			for _, f := range p.Findings {
				if f.Rule != "transfer-not-stated" && f.Rule != "sources-not-kept-apart" {
					continue
				}
				if f.Part != c.where || f.Rule != c.rule || f.Severity != c.severity {
					t.Errorf("%s: %v %s", f.Part, f.Severity, f.Rule)
				}
				c.rule = ""
			}
			if c.rule != "" {
				t.Errorf("%s goes unsaid", c.rule)
			}
		})
	}
}

// TestWhoMeetsWhere: the finding names both sources and the panel, and the list
// of sources says how the generator is kept apart.
func TestWhoMeetsWhere(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) {
		r.Generator.Transfer, r.Inverter.Transfer = inverter.NoGuard, inverter.NoGuard
		r.Buses = append(r.Buses, plan.Bus{Name: "the main panel", Kind: r.Buses[1].Kind, Voltage: r.Buses[1].Voltage, Behind: "inverter"})
	})
	text := strings.Join(strings.Fields(p.Text()), " ")
	for _, want := range []string{
		"shore power and the generator can feed the main panel at the same time",
		`the main panel and the inverter can feed "backed" at the same time`,
		`the main panel and the inverter can feed "the main panel" at the same time`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	for kind, want := range map[inverter.GuardKind]string{
		0: "how it is kept apart from shore power is not stated", inverter.OneInlet: "through the shore inlet",
		inverter.NoGuard: "nothing keeps it apart from shore power", inverter.Interlock: "kept apart from shore power by: interlock",
	} {
		p := planOf(t, func(r *plan.Rig) { r.Generator.Transfer = kind })
		if text := strings.Join(strings.Fields(p.Text()), " "); !strings.Contains(text, want) {
			t.Errorf("%v: no %q", kind, want)
		}
	}
}

func TestCarbonMonoxideOfTheGenerator(t *testing.T) {
	for site, want := range map[inverter.Site]working.Severity{0: working.Caution, inverter.OpenAir: working.Caution, inverter.UnderRoof: working.Danger} {
		p := planOf(t, func(r *plan.Rig) { r.Generator.Site = site })
		rule := map[working.Severity]string{working.Caution: "carbon-monoxide", working.Danger: "carbon-monoxide-gathers"}[want]
		if s, ok := found(p, "generator", rule); !ok || s != want {
			t.Errorf("%v: %v, %v", site, s, ok)
		}
		if n := strings.Count(strings.ToLower(p.Text()), "makes carbon monoxide"); n != 1 {
			t.Errorf("%v: said %d times", site, n)
		}
	}
	p := planOf(t, func(r *plan.Rig) { r.Generator = nil })
	for _, f := range p.Findings {
		if strings.HasPrefix(f.Rule, "carbon-monoxide") {
			t.Errorf("no generator and %s", f.Rule)
		}
	}
}

// TestBondsNotDescribed: silence is no count of none, and an empty list is.
func TestBondsNotDescribed(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Bonds = nil })
	if s, ok := found(p, "bonds", "bonds-not-described"); !ok || s != working.Caution {
		t.Errorf("bonds that nobody described: %v, %v", s, ok)
	}
	if _, ok := found(p, "shore", "no-bond-on-earthed-source"); ok {
		t.Error("bonds that nobody described are counted")
	}
	p = planOf(t, func(r *plan.Rig) { r.Bonds = []plan.Bond{} })
	if s, ok := found(p, "shore", "no-bond-on-earthed-source"); !ok || s != working.Danger {
		t.Errorf("no bond on shore: %v, %v", s, ok)
	}
	if s, ok := found(p, "inverter", "no-neutral-bond"); !ok || s != working.Caution {
		t.Errorf("no bond on the inverter: %v, %v", s, ok)
	}
	if _, ok := found(p, "bonds", "bonds-not-described"); ok {
		t.Error("an empty list is not described")
	}
}

// TestGuardsAreRead: the words of the description, and no others.
func TestGuardsAreRead(t *testing.T) {
	const generator = `"transfer": "one inlet"`
	r := demo(t)
	if r.Generator.Transfer != inverter.OneInlet || r.Inverter.Transfer != 0 || r.Generator.Site != 0 {
		t.Errorf("read %+v and %+v", r.Generator, r.Inverter)
	}
	good := changed(t, generator, `"transfer": "none", "site": "near an opening"`)
	if r, err := plan.Read(good); err != nil || r.Generator.Transfer != inverter.NoGuard || r.Generator.Site != inverter.NearOpening {
		t.Errorf("read %+v, %v", r.Generator, err)
	}
	for bad, path := range map[string]string{
		`"transfer": "a cord"`:   "generator.transfer",
		`"site": "in the shade"`: "generator.site",
	} {
		_, err := plan.Read(changed(t, generator, bad))
		var e *plan.DescriptionError
		if !errors.As(err, &e) || len(e.Problems) != 1 || e.Problems[0].Path != path || !strings.Contains(e.Problems[0].Allowed, " or ") {
			t.Errorf("%s: %v", bad, err)
		}
	}
	// In Go there are more values than words.
	r = demo(t)
	r.Inverter.Transfer, r.Generator.Transfer, r.Generator.Site = 9, 9, 9
	_, err := plan.Make(r)
	var e *plan.DescriptionError
	if !errors.As(err, &e) || len(e.Problems) != 3 || e.Problems[0].Path != "inverter.transfer" || e.Problems[2].Path != "generator.site" {
		t.Errorf("%v", err)
	}
}
