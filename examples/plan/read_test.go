package plan_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// changed returns the demo with one text replaced, which must be there.
func changed(t *testing.T, old, new string) []byte {
	t.Helper()
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(data, []byte(old)) {
		t.Fatalf("the demo has no %q", old)
	}
	return bytes.Replace(data, []byte(old), []byte(new), 1)
}

func TestReadRefuses(t *testing.T) {
	for _, c := range []struct{ old, new, path, value, allowed string }{
		{`"efficiency": "89 %"`, `"efficiency": "89"`, "inverter.efficiency", `"89"`, "ratio: a number without a unit must not be above 2"},
		{`"efficiency": "89 %"`, `"efficiency": "189 %"`, "inverter.efficiency", `"189 %"`, "> 0 % and <= 100 %"},
		{`"efficiency": "89 %"`, `"efficiency": 0.89`, "inverter.efficiency", "0.89", "text with a unit"},
		{`"efficiency": "89 %"`, `"efficiency": null`, "inverter.efficiency", "null", "leave the field out"},
		{`"efficiency": "89 %"`, `"eficiency": "89 %"`, "inverter.eficiency", `"89 %"`, "no such field"},
		{`"idle": "14 W"`, `"idle": "14 V"`, "inverter.idle", `"14 V"`, `power: unknown unit "V"`},
		{`"idle": "14 W"`, `"idle": "14 W", "idle": "15 W"`, "inverter.idle", `"15 W"`, "the field once only"},
		{`"capacity": "140 Ah"`, `"capacity": ""`, "bank.capacity", `""`, "text with a unit"},
		{`"capacity": "140 Ah"`, `"capacity": "-140 Ah"`, "bank.capacity", `"-140 Ah"`, "> 0 Ah"},
		{`"parallel": 2`, `"parallel": 2.5`, "bank.parallel", "2.5", "a whole number"},
		{`"parallel": 2`, `"parallel": 0`, "bank.parallel", "0", "1 or more"},
		{`"parallel": 2`, `"parallel": -5`, "bank.parallel", "-5", "1 or more"},
		{`"parallel": 2`, `"parallel": "two"`, "bank.parallel", `"two"`, "a number"},
		{`"direct": "RV low voltage"`, `"direct": "kindest"`, "rules.direct", `"kindest"`, "rule set: one of"},
		{`"kind": "constant current"`, `"kind": "lamp"`, "loads[0].kind", `"lamp"`, "motor"},
		{`"size": "1 AWG"`, `"size": "1"`, "circuits[0].size", `"1"`, "a gauge"},
		{`"from": "18:30"`, `"from": "25:30"`, "loads[6].windows[0].from", `"25:30"`, ""},
		{`"bus": "dc", "kind": "motor", "current": "7 A"`, `"bus": "cd", "kind": "motor", "current": "7 A"`, "loads[1].bus", `"cd"`, "one of dc, backed, main"},
		{`"hours": "0.25 h"`, `"hours": "25 h"`, "loads[1].hours", `"25 h"`, "0 h to 24 h"},
		{`"name": "water pump"`, `"name": "lamps"`, "loads[1].name", `"lamps"`, "a name that is not taken"},
		{`"current": "7 A"`, `"current": "7 A", "power": "84 W"`, "loads[1]", "", ""},
		{`"loads": ["sample freezer"]`, `"loads": ["sample frezer"]`, "circuits[2].loads[0]", `"sample frezer"`, "one of lamps"},
		{`"with": ["shore"]`, `"with": ["moon"]`, "bonds[0].with[0]", `"moon"`, "one of shore, generator, inverter"},
		{`"series": 2`, `"series": 3`, "roof.series", "3", "whole strings"},
		{`"lost": "20 %"`, `"lost": "100 %"`, "roof.losses[0].lost", `"100 %"`, "< 100 %"},
		{`"idle": "14 W"`, `"idel": "14 W"`, "inverter.idel", `"14 W"`, `off_when_idle; did you mean "idle"?`},
		{`"name": "water pump"`, `"name": "water\npump"`, "loads[1].name", `"water\npump"`, "without control characters"},
		{`"name": "water pump"`, `"name": "water \u202epump"`, "loads[1].name", `"water \u202epump"`, "without control characters"},
		{`"name": "water pump"`, `"name": "pump\ud800"`, "loads[1].name", "", "without control characters"},
		{`"name": "water pump"`, `"name": "` + strings.Repeat("p", 31) + `"`, "loads[1].name", "", "at most 30 characters"},
		{`"day": "`, `"day": "` + strings.Repeat("long ", 70), "day", "", "at most 300 characters"},
		{`"name": "water pump"`, `"name": " "`, "loads[1].name", `" "`, "not empty"},
		{`"idle": "14 W"`, `"idle": "` + strings.Repeat("9", 200) + ` V"`, "inverter.idle", `"` + strings.Repeat("9", 40) + " ... " + strings.Repeat("9", 18) + ` V"`, ""},
		{`"idle": "14 W"`, `"\u001b[31m": "14 W"`, `inverter."\x1b[31m"`, `"14 W"`, "no such field; there are"},
		{`"series": 2`, `"series": ` + strings.Repeat("1", 100), "roof.series", "", "a whole number"},
		{`"name": "water pump"`, `"name": true`, "loads[1].name", "true", "text"},
		{`"must_not_stop": true`, `"must_not_stop": "yes"`, "loads[3].must_not_stop", `"yes"`, "true or false"},
		{`"with": ["shore"]`, `"with": "shore"`, "bonds[0].with", `"shore"`, "a list"},
		{`"power_factor": "95 %"
  },`, `"power_factor": "950 %"
  },`, "converter.power_factor", `"950 %"`, "<= 100 %"},
		{`"bus": "backed",`, `"bus": "front",`, "loads[11].bus", `"front"`, "one of dc, backed, main"},
	} {
		data := changed(t, c.old, c.new)
		rig, err := plan.Read(data)
		if err == nil {
			_, err = plan.Make(rig)
		}
		var mistakes *plan.DescriptionError
		if !errors.As(err, &mistakes) || !errors.Is(err, plan.ErrDescription) {
			t.Errorf("%s: %v, want a *plan.DescriptionError", c.new, err)
			continue
		}
		hit := false
		for _, p := range mistakes.Problems {
			hit = hit || strings.HasPrefix(p.Path, c.path) && (c.value == "" || p.Value == c.value) && strings.Contains(p.Allowed, c.allowed)
		}
		if strings.Contains(c.new, `"cd"`) && len(mistakes.Problems) != 1 {
			t.Errorf("a bus that is misspelt in one load: %v", err)
		}
		if !hit {
			t.Errorf("%s: got %v, want %s = %s, %s", c.new, err, c.path, c.value, c.allowed)
		}
	}
}

// TestEveryMistakeIsReported puts several into one description.
func TestEveryMistakeIsReported(t *testing.T) {
	data := changed(t, `"efficiency": "89 %"`, `"efficiency": "89"`)
	data = bytes.Replace(data, []byte(`"capacity": "140 Ah"`), []byte(`"capacity": "140 V"`), 1)
	data = bytes.Replace(data, []byte(`"service": "30 A",`), nil, 1)
	rig, err := plan.Read(data)
	want := `3 mistakes in the description of the rig:
  bank.capacity = "140 V", want charge: unknown unit "V"; want one of Ah, mAh, C
  inverter.efficiency = "89", want ratio: a number without a unit must not be above 2; write it with % if that is meant
  shore.service is missing, want text with a unit, such as "30 A"`
	if err == nil || err.Error() != want {
		t.Errorf("got:\n%v\nwant:\n%s", err, want)
	}
	if rig.Name != "" || rig.Loads != nil {
		t.Errorf("a description with mistakes was read in part: %+v", rig)
	}
}

func TestReadSyntax(t *testing.T) {
	for text, want := range map[string]string{
		"":                         "the description is empty",
		"{\n\n\"name\": \"x\",\n}": "line 4: ",
		"{} {}":                    "line 1: '{' is not expected here; the description has ended",
		"{\"a\": [1, 2":            "line 1: the text ends too early",
		strings.Repeat("[", 100):   "nested too deep",
		`"text"`:                   `the description = "text", want an object: the fields of a rig in braces`,
		"[]":                       "the description = a list, want an object",
		"null":                     "the description = null, want an object",
		"12":                       "the description = 12, want an object",
		"{\n\"name\": \"\xff\"}":   "line 2: the text is not in UTF-8",
		"\ufeff[]":                 "the description = a list",
	} {
		_, err := plan.Read([]byte(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// TestByteOrderMark: a description that an editor put a mark in front of is
// read as it is.
func TestByteOrderMark(t *testing.T) {
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	rig, err := plan.Read(append([]byte("\ufeff"), data...))
	if err != nil || rig.Name != "Field base of the count" {
		t.Errorf("%q, %v", rig.Name, err)
	}
}

// TestEmptyLists are one mistake each, not one of every name besides.
func TestEmptyLists(t *testing.T) {
	rig := demo(t)
	rig.Buses, rig.Loads = nil, nil
	_, err := plan.Make(rig)
	want := "2 mistakes in the description of the rig:\n  buses = an empty list, want at least one bus\n  loads = an empty list, want at least one load"
	if err == nil || err.Error() != want {
		t.Errorf("got:\n%v\nwant:\n%s", err, want)
	}
}

// FuzzMake reads what may be a description and makes its plan.
func FuzzMake(f *testing.F) {
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	// Small ones, so that a change of a byte is seldom lost in what stays.
	const small = `{"name":"v","day":"d","rules":{"direct":"RV low voltage","alternating":"NEC 2017"},` +
		`"buses":[{"name":"dc","kind":"direct","voltage":"12 V"},{"name":"ac","kind":"alternating","voltage":"120 V","behind":"inverter"}],` +
		`"loads":[{"name":"a","bus":"dc","kind":"motor","power":"9 W","hours":"5 h"},{"name":"b","bus":"ac","kind":"motor","power":"9 W","hours":"5 h","must_not_stop":true}],` +
		`"bank":{"chemistry":"AGM","capacity":"100 Ah","voltage":"12 V"},"inverter":{"continuous":"1 kW","efficiency":"90 %","cut_off":"10 V"}`
	f.Add([]byte(small + `}`))
	f.Add([]byte(small + `,"shore":{"service":"30 A","voltage":"120 V","measured":"240 V","cord":"12 AWG"},"bonds":[{"at":"p","with":["shore"]}]}`))
	f.Add([]byte(small + `,"circuits":[{"name":"F","from":"bank","to":"dc","bus":"dc","length":"9 ft","size":"6 mm2","insulation":"90 °C","device":{"rating":"30 A","at":"bank"}},` +
		`{"name":"G","from":"dc","to":"x","bus":"dc","length":"9 ft","size":"14 AWG","insulation":"90 °C","feeder":"F","loads":["a"]}]}`))
	f.Add([]byte(small + `,"roof":{"panels":1,"series":1,"power":"200 W","open_circuit_voltage":"24 V","maximum_power_voltage":"20 V","short_circuit_current":"10 A","coldest":"0 °C",` +
		`"controller":{"input_limit":"50 V","output_limit":"2 A"},"sun":{"irradiation":"5 kWh/m2"},"losses":[]},"tow":{"current":"9 A","voltage":"14 V","efficiency":"90 %","input_voltage":"12 V","hours":"4 h"}}`))
	f.Add([]byte(`{"name": 1, "loads": [{"power": "1e300 kW"}]}`))
	f.Add(bytes.ReplaceAll(data, []byte(`"12 V"`), []byte(`"0 V"`)))
	f.Fuzz(func(t *testing.T, data []byte) {
		rig, err := plan.Read(data)
		if err != nil {
			if rig.Name != "" || rig.Loads != nil {
				t.Fatal("read in part")
			}
			return
		}
		p, err := plan.Make(rig)
		if err != nil {
			if !errors.Is(err, plan.ErrDescription) {
				t.Fatalf("%v", err)
			}
			return
		}
		for _, f := range p.Findings {
			if f.Rule == "" || f.Message == "" {
				t.Fatalf("empty finding %+v", f)
			}
		}
		if data, err := p.JSONWithWorking(); err != nil || !json.Valid(data) {
			t.Fatalf("no JSON: %v", err)
		}
		for line := range strings.Lines(p.Text()) {
			if working.Columns(strings.TrimSuffix(line, "\n")) > 80 {
				t.Fatalf("%q", line)
			}
		}
		if units.Exceeds(0, p.Bank.Usable) || p.Text() == "" {
			t.Fatal("no plan")
		}
	})
}
