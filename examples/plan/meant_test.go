package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
)

// TestOtherWordsForEnds: an end by another of its names would go unchecked, so
// it is asked about; a place by that name is declared.
func TestOtherWordsForEnds(t *testing.T) {
	for word, meant := range map[string]string{
		"battery": "bank", "Batteries": "bank", "house battery": "bank", "charger": "converter", "solar controller": "controller",
		"solar panels": "roof", "truck": "tow vehicle", "dc-dc charger": "tow charger", "inlet": "shore",
	} {
		for what, change := range map[string]func(*plan.Circuit){
			"circuits[4].to": func(c *plan.Circuit) { c.To = word },
			"circuits[4].from": func(c *plan.Circuit) {
				c.From, c.Device.At = word, word
			},
		} {
			rig := demo(t)
			change(&rig.Circuits[4])
			_, err := plan.Make(rig)
			if p := onlyProblem(t, word, what, err); !strings.HasSuffix(p.Allowed, "listed in places; did you mean \""+meant+"\"?") {
				t.Errorf("%q: %v", word, p)
			}
			rig.Places = []string{word}
			if _, err := plan.Make(rig); err != nil {
				t.Errorf("a place called %q: %v", word, err)
			}
		}
	}
	// The far end of a branch may have any other name.
	planOf(t, func(r *plan.Rig) { r.Circuits[4].To = "batten" })
}
