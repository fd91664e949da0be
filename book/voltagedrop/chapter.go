// Package voltagedrop is the chapter of the book on the voltage that a run of
// wire loses: in direct and alternating current, warm or cold, and in two legs
// that share a neutral.
package voltagedrop

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "voltagedrop",
		Title:    "Voltage drop",
		Question: "The battery says 12.8 V. Why does the thing at the far end of the wire get less, and which wire is enough?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, usedByTheRule,
			mathematics, symbols, afterTheMath,
			theFeed, theSize, theReach, theRefrigerator, theMetricRun, theQuote,
			weave.Prose("## Drop against length\n\nA straight line for each size: twice the length, twice the drop. " +
				"Where a line crosses the limit is how far that size reaches."),
			weave.Figure{
				Name:    "drop_by_length",
				Caption: "Drop of a 20 A load on 12.8 V, stranded copper at 75 °C.",
				Draw:    dropByLength,
			},
			longestRuns, theRuns,
			whichTwelve, weave.Numbers{Name: "twelve", Solve: solveTwelve},
			weave.Table{Title: "12 AWG, source by source", Rows: printedTwelve},
			otherMetals, weave.Numbers{Name: "metals", Solve: solveMetals}, theMetal,
			wholePath, theLug, sideBySide, thePair, backByChassis, theChassis,
			warmth, warmSymbols, byTheSquare, theInverterCable,
			settled,
			weave.Figure{
				Name:    "temperature_by_current",
				Caption: "2 AWG copper with 105 °C insulation, alone in air of 30 °C, ampacity by 33 CFR 183.425.",
				Draw:    temperatureByCurrent,
			},
			aDay, daySymbols, theDay, theCharge,
			alternating, weave.Numbers{Name: "reactance", Solve: solveReactance},
			acSymbols, threeDrops, theCord, thePark,
			weave.Figure{
				Name:    "drop_by_power_factor",
				Caption: "50 A over 500 ft of 1/0 AWG copper in PVC conduit, 240 V, copper at 75 °C.",
				Draw:    dropByPowerFactor,
			},
			twoLegs, legSymbols, theLegs,
			whatSupplies, weave.Numbers{Name: "supplies", Solve: solveSupplies},
			sharedByTwo, theSharedNeutral,
			openedNeutral, theOpenNeutral,
			weave.Caution{Text: neutralCaution},
			weave.Prose("## What print says\n\nPublished results beside ours. Each book made its own choice of " +
				"temperature and of copper; given the same choice, we must find the same number."),
			weave.Table{Title: "Published worked examples", Rows: printedExamples},
			weave.Table{Title: "Published resistance of one conductor", Rows: printedTables},
			weave.Table{Title: "Published alternating current", Rows: printedEffective},
			weave.Table{Title: "Published three-wire circuits", Rows: printedLegs},
			afterPrint,
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "oneway", Claim: "The length that counts is the distance to the load", Solve: solveOneWay},
			weave.Misconception{Name: "table", Claim: "Ten gauge has so many ohms, look it up", Solve: solveWarmWire},
			weave.Misconception{Name: "area", Claim: "2.5 mm² is about 14 gauge, so use the 14 gauge tables", Solve: solveNearly},
			weave.Misconception{Name: "heat", Claim: "The drop is within 3 %, so the wire is thick enough", Solve: solveShortRun},
			weave.Misconception{Name: "clad", Claim: "1/0 is 1/0, so take the cheaper", Solve: solveClad},
			weave.Misconception{Name: "tight", Claim: "The lug loses hardly anything", Solve: solveTightLug},
			weave.Misconception{Name: "same_charge", Claim: "Three times the current for a third of the time loses the same", Solve: solveSameCharge},
			weave.Misconception{Name: "phasor", Claim: "The drop is current times impedance", Solve: solvePhasor},
			weave.Misconception{Name: "both_legs", Claim: "The neutral carries what both legs carry", Solve: solveBothLegs},
			weave.Misconception{Name: "breaker", Claim: "If the neutral comes loose, a breaker trips", Solve: solveBreaker},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			lampExercise, pumpExercise, voltageExercise, gaugeExercise, heatExercise,
			tinnedExercise, chassisExercise, warmExercise, chargeExercise, motorExercise, adapterExercise, brightExercise,
		},
	}
}

const opening = weave.Prose(`A wire is a resistor. A poor one, a few thousandths of an ohm for each metre, but a pump
takes its whole current through it, and takes it twice: out on one conductor and back on the other. At 12 V there is
little to lose. A drop of {{feed.drop}}, which nobody would notice on 120 V, is {{feed.percent}} of a 12.8 V battery: the
pump runs slow, the lamp is dim, and a refrigerator with a low-voltage cut-out stops on a hot afternoon while the battery
is still half full.

The first half of this chapter answers three questions. What does a run lose? Which size is enough? How far does a size reach?
The second half takes away, one at a time, what they took for granted: that the conductor is copper as the table means it, that
the path is two good wires, that its temperature is known, that the current stays, that it is direct, and that there are only
two conductors.`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice allows 3 % for what is sensitive (electronics, a refrigerator, chargers) and 10 % for what is not. The
size comes from a constant that handbooks call K: the area in circular mils is K times current times length, over the
drop in volts. It fails in these ways, nearly all of which make the wire too thin:

- The length is not there and back. Half the length is half the drop on paper.
- K is not one number. Books print {{rule.k_low}} for pure cold copper and {{rule.k_high}} for warm stranded copper, and
  others between. With the one or the other, the same {{rule.size}} run drops {{rule.cold}} or {{rule.warm}}.
- The current is not the one on the label. What regulates its power takes more current when it gets less voltage.
- The drop is of the whole path. A feeder and a branch that each just keep the limit lose twice the limit, and the
  feeder carries everybody's current.
- And drop says nothing about heat.`)

var usedByTheRule = weave.Numbers{Name: "rule", Solve: solveRule}

const mathematics = weave.Prose(`## The mathematics

American wire gauge is a staircase of diameters. 36 AWG is 0.005 inch, 4/0 is 0.46 inch, and the 39 steps between them are
all the same ratio. The gauge number falls as the wire grows, and 1/0, 2/0, 3/0 and 4/0 count on as 0, -1, -2 and -3.
From the diameter comes the area, from the area and the metal the resistance of a length, and from that, twice the
one-way length and the current, the drop.`)

var symbols = weave.Formula{
	Equations: []string{
		"d = d_36 * pow(92, (36 - n)/39)",
		"A = pi/4 * pow(d, 2)",
		"ρ = ρ_20 * (1 + α_20*(T - 20)) * k_lay",
		"r = ρ / A",
		"ΔV = I * r * 2*L",
		"δ = 100 * ΔV / V_source",
	},
	Where: []weave.Symbol{
		{Name: "d", Unit: "mm", What: "diameter of the conductor as one round wire"},
		{Name: "d_36", Unit: "mm", What: "diameter of 36 AWG"},
		{Name: "n", What: "gauge number, 1/0 counting as 0"},
		{Name: "A", Unit: "mm²", What: "metal area"},
		{Name: "ρ", Unit: "Ω·mm²/m", What: "resistivity of the metal as warm as it is, lay included"},
		{Name: "ρ_20", Unit: "Ω·mm²/m", What: "resistivity of annealed copper at 20 °C"},
		{Name: "α_20", Unit: "1/K", What: "temperature coefficient of copper at 20 °C"},
		{Name: "T", Unit: "°C", What: "temperature of the metal"},
		{Name: "k_lay", What: "longer path of strands round the axis; 1 for a solid wire"},
		{Name: "r", Unit: "Ω/m", What: "resistance of one conductor per length"},
		{Name: "ΔV", Unit: "V", What: "voltage lost there and back"},
		{Name: "I", Unit: "A", What: "current of the load"},
		{Name: "L", Unit: "m", What: "length one way, source to load"},
		{Name: "δ", Unit: "%", What: "drop as a fraction of the source voltage"},
		{Name: "V_source", Unit: "V", What: "voltage at the source end"},
	},
}

const afterTheMath = weave.Prose(`Metric conductors need one step less and one look-up more: IEC 60228 does not fix their area
but the greatest resistance they may have, so for them r at 20 °C is read from its table.

If nothing is said of the temperature, the library takes {{rule.warm_copper}}, the temperature of the North American
tables: a wire that works is warm, and the warm wire is the one that has to do. Cable whose insulation bears more may run
warmer at full load and drop more. Joints, fuses and switches come on top; this formula does
not know them.

## Worked examples

Each example of the chapter can be worked again with other numbers, for instance:

    go run ./book show voltagedrop -example feed -set one_way="25 ft"`)

const afterPrint = weave.Prose(`A row that differs says why: a misprint is found by doing its product by hand. The tests of the wire package
compare every size of these tables, and more.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The crimp, not the wire.** A poor joint of a hundredth of an ohm loses as much as metres of cable, and its heat is
  in one place. If a run drops more than it should, measure across each joint while the load runs.
- **The frame as return.** A chassis return can be better than a wire or much worse, and it corrodes. Measure it loaded, and
  again after a winter.
- **The boat cable in the wall.** An ampacity in free air, as in the example of the inverter cable, holds for one cable with air all round.
  In a wall or a bundle the same current warms it far more.
- **Boat and vehicle cable.** The number on cable made to SAE J1127 or J1128 is not AWG: there is less copper in it.
  Copper-clad aluminium has more resistance still. Ask for metal and standard on every line of a quote.
- **The drop that was measured idle.** Without current there is no drop. Measure at the load, with the load on.
- **The long charging lead.** A charger that senses the voltage at its own end of a thin cable believes that the battery is
  full before it is.`)

const cautions = `A wire that is thick enough for the drop can still be too thin for the heat, and a fuse protects only the wire
behind it. Check ampacity and protection separately for every size found here. Work on a live battery can weld a tool and
start a fire: disconnect first. Local codes and a licensed electrician come before this book.`
