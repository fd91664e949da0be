// Package wire answers what an electrician asks of a conductor: how thick it
// is, what resistance it has warm, how much voltage a run of it loses, which
// size keeps the loss within a limit and how far a size reaches; what current
// it may carry, which device protects it, and what a short circuit draws.
//
//	drop, err := wire.VoltageDrop(wire.Run{
//		Current:   20 * units.Ampere,
//		OneWay:    15 * units.Foot,
//		Conductor: wire.Conductor{Size: wire.AWG(10)},
//		Source:    12.8 * units.Volt,
//	})
//
// Lengths are one way, source to load; the return conductor is added. A
// result holds the input as used and every intermediate value; its Working
// shows the calculation step by step with the source of each number, and its
// Findings say what needs attention.
//
// Flexible cords have tables of their own, [CordAmpacity]; a path is as good as
// its weakest part, [WeakestPart]; what a short circuit does to a conductor in
// seconds is [Adiabatic]; and [FreeAir] shows where ampacities come from.
//
// A size must pass twice, for drop and for heat: a run that passes on drop can
// still overheat, and the findings say so each time. Ampacity and protection
// are held against a rule set that the caller names; see [RuleSet].
//
// Where a resistance comes from is a choice with a name, a [Basis]: the tables
// in print differ, and the book shows why. Alternating current has its
// reactance, [ACDrop], and a service of two legs its shared neutral: what it
// drops, [LegDrop], what it carries and may, [SharedNeutral], and what its loss
// does, [OpenNeutral]. A conductor warms under its load, [WarmDrop].
//
// What an installer states of a circuit, in whole or in part, is held against all
// of this by [Check]: a verdict on each claim, and what to ask.
//
// A system of many conductors is a [Harness]: a tree of loads, or batteries in
// parallel with their links.
//
// Left out here: skin effect beyond what the table of alternating current has
// in it, three phases, and currents that are not sines.
//
// Electrical work in a vehicle can start a fire. Local codes and a licensed
// electrician come before any number of this package.
package wire
