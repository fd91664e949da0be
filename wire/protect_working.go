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
	if p.AtEnd.Current > 0 {
		p.AtEnd.steps(s, "I_end")
	}
	return s
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
			Message: "The device is above the ampacity, which this rule set allows. A stricter rule of the house would not.",
			Fix:     "Nothing by this rule set; for a device not above the ampacity take the rating below it if the load allows.",
		})
	}
	if stated && units.Exceeds(p.Needed, device) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "device-below-load", Source: necContinuous,
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
	} else if p.Smallest == 0 || units.Exceeds(p.Smallest, p.Limit) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "no-device-fits", Source: p.limitSource(),
			Numbers: []working.Number{needed, limit},
			Message: "No standard device both carries the load and protects the conductor.",
			Fix:     "Use a larger conductor.",
		})
	}
	return append(f, p.placeFindings()...)
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
	if !ok || p.Circuit.Installation.Rules != RVLowVoltage || !units.Exceeds(from, rvReach) {
		return nil
	}
	numbers := []working.Number{{Name: "distance", Value: from}, {Name: "at most", Value: rvReach}}
	if p.AtDevice.Current > 0 {
		numbers = append(numbers, working.Number{Name: "fault current at the device", Value: p.AtDevice.Current})
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "device-far-from-source", Source: rvPlace, Numbers: numbers,
		Message: "The device protects what is behind it. The conductor between the source and the device has no protection.",
		Fix:     "Move the device to the source.",
	}}
}

func (p Protection) faultFindings() (f []working.Finding) {
	if p.AtEnd.Current <= 0 {
		return nil
	}
	c := p.Circuit
	device, stated := c.Device.Get()
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
	}
	return f
}
