package inverter

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Source is what can be active.
type Source struct {
	Name string // not empty
	// Earthed says that its neutral is tied to earth away from the rig, as a
	// utility's is at its transformer. A generator's or an inverter's floats
	// until it is bonded.
	Earthed bool
}

// A Bond is a place where neutral and ground are joined: at a campground's
// service, in a generator, by a relay of an inverter, by a screw in a panel, by
// a plug.
type Bond struct {
	Name string // not empty
	// With are the sources with which it joins the two, as seen from the rig:
	// a campground's bond counts with a generator too, if the transfer switch
	// leaves the neutral connected. Empty: with every source.
	With []string
}

// A BondPlace is a bond with one source active.
type BondPlace struct {
	Name   string // of the [Bond]
	Closed bool   // joins neutral and ground
}

// A BondCount is how often neutral and ground are joined with one source
// active.
type BondCount struct {
	Source Source      // the one active
	Bonds  int         // of Places, closed
	Places []BondPlace // all there are, in the order given
}

// Bonding returns how many neutral-ground bonds there are with each of the
// sources active, in their order. There must be exactly one, at the active
// source. A second makes ground wire and frame a parallel neutral, which is a
// danger at once. None leaves a first fault undetected: with a source that
// floats, the first fault passes no current, through a person neither, and it
// takes a second one to shock, so that is a caution; the code permits it of a
// portable generator for what is plugged into it (NEC 250.34(A)). With a source
// that is earthed elsewhere, the first fault already returns through soil and
// whoever stands on it, so that is a danger.
//
// It counts what is described. A bond nobody knows of is found by measuring.
//
// No source, an empty name, a name given twice, and a bond with a source that
// is none of them, give a [*units.RangeError] and no result.
func Bonding(sources []Source, bonds []Bond) ([]BondCount, error) {
	const op = "inverter.Bonding"
	names := make([]string, len(sources))
	for i, s := range sources {
		names[i] = s.Name
	}
	if err := checkSources(op, names); err != nil {
		return nil, err
	}
	for i, b := range bonds {
		if err := checkName(op, at("bonds", i)+".Name", b.Name); err != nil {
			return nil, err
		}
		if slices.ContainsFunc(bonds[:i], func(c Bond) bool { return c.Name == b.Name }) {
			return nil, &units.RangeError{Op: op, Field: at("bonds", i) + ".Name", Value: b.Name, Allowed: allowed("a name that no other bond has")}
		}
		if err := checkWith(op, at("bonds", i), b.With, names); err != nil {
			return nil, err
		}
	}
	counts := make([]BondCount, len(sources))
	for i, source := range sources {
		c := BondCount{Source: source, Places: make([]BondPlace, len(bonds))}
		for j, b := range bonds {
			c.Places[j] = BondPlace{Name: b.Name, Closed: isWith(b.With, source.Name)}
			if c.Places[j].Closed {
				c.Bonds++
			}
		}
		counts[i] = c
	}
	return counts, nil
}

// checkSources refuses a list of sources without or with unclear names.
func checkSources(op string, sources []string) error {
	if len(sources) == 0 {
		return &units.RangeError{Op: op, Field: "sources", Value: "none", Allowed: allowed("at least one source")}
	}
	for i, name := range sources {
		if err := checkName(op, at("sources", i), name); err != nil {
			return err
		}
		if slices.Contains(sources[:i], name) {
			return &units.RangeError{Op: op, Field: at("sources", i), Value: name, Allowed: allowed("a name that no other source has")}
		}
	}
	return nil
}

// checkWith refuses a source that nobody declared: a mistyped name would
// leave out a bond or a feed without a word.
func checkWith(op, field string, with, sources []string) error {
	for _, name := range with {
		if !slices.Contains(sources, name) {
			return &units.RangeError{Op: op, Field: field + ".With", Value: name, Allowed: allowed("one of " + strings.Join(sources, ", "))}
		}
	}
	return nil
}

// isWith reports whether a list of sources, where empty means all, has source.
func isWith(with []string, source string) bool {
	return len(with) == 0 || slices.Contains(with, source)
}

// closed returns the names of the bonds that count.
func (c BondCount) closed() (names []string) {
	for _, p := range c.Places {
		if p.Closed {
			names = append(names, p.Name)
		}
	}
	return names
}

// Working returns the count, place by place.
func (c BondCount) Working() *working.Sheet {
	s := working.NewSheet("Neutral-ground bonds with " + c.Source.Name + " active")
	var terms []string
	for i, p := range c.Places {
		n := units.Ratio(0)
		if p.Closed {
			n = 1
		}
		terms = append(terms, "n_"+strconv.Itoa(i+1))
		s.Given(terms[i], n, "1", p.Name+": 1 if it joins neutral and ground")
	}
	if len(terms) == 0 {
		s.Given("n", units.Ratio(c.Bonds), "1", "no place is described")
	} else {
		s.Formula("n", units.Ratio(c.Bonds), "1", "bonds", strings.Join(terms, " + "))
	}
	s.Test("exactly one", "n == 1", c.Bonds == 1)
	return s
}

// Findings returns the one finding of the count.
func (c BondCount) Findings() []working.Finding {
	f := working.Finding{Source: necNeutral, Numbers: []working.Number{
		{Name: "bonds", Value: units.Ratio(c.Bonds), Unit: "1"}, {Name: "wanted", Value: units.One, Unit: "1"}}}
	with, places := "With "+c.Source.Name+" active neutral and ground are joined ", strings.Join(c.closed(), ", ")
	switch {
	case c.Bonds <= 0 && c.Source.Earthed:
		f.Severity, f.Rule, f.Source = working.Danger, "no-bond-on-earthed-source", necEarth
		f.Message = with + "nowhere, and the neutral of this source is earthed elsewhere: a first fault makes the frame live, soil carries too little to trip a breaker, and whoever touches the frame closes the circuit."
		f.Fix = "Disconnect, and have the bond at the service and the ground wire to it found and mended by a licensed electrician."
	case c.Bonds <= 0:
		f.Severity, f.Rule, f.Source = working.Caution, "no-neutral-bond", necGenerator
		f.Message = with + "nowhere: a first fault to the frame trips nothing and shows nowhere, and the next one shocks. " +
			"The code permits that of a portable generator for what is plugged into it; the wiring of a rig counts on the bond."
		f.Fix = "Have one bond made at this source, as its maker provides for it."
	case c.Bonds == 1:
		f.Severity, f.Rule = working.Note, "one-neutral-bond"
		f.Message = with + "once as described, at: " + places + "."
		f.Fix = "Measure it: a bond that nobody described does not show here."
	default:
		f.Severity, f.Rule = working.Danger, "several-neutral-bonds"
		f.Message = with + strconv.Itoa(c.Bonds) + " times, at: " + places +
			". Ground wire and frame carry load current as a parallel neutral, and ground-fault protection trips or is defeated."
		f.Fix = "Remove every bond but the one at the active source; a licensed electrician does it."
	}
	return []working.Finding{f}
}
