package wire

import (
	"example.com/drawbar/units"
)

// An Installation is a copper conductor as it is laid, for its ampacity.
type Installation struct {
	Rules RuleSet // which table; needed
	// Size from 18 AWG up; a metric size is in none of these tables.
	Size Size
	// Insulation is the class of the conductor. NEC2017 has no 105 °C column
	// and takes such a wire by 90 °C.
	Insulation Insulation
	// Terminals is the lowest rating of what the conductor ends in. Not given
	// means 60 °C up to 1 AWG and 75 °C above, as NEC 110.14(C) has it. Only
	// NEC2017 knows it; the other rule sets refuse it.
	Terminals Insulation
	// Ambient is the temperature of the air round the conductor; not given
	// means 30 °C. Only NEC2017 corrects for it; the other tables are for 30 °C,
	// and a warmer place is refused.
	Ambient units.Temperature
	// Conductors is how many carry current together in the raceway or bundle,
	// 0 to 1000; 0 means no more than three. Only NEC2017 adjusts for it; the
	// other rule sets refuse more than three.
	Conductors int
}

// Governs says what limited a current.
type Governs uint8

const (
	// ByInsulation is the heat that the insulation bears, corrected.
	ByInsulation Governs = iota
	// ByTerminals is the heat that the terminals bear.
	ByTerminals
	// ByDeviceTable is a table that limits the device, not the conductor.
	ByDeviceTable
)

// A CarryingCapacity is the result of [Ampacity].
type CarryingCapacity struct {
	Installation Installation  // as used; Terminals and Ambient are filled in where they count
	Column       Insulation    // of the table
	Table        units.Current // before correction
	Ambient      units.Ratio   // correction for ambient temperature
	Bundle       units.Ratio   // adjustment for conductors together
	Corrected    units.Current // Table · Ambient · Bundle
	Terminals    units.Current // what the terminals bear; 0 if the rule set does not ask
	Current      units.Current // the ampacity: the lesser of the two
	Governs      Governs       // which of the two
}

// Ampacity returns the continuous current that a conductor may carry for heat:
//
//	I_z = I_table · k_ambient · k_bundle, and not more than the terminals bear
//
// It is not yet the limit of the device that protects it; see [Protect]. For
// RVLowVoltage the table of device limits stands in for an ampacity up to 10
// AWG, since it is all that is known; Governs says so.
//
// A field outside the range that [Installation] states, a size or a
// temperature that the table does not have, gives a [*units.RangeError] and
// the zero CarryingCapacity.
func Ampacity(x Installation) (CarryingCapacity, error) { return ampacity("wire.Ampacity", x) }

func ampacity(op string, x Installation) (CarryingCapacity, error) {
	if err := x.check(op); err != nil {
		return CarryingCapacity{}, err
	}
	c := CarryingCapacity{Installation: x, Column: x.Insulation, Ambient: 1, Bundle: 1}
	switch x.Rules {
	case NEC2017:
		return c.byNEC(op)
	case RVLowVoltage:
		if limit, ok := limitOf(rvLimits[:], x.Size); ok {
			c.Table, c.Governs = limit, ByDeviceTable
			c.Corrected, c.Current = c.Table, c.Table
			return c, nil
		}
	}
	c.Table = tabulated(boat425[:], x.Size, x.Insulation)
	if c.Table == 0 {
		return CarryingCapacity{}, notTabulated(op, x)
	}
	c.Corrected, c.Current = c.Table, c.Table
	return c, nil
}

// byNEC fills c in from the tables of the NEC.
func (c CarryingCapacity) byNEC(op string) (CarryingCapacity, error) {
	x := c.Installation
	x.Ambient = x.Ambient.Or(units.Celsius(30))
	if x.Terminals == 0 {
		if x.Terminals = Insulation60; x.Size.Compare(AWG(1)) > 0 {
			x.Terminals = Insulation75
		}
	}
	c.Installation = x
	c.Column = min(x.Insulation, Insulation90)
	c.Table = tabulated(nec310[:], x.Size, c.Column)
	if c.Table == 0 {
		return CarryingCapacity{}, notTabulated(op, x)
	}
	c.Ambient, c.Bundle = ambientFactor(c.Column, x.Ambient), bundleFactor(x.Conductors)
	if c.Ambient == 0 {
		return CarryingCapacity{}, &units.RangeError{Op: op, Field: "Ambient", Value: x.Ambient,
			Allowed: units.TemperatureBounds{High: hottestBand(c.Column)}}
	}
	c.Corrected = units.Scale(c.Table, c.Ambient*c.Bundle)
	c.Current = c.Corrected
	// 18 and 16 AWG have no 60 and 75 °C column to hold terminals against.
	c.Terminals = tabulated(nec310[:], x.Size, min(x.Terminals, Insulation90))
	if c.Terminals > 0 && units.Exceeds(c.Corrected, c.Terminals) {
		c.Current, c.Governs = c.Terminals, ByTerminals
	}
	return c, nil
}

// hottestBand returns the highest temperature with a factor for n.
func hottestBand(n Insulation) (top units.Temperature) {
	for _, r := range necAmbientFactors {
		if t := units.Celsius(r.top); ambientFactor(n, t) > 0 {
			top = t
		}
	}
	return top
}

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
	if x.Conductors < 0 || x.Conductors > mostConductors {
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors, Allowed: conductorRange{}}
	}
	if x.Rules != NEC2017 {
		return x.checkUncorrected(op)
	}
	if !x.Ambient.IsSet() {
		return nil
	}
	return units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(85)}.Check(op, "Ambient", x.Ambient)
}

// checkUncorrected refuses what a table without corrections cannot take into
// account, since to ignore it would be kind to the conductor.
func (x Installation) checkUncorrected(op string) error {
	no := uncorrected{x.Rules}
	switch {
	case x.Terminals != 0:
		return &units.RangeError{Op: op, Field: "Terminals", Value: x.Terminals, Allowed: no}
	case x.Conductors > 3:
		return &units.RangeError{Op: op, Field: "Conductors", Value: x.Conductors, Allowed: no}
	case x.Ambient.IsSet() && !(units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(30)}.Contains(x.Ambient)):
		return &units.RangeError{Op: op, Field: "Ambient", Value: x.Ambient, Allowed: no}
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
	return &units.RangeError{Op: op, Field: "Size", Value: x.Size, Allowed: tableRange{x.Rules, x.Insulation}}
}

// tableRange says which sizes a table has.
type tableRange struct {
	rules RuleSet
	class Insulation
}

// String names the sizes.
func (r tableRange) String() string {
	from, to := "18 AWG", "4/0 AWG"
	if r.rules == NEC2017 {
		to = "500 kcmil"
		if r.class < Insulation90 {
			from = "14 AWG"
		}
	}
	return from + " to " + to + " of the " + r.rules.String() + " table at " + r.class.String()
}

const mostConductors = 1000

// conductorRange is the range of Installation.Conductors.
type conductorRange struct{}

// String returns the range.
func (conductorRange) String() string { return "0 to 1000" }
