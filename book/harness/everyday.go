package harness

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// Inputs that several examples share.
var (
	voltageInput = weave.Input{Name: "voltage", Label: "open-circuit voltage of the bank", Default: "12.8 V", Unit: "V", Low: "10 V", High: "60 V"}
	bankInput    = weave.Input{Name: "bank", Label: "resistance of the bank", Default: "6 mΩ", Unit: "mΩ", Low: "0.5 mΩ", High: "60 mΩ"}
	lampsInput   = weave.Input{Name: "lamps", Label: "current of the lamps", Default: "4 A", Unit: "A", Low: "0 A", High: "15 A"}
	fridgeInput  = weave.Input{Name: "fridge", Label: "power of the refrigerator", Default: "60 W", Unit: "W", Low: "0 W", High: "200 W"}
	lowestInput  = weave.Input{Name: "lowest", Label: "lowest voltage allowed", Default: "12 V", Unit: "V", Low: "9 V", High: "55 V"}
)

var thePanel = weave.Worked{
	Name:  "panel",
	Title: "A panel with a refrigerator and lamps",
	Question: "A bank of {{voltage}} and {{bank}} feeds a panel over {{feeder}} of 6 AWG. On the panel hang a refrigerator of {{fridge}} over " +
		"20 ft of 10 AWG, and lamps of {{lamps}} over {{branch}} of 14 AWG. Lengths are one way. The lamps want {{lowest}}. Do they get it, " +
		"and where is the voltage lost?",
	Inputs: []weave.Input{
		voltageInput, bankInput,
		{Name: "feeder", Label: "length of the feeder, one way", Default: "10 ft", Unit: "ft", Low: "1 ft", High: "40 ft"},
		fridgeInput, lampsInput,
		{Name: "branch", Label: "length of the lamps' run, one way", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		lowestInput,
	},
	Solve:   solvePanel,
	Helpers: []string{"oneBank", "solve"},
}

func solvePanel(in *weave.Inputs) (weave.Answer, error) {
	lowest := units.Some(weave.In[units.Voltage](in, "lowest"))
	_, f, err := solve(wire.Network{
		Batteries: oneBank(
			weave.In[units.Voltage](in, "voltage"),
			weave.In[units.Resistance](in, "bank"),
		),
		Branches: []wire.Branch{
			{
				Name:      "panel",
				Conductor: wire.Conductor{Size: wire.AWG(6)},
				OneWay:    weave.In[units.Length](in, "feeder"),
				Limit:     units.Some(40 * units.Ampere),
			},
			{
				Name:      "refrigerator",
				Parent:    "panel",
				Conductor: wire.Conductor{Size: wire.AWG(10)},
				OneWay:    20 * units.Foot,
				Load: wire.Load{
					Power: weave.In[units.Power](in, "fridge"),
				},
				Lowest: lowest,
				Limit:  units.Some(20 * units.Ampere),
			},
			{
				Name:      "lamps",
				Parent:    "panel",
				Conductor: wire.Conductor{Size: wire.AWG(14)},
				OneWay:    weave.In[units.Length](in, "branch"),
				Load: wire.Load{
					Current: weave.In[units.Current](in, "lamps"),
				},
				Lowest: lowest,
				Limit:  units.Some(15 * units.Ampere),
			},
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	panel, fridge, lamps := f.Points[0], f.Points[1], f.Points[2]
	return weave.Answer{
		Text: "The lamps get {{lamps_get}}, the refrigerator " +
			"{{fridge_gets}}. On the way to the lamps the bank " +
			"loses {{in_bank}} inside, the feeder {{in_feeder}} " +
			"and the lamps' own run {{in_run}}. The feeder " +
			"carries {{current}}, everybody's current.",
		Values: []weave.Value{
			weave.Show("lamps_get", lamps.Voltage, "V", 4),
			weave.Show("fridge_gets", fridge.Voltage, "V", 4),
			weave.Show("in_bank", f.OpenCircuit-f.Voltage, "V", 2),
			weave.Show("in_feeder", panel.Drop, "V", 2),
			weave.Show("in_run", lamps.Drop, "V", 2),
			weave.Show("current", panel.Current, "A", 3),
		},
		Working:  f.Working(2),
		Findings: f.Findings(),
	}, nil
}

var theDimming = weave.Worked{
	Name:  "dimming",
	Title: "The lights dim when the inverter starts",
	Question: "Lamps that take {{lamps}} at 12 V, counted as a resistance, hang on a panel 10 ft from a bank of {{voltage}} and {{bank}}. An " +
		"inverter that takes {{power}} is {{fed}}. What do the lamps get before and after it starts, and whose fault is the difference?",
	Inputs: []weave.Input{
		{Name: "voltage", Label: voltageInput.Label, Default: "12.8 V", Unit: "V", Low: "10 V", High: "16 V"},
		bankInput,
		{Name: "lamps", Label: "current of the lamps at 12 V", Default: "4 A", Unit: "A", Low: "0.1 A", High: "15 A"},
		{Name: "power", Label: "power that the inverter takes", Default: "1500 W", Unit: "W", Low: "50 W", High: "5000 W"},
		{Name: "fed", Label: "where the inverter is fed from", Default: "on 4 ft of 1/0 AWG of its own",
			Choices: []string{"on 4 ft of 1/0 AWG of its own", "on the panel"}},
	},
	Solve:   solveDimming,
	Helpers: []string{"collapsed"},
}

func solveDimming(in *weave.Inputs) (weave.Answer, error) {
	lamps := wire.Load{Resistance: units.Some((12 * units.Volt).Per(
		weave.In[units.Current](in, "lamps")))}
	power := weave.In[units.Power](in, "power")
	lowest := units.Some(12 * units.Volt)
	inverter := wire.Branch{
		Name:   "inverter",
		Lowest: units.Some(10.5 * units.Volt),
		Limit:  units.Some(150 * units.Ampere),
	}
	if weave.Text(in, "fed") == "on the panel" {
		inverter.Parent = "panel"
	} else {
		inverter.Conductor.Size = wire.Aught(1)
		inverter.OneWay = 4 * units.Foot
	}
	h, err := wire.NewHarness(wire.Network{
		Batteries: oneBank(
			weave.In[units.Voltage](in, "voltage"),
			weave.In[units.Resistance](in, "bank"),
		),
		Branches: []wire.Branch{
			{
				Name:      "panel",
				Conductor: wire.Conductor{Size: wire.AWG(6)},
				OneWay:    10 * units.Foot,
				Limit:     units.Some(40 * units.Ampere),
			},
			{
				Name:      "lamps",
				Parent:    "panel",
				Conductor: wire.Conductor{Size: wire.AWG(14)},
				OneWay:    15 * units.Foot,
				Load:      lamps,
				Lowest:    lowest,
				Limit:     units.Some(15 * units.Ampere),
			},
			inverter,
		},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	var off, on wire.Flow
	if err := h.Solve(&off, wire.Moment{}); err != nil {
		return weave.Answer{}, err
	}
	err = h.Solve(&on, wire.Moment{Loads: []wire.Load{
		{}, lamps, {Power: power},
	}})
	if err != nil {
		return weave.Answer{}, err
	}
	if c, ok := on.Collapse.Get(); ok {
		return collapsed(&on, c), nil
	}
	before, after := off.Points[1], on.Points[1]
	dimmer := units.RatioOf(before.Power-after.Power, before.Power)
	return weave.Answer{
		Text: "Before, the lamps get {{before}}; after, " +
			"{{after}}, with {{dimmer}} less power. The bank " +
			"loses {{in_bank}} more inside; the drop in the " +
			"panel's feeder changes by {{in_feeder}}. The " +
			"inverter takes {{current}}.",
		Values: []weave.Value{
			weave.Show("before", before.Voltage, "V", 4),
			weave.Show("after", after.Voltage, "V", 4),
			weave.Show("dimmer", dimmer, "%", 2),
			weave.Show("in_bank", off.Voltage-on.Voltage, "V", 3),
			weave.Show("in_feeder",
				on.Points[0].Drop-off.Points[0].Drop, "V", 2),
			weave.Show("current", on.Points[2].Drawn, "A", 4),
		},
		Working:  on.Working(1),
		Findings: on.Findings(),
	}, nil
}
