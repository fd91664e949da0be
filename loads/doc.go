// Package loads answers what a rig really uses: what each load takes, how
// much energy and charge that is a day on each bus, what all of it takes at
// once, how a day is spread over the clock, and what must not stop.
//
//	ledger, err := loads.Audit(
//		[]loads.Bus{{Name: "dc", Kind: loads.Direct, Voltage: 12 * units.Volt}},
//		[]loads.Load{{
//			Name: "refrigerator", Bus: "dc", Kind: loads.ConstantPower, Count: 1,
//			Rating: loads.Rating{Power: units.Some(48 * units.Watt)},
//			Duty:   units.Some(32 * units.Percent),
//			Hours:  units.Some(24 * units.Hour),
//		}},
//	)
//
// Energy crosses a change of voltage and charge does not: ampere-hours are
// given for direct-current buses only. What loads behind an inverter take from
// the bank is for package inverter, which is asked with the energy of the bus,
// [Total].Energy, and with [Total].Longest.
//
// A ledger is as good as its hours and duties, which are estimates until
// somebody has measured them.
//
// Left out here: what starting a motor takes, loads that depend on each other
// or on the weather (but for [HeatingDuty]), the two legs of a service, and
// the efficiency of an inverter at part load.
//
// A load marked must-not-stop keeps food, medicine, an animal or a person from
// harm. No number of this package replaces an alarm that somebody hears.
package loads
