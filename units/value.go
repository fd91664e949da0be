package units

import (
	"fmt"
	"reflect"
)

// A Value is any [Quantity] or a [Temperature]: what a sheet of working can
// show.
type Value interface {
	fmt.Stringer
	fmt.Formatter
	kind() *kind
}

func (t Temperature) kind() *kind { return &temperatureKind }

// In returns q as a number of unit, such as [Kilowatt]: In(1500*Watt,
// Kilowatt) is 1.5. The quotient is rounded once, so it is no test for
// equality.
func In[Q Quantity](q, unit Q) float64 { return float64(q) / float64(unit) }

// Measure returns v as a number of the unit written symbol, in any spelling
// that is read, and that unit as this package writes it. The unit "1" suits
// a [Ratio]. A unit that v does not have is a [*ParseError]; a v that is nil
// or a pointer, or a Temperature that was not given, is a [*RangeError].
func Measure(v Value, symbol string) (x float64, unit string, err error) {
	t, isTemperature := v.(Temperature)
	number := reflect.ValueOf(v)
	if !isTemperature && number.Kind() != reflect.Float64 {
		return 0, "", &RangeError{Op: "units.Measure", Field: "v", Value: fmt.Sprintf("%T", v), Allowed: anyValue{}}
	}
	k := v.kind()
	u := k.find(symbol)
	if u == nil {
		want := "want one of " + k.accepted()
		if k.bare > 0 {
			want += ", " + itself
		}
		return 0, "", &ParseError{Input: symbol, Want: "a unit of " + k.name, Reason: want}
	}
	if isTemperature {
		if !t.set {
			return 0, "", &RangeError{Op: "units.Measure", Field: k.name, Value: t, Allowed: TemperatureBounds{}}
		}
		switch u.symbol {
		case "°F":
			return t.Fahrenheit(), u.symbol, nil
		case "K":
			return t.Kelvin(), u.symbol, nil
		}
		return t.celsius, u.symbol, nil
	}
	return number.Float() / u.float, u.symbol, nil
}

// anyValue describes what Measure measures.
type anyValue struct{}

func (anyValue) String() string { return "a quantity or a temperature" }
