package voltagedrop

import (
	"fmt"
	"strings"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

const longestRuns = weave.Prose(`## The table on the inside of the cupboard door

Handbooks print the longest run for size and current. It is a table of the drop alone, and one of its corners has done harm:
the one with thin wire and much current, where a length is printed, the drop is small, and the wire burns. So here each cell also asks what the current does to the wire.`)

var theRuns = weave.Worked{
	Name:  "runs",
	Title: "Longest runs, and the cells that heat forbids",
	Question: "How far may each size carry each current from {{source}} within {{allowed}}, copper at {{metal}}? Lengths are one way, " +
		"in {{unit}}.",
	Inputs: []weave.Input{
		sourceInput, allowedInput, metalInput,
		{Name: "unit", Label: "unit of the table", Default: "ft", Choices: []string{"ft", "m"}},
	},
	Solve:   solveRuns,
	Helpers: []string{"runTable", "cell"},
}

func solveRuns(in *weave.Inputs) (weave.Answer, error) {
	var sizes []wire.Size
	for gauge := 16; gauge >= 2; gauge -= 2 {
		sizes = append(sizes, wire.AWG(gauge))
	}
	var currents []units.Current
	for _, i := range []float64{2, 5, 10, 15, 20, 30, 50, 100} {
		currents = append(currents, units.Current(i))
	}
	cells, err := wire.AppendLongestRuns(nil, wire.Run{
		Conductor: wire.Conductor{
			Temperature: weave.Temperature(in, "metal"),
		},
		Source:  weave.In[units.Voltage](in, "source"),
		Allowed: units.Some(weave.In[units.Ratio](in, "allowed")),
	}, sizes, currents)
	if err != nil {
		return weave.Answer{}, err
	}
	name, unit := weave.Text(in, "unit"), units.Foot
	if name == "m" {
		unit = units.Metre
	}
	last := cells[len(cells)-1]
	return weave.Answer{
		Text: "The drop is within {{volts}} up to:\n\n" +
			runTable(cells, currents, unit) +
			"\nIn brackets: too much current for a wall, a " +
			"raceway or a bundle. Heat: more than any table " +
			"allows, whatever the length. The last cell, " +
			"{{size}} at {{current}}, reaches {{reach}}.",
		Values: []weave.Value{
			weave.Show("volts", last.Voltage, "V", 3),
			weave.Say("size", last.Run.Conductor.Size),
			weave.Show("current", last.Run.Current, "A", 3),
			weave.Show("reach", last.OneWay, name, 3),
		},
		Working:  last.Working(),
		Findings: last.Findings(),
	}, nil
}

// runTable writes one row of cells for each size.
func runTable(
	cells []wire.Reach, currents []units.Current, unit units.Length,
) string {
	var s strings.Builder
	s.WriteString("| |")
	for _, i := range currents {
		fmt.Fprintf(&s, " %v |", i)
	}
	rule := strings.Repeat(" --- |", len(currents))
	s.WriteString("\n| --- |" + rule)
	for k, c := range cells {
		if k%len(currents) == 0 {
			fmt.Fprintf(&s, "\n| %v |", c.Run.Conductor.Size)
		}
		fmt.Fprintf(&s, " %s |", cell(c, unit))
	}
	return s.String() + "\n"
}

// cell returns a length, or what the heat has to say.
func cell(c wire.Reach, unit units.Length) string {
	length := units.Significant(units.In(c.OneWay, unit), 3)
	for _, f := range c.Findings() {
		switch f.Rule {
		case "current-above-any-ampacity":
			return "heat"
		case "current-above-ampacity-in-wall":
			return "(" + length + ")"
		}
	}
	return length
}
