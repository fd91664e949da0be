package solar

import "example.com/drawbar/units"

// Strings is an array and the fuses in its strings, for what its conductors
// must carry.
type Strings struct {
	Rules RuleSet // needed
	Array Array   // Isc is needed; SeriesFuse if known
	// StringFuse is the fuse in each string, > 0. Not given means that none was
	// stated.
	StringFuse units.Opt[units.Current]
}

// Fusing says whether each string needs a fuse of its own.
type Fusing uint8

const (
	// FusingNotJudged means that the maximum series fuse of the panels is not
	// given.
	FusingNotJudged Fusing = iota
	// FusingNotNeeded means that what the other strings feed into one is not
	// above the maximum series fuse of its panels, or that there is only one.
	FusingNotNeeded
	// FusingNeeded means that it is above.
	FusingNeeded
)

// String returns "not judged", "not needed" or "fuse each string".
func (f Fusing) String() string {
	switch f {
	case FusingNotJudged:
		return "not judged"
	case FusingNotNeeded:
		return "not needed"
	case FusingNeeded:
		return "fuse each string"
	}
	return "unknown"
}

// A CircuitCurrents is the result of [Currents]. What is required of a
// conductor is so before its corrections for temperature and bundling, and the
// fuse is the standard rating not below it.
type CircuitCurrents struct {
	Strings        Strings       // as used
	ShortCircuit   units.Current // of all strings together
	Maximum        units.Current // 125 % of it
	Required       units.Current // 125 % of Maximum: for conductors and fuses behind the joint of the strings
	StringMaximum  units.Current // 125 % of the short-circuit current of one string
	StringRequired units.Current // 125 % of StringMaximum: for conductors and fuses of one string
	Backfeed       units.Current // what the other strings feed into one that is shorted
	Fusing         Fusing        // whether each string needs a fuse
}

// sunFactor is what bright sun may add to the short-circuit current, and
// continuousFactor what conductors and fuses need on top, since the sun shines
// for three hours or more. Source: NEC 690.8(A)(1) and 690.8(B), from memory.
const (
	sunFactor        units.Ratio = 1.25
	continuousFactor units.Ratio = 1.25
)

// Currents returns what the conductors and fuses of an array must carry, and
// whether its parallel strings need fuses:
//
//	I_max      = 1.25 · m · I_sc
//	I_required = 1.25 · I_max
//	I_back     = (m − 1) · 1.25 · I_sc
//
// for m strings. A fuse in each string is needed where I_back is above the
// maximum series fuse of the panels. The bank is left out of I_back: a
// controller that lets current back into its panels adds to it.
//
// A field outside the range that [Strings], [Array] and [Panel] state gives a
// [*units.RangeError] and the zero CircuitCurrents; so does a current that no
// float64 holds.
func Currents(x Strings) (CircuitCurrents, error) { return currents("solar.Currents", x) }

func currents(op string, x Strings) (CircuitCurrents, error) {
	if err := x.check(op); err != nil {
		return CircuitCurrents{}, err
	}
	isc := x.Array.Panel.Isc
	c := CircuitCurrents{Strings: x}
	c.ShortCircuit = units.Scale(isc, units.Ratio(x.Array.Parallel))
	c.Maximum = units.Scale(c.ShortCircuit, sunFactor)
	c.Required = units.Scale(c.Maximum, continuousFactor)
	c.StringMaximum = units.Scale(isc, sunFactor)
	c.StringRequired = units.Scale(c.StringMaximum, continuousFactor)
	c.Backfeed = units.Scale(c.StringMaximum, units.Ratio(x.Array.Parallel-1))
	if err := units.Above[units.Current](0).Check(op, "Required", c.Required); err != nil {
		return CircuitCurrents{}, err
	}
	label, ok := x.Array.Panel.SeriesFuse.Get()
	switch {
	case x.Array.Parallel == 1, ok && !units.Exceeds(c.Backfeed, label):
		c.Fusing = FusingNotNeeded
	case ok:
		c.Fusing = FusingNeeded
	}
	return c, nil
}

func (x Strings) check(op string) error {
	if err := x.Rules.check(op); err != nil {
		return err
	}
	if err := x.Array.Panel.checkCurrent(op); err != nil {
		return err
	}
	if err := checkCount(op, "Series", x.Array.Series); err != nil {
		return err
	}
	if err := checkCount(op, "Parallel", x.Array.Parallel); err != nil {
		return err
	}
	if fuse, ok := x.StringFuse.Get(); ok {
		return units.Above[units.Current](0).Check(op, "StringFuse", fuse)
	}
	return nil
}
