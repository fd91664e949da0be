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
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, weave.Wrap(tt.in, tt.width)); diff != "" {
			t.Errorf("wrap(%q, %d): %s", tt.in, tt.width, diff)
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
