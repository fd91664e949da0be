package plan_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
)

// TestOneCauseOneMistake changes the demo in one place each, on which others
// rest, and wants one mistake; and mistakes of different kinds all at once.
func TestOneCauseOneMistake(t *testing.T) {
	const head = "a mistake in the description of the rig:\n  "
	for _, c := range []struct{ what, old, new, want string }{
		// Parts that others name.
		{"a bus without a name", `{"name": "dc", "kind": "direct"`, `{"kind": "direct"`, head + "buses[0].name is missing, want text"},
		{"a bus with a number for a name", `{"name": "dc", "kind": "direct"`, `{"name": 12, "kind": "direct"`, head + "buses[0].name = 12, want text"},
		{"a bus of no kind", `"kind": "direct"`, `"kind": "both"`, head + `buses[0].kind = "both", want a kind of bus: direct or alternating`},
		{"a load without a name", `{"name": "water pump", "bus"`, `{"bus"`, head + "loads[1].name is missing, want text"},
		{"a field in other words", `"efficiency": "89 %"`, `"eficiency": "89 %"`, head + `inverter.eficiency = "89 %": no such field; there are continuous, apparent, surge, surge_for, efficiency, idle, cut_off, pass_relay, transfer, pass_device, off_when_idle; did you mean "efficiency"?`},
		{"a list in other words", `"buses": [`, `"busses": [`, head + `busses = a list: no such field; there are name, day, rules, buses, loads, bank, inverter, converter, shore, roof, tow, generator, bonds, circuits, alarm, places; did you mean "buses"?`},
		{"an inverter that is not one", `"bonds": [`, `"Inverter": {}, "bonds": [`, head + `Inverter = an object: no such field; there are name, day, rules, buses, loads, bank, inverter, converter, shore, roof, tow, generator, bonds, circuits, alarm, places; did you mean "inverter"?`},
		{"an end that is a list", `"from": "roof"`, `"from": ["roof"]`, head + `circuits[6].from = a list, want text`},
		{"a device on no end", `"at": "bank", "interrupting"`, `"interrupting"`, head + `circuits[0].device.at is missing, want text`},
		{"a number for a text", `"140 Ah"`, `140`, head + `bank.capacity = 140, want text with a unit, such as "100 Ah"`},
		{"a word for a choice", `"lithium iron phosphate"`, `7`, head + `bank.chemistry = 7, want battery chemistry: one of flooded lead-acid, AGM lead-acid, gel lead-acid or lithium iron phosphate`},
		{"a time as a number", `"from": "18:30"`, `"from": 18.5`, head + `loads[6].windows[0].from = 18.5, want text, such as "18:30"`},
		{"twice", `"idle": "14 W"`, `"idle": "14 W", "idle": "15 W"`, head + `inverter.idle = "15 W", want the field once only`},
		{"panels that make no strings", `"series": 2`, `"series": 3`, head + `roof.series = 3, want whole strings: panels a multiple of series`},
		{"no panels", `"panels": 2`, `"panels": 0`, head + `roof.panels = 0, want a whole number, 1 or more and at most 1000`},
		{"more panels than an int holds", `"panels": 2`, `"panels": 99999999999999999999`, head + `roof.panels = 99999999999999999999, want a whole number, 1 or more and at most 1000`},
		// Mistakes of each kind: grammar of a field, range, name, and sum.
		{"all at once", `"idle": "14 W"`, `"idle": "-14 W", "pass_relay": "30"`, `2 mistakes in the description of the rig:
  inverter.idle = "-14 W", want 0 W to 100 kW
  inverter.pass_relay = "30 A", want the field once only`},
	} {
		data := changed(t, c.old, c.new)
		if c.what == "all at once" {
			data = bytes.Replace(data, []byte(`"pass_relay": "30",`), []byte(`"pass_relay": "30 A",`), 1)
		}
		if _, err := plan.Read(data); err == nil || err.Error() != c.want {
			t.Errorf("%s: got\n%v\nwant\n%s", c.what, err, c.want)
		}
	}
}

// TestKindsOfMistakesTogether: what is wrong in a field by itself and what does
// not fit between fields is told in one go.
func TestKindsOfMistakesTogether(t *testing.T) {
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][2]string{
		{`"capacity": "140 Ah"`, `"capacity": "140 V"`},                                        // a unit
		{`"idle": "14 W"`, `"idle": "-14 W"`},                                                  // a range
		{`"bus": "dc", "kind": "motor", "current"`, `"bus": "cd", "kind": "motor", "current"`}, // a name
		{`"with": ["shore"]`, `"with": ["shroe"]`},                                             // a word
		{`"series": 2`, `"series": 3`},                                                         // a sum
	} {
		if !bytes.Contains(data, []byte(c[0])) {
			t.Fatal(c[0])
		}
		data = bytes.Replace(data, []byte(c[0]), []byte(c[1]), 1)
	}
	_, err = plan.Read(data)
	want := `5 mistakes in the description of the rig:
  bank.capacity = "140 V", want charge: unknown unit "V"; want one of Ah, mAh, C
  inverter.idle = "-14 W", want 0 W to 100 kW
  loads[1].bus = "cd", want one of dc, backed, main
  roof.series = 3, want whole strings: panels a multiple of series
  bonds[0].with[0] = "shroe", want one of shore, generator, inverter; did you mean "shore"?`
	if err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

// TestTextThatCannotBeShown: what would spoil the lines of a plan is refused
// where it stands, and no script is.
func TestTextThatCannotBeShown(t *testing.T) {
	for name, want := range map[string]string{
		// Refused.
		`water\u0007pump`:         "text in one line, without control characters",
		`water\npump`:             "text in one line, without control characters",
		`water\u202epump`:         "text in one line, without control characters",
		`water\u2028pump`:         "text in one line, without control characters",
		`\ufeffwater pump`:        "text in one line, without control characters",
		strings.Repeat("p", 31):   "words of at most 30 characters",
		strings.Repeat("é", 31):   "words of at most 30 characters",
		strings.Repeat("p ", 151): "text of at most 300 characters",
		`\t `:                     "text that is not empty",
		// Shown.
		strings.Repeat("p", 30):         "",
		strings.Repeat("冷蔵庫", 20):       "", // no script breaks lines there by spaces
		"مي\u200cشود":                   "",
		"👩\u200d🔧's lamp":               "",
		"Wasserpumpe; 12 V (\\\"W\\\")": "",
	} {
		_, err := plan.Read(changed(t, `"name": "roof vent fan"`, `"name": "`+name+`"`))
		switch {
		case want == "" && err != nil:
			t.Errorf("%s: %v", name, err)
		case want != "":
			if p := onlyProblem(t, name, "loads[9].name", err); p.Allowed != want {
				t.Errorf("%s: %v", name, p)
			}
		}
	}
}
