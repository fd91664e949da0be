package wire

import (
	"errors"
	"math"
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// anyTable is what a device of a conductor without a row is held against.
var anyTable = working.Source{Title: "33 CFR 183.425 Table 5, the next larger gauge in free air, for other metals by the square root of the conductivity",
	Provenance: working.Derived}

// noFactor is what a table without corrections is used beyond.
var noFactor = working.Source{Title: "a warmer place and more conductors together leave a conductor less, by a factor that has to be known",
	Provenance: working.CommonPractice}

// withoutFactors returns what the rule set has no factor for and the quote
// states. It is left out of what is worked out: what is wrong without it is
// wrong, and what would agree is not stated.
func (q Quote) withoutFactors() (conductors, ambient bool) {
	if q.Rules.isNEC() {
		return false, false
	}
	warmest := units.Celsius(30)
	if q.EngineSpace && q.Rules == Boat33CFR {
		warmest = units.Celsius(50)
	}
	conductors = q.Conductors > 3 && q.Conductors <= mostConductors && !(q.Rules == Boat33CFR && q.Voltage.IsSet())
	ambient = q.Ambient.IsSet() && q.Ambient.Compare(warmest) > 0 && ambientRange(NEC2017, Insulation90).Contains(q.Ambient)
	return conductors, ambient
}

// judgeable returns x without what the rule set has no factor for.
func (q Quote) judgeable(x Installation) Installation {
	conductors, ambient := q.withoutFactors()
	if conductors {
		x.Conductors = 0
	}
	if ambient {
		x.Ambient = units.Temperature{}
	}
	return x
}

// missingFactors names each of them in words.
func (c Checked) missingFactors() (missing []string) {
	q := c.Quote
	conductors, ambient := q.withoutFactors()
	if conductors {
		which := "a factor for " + strconv.Itoa(q.Conductors) + " conductors together, which " + q.Rules.String() + " does not have"
		if q.Rules == Boat33CFR {
			which += " below 50 V: voltage"
		}
		missing = append(missing, which)
	}
	if ambient {
		missing = append(missing, "a factor for "+q.Ambient.String()+" round the conductor, which "+q.Rules.String()+" does not have")
	}
	return missing
}

// factorFindings says what the ampacity was worked out without.
func (c Checked) factorFindings() (f []working.Finding) {
	if !c.isJudged() {
		return nil
	}
	for _, missing := range c.missingFactors() {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "factor-not-known", Source: noFactor,
			Numbers: []working.Number{{Name: "ampacity without it", Value: c.Protection.Capacity.Current}},
			Message: "What the conductor may carry here needs " + missing + ". It carries less than is worked out.",
			Fix:     "Hold it against a code that has this factor, as the NEC does.",
		})
	}
	return f
}

// noTable says why the rule set does not judge a conductor with a size.
func (c Checked) noTable() string {
	rules, metal := c.Quote.Rules.String(), c.Quote.Metal.Or(Copper)
	var limits *units.RangeError
	_, err := ampacity("wire.Check", c.Circuit.Installation)
	switch {
	case errors.As(err, &limits) && limits.Field == "Metal":
		return rules + " has no " + metal.String() + ": its table is of copper"
	case c.Quote.Insulation == 0 || c.Quote.Size.IsMetric():
		return rules + " has no row for " + c.Quote.Size.String() + " of " + metal.String()
	}
	return rules + " has no row for " + c.Quote.Size.String() + " of " + metal.String() + " at " + c.Quote.Insulation.String()
}

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
