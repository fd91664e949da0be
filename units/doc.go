// Package units holds the quantities that every calculation is written in,
// and the mechanisms that calculators share: reading and printing, settled
// comparison, bounds, printed numbers, ladders of standard values, money and
// series.
//
//	run := 15 * units.Foot
//	r := (1.98 * units.OhmPerKilofoot).Over(2 * run) // Resistance
//	drop := (20 * units.Ampere).Through(r)           // Voltage
//	fmt.Println(drop)                                // 1.188 V
//
// # Quantities
//
// A quantity is a defined float64 in coherent SI units. Write one as a number
// times a unit constant, as with [time.Duration]: 12.8*units.Volt,
// 100*units.AmpereHour. Count units with [In]. Change dimension with the
// methods that say how in the trade's words: current Through a resistance is
// a voltage, power At a voltage is a current, power For a time is an energy.
// A factor goes through [Scale], a comparison with a whole through [RatioOf].
//
// The compiler refuses a current where a voltage belongs, and the sum of the
// two. It cannot refuse the product of two voltages, which Go calls a voltage,
// nor a bare constant, f(12.8), which Go converts. Neither is done in this
// module; its tests look for both.
//
// Each unit constant is the decimal that defines it, with its source; one
// marked exact is a definition, one marked derived is a quotient or a
// multiple of π given to more digits than a float64 holds. Where a constant
// cites SP 811 (NIST, 2008), the citation is from memory; the tests hold the
// factors to their definitions and to a table recorded from GNU Units. A typed
// constant and its product with a number are each rounded to float64, so
// In(v*unit, unit) can differ from v in the last bit; only [Parse] rounds once.
//
// # Text
//
// [Parse] reads what people write. Of the verbs of package fmt, %v and %s
// print up to six significant digits (the precision sets another number) in
// the unit that suits the size; %f, %e and %g print in the unit of
// MarshalText; the width counts the unit. All text is rounded from the settled
// value, half away from zero. MarshalText reads back exactly.
//
// # Verdicts
//
// Physics runs in float64; what is decided or printed is settled first, to
// nine significant digits: see [Settle], [Compare], [Exceeds] and [Minus]. So
// no verdict moves when an input moves by a part in 1e12, or when a processor
// fuses a multiplication with an addition.
package units
