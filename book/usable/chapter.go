// Package usable is the chapter of the book on what a battery really gives:
// usable charge, Peukert's law, hours under a load, and what ends them early.
package usable

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "usable",
		Title:    "Usable battery and Peukert's law",
		Question: "The label says 200 Ah. How much of it can I use, and for how many hours?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, spreadOfTheRule, theAssumed,
			mathematics, chargeSymbols, afterCharge, loadSymbols, afterLoad,
			theLabel, theComparison, theHours, theDatasheet, theSag, theDropout, theCold,
			weave.Prose("## Two pictures\n\nThe capacity that a label states belongs to one current. Below it the curves " +
				"are flat because no more than the label is counted on; above it they part by their exponent."),
			weave.Figure{
				Name: "charge_by_current",
				Caption: "Charge from full to empty of a {{pictured.capacity}} battery rated over {{pictured.over}}, at a " +
					"steady current.",
				Draw: chargeByCurrent,
			},
			weave.Prose("The two banks of the comparison above, with a few milliohms inside, from full to the depth that is usual " +
				"for each. At the power of lamps the lead bank lasts a little longer; above {{pictured.cross}} the lithium " +
				"bank does, since current costs it no charge, until its protection opens. Both scales are logarithmic."),
			weave.Figure{
				Name: "hours_by_power",
				Caption: "Hours at a constant power: {{pictured.capacity}} of flooded lead-acid against {{pictured.lithium}} of " +
					"lithium iron phosphate. The lithium line ends at {{pictured.most}}, its discharge limit.",
				Draw: hoursByPower,
			},
			thePictured,
			weave.Prose("## What print says\n\nPublished results beside ours, each worked with the figures of its source."),
			weave.Table{Title: "Charge and time at a steady current", Rows: printedDischarges},
			weave.Table{Title: "Voltage under load", Rows: printedCircuits},
			weave.Table{Title: "Banks, age, cold, freezing and air", Rows: printedBanks},
			afterPrint, theThirds,
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "division", Claim: "200 Ah at 40 A is five hours", Solve: solveDivision},
			weave.Misconception{Name: "half", Claim: "Half the label may be taken, at whatever current", Solve: solveHalf},
			weave.Misconception{Name: "energy", Claim: "There are 3.6 kWh in the bank, so a 3 kW load runs for an hour", Solve: solveEnergy},
			weave.Misconception{Name: "more", Claim: "The cold takes 29 %, so buy 29 % more", Solve: solveMore},
			weave.Misconception{Name: "series", Claim: "Four 6 V batteries of 225 Ah make 900 Ah", Solve: solveSeries},
			practice, thePractice,
			weave.Caution{Text: cautions}, theDangers,
			weave.Prose("## Exercises"),
			labelExercise, reserveExercise, nightExercise, stringsExercise, leadsExercise, chargeExercise, winterExercise,
		},
	}
}
