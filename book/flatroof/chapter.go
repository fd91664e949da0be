// Package flatroof is the chapter of the book on what the sun gives panels
// that lie flat on a roof, and what the panels may do to the parts behind them.
package flatroof

import (
	"embed"

	"example.com/drawbar/book/weave"
)

//go:embed *.go
var source embed.FS

// Chapter returns the chapter.
func Chapter() weave.Chapter {
	return weave.Chapter{
		Topic:    "flatroof",
		Title:    "Sun on a flat roof",
		Question: "How many watt-hours does my roof bring, and what can the panels do to the things behind them?",
		Source:   source,
		Blocks: []weave.Block{
			opening, theRule, weave.Numbers{Name: "rule", Solve: solveRule},
			weave.Figure{
				Name: "harvest_by_month",
				Caption: "A mean day of each month for 440 W flat on the roof, the typical losses taken off, cells at 25 °C. " +
					"Irradiation: typical years TMY2 94846 and 12839.",
				Bars: harvestByMonth,
			},
			theSunsMath, sunSymbols, theRoofsMath, roofSymbols, theWiresMath, wireSymbols, afterTheMath,
			theHarvest, theDay, theCells, thePair, theSwitch, theFuses, theQuote,
			weave.Prose("## The year above the air\n\nWhat level ground would get if there were no air. Near the equator the year is almost flat; " +
				"far from it summer is as rich as anywhere and winter is close to nothing. A roof gets about three quarters of this on " +
				"a clear day and a quarter under overcast."),
			weave.Figure{
				Name:    "above_air",
				Caption: "Irradiation of level ground above the air through the year, by equation 21 of FAO-56.",
				Draw:    aboveAir,
			},
			weave.Prose("## Voltage against the cold\n\nA straight line if the datasheet has a coefficient, a staircase if the table must stand in. " +
				"Where one crosses the limit of the controller is the coldest night that the string may see."),
			weave.Figure{
				Name:    "cold_voltage",
				Caption: "Two panels of 46.2 V in series, with a coefficient of -0.28 %/K and by the table, against a controller for 100 V.",
				Draw:    coldVoltage,
			},
			beforePrint,
			weave.Table{Title: "Worked examples of FAO-56", Rows: printedFAO},
			weave.Table{Title: "Tables of FAO-56 and of a textbook", Rows: printedTables},
			weave.Table{Title: "Panels: harvest, losses, cells", Rows: printedPanels},
			weave.Table{Title: "Factors for the cold", Rows: printedCold},
			weave.Table{Title: "Current through a PWM controller", Rows: printedPWM},
			afterPrint,
			weave.Prose("## What people believe"),
			weave.Misconception{Name: "watts", Claim: "440 W of panels give 440 W while the sun is up", Solve: solveWatts},
			weave.Misconception{Name: "hot", Claim: "The hotter the day, the better the harvest", Solve: solveHot},
			weave.Misconception{Name: "north", Claim: "The farther north, the less sun", Solve: solveNorth},
			weave.Misconception{Name: "losses", Claim: "Losses add up", Solve: solveLosses},
			weave.Misconception{Name: "short", Claim: "A short in the panel cable blows the fuse", Solve: solveShort},
			practice,
			weave.Caution{Text: cautions},
			weave.Prose("## Exercises"),
			sizeExercise, northExercise, tableExercise, shadeExercise, stringsExercise, hotExercise,
		},
	}
}
