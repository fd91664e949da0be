package house_test

import (
	"go/ast"
	"go/types"
	"strings"
	"testing"
)

// sheets finds results of calculators, which are the exported types with a
// method Working, without a test that their working can be followed: a
// function TestSheet<Type> that has unitstest.CheckSheet check it.
func sheets(t *tree) (broken []string) {
	for _, f := range t.libraries() {
		for o := range t.exports(f) {
			name, ok := o.(*types.TypeName)
			if !ok {
				continue
			}
			working := t.workingOf(name.Type())
			if working == nil {
				continue
			}
			test := "TestSheet" + name.Name()
			u, ok := f.usageOfTest(test)
			switch {
			case !ok:
				broken = append(broken, t.at(o.Pos(), "%s.%s has working, and no %s checks it", f.name, name.Name(), test))
			case !u.usesFrom(t.importPath("units/unitstest"), "CheckSheet"):
				broken = append(broken, t.at(o.Pos(), "%s does not call unitstest.CheckSheet", test))
			case !u.objects[working]:
				broken = append(broken, t.at(o.Pos(), "%s does not ask for the working of a %s", test, name.Name()))
			}
		}
	}
	return broken
}

// workingOf returns the method Working of a type, nil if it has none.
func (t *tree) workingOf(typ types.Type) types.Object {
	for m := range t.methods(typ) {
		if m.Name() == "Working" {
			return m.Origin()
		}
	}
	return nil
}

// usageOfTest returns the usage of a test function; not ok if there is none
// of that name.
func (f *folder) usageOfTest(name string) (u usage, ok bool) {
	for _, fn := range functions(f.tests()) {
		if fn.Name.Name == name {
			return f.usageOf(fn), true
		}
	}
	return usage{}, false
}

// fuzzed finds parsers and calculators without a fuzz target. A parser is an
// exported function named Parse or Parse<Something>; some target must use it.
// A calculator is an exported function that returns a type with a method
// Working, or a method that returns one and an error; its target is
// Fuzz<Function>, Fuzz<Type><Method>.
func fuzzed(t *tree) (broken []string) {
	for _, f := range t.libraries() {
		all := f.usageOf(f.fuzzTargets()...)
		for o := range t.exports(f) {
			switch o := o.(type) {
			case *types.Func:
				if t.calculates(o) {
					broken = append(broken, t.fuzzTarget(f, o, "Fuzz"+o.Name())...)
				} else if strings.HasPrefix(o.Name(), "Parse") && !all.objects[o] {
					broken = append(broken, t.at(o.Pos(), "no fuzz target uses %s", o.Name()))
				}
			case *types.TypeName:
				for m := range t.methods(o.Type()) {
					if t.calculates(m) && returnsError(m) {
						broken = append(broken, t.fuzzTarget(f, m, "Fuzz"+o.Name()+m.Name())...)
					}
				}
			}
		}
	}
	return broken
}

// fuzzTargets returns the targets among the tests of f: those that have
// testing.F fuzz something.
func (f *folder) fuzzTargets() (list []*ast.FuncDecl) {
	for _, fn := range functions(f.tests()) {
		if strings.HasPrefix(fn.Name.Name, "Fuzz") && f.usageOf(fn).usesFrom("testing", "Fuzz") {
			list = append(list, fn)
		}
	}
	return list
}

// calculates reports whether fn returns a type with a method Working.
func (t *tree) calculates(fn *types.Func) bool {
	for v := range fn.Signature().Results().Variables() {
		typ := v.Type()
		if p, ok := typ.(*types.Pointer); ok {
			typ = p.Elem()
		}
		if _, named := types.Unalias(typ).(*types.Named); named && t.workingOf(typ) != nil {
			return true
		}
	}
	return false
}

func returnsError(fn *types.Func) bool {
	results := fn.Signature().Results()
	return results.Len() > 0 && types.Identical(results.At(results.Len()-1).Type(), types.Universe.Lookup("error").Type())
}

// fuzzTarget returns the violation if f has no such target for fn.
func (t *tree) fuzzTarget(f *folder, fn *types.Func, target string) []string {
	for _, d := range f.fuzzTargets() {
		if d.Name.Name == target {
			if f.usageOf(d).objects[fn.Origin()] {
				return nil
			}
			return []string{t.at(fn.Pos(), "%s does not use %s", target, fn.Name())}
		}
	}
	return []string{t.at(fn.Pos(), "%s has no fuzz target %s", fn.Name(), target)}
}

func TestSheets(t *testing.T) { hold(t, sheets) }
func TestFuzzed(t *testing.T) { hold(t, fuzzed) }

// drop is a calculator for the seeds.
const drop = `-- wire/a.go --
package wire

import "example.com/drawbar/units/working"

type Drop struct{}

func (Drop) Working() *working.Sheet { return nil }

type Run struct{}

func (Run) Drop() (Drop, error) { return Drop{}, nil }
func (Run) Last() Drop          { return Drop{} }

type hidden struct{ Drop }

func VoltageDrop() (Drop, error) { return Drop{}, nil }
func ParseSize(s string) error   { return nil }
func voltageDrop() (d *Drop)     { return nil }
`

func TestSheetsSeeds(t *testing.T) {
	tests := func(body string) string {
		return drop + `-- wire/a_test.go --
package wire_test

import (
	"testing"

	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

var _, _ = unitstest.CheckSheet, wire.VoltageDrop

func check(t *testing.T) { d, _ := wire.VoltageDrop(); unitstest.CheckSheet(t, d.Working()) }

` + body
	}
	proveTyped(t, sheets, []seed{
		{"checked", tests("func TestSheetDrop(t *testing.T) { unitstest.CheckSheet(t, wire.Drop{}.Working()) }\n"), nil},
		{"in a subtest", tests("func TestSheetDrop(t *testing.T) { t.Run(``, func(t *testing.T) { unitstest.CheckSheet(t, (&wire.Drop{}).Working()) }) }\n"), nil},
		{"by a helper", tests("func TestSheetDrop(t *testing.T) { check(t) }\n"), nil},
		{"no test", drop, []string{"wire/a.go:5: wire.Drop has working, and no TestSheetDrop checks it"}},
		{"other name", tests("func TestSheet(t *testing.T) { check(t) }\n"), []string{"no TestSheetDrop checks it"}},
		{"nothing checked", tests("func TestSheetDrop(t *testing.T) { _ = wire.Drop{}.Working() }\n"), []string{"TestSheetDrop does not call unitstest.CheckSheet"}},
		{"other working", tests("func TestSheetDrop(t *testing.T) { unitstest.CheckSheet(t, nil) }\n"), []string{"TestSheetDrop does not ask for the working of a Drop"}},
		{"no library", strings.ReplaceAll(drop, "wire", "tools"), nil},
	})
}

func TestFuzzedSeeds(t *testing.T) {
	tests := func(body string) string {
		return drop + `-- wire/a_test.go --
package wire_test

import (
	"testing"

	"example.com/drawbar/wire"
)

` + body
	}
	const (
		size   = "func FuzzParseSize(f *testing.F) { f.Fuzz(func(t *testing.T, s string) { wire.ParseSize(s) }) }\n"
		volts  = "func FuzzVoltageDrop(f *testing.F) { f.Fuzz(func(t *testing.T, x int) { wire.VoltageDrop() }) }\n"
		method = "func FuzzRunDrop(f *testing.F) { f.Fuzz(func(t *testing.T, x int) { wire.Run{}.Drop() }) }\n"
	)
	proveTyped(t, fuzzed, []seed{
		{"all there", tests(size + volts + method), nil},
		{"by any name", tests(strings.Replace(size, "ParseSize", "Text", 1) + volts + method), nil},
		{"from a table", tests("var all = []func(string) error{wire.ParseSize}\n" +
			strings.Replace(size, "wire.ParseSize", "all[0]", 1) + volts + method), nil},
		{"no parser", tests(volts + method), []string{"wire/a.go:17: no fuzz target uses ParseSize"}},
		{"no function", tests(size + method), []string{"VoltageDrop has no fuzz target FuzzVoltageDrop"}},
		{"no method", tests(size + volts), []string{"Drop has no fuzz target FuzzRunDrop"}},
		{"no fuzzing", tests(size + method + "func FuzzVoltageDrop(f *testing.F) { wire.VoltageDrop() }\n"), []string{"VoltageDrop has no fuzz target FuzzVoltageDrop"}},
		{"other function", tests(size + method + strings.Replace(size, "FuzzParseSize", "FuzzVoltageDrop", 1)), []string{"FuzzVoltageDrop does not use VoltageDrop"}},
	})
}
