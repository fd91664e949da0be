package house_test

import (
	"go/ast"
	"go/types"
	"iter"
	"slices"
)

// library are the packages that other modules import.
var library = []string{"units", "units/working", "loads", "battery", "wire", "solar", "inverter", "examples/plan"}

// libraries returns the library packages that the tree has.
func (t *tree) libraries() (list []*folder) {
	for _, f := range t.sorted() {
		if slices.Contains(library, f.path) {
			list = append(list, f)
		}
	}
	return list
}

// exports yields what f exports, by name, without what its tests declare.
func (t *tree) exports(f *folder) iter.Seq[types.Object] {
	return func(yield func(types.Object) bool) {
		scope := f.pkg.Scope()
		for _, name := range scope.Names() {
			if o := scope.Lookup(name); o.Exported() && !t.isTest(o.Pos()) && !yield(o) {
				return
			}
		}
	}
}

// methods yields the exported methods of a type and of pointers to it, those
// of embedded fields too, without what tests declare.
func (t *tree) methods(typ types.Type) iter.Seq[*types.Func] {
	return func(yield func(*types.Func) bool) {
		if _, ok := typ.Underlying().(*types.Interface); !ok {
			typ = types.NewPointer(typ)
		}
		set := types.NewMethodSet(typ)
		for i := range set.Len() {
			m := set.At(i).Obj().(*types.Func)
			if m.Exported() && !t.isTest(m.Pos()) && !yield(m) {
				return
			}
		}
	}
}

// functions yields the functions, not methods, that files declare.
func functions(files []*ast.File) iter.Seq2[*ast.File, *ast.FuncDecl] {
	return func(yield func(*ast.File, *ast.FuncDecl) bool) {
		for _, file := range files {
			for _, d := range file.Decls {
				if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && fn.Body != nil && !yield(file, fn) {
					return
				}
			}
		}
	}
}
