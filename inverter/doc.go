// Package inverter answers what an inverter, a charger and the change from
// one source to another mean for a rig: what runs together and what starts on
// top of it, which sets of loads are too much, what the battery side must
// carry, the energy a day with the inverter's own use, how long a bank carries
// what is left on once shore power drops, what a charger takes from the service, where
// neutral and ground are joined for each source, which sources could feed a
// panel at once, and whether a bank feeds its own charger.
//
//	headroom, err := inverter.Check(inverter.Machine{
//		Continuous: 1500 * units.Watt,
//		Efficiency: 89 * units.Percent,
//	}, []inverter.Demand{
//		{Name: "microwave", Power: 1450 * units.Watt},
//		{Name: "data logger", Power: 9 * units.Watt, PowerFactor: units.Some(60 * units.Percent)},
//	})
//
// What a load looks like to a source is a [Demand]. A battery is a voltage, a
// panel, a bank and a source are names. What a device must be rated for is
// returned as a current; the standard ratings, and the conductor that the
// device protects, are questions for package wire, and so is the neutral that two
// legs share.
//
// Efficiency is one number, 0.89 or 89 %, above 0 and up to 1; own use, drawn
// whenever the machine is on, is another, and an explicit 0 W of it is data.
// Apparent powers are added plainly, as if all were in phase, which never
// comes out too low.
//
// Left out here: efficiency by load, derating by heat and altitude, orders in
// which several motors start, which leg of a 120/240 V service a load is on,
// wave form.
//
// A vehicle on the wrong side of a neutral-ground fault has a live frame, and
// a generator makes carbon monoxide. Local codes and a licensed electrician
// come before any number of this package.
package inverter
