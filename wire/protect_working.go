package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the device and its limits came about, step by step.
func (p Protection) Working() *working.Sheet {
	c := p.Circuit
	s := working.NewSheet("Protection of " + c.Installation.Size.String() + " copper by " + c.Installation.Rules.String())
	p.Capacity.steps(s)
	needed := p.neededSteps(s)
	limit := p.limitSteps(s)
	if device, ok := c.Device.Get(); ok {
		s.Given("I_device", device, "A", "device as stated")
		s.Test("device against the load", needed+" <= I_device", !units.Exceeds(p.Needed, device))
		s.Test("device against its limit", "I_device <= "+limit, !units.Exceeds(device, p.Limit))
	} else {
		s.Choose("device", "none stated", "nothing is assumed in its place", working.Source{})
	}
	p.faultSteps(s)
	return s
}

// faultSteps appends both faults. Each has its own conductor temperature, so
// what differs between them has a symbol of its own.
func (p Protection) faultSteps(s *working.Sheet) {
	if p.AtEnd.Current <= 0 {
		return
	}
	p.AtEnd.steps(s, "I_end")
	s.Given("R_near", p.AtDevice.Loop, "mΩ", "resistance of the cold run up to the device, there and back")
	s.Formula("I_near", p.AtDevice.Current, "A", "fault current at the device", "1000 * E / (R_source + R_near)")
	if breaks, ok := p.Circuit.Interrupting.Get(); ok {
		s.Given("I_breaks", breaks, "A", "interrupting rating of the device")
		s.Test("fault against what the device can break", "I_near <= I_breaks", !units.Exceeds(p.AtDevice.Current, breaks))
	}
}

// neededSteps appends what the device must carry and returns its symbol.
func (p Protection) neededSteps(s *working.Sheet) string {
	s.Given("I_load", p.Circuit.Load, "A", "greatest current of the load")
	if !p.Circuit.Continuous {
		return "I_load"
	}
	s.Constant("k_continuous", continuousFactor, "1", "for a load of three hours or more", necContinuous)
	s.Formula("I_needed", p.Needed, "A", "what the device must carry", "k_continuous * I_load")
	return "I_needed"
}

// limitSteps appends the greatest device that the rule set allows and returns
// its symbol.
func (p Protection) limitSteps(s *working.Sheet) string {
	const symbol, what = "I_limit", "greatest device that the rule set allows"
	size := p.Circuit.Installation.Size.String()
	switch p.Rule {
	case LimitBoat:
		s.Constant("k_boat", boatFactor, "1", "part of the ampacity that a device may have", boatDevice)
		s.Formula(symbol, p.Limit, "A", what, "k_boat * I_z")
	case LimitNextRating:
		s.LookUp(symbol, p.Limit, "A", what, working.Lookup{Source: necRatings,
			Key: "ampacity " + p.Capacity.Current.String(), Row: "next standard rating up, which 240.4(B) allows to 800 A"})
	case LimitSmallConductor:
		s.LookUp(symbol, p.Limit, "A", what, working.Lookup{Source: p.limitSource(), Key: size, Row: size})
	default:
		s.Choose("greatest device", "the ampacity", "this rule set allows none above it", p.Capacity.source())
		return "I_z"
	}
	return symbol
}

// limitSource says which rule set the limit.
func (p Protection) limitSource() working.Source {
	switch {
	case p.Rule == LimitBoat:
		return boatDevice
	case p.Rule == LimitNextRating:
		return necNextUp
	case p.Rule == LimitSmallConductor && p.Circuit.Installation.Rules == NEC2017:
		return necSmall
	}
	return p.Capacity.source()
}

// rvReach is how far from the source a device may sit by NEC 552.10(E)(4), as
// an article on the code of 2020 says.
const rvReach = 18 * units.Inch

// How far it may sit on a boat, by 33 CFR 183.455(b): in the open, and where
// the conductor is sheathed or enclosed.
const (
	boatOpen     = 7 * units.Inch
	boatSheathed = 40 * units.Inch
)

// fuseSlow is the part of the far-end fault that a device may have to open
// within seconds: common practice, a third.
const fuseSlow = 3

// Findings returns what is wrong or missing, worst first. A device that was
// not stated is a danger, never a default.
func (p Protection) Findings() []working.Finding {
	f := p.deviceFindings()
	f = append(f, p.faultFindings()...)
	f = append(f, p.Capacity.Findings()...)
	working.Sort(f)
	return f
}

func (p Protection) deviceFindings() (f []working.Finding) {
	c := p.Circuit
	device, stated := c.Device.Get()
	limit := working.Number{Name: "limit by " + c.Installation.Rules.String(), Value: p.Limit}
	needed := working.Number{Name: "needed", Value: p.Needed}
	switch {
	case !stated:
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "no-device-stated", Numbers: []working.Number{limit, needed}, Source: p.limitSource(),
			Message: "No overcurrent device is stated, so a short in this conductor is cut off by nothing.",
			Fix:     "Find the device and state its rating, or fit one at the source.",
		})
	case units.Exceeds(device, p.Limit):
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "device-above-limit", Source: p.limitSource(),
			Numbers: []working.Number{{Name: "device", Value: device}, limit, needed},
			Message: "The overcurrent device is above what this conductor may have: the conductor can burn before the device opens.",
			Fix:     p.limitFix(),
		})
	case units.Exceeds(device, p.Capacity.Current):
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "device-above-ampacity", Source: p.limitSource(),
			Numbers: []working.Number{{Name: "device", Value: device}, {Name: "ampacity", Value: p.Capacity.Current}, {Name: "rating below it", Value: p.Below}},
			Message: "The device is above the ampacity, which this rule set allows, though not for more than one receptacle on a branch circuit.",
			Fix:     "Say if the circuit feeds receptacles for portable loads; for a device not above the ampacity take the rating below it if the load allows.",
		})
	}
	if stated && units.Exceeds(p.Needed, device) {
		source := ohmsLaw
		if c.Continuous {
			source = necContinuous
		}
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "device-below-load", Source: source,
			Numbers: []working.Number{{Name: "device", Value: device}, needed},
			Message: "The device is smaller than the load needs and will open in use.",
			Fix:     "Use a larger device if the conductor allows it, else a larger conductor.",
		})
	}
	if units.Exceeds(c.Load, p.Capacity.Current) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "load-above-ampacity", Source: p.Capacity.source(),
			Numbers: []working.Number{{Name: "load", Value: c.Load}, {Name: "ampacity", Value: p.Capacity.Current}},
			Message: "The load is above the ampacity of the conductor, which overheats in normal use.",
			Fix:     "Use a larger conductor.",
		})
	} else if fits := stated && !units.Exceeds(p.Needed, device) && !units.Exceeds(device, p.Limit); !fits && (p.Smallest == 0 || units.Exceeds(p.Smallest, p.Limit)) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "no-device-fits", Source: p.limitSource(),
			Numbers: []working.Number{needed, limit},
			Message: "No standard device both carries the load and protects the conductor.",
			Fix:     "Use a larger conductor.",
		})
	}
	f = append(f, p.continuousFindings()...)
	return append(f, p.placeFindings()...)
}

// continuousFindings holds the conductor, too, against 125 % of a continuous
// load, by its table and terminals before correction.
func (p Protection) continuousFindings() []working.Finding {
	bears := p.Capacity.Table
	if p.Capacity.Terminals > 0 {
		bears = min(bears, p.Capacity.Terminals)
	}
	if p.Circuit.Installation.Rules != NEC2017 || !p.Circuit.Continuous || !units.Exceeds(p.Needed, bears) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "conductor-below-continuous", Source: necConductor,
		Numbers: []working.Number{{Name: "needed", Value: p.Needed}, {Name: "ampacity before correction", Value: bears}},
		Message: "The load runs for hours, and the conductor has less than 125 % of it.",
		Fix:     "Use a larger conductor.",
	}}
}

// limitFix says what device would do.
func (p Protection) limitFix() string {
	fits := ratingBelow(p.Circuit.Installation.Rules, p.Limit)
	switch {
	case p.Smallest == 0 || units.Exceeds(p.Smallest, p.Limit):
		return "Use a larger conductor; no device would suit this one and the load."
	case p.Smallest == fits:
		return "Fit a device of " + fits.String() + "."
	}
	return "Fit a device of " + p.Smallest.String() + " to " + fits.String() + "."
}

// placeFindings looks at where the device sits.
func (p Protection) placeFindings() []working.Finding {
	from, ok := p.Circuit.FromSource.Get()
	if !ok && p.Circuit.Device.IsSet() && p.Circuit.Installation.Rules != NEC2017 {
		return []working.Finding{{
			Severity: working.Note, Rule: "place-not-stated", Source: p.placeSource(),
			Numbers: []working.Number{{Name: "distance from the source", Value: nil}},
			Message: "How far the device sits from the source is not stated, so it is not judged.",
			Fix:     "Measure it along the conductor; what lies before the device has no protection.",
		}}
	}
	if !ok || from == 0 {
		return nil
	}
	f := working.Finding{
		Rule: "device-far-from-source", Numbers: []working.Number{{Name: "distance", Value: from, Unit: "in"}},
		Message: "The device protects what is behind it. The conductor between the source and the device has no protection.",
		Fix:     "Move the device to the source.",
	}
	if p.AtDevice.Current > 0 {
		f.Numbers = append(f.Numbers, working.Number{Name: "fault current at the device", Value: p.AtDevice.Current})
	}
	switch rules := p.Circuit.Installation.Rules; {
	case rules == RVLowVoltage && units.Exceeds(from, rvReach):
		f.Severity, f.Source = working.Danger, rvPlace
		f.Numbers = append(f.Numbers, working.Number{Name: "at most", Value: rvReach, Unit: "in"})
	case rules == Boat33CFR && units.Exceeds(from, boatSheathed):
		f.Severity, f.Source = working.Danger, boatPlace
		f.Numbers = append(f.Numbers, working.Number{Name: "at most", Value: boatSheathed, Unit: "in"})
	case rules == Boat33CFR && units.Exceeds(from, boatOpen):
		f.Severity, f.Source = working.Caution, boatPlace
		f.Numbers = append(f.Numbers, working.Number{Name: "at most, unless sheathed", Value: boatOpen, Unit: "in"})
		f.Message += " It must be sheathed or enclosed."
	case rules == NEC2017:
		f.Severity, f.Rule = working.Note, "distance-not-judged"
		f.Source = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Place: "240.21", Provenance: working.Memory}
		f.Message, f.Fix = "How far the device may sit from the source is not judged by this rule set here.", "Hold it against the rules for taps."
	default:
		return nil
	}
	return []working.Finding{f}
}

// placeSource says which rule tells where a device may sit.
func (p Protection) placeSource() working.Source {
	if p.Circuit.Installation.Rules == Boat33CFR {
		return boatPlace
	}
	return rvPlace
}

func (p Protection) faultFindings() (f []working.Finding) {
	c := p.Circuit
	device, stated := c.Device.Get()
	if p.AtEnd.Current <= 0 {
		if stated {
			f = append(f, working.Finding{
				Severity: working.Note, Rule: "fault-not-given", Source: ohmsLaw, Numbers: []working.Number{{Name: "device", Value: device}},
				Message: "The source of fault current is not given: whether the device can break a short near it, and opens on one at the far end, is not judged.",
				Fix:     "Give voltage and resistance of the source, and the length of the run.",
			})
		}
		return f
	}
	if breaks, ok := c.Interrupting.Get(); stated && !ok {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "interrupting-not-stated", Source: ohmsLaw,
			Numbers: []working.Number{{Name: "fault current at the device", Value: p.AtDevice.Current}},
			Message: "The interrupting rating of the device is not stated, so it is not judged.",
			Fix:     "Ask for the rating; it must be above the fault current.",
		})
	} else if ok && units.Exceeds(p.AtDevice.Current, breaks) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "interrupting-too-low", Source: ohmsLaw,
			Numbers: []working.Number{{Name: "fault current at the device", Value: p.AtDevice.Current}, {Name: "interrupting rating", Value: breaks}},
			Message: "A short at the device is more than it can break: it may burst or go on conducting.",
			Fix:     "Fit a device with a higher interrupting rating.",
		})
	}
	if stated && !units.Exceeds(p.AtEnd.Current, device) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "far-fault-too-weak", Source: ohmsLaw,
			Numbers: []working.Number{{Name: "fault current at the far end", Value: p.AtEnd.Current}, {Name: "device", Value: device}},
			Message: "A short at the far end draws no more than the device carries: the conductor burns and the device stays closed.",
			Fix:     "Protect this conductor with a smaller device at its beginning.",
		})
	} else if stated && units.Exceeds(fuseSlow*device, p.AtEnd.Current) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "far-fault-slow", Source: fuseSpeed,
			Numbers: []working.Number{{Name: "fault current at the far end", Value: p.AtEnd.Current}, {Name: "device", Value: device}},
			Message: "A short at the far end is less than three times the rating: the device may take minutes to open.",
			Fix:     "Use a larger conductor, or a smaller device at its beginning.",
		})
	}
	return f
}
