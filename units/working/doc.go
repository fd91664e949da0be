// Package working holds what stands behind a result: its working, step by
// step, with formulas and sources; its findings, which a reader must know; and
// the verdict on a number that somebody else states.
//
//	s := working.NewSheet("Voltage drop")
//	s.Given("I", drop.Current, "A", "load current")
//	s.Given("R", drop.Resistance, "mΩ", "of both conductors")
//	s.Formula("ΔV", drop.Voltage, "V", "Lost in the conductors", "I * R / 1000")
//	fmt.Println(s.Text())
//
// # Formulas
//
// A formula is a Go expression cut down to numbers, names, + - * /, a
// comparison, parentheses and the functions that [ParseFormula] lists. A
// power is pow(x, y), since ^ means something else in Go. The names pi, pct
// and deg are numbers: π, 0.01 and π/180; so sin(30 * deg) is one half, and
// ΔV / V / pct a percentage.
//
// A symbol stands for its quantity divided by the unit that its step shows it
// in, and a temperature in °C for the Celsius reading. Formulas are therefore
// relations of plain numbers, which may need a factor: I * R / 1000 above,
// for a resistance in milliohms and a voltage in volts.
//
// What stands before the first _ of a name is the symbol, the rest its
// subscript, where a further _ is a comma: ρ_20, I_load, V_load_min. Greek is
// typed as such. Symbols of one letter are set slanted, longer ones upright;
// a Δ or δ in front is set apart. A number times pct or deg is shown as 5 %
// or 30°, pct and deg elsewhere as 1 % and 1°.
//
// # Digits
//
// Inputs, constants and looked-up values are printed to six significant
// digits, results to four. The numbers put into a formula have as many as it
// takes for a reader who works it out to arrive at the printed result, within
// one unit of its last digit: six at least, nine at most. Where even nine are
// not enough, since operands cancel, the result has fewer.
//
// # Mistakes
//
// A sheet checks itself as it is recorded: a name declared twice, a unit that
// the value lacks, a symbol no earlier step declares, a formula that does not
// give the value it stands for. No mistake panics; it is shown in its step,
// and [Sheet.Err] returns the first.
package working
