// Package protection is the chapter of the book on the device that protects a
// conductor and on the short circuits it has to end.
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
		Title:    "Protection and fault current",
		Question: "Which fuse does this wire need, can it break the worst short, and will it open on the weakest one?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule}, weave.Numbers{Name: "place_rules", Solve: solvePlaces},
			weave.Figure{
				Name:    "limit_by_size",
				Caption: "Greatest device for copper with 105 °C insulation, by the NEC with terminals of 60 °C and air of 30 °C.",
				Bars:    limitBySize,
			},
			mathematics, symbols, afterTheMath, howToAsk,
			theBranch, theInverter, theNextRating, thePath, theUpgrade, theLamp, theSlow, theWithstand, thePlace, theQuote,
			weave.Prose("## Fault current against length\n\nA short is strong at the battery and weak at the end of a thin wire. " +
				"Where a curve passes below a fuse, that fuse does not open on a short there."),
			weave.Figure{
				Name:    "fault_by_length",
				Caption: "Bolted short on 13.2 V behind 3 mΩ, stranded copper at 75 °C.",
				Draw:    faultByLength,
			},
			aboutWithstand,
			weave.Figure{
				Name:    "borne_by_current",
				Caption: "How long thermoplastic insulation of 70 °C bears a short, by the adiabatic method, which ends at 5 s. Both scales are logarithmic.",
				Draw:    borneByCurrent,
			},
			weave.Prose("## What print says\n\nPublished results beside ours. A row that differs says why."),
			weave.Table{Title: "Published worked examples", Rows: printedExamples},
			weave.Table{Title: "Published limits of devices", Rows: printedLimits},
			beforeFactors,
			weave.Table{Title: "Published factors of short circuits", Rows: printedFactors},
			beforeFuses,
			weave.Table{Title: "Fuses by wire size in aircraft", Rows: printedFuses},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "always", Claim: "A dead short always blows the fuse", Solve: solveAlways},
			weave.Misconception{Name: "label", Claim: "Watts over 12 V gives the inverter's fuse", Solve: solveLabel},
			weave.Misconception{Name: "pair", Claim: "Two 30 A wires side by side make a 60 A cable", Solve: solvePair},
			weave.Misconception{Name: "charger", Claim: "The solar controller makes the current, so the fuse belongs there", Solve: solveCharger},
			weave.Misconception{Name: "thick", Claim: "A cable this thick cannot burn in a quarter of a second", Solve: solveThick},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			lampsExercise, afternoonExercise, relayExercise, seriesExercise, reachExercise, clearExercise,
		},
	}
}
