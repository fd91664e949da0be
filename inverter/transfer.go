package inverter

import (
	"slices"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A GuardKind is what lets one source reach a panel and keeps others off. The
// zero value is no kind.
type GuardKind uint8

// The kinds of guards.
const (
	TransferSwitch GuardKind = iota + 1 // by hand or automatic, an inverter's transfer relay included: one position or the other
	Interlock                           // a bar between two breakers that lets one be on
	OneInlet                            // one inlet with one cord, which goes to one source at a time
	NoGuard                             // there is none: wired in, or plugged into an outlet with a cord that has pins at both ends
)

var guardWords = [...]string{"not stated", "transfer switch", "interlock", "one inlet", "none"}

// String returns "transfer switch", "interlock", "one inlet", "none" or "not
// stated"; a value that is not defined prints its number.
func (k GuardKind) String() string { return word(guardWords[:], "GuardKind", uint8(k)) }

// MarshalText returns what String does, and empty text for the zero value; a
// value that is not defined is a [*units.RangeError].
func (k GuardKind) MarshalText() ([]byte, error) {
	return marshalWord("inverter.GuardKind.MarshalText", "GuardKind", guardWords[:], k, uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *GuardKind) UnmarshalText(text []byte) error {
	i, err := unmarshalWord("what keeps sources apart", guardWords[:], text)
	if err == nil {
		*k = GuardKind(i)
	}
	return err
}

// A Guard is a device that a source passes on its way, and where in it.
type Guard struct {
	Kind GuardKind // not the zero value
	Name string    // of the device, such as "shore inlet"; not empty, but empty for NoGuard
	// Position is that of the device in which this source passes, such as
	// "line". Sources in different positions shut each other out, and sources
	// in one do not. Empty: a position of the source's own.
	Position string
}

// A Reach is a source that can feed a panel.
type Reach struct {
	Source string // not empty
	Panel  string // not empty
	// Guards are all that it passes. Empty: not stated. That nothing shuts it
	// out is a Guard of the kind NoGuard, alone.
	Guards []Guard
}

// A Kept says whether two sources are kept apart.
type Kept uint8

// What is known of two sources.
const (
	KeptNotStated Kept = iota // nothing is stated of how one of them reaches the panel
	KeptApart                 // a guard lets only one of them in
	NotKept                   // both can feed the panel at once
)

var keptWords = [...]string{"not stated", "kept apart", "not kept apart"}

// String returns "not stated", "kept apart" or "not kept apart"; a value that
// is not defined prints its number.
func (k Kept) String() string { return word(keptWords[:], "Kept", uint8(k)) }

// A Meeting is two sources that can reach one panel.
type Meeting struct {
	Panel  string    // that both reach
	A, B   string    // the sources
	Kept   Kept      // apart or not, or not stated
	By     string    // the guard that keeps them apart; empty if none does
	ByKind GuardKind // its kind
}

// Meetings returns each pair of sources that can reach one panel and whether a
// guard that both pass keeps them apart, in the order of reaches. Each panel is
// looked at by itself: to one behind an inverter's transfer relay the panel
// before it is a source, and so is the inverter.
//
// It goes by what is described. That a transfer switch works, or that nobody
// has a second cord, is for whoever looks at the rig.
//
// An empty name, a source given twice for one panel, a guard of no kind, one
// with the name of another kind, NoGuard beside others, and a source in two
// positions of one guard, give a [*units.RangeError] and no result. One source
// alone is no meeting.
func Meetings(reaches []Reach) ([]Meeting, error) {
	const op = "inverter.Meetings"
	kinds := map[string]GuardKind{}
	for i, r := range reaches {
		if err := r.check(op, at("reaches", i), kinds); err != nil {
			return nil, err
		}
		if slices.ContainsFunc(reaches[:i], func(o Reach) bool { return o.Source == r.Source && o.Panel == r.Panel }) {
			return nil, &units.RangeError{Op: op, Field: at("reaches", i) + ".Source", Value: r.Source, Allowed: allowed("a source that is not given for this panel already")}
		}
	}
	var list []Meeting
	for i, a := range reaches {
		for _, b := range reaches[i+1:] {
			if a.Panel == b.Panel {
				list = append(list, meet(a, b))
			}
		}
	}
	return list, nil
}

// check reports the first field of r out of range; kinds are those of the
// guards seen so far, by name.
func (r Reach) check(op, field string, kinds map[string]GuardKind) error {
	if err := firstError(checkName(op, field+".Source", r.Source), checkName(op, field+".Panel", r.Panel)); err != nil {
		return err
	}
	for i, g := range r.Guards {
		guard := field + "." + at("Guards", i)
		bad := func(name string, value any, want string) error {
			return &units.RangeError{Op: op, Field: guard + "." + name, Value: value, Allowed: allowed(want)}
		}
		known, seen := kinds[g.Name]
		switch {
		case g.Kind == 0 || int(g.Kind) >= len(guardWords):
			return bad("Kind", g.Kind, oneOf(guardWords[1:]))
		case g.Kind == NoGuard && len(r.Guards) > 1:
			return bad("Kind", g.Kind, "none as the only one of Guards")
		case g.Kind == NoGuard && g.Name+g.Position != "":
			return bad("Name", g.Name+g.Position, "no name and no position for none")
		case g.Kind == NoGuard:
			return nil
		case g.Name == "":
			return bad("Name", `""`, "a name")
		case seen && known != g.Kind:
			return bad("Kind", g.Kind, known.String()+", as before")
		case slices.ContainsFunc(r.Guards[:i], func(o Guard) bool { return o.Name == g.Name }):
			return bad("Name", g.Name, "a guard that this source does not pass already")
		}
		kinds[g.Name] = g.Kind
	}
	return nil
}

// meet returns what keeps two sources of one panel apart.
func meet(a, b Reach) Meeting {
	m := Meeting{Panel: a.Panel, A: a.Source, B: b.Source}
	for _, g := range a.Guards {
		for _, o := range b.Guards {
			if g.Kind != NoGuard && g.Name == o.Name && g.position(a.Source) != o.position(b.Source) {
				m.Kept, m.By, m.ByKind = KeptApart, g.Name, g.Kind
				return m
			}
		}
	}
	if a.unguarded() || b.unguarded() || len(a.Guards) > 0 && len(b.Guards) > 0 {
		m.Kept = NotKept
	}
	return m
}

// position returns where a source passes g.
func (g Guard) position(source string) string {
	if g.Position == "" {
		return source
	}
	return g.Position
}

// unguarded reports that it is stated that nothing shuts the source out.
func (r Reach) unguarded() bool { return len(r.Guards) == 1 && r.Guards[0].Kind == NoGuard }

// atOnce returns how many of the two can feed the panel at once.
func (m Meeting) atOnce() units.Ratio { return 2 - m.keptOut() }

// keptOut returns how many of the two a guard keeps out.
func (m Meeting) keptOut() units.Ratio {
	if m.Kept == KeptApart {
		return 1
	}
	return 0
}

// Working returns what keeps the two apart.
func (m Meeting) Working() *working.Sheet {
	s := working.NewSheet(m.A + " and " + m.B + " on " + m.Panel)
	reason := "nothing is stated of how one of them reaches the panel"
	switch m.Kept {
	case KeptApart:
		reason = m.By + " (" + m.ByKind.String() + ") lets only one of them in"
	case NotKept:
		reason = "no guard that both pass lets only one of them in"
	}
	s.Choose("the two", m.Kept.String(), reason, necTransfer)
	s.Given("n_reach", units.Ratio(2), "1", "sources that reach the panel")
	s.Given("n_out", m.keptOut(), "1", "of them that a guard keeps out; none where it is not stated")
	s.Formula("n", m.atOnce(), "1", "sources that can feed it at once", "n_reach - n_out")
	s.Test("no more than one", "n <= 1", m.Kept == KeptApart)
	return s
}

// Findings returns that both can feed the panel at once, or that this is not
// known; nothing if a guard keeps them apart.
func (m Meeting) Findings() []working.Finding {
	f := working.Finding{Source: necTransfer, Numbers: []working.Number{{Name: "sources that can feed it at once", Value: m.atOnce(), Unit: "1"}}}
	switch m.Kept {
	case KeptApart:
		return nil
	case NotKept:
		f.Severity, f.Rule = working.Danger, "sources-not-kept-apart"
		f.Message = m.A + " and " + m.B + " can feed " + m.Panel + " at the same time: the one drives current back into the other, which destroys a machine and can start a fire; " +
			"bare pins are live, and a wire that somebody has switched off to work on is live from the other end, out to the utility's line and whoever mends it."
		f.Fix = "Keep the second source off until a transfer switch or an interlock lets only one of them in; a licensed electrician fits it. Remembering to switch one off first does not count."
	default:
		f.Severity, f.Rule = working.Caution, "transfer-not-stated"
		f.Message = "It is not stated what keeps " + m.A + " and " + m.B + " from feeding " + m.Panel + " at the same time."
		f.Fix = "Look for the transfer switch, the interlock or the one inlet that both use, and state it; until then treat it as missing."
	}
	return []working.Finding{f}
}
