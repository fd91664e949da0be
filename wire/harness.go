package wire

import (
	"slices"

	"example.com/drawbar/units"
)

// A Network describes a direct-current harness: a row of batteries and a tree
// of branches that hangs on two of their posts. Give it to [NewHarness].
type Network struct {
	// Batteries stand in parallel, in the order of the row; one at least. A
	// bank known only by its voltage and resistance is one battery.
	Batteries []Battery
	// Links join neighbours of the row, Links[i] the batteries i and i+1: one
	// fewer than Batteries.
	Links []Link
	// Plus and Minus name the batteries from whose plus and minus posts the
	// harness is taken off. Empty means the first of the row.
	Plus, Minus string
	// Branches are the tree, in any order. None is allowed: a bank by itself.
	Branches []Branch
}

// A Battery is one battery of the row, as a voltage behind a resistance.
type Battery struct {
	// Name tells it from the others of the row; it may be empty where it is
	// the only one.
	Name string
	// Voltage is the open-circuit voltage, > 0.
	Voltage units.Voltage
	// Resistance inside, with the leads and fuse of its own, > 0; 0 is allowed
	// where it is the only one. In a row none, of a battery or a lead, may be
	// more than a million times that of the best battery: leave out what is
	// not connected.
	Resistance units.Resistance
	// Limit is the greatest current that it may give, by its maker or its
	// protection, > 0. Not given means that nothing is judged.
	Limit units.Opt[units.Current]
	// ChargeLimit is the greatest current that it may take, > 0. Not given
	// means that nothing is judged.
	ChargeLimit units.Opt[units.Current]
}

// A Link joins two neighbours of a row of batteries: one lead between their
// plus posts, one between their minus posts.
type Link struct {
	Plus  Lead // between the plus posts
	Minus Lead // between the minus posts
}

// A Lead is one conductor with its ends, not there and back. The zero Lead
// has no resistance: both ends on one bar.
type Lead struct {
	Conductor Conductor    // not looked at if Length is 0
	Length    units.Length // >= 0
	// Extra is the resistance of lugs, bolts, fuse and switch in it, >= 0.
	Extra units.Resistance
}

// A Branch is one node of the tree: a feeder from its parent, and what is
// connected at its end. A distribution panel is a branch without load.
type Branch struct {
	// Name tells it from all others; not empty.
	Name string
	// Parent names the branch at whose end this one begins. Empty means the
	// posts of the bank.
	Parent string
	// Conductor is one of the feeder's two; not looked at if OneWay is 0.
	Conductor Conductor
	// OneWay is the length of the feeder, not there and back, >= 0. At 0 the
	// branch sits on its parent's bar.
	OneWay units.Length
	// Return is the resistance of the way back where it is no conductor like
	// the other: the frame of a vehicle, >= 0. Not given means a second
	// conductor like the first.
	Return units.Opt[units.Resistance]
	// Extra is the resistance of fuses, switches and joints of both ways, >= 0.
	Extra units.Resistance
	// Load is what the end of the feeder itself draws.
	Load Load
	// Lowest is the least voltage allowed at the end, > 0. Not given means
	// that nothing is judged.
	Lowest units.Opt[units.Voltage]
	// Limit is the greatest current that the feeder may carry, from its
	// ampacity or its fuse, > 0. Not given means that only the tables of
	// ampacity in free air are looked at.
	Limit units.Opt[units.Current]
}

// A Load is what a place draws at voltage V: I + P/V + V/R. The zero Load
// draws nothing.
type Load struct {
	Current units.Current // the same at any voltage, such as a linear lamp driver's; >= 0
	Power   units.Power   // the same at any voltage, such as an inverter's; >= 0
	// Resistance, such as a heater's, > 0. Not given means none.
	Resistance units.Opt[units.Resistance]
}

// At returns the current that l draws at v, which must be above 0.
func (l Load) At(v units.Voltage) units.Current {
	i := l.Current + l.Power.At(v)
	if r, ok := l.Resistance.Get(); ok {
		i += v.Across(r)
	}
	return i
}

// A Moment says what is different from the [Network] at one time. The zero
// Moment changes nothing.
type Moment struct {
	Loads    []Load          // in place of each branch's, in order of Network.Branches; nil: as described
	Voltages []units.Voltage // in place of each battery's, in order of Network.Batteries; nil: as described
}

// A Harness is a [Network] that is checked, with its resistances worked out
// and its branches in order, ready to be solved many times. It never changes,
// so that many may use it at once.
type Harness struct {
	net     Network
	index   map[string]int
	names   []string // of the branches, in order of Network.Branches as all below
	loads   []Load   // as described
	feeders []feeder
	volts   []units.Voltage // of Network.Batteries, as described
	order   []int32         // places in Network.Branches, parents first
	parents []int32         // by place in order: that of the parent, -1 for the bank
	row     ladder
}

// A feeder is the way to the end of a branch and back.
type feeder struct {
	perLength PerLength // of one conductor; zero if there is none
	loop      units.Resistance
}

// NewHarness checks n and prepares it. What no structure can be made of is a
// [*NetworkError] with the name of the branch or battery: no battery, a wrong
// number of links, a name that is missing, used twice or unknown, a branch
// that leads back to itself. A number out of the range that [Network] and its
// parts state is a [*units.RangeError] with the name in its Field.
func NewHarness(n Network) (*Harness, error) {
	const op = "wire.NewHarness"
	h := &Harness{net: n}
	h.net.Batteries = slices.Clone(n.Batteries)
	h.net.Links = slices.Clone(n.Links)
	h.net.Branches = slices.Clone(n.Branches)
	if err := h.prepareRow(op); err != nil {
		return nil, err
	}
	if err := h.prepareTree(op); err != nil {
		return nil, err
	}
	for i, b := range h.net.Branches {
		f, err := b.feeder(op, i)
		if err != nil {
			return nil, err
		}
		h.names, h.loads, h.feeders = append(h.names, b.Name), append(h.loads, b.Load), append(h.feeders, f)
	}
	for _, b := range h.net.Batteries {
		h.volts = append(h.volts, b.Voltage)
	}
	return h, nil
}

// Index returns the place of a branch in Network.Branches, which is its place
// in [Flow.Points]; ok is false if there is none of that name.
func (h *Harness) Index(branch string) (i int, ok bool) {
	i, ok = h.index[branch]
	return i, ok
}

// Len returns the number of branches.
func (h *Harness) Len() int { return len(h.feeders) }
