package inverter

import (
	"iter"
	"math/bits"
	"slices"

	"example.com/drawbar/units"
)

// ContinuousShare is the part of a rating that loads of three hours or more
// may take: the inverse of the 125 % of NEC 2017, 210.20 and 215.3.
const ContinuousShare = 80 * units.Percent

// A Limit is what a source, a service or a machine can carry. At least one of
// Power, Apparent and Current is given.
type Limit struct {
	Name     string                         // as in a sentence, such as "the 30 A service"; not empty
	Power    units.Opt[units.Power]         // > 0
	Apparent units.Opt[units.ApparentPower] // > 0
	Current  units.Opt[units.Current]       // > 0, at Voltage
	Voltage  units.Voltage                  // > 0 if Current is given
	// Share is the part of each limit that may be used, > 0 to 100 %, such as
	// [ContinuousShare] for what runs for hours. All of it if not given.
	Share units.Opt[units.Ratio]
}

// Members are demands of a list: bit i is demand i.
type Members uint32

// Len returns how many there are.
func (m Members) Len() int { return bits.OnesCount32(uint32(m)) }

// Has reports whether demand i is one of them.
func (m Members) Has(i int) bool { return i >= 0 && i < 32 && m&(1<<i) != 0 }

// All yields the indexes, lowest first.
func (m Members) All() iter.Seq[int] {
	return func(yield func(int) bool) {
		for rest := uint32(m); rest != 0; rest &= rest - 1 {
			if !yield(bits.TrailingZeros32(rest)) {
				return
			}
		}
	}
}

// A Set is demands that are too much together.
type Set struct {
	Members  Members             // which demands
	Power    units.Power         // together
	Apparent units.ApparentPower // together, added plainly
	Current  units.Current       // Apparent at the limit's voltage; 0 if that is not given
	// Which limits they exceed.
	OverPower, OverApparent, OverCurrent bool
}

// An Overload is the result of [Sets].
type Overload struct {
	Limit    Limit    // as used
	Demands  []Demand // the list given, not a copy
	Sets     []Set    // each too much, and none too much without one of its members; fewest members first, then in the order of Demands
	Together Set      // all demands at once, whether too much or not
	Unstated int      // demands without apparent power or power factor, counted with a power factor of 1
}

// mostDemands bounds the work, which doubles with each demand.
const mostDemands = 20

// Sets returns every smallest set of demands that exceeds l when they run
// together: any set with all members of one of these is too much, and every
// other set is not. A demand that is too much alone is a set of one.
//
// At most 20 demands are taken. More of them, a field outside the range that
// [Limit] and [Demand] state or not finite, and two demands of one name, give
// a [*units.RangeError]; so does a sum that no float64 holds. The Overload is
// then the zero value.
func Sets(l Limit, demands []Demand) (Overload, error) {
	const op = "inverter.Sets"
	if err := l.check(op); err != nil {
		return Overload{}, err
	}
	if len(demands) > mostDemands {
		return Overload{}, &units.RangeError{Op: op, Field: "len(demands)", Value: len(demands), Allowed: allowed("0 to 20")}
	}
	if err := checkDemands(op, demands); err != nil {
		return Overload{}, err
	}
	for i, d := range demands {
		if slices.ContainsFunc(demands[:i], func(e Demand) bool { return e.Name == d.Name }) {
			return Overload{}, &units.RangeError{Op: op, Field: at("demands", i) + ".Name", Value: d.Name, Allowed: allowed("a name that no other demand has")}
		}
	}
	o := Overload{Limit: l, Demands: demands}
	for _, d := range demands {
		if d.unstated() {
			o.Unstated++
		}
	}
	o.Together = o.set(1<<len(demands) - 1)
	if err := firstError(
		notNegative[units.Power]().Check(op, "Power", o.Together.Power),
		notNegative[units.ApparentPower]().Check(op, "Apparent", o.Together.Apparent),
		notNegative[units.Current]().Check(op, "Current", o.Together.Current),
	); err != nil {
		return Overload{}, err
	}
	if o.Together.exceeds() {
		o.search(0, 0)
		slices.SortStableFunc(o.Sets, func(a, b Set) int { return a.Members.Len() - b.Members.Len() })
	}
	return o, nil
}

// check reports the first field of l out of range.
func (l Limit) check(op string) error {
	if !l.Power.IsSet() && !l.Apparent.IsSet() && !l.Current.IsSet() {
		return &units.RangeError{Op: op, Field: "Limit", Value: "nothing", Allowed: allowed("at least one of Power, Apparent and Current given")}
	}
	err := firstError(
		checkName(op, "Name", l.Name),
		checkOpt(op, "Power", l.Power, positive[units.Power]()),
		checkOpt(op, "Apparent", l.Apparent, positive[units.ApparentPower]()),
		checkOpt(op, "Current", l.Current, positive[units.Current]()),
		checkOpt(op, "Share", l.Share, shares()),
	)
	if err == nil && l.Current.IsSet() {
		err = positive[units.Voltage]().Check(op, "Voltage", l.Voltage)
	}
	return err
}

// search adds the smallest sets that begin with the members given, none of
// which is from next on. No member takes less than nothing, so a set that is
// too much needs no more members.
func (o *Overload) search(members Members, next int) {
	for i := next; i < len(o.Demands); i++ {
		with := members | 1<<i
		s := o.set(with)
		switch {
		case !s.exceeds():
			o.search(with, i+1)
		case o.isSmallest(with):
			o.Sets = append(o.Sets, s)
		}
	}
}

// isSmallest reports whether members that are too much are not without any
// one of them.
func (o *Overload) isSmallest(members Members) bool {
	for i := range members.All() {
		if o.set(members &^ (1 << i)).exceeds() {
			return false
		}
	}
	return true
}

// set adds members up and holds them against the limit.
func (o *Overload) set(members Members) Set {
	s, l := Set{Members: members}, o.Limit
	for i := range members.All() {
		s.Power += o.Demands[i].Power
		s.Apparent += o.Demands[i].apparent()
	}
	share := l.Share.Or(1)
	if most, ok := l.Power.Get(); ok {
		s.OverPower = units.Exceeds(s.Power, units.Scale(most, share))
	}
	if most, ok := l.Apparent.Get(); ok {
		s.OverApparent = units.Exceeds(s.Apparent, units.Scale(most, share))
	}
	if most, ok := l.Current.Get(); ok {
		s.Current = s.Apparent.At(l.Voltage)
		s.OverCurrent = units.Exceeds(s.Current, units.Scale(most, share))
	}
	return s
}

// exceeds reports whether s is too much.
func (s Set) exceeds() bool { return s.OverPower || s.OverApparent || s.OverCurrent }
