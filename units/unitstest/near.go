package unitstest

import (
	"math"
	"reflect"
	"strings"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
)

// Near returns the option that lets [cmp.Equal] and [cmp.Diff] take two
// floats for the same if they differ by at most rel times the larger one:
//
//	|x - y| <= rel · max(|x|, |y|)
//
// It applies to every defined float type, which cmpopts.EquateApprox passes
// by without a word. Zero is near nothing but zero, an infinity nothing but
// itself; a NaN equals a NaN. Two temperatures are near by their kelvins,
// and one that was not given equals only another. A rel that is not above 0
// demands equality.
//
// Structs of this module are compared field by field, unexported fields too,
// so that a result can be compared whole.
func Near(rel float64) cmp.Option {
	floats := cmp.FilterPath(func(p cmp.Path) bool {
		t := p.Last().Type()
		return t != nil && (t.Kind() == reflect.Float64 || t.Kind() == reflect.Float32)
	}, cmp.Comparer(func(x, y any) bool {
		return near(rel, reflect.ValueOf(x).Float(), reflect.ValueOf(y).Float())
	}))
	temperatures := cmp.Comparer(func(x, y units.Temperature) bool {
		return x.IsSet() == y.IsSet() && near(rel, x.Kelvin(), y.Kelvin())
	})
	module := strings.TrimSuffix(reflect.TypeFor[units.Voltage]().PkgPath(), "units")
	ours := cmp.Exporter(func(t reflect.Type) bool { return strings.HasPrefix(t.PkgPath(), module) })
	return cmp.Options{floats, temperatures, ours}
}

func near(rel, x, y float64) bool {
	if x == y || math.IsNaN(x) && math.IsNaN(y) {
		return true
	}
	larger := max(math.Abs(x), math.Abs(y))
	return !math.IsInf(larger, 0) && math.Abs(x-y) <= rel*larger
}
