package house_test

import (
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// A seed is a small module that breaks a rule, or just does not.
type seed struct {
	name  string
	files string   // "-- path --" before the text of each
	want  []string // what each violation contains, in order
}

// prove demands that the rule sees each seed as it should. What a seed
// imports and does not have is taken from this module. The seeds need not
// compile; see [proveTyped].
func prove(t *testing.T, broken rule, seeds []seed) {
	t.Helper()
	proveEach(t, seeds, func(s seed) []string { return broken(s.tree(t)) })
}

// proveTyped is prove for a rule that asks for types: seeds are checked, and
// must compile.
func proveTyped(t *testing.T, broken rule, seeds []seed) {
	t.Helper()
	proveEach(t, seeds, func(s seed) []string {
		seeded := s.tree(t)
		seeded.checkAll()
		for _, f := range seeded.sorted() {
			for _, err := range f.errors {
				t.Errorf("the seed %q does not compile: %v", s.name, err)
			}
		}
		return broken(seeded)
	})
}

func proveEach(t *testing.T, seeds []seed, violations func(seed) []string) {
	t.Helper()
	for _, s := range seeds {
		t.Run(s.name, func(t *testing.T) {
			t.Helper()
			got := violations(s)
			ok := len(got) == len(s.want)
			for i := range min(len(got), len(s.want)) {
				ok = ok && strings.Contains(got[i], s.want[i])
			}
			if !ok {
				t.Errorf("violations:\n  %s\nwant:\n  %s", strings.Join(got, "\n  "), strings.Join(s.want, "\n  "))
			}
		})
	}
}

// tree returns the seed, not checked.
func (s seed) tree(t *testing.T) *tree {
	t.Helper()
	base := ours(t)
	seeded, err := readTree(s.fs(), base.module, base.fset)
	if err != nil {
		t.Fatal(err)
	}
	seeded.outside = base
	return seeded
}

// marker begins a file of a seed.
var marker = regexp.MustCompile(`(?m)^-- (\S+) --\n`)

// fs returns the files of the seed.
func (s seed) fs() fs.FS {
	files := fstest.MapFS{}
	marks := marker.FindAllStringSubmatchIndex(s.files, -1)
	for i, m := range marks {
		end := len(s.files)
		if i+1 < len(marks) {
			end = marks[i+1][0]
		}
		files[s.files[m[2]:m[3]]] = &fstest.MapFile{Data: []byte(s.files[m[1]:end])}
	}
	return files
}
