package plan_test

import (
	"encoding/json"
	"errors"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// rigs are descriptions with much and with little in them.
func rigs(t *testing.T) map[string]plan.Rig {
	t.Helper()
	heaters := demo(t)
	heaters.Loads = append(heaters.Loads, like(6, 4*units.Hour)...)
	return map[string]plan.Rig{"demo": demo(t), "heaters": heaters, "van": van(), "bare": bare(t)}
}

// bare is a rig with nothing that may be left out.
func bare(t *testing.T) plan.Rig {
	t.Helper()
	rig, err := plan.Read([]byte(`{
		"name": "van", "day": "any", "rules": {"direct": "RV low voltage", "alternating": "NEC 2017"},
		"buses": [{"name": "dc", "kind": "direct", "voltage": "12 V"}],
		"loads": [{"name": "lamp", "bus": "dc", "kind": "constant current", "power": "10 W", "hours": "5 h"}],
		"bank": {"chemistry": "AGM", "capacity": "100 Ah", "voltage": "12 V"}
	}`))
	if err != nil {
		t.Fatal(err)
	}
	return rig
}

var (
	// counts are the names that hold a bare number.
	counts = []string{"panels", "series", "strings", "bundled", "count"}
	// sentences are the names that hold words for a reader.
	sentences = []string{"message", "mend", "cautions", "day", "what", "why", "title", "chosen"}
	// quantity is a number with a unit, or a plain one.
	quantity = regexp.MustCompile(`^-?\d+(\.\d+)?(e[+-]?\d+)?( ?[^\d\s]\S*| 1/K)?$`)
	// manyDigits is a number that shows how a float64 is stored.
	manyDigits = regexp.MustCompile(`\d[\d.]{10,}`)
	name       = regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`)
)

// walk goes through JSON and says what is not as the documentation states.
func walk(t *testing.T, path, key string, v any, names map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		for k, x := range v {
			if names[k] = true; !name.MatchString(k) {
				t.Errorf("%s: the name %q", path, k)
			}
			walk(t, path+"."+k, k, x, names)
		}
	case []any:
		for _, x := range v {
			walk(t, path+"[]", key, x, names)
		}
	case nil:
		t.Errorf("%s is null", path)
	case float64:
		if !slices.Contains(counts, key) || v != float64(int(v)) {
			t.Errorf("%s is the bare number %v", path, v)
		}
	case string:
		if manyDigits.MatchString(v) {
			t.Errorf("%s has too many digits: %q", path, v)
		}
		isText := slices.Contains(sentences, key) || strings.HasSuffix(path, ".source.place") || strings.HasSuffix(path, ".table.place")
		if !isText && (strings.Contains(v, ". ") || strings.HasSuffix(v, ".")) {
			t.Errorf("%s holds a sentence: %q", path, v)
		}
		if key == "value" && v != "not given" && !quantity.MatchString(v) {
			t.Errorf("%s is no quantity: %q", path, v)
		}
	}
}

// TestJSONShape: nothing is null, no number is without its unit, no value is a
// sentence, and the package documentation has every name.
func TestJSONShape(t *testing.T) {
	names := map[string]bool{}
	for what, rig := range rigs(t) {
		p, err := plan.Make(rig)
		if err != nil {
			t.Fatal(err)
		}
		data, err := p.JSONWithWorking()
		if err != nil {
			t.Fatal(err)
		}
		var v any
		if err := json.Unmarshal(data, &v); err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		walk(t, what, "", v, names)
		top := v.(map[string]any)
		for _, list := range []string{"loads", "buses", "sources", "sets", "circuits", "findings", "cautions", "working"} {
			if _, ok := top[list].([]any); !ok {
				t.Errorf("%s: %s is no list: %v", what, list, top[list])
			}
		}
		if top["demo"] != false {
			t.Errorf("%s: demo is %v", what, top["demo"])
		}
	}
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for k := range names {
		if !strings.Contains(string(doc), `"`+k+`"`) {
			t.Errorf("doc.go does not have the name %q", k)
		}
	}
	for _, m := range regexp.MustCompile(`"([a-z_]+)"`).FindAllStringSubmatch(string(doc), -1) {
		if word := m[1]; !names[word] && !slices.Contains([]string{"note", "caution", "danger"}, word) {
			t.Errorf("doc.go has %q, and no plan of this test has it", word)
		}
	}
}

// TestJSONRefuses: a plan that somebody filled with what is not defined has no
// JSON.
func TestJSONRefuses(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	p.Findings[0].Severity = 9
	if data, err := p.JSON(); !errors.Is(err, units.ErrRange) || data != nil {
		t.Errorf("%d bytes, %v", len(data), err)
	}
	p = planOf(t, func(*plan.Rig) {})
	p.Sun.Controller.Kind = 9
	if _, err := p.JSONWithWorking(); !errors.Is(err, units.ErrRange) {
		t.Errorf("%v", err)
	}
	if _, err := json.Marshal(p); err == nil {
		t.Error("no error from inside of something else")
	}
	// The zero plan is one with nothing in it.
	if data, err := (plan.Plan{}).JSON(); err != nil || !strings.Contains(string(data), `"loads": []`) || strings.Contains(string(data), "null") {
		t.Errorf("%s, %v", data, err)
	}
}

// TestJSONUnits: a quantity is always in the unit of its name.
func TestJSONUnits(t *testing.T) {
	p := planOf(t, func(r *plan.Rig) { r.Bank.Capacity *= 1000 })
	data, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"usable": "3225600 Wh"`, `"harvest": "1069.02 Wh"`, `"drop": "1.59`, `"path": "14.71`, `"ambient": "30 °C"`,
		`"kind": "MPPT"`, `"terminals": "60 °C"`} {
		if !strings.Contains(string(data), want) {
			t.Errorf("no %s", want)
		}
	}
	if !regexp.MustCompile(`"at_average": "24\d{3}(\.\d)? h"`).Match(data) {
		t.Error("a thousand times the bank does not last in hours")
	}
	inner, err := json.Marshal(map[string]plan.Plan{"plan": p})
	if err != nil || !strings.Contains(string(inner), `"harvest":"1069.02 Wh"`) {
		t.Errorf("a plan inside of something else has another shape: %v", err)
	}
}

// TestDirectCurrentHasNoVoltAmperes: what is a product of direct volts and
// amperes is watts.
func TestDirectCurrentHasNoVoltAmperes(t *testing.T) {
	for _, b := range planOf(t, func(*plan.Rig) {}).Buses {
		if direct := b.Name == "dc"; direct != (b.Apparent == 0) || direct != (b.Charge > 0) {
			t.Errorf("%s: %v, %v", b.Name, b.Apparent, b.Charge)
		}
	}
}

// TestVerdicts: each check of a circuit has its own verdict, and what was not
// stated is not agreed to.
func TestVerdicts(t *testing.T) {
	verdicts := func(change func(*plan.Rig)) map[string]working.Verdict {
		all := map[string]working.Verdict{}
		for _, c := range planOf(t, change).Circuits {
			for _, check := range c.Checks {
				all[c.Name+" "+check.Name] = check.Verdict
			}
		}
		return all
	}
	asFound := verdicts(func(*plan.Rig) {})
	for check, want := range map[string]working.Verdict{
		"C1 device": working.Agree, "C1 interrupting": working.Agree, "C1 place": working.Agree, "C1 drop": working.Agree,
		"C3 drop": working.Disagree, "C3 path": working.Disagree, "C3 at load": working.Disagree, "C3 device": working.Agree,
		"C3 interrupting": working.NotStated, "C3 place": working.NotStated,
		"C4 device": working.Unsafe, "C5 path": working.Agree, "C9 drop": working.NotStated, "C10 place": working.NotStated,
	} {
		if got, ok := asFound[check]; !ok || got != want {
			t.Errorf("%s: %v, want %v", check, got, want)
		}
	}
	if _, ok := asFound["C7 device"]; ok {
		t.Error("one string is judged for a fuse that it does not need")
	}
	gone := verdicts(func(r *plan.Rig) { r.Circuits[0].Device = nil; r.Rules.BranchDrop = units.None[units.Ratio]() })
	if gone["C1 device"] != working.Unsafe || gone["C1 interrupting"] != working.NotStated || gone["C3 drop"] != working.NotStated {
		t.Errorf("no fuse, no limit: %v", gone)
	}
	// By hand: 13.3 V over two batteries of 4 mΩ in parallel and 16 in of 1 AWG,
	// 0.127 ohm/kft cold (NEC Chapter 9 Table 8, 0.154 at 75 °C, made colder).
	fault := units.In(planOf(t, func(*plan.Rig) {}).Circuits[0].Fault.Or(0), units.Ampere)
	if hand := 13.3 / (0.002 + 0.127*16/12/1000); math.Abs(fault/hand-1) > 0.006 {
		t.Errorf("a fault of %v A at C1, want %v within 0.6 %%", fault, hand)
	}
	weak := verdicts(func(r *plan.Rig) { r.Circuits[0].Device.Interrupting = units.Some(2 * units.Kiloampere) })
	if weak["C1 interrupting"] != working.Unsafe {
		t.Errorf("a device that breaks 2 kA: %v", weak["C1 interrupting"])
	}
	small := verdicts(func(r *plan.Rig) { r.Circuits[4].Device.Rating = 5 * units.Ampere })
	if small["C5 device"] != working.Disagree {
		t.Errorf("a fuse below its load: %v", small["C5 device"])
	}
}
