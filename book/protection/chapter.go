// Package protection is the chapter of the book on the current that a
// conductor may carry and the device that protects it.
package protection

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "protection",
		Title:    "Ampacity and protection",
		Question: "How much current may this wire carry, which fuse does it need, and will that fuse open when it has to?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			weave.Figure{
				Name:    "limit_by_size",
				Caption: "Greatest device for copper with 105 °C insulation, by the NEC with terminals of 60 °C and air of 30 °C.",
				Bars:    limitBySize,
			},
			mathematics, symbols, afterTheMath,
			theBranch, theInverter, theRoof, theNextRating, theLamp, theUpgrade, thePlace, theQuote,
			weave.Prose("## Ampacity in warm air\n\nThe printed factors hold over five degrees, so the curve is a staircase. Each class " +
				"of insulation gives out where the air is nearly as warm as the insulation may become."),
			weave.Figure{
				Name: "ampacity_by_air",
				Caption: "Corrected ampacity of 10 AWG by the NEC, a line for each class of insulation, not more than three conductors, " +
					"before the terminals are looked at.",
				Draw: ampacityByAir,
			},
			weave.Prose("## Fault current against length\n\nA short is strong at the battery and weak at the end of a thin wire. " +
				"Where a curve passes below a fuse, that fuse does not open on a short there."),
			weave.Figure{
				Name:    "fault_by_length",
				Caption: "Bolted short on 13.2 V behind 3 mΩ, stranded copper at 75 °C.",
				Draw:    faultByLength,
			},
			weave.Prose("## What print says\n\nPublished results beside ours. A row that differs says why."),
			weave.Table{Title: "Published worked examples", Rows: printedExamples},
			weave.Table{Title: "Published tables", Rows: printedTables},
			beforeFuses,
			weave.Table{Title: "Fuses by wire size in aircraft", Rows: printedFuses},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "boat", Claim: "The table says that this wire carries 45 A", Solve: solveBoatTable},
			weave.Misconception{Name: "column", Claim: "It is 90 °C wire, so I may use the 90 °C column", Solve: solveColumn},
			weave.Misconception{Name: "label", Claim: "Watts over 12 V gives the inverter's fuse", Solve: solveLabel},
			weave.Misconception{Name: "pair", Claim: "Two 30 A wires side by side make a 60 A cable", Solve: solvePair},
			weave.Misconception{Name: "charger", Claim: "The solar controller makes the current, so the fuse belongs there", Solve: solveCharger},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			lampsExercise, conduitExercise, afternoonExercise, seriesExercise, reachExercise,
		},
	}
}

const opening = weave.Prose(`A fuse protects the wire, not the thing at the end of it. A pump that takes {{branch.current}}
would be happy behind any fuse from {{branch.smallest}} up; the wire would not. When a staple goes through it close to the
battery, {{upgrade.before}} and more flow, and the only question left is whether something opens before the insulation burns.

So there are four questions, and a circuit must pass all of them. What may the wire carry for heat? Which device lies
between what the load needs and what the wire may have? Does it sit where it protects? And on a short, can it break the
current at its own place, and is the current at the far end enough to open it?`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: 15 A for 14 gauge, 20 A for 12, 30 A for 10, a fuse of 125 % of the load, close to the battery.
For short cool branches of a few amperes it is right. It fails in these ways:

- **The table has relatives.** For the same {{rule.size}} with {{rule.class}} insulation the RV limits give {{rule.rv}}, the
  National Electrical Code {{rule.nec}}, and the rule for boats {{rule.boat}}. Each is meant for another place. A
  number without the name of its rule set is no number, so in this library the rule set is always an input and no
  function looks for the kindest.
- **The air is not at 30 °C and the wire is not alone.** Of {{roof.size}} under a roof at {{roof.ambient}}, {{roof.wires}}
  together may carry {{roof.ampacity}} each.
- **The load is not what the label says.** An inverter of {{inverter.power}} takes {{inverter.current}} on a tired battery, and its
  fuse must carry {{inverter.needed}}.
- **The fuse is never asked.** The short at the end of {{lamp.one_way}} of {{lamp.size}} is {{lamp.short}}. A main fuse of
  {{lamp.fuse}} carries that for ever.
- **The fuse is asked too much.** Lithium batteries, {{upgrade.batteries}} side by side, give {{upgrade.after}} into a
  short; a fuse that can break {{upgrade.breaks}} may burst.

Where do the RV limits come from? Article 551 of the NEC, on recreational vehicles, leaves 12 V wiring to a
low-voltage standard that was not at hand. What is used here is the table of 552.10(E)(1) for park trailers, and
that from memory; each result says so. It ends at 10 AWG. Thicker single cables are held against the free-air table of
the boat rule, as is common practice. In the figure that is the step from 10 to 8 AWG: a free-air value is for one cable with
air all round it, and the NEC's, for wires in a raceway or a sheath, is what the same cable bears in a conduit.`)

const mathematics = weave.Prose(`## The mathematics

A wire makes heat with the square of its current and sheds it in proportion to how much warmer it is than the
air. It may become as warm as its insulation is rated. So the current that it bears goes with the root of the room that is
left between the two temperatures. The tables print that current for air at 30 °C and not more than three conductors
together, and factors for everything else; the factors are that root, rounded. What the wire bears is then held
against what its terminals bear, which have a temperature rating of their own and are not corrected.

The device lies between the load and the wire. For a load of three hours or more it must have a quarter in hand
(NEC 210.20(A) and 215.3, from memory). An inverter's load is what it gives, over what it makes of each watt it takes, at the
lowest voltage it still works at. At the top is the limit of the rule set, which is not always the
ampacity.

The short is Ohm's law with everything in it: the bank inside, the links, and the run there and back.`)

var symbols = weave.Formula{
	Equations: []string{
		"I_z = min(I_table * k_ambient * k_bundle, I_terminals)",
		"k_root = sqrt((T_rated - T_air) / (T_rated - 30))",
		"I_load = P / (η * V_low)",
		"I_needed = k_continuous * I_load",
		"I_needed <= I_device",
		"I_device <= I_limit",
		"I_k = E / (R_source + r * 2*L)",
		"I_near <= I_break",
		"I_far > I_device",
	},
	Where: []weave.Symbol{
		{Name: "I_z", Unit: "A", What: "ampacity: continuous current that the conductor may carry for heat"},
		{Name: "I_table", Unit: "A", What: "ampacity by the table for size and insulation, air at 30 °C"},
		{Name: "k_ambient", What: "factor for the temperature of the air, by the class of the insulation"},
		{Name: "k_bundle", What: "factor for more than three conductors that carry current together"},
		{Name: "I_terminals", Unit: "A", What: "ampacity of the same size in the column of the terminals"},
		{Name: "k_root", What: "the root that the printed k_ambient is rounded from"},
		{Name: "T_rated", Unit: "°C", What: "rating of the insulation"},
		{Name: "T_air", Unit: "°C", What: "temperature of the air round the wire, at the top of its band in the table"},
		{Name: "I_load", Unit: "A", What: "greatest current of the load, here of an inverter"},
		{Name: "P", Unit: "W", What: "power that the inverter gives"},
		{Name: "η", What: "its efficiency"},
		{Name: "V_low", Unit: "V", What: "lowest voltage it works at"},
		{Name: "I_needed", Unit: "A", What: "what the device must carry"},
		{Name: "k_continuous", What: "1.25 for a load of three hours or more, else 1"},
		{Name: "I_device", Unit: "A", What: "rating of the fuse or breaker"},
		{Name: "I_limit", Unit: "A", What: "greatest device that the rule set allows"},
		{Name: "I_k", Unit: "A", What: "current of a bolted short at the end of a length"},
		{Name: "E", Unit: "V", What: "open-circuit voltage of the bank"},
		{Name: "R_source", Unit: "Ω", What: "resistance of the bank inside, with its links"},
		{Name: "r", Unit: "Ω/m", What: "resistance of a metre of one conductor"},
		{Name: "L", Unit: "m", What: "one-way length from the source to the short"},
		{Name: "I_near", Unit: "A", What: "I_k at the place of the device"},
		{Name: "I_break", Unit: "A", What: "interrupting rating: the greatest current the device can break"},
		{Name: "I_far", Unit: "A", What: "I_k at the far end of the run"},
	},
}

const afterTheMath = weave.Prose(`Where the limit is not the ampacity:

- For copper of 18 to 10 AWG both the NEC (240.4(D)) and the RV table limit the device however high the ampacity is.
- Otherwise the NEC allows the next standard rating up if the ampacity is not itself one, to 800 A (240.4(B), from
  memory; it has exceptions, circuits with several receptacles among them).
- By the NEC the conductor, too, must have the quarter in hand for a load of hours (210.19(A), from memory), so the step
  up does not help there.
- On a boat under 50 V the device may be 150 % of the ampacity (33 CFR 183.455).

The last line of the formulas is a bare minimum. A fuse opens at once on many times its rating, and may take minutes on
a little more than it. How long it takes is on its own curve, which is not worked out here; nor is how long a wire survives,
nor the arc, which holds the current below that of the bolted short. The cable is taken at 75 °C. A cold one carries a
stronger short, so an interrupting rating wants room above the number found here.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show protection -example branch \
        -set size="10 AWG" -set rules="NEC 2017"`)

const beforeFuses = weave.Prose(`The RV limits are from memory, so it is worth seeing what another trade that builds light and strings
wires through walls has in print. It does not prove them.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The fuse that kept blowing.** Somebody puts in the next larger one, and the wire becomes the fuse. If a fuse
  opens, the load has grown or something is wrong; a larger fuse needs a larger wire first.
- **The part nobody listed.** Switch, shunt, bus bar and terminals are in the path too. The path may carry what its
  weakest part may; an old battery switch survives every upgrade.
- **A fuse for the wrong voltage.** A fuse breaks direct current up to a voltage that is printed on it, and a breaker for
  alternating current need not break direct current at all. At 48 V the blade fuse of a car is not a fuse.
- **The loose holder.** A poor contact makes heat with less than the rated current. The fuse sees nothing; touch,
  look for brown plastic, and measure the voltage across it under load.
- **The protection inside the battery.** It may open on a short, once. It is no substitute for a fuse: it may fail closed, and
  it does not know the wire.
- **Tapping a thick cable with a thin wire.** Every step down in size needs its own fuse at the step.`)

const cautions = `Numbers here do not make an installation safe. The RV limits are from memory, the tables are for copper, and what
the wires pass through decides as much as their size. Find the standard that applies, and have a licensed electrician
look at the work. A short on a lithium bank throws molten metal: disconnect the battery before you touch its cables, take
off rings, and cover the posts.`
