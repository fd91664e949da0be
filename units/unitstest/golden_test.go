package unitstest_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/drawbar/units/unitstest"
)

func TestRootIsOurs(t *testing.T) {
	if _, err := os.Stat(filepath.Join(unitstest.Root(t), "units", "unitstest", "root.go")); err != nil {
		t.Error(err)
	}
}

func TestRootIsTheNearest(t *testing.T) {
	want := repository(t, nil)
	if got := unitstest.Root(t); got != want {
		t.Errorf("Root() = %s, want %s", got, want)
	}
}

func TestRootMissing(t *testing.T) {
	outside := t.TempDir()
	for dir := outside; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			t.Logf("temporary folders are inside a module, %s; nothing to see", dir)
			return
		}
	}
	t.Chdir(outside)
	record(t, func(tb testing.TB) { unitstest.Root(tb) }).expect(t, "no go.mod in "+outside)
}

func TestRootWithoutWorkingDirectory(t *testing.T) {
	gone := filepath.Join(t.TempDir(), "gone")
	if err := os.Mkdir(gone, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(gone)
	if err := os.Remove(gone); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PWD", "") // or Getwd believes it
	r := record(t, func(tb testing.TB) { unitstest.Root(tb) })
	if len(r.failures) != 1 {
		t.Errorf("failures %q, want one", r.failures)
	}
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name, path, got, update string
		want                    string // failure
		file                    string // what is on the disk after it
	}{
		// Compared.
		{"same", "api/a.txt", "one\ntwo\n", "", "", "one\ntwo\n"},
		{"other line", "api/a.txt", "one\nTWO\n", "", "testdata/api/a.txt differs", "one\ntwo\n"},
		{"no newline at the end", "api/a.txt", "one\ntwo", "", "differs", "one\ntwo\n"},
		{"empty", "api/a.txt", "", "", "differs", "one\ntwo\n"},
		{"missing", "api/b.txt", "one", "", "DRAWBAR_UPDATE=1 writes it", ""},
		{"update off", "api/a.txt", "x", "0", "differs", "one\ntwo\n"},
		// Rewritten.
		{"rewrite", "api/a.txt", "three\n", "1", "", "three\n"},
		{"write the first time", "new/folder/c.txt", "four\n", "1", "", "four\n"},
		// Refused.
		{"update misspelt", "api/a.txt", "x", "yes", "DRAWBAR_UPDATE=yes; want 1", "one\ntwo\n"},
		{"outside", "../a.txt", "x", "1", `"../a.txt" is not a path inside testdata`, ""},
		{"absolute", "/a.txt", "x", "1", "is not a path inside testdata", ""},
		{"no folder can be made", "api/a.txt/b.txt", "x", "1", "not a directory", ""},
		{"no file can be written", "api", "x", "1", "is a directory", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := repository(t, map[string]string{"testdata/api/a.txt": "one\ntwo\n"})
			t.Setenv("DRAWBAR_UPDATE", c.update)
			record(t, func(tb testing.TB) { unitstest.Golden(tb, c.path, []byte(c.got)) }).expect(t, c.want)
			file, _ := os.ReadFile(filepath.Join(root, "testdata", filepath.FromSlash(c.path)))
			if string(file) != c.file {
				t.Errorf("the file holds %q, want %q", file, c.file)
			}
		})
	}
}

// A second update changes nothing, and says nothing.
func TestGoldenNamesWhatItWrote(t *testing.T) {
	repository(t, nil)
	t.Setenv("DRAWBAR_UPDATE", "1")
	update := func(tb testing.TB) { unitstest.Golden(tb, "a.txt", []byte("one\n")) }
	if r := record(t, update); len(r.logs) != 1 || !strings.Contains(r.logs[0], "a.txt") {
		t.Errorf("the first update logs %q", r.logs)
	}
	if r := record(t, update); len(r.logs) != 0 {
		t.Errorf("the second update logs %q", r.logs)
	}
}

// The difference shows what was recorded and what is now.
func TestGoldenShowsTheDifference(t *testing.T) {
	repository(t, map[string]string{"testdata/a.txt": "drop 3.60 V\n"})
	r := record(t, func(tb testing.TB) { unitstest.Golden(tb, "a.txt", []byte("drop 3.61 V\n")) })
	if len(r.failures) != 1 || !strings.Contains(r.failures[0], "3.60") || !strings.Contains(r.failures[0], "3.61") {
		t.Errorf("failures %q", r.failures)
	}
}
