package harness

import "example.com/drawbar/book/weave"

const opening = weave.Prose(`The lamps do not hang on a battery. They hang on a panel, which hangs on a feeder, which hangs on a bank that has a
resistance of its own, and everything else hangs there too. When an inverter of {{dimming.power}} starts, the lamps go
from {{dimming.before}} to {{dimming.after}}, although nothing on their own wire has changed: the bank
loses {{dimming.in_bank}} more inside, where no thicker lamp wire helps, and the lamps burn with {{dimming.dimmer}}
less power.

The bank is a circuit as well. Four batteries side by side are a ladder of batteries and links, and a ladder does not
share evenly: of 200 A the first gives {{rule.first}} and the last {{rule.last}}.

This chapter solves the whole tree at once: what every place gets, which feeder carries whose current, what each
battery does, and what happens when the loads ask for more than the wires can bring.`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Common practice: work out each run by itself, take watts over volts for the current, and let batteries in parallel
share evenly. For lamps and a pump on a good bank that is close enough. It fails in these ways:

- **Runs are not by themselves.** The feeder carries everybody's current, and what it loses is lost to all of them.
- **Watts over volts is the current at a voltage that is not there.** {{rule.power}} over 12 V is {{rule.current}}. In
  the example below it settles at {{inverter.current}}, since what keeps its power takes more current when it gets
  less voltage.
- **There may be no answer.** Beyond a limit the wire cannot bring the power at any voltage. Arithmetic in one step
  never notices: it goes on to print a voltage.
- **Batteries in parallel share by resistance, links included.** An equal share of 200 A is {{rule.equal}}. With both
  cables at the first battery of four, the first works {{rule.times}} times as hard as the last.
- **Batteries that are not alike feed each other,** with or without a load.`)

const mathematics = weave.Prose(`## The mathematics

There are three kinds of load. Some take the same current at any voltage (a lamp with a linear driver), some the same power
(an inverter, a compressor with electronics), some are a resistance (a heater, or nearly so a filament). At the end of each feeder stands the
voltage of its parent less the drop, and the current of the feeder is what the load there takes and all that is fed
from there on.`)

var treeSymbols = weave.Formula{
	Equations: []string{
		"V = V_parent - R*I",
		"I = I_load + P_load/V + V/R_load + I_beyond",
		"V_0 = E - R_bank*I_0",
	},
	Where: []weave.Symbol{
		{Name: "V", Unit: "V", What: "voltage at the end of a feeder"},
		{Name: "V_parent", Unit: "V", What: "voltage where the feeder begins"},
		{Name: "R", Unit: "Ω", What: "resistance of the feeder, there and back, with joints and fuses"},
		{Name: "I", Unit: "A", What: "current in the feeder"},
		{Name: "I_load", Unit: "A", What: "constant-current load at its end"},
		{Name: "P_load", Unit: "W", What: "constant-power load at its end"},
		{Name: "R_load", Unit: "Ω", What: "resistance that is a load at its end"},
		{Name: "I_beyond", Unit: "A", What: "current of all that is fed from there"},
		{Name: "V_0", Unit: "V", What: "voltage of the bank with load"},
		{Name: "E", Unit: "V", What: "voltage of the bank without load"},
		{Name: "R_bank", Unit: "Ω", What: "resistance of the bank, its links included"},
		{Name: "I_0", Unit: "A", What: "current of the whole harness"},
	},
}

const aboutOneLoad = weave.Prose(`For one constant power on one cable the equations make a quadratic. Multiply the first by V, and V² - E·V + R·P = 0.
It has two roots whose sum is E. The library gives the larger: that is the state which is reached from no load and
which holds when it is disturbed. The two meet at half of the voltage, where the root is of nothing; more power than
there has no state at all. This is the power of a matched load, and as much again is lost on the way.`)

var oneLoadSymbols = weave.Formula{
	Equations: []string{
		"V_upper = (E + sqrt(pow(E, 2) - 4*R*P)) / 2",
		"V_lower = (E - sqrt(pow(E, 2) - 4*R*P)) / 2",
		"P_most = pow(E, 2) / (4*R)",
	},
	Where: []weave.Symbol{
		{Name: "V_upper", Unit: "V", What: "voltage at the load, the state that settles"},
		{Name: "V_lower", Unit: "V", What: "the other state, which is not held"},
		{Name: "E", Unit: "V", What: "voltage of the bank without load"},
		{Name: "R", Unit: "Ω", What: "resistance of the whole way, the bank's included"},
		{Name: "P", Unit: "W", What: "constant power of the load"},
		{Name: "P_most", Unit: "W", What: "the most power that there is at the end of the way"},
	},
}

const aboutTheRow = weave.Prose(`In a tree there is no such formula, and the voltages are found by Newton's method, all at once. It starts from above,
so that it comes down to the larger state; where there is none, a search finds by which part of the loads it is too
much.

For the row of batteries, walk round the loop of two neighbours: out of the one battery, over the plus link, into the
other and back over the minus link. Each loop gives one equation. The sum of the currents up to a link flows in it,
less the current of the harness if that was taken off before.`)

var rowSymbols = weave.Formula{
	Equations: []string{
		"E_j = E_k + R_j*I_j - R_k*I_k + ΔV_link",
		"ΔV_link = R_plus*(S_j - a_j*I) + R_minus*(S_j - b_j*I)",
		"S_k = S_j + I_k",
		"S_n = I",
	},
	Where: []weave.Symbol{
		{Name: "E_j", Unit: "V", What: "open-circuit voltage of battery j"},
		{Name: "E_k", Unit: "V", What: "the same of its neighbour k, the next of the row"},
		{Name: "R_j", Unit: "Ω", What: "resistance of battery j"},
		{Name: "I_j", Unit: "A", What: "current that it gives"},
		{Name: "R_k", Unit: "Ω", What: "resistance of battery k"},
		{Name: "I_k", Unit: "A", What: "current that it gives"},
		{Name: "ΔV_link", Unit: "V", What: "voltage lost in the two leads of the link between them"},
		{Name: "R_plus", Unit: "Ω", What: "resistance of the plus lead between the two"},
		{Name: "R_minus", Unit: "Ω", What: "resistance of the minus lead between the two"},
		{Name: "S_j", Unit: "A", What: "current of all batteries up to j together"},
		{Name: "S_k", Unit: "A", What: "current of all batteries up to k together"},
		{Name: "I", Unit: "A", What: "current of the harness"},
		{Name: "a_j", What: "1 if plus is taken off at j or before, else 0"},
		{Name: "b_j", What: "1 if minus is taken off at j or before, else 0"},
		{Name: "S_n", Unit: "A", What: "current of all batteries together"},
	},
}

const afterTheMath = weave.Prose(`What is not in it: conductors that warm under this very current, loads that cut out when the voltage is low, and the
time between two states. If nothing is said of the temperature, copper is taken at 75 °C. The open-circuit voltage is
that of a rested battery in its present state of charge. Makers give the resistance of a battery, or it is measured as
the difference of two voltages over the difference of two currents.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show harness -example row -set minus=4`)

const beforeFigures = weave.Prose(`## Voltage against power

This is the inverter of the example above, {{inverter.voltage}} behind {{inverter.bank}} of bank and
{{inverter.cable}} of cable, at every power. The curve was drawn with a resistor as load, which has a state
everywhere; the upper part is what a constant power settles at. One step of arithmetic is the tangent at no load. It
never meets the nose, which is why it never finds that there is one. Between the place where the curve passes below
the cut-off and the place where the straight line does, lie all the designs that look right on paper and shut down.
The nose itself is far: a load that stops at 10.5 V never comes near it, here it has
stopped before {{inverter.part}} of the most. A load with no cut-off of its own does, and then it is the fuse that ends it.`)

const beforeBars = weave.Prose(`## Who gives what

The row of the example. To take plus off at one end and minus at the other costs nothing but the length of one cable.
Leads of one length from each battery to common bars make the shares equal; then only the batteries themselves can
differ.`)

const beforePrint = weave.Prose(`## What print and a simulator say

Textbooks print small circuits; for whole networks there is no print, so a circuit simulator stands in. Its netlists,
the script that ran them and its full output are in the repository, in testdata/harness; here are six digits of what
it has, which a test holds against the recorded files. The tests of the wire package compare every number of every
network to a millionth.`)

const practice = weave.Prose(`## What goes wrong in practice

- **The battery at rest looks fine.** Without current there is no drop. Measure at the load, at the bar and at the
  posts while the largest load runs, and the three differences say where it goes.
- **The fifth battery at the far end.** It carries least, so it stays full while the first wears out, and then it is
  bolted to a tired one.
- **The inverter on the panel.** It is handy to feed it from where everything else is fed. Then its current flows in a
  feeder made for lamps, and the lamps lose that drop as well; set ` + "`fed`" + ` in the example to see what becomes of both.
- **Links cut from what was left over.** A link twice as long is a share that is smaller. A loose lug is a much longer
  link, and it is hot.
- **One battery leaves.** Protection in a lithium battery opens at its own limit. The rest take over its part within
  an instant, and the next one opens.
- **It stops, recovers, and starts again.** When an inverter cuts out, the bank comes back to its voltage at rest,
  which is above the voltage at which the inverter starts. A timer or a wider gap hides that; a thicker cable or a
  better bank ends it.
- **Only the steady power was counted.** A motor that starts asks for several times its running power for a moment,
  and a harness that feeds the one may collapse at the other.`)

const cautions = `Batteries in parallel can drive a current through a fallen tool or a wrong link that no battery alone could. Never
join batteries that differ in kind, age or voltage; bring alike ones to one voltage before the last link is closed,
and fuse each at its post. Currents found here are inputs to ampacity and protection, which are checked separately: a
share that is correct can still be too much for the link. Makers limit how many of their batteries may stand in
parallel, and their word goes before this book's. Local codes and a licensed electrician come before both.`
