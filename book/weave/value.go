package weave

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"example.com/drawbar/units"
)

// maxDigits is how many significant digits print may have.
const maxDigits = 6

// A Value is a named result, rounded for print. Make one with [Show] or
// [Say].
type Value struct {
	name, text string
	number     bool // made by Show
	err        error
}

// Show returns a value that is printed in unit with at most so many
// significant digits, 1 to 6. A unit that v does not have, a v that is not
// finite, and other digits fail the weaving.
func Show(name string, v units.Value, unit string, digits int) Value {
	text, err := measured(v, unit, digits)
	if err != nil {
		err = fmt.Errorf("value %q: %w", name, err)
	}
	return Value{name: name, text: text, number: true, err: err}
}

// Say returns a value that is no quantity, such as a conductor size, a count
// or a date, printed as fmt.Sprint does.
func Say(name string, v any) Value {
	return Value{name: name, text: fmt.Sprint(v)}
}

// measured returns v in unit with so many significant digits.
func measured(v units.Value, unit string, digits int) (string, error) {
	if digits < 1 || digits > maxDigits {
		return "", fmt.Errorf("%d significant digits, want 1 to %d", digits, maxDigits)
	}
	x, symbol, err := measure(v, unit)
	if err != nil {
		return "", err
	}
	return withUnit(units.Significant(x, digits), symbol), nil
}

// measure is [units.Measure] for a v that is given and finite.
func measure(v units.Value, unit string) (x float64, symbol string, err error) {
	t, isTemperature := v.(units.Temperature)
	switch {
	case v == nil:
		return 0, "", errors.New("no quantity given")
	case isTemperature && !t.IsSet():
		return 0, "", errors.New("temperature not given")
	case !isTemperature && reflect.TypeOf(v).Kind() != reflect.Float64:
		return 0, "", fmt.Errorf("a %T is not a plain quantity", v)
	}
	x, symbol, err = units.Measure(v, unit)
	if err == nil && x-x != 0 {
		err = fmt.Errorf("%v is not finite", v)
	}
	return x, symbol, err
}

// noBreak is a space at which no line ends, as between a number and its unit.
// The Markdown has plain spaces, for who searches it.
const noBreak = "\u00a0"

// unbroken returns s, which is short, so that no line ends in it.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", noBreak) }

// broken returns s with plain spaces.
func broken(s string) string { return strings.ReplaceAll(s, noBreak, " ") }

// withUnit returns number with the unit behind it, as package units writes
// it: nothing behind a pure number, no space before signs of angle.
func withUnit(number, symbol string) string {
	switch symbol {
	case "1":
		return number
	case "°", "′", "″":
		return number + symbol
	}
	return number + " " + symbol
}
