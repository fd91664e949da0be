package inverter

import (
	"slices"
	"strconv"

	"example.com/drawbar/units/working"
)

// A Runnable is the result of [CanRun].
type Runnable struct {
	Limit    Limit    // as used
	Demands  []Demand // a copy of the list given
	Sets     []Set    // each within the limit, and too much with any demand more; most members first, then in the order of Demands
	Never    Members  // demands that are too much alone
	Cut      bool     // there are more sets than Sets has
	Unstated int      // demands without apparent power or power factor, counted with a power factor of 1
}

// CanRun returns every largest set of demands that l carries when they run
// together: any part of one of these can run as well, and no demand can be
// added to one. It is the other side of [Sets], and of demands that differ in
// nothing but their names one set stands for all that are like it;
// [Runnable.Names] says so. If nothing runs there is no set.
//
// It takes and refuses what [Sets] does. Of more than 1000 sets, or where they
// take too long to find, a part is given, and Runnable.Cut is set.
func CanRun(l Limit, demands []Demand) (Runnable, error) {
	const op = "inverter.CanRun"
	unstated, err := checkTogether(op, l, demands)
	if err != nil {
		return Runnable{}, err
	}
	r := Runnable{Limit: l, Demands: slices.Clone(demands), Unstated: unstated}
	all := Members(1<<len(demands) - 1)
	if err := l.sum(r.Demands, all).finite(op); err != nil {
		return Runnable{}, err
	}
	for i := range all.All() {
		if l.sum(r.Demands, 1<<i).exceeds() {
			r.Never |= 1 << i
		}
	}
	steps := 0
	r.search(0, all&^r.Never, &steps)
	slices.SortStableFunc(r.Sets, func(a, b Set) int { return b.Members.Len() - a.Members.Len() })
	return r, nil
}

// search adds the largest sets that have the members given, with more of the
// demands that are open. The first of those is taken, and then left out, which
// makes a largest set only if it would not fit beside all others.
func (r *Runnable) search(members, open Members, steps *int) {
	if *steps++; *steps > mostSteps {
		r.Cut = true
	}
	if r.Cut {
		return
	}
	if open == 0 {
		r.add(members)
		return
	}
	first := Members(open & -open)
	rest := open &^ first
	if with := members | first; !r.Limit.sum(r.Demands, with).exceeds() {
		r.search(with, rest, steps)
	}
	if r.Limit.sum(r.Demands, members|open).exceeds() {
		r.search(members, r.unlike(rest, first), steps)
	}
}

// unlike returns those of open that are not like the one demand given.
func (r *Runnable) unlike(open, one Members) Members {
	for i := range one.All() {
		for j := range open.All() {
			if r.Limit.alike(r.Demands, i, j) {
				open &^= 1 << j
			}
		}
	}
	return open
}

// add keeps members if no demand can be added to them.
func (r *Runnable) add(members Members) {
	for i := range r.Demands {
		if !members.Has(i) && !r.Limit.sum(r.Demands, members|1<<i).exceeds() {
			return
		}
	}
	if r.Cut = len(r.Sets) == mostSets; members != 0 && !r.Cut {
		r.Sets = append(r.Sets, r.Limit.sum(r.Demands, members))
	}
}

// Names returns the names of members as [Overload.Names] does.
func (r Runnable) Names(members Members) []string { return r.Limit.names(r.Demands, members) }

// Working returns each set of the result, step by step.
func (r Runnable) Working() *working.Sheet {
	s := working.NewSheet("What can run together: " + r.Limit.Name)
	r.Limit.steps(s)
	demandSteps(s, r.Demands)
	for i, set := range r.Sets {
		r.Limit.setSteps(s, r.Demands, set, "_set"+strconv.Itoa(i+1))
	}
	for i := range r.Never.All() {
		r.Limit.setSteps(s, r.Demands, r.Limit.sum(r.Demands, 1<<i), "_never"+strconv.Itoa(i+1))
	}
	return s
}

// Findings returns what runs in no set, what was counted for lack of a power
// factor, and whether there are more sets.
func (r Runnable) Findings() (f []working.Finding) {
	for i := range r.Never.All() {
		f = append(f, r.Limit.tooMuch(r.Demands, r.Limit.sum(r.Demands, 1<<i)))
	}
	if r.Unstated > 0 && r.Limit.inVoltAmperes() {
		f = append(f, powerFactorNotStated(r.Unstated, r.Limit.sum(r.Demands, 1<<len(r.Demands)-1).Apparent))
	}
	return append(f, cutShort(r.Cut, len(r.Sets))...)
}
