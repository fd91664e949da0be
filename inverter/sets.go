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
	for size := 1; size <= len(demands) && !o.Cut; size++ {
		if within := o.search(0, 0, size); !within {
			break
		}
	}
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

// search adds the smallest sets that have the members given and as many more
// as left, none of them from before next, and reports whether any set of that
// size is within the limit. No member takes less than nothing, so a set that is
// too much needs no more members.
func (o *Overload) search(members Members, next, left int) (within bool) {
	for i := next; i < len(o.Demands) && !o.Cut; i++ {
		if !inOrder(o.Demands, members, i) {
			continue
		}
		with := members | 1<<i
		s := o.Limit.sum(o.Demands, with)
		switch {
		case !s.exceeds() && left == 1:
			within = true
		case !s.exceeds():
			within = o.search(with, i+1, left-1) || within
		case left == 1 && o.isSmallest(with):
			if o.Cut = len(o.Sets) == mostSets; !o.Cut {
				o.Sets = append(o.Sets, s)
			}
		}
	}
	return within
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

// alike reports whether two demands differ in nothing that a set counts.
func alike(a, b Demand) bool { return a.Power == b.Power && a.apparent() == b.apparent() }

// inOrder reports whether all demands like demand i that come before it are
// members already, so that of sets that are alike one is looked at.
func inOrder(demands []Demand, members Members, i int) bool {
	for j := range i {
		if !members.Has(j) && alike(demands[j], demands[i]) {
			return false
		}
	}
	return true
}
