package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// NECMargin is what NEC 2017, 690.8(B)(1) and 706.21(B), ask of conductor and
// device of a storage circuit: 125 % of the greatest current.
const NECMargin units.Ratio = 1.25

// A DCSide asks for the battery side of a machine.
type DCSide struct {
	Machine Machine // its LowestVoltage is needed
	// Margin is the part of the current that conductor and device must be
	// rated for, 1 or more: the rule set's, such as [NECMargin].
	Margin units.Ratio
}

// A DCCurrent is the result of [BatterySide].
type DCCurrent struct {
	Side     DCSide        // as used
	Power    units.Power   // drawn at full output
	Current  units.Current // drawn at full output and lowest voltage
	Required units.Current // that conductor and device must be rated for, before correction for heat
}

// BatterySide returns what s draws from its bank at full output and lowest
// voltage:
//
//	P_dc  = P_rated / η
//	I_dc  = P_dc / V_lowest
//	I_req = k · I_dc
//
// The efficiency stated for full output has the machine's own use in it, so
// that is not added. P_rated/V_nominal, without efficiency and at a full bank,
// gives a device that opens when the bank is tired.
//
// A field outside the range that [DCSide] and [Machine] state, or not finite,
// gives a [*units.RangeError]; so does a result that no float64 holds. The
// DCCurrent is then the zero value.
func BatterySide(s DCSide) (DCCurrent, error) {
	const op = "inverter.BatterySide"
	if err := s.Machine.check(op); err != nil {
		return DCCurrent{}, err
	}
	lowest, ok := s.Machine.LowestVoltage.Get()
	if !ok {
		return DCCurrent{}, &units.RangeError{Op: op, Field: "LowestVoltage", Value: s.Machine.LowestVoltage, Allowed: positive[units.Voltage]()}
	}
	if err := units.AtLeast[units.Ratio](1).Check(op, "Margin", s.Margin); err != nil {
		return DCCurrent{}, err
	}
	c := DCCurrent{Side: s, Power: input(s.Machine.Continuous, s.Machine.Efficiency)}
	c.Current = c.Power.At(lowest)
	c.Required = units.Scale(c.Current, s.Margin)
	if err := firstError(
		positive[units.Power]().Check(op, "Power", c.Power),
		positive[units.Current]().Check(op, "Current", c.Current),
		positive[units.Current]().Check(op, "Required", c.Required),
	); err != nil {
		return DCCurrent{}, err
	}
	return c, nil
}

// input returns what goes into a conversion for what comes out.
func input[Q units.Quantity](out Q, efficiency units.Ratio) Q {
	return Q(float64(out) / float64(efficiency))
}

// Working returns how the current came about, step by step.
func (c DCCurrent) Working() *working.Sheet {
	m := c.Side.Machine
	s := working.NewSheet("Inverter: battery side")
	s.Given("P_rated", m.Continuous, "W", "that the machine gives for hours")
	s.Given("η", m.Efficiency, "1", "efficiency at that output")
	s.Given("V_lowest", m.LowestVoltage.Or(0), "V", "where it cuts off")
	s.Choose("voltage", "the lowest", "the current is greatest there", lowestVoltage)
	s.Formula("P_dc", c.Power, "W", "drawn from the bank", "P_rated / η")
	s.Formula("I_dc", c.Current, "A", "drawn from the bank", "P_dc / V_lowest")
	s.Constant("k", c.Side.Margin, "1", "margin of conductor and device", c.marginSource())
	s.Formula("I_req", c.Required, "A", "that conductor and device must be rated for", "k * I_dc")
	return s
}

// marginSource returns where the margin is from: the code, if it is the code's.
func (c DCCurrent) marginSource() working.Source {
	if units.Compare(c.Side.Margin, NECMargin) == 0 {
		return necMargin
	}
	return asGiven
}

// Findings returns what the numbers leave to others.
func (c DCCurrent) Findings() []working.Finding {
	return []working.Finding{{
		Severity: working.Note, Rule: "dc-device-not-checked", Source: c.marginSource(),
		Numbers: []working.Number{{Name: "current", Value: c.Current}, {Name: "required", Value: c.Required}, {Name: "margin", Value: c.Side.Margin}},
		Message: "The required current is before correction for heat; conductor, device, bank and every switch and bus bar between them must each carry it.",
		Fix:     "Check the circuit with package wire and the bank's limits with one battery out; a licensed electrician decides.",
	}}
}
