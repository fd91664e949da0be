package ampacity

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`A wire makes heat, whatever it feeds, and the heat has to get out. As long as it does, the copper
settles a few degrees above the air. If it cannot, the insulation softens, then chars, and the wire touches something it should
not. Ampacity is the current at which the copper is just as warm as its insulation bears for years on end.

So ampacity is not a property of the wire. The same {{roof.size}} that carries {{rule.cool}} on the bench may carry
{{roof.ampacity}} under a roof at {{roof.ambient}} with three others, and nobody sees the difference when looking at it. This chapter
is about four questions: which table, how warm is the air, who lies beside it, and what does it end in? Which fuse
goes with the answer is the next chapter.`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: 14 gauge carries 15 A, 12 gauge 20 A, 10 gauge 30 A. For a cable by itself in a cool wall that is right, and
the stricter tables agree with it. It fails in these ways:

- **The place is hot.** A roof, an attic, the cupboard behind a furnace. Tables are for air of 30 °C. At {{roof.ambient}} insulation
  of {{roof.insulation}} has {{roof.air}} of its ampacity left, and insulation of 60 °C has none.
- **It has company.** {{roof.wires}} wires in one raceway keep {{roof.bundle}} each. They all make heat, and those in the middle
  have nobody cooler to give it to.
- **It ends in something.** {{terminals.size}} with {{terminals.insulation}} insulation has {{terminals.table}} in its column. The screw
  it ends in is rated {{terminals.terminals}} and bears {{terminals.terminals_bear}} on that wire.
- **The table has relatives.** For the same {{rule.size}} with {{rule.class}} insulation the RV limits give {{rule.rv}}, the
  National Electrical Code {{rule.nec}}, and the regulation for boats {{rule.boat}}. Each is meant for another place.
- **The table was changed.** The code of 2008 had {{edition.old}} for {{edition.size}} at {{edition.insulation}}; since 2011 it is
  {{edition.later}}.
- **It is a cord.** A cord of {{cord.size}} has {{cord.ampacity}}, laid out; on its reel it has less, and no table says how much.

A number without the name of its rule set is no number. So in this library the rule set is always an input, with the edition
in its name, and no function looks for the kindest.

Where do the RV limits come from? Article 551 of the NEC, on recreational vehicles, leaves 12 V wiring to a
low-voltage standard that was not at hand. What is used here is the table of 552.10(E)(1) for park trailers, and
that from memory; each result says so. It limits the fuse and stands in for an ampacity. It ends at 10 AWG; thicker
single cables are held against the free-air table for boats, as is common practice.`)

const mathematics = weave.Prose(`## The mathematics of a table

The heat in a metre of wire goes with the square of the current. What gets away goes, nearly, with how much warmer the copper is
than the air. So the current that a wire bears goes with the root of the room between the two temperatures, and a table
for air of 30 °C holds for other air when multiplied by a ratio of roots. Codes print that ratio, rounded, in bands of five
degrees, and we use what they print.

In company the others' heat comes on top. For that there is no formula in the codes, only a staircase of factors by number, from
80 % for four to 35 % beyond forty; they are applied to what the air has left.`)

var corrections = weave.Formula{
	Equations: []string{
		"I_corrected = I_table * k_ambient * k_bundle",
		"I_z = min(I_corrected, I_terminals)",
		"k_root = sqrt((T_rated - T_air) / (T_rated - 30))",
	},
	Where: []weave.Symbol{
		{Name: "I_corrected", Unit: "A", What: "current that brings the insulation, where it lies, to its rating"},
		{Name: "I_table", Unit: "A", What: "ampacity by the table for size and insulation, air at 30 °C, not more than three conductors"},
		{Name: "k_ambient", What: "factor for the temperature of the air, by the class of the insulation"},
		{Name: "k_bundle", What: "factor for more than three conductors that carry current together"},
		{Name: "I_z", Unit: "A", What: "ampacity"},
		{Name: "I_terminals", Unit: "A", What: "ampacity of the same size in the column of the terminals, uncorrected"},
		{Name: "k_root", What: "the root that the printed k_ambient is rounded from"},
		{Name: "T_rated", Unit: "°C", What: "rating of the insulation"},
		{Name: "T_air", Unit: "°C", What: "temperature of the air round the wire, at the top of its band in the table"},
	},
}

const afterCorrections = weave.Prose(`The second line is NEC 110.14(C). A terminal is tested with a wire as cool as the terminal's own
rating, and a hotter wire heats it. If nothing is marked, the code takes 60 °C up to 1 AWG and 75 °C above. The correction starts
in the column of the insulation, and only its result is held against the terminals: to start in the column of the terminals
gives away copper, and to forget the terminals gives away the panel. The sheathed cable of houses is held to the column of
60 °C whatever its terminals bear, though its correction starts at 90 °C (334.80, from memory): work it with terminals of 60 °C.
For a load of three hours or more the code wants a quarter more of the conductor, before correction; that is in the next chapter,
with the device.

The rule for boats has the first line only, with one step for the engine space, where 50 °C is assumed, and counts company from
50 V up. The RV table has neither, and the library refuses to be told of warm air there, rather than to ignore it.`)

var balance = weave.Formula{
	Equations: []string{
		"I = sqrt((P_convection + P_radiation) / r)",
		"P_convection = pi * Nu * k * (T_s - T_air)",
		"k_Pr = pow(1 + pow(0.559 / Pr, 9/16), 8/27)",
		"Nu = pow(0.60 + 0.387 * pow(Ra, 1/6) / k_Pr, 2)",
		"Ra = g * (T_s - T_air) * pow(D, 3) * pow(rho, 2) * c_p / (T_f * mu * k)",
		"P_radiation = epsilon * sigma * pi * D * (pow(T_s, 4) - pow(T_air, 4))",
		"T_s = T_c - (P_convection + P_radiation) * R_T",
		"R_T = rho_T * ln(D / d) / (2 * pi)",
	},
	Where: []weave.Symbol{
		{Name: "I", Unit: "A", What: "current that keeps the copper at its temperature"},
		{Name: "P_convection", Unit: "W/m", What: "carried off by rising air, of one metre"},
		{Name: "P_radiation", Unit: "W/m", What: "radiated, of one metre"},
		{Name: "r", Unit: "Ω/m", What: "resistance of the copper as warm as it is"},
		{Name: "k_Pr", What: "what the kind of fluid makes of it"},
		{Name: "Nu", What: "Nusselt number: heat carried off against heat conducted through still air"},
		{Name: "k", Unit: "W/(m·K)", What: "thermal conductivity of air"},
		{Name: "T_s", Unit: "K", What: "absolute temperature of the surface of the insulation"},
		{Name: "T_air", Unit: "K", What: "that of the air and of what the cable sees"},
		{Name: "Ra", What: "Rayleigh number: buoyancy against what slows it"},
		{Name: "Pr", What: "Prandtl number of air"},
		{Name: "g", Unit: "m/s²", What: "gravity"},
		{Name: "D", Unit: "m", What: "diameter over the insulation"},
		{Name: "rho", Unit: "kg/m³", What: "density of air"},
		{Name: "c_p", Unit: "J/(kg·K)", What: "specific heat of air"},
		{Name: "T_f", Unit: "K", What: "that of the film of air, the mean of surface and air"},
		{Name: "mu", Unit: "Pa·s", What: "viscosity of air"},
		{Name: "epsilon", What: "emissivity of the surface, 0.9 for most plastics, black or white"},
		{Name: "sigma", Unit: "W/(m²·K⁴)", What: "Stefan-Boltzmann constant"},
		{Name: "T_c", Unit: "K", What: "that of the copper"},
		{Name: "R_T", Unit: "K·m/W", What: "thermal resistance of the insulation, of one metre"},
		{Name: "rho_T", Unit: "K·m/W", What: "thermal resistivity of the insulation"},
		{Name: "d", Unit: "m", What: "diameter over the strands"},
	},
}

const afterBalance = weave.Prose(`That is where a table comes from: one cable, level, in still air. The surface is as warm as it must be
for what passes the insulation to leave it, and the first line gives the current. The correlation for rising air is that of
Churchill and Chu for a level cylinder. Nothing in it was fitted to a table of ampacities, and it lands between
{{band.low}} and {{band.high}} of the free-air table for boats, from 6 AWG to 4/0 and with insulation of 60 to 90 °C. It is physics and no
rule: it shows which way things go. A wall full of wool, a bundle, the sun and height above the sea are not in it.

Big cables have less surface for their metal, so a thick one carries less for its copper than a thin one. And rising air carries off more than in proportion to how much warmer the surface is, so the balance
falls a little faster than the root when the air warms.`)

const howToAsk = weave.Prose(`## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show ampacity -example roof \
        -set ambient="45 °C" -set wires=9`)

const aboutTheRoot = weave.Prose(`The root, the staircase that is rounded from it, and the heat balance tell the same story. But for
the rounding, the steps are on the careful side of the root, since each is taken at its warm end.`)

const aboutSizes = weave.Prose(`## Ampacity by size and rule set

The same copper has as many ampacities as there are lines above it. In a wall the lowest holds; the highest are for one
cable with air all round it.`)

const beforeRoots = weave.Prose(`The factors themselves can be held against the root they are rounded from, at the top of each band.`)

const beforeFreeAir = weave.Prose(`And the heat balance against the free air of an older edition of the code, as a textbook prints it. Such a table
is rounded to 5 A and was measured on the rubber-covered wires of its day.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The tidy harness.** Wires that lie apart get strapped together for looks, or pulled through one hose. That is a bundle, and
  it was sized as single wires.
- **The wool.** Insulation is blown over a cable that was laid in open air. The cable is the same, its surroundings are not.
- **The long stretch.** The hottest place along the run decides, even if it is short: a foot in the furnace cupboard is enough to
  char a foot of insulation.
- **The one-size upgrade.** A thicker wire on an old switch, relay or breaker still ends in a terminal of 60 °C. The terminal
  browns first.
- **Counting the wrong wires.** Only conductors that carry current count. The ground does not. The neutral of a 120/240 V cord does
  not if it carries only the difference; two circuits' hot wires and their own neutrals count as four.
- **Copper-clad aluminium.** It looks like copper and has the ampacity of aluminium. Ask for the metal.
- **Drop is not heat.** A long run that is thick enough for its drop may be more than thick enough for heat; a short run that
  passes on drop may burn. See the chapter on voltage drop.`)

const cautions = `Heat kills insulation slowly: a wire that was too thin works for years and fails on a hot day. The RV limits are from
memory, the heat balance is no rule, and no number here knows what your wires pass through. Find the standard and the edition that
apply, and have a licensed electrician look at the work. A wire, a plug or a breaker that is too hot to hold is overloaded
or badly joined: switch it off before anything else.`
