package plan

import "strconv"

// firstOf returns the circuit that a circuit is fed by in the end, itself if
// nothing feeds it. It reports false if the feeders go round in a circle.
func firstOf(r Rig, c Circuit) (first Circuit, ok bool) {
	for range len(r.Circuits) + 1 {
		feeder, known := circuitIn(r, c.Feeder)
		if !known {
			return c, true
		}
		c = feeder
	}
	return c, false
}

// feedsItself reports whether a circuit is among its own feeders.
func feedsItself(r Rig, c Circuit) bool {
	next := c
	for range r.Circuits {
		feeder, known := circuitIn(r, next.Feeder)
		if !known {
			return false
		}
		if feeder.Name == c.Name {
			return true
		}
		next = feeder
	}
	return false
}

// wholeTree reports whether no mistake is known of the circuits that feed one
// or hang with it on the same, nor of the roof if it comes from there.
func (m *maker) wholeTree(c Circuit) bool {
	first, ok := firstOf(m.rig, c)
	for i, other := range m.rig.Circuits {
		root, known := firstOf(m.rig, other)
		if known && root.Name == first.Name {
			ok = ok && m.sound("circuits["+strconv.Itoa(i)+"]") && (m.sound("roof") || !other.String && other.From != "controller")
		}
	}
	return ok
}
