package house_test

import (
	"fmt"
	"go/constant"
	"go/types"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units/unitstest"
)

// apiFolder is where the API of each library package is recorded.
const apiFolder = "testdata/api/"

// api returns what f exports, an identifier a line, sorted: its kind, its
// name, and all that a program that uses it can depend on.
func (t *tree) api(f *folder) []string {
	w := apiWriter{pkg: f.pkg}
	for o := range t.exports(f) {
		switch o := o.(type) {
		case *types.Const:
			w.line("const %s %s = %s", o.Name(), w.of(o.Type()), exact(o.Val()))
		case *types.Var:
			w.line("var %s %s", o.Name(), w.of(o.Type()))
		case *types.Func:
			w.line("func %s%s", o.Name(), w.signature(o))
		case *types.TypeName:
			w.declaration(t, o)
		}
	}
	slices.Sort(w.lines)
	return w.lines
}

type apiWriter struct {
	pkg   *types.Package
	lines []string
}

func (w *apiWriter) line(format string, args ...any) {
	w.lines = append(w.lines, fmt.Sprintf(format, args...))
}

// exact returns a constant with all digits that a float64 has.
func exact(v constant.Value) string {
	if v.Kind() == constant.Float {
		x, _ := constant.Float64Val(v)
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return v.ExactString()
}

func (w *apiWriter) of(t types.Type) string {
	return types.TypeString(t, func(p *types.Package) string {
		if p == w.pkg {
			return ""
		}
		return p.Name()
	})
}

func (w *apiWriter) signature(f *types.Func) string {
	return strings.TrimPrefix(w.of(f.Type()), "func")
}

// declaration writes a type, its exported fields and its methods. Losing
// comparability breaks programs, so a struct says whether it has it.
func (w *apiWriter) declaration(t *tree, o *types.TypeName) {
	if alias, ok := o.Type().(*types.Alias); ok {
		w.line("type %s = %s", o.Name(), w.of(alias.Rhs()))
		return
	}
	named := o.Type().(*types.Named)
	name := o.Name()
	if n := named.TypeParams().Len(); n > 0 {
		var list []string
		for p := range named.TypeParams().TypeParams() {
			list = append(list, p.Obj().Name()+" "+w.of(p.Constraint()))
		}
		name += "[" + strings.Join(list, ", ") + "]"
	}
	what := w.of(named.Underlying())
	if u, ok := named.Underlying().(*types.Struct); ok {
		what = "struct"
		if types.Comparable(named) {
			what = "comparable struct"
		}
		for field := range u.Fields() {
			if field.Exported() {
				w.line("field %s.%s %s", o.Name(), field.Name(), w.of(field.Type()))
			}
		}
	}
	w.line("type %s %s", name, what)
	for m := range t.methods(named) {
		receiver := m.Signature().Recv().Type()
		star := ""
		if _, ok := receiver.(*types.Pointer); ok {
			star = "*"
		}
		w.line("method (%s%s) %s%s", star, o.Name(), m.Name(), w.signature(m))
	}
}

// The API of every library package is what testdata/api says.
func TestAPI(t *testing.T) {
	own := ours(t)
	for _, f := range own.libraries() {
		if len(f.errors) > 0 {
			t.Errorf("%s does not compile, so its API is not known", f.path)
			continue
		}
		text := strings.Join(own.api(f), "\n") + "\n"
		unitstest.Golden(t, "api/"+f.path+".txt", []byte(text))
	}
	hold(t, apiFiles)
}

// apiFiles finds recorded APIs of packages that are no more.
func apiFiles(t *tree) (broken []string) {
	for name := range t.texts {
		if rest, ok := strings.CutPrefix(name, apiFolder); ok {
			dir := strings.TrimSuffix(rest, ".txt")
			if t.folders[dir] == nil || !slices.Contains(library, dir) {
				broken = append(broken, name+": there is no such library package; delete the file")
			}
		}
	}
	slices.Sort(broken)
	return broken
}

func TestAPISeeds(t *testing.T) {
	prove(t, apiFiles, []seed{
		{"recorded", "-- wire/a.go --\npackage wire\n-- testdata/api/wire.txt --\n", nil},
		{"package gone", "-- testdata/api/units/old.txt --\n", []string{"testdata/api/units/old.txt: there is no"}},
		{"no library", "-- book/a.go --\npackage main\n-- testdata/api/book.txt --\n", []string{"testdata/api/book.txt: there is no"}},
	})
}

// Each line of the source that is exported changes the text.
func TestAPIText(t *testing.T) {
	const source = `-- wire/a.go --
package wire

import (
	"fmt"

	"example.com/drawbar/units"
)

const (
	Factor        = 1.5
	Limit units.Voltage = 12
	Third         = 1.0 / 3
	Name          = "wire"
	private       = 1
)

var ErrSize error

type Size struct {
	Gauge int
	area  units.Area
	base
}

type base struct{}

func (base) Promoted()     {}
func (s Size) Area() units.Area { return s.area }
func (s *Size) Grow()      {}
func (s Size) private()    {}

type Table struct{ Rows []Size }

type List[T fmt.Stringer] []T

type Namer interface{ Name() string; private() }

type Gauge = Size

type Kind uint8

func Parse[Q units.Quantity](s string) (Q, error) { return 0, nil }
func hidden()                                     {}
-- wire/export_test.go --
package wire

var ForTests = hidden
type TestType struct{}
func (Size) ForTests() {}
`
	want := []string{
		"const Factor untyped float = 1.5",
		"const Limit units.Voltage = 12",
		`const Name untyped string = "wire"`,
		"const Third untyped float = 0.3333333333333333",
		"field Size.Gauge int",
		"field Table.Rows []Size",
		"func Parse[Q units.Quantity](s string) (Q, error)",
		"method (*Size) Grow()",
		"method (Namer) Name() string",
		"method (Size) Area() units.Area",
		"method (Size) Promoted()",
		"type Gauge = Size",
		"type Kind uint8",
		"type List[T fmt.Stringer] []T",
		"type Namer interface{Name() string; private()}",
		"type Size comparable struct",
		"type Table struct",
		"var ErrSize error",
	}
	seeded := seed{files: source}.tree(t)
	seeded.checkAll()
	if diff := cmp.Diff(want, seeded.api(seeded.folders["wire"])); diff != "" {
		t.Errorf("the API differs (- want):\n%s", diff)
	}
}
