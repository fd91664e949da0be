package wire

import (
	"slices"
	"strconv"

	"example.com/drawbar/units"
)

// A Flow is the result of [Harness.Solve]. Give the same Flow to the next
// call and it is used again, slices included, without allocation. It must not
// be used by two at once.
//
// Where the harness collapses there is no steady state to show: Collapse is
// set, Points and Shares are empty and the totals 0.
type Flow struct {
	Points []Point // one for each of Network.Branches, in their order
	Shares []Share // one for each of Network.Batteries, in their order

	OpenCircuit    units.Voltage    // of the bank where the harness is taken off, without load
	BankResistance units.Resistance // of the bank seen from there, links included

	Voltage  units.Voltage // of the bank where the harness is taken off
	Current  units.Current // of the whole harness
	Supplied units.Power   // what the open-circuit voltages of all batteries give
	Loads    units.Power   // what reaches the loads
	Heat     units.Power   // given off along the feeders
	BankHeat units.Power   // given off in the batteries and their links
	Rounds   int           // of the iteration, those of a search after collapse included

	Collapse units.Opt[Collapse] // set if the loads are more than can be fed

	harness *Harness
	loads   []Load          // as used, in order of Network.Branches
	volts   []units.Voltage // as used, in order of Network.Batteries
	idle    []float64       // sums of the currents between batteries without load
	upTo    []float64       // the same with load
	grid    grid
	held    []float64 // voltages to go back to in a search
}

// A Point is what happens at the end of one branch.
type Point struct {
	Name       string           // of the branch
	Load       Load             // as used
	Resistance units.Resistance // of the feeder, there and back
	Voltage    units.Voltage    // at the end of the feeder
	Drawn      units.Current    // by the load of this branch itself
	Power      units.Power      // of that load
	Current    units.Current    // in the feeder: Drawn and all that is fed from here
	Drop       units.Voltage    // in the feeder
	Heat       units.Power      // given off along the feeder
}

// A Share is what one battery of the row does.
type Share struct {
	Battery  Battery       // as used
	Current  units.Current // that it gives; below 0 if it is charged
	Idle     units.Current // that it would give to the others without any load
	Fraction units.Ratio   // Current over that of the harness; 0 if that is 0
	Terminal units.Voltage // at its own posts
	Heat     units.Power   // given off inside
}

// A Collapse says by how much the loads are more than the harness can feed.
// The current of a constant-power load rises as its voltage falls; beyond a
// limit no voltage is left at which it gets its power.
type Collapse struct {
	// Scale is the largest part of all constant-current and constant-power
	// loads together that could be fed; resistances stay as they are. Below 1
	// but for rounding.
	Scale units.Ratio
	// Branch is the place in Network.Branches of the load that weighs most
	// where the collapse begins.
	Branch int
	// Load is what that branch draws, as used.
	Load Load
	// Most is the largest constant power that this branch could have with all
	// other loads as they are. Not given if it has none, or if the others
	// collapse without it.
	Most units.Opt[units.Power]
}

// Solve works out the steady state of h at m, in f:
//
//	V = V_parent - R·I,  I = I_load + P_load/V + V/R_load + all that is fed from there
//
// by Newton's method on the tree, whose cost is linear in the branches. Of the
// two states that a constant-power load can have, it is the stable one, with
// the higher voltage. If there is none, f says so by Collapse, with the
// largest loads that there is one for; that is a result and no error. Loads
// within about a part in 1e12 of that limit may be taken as beyond it.
//
// Not in it: the warming of conductors by this very current, loads that cut
// out at low voltage, and the time between two states.
//
// A slice of m that has not one entry for each branch or battery, or a number
// out of the range that [Load] and [Battery] state, is a [*units.RangeError];
// so is a result that no float64 holds. A Harness that NewHarness did not make
// is a [*NetworkError]. f is then the zero Flow but for memory.
func (h *Harness) Solve(f *Flow, m Moment) error {
	const op = "wire.Harness.Solve"
	if err := f.begin(op, h, m); err != nil {
		return err
	}
	f.grid.start()
	var err error
	if f.grid.newton() {
		f.fill()
		err = f.checkTotals(op)
	} else {
		err = f.collapse(op)
	}
	if err != nil {
		f.forget()
	}
	return err
}

// begin takes h and m over into f.
func (f *Flow) begin(op string, h *Harness, m Moment) error {
	if f == nil {
		return &units.RangeError{Op: op, Field: "f", Value: "nil", Allowed: noNil{}}
	}
	f.forget()
	if h == nil || len(h.net.Batteries) == 0 {
		return &NetworkError{Op: op, What: "bank", Cause: ErrNoBattery}
	}
	if err := h.checkMoment(op, m); err != nil {
		return err
	}
	f.harness = h
	f.loads, f.volts = append(f.loads, h.loads...), append(f.volts, h.volts...)
	copy(f.loads, m.Loads)
	copy(f.volts, m.Voltages)
	f.OpenCircuit = units.Voltage(h.row.openCircuit(f.volts))
	f.BankResistance = units.Resistance(h.row.resistance)
	if !units.Above[units.Voltage](0).Contains(f.OpenCircuit) {
		v := f.OpenCircuit
		f.forget()
		return units.Above[units.Voltage](0).Check(op, "OpenCircuit", v)
	}
	f.lay()
	return nil
}

// noNil is the range of a pointer.
type noNil struct{}

// String says that the pointer must not be nil.
func (noNil) String() string { return "a pointer to a Flow" }

// checkMoment reports the first entry of m out of range.
func (h *Harness) checkMoment(op string, m Moment) error {
	if n := len(h.net.Branches); m.Loads != nil && len(m.Loads) != n {
		return &units.RangeError{Op: op, Field: "len(Loads)", Value: len(m.Loads), Allowed: exactly(n)}
	}
	if n := len(h.net.Batteries); m.Voltages != nil && len(m.Voltages) != n {
		return &units.RangeError{Op: op, Field: "len(Voltages)", Value: len(m.Voltages), Allowed: exactly(n)}
	}
	for i := range m.Loads {
		if err := m.Loads[i].check(op, place{list: "Branches", name: h.names[i], n: i}); err != nil {
			return err
		}
	}
	for i, v := range m.Voltages {
		if !units.Above[units.Voltage](0).Contains(v) {
			return units.Above[units.Voltage](0).Check(op, "Voltages["+strconv.Itoa(i)+"]", v)
		}
	}
	return nil
}

// exactly is the range of a count.
type exactly int

// String returns the count.
func (n exactly) String() string { return strconv.Itoa(int(n)) }

// forget empties f and keeps its memory.
func (f *Flow) forget() {
	*f = Flow{
		Points: f.Points[:0], Shares: f.Shares[:0], loads: f.loads[:0], volts: f.volts[:0],
		idle: f.idle[:0], upTo: f.upTo[:0], held: f.held[:0], grid: grid{cells: f.grid.cells[:0]},
	}
}

// lay puts the tree and its loads into the cells.
func (f *Flow) lay() {
	h, g := f.harness, &f.grid
	g.e, g.r = float64(f.OpenCircuit), float64(f.BankResistance)
	g.straight = true
	for k, i := range h.order {
		c := cell{r: float64(h.feeders[i].loop), parent: h.parents[k]}
		c.amps, c.watts = float64(f.loads[i].Current), float64(f.loads[i].Power)
		if r, ok := f.loads[i].Resistance.Get(); ok {
			c.siemens = 1 / float64(r)
		}
		g.straight = g.straight && c.watts == 0
		g.cells = append(g.cells, c)
	}
}

// fill makes the result out of the solved cells. Currents are added from the
// leaves to the root, so that they balance to the last bit or two.
func (f *Flow) fill() {
	h, g, total := f.harness, &f.grid, 0.0
	for k := range g.cells {
		c := &g.cells[k]
		c.y = c.amps + c.watts/c.v + c.siemens*c.v // drawn here
		c.j = c.y
	}
	for k := len(g.cells) - 1; k >= 0; k-- {
		if c := &g.cells[k]; c.parent >= 0 {
			g.cells[c.parent].j += c.j
		} else {
			total += c.j
		}
	}
	f.Rounds, f.Voltage, f.Current = g.rounds, units.Voltage(g.v), units.Current(total)
	f.Points = slices.Grow(f.Points, len(h.order))[:len(h.order)]
	for k, i := range h.order {
		c, p := &g.cells[k], &f.Points[i]
		*p = Point{Name: h.names[i], Load: f.loads[i], Resistance: h.feeders[i].loop, Voltage: units.Voltage(c.v)}
		p.Drawn, p.Current = units.Current(c.y), units.Current(c.j)
		p.Drop = p.Current.Through(p.Resistance)
		p.Power, p.Heat = p.Drawn.At(p.Voltage), p.Current.At(p.Drop)
		f.Loads += p.Power
		f.Heat += p.Heat
	}
	f.fillShares()
}

// fillShares makes the shares of the batteries.
func (f *Flow) fillShares() {
	row := &f.harness.row
	n := len(f.volts)
	f.idle, f.upTo = slices.Grow(f.idle, n)[:n], slices.Grow(f.upTo, n)[:n]
	row.idle(f.idle, f.volts)
	total := float64(f.Current)
	for i, s := range f.idle {
		f.upTo[i] = s + total*row.upTo[i]
	}
	for i, b := range f.harness.net.Batteries {
		b.Voltage = f.volts[i]
		s := Share{Battery: b}
		s.Idle = units.Current(row.current(f.idle, i))
		s.Current = units.Current(row.current(f.upTo, i))
		if f.Current > 0 {
			s.Fraction = units.RatioOf(s.Current, f.Current)
		}
		inside := s.Current.Through(b.Resistance)
		s.Terminal = b.Voltage - inside
		s.Heat = s.Current.At(inside)
		f.Supplied += s.Current.At(b.Voltage)
		f.Shares = append(f.Shares, s)
	}
	f.BankHeat = units.Power(row.heat(f.upTo, total))
}

// checkTotals reports a total that no float64 holds.
func (f *Flow) checkTotals(op string) error {
	finite := units.Bounds[units.Power]{}
	for _, total := range [...]struct {
		name  string
		value units.Power
	}{{"Supplied", f.Supplied}, {"Loads", f.Loads}, {"Heat", f.Heat}, {"BankHeat", f.BankHeat}} {
		if !finite.Contains(total.value) {
			return finite.Check(op, total.name, total.value)
		}
	}
	return nil
}
