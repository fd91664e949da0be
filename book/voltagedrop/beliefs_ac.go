package voltagedrop

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

func solveClad(*weave.Inputs) (weave.Answer, error) {
	clad, err := wire.Resistance(wire.Conductor{Size: wire.Aught(1), Metal: wire.CopperClad})
	if err != nil {
		return weave.Answer{}, err
	}
	copper, err := wire.Resistance(wire.Conductor{Size: wire.Aught(1)})
	return weave.Answer{
		Text: "The number says how thick it is and not what of. Copper-clad aluminium of {{size}} has {{clad}} where copper has {{copper}}: " +
			"{{more}} more drop and heat.",
		Values: []weave.Value{
			weave.Say("size", clad.Conductor.Size),
			weave.Show("clad", clad.At, "Ω/kft", 3),
			weave.Show("copper", copper.At, "Ω/kft", 3),
			weave.Show("more", units.RatioOf(clad.At-copper.At, copper.At), "%", 2),
		},
	}, err
}

func solveSameCharge(*weave.Inputs) (weave.Answer, error) {
	run := wire.Run{OneWay: 18 * units.Foot, Source: 14.2 * units.Volt, Conductor: wire.Conductor{Size: wire.AWG(8)}}
	charge := 240 * units.AmpereHour
	slow, err := steadily(run, 10*units.Ampere, charge)
	if err != nil {
		return weave.Answer{}, err
	}
	fast, err := steadily(run, 30*units.Ampere, charge)
	return weave.Answer{
		Text: "Heat goes with the square of the current and only once with the time. The same {{charge}} cost {{slow}} of heat at {{low}}, and {{fast}} at " +
			"{{high}}.",
		Values: []weave.Value{
			weave.Show("charge", charge, "Ah", 3),
			weave.Show("slow", slow.Lost, "Wh", 3),
			weave.Show("low", slow.Mean, "A", 3),
			weave.Show("fast", fast.Lost, "Wh", 3),
			weave.Show("high", fast.Mean, "A", 3),
		},
	}, err
}

func solvePhasor(*weave.Inputs) (weave.Answer, error) {
	d, err := wire.ACDrop(wire.ACRun{
		Current: 50 * units.Ampere, OneWay: 500 * units.Foot, Source: 240 * units.Volt, PowerFactor: units.Some(65 * units.Percent),
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.Aught(1)}},
	})
	return weave.Answer{
		Text: "That is the length of the arrow between two voltages that do not point the same way. It is {{phasor}} on the feeder of the park; a " +
			"meter at each end shows a difference of {{exact}}.",
		Values: []weave.Value{
			weave.Show("phasor", d.Phasor, "V", 3),
			weave.Show("exact", d.Exact, "V", 3),
		},
	}, err
}

func solveBothLegs(*weave.Inputs) (weave.Answer, error) {
	equal, err := wire.LegDrop(equalLegs(wire.SplitPhase))
	if err != nil {
		return weave.Answer{}, err
	}
	network, err := wire.LegDrop(equalLegs(wire.NetworkLegs))
	return weave.Answer{
		Text: "With {{each}} on each of two opposite legs it carries {{none}}. On two legs of a 120/208 V network it carries {{as_much}}. It is the " +
			"supply that decides, and the plug is the same.",
		Values: []weave.Value{
			weave.Show("each", equal.Run.Currents.A, "A", 3),
			weave.Show("none", equal.InNeutral, "A", 3),
			weave.Show("as_much", network.InNeutral, "A", 3),
		},
	}, err
}

func solveBreaker(*weave.Inputs) (weave.Answer, error) {
	open, err := wire.OpenNeutral(wire.SplitLoad{
		Powers: units.Legs[units.Power]{A: 150 * units.Watt, B: 1500 * units.Watt}, Nominal: 120 * units.Volt,
	})
	return weave.Answer{
		Text: "The current through both legs is {{current}}, and a breaker of 15 A has never heard of it. The television has {{volts}}.",
		Values: []weave.Value{
			weave.Show("current", open.Powers.A.At(open.AtLoad.A), "A", 3),
			weave.Show("volts", open.AtLoad.A, "V", 3),
		},
	}, err
}

func solveTightLug(*weave.Inputs) (weave.Answer, error) {
	joint, err := wire.MeasureJoint(wire.JointReading{
		Before: 12.62 * units.Volt, After: 12.48 * units.Volt, Current: 80 * units.Ampere,
	})
	return weave.Answer{
		Text: "It loses {{lost}}, which is {{percent}} of the battery, and nobody misses it. But it is lost in one place: {{heat}}, as much as a small soldering iron, " +
			"under a plastic cap.",
		Values: []weave.Value{
			weave.Show("lost", joint.Voltage, "mV", 3),
			weave.Show("percent", units.RatioOf(joint.Voltage, joint.Reading.Before), "%", 2),
			weave.Show("heat", joint.Heat, "W", 3),
		},
	}, err
}
