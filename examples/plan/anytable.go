package plan

import (
	"slices"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// aboveAnyTable returns the danger of a device that lets a conductor carry, for
// as long as it likes, more than any table does. It holds whatever the rule set
// is, and needs none that knows the size.
func aboveAnyTable(c wire.Circuit) []working.Finding {
	device, stated := c.Device.Get()
	if !stated {
		return nil
	}
	// What a conductor bears of a current does not depend on its run.
	drop, err := wire.VoltageDrop(wire.Run{Current: device, OneWay: 1 * units.Metre, Source: 1 * units.Volt,
		Conductor: wire.Conductor{Size: c.Installation.Size, Metal: c.Installation.Metal}})
	if err != nil {
		return nil // as the drop of the circuit, which says it
	}
	heat := drop.Findings()
	at := slices.IndexFunc(heat, func(f working.Finding) bool { return f.Rule == "current-above-any-ampacity" })
	if at < 0 {
		return nil
	}
	f := heat[at]
	f.Rule = "device-above-any-ampacity"
	f.Message = "The overcurrent device is above what any table allows this conductor with insulation up to 105 °C, even in free air: the conductor can burn before the device opens."
	f.Fix = "Fit a device that the code with this size allows, or a larger conductor."
	f.Numbers[0].Name = "device"
	return []working.Finding{f}
}
