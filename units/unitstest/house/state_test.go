package house_test

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
	"testing"
)

// state finds what makes a result depend on more than its input: functions
// that run before main, exported variables that are no sentinel errors, and
// package variables that a function changes.
func state(t *tree) (broken []string) {
	for _, f := range t.sorted() {
		for _, file := range f.files {
			for _, d := range file.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					if d.Recv == nil && d.Name.Name == "init" {
						broken = append(broken, t.at(d.Pos(), "func init"))
					}
				case *ast.GenDecl:
					broken = append(broken, t.exportedVariables(f, d)...)
				}
			}
			ast.Inspect(file, func(n ast.Node) bool {
				for _, target := range assigned(n) {
					if v := variable(f.info, target); v != nil && v.Parent() == f.pkg.Scope() {
						broken = append(broken, t.at(target.Pos(), "package variable %s is changed", v.Name()))
					}
				}
				return true
			})
		}
	}
	return broken
}

// exportedVariables finds exported variables, which every importer can change.
// A sentinel error is what errors.Is asks for.
func (t *tree) exportedVariables(f *folder, d *ast.GenDecl) (broken []string) {
	if d.Tok != token.VAR {
		return nil
	}
	isError := types.Universe.Lookup("error").Type()
	for _, spec := range d.Specs {
		for _, name := range spec.(*ast.ValueSpec).Names {
			if name.IsExported() && !(strings.HasPrefix(name.Name, "Err") && types.Identical(f.info.Defs[name].Type(), isError)) {
				broken = append(broken, t.at(name.Pos(), "exported variable %s; make it a function or a constant", name.Name))
			}
		}
	}
	return broken
}

// assigned returns what a statement changes.
func assigned(n ast.Node) []ast.Expr {
	switch x := n.(type) {
	case *ast.AssignStmt:
		return x.Lhs
	case *ast.IncDecStmt:
		return []ast.Expr{x.X}
	case *ast.RangeStmt:
		if x.Tok == token.ASSIGN {
			return []ast.Expr{x.Key, x.Value} // either may be nil
		}
	}
	return nil
}

// variable returns the variable that an assignment to e changes, or something
// in it; nil if there is none, or if it is behind a pointer of another.
func variable(info *types.Info, e ast.Expr) *types.Var {
	for {
		switch x := e.(type) {
		case *ast.Ident:
			v, _ := info.Uses[x].(*types.Var)
			return v
		case *ast.ParenExpr:
			e = x.X
		case *ast.IndexExpr:
			e = x.X
		case *ast.StarExpr:
			e = x.X
		case *ast.SelectorExpr:
			if v, ok := info.Uses[x.Sel].(*types.Var); ok && !v.IsField() {
				return v // of another package
			}
			e = x.X
		default:
			return nil
		}
	}
}

func TestState(t *testing.T) { hold(t, state) }

func TestStateSeeds(t *testing.T) {
	in := func(name, text string, want ...string) seed {
		return seed{name, "-- wire/a.go --\npackage wire\n\ntype run struct{ current int }\n\n" + text + "\n", want}
	}
	proveTyped(t, state, []seed{
		in("none", "var table = [...]int{1, 2}\nvar ErrSize error\nconst Ten = 10\n"+
			"func f() (n int) { table := table; table[0] = 1; n = 2; n++; for n = range table { }; return n }\n"+
			"func (run) init() {}\nfunc g(r *run) { r.current = 1 }"),
		in("init", "func init() {}", "wire/a.go:5: func init"),
		in("exported", "var Table = []int{1}", "wire/a.go:5: exported variable Table"),
		in("exported in a group", "var (\n\ta int\n\tB, C int\n)", "exported variable B", "exported variable C"),
		in("exported error called otherwise", "var Nothing error", "exported variable Nothing"),
		in("exported, called like an error", "var ErrSize int", "exported variable ErrSize"),
		in("assigned", "var n int\nfunc f() { n = 1 }", "wire/a.go:6: package variable n is changed"),
		in("one of two", "var n int\nfunc f() (m int) { m, n = 1, 2; return m }", "package variable n is changed"),
		in("counted", "var n int\nfunc f() { n++ }", "package variable n is changed"),
		in("added", "var n int\nfunc f() { n += 2 }", "package variable n is changed"),
		in("element", "var n []int\nfunc f() { n[0] = 1 }", "package variable n is changed"),
		in("entry", "var n = map[int]int{}\nfunc f() { (n)[0]++ }", "package variable n is changed"),
		in("field", "var n run\nfunc f() { n.current = 1 }", "package variable n is changed"),
		in("behind a pointer", "var n = &run{}\nfunc f() { (*n).current = 1 }", "package variable n is changed"),
		in("by a range", "var n int\nfunc f() { for n = range 3 { } }", "package variable n is changed"),
		in("by a method", "var n run\nfunc (r *run) set() { n = *r }", "package variable n is changed"),
		{"tests may", "-- wire/a_test.go --\npackage wire\nvar N int\nfunc init() { N = 1 }\n", nil},
	})
}
