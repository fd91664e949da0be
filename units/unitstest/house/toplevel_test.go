package house_test

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
)

// What the top level holds, and nothing else but files and folders whose name
// begins with a dot.
var (
	topFolders  = []string{"units", "loads", "battery", "wire", "solar", "inverter", "examples", "book", "testdata"}
	topFiles    = []string{"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE"}
	topRequired = []string{"units", "go.mod", "README.md", "DEVELOPERS.md", "LICENSE"}
)

// topLevel finds what does not belong at the top, and what is missing there.
func topLevel(t *tree) (broken []string) {
	entries, err := fs.ReadDir(t.fsys, ".")
	if err != nil {
		return []string{err.Error()}
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
		switch {
		case strings.HasPrefix(e.Name(), "."):
		case e.IsDir() && !slices.Contains(topFolders, e.Name()):
			broken = append(broken, e.Name()+": no folder of the top level")
		case !e.IsDir() && !slices.Contains(topFiles, e.Name()):
			broken = append(broken, e.Name()+": no file of the top level")
		}
	}
	for _, name := range topRequired {
		if !slices.Contains(names, name) {
			broken = append(broken, name+": missing from the top level")
		}
	}
	return broken
}

func TestTopLevel(t *testing.T) { hold(t, topLevel) }

func TestTopLevelSeeds(t *testing.T) {
	const right = "-- go.mod --\n-- LICENSE --\n-- README.md --\n-- DEVELOPERS.md --\n-- units/a.txt --\n"
	prove(t, topLevel, []seed{
		{"right", right + "-- solar/a.txt --\n-- .ci/run --\n-- .gitignore --\n", nil},
		{"folder", right + "-- tools/a.txt --\n", []string{"tools: no folder"}},
		{"file", right + "-- NOTES.md --\n", []string{"NOTES.md: no file"}},
		{"file named as a folder", right + "-- wire --\n", []string{"wire: no file"}},
		{"folder named as a file", right + "-- go.sum/a.txt --\n", []string{"go.sum: no folder"}},
		{"missing", strings.Replace(right, "-- LICENSE --\n", "", 1), []string{"LICENSE: missing"}},
	})
}
