package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// twelve is the wire that the rule and some beliefs are tried on.
func twelve(rules wire.RuleSet) wire.Circuit {
	return wire.Circuit{
		Installation: wire.Installation{Rules: rules, Size: wire.AWG(12), Insulation: wire.Insulation105},
		Load:         8 * units.Ampere,
	}
}

// houseBank is a bank of lithium batteries as in a camper van.
func houseBank() wire.FaultSource {
	return wire.FaultSource{Voltage: 13.2 * units.Volt, Resistance: 3 * units.Milliohm}
}

// solveRule asks the three rule sets about the same wire.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	values := []weave.Value{weave.Say("size", twelve(0).Installation.Size), weave.Say("class", twelve(0).Installation.Insulation)}
	for _, r := range []struct {
		name  string
		rules wire.RuleSet
	}{{"rv", wire.RVLowVoltage}, {"nec", wire.NEC2017}, {"boat", wire.Boat33CFR}} {
		p, err := wire.Protect(twelve(r.rules))
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values, weave.Show(r.name, p.Limit, "A", 3))
	}
	return weave.Answer{Values: values}, nil
}

// solveBoatTable compares the heat at the boat's ampacity with that at the
// limit in a vehicle.
func solveBoatTable(*weave.Inputs) (weave.Answer, error) {
	boat, err := wire.Ampacity(twelve(wire.Boat33CFR).Installation)
	if err != nil {
		return weave.Answer{}, err
	}
	vehicle, err := wire.Protect(twelve(wire.RVLowVoltage))
	if err != nil {
		return weave.Answer{}, err
	}
	r, err := wire.Resistance(wire.Conductor{Size: boat.Installation.Size})
	metre := r.At.Over(units.Metre)
	return weave.Answer{
		Text: "On a boat, in free air. {{ampacity}} make {{hot}} of heat in each metre of each conductor of {{size}}, {{limit}} make " +
			"{{cool}}: heat goes with the square. In a wall full of insulation it does not get away.",
		Values: []weave.Value{
			weave.Show("ampacity", boat.Current, "A", 3),
			weave.Show("hot", boat.Current.Heating(metre), "W", 2),
			weave.Say("size", boat.Installation.Size),
			weave.Show("limit", vehicle.Limit, "A", 3),
			weave.Show("cool", vehicle.Limit.Heating(metre), "W", 2),
		},
	}, err
}

func solveColumn(*weave.Inputs) (weave.Answer, error) {
	c, err := wire.Ampacity(wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(4), Insulation: wire.Insulation90})
	return weave.Answer{
		Text: "{{size}} has {{table}} in that column. It ends in terminals, which for this size are taken at {{rated}} unless marked " +
			"higher, and those bear {{ampacity}}. The high column is where corrections for heat and bundling begin, no more.",
		Values: []weave.Value{
			weave.Say("size", c.Installation.Size),
			weave.Show("table", c.Table, "A", 3),
			weave.Say("rated", c.Installation.Terminals),
			weave.Show("ampacity", c.Current, "A", 3),
		},
	}, err
}

func solveLabel(*weave.Inputs) (weave.Answer, error) {
	power, nominal := 2000*units.Watt, 12*units.Volt
	tired := inverterCurrent(power, 88*units.Percent, 10.5*units.Volt)
	ladder, err := wire.Ratings(wire.RVLowVoltage)
	if err != nil {
		return weave.Answer{}, err
	}
	believed, err := ladder.Next(power.At(nominal))
	return weave.Answer{
		Text: "{{power}} over {{nominal}} is {{label}}, and the next fuse is {{believed}}. At the end of the battery, with what the " +
			"inverter itself loses, the same load takes {{tired}}: the fuse opens in the middle of dinner, and a cable chosen for it is too thin.",
		Values: []weave.Value{
			weave.Show("power", power, "W", 4),
			weave.Show("nominal", nominal, "V", 3),
			weave.Show("label", power.At(nominal), "A", 3),
			weave.Show("believed", believed, "A", 3),
			weave.Show("tired", tired, "A", 3),
		},
	}, err
}

// solvePair opens one of two wires that share a load.
func solvePair(*weave.Inputs) (weave.Answer, error) {
	fuse := 60 * units.Ampere
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{Rules: wire.RVLowVoltage, Size: wire.AWG(10), Insulation: wire.Insulation105},
		Load:         fuse, // all of it, once the other wire is open
		Device:       units.Some(fuse),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	times := units.RatioOf(fuse, p.Limit)
	return weave.Answer{
		Text: "As long as both crimps hold. When one lets go, all {{fuse}} are in a {{size}} wire that may have {{limit}}, which is {{heat}} " +
			"times the heat, and the fuse is content. One larger cable, or a fuse for each wire.",
		Values: []weave.Value{
			weave.Show("fuse", fuse, "A", 3),
			weave.Say("size", p.Circuit.Installation.Size),
			weave.Show("limit", p.Limit, "A", 3),
			weave.Show("heat", times*times, "1", 2),
		},
	}, nil
}

// solveCharger shorts a cable that has a source at each end.
func solveCharger(*weave.Inputs) (weave.Answer, error) {
	charger := 30 * units.Ampere
	f, err := wire.ShortCircuit(houseBank(), wire.Conductor{Size: wire.AWG(8)}, 10*units.Foot)
	return weave.Answer{
		Text: "The controller gives {{charger}} and no more. The battery at the other end of the same {{one_way}} of {{size}} gives {{bank}} " +
			"into a short at the controller. In a cable with two sources the fuse sits by the one that can burn it.",
		Values: []weave.Value{
			weave.Show("charger", charger, "A", 3),
			weave.Show("one_way", f.OneWay, "ft", 3),
			weave.Say("size", f.Conductor.Conductor.Size),
			weave.Show("bank", f.Current, "A", 3),
		},
	}, err
}
