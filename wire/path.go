package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Part is a thing that a current passes: a switch, a shunt, a bus bar, a
// relay, a terminal, the cable itself.
type Part struct {
	Name   string        // as its owner calls it; needed
	Rating units.Current // continuous, > 0
}

// A PathLimit is the result of [WeakestPart].
type PathLimit struct {
	Load   units.Current            // greatest current through the path
	Device units.Opt[units.Current] // that protects it, if stated
	Weak   Part                     // the part with the least rating, the first of several
	Index  int                      // its place in the list
}

// WeakestPart returns the part of a path that limits what may pass it: the one
// with the least rating. A device protects the path if it is not above that.
//
// A load, a device or a rating that is not above 0 A, a part without a name, or
// no parts, gives a [*units.RangeError] and the zero PathLimit.
func WeakestPart(load units.Current, device units.Opt[units.Current], parts []Part) (PathLimit, error) {
	const op = "wire.WeakestPart"
	positive := units.Above[units.Current](0)
	if err := positive.Check(op, "load", load); err != nil {
		return PathLimit{}, err
	}
	if rating, ok := device.Get(); ok {
		if err := positive.Check(op, "device", rating); err != nil {
			return PathLimit{}, err
		}
	}
	if len(parts) == 0 {
		return PathLimit{}, &units.RangeError{Op: op, Field: "parts", Value: "an empty list", Allowed: allowedText("one part or more")}
	}
	p := PathLimit{Load: load, Device: device, Weak: parts[0]}
	for i, part := range parts {
		if err := positive.Check(op, "Rating", part.Rating); err != nil {
			return PathLimit{}, err
		}
		if part.Name == "" {
			return PathLimit{}, &units.RangeError{Op: op, Field: "Name", Value: part.Name, Allowed: allowedText("a name")}
		}
		if units.Exceeds(p.Weak.Rating, part.Rating) {
			p.Weak, p.Index = part, i
		}
	}
	return p, nil
}

// Working returns how the path was judged, step by step.
func (p PathLimit) Working() *working.Sheet {
	s := working.NewSheet("What limits a path")
	s.Given("I_load", p.Load, "A", "greatest current through the path")
	s.LookUp("I_part", p.Weak.Rating, "A", "least rating of its parts", working.Lookup{Source: pathPractice,
		Key: "least of the list", Row: p.Weak.Name})
	s.Test("load against the weakest part", "I_load <= I_part", !units.Exceeds(p.Load, p.Weak.Rating))
	if device, ok := p.Device.Get(); ok {
		s.Given("I_device", device, "A", "device that protects the path")
		s.Test("device against the weakest part", "I_device <= I_part", !units.Exceeds(device, p.Weak.Rating))
	}
	return s
}

var pathPractice = working.Source{Title: "a path is rated as its weakest part", Provenance: working.CommonPractice}

// Findings returns what the weakest part does not bear, worst first.
func (p PathLimit) Findings() (f []working.Finding) {
	part := working.Number{Name: p.Weak.Name, Value: p.Weak.Rating}
	if units.Exceeds(p.Load, p.Weak.Rating) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "load-above-part", Source: pathPractice,
			Numbers: []working.Number{{Name: "load", Value: p.Load}, part},
			Message: "The load is above what the weakest part of the path is rated for: it overheats in normal use.",
			Fix:     "Replace that part with one that is rated for the load and for the device.",
		})
	}
	device, stated := p.Device.Get()
	switch {
	case !stated:
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "no-device-stated", Source: pathPractice, Numbers: []working.Number{part},
			Message: "No overcurrent device is stated, so nothing keeps the current within what the weakest part bears.",
			Fix:     "Find the device and state its rating, or fit one at the source.",
		})
	case units.Exceeds(device, p.Weak.Rating):
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "device-above-part", Source: pathPractice,
			Numbers: []working.Number{{Name: "device", Value: device}, part},
			Message: "The device is above what the weakest part of the path is rated for: that part can burn before the device opens.",
			Fix:     "Replace that part, or use a device not above its rating if the load allows.",
		})
	}
	working.Sort(f)
	return f
}
