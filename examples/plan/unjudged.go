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
	needed, source := neededFor(c), physics("the load against the device")
	if units.Exceeds(needed, c.Load) {
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

// neededFor returns what a device must carry: the load, with 125 % of what of it
// runs for three hours or more.
func neededFor(c wire.Circuit) units.Current {
	hours := c.ForHours.Or(0)
	if c.Continuous {
		hours = c.ForHours.Or(c.Load)
	}
	return c.Load + units.Scale(hours, inverter.NECMargin-units.One)
}

// asLaid takes over how a conductor lies that no table is used for.
func (l *CircuitLine) asLaid(c wire.Circuit) {
	x := c.Installation
	l.Insulation, l.Ambient, l.Bundled, l.Device.Least = x.Insulation, x.Ambient, x.Conductors, neededFor(c)
	if x.Terminals != 0 {
		l.Terminals = units.Some(x.Terminals)
	}
}

// untabled returns what a rule set and Ohm's law say without a table: the place
// of the device and the shorts at both ends of the circuit.
func (m *maker) untabled(path, name string, c wire.Circuit, line *CircuitLine) (found []working.Finding) {
	p := wire.Protection{Circuit: c, Needed: neededFor(c)}
	if cold, ok := c.Fault.Get(); ok {
		short := func(s wire.FaultSource, celsius units.Temperature, far units.Length) (wire.Fault, bool) {
			f, err := wire.ShortCircuit(s, wire.Conductor{Size: c.Installation.Size, Metal: c.Installation.Metal, Temperature: celsius}, far)
			return f, m.ok(path, err)
		}
		near, ok := short(cold, units.Celsius(20), c.FromSource.Or(0))
		end, too := short(c.FaultWarm.Or(cold), wire.WarmCopper(), c.OneWay)
		if !ok || !too {
			return nil
		}
		m.sheetOn(name, "at the device, cold", near.Working())
		m.sheetOn(name, "at the far end, warm", end.Working())
		p.AtDevice, p.AtEnd, line.Fault = near, end, units.Some(near.Current)
	}
	for _, f := range inWords(p.Findings()) {
		switch f.Rule {
		case "fault-not-given", "interrupting-not-stated", "interrupting-too-low", "far-fault-too-weak", "far-fault-slow",
			"place-not-stated", "device-far-from-source", "distance-not-judged", "place-from-memory":
			found = append(found, f)
		}
	}
	return found
}
