package wire

import (
	"math"

	"example.com/drawbar/units"
)

// The largest loads are found along a ramp: a factor on all constant-current
// and constant-power loads, or the power of one. Along it every voltage falls,
// and at the end, where two states meet, with infinite steepness, as the root
// of what is left. So the square of 1/steepness goes to zero as a straight
// line, exactly so for one load on one cable, and a secant finds where. Where
// a voltage reaches 0 first, as constant currents make it, the tangent does.
// Newton proves for every point tried on which side of the end it lies.

// everyLoad is the ramp of all constant-current and constant-power loads.
const everyLoad = -1

// Where a search ends: two estimates in a row agree to agreed of themselves
// with the last state no further than nearBy from the end, or the end is
// bracketed to agreed.
const (
	agreed = 1e-11
	nearBy = 1e-4
	// onward is how far towards the estimate the next state is.
	onward = 0.9
	// mostTries is beyond what halving a bracket down to agreed needs.
	mostTries = 120
)

// MostPower returns the largest constant power that a branch could have at m,
// with its other loads and those of all other branches as they are: what the
// cables and the bank can carry there, whatever it does to voltages and
// conductors. With nothing else on the harness it is E²/4R, and half of the
// voltage is lost.
//
// It is a [*NetworkError] with ErrUnknown if there is no such branch and with
// ErrCollapse if the other loads are too much by themselves, and a
// [*units.RangeError] where no resistance limits the power. Other errors are
// those of [Harness.Solve].
func (h *Harness) MostPower(branch string, m Moment) (units.Power, error) {
	const op = "wire.Harness.MostPower"
	var f Flow
	if err := f.begin(op, h, m); err != nil {
		return 0, err
	}
	i, ok := h.index[branch]
	if !ok {
		return 0, &NetworkError{Op: op, What: "branch", Name: branch, Cause: ErrUnknown}
	}
	most, ok := f.mostPower(i)
	if !ok {
		return 0, &NetworkError{Op: op, What: "branch", Name: branch, Cause: ErrCollapse}
	}
	if err := (units.Bounds[units.Power]{}).Check(op, "power of the branch", most); err != nil {
		return 0, err
	}
	return most, nil
}

// mostPower searches the largest power of branch i; it is infinite if there
// is no resistance. Not ok if the other loads are too much.
func (f *Flow) mostPower(i int) (units.Power, bool) {
	at := 0
	for k, j := range f.harness.order {
		if int(j) == i {
			at = k
		}
	}
	// With nothing else on it, the way there could feed E²/4R.
	g, path := &f.grid, f.grid.r
	for k := int32(at); k >= 0; k = g.cells[k].parent {
		path += g.cells[k].r
	}
	watts, ok := f.end(at, g.e/(4*path)*g.e)
	return units.Power(watts), ok
}

// collapse finds by how much the loads are too much. Resistances alone always
// have a state; one that float64 cannot hold is an error.
func (f *Flow) collapse(op string) error {
	scale, ok := f.end(everyLoad, 1)
	if !ok {
		return units.Above[units.Voltage](0).Check(op, "Voltage", 0)
	}
	c := Collapse{Scale: units.Ratio(scale), Branch: f.weightiest()}
	if err := units.Above[units.Ratio](0).Check(op, "Collapse.Scale", c.Scale); err != nil {
		return err
	}
	c.Load = f.loads[c.Branch]
	if c.Load.Power > 0 {
		if most, ok := f.mostPower(c.Branch); ok {
			c.Most = units.Some(most)
		}
	}
	f.Rounds = f.grid.rounds
	f.Collapse = units.Some(c)
	return nil
}

// end returns where the ramp ends, which is not above high. Not ok if not
// even its beginning has a state.
func (f *Flow) end(ramp int, high float64) (float64, bool) {
	g := &f.grid
	f.ramp(ramp, 0)
	g.start()
	if !g.newton() {
		return 0, false
	}
	if !(high > 0) || math.IsInf(high, 0) {
		return high, true
	}
	s := search{ramp: ramp, high: high * (1 + agreed)}
	f.advance(&s, 0)
	for range mostTries {
		if s.found() {
			break
		}
		x := s.next()
		f.ramp(ramp, x)
		f.recall()
		if g.newton() {
			f.advance(&s, x)
		} else {
			s.high, s.last = x, 0
		}
	}
	return s.answer(), true
}

// A search is how far along a ramp one has come.
type search struct {
	ramp      int
	low, high float64 // the end is between them
	flat      float64 // at low, the square of 1/steepness
	end, last float64 // estimates of the end, the newest and the one before; 0: none
	points    int     // how many states were found
}

// found reports whether the end is known.
func (s *search) found() bool {
	if s.high-s.low <= agreed*s.high {
		return true
	}
	return s.inside() && math.Abs(s.end-s.last) <= agreed*s.end && s.end-s.low <= nearBy*s.end
}

// inside reports whether the newest estimate is one at all.
func (s *search) inside() bool { return s.low < s.end && s.end <= s.high }

// next returns where to try next.
func (s *search) next() float64 {
	if s.inside() && s.points > 1 {
		return s.low + onward*(s.end-s.low)
	}
	return s.low + (s.high-s.low)/2
}

// answer returns the end.
func (s *search) answer() float64 {
	if s.inside() && s.high-s.low > agreed*s.high {
		return s.end
	}
	return s.low
}

// ramp sets the loads at x of a ramp.
func (f *Flow) ramp(at int, x float64) {
	g := &f.grid
	g.straight = true
	for k, i := range f.harness.order {
		c := &g.cells[k]
		c.amps, c.watts = float64(f.loads[i].Current), float64(f.loads[i].Power)
		switch at {
		case everyLoad:
			c.amps *= x
			c.watts *= x
		case k:
			c.watts = x
		}
		g.straight = g.straight && c.watts == 0
	}
}

// recall goes back to the voltages of the last state. They are above those of
// any state further on, as newton needs.
func (f *Flow) recall() {
	for k := range f.held {
		f.grid.cells[k].v = f.held[k]
	}
}

// advance notes the state found at x and estimates the end.
func (f *Flow) advance(s *search, x float64) {
	g := &f.grid
	f.held = f.held[:0]
	for k := range g.cells {
		f.held = append(f.held, g.cells[k].v)
	}
	steepest, zero := f.tangent(s.ramp)
	flat := 1 / steepest / steepest
	was, before := s.flat, s.low
	s.low, s.flat, s.last = x, flat, s.end
	s.points++
	s.end = x + zero
	// V'' is -J⁻¹(F_VV·V'V' + 2·F_Vx·V'), where V' and F_Vx are not above 0 and
	// the others not below: voltages fall ever faster, and none lasts beyond
	// its tangent.
	s.high = min(s.high, s.end*(1+agreed))
	if s.points > 1 && was > flat {
		s.end = min(s.end, x+flat*((x-before)/(was-flat)))
	}
}

// tangent puts into j how fast each voltage falls along the ramp. It returns
// the fastest, and how far along the first voltage would reach 0 at that rate.
func (f *Flow) tangent(ramp int) (steepest, zero float64) {
	g := &f.grid
	for k, i := range f.harness.order {
		c := &g.cells[k]
		c.linearise()
		switch {
		case ramp == everyLoad:
			c.j = float64(f.loads[i].Current) + float64(f.loads[i].Power)/c.v
		case ramp == k:
			c.j = 1 / c.v
		default:
			c.j = 0
		}
	}
	j, y, _ := g.eliminate()
	root := g.r * j / (1 + g.r*y)
	zero = math.Inf(1)
	for k := range g.cells {
		c := &g.cells[k]
		above := root
		if c.parent >= 0 {
			above = g.cells[c.parent].j
		}
		// From here on j is the rate, which children read.
		c.j = (above + c.r*c.j) * c.shrink
		steepest = max(steepest, c.j)
		zero = min(zero, c.v/c.j)
	}
	return steepest, zero
}

// weightiest returns the branch whose load, made smaller by a small part,
// would help most where the search has ended.
func (f *Flow) weightiest() int {
	f.recall()
	f.tangent(everyLoad)
	best, most := 0, -1.0
	for k, i := range f.harness.order {
		c, load := &f.grid.cells[k], f.loads[i]
		weight := (float64(load.Current) + float64(load.Power)/c.v) * c.j
		// Of equals the first declared, whatever the order of walking.
		if weight > most || weight == most && int(i) < best {
			best, most = int(i), weight
		}
	}
	return best
}
