// Package ampacity is the chapter of the book on the current that a conductor
// may carry for heat, and on what corrects it.
package ampacity

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "ampacity",
		Title:    "Ampacity and its corrections",
		Question: "How much current may this wire carry, here, in this heat, next to those others?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			mathematics, corrections, afterCorrections, balance, afterBalance, weave.Numbers{Name: "band", Solve: solveBand},
			howToAsk,
			theWall, theRoof, theSize, theTerminals, theEdition, theCupboard, theBoat, theCord, theCable,
			weave.Prose("## Ampacity in warm air\n\nThe printed factors hold over five degrees, so the curve is a staircase. Each class " +
				"of insulation gives out where the air is nearly as warm as the insulation may become."),
			weave.Figure{
				Name: "ampacity_by_air",
				Caption: "Corrected ampacity of 10 AWG by the NEC of 2017, a line for each class of insulation, not more than three conductors, " +
					"before the terminals are looked at.",
				Draw: ampacityByAir,
			},
			aboutTheRoot,
			weave.Figure{
				Name:    "factor_by_air",
				Caption: "What air of a temperature leaves of the ampacity at 30 °C, insulation of 75 °C.",
				Draw:    factorByAir,
			},
			aboutSizes,
			weave.Figure{
				Name:    "ampacity_by_size",
				Caption: "Ampacity of copper at 30 °C against the area of the metal. Both scales are logarithmic.",
				Draw:    ampacityBySize,
			},
			weave.Prose("## What print says\n\nPublished results beside ours. A row that differs says why."),
			weave.Table{Title: "Published worked examples", Rows: printedExamples},
			weave.Table{Title: "Published tables and factors", Rows: printedTables},
			beforeRoots,
			weave.Table{Title: "Printed factors against the root", Rows: printedRoots},
			beforeFreeAir,
			weave.Table{Title: "A textbook's free air against the heat balance", Rows: printedFreeAir},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "boats_table", Claim: "The table says that this wire carries 45 A", Solve: solveBoatsTable},
			weave.Misconception{Name: "column", Claim: "It is 90 °C wire, so I may use the 90 °C column", Solve: solveColumn},
			weave.Misconception{Name: "twice", Claim: "Twice the copper carries twice the current", Solve: solveTwice},
			weave.Misconception{Name: "little_over", Claim: "Twenty per cent too much makes it a little warmer", Solve: solveLittleOver},
			weave.Misconception{Name: "each", Claim: "Ten wires of 30 A in a conduit carry 30 A each", Solve: solveEach},
			weave.Misconception{Name: "breaker", Claim: "The breaker would open if the cord were overloaded", Solve: solveBreaker},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			conduitExercise, furnaceExercise, neutralExercise, engineExercise, hottestExercise,
		},
	}
}
