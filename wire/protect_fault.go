package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// fuseSlow is the part of the far-end fault that a device may have to open
// within seconds: common practice, a third.
const fuseSlow = 3

// faultFindings holds the device against the shorts at both ends.
func (p Protection) faultFindings() []working.Finding {
	device, stated := p.Circuit.Device.Get()
	if p.AtEnd.Current <= 0 {
		if !stated {
			return nil
		}
		return []working.Finding{{
			Severity: working.Note, Rule: "fault-not-given", Source: ohmsLaw, Numbers: []working.Number{{Name: "device", Value: device}},
			Message: "The source of fault current is not given: whether the device can break a short near it, and opens on one at the far end, is not judged.",
			Fix:     "Give voltage and resistance of the source, and the length of the run.",
		}}
	}
	return append(p.interruptingFindings(), p.farFaultFindings()...)
}

// interruptingFindings holds the short at the device against what it can break.
func (p Protection) interruptingFindings() []working.Finding {
	near := working.Number{Name: "fault current at the device", Value: p.AtDevice.Current}
	breaks, ok := p.Circuit.Interrupting.Get()
	switch {
	case !ok && p.Circuit.Device.IsSet():
		return []working.Finding{{
			Severity: working.Note, Rule: "interrupting-not-stated", Source: ohmsLaw,
			Numbers: []working.Number{near},
			Message: "The interrupting rating of the device is not stated, so it is not judged.",
			Fix:     "Ask for the rating; it must be above the fault current.",
		}}
	case ok && units.Exceeds(p.AtDevice.Current, breaks):
		return []working.Finding{{
			Severity: working.Danger, Rule: "interrupting-too-low", Source: ohmsLaw,
			Numbers: []working.Number{near, {Name: "interrupting rating", Value: breaks}},
			Message: "A short at the device is more than it can break: it may burst or go on conducting.",
			Fix:     "Fit a device with a higher interrupting rating.",
		}}
	}
	return nil
}

// farFaultFindings holds the short at the far end against what opens the device
// and what the conductor bears until then.
func (p Protection) farFaultFindings() (f []working.Finding) {
	device, stated := p.Circuit.Device.Get()
	numbers := []working.Number{{Name: "fault current at the far end", Value: p.AtEnd.Current}, {Name: "device", Value: device}}
	switch {
	case !stated:
		return nil
	case !units.Exceeds(p.AtEnd.Current, device):
		if longest, ok := p.Heated.Longest.Get(); ok {
			numbers = append(numbers, working.Number{Name: "the insulation bears it for", Value: longest})
		}
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "far-fault-too-weak", Source: ohmsLaw, Numbers: numbers,
			Message: "A short at the far end draws no more than the device carries: the conductor burns and the device stays closed.",
			Fix:     "Protect this conductor with a smaller device at its beginning.",
		})
	case units.Exceeds(fuseSlow*device, p.AtEnd.Current):
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "far-fault-slow", Source: fuseSpeed, Numbers: numbers,
			Message: "A short at the far end is less than three times the rating: the device may take minutes to open.",
			Fix:     "Use a larger conductor, or a smaller device at its beginning.",
		})
	}
	switch {
	case !p.Circuit.Opens.IsSet():
	case p.Heated.Bears <= 0:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "withstand-not-judged", Source: coreFormula, Numbers: numbers,
			Message: "No factor is known for this metal and insulation, so what the conductor bears until the device opens is not judged.",
			Fix:     "Ask the maker of the conductor for its short-circuit withstand.",
		})
	case units.Exceeds(p.Heated.Let, p.Heated.Bears):
		f = append(f, p.Heated.damage())
	}
	return f
}
