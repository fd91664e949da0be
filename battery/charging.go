package battery

import (
	"math"

	"example.com/drawbar/units"
)

// Charging is how a charger sets its voltage. What is not given is not judged,
// and a finding says so. Not every charger of a bank need be alike: give the
// one whose voltage is the highest in the cold.
type Charging struct {
	// Absorption is the highest voltage that is set for the whole bank, at
	// Reference: from the nominal one to half as much again.
	Absorption units.Opt[units.Voltage]
	// Compensation is the change of that voltage for each kelvin that the
	// sensor is warmer, of one lead-acid cell: -10 mV to 0 V, such as -4 mV.
	// 0 V is compensation turned off, and is not the same as not given.
	Compensation units.Opt[units.Voltage]
	// Cells are those that the charger takes the bank for, 1 to 1000000: six
	// for each 12 V if not given, which is also what a lead-acid profile does
	// on a lithium bank.
	Cells units.Opt[int]
	// Reference is the temperature without correction, -60 °C to 80 °C; 25 °C
	// if not given.
	Reference units.Temperature
	// Coldest is the lowest temperature of the charger's sensor, -60 °C to
	// 80 °C; the CellTemperature of the bank if not given. A charger without
	// a sensor may take its own.
	Coldest units.Temperature
}

// reference is where charge voltages are stated: common practice.
var reference = units.Celsius(25)

// A Compensated is the result of [Compensate].
type Compensated struct {
	Assembly           Assembly                 // the bank
	Cells              int                      // that the charger takes the bank for
	Reference, Coldest units.Temperature        // as used
	Absorption         units.Voltage            // of the bank, at Reference
	Compensation       units.Voltage            // for each cell and kelvin
	Voltage            units.Voltage            // of the bank, at Coldest
	Limit              units.Opt[units.Voltage] // greatest of the bank; not given: none known
}

// Compensate returns the voltage that the charger of b puts on it at the
// coldest temperature of its sensor:
//
//	V(T) = V_ref + n · c · (T - T_ref)
//
// with c a cell and kelvin, below 0, and n the cells that the charger counts.
// Lead-acid needs it. Lithium does not, and a charger left so goes above its
// limit in the cold: cells are overcharged, or protection opens under charge
// and what is left on the wires may jump. Many chargers stop correcting at some
// temperature; that is not in it, and the voltage is then too high here.
//
// Absorption, Compensation and a coldest temperature, if only that of the
// cells, must be given. A missing one is a [*units.RangeError], as is a field
// outside the range that [Charging], [Bank] and [Battery] state, and a voltage
// that comes out at 0 V or below.
func Compensate(b Bank) (Compensated, error) {
	const op = "battery.Compensate"
	a, err := b.assemble(op)
	if err != nil {
		return Compensated{}, err
	}
	c := b.Charging
	for _, f := range [...]struct {
		name string
		set  bool
	}{
		{"Absorption", c.Absorption.IsSet()}, {"Compensation", c.Compensation.IsSet()}, {"Coldest", a.coldest().IsSet()},
	} {
		if !f.set {
			return Compensated{}, &units.RangeError{Op: op, Field: f.name, Value: "not given", Allowed: allowed("a value")}
		}
	}
	v := a.compensated()
	if err := units.Above[units.Voltage](0).Check(op, "Voltage", v.Voltage); err != nil {
		return Compensated{}, err
	}
	return v, nil
}

// compensated is Compensate for a bank that is checked.
func (a Assembly) compensated() Compensated {
	c := a.Bank.Charging
	v := Compensated{
		Assembly: a, Cells: c.Cells.Or(a.leadCells()), Reference: c.Reference.Or(reference), Coldest: a.coldest(),
		Absorption: c.Absorption.Or(0), Compensation: c.Compensation.Or(0), Limit: a.ChargeVoltage,
	}
	warmer := units.Ratio(v.Coldest.Sub(v.Reference)) // how many kelvins
	v.Voltage = v.Absorption + units.Scale(v.Compensation, units.Ratio(v.Cells)*warmer)
	return v
}

// coldest returns the lowest temperature of the charger's sensor, if known.
func (a Assembly) coldest() units.Temperature {
	return a.Bank.Charging.Coldest.Or(a.Bank.CellTemperature)
}

// leadCells returns the cells of a bank as a lead-acid charger counts them.
func (a Assembly) leadCells() int {
	if a.Bank.Battery.Chemistry.IsLead() {
		return a.Cells
	}
	// Four lithium cells take the place of six lead-acid ones.
	return 6 * int(max(math.Round(units.In(a.Voltage, lithiumBlock)), 1))
}

// lithiumBlock is the nominal voltage of four lithium cells.
const lithiumBlock = 12.8 * units.Volt

// above returns by how much the voltage is above a limit, 0 V if it is not.
func (v Compensated) above(limit units.Voltage) units.Voltage {
	return max(units.Minus(v.Voltage, limit), 0)
}

// onset returns the temperature below which the voltage is above a limit. The
// compensation is not turned off.
func (v Compensated) onset(limit units.Voltage) units.Temperature {
	slope := units.Scale(v.Compensation, units.Ratio(v.Cells)) // a kelvin
	return v.Reference.Add(units.TemperatureChange(units.RatioOf(limit-v.Absorption, slope)))
}

// chargeVoltages are those that can belong to a nominal one: that of a single
// cell, or of two batteries in series, is a mistake.
func chargeVoltages(nominal units.Voltage) units.Bounds[units.Voltage] {
	return units.Between(nominal, units.Scale(nominal, 1.5))
}

// check reports the first field of c out of range, for a bank of a nominal
// voltage.
func (c Charging) check(op string, nominal units.Voltage) error {
	if err := checkOpt(op, "Absorption", c.Absorption, chargeVoltages(nominal)); err != nil {
		return err
	}
	if err := checkOpt(op, "Compensation", c.Compensation, units.Between(-10*units.Millivolt, 0)); err != nil {
		return err
	}
	if n, ok := c.Cells.Get(); ok && (n < 1 || n > 1e6) {
		return &units.RangeError{Op: op, Field: "Charging.Cells", Value: n, Allowed: allowed("1 to 1000000")}
	}
	for _, f := range [...]struct {
		name string
		t    units.Temperature
	}{{"Reference", c.Reference}, {"Coldest", c.Coldest}} {
		if f.t.IsSet() {
			if err := cellTemperatures.Check(op, f.name, f.t); err != nil {
				return err
			}
		}
	}
	return nil
}
