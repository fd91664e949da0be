package house_test

import (
	"go/ast"
	"go/doc"
	"go/types"
	"strings"
	"testing"
)

// shown finds exported functions and types of library packages that no Example
// of the package shows. An Example counts if its output is checked. It shows
// the functions that it uses, and the types that it names or has a value of,
// by itself and through the functions of its test files that it calls.
//
// Not asked for: methods and constants, which come with their type; interfaces,
// which are shown by what satisfies them; and a function MustX where there is
// X, for it is X to write in literals.
func shown(t *tree) (broken []string) {
	for _, f := range t.libraries() {
		u := f.usageOf(f.examples()...)
		for o := range t.exports(f) {
			ok := true
			switch o := o.(type) {
			case *types.Func:
				x, must := strings.CutPrefix(o.Name(), "Must")
				ok = u.objects[o] || must && mustOf(f.pkg, x)
			case *types.TypeName:
				ok = u.types[o] || u.objects[o] || types.IsInterface(o.Type())
			}
			if !ok {
				broken = append(broken, t.at(o.Pos(), "no Example with output shows %s.%s", f.name, o.Name()))
			}
		}
	}
	return broken
}

// mustOf reports whether x, or Parse and x, is a function of pkg.
func mustOf(pkg *types.Package, x string) bool {
	for _, name := range []string{x, "Parse" + x, "New" + x} {
		if _, ok := pkg.Scope().Lookup(name).(*types.Func); ok {
			return true
		}
	}
	return false
}

// examples returns the Examples of f whose output is checked.
func (f *folder) examples() (list []*ast.FuncDecl) {
	checked := map[string]bool{}
	for _, e := range doc.Examples(f.tests()...) {
		checked["Example"+e.Name] = e.Output != "" || e.EmptyOutput
	}
	for _, fn := range functions(f.tests()) {
		if checked[fn.Name.Name] {
			list = append(list, fn)
		}
	}
	return list
}

func TestShown(t *testing.T) { hold(t, shown) }

func TestShownSeeds(t *testing.T) {
	const source = `-- wire/a.go --
package wire

type Run struct{ Size Size }
type Drop struct{}
type Size int
type Namer interface{ Name() string }
type hidden int
type List[T any] []T

const Ten Size = 10

func (Run) Loop() List[hidden] { return nil }

func VoltageDrop(Run) Drop          { return Drop{} }
func ParseSize(string) (Size, error) { return 0, nil }
func MustSize(string) Size           { return 0 }
func unexported()                    {}
`
	tests := func(body string) string {
		return source + "-- wire/a_test.go --\npackage wire_test\n\nimport (\n\t\"fmt\"\n\n\t\"example.com/drawbar/wire\"\n)\n\n" +
			"var _ = fmt.Sprint(wire.Ten)\n\n" + body
	}
	const (
		drop    = "func ExampleVoltageDrop() {\n\tfmt.Println(wire.VoltageDrop(wire.Run{}))\n\t// Output: {}\n}\n"
		size    = "func ExampleParseSize() {\n\tfmt.Println(wire.ParseSize(``))\n\t// Output: 0 nil\n}\n"
		list    = "func ExampleRun_Loop() {\n\tfmt.Println(wire.Run{}.Loop())\n\t// Output: []\n}\n"
		noDrop  = "a.go:14: no Example with output shows wire.VoltageDrop"
		noType  = "no Example with output shows wire.Drop"
		noRun   = "no Example with output shows wire.Run"
		noSize  = "no Example with output shows wire.Size"
		noParse = "no Example with output shows wire.ParseSize"
		noList  = "no Example with output shows wire.List"
	)
	proveTyped(t, shown, []seed{
		{"all shown", tests(drop + size + list), nil},
		{"together", tests("func Example() {\n\td := wire.VoltageDrop(wire.Run{})\n\ts, _ := wire.ParseSize(``)\n\tl := wire.Run{}.Loop()\n" +
			"\tfmt.Println(d, s, l)\n\t// Output: {} 0 []\n}\n"), nil},
		{"by a helper", tests(drop + size + "func loop() { fmt.Println(wire.Run{}.Loop()) }\nfunc Example_loop() {\n\tloop()\n\t// Output: []\n}\n"), nil},
		{"none", source, []string{noType, noList, noParse, noRun, noSize, noDrop}},
		{"function", tests(size + list), []string{noType, noDrop}},
		{"type", tests(drop + size), []string{noList}},
		{"output not checked", tests(drop + list + strings.Replace(size, "Output:", "Prints", 1)), []string{noParse, noSize}},
		{"output empty", tests(drop + list + "func ExampleParseSize() {\n\twire.ParseSize(``)\n\t// Output:\n}\n"), nil},
		{"no Example but a test", tests(drop + list + strings.Replace(size, "Example", "Test", 1)), []string{noParse, noSize}},
		{"no library", strings.ReplaceAll(source, "wire", "tools"), nil},
	})
}
