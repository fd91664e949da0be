package plan

import (
	"fmt"
	"strconv"

	"example.com/drawbar/units"
)

// within refuses a value that is out of its bounds, where its path is known.
func within[Q units.Quantity](d *decoder, path string, x Q, allowed units.Bounds[Q]) {
	if !allowed.Contains(x) {
		d.fail(path, strconv.Quote(fmt.Sprint(x)), allowed.String())
	}
}

// withinIf is within for a value that may be left out.
func withinIf[Q units.Quantity](d *decoder, path string, x units.Opt[Q], allowed units.Bounds[Q]) {
	if v, ok := x.Get(); ok {
		within(d, path, v, allowed)
	}
}

// positive are the bounds of what cannot be nothing.
func positive[Q units.Quantity]() units.Bounds[Q] { return units.Above[Q](0) }

// part are the bounds of an efficiency and the like.
func part() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).AtMost(units.One) }

// checkBounds refuses what no calculator looks at, or looks at only in some
// rigs, or reports where its path is no longer known.
func checkBounds(d *decoder, r Rig) {
	loss := units.Above[units.Ratio](0).Below(units.One)
	withinIf(d, "rules.branch_drop", r.Rules.BranchDrop, loss)
	withinIf(d, "rules.path_drop", r.Rules.PathDrop, loss)
	for i, b := range r.Buses {
		withinIf(d, at("buses", i, "through_converter"), b.ThroughConverter, part())
	}
	for i, l := range r.Loads {
		withinIf(d, at("loads", i, "locked_rotor"), l.LockedRotor, positive[units.Current]())
		withinIf(d, at("loads", i, "cut_out"), l.CutOut, positive[units.Voltage]())
	}
	withinIf(d, "bank.typical_voltage", r.Bank.Typical, positive[units.Voltage]())
	checkMachines(d, r)
	checkSources(d, r)
	for i, c := range r.Circuits {
		withinIf(d, at("circuits", i, "current"), c.Current, positive[units.Current]())
		withinIf(d, at("circuits", i, "power"), c.Power, positive[units.Power]())
		withinIf(d, at("circuits", i, "usual"), c.Usual, positive[units.Current]())
		if c.Device != nil {
			within(d, at("circuits", i, "device.rating"), c.Device.Rating, positive[units.Current]())
			withinIf(d, at("circuits", i, "device.interrupting"), c.Device.Interrupting, positive[units.Current]())
			withinIf(d, at("circuits", i, "device.distance"), c.Device.Distance, units.AtLeast[units.Length](0))
		}
	}
}

// checkMachines looks at inverter and converter.
func checkMachines(d *decoder, r Rig) {
	if i := r.Inverter; i != nil {
		within(d, "inverter.continuous", i.Continuous, positive[units.Power]())
		withinIf(d, "inverter.apparent", i.Apparent, positive[units.ApparentPower]())
		withinIf(d, "inverter.surge", i.Surge, positive[units.ApparentPower]())
		withinIf(d, "inverter.surge_for", i.SurgeFor, positive[units.Elapsed]())
		within(d, "inverter.efficiency", i.Efficiency, part())
		withinIf(d, "inverter.idle", i.Idle, units.AtLeast[units.Power](0))
		within(d, "inverter.cut_off", i.CutOff, positive[units.Voltage]())
		withinIf(d, "inverter.pass_relay", i.PassRelay, positive[units.Current]())
		withinIf(d, "inverter.pass_device", i.PassDevice, positive[units.Current]())
	}
	if c := r.Converter; c != nil {
		within(d, "converter.current", c.Current, positive[units.Current]())
		within(d, "converter.voltage", c.Voltage, positive[units.Voltage]())
		within(d, "converter.efficiency", c.Efficiency, part())
		within(d, "converter.power_factor", c.PowerFactor, part())
	}
}

// checkSources looks at shore, generator, tow vehicle and roof.
func checkSources(d *decoder, r Rig) {
	if s := r.Shore; s != nil {
		within(d, "shore.service", s.Service, positive[units.Current]())
		within(d, "shore.voltage", s.Voltage, positive[units.Voltage]())
		// A dead pedestal measures 0 V; a meter's leads the wrong way round give
		// a sign that alternating current does not have.
		withinIf(d, "shore.measured", s.Measured, units.AtLeast[units.Voltage](0))
		withinIf(d, "shore.cord_length", s.CordLong, positive[units.Length]())
		withinIf(d, "shore.receptacle", s.Receptacle, positive[units.Current]())
	}
	if g := r.Generator; g != nil {
		within(d, "generator.continuous", g.Continuous, positive[units.Power]())
		withinIf(d, "generator.surge", g.Surge, positive[units.ApparentPower]())
	}
	if t := r.Tow; t != nil {
		within(d, "tow.current", t.Current, positive[units.Current]())
		within(d, "tow.voltage", t.Voltage, positive[units.Voltage]())
		within(d, "tow.efficiency", t.Efficiency, part())
		within(d, "tow.input_voltage", t.Input, positive[units.Voltage]())
		within(d, "tow.hours", t.Hours, units.Between(0, day))
	}
	if r.Roof == nil {
		return
	}
	for i, l := range r.Roof.Losses {
		within(d, at("roof.losses", i, "lost"), l.Lost, units.AtLeast[units.Ratio](0).Below(units.One))
	}
}
