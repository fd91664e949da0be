package inverter

import (
	"math"
	"slices"

	"example.com/drawbar/units"
)

// A Feed is what carries power from one place to the next: a conductor, a
// relay, an inverter, a charger.
type Feed struct {
	Name     string // such as "converter", not empty
	From, To string // places: a source, a panel, a bank; not empty, not the same
	// With are the sources with which it is closed: an inverter that runs only
	// when it is the source, a relay that opens then. Empty: with every source.
	With       []string
	Efficiency units.Ratio            // > 0 to 100 %; 1 for what only conducts
	Idle       units.Opt[units.Power] // own draw at the From side, >= 0; leave out what other loads count already
	Most       units.Opt[units.Power] // most that it gives at the To side, > 0
}

// A Hop is a feed as part of a loop.
type Hop struct {
	Name       string                 // of the [Feed]
	From, To   string                 // places
	Efficiency units.Ratio            // as given
	Idle       units.Opt[units.Power] // as given
	Most       units.Opt[units.Power] // as given
	In, Out    units.Power            // 0 if the loop's numbers are not known
}

// A Loop is a path on which a bank feeds itself.
type Loop struct {
	Source string // active
	Bank   string // where the loop begins and ends
	Hops   []Hop  // from the bank back to it
	// Known is whether at least one hop says the most that it gives; without,
	// what flows is not known and the numbers are 0.
	Known bool
	Drawn units.Power // from the bank
	Back  units.Power // into it
	Lost  units.Power // Drawn less Back
}

// mostSteps bounds the searches whose work can double with each feed or demand.
const mostSteps = 100_000

// FeedLoops returns every path that leads from a bank back to itself, for each
// of the sources active, in their order and then that of the feeds. It is a
// loop with two efficiencies in it: an inverter that feeds the bank's own
// charger empties the bank by what both lose. Each hop
//
//	P_in = P_out / η + P_idle
//
// is driven as hard as the weakest hop lets it be.
//
// No source, an empty name, a feed with a source that is none of them, from a
// place to itself or with a field outside the range that [Feed] states, a bank
// that no feed begins or ends at, and feeds with too many paths to follow,
// give a [*units.RangeError] and no result. No loop is no error.
func FeedLoops(sources []string, feeds []Feed, bank string) ([]Loop, error) {
	const op = "inverter.FeedLoops"
	if err := checkSources(op, sources); err != nil {
		return nil, err
	}
	if err := checkFeeds(op, sources, feeds, bank); err != nil {
		return nil, err
	}
	s := search{feeds: feeds, bank: bank, back: make([]bool, len(feeds))}
	for _, s.source = range sources {
		s.markBack()
		if !s.follow(bank) {
			return nil, &units.RangeError{Op: op, Field: "feeds", Value: len(feeds), Allowed: allowed("fewer paths than can be followed")}
		}
	}
	for i := range s.loops {
		if err := s.loops[i].drive(op); err != nil {
			return nil, err
		}
	}
	return s.loops, nil
}

// checkFeeds reports the first field of feeds out of range.
func checkFeeds(op string, sources []string, feeds []Feed, bank string) error {
	if err := checkName(op, "bank", bank); err != nil {
		return err
	}
	known := len(feeds) == 0
	for i, f := range feeds {
		known = known || f.From == bank || f.To == bank
		field := at("feeds", i)
		if f.From == f.To && f.From != "" {
			return &units.RangeError{Op: op, Field: field + ".To", Value: f.To, Allowed: allowed("another place than From")}
		}
		if err := firstError(
			checkName(op, field+".Name", f.Name),
			checkName(op, field+".From", f.From),
			checkName(op, field+".To", f.To),
			checkWith(op, field, f.With, sources),
			shares().Check(op, field+".Efficiency", f.Efficiency),
			checkOpt(op, field+".Idle", f.Idle, notNegative[units.Power]()),
			checkOpt(op, field+".Most", f.Most, positive[units.Power]()),
		); err != nil {
			return err
		}
	}
	if !known {
		return &units.RangeError{Op: op, Field: "bank", Value: bank, Allowed: allowed("a place that a feed begins or ends at")}
	}
	return nil
}

// A search follows feeds from a bank.
type search struct {
	feeds  []Feed
	bank   string
	source string // active
	back   []bool // feed i can lead back to the bank
	path   []int  // feeds followed
	steps  int
	loops  []Loop
}

// isClosed reports whether feed i is closed with the active source.
func (s *search) isClosed(i int) bool { return isWith(s.feeds[i].With, s.source) }

// markBack finds out which feeds can lead back to the bank, so that the search
// leaves dead ends alone.
func (s *search) markBack() {
	clear(s.back)
	for changed := true; changed; {
		changed = false
		for i, f := range s.feeds {
			if s.back[i] || !s.isClosed(i) {
				continue
			}
			leads := f.To == s.bank
			for j, g := range s.feeds {
				leads = leads || s.back[j] && g.From == f.To
			}
			s.back[i] = leads
			changed = changed || leads
		}
	}
}

// follow adds the loops that go on from place; false if there are too many
// paths.
func (s *search) follow(place string) bool {
	for i, f := range s.feeds {
		if f.From != place || !s.back[i] || s.visited(f.To) {
			continue
		}
		if s.steps++; s.steps > mostSteps {
			return false
		}
		s.path = append(s.path, i)
		ok := true
		if f.To == s.bank {
			s.add()
		} else {
			ok = s.follow(f.To)
		}
		s.path = s.path[:len(s.path)-1]
		if !ok {
			return false
		}
	}
	return true
}

// visited reports whether the path has been at place; the bank, where it
// ends, does not count.
func (s *search) visited(place string) bool {
	return place != s.bank && slices.ContainsFunc(s.path, func(i int) bool { return s.feeds[i].From == place })
}

// add keeps the path followed as a loop.
func (s *search) add() {
	l := Loop{Source: s.source, Bank: s.bank, Hops: make([]Hop, len(s.path))}
	for i, at := range s.path {
		f := s.feeds[at]
		l.Hops[i] = Hop{Name: f.Name, From: f.From, To: f.To, Efficiency: f.Efficiency, Idle: f.Idle, Most: f.Most}
		l.Known = l.Known || f.Most.IsSet()
	}
	s.loops = append(s.loops, l)
}

// drive works out what flows if the loop runs as hard as it can: forward what
// each hop lets through, then back from the last what it takes.
func (l *Loop) drive(op string) error {
	if !l.Known {
		return nil
	}
	through := units.Power(math.Inf(1))
	for _, h := range l.Hops {
		through = max(0, units.Scale(through-h.Idle.Or(0), h.Efficiency))
		through = min(through, h.Most.Or(through))
	}
	l.Back = through
	for i := range slices.Backward(l.Hops) {
		h := &l.Hops[i]
		h.Out = through
		h.In = input(through, h.Efficiency) + h.Idle.Or(0)
		through = h.In
	}
	l.Drawn = through
	l.Lost = units.Minus(l.Drawn, l.Back)
	return firstError(
		notNegative[units.Power]().Check(op, "Drawn", l.Drawn),
		notNegative[units.Power]().Check(op, "Lost", l.Lost),
	)
}
