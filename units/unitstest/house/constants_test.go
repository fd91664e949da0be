package house_test

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"strings"
	"testing"
)

// constants finds, where people read and copy code, what the compiler lets
// pass: a bare number where a quantity belongs, f(12.8), and a conversion that
// changes the quantity, or makes one of a bare number. It looks at the
// programs, the book and Example functions; zero is nobody's mistake.
func constants(t *tree) (broken []string) {
	for _, f := range t.sorted() {
		if below("examples/...", f.path) || below("book/...", f.path) {
			for _, file := range f.files {
				broken = append(broken, t.constantsIn(f.info, file)...)
			}
		}
		for file, fn := range functions(f.tests()) {
			if strings.HasPrefix(fn.Name.Name, "Example") {
				broken = append(broken, t.constantsIn(f.infoOf(file), fn)...)
			}
		}
	}
	return broken
}

func (t *tree) constantsIn(info *types.Info, root ast.Node) (broken []string) {
	var parents []ast.Node
	ast.Inspect(root, func(n ast.Node) bool {
		if n == nil {
			parents = parents[:len(parents)-1]
			return true
		}
		if e, ok := n.(ast.Expr); ok {
			if t.isBare(info, e) {
				if constant.Sign(info.Types[e].Value) != 0 && !scales(parents[len(parents)-1], e) {
					broken = append(broken, t.at(e.Pos(), "bare number %s as %s; multiply it by a unit",
						types.ExprString(e), nameOf(info.Types[e].Type)))
				}
				return false // the whole is looked at, not its parts
			}
			broken = append(broken, t.conversion(info, e)...)
		}
		parents = append(parents, n)
		return true
	})
	return broken
}

// nameOf returns a type as it is written outside of its package.
func nameOf(typ types.Type) string { return types.TypeString(typ, (*types.Package).Name) }

// isBare reports whether e is a constant quantity without a unit in it: a
// number, or numbers put together.
func (t *tree) isBare(info *types.Info, e ast.Expr) bool {
	if info.Types[e].Value == nil || !t.isQuantity(info.Types[e].Type) {
		return false
	}
	bare := true
	ast.Inspect(e, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok {
			c, isConst := info.Uses[id].(*types.Const)
			bare = bare && !(isConst && t.isQuantity(c.Type()))
		}
		return true
	})
	return bare
}

// scales reports whether the bare number e only scales a quantity in parent:
// 2*x, x/2, x *= 2. In 1/x it does not, nor does a conversion.
func scales(parent ast.Node, e ast.Expr) bool {
	if _, isCall := ast.Unparen(e).(*ast.CallExpr); isCall {
		return false
	}
	switch x := parent.(type) {
	case *ast.BinaryExpr:
		return x.Op == token.MUL || x.Op == token.QUO && x.Y == e
	case *ast.AssignStmt:
		return x.Tok == token.MUL_ASSIGN || x.Tok == token.QUO_ASSIGN
	}
	return false
}

// conversion returns the violation of e, if it is a conversion between two
// quantities, straight or by way of float64.
func (t *tree) conversion(info *types.Info, e ast.Expr) []string {
	call, ok := e.(*ast.CallExpr)
	if !ok || len(call.Args) != 1 || !info.Types[call.Fun].IsType() {
		return nil
	}
	to, arg := info.Types[call.Fun].Type, ast.Unparen(call.Args[0])
	if inner, ok := arg.(*ast.CallExpr); ok && len(inner.Args) == 1 && info.Types[inner.Fun].IsType() {
		if !t.isQuantity(info.Types[inner].Type) {
			arg = inner.Args[0]
		}
	}
	from := info.Types[arg].Type
	if !t.isQuantity(to) || !t.isQuantity(from) || types.Identical(from, to) {
		return nil
	}
	return []string{t.at(e.Pos(), "conversion of %s to %s; use a method that changes dimension", nameOf(from), nameOf(to))}
}

func TestConstants(t *testing.T) { hold(t, constants) }

func TestConstantsSeeds(t *testing.T) {
	const (
		imports = `
import (
	"math"

	"example.com/drawbar/units"
)

type run struct{ Source units.Voltage; Allowed units.Opt[units.Ratio] }

func take(v units.Voltage) bool { return math.Signbit(float64(v)) }
func taken(v ...units.Voltage)  {}

`
		open = "func Example(v, w units.Voltage, i units.Current, x float64) any {\n"
	)
	in := func(name, body string, want ...string) seed {
		return seed{name, "-- examples/fridge/a.go --\npackage main\n" + imports + open + body + "\nreturn nil\n}\n", want}
	}
	where := func(name, file, pkg string, want ...string) seed {
		return seed{name, "-- " + file + " --\npackage " + pkg + "\n" + imports + open + "return take(12.8)\n}\n", want}
	}
	const bare = "multiply it by a unit"
	proveTyped(t, constants, []seed{
		// As it should be.
		in("unit", "take(12.8 * units.Volt); const v2 = 12 * units.Volt; take(v2); take(-v2); take((12.8) * (units.Volt))"),
		in("in a literal", "_ = run{Source: 12.8 * units.Volt, Allowed: units.Some(3 * units.Percent)}"),
		in("zero", "take(0); _ = v > 0; _ = v == 0.0; _ = units.Voltage(0)"),
		in("scaled", "take(2 * v); take(v * -2); take(v / 2); v *= 2; v /= 3; take((1 + 2) * v)"),
		in("no constant", "take(units.Voltage(x)); take(units.Voltage(float64(v)))"),
		in("other numbers", "_ = x * 12.8; _ = units.Celsius(20); _ = len(\"a\") + 3"),
		// Bare numbers.
		in("argument", "take(12.8)", "a.go:15: bare number 12.8 as units.Voltage; "+bare),
		in("rest of arguments", "taken(v, 12)", "bare number 12 as units.Voltage"),
		in("negative", "take(-12.8)", "bare number -12.8 as units.Voltage"),
		in("put together", "take(2 * (6 + 0.4))", "bare number 2 * (6 + 0.4) as units.Voltage"),
		in("field", "_ = run{Source: 12.8}", "bare number 12.8"),
		in("element", "_ = []units.Voltage{12.8}", "bare number 12.8"),
		in("option", "_ = run{Allowed: units.Some[units.Ratio](0.03)}", "bare number 0.03 as units.Ratio"),
		in("variable", "var u units.Voltage = 12.8; take(u)", "bare number 12.8"),
		in("constant", "const u units.Voltage = 12.8; take(u)", "bare number 12.8"),
		in("constant without type", "const u = 12.8; take(u)", "bare number u as units.Voltage"),
		in("constant of a package", "take(math.Pi)", "bare number math.Pi as units.Voltage"),
		in("assignment", "v = 12.8", "bare number 12.8"),
		in("sum", "take(v + 0.5)", "bare number 0.5"),
		in("added in place", "v += 0.5", "bare number 0.5"),
		in("comparison", "_ = v > 12.8", "bare number 12.8"),
		in("switch", "switch v { case 12.8: }", "bare number 12.8"),
		in("inverse", "take(1 / v)", "bare number 1"),
		in("result", "func() units.Voltage { return 12.8 }()", "bare number 12.8"),
		in("deep", "take(2 * (v + 3))", "bare number 3"),
		in("two", "take(12); take(13)", "bare number 12", "bare number 13"),
		// Conversions.
		in("bare number converted", "take(units.Voltage(12.8))", "bare number units.Voltage(12.8)"),
		in("and multiplied", "take(units.Voltage(12.8) * units.Volt)", "bare number units.Voltage(12.8)"),
		in("quantity converted", "take(units.Voltage(i))", "conversion of units.Current to units.Voltage"),
		in("constant quantity converted", "take(units.Voltage(2 * units.Ampere))", "conversion of units.Current to units.Voltage"),
		in("by way of float64", "take(units.Voltage(float64(i)))", "conversion of units.Current to units.Voltage"),
		// Where.
		where("program", "examples/fridge/a.go", "main", bare),
		where("plan", "examples/plan/a.go", "plan", bare),
		where("chapter", "book/drop/a.go", "drop", bare),
		where("Example in the package", "wire/a_test.go", "wire", bare),
		where("Example outside of it", "wire/a_test.go", "wire_test", bare),
		where("library", "wire/a.go", "wire"),
		seed{"other test function", "-- wire/a_test.go --\npackage wire\nimport \"example.com/drawbar/units\"\nfunc f() units.Voltage { return 12.8 }\n", nil},
	})
}
