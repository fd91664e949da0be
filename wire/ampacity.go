package wire

import (
	"example.com/drawbar/units"
)

// An Installation is a conductor as it is laid, for its ampacity.
type Installation struct {
	Rules RuleSet // which table; needed
	// Size from 18 AWG up; a metric size is in none of these tables.
	Size Size
	// Metal is copper unless said otherwise. Only the NEC has ampacities of
	// aluminium and of copper-clad aluminium, one column for both, from 12 AWG
	// up; the other rule sets refuse them.
	Metal Metal `json:",omitzero"`
	// Insulation is the class of the conductor. The NEC has no columns for 80,
	// 105, 125 and 200 °C and takes such a wire by the next cooler one.
	Insulation Insulation
	// Terminals is the lowest rating of what the conductor ends in. Not given
	// means 60 °C up to 1 AWG and 75 °C above, as NEC 110.14(C) has it. Only
	// the NEC knows it; the other rule sets refuse it.
	Terminals Insulation `json:",omitzero"`
	// Ambient is the temperature of the air round the conductor; not given
	// means 30 °C. Only the NEC corrects for it; the other tables are for 30 °C,
	// and a warmer place is refused. NEC2008 has no factor below 21 °C.
	Ambient units.Temperature `json:",omitzero"`
	// EngineSpace says that the conductor of a boat runs where the engine is:
	// 33 CFR 183.425 takes 50 °C there, and Ambient may be up to that. The
	// other rule sets refuse it.
	EngineSpace bool `json:",omitzero"`
	// Conductors is how many carry current together in the raceway or bundle,
	// 0 to 1000; 0 means no more than three, and for a boat at 50 V and more
	// fewer than three. The NEC adjusts for it; 33 CFR 183 does from 50 V up,
	// so that for more than three it needs System; RVLowVoltage refuses them.
	Conductors int
	// System is the nominal voltage of the circuit, > 0. Not given means below
	// 50 V under Boat33CFR; RVLowVoltage is for circuits below 50 V only.
	System units.Opt[units.Voltage] `json:",omitzero"`
	// Parallel is how many such conductors share the current of one pole, 0 to
	// 100; 0 means one. They are counted together only by the NEC and from 1/0
	// AWG up; otherwise one of them must do for the whole, and the findings say
	// so. All of them count among Conductors, which is not below Parallel unless
	// it is 0; the findings then say that nothing was derated.
	Parallel int `json:",omitzero"`
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
	Table        units.Current // before correction, of one conductor
	Ambient      units.Ratio   // correction for ambient temperature or engine space
	Bundle       units.Ratio   // adjustment for conductors together
	Corrected    units.Current // Table · Ambient · Bundle
	Terminals    units.Current // what the terminals bear; 0 if the rule set does not ask
	Counted      int           // how many conductors in parallel carry Current together, 1 or more
	Current      units.Current // the ampacity: Counted times the lesser of the two
	Governs      Governs       // which of the two
}

// Ampacity returns the continuous current that a conductor may carry for heat:
//
//	I_z = I_table · k_ambient · k_bundle, and not more than the terminals bear
//
// times the conductors in parallel that count together, if there are any.
// It is not yet the limit of the device that protects it; see [Protect]. For
// RVLowVoltage the table of device limits stands in for an ampacity up to 10
// AWG, since it is all that is known; Governs says so, and
// [CarryingCapacity.Rule] names the rule in words.
//
// A field outside the range that [Installation] states, a size or a
// temperature that the table does not have, gives a [*units.RangeError] and
// the zero CarryingCapacity.
func Ampacity(x Installation) (CarryingCapacity, error) { return ampacity("wire.Ampacity", x) }

func ampacity(op string, x Installation) (CarryingCapacity, error) {
	if err := x.check(op); err != nil {
		return CarryingCapacity{}, err
	}
	c := CarryingCapacity{Installation: x, Column: x.Insulation, Ambient: 1, Bundle: 1, Counted: 1}
	switch {
	case x.Rules.isNEC():
		return c.byNEC(op)
	case x.Rules == RVLowVoltage:
		if limit, ok := limitOf(rvLimits[:], x.Size, x.Metal); ok {
			c.Table, c.Governs = limit, ByDeviceTable
			c.Corrected, c.Current = c.Table, c.Table
			return c, nil
		}
	}
	c.Table = boatAmpacity(x.Size, x.Insulation)
	if c.Table == 0 {
		return CarryingCapacity{}, notTabulated(op, x)
	}
	if x.EngineSpace {
		c.Ambient = boatEngineFactors[boatIndex(x.Insulation)]
	}
	if x.isHigh() {
		c.Bundle = bundleFactor(boatBundleFactors[:], x.Conductors)
	}
	c.Corrected = units.Scale(c.Table, c.Ambient*c.Bundle)
	c.Current = c.Corrected
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
	c.Column = x.Insulation.necColumn()
	c.Table = necAmpacity(x.Rules, x.Metal, x.Size, c.Column)
	if c.Table == 0 {
		return CarryingCapacity{}, notTabulated(op, x)
	}
	if err := ambientRange(x.Rules, c.Column).Check(op, "Ambient", x.Ambient); err != nil {
		return CarryingCapacity{}, err
	}
	c.Ambient = ambientFactor(x.Rules, c.Column, x.Ambient)
	c.Bundle = bundleFactor(necBundleFactors[:], x.Conductors)
	c.Corrected = units.Scale(c.Table, c.Ambient*c.Bundle)
	each := c.Corrected
	// 18 and 16 AWG have no 60 and 75 °C column to hold terminals against.
	c.Terminals = necAmpacity(x.Rules, x.Metal, x.Size, x.Terminals)
	if c.Terminals > 0 && units.Exceeds(c.Corrected, c.Terminals) {
		each, c.Governs = c.Terminals, ByTerminals
	}
	if x.Parallel > 1 && x.Size.Compare(Aught(1)) >= 0 {
		c.Counted = x.Parallel
	}
	c.Current = units.Scale(each, units.Ratio(c.Counted))
	return c, nil
}

// isFreeAir reports whether the RV rule set, whose table ends at 10 AWG, went by
// the free-air table for boats.
func (c CarryingCapacity) isFreeAir() bool {
	return c.Installation.Rules == RVLowVoltage && c.Governs != ByDeviceTable
}

// isHigh reports whether x is a circuit of 50 V and more, to 33 CFR 183.
func (x Installation) isHigh() bool {
	system, ok := x.System.Get()
	return ok && !units.Exceeds(boatVoltage, system)
}
