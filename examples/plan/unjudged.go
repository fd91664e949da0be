package plan

import (
	"errors"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// notTabulated reports whether a rule set has no row for a size, which is no
// mistake in the description.
func notTabulated(err error) bool {
	var limits *units.RangeError
	return errors.As(err, &limits) && limits.Field == "Size"
}

// notJudged says of a conductor of a size that its rule set does not know what
// is not judged, and what needs no table: whether there is a device where one
// is needed, and whether it carries the load.
func notJudged(c wire.Circuit, needsDevice bool) []working.Finding {
	rules := c.Installation.Rules.String()
	size := c.Installation.Size.String()
	found := []working.Finding{{
		Severity: working.Caution, Rule: "conductor-not-judged", Source: common("a table holds for the sizes that are in it"),
		Numbers: []working.Number{{Name: "load", Value: c.Load}},
		Message: "Not judged: the table of " + rules + " has no row for " + size + ", so nothing here says what this conductor carries, which device protects it, and whether that opens on a short.",
		Fix:     "Hold conductor and device against the code that has this size, or have somebody licensed do it; the drop is worked out.",
	}}
	found = append(found, aboveAnyTable(c)...)
	needed, source := c.Load, physics("the load against the device")
	if hours := continuousPart(c); hours > 0 {
		needed += units.Scale(hours, inverter.NECMargin-units.One)
		source = working.Source{Title: "National Electrical Code", Body: "NFPA 70", Edition: "2017", Place: "210.20, 215.3: 125 % of what runs for hours", Provenance: working.Read}
	}
	device, stated := c.Device.Get()
	switch {
	case stated && units.Exceeds(needed, device):
		found = append(found, working.Finding{
			Severity: working.Caution, Rule: "device-below-load", Source: source,
			Numbers: []working.Number{{Name: "device", Value: device}, {Name: "needed", Value: needed}},
			Message: "The device is smaller than the load needs and will open in use.",
			Fix:     "Use a larger device if the conductor allows it, else a larger conductor.",
		})
	case !stated && needsDevice:
		found = append(found, working.Finding{
			Severity: working.Danger, Rule: "no-device-stated", Source: physics("a short is cut off by a device or by nothing"),
			Numbers: []working.Number{{Name: "needed", Value: needed}},
			Message: "No overcurrent device is stated, so a short in this conductor is cut off by nothing.",
			Fix:     "Find the device and state its rating, or fit one at the source.",
		})
	}
	return found
}

// continuousPart returns what of a load runs for three hours or more.
func continuousPart(c wire.Circuit) units.Current {
	if c.Continuous {
		return c.ForHours.Or(c.Load)
	}
	return c.ForHours.Or(0)
}
