package inverter_test

import (
	"strings"
	"testing"

	"example.com/drawbar/inverter"
)

// guards of one kind, for a reach.
func guarded(kind inverter.GuardKind, name string) []inverter.Guard {
	return []inverter.Guard{{Kind: kind, Name: name}}
}

// cabin is a rig with each kind of guard, and one that is not known.
func cabin() []inverter.Reach {
	relay := func(position string) []inverter.Guard {
		return []inverter.Guard{{Kind: inverter.TransferSwitch, Name: "inverter relay", Position: position}}
	}
	return []inverter.Reach{
		{Source: "shore", Panel: "main", Guards: guarded(inverter.OneInlet, "shore inlet")},
		{Source: "portable generator", Panel: "main", Guards: guarded(inverter.OneInlet, "shore inlet")},
		{Source: "onboard generator", Panel: "main", Guards: []inverter.Guard{{Kind: inverter.NoGuard}}},
		{Source: "shore", Panel: "backed", Guards: relay("line")},
		{Source: "inverter", Panel: "backed", Guards: relay("inverter")},
		{Source: "sun inverter", Panel: "backed"},
	}
}

func TestMeetings(t *testing.T) {
	want := map[string]string{ // panel: sources
		"main: shore, portable generator":             "",
		"main: shore, onboard generator":              "sources-not-kept-apart",
		"main: portable generator, onboard generator": "sources-not-kept-apart",
		"backed: shore, inverter":                     "",
		"backed: shore, sun inverter":                 "transfer-not-stated",
		"backed: inverter, sun inverter":              "transfer-not-stated",
	}
	list := must[[]inverter.Meeting](t)(inverter.Meetings(cabin()))
	if len(list) != len(want) {
		t.Errorf("%d meetings, want %d", len(list), len(want))
	}
	for _, m := range list {
		rule, ok := want[m.Panel+": "+m.A+", "+m.B]
		if !ok {
			t.Errorf("meeting %+v", m)
		}
		if rule == "" {
			wantRules(t, m)
			if m.Kept != inverter.KeptApart || m.By == "" || m.ByKind == 0 {
				t.Errorf("apart, by nothing: %+v", m)
			}
			continue
		}
		wantRules(t, m, rule)
		if m.By != "" || m.ByKind != 0 {
			t.Errorf("not apart, by %+v", m)
		}
		if text := m.Findings()[0].Message; !strings.Contains(text, m.A) || !strings.Contains(text, m.B) || !strings.Contains(text, m.Panel) {
			t.Errorf("who meets where is not said: %s", text)
		}
	}
}

// TestTransferByRemoval takes each guard away and puts it back.
func TestTransferByRemoval(t *testing.T) {
	for _, kind := range []inverter.GuardKind{inverter.TransferSwitch, inverter.Interlock, inverter.OneInlet} {
		for _, c := range []struct {
			what string
			a, b []inverter.Guard
			want []string
		}{
			{"both pass it", guarded(kind, "x"), guarded(kind, "x"), nil},
			{"one is not stated", guarded(kind, "x"), nil, []string{"transfer-not-stated"}},
			{"neither is stated", nil, nil, []string{"transfer-not-stated"}},
			{"one has none", guarded(kind, "x"), guarded(inverter.NoGuard, ""), []string{"sources-not-kept-apart"}},
			{"one has none and one is not stated", nil, guarded(inverter.NoGuard, ""), []string{"sources-not-kept-apart"}},
			{"both have none", guarded(inverter.NoGuard, ""), guarded(inverter.NoGuard, ""), []string{"sources-not-kept-apart"}},
			// two cords into two inlets of one panel
			{"each has its own", guarded(kind, "x"), guarded(kind, "y"), []string{"sources-not-kept-apart"}},
			{"both in one position", []inverter.Guard{{Kind: kind, Name: "x", Position: "line"}}, []inverter.Guard{{Kind: kind, Name: "x", Position: "line"}},
				[]string{"sources-not-kept-apart"}},
			{"a second guard does", []inverter.Guard{{Kind: kind, Name: "x", Position: "line"}, {Kind: inverter.OneInlet, Name: "y"}},
				[]inverter.Guard{{Kind: kind, Name: "x", Position: "line"}, {Kind: inverter.OneInlet, Name: "y"}}, nil},
		} {
			for range 2 { // whoever comes first
				list := must[[]inverter.Meeting](t)(inverter.Meetings([]inverter.Reach{{Source: "a", Panel: "p", Guards: c.a}, {Source: "b", Panel: "p", Guards: c.b}}))
				t.Run(kind.String()+", "+c.what, func(t *testing.T) { wantRules(t, list[0], c.want...) })
				c.a, c.b = c.b, c.a
			}
		}
	}
	// On two panels they do not meet, and alone there is nobody to meet.
	for _, reaches := range [][]inverter.Reach{nil, {{Source: "a", Panel: "p"}}, {{Source: "a", Panel: "p"}, {Source: "b", Panel: "q"}}} {
		if list := must[[]inverter.Meeting](t)(inverter.Meetings(reaches)); list != nil {
			t.Errorf("%+v meet: %+v", reaches, list)
		}
	}
}

func TestReachesOutOfShape(t *testing.T) {
	inlet := inverter.Guard{Kind: inverter.OneInlet, Name: "inlet"}
	for _, c := range []struct {
		field string
		spoil func(r []inverter.Reach)
	}{
		{"reaches[1].Source", func(r []inverter.Reach) { r[1].Source = "" }},
		{"reaches[1].Panel", func(r []inverter.Reach) { r[1].Panel = "" }},
		{"reaches[1].Source", func(r []inverter.Reach) { r[1].Source = "shore" }},
		{"reaches[1].Guards[0].Kind", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{{Name: "x"}} }},
		{"reaches[1].Guards[0].Kind", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{{Kind: 5, Name: "x"}} }},
		{"reaches[1].Guards[0].Name", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{{Kind: inverter.Interlock}} }},
		{"reaches[1].Guards[0].Name", func(r []inverter.Reach) { r[1].Guards = guarded(inverter.NoGuard, "x") }},
		{"reaches[1].Guards[0].Name", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{{Kind: inverter.NoGuard, Position: "x"}} }},
		{"reaches[1].Guards[0].Kind", func(r []inverter.Reach) { r[1].Guards = guarded(inverter.Interlock, "inlet") }},
		{"reaches[1].Guards[1].Kind", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{inlet, {Kind: inverter.NoGuard}} }},
		{"reaches[1].Guards[1].Name", func(r []inverter.Reach) { r[1].Guards = []inverter.Guard{inlet, inlet} }},
	} {
		reaches := []inverter.Reach{{Source: "shore", Panel: "main", Guards: []inverter.Guard{inlet}}, {Source: "generator", Panel: "main", Guards: []inverter.Guard{inlet}}}
		c.spoil(reaches)
		got, err := inverter.Meetings(reaches)
		wantRangeError(t, err, "inverter.Meetings", c.field)
		if got != nil {
			t.Errorf("%s: result %+v", c.field, got)
		}
	}
}
