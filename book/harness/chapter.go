// Package harness is the chapter of the book on the whole harness: batteries
// in parallel, a tree of feeders, and loads that keep their power.
package harness

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "harness",
		Title:    "The harness",
		Question: "Why do the lights dim when the inverter starts, and which of my batteries works hardest?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			mathematics, treeSymbols, aboutOneLoad, oneLoadSymbols, aboutTheRow, rowSymbols, afterTheMath,
			thePanel, theDimming, theInverter, theRow, theTwo, theUnlike,
			beforeFigures,
			weave.Figure{
				Name:    "voltage_by_power",
				Caption: "Both states of one load on 12.2 V behind 10 mΩ, meeting at the nose, and one step of arithmetic.",
				Draw:    voltageByPower,
			},
			beforeBars,
			weave.Figure{
				Name:    "share_by_place",
				Caption: "Batteries of 3 mΩ, links of two leads of 0.3 mΩ, 200 A.",
				Bars:    shareByPlace,
			},
			beforePrint,
			weave.Table{Title: "Textbook circuits", Rows: printedCircuits},
			weave.Table{Title: "Networks of the simulator", Rows: simulated},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "label", Claim: "Watts over 12 V is the current of the inverter", Solve: solveStep},
			weave.Misconception{Name: "equal", Claim: "Four batteries of 100 A give 400 A", Solve: solveEqual},
			weave.Misconception{Name: "less", Claim: "On a thin cable the inverter just gets a little less", Solve: solveLess},
			weave.Misconception{Name: "pieces", Claim: "Every run is within 3 %, so the pump is", Solve: solvePieces},
			weave.Misconception{Name: "hours", Claim: "A lithium battery beside the old one adds its ampere-hours", Solve: solveMoreHours},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			compressorExercise, mostExercise, longExercise, lugExercise, chargedExercise,
		},
	}
}
