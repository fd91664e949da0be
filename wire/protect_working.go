package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the device and its limits came about, step by step.
func (p Protection) Working() *working.Sheet {
	c := p.Circuit
	s := working.NewSheet("Protection of " + c.Installation.Size.String() + " " + c.Installation.Metal.String() + " by " + c.Installation.Rules.String())
	p.Capacity.steps(s)
	needed := p.neededSteps(s)
	limit := p.limitSteps(s)
	if device, ok := c.Device.Get(); ok {
		s.Given("I_device", device, "A", "device as stated")
		s.Test("device against the load", needed+" <= I_device", !units.Exceeds(p.Needed, device))
		s.Test("device against its limit", "I_device <= "+limit, !units.Exceeds(device, p.Limit))
	} else {
		s.Choose("device", "none stated", "nothing is assumed in its place", working.Source{})
	}
	p.faultSteps(s)
	return s
}

// faultSteps appends both faults. Each has its own conductor temperature, so
// what differs between them has a symbol of its own.
func (p Protection) faultSteps(s *working.Sheet) {
	if p.AtEnd.Current <= 0 {
		return
	}
	p.AtEnd.steps(s, "I_end")
	volts, ohms := "E", "R_source"
	if cold := p.AtDevice.Source; cold != p.AtEnd.Source {
		volts, ohms = "E_cold", "R_cold"
		s.Given(volts, cold.Voltage, "V", "open-circuit voltage of the source, for the short at the device")
		s.Given(ohms, cold.Resistance, "mΩ", "resistance of the source, with what lies before the run cold")
	}
	near := "1000 * " + volts + " / " + ohms
	if p.AtDevice.OneWay > 0 {
		near = "1000 * " + volts + " / (" + ohms + " + R_near)"
		s.Given("r_cold", p.AtDevice.Conductor.At, "Ω/km", "resistance of one conductor per length at "+reference.String()+", worked out as r is")
		s.Given("L_near", p.AtDevice.OneWay, "m", "one-way length from the source to the device")
		if p.AtDevice.Source.Chassis.IsSet() {
			s.Formula("R_near", p.AtDevice.Loop, "mΩ", "resistance of the cold run up to the device, the chassis counted as none", "r_cold * L_near")
		} else {
			s.Formula("R_near", p.AtDevice.Loop, "mΩ", "resistance of the cold run up to the device, there and back", "r_cold * 2*L_near")
		}
	}
	s.Formula("I_near", p.AtDevice.Current, "A", "fault current at the device", near)
	if breaks, ok := p.Circuit.Interrupting.Get(); ok {
		s.Given("I_breaks", breaks, "A", "interrupting rating of the device")
		s.Test("fault against what the device can break", "I_near <= I_breaks", !units.Exceeds(p.AtDevice.Current, breaks))
	}
	if !p.Circuit.Opens.IsSet() || p.Heated.Bears <= 0 {
		return
	}
	fault := "I_end"
	if p.Capacity.Counted > 1 {
		fault = "I_one"
		s.Formula(fault, p.Heated.ShortTime.Current, "A", "fault current in one of the conductors", "I_end / n")
	}
	p.Heated.steps(s, fault)
}

// neededSteps appends what the device must carry and returns its symbol.
func (p Protection) neededSteps(s *working.Sheet) string {
	s.Given("I_load", p.Circuit.Load, "A", "greatest current of the load")
	hours := p.Circuit.continuous()
	if hours == 0 {
		return "I_load"
	}
	s.Constant("k_continuous", continuousFactor, "1", "for a load of three hours or more", p.continuousSource())
	if hours == p.Circuit.Load {
		s.Formula("I_needed", p.Needed, "A", "what the device must carry", "k_continuous * I_load")
		return "I_needed"
	}
	s.Given("I_hours", hours, "A", "of it, what runs so long")
	s.Formula("I_needed", p.Needed, "A", "what the device must carry", "I_load - I_hours + k_continuous * I_hours")
	return "I_needed"
}

// limitSteps appends the greatest device that the rule set allows and returns
// its symbol.
func (p Protection) limitSteps(s *working.Sheet) string {
	const symbol, what = "I_limit", "greatest device that the rule set allows"
	size := p.Circuit.Installation.Size.String()
	switch p.Rule {
	case LimitBoat:
		s.Constant("k_boat", boatFactor, "1", "part of the ampacity that a device may have", boatDevice)
		s.Formula(symbol, p.Limit, "A", what, "k_boat * I_z")
	case LimitNextRating:
		at := working.Lookup{Source: p.Circuit.Installation.Rules.ratingSource(),
			Key: "ampacity " + p.Capacity.Current.String(), Row: "next standard rating up, which 240.4(B) allows to 800 A"}
		if p.Circuit.Installation.Rules == Boat33CFR {
			at.Source, at.Row = boatDevice50, "next rating up of NEC 240.6(A), not above 150 % of it"
		}
		s.LookUp(symbol, p.Limit, "A", what, at)
	case LimitSmallConductor:
		s.LookUp(symbol, p.Limit, "A", what, working.Lookup{Source: p.LimitSource(), Key: size, Row: size})
	default:
		s.Choose("greatest device", "the ampacity", p.noneAbove(), p.Capacity.source())
		return "I_z"
	}
	return symbol
}

// noneAbove says why no device above the ampacity is allowed.
func (p Protection) noneAbove() string {
	c := p.Circuit
	rules := c.Installation.Rules
	next := nextRating(c.Installation.ratings(), c.Kind, p.Capacity.Current)
	switch {
	case rules == RVLowVoltage:
		return "this rule set allows none above it"
	case rules.isNEC() && c.Receptacles:
		return "240.4(B) allows none above it where more than one receptacle is fed"
	case next == 0:
		return "no standard rating is above it"
	case units.Compare(next, p.Capacity.Current) == 0:
		return "it is itself a standard rating"
	case rules == Boat33CFR:
		return "the next rating up is above 150 % of it"
	}
	return "the next rating up is above 800 A, where 240.4(B) ends"
}
