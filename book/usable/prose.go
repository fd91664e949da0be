package usable

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`The number on a battery is one row of a table. {{lead.capacity}} means that a new, warm, full
battery gave {{lead.rated}} for {{lead.over}} and was then empty. Ask it for {{lead.current}} and it gives
{{lead.available}}. Stop half-way for the sake of its life, and {{lead.usable}} are left to use. Let it grow old and cold,
and there is less again. And a large load may stop with the battery half full, because what it needs is voltage.

This chapter answers four questions. What may be taken out? How long does that feed a load? When does the voltage end it
sooner? And what current may the bank see, even with one of its batteries gone?`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice takes {{assumed.flooded_depth}} of a lead-acid battery and {{assumed.lithium_depth}} of a lithium iron
phosphate one, turns ampere-hours into watt-hours at the nominal voltage, and divides by the watts of the load. For a small
load on a warm new bank that is good enough. It fails in these ways, and each but the last promises too much:

- **The current is not the rated one.** The label of a lead-acid battery is for {{assumed.flooded_over}}. At
  {{lead.current}} the battery of the first example gives {{lead.factor}} of it.
- **The exponent is not one number.** By the range that is published for flooded batteries, the same battery at the same
  current yields from {{spread.least}} down to {{spread.most}} of its label. Two rows of its own datasheet say which.
- **Half of what?** The depth is a part of the charge that there is at that current, not of the label.
- **Cold divides.** Sizing tables print how much more to buy, such as {{cold.multiplier}}; what is there is divided by it.
- **Age takes its part.** Common practice replaces a bank when {{cold.aged}} of its capacity is left. Plan with that, not
  with the new one.
- **Energy is not power.** Protection opens at its current however full the battery is.
- **Voltage is not charge.** A constant-power load takes more current as the voltage falls, and stops at its cut-off.
- **Below the rated current there is more than the label.** How much, only a rating for a longer time can say, so none
  of it is counted on here.

What the library assumes where no datasheet says otherwise:

| | May be taken out | Label is for | Exponent | Published range |
| --- | ---: | ---: | ---: | --- |
| flooded lead-acid | {{assumed.flooded_depth}} | {{assumed.flooded_over}} | {{assumed.flooded_k}} | {{assumed.flooded_low}} to {{assumed.flooded_high}} |
| AGM lead-acid | {{assumed.agm_depth}} | {{assumed.agm_over}} | {{assumed.agm_k}} | {{assumed.agm_low}} to {{assumed.agm_high}} |
| gel lead-acid | {{assumed.gel_depth}} | {{assumed.gel_over}} | {{assumed.gel_k}} | {{assumed.gel_low}} to {{assumed.gel_high}} |
| lithium iron phosphate | {{assumed.lithium_depth}} | {{assumed.lithium_over}} | {{assumed.lithium_k}} | {{assumed.lithium_low}} to {{assumed.lithium_high}} |

Depths: {{assumed.lead_source}}; {{assumed.lithium_source}}. Exponents: {{assumed.k_source}};
{{assumed.lithium_k_source}}. A datasheet beats every one of them.`)

const mathematics = weave.Prose(`## The mathematics

Peukert found that a lead-acid battery emptied faster lasts shorter than in proportion: the time goes with a power of the
current. Written from the rating, so that the rated current gives the rated time whatever the exponent, the part of the
capacity that comes out at a current I is the ratio of the rated current to I, raised to k less one. Age and cold take
their shares of that, the depth its share of the rest.`)

var chargeSymbols = weave.Formula{
	Equations: []string{
		"I_rated = C / H",
		"f = min(pow(I_rated/I, k - 1), 1)",
		"C_avail = C * f * a / m",
		"C_use = C_avail * d",
		"E_use = C_use * V",
		"k = ln(H_A/H_B) / ln(I_B/I_A)",
	},
	Where: []weave.Symbol{
		{Name: "I_rated", Unit: "A", What: "current that the label belongs to"},
		{Name: "C", Unit: "Ah", What: "capacity of the bank as marked, all strings"},
		{Name: "H", Unit: "h", What: "time that the capacity is marked for; not the time of your discharge"},
		{Name: "f", What: "part of the capacity that comes out at the current I; no more than 1 is counted on"},
		{Name: "I", Unit: "A", What: "steady current of the bank"},
		{Name: "k", What: "Peukert's exponent: 1 if haste costs nothing, more if it does"},
		{Name: "C_avail", Unit: "Ah", What: "charge from full to empty at that current, as old and as cold as the bank is"},
		{Name: "a", What: "part of the capacity that age has left"},
		{Name: "m", What: "multiplier of the cold, 1 or more: how much more the cold makes one buy"},
		{Name: "C_use", Unit: "Ah", What: "charge that may be used"},
		{Name: "d", What: "depth: the part that may be taken out"},
		{Name: "E_use", Unit: "Wh", What: "energy that may be used"},
		{Name: "V", Unit: "V", What: "nominal voltage of the bank, or the mean voltage under load for a closer figure"},
		{Name: "H_A", Unit: "h", What: "time of one row of a datasheet"},
		{Name: "H_B", Unit: "h", What: "time of another row"},
		{Name: "I_B", Unit: "A", What: "current of that other row, its ampere-hours over its hours"},
		{Name: "I_A", Unit: "A", What: "current of the one row"},
	},
}

const afterCharge = weave.Prose(`The law is for one steady current at one temperature, and usually good to about a tenth (common practice). Two rows
fix an exponent for the currents between them and little beyond. It must not be summed over a varying load: the
{{lead.behind}} that the first example leaves behind at {{lead.current}} are not gone, and a smaller current gets some of
them later. For lithium the exponent is so near 1 that other errors are larger.

A load of constant power, such as an inverter, settles at the higher of two voltages that satisfy Ohm's law. If the term
under the root is negative, the bank cannot give that power at all.`)

var loadSymbols = weave.Formula{
	Equations: []string{
		"U = (V_0 + sqrt(pow(V_0, 2) - 4*R*P)) / 2",
		"I = P / U",
		"t = C_avail * (d - (1 - s)) / I",
		"I_limit = n * I_each",
		"I_out = (n - 1) * I_each",
	},
	Where: []weave.Symbol{
		{Name: "U", Unit: "V", What: "voltage at the load"},
		{Name: "V_0", Unit: "V", What: "voltage of the bank at rest"},
		{Name: "R", Unit: "Ω", What: "resistance of the bank, its links and its cables there and back"},
		{Name: "P", Unit: "W", What: "power of the load at the bank, losses of an inverter included"},
		{Name: "I", Unit: "A", What: "current that flows, which is also the one that sets C_avail"},
		{Name: "t", Unit: "h", What: "time until the depth is reached; 0 if U is at or below the cut-off or I above the limit"},
		{Name: "C_avail", Unit: "Ah", What: "charge from full to empty at that current"},
		{Name: "d", What: "depth: the part that may be taken out"},
		{Name: "s", What: "state of charge at the beginning, 1 if full"},
		{Name: "I_limit", Unit: "A", What: "limit of the bank"},
		{Name: "n", What: "strings in parallel"},
		{Name: "I_each", Unit: "A", What: "lasting limit of one string, that of its protection where there is one"},
		{Name: "I_out", Unit: "A", What: "limit with one string out"},
	},
}

const afterLoad = weave.Prose(`Batteries in series add volts and resistance and keep their ampere-hours; strings in parallel
add ampere-hours and limits and divide resistance. One voltage is taken from the beginning of a discharge to its end, which
is too kind to the last part of it. Where that matters, work it again with the voltage near the end.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show usable -example lead -set current="20 A"`)

const afterPrint = weave.Prose(`Three ratings of one battery, in the middle of the first table, show how far an exponent may be
carried: between its two currents it is {{thirds.between}} off; from two slow rates to a fast one it promises
{{thirds.beyond}} too much; from two fast ones to a slow one the library stops at the label. The two rows of the last table
that differ are one mistake, series counted as if it added ampere-hours.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The label over many hours.** The same battery has a larger number when it is rated over a longer time. Compare
  batteries at one number of hours, the nearest to your own discharge.
- **The inverter left on.** An idle {{practice.idle}} for {{practice.night}} takes {{practice.taken}}, which is
  {{practice.share}} of what the first example may use. Loads of nothing run all night.
- **The cut-off set for the cables.** The inverter measures at its own terminals. With thin cables it stops early; a lower
  setting hides the cables and empties the bank further when the load is small.
- **Voltage read under load, or just after.** A lead-acid battery rests for hours before its voltage tells its charge;
  that of lithium iron phosphate hardly moves over most of its range. Count ampere-hours instead.
- **Both cables on the same end.** The nearest of several parallel batteries carries the most, ages first, and trips first;
  the limits above take them to share alike.
- **New beside old.** Batteries of another age, size or chemistry share neither charge nor current as worked here.
- **Ampere-hours that come back.** After a hard discharge a rested lead-acid battery gives some more. It is no reason to
  go deeper: the depth was already counted from what the hard discharge could get.`)

const cautions = `A battery cannot be switched off, and these numbers judge no installation.

- **Hydrogen.** Charging lead-acid gives off hydrogen, which explodes. By a European standard the flooded battery of the first example
  asks for {{danger.air}} of air, and so for two openings of {{danger.opening}} each to the outside, one low and one high, and no spark
  in the compartment; local codes may ask for more. Sealed batteries vent too when they fail.
- **Freezing.** By the table of this library the electrolyte freezes at {{danger.full}} when full, at {{danger.half}} half discharged, and
  at {{danger.quarter}} with a quarter left; the flat one freezes in milder cold still. A frozen battery bursts and must
  not be charged.
- **Cold lithium.** At or below {{danger.charge_low}} in the cells, charging does lasting damage without a sign. Measure
  the cells, not the air, and do not assume that protection refuses the charge. Discharging in the cold is
  another matter and has its own limit in the datasheet.
- **A charger left as for lead-acid.** Set to {{danger.set}} and correcting by {{danger.slope}} a cell and kelvin, it puts
  {{danger.cold_volts}} on a lithium bank on a morning of {{danger.morning}}, where {{danger.most_volts}} are allowed. Turn
  the correction off when lead-acid makes way for lithium.
- **Short circuits.** By Ohm's law the pair of lithium batteries of the examples can drive {{danger.short}} through a
  dropped wrench, before any protection opens, and that is more than many fuses can interrupt. Fuse at the battery, with
  an interrupting rating above that current, and insulate tools. Rings off.

Local codes, the maker's instructions and a licensed electrician come before this book.`
