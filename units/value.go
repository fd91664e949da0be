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
// a [Ratio]. A unit that v does not have is a [*ParseError].
func Measure(v Value, symbol string) (x float64, unit string, err error) {
	k := v.kind()
	u := k.find(symbol)
	if u == nil {
		return 0, "", &ParseError{Input: symbol, Want: "a unit of " + k.name,
			Reason: "want one of " + k.accepted()}
	}
	if t, ok := v.(Temperature); ok {
		switch u.symbol {
		case "°F":
			return t.Fahrenheit(), u.symbol, nil
		case "K":
			return t.Kelvin(), u.symbol, nil
		}
		return t.celsius, u.symbol, nil
	}
	return reflect.ValueOf(v).Float() / u.float, u.symbol, nil
}
