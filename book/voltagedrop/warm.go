package voltagedrop

import (
	"fmt"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

const warmth = weave.Prose(`## A conductor warms itself

Until now the temperature of the metal was given. In truth it follows from the load. The ampacity of a table is defined by
it: the current that warms the conductor from the table's air, {{inverter_cable.base}}, to what its insulation is rated for. Heat goes
with the square of the current, and the rise with the heat. The first line below says so, and is the rule
of thumb:`)

var warmSymbols = weave.Formula{
	Equations: []string{
		"T_square = T_a + (T_r - T_b) * pow(I/I_z, 2)",
		"T_to = T_a + (T_r - T_b) * pow(I/I_z, 2) * r_from/r_r",
		"I = P / V_load",
	},
	Where: []weave.Symbol{
		{Name: "T_square", Unit: "°C", What: "temperature of the conductor by the rule of thumb"},
		{Name: "T_a", Unit: "°C", What: "temperature of the air round the conductor"},
		{Name: "T_r", Unit: "°C", What: "temperature that the ampacity belongs to, the rating of the insulation"},
		{Name: "T_b", Unit: "°C", What: "temperature of the air that the ampacity belongs to"},
		{Name: "I", Unit: "A", What: "current of one conductor"},
		{Name: "I_z", Unit: "A", What: "ampacity of one conductor as it is laid, not corrected for the air"},
		{Name: "T_to", Unit: "°C", What: "temperature that a step ends with"},
		{Name: "r_from", Unit: "Ω/m", What: "resistance per length at the temperature that the step begins with"},
		{Name: "r_r", Unit: "Ω/m", What: "resistance per length at T_r"},
		{Name: "P", Unit: "W", What: "power of a load that takes the same at any voltage"},
		{Name: "V_load", Unit: "V", What: "voltage left for it"},
	},
}

const byTheSquare = weave.Prose(`The first line takes the resistance as if the conductor were already at its rating, so it is too warm below the
ampacity and too cool above it. The second takes the resistance that the conductor has. Since that depends on the
temperature looked for, it is worked step by step, as the cable itself does: begin at the air, find the heat, find the
temperature, and begin again there until nothing moves. The third line is for a load that keeps its power, as an inverter
does: the warm cable leaves it less voltage, so it takes more current, which warms the cable.`)

var theInverterCable = weave.Worked{
	Name:  "inverter_cable",
	Title: "An inverter cable warms, step by step",
	Question: "An inverter takes {{power}} from its cables, whatever the voltage: {{one_way}} of {{size}} one way with 105 °C insulation, one cable alone in " +
		"air of {{air}}, {{source}} at the battery. How warm does the cable become, and what does that do to the drop?",
	Inputs: []weave.Input{
		{Name: "power", Label: "power of the load", Default: "1900 W", Unit: "W", Low: "50 W", High: "2400 W"},
		{Name: "one_way", Label: "length, one way", Default: "8 ft", Unit: "ft", Low: "1 ft", High: "15 ft"},
		{Name: "size", Label: "conductor", Default: "2 AWG", Choices: []string{"2 AWG", "1 AWG", "1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG"}},
		{Name: "air", Label: "air round the cable", Default: "40 °C", Unit: "°C", Low: "-20 °C", High: "60 °C"},
		{Name: "source", Label: "voltage at the battery", Default: "12.4 V", Unit: "V", Low: "11.5 V", High: "60 V"},
	},
	Solve:   solveInverterCable,
	Helpers: []string{"inverterCable", "stepTable"},
}

func solveInverterCable(in *weave.Inputs) (weave.Answer, error) {
	size := weave.Parsed(in, "size", wire.ParseSize)
	cable, err := inverterCable(size)
	cable.Run.OneWay = weave.In[units.Length](in, "one_way")
	cable.Run.Source = weave.In[units.Voltage](in, "source")
	cable.Power = units.Some(weave.In[units.Power](in, "power"))
	cable.Ambient = weave.Temperature(in, "air")
	if err != nil {
		return weave.Answer{}, err
	}
	warm, err := wire.WarmDrop(cable)
	if err != nil {
		return weave.Answer{}, err
	}
	cold := warm.AtAmbient
	return weave.Answer{
		Text: "It warms from step to step:\n\n" + stepTable(warm) +
			"\nAfter {{steps}} steps it stays at {{end}}; the " +
			"rule of thumb has {{square}}, for an ampacity of " +
			"{{ampacity}} in air of {{base}}. The drop grows " +
			"from {{cold}} to {{drop}}, and the current from " +
			"{{cold_current}} to {{current}}.",
		Values: []weave.Value{
			weave.Say("steps", warm.Steps),
			weave.Show("end", warm.Temperature, "°C", 4),
			weave.Show("square", warm.BySquare, "°C", 4),
			weave.Show("ampacity", warm.Run.Ampacity, "A", 3),
			weave.Show("base", warm.Run.Base, "°C", 3),
			weave.Show("cold", cold.Fraction, "%", 3),
			weave.Show("drop", warm.Drop.Fraction, "%", 3),
			weave.Show("cold_current", cold.Run.Current, "A", 4),
			weave.Show("current", warm.Drop.Run.Current, "A", 4),
		},
		Working:  warm.Working(),
		Findings: warm.Findings(),
	}, nil
}

// inverterCable returns a cable in free air and its ampacity by
// the table for boats.
func inverterCable(size wire.Size) (wire.WarmRun, error) {
	c, err := wire.Ampacity(wire.Installation{
		Rules: wire.Boat33CFR, Size: size,
		Insulation: wire.Insulation105,
	})
	return wire.WarmRun{
		Run:      wire.Run{Conductor: wire.Conductor{Size: size}},
		Ampacity: units.Scale(c.Table, c.Bundle),
		Rated:    c.Column.Temperature(),
	}, err
}

// stepTable writes the first steps, which are nearly all the way.
func stepTable(warm wire.WarmedDrop) string {
	s := "| step | from, °C | Ω/kft | current, A | to, °C |\n" +
		"| --- | --- | --- | --- | --- |\n"
	for n := 1; n <= min(warm.Steps, 6); n++ {
		step, _ := warm.Step(n) // there are as many
		r := units.In(step.PerLength.At, units.OhmPerKilofoot)
		i := units.In(step.Current, units.Ampere)
		s += fmt.Sprintf("| %d | %s | %s | %s | %s |\n", n,
			units.Significant(step.From.Celsius(), 5),
			units.Significant(r, 4),
			units.Significant(i, 5),
			units.Significant(step.To.Celsius(), 5))
	}
	return s
}

const settled = weave.Prose(`It settles because each step moves less than the one before. Where the air is hot and the cable far too thin it
does not: the heat grows faster than the air takes it, and there is no temperature at which it would stay. The figure shows
the two rules apart; they meet at the ampacity, {{inverter_cable.ampacity}}, which is what the ampacity means.`)

// temperatureByCurrent draws how warm 2 AWG becomes, by steps and by the rule
// of thumb.
func temperatureByCurrent() (figure.Chart, error) {
	chart := figure.Chart{
		Title: "Temperature of 2 AWG against current",
		Description: "Two curves that rise from the temperature of the air, ever steeper. The rule of thumb is the higher up to the " +
			"ampacity, where both meet at the limit of the insulation in air of 30 °C, and the lower beyond it.",
		X:      figure.Axis{Label: "current", Unit: "A", Min: 0, Max: 260},
		Y:      figure.Axis{Label: "conductor", Unit: "°C", Min: 20, Max: 160},
		Limits: []figure.Limit{{Name: "105 °C insulation", Y: 105}},
	}
	steps, square := figure.Line{Name: "step by step"}, figure.Line{Name: "rule of thumb"}
	for amperes := 5.0; amperes <= 240; amperes += 5 {
		cable, err := inverterCable(wire.AWG(2))
		if err != nil {
			return figure.Chart{}, err
		}
		cable.Run.Current, cable.Run.OneWay, cable.Run.Source = units.Current(amperes), 8*units.Foot, 12.4*units.Volt
		warm, err := wire.WarmDrop(cable)
		if err != nil {
			return figure.Chart{}, err
		}
		steps.Points = append(steps.Points, figure.Point{X: amperes, Y: warm.Temperature.Celsius()})
		square.Points = append(square.Points, figure.Point{X: amperes, Y: warm.BySquare.Celsius()})
	}
	chart.Lines = []figure.Line{steps, square}
	return chart, nil
}
