// Package sizing is the chapter of the book on the size of an inverter: what
// runs and starts on it, what it takes from the battery, and where it stands
// between the other sources of a rig.
package sizing

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "sizing",
		Title:    "Sizing an inverter",
		Question: "How large an inverter do I need, and what does it do to the battery side?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			mathematics, machineSymbols, afterMachine, sourceSymbols, afterSource,
			theLoads, theBatterySide, theDay, theSets,
			theAirConditioner, thePedestal, theLoop, theBonds, theQuote,
			beforeCurrent,
			weave.Figure{
				Name: "current_by_voltage",
				Caption: "Current drawn at full output by inverters with an efficiency of {{pictured.efficiency}}, against the voltage " +
					"at their terminals.",
				Draw: currentByVoltage,
			},
			beforeEnergy,
			weave.Figure{
				Name: "energy_by_hours",
				Caption: "Loads of {{pictured.energy}} a day through a large inverter ({{pictured.large_efficiency}}, own use " +
					"{{pictured.large_idle}}) and a small one ({{pictured.small_efficiency}}, {{pictured.small_idle}}).",
				Draw: energyByHours,
			},
			weave.Numbers{Name: "pictured", Solve: solvePictured},
			weave.Prose("## What print says\n\nPublished results beside ours. A row that differs says why."),
			weave.Table{Title: "The battery side", Rows: printedBatterySide},
			weave.Table{Title: "What runs together", Rows: printedSums},
			beforeMotors,
			weave.Table{Title: "Locked-rotor current of single-phase motors at 115 V", Rows: printedMotors},
			beforeCurve,
			weave.Table{Title: "One efficiency and own use against a loss curve", Rows: printedCurve},
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "microwave", Claim: "A 1000 W microwave runs on a 1000 W inverter", Solve: solveMicrowave},
			weave.Misconception{Name: "amperes", Claim: "1500 W means 12.5 A", Solve: solveAmperes},
			weave.Misconception{Name: "idle", Claim: "It is 90 % efficient, so its own use does not matter", Solve: solveIdle},
			weave.Misconception{Name: "twice", Claim: "Twice the running watts starts it", Solve: solveTwice},
			weave.Misconception{Name: "rod", Claim: "A ground rod does what the bond would do", Solve: solveRod},
			practice,
			weave.Caution{Text: cautionBonds},
			weave.Caution{Text: cautionGenerator},
			weave.Caution{Text: cautionBattery},
			weave.Prose("## Exercises"),
			dryerExercise, doubledExercise, storageExercise, nightExercise, serviceExercise, refillExercise, secondBondExercise,
		},
	}
}
