package inverter

import (
	"slices"

	"example.com/drawbar/units"
)

// An Overload is the result of [Sets].
type Overload struct {
	Limit    Limit    // as used
	Demands  []Demand // a copy of the list given
	Sets     []Set    // each too much, and none too much without one of its members; fewest members first, then in the order of Demands
	Cut      bool     // there are more than the 1000 sets of Sets
	Together Set      // all demands at once, whether too much or not
	Unstated int      // demands without apparent power or power factor, counted with a power factor of 1
}

// mostDemands bounds the work, which doubles with each demand, and mostSets
// what comes of it.
const (
	mostDemands = 20
	mostSets    = 1000
)

// Sets returns every smallest set of demands that exceeds l when they run
// together: any set with all members of one of these is too much, and every
// other set is not. A demand that is too much alone is a set of one. Of demands
// that differ in nothing but their names one set stands for all that are like
// it; [Overload.Names] says so. Which sets can run is for [CanRun].
//
// At most 20 demands are taken. More of them, a field outside the range that
// [Limit] and [Demand] state or not finite, and two demands of one name, give
// a [*units.RangeError]; so does a sum that no float64 holds. The Overload is
// then the zero value. Of more than 1000 sets the smallest are given, and
// Overload.Cut is set.
func Sets(l Limit, demands []Demand) (Overload, error) {
	const op = "inverter.Sets"
	unstated, err := checkTogether(op, l, demands)
	if err != nil {
		return Overload{}, err
	}
	o := Overload{Limit: l, Demands: slices.Clone(demands), Unstated: unstated}
	o.Together = l.sum(o.Demands, 1<<len(demands)-1)
	if err := o.Together.finite(op); err != nil {
		return Overload{}, err
	}
	if !o.Together.exceeds() {
		return o, nil
	}
	before := l.alikeBefore(o.Demands)
	if o.search(&before, 0, 0, anySize); o.Cut {
		// Too many: again, the smallest first, so that those are kept.
		o.Sets, o.Cut = nil, false
		for size := 1; !o.Cut; size++ {
			o.search(&before, 0, 0, size)
		}
	}
	slices.SortStableFunc(o.Sets, func(a, b Set) int { return a.Members.Len() - b.Members.Len() })
	return o, nil
}

// checkTogether is the check of [Sets] and [CanRun]; it returns how many
// demands do not state their apparent power.
func checkTogether(op string, l Limit, demands []Demand) (unstated int, err error) {
	if err := l.check(op); err != nil {
		return 0, err
	}
	if len(demands) > mostDemands {
		return 0, &units.RangeError{Op: op, Field: "len(demands)", Value: len(demands), Allowed: allowed("0 to 20")}
	}
	if err := checkDemands(op, demands); err != nil {
		return 0, err
	}
	for i, d := range demands {
		if slices.ContainsFunc(demands[:i], func(e Demand) bool { return e.Name == d.Name }) {
			return 0, &units.RangeError{Op: op, Field: at("demands", i) + ".Name", Value: d.Name, Allowed: allowed("a name that no other demand has")}
		}
		if d.unstated() {
			unstated++
		}
	}
	return unstated, nil
}

// anySize is the number of members left to find if any will do.
const anySize = 0

// search adds the smallest sets that have the members given and as many more
// as left, none of them from before next. No member takes less than nothing,
// so a set that is too much needs no more members.
func (o *Overload) search(before *[mostDemands]Members, members Members, next, left int) {
	for i := next; i < len(o.Demands) && !o.Cut; i++ {
		if before[i]&^members != 0 {
			continue // a set that is alike has the first of its kind
		}
		with := members | 1<<i
		s := o.Limit.sum(o.Demands, with)
		switch {
		case !s.exceeds() && left == 1:
		case !s.exceeds():
			o.search(before, with, i+1, max(left-1, anySize))
		case left <= 1 && o.isSmallest(with):
			if o.Cut = len(o.Sets) == mostSets; !o.Cut {
				o.Sets = append(o.Sets, s)
			}
		}
	}
}

// isSmallest reports whether members that are too much are not without any
// one of them.
func (o *Overload) isSmallest(members Members) bool {
	for i := range members.All() {
		if o.Limit.sum(o.Demands, members&^(1<<i)).exceeds() {
			return false
		}
	}
	return true
}

// alikeBefore returns of each demand those before it that are like it. A set
// with the one and not with the others is like one that has been looked at.
func (l Limit) alikeBefore(demands []Demand) (before [mostDemands]Members) {
	for i := range demands {
		for j := range i {
			if l.alike(demands, j, i) {
				before[i] |= 1 << j
			}
		}
	}
	return before
}
