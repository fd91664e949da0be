package plan

import (
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// controllerOutput returns the most that the controller lets into the bank: its
// limit, or what the panels bring through one that has no way to limit it.
func (m *maker) controllerOutput() units.Current {
	return max(m.rig.Roof.Controller.OutputLimit, m.fit.Charging)
}

// aboveController reports whether the panels bring more than the limit of their
// controller.
func (m *maker) aboveController() bool {
	return m.rig.Roof != nil && units.Exceeds(m.fit.Charging, m.rig.Roof.Controller.OutputLimit)
}

// brightest returns the greatest current behind a controller in sun above that
// of the nameplate, 0 if the controller keeps it off: a PWM controller passes
// the current of the array on.
func (m *maker) brightest() units.Current {
	if m.rig.Roof == nil || m.fit.Hookup.Controller.Kind != solar.PWM {
		return 0
	}
	return m.fit.Currents.Maximum
}
