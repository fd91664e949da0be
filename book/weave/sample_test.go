package weave_test

import (
	"embed"
	"fmt"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

//go:embed sample_test.go
var sampleSource embed.FS

// handbook is invented for this sample; nothing is checked against it.
var handbook = working.Source{Body: "Invented Press", Title: "A Sample Handbook", Edition: "1999",
	Place: "table 3", Provenance: working.Memory}

// leaflet is invented too.
var leaflet = working.Source{Title: "A sample leaflet", Place: "page 2", Provenance: working.Memory}

// sample returns a small chapter that has every kind of block.
func sample() weave.Chapter {
	return weave.Chapter{
		Topic: "sample", Title: "A lamp & its cable",
		Question: "Why does a lamp at the end of a <long> cable glow dimmer?",
		Source:   sampleSource,
		Blocks: []weave.Block{
			weave.Prose(`## The rule of thumb

			Every metre of cable takes its share. With {{lamp.current}} in {{lamp.cord}} it is
			**{{lamp.lost}}**, or {{lamp.share}} of {{lamp.source}}; a replacement costs about \$20.

			- A *thin* cable has more resistance.
			- A long one too:
			  twice the length, twice the loss.

			1. Measure at the battery.
			2. Measure at the lamp with ` + "`the lamp on`" + `.

			| what | where |
			| --- | ---: |
			| battery \| source | 0 m |
			| lamp | the far end |

			See [the table](#prose) and [Ohm](https://example.com/ohm) or <https://example.com>.

			` + "```go\n			lost := current.Through(resistance)\n			```" + `

			> Measure & compare: 1 &lt; 2.

			## The math`),
			weave.Formula{
				Equations: []string{"ΔV = I * R_loop", "R_loop = 2 * L * r", "ΔV <= 3*pct * V"},
				Where: []weave.Symbol{
					{Name: "ΔV", Unit: "V", What: "voltage lost in the cable"},
					{Name: "I", Unit: "A", What: "current of the lamp"},
					{Name: "R_loop", Unit: "Ω", What: "resistance of the cable, there and back"},
					{Name: "L", Unit: "m", What: "length of the cable, one way"},
					{Name: "r", Unit: "Ω/m", What: "resistance of one metre of one of its two conductors, which depends on its metal, its cross-section and how warm it is"},
					{Name: "V", Unit: "V", What: "voltage of the source"},
				},
			},
			weave.Prose("## Worked examples"),
			weave.Worked{
				Name: "lamp", Title: "A lamp at the end of a cord",
				Question: "A lamp takes {{current}} from {{source}} through a {{cord}} of {{resistance}}, " +
					"{{lamps}} of them in a row, at {{metal}}. What is lost?",
				Inputs: []weave.Input{
					{Name: "current", Label: "current of the lamp", Default: "5 A", Unit: "A", Low: "100 mA", High: "20 A"},
					{Name: "source", Label: "voltage of the source", Default: "12 V", Unit: "V", Low: "10 V", High: "15 V"},
					{Name: "resistance", Label: "resistance of the cord", Default: "0.1 ohm", Unit: "ohm", Low: "1 mohm", High: "1 ohm"},
					{Name: "metal", Label: "temperature of the metal", Default: "68 °F", Unit: "°C", Low: "-40 °C", High: "90 °C"},
					{Name: "lamps", Label: "number of lamps", Default: "1", Low: "1", High: "4"},
					{Name: "cord", Label: "kind of cord", Default: "flat cord", Choices: []string{"flat cord", "round cord"}},
				},
				Solve:   solveLamp,
				Helpers: []string{"loss"},
			},
			weave.Figure{Name: "loss", Caption: "At {{lamp.current}} it is {{lamp.lost}}.", Draw: lossChart},
			weave.Figure{Name: "shares", Caption: "By number of lamps.", Bars: lossBars},
			weave.Prose("## Print"),
			weave.Table{Title: "Against two leaflets", Rows: printedLosses},
			weave.Prose("## Misconceptions"),
			weave.Numbers{Name: "tenth", Solve: solveTenth},
			weave.Misconception{Name: "small", Claim: "A tenth of an ohm is nothing", Solve: solveSmall},
			weave.Caution{Text: "A cord that is warm to the hand loses more than {{tenth.rule}}.\n\n" +
				"- Unplug it.\n- Ask a licensed electrician."},
			weave.Prose("## Exercises"),
			weave.Exercise{Name: "two", Question: "What if the lamp takes {{current}}?",
				Inputs: []weave.Input{{Name: "current", Label: "current", Default: "10 A", Unit: "A", Low: "1 A", High: "20 A"}},
				Solve:  solveTwo},
			weave.Exercise{Name: "none", Question: "What if it is off?", Solve: solveOff},
		},
	}
}

// solveLamp answers the question: what the cord takes
// of the voltage at the source.
func solveLamp(in *weave.Inputs) (weave.Answer, error) {
	current := weave.In[units.Current](in, "current")
	source := weave.In[units.Voltage](in, "source")
	cord := weave.In[units.Resistance](in, "resistance")
	metal := weave.Temperature(in, "metal")
	lamps := weave.Count(in, "lamps")
	kind := weave.Text(in, "cord")

	lost := loss(units.Scale(current, units.Ratio(lamps)), cord)
	share := units.RatioOf(lost, source)
	s := working.NewSheet("Loss in the cord")
	s.Given("I", current, "A", "current of one lamp")
	s.Given("n", units.Ratio(lamps), "1", "number of lamps")
	s.Given("V", source, "V", "voltage of the source")
	s.Constant("R", cord, "ohm", "resistance of the cord", handbook)
	s.Formula("ΔV", lost, "V", "voltage lost", "n * I * R")
	s.Formula("s", share, "%", "part of the source", "100 * ΔV / V")
	return weave.Answer{
		Text: "The {{kind}} takes {{lost}}, {{share}} of it all.",
		Values: []weave.Value{
			weave.Show("lost", lost, "V", 3),
			weave.Show("share", share, "%", 2),
			weave.Say("kind", kind),
		},
		Working:  s,
		Findings: lampFindings(lost, metal),
		Checks:   lampChecks(lost),
		Figure: weave.Figure{Name: "lamp", Caption: "The {{kind}}.",
			Draw: lampChart},
	}, nil
}

// loss is what a cord takes.
func loss(i units.Current, r units.Resistance) units.Voltage {
	return i.Through(r)
}

func lampFindings(lost units.Voltage, metal units.Temperature) []working.Finding {
	return []working.Finding{
		{Severity: working.Note, Rule: "cord-length", Message: "A shorter cord takes less."},
		{Severity: working.Danger, Rule: "cord-warm", Message: "The cord is warm: do not *cover* it.",
			Numbers: []working.Number{{Name: "lost", Value: lost}, {Name: "metal", Value: metal}},
			Fix:     "Uncoil it.", Source: handbook},
	}
}

func lampChecks(lost units.Voltage) []weave.Row {
	return []weave.Row{
		{What: "loss", Ours: lost, Printed: units.MustPrinted("0.5", "V"), Source: handbook},
		{What: "loss, as a chart reads", Ours: lost, Printed: units.MustPrinted("0.53", "V"), Source: leaflet,
			Within: "0.05 V", Why: "its chart has a line every 0.05 V"},
	}
}

func lossChart() (figure.Chart, error) {
	return figure.Chart{
		Title: "Loss against current", Description: "A straight line through 0 and 1 V at 10 A.",
		X:     figure.Axis{Label: "current", Unit: "A", Max: 10},
		Y:     figure.Axis{Label: "loss", Unit: "V", Max: 1},
		Lines: []figure.Line{{Name: "cord", Points: []figure.Point{{X: 0, Y: 0}, {X: 10, Y: 1}}}},
	}, nil
}

func lampChart() (figure.Chart, error) {
	c, err := lossChart()
	c.Title = "Loss of the example"
	return c, err
}

func lossBars() (figure.Bars, error) {
	return figure.Bars{
		Title: "Loss by number of lamps", Description: "Twice the lamps, twice the loss.",
		Label: "lamps", Y: figure.Axis{Label: "loss", Unit: "V", Max: 1},
		Categories: []string{"one", "two"},
		Groups:     []figure.Group{{Values: []float64{0.5, 1}}},
	}, nil
}

func printedLosses() ([]weave.Row, error) {
	lost := loss(5*units.Ampere, 0.1*units.Ohm)
	return []weave.Row{
		{What: "loss at 5 A", Ours: lost, Printed: units.MustPrinted("0.50", "V"), Source: handbook},
		{What: "loss, rounded", Ours: lost, Printed: units.MustPrinted("0.52", "V"), Source: leaflet,
			Within: "5 %", Why: "it says “about”"},
		{What: "share of 12 V", Ours: units.RatioOf(lost, 12*units.Volt), Printed: units.MustPrinted("4.3", "%"), Source: leaflet,
			Differs: "it divides by 11.7 V, *under load*"},
		{What: "metal", Ours: units.Celsius(20.1), Printed: units.MustPrinted("20", "°C"), Source: handbook},
		{What: "cord to use", OursText: "2 x 1.5 mm²", PrintedText: "2 x 1.5 mm²", Source: leaflet},
		{What: "cord to avoid", OursText: "2 x 0.5 mm²", PrintedText: "2 x 0.75 mm²", Source: leaflet, Differs: "it is older"},
	}, nil
}

func solveTenth(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Values: []weave.Value{weave.Show("rule", 10*units.Percent, "%", 2)}}, nil
}

func solveSmall(*weave.Inputs) (weave.Answer, error) {
	lost := loss(20*units.Ampere, 0.1*units.Ohm)
	return weave.Answer{
		Text:   "At 20 A it takes {{lost}}.",
		Values: []weave.Value{weave.Show("lost", lost, "V", 2)},
	}, nil
}

func solveTwo(in *weave.Inputs) (weave.Answer, error) {
	lost := loss(weave.In[units.Current](in, "current"), 0.1*units.Ohm)
	return weave.Answer{
		Text:   "It takes {{lost}}, twice the {{lamp.lost}} of the example.",
		Values: []weave.Value{weave.Show("lost", lost, "V", 2)},
	}, nil
}

func solveOff(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: fmt.Sprintf("It takes %v.", loss(0, 0.1*units.Ohm))}, nil
}
