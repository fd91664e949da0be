package voltagedrop

import (
	"strconv"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

const twoLegs = weave.Prose(`## Two legs and the neutral between them

A 50 A receptacle of a large coach has two hots of 120 V and one neutral. Each leg's current goes out on its own hot, and
what comes back on the neutral is the sum of both, as phasors. How the hots stand to each other decides what that sum is:

- **120/240 V split phase.** The hots are opposite. The neutral carries the difference; with equal legs it carries nothing, and each leg loses
  over one conductor instead of two.
- **120/208 V network.** The hots are a third of a turn apart, as in some parks and cities. With equal legs the neutral carries
  as much as a leg, and from hot to hot there are 208 V.
- **One hot for both.** An adapter to a 30 A receptacle ties the legs together. Hot and neutral carry the sum.

The neutral's drop pulls the heavier leg down and pushes the lighter one up, so the lighter leg can stand above the
voltage of the source with nothing wrong. For opposite legs, without angle and without reactance:`)

var legSymbols = weave.Formula{
	Equations: []string{
		"I_N = I_A - I_B",
		"V_A = E - R_L*I_A - R_N*I_N",
		"V_B = E - R_L*I_B + R_N*I_N",
		"V_Aopen = 2 * E * P_B / (P_A + P_B)",
	},
	Where: []weave.Symbol{
		{Name: "I_N", Unit: "A", What: "current of the neutral; here for opposite legs without angle or reactance"},
		{Name: "I_A", Unit: "A", What: "current of leg A"},
		{Name: "I_B", Unit: "A", What: "current of leg B"},
		{Name: "V_A", Unit: "V", What: "voltage of leg A at the load"},
		{Name: "E", Unit: "V", What: "voltage of a leg at the source"},
		{Name: "R_L", Unit: "Ω", What: "resistance of a hot, one way"},
		{Name: "R_N", Unit: "Ω", What: "resistance of the neutral, one way"},
		{Name: "V_B", Unit: "V", What: "voltage of leg B at the load"},
		{Name: "V_Aopen", Unit: "V", What: "voltage of leg A when the neutral is open"},
		{Name: "P_B", Unit: "W", What: "loads of leg B at the nominal voltage"},
		{Name: "P_A", Unit: "W", What: "loads of leg A at the nominal voltage"},
	},
}

var theLegs = weave.Worked{
	Name:  "legs",
	Title: "A coach with unbalanced legs",
	Question: "A pedestal gives {{source}} on each leg: {{supply}}. Over {{one_way}} of {{size}} the legs of a coach take {{first}} and {{second}}. " +
		"What does each get, and what does the neutral carry?",
	Inputs: []weave.Input{
		{Name: "first", Label: "current of leg A", Default: "38 A", Unit: "A", Low: "1 A", High: "50 A"},
		{Name: "second", Label: "current of leg B", Default: "9 A", Unit: "A", Low: "0 A", High: "50 A"},
		{Name: "supply", Label: "how the legs stand to each other", Default: wire.SplitPhase.String(),
			Choices: []string{wire.SplitPhase.String(), wire.NetworkLegs.String(), wire.OneHot.String()}},
		{Name: "one_way", Label: "length, one way", Default: "100 ft", Unit: "ft", Low: "10 ft", High: "300 ft"},
		{Name: "size", Label: "conductor, hots and neutral", Default: "6 AWG", Choices: []string{"10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG"}},
		{Name: "source", Label: "voltage of a leg at the source", Default: "120 V", Unit: "V", Low: "100 V", High: "130 V"},
		{Name: "allowed", Label: "drop that is allowed on a leg", Default: "3 %", Unit: "%", Low: "0.5 %", High: "20 %"},
	},
	Solve: solveLegs,
}

func solveLegs(in *weave.Inputs) (weave.Answer, error) {
	legs, err := wire.LegDrop(wire.LegRun{
		Currents: units.Legs[units.Current]{
			A: weave.In[units.Current](in, "first"),
			B: weave.In[units.Current](in, "second"),
		},
		Supply: weave.Parsed(in, "supply", word[wire.LegSupply]),
		OneWay: weave.In[units.Length](in, "one_way"),
		Line: wire.ACConductor{Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		}},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Leg A gets {{a}}, a drop of {{drop_a}}; leg B " +
			"gets {{b}}, {{drop_b}}; below 0 it rises. The " +
			"neutral carries {{neutral}}, the busier hot " +
			"{{hot}}, and from hot to hot there are {{between}}. " +
			"The conductors give off {{heat}}.",
		Values: []weave.Value{
			weave.Show("a", legs.AtLoad.A, "V", 4),
			weave.Show("drop_a", legs.Fraction.A, "%", 3),
			weave.Show("b", legs.AtLoad.B, "V", 4),
			weave.Show("drop_b", legs.Fraction.B, "%", 3),
			weave.Show("neutral", legs.InNeutral, "A", 3),
			weave.Show("hot", legs.InLine, "A", 3),
			weave.Show("between", legs.LineLine, "V", 4),
			weave.Show("heat", legs.Heat, "W", 3),
		},
		Working:  legs.Working(),
		Findings: legs.Findings(),
	}, nil
}

const whatSupplies = weave.Prose(`The same coach on the three supplies, equal legs of {{supplies.each}} over the same conductors:

| supply | leg A at the coach | hot to hot | in the neutral | in a hot | heat |
| --- | --- | --- | --- | --- | --- |
| split phase | {{supplies.a0}} | {{supplies.between0}} | {{supplies.neutral0}} | {{supplies.hot0}} | {{supplies.heat0}} |
| network | {{supplies.a1}} | {{supplies.between1}} | {{supplies.neutral1}} | {{supplies.hot1}} | {{supplies.heat1}} |
| one hot | {{supplies.a2}} | {{supplies.between2}} | {{supplies.neutral2}} | {{supplies.hot2}} | {{supplies.heat2}} |`)

// equalLegs is a coach with as much on one leg as on the other.
func equalLegs(supply wire.LegSupply) wire.LegRun {
	return wire.LegRun{
		Currents: units.Legs[units.Current]{A: 15 * units.Ampere, B: 15 * units.Ampere},
		Supply:   supply, OneWay: 100 * units.Foot, Source: 120 * units.Volt,
		Line: wire.ACConductor{Conductor: wire.Conductor{Size: wire.AWG(6)}},
	}
}

// solveSupplies works equal legs on each supply.
func solveSupplies(*weave.Inputs) (weave.Answer, error) {
	values := []weave.Value{weave.Show("each", equalLegs(0).Currents.A, "A", 3)}
	for i, supply := range []wire.LegSupply{wire.SplitPhase, wire.NetworkLegs, wire.OneHot} {
		v, err := wire.LegDrop(equalLegs(supply))
		if err != nil {
			return weave.Answer{}, err
		}
		n := strconv.Itoa(i)
		values = append(values, weave.Show("a"+n, v.AtLoad.A, "V", 4), weave.Show("between"+n, v.LineLine, "V", 4),
			weave.Show("neutral"+n, v.InNeutral, "A", 3), weave.Show("hot"+n, v.InLine, "A", 3), weave.Show("heat"+n, v.Heat, "W", 3))
	}
	return weave.Answer{Values: values}, nil
}

const sharedByTwo = weave.Prose(`A circuit inside can be made the same way: two hots, each with its breaker, and one neutral for both, which has none. That
works while the hots are opposite. When one inverter or one adapter feeds both of them, nothing cancels, and the neutral
can carry twice what each breaker lets through.`)

var theSharedNeutral = weave.Worked{
	Name:  "shared_neutral",
	Title: "One neutral for two breakers",
	Question: "Two circuits of {{device}} share a neutral that may carry {{ampacity}}. {{first}} and {{second}} are in use, and the supply is " +
		"{{supply}}. What does the neutral carry, and what could it have to?",
	Inputs: []weave.Input{
		{Name: "first", Label: "current of one hot", Default: "12 A", Unit: "A", Low: "0 A", High: "50 A"},
		{Name: "second", Label: "current of the other", Default: "9 A", Unit: "A", Low: "0 A", High: "50 A"},
		{Name: "supply", Label: "how the hots stand to each other", Default: wire.OneHot.String(),
			Choices: []string{wire.SplitPhase.String(), wire.NetworkLegs.String(), wire.OneHot.String()}},
		{Name: "device", Label: "breaker of each hot", Default: "15 A", Unit: "A", Low: "5 A", High: "50 A"},
		{Name: "ampacity", Label: "ampacity of the neutral", Default: "15 A", Unit: "A", Low: "5 A", High: "100 A"},
	},
	Solve: solveSharedNeutral,
}

func solveSharedNeutral(in *weave.Inputs) (weave.Answer, error) {
	supply := weave.Parsed(in, "supply", word[wire.LegSupply])
	device := weave.In[units.Current](in, "device")
	ampacity := weave.In[units.Current](in, "ampacity")
	shared, err := wire.SharedNeutral(wire.Multiwire{
		Supply: units.Some(supply),
		Currents: units.Legs[units.Current]{
			A: weave.In[units.Current](in, "first"),
			B: weave.In[units.Current](in, "second"),
		},
		Device:  units.Some(device),
		Neutral: units.Some(ampacity),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "It carries {{current}}, and the breakers let " +
			"{{most}} flow in it.",
		Values: []weave.Value{
			weave.Show("current", shared.Current, "A", 3),
			weave.Show("most", shared.Most.Or(0), "A", 3),
		},
		Working:  shared.Working(),
		Findings: shared.Findings(),
	}, nil
}

const openedNeutral = weave.Prose(`And when the neutral opens, at a pin of the plug, in the pedestal, in the transfer switch, the hots still give
240 V between them, and the loads of one leg are in series with those of the other. The lighter load gets the more.`)

var theOpenNeutral = weave.Worked{
	Name:  "open_neutral",
	Title: "The neutral opens",
	Question: "On leg A a television and a charger, {{first}} together; on leg B a heater of {{second}}; {{nominal}} each. The supply " +
		"is {{supply}}, and the neutral comes loose. What does the television get?",
	Inputs: []weave.Input{
		{Name: "first", Label: "loads of leg A", Default: "150 W", Unit: "W", Low: "0 W", High: "6000 W"},
		{Name: "second", Label: "loads of leg B", Default: "1500 W", Unit: "W", Low: "1 W", High: "6000 W"},
		{Name: "supply", Label: "how the legs stand to each other", Default: wire.SplitPhase.String(),
			Choices: []string{wire.SplitPhase.String(), wire.NetworkLegs.String(), wire.OneHot.String()}},
		{Name: "nominal", Label: "voltage of a leg", Default: "120 V", Unit: "V", Low: "100 V", High: "130 V"},
	},
	Solve: solveOpenNeutral,
}

func solveOpenNeutral(in *weave.Inputs) (weave.Answer, error) {
	open, err := wire.OpenNeutral(wire.SplitLoad{
		Powers: units.Legs[units.Power]{
			A: weave.In[units.Power](in, "first"),
			B: weave.In[units.Power](in, "second"),
		},
		Supply:  weave.Parsed(in, "supply", word[wire.LegSupply]),
		Nominal: weave.In[units.Voltage](in, "nominal"),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Leg A has {{a}} and leg B {{b}}, where " +
			"{{highest}} is the top of the usual range. Leg A " +
			"would take {{power}} in place of {{rated}}. No " +
			"breaker opens.",
		Values: []weave.Value{
			weave.Show("a", open.AtLoad.A, "V", 3),
			weave.Show("b", open.AtLoad.B, "V", 3),
			weave.Show("highest", open.Highest, "V", 3),
			weave.Show("power", open.Powers.A, "W", 3),
			weave.Show("rated", open.Load.Powers.A, "W", 3),
		},
		Working:  open.Working(),
		Findings: open.Findings(),
	}, nil
}

const neutralCaution = `An open neutral kills appliances within seconds, starts fires, and may put voltage on what should have none. Lights
that grow brighter when something heavy is switched on are its sign: unplug everything and switch the supply off, at
the pedestal, before you look for the cause. Measure both legs and hot to hot at a pedestal before plugging in. Mending a
neutral is a licensed electrician's work; the pedestal is the park's.`

var theraja = working.Source{Body: "B. L. and A. K. Theraja", Title: "A Textbook of Electrical Technology, vol. III",
	Place: "examples 40.22 and 40.28, as a textbook companion works them out", Provenance: working.Read}

// printedLegs compares with published cases of three wires.
func printedLegs() ([]weave.Row, error) {
	open, err := wire.OpenNeutral(wire.SplitLoad{
		Powers: units.Legs[units.Power]{A: 250 * units.Kilowatt, B: 400 * units.Kilowatt}, Nominal: 230 * units.Volt,
	})
	if err != nil {
		return nil, err
	}
	shared := equalLegs(wire.SplitPhase)
	shared.Source, shared.Line.Conductor.Size = 250*units.Volt, wire.Kcmil(500)
	shared.Currents = units.Legs[units.Current]{A: 400 * units.Ampere, B: 200 * units.Ampere}
	v, err := wire.LegDrop(shared)
	const what = "250 kW and 400 kW at 230 V, neutral open: on the "
	return []weave.Row{
		{What: "three-wire direct current, 100 kW and 50 kW on 250 V each: in the neutral", Ours: v.InNeutral, Printed: units.MustPrinted("200", "A"), Source: theraja},
		{What: what + "smaller", Ours: open.AtLoad.A, Printed: units.MustPrinted("283", "V"), Source: theraja},
		{What: what + "larger", Ours: open.AtLoad.B, Printed: units.MustPrinted("177", "V"), Source: theraja},
	}, err
}
