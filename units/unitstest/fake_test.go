package unitstest_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A fake records what a helper reports. It embeds the real TB because that
// cannot be implemented otherwise.
type fake struct {
	testing.TB
	failures []string
	logs     []string
}

func (*fake) Helper() {}

func (f *fake) Logf(format string, args ...any) {
	f.logs = append(f.logs, fmt.Sprintf(format, args...))
}

func (f *fake) Errorf(format string, args ...any) {
	f.failures = append(f.failures, fmt.Sprintf(format, args...))
}

func (f *fake) Fatalf(format string, args ...any) {
	f.Errorf(format, args...)
	panic(ended{})
}

func (f *fake) Fatal(args ...any) { f.Fatalf("%s", fmt.Sprint(args...)) }

// ended is what a fake that ends its test panics with.
type ended struct{}

// record runs f with a fake and returns what that recorded.
func record(t *testing.T, f func(testing.TB)) (r *fake) {
	r = &fake{TB: t}
	defer func() {
		switch e := recover().(type) {
		case nil, ended:
		default:
			panic(e)
		}
	}()
	f(r)
	return r
}

// expect demands one failure that contains want, or none if want is empty.
func (f *fake) expect(t *testing.T, want string) {
	t.Helper()
	switch {
	case want == "" && len(f.failures) > 0:
		t.Errorf("failed: %s", strings.Join(f.failures, "\n"))
	case want != "" && (len(f.failures) != 1 || !strings.Contains(f.failures[0], want)):
		t.Errorf("failures %q, want one with %q", f.failures, want)
	}
}

// repository makes a repository of the files in a folder of its own, and
// makes a folder inside it the working directory.
func repository(t *testing.T, files map[string]string) (root string) {
	t.Helper()
	root = t.TempDir()
	write := func(name, text string) {
		file := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("go.mod", "module example.com/invented\n")
	write("inner/deep/keep", "")
	for name, text := range files {
		write(name, text)
	}
	t.Chdir(filepath.Join(root, "inner", "deep"))
	return root
}
