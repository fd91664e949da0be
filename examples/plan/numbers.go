package plan

import (
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// digitsOfNumbers is how many significant digits a finding's number has; its
// working has more.
const digitsOfNumbers = 4

// quantity returns v with its unit, in the one that is asked for, or else in
// that of its kind which the whole plan uses, so that a number of a finding
// can be found again in a table.
func quantity(v units.Value, unit string, digits int) string {
	if unit == "" {
		unit = usual(v)
	}
	x, symbol, err := units.Measure(v, unit)
	switch {
	case unit == "" || err != nil:
		return fmt.Sprintf("%.*v", digits, v)
	case symbol == "1":
		return units.Significant(x, digits)
	case symbol == "°":
		return units.Significant(x, digits) + symbol
	}
	return units.Significant(x, digits) + " " + symbol
}

// usual returns the unit in which the plan has quantities of the kind of v,
// empty for those whose size decides.
func usual(v units.Value) string {
	switch x := v.(type) {
	case units.Power:
		return "W"
	case units.ApparentPower:
		return "VA"
	case units.Energy:
		return "Wh"
	case units.Charge:
		return "Ah"
	case units.Current:
		return "A"
	case units.Elapsed:
		if x >= units.Hour || x == 0 {
			return "h"
		}
	}
	return ""
}

// numberOf returns a number of a finding as the plan has it.
func numberOf(n working.Number) Number {
	if n.Value == nil {
		return Number{Name: n.Name, Value: "not given"}
	}
	return Number{Name: n.Name, Value: quantity(n.Value, n.Unit, digitsOfNumbers)}
}

// numbersOf is numberOf for a list, which is never nil.
func numbersOf(list []working.Number) []Number {
	numbers := make([]Number, 0, len(list))
	for _, n := range list {
		numbers = append(numbers, numberOf(n))
	}
	return numbers
}

// valueOf returns the value of that name, empty if it is not among them.
func valueOf(numbers []Number, name string) string {
	for _, n := range numbers {
		if n.Name == name {
			return n.Value
		}
	}
	return ""
}

// in returns v in a unit that suits the place, which is one that v has.
func in(v units.Value, unit string, digits int) string { return quantity(v, unit, digits) }

// number is in without the unit.
func number(v units.Value, unit string, digits int) string {
	x, _, err := units.Measure(v, unit)
	if err != nil {
		return v.String()
	}
	return units.Significant(x, digits)
}

// hours returns a time as an owner counts it: hours, and from 100 h on days, to
// two digits as everywhere.
func hours(t units.Elapsed) string {
	if h := units.In(t, units.Hour); h < 100 {
		return units.Significant(h, 3) + " h"
	}
	return in(t, "d", 2)
}
