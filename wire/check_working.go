package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how each claim was judged, step by step. The drop of a
// direct-current run is worked out in it; for the rest see the workings of
// Protection and AlternatingDrop.
func (c Checked) Working() *working.Sheet {
	title := "Check of a circuit"
	if c.Quote.Size.IsValid() {
		title += " of " + c.Quote.Size.String()
	}
	s := working.NewSheet(title + " by " + c.Quote.Rules.String())
	switch {
	case c.Drop.Voltage > 0:
		c.Drop.steps(s)
	case c.Voltage > 0:
		s.Given("ΔV", c.Voltage, "V", "voltage lost in the loop, as worked out")
		if c.fraction() > 0 {
			s.Given("δ", c.fraction(), "%", "drop as a fraction of the source voltage, as worked out")
		}
	}
	c.claimSteps(s)
	c.deviceSteps(s)
	c.faultSteps(s)
	for _, l := range c.Lines() {
		s.Choose(l.Kind.String(), l.Verdict.String(), l.Rule, l.Source)
	}
	return s
}

// claimSteps appends how far the claims in numbers are off.
func (c Checked) claimSteps(s *working.Sheet) {
	q := c.Quote
	if load, ok := q.Load.Get(); ok && q.Current.IsSet() {
		s.Given("I_worked", load, "A", "current that the load takes, as worked out")
		offStep(s, q.Current, load, "I_worked", "current", "A", "current")
	}
	if q.Drop.IsSet() && c.Voltage > 0 {
		offStep(s, q.Drop, c.Voltage, "ΔV", "drop", "V", "drop")
	}
	if q.Percent.IsSet() && c.fraction() > 0 {
		offStep(s, q.Percent, c.fraction(), "δ", "percent", "%", "drop")
	}
	if q.Ampacity.IsSet() && c.isJudged() {
		of := c.Protection.Capacity
		s.LookUp("I_z", of.Current, "A", "ampacity, corrected", working.Lookup{Source: of.Rule(), Key: q.Size.String(), Row: q.Size.String()})
		offStep(s, q.Ampacity, of.Current, "I_z", "ampacity", "A", "ampacity")
	}
}

// offStep appends a claim and how far it is from the number of a symbol.
func offStep[Q units.Quantity](s *working.Sheet, claim units.Printed, computed Q, symbol, name, unit, what string) {
	stated, err := units.As[Q](claim)
	if err != nil {
		return // not in a result of Check
	}
	s.Given("x_"+name, stated, unit, what+" as stated")
	s.Formula("e_"+name, units.RatioOf(stated, computed)-1, "%", "how far that is off", "100 * (x_"+name+" / "+symbol+" - 1)")
}

// deviceSteps appends the device against its load and its limit.
func (c Checked) deviceSteps(s *working.Sheet) {
	p := c.Protection
	if !c.isJudged() || c.Quote.DeviceElsewhere {
		return
	}
	s.LookUp("I_limit", p.Limit, "A", "greatest device that the rule set allows", working.Lookup{Source: p.LimitSource(),
		Key: c.Quote.Size.String(), Row: p.Rule.String()})
	needed := ""
	if c.Circuit.Load > 0 {
		needed = p.neededSteps(s)
	}
	device, ok := c.Circuit.Device.Get()
	if !ok {
		return
	}
	s.Given("I_device", device, "A", "device as stated")
	if needed != "" {
		s.Test("device against the load", needed+" <= I_device", !units.Exceeds(p.Needed, device))
	}
	s.Test("device against its limit", "I_device <= I_limit", !units.Exceeds(device, p.Limit))
}

// faultSteps appends the short at the device against what it can break.
func (c Checked) faultSteps(s *working.Sheet) {
	at := c.AtDevice
	if at.Current <= 0 {
		return
	}
	s.Given("E", at.Source.Voltage, "V", "open-circuit voltage of the source")
	s.Given("R_source", at.Source.Resistance, "mΩ", "resistance of the source inside")
	s.Given("R_near", at.Loop, "mΩ", "resistance of the cold run up to the device, there and back")
	s.Formula("I_near", at.Current, "A", "fault current at the device", "1000 * E / (R_source + R_near)")
	if breaks, ok := c.Circuit.Interrupting.Get(); ok {
		s.Given("I_breaks", breaks, "A", "interrupting rating of the device, as stated")
		s.Test("fault against what the device can break", "I_near <= I_breaks", !units.Exceeds(at.Current, breaks))
	}
}
