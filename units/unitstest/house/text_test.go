package house_test

import (
	"bytes"
	"fmt"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// How long a Go file may be, and should be, in lines.
const (
	longest = 600
	aim     = 400
)

// unfinished are the marks of work not done and of tests not run, written so
// that this file has none.
var unfinished = regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME|X` + `XX|HA` + `CK)\b|\.Sk` + `ip(f|Now)?\b`)

// machinePath is a place on somebody's computer.
var machinePath = regexp.MustCompile(`(?:^|[^\w.~-])(/(?:home|Users|root|tmp|work|mnt)/|[A-Z]:\\)`)

// lengths finds Go files that are too long.
func lengths(t *tree) (broken []string) {
	for name, lines := range t.lines() {
		if lines > longest {
			broken = append(broken, fmt.Sprintf("%s: %d lines, want %d at most", name, lines, longest))
		}
	}
	slices.Sort(broken)
	return broken
}

// lines returns how many lines each Go file has.
func (t *tree) lines() map[string]int {
	count := map[string]int{}
	for name, text := range t.texts {
		if path.Ext(name) == ".go" {
			count[name] = bytes.Count(text, []byte("\n"))
		}
	}
	return count
}

// words finds, in every text file, marks of unfinished work and paths of a
// machine.
func words(t *tree) (broken []string) {
	for _, name := range slices.Sorted(maps.Keys(t.texts)) {
		n := 0
		for line := range bytes.Lines(t.texts[name]) {
			n++
			if m := unfinished.Find(line); m != nil {
				broken = append(broken, fmt.Sprintf("%s:%d: %s", name, n, m))
			}
			if m := machinePath.FindSubmatch(line); m != nil {
				broken = append(broken, fmt.Sprintf("%s:%d: path of a machine, %s", name, n, m[1]))
			}
		}
	}
	return broken
}

func TestLengths(t *testing.T) {
	hold(t, lengths)
	lines := ours(t).lines()
	for _, name := range slices.Sorted(maps.Keys(lines)) {
		if lines[name] > aim {
			t.Logf("%s: %d lines; the aim is %d", name, lines[name], aim)
		}
	}
}

func TestWords(t *testing.T) { hold(t, words) }

func TestLengthsSeeds(t *testing.T) {
	file := func(name string, lines int) string {
		return "-- " + name + " --\npackage wire\n" + strings.Repeat("\n", lines-1)
	}
	prove(t, lengths, []seed{
		{"just", file("wire/a.go", 600), nil},
		{"too long", file("wire/a.go", 601), []string{"wire/a.go: 601 lines, want 600 at most"}},
		{"test too long", file("wire/a_test.go", 601), []string{"wire/a_test.go: 601 lines"}},
		{"no Go", file("README.md", 2000), nil},
	})
}

func TestWordsSeeds(t *testing.T) {
	in := func(name, text string, want ...string) seed {
		return seed{name, "-- README.md --\none line\n" + text + "\n", want}
	}
	prove(t, words, []seed{
		in("clean", "to do, fix me, hack; units/working/a.go, http://example.com/home/a, ~/tmp/a, a C: drive, fs.SkipDir"),
		in("to be done", "// TO"+"DO: more", "README.md:2: TO"+"DO"),
		in("to be fixed", "FIX"+"ME", "README.md:2: FIX"+"ME"),
		in("marked", "// X"+"XX", "README.md:2: X"+"XX"),
		in("worked around", "a HA"+"CK.", "README.md:2: HA"+"CK"),
		in("inside of a word", "HA"+"CKSAW, X"+"XXL"),
		in("skipped", "t.Sk"+"ip(1)", "README.md:2: .Sk"+"ip"),
		in("skipped by another name", "tb.Sk"+"ipf(1)", "README.md:2: .Sk"+"ipf"),
		in("skipped now", "b.Sk"+"ipNow()", "README.md:2: .Sk"+"ipNow"),
		in("home", "/home"+"/somebody/a", "README.md:2: path of a machine, /home"+"/"),
		in("temporary", "see `/tmp"+"/a`", "path of a machine, /tmp"+"/"),
		in("other systems", `"C:`+`\a" and /Users`+`/a`, "path of a machine"),
		{"in a test", "-- wire/a_test.go --\npackage wire\n// FIX" + "ME\n", []string{"wire/a_test.go:2"}},
		{"in a script", "-- .ci/run --\ncd /home" + "/a\n", []string{".ci/run:1"}},
		{"in data", "-- testdata/a.csv --\na,X" + "XX\n", []string{"testdata/a.csv:1"}},
		{"no text", "-- a.bin --\n\x00FIX" + "ME\n", nil},
	})
}
