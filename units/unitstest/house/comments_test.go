package house_test

import (
	"go/ast"
	"go/token"
	"slices"
	"strings"
	"testing"
)

// comments finds exported identifiers without a comment that says what they
// are, and packages without one.
func comments(t *tree) (broken []string) {
	for _, f := range t.sorted() {
		if len(f.files) == 0 {
			continue
		}
		c := commentChecker{tree: t, broken: &broken}
		c.packageComment(f)
		for _, file := range f.files {
			for _, d := range file.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					c.function(d)
				case *ast.GenDecl:
					c.declaration(d)
				}
			}
		}
	}
	return broken
}

type commentChecker struct {
	tree   *tree
	broken *[]string
}

func (c commentChecker) report(pos token.Pos, format string, args ...any) {
	*c.broken = append(*c.broken, c.tree.at(pos, format, args...))
}

// packageComment wants one file of f to say what the package is; a command
// may begin as it likes.
func (c commentChecker) packageComment(f *folder) {
	i := slices.IndexFunc(f.files, func(file *ast.File) bool { return file.Doc.Text() != "" })
	switch {
	case i < 0:
		c.report(f.files[0].Package, "package %s has no package comment", f.name)
	case f.name != "main" && !strings.HasPrefix(f.files[i].Doc.Text(), "Package "+f.name+" "):
		c.report(f.files[i].Doc.Pos(), "the package comment does not begin with Package %s", f.name)
	}
}

// function wants a comment for an exported function, and for an exported
// method of an exported type.
func (c commentChecker) function(d *ast.FuncDecl) {
	if d.Name.IsExported() && (d.Recv == nil || ast.IsExported(receiver(d))) {
		c.doc(d.Name.Pos(), d.Doc, d.Name)
	}
}

// receiver returns the name of the type that d is a method of.
func receiver(d *ast.FuncDecl) string {
	typ := ast.Unparen(d.Recv.List[0].Type)
	for {
		switch x := typ.(type) {
		case *ast.StarExpr:
			typ = ast.Unparen(x.X)
		case *ast.IndexExpr:
			typ = x.X
		case *ast.IndexListExpr:
			typ = x.X
		case *ast.Ident:
			return x.Name
		default:
			return ""
		}
	}
}

// declaration wants a comment for each exported name of d. The comment of a
// group is for the group: each name in it has its own, above it or behind it.
func (c commentChecker) declaration(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		switch s := spec.(type) {
		case *ast.TypeSpec:
			if s.Name.IsExported() {
				c.doc(s.Name.Pos(), either(s.Doc, d), s.Name)
				c.members(s.Name.Name, s.Type)
			}
		case *ast.ValueSpec:
			if !slices.ContainsFunc(s.Names, (*ast.Ident).IsExported) {
				continue
			}
			if doc := either(s.Doc, d); doc.Text() != "" || s.Comment.Text() == "" {
				c.doc(s.Pos(), doc, s.Names...)
			}
		}
	}
}

// either returns doc, or the comment of d if that declares one thing only.
func either(doc *ast.CommentGroup, d *ast.GenDecl) *ast.CommentGroup {
	if doc == nil && !d.Lparen.IsValid() {
		return d.Doc
	}
	return doc
}

// doc wants doc to be there and to begin with one of the names, after an
// article at most.
func (c commentChecker) doc(pos token.Pos, doc *ast.CommentGroup, names ...*ast.Ident) {
	words := strings.Fields(doc.Text())
	if len(words) == 0 {
		c.report(pos, "%s has no comment", names[0].Name)
		return
	}
	if len(words) > 1 && slices.Contains([]string{"A", "An", "The"}, words[0]) {
		words = words[1:]
	}
	begins := func(n *ast.Ident) bool { return strings.TrimRight(words[0], ",.:") == n.Name }
	if !slices.ContainsFunc(names, begins) {
		c.report(pos, "the comment of %s does not begin with its name", names[0].Name)
	}
}

// members wants a comment, above or behind, for each exported field of a
// struct and each exported method of an interface, as deep as they nest.
func (c commentChecker) members(of string, typ ast.Expr) {
	var list *ast.FieldList
	switch x := typ.(type) {
	case *ast.StructType:
		list = x.Fields
	case *ast.InterfaceType:
		list = x.Methods
	default:
		return
	}
	for _, f := range list.List {
		for _, name := range f.Names {
			if !name.IsExported() {
				continue
			}
			if f.Doc.Text() == "" && f.Comment.Text() == "" {
				c.report(name.Pos(), "%s.%s has no comment", of, name.Name)
			}
			c.members(of+"."+name.Name, f.Type)
		}
	}
}

func TestComments(t *testing.T) { hold(t, comments) }

func TestCommentsSeeds(t *testing.T) {
	const doc = "-- wire/a.go --\n// Package wire is a seed.\npackage wire\n"
	prove(t, comments, []seed{
		{"all there", doc + `
// Parse reads. The rest is free.
func Parse() {}

// A Run is a circuit.
type Run struct {
	Current int // of the load
	// OneWay is a length.
	OneWay int
	hidden int
	error
}

// Loop returns the loop.
func (r *Run) Loop() {}

func (run) Loop() {}

type run struct{ Current int }

// The Namer has a name.
type Namer interface {
	Name() string // in plain words
}

// Sizes of wire.
const (
	Ten = 10 // a gauge
	// Twelve is a gauge.
	Twelve = 12
	eleven = 11
)

// ErrSize, ErrArea: what is wrong.
var ErrSize, ErrArea error

// List of runs is a list.
type List[T any] struct{ first T }

// Add adds.
func (l List[T]) Add() {}

func hidden() {}
`, nil},
		{"tests need none", doc + "-- wire/a_test.go --\npackage wire_test\nfunc Parse() {}\n-- book/a_test.go --\npackage main\n", nil},
		{"command", "-- book/main.go --\n// The book shows chapters.\npackage main\n", nil},
		{"package", "-- wire/a.go --\npackage wire\n", []string{"wire/a.go:1: package wire has no package comment"}},
		{"command without", "-- book/main.go --\npackage main\n", []string{"package main has no package comment"}},
		{"package called otherwise", "-- wire/a.go --\n// This package is a seed.\npackage wire\n", []string{"does not begin with Package wire"}},
		{"function", doc + "func Parse() {}\n", []string{"wire/a.go:3: Parse has no comment"}},
		{"comment set off", doc + "// Parse reads.\n\nfunc Parse() {}\n", []string{"Parse has no comment"}},
		{"directive", doc + "//go:noinline\nfunc Parse() {}\n", []string{"Parse has no comment"}},
		{"other name", doc + "// This reads.\nfunc Parse() {}\n", []string{"the comment of Parse does not begin with its name"}},
		{"other case", doc + "// parse reads.\nfunc Parse() {}\n", []string{"the comment of Parse does not begin"}},
		{"longer name", doc + "// ParseAll reads.\nfunc Parse() {}\n", []string{"the comment of Parse does not begin"}},
		{"standard method", doc + "// Run is a seed.\ntype Run int\nfunc (Run) String() string { return \"\" }\n", []string{"String has no comment"}},
		{"method of a pointer", doc + "// Run is a seed.\ntype Run int\nfunc (*Run) Set() {}\n", []string{"Set has no comment"}},
		{"method of a generic", doc + "// Run is a seed.\ntype Run[T any] int\nfunc (*Run[T]) Set() {}\n", []string{"Set has no comment"}},
		{"method of two parameters", doc + "// Run is a seed.\ntype Run[T, U any] int\nfunc (Run[T, U]) Set() {}\n", []string{"Set has no comment"}},
		{"type", doc + "type Run int\n", []string{"Run has no comment"}},
		{"type in a group", doc + "// Run is of a group.\ntype (\n\tRun int\n)\n", []string{"Run has no comment"}},
		{"field", doc + "// Run is a seed.\ntype Run struct {\n\tCurrent int\n}\n", []string{"wire/a.go:5: Run.Current has no comment"}},
		{"field after one with", doc + "// Run is a seed.\ntype Run struct {\n\t// Current is one.\n\tCurrent int\n\tSource int\n}\n", []string{"Run.Source has no comment"}},
		{"field of a field", doc + "// Run is a seed.\ntype Run struct {\n\t// In is nested.\n\tIn struct{ Deep int }\n}\n", []string{"Run.In.Deep has no comment"}},
		{"method of an interface", doc + "// Namer is a seed.\ntype Namer interface{ Name() string }\n", []string{"Namer.Name has no comment"}},
		{"constant", doc + "const Ten = 10\n", []string{"Ten has no comment"}},
		{"constant of a group", doc + "// Sizes of wire.\nconst (\n\tTen = 10\n)\n", []string{"Ten has no comment"}},
		{"constant called otherwise", doc + "// A gauge.\nconst Ten = 10\n", []string{"the comment of Ten does not begin"}},
		{"variable", doc + "var Ten = 10\n", []string{"Ten has no comment"}},
	})
}
