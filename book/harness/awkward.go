package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

var theInverter = weave.Worked{
	Name:  "inverter",
	Title: "One step of arithmetic, and where it settles",
	Question: "A half-charged lead bank of {{voltage}} and {{bank}} runs an inverter that takes {{power}}, over {{cable}} of cable there and " +
		"back, lugs and fuse included. The inverter stops at {{lowest}}. Watts over volts says that it runs. Does it?",
	Inputs: []weave.Input{
		{Name: "voltage", Label: voltageInput.Label, Default: "12.2 V", Unit: "V", Low: "10.6 V", High: "60 V"},
		bankInput,
		{Name: "cable", Label: "resistance of the cable, there and back", Default: "4 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "40 mΩ"},
		{Name: "power", Label: "power that the inverter takes", Default: "1800 W", Unit: "W", Low: "10 W", High: "6000 W"},
		{Name: "lowest", Label: "voltage at which it stops", Default: "10.5 V", Unit: "V", Low: "9 V", High: "55 V"},
	},
	Solve:   solveInverter,
	Helpers: []string{"word"},
}

func solveInverter(in *weave.Inputs) (weave.Answer, error) {
	e := weave.In[units.Voltage](in, "voltage")
	bank := weave.In[units.Resistance](in, "bank")
	cable := weave.In[units.Resistance](in, "cable")
	power := weave.In[units.Power](in, "power")
	lowest := weave.In[units.Voltage](in, "lowest")
	h, f, err := solve(wire.Network{
		Batteries: oneBank(e, bank),
		Branches: []wire.Branch{{
			Name:   "inverter",
			Extra:  cable,
			Load:   wire.Load{Power: power},
			Lowest: units.Some(lowest),
			Limit:  units.Some(250 * units.Ampere),
		}},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	if c, ok := f.Collapse.Get(); ok {
		return collapsed(f, c), nil
	}
	// One step: the current at rest, and the drop that it makes.
	step := power.At(e)
	left := e - step.Through(bank+cable)
	settled := f.Points[0]
	most, err := h.MostPower("inverter", wire.Moment{})
	return weave.Answer{
		Text: "One step has {{step}} and leaves {{left}}: it " +
			"{{says}}. But less voltage means more current, " +
			"which means less voltage. That settles at " +
			"{{current}} and {{volts}}: it {{does}}. The load " +
			"is {{part}} of the most that could be had here.",
		Values: []weave.Value{
			weave.Show("step", step, "A", 4),
			weave.Show("left", left, "V", 5),
			weave.Say("says", word(left, lowest)),
			weave.Show("current", settled.Current, "A", 4),
			weave.Show("volts", settled.Voltage, "V", 5),
			weave.Say("does", word(settled.Voltage, lowest)),
			weave.Show("part", units.RatioOf(power, most), "%", 3),
		},
		Working:  f.Working(0),
		Findings: f.Findings(),
		Checks:   quadraticByHand(settled),
	}, err
}

// word says what an inverter does at v.
func word(v, lowest units.Voltage) string {
	if units.Exceeds(lowest, v) {
		return "stops"
	}
	return "runs"
}
