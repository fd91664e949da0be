package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// branch is the run that the rule and the beliefs are tried on.
func branch() wire.Run {
	return wire.Run{
		Current:   20 * units.Ampere,
		OneWay:    15 * units.Foot,
		Conductor: wire.Conductor{Size: wire.AWG(10)},
		Source:    12.8 * units.Volt,
	}
}

// solveRule works the same run with the smallest and the greatest K in print.
func solveRule(*weave.Inputs) (weave.Answer, error) {
	cold, warm := branch(), branch()
	cold.Conductor.Resistivity = units.Some(10.09 * units.OhmCircularMilPerFoot)
	warm.Conductor.Resistivity = units.Some(12.9 * units.OhmCircularMilPerFoot)
	low, err := wire.VoltageDrop(cold)
	if err != nil {
		return weave.Answer{}, err
	}
	high, err := wire.VoltageDrop(warm)
	return weave.Answer{Values: []weave.Value{
		weave.Say("size", low.Run.Conductor.Size),
		weave.Show("k_low", low.PerLength.Rho, "Ω·cmil/ft", 4),
		weave.Show("k_high", high.PerLength.Rho, "Ω·cmil/ft", 4),
		weave.Show("warm_copper", wire.WarmCopper(), "°C", 3),
		weave.Show("cold", low.Fraction, "%", 2),
		weave.Show("warm", high.Fraction, "%", 2),
	}}, err
}

func solveOneWay(*weave.Inputs) (weave.Answer, error) {
	half := branch()
	half.OneWay /= 2 // what the belief amounts to
	believed, err := wire.VoltageDrop(half)
	if err != nil {
		return weave.Answer{}, err
	}
	drop, err := wire.VoltageDrop(branch())
	return weave.Answer{
		Text: "The current goes there and comes back. A run of {{one_way}} has {{loop}} of conductor and loses {{percent}}; " +
			"counted one way only it seems to lose {{believed}}, and passes.",
		Values: []weave.Value{
			weave.Show("one_way", drop.Run.OneWay, "ft", 3),
			weave.Show("loop", drop.Loop, "ft", 3),
			weave.Show("percent", drop.Fraction, "%", 2),
			weave.Show("believed", believed.Fraction, "%", 2),
		},
	}, err
}

func solveWarmWire(*weave.Inputs) (weave.Answer, error) {
	solid, warm := branch().Conductor, branch().Conductor
	solid.Strand, solid.Temperature = wire.Solid, units.Celsius(20)
	low, err := wire.Resistance(solid)
	if err != nil {
		return weave.Answer{}, err
	}
	high, err := wire.Resistance(warm)
	return weave.Answer{
		Text: "Which ten gauge? Solid at 20 °C it has {{low}}, stranded at 75 °C {{high}}. Both are printed, in different books, and " +
			"the second is {{more}} above the first.",
		Values: []weave.Value{
			weave.Show("low", low.At, "Ω/kft", 3),
			weave.Show("high", high.At, "Ω/kft", 3),
			weave.Show("more", units.RatioOf(high.At-low.At, low.At), "%", 2),
		},
	}, err
}

func solveNearly(*weave.Inputs) (weave.Answer, error) {
	metric, err := wire.Resistance(wire.Conductor{Size: wire.Metric(2.5 * units.SquareMillimetre)})
	if err != nil {
		return weave.Answer{}, err
	}
	gauge, err := wire.Resistance(wire.Conductor{Size: wire.AWG(14)})
	return weave.Answer{
		Text: "14 AWG is {{area}}, so it loses {{more}} more than a 2.5 mm² conductor that just meets IEC 60228. " +
			"The metric table used for the gauge wire is wrong by as much, to the side that hurts.",
		Values: []weave.Value{
			weave.Show("area", gauge.Area, "mm²", 3),
			weave.Show("more", units.RatioOf(gauge.At-metric.At, metric.At), "%", 2),
		},
	}, err
}

func solveShortRun(*weave.Inputs) (weave.Answer, error) {
	short := branch()
	short.Current, short.OneWay = 200*units.Ampere, 2*units.Foot
	short.Allowed = units.Some(3 * units.Percent)
	found, err := wire.SmallestSize(short, wire.Gauges())
	return weave.Answer{
		Text: "Over {{one_way}} even {{current}} may go through {{size}} with {{percent}} of drop. As {{heat}} of heat in each " +
			"metre of conductor it would not stay a wire for long. Short runs are sized by ampacity.",
		Values: []weave.Value{
			weave.Show("one_way", short.OneWay, "ft", 2),
			weave.Show("current", short.Current, "A", 3),
			weave.Say("size", found.Run.Conductor.Size),
			weave.Show("percent", found.Drop.Fraction, "%", 2),
			weave.Show("heat", short.Current.Heating(found.Drop.PerLength.At.Over(units.Metre)), "W", 2),
		},
	}, err
}
