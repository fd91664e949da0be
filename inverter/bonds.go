package inverter

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

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
	Source string      // the one active
	Bonds  int         // of Places, closed
	Places []BondPlace // all there are, in the order given
}

// Bonding returns how many neutral-ground bonds there are with each of the
// sources active, in their order. There must be exactly one, at the active
// source. None leaves a first fault undetected; a second makes ground wire and
// frame a parallel neutral. They are three different findings.
//
// It counts what is described. A bond nobody knows of is found by measuring.
//
// No source, an empty name, a name given twice, and a bond with a source that
// is none of them, give a [*units.RangeError] and no result.
func Bonding(sources []string, bonds []Bond) ([]BondCount, error) {
	const op = "inverter.Bonding"
	if err := checkSources(op, sources); err != nil {
		return nil, err
	}
	for i, b := range bonds {
		if err := checkName(op, at("bonds", i)+".Name", b.Name); err != nil {
			return nil, err
		}
		if slices.ContainsFunc(bonds[:i], func(c Bond) bool { return c.Name == b.Name }) {
			return nil, &units.RangeError{Op: op, Field: at("bonds", i) + ".Name", Value: b.Name, Allowed: allowed("a name that no other bond has")}
		}
		if err := checkWith(op, at("bonds", i), b.With, sources); err != nil {
			return nil, err
		}
	}
	counts := make([]BondCount, len(sources))
	for i, source := range sources {
		c := BondCount{Source: source, Places: make([]BondPlace, len(bonds))}
		for j, b := range bonds {
			c.Places[j] = BondPlace{Name: b.Name, Closed: isWith(b.With, source)}
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
	s := working.NewSheet("Neutral-ground bonds with " + c.Source + " active")
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
	switch {
	case c.Bonds <= 0:
		return []working.Finding{{
			Severity: working.Caution, Rule: "no-neutral-bond", Source: necGenerator,
			Message: "With " + c.Source + " active neutral and ground are joined nowhere: a first fault to the frame trips nothing, and the next one shocks.",
			Fix:     "Have one bond made at this source, as its maker provides for it.",
		}}
	case c.Bonds == 1:
		return []working.Finding{{
			Severity: working.Note, Rule: "one-neutral-bond", Source: necNeutral,
			Message: "With " + c.Source + " active neutral and ground are joined once as described, at: " + strings.Join(c.closed(), ", ") + ".",
			Fix:     "Measure it: a bond that nobody described does not show here.",
		}}
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "several-neutral-bonds", Source: necNeutral,
		Message: "With " + c.Source + " active neutral and ground are joined " + strconv.Itoa(c.Bonds) + " times, at: " + strings.Join(c.closed(), ", ") +
			". Ground wire and frame carry load current as a parallel neutral, and ground-fault protection trips or is defeated.",
		Fix: "Remove every bond but the one at the active source; a licensed electrician does it.",
	}}
}
