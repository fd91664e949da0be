package ampacity

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// boatClasses are the columns of the table for boats.
var boatClasses = []string{"60 °C", "75 °C", "80 °C", "90 °C", "105 °C", "125 °C"}

var theBoat = weave.Worked{
	Name:  "boat",
	Title: "A boat's table, and its engine space",
	Question: "On a boat {{wires}} cables of {{size}} with {{insulation}} insulation run together at {{system}}. Through the engine space: " +
		"{{engine}}. What may each carry by 33 CFR 183?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "8 AWG"},
		{Name: "insulation", Label: "insulation", Default: "105 °C", Choices: boatClasses},
		{Name: "engine", Label: "through the engine space", Default: "yes", Choices: []string{"yes", "no"}},
		{Name: "wires", Label: "conductors that carry current together", Default: "4", Low: "1", High: "60"},
		{Name: "system", Label: "nominal voltage", Default: "12 V", Unit: "V", Low: "12 V", High: "240 V"},
	},
	Solve: solveBoat,
}

func solveBoat(in *weave.Inputs) (weave.Answer, error) {
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	volts := weave.In[units.Voltage](in, "system")
	x := wire.Installation{
		Rules:       wire.Boat33CFR,
		Size:        weave.Parsed(in, "size", wire.ParseSize),
		Insulation:  class,
		EngineSpace: weave.Text(in, "engine") == "yes",
		Conductors:  weave.Count(in, "wires"),
		System:      units.Some(volts),
	}
	c, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	x.System = units.Some(120 * units.Volt)
	shore, err := wire.Ampacity(x)
	return weave.Answer{
		Text: "{{ampacity}}. The table has {{table}}, and the " +
			"place leaves {{place}} of it. For so many " +
			"conductors together the regulation leaves " +
			"{{bundle}} of the rest at this voltage, and " +
			"{{at_shore}} at 120 V, though a current does not " +
			"know the voltage that drives it.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 3),
			weave.Show("table", c.Table, "A", 3),
			weave.Show("place", c.Ambient, "%", 3),
			weave.Show("bundle", c.Bundle, "%", 3),
			weave.Show("at_shore", shore.Bundle, "%", 3),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, err
}

var theCord = weave.Worked{
	Name:  "cord",
	Title: "An air conditioner on a household cord",
	Question: "A roof air conditioner takes {{current}} through {{one_way}} of {{size}} extension cord with two conductors that carry " +
		"current, from {{voltage}} behind a {{device}} breaker. Left on its reel: {{coiled}}. Does the cord bear that, and what does it cost?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "13.5 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "one_way", Label: "length of the cord", Default: "50 ft", Unit: "ft", Low: "3 ft", High: "100 ft"},
		{Name: "size", Label: "conductor", Default: "16 AWG", Choices: []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG"}},
		{Name: "voltage", Label: "voltage at the outlet", Default: "115 V", Unit: "V", Low: "105 V", High: "125 V"},
		{Name: "device", Label: "breaker before the cord", Default: "20 A", Unit: "A", Low: "15 A", High: "50 A"},
		{Name: "coiled", Label: "left on the reel", Default: "yes", Choices: []string{"yes", "no"}},
	},
	Solve: solveCord,
}

func solveCord(in *weave.Inputs) (weave.Answer, error) {
	load := weave.In[units.Current](in, "current")
	size := weave.Parsed(in, "size", wire.ParseSize)
	breaker := weave.In[units.Current](in, "device")
	c, err := wire.CordAmpacity(wire.Cord{
		Size:       size,
		Conductors: 2,
		Load:       load,
		Device:     units.Some(breaker),
		Coiled:     weave.Text(in, "coiled") == "yes",
	})
	if err != nil {
		return weave.Answer{}, err
	}
	drop, err := wire.VoltageDrop(wire.Run{
		Current:   load,
		OneWay:    weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{Size: size},
		Source:    weave.In[units.Voltage](in, "voltage"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The table allows this cord {{ampacity}}, laid " +
			"out in free air. The load makes {{heat}} of heat " +
			"in it and leaves {{at_load}} at the far end. The " +
			"table has no number for a reel, because there is " +
			"none that is right.",
		Values: []weave.Value{
			weave.Show("ampacity", c.Current, "A", 3),
			weave.Show("heat", drop.Heat, "W", 3),
			weave.Show("at_load", drop.AtLoad, "V", 4),
		},
		Working:  c.Working(),
		Findings: c.Findings(),
	}, nil
}

var theCable = weave.Worked{
	Name:  "freeair",
	Title: "Where the number comes from: one cable in still air",
	Question: "One {{size}} cable with {{insulation}} insulation hangs level in still air of {{ambient}}. Which current brings its copper " +
		"to what the insulation bears, and what does the free-air table for boats say?",
	Inputs: []weave.Input{
		{Name: "size", Label: "conductor", Default: "2 AWG", Choices: []string{"12 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG", "4/0 AWG"}},
		{Name: "insulation", Label: "insulation", Default: "75 °C", Choices: boatClasses},
		{Name: "ambient", Label: "still air", Default: "50 °C", Unit: "°C", Low: "-40 °C", High: "55 °C"},
	},
	Solve: solveCable,
}

func solveCable(in *weave.Inputs) (weave.Answer, error) {
	size := weave.Parsed(in, "size", wire.ParseSize)
	class := weave.Parsed(in, "insulation", wire.ParseInsulation)
	air := weave.Temperature(in, "ambient")
	x := wire.FreeAirCable{Size: size, Metal: class.Temperature()}
	cool, err := wire.FreeAir(x) // in air of 30 °C
	if err != nil {
		return weave.Answer{}, err
	}
	x.Ambient = air
	b, err := wire.FreeAir(x)
	if err != nil {
		return weave.Answer{}, err
	}
	table, err := wire.Ampacity(wire.Installation{
		Rules: wire.Boat33CFR, Size: size, Insulation: class,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{current}}. A metre of it makes {{heat}}: the " +
			"air carries off {{carried}}, and {{radiated}} is " +
			"radiated from a surface of {{surface}}. In air of " +
			"30 °C it would be {{cool}}, where the table has " +
			"{{table}}. So this air leaves {{exact}} of it by " +
			"the balance and {{root}} by the root.",
		Values: []weave.Value{
			weave.Show("current", b.Current, "A", 3),
			weave.Show("heat", b.Loss, "W", 3),
			weave.Show("carried", b.Convection, "W", 3),
			weave.Show("radiated", b.Radiation, "W", 3),
			weave.Show("surface", b.Surface, "°C", 3),
			weave.Show("cool", cool.Current, "A", 3),
			weave.Show("table", table.Current, "A", 3),
			weave.Show("exact",
				units.RatioOf(b.Current, cool.Current), "%", 3),
			weave.Show("root", rootFactor(class, air), "%", 3),
		},
		Working:  b.Working(),
		Findings: append(b.Findings(), table.Findings()...),
	}, nil
}
