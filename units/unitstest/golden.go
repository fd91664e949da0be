package unitstest

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// updateVariable is the environment variable that makes Golden rewrite.
const updateVariable = "DRAWBAR_UPDATE"

// Golden demands that got is what the file at path holds, byte for byte. The
// path is relative to testdata in the [Root] of the repository, with slashes.
// With DRAWBAR_UPDATE=1 the file is written instead, and the log names it if
// that changed it: read the difference before you commit it. Any other value
// than 1, 0 or none ends the test, for it would look like an update that
// changed nothing.
func Golden(t testing.TB, path string, got []byte) {
	t.Helper()
	file := testdata(t, path)
	want, err := os.ReadFile(file)
	same := err == nil && bytes.Equal(want, got)
	switch update := os.Getenv(updateVariable); update {
	case "1":
		if !same {
			rewrite(t, file, got)
		}
		return
	case "", "0":
	default:
		t.Fatalf("%s=%s; want 1, or nothing", updateVariable, update)
	}
	switch {
	case err != nil:
		t.Errorf("%v; %s=1 writes it", err, updateVariable)
	case !same:
		t.Errorf("testdata/%s differs (- recorded, + now); %s=1 rewrites it:\n%s",
			path, updateVariable, cmp.Diff(string(want), string(got)))
	}
}

func rewrite(t testing.TB, file string, got []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, got, 0o644); err != nil {
		t.Fatal(err)
	}
	t.Logf("wrote %s", file)
}
