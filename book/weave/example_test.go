package weave_test

import (
	"embed"
	"errors"
	"fmt"
	"strings"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

//go:embed example_test.go
var exampleSource embed.FS

// fuse is a chapter with one example.
func fuse() weave.Chapter {
	return weave.Chapter{
		Topic: "fuse", Title: "Fuses", Question: "Does it carry the load?", Source: exampleSource,
		Blocks: []weave.Block{
			weave.Prose("The fan below takes {{fan.current}}."),
			weave.Worked{
				Name: "fan", Title: "A fan",
				Question: "What does a fan of {{power}} take?",
				Inputs: []weave.Input{
					{Name: "power", Label: "power of the fan", Default: "30 W", Unit: "W", Low: "1 W", High: "100 W"},
				},
				Solve: solveFan,
			},
		},
	}
}

func solveFan(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	i := power.At(12 * units.Volt)
	return weave.Answer{
		Text:   "It takes {{current}}.",
		Values: []weave.Value{weave.Show("current", i, "A", 3)},
	}, nil
}

func ExampleWeave() {
	w, err := weave.Weave(fuse())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(w.Text())
	// Output:
	// =====
	// Fuses
	// =====
	//
	// *Does it carry the load?*
	//
	// The fan below takes 2.5 A.
	//
	// A fan
	// -----
	//
	// What does a fan of 30 W take?
	//
	// Given             Value  Sensible range  Name
	// ----------------  -----  --------------  -----
	// power of the fan  30 W   1 W to 100 W    power
	//
	// *Answer.* It takes 2.5 A.
	//
	// The code that computed it:
	//
	//     func solveFan(in *weave.Inputs) (weave.Answer, error) {
	//         power := weave.In[units.Power](in, "power")
	//         i := power.At(12 * units.Volt)
	//         return weave.Answer{
	//             Text:   "It takes {{current}}.",
	//             Values: []weave.Value{weave.Show("current", i, "A", 3)},
	//         }, nil
	//     }
	//
	// To change an input and run it again:
	//
	//     go run ./book show fuse -example fan \
	//         -set power="45 W"
	//
	// Before you act on this chapter
	// ------------------------------
	//
	// +-- Caution --------------------------------------------------------------------
	// | These numbers are arithmetic on what was put in, not an inspection. The codes
	// | in force where the vehicle stands, and those who enforce them, decide; have a
	// | licensed electrician check the work before it is energised.
	// |
	// | A verdict compares one stated number with one computed number, and says which
	// | check it passed. It says nothing about workmanship, about parts that were not
	// | named, or about anything that was not checked.
	// +-------------------------------------------------------------------------------
}

func ExampleWeave_error() {
	c := fuse()
	c.Blocks[0] = weave.Prose("The fan below takes {{fan.curent}}.")
	_, err := weave.Weave(c)
	fmt.Println(err)
	// Output: chapter fuse: prose, block 1: no value or input "curent"; there are power, current
}

func ExampleWeaveExample() {
	w, err := weave.WeaveExample(fuse(), "fan", []weave.Setting{{Input: "power", Value: "0.06 kW"}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(w.Text()) {
		if strings.HasPrefix(line, "*Answer.*") {
			fmt.Print(line)
		}
	}
	// Output: *Answer.* It takes 5 A.
}

func ExampleInputError() {
	_, err := weave.WeaveExample(fuse(), "fan", []weave.Setting{{Input: "power", Value: "200 W"}})
	if refused, ok := errors.AsType[*weave.InputError](err); ok {
		fmt.Println(refused.Input, "may be", refused.Allowed)
	}
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// power may be 1 W to 100 W
	// true
}

func ExampleUnknownError() {
	_, err := weave.WeaveExample(fuse(), "van", nil)
	fmt.Println(err)
	// Output: chapter fuse: no example "van"; there are fan
}

func ExampleWoven_Files() {
	w, err := weave.Weave(fuse())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range w.Files() {
		fmt.Println(f.Name)
	}
	// Output: README.md
}

func ExampleContents() {
	fmt.Print(weave.Contents([]weave.Chapter{fuse()}))
	// Output: fuse  Does it carry the load?
}
