package plan

import (
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// outlet returns what shore power carries: the service of the trailer, or the
// receptacle at the other end of an adapter if that is smaller.
func (s Shore) outlet() units.Current {
	return min(s.Service, s.Receptacle.Or(s.Service))
}

// leastOf returns the smaller of two currents that may not be given.
func leastOf(a, b units.Opt[units.Current]) units.Opt[units.Current] {
	x, ok := a.Get()
	if y, also := b.Get(); also && (!ok || y < x) {
		return b
	}
	return a
}

// generatorVoltage returns that of the buses which the generator feeds.
func (m *maker) generatorVoltage() (units.Voltage, bool) {
	for _, b := range m.rig.Buses {
		if b.Kind == loads.Alternating {
			return b.Voltage, true
		}
	}
	return 0, false
}
