package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// rvReach is how far from the source a device may sit by NEC 552.10(E)(4), as
// an article on the code of 2020 says.
const rvReach = 18 * units.Inch

// How far it may sit on a boat: by 33 CFR 183.455(b) in the open, and where the
// conductor is sheathed or enclosed; and by 183.460, from memory, where the
// conductor begins on a battery post.
const (
	boatOpen     = 7 * units.Inch
	boatSheathed = 40 * units.Inch
	boatPost     = 72 * units.Inch
)

// placeFindings looks at where the device sits.
func (p Protection) placeFindings() []working.Finding {
	rules := p.Circuit.Installation.Rules
	from, ok := p.Circuit.FromSource.Get()
	switch {
	case !ok && p.Circuit.Device.IsSet() && !rules.isNEC():
		return []working.Finding{{
			Severity: working.Note, Rule: "place-not-stated", Source: p.placeSource(),
			Numbers: []working.Number{{Name: "distance from the source", Value: nil}},
			Message: "How far the device sits from the source is not stated, so it is not judged.",
			Fix:     "Measure it along the conductor; what lies before the device has no protection.",
		}}
	case !ok || from == 0:
		return nil
	case rules == RVLowVoltage && units.Exceeds(from, rvReach):
		f := p.farFinding(working.Danger, rvPlace, "at most", rvReach)
		f.Message += " The distance is that for park trailers."
		return []working.Finding{f}
	case rules == Boat33CFR:
		return p.boatPlaceFindings(from)
	case rules.isNEC():
		f := p.farFinding(working.Note, necTaps, "", 0)
		f.Rule = "distance-not-judged"
		f.Message, f.Fix = "How far the device may sit from the source is not judged by this rule set here.", "Hold it against the rules for taps."
		return []working.Finding{f}
	}
	return nil
}

// boatPlaceFindings holds the place against 33 CFR 183.
func (p Protection) boatPlaceFindings(from units.Length) []working.Finding {
	c := p.Circuit
	switch {
	case !units.Exceeds(from, boatOpen), c.Enclosed && !units.Exceeds(from, boatSheathed):
		return nil
	case c.OnBatteryPost && units.Exceeds(from, boatPost):
		return []working.Finding{p.farFinding(working.Danger, boatBattery, "at most", boatPost)}
	case c.OnBatteryPost:
		f := p.farFinding(working.Note, boatBattery, "at most", boatPost)
		f.Rule = "place-from-memory"
		f.Message = "The distance allowed from a battery post is used from memory. The conductor before the device has no protection."
		f.Fix = "Confirm it in 33 CFR 183.460, or move the device to the battery."
		return []working.Finding{f}
	case units.Exceeds(from, boatSheathed):
		return []working.Finding{p.farFinding(working.Danger, boatPlace, "at most", boatSheathed)}
	}
	f := p.farFinding(working.Caution, boatPlace, "at most, unless sheathed", boatOpen)
	f.Message += " It must be sheathed or enclosed."
	return []working.Finding{f}
}

// farFinding says how far the device is, and how far it may be; 0 if that is
// not known.
func (p Protection) farFinding(severity working.Severity, src working.Source, most string, reach units.Length) working.Finding {
	f := working.Finding{
		Severity: severity, Rule: "device-far-from-source", Source: src,
		Numbers: []working.Number{{Name: "distance", Value: p.Circuit.FromSource.Or(0), Unit: "in"}},
		Message: "The device protects what is behind it. The conductor between the source and the device has no protection.",
		Fix:     "Move the device to the source.",
	}
	if p.AtDevice.Current > 0 {
		f.Numbers = append(f.Numbers, working.Number{Name: "fault current at the device", Value: p.AtDevice.Current})
	}
	if reach > 0 {
		f.Numbers = append(f.Numbers, working.Number{Name: most, Value: reach, Unit: "in"})
	}
	return f
}

// placeSource says which rule tells where a device may sit.
func (p Protection) placeSource() working.Source {
	if p.Circuit.Installation.Rules == Boat33CFR {
		return boatPlace
	}
	return rvPlace
}
