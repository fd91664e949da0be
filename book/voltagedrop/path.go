package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

const wholePath = weave.Prose(`## The rest of the path

So far the loop was two good conductors. A real one also has joints, may have its conductors doubled, and may have a vehicle
for one of them.

A joint has no table. It is measured, loaded: the voltage before it, the voltage after it, and the current. The same
current that makes the drop makes the heat, in a piece of metal the size of a fingertip.`)

var theLug = weave.Worked{
	Name:  "lug",
	Title: "A lug, from two voltages and a current",
	Question: "An inverter cuts out early. With {{current}} flowing, the meter shows {{before}} on the battery post and {{after}} on the barrel of the " +
		"lug bolted to it; its last digit is {{resolution}}. Is the joint bad?",
	Inputs: []weave.Input{
		{Name: "before", Label: "voltage on the battery post", Default: "12.62 V", Unit: "V", Low: "12.5 V", High: "15 V"},
		{Name: "after", Label: "voltage on the lug", Default: "12.48 V", Unit: "V", Low: "0 V", High: "12.62 V"},
		{Name: "current", Label: "current at that moment", Default: "80 A", Unit: "A", Low: "0.5 A", High: "400 A"},
		{Name: "resolution", Label: "last digit of the meter", Default: "0.01 V", Unit: "V", Low: "0.0001 V", High: "0.1 V"},
	},
	Solve: solveLug,
}

func solveLug(in *weave.Inputs) (weave.Answer, error) {
	joint, err := wire.MeasureJoint(wire.JointReading{
		Before:  weave.In[units.Voltage](in, "before"),
		After:   weave.In[units.Voltage](in, "after"),
		Current: weave.In[units.Current](in, "current"),
		Resolution: units.Some(
			weave.In[units.Voltage](in, "resolution")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "It loses {{lost}}: {{joint}}, give or take " +
			"{{doubt}}, and {{heat}} of heat. At twice the " +
			"current it would be {{at_twice}}.",
		Values: []weave.Value{
			weave.Show("lost", joint.Voltage, "mV", 3),
			weave.Show("joint", joint.Resistance, "mΩ", 3),
			weave.Show("doubt", joint.Doubt, "mΩ", 2),
			weave.Show("heat", joint.Heat, "W", 3),
			weave.Show("at_twice", joint.AtTwice, "W", 3),
		},
		Working:  joint.Working(),
		Findings: joint.Findings(),
	}, nil
}

const sideBySide = weave.Prose(`Two equal conductors side by side have half the resistance, and the drop is halved. That is the whole of
the good news. The fuse is chosen for both, and nothing in the circuit knows when one of them lets go.`)

var thePair = weave.Worked{
	Name:  "pair",
	Title: "Conductors side by side, when one opens",
	Question: "A load of {{current}} hangs on {{one_way}} of {{size}}, {{parallel}} conductors side by side in each direction, from {{source}}. " +
		"One crimp lets go. What changes?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "60 A", Unit: "A", Low: "1 A", High: "200 A"},
		{Name: "one_way", Label: "length, one way", Default: "6 ft", Unit: "ft", Low: "1 ft", High: "30 ft"},
		{Name: "size", Label: "conductor", Default: "10 AWG"},
		{Name: "parallel", Label: "conductors side by side", Default: "2", Low: "2", High: "6"},
		sourceInput,
	},
	Solve:   solvePair,
	Helpers: []string{"share"},
}

func solvePair(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		},
		Source:   weave.In[units.Voltage](in, "source"),
		Parallel: weave.Count(in, "parallel"),
	}
	all, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.Parallel-- // as if one were open in each direction
	left, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	one := (all.Fraction + left.Fraction) / 2 // open one way only
	each := share(run.Current, all.Run.Parallel)
	after := share(run.Current, left.Run.Parallel)
	metre := all.PerLength.At.Over(units.Metre)
	return weave.Answer{
		Text: "Together they lose {{percent}} and carry {{each}} " +
			"each. With one open the run loses " +
			"{{percent_after}}; what is left in that direction " +
			"carries {{after}}, and each metre of it makes " +
			"{{heat_after}} of heat where it made {{heat}}. The " +
			"fuse sees the same current as before.",
		Values: []weave.Value{
			weave.Show("percent", all.Fraction, "%", 3),
			weave.Show("each", each, "A", 3),
			weave.Show("percent_after", one, "%", 3),
			weave.Show("after", after, "A", 3),
			weave.Show("heat", each.Heating(metre), "W", 3),
			weave.Show("heat_after", after.Heating(metre), "W", 3),
		},
		Working:  all.Working(),
		Findings: all.Findings(),
	}, nil
}

// share returns the current of one conductor of so many.
func share(i units.Current, conductors int) units.Current {
	return units.Current(float64(i) / float64(conductors))
}

const backByChassis = weave.Prose(`A frame of steel has a cross-section that no cable has, and steel conducts about a tenth as well as copper (from memory).
What decides are the joints on the way: where the return wire is bolted on, and where parts of the frame are. So the return
is measured like a joint, from lug to lug, and again after a winter.`)

var theChassis = weave.Worked{
	Name:  "chassis",
	Title: "Back through the chassis",
	Question: "A load of {{current}} is fed by {{one_way}} of {{size}}, and the current returns through the chassis, where {{chassis}} were measured from lug to lug. " +
		"What does that lose of {{source}}, and what would a wire back have lost?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "20 A", Unit: "A", Low: "0.1 A", High: "200 A"},
		{Name: "one_way", Label: "length of the wire", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "10 AWG"},
		{Name: "chassis", Label: "resistance of the return", Default: "30 mΩ", Unit: "mΩ", Low: "0 mΩ", High: "500 mΩ"},
		sourceInput,
	},
	Solve: solveChassis,
}

func solveChassis(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	wires, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	chassis := weave.In[units.Resistance](in, "chassis")
	run.Chassis = units.Some(chassis)
	frame, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	even := wires.PerLength.At.Over(run.OneWay)
	return weave.Answer{
		Text: "Through the chassis it loses {{frame}}, with a " +
			"wire back {{wires}}. The two are equal at {{even}}.",
		Values: []weave.Value{
			weave.Show("frame", frame.Voltage, "V", 3),
			weave.Show("wires", wires.Voltage, "V", 3),
			weave.Show("even", even, "mΩ", 3),
		},
		Working:  frame.Working(),
		Findings: frame.Findings(),
	}, nil
}
