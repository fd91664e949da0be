// Package solar answers what the sun gives a vehicle's roof and what its
// panels may do to the parts behind them: the length of the day and the
// irradiation above the air, what panels harvest in a day, how warm their
// cells get, what voltage a string has on the coldest morning and with the
// hottest cells, what currents its conductors and fuses must carry, and whether
// a controller fits.
//
//	harvest, err := solar.DailyHarvest(solar.PanelDay{
//		Peak:        440 * units.Watt,
//		Irradiation: 3.037 * units.KilowattHourPerSquareMetre,
//		Losses:      solar.TypicalLosses(),
//	})
//
// Angles of latitude are north positive. Panels are described by the numbers
// of their datasheet at standard test conditions: 1000 W/m² and a cell
// temperature of 25 °C.
//
// Left out here: the sun's place at an instant, clouds, tilt, shade over a
// day, and what a bank can still take: a harvest is what could be had, and a
// full bank takes nothing of it. Required currents are returned as they come
// out; the standard rating above one, the conductor and its protection are
// not chosen here.
//
// Panels in daylight cannot be switched off, and direct current from them
// makes an arc that does not go out by itself. Local codes, the makers'
// instructions and a licensed electrician come before any number of this
// package.
package solar
