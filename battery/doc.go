// Package battery answers what a bank of batteries really gives: how many
// ampere-hours and watt-hours can be taken out of it at a current, how long
// it feeds a load, what its voltage falls to meanwhile, what currents it may
// see, with every string connected and with one dropped out, and what voltage
// a charger that corrects for temperature puts on it.
//
//	endurance, err := battery.HoldUp(battery.Hold{
//		Bank: battery.Bank{
//			Battery: battery.Battery{
//				Chemistry: battery.LithiumIronPhosphate,
//				Capacity:  100 * units.AmpereHour,
//				Voltage:   12.8 * units.Volt,
//			},
//			Series: 1, Parallel: 2,
//		},
//		Draw: battery.Draw{Power: units.Some(60 * units.Watt)},
//	})
//
// A figure that a datasheet gives beats the default of the chemistry
// everywhere; a default says where it comes from (see [Chemistry.Figures])
// and is echoed in the result that used it. What cannot be judged because an
// input is missing is a finding, never a default that passes.
//
// All batteries of a bank are alike. Mixed chemistries, ages or sizes share
// neither current nor charge as this package assumes, and are not to be
// joined.
//
// Left out here: the voltage curve over the state of charge, recharge, the
// recovery of a rested lead-acid battery, wear, self-discharge, unequal
// sharing between strings, and what the cables may carry.
//
// A battery can burn, burst, gas and weld a wrench. Local codes, the maker's
// instructions and a licensed electrician come before any number of this
// package.
package battery
