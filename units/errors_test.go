package units_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/drawbar/units"
)

func TestErrors(t *testing.T) {
	for _, c := range []struct {
		err  error
		text string
		is   error
		not  error
	}{
		{
			&units.RangeError{Op: "wire.VoltageDrop", Field: "Current", Value: -2 * units.Ampere, Allowed: units.Above(0 * units.Ampere)},
			"wire.VoltageDrop: Current = -2 A, want > 0 A", units.ErrRange, units.ErrSyntax,
		},
		{
			&units.RangeError{Op: "wire.VoltageDrop", Field: "Ambient", Value: units.Temperature{}, Allowed: units.TemperatureBounds{}},
			"wire.VoltageDrop: Ambient = not given, want given and finite", units.ErrRange, units.ErrSyntax,
		},
		{
			&units.ParseError{Input: "a \"b\"\n", Want: "voltage", Reason: "no unit"},
			`parsing "a \"b\"\n" as voltage: no unit`, units.ErrSyntax, units.ErrRange,
		},
	} {
		wrapped := fmt.Errorf("reading the plan: %w", c.err)
		if got := c.err.Error(); got != c.text {
			t.Errorf("Error() = %q, want %q", got, c.text)
		}
		if !errors.Is(wrapped, c.is) || errors.Is(wrapped, c.not) {
			t.Errorf("%v must be %v and not %v", wrapped, c.is, c.not)
		}
	}
}
