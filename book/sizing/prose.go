package sizing

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`An inverter makes household current out of a battery. Its name has a number in it, and that number answers
the smaller half of the question. The larger half is on the other side: a machine of {{battery_side.power}} takes
{{battery_side.current}} from its battery when it works hard and the battery is tired, through cables as thick as a thumb,
and it goes on taking a little when nothing is switched on at all.

So there are four questions. What runs at the same time? What has to start on top of it? What must battery, cable and
fuse carry? And what does it take in a day? For a rig that also has a shore cord, a charger and perhaps a generator there
is a fifth: when the source changes, who feeds whom, and where are neutral and ground joined?`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: add up the watts of what runs together, add something for losses (worksheets say 10 %, 15 % or 50 %), take the
next size; and on a 12 V battery divide the watts by ten to get the amperes. For a few heaters and a television that is a
fair first guess. It fails in these ways:

- **Watts are not all.** Small electronic supplies take more volt-amperes than watts, and the machine carries amperes.
  Below, loads that fit with {{loads.power_left}} to spare are {{loads.apparent}} on {{loads.rated}}.
- **The label is not the plug.** What heats or cools by something other than a plain resistor may be marked with what
  comes out, not with what goes in.
- **A start is no load.** A compressor that runs on {{aircon.running}} wants {{aircon.hard}} for a moment.
- **Divided by ten, and then?** For {{rule.power}} the rule gives {{rule.tens}}. At the lowest voltage and with losses it is
  {{rule.current}}, and with the margin of the code conductor and fuse must be rated for {{rule.required}}.
- **A larger one is not free.** It takes more for itself every hour that it is on; 10 W to 40 W is usual for a rating about
  2000 W (common practice). In the day worked below only {{day.arrives}} of what leaves the battery arrives.
- **It says nothing of sets.** The code asks only that a source which stands alone be no smaller than the largest single load
  (NEC 2017, 710.15(A)). Beyond that the machine need not carry everything; it must carry whatever people switch on
  together without thinking. That is a list of sets and not a sum.`)

const mathematics = weave.Prose(`## The mathematics

What an alternating-current load takes has two sizes. Its power in watts is what the battery pays for. Its apparent power
in volt-amperes is what the wires and the transistors of the inverter carry; the ratio of the two is the power factor. Both
sums must be within what the machine gives for hours. Apparent powers are added plainly here, as if all were in phase, which
never comes out too low. A start takes the place of the running power of the one load that starts.`)

var machineSymbols = weave.Formula{
	Equations: []string{
		"S_1 = P_1 / k_1",
		"P = P_1 + P_2",
		"S = S_1 + S_2",
		"P <= P_rated",
		"S <= S_rated",
		"S_start = s * I_LRA * V",
		"S_peak = S_start + S_others",
		"S_peak <= S_surge",
		"I_dc = P_rated / (η * V_lowest)",
		"I_req = m * I_dc",
		"E_dc = E_ac / η + P_idle * t_on",
		"Q = E_dc / V_bank",
	},
	Where: []weave.Symbol{
		{Name: "S_1", Unit: "VA", What: "apparent power of the first load"},
		{Name: "P_1", Unit: "W", What: "power of the first load, at its plug"},
		{Name: "k_1", What: "its power factor, 1 for a plain heater"},
		{Name: "P", Unit: "W", What: "power of all that runs together"},
		{Name: "P_2", Unit: "W", What: "power of the second load, and so on"},
		{Name: "S", Unit: "VA", What: "apparent power of all"},
		{Name: "S_2", Unit: "VA", What: "apparent power of the second load, and so on"},
		{Name: "P_rated", Unit: "W", What: "what the inverter gives for hours"},
		{Name: "S_rated", Unit: "VA", What: "the same in volt-amperes"},
		{Name: "S_start", Unit: "VA", What: "what a motor takes at the moment of starting"},
		{Name: "s", What: "part that a soft starter leaves; 1 without one"},
		{Name: "I_LRA", Unit: "A", What: "locked-rotor current, on the motor's plate"},
		{Name: "V", Unit: "V", What: "voltage that the motor runs on"},
		{Name: "S_peak", Unit: "VA", What: "the start on top of what runs already"},
		{Name: "S_others", Unit: "VA", What: "what runs already"},
		{Name: "S_surge", Unit: "VA", What: "what the inverter gives for a moment"},
		{Name: "I_dc", Unit: "A", What: "current from the battery at full output"},
		{Name: "η", What: "efficiency, output over input"},
		{Name: "V_lowest", Unit: "V", What: "voltage at which the inverter cuts off"},
		{Name: "I_req", Unit: "A", What: "what conductor and device must be rated for"},
		{Name: "m", What: "margin of the rule set, 1.25 in the National Electrical Code"},
		{Name: "E_dc", Unit: "Wh", What: "energy from the bank in a day"},
		{Name: "E_ac", Unit: "Wh", What: "energy that the loads use in a day"},
		{Name: "P_idle", Unit: "W", What: "what the inverter takes for itself whenever it is on"},
		{Name: "t_on", Unit: "h", What: "hours that it is on, loads or not"},
		{Name: "Q", Unit: "Ah", What: "charge from the bank in a day"},
		{Name: "V_bank", Unit: "V", What: "voltage of the bank"},
	},
}

const afterMachine = weave.Prose(`The lowest voltage is in there because an inverter keeps its output whatever it is fed. Less voltage,
more current: it takes the most when the battery has the least. Energy passes from one side to the other, charge does not.
Ampere-hours counted at the socket are not those of the battery.

The other way round, a charger takes from its supply what it gives to the bank and what it loses, in volt-amperes again. If
the bank itself is that supply, by way of the inverter, both losses are paid in a circle. And a second joint of neutral and
ground divides the current of the loads between the neutral and everything made of metal.`)

var sourceSymbols = weave.Formula{
	Equations: []string{
		"I_ac = V_bank * I_bank / (η_c * k_c * V)",
		"P_lost = P_back / (η * η_c) - P_back",
		"I_g = I * R_n / (R_n + R_g)",
	},
	Where: []weave.Symbol{
		{Name: "I_ac", Unit: "A", What: "current that a charger takes from its supply"},
		{Name: "V_bank", Unit: "V", What: "voltage of the bank while it charges"},
		{Name: "I_bank", Unit: "A", What: "current into the bank"},
		{Name: "η_c", What: "efficiency of the charger"},
		{Name: "k_c", What: "power factor of the charger"},
		{Name: "V", Unit: "V", What: "voltage of the supply"},
		{Name: "P_lost", Unit: "W", What: "what a bank loses that feeds its own charger"},
		{Name: "P_back", Unit: "W", What: "what comes back into it"},
		{Name: "η", What: "efficiency of the inverter"},
		{Name: "I_g", Unit: "A", What: "current in ground wire and frame"},
		{Name: "I", Unit: "A", What: "current that comes back from the loads"},
		{Name: "R_n", Unit: "Ω", What: "resistance of the neutral between two bonds"},
		{Name: "R_g", Unit: "Ω", What: "resistance of ground wire and frame between them"},
	},
}

const afterSource = weave.Prose(`One efficiency is a simplification: a real machine has a curve, poor at small loads and best somewhere above half of its
rating. How far off that leaves us is worked out below, beside a published curve. Heat and altitude take from every rating here, and are
not in the formulas.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show sizing -example battery_side -set lowest="21 V"`)

const beforeCurrent = weave.Prose(`## Two pictures

The same power needs half the current at twice the voltage. Each curve is one inverter; where it meets the left edge is
the tired end of a 12 V battery. The limit is what many a lithium battery lets through before its protection opens
(common practice; the datasheet decides), so the height of a curve over it also says how many of them must share.`)

const beforeEnergy = weave.Prose(`The next picture is of a day. Both inverters feed the same loads; the large one is the more efficient. From
{{pictured.crossing}} a day on, it costs more all the same, for what it takes itself. Switched off between uses it would be the
better of the two.`)

const beforeMotors = weave.Prose(`Where a small motor has no locked-rotor current on its plate, the code takes six times the full-load current
(NEC 2017, 430.110(C)(3) and 440.12(C)). Its own table is made that way, but for one cell. Compressors of roof
air conditioners have a little more than five times on their plates, and manuals that print a flat factor of two warn that
pumps, freezers and air conditioners can reach eight (both common practice).`)

const beforeCurve = weave.Prose(`The last table is about what one efficiency leaves out. The curve is that of a generic battery converter, worked out from its
published coefficients; its loss without load is 19.31 W for each kilowatt of rating. We take 95 %, near its best efficiency,
and that loss as own use. At small
loads, where a rig spends its day, own use decides; leave it out and nothing fits. With it we come out high, never low, for
the curve counts the loss without load once and the stated efficiency has a part of it again.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The alarm at breakfast.** The battery is full, the microwave starts, and the inverter reports low voltage. It looks at
  its own terminals, where the battery's sag and the cable's drop have already been taken off, and a constant
  power takes more current the lower that is. Measure there, with the load on.
- **The surge that lasts for nothing.** A surge of twice the rating may be meant for seconds or for a few cycles. A number
  without a time is no rating.
- **The soft starter on paper.** What it leaves of a start is its maker's word for some compressor on some day (0.3 to 0.5 of
  the locked-rotor current is usual, common practice). A hot compressor that restarts against full pressure takes more.
- **The converter's breaker left on.** The whole panel is on the inverter, and the converter in it charges the bank from the
  bank. Everything seems to work, and the battery is empty by morning.
- **The pedestal trips when the cord goes in.** Look for a second joint of neutral and ground: a screw left in a panel, a
  bonding plug left in an outlet, an inverter's relay that does not open.
- **The pass-through relay.** On shore power the relay of the inverter carries what the panel behind it takes. Its rating is not
  the inverter's, and a 50 A service does not fit through a 30 A relay.
- **Two legs from one machine.** A 120 V inverter that feeds both legs of a 120/240 V panel puts them in phase. In a circuit
  that shares its neutral between the legs the currents then add up in it instead of cancelling, and no
  breaker is in a neutral. The code allows such a feed only without 240 V outlets and without shared neutrals
  (NEC 2017, 710.15(C)). The chapter on voltage drop works it out, and what follows when such a neutral opens.
- **Search mode.** It brings own use down to a few watts (1 W to 8 W, common practice) and loses whatever is too small to be
  noticed: the charger of a telephone, the clock of an oven.
- **The warm locker.** Ratings hold at the temperature of the datasheet. A machine beside a hot battery and under the bed
  gives less, and its own fan is heard before it is seen.
- **The quote without a voltage.** Amperes without the side they belong to, and watts without "for hours", cannot be checked. Ask.`)

const cautionBonds = `A vehicle with no bond, or with two, can have a live frame, and nothing tells. One joint of neutral and
ground, at the source that is active: the inverter must make it when it inverts and open it when it passes shore power
through, a generator needs it when it feeds the rig alone, and the panels inside have none (NEC 2017, 551.54(C)). Two sources
must never feed one circuit: transfer equipment keeps them apart (NEC 2017, 551.30(B) and 551.33); a habit of switching
one breaker off before the other does not. A count on paper knows only the bonds that somebody wrote down; have them measured. Local codes and a
licensed electrician come before this book.`

const cautionGenerator = `A generator makes carbon monoxide, which nobody smells and which kills people asleep. Run it outside, well away
from windows, vents and the next rig, never in or under a shelter, and have a working alarm inside. One that starts by itself
when the battery is low does so while people sleep.`

const cautionBattery = `On the battery side there is no small mistake. A bank can drive thousands of amperes into a dropped wrench, hot
enough to weld it and to burn a hand to the ring. The main fuse sits at the battery, can break the bank's fault current, and
is chosen with the cable: see the chapter on protection and fault current. A crimp that is not quite tight gets hot under
these currents; look at it with a thermometer that need not touch, after an hour of load. Disconnect before working, and
mind that the capacitors in the inverter keep their charge for a while.`
