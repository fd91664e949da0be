package units

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// A Temperature is a point on the Celsius scale. It keeps the Celsius
// reading, so that 0 °C, 32 °F and the edges of every table are exact. The
// zero value is not 0 °C: it is "not given", and [Temperature.IsSet] tells.
// Two temperatures cannot be added; [Temperature.Sub] gives their difference.
// Values are comparable with ==; for a verdict use [Temperature.Compare].
type Temperature struct {
	celsius float64
	set     bool
}

// absoluteZero is the lowest temperature, exact by definition of the Celsius
// scale (SP 811 table 3, footnote).
const absoluteZero = -273.15

// Celsius returns the temperature of c degrees Celsius. Use it with numbers
// that may be anything; calculators refuse one below absolute zero.
func Celsius(c float64) Temperature { return Temperature{c, true} }

// Fahrenheit returns the temperature of f degrees Fahrenheit: (f-32)·5/9 °C,
// exact for every multiple of 9 away from 32 and rounded once otherwise.
func Fahrenheit(f float64) Temperature { return Temperature{(f - 32) * 5 / 9, true} }

// IsSet reports whether t was given.
func (t Temperature) IsSet() bool { return t.set }

// IsZero reports whether t was not given; encoding/json's omitzero asks it.
func (t Temperature) IsZero() bool { return !t.set }

// Or returns t, or other if t was not given.
func (t Temperature) Or(other Temperature) Temperature {
	if t.set {
		return t
	}
	return other
}

// Celsius returns t in degrees Celsius, 0 if t was not given.
func (t Temperature) Celsius() float64 { return t.celsius }

// Fahrenheit returns t in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return t.celsius*9/5 + 32 }

// Kelvin returns t in kelvins, rounded once.
func (t Temperature) Kelvin() float64 { return t.celsius - absoluteZero }

// Sub returns t - u. Either not given counts as 0 °C; check first.
func (t Temperature) Sub(u Temperature) TemperatureChange {
	return TemperatureChange(t.celsius - u.celsius)
}

// Add returns t warmer by d.
func (t Temperature) Add(d TemperatureChange) Temperature {
	return Temperature{t.celsius + float64(d), t.set}
}

// Compare returns -1, 0 or +1 as t is colder than, as warm as, or warmer
// than u, both settled as by [Compare].
func (t Temperature) Compare(u Temperature) int { return Compare(t.celsius, u.celsius) }

// temperatureKind holds the spellings; the offsets are in the code.
var temperatureKind = kind{
	typ: "Temperature", name: "temperature",
	units: []unit{
		{"°C", "1", 1, 1, true, []string{"C", "degC", "celsius"}},
		{"°F", "5", 9, float64(FahrenheitDegree), false, []string{"F", "degF", "fahrenheit"}},
		{"K", "1", 1, 1, false, []string{"kelvin"}},
	},
}

// ParseTemperature reads "77 °F", "-10C", "298.15 K" and the like. The
// Celsius reading is worked out exactly and rounded once. Every error has
// concrete type [*ParseError] or, below absolute zero, [*RangeError].
func ParseTemperature(s string) (Temperature, error) {
	k := &temperatureKind
	fail := func(reason string) (Temperature, error) {
		return Temperature{}, &ParseError{Input: s, Want: k.name, Reason: reason}
	}
	negative, rest := cutSign(strings.TrimSpace(s))
	digits, name, reason := cutNumber(rest)
	if reason != "" {
		return fail(reason)
	}
	u := k.find(strings.TrimSpace(name))
	if u == nil {
		return fail("want a number and one of " + k.accepted())
	}
	r, _ := new(big.Rat).SetString(digits)
	if negative {
		r.Neg(r)
	}
	switch u.symbol {
	case "°F":
		r.Sub(r, big.NewRat(32, 1))
		r.Mul(r, big.NewRat(5, 9))
	case "K":
		r.Sub(r, big.NewRat(27315, 100))
	}
	c, _ := r.Float64()
	if !finite(c) || c < absoluteZero {
		return Temperature{}, &RangeError{Op: "units.ParseTemperature", Field: k.name, Value: s,
			Allowed: TemperatureBounds{Low: Celsius(absoluteZero)}}
	}
	return Celsius(c), nil
}

// String returns t in degrees Celsius to six significant digits, or "not
// given".
func (t Temperature) String() string {
	if !t.set {
		return "not given"
	}
	return string(appendShown(nil, t.celsius, &temperatureKind, shownDigits))
}

// Format implements [fmt.Formatter] as for the other quantities, in °C.
func (t Temperature) Format(s fmt.State, verb rune) {
	switch {
	case t.set && verb == 'v' && s.Flag('#'):
		writePadded(s, append(strconv.AppendFloat([]byte("units.Celsius("), t.celsius, 'g', -1, 64), ')'))
	case t.set:
		formatValue(s, verb, t.celsius, &temperatureKind)
	case verb == 'v' && s.Flag('#'):
		writePadded(s, []byte("units.Temperature{}"))
	default:
		writePadded(s, []byte(t.String()))
	}
}

// MarshalText returns the exact Celsius reading, or empty text if t was not
// given. A reading that is not finite is a [*RangeError].
func (t Temperature) MarshalText() ([]byte, error) {
	if !t.set {
		return []byte{}, nil
	}
	if !finite(t.celsius) {
		return nil, &RangeError{Op: "units.MarshalText", Field: "temperature", Value: t, Allowed: TemperatureBounds{}}
	}
	if t.celsius == 0 {
		return []byte("0 °C"), nil
	}
	return append(appendShortest(nil, t.celsius), " °C"...), nil
}

// UnmarshalText reads what [ParseTemperature] reads, with the same errors;
// empty text is "not given".
func (t *Temperature) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*t = Temperature{}
		return nil
	}
	u, err := ParseTemperature(string(text))
	if err == nil {
		*t = u
	}
	return err
}

// TemperatureBounds is the range that a temperature may have, ends
// included. An end that is not given does not limit.
type TemperatureBounds struct{ Low, High Temperature }

// Contains reports whether t is given, finite and in b, settled.
func (b TemperatureBounds) Contains(t Temperature) bool {
	return t.set && finite(t.celsius) &&
		(!b.Low.set || t.Compare(b.Low) >= 0) && (!b.High.set || t.Compare(b.High) <= 0)
}

// Check returns nil if b contains t, else a [*RangeError] with op, field, t
// and b.
func (b TemperatureBounds) Check(op, field string, t Temperature) error {
	if b.Contains(t) {
		return nil
	}
	return &RangeError{Op: op, Field: field, Value: t, Allowed: b}
}

// String returns "-40 °C to 150 °C" and the like.
func (b TemperatureBounds) String() string {
	switch {
	case b.Low.set && b.High.set:
		return b.Low.String() + " to " + b.High.String()
	case b.Low.set:
		return ">= " + b.Low.String()
	case b.High.set:
		return "<= " + b.High.String()
	}
	return "given and finite"
}
