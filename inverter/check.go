package inverter

import (
	"fmt"

	"example.com/drawbar/units"
)

// allowed says in words what no bounds say.
type allowed string

// String returns the words.
func (a allowed) String() string { return string(a) }

// checkOpt is the check of an input that may not be given.
func checkOpt[Q units.Quantity](op, field string, v units.Opt[Q], b units.Bounds[Q]) error {
	if x, ok := v.Get(); ok {
		return b.Check(op, field, x)
	}
	return nil
}

// checkName refuses what a finding could not call by name.
func checkName(op, field, name string) error {
	if name == "" {
		return &units.RangeError{Op: op, Field: field, Value: `""`, Allowed: allowed("a name")}
	}
	return nil
}

// firstError returns the first of the errors that is one.
func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// positive and notNegative are the usual bounds.
func positive[Q units.Quantity]() units.Bounds[Q] { return units.Above[Q](0) }

func notNegative[Q units.Quantity]() units.Bounds[Q] { return units.AtLeast[Q](0) }

// shares is the range of efficiencies, power factors and parts of a limit.
func shares() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).AtMost(1) }

// at names item i of a list.
func at(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }
