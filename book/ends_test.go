package main_test

import (
	"embed"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	book "example.com/drawbar/book"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

// At both ends of the range of every input, and for every choice, each worked
// example and exercise of the book has an answer, or says readably that there
// is none.
func TestEnds(t *testing.T) {
	for _, c := range book.Chapters() {
		t.Run(c.Topic, func(t *testing.T) {
			t.Parallel()
			tried := 0
			for _, b := range c.Blocks {
				name, inputs := changeable(b)
				for _, p := range inputs {
					for _, value := range ends(p) {
						tried++
						if problem := try(c, name, weave.Setting{Input: p.Name, Value: value}); problem != "" {
							t.Errorf("-example %s -set %s=%q: %s", name, p.Name, value, problem)
						}
					}
				}
			}
			if tried == 0 {
				t.Error("the chapter has no input to change")
			}
		})
	}
}

// changeable returns the name and the inputs of a block that a reader may
// change.
func changeable(b weave.Block) (string, []weave.Input) {
	switch b := b.(type) {
	case weave.Worked:
		return b.Name, b.Inputs
	case weave.Exercise:
		return b.Name, b.Inputs
	}
	return "", nil
}

// ends returns the extremes of p, or all that it may be; nothing for a text.
func ends(p weave.Input) []string {
	if p.Low != "" {
		return []string{p.Low, p.High}
	}
	return p.Choices
}

// noNumber is what is printed for a number that is none; in code it has a
// dot before it.
var noNumber = regexp.MustCompile(`(?:^|[^.\w])(?:NaN|Inf)\b|%!`)

// try works an example and returns what is wrong with what comes out.
func try(c weave.Chapter, example string, set weave.Setting) (problem string) {
	defer func() {
		if e := recover(); e != nil {
			problem = fmt.Sprintf("panic: %v", e)
		}
	}()
	woven, err := weave.WeaveExample(c, example, []weave.Setting{set})
	if err != nil {
		_, asked := errors.AsType[*weave.NoAnswerError](err)
		_, inRange := errors.AsType[*units.RangeError](err)
		if !asked || !inRange || noNumber.MatchString(err.Error()) || strings.Contains(err.Error(), "\n") {
			return fmt.Sprintf("neither an answer nor a range error that says there is none: %v", err)
		}
		return ""
	}
	text := woven.HTML() // has the figures in it
	if at := noNumber.FindStringIndex(text); at != nil {
		return fmt.Sprintf("prints %q", text[max(0, at[0]-60):min(len(text), at[1]+60)])
	}
	return ""
}

//go:embed run_test.go ends_test.go
var endsSource embed.FS

// What the test above has to find.
func TestEndsFindProblems(t *testing.T) {
	const want = "neither an answer nor a range error"
	input := []weave.Input{{Name: "power", Label: "power", Default: "30 W", Unit: "W", Low: "1 W", High: "100 W"}}
	for _, tt := range []struct {
		name  string
		solve func(in *weave.Inputs) (weave.Answer, error)
		want  string
	}{
		{"answer", solveFan, ""},
		{"range", solveFused, ""},
		{"panic", solvePanic, "panic: no fan"},
		{"NaN", solveNaN, `prints "`},
		{"another error", solveVague, want},
		{"unreadable error", solveUnreadable, want},
		{"book", solveMissing, want},
	} {
		c := weave.Chapter{Topic: "fan", Title: "Fans", Question: "What?", Source: endsSource,
			Blocks: []weave.Block{weave.Worked{Name: "it", Title: "It", Question: "What?", Inputs: input, Solve: tt.solve}}}
		got := try(c, "it", weave.Setting{Input: "power", Value: "100 W"})
		if !strings.HasPrefix(got, tt.want) || (tt.want == "") != (got == "") {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

func isLarge(in *weave.Inputs) bool {
	return weave.In[units.Power](in, "power") > 50*units.Watt
}

func solvePanic(in *weave.Inputs) (weave.Answer, error) {
	if isLarge(in) {
		panic("no fan")
	}
	return weave.Answer{Text: "A fan."}, nil
}

func solveNaN(in *weave.Inputs) (weave.Answer, error) {
	if isLarge(in) {
		return weave.Answer{Text: "It takes NaN A."}, nil
	}
	return weave.Answer{Text: "A fan."}, nil
}

func solveVague(in *weave.Inputs) (weave.Answer, error) {
	if isLarge(in) {
		return weave.Answer{}, errors.New("too large")
	}
	return weave.Answer{Text: "A fan."}, nil
}

func solveUnreadable(in *weave.Inputs) (weave.Answer, error) {
	if isLarge(in) {
		err := &units.RangeError{Op: "fan", Field: "Power",
			Value: "NaN", Allowed: units.Above(0 * units.Watt)}
		return weave.Answer{}, err
	}
	return weave.Answer{Text: "A fan."}, nil
}

func solveMissing(in *weave.Inputs) (weave.Answer, error) {
	if isLarge(in) {
		return weave.Answer{Text: "{{missing}}"}, nil
	}
	return weave.Answer{Text: "A fan."}, nil
}
