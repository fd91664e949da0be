package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
)

// TestNoneNeededForHowManyStrings: the plan names as many strings as there are.
func TestNoneNeededForHowManyStrings(t *testing.T) {
	for series, want := range map[int]string{2: "none needed for one string", 1: "none needed for 2 strings"} {
		p := planOf(t, func(r *plan.Rig) { r.Roof.Series = series })
		if p.Circuits[6].Device.Needed {
			t.Fatalf("%d in series: a device is needed", series)
		}
		if text := p.Markdown(); !strings.Contains(text, "| "+want+" |") || strings.Count(text, "none needed") != 1 {
			t.Errorf("%d in series: not %q", series, want)
		}
	}
	// Three strings can burn one, and what is stated is shown as stated.
	three := planOf(t, func(r *plan.Rig) { r.Roof.Panels, r.Roof.Series = 3, 1 })
	stated := planOf(t, func(r *plan.Rig) { r.Roof.Series = 1; r.Circuits[6].Device = &plan.Device{Rating: 20, At: "roof"} })
	for name, p := range map[string]plan.Plan{"three": three, "stated": stated} {
		if strings.Contains(p.Text(), "none needed") {
			t.Errorf("%s: none is needed", name)
		}
	}
}
