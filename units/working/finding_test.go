package working_test

import (
	"errors"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

func TestFindingString(t *testing.T) {
	code := working.Source{Body: "Invented Council", Title: "Wiring rules", Edition: "2020", Place: "4.2", Provenance: working.Memory}
	tests := []struct {
		f    working.Finding
		want string
	}{
		{working.Finding{
			Severity: working.Danger, Rule: "fuse-above-conductor",
			Message: "the fuse is larger than the conductor may carry",
			Numbers: []working.Number{{Name: "fuse", Value: 60 * units.Ampere}, {Name: "limit", Value: 30 * units.Ampere}},
			Fix:     "Fit a fuse of 30 A or less",
			Source:  code,
		}, "danger: the fuse is larger than the conductor may carry (fuse 60 A, limit 30 A). Fit a fuse of 30 A or less. " +
			"Rule fuse-above-conductor; Invented Council, Wiring rules, 2020, 4.2 (from memory)."},

		// full stops are not doubled, lines and blanks are joined
		{working.Finding{Severity: working.Caution, Message: "First.\n\n  Second.", Fix: "Do this.\tAnd that."},
			"caution: First. Second. Do this. And that."},

		// what is missing
		{working.Finding{}, "note: no message."},
		{working.Finding{Rule: "r"}, "note: no message. Rule r."},
		{working.Finding{Message: "m", Source: code}, "note: m. Source: Invented Council, Wiring rules, 2020, 4.2 (from memory)."},
		{working.Finding{Severity: 7, Message: "m", Numbers: []working.Number{{}, {Name: "a"}, {Value: 2 * units.Volt},
			{Name: "T", Value: units.Temperature{}}, {Name: "p", Value: (*units.Voltage)(nil)}}},
			"Severity(7): m (not given, a not given, 2 V, T not given, p <nil>)."},
	}
	for _, tt := range tests {
		if got := tt.f.String(); got != tt.want {
			t.Errorf("%#v.String() =\n%s\nwant\n%s", tt.f, got, tt.want)
		}
	}
}

func TestWorst(t *testing.T) {
	note, caution, danger := working.Finding{}, working.Finding{Severity: working.Caution}, working.Finding{Severity: working.Danger}
	for _, tt := range []struct {
		findings []working.Finding
		want     working.Severity
		ok       bool
	}{
		{nil, working.Note, false},
		{[]working.Finding{note}, working.Note, true},
		{[]working.Finding{note, caution, note}, working.Caution, true},
		{[]working.Finding{caution, danger, note}, working.Danger, true},
	} {
		if got, ok := working.Worst(tt.findings); got != tt.want || ok != tt.ok {
			t.Errorf("Worst(%v) = %v, %v, want %v, %v", tt.findings, got, ok, tt.want, tt.ok)
		}
	}
}

func TestSort(t *testing.T) {
	var f []working.Finding
	for _, s := range []struct {
		rule     string
		severity working.Severity
	}{{"n1", working.Note}, {"d1", working.Danger}, {"c1", working.Caution}, {"n2", working.Note}, {"d2", working.Danger}, {"c2", working.Caution}} {
		f = append(f, working.Finding{Rule: s.rule, Severity: s.severity})
	}
	working.Sort(f)
	var got []string
	for _, g := range f {
		got = append(got, g.Rule)
	}
	if diff := cmp.Diff([]string{"d1", "d2", "c1", "c2", "n1", "n2"}, got); diff != "" {
		t.Errorf("Sort (-want +got):\n%s", diff)
	}
	working.Sort(nil)
}

// Nothing in this package calls a result safe.
func TestNothingIsSafe(t *testing.T) {
	texts := []string{working.DeferToCode, working.DeferOnVerdict, sample().Text()}
	for v := working.NotStated; v <= working.Unsafe; v++ {
		texts = append(texts, v.String())
	}
	for s := working.Note; s <= working.Danger; s++ {
		texts = append(texts, s.String())
	}
	for _, text := range texts {
		if regexp.MustCompile(`(?i)\bsafe`).MatchString(text) {
			t.Errorf("says safe: %q", text)
		}
	}
	for _, word := range []string{"codes", "licensed electrician"} {
		if !strings.Contains(working.DeferToCode, word) {
			t.Errorf("DeferToCode does not name %s", word)
		}
	}
}

// The words of the enumerations, in order; each is written and read back.
func TestEnumerations(t *testing.T) {
	type text interface {
		String() string
		MarshalText() ([]byte, error)
	}
	type pointer interface{ UnmarshalText([]byte) error }
	for name, tt := range map[string]struct {
		of    func(i uint8) text
		read  func() (pointer, func() text)
		words []string
	}{
		"Provenance": {
			func(i uint8) text { return working.Provenance(i) },
			func() (pointer, func() text) {
				p := new(working.Provenance)
				*p = 77
				return p, func() text { return *p }
			},
			[]string{"provenance not stated", "definition", "read", "derived", "memory", "common practice"},
		},
		"Severity": {
			func(i uint8) text { return working.Severity(i) },
			func() (pointer, func() text) {
				p := new(working.Severity)
				*p = 77
				return p, func() text { return *p }
			},
			[]string{"note", "caution", "danger"},
		},
		"Verdict": {
			func(i uint8) text { return working.Verdict(i) },
			func() (pointer, func() text) {
				p := new(working.Verdict)
				*p = 77
				return p, func() text { return *p }
			},
			[]string{"not stated", "agree", "agree, conservative", "disagree", "unsafe"},
		},
		"Side": {
			func(i uint8) text { return working.Side(i) },
			func() (pointer, func() text) {
				p := new(working.Side)
				*p = 77
				return p, func() text { return *p }
			},
			[]string{"neither", "higher", "lower"},
		},
	} {
		for i, word := range tt.words {
			v := tt.of(uint8(i))
			b, err := v.MarshalText()
			if v.String() != word || string(b) != word || err != nil {
				t.Errorf("%s %d: String() = %q, MarshalText() = %q, %v, want %q", name, i, v, b, err, word)
			}
			p, value := tt.read()
			if err := p.UnmarshalText([]byte(word)); err != nil || value() != v {
				t.Errorf("%s: UnmarshalText(%q) = %v, %v", name, word, value(), err)
			}
		}
		beyond := tt.of(uint8(len(tt.words)))
		if want := name + "(" + string(rune('0'+len(tt.words))) + ")"; beyond.String() != want {
			t.Errorf("%s: String() of an undefined one = %q, want %q", name, beyond, want)
		}
		if b, err := beyond.MarshalText(); !errors.Is(err, units.ErrRange) || b != nil {
			t.Errorf("%s: MarshalText() of an undefined one = %q, %v, want units.ErrRange", name, b, err)
		}
		for _, bad := range []string{"", "no such", strings.ToUpper(tt.words[1])} {
			p, value := tt.read()
			err := p.UnmarshalText([]byte(bad))
			var pe *units.ParseError
			if !errors.As(err, &pe) || !strings.Contains(err.Error(), tt.words[1]) || value() != tt.of(77) {
				t.Errorf("%s: UnmarshalText(%q) = %v, %v", name, bad, value(), err)
			}
		}
	}
	for i, want := range []string{"given", "constant", "look-up", "formula", "choice", "test", "Kind(6)"} {
		if got := working.Kind(i).String(); got != want {
			t.Errorf("Kind(%d).String() = %q, want %q", i, got, want)
		}
	}
}

func TestSourceString(t *testing.T) {
	tests := []struct {
		src  working.Source
		want string
	}{
		{working.Source{}, ""},
		{working.Source{Body: "B", Title: "T", Edition: "E", Place: "P", Provenance: working.Read}, "B, T, E, P"},
		{working.Source{Title: " two\nlines ", Provenance: working.Read}, "two lines"},
		{working.Source{Body: "SI", Provenance: working.Definition}, "SI"},
		{working.Source{Body: "B", Provenance: working.Derived}, "B (derived)"},
		{working.Source{Body: "B", Provenance: working.Memory}, "B (from memory)"},
		{working.Source{Body: "B", Provenance: working.CommonPractice}, "B (common practice)"},
		{working.Source{Body: "B"}, "B (provenance not stated)"},
		{working.Source{Body: "B", Provenance: 9}, "B (Provenance(9))"},
		{working.Source{Provenance: working.CommonPractice}, "common practice"},
		{working.Source{Provenance: working.Memory}, "from memory"},
		{working.Source{Provenance: working.Definition}, "definition"},
		{working.Source{Provenance: working.Read}, "read"},
	}
	for _, tt := range tests {
		if got := tt.src.String(); got != tt.want {
			t.Errorf("%#v.String() = %q, want %q", tt.src, got, tt.want)
		}
	}
}

func TestLookupString(t *testing.T) {
	for _, tt := range []struct {
		l    working.Lookup
		want string
	}{
		{working.Lookup{}, ""},
		{working.Lookup{Key: "10 AWG"}, "for 10 AWG"},
		{working.Lookup{Key: "27 °C", Between: "20 °C and\n30 °C"}, "for 27 °C, between 20 °C and 30 °C"},
		{working.Lookup{Source: handbook, Key: "22 A", Row: "25 A"}, "for 22 A, row 25 A"},
	} {
		if got := tt.l.String(); got != tt.want {
			t.Errorf("%#v.String() = %q, want %q", tt.l, got, tt.want)
		}
	}
}

// TestNumberUnit shows a number in the unit that suits its reader.
func TestNumberUnit(t *testing.T) {
	for _, c := range []struct {
		n    working.Number
		want string
	}{
		{working.Number{Name: "bonds", Value: units.Ratio(2), Unit: "1"}, "bonds 2"},
		{working.Number{Name: "until empty", Value: 25 * units.Hour, Unit: "h"}, "until empty 25 h"},
		{working.Number{Name: "until empty", Value: 48 * units.Hour}, "until empty 2 d"},
		{working.Number{Name: "at most", Value: 18 * units.Inch, Unit: "in"}, "at most 18 in"},
		// a unit that the value does not have is passed over
		{working.Number{Name: "at most", Value: 18 * units.Inch, Unit: "V"}, "at most 457.2 mm"},
		{working.Number{Name: "cells", Value: nil, Unit: "°C"}, "cells not given"},
	} {
		if got := c.n.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
