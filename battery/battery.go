package battery

import "example.com/drawbar/units"

// A Battery is one battery as its label and datasheet describe it. Chemistry,
// Capacity and Voltage are needed; every other field has the default of the
// chemistry or, where it says so, none.
type Battery struct {
	Chemistry Chemistry    // must be given
	Capacity  units.Charge // as marked, > 0
	// Voltage is the nominal one, > 0. Without Cells it tells how many there
	// are, and a voltage that no usual number of them makes is refused.
	Voltage units.Voltage
	// Cells in series inside the battery, 1 to 1000. If not given, the usual
	// number whose cells come nearest to their nominal voltage: of lead-acid 1,
	// 2, 3, 4, 6, 12, 18 or 24, at 1.9 V to 2.15 V each; of lithium 1, 4, 8, 12,
	// 15 or 16, at 3 V to 3.4 V each. So lithium marked 48 V is taken to have 15
	// cells, with a finding that it may have 16.
	Cells units.Opt[int]
	// RatedOver is the time that Capacity is marked for, > 0: 20 h for most
	// lead-acid. Not the time of your own discharge.
	RatedOver units.Opt[units.Elapsed]
	// Exponent is Peukert's, 1 to 2; see [ExponentFrom].
	Exponent units.Opt[units.Ratio]
	// Usable is the part of the charge there is at the current drawn that may
	// be taken out, > 0 to 100 %. An explicit 100 % is data.
	Usable units.Opt[units.Ratio]
	// Aged is the part of Capacity that use has left, > 0 to 100 %; a new
	// battery, 100 %, if not given.
	Aged units.Opt[units.Ratio]
	// DischargeLimit and ChargeLimit are the greatest lasting currents, > 0,
	// those of the protection where there is one. They have no default: what
	// is not given is not judged, and a finding says so.
	DischargeLimit, ChargeLimit units.Opt[units.Current]
	// Resistance inside the battery, > 0. It has no default: without it no sag
	// and no fault current can be worked out.
	Resistance units.Opt[units.Resistance]
	// OpenCircuit is the voltage of the full battery at rest, > 0.
	OpenCircuit units.Opt[units.Voltage]
	// ChargeLow and ChargeHigh limit the cell temperature while charging.
	ChargeLow, ChargeHigh units.Temperature
	// ChargeVoltage is the greatest that a charger may put on the battery, from
	// the nominal voltage to half as much again.
	ChargeVoltage units.Opt[units.Voltage]
}

// A Bank is batteries of one kind: strings of Series batteries, Parallel of
// them side by side.
type Bank struct {
	Battery          Battery // each of them
	Series, Parallel int     // 1 to 1000 each
	// CellTemperature is the one the cells have when the bank is charged,
	// the lowest of them if it changes, -60 °C to 80 °C. Not given is unknown,
	// which for lithium is a finding; 0 °C is 0 °C.
	CellTemperature units.Temperature
	// Multiplier is how much more rated capacity the cold asks for, 1 or more,
	// as sizing tables print it: 1.40 and not 71 %. The usable charge is
	// divided by it. 1 if not given.
	Multiplier units.Opt[units.Ratio]
	// Vent is the free area of each of the two openings, low and high, of a
	// lead bank's compartment to the outside, >= 0. 0 is no opening; not given
	// is unknown, which is a finding.
	Vent units.Opt[units.Area]
	// Charging is how the charger sets its voltage; see [Compensate].
	Charging Charging
}

// An Assembly is the result of [Assemble]: a bank as its terminals show it,
// with the figures that hold for it, from the datasheet where it gives them.
type Assembly struct {
	Bank        Bank                        // as used
	Cells       int                         // in series, of one string
	Batteries   int                         // of all strings
	Voltage     units.Voltage               // nominal
	Capacity    units.Charge                // as marked, all strings
	Energy      units.Energy                // Capacity at Voltage
	OpenCircuit units.Voltage               // full, at rest
	Resistance  units.Opt[units.Resistance] // inside the bank; not given if the battery's is not
	RatedOver   units.Elapsed               // time that Capacity is marked for
	Exponent    units.Ratio                 // Peukert's
	Depth       units.Ratio                 // part of the charge that may be taken out, settled
	ChargeLow   units.Temperature           // of the cells; not given: no limit known
	ChargeHigh  units.Temperature           // of the cells
	// ChargeVoltage is the greatest of the bank; not given: no limit known.
	ChargeVoltage units.Opt[units.Voltage]
}

// Assemble returns what b is at its terminals. Series adds volts and
// resistance; parallel adds ampere-hours and divides resistance:
//
//	V = V_battery · Series
//	C = C_battery · Parallel
//	R = R_battery · Series / Parallel
//
// Links and cables are not in R. A field outside the range that [Battery] and
// [Bank] state, or not finite, gives a [*units.RangeError], which matches
// [units.ErrRange]; so does a result that no float64 holds. The Assembly is
// then the zero value.
func Assemble(b Bank) (Assembly, error) { return b.assemble("battery.Assemble") }

func (b Bank) assemble(op string) (Assembly, error) {
	if err := b.check(op); err != nil {
		return Assembly{}, err
	}
	f, one := b.Battery.Chemistry.figures(), b.Battery
	series, parallel := units.Ratio(b.Series), units.Ratio(b.Parallel)
	cells, other := one.cells()
	a := Assembly{
		Bank:        b,
		Cells:       cells * b.Series,
		Batteries:   b.Series * b.Parallel,
		Voltage:     units.Scale(one.Voltage, series),
		Capacity:    units.Scale(one.Capacity, parallel),
		OpenCircuit: units.Scale(one.OpenCircuit.Or(units.Scale(f.OpenCircuit.Value, units.Ratio(cells))), series),
		RatedOver:   one.RatedOver.Or(f.RatedOver.Value),
		Exponent:    one.Exponent.Or(f.Exponent.Value),
		Depth:       units.Settle(one.Usable.Or(f.PlanningDepth.Value)),
		ChargeLow:   one.ChargeLow.Or(f.ChargeLow.Value),
		ChargeHigh:  one.ChargeHigh.Or(f.ChargeHigh.Value),
	}
	if most, ok := one.ChargeVoltage.Get(); ok {
		a.ChargeVoltage = units.Some(units.Scale(most, series))
	} else if each := f.ChargeVoltage.Value; each != 0 && other == 0 { // a guess is no limit
		a.ChargeVoltage = units.Some(units.Scale(each, units.Ratio(a.Cells)))
	}
	a.Energy = a.Capacity.At(a.Voltage)
	if r, ok := one.Resistance.Get(); ok {
		a.Resistance = units.Some(units.Scale(r, series/parallel))
		if err := units.Above[units.Resistance](0).Check(op, "Resistance", a.Resistance.Or(0)); err != nil {
			return Assembly{}, err
		}
	}
	if err := units.Above[units.Voltage](0).Check(op, "OpenCircuit", a.OpenCircuit); err != nil {
		return Assembly{}, err
	}
	if err := units.Above[units.Energy](0).Check(op, "Energy", a.Energy); err != nil {
		return Assembly{}, err
	}
	return a, nil
}

// parts is the range of a part that is not nothing.
func parts() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).AtMost(1) }

// checkExponent refuses an exponent of Peukert's law below 1 or above 2. It
// reports plain numbers: a ratio would show in percent.
func checkExponent(op string, k units.Ratio) error {
	if units.Between[units.Ratio](1, 2).Contains(k) {
		return nil
	}
	return &units.RangeError{Op: op, Field: "Exponent", Value: float64(k), Allowed: allowed("1 to 2")}
}

var (
	cellTemperatures = units.TemperatureBounds{Low: units.Celsius(-60), High: units.Celsius(80)}
	counts           = allowed("1 to 1000")
)

// check reports the first field of b out of range.
func (b Bank) check(op string) error {
	if err := b.Battery.check(op); err != nil {
		return err
	}
	if b.Series < 1 || b.Series > 1000 {
		return &units.RangeError{Op: op, Field: "Series", Value: b.Series, Allowed: counts}
	}
	if b.Parallel < 1 || b.Parallel > 1000 {
		return &units.RangeError{Op: op, Field: "Parallel", Value: b.Parallel, Allowed: counts}
	}
	if b.CellTemperature.IsSet() {
		if err := cellTemperatures.Check(op, "CellTemperature", b.CellTemperature); err != nil {
			return err
		}
	}
	if err := checkOpt(op, "Multiplier", b.Multiplier, units.AtLeast[units.Ratio](1)); err != nil {
		return err
	}
	if err := checkOpt(op, "Vent", b.Vent, units.AtLeast[units.Area](0)); err != nil {
		return err
	}
	return b.Charging.check(op, units.Scale(b.Battery.Voltage, units.Ratio(b.Series)))
}

// check reports the first field of b out of range.
func (b Battery) check(op string) error {
	if err := b.Chemistry.check(op); err != nil {
		return err
	}
	if err := units.Above[units.Charge](0).Check(op, "Capacity", b.Capacity); err != nil {
		return err
	}
	if err := b.checkCells(op); err != nil {
		return err
	}
	if err := checkOpt(op, "RatedOver", b.RatedOver, units.Above[units.Elapsed](0)); err != nil {
		return err
	}
	if k, ok := b.Exponent.Get(); ok {
		if err := checkExponent(op, k); err != nil {
			return err
		}
	}
	if err := checkOpt(op, "Usable", b.Usable, parts()); err != nil {
		return err
	}
	if err := checkOpt(op, "Aged", b.Aged, parts()); err != nil {
		return err
	}
	if err := checkOpt(op, "DischargeLimit", b.DischargeLimit, units.Above[units.Current](0)); err != nil {
		return err
	}
	if err := checkOpt(op, "ChargeLimit", b.ChargeLimit, units.Above[units.Current](0)); err != nil {
		return err
	}
	if err := checkOpt(op, "Resistance", b.Resistance, units.Above[units.Resistance](0)); err != nil {
		return err
	}
	if err := checkOpt(op, "OpenCircuit", b.OpenCircuit, units.Above[units.Voltage](0)); err != nil {
		return err
	}
	if err := checkOpt(op, "ChargeVoltage", b.ChargeVoltage, chargeVoltages(b.Voltage)); err != nil {
		return err
	}
	return b.checkTemperatures(op)
}

// checkTemperatures checks the limits that are given, and that a cell can be
// between them.
func (b Battery) checkTemperatures(op string) error {
	if b.ChargeLow.IsSet() {
		if err := cellTemperatures.Check(op, "ChargeLow", b.ChargeLow); err != nil {
			return err
		}
	}
	if !b.ChargeHigh.IsSet() {
		return nil
	}
	low := b.ChargeLow.Or(b.Chemistry.figures().ChargeLow.Value).Or(cellTemperatures.Low)
	return units.TemperatureBounds{Low: low, High: cellTemperatures.High}.Check(op, "ChargeHigh", b.ChargeHigh)
}

// checkOpt checks a field that may be left out.
func checkOpt[Q units.Quantity](op, field string, v units.Opt[Q], b units.Bounds[Q]) error {
	if x, ok := v.Get(); ok {
		return b.Check(op, field, x)
	}
	return nil
}
