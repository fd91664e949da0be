package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// LimitSource returns the rule that set the greatest device.
func (p Protection) LimitSource() working.Source {
	rules := p.Circuit.Installation.Rules
	switch {
	case p.Rule == LimitBoat:
		return boatDevice
	case rules == Boat33CFR:
		return boatDevice50
	case p.Rule == LimitNextRating:
		return necNextUp
	case p.Rule == LimitSmallConductor && rules.isNEC():
		return rules.ofEdition(nec2008Small, necSmall, necSmall)
	}
	return p.Capacity.Rule()
}

// limitName names the rules that the limit is from: for a cable thicker than the
// RV table they are not the RV rules.
func (p Protection) limitName() string {
	if p.Capacity.isFreeAir() {
		return Boat33CFR.String() + " in free air"
	}
	return p.Circuit.Installation.Rules.String()
}

// Findings returns what is wrong or missing, worst first. A device that was
// not stated is a danger, never a default.
func (p Protection) Findings() []working.Finding {
	f := p.deviceFindings()
	f = append(f, p.faultFindings()...)
	f = append(f, p.Capacity.Findings()...)
	working.Sort(f)
	return f
}

func (p Protection) deviceFindings() []working.Finding {
	f := p.limitFindings()
	f = append(f, p.loadFindings()...)
	f = append(f, p.continuousFindings()...)
	f = append(f, p.smallFindings()...)
	f = append(f, p.ratingFindings()...)
	return append(f, p.placeFindings()...)
}

// limitFindings holds the device against the conductor.
func (p Protection) limitFindings() []working.Finding {
	rules := p.Circuit.Installation.Rules
	device, stated := p.Circuit.Device.Get()
	limit := working.Number{Name: "limit by " + p.limitName(), Value: p.Limit}
	needed := working.Number{Name: "needed", Value: p.Needed}
	switch {
	case !stated:
		return []working.Finding{{
			Severity: working.Danger, Rule: "no-device-stated", Numbers: []working.Number{limit, needed}, Source: p.LimitSource(),
			Message: "No overcurrent device is stated, so a short in this conductor is cut off by nothing.",
			Fix:     "Find the device and state its rating, or fit one at the source.",
		}}
	case units.Exceeds(device, p.Limit):
		return []working.Finding{{
			Severity: working.Danger, Rule: "device-above-limit", Source: p.LimitSource(),
			Numbers: []working.Number{{Name: "device", Value: device}, limit, needed},
			Message: "The overcurrent device is above what this conductor may have: the conductor can burn before the device opens.",
			Fix:     p.limitFix(),
		}}
	case !units.Exceeds(device, p.Capacity.Current):
		return nil
	}
	f := working.Finding{
		Severity: working.Note, Rule: "device-above-ampacity", Source: p.LimitSource(),
		Numbers: []working.Number{{Name: "device", Value: device}, {Name: "ampacity", Value: p.Capacity.Current}, {Name: "rating below it", Value: p.Below}},
		Message: "The device is above the ampacity, which this rule set allows, though not for more than one receptacle on a branch circuit.",
		Fix:     "Say if the circuit feeds receptacles for portable loads; for a device not above the ampacity take the rating below it if the load allows.",
	}
	if rules == Boat33CFR {
		f.Message = "The device is above the ampacity, which this rule set allows up to 150 % of it: it protects against shorts, and only in part against overload."
		f.Fix = "For a device not above the ampacity take the rating below it if the load allows."
	}
	return []working.Finding{f}
}

// loadFindings holds the load against the device and the conductor.
func (p Protection) loadFindings() (f []working.Finding) {
	c := p.Circuit
	device, stated := c.Device.Get()
	needed := working.Number{Name: "needed", Value: p.Needed}
	if stated && units.Exceeds(p.Needed, device) {
		source := ohmsLaw
		if p.Circuit.continuous() > 0 {
			source = p.continuousSource()
		}
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "device-below-load", Source: source,
			Numbers: []working.Number{{Name: "device", Value: device}, needed},
			Message: "The device is smaller than the load needs and will open in use.",
			Fix:     "Use a larger device if the conductor allows it, else a larger conductor.",
		})
	}
	if units.Exceeds(c.Load, p.Capacity.Current) {
		return append(f, working.Finding{
			Severity: working.Danger, Rule: "load-above-ampacity", Source: p.Capacity.source(),
			Numbers: []working.Number{{Name: "load", Value: c.Load}, {Name: "ampacity", Value: p.Capacity.Current}},
			Message: "The load is above the ampacity of the conductor, which overheats in normal use.",
			Fix:     "Use a larger conductor.",
		})
	}
	fits := stated && !units.Exceeds(p.Needed, device) && !units.Exceeds(device, p.Limit)
	if !fits && (p.Smallest == 0 || units.Exceeds(p.Smallest, p.Limit)) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "no-device-fits", Source: p.LimitSource(),
			Numbers: []working.Number{needed, {Name: "limit by " + p.limitName(), Value: p.Limit}},
			Message: "No standard device both carries the load and protects the conductor.",
			Fix:     "Use a larger conductor.",
		})
	}
	return f
}

// ratingFindings says when a device that is stated to be a fuse or a breaker has
// a rating that the edition knows none of.
func (p Protection) ratingFindings() []working.Finding {
	c := p.Circuit
	rules := c.Installation.ratings()
	device, stated := c.Device.Get()
	if !stated || c.Kind == AnyDevice || !rules.isNEC() {
		return nil
	}
	next := nextRating(rules, c.Kind, device)
	if units.Compare(next, device) == 0 || units.Compare(p.listed(), device) == 0 {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "device-not-standard", Source: rules.ratingSource(),
		Numbers: []working.Number{{Name: "device", Value: device}, {Name: "standard below", Value: ratingBelow(rules, c.Kind, device)},
			{Name: "standard above", Value: next}},
		Message: "The edition has no standard " + c.Kind.String() + " of this rating. Others are made, and have to suit the conductor all the same.",
		Fix:     "Read the rating on the device again, and which edition applies.",
	}}
}

// smallFindings returns what 240.4(D) asks of 18 and 16 AWG besides its limit.
func (p Protection) smallFindings() (f []working.Finding) {
	c := p.Circuit
	most, small := limitOf(necSmallContinuous[:], c.Installation.Size, c.Installation.Metal)
	if !small || !c.Installation.Rules.isNEC() {
		return nil
	}
	source := c.Installation.Rules.ofEdition(nec2008Small, necSmall, necSmall)
	if hours := c.continuous(); units.Exceeds(hours, most) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "small-conductor-continuous", Source: source,
			Numbers: []working.Number{{Name: "load", Value: hours}, {Name: "for hours at most", Value: most}},
			Message: "The load runs for hours and is above what the rule on small conductors lets this one carry so long.",
			Fix:     "Use a larger conductor.",
		})
	}
	return append(f, working.Finding{
		Severity: working.Note, Rule: "small-conductor-device", Source: source,
		Numbers: []working.Number{{Name: "device at most", Value: p.Limit}},
		Message: "For 18 and 16 AWG only fuses and breakers that are listed for them may be used.",
		Fix:     "Look for the marking on the device.",
	})
}

// continuousFindings holds the conductor, too, against 125 % of a continuous
// load, by its table and terminals before correction.
func (p Protection) continuousFindings() []working.Finding {
	if p.Circuit.continuous() == 0 {
		return nil
	}
	if !p.Circuit.Installation.Rules.isNEC() {
		return p.practiceFindings()
	}
	bears := p.Capacity.Table
	if p.Capacity.Terminals > 0 {
		bears = min(bears, p.Capacity.Terminals)
	}
	bears = units.Scale(bears, units.Ratio(p.Capacity.Counted))
	if !units.Exceeds(p.Needed, bears) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Danger, Rule: "conductor-below-continuous", Source: necConductor,
		Numbers: []working.Number{{Name: "needed", Value: p.Needed}, {Name: "ampacity before correction", Value: bears}},
		Message: "The load runs for hours, and the conductor has less than 125 % of it.",
		Fix:     "Use a larger conductor.",
	}}
}

// practiceFindings holds the conductor of a vehicle or a boat against 125 % of
// its continuous load, which neither rule set asks for. The RV table is of
// devices, for which [Protection.loadFindings] does that.
func (p Protection) practiceFindings() []working.Finding {
	bears := p.Capacity.Current
	if p.Capacity.Governs == ByDeviceTable || units.Exceeds(p.Circuit.Load, bears) || !units.Exceeds(p.Needed, bears) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Caution, Rule: "conductor-below-continuous", Source: continuousPractice,
		Numbers: []working.Number{{Name: "needed", Value: p.Needed}, {Name: "ampacity", Value: bears}},
		Message: "The load runs for hours, and the conductor has less than 125 % of it. The rule set does not ask for that; common practice does.",
		Fix:     "Use a larger conductor.",
	}}
}

// continuousSource says where 125 % of a continuous load is from.
func (p Protection) continuousSource() working.Source {
	if p.Circuit.Installation.Rules.isNEC() {
		return necContinuous
	}
	return continuousPractice
}

// limitFix says what device would do.
func (p Protection) limitFix() string {
	fits := p.ratingWithin(p.Limit)
	switch {
	case p.Smallest == 0 || units.Exceeds(p.Smallest, p.Limit):
		return "Use a larger conductor; no device would suit this one and the load."
	case p.Smallest == fits:
		return "Fit a device of " + fits.String() + "."
	}
	return "Fit a device of " + p.Smallest.String() + " to " + fits.String() + "."
}
