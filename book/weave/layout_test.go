package weave_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/drawbar/book/weave"
	"github.com/google/go-cmp/cmp"
)

func TestWrap(t *testing.T) {
	tests := []struct {
		in    string
		width int
		want  []string
	}{
		{"", 10, []string{""}},
		{"one", 10, []string{"one"}},
		{"one two three", 7, []string{"one two", "three"}},
		{"one  two\tthree", 80, []string{"one two three"}},
		{"one\ntwo", 80, []string{"one", "two"}},
		{"a verylongword b", 5, []string{"a", "verylongword", "b"}},
		{"about 20\u00a0A", 9, []string{"about", "20 A"}},
		{"ΔV Ω °C", 5, []string{"ΔV Ω", "°C"}}, // characters, not bytes
		{"about 20 A", 9, []string{"about", "20 A"}},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, weave.Wrap(tt.in, tt.width)); diff != "" {
			t.Errorf("wrap(%q, %d): %s", tt.in, tt.width, diff)
		}
	}
}

// No line ends between a number and its unit.
func TestWords(t *testing.T) {
	const joint = "\u00a0"
	for in, want := range map[string]string{
		"lose 3 %": "lose|3 %", "3 %, or": "3 %,|or", "(25 ft)": "(25 ft)", "at 75 °C.": "at|75 °C.",
		"*0.5 V*": "*0.5 V*", "is -40 °F; and": "is|-40 °F;|and", "10 AWG": "10 AWG", "4/0 AWG": "4/0 AWG",
		"1/58 Ω·mm²/m": "1/58 Ω·mm²/m", "350 kcmil": "350 kcmil", "6 to 60 V": "6|to|60 V", "6-60 V": "6-60 V",
		"1.5 mm2": "1.5 mm2", "5 ft 3 in": "5 ft|3 in", "20 Ah at": "20 Ah|at", "1e3 W": "1e3 W", "“12 V”": "“12 V”",
		"300 W/m²": "300 W/m²", "1.5 points": "1.5 points", "5 kVA": "5 kVA", "≤ 3 %": "≤|3 %", ".5 hours": ".5 hours",
		"30 MJ/m²": "30 MJ/m²", "2 cfm": "2 cfm", "20 lb": "20 lb", "14.7 psi": "14.7 psi", "60 Hz": "60 Hz",
		// no number, no unit
		"a 5": "a|5", "5 batteries": "5|batteries", "R2 V": "R2|V", "12, A": "12,|A", "the A": "the|A", "20 1": "20|1",
		"5 (V)": "5|(V)", "2nd V": "2nd|V", "5 .": "5|.", "": "", "5": "5",
	} {
		got := strings.ReplaceAll(strings.Join(weave.Words(in), "|"), joint, " ")
		if got != want {
			t.Errorf("words of %q are %s, want %s", in, got, want)
		}
	}
}

func TestGridLines(t *testing.T) {
	tests := []struct {
		name   string
		header []string
		rows   [][]string
		width  int
		want   string
	}{
		{"fits", []string{"a", "long"}, [][]string{{"x", "y"}, {"wide", "z"}}, 80,
			"a     long\n----  ----\nx     y\nwide  z"},
		{"the widest column gives way", []string{"a", "b"}, [][]string{{"1", "one two three four"}}, 14,
			"a  b\n-  -----------\n1  one two\n   three four"},
		{"a quantity is not broken", []string{"a", "b"}, [][]string{{"12345678 A", "the 12 kV line"}}, 15,
			"a           b\n----------  -----\n12345678 A  the\n            12 kV\n            line"},
		{"a word is not broken", []string{"a", "b"}, [][]string{{"12345678", "1234 56789"}}, 10,
			"a         b\n--------  -----\n12345678  1234\n          56789"},
	}
	for _, tt := range tests {
		got := strings.Join(weave.GridLines(tt.header, tt.rows, tt.width), "\n")
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s: %s", tt.name, diff)
		}
	}
}

func TestDedent(t *testing.T) {
	tests := []struct{ in, want string }{
		{"  one  ", "one"},
		{"one\n\t\ttwo\n\t\t\tthree\n", "one\ntwo\n\tthree"},
		{"one\n\n\ttwo  \n", "one\n\ntwo"},
		{"one\ntwo\n\tthree", "one\ntwo\n\tthree"},
		{"one\n\t\n\t\ttwo", "one\n\ntwo"},
	}
	for _, tt := range tests {
		if got := weave.Dedent(tt.in); got != tt.want {
			t.Errorf("dedent(%q) = %q, want %q", tt.in, got, tt.want)
		}
	}
}

func TestProseLines(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"hard break", "one\\\ntwo", "one\ntwo"},
		{"rule", "one\n\n---\n\ntwo", "one\n\n* * *\n\ntwo"},
		{"loose list", "- one\n\n- two", "- one\n\n- two"},
		{"list in a list", "- one\n  - two\n  - three\n- four", "- one\n  - two\n  - three\n- four"},
		{"list that begins at nine", "9. one\n10. two", "9. one\n10. two"},
		{"two paragraphs of an item", "- one\n\n  two", "- one\n\n  two"},
		{"entities and escapes", `&amp;amp; \&amp; &lt; \*`, "&amp; &amp; < *"},
		{"code is as it is", "`&lt; \\*`", "`&lt; \\*`"},
		{"indented code", "    a\n      b", "    a\n      b"},
		{"heading", "### One *two*", "One *two*\n~~~~~~~~~"},
		{"quote of two paragraphs", "> one\n>\n> two", "| one\n|\n| two"},
		{"link into the chapter", "[there](#there)", "there"},
	}
	for _, tt := range tests {
		got := strings.Join(weave.ProseLines(tt.in, 40), "\n")
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s: %s", tt.name, diff)
		}
	}
}

// "escape returns text, which is plain, as Markdown that reads the same."
func FuzzEscape(f *testing.F) {
	for _, s := range []string{"a", "R_20 * b_1 `c` <d> [e](f) ![g](h) &amp; \\ ~i~ | $5 and $6 #", "https://example.com", "é Ω"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if !utf8.ValidString(s) || strings.ContainsFunc(s, func(r rune) bool { return r < ' ' }) {
			return // no text of one line
		}
		words := strings.Join(strings.Fields(s), " ")
		// As it stands in prose, behind a word.
		got := strings.Join(weave.ProseLines("x "+weave.Escape(words), 1<<20), "\n")
		if want := strings.Join(strings.Fields("x "+words), " "); got != want {
			t.Errorf("escape(%q) = %q, which reads %q", words, weave.Escape(words), got)
		}
		level := 1
		if err := weave.CheckProse("x "+weave.Escape(words), &level); err != nil {
			t.Errorf("escape(%q): %v", words, err)
		}
	})
}
