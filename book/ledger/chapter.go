// Package ledger is the chapter of the book on what the loads of a rig use in
// a day.
package ledger

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "ledger",
		Title:    "The load ledger",
		Question: "What do my loads really use in a day?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			mathematics, symbols, afterTheMath,
			theLine, theRig, afterTheRig, weave.Numbers{Name: "lines", Solve: solveLines},
			weave.Figure{
				Name: "energy_by_load",
				Caption: "A day of the invented trailer by load, as it leaves the bank: what runs at 120 V is divided by the inverter's " +
					"efficiency, and being on is a load of its own.",
				Bars: energyByLoad,
			},
			theKettle, theOven, theDesk, theFurnace,
			weave.Figure{
				Name: "furnace_by_cold",
				Caption: "Charge a day at 12 V for the blower of {{furnace.blower}} and a furnace that burns {{furnace.input}} at " +
					"{{furnace.efficiency}}, a line for each rate of heat loss. The example stands at {{furnace.colder}} on the line of 130 W/K.",
				Draw: furnaceByCold,
			},
			theNight, beforeTheDay,
			weave.Figure{
				Name:    "power_by_hour",
				Caption: "The invented trailer through a day, means over half an hour, each bus at its own voltage.",
				Draw:    powerByHour,
			},
			thePedestal, theQuote,
			beforePrint,
			weave.Table{Title: "A published ledger", Rows: printedLedger},
			afterTheLedger,
			weave.Table{Title: "Other published results", Rows: printedOthers},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "sum", Claim: "So many ampere-hours at 12 V and so many at 120 V: add them", Solve: solveSum},
			weave.Misconception{Name: "label", Claim: "Amperes on the label times 24 hours is what it uses", Solve: solveLabel},
			weave.Misconception{Name: "gas", Claim: "The furnace burns gas, so it uses no electricity", Solve: solveGas},
			weave.Misconception{Name: "standby", Claim: "It is switched off, and standby is nothing", Solve: solveStandby},
			weave.Misconception{Name: "large", Claim: "The big appliances empty the battery", Solve: solveLarge},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			pumpExercise, plateExercise, idleExercise, driveExercise, coldExercise, clocksExercise,
		},
	}
}

const opening = weave.Prose(`A battery does not know what is plugged in. It knows how much leaves it, and over how long. A
ledger puts the two together: a line for each load, what it takes while it runs and how much of the day it runs, added up for
each voltage and carried to the bank.

The lines surprise. In the trailer of this chapter, which is invented, the microwave takes {{large.oven_power}} and the
freezer {{large.freezer_power}}, and it is the freezer that uses more: {{large.freezer}} a day against {{large.oven}}. The
inverter takes {{rig.idle}} to be there at all, and uses {{rig.idle_energy}} that no load asked for. All together it
is {{rig.total}} a day, {{rig.charge}} out of a bank at {{rig.bank}}.`)

const theRule = weave.Prose(`## The rule of thumb, and when it fails

Watts times hours, load by load, added up; over the voltage, for ampere-hours. For lamps, a fan, a radio, that is all there
is to it. It fails in these ways:

- **The label is a maximum.** A label covers the worst that can be asked of a thing, not a usual day. A guide of the US Department of
  Energy, as a course page reproduces it, counts a refrigerator for a third of the hours that it is plugged in; with the
  {{rule.plate}} that its list has for a frost-free one, that is {{rule.guide}} a day. A published ledger, compared below, has
  {{rule.book}} for one, and the compressor refrigerator of this chapter takes {{rule.ours}}. No label says which.
- **Part of the time it does not run.** What has a thermostat runs for a share of its hours, its duty, and the weather
  sets it.
- **The label may be of what comes out.** A microwave is marked by the heat it gives the food (as IEC 60705 measures it, from
  memory). {{oven.output}} out is {{oven.plug}} in.
- **Ampere-hours belong to a voltage.** Energy goes through an inverter; ampere-hours do not.
- **Being on takes power.** An inverter idles, a television waits, a clock shows the time, all day.
- **Watts are not what the inverter is rated in.** A load with a poor power factor fills it with fewer watts than the plate
  promises.

Trade worksheets make up for all of it with an allowance; 10, 15 and 50 % are all seen (common practice). The loads are known
one by one, so there is no need to guess the sum.`)

const mathematics = weave.Prose(`## The mathematics

A load runs for its hours times its duty, and for the rest of the day it takes its standby power, which may be nothing.
Energy over voltage is charge, at that voltage and no other. Where an inverter lies between the bank and the load, energy is
carried across it: divided by its efficiency, plus what it takes for being on. Only then is it divided by the bank's voltage.

The rooms lose heat in proportion to how much colder it is outside. The share of the time that a furnace runs is the heat that
they lose over the heat that it makes, and all the time is the most there is.`)

var symbols = weave.Formula{
	Equations: []string{
		"P = n * P_each",
		"P_each = P_out / η_out",
		"t_run = t * d",
		"E = P * t_run + n * P_standby * (24 - t_run)",
		"Q = E / V",
		"S = P / PF",
		"I = S / V",
		"E_bank = E / η + P_idle * t_on",
		"Q_bank = E_bank / V_bank",
		"d_heat = min(1, UA * max(0, T_in - T_out) / (P_burnt * η_heat))",
	},
	Where: []weave.Symbol{
		{Name: "P", Unit: "W", What: "power of all alike, while they run"},
		{Name: "n", What: "how many"},
		{Name: "P_each", Unit: "W", What: "power that one takes"},
		{Name: "P_out", Unit: "W", What: "power that one gives off, where the label states that"},
		{Name: "η_out", What: "what it gives off over what it takes"},
		{Name: "t_run", Unit: "h", What: "running a day"},
		{Name: "t", Unit: "h", What: "in use a day"},
		{Name: "d", What: "duty: part of that time in which it runs"},
		{Name: "E", Unit: "Wh", What: "energy a day on its bus"},
		{Name: "P_standby", Unit: "W", What: "power of one while it does not run"},
		{Name: "Q", Unit: "Ah", What: "charge a day at the voltage of the bus, direct current only"},
		{Name: "V", Unit: "V", What: "voltage of the bus"},
		{Name: "S", Unit: "VA", What: "apparent power, on an alternating-current bus"},
		{Name: "PF", What: "power factor: watts over volt-amperes; 1 for direct current"},
		{Name: "I", Unit: "A", What: "current while it runs"},
		{Name: "E_bank", Unit: "Wh", What: "energy a day from the bank"},
		{Name: "η", What: "efficiency of the inverter for what goes through it"},
		{Name: "P_idle", Unit: "W", What: "power that the inverter takes with nothing on"},
		{Name: "t_on", Unit: "h", What: "how long it is on, a day"},
		{Name: "Q_bank", Unit: "Ah", What: "charge a day from the bank"},
		{Name: "V_bank", Unit: "V", What: "voltage of the bank"},
		{Name: "d_heat", What: "part of the time that a furnace runs"},
		{Name: "UA", Unit: "W/K", What: "heat that the rooms lose for each kelvin between inside and outside"},
		{Name: "T_in", Unit: "°C", What: "temperature inside"},
		{Name: "T_out", Unit: "°C", What: "mean temperature outside"},
		{Name: "P_burnt", Unit: "W", What: "heat in the gas burnt while it runs"},
		{Name: "η_heat", What: "heat into the rooms over heat burnt"},
	},
}

const afterTheMath = weave.Prose(`One efficiency stands for the whole day. A large inverter under a small load does worse, and what starting
a motor takes is too short to matter in a day's energy, though not in the choice of an inverter.

## Worked examples

Each can be worked again with other numbers, for instance:

    go run ./book show ledger -example line -set duty="50 %"`)
