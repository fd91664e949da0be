package house_test

import (
	"bytes"
	"errors"
	"fmt"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"example.com/drawbar/units/unitstest"
)

// A rule returns how a tree breaks it, a line each: where, and what is wrong.
type rule func(*tree) []string

// hold demands that this module keeps the rule.
func hold(t *testing.T, broken rule) {
	t.Helper()
	for _, violation := range broken(ours(t)) {
		t.Error(violation)
	}
}

// own is the tree of this module, loaded once for all tests.
var own struct {
	once sync.Once
	tree *tree
	err  error
}

// ours returns the tree of this module, checked.
func ours(t *testing.T) *tree {
	t.Helper()
	own.once.Do(func() {
		own.err = errors.New("the root was not found") // if Root ends the test
		own.tree, own.err = load(unitstest.Root(t))
	})
	if own.err != nil {
		t.Fatal(own.err)
	}
	return own.tree
}

// load reads and checks the module at root.
func load(root string) (*tree, error) {
	modfile, err := os.ReadFile(root + "/go.mod")
	if err != nil {
		return nil, err
	}
	module := regexp.MustCompile(`(?m)^module (\S+)$`).FindSubmatch(modfile)
	if module == nil {
		return nil, errors.New("go.mod names no module")
	}
	t, err := readTree(os.DirFS(root), string(module[1]), token.NewFileSet())
	if err != nil {
		return nil, err
	}
	if t.outside, err = exported(root, t.fset, t.imports()); err != nil {
		return nil, err
	}
	t.checkAll()
	return t, nil
}

// imports returns the import paths of other modules in the tree.
func (t *tree) imports() (paths []string) {
	for _, f := range t.sorted() {
		for _, file := range slices.Concat(f.files, f.tests()) {
			for _, spec := range file.Imports {
				p, _ := strconv.Unquote(spec.Path.Value) // the parser has read it
				if _, ok := t.inside(p); !ok {
					paths = append(paths, p)
				}
			}
		}
	}
	slices.Sort(paths)
	return slices.Compact(paths)
}

// exported returns an importer of packages outside the module and of what they
// import, from the export data that the go command compiles and keeps.
func exported(root string, fset *token.FileSet, paths []string) (types.Importer, error) {
	list := exec.Command("go", append([]string{"list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}", "--"}, paths...)...)
	list.Dir = root
	list.Stderr = new(bytes.Buffer)
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("%v: %w\n%s", list, err, list.Stderr)
	}
	files := map[string]string{}
	for line := range strings.Lines(string(out)) {
		name, file, _ := strings.Cut(strings.TrimSpace(line), "\t")
		files[name] = file
	}
	return importer.ForCompiler(fset, "gc", func(name string) (io.ReadCloser, error) {
		if files[name] == "" {
			return nil, fmt.Errorf("no export data of %s", name)
		}
		return os.Open(files[name])
	}), nil
}
