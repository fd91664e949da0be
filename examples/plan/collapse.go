package plan

import (
	"errors"

	"example.com/drawbar/battery"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// tooWeak reports whether a cable cannot feed a load of constant power at all,
// which is no mistake in the description.
func tooWeak(err error) bool {
	var limits *units.RangeError
	return errors.As(err, &limits) && limits.Op == "battery.UnderLoad" && limits.Field == "Power"
}

// collapse says of a load of constant power that its cable cannot feed it: a
// cable of resistance R from a voltage V gives V²/(4·R) at most.
func collapse(supply battery.Circuit, power units.Power) working.Finding {
	most := units.Scale(supply.OpenCircuit.Across(supply.Internal).At(supply.OpenCircuit), 25*units.Percent)
	return working.Finding{
		Severity: working.Danger, Rule: "cable-cannot-feed", Source: physics("V²/(4·R), the most that comes through a resistance"),
		Message: "This cable cannot feed its loads at all: they draw more the lower the voltage falls, until they stop or a device opens. The cable runs hot meanwhile.",
		Numbers: []working.Number{{Name: "wanted", Value: power}, {Name: "the most that comes through", Value: most}, {Name: "resistance there and back", Value: supply.Internal}},
		Fix:     "Use a larger size or a shorter run.",
	}
}
