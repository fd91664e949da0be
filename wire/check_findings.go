package wire

import (
	"slices"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	noRow = working.Source{Title: "a table holds for the sizes that are in it", Provenance: working.CommonPractice}
	loop  = working.Source{Title: "a current goes there and back, and drops in both conductors", Provenance: working.Derived}
)

// Findings returns what [Drop], [Protection] and the claims themselves have to
// say, worst first. The claims add a drop that was counted in one conductor
// only, a conductor without a row in the rule set, and, there too, a device
// that is not stated.
func (c Checked) Findings() []working.Finding {
	q, f := c.Quote, c.oneWayFindings()
	f = append(f, c.dropFindings()...)
	f = append(f, c.touchFindings()...)
	if c.isJudged() {
		f = append(f, c.protectionFindings()...)
		f = append(f, c.factorFindings()...)
	} else {
		f = append(f, c.unjudgedFindings()...)
	}
	if c.AtDevice.Current > 0 && (c.Protection.AtEnd.Current == 0 || !c.isJudged()) {
		p := Protection{Circuit: c.Circuit, AtDevice: c.AtDevice}
		f = append(f, p.interruptingFindings()...)
	}
	if c.AtDevice.Current > 0 && q.Chassis.IsSet() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "far-fault-not-judged", Source: ohmsLaw,
			Numbers: []working.Number{{Name: "chassis", Value: q.Chassis.Or(0)}},
			Message: "The run returns through the chassis: whether the device opens on a short at its far end is not judged.",
			Fix:     "Measure the resistance of the whole path, and hold the short it lets through against the device.",
		})
	}
	working.Sort(f)
	return f
}

// dropFindings carries over what the drop has to say. Heat is judged by the rule
// set, if it has a row: what the drop says of it then repeats that or, with
// insulation hotter than the 105 °C it goes by, contradicts it.
func (c Checked) dropFindings() []working.Finding {
	var f []working.Finding
	switch {
	case c.Drop.Voltage > 0:
		f = c.Drop.Findings()
	case c.AlternatingDrop.Voltage > 0:
		f = c.AlternatingDrop.Findings()
	}
	return slices.DeleteFunc(f, func(x working.Finding) bool {
		return x.Rule == "lethal-voltage" || c.isJudged() && (x.Rule == "ampacity-not-checked" || x.Rule == "current-above-any-ampacity")
	})
}

// touchFindings says what the voltage does to who touches it, whichever current
// it drives and whether a drop was worked out or not.
func (c Checked) touchFindings() []working.Finding {
	v := max(c.Quote.Voltage.Or(0), c.Quote.Fault.Or(FaultSource{}).Voltage)
	return shockFindings(v, v)
}

// protectionFindings carries over what the protection has to say, less what
// rests on a current, a length or a device that are not known.
func (c Checked) protectionFindings() []working.Finding {
	q, unloaded := c.Quote, c.Circuit.Load == 0
	f := slices.DeleteFunc(c.Protection.Findings(), func(x working.Finding) bool {
		switch x.Rule {
		case "no-device-stated":
			return q.DeviceElsewhere
		case "no-device-fits":
			return unloaded
		case "fault-not-given":
			return c.AtDevice.Current > 0
		}
		return false
	})
	for i := range f {
		// Of a stranger's cable nobody knows that it lies singly in free air.
		if f[i].Rule == "free-air-table" {
			f[i].Severity = working.Caution
		}
	}
	if !unloaded {
		return f
	}
	for i := range f {
		f[i].Numbers = slices.DeleteFunc(f[i].Numbers, func(n working.Number) bool { return n.Name == "needed" })
		if f[i].Rule == "device-above-limit" {
			f[i].Fix = "Fit a device not above the limit, or a larger conductor; which of them, the load decides."
		}
	}
	return f
}

// unjudgedFindings says what is known without a row of the rule set.
func (c Checked) unjudgedFindings() (f []working.Finding) {
	q := c.Quote
	p := Protection{Circuit: c.Circuit, AtEnd: c.Protection.AtEnd, Heated: c.Protection.Heated}
	if q.Size.IsValid() {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "conductor-not-judged", Source: noRow, Numbers: []working.Number{c.loadNumber()},
			Message: c.noTable() + ", so what this conductor may carry, and which device protects it, is not judged.",
			Fix:     "Hold it against the code that has this conductor.",
		})
	}
	device, stated := c.Circuit.Device.Get()
	if !stated {
		if !q.DeviceElsewhere {
			f = append(f, working.Finding{
				Severity: working.Danger, Rule: "no-device-stated", Source: noRow, Numbers: []working.Number{c.loadNumber()},
				Message: "No overcurrent device is stated, so a short in this conductor is cut off by nothing.",
				Fix:     "Find the device and state its rating, or fit one at the source.",
			})
		}
		return f
	}
	if units.Exceeds(c.needed(), device) {
		source := ohmsLaw
		if q.Continuous {
			source = necContinuous
		}
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "device-below-load", Source: source,
			Numbers: []working.Number{{Name: "device", Value: device}, {Name: "needed", Value: c.needed()}},
			Message: "The device is smaller than the load needs and will open in use.",
			Fix:     "Use a larger device if the conductor allows it, else a larger conductor.",
		})
	}
	f = append(f, c.mostDeviceFindings()...)
	if p.AtEnd.Current > 0 {
		f = append(f, p.farFaultFindings()...)
	}
	return append(f, p.placeFindings()...)
}

// loadNumber is the load, not given if none is known.
func (c Checked) loadNumber() working.Number {
	n := working.Number{Name: "load"}
	if c.Circuit.Load > 0 {
		n.Value = c.Circuit.Load
	}
	return n
}

// oneWayFindings recognises a drop that was counted in one conductor only: it
// does not agree, and half of what was worked out does.
func (c Checked) oneWayFindings() []working.Finding {
	q := c.Quote
	if q.Chassis.IsSet() { // a wire and a chassis are not two alike
		return nil
	}
	contacts := units.RatioOf(c.Circuit.Load.Through(q.Contacts.Or(0)), c.Voltage)
	one := (1 - contacts) / 2
	for _, claim := range []struct {
		stated units.Printed
		known  bool
		whole  units.Value
		half   units.Value
	}{{q.Drop, c.Voltage > 0, c.Voltage, units.Scale(c.Voltage, one)}, {q.Percent, c.fraction() > 0, c.fraction(), c.fraction() * one}} {
		if !claim.stated.IsSet() || !claim.known {
			continue
		}
		whole := numeric(ClaimDrop, claim.stated, claim.whole, working.Higher, loop)
		half := numeric(ClaimDrop, claim.stated, claim.half, working.Neither, loop)
		if agrees(whole.Verdict) || !agrees(half.Verdict) {
			continue
		}
		f := working.Finding{
			Severity: working.Caution, Rule: "drop-of-one-conductor", Source: loop,
			Numbers: []working.Number{{Name: "in one conductor", Value: claim.half}, {Name: "there and back", Value: claim.whole}},
			Message: "The stated drop is that of one conductor of this length. The current goes there and back: the load loses twice as much.",
			Fix:     "Ask whether the length is one way; if it counts both conductors, the stated drop agrees.",
		}
		if q.LengthIs != LengthUnsaid {
			f.Fix = "Take the drop of both conductors, and the size that it asks for."
		}
		return []working.Finding{f}
	}
	return nil
}
