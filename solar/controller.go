package solar

import "example.com/drawbar/units"

// ControllerKind is how a controller passes power on. The zero value is not
// given.
type ControllerKind uint8

const (
	// MPPT converts: it holds the panels at their maximum power and passes that
	// on at the voltage of the bank.
	MPPT ControllerKind = iota + 1
	// PWM switches: it ties the panels to the bank, so that they work at the
	// voltage of the bank and what they could give above it is lost.
	PWM
)

// String returns "MPPT", "PWM" or "not given".
func (k ControllerKind) String() string {
	switch k {
	case MPPT:
		return "MPPT"
	case PWM:
		return "PWM"
	}
	return "not given"
}

// A Controller is a charge controller by its datasheet.
type Controller struct {
	Kind         ControllerKind           // needed
	InputVoltage units.Voltage            // the most that its input withstands, > 0
	InputCurrent units.Opt[units.Current] // the most short-circuit current at its input, > 0
	Output       units.Opt[units.Current] // the most current into the bank, > 0
	// Efficiency is that of an MPPT controller, above 0 % and not above 100 %.
	// Not given means that no loss is counted, so that the current is an upper
	// bound. A PWM controller has none.
	Efficiency units.Opt[units.Ratio]
}

// A Hookup is an array on a controller and a bank.
type Hookup struct {
	Rules      RuleSet                  // needed
	Array      Array                    // Power, Voc, Vmp and Isc are needed
	StringFuse units.Opt[units.Current] // the fuse in each string, > 0
	Coldest    units.Temperature        // see [ColdString]; needed
	// Hottest is the temperature of the cells in full sun on the hottest day,
	// 25 °C to 120 °C; see [CellTemperature]. Not given means that whether a
	// string charges the bank is judged at 25 °C only, and Findings says so.
	Hottest    units.Temperature
	Controller Controller    // that feeds the bank
	Bank       units.Voltage // of the bank while it is charged, > 0; the lowest makes the greatest current
}

// A Fit is the result of [FitController].
type Fit struct {
	Hookup   Hookup          // as used
	Cold     ColdOpen        // voltage of a string on the coldest morning
	Currents CircuitCurrents // of the array
	Peak     units.Power     // nameplate power of the array
	Vmp      units.Voltage   // of a string at maximum power and 25 °C
	// HotVmp is that at Hottest; not above 0 V if nothing is left. Not set if
	// Hottest or the voltage coefficient is not given.
	HotVmp         units.Opt[units.Voltage]
	Efficiency     units.Ratio   // the one used
	Offered        units.Current // into the bank in full sun, if nothing limited it
	Charging       units.Current // into the bank in full sun, as limited
	Power          units.Power   // into the bank in full sun
	OutputRequired units.Current // for conductors and fuse between controller and bank
}

// FitController holds an array against a controller: the cold voltage of
// [ColdVoltage] against what the input withstands, the currents of [Currents]
// against its limits, and what comes out in full sun (1000 W/m², cells at
// 25 °C):
//
//	MPPT: I = η · P / V_bank      PWM: I = m · I_sc
//
// with an MPPT controller not above its output limit; a PWM controller has no
// way to limit it. For PWM that is an upper bound: near its maximum-power
// voltage a panel gives some percent less. The conductors and the fuse between
// controller and bank must carry 125 % of the output limit or of what comes
// out, whichever is more.
//
// A string charges the bank only while its voltage at maximum power is above
// that of the bank, at 25 °C and with the hottest cells, where it has lost as
// many volts a kelvin as the open-circuit voltage (common practice):
//
//	V_hot = n · (V_mp + β · V_oc · (T − 25 °C))
//
// A field outside the range that [Hookup] and the types in it state gives a
// [*units.RangeError] and the zero Fit, as do the errors of ColdVoltage.
func FitController(h Hookup) (Fit, error) {
	const op = "solar.FitController"
	f := Fit{Hookup: h}
	var err error
	f.Cold, err = coldVoltage(op, ColdString{Rules: h.Rules, Panel: h.Array.Panel, Series: h.Array.Series, Coldest: h.Coldest})
	if err != nil {
		return Fit{}, err
	}
	f.Currents, err = currents(op, Strings{Rules: h.Rules, Array: h.Array, StringFuse: h.StringFuse})
	if err != nil {
		return Fit{}, err
	}
	if err := h.check(op); err != nil {
		return Fit{}, err
	}
	f.output()
	if err := f.checkResult(op); err != nil {
		return Fit{}, err
	}
	return f, nil
}

// output fills in what comes out.
func (f *Fit) output() {
	h := f.Hookup
	f.Peak = units.Scale(h.Array.Panel.Power, h.Array.count())
	f.Vmp = units.Scale(h.Array.Panel.Vmp, units.Ratio(h.Array.Series))
	if beta, ok := h.Array.Panel.VoltageCoefficient.Get(); ok && h.Hottest.IsSet() {
		lost := units.Scale(f.Cold.Standard, -beta.Over(h.Hottest.Sub(testCell)))
		f.HotVmp = units.Some(units.Minus(f.Vmp, lost))
	}
	f.Efficiency = h.Controller.Efficiency.Or(1)
	f.Offered = units.Scale(f.Peak, f.Efficiency).At(h.Bank)
	if h.Controller.Kind == PWM {
		f.Offered = f.Currents.ShortCircuit
	}
	f.Charging = f.Offered
	limit, ok := h.Controller.Output.Get()
	if ok && h.Controller.Kind == MPPT && units.Exceeds(f.Charging, limit) {
		f.Charging = limit
	}
	// An upper bound of the current times the voltage can be more power than
	// the panels have.
	f.Power = min(f.Charging.At(h.Bank), f.Peak)
	f.OutputRequired = units.Scale(max(f.Charging, limit), continuousFactor)
	if h.Controller.Kind == PWM {
		// The same current flows on both sides, so both need what the array
		// side needs.
		f.OutputRequired = max(f.OutputRequired, f.Currents.Required)
	}
}

// checkResult reports the first result that no float64 holds. A limit can
// hide one that is infinite, so each is looked at.
func (f Fit) checkResult(op string) error {
	// Power needs no look: it is never above Peak.
	amperes := units.Above[units.Current](0)
	if err := units.Above[units.Power](0).Check(op, "Peak", f.Peak); err != nil {
		return err
	}
	if err := amperes.Check(op, "Offered", f.Offered); err != nil {
		return err
	}
	return amperes.Check(op, "OutputRequired", f.OutputRequired)
}

// check reports the first field out of range of those that neither the cold
// voltage nor the currents use.
func (h Hookup) check(op string) error {
	if err := h.Array.Panel.checkPower(op); err != nil {
		return err
	}
	if h.Hottest.IsSet() {
		hot := units.TemperatureBounds{Low: testCell, High: units.Celsius(120)}
		if err := hot.Check(op, "Hottest", h.Hottest); err != nil {
			return err
		}
	}
	if err := h.Controller.check(op); err != nil {
		return err
	}
	return units.Above[units.Voltage](0).Check(op, "Bank", h.Bank)
}

func (c Controller) check(op string) error {
	if c.Kind != MPPT && c.Kind != PWM {
		return &units.RangeError{Op: op, Field: "Kind", Value: c.Kind, Allowed: allowed("MPPT or PWM")}
	}
	if err := units.Above[units.Voltage](0).Check(op, "InputVoltage", c.InputVoltage); err != nil {
		return err
	}
	positive := units.Above[units.Current](0)
	if limit, ok := c.InputCurrent.Get(); ok {
		if err := positive.Check(op, "InputCurrent", limit); err != nil {
			return err
		}
	}
	if limit, ok := c.Output.Get(); ok {
		if err := positive.Check(op, "Output", limit); err != nil {
			return err
		}
	}
	eta, ok := c.Efficiency.Get()
	switch {
	case !ok:
		return nil
	case c.Kind == PWM:
		return &units.RangeError{Op: op, Field: "Efficiency", Value: eta, Allowed: allowed("not given for PWM")}
	}
	return units.Above[units.Ratio](0).AtMost(1).Check(op, "Efficiency", eta)
}
