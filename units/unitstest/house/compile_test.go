package house_test

import (
	"fmt"
	"slices"
	"testing"
)

// compiles finds what does not compile: the other rules would not see all of
// such a package.
func compiles(t *tree) (broken []string) {
	t.checkAll()
	for _, f := range t.sorted() {
		for _, err := range f.errors {
			broken = append(broken, fmt.Sprintf("%s: %v", f.path, err))
		}
	}
	return broken
}

func TestCompiles(t *testing.T) { hold(t, compiles) }

func TestCompilesSeeds(t *testing.T) {
	prove(t, compiles, []seed{
		{"right", "-- wire/a.go --\npackage wire\nconst a = 1\n", nil},
		{"code", "-- wire/a.go --\npackage wire\nconst a int = `1`\n", []string{"wire: wire/a.go:2:15: cannot use"}},
		{"test inside", "-- wire/a_test.go --\npackage wire\nconst a int = `1`\n", []string{"wire/a_test.go:2:15"}},
		{"test outside", "-- wire/a_test.go --\npackage wire_test\nconst a int = `1`\n", []string{"wire/a_test.go:2:15"}},
		{"unknown import", "-- wire/a.go --\npackage wire\nimport _ \"example.org/none\"\n", []string{"could not import example.org/none"}},
		{"import cycle", "-- wire/a.go --\npackage wire\nimport _ \"example.com/drawbar/solar\"\n" +
			"-- solar/a.go --\npackage solar\nimport _ \"example.com/drawbar/wire\"\n", []string{"import cycle through example.com/drawbar/solar"}},
		{"tests see what tests inside export", "-- wire/a.go --\npackage wire\nfunc a() {}\n-- wire/export_test.go --\npackage wire\nvar A = a\n" +
			"-- wire/a_test.go --\npackage wire_test\nimport \"example.com/drawbar/wire\"\nvar _ = wire.A\n", nil},
	})
}

// Files that the go command passes over, or builds elsewhere, are text only.
func TestTree(t *testing.T) {
	read := seed{files: "-- wire/a.go --\npackage wire\n-- wire/a_test.go --\npackage wire_test\n-- wire/export_test.go --\npackage wire\n" +
		"-- wire/other.go --\n//go:build none_such\n\npackage wire\n-- wire/a_plan9.go --\npackage wire\n-- wire/_old.go --\npackage wire\n" +
		"-- wire/testdata/b.go --\npackage b\n-- .hidden/c.go --\npackage c\n-- _old/d.go --\npackage d\n-- .git/config --\n" +
		"-- wire/data.txt --\n"}.tree(t)
	var folders []string
	for _, f := range read.sorted() {
		folders = append(folders, f.path)
	}
	if !slices.Equal(folders, []string{"wire"}) {
		t.Errorf("folders %q, want wire alone", folders)
	}
	wire := read.folders["wire"]
	if len(wire.files) != 1 || len(wire.inner) != 1 || len(wire.outer) != 1 || wire.name != "wire" {
		t.Errorf("%s has %d files and %d + %d tests, want one of each", wire.name, len(wire.files), len(wire.inner), len(wire.outer))
	}
	if n := len(read.texts); n != 10 {
		t.Errorf("%d texts, want all but the one of .git", n)
	}
}
