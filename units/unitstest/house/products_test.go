package house_test

import (
	"go/ast"
	"go/token"
	"go/types"
	"testing"
)

// isQuantity reports whether a type is a quantity of package units: it has
// that package's own method kind and is a float64. A type parameter that
// stands for quantities is one too.
func (t *tree) isQuantity(typ types.Type) bool {
	switch x := types.Unalias(typ).(type) {
	case *types.TypeParam:
	case *types.Named:
		if b, ok := x.Underlying().(*types.Basic); !ok || b.Kind() != types.Float64 {
			return false
		}
	default:
		return false
	}
	m, _, _ := types.LookupFieldOrMethod(typ, false, types.NewPackage(t.importPath("units"), "units"), "kind")
	return m != nil
}

// products finds products and quotients of two numbers of one quantity, which
// Go takes for that quantity: the product of two voltages is no voltage. A
// constant is let pass, for a number is written 12.8 * units.Volt; so is a
// Ratio; and so is package units, which makes the quantities.
func products(t *tree) (broken []string) {
	for _, f := range t.sorted() {
		if f.path == "units" {
			continue
		}
		for _, file := range f.files {
			ast.Inspect(file, func(n ast.Node) bool {
				switch x := n.(type) {
				case *ast.BinaryExpr:
					if x.Op == token.MUL || x.Op == token.QUO {
						broken = append(broken, t.product(f.info, x.OpPos, x.Op, x.X, x.Y)...)
					}
				case *ast.AssignStmt:
					if x.Tok == token.MUL_ASSIGN || x.Tok == token.QUO_ASSIGN {
						broken = append(broken, t.product(f.info, x.TokPos, x.Tok, x.Lhs[0], x.Rhs[0])...)
					}
				}
				return true
			})
		}
	}
	return broken
}

// product returns the violation of one operation, if it is one.
func (t *tree) product(info *types.Info, pos token.Pos, op token.Token, x, y ast.Expr) []string {
	a, b := info.Types[x], info.Types[y]
	switch {
	case a.Value != nil || b.Value != nil:
		return nil
	case !t.isQuantity(a.Type) || !types.Identical(a.Type, b.Type):
		return nil
	}
	if named, ok := a.Type.(*types.Named); ok && named.Obj().Name() == "Ratio" {
		return nil
	}
	return []string{t.at(pos, "%s of two %s, which is none; use a method, RatioOf or float64", op, nameOf(a.Type))}
}

func TestProducts(t *testing.T) { hold(t, products) }

func TestProductsSeeds(t *testing.T) {
	seeded := func(name, body string, want ...string) seed {
		return seed{name, `-- wire/a.go --
package wire

import "example.com/drawbar/units"

type foreign float64

func (foreign) kind() int { return 0 }

func f[Q units.Quantity](v, w units.Voltage, i units.Current, r, s units.Ratio, x, y float64, m, n foreign, p, q Q) any {
	` + body + "\n}\n", want}
	}
	proveTyped(t, products, []seed{
		seeded("sum", "return v + w - v"),
		seeded("constants", "return 2 * v / 3 + 12.8 * units.Volt - w * units.Volt"),
		seeded("methods", "return units.RatioOf(v, w)"),
		seeded("ratios", "r *= s; return r * s / r"),
		seeded("floats", "return x * y + float64(v) / float64(w)"),
		seeded("no quantity", "return m * n"),
		seeded("scaled in place", "v *= 2; v /= 2; return v"),
		seeded("product", "return v * w", "wire/a.go:10: * of two units.Voltage, which is none"),
		seeded("quotient", "return v / w", "/ of two units.Voltage"),
		seeded("square", "return i * i", "* of two units.Current"),
		seeded("deep", "return func() float64 { return float64((v + w) * (v - w)) }()", "* of two units.Voltage"),
		seeded("in place", "v *= w; return v", "*= of two units.Voltage"),
		seeded("quotient in place", "v /= w; return v", "/= of two units.Voltage"),
		seeded("converted", "return units.Voltage(i) * v", "* of two units.Voltage"),
		seeded("generic", "return p * q", "* of two Q"),
		seeded("generic, in place", "p /= q; return p", "/= of two Q"),
		{"package units", "-- units/a.go --\npackage units\ntype kind int\ntype Voltage float64\nfunc (Voltage) kind() *kind { return nil }\nfunc f(v, w Voltage) Voltage { return v * w }\n", nil},
		{"tests may", "-- wire/a_test.go --\npackage wire\nimport \"example.com/drawbar/units\"\nfunc f(v, w units.Voltage) any { return v * w }\n", nil},
	})
}
