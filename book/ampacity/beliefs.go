package ampacity

import (
	"math"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// twelve is the wire that the rule and some beliefs are tried on.
func twelve(rules wire.RuleSet) wire.Installation {
	return wire.Installation{Rules: rules, Size: wire.AWG(12), Insulation: wire.Insulation105}
}

// rootFactor returns what air of a temperature leaves of the ampacity at 30 °C
// by the root.
func rootFactor(class wire.Insulation, air units.Temperature) units.Ratio {
	rated := class.Temperature()
	return units.Ratio(math.Sqrt(float64(rated.Sub(air)) / float64(rated.Sub(units.Celsius(30)))))
}

// solveRule asks the three rule sets about the same wire.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	values := []weave.Value{weave.Say("size", twelve(0).Size), weave.Say("class", twelve(0).Insulation)}
	for _, r := range []struct {
		name string
		x    wire.Installation
	}{
		{"rv", twelve(wire.RVLowVoltage)}, {"nec", twelve(wire.NEC2017)}, {"boat", twelve(wire.Boat33CFR)},
		{"cool", wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90}},
	} {
		c, err := wire.Ampacity(r.x)
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values, weave.Show(r.name, c.Current, "A", 3))
	}
	return weave.Answer{Values: values}, nil
}

// solveBand finds how far the heat balance is from the table for boats, over
// the sizes from 6 AWG up and its three coolest classes in that table.
func solveBand(*weave.Inputs) (weave.Answer, error) {
	low, high := units.Ratio(math.Inf(1)), units.Ratio(0)
	for _, n := range []int{6, 4, 2, 1, 0, -1, -2, -3} {
		for _, class := range []wire.Insulation{wire.Insulation60, wire.Insulation75, wire.Insulation90} {
			b, err := wire.FreeAir(wire.FreeAirCable{Size: wire.AWG(n), Metal: class.Temperature()})
			if err != nil {
				return weave.Answer{}, err
			}
			c, err := wire.Ampacity(wire.Installation{Rules: wire.Boat33CFR, Size: wire.AWG(n), Insulation: class})
			if err != nil {
				return weave.Answer{}, err
			}
			of := units.RatioOf(b.Current, c.Current)
			low, high = min(low, of), max(high, of)
		}
	}
	return weave.Answer{Values: []weave.Value{weave.Show("low", low, "%", 3), weave.Show("high", high, "%", 3)}}, nil
}

// solveBoatsTable compares the heat at the boat's ampacity with that at the
// limit in a vehicle.
func solveBoatsTable(*weave.Inputs) (weave.Answer, error) {
	boat, err := wire.Ampacity(twelve(wire.Boat33CFR))
	if err != nil {
		return weave.Answer{}, err
	}
	vehicle, err := wire.Ampacity(twelve(wire.RVLowVoltage))
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
			weave.Show("limit", vehicle.Current, "A", 3),
			weave.Show("cool", vehicle.Current.Heating(metre), "W", 2),
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

// solveTwice compares two sizes of which one has twice the area of the other.
func solveTwice(*weave.Inputs) (weave.Answer, error) {
	x := wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(4), Insulation: wire.Insulation75, Terminals: wire.Insulation75}
	thin, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	x.Size = wire.AWG(1)
	thick, err := wire.Ampacity(x)
	return weave.Answer{
		Text: "{{thick_size}} has {{area}} times the metal of {{thin_size}} and {{times}} times the ampacity, {{thick}} against {{thin}}. The heat " +
			"leaves through the surface, which does not grow as fast as the metal.",
		Values: []weave.Value{
			weave.Say("thick_size", thick.Installation.Size),
			weave.Show("area", units.RatioOf(thick.Installation.Size.Area(), thin.Installation.Size.Area()), "1", 3),
			weave.Say("thin_size", thin.Installation.Size),
			weave.Show("times", units.RatioOf(thick.Current, thin.Current), "1", 3),
			weave.Show("thick", thick.Current, "A", 3),
			weave.Show("thin", thin.Current, "A", 3),
		},
	}, err
}

// solveLittleOver overloads a wire and asks how warm it becomes.
func solveLittleOver(*weave.Inputs) (weave.Answer, error) {
	const over = 120 * units.Percent
	air, rated := units.Celsius(30), wire.Insulation75.Temperature()
	rise := units.Scale(rated.Sub(air), over*over)
	return weave.Answer{
		Text: "It makes {{heat}} of the heat. Copper that stood at {{rated}} in air of {{air}} goes to {{hot}}, and that before " +
			"it is counted that warm copper has the more resistance. Where the air is warmer it starts from there.",
		Values: []weave.Value{
			weave.Show("heat", over*over, "%", 3),
			weave.Show("rated", rated, "°C", 3),
			weave.Show("air", air, "°C", 3),
			weave.Show("hot", air.Add(rise), "°C", 3),
		},
	}, nil
}

// solveEach puts one wire more into a full conduit.
func solveEach(*weave.Inputs) (weave.Answer, error) {
	x := wire.Installation{Rules: wire.NEC2017, Size: wire.AWG(10), Insulation: wire.Insulation90, Conductors: 9}
	nine, err := wire.Ampacity(x)
	if err != nil {
		return weave.Answer{}, err
	}
	x.Conductors = 10
	ten, err := wire.Ampacity(x)
	return weave.Answer{
		Text: "They carry {{each}} each, {{all}} together. Nine of them carry {{of_nine}} each and {{all_nine}} together. The factor goes in " +
			"steps, and by that table the tenth wire takes more away than it brings.",
		Values: []weave.Value{
			weave.Show("each", ten.Current, "A", 3),
			weave.Show("all", units.Scale(ten.Current, units.Ratio(ten.Installation.Conductors)), "A", 3),
			weave.Show("of_nine", nine.Current, "A", 3),
			weave.Show("all_nine", units.Scale(nine.Current, units.Ratio(nine.Installation.Conductors)), "A", 3),
		},
	}, err
}

func solveBreaker(*weave.Inputs) (weave.Answer, error) {
	device := 20 * units.Ampere
	c, err := wire.CordAmpacity(wire.Cord{Size: wire.AWG(16), Conductors: 2, Load: device, Device: units.Some(device)})
	times := units.RatioOf(device, c.Current)
	return weave.Answer{
		Text: "The breaker protects the wire in the wall. A {{device}} breaker lets {{device}} through for ever; a {{size}} cord may carry {{ampacity}}, " +
			"and at the breaker's rating it makes {{heat}} times the heat that it is made for.",
		Values: []weave.Value{
			weave.Show("device", device, "A", 3),
			weave.Say("size", c.Cord.Size),
			weave.Show("ampacity", c.Current, "A", 3),
			weave.Show("heat", times*times, "1", 2),
		},
	}, err
}
