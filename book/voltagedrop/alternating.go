package voltagedrop

import (
	"math"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

const alternating = weave.Prose(`## Alternating current

At 120 V there is ten times as much to lose, and for a heater on a cord nothing else changes: resistance, there and back. What
is new is that the field round the conductors, too, opposes the current. That is the reactance. Of the resistance it is
{{reactance.thin}} in 12 AWG and {{reactance.thick}} in 500 kcmil, and steel conduit makes it {{reactance.steel}} times what it is in
plastic. It turns the voltage rather than taking it, so it cannot simply be added.

Let the current lag by the angle φ, whose cosine is the power factor. The drop has a part along the voltage of the load and a
part across it:`)

// solveReactance holds reactance beside resistance in thin and thick wire.
func solveReactance(*weave.Inputs) (weave.Answer, error) {
	var z [3]wire.Impedance
	for i, a := range []wire.ACConductor{
		{Conductor: wire.Conductor{Size: wire.AWG(12)}},
		{Conductor: wire.Conductor{Size: wire.Kcmil(500)}},
		{Conductor: wire.Conductor{Size: wire.Kcmil(500)}, Conduit: wire.SteelConduit},
	} {
		var err error
		if z[i], err = wire.ACImpedance(a); err != nil {
			return weave.Answer{}, err
		}
	}
	return weave.Answer{Values: []weave.Value{
		weave.Show("thin", units.RatioOf(z[0].X, z[0].R), "%", 2),
		weave.Show("thick", units.RatioOf(z[1].X, z[1].R), "%", 3),
		weave.Show("steel", units.RatioOf(z[2].X, z[1].X), "1", 3),
	}}, nil
}

var acSymbols = weave.Formula{
	Equations: []string{
		"a = I * (R*pf + X*sin(φ))",
		"b = I * (X*pf - R*sin(φ))",
		"ΔV_approximate = a",
		"ΔV_exact = V_source - (sqrt(pow(V_source, 2) - pow(b, 2)) - a)",
		"ΔV_phasor = sqrt(pow(a, 2) + pow(b, 2))",
	},
	Where: []weave.Symbol{
		{Name: "a", Unit: "V", What: "part of the drop along the voltage of the load"},
		{Name: "I", Unit: "A", What: "current of the load, root mean square"},
		{Name: "R", Unit: "Ω", What: "resistance there and back"},
		{Name: "pf", What: "power factor of the load"},
		{Name: "X", Unit: "Ω", What: "reactance there and back"},
		{Name: "φ", What: "angle by which the current lags; negative if it leads"},
		{Name: "b", Unit: "V", What: "part of the drop across the voltage of the load"},
		{Name: "ΔV_approximate", Unit: "V", What: "drop by effective impedance, as the table of the NEC has it"},
		{Name: "ΔV_exact", Unit: "V", What: "what a meter at one end shows less than a meter at the other"},
		{Name: "V_source", Unit: "V", What: "voltage at the source end"},
		{Name: "ΔV_phasor", Unit: "V", What: "current times impedance; no two meters show it"},
	},
}

const threeDrops = weave.Prose(`Three drops, and each is in some book as the drop. The approximate one is never above the exact one.
The phasor is above both unless load and line have the same angle. And the sign in the first line is easily slipped: for a
lagging load the X term is added. Subtracted, it gives the drop of a leading load, which may be below zero.

Resistance and reactance are looked up in NEC chapter 9 table 9, which is for conduit; a cord or a plastic cable counts as PVC
conduit there.`)

var theCord = weave.Worked{
	Name:  "cord",
	Title: "A heater on an extension cord",
	Question: "A heater takes {{current}} at the end of {{one_way}} of {{size}} cord, copper at {{metal}}, from a receptacle with {{source}}. " +
		"What does it get?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the heater", Default: "12.5 A", Unit: "A", Low: "0.5 A", High: "30 A"},
		{Name: "one_way", Label: "length of the cord", Default: "100 ft", Unit: "ft", Low: "3 ft", High: "300 ft"},
		{Name: "size", Label: "conductor", Default: "14 AWG", Choices: []string{"14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG"}},
		{Name: "metal", Label: "temperature of the metal", Default: "40 °C", Unit: "°C", Low: "-40 °C", High: "105 °C"},
		{Name: "source", Label: "voltage at the receptacle", Default: "118 V", Unit: "V", Low: "100 V", High: "240 V"},
		{Name: "allowed", Label: "drop that is allowed", Default: "5 %", Unit: "%", Low: "0.5 %", High: "20 %"},
	},
	Solve: solveCord,
}

func solveCord(in *weave.Inputs) (weave.Answer, error) {
	drop, err := wire.ACDrop(wire.ACRun{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Line: wire.ACConductor{Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Temperature: weave.Temperature(in, "metal"),
		}},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "It loses {{drop}}, {{percent}}, and gets " +
			"{{at_load}}; the cord gives off {{heat}}. Of its " +
			"impedance {{r}} is resistance and {{x}} reactance, " +
			"which hardly counts.",
		Values: []weave.Value{
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("percent", drop.Fraction, "%", 3),
			weave.Show("at_load", drop.AtLoad, "V", 4),
			weave.Show("heat", drop.Heat, "W", 3),
			weave.Show("r", drop.Resistance, "mΩ", 3),
			weave.Show("x", drop.Reactance, "mΩ", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
	}, nil
}

var thePark = weave.Worked{
	Name:  "park",
	Title: "Far down the park, with a poor power factor",
	Question: "A pedestal {{one_way}} from the transformer is fed at {{source}} by {{size}} copper in {{conduit}} conduit, and air conditioners " +
		"take {{current}} at a power factor of {{pf}}, lagging. What is the drop: approximate, exact, as a phasor, and with the sign slipped?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the loads", Default: "50 A", Unit: "A", Low: "1 A", High: "150 A"},
		{Name: "pf", Label: "power factor", Default: "65 %", Unit: "%", Low: "20 %", High: "100 %"},
		{Name: "one_way", Label: "length, one way", Default: "500 ft", Unit: "ft", Low: "10 ft", High: "1000 ft"},
		{Name: "size", Label: "conductor", Default: "1/0 AWG", Choices: []string{"6 AWG", "4 AWG", "2 AWG", "1/0 AWG", "4/0 AWG", "350 kcmil", "500 kcmil"}},
		{Name: "conduit", Label: "conduit", Default: "PVC", Choices: []string{"PVC", "aluminium", "steel"}},
		{Name: "source", Label: "voltage at the transformer", Default: "240 V", Unit: "V", Low: "208 V", High: "480 V"},
	},
	Solve: solvePark,
}

func solvePark(in *weave.Inputs) (weave.Answer, error) {
	run := wire.ACRun{
		Current:     weave.In[units.Current](in, "current"),
		PowerFactor: units.Some(weave.In[units.Ratio](in, "pf")),
		OneWay:      weave.In[units.Length](in, "one_way"),
		Line: wire.ACConductor{
			Conductor: wire.Conductor{
				Size: weave.Parsed(in, "size", wire.ParseSize),
			},
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	line := &run.Line
	line.Conduit = weave.Parsed(in, "conduit", word[wire.Conduit])
	drop, err := wire.ACDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	run.Leading = true // what the wrong sign amounts to
	slip, err := wire.ACDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Approximate {{approximate}}, exact {{exact}}, " +
			"which is {{percent}}; the phasor is {{phasor}}. " +
			"With the sign of the angle slipped it would be " +
			"{{slip}}: that is what a leading current would " +
			"lose.",
		Values: []weave.Value{
			weave.Show("approximate", drop.Approximate, "V", 4),
			weave.Show("exact", drop.Exact, "V", 4),
			weave.Show("percent", drop.Fraction, "%", 3),
			weave.Show("phasor", drop.Phasor, "V", 4),
			weave.Show("slip", slip.Approximate, "V", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
		Checks:   printedPark(drop),
	}, nil
}

// printedPark compares with a discussion of the same numbers.
func printedPark(d wire.AlternatingDrop) []weave.Row {
	const what = "50 A at power factor 0.65, 1000 ft of 0.12 and 0.044 Ω/kft: "
	return []weave.Row{
		{What: what + "phasor", Ours: d.Phasor, Printed: units.MustPrinted("6.39", "V"), Source: codeForum},
		{What: what + "effective impedance", Ours: d.Approximate, Printed: units.MustPrinted("5.55", "V"), Source: codeForum,
			Differs: "a slip in the source: its own terms add up to 5.57"},
		{What: what + "effective impedance, another writer", Ours: d.Approximate, Printed: units.MustPrinted("2.22", "V"), Source: codeForum,
			Differs: "the sign of the angle slipped: what a leading current would lose"},
	}
}

var (
	codeForum = working.Source{Title: "forum discussion of note 2 of NEC chapter 9 table 9", Provenance: working.Read}
	nec9      = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "chapter 9 table 9, as public reprints have it", Provenance: working.Read}
	reprint9 = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Place: "chapter 9 table 9, as one public reprint has it",
		Provenance: working.Read}
	tradesMath = working.Source{Title: "public lesson of trade mathematics on voltage drop", Provenance: working.Read}
	exam16     = working.Source{Title: "electrician training page, two-wire drop example", Provenance: working.Read}
)

// printedEffective compares effective impedances at a power factor of 0.85
// with those of the table, and two-wire drops with worked examples.
func printedEffective() ([]weave.Row, error) {
	var rows []weave.Row
	for _, p := range []struct {
		size                 wire.Size
		conduit              wire.Conduit
		digits               string
		source               working.Source
		within, why, differs string
	}{
		{size: wire.AWG(14), digits: "2.7", source: nec9},
		{size: wire.AWG(10), digits: "1.1", source: nec9, within: "6 %", why: "two digits of R and of Z"},
		{size: wire.AWG(6), digits: "0.44", source: nec9},
		{size: wire.AWG(6), digits: "0.45", source: reprint9, differs: "a slip of that reprint: the others have 0.44"},
		{size: wire.AWG(6), conduit: wire.SteelConduit, digits: "0.45", source: nec9},
		{size: wire.Aught(1), digits: "0.13", source: nec9},
		{size: wire.Aught(4), digits: "0.074", source: nec9},
		{size: wire.Aught(4), conduit: wire.SteelConduit, digits: "0.080", source: nec9},
		{size: wire.Kcmil(500), conduit: wire.SteelConduit, digits: "0.050", source: nec9},
	} {
		const length = 1000 * units.Foot
		d, err := wire.ACDrop(wire.ACRun{
			Current: 1 * units.Ampere, OneWay: length / 2, Source: 240 * units.Volt, PowerFactor: units.Some(85 * units.Percent),
			Line: wire.ACConductor{Conductor: wire.Conductor{Size: p.size}, Conduit: p.conduit},
		})
		if err != nil {
			return nil, err
		}
		rows = append(rows, weave.Row{What: p.size.String() + " copper, " + p.conduit.String() + " conduit, power factor 0.85",
			Ours: d.Effective.Along(length), Printed: units.MustPrinted(p.digits, "Ω/kft"), Source: p.source,
			Within: p.within, Why: p.why, Differs: p.differs})
	}
	drops, err := printedTwoWire()
	return append(rows, drops...), err
}

// printedTwoWire compares with published drops of two wires and a load without
// angle.
func printedTwoWire() ([]weave.Row, error) {
	twoWire := func(i units.Current, stated units.ResistancePerLength, v units.Voltage) (wire.AlternatingDrop, error) {
		return wire.ACDrop(wire.ACRun{Current: i, OneWay: 100 * units.Foot, Source: v, Line: wire.ACConductor{
			Conductor: wire.Conductor{Stated: units.Some(stated)},
			Reactance: units.Some(0 * units.OhmPerKilofoot),
		}})
	}
	long, err := twoWire(20*units.Ampere, 1.98*units.OhmPerKilofoot, 240*units.Volt)
	if err != nil {
		return nil, err
	}
	low, err := twoWire(4*units.Ampere, 4.99*units.OhmPerKilofoot, 24*units.Volt)
	return []weave.Row{
		{What: "20 A, 100 ft, 1.98 Ω/kft: drop", Ours: long.Exact, Printed: units.MustPrinted("7.92", "V"), Source: tradesMath},
		{What: "20 A, 100 ft, 1.98 Ω/kft: part of 240 V", Ours: long.Fraction, Printed: units.MustPrinted("3.3", "%"), Source: tradesMath},
		{What: "4 A, 100 ft, 4.99 Ω/kft: drop", Ours: low.Exact, Printed: units.MustPrinted("4.0", "V"), Source: exam16},
		{What: "4 A, 100 ft, 4.99 Ω/kft: part of 24 V", Ours: low.Fraction, Printed: units.MustPrinted("16.7", "%"), Source: exam16,
			Within: "0.5 %", Why: "worked from the rounded 4.0 V"},
	}, err
}

// dropByPowerFactor draws the three drops of the park's feeder.
func dropByPowerFactor() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Drop of one feeder against the power factor",
		Description: "Three curves. The phasor is a level line, since the current is the same throughout. The exact drop touches it where " +
			"load and line have the same angle, and falls away on both sides. With the sign slipped the drop is lower everywhere, and " +
			"below zero at low power factors; the two meet only at a power factor of 100 %.",
		X: figure.Axis{Label: "power factor, lagging", Unit: "%", Min: 0, Max: 100},
		Y: figure.Axis{Label: "drop", Unit: "V", Min: -4, Max: 8},
	}
	lines := []figure.Line{{Name: "phasor"}, {Name: "exact"}, {Name: "sign slipped"}}
	// Even steps of the angle: the curves turn steeply at the right.
	for degrees := 89.0; degrees >= 0; degrees-- {
		run := wire.ACRun{
			Current: 50 * units.Ampere, OneWay: 500 * units.Foot, Source: 240 * units.Volt,
			PowerFactor: units.Some(units.Ratio(math.Cos(degrees * math.Pi / 180))),
			Line:        wire.ACConductor{Conductor: wire.Conductor{Size: wire.Aught(1)}},
		}
		d, err := wire.ACDrop(run)
		if err != nil {
			return figure.Chart{}, err
		}
		run.Leading = true
		slip, err := wire.ACDrop(run)
		if err != nil {
			return figure.Chart{}, err
		}
		x := 100 * math.Cos(degrees*math.Pi/180)
		for i, v := range []units.Voltage{d.Phasor, d.Exact, slip.Exact} {
			lines[i].Points = append(lines[i].Points, figure.Point{X: x, Y: units.In(v, units.Volt)})
		}
	}
	chart.Lines = lines
	return chart, nil
}
