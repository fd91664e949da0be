package unitstest

import (
	"os"
	"path/filepath"
	"testing"
)

// Root returns the root of the repository: the nearest folder with a go.mod,
// from the working directory up, which for a test is its package's folder.
// Without one the test ends.
func Root(t testing.TB) string {
	t.Helper()
	start, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for dir := start; ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if dir == filepath.Dir(dir) {
			t.Fatalf("no go.mod in %s or above it", start)
		}
	}
}

// testdata returns the file named path, with slashes, in testdata of the
// root. A path that leads out of it ends the test.
func testdata(t testing.TB, path string) string {
	t.Helper()
	if !filepath.IsLocal(filepath.FromSlash(path)) {
		t.Fatalf("%q is not a path inside testdata", path)
	}
	return filepath.Join(Root(t), "testdata", filepath.FromSlash(path))
}
