package plan_test

import (
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
	"example.com/drawbar/units"
)

// A measured is a number in a unit.
type measured struct {
	text  string
	value float64
	unit  string
}

// measure finds numbers with their units in a text.
var measure = regexp.MustCompile(`(-?\d+(?:\.\d+)?) ?(kWh/m²|kWh|Wh|kW|W|kVA|VA|Ah|A|mV|V|h|d|s|%/K|%|°C|mΩ|Ω|m|ft|AWG)(?:[^\w/²]|$)`)

// scale is a unit in the one that the test compares in.
var scale = map[string]struct {
	base   string
	factor float64
}{
	"kWh": {"Wh", 1000}, "kW": {"W", 1000}, "kVA": {"VA", 1000}, "mV": {"V", 0.001}, "kA": {"A", 1000}, "mΩ": {"Ω", 0.001},
	"d": {"h", 24}, "s": {"h", 1.0 / 3600}, "min": {"h", 1.0 / 60}, "1": {"%", 100}, "ft": {"m", 0.3048},
	"Wh/m²": {"kWh/m²", 0.001}, "MJ/m²": {"kWh/m²", 1 / 3.6},
}

func in(value float64, unit string) (float64, string) {
	if s, ok := scale[unit]; ok {
		return value * s.factor, s.base
	}
	return value, unit
}

// numbersIn returns the numbers of a text; those without a unit get that of
// their column. A number in a text that has no unit is a count or part of a
// name.
func numbersIn(s plan.Shown) (list []measured) {
	add := func(text, unit string) {
		value, err := strconv.ParseFloat(text, 64)
		if err == nil {
			list = append(list, measured{text, value, unit})
		}
	}
	column := map[string]string{"volts": "V"}[s.Head]
	if column == "" {
		column, _, _ = strings.Cut(s.Head, " ")
	}
	if _, err := strconv.ParseFloat(s.Text, 64); err == nil && s.Head != "" {
		add(s.Text, column)
		return list
	}
	for _, m := range measure.FindAllStringSubmatch(s.Text, -1) {
		add(m[1], m[2])
	}
	return list
}

// shows reports whether a value, to some number of digits that a plan has, is
// printed as that text.
func (m measured) shows(value float64, unit string) bool {
	value, base := in(value, unit)
	_, want := in(m.value, m.unit)
	if base != want {
		return false
	}
	if s, ok := scale[m.unit]; ok {
		value /= s.factor
	}
	least := 2
	if m.unit != "%" && m.unit != "d" && m.unit != "h" {
		least = 3
	}
	for digits := least; digits <= 6; digits++ {
		if units.Significant(value, digits) == m.text {
			return true
		}
	}
	return math.Abs(value-m.value) <= 1e-9*math.Abs(value)
}

// inSheets reports whether the sheets of some parts have a number.
func (m measured) inSheets(sheets []plan.PartSheet, parts []string) bool {
	for _, s := range sheets {
		if !slices.Contains(parts, s.Part) {
			continue
		}
		if m.unit == "AWG" && strings.Contains(s.Sheet.Title(), m.text+" AWG") {
			return true
		}
		for _, step := range s.Sheet.Steps() {
			if step.Name != "" && m.shows(step.Value, step.Unit) {
				return true
			}
		}
	}
	return false
}

// given returns every number of the description with its unit.
func given(t *testing.T) (list []measured) {
	t.Helper()
	data, err := os.ReadFile("../rig/demo.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(`"(-?\d+(?:\.\d+)?) ([^"\d]+)"`).FindAllStringSubmatch(string(data), -1) {
		if value, err := strconv.ParseFloat(m[1], 64); err == nil {
			list = append(list, measured{m[1], value, m[2]})
		}
	}
	return list
}

// elsewhere are the numbers of the plan that are not in the sheets of their
// part, and why; of those with a text, that number alone.
var elsewhere = []struct{ part, unit, text, reason string }{
	{"alarm", "h", "", "the time of the bank, in its sheets"},
	{"roof", "h", "", "times of the bank and the converter, in their sheets"},
	{"roof", "kWh/m²", "", "a quarter and three quarters of the sun above the air, whose sheet ends there"},
	{"generator", "ft", "", "a distance as published, in the source of its finding"},
	{"bank", "V", "0", "what to state, not a result"},
	{"C4", "A", "", "the smallest standard rating above the load: a row of a list"},
}

// TestEveryNumberHasWorking takes every number of the plan, as an owner reads
// it, and finds it in the sheets of the same part, or in the description.
func TestEveryNumberHasWorking(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	echoed := given(t)
	seen, excused := 0, map[string]bool{}
	for _, s := range plan.ShownBy(p) {
		if strings.HasPrefix(s.Text, "Rule: ") {
			continue // a citation, whose numbers are those of a document
		}
		for _, n := range numbersIn(s) {
			seen++
			input := slices.ContainsFunc(echoed, func(e measured) bool {
				return n.unit != "AWG" && n.shows(e.value, e.unit) || n.text == e.text && n.unit == e.unit
			})
			if input || n.inSheets(p.Working(), s.Parts) {
				continue
			}
			ok := false
			for _, e := range elsewhere {
				if slices.Contains(s.Parts, e.part) && n.unit == e.unit && (e.text == "" || n.text == e.text) {
					ok, excused[e.part+e.unit] = true, true
				}
			}
			if !ok {
				t.Errorf("%s %s of %v has no working: %q", n.text, n.unit, s.Parts, s.Text)
			}
		}
	}
	if seen < 240 {
		t.Errorf("only %d numbers were looked at", seen)
	}
	for _, e := range elsewhere {
		if !excused[e.part+e.unit] {
			t.Errorf("nothing of %s in %s has to be excused any more", e.part, e.unit)
		}
	}
}

// TestNoWorkingIsMissed takes one part's sheets away at a time and sees that
// the search above would notice.
func TestNoWorkingIsMissed(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	for _, c := range []struct {
		part   string
		number measured
	}{
		{"shore", measured{"2880", 2880, "W"}}, {"tow vehicle", measured{"1152", 1152, "Wh"}}, {"roof", measured{"34", 34, "%"}},
		{"C5", measured{"4", 4, "%"}}, {"C9", measured{"27.1", 27.1, "A"}}, {"bank", measured{"95", 95, "A"}},
	} {
		if !c.number.inSheets(p.Working(), []string{c.part}) {
			t.Errorf("%s: no working for %s %s", c.part, c.number.text, c.number.unit)
		}
		rest := slices.DeleteFunc(p.Working(), func(s plan.PartSheet) bool { return s.Part == c.part })
		if c.number.inSheets(rest, []string{c.part}) {
			t.Errorf("%s: the sheets are gone and the number is not", c.part)
		}
	}
}

// TestSheetsBelong: a sheet begins with its part, no two are alike, and those
// of a part stand together.
func TestSheetsBelong(t *testing.T) {
	p := planOf(t, func(*plan.Rig) {})
	var parts []string
	seen := map[string]bool{}
	for _, s := range p.Working() {
		if title := s.Sheet.Title(); !strings.HasPrefix(title, s.Part+": ") && !strings.HasPrefix(title, s.Part+", ") {
			t.Errorf("the sheet %q is of %s", title, s.Part)
		}
		if text := s.Sheet.Text(); seen[text] {
			t.Errorf("the sheet %q is there twice", s.Sheet.Title())
		} else {
			seen[text] = true
		}
		if len(parts) == 0 || parts[len(parts)-1] != s.Part {
			parts = append(parts, s.Part)
		}
	}
	slices.Sort(parts)
	if len(slices.Compact(slices.Clone(parts))) != len(parts) {
		t.Errorf("the sheets of a part are apart: %v", parts)
	}
	for _, l := range p.Loads {
		if !slices.Contains(parts, l.Name) {
			t.Errorf("no sheet for %s", l.Name)
		}
	}
	for _, c := range p.Circuits {
		if !slices.Contains(parts, c.Name) {
			t.Errorf("no sheet for %s", c.Name)
		}
	}
	text := p.TextWithWorking()
	for _, s := range p.Working() {
		if s.Sheet.Err() != nil {
			t.Errorf("%v", s.Sheet.Err())
		}
	}
	if !strings.Contains(text, "\n\n1. lamps: A day of lamps on dc\n====") || !strings.Contains(text, ". C5: Protection of 12 AWG") {
		t.Error("sheets are not headed by number and part, with a blank line before")
	}
}
