package house_test

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/build"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// A tree is a module: its files as text, its Go files parsed, and its packages
// checked once somebody asks.
type tree struct {
	fsys    fs.FS
	module  string // such as example.com/drawbar
	fset    *token.FileSet
	texts   map[string][]byte  // every file that is text, by path from the root
	folders map[string]*folder // those with Go files, by path; "." is the root
	outside types.Importer     // of packages that the tree does not have
}

// A folder is a package with its tests.
type folder struct {
	path  string
	name  string // of the package
	files []*ast.File
	inner []*ast.File // tests in the package
	outer []*ast.File // tests of package name_test
	// Checked: files and inner together, then outer.
	pkg       *types.Package
	info      *types.Info
	outerInfo *types.Info
	errors    []error
	checking  bool
}

// tests returns all test files of f.
func (f *folder) tests() []*ast.File { return slices.Concat(f.inner, f.outer) }

// readTree reads the module in fsys. A file that this platform does not build
// is text only.
func readTree(fsys fs.FS, module string, fset *token.FileSet) (*tree, error) {
	t := &tree{
		fsys: fsys, module: module, fset: fset,
		texts: map[string][]byte{}, folders: map[string]*folder{},
	}
	err := fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.Name() == ".git" {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if !d.Type().IsRegular() {
			return nil
		}
		text, err := fs.ReadFile(fsys, name)
		if err != nil {
			return err
		}
		if !bytes.ContainsRune(text, 0) {
			t.texts[name] = text
		}
		return t.parse(name, text)
	})
	return t, err
}

// parse adds a Go file to its folder.
func (t *tree) parse(name string, text []byte) error {
	dir := path.Dir(name)
	if path.Ext(name) != ".go" || ignored(name) {
		return nil
	}
	context := build.Default
	context.OpenFile = func(name string) (io.ReadCloser, error) { return t.fsys.Open(filepath.ToSlash(name)) }
	if ok, err := context.MatchFile(dir, path.Base(name)); err != nil || !ok {
		return err
	}
	file, err := parser.ParseFile(t.fset, name, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	f := t.folders[dir]
	if f == nil {
		f = &folder{path: dir}
		t.folders[dir] = f
	}
	outer := strings.HasSuffix(file.Name.Name, "_test")
	f.name = strings.TrimSuffix(file.Name.Name, "_test")
	switch isTest := strings.HasSuffix(name, "_test.go"); {
	case isTest && outer:
		f.outer = append(f.outer, file)
	case isTest:
		f.inner = append(f.inner, file)
	default:
		f.files = append(f.files, file)
	}
	return nil
}

// ignored reports whether the go command passes over the file.
func ignored(name string) bool {
	for part := range strings.SplitSeq(name, "/") {
		if part == "testdata" || part[0] == '.' || part[0] == '_' {
			return true
		}
	}
	return false
}

// sorted returns the folders by path.
func (t *tree) sorted() []*folder {
	var list []*folder
	for _, name := range slices.Sorted(maps.Keys(t.folders)) {
		list = append(list, t.folders[name])
	}
	return list
}

// importPath returns the import path of a folder.
func (t *tree) importPath(dir string) string { return path.Join(t.module, dir) }

// inside returns the folder that an import path names, if it is of the module.
func (t *tree) inside(importPath string) (dir string, ok bool) {
	if importPath == t.module {
		return ".", true
	}
	return strings.CutPrefix(importPath, t.module+"/")
}

// at returns a violation at pos.
func (t *tree) at(pos token.Pos, format string, args ...any) string {
	p := t.fset.Position(pos)
	return fmt.Sprintf("%s:%d: %s", p.Filename, p.Line, fmt.Sprintf(format, args...))
}

// file returns the path of the file that pos is in.
func (t *tree) file(pos token.Pos) string { return t.fset.Position(pos).Filename }

// isTest reports whether pos is in a test file.
func (t *tree) isTest(pos token.Pos) bool { return strings.HasSuffix(t.file(pos), "_test.go") }

// Import implements [types.Importer] for the tree. A package comes with the
// tests inside it, so that tests outside see what those export.
func (t *tree) Import(importPath string) (*types.Package, error) {
	dir, ok := t.inside(importPath)
	f := t.folders[dir]
	if !ok || f == nil {
		return t.outside.Import(importPath)
	}
	if f.checking {
		return nil, fmt.Errorf("import cycle through %s", importPath)
	}
	t.check(f)
	return f.pkg, nil
}

// check checks the package in f, once. Its errors stay in f.
func (t *tree) check(f *folder) {
	if f.pkg != nil {
		return
	}
	f.checking = true
	f.pkg, f.info = t.checkFiles(f, t.importPath(f.path), slices.Concat(f.files, f.inner))
	f.checking = false
}

// checkAll checks every package and its tests, once.
func (t *tree) checkAll() {
	for _, f := range t.sorted() {
		t.check(f)
		if f.outerInfo == nil {
			_, f.outerInfo = t.checkFiles(f, t.importPath(f.path)+"_test", f.outer)
		}
	}
}

func (t *tree) checkFiles(f *folder, importPath string, files []*ast.File) (*types.Package, *types.Info) {
	info := &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{},
	}
	config := types.Config{Importer: t, Error: func(err error) { f.errors = append(f.errors, err) }}
	pkg, _ := config.Check(importPath, t.fset, files, info) // the errors are kept
	return pkg, info
}

// infoOf returns the types in a file of f.
func (f *folder) infoOf(file *ast.File) *types.Info {
	if slices.Contains(f.outer, file) {
		return f.outerInfo
	}
	return f.info
}
