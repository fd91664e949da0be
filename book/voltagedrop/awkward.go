package voltagedrop

import (
	"errors"

	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

var theRefrigerator = weave.Worked{
	Name:  "refrigerator",
	Title: "A load that takes more when it gets less",
	Question: "A compressor refrigerator is marked {{power}}; its electronics keep that power whatever the voltage. It hangs on " +
		"{{one_way}} of {{size}}, metal at {{metal}}, with {{source}} at the battery. What current flows, and what voltage does it get?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the load", Default: "60 W", Unit: "W", Low: "1 W", High: "150 W"},
		{Name: "one_way", Label: "length, one way", Default: "32 ft", Unit: "ft", Low: "1 ft", High: "40 ft"},
		{Name: "size", Label: "conductor", Default: "16 AWG"},
		metalInput,
		{Name: "source", Label: "voltage at the source", Default: "12.4 V", Unit: "V", Low: "11 V", High: "60 V"},
	},
	Solve:   solveRefrigerator,
	Helpers: []string{"cannotCarry"},
}

func solveRefrigerator(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	run := wire.Run{
		OneWay: weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Temperature: weave.Temperature(in, "metal"),
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	run.Current = power.At(run.Source)
	label, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	// Less voltage, more current, more drop: where that settles
	// is a quadratic, which may have no solution.
	sag, err := battery.UnderLoad(battery.Circuit{
		OpenCircuit: run.Source,
		Internal:    label.Resistance,
		Draw:        battery.Draw{Power: units.Some(power)},
	})
	if errors.Is(err, units.ErrRange) {
		return cannotCarry(label), nil
	}
	run.Current = sag.Current
	drop, err := wire.VoltageDrop(run)
	return weave.Answer{
		Text: "At the battery's voltage it would take " +
			"{{label}} and get {{label_volts}}. It settles " +
			"at {{current}} and {{at_load}}: a drop of " +
			"{{percent}}.",
		Values: []weave.Value{
			weave.Show("label", label.Run.Current, "A", 3),
			weave.Show("label_volts", label.AtLoad, "V", 4),
			weave.Show("current", sag.Current, "A", 3),
			weave.Show("at_load", sag.Voltage, "V", 4),
			weave.Show("percent", drop.Fraction, "%", 3),
		},
		Working:  sag.Working(),
		Findings: drop.Findings(),
	}, err
}

// cannotCarry is the answer for a run that has no working point.
func cannotCarry(label wire.Drop) weave.Answer {
	v := label.Run.Source
	most := v.Across(label.Resistance).At(v) / 4
	return weave.Answer{
		Text: "It does not run: with {{loop}} in the loop no " +
			"current gives it that power. At most {{most}} " +
			"can be had at the end of this run, at half " +
			"the voltage.",
		Values: []weave.Value{
			weave.Show("loop", label.Resistance, "Ω", 3),
			weave.Show("most", most, "W", 3),
		},
		Working:  label.Working(),
		Findings: label.Findings(),
	}
}

var theMetricRun = weave.Worked{
	Name:  "metric",
	Title: "The same run in square millimetres",
	Question: "A pump takes {{current}} at the end of {{one_way}} of {{size}} {{strand}} cable, metal at {{metal}}. What does the run lose of " +
		"{{source}}?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "7 A", Unit: "A", Low: "0.1 A", High: "300 A"},
		{Name: "one_way", Label: "length, one way", Default: "5 m", Unit: "m", Low: "0.3 m", High: "60 m"},
		{Name: "size", Label: "conductor", Default: "2.5 mm²"},
		{Name: "strand", Label: "make of the conductor", Default: "flexible", Choices: []string{"solid", "stranded", "flexible"}},
		metalInput, sourceInput,
	},
	Solve:   solveMetric,
	Helpers: []string{"strandOf"},
}

func solveMetric(in *weave.Inputs) (weave.Answer, error) {
	drop, err := wire.VoltageDrop(wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Strand:      strandOf(weave.Text(in, "strand")),
			Temperature: weave.Temperature(in, "metal"),
		},
		Source: weave.In[units.Voltage](in, "source"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "It loses {{drop}}, {{percent}}.",
		Values: []weave.Value{
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
	}, nil
}

func strandOf(name string) wire.Strand {
	switch name {
	case "solid":
		return wire.Solid
	case "flexible":
		return wire.Flexible
	}
	return wire.Stranded
}

var theQuote = weave.Worked{
	Name:  "quote",
	Title: "An installer's number, checked",
	Question: "A quote says: inverter cable {{size}}, {{one_way}} one way, {{current}} at full load, drop {{claimed}} of {{source}}. " +
		"Does that hold?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current at full load", Default: "150 A", Unit: "A", Low: "1 A", High: "400 A"},
		{Name: "one_way", Label: "length, one way", Default: "6 ft", Unit: "ft", Low: "1 ft", High: "30 ft"},
		{Name: "size", Label: "conductor", Default: "4 AWG"},
		{Name: "claimed", Label: "drop as quoted", Default: "2.0 %"},
		{Name: "source", Label: "voltage at the source", Default: "12.8 V", Unit: "V", Low: "10 V", High: "60 V"},
	},
	Solve: solveQuote,
}

func solveQuote(in *weave.Inputs) (weave.Answer, error) {
	drop, err := wire.VoltageDrop(wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		},
		Source: weave.In[units.Voltage](in, "source"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	claimed := weave.Parsed(in, "claimed", units.ParsePrinted)
	verdict, err := working.Claim{
		What:     "voltage drop of the inverter cable",
		Stated:   claimed,
		Computed: drop.Fraction,
		SafeSide: working.Higher,
		Findings: drop.Findings(),
	}.Judge()
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The verdict is: {{verdict}}. The run loses " +
			"{{drop}}, {{percent}}, and {{heat}} of heat goes " +
			"into it.",
		Values: []weave.Value{
			weave.Say("verdict", verdict),
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
			weave.Show("heat", drop.Heat, "W", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
	}, nil
}
