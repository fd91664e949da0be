package voltagedrop

import (
	"encoding"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

const whichTwelve = weave.Prose(`## Twelve gauge has more than one resistance

Look up 12 AWG in the books on a shelf and you find anything from {{twelve.low}} to {{twelve.high}}, {{twelve.spread}} apart,
and each book is right about the conductor that it means. Four things differ:

- **Temperature.** From 20 °C to 75 °C copper gains {{twelve.warmer}}. It is the largest of the four, and the table with the
  lowest numbers is the cold one.
- **Strands.** They go round the axis, so each is longer than the conductor: about {{twelve.lay}}.
- **Tin.** Coated strands have less copper in the same diameter. In the NEC table that costs {{twelve.tin}} for 12 AWG.
- **A mean or a limit.** A wire table gives what perfect annealed copper of the nominal size has. A standard such as IEC 60228, and
  the aircraft table below, give the most that a conductor may have and still be sold by that name.

So a resistance without its source is half a number. In the library the source is a field of the conductor, its Basis; the
table names it in each row. Asked for nothing, the library takes copper and the geometry of the gauge, stranded, at
{{rule.warm_copper}}.`)

// solveTwelve measures how far the resistances of 12 AWG lie apart.
func solveTwelve(*weave.Inputs) (weave.Answer, error) {
	var at [4]units.ResistancePerLength
	for i, c := range []wire.Conductor{
		twelve(wire.FromNBSHandbook100, wire.Solid, 20),
		twelve(wire.FromNBSHandbook100, wire.Solid, 75),
		twelve(wire.FromNBSHandbook100, wire.Stranded, 75),
		twelve(wire.FromNECTable8, wire.Stranded, 75),
	} {
		p, err := wire.Resistance(c)
		if err != nil {
			return weave.Answer{}, err
		}
		at[i] = p.At
	}
	coated := twelve(wire.FromNECTable8, wire.Stranded, 75)
	coated.Coated = true
	tinned, err := wire.Resistance(coated)
	return weave.Answer{Values: []weave.Value{
		weave.Show("low", at[0], "Ω/kft", 4),
		weave.Show("high", tinned.At, "Ω/kft", 3),
		weave.Show("spread", units.RatioOf(tinned.At-at[0], at[0]), "%", 2),
		weave.Show("warmer", units.RatioOf(at[1]-at[0], at[0]), "%", 3),
		weave.Show("lay", units.RatioOf(at[2]-at[1], at[1]), "%", 2),
		weave.Show("tin", units.RatioOf(tinned.At-at[3], at[3]), "%", 2),
	}}, err
}

// twelve returns a 12 AWG copper conductor.
func twelve(basis wire.Basis, strand wire.Strand, celsius float64) wire.Conductor {
	return wire.Conductor{Size: wire.AWG(12), Strand: strand, Temperature: units.Celsius(celsius), Basis: units.Some(basis)}
}

var neets = working.Source{Body: "US Navy", Title: "NAVEDTRA 14176, NEETS module 4", Place: "chapter 1, answers", Provenance: working.Read}

// printedTwelve compares 12 AWG, source by source.
func printedTwelve() ([]weave.Row, error) {
	coated := twelve(wire.FromNECTable8, wire.Stranded, 75)
	coated.Coated = true
	aluminium := wire.Conductor{Size: wire.AWG(12), Metal: wire.Aluminium}
	const rounded = "the table has its own strands and rounding"
	var rows []weave.Row
	for _, p := range []struct {
		conductor            wire.Conductor
		digits               string
		source               working.Source
		within, why, differs string
	}{
		{conductor: twelve(wire.FromNBSHandbook100, wire.Solid, 20), digits: "1.588", source: floyd},
		{conductor: twelve(wire.FromCopper, wire.Solid, 20), digits: "1.588", source: floyd},
		{conductor: twelve(wire.FromNBSHandbook100, wire.Solid, 25), digits: "1.62", source: neets},
		{conductor: twelve(wire.FromNECTable8, wire.Solid, 75), digits: "1.93", source: nec8},
		{conductor: twelve(wire.FromCopper, wire.Solid, 75), digits: "1.93", source: nec8},
		{conductor: twelve(wire.FromNECTable8, wire.Stranded, 75), digits: "1.98", source: nec8},
		{conductor: twelve(wire.FromCopper, wire.Stranded, 75), digits: "1.98", source: nec8, within: "0.6 %", why: rounded},
		{conductor: coated, digits: "2.05", source: nec8},
		{conductor: twelve(wire.FromCopper, wire.Stranded, 20), digits: "2.02", source: faa,
			differs: "the most that tinned aircraft wire of that number may have, and it has 5874 circular mils, not the 6530 of the gauge"},
		{conductor: aluminium, digits: "3.25", source: nec8, within: "0.6 %", why: rounded},
	} {
		r, err := wire.Resistance(p.conductor)
		if err != nil {
			return nil, err
		}
		what := r.Basis.String() + ": "
		if r.Conductor.Coated {
			what += "tinned "
		}
		what += r.Conductor.Metal.String() + ", " + r.Conductor.Strand.String() + ", " + r.Conductor.Temperature.String()
		rows = append(rows, weave.Row{What: what, Ours: r.At, Printed: units.MustPrinted(p.digits, "Ω/kft"), Source: p.source,
			Within: p.within, Why: p.why, Differs: p.differs})
	}
	return rows, nil
}

const otherMetals = weave.Prose(`And there are other metals. Aluminium of the same size has {{metals.aluminium}} times the resistance of copper and
{{metals.light}} of its weight. Copper-clad aluminium, with a skin of copper on a core of aluminium, has {{metals.clad}} times
the resistance and looks like copper until it is cut. Skin and core lie side by side, so their conductivities add by
area, and there is not much of the skin.`)

// solveMetals holds the metals beside copper.
func solveMetals(*weave.Inputs) (weave.Answer, error) {
	var ohms [3]units.ResistancePerLength
	var mass [3]units.MassPerLength
	for i, metal := range []wire.Metal{wire.Copper, wire.Aluminium, wire.CopperClad} {
		m, err := wire.MassOf(wire.Conductor{Size: wire.Aught(1), Metal: metal})
		if err != nil {
			return weave.Answer{}, err
		}
		r, err := wire.Resistance(m.Conductor)
		if err != nil {
			return weave.Answer{}, err
		}
		ohms[i], mass[i] = r.At, m.PerLength
	}
	return weave.Answer{Values: []weave.Value{
		weave.Show("aluminium", units.RatioOf(ohms[1], ohms[0]), "1", 3),
		weave.Show("light", units.RatioOf(mass[1], mass[0]), "%", 2),
		weave.Show("clad", units.RatioOf(ohms[2], ohms[0]), "1", 3),
	}}, nil
}

var theMetal = weave.Worked{
	Name:  "metal",
	Title: "Copper, aluminium, and copper on the outside",
	Question: "A set of battery cables is offered at half the price. It is {{size}}, as asked, {{one_way}} one way for {{current}}, and the small print " +
		"says {{metal}}. What does it lose beside copper, metal at {{temperature}}?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the load", Default: "200 A", Unit: "A", Low: "1 A", High: "300 A"},
		{Name: "one_way", Label: "length, one way", Default: "5 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "1/0 AWG", Choices: []string{"4 AWG", "2 AWG", "1/0 AWG", "2/0 AWG", "4/0 AWG"}},
		{Name: "metal", Label: "what it is made of", Default: wire.CopperClad.String(),
			Choices: []string{wire.Copper.String(), wire.Aluminium.String(), wire.CopperClad.String()}},
		{Name: "temperature", Label: "temperature of the metal", Default: "75 °C", Unit: "°C", Low: "-40 °C", High: "105 °C"},
		{Name: "source", Label: "voltage at the source", Default: "12.8 V", Unit: "V", Low: "10 V", High: "60 V"},
	},
	Solve:   solveMetal,
	Helpers: []string{"word"},
}

func solveMetal(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		Current: weave.In[units.Current](in, "current"),
		OneWay:  weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size:        weave.Parsed(in, "size", wire.ParseSize),
			Temperature: weave.Temperature(in, "temperature"),
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	c := &run.Conductor
	c.Metal = weave.Parsed(in, "metal", word[wire.Metal])
	drop, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	c.Metal = wire.Copper
	copper, err := wire.VoltageDrop(run)
	if err != nil {
		return weave.Answer{}, err
	}
	// As much copper as has the same resistance.
	area := drop.PerLength.Area
	part := units.RatioOf(copper.PerLength.At, drop.PerLength.At)
	times := units.RatioOf(drop.PerLength.At, copper.PerLength.At)
	return weave.Answer{
		Text: "It loses {{drop}} where copper loses {{copper}}: " +
			"{{times}} times as much, and as much more heat. Its " +
			"{{area}} conduct like {{like}} of copper.",
		Values: []weave.Value{
			weave.Show("drop", drop.Voltage, "V", 3),
			weave.Show("copper", copper.Voltage, "V", 3),
			weave.Show("times", times, "1", 3),
			weave.Show("area", area, "mm²", 3),
			weave.Show("like", units.Scale(area, part), "mm²", 3),
		},
		Working:  drop.Working(),
		Findings: drop.Findings(),
	}, nil
}

// word reads a value that is written as one of a few words.
func word[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](text string) (x T, err error) {
	err = P(&x).UnmarshalText([]byte(text))
	return x, err
}
