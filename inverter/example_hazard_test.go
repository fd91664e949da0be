package inverter_test

import (
	"fmt"

	"example.com/drawbar/inverter"
)

func ExampleMeetings() {
	inlet := []inverter.Guard{{Kind: inverter.OneInlet, Name: "shore inlet"}}
	meetings, err := inverter.Meetings([]inverter.Reach{
		{Source: "shore", Panel: "main panel", Guards: inlet},
		{Source: "portable generator", Panel: "main panel", Guards: inlet},
		{Source: "generator on the frame", Panel: "main panel"},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range meetings {
		fmt.Printf("%s and %s: %v\n", m.A, m.B, m.Kept)
	}
	fmt.Println(meetings[1].Findings()[0].Message)
	// Output:
	// shore and portable generator: kept apart
	// shore and generator on the frame: not stated
	// portable generator and generator on the frame: not stated
	// It is not stated what keeps shore and generator on the frame from feeding main panel at the same time.
}

func ExampleMeeting() {
	cord := []inverter.Guard{{Kind: inverter.NoGuard}} // a cord with pins at both ends
	meetings, err := inverter.Meetings([]inverter.Reach{
		{Source: "shore", Panel: "main panel", Guards: []inverter.Guard{{Kind: inverter.OneInlet, Name: "shore inlet"}}},
		{Source: "generator", Panel: "main panel", Guards: cord},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	var m inverter.Meeting = meetings[0]
	var kept inverter.Kept = m.Kept
	f := m.Findings()[0]
	fmt.Println(kept, "-", f.Severity, f.Rule)
	// Output: not kept apart - danger sources-not-kept-apart
}

func ExampleCarbonMonoxide() {
	var site inverter.Site
	if err := site.UnmarshalText([]byte("under a roof")); err != nil {
		fmt.Println(err)
		return
	}
	var x inverter.Exhaust
	x, err := inverter.CarbonMonoxide(inverter.Engine{Name: "the generator", Site: site})
	if err != nil {
		fmt.Println(err)
		return
	}
	f := x.Findings()[0]
	fmt.Println(f.Severity, f.Rule, f.Numbers)
	// Output: danger carbon-monoxide-gathers [from every opening 20 ft]
}
