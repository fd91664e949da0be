package weave_test

import (
	"embed"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

//go:embed mistakes_test.go again_test.go
var mistakesSource embed.FS

// chapter returns one with blocks.
func chapter(blocks ...weave.Block) weave.Chapter {
	return weave.Chapter{Topic: "wrong", Title: "Wrong", Question: "What is wrong?", Blocks: blocks, Source: mistakesSource}
}

// current is a declaration without mistakes.
var current = weave.Input{Name: "current", Label: "current", Default: "5 A", Unit: "A", Low: "1 A", High: "10 A"}

func solveCurrent(in *weave.Inputs) (weave.Answer, error) {
	i := weave.In[units.Current](in, "current")
	values := []weave.Value{weave.Show("i", i, "A", 3)}
	return weave.Answer{Text: "It is {{i}}.", Values: values}, nil
}

func solveText(in *weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: weave.Text(in, "anything") + "."}, nil
}

// solveSize reads a text as a number.
func solveSize(in *weave.Inputs) (weave.Answer, error) {
	size := weave.Parsed(in, "size", readSize)
	return answer(weave.Say("x", size))
}

func readSize(s string) (float64, error) { return strconv.ParseFloat(s, 64) }

func solveWide(in *weave.Inputs) (weave.Answer, error) {
	_ = weave.In[units.Current](in, "current") // a line of code that is wider than a page
	return weave.Answer{Text: "Done."}, nil
}

func solveNothing(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: "Nothing."}, nil
}

func solveTwoValues(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Values: []weave.Value{weave.Say("a", 1), weave.Say("b", 2)}}, nil
}

func solveWord(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: "It is {{word}}.", Values: []weave.Value{weave.Say("word", "wet")}}, nil
}

func solveUnknownValue(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: "It is {{missing}}."}, nil
}

func solveBadCheck(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: "It is.", Checks: []weave.Row{{What: "it"}}}, nil
}

func solveBadFigure(*weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: "It is.", Figure: weave.Figure{Name: "UPPER", Draw: lossChart}}, nil
}

// with returns an example that has the inputs.
func with(solve func(*weave.Inputs) (weave.Answer, error), inputs ...weave.Input) weave.Worked {
	return weave.Worked{Name: "it", Title: "It", Question: "What is it?", Inputs: inputs, Solve: solve}
}

// answering returns an example whose answer is a. Its mistakes are found
// before its code is looked for, which a closure has not.
func answering(a weave.Answer) weave.Worked {
	return with(func(in *weave.Inputs) (weave.Answer, error) {
		_ = weave.In[units.Current](in, "current")
		return a, nil
	}, current)
}

// reading returns an example that reads the input p by get.
func reading(p weave.Input, get func(in *weave.Inputs)) weave.Worked {
	return with(func(in *weave.Inputs) (weave.Answer, error) {
		get(in)
		return weave.Answer{Text: "Read."}, nil
	}, p)
}

func readCurrent(in *weave.Inputs) { _ = weave.In[units.Current](in, "current") }

// change returns the input current, changed.
func change(by func(*weave.Input)) weave.Input {
	p := current
	by(&p)
	return p
}

type mistake struct {
	name    string
	chapter weave.Chapter
	block   string // as the error calls it
	want    string // in its message
}

// check weaves the chapter of every mistake.
func check(t *testing.T, mistakes []mistake) {
	t.Helper()
	for _, m := range mistakes {
		w, err := weave.Weave(m.chapter)
		if err == nil || w != nil {
			t.Errorf("%s: woven, want an error", m.name)
			continue
		}
		if !reports(err, m) {
			t.Errorf("%s: %v; want %s of %q", m.name, err, m.want, m.block)
		}
	}
}

// reports reports whether err is, or has joined in it, the error of m.
func reports(err error, m mistake) bool {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range joined.Unwrap() {
			if reports(e, m) {
				return true
			}
		}
		return false
	}
	var e *weave.Error
	return errors.As(err, &e) && e.Chapter == m.chapter.Topic && e.Block == m.block &&
		strings.HasPrefix(e.Error(), "chapter "+m.chapter.Topic+": "+m.block) && strings.Contains(e.Error(), m.want)
}

func TestMistakesInChapters(t *testing.T) {
	prose := weave.Prose("Hello.")
	edit := func(by func(*weave.Chapter)) weave.Chapter {
		c := chapter(prose)
		by(&c)
		return c
	}
	source := func(text string) weave.Chapter {
		return edit(func(c *weave.Chapter) { c.Source = fstest.MapFS{"a.go": {Data: []byte(text)}} })
	}
	check(t, []mistake{
		{"topic", edit(func(c *weave.Chapter) { c.Topic = "Not a folder" }), "", `topic "Not a folder"`},
		{"title", edit(func(c *weave.Chapter) { c.Title = " " }), "", "no Title"},
		{"question", edit(func(c *weave.Chapter) { c.Question = "" }), "", "no Question"},
		{"blocks", edit(func(c *weave.Chapter) { c.Blocks = nil }), "", "no Blocks"},
		{"nil block", chapter(nil), "block 1", "no block"},
		{"source", edit(func(c *weave.Chapter) { c.Source = nil }), "", "no Source"},
		{"empty source", source("package a"), "", "declares no function"},
		{"broken source", source("package a\nfunc {"), "", "a.go:2:6"},
		{"unused solve function", chapter(with(solveCurrent, current)), "", `no block has the solve function "solveBadCheck"`},
		{"unused value", chapter(weave.Numbers{Name: "two", Solve: solveTwoValues}, weave.Prose("{{two.a}}")),
			`numbers "two"`, `nothing prints the value "b"`},
		{"two of a name", chapter(with(solveCurrent, current), weave.Numbers{Name: "it", Solve: solveTwoValues}),
			`numbers "it"`, "another block has the same name"},
	})
}

func TestMistakesInProse(t *testing.T) {
	prose := func(s string) weave.Chapter { return chapter(weave.Prose(s), with(solveCurrent, current)) }
	check(t, []mistake{
		{"empty", prose(" \n"), "prose, block 1", "the text is empty"},
		{"unknown block", prose("{{that.i}}"), "prose, block 1", `no example "that"; there are it`},
		{"unknown value", prose("{{it.j}}"), "prose, block 1", `no value or input "j"; there are current, i`},
		{"no block", prose("{{i}}"), "prose, block 1", "want {{example.i}}"},
		{"empty name", prose("{{}}"), "prose, block 1", "placeholder {{}}, want"},
		{"spaces", prose("{{ it.i }}"), "prose, block 1", "placeholder {{ it.i }}, want"},
		{"half a placeholder", prose("{{it.i}"), "prose, block 1", "belong around a name"},
		{"title level", prose("# One"), "prose, block 1", `heading "One" has level 1, want 2 to 2`},
		{"skipped level", prose("## One\n\n#### Two"), "prose, block 1", `heading "Two" has level 4, want 2 to 3`},
		{"HTML block", prose("<div>\n</div>"), "prose, block 1", "HTML in prose"},
		{"HTML", prose("a <b>c</b>"), "prose, block 1", "HTML in prose"},
		{"image", prose("![a](b.png)"), "prose, block 1", "an image in prose"},
		{"dollar", prose("It costs $5."), "prose, block 1", `write \$`},
		{"wide code", prose("```\n" + strings.Repeat("x", 69) + "\n```"), "prose, block 1", "69 columns, want at most 68"},
		{"caution", chapter(weave.Caution{}), "caution, block 1", "Text: the text is empty"},
		{"heading in a caution", chapter(weave.Caution{Text: "## No"}), "caution, block 1", `heading "No", want none here`},
	})
}

func TestMistakesInFormulas(t *testing.T) {
	voltage := []weave.Symbol{
		{Name: "V", Unit: "V", What: "voltage"},
		{Name: "I", Unit: "A", What: "current"},
		{Name: "R", Unit: "ohm", What: "resistance"},
	}
	formula := func(where []weave.Symbol, equations ...string) weave.Chapter {
		return chapter(weave.Formula{Equations: equations, Where: where})
	}
	check(t, []mistake{
		{"none", formula(voltage), "formula, block 1", "no equation"},
		{"no comparison", formula(voltage, "I * R"), "formula, block 1", "has no =, < or >"},
		{"syntax", formula(voltage, "V = I ^ R"), "formula, block 1", "pow(x, y)"},
		{"two signs", formula(voltage, "V = I = R"), "formula, block 1", "="},
		{"not explained", formula(voltage[:2], "V = I * R"), "formula, block 1", `symbol "R" is not explained`},
		{"explained, not used", formula(voltage, "V = I"), "formula, block 1", `symbol "R" is explained but not used`},
		{"explained twice", formula(append(voltage, voltage[0]), "V = I * R"), "formula, block 1", "explained twice"},
		{"empty", formula([]weave.Symbol{{Name: "V"}}, "V = 1"), "formula, block 1", `symbol "V" is not explained`},
		{"no symbol", formula([]weave.Symbol{{Name: "V %", What: "x"}}, "V = 1"), "formula, block 1", `symbol "V %"`},
		{"wide", formula([]weave.Symbol{{Name: "V", What: "x"}}, "V = 1"+strings.Repeat(" + 1", 17)), "formula, block 1", "more than 68 columns"},
	})
}

func TestMistakesInDeclarations(t *testing.T) {
	example := `worked example "it"`
	input := func(by func(*weave.Input)) weave.Chapter { return chapter(reading(change(by), readCurrent)) }
	check(t, []mistake{
		{"name", input(func(p *weave.Input) { p.Name = "Current" }), example, `input name "Current"`},
		{"label", input(func(p *weave.Input) { p.Label = "" }), example, `input "current" has no Label`},
		{"default", input(func(p *weave.Input) { p.Default = "" }), example, `input "current" has no Default`},
		{"twice", chapter(with(solveCurrent, current, current)), example, `input "current" is declared twice`},
		{"no unit", input(func(p *weave.Input) { p.Unit = "" }), example, `input "current" is read by In and so needs Unit`},
		{"no range", input(func(p *weave.Input) { p.High = "" }), example, "needs Unit, Low and High"},
		{"choices", input(func(p *weave.Input) { p.Choices = []string{"5 A"} }), example, "no Choices"},
		{"low end", input(func(p *weave.Input) { p.Low = "1 V" }), example, `range of input "current": parsing "1 V"`},
		{"high end", input(func(p *weave.Input) { p.High = "much" }), example, `range of input "current": parsing "much"`},
		{"other unit", input(func(p *weave.Input) { p.Unit = "V" }), example, `input "current": parsing "V"`},
		{"default out of range", input(func(p *weave.Input) { p.Default = "11 A" }), example, "current = 11 A, want 1 A to 10 A"},
		{"default no current", input(func(p *weave.Input) { p.Default = "five" }), example, "current = five, want 1 A to 10 A"},
		{"not declared", chapter(reading(change(func(p *weave.Input) { p.Name = "other" }), readCurrent)),
			example, `reads input "current", which is not declared`},
		{"not declared, by any getter", chapter(reading(current, func(in *weave.Inputs) {
			if weave.Count(in, "n") != 0 || weave.Text(in, "t") != "" || weave.Temperature(in, "c").IsSet() {
				panic("a getter that fails returns the zero value")
			}
		})), example, `input "t"`},
		{"not read", chapter(reading(current, func(*weave.Inputs) {})), example, `does not read "current"`},
		{"count with a unit", chapter(reading(current, func(in *weave.Inputs) { weave.Count(in, "current") })),
			example, "is read by Count and so needs"},
		{"text with a range", chapter(reading(current, func(in *weave.Inputs) { weave.Text(in, "current") })),
			example, "is read by Text or Parsed and so needs"},
		{"none", chapter(with(solveNothing)), example, "no Title or no Inputs"},
	})
}

func TestMistakesInExamples(t *testing.T) {
	example := `worked example "it"`
	edit := func(by func(*weave.Worked)) weave.Chapter {
		w := with(solveCurrent, current)
		by(&w)
		return chapter(w)
	}
	closure := func(in *weave.Inputs) (weave.Answer, error) { return solveCurrent(in) }
	missing := chapter(with(solveCurrent, current))
	missing.Source = fstest.MapFS{"mistakes_test.go": {Data: []byte("package a\nfunc f() {}")}}
	stale := chapter(with(solveCurrent, current))
	stale.Source = fstest.MapFS{"mistakes_test.go": {Data: []byte("package a\nfunc solveCurrent() {}")}}
	check(t, []mistake{
		{"name", edit(func(w *weave.Worked) { w.Name = "It is" }), `worked example "It is"`, `name "It is", want`},
		{"title", edit(func(w *weave.Worked) { w.Title = "" }), example, "no Title"},
		{"question", edit(func(w *weave.Worked) { w.Question = "" }), example, "Question: the text is empty"},
		{"solve", edit(func(w *weave.Worked) { w.Solve = nil }), example, "no Solve"},
		{"closure", edit(func(w *weave.Worked) { w.Solve = closure }), example, "want a function, no closure"},
		{"not in the source", missing, example, "the solve function is solveCurrent, which the chapter does not declare"},
		{"another source", stale, example, "but the Source has solveCurrent at mistakes_test.go:2"},
		{"helper", edit(func(w *weave.Worked) { w.Helpers = []string{"nobody"} }), example, `no function "nobody"; there are TestBadDefault, `},
		{"wide helper", edit(func(w *weave.Worked) { w.Helpers = []string{"solveWide"} }), example, "want at most 68"},
		{"wide code", chapter(with(solveWide, current)), example, "columns, want at most 68"},
		{"its error", chapter(with(func(in *weave.Inputs) (weave.Answer, error) {
			return weave.Answer{}, errors.New("no solution")
		}, current)), example, "no solution"},
	})
}

func TestMistakesInAnswers(t *testing.T) {
	example := `worked example "it"`
	value := func(v ...weave.Value) weave.Chapter {
		return chapter(answering(weave.Answer{Text: "It is.", Values: v}))
	}
	sheet := working.NewSheet("wrong")
	sheet.Formula("V", 12*units.Volt, "V", "voltage", "I * R")
	check(t, []mistake{
		{"unit", value(weave.Show("v", 12*units.Volt, "A", 3)), example, `value "v": parsing "A" as a unit of voltage`},
		{"nil", value(weave.Show("v", nil, "A", 3)), example, `value "v": no quantity given`},
		{"no plain quantity", value(weave.Show("v", struct{ units.Voltage }{}, "V", 3)), example, "is not a plain quantity"},
		{"no temperature", value(weave.Show("t", units.Temperature{}, "°C", 3)), example, `value "t": temperature not given`},
		{"infinite", value(weave.Show("v", units.Voltage(math.Inf(1)), "V", 3)), example, "is not finite"},
		{"no digits", value(weave.Show("v", 12*units.Volt, "V", 0)), example, "0 significant digits, want 1 to 6"},
		{"digits", value(weave.Show("v", 12*units.Volt, "V", 7)), example, "7 significant digits, want 1 to 6"},
		{"name", value(weave.Say("the value", 1)), example, `value name "the value"`},
		{"twice", value(weave.Say("a", 1), weave.Say("a", 2)), example, `two values or inputs are named "a"`},
		{"as the input", value(weave.Say("current", 1)), example, `two values or inputs are named "current"`},
		{"empty value", value(weave.Say("a", " ")), example, `value "a" is empty`},
		{"working", chapter(answering(weave.Answer{Text: "It is.", Working: sheet})), example, `working "wrong", step 1 (V)`},

		// Of blocks without inputs, whose code must exist.
		{"no text", chapter(weave.Misconception{Name: "it", Claim: "It is", Solve: solveTwoValues}),
			`misconception "it"`, "Text of the answer: the text is empty"},
		{"unknown value", chapter(weave.Misconception{Name: "it", Claim: "It is", Solve: solveUnknownValue}),
			`misconception "it"`, `no value or input "missing"; there is none`},
		{"check", chapter(weave.Misconception{Name: "it", Claim: "It is", Solve: solveBadCheck}), `misconception "it"`, `row "it"`},
		{"figure", chapter(weave.Misconception{Name: "it", Claim: "It is", Solve: solveBadFigure}), `misconception "it"`, `figure "UPPER"`},
		{"no claim", chapter(weave.Misconception{Name: "it", Solve: solveNothing}), `misconception "it"`, "no Claim"},
		{"no number", chapter(weave.Misconception{Name: "it", Claim: "It is dry", Solve: solveWord}),
			`misconception "it"`, "no value made by Show"},
		{"numbers that say something", chapter(weave.Numbers{Name: "it", Solve: solveNothing}), `numbers "it"`, "prints nothing"},
		{"exercise without its input", chapter(weave.Exercise{Name: "it", Question: "What?", Inputs: []weave.Input{current}, Solve: solveCurrent}),
			`exercise "it"`, "does not mention {{current}}"},
		{"exercise without question", chapter(weave.Exercise{Name: "it", Solve: solveNothing}), `exercise "it"`, "Question: the text is empty"},
		{"exercise with a wrong answer", chapter(weave.Exercise{Name: "it", Question: "What?", Solve: solveBadCheck}), `exercise "it"`, `row "it"`},
	})
}

func TestMistakesInFigures(t *testing.T) {
	one := weave.Figure{Name: "one", Caption: "One.", Draw: lossChart}
	edit := func(by func(*weave.Figure)) weave.Chapter {
		f := one
		by(&f)
		return chapter(f)
	}
	noChart := func() (figure.Chart, error) { return figure.Chart{}, errors.New("no data") }
	badBars := func() (figure.Bars, error) { return figure.Bars{}, nil }
	two := one
	two.Name = "two"
	check(t, []mistake{
		{"name", edit(func(f *weave.Figure) { f.Name = "../one" }), `figure "../one"`, `figure name "../one"`},
		{"nothing to draw", edit(func(f *weave.Figure) { f.Draw = nil }), `figure "one"`, "want one of Draw and Bars"},
		{"two to draw", edit(func(f *weave.Figure) { f.Bars = lossBars }), `figure "one"`, "want one of Draw and Bars"},
		{"caption", edit(func(f *weave.Figure) { f.Caption = "" }), `figure "one"`, "Caption: the text is empty"},
		{"its error", edit(func(f *weave.Figure) { f.Draw = noChart }), `figure "one"`, "no data"},
		{"not drawn", edit(func(f *weave.Figure) { f.Draw, f.Bars = nil, badBars }), `figure "one"`, "figure.Bars"},
		{"two of a name", chapter(one, one), `figure "one"`, "another figure has the same name"},
		{"two alike", chapter(one, two), `figure "two"`, "the same title and description"},
	})
}

func TestMistakesInTables(t *testing.T) {
	good := weave.Row{What: "it", Ours: 5 * units.Volt, Printed: units.MustPrinted("5.0", "V"), Source: handbook}
	table := func(by func(*weave.Row)) weave.Chapter {
		r := good
		by(&r)
		return chapter(weave.Table{Title: "T", Rows: func() ([]weave.Row, error) { return []weave.Row{r}, nil }})
	}
	texts := func(r *weave.Row) {
		r.Ours, r.Printed, r.OursText, r.PrintedText = nil, units.Printed{}, "8 AWG", "6 AWG"
	}
	rows := func(rows []weave.Row, err error) weave.Chapter {
		return chapter(weave.Table{Title: "T", Rows: func() ([]weave.Row, error) { return rows, err }})
	}
	within := func(width, printed string) func(*weave.Row) {
		return func(r *weave.Row) {
			r.Within, r.Why, r.Printed = width, "because", units.MustPrinted(printed, "V")
		}
	}
	block := `table "T"`
	check(t, []mistake{
		{"title", chapter(weave.Table{Rows: printedLosses}), `table ""`, "no Title"},
		{"rows", chapter(weave.Table{Title: "T"}), block, "no Rows"},
		{"no row", rows(nil, nil), block, "no row"},
		{"its error", rows(nil, errors.New("no data")), block, "no data"},
		{"what", table(func(r *weave.Row) { r.What = "" }), block, "a row has no What"},
		{"source", table(func(r *weave.Row) { r.Source = working.Source{} }), block, "no Source"},
		{"provenance", table(func(r *weave.Row) { r.Source.Provenance = working.Unstated }), block, "without provenance"},
		{"nothing printed", table(func(r *weave.Row) { r.Printed = units.Printed{} }), block, "nothing printed"},
		{"nothing computed", table(func(r *weave.Row) { r.Ours = nil }), block, "no quantity given"},
		{"unit", table(func(r *weave.Row) { r.Printed = units.MustPrinted("5.0", "A") }), block, `parsing "A"`},
		{"no unit", table(func(r *weave.Row) { r.Printed = units.MustPrinted("5.0", "") }), block, `parsing "1"`},
		// Half of the last digit of 5.0 V is 0.05 V.
		{"differs", table(func(r *weave.Row) { r.Ours = 5.06 * units.Volt }), block, "ours is 5.06 V, print has 5.0 V"},
		{"needless reason", table(func(r *weave.Row) { r.Ours, r.Differs = 5.05*units.Volt, "why" }), block, "Differs is not needed"},
		{"needless width", table(within("1 %", "5.0")), block, "Within is not needed"},
		{"width without reason", table(func(r *weave.Row) { r.Within = "1 %" }), block, "Within and Why go together"},
		{"width and difference", table(func(r *weave.Row) { r.Within, r.Why, r.Differs = "1 %", "b", "c" }), block, "either Within or Differs"},
		{"no width", table(within("wide", "5.2")), block, `"wide"`},
		{"width of another unit", table(within("1 A", "5.2")), block, "is not in V"},
		// 3.8 % of 5.2 V is 0.1976 V and 3.9 % is 0.2028 V.
		{"outside the width", table(within("3.8 %", "5.2")), block, "ours is 5.00 V, print has 5.2 V"},
		{"texts differ", table(texts), block, "ours is 8 AWG, print has 6 AWG"},
		{"number and text", table(func(r *weave.Row) { r.OursText = "5" }), block, "both numbers and texts"},
		{"one text", table(func(r *weave.Row) { texts(r); r.PrintedText = "" }), block, "one of OursText and PrintedText is empty"},
		{"width of a text", table(func(r *weave.Row) { texts(r); r.Within, r.Why = "1 %", "b" }), block, "a text has no Within"},
	})
}

// A failing getter gives the zero value, so what fails behind it is no news:
// the error is about the input.
func TestInputErrorComesFirst(t *testing.T) {
	_, err := weave.Weave(chapter(with(func(in *weave.Inputs) (weave.Answer, error) {
		_ = weave.In[units.Current](in, "current")
		return weave.Answer{}, errors.New("current is 0 A")
	}, change(func(p *weave.Input) { p.Default = "90 A" }))))
	var refused *weave.InputError
	if !errors.As(err, &refused) || strings.Contains(err.Error(), "current is 0 A") {
		t.Errorf("%v, want an InputError alone", err)
	}
}
