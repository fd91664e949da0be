package wire

import (
	"errors"
	"strconv"

	"example.com/drawbar/units"
)

// Why a [NetworkError] is one.
var (
	// ErrNoBattery is a bank without battery, or a Harness that NewHarness did
	// not make.
	ErrNoBattery = errors.New("no battery")
	// ErrLinks is a row of batteries with too few or too many links.
	ErrLinks = errors.New("a row of batteries needs one link fewer than batteries")
	// ErrUnnamed is a branch without name, or a battery where there are others.
	ErrUnnamed = errors.New("no name")
	// ErrDuplicate is a name that two branches have, or two batteries.
	ErrDuplicate = errors.New("the name is used twice")
	// ErrUnknown is a name that no branch has, or no battery.
	ErrUnknown = errors.New("there is none of that name")
	// ErrCycle is a branch that is fed, by way of others or not, from itself.
	ErrCycle = errors.New("it leads back to itself and never to the bank")
	// ErrCollapse is a harness that cannot feed the other loads, so that there
	// is no largest power for one more.
	ErrCollapse = errors.New("the harness cannot feed its other loads")
)

// A NetworkError reports a [Network] that no harness can be made of, or a
// question about a branch that has no answer.
type NetworkError struct {
	Op    string // the function, such as "wire.NewHarness"
	What  string // "branch", "battery", "links" and the like
	Name  string // the one concerned, as given
	Cause error  // ErrNoBattery, ErrLinks, ErrUnnamed, ErrDuplicate, ErrUnknown, ErrCycle or ErrCollapse
}

// Error returns `wire.NewHarness: branch "pump": the name is used twice` and
// the like.
func (e *NetworkError) Error() string {
	what := e.What
	if e.Name != "" {
		what += " " + strconv.Quote(e.Name)
	}
	return e.Op + ": " + what + ": " + e.Cause.Error()
}

// Unwrap returns Cause.
func (e *NetworkError) Unwrap() error { return e.Cause }

// prepareTree names the branches and puts parents before their branches.
func (h *Harness) prepareTree(op string) error {
	n := len(h.net.Branches)
	h.index = make(map[string]int, n)
	for i, b := range h.net.Branches {
		if b.Name == "" {
			return &NetworkError{Op: op, What: "branch number " + strconv.Itoa(i+1), Cause: ErrUnnamed}
		}
		if _, twice := h.index[b.Name]; twice {
			return &NetworkError{Op: op, What: "branch", Name: b.Name, Cause: ErrDuplicate}
		}
		h.index[b.Name] = i
	}
	// The branches of each parent as a chain, the bank last of all.
	first, next := make([]int32, n+1), make([]int32, n)
	for i := range first {
		first[i] = -1
	}
	for i := n - 1; i >= 0; i-- {
		parent := n
		if name := h.net.Branches[i].Parent; name != "" {
			var known bool
			if parent, known = h.index[name]; !known {
				return &NetworkError{Op: op, What: "parent of branch " + strconv.Quote(h.net.Branches[i].Name), Name: name, Cause: ErrUnknown}
			}
		}
		next[i], first[parent] = first[parent], int32(i)
	}
	h.walk(first, next)
	if len(h.order) < n {
		return &NetworkError{Op: op, What: "branch", Name: h.onCycle(), Cause: ErrCycle}
	}
	return nil
}

// walk goes from the bank out along every branch to its end before the next,
// so that what hangs together lies together in memory.
func (h *Harness) walk(first, next []int32) {
	n := len(next)
	place := make([]int32, n+1) // of each branch in the order
	place[n] = -1
	parent := make([]int32, n)
	h.order, h.parents = make([]int32, 0, n), make([]int32, 0, n)
	var todo []int32
	push := func(of int) {
		for i := first[of]; i >= 0; i = next[i] {
			parent[i] = place[of]
			todo = append(todo, i)
		}
	}
	for push(n); len(todo) > 0; {
		i := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		place[i] = int32(len(h.order))
		h.order, h.parents = append(h.order, i), append(h.parents, parent[i])
		push(int(i))
	}
}

// onCycle returns the name of a branch that leads back to itself, where there
// is one: the first of its cycle in order of declaration.
func (h *Harness) onCycle() string {
	reached := make([]bool, len(h.net.Branches))
	for _, i := range h.order {
		reached[i] = true
	}
	for i, b := range h.net.Branches {
		if reached[i] {
			continue
		}
		at := i
		for range h.net.Branches { // longer than any cycle
			if at = h.index[h.net.Branches[at].Parent]; at == i {
				return b.Name
			}
		}
	}
	return ""
}

// A place is where in a [Network] a number stands. Its words are put together
// only when something is wrong with it.
type place struct {
	list string // "Branches", "Batteries" or "Links"
	name string // in the list; empty where it has none
	n    int    // place in the list
	part string // of it, such as "Plus."
}

// field returns `Branches["pump"].Load.Power` and the like.
func (p place) field(of string) string {
	at := strconv.Itoa(p.n)
	if p.name != "" {
		at = strconv.Quote(p.name)
	}
	return p.list + "[" + at + "]." + p.part + of
}

// checkAt returns nil if b contains x, else a *units.RangeError about a number
// of p.
func checkAt[Q units.Quantity](b units.Bounds[Q], op string, p place, of string, x Q) error {
	if b.Contains(x) {
		return nil
	}
	return b.Check(op, p.field(of), x)
}

// feeder checks b, number i, and works out the resistance of its feeder.
func (b Branch) feeder(op string, i int) (feeder, error) {
	at := place{list: "Branches", name: b.Name, n: i}
	if err := b.check(op, at); err != nil {
		return feeder{}, err
	}
	f := feeder{loop: b.Extra + b.Return.Or(0)}
	if b.OneWay > 0 {
		p, err := resistance(op, b.Conductor)
		if err != nil {
			return feeder{}, at.about(err)
		}
		f.perLength = p
		ways := 2 * b.OneWay
		if b.Return.IsSet() {
			ways = b.OneWay
		}
		f.loop += p.At.Over(ways)
	}
	if err := checkAt(units.AtLeast[units.Resistance](0), op, at, "resistance", f.loop); err != nil {
		return feeder{}, err
	}
	return f, nil
}

// check reports the first number of b out of range, but for its conductor.
func (b Branch) check(op string, at place) error {
	if err := checkAt(units.AtLeast[units.Length](0), op, at, "OneWay", b.OneWay); err != nil {
		return err
	}
	if err := checkAt(units.AtLeast[units.Resistance](0), op, at, "Return", b.Return.Or(0)); err != nil {
		return err
	}
	if err := checkAt(units.AtLeast[units.Resistance](0), op, at, "Extra", b.Extra); err != nil {
		return err
	}
	if err := checkAt(units.Above[units.Voltage](0), op, at, "Lowest", b.Lowest.Or(1)); err != nil {
		return err
	}
	if err := checkAt(units.Above[units.Current](0), op, at, "Limit", b.Limit.Or(1)); err != nil {
		return err
	}
	return b.Load.check(op, at)
}

// check reports the first number of l out of range.
func (l Load) check(op string, at place) error {
	if err := checkAt(units.AtLeast[units.Current](0), op, at, "Load.Current", l.Current); err != nil {
		return err
	}
	if err := checkAt(units.AtLeast[units.Power](0), op, at, "Load.Power", l.Power); err != nil {
		return err
	}
	return checkAt(units.Above[units.Resistance](0), op, at, "Load.Resistance", l.Resistance.Or(1))
}

// about returns err, if it is about the range of a conductor's field, with the
// place of the conductor.
func (p place) about(err error) error {
	var e *units.RangeError
	if !errors.As(err, &e) {
		return err
	}
	return &units.RangeError{Op: e.Op, Field: p.field("Conductor." + e.Field), Value: e.Value, Allowed: e.Allowed}
}
