package wire

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// anyTable is what a device of a conductor without a row is held against.
var anyTable = working.Source{Title: "33 CFR 183.425 Table 5, the next larger gauge in free air, for other metals by the square root of the conductivity",
	Provenance: working.Derived}

// workOutShorts fills in what needs no row of a table: the shorts. Conductors
// in parallel share a fault whether or not a rule set counts them together.
func (c *Checked) workOutShorts(op string) error {
	if !c.Circuit.Fault.IsSet() {
		return nil
	}
	p := Protection{Circuit: c.Circuit}
	p.Capacity.Counted = max(c.Quote.Parallel, 1)
	if err := p.faults(op); err != nil {
		return err
	}
	c.AtDevice, c.Protection = p.AtDevice, p
	return nil
}

// mostDevice returns the greatest device that any table here could allow on a
// conductor that the rule set has no row for; 0 if none reaches it. The next
// larger gauge in free air is kind to it, and so is all that the rule set adds
// to an ampacity.
func (c Checked) mostDevice() units.Current {
	x := c.Circuit.Installation
	bears := freeAir(x.Size, x.Insulation)
	if bears == 0 {
		return 0
	}
	// The same heat in the same place: I² · ρ is that of copper.
	at := WarmCopper()
	bears = units.Scale(bears, units.Ratio(math.Sqrt(float64(units.RatioOf(Copper.resistivity(at), x.Metal.resistivity(at))))))
	bears = units.Scale(bears, units.Ratio(max(x.Parallel, 1)))
	switch {
	case x.Rules == Boat33CFR:
		return units.Scale(bears, boatFactor)
	case x.Rules.isNEC():
		return max(bears, nextRating(x.Rules, c.Circuit.Kind, bears))
	}
	return bears
}

// mostDeviceFindings holds the device against mostDevice.
func (c Checked) mostDeviceFindings() []working.Finding {
	device, stated := c.Circuit.Device.Get()
	most := c.mostDevice()
	if !c.Quote.Size.IsValid() || !stated || most == 0 || !units.Exceeds(device, most) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "device-above-any-table", Source: anyTable,
		Numbers: []working.Number{{Name: "device", Value: device}, {Name: "most by any table", Value: most}, c.loadNumber()},
		Message: "The overcurrent device is above what any table here allows, even for a thicker conductor in free air: the conductor can burn before the device opens.",
		Fix:     "Fit a smaller device, or a larger conductor; hold both against the code that has this conductor.",
	}}
}
