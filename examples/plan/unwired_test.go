package plan_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// messageOf returns the message of a finding, empty if it is not there.
func messageOf(p plan.Plan, where, rule string) string {
	for _, f := range p.Findings {
		if f.Part == where && f.Rule == rule {
			return f.Message
		}
	}
	return ""
}

// without takes the circuits of those names out.
func without(names ...string) func(*plan.Rig) {
	return func(r *plan.Rig) {
		var kept []plan.Circuit
		for _, c := range r.Circuits {
			if !slices.Contains(names, c.Name) {
				kept = append(kept, c)
			}
		}
		r.Circuits = kept
	}
}

// TestMachinesWithoutCircuit: a cable that is left out is missed.
func TestMachinesWithoutCircuit(t *testing.T) {
	run := func(name, from, to, bus string) plan.Circuit {
		return plan.Circuit{Name: name, From: from, To: to, Bus: bus, Length: 6 * units.Foot, Size: wire.AWG(4),
			Insulation: wire.Insulation90, Device: &plan.Device{Rating: 60 * units.Ampere, At: to}}
	}
	wired := func(r *plan.Rig) {
		r.Circuits = append(r.Circuits, run("X1", "converter", "bank", "dc"), run("X2", "tow charger", "bank", "dc"),
			run("X3", "backed panel", "converter", "backed"))
	}
	whole := planOf(t, wired)
	for _, rule := range []string{"bank-runs-without-circuit", "runs-without-circuit"} {
		if m := messageOf(whole, "circuits", rule); m != "" {
			t.Errorf("all is described: %s", m)
		}
	}
	for _, c := range []struct {
		out, rule, run string
	}{
		{"C1", "bank-runs-without-circuit", "bank - inverter"},
		{"C8", "bank-runs-without-circuit", "controller - bank"},
		{"X1", "bank-runs-without-circuit", "converter - bank"},
		{"X2", "bank-runs-without-circuit", "tow charger - bank"},
		{"X3", "runs-without-circuit", "what feeds the converter"},
		{"C7", "runs-without-circuit", "roof - controller"},
		{"C9", "runs-without-circuit", "tow vehicle - tow charger"},
	} {
		p := planOf(t, and(wired, without(c.out)))
		if m := messageOf(p, "circuits", c.rule); !strings.HasSuffix(m, ": "+c.run+".") {
			t.Errorf("without %s: %q, want %s alone", c.out, m, c.run)
		}
	}
	for out, want := range map[string]working.Severity{"C1": working.Caution, "X1": working.Note, "C8": working.Note} {
		if s, ok := found(planOf(t, and(wired, without(out))), "circuits", "bank-runs-without-circuit"); !ok || s != want {
			t.Errorf("without %s: %v %v, want %v", out, ok, s, want)
		}
	}
	// A converter may feed the panel instead of the bank.
	p := planOf(t, and(wired, func(r *plan.Rig) { r.Circuits[10].To, r.Circuits[10].Device.At = "dc panel", "dc panel" }))
	if m := messageOf(p, "circuits", "bank-runs-without-circuit"); m != "" {
		t.Errorf("a converter that feeds the panel: %s", m)
	}
	// A machine that there is not has no cable.
	p = planOf(t, func(r *plan.Rig) { r.Converter, r.Tow = nil, nil; without("C9")(r) })
	if m := messageOf(p, "circuits", "bank-runs-without-circuit"); m != "" {
		t.Errorf("no converter and no tow charger: %s", m)
	}
	if _, ok := found(planOf(t, func(r *plan.Rig) { r.Circuits = nil }), "circuits", "bank-runs-without-circuit"); ok {
		t.Error("no circuit at all is said twice")
	}
}
