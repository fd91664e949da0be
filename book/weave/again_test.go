package weave_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

// solveShort has no answer for what takes more than 6 A.
func solveShort(in *weave.Inputs) (weave.Answer, error) {
	i := weave.In[units.Current](in, "current")
	few := units.Between(0*units.Ampere, 6*units.Ampere)
	if err := few.Check("short", "Current", i); err != nil {
		return weave.Answer{}, err
	}
	return answer(weave.Show("x", i, "A", 3))
}

// answer returns one that shows x.
func answer(x weave.Value) (weave.Answer, error) {
	return weave.Answer{Text: "It is {{x}}.", Values: []weave.Value{x}}, nil
}

// solveBroken never has an answer.
func solveBroken(in *weave.Inputs) (weave.Answer, error) {
	i := weave.In[units.Current](in, "current")
	return weave.Answer{}, units.Above(10*units.Ampere).Check("broken", "Current", i)
}

func TestNoAnswer(t *testing.T) {
	c := chapter(with(solveShort, current)) // 5 A, 1 A to 10 A
	tests := []struct {
		chapter weave.Chapter
		value   string
		want    string // in the error; empty for an answer
		asked   bool   // it is about the inputs
	}{
		{c, "6 A", "", false},
		{c, "7 A", `chapter wrong: worked example "it": these inputs have no answer: short: Current = 7 A, want 0 A to 6 A`, true},
		{c, "11 A", "current = 11 A, want 1 A to 10 A", false},
		// Nothing is changed: the chapter is wrong.
		{chapter(with(solveBroken, current)), "5000 mA", `worked example "it": broken: Current = 5 A`, false},
	}
	for _, tt := range tests {
		_, err := weave.WeaveExample(tt.chapter, "it", []weave.Setting{{Input: "current", Value: tt.value}})
		if tt.want == "" {
			if err != nil {
				t.Errorf("%s: %v", tt.value, err)
			}
			continue
		}
		if !errors.Is(err, units.ErrRange) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %q", tt.value, err, tt.want)
		}
		if _, ok := errors.AsType[*weave.NoAnswerError](err); ok != tt.asked {
			t.Errorf("%s: %T is a NoAnswerError: %v, want %v", tt.value, err, ok, tt.asked)
		}
	}
}

// A solve function that fails before it has read what was changed fails for
// the change, as far as one can tell.
func TestNoAnswerBeforeReading(t *testing.T) {
	c := chapter(with(func(*weave.Inputs) (weave.Answer, error) {
		return weave.Answer{}, errors.New("too early")
	}, current))
	_, err := weave.WeaveExample(c, "it", []weave.Setting{{Input: "current", Value: "6 A"}})
	if _, ok := errors.AsType[*weave.NoAnswerError](err); !ok {
		t.Errorf("%v, want a NoAnswerError", err)
	}
}

// A default out of range is a mistake of the chapter, whatever is set.
func TestBadDefault(t *testing.T) {
	size := weave.Input{Name: "size", Label: "size", Default: "wide"}
	count := weave.Input{Name: "n", Label: "number", Default: "9", Low: "1", High: "4"}
	for _, tt := range []struct {
		worked weave.Worked
		set    weave.Setting
		want   string
	}{
		{with(solveCurrent, change(func(p *weave.Input) { p.Default = "11 A" })), weave.Setting{Input: "current", Value: "5 A"},
			`default of input "current", 11 A: `},
		{with(solveCurrent, change(func(p *weave.Input) { p.Default = "eleven" })), weave.Setting{Input: "current", Value: "5 A"},
			`default of input "current", eleven: `},
		{reading(count, func(in *weave.Inputs) { _ = weave.Count(in, "n") }), weave.Setting{Input: "n", Value: "2"}, `default of input "n", 9: `},
		{with(solveSize, size), weave.Setting{Input: "size", Value: "2.5"}, `default of input "size", wide: `},
	} {
		_, err := weave.WeaveExample(chapter(tt.worked), "it", []weave.Setting{tt.set})
		_, refused := errors.AsType[*weave.InputError](err)
		if err == nil || refused || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s = %s: %v, want %q", tt.set.Input, tt.set.Value, err, tt.want)
		}
	}
}

// The hint shows another value than the default, and one that has an answer.
func TestHint(t *testing.T) {
	count := weave.Input{Name: "n", Label: "number", Default: "2", Low: "1", High: "4"}
	most := count
	most.Default = "4"
	metal := weave.Input{Name: "metal", Label: "metal", Default: "75 °C", Unit: "°C", Low: "-40 °C", High: "105 °C"}
	kind := weave.Input{Name: "kind", Label: "kind", Default: "dry", Choices: []string{"damp", "dry", "wet"}}
	text := weave.Input{Name: "kind", Label: "kind", Default: "dry"}
	tests := []struct {
		name   string
		worked weave.Worked
		set    []weave.Setting
		want   string
	}{
		// Half as much again, or halfway to the end if that is nearer.
		{"quantity", with(solveCurrent, current), nil, `current="7.5 A"`},
		{"near the end", with(solveCurrent, change(func(p *weave.Input) { p.Default = "9 A" })), nil, `current="9.5 A"`},
		{"at the end", with(solveCurrent, change(func(p *weave.Input) { p.Default = "10 A" })), nil, `current="1 A"`},
		{"below zero", with(solveCurrent, change(func(p *weave.Input) { p.Default, p.Low = "-2 A", "-4 A" })), nil, `current="4 A"`},
		{"no answer above", with(solveShort, current), nil, `current="1 A"`},
		{"temperature", with(solveMetal, metal), nil, `metal="90 °C"`},
		{"count", with(solveN, count), nil, `n="3"`},
		{"count at the end", with(solveN, most), nil, `n="1"`},
		{"choice", with(solveKind, kind), nil, `kind="wet"`},
		{"last choice", with(solveKind, withDefault(kind, "wet")), nil, `kind="damp"`},
		// A text is anything: the next input has other values.
		{"text, then quantity", with(solveKindAndCurrent, text, current), nil, `current="7.5 A"`},
		{"text alone", with(solveKind, text), nil, `kind="dry"`},
		// Not what is shown already.
		{"set to it", with(solveCurrent, current), []weave.Setting{{Input: "current", Value: "7.5 A"}}, `current="10 A"`},
	}
	for _, tt := range tests {
		w, err := weave.WeaveExample(chapter(tt.worked), "it", tt.set)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
			continue
		}
		if want := "-example it \\\n    -set " + tt.want + "\n"; !strings.Contains(w.Markdown(), want) {
			t.Errorf("%s: want %s in\n%s", tt.name, want, w.Markdown())
		}
	}
}

func withDefault(p weave.Input, value string) weave.Input {
	p.Default = value
	return p
}

func solveMetal(in *weave.Inputs) (weave.Answer, error) {
	metal := weave.Temperature(in, "metal")
	return answer(weave.Show("x", metal, "°C", 3))
}

func solveN(in *weave.Inputs) (weave.Answer, error) {
	return answer(weave.Say("x", weave.Count(in, "n")))
}

func solveKind(in *weave.Inputs) (weave.Answer, error) {
	return weave.Answer{Text: weave.Text(in, "kind") + "."}, nil
}

func solveKindAndCurrent(in *weave.Inputs) (weave.Answer, error) {
	if _, err := solveKind(in); err != nil {
		return weave.Answer{}, err
	}
	return solveCurrent(in)
}
