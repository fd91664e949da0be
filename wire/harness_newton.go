package wire

import "math"

// The tree is solved by Newton's method. Let V be the voltages of the nodes
// and F(V) the current that the loads draw at V less what the feeders bring:
// F is convex, since P/V is, and its Jacobian, conductances less P/V² on the
// diagonal, has nothing positive off the diagonal. From this follows:
//
//   - The no-load voltages are at or above every solution, and no current is
//     missing there: F >= 0. By convexity the same holds after each step.
//   - If a solution exists, the Jacobian at each such V is an M-matrix: by
//     convexity J·(V - solution) >= F(V) >= 0, with V - solution >= 0. So
//     every pivot of an elimination is above 0, V falls monotonically to the
//     highest solution, the stable one, and in the end quadratically.
//   - So a pivot that is not above 0 proves that there is no solution, and a
//     voltage that is not above 0 that there is none with all voltages above
//     0, as loads need: collapse is found, not guessed from a count of rounds.
//
// This is the monotone Newton theorem (Ortega and Rheinboldt, Iterative
// Solution of Nonlinear Equations in Several Variables, 1970, 13.3; from
// memory). Elimination from the leaves to the root fills nothing in, so a
// round costs the same for each branch. It is written with resistances, not
// conductances: seen from its parent, what hangs on a branch draws j + y·V,
// and behind its feeder r the same with j and y divided by 1 + r·y, so that r
// may be 0.

const (
	// closeEnough is the last step allowed, as a part of the voltage. Steps
	// square from one to the next, so what is left is far less; within a part
	// in 1e12 of collapse, where they only halve, it is as much.
	closeEnough = 1e-10
	// mostRounds is beyond what halving steps need to reach float64 noise, so
	// that only what lies within noise of collapse ends there, and counts as
	// collapsed.
	mostRounds = 100
)

// A cell is a node of the tree while it is solved.
type cell struct {
	r       float64 // ohms of the feeder, there and back
	amps    float64 // constant current drawn
	watts   float64 // constant power drawn
	siemens float64 // conductance drawn
	v       float64 // volts
	j, y    float64 // what hangs here draws j + y·v, near v
	shrink  float64 // 1/(1 + r·y)
	parent  int32   // -1: the bank
}

// A grid is a tree with its bank, ready to be solved.
type grid struct {
	cells    []cell // parents first
	e, r     float64
	v        float64 // volts at the posts of the bank
	rounds   int
	straight bool // no constant power: one round is all
}

// newton moves the voltages from where they are, which must be at or above a
// solution, to it. It returns false if there is none.
func (g *grid) newton() bool {
	for k := range g.cells {
		g.cells[k].linearise()
	}
	for range mostRounds {
		g.rounds++
		j, y, ok := g.eliminate()
		if !ok {
			return false
		}
		pivot := 1 + g.r*y
		if !(pivot > 0) {
			return false
		}
		g.v = (g.e - g.r*j) / pivot
		done, ok := g.substitute()
		if !ok {
			return false
		}
		if done || g.straight {
			return true
		}
	}
	return false
}

// linearise puts the tangent to the load at v into j and y.
func (c *cell) linearise() {
	amps := c.watts / c.v
	c.j = c.amps + 2*amps
	c.y = c.siemens - amps/c.v
}

// eliminate goes from the leaves to the root, and returns what hangs on the
// bank; not ok if a pivot is not above 0.
func (g *grid) eliminate() (j, y float64, ok bool) {
	for k := len(g.cells) - 1; k >= 0; k-- {
		c := &g.cells[k]
		pivot := 1 + c.r*c.y
		if !(pivot > 0) {
			return 0, 0, false
		}
		c.shrink = 1 / pivot
		if c.parent < 0 {
			j += c.j * c.shrink
			y += c.y * c.shrink
			continue
		}
		p := &g.cells[c.parent]
		p.j += c.j * c.shrink
		p.y += c.y * c.shrink
	}
	return j, y, true
}

// substitute goes from the root to the leaves with the new voltages, and
// makes ready for the next round. It reports whether every step was small;
// not ok if a voltage is not above 0.
func (g *grid) substitute() (done, ok bool) {
	if !(g.v > 0) {
		return false, false
	}
	done = true
	for k := range g.cells {
		c := &g.cells[k]
		above := g.v
		if c.parent >= 0 {
			above = g.cells[c.parent].v
		}
		v := (above - c.r*c.j) * c.shrink
		if !(v > 0) {
			return false, false
		}
		within := g.e
		if c.watts > 0 {
			within = v
		}
		if !(math.Abs(c.v-v) <= closeEnough*within) {
			done = false
		}
		c.v = v
		c.linearise()
	}
	return done, true
}

// start puts every voltage to that of the bank without load.
func (g *grid) start() {
	for k := range g.cells {
		g.cells[k].v = g.e
	}
}
