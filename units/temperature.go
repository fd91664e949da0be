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
// exact for every multiple of 9 away from 32, rounded once for every whole
// number of less than 16 digits and twice or three times otherwise;
// [ParseTemperature] always rounds once.
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

// Fahrenheit returns t in degrees Fahrenheit, exact for every multiple of
// 5 °C.
func (t Temperature) Fahrenheit() float64 { return t.celsius*9/5 + 32 }

// Kelvin returns t in kelvins, rounded.
func (t Temperature) Kelvin() float64 { return t.celsius - absoluteZero }

// Sub returns t - u. Either not given counts as 0 °C; check first.
func (t Temperature) Sub(u Temperature) TemperatureChange {
	return TemperatureChange(t.celsius - u.celsius)
}

// Add returns t warmer by d, and not given if t was not given.
func (t Temperature) Add(d TemperatureChange) Temperature {
	if !t.set {
		return t
	}
	return Celsius(t.celsius + float64(d))
}

// Compare returns -1, 0 or +1 as t is colder than, as warm as, or warmer
// than u, their kelvins settled as by [Compare]: nine digits of the Celsius
// reading would tell 0 °C from what is left of -0.3 + 0.1 + 0.2. Either not
// given counts as 0 °C; check first.
func (t Temperature) Compare(u Temperature) int { return Compare(t.Kelvin(), u.Kelvin()) }

// shown returns the Celsius reading to print: 0 for what compares equal to it.
func (t Temperature) shown() float64 {
	if t.Compare(Celsius(0)) == 0 {
		return 0
	}
	return t.celsius
}

// temperatureKind holds the spellings; the offsets are in the code.
var temperatureKind = kind{
	typ: "Temperature", name: "temperature",
	units: []unit{
		{"°C", "1", 1, 1, true, []string{"C", "deg C", "celsius", "degrees Celsius"}},
		{"°F", "5", 9, float64(FahrenheitDegree), false, []string{"F", "deg F", "fahrenheit", "degrees Fahrenheit"}},
		{"K", "1", 1, 1, false, []string{"kelvin", "kelvins"}},
	},
}

// ParseTemperature reads "77 °F", "-10C", "298.15 K" and the like. The
// Celsius reading is worked out exactly and rounded once. Every error has
// concrete type [*ParseError] or, below absolute zero or too large for a
// float64, [*RangeError].
func ParseTemperature(s string) (Temperature, error) {
	k := &temperatureKind
	fail := func(reason string) (Temperature, error) {
		return Temperature{}, &ParseError{Input: s, Want: k.name, Reason: reason}
	}
	rest := strings.TrimSpace(s)
	if rest == "" {
		return fail("empty; want a number and a unit: " + k.accepted())
	}
	negative, rest := cutSign(rest)
	digits, name, reason := cutNumber(rest)
	if reason != "" {
		return fail(reason)
	}
	name = strings.TrimSpace(name)
	if name == "" {
		return fail("no unit; want one of " + k.accepted())
	}
	u := k.find(name)
	if u == nil {
		return fail("unknown unit " + strconv.Quote(name) + "; want one of " + k.accepted())
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
	t, allowed := Celsius(c), physical()
	if !allowed.Contains(t) {
		return Temperature{}, &RangeError{Op: "units.ParseTemperature", Field: k.name, Value: s, Allowed: allowed}
	}
	return t, nil
}

// physical returns the bounds of what can be a temperature.
func physical() TemperatureBounds { return TemperatureBounds{Low: Celsius(absoluteZero)} }

// String returns t in degrees Celsius to six significant digits, or "not
// given".
func (t Temperature) String() string {
	if !t.set {
		return "not given"
	}
	return string(appendShown(nil, t.shown(), &temperatureKind, shownDigits))
}

// Format implements [fmt.Formatter] as for the other quantities, in °C.
func (t Temperature) Format(s fmt.State, verb rune) {
	switch {
	case t.set && verb == 'v' && s.Flag('#'):
		writePadded(s, append(appendGo([]byte("units.Celsius("), t.celsius), ')'))
	case t.set:
		formatValue(s, verb, t.shown(), &temperatureKind)
	case verb == 'v' && s.Flag('#'):
		writePadded(s, []byte("units.Temperature{}"))
	case strings.ContainsRune("vsefFg", verb):
		writePadded(s, []byte(t.String()))
	default:
		writePadded(s, []byte("%!"+string(verb)+"(units.Temperature="+t.String()+")"))
	}
}

// AppendText appends what [Temperature.MarshalText] returns.
func (t Temperature) AppendText(b []byte) ([]byte, error) {
	if !t.set {
		return b, nil
	}
	if err := physical().Check("units.MarshalText", "temperature", t); err != nil {
		return b, err
	}
	u := &temperatureKind.units[0]
	return u.appendSymbol(u.appendExact(b, t.celsius)), nil
}

// MarshalText returns the exact Celsius reading, or empty text if t was not
// given. A reading that is not finite or below absolute zero is a
// [*RangeError].
func (t Temperature) MarshalText() ([]byte, error) { return t.AppendText(nil) }

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
type TemperatureBounds struct {
	Low  Temperature // the coldest allowed
	High Temperature // the warmest allowed
}

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
