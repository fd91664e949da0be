package plan

import (
	"slices"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// route returns "dc panel - observer desk".
func (c Circuit) route() string { return c.From + " - " + c.To }

// isDirect reports whether a bus has direct current.
func (m *maker) isDirect(bus string) bool {
	b, _ := m.bus(bus)
	return b.Kind == loads.Direct
}

// deviceOf returns the device of a circuit as stated.
func deviceOf(c Circuit) DeviceLine {
	line := DeviceLine{Needed: true}
	if d := c.Device; d != nil {
		line.Stated, line.Rating, line.At = true, units.Some(d.Rating), d.At
		line.Distance, line.Interrupting = d.Distance, d.Interrupting
	}
	return line
}

// protectedBy takes over what the rule set says of a circuit.
func (l *CircuitLine) protectedBy(p wire.Protection) {
	x := p.Circuit.Installation
	l.Limit, l.Rules, l.Governs, l.Device.Least = units.Some(p.Limit), x.Rules.String(), units.Some(p.Capacity.Governs), p.Needed
	l.Insulation, l.Ambient, l.Bundled = x.Insulation, x.Ambient, x.Conductors
	if p.Circuit.Fault.IsSet() {
		l.Fault = units.Some(p.AtDevice.Current)
	}
	if x.Terminals != 0 {
		l.Terminals = units.Some(x.Terminals)
	}
	for _, s := range p.Capacity.Working().Steps() {
		if s.Kind == working.LookUpStep {
			l.Table = Source(s.Source)
			break
		}
	}
}

// checksOf returns the verdict on each thing that was checked of a circuit.
func (m *maker) checksOf(c Circuit, line CircuitLine, found []working.Finding) []Check {
	checks := []Check{{Name: "drop", Found: in(line.Fraction, "%", 4)}}
	judged := !c.Regulated && !c.String
	allowed, ok := m.rig.Rules.BranchDrop.Get()
	if ok && judged {
		checks[0].Limit = in(allowed, "%", 4)
		checks[0].Verdict = verdictOn(found, "drop-above-allowed", "run-cannot-carry")
	}
	if c.Feeder != "" {
		path := Check{Name: "path", Found: in(line.Path, "%", 4)}
		if allowed, ok := m.rig.Rules.PathDrop.Get(); ok {
			path.Limit, path.Verdict = in(allowed, "%", 4), verdictOn(found, "path-drop-above-allowed")
		}
		checks = append(checks, path)
	}
	if e := m.endOf(c, wire.Run{}, CircuitLine{}); e.cutOut > 0 && line.AtLoad > 0 {
		checks = append(checks, Check{Name: "at load", Found: in(line.AtLoad, "V", 4), Limit: in(e.cutOut, "V", 4),
			Verdict: verdictOn(found, "below-cut-out")})
	}
	d := line.Device
	if !d.Needed && !d.Stated {
		return checks
	}
	device := Check{Name: "device", Verdict: verdictOn(found, "no-device-stated", "device-above-limit",
		"device-below-load", "load-above-ampacity", "no-device-fits", "conductor-below-continuous", "device-at-wrong-end",
		"far-fault-too-weak", "far-fault-slow", "device-above-any-ampacity")}
	if limit, ok := line.Limit.Get(); ok {
		device.Limit = in(limit, "A", 4)
	} else if device.Verdict == working.Agree {
		device.Verdict = working.NotStated // the rule set has no row for the size
	}
	breaking := Check{Name: "interrupting"}
	place := Check{Name: "place"}
	if d.Stated {
		device.Found = in(d.Rating.Or(0), "A", 4)
		place.Verdict = verdictOn(found, "device-at-wrong-end", "device-far-from-source", "place-not-stated", "distance-not-judged")
		breaking.Verdict = verdictOn(found, "interrupting-too-low", "interrupting-not-stated", "fault-not-given")
	}
	if breaks, ok := d.Interrupting.Get(); ok {
		breaking.Found = in(breaks, "A", 4)
	}
	if fault, ok := line.Fault.Get(); ok {
		breaking.Limit = in(fault, "A", 4)
	}
	if distance, ok := d.Distance.Get(); ok {
		place.Found = in(distance, "m", 4)
	} else if place.Verdict == working.Agree {
		place.Verdict = working.NotStated // a rule set that asks for no distance
	}
	return append(checks, device, breaking, place)
}

// verdictOn returns what findings of some rules make of a check. A note among
// them says that an input is missing.
func verdictOn(found []working.Finding, rules ...string) working.Verdict {
	verdict := working.Agree
	for _, f := range found {
		if !slices.Contains(rules, f.Rule) {
			continue
		}
		switch {
		case f.Severity == working.Danger:
			return working.Unsafe
		case f.Severity == working.Caution:
			verdict = working.Disagree
		case verdict == working.Agree:
			verdict = working.NotStated
		}
	}
	return verdict
}
