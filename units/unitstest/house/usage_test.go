package house_test

import (
	"go/ast"
	"go/types"
)

// A usage is what a test function uses, by itself and through what its test
// files declare: the functions that it calls, the tables that it reads.
type usage struct {
	objects map[types.Object]bool
	types   map[*types.TypeName]bool // named, or the type of some expression
}

// usageOf returns the usage of test functions of f.
func (f *folder) usageOf(fns ...*ast.FuncDecl) usage {
	declared := f.testDeclarations()
	u := usage{objects: map[types.Object]bool{}, types: map[*types.TypeName]bool{}}
	var visit func(o types.Object)
	visit = func(o types.Object) {
		d, ok := declared[o]
		if !ok || u.objects[o] {
			return
		}
		u.objects[o] = true
		ast.Inspect(d.node, func(n ast.Node) bool {
			e, ok := n.(ast.Expr)
			if !ok {
				return true
			}
			u.addType(d.info.TypeOf(e))
			if id, ok := e.(*ast.Ident); ok && d.info.Uses[id] != nil {
				used := origin(d.info.Uses[id])
				visit(used)
				u.objects[used] = true
			}
			return true
		})
	}
	for _, fn := range fns {
		for _, info := range []*types.Info{f.info, f.outerInfo} {
			visit(info.Defs[fn.Name])
		}
	}
	return u
}

// A declaration is the code behind a name.
type declaration struct {
	node ast.Node
	info *types.Info
}

// testDeclarations returns the functions and the variables that the tests of f
// declare at package level.
func (f *folder) testDeclarations() map[types.Object]declaration {
	declared := map[types.Object]declaration{}
	for _, file := range f.tests() {
		info := f.infoOf(file)
		for _, d := range file.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				declared[info.Defs[d.Name]] = declaration{d, info}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					if v, ok := spec.(*ast.ValueSpec); ok {
						for _, name := range v.Names {
							declared[info.Defs[name]] = declaration{v, info}
						}
					}
				}
			}
		}
	}
	return declared
}

// origin returns the generic function that o is an instance of, or o.
func origin(o types.Object) types.Object {
	if f, ok := o.(*types.Func); ok {
		return f.Origin()
	}
	return o
}

// addType adds the named types that a value of type typ shows.
func (u usage) addType(typ types.Type) {
	switch x := types.Unalias(typ).(type) {
	case *types.Named:
		u.types[x.Origin().Obj()] = true
		for arg := range x.TypeArgs().Types() {
			u.addType(arg)
		}
	case *types.Pointer:
		u.addType(x.Elem())
	case *types.Slice:
		u.addType(x.Elem())
	case *types.Array:
		u.addType(x.Elem())
	case *types.Map:
		u.addType(x.Key())
		u.addType(x.Elem())
	case *types.Tuple:
		for v := range x.Variables() {
			u.addType(v.Type())
		}
	}
}

// usesFrom reports whether something of that name in the package at an import
// path is used.
func (u usage) usesFrom(importPath, name string) bool {
	for o := range u.objects {
		if o.Name() == name && o.Pkg() != nil && o.Pkg().Path() == importPath {
			return true
		}
	}
	return false
}
