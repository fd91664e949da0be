package wire

import "example.com/drawbar/units"

// boatVoltage is where the rules for boats turn stricter: 33 CFR 183.435 and
// 183.455(c). Circuits of 50 V and more are no longer low voltage here either.
const boatVoltage = 50 * units.Volt

// mostSharing is the range of Installation.Parallel.
const mostSharing = 100

// check reports the first field out of range.
func (x Installation) check(op string) error {
	if err := x.Rules.check(op); err != nil {
		return err
	}
	if err := x.Size.check(op, "Size"); err != nil {
		return err
	}
	if err := x.Insulation.check(op, "Insulation"); err != nil {
		return err
	}
	if x.Terminals != 0 {
		if err := x.Terminals.check(op, "Terminals"); err != nil {
			return err
		}
	}
	switch {
	case x.Conductors < 0 || x.Conductors > mostConductors:
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors, Allowed: allowedText("0 to 1000")}
	case x.Parallel < 0 || x.Parallel > mostSharing:
		return &units.RangeError{Op: op, Field: "Parallel", Value: x.Parallel, Allowed: allowedText("0 to 100")}
	case x.Conductors > 0 && x.Conductors < x.Parallel:
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors,
			Allowed: allowedText("not below Parallel, all of which carry current together, or 0")}
	case x.Metal > CopperClad:
		return &units.RangeError{Op: op, Field: "Metal", Value: x.Metal, Allowed: allowedText("copper, aluminium or copper-clad aluminium")}
	}
	if system, ok := x.System.Get(); ok {
		if err := x.voltages().Check(op, "System", system); err != nil {
			return err
		}
	}
	if !x.Rules.isNEC() {
		return x.checkUncorrected(op)
	}
	if x.EngineSpace {
		return &units.RangeError{Op: op, Field: "EngineSpace", Value: x.EngineSpace,
			Allowed: allowedText("false: " + x.Rules.String() + " asks for the ambient temperature instead")}
	}
	return nil
}

// voltages returns the bounds of System.
func (x Installation) voltages() units.Bounds[units.Voltage] {
	b := units.Above[units.Voltage](0)
	if x.Rules == RVLowVoltage {
		return b.Below(boatVoltage)
	}
	return b
}

// checkUncorrected refuses what a table without corrections cannot take into
// account, since to ignore it would be kind to the conductor.
func (x Installation) checkUncorrected(op string) error {
	warmest := units.Celsius(30)
	if x.EngineSpace && x.Rules == Boat33CFR {
		warmest = units.Celsius(50)
	}
	no := uncorrected{x.Rules}
	switch {
	case x.Terminals != 0:
		return &units.RangeError{Op: op, Field: "Terminals", Value: x.Terminals, Allowed: no}
	case x.Conductors > 3 && x.Rules != Boat33CFR:
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors, Allowed: no}
	case x.Conductors > 3 && !x.System.IsSet():
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors,
			Allowed: allowedText("no more than three, unless System is given: 33 CFR 183 adjusts for them from 50 V up")}
	case x.Ambient.IsSet() && !(units.TemperatureBounds{Low: units.Celsius(coldest), High: warmest}.Contains(x.Ambient)):
		return &units.RangeError{Op: op, Field: "Ambient", Value: x.Ambient, Allowed: no}
	case x.EngineSpace && x.Rules != Boat33CFR:
		return &units.RangeError{Op: op, Field: "EngineSpace", Value: x.EngineSpace, Allowed: allowedText("false: only Boat33CFR has a factor for it")}
	case x.Metal != Copper:
		return &units.RangeError{Op: op, Field: "Metal", Value: x.Metal, Allowed: allowedText("copper: the table of " + x.Rules.String() + " has no other metal")}
	}
	return nil
}

// uncorrected says what a table without corrections takes.
type uncorrected struct{ rules RuleSet }

// String says it, and why.
func (u uncorrected) String() string {
	return "not given, no more than three conductors, and -60 °C to 30 °C: the table of " + u.rules.String() +
		" has no corrections; NEC2017 has"
}

// notTabulated says that x has no row or no column.
func notTabulated(op string, x Installation) error {
	return &units.RangeError{Op: op, Field: "Size", Value: x.Size, Allowed: tableRange{x.Rules, x.Metal, x.Insulation}}
}

// tableRange says which sizes a table has.
type tableRange struct {
	rules RuleSet
	metal Metal
	class Insulation
}

// String names the sizes.
func (r tableRange) String() string {
	from, to := "18 AWG", "4/0 AWG"
	if r.rules.isNEC() {
		to = "500 kcmil"
		switch {
		case r.metal != Copper:
			from = "12 AWG"
		case r.class.necColumn() != Insulation90:
			from = "14 AWG"
		}
	}
	return from + " to " + to + " of the " + r.rules.String() + " table at " + r.class.String()
}
