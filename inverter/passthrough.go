package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Passage is the path of shore or generator power past an inverter.
type Passage struct {
	Relay  units.Opt[units.Current] // rating of the transfer relay, > 0; not given is a finding
	Feeder units.Opt[units.Current] // device that protects the feed to the inverter, > 0; not given is a finding
}

// A PassThroughCheck is the result of [PassThrough].
type PassThroughCheck struct {
	Passage   Passage                  // as used
	MaxDevice units.Opt[units.Current] // greatest device that the relay allows; not given if the relay is not
	Left      units.Opt[units.Current] // of MaxDevice, below zero if the device is above it; not given if either is not
}

// PassThrough returns the greatest device that the transfer relay allows in
// the feed to an inverter. On shore power the relay carries what the panel
// behind it takes, of which the inverter's own rating says nothing. The
// conductor may allow less, which package wire tells.
//
// A field outside the range that [Passage] states, or not finite, gives a
// [*units.RangeError], and the zero PassThroughCheck.
func PassThrough(p Passage) (PassThroughCheck, error) {
	const op = "inverter.PassThrough"
	if err := firstError(
		checkOpt(op, "Relay", p.Relay, positive[units.Current]()),
		checkOpt(op, "Feeder", p.Feeder, positive[units.Current]()),
	); err != nil {
		return PassThroughCheck{}, err
	}
	c := PassThroughCheck{Passage: p, MaxDevice: p.Relay}
	relay, hasRelay := p.Relay.Get()
	feeder, hasFeeder := p.Feeder.Get()
	if hasRelay && hasFeeder {
		c.Left = units.Some(units.Minus(relay, feeder))
	}
	return c, nil
}

// Working returns the comparison, as far as both sides are given.
func (c PassThroughCheck) Working() *working.Sheet {
	s := working.NewSheet("Inverter: pass-through relay")
	relay, hasRelay := c.Passage.Relay.Get()
	feeder, hasFeeder := c.Passage.Feeder.Get()
	if hasRelay {
		s.Given("I_relay", relay, "A", "rating of the transfer relay")
	} else {
		s.Choose("relay", "not stated", "nothing is assumed in its place", working.Source{})
	}
	if hasFeeder {
		s.Given("I_feeder", feeder, "A", "device in the feed to the inverter")
	} else {
		s.Choose("device", "not stated", "nothing is assumed in its place", working.Source{})
	}
	if hasRelay && hasFeeder {
		s.Formula("I_left", c.Left.Or(0), "A", "left to the relay's rating", "I_relay - I_feeder")
		s.Test("device against the relay", "I_feeder <= I_relay", !units.Exceeds(feeder, relay))
	}
	return s
}

// Findings returns what is wrong or missing, worst first.
func (c PassThroughCheck) Findings() (f []working.Finding) {
	relay, hasRelay := c.Passage.Relay.Get()
	feeder, hasFeeder := c.Passage.Feeder.Get()
	if hasRelay && hasFeeder && units.Exceeds(feeder, relay) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "relay-below-device", Source: relayHabit,
			Numbers: []working.Number{{Name: "device", Value: feeder}, {Name: "relay", Value: relay}},
			Message: "The device in the feed to the inverter is above the transfer relay's rating: on shore power the relay can overheat and the device stays closed.",
			Fix:     "Fit a device not above the relay's rating.",
		})
	}
	if !hasFeeder {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "pass-through-device-not-stated", Source: relayHabit,
			Numbers: []working.Number{{Name: "device"}, number("relay", c.Passage.Relay)},
			Message: "No device is stated in the feed to the inverter, so nothing is known to protect its transfer relay.",
			Fix:     "Find the device and state its rating.",
		})
	}
	if !hasRelay {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "relay-not-stated", Source: relayHabit,
			Numbers: []working.Number{number("device", c.Passage.Feeder), {Name: "relay"}},
			Message: "The transfer relay's rating is not stated, so the device in the feed to the inverter is not judged.",
			Fix:     "Give it from the datasheet; it is not the inverter's power rating.",
		})
	}
	return f
}

// number is a current that may not be given.
func number(name string, v units.Opt[units.Current]) working.Number {
	if x, ok := v.Get(); ok {
		return working.Number{Name: name, Value: x}
	}
	return working.Number{Name: name}
}
