package battery

import (
	"example.com/drawbar/units/working"
)

// The sources of the findings below.
var (
	ohmsLaw      = working.Source{Title: "Ohm's law", Provenance: working.Derived}
	energyPower  = practice("energy is not power: check the discharge limit before any run time")
	oneDropsOut  = practice("protection disconnects one battery at a time, so limits must hold with one out")
	alikeSharing = practice("parallel strings share alike only if every path from terminal to terminal is alike")
)

// Findings returns what needs attention, worst first: a load that stops at
// this voltage, or that was given no voltage to stop at, and a short circuit.
func (g Sag) Findings() []working.Finding {
	numbers := []working.Number{{Name: "voltage", Value: g.Voltage}, {Name: "current", Value: g.Current}}
	switch cut, ok := g.Circuit.CutOff.Get(); {
	case g.isShort():
		return []working.Finding{{
			Severity: working.Danger, Rule: "short-circuit",
			Message: "More than half of the voltage is lost before the load: this is a short circuit, and it burns what it flows through. Only a fuse with the interrupting rating for this current stops it.",
			Numbers: append(numbers, working.Number{Name: "at rest", Value: g.Circuit.OpenCircuit}),
			Fix:     "Fit the fuse at the battery. " + working.DeferToCode,
			Source:  ohmsLaw,
		}}
	case g.belowCutOff():
		return []working.Finding{{
			Severity: working.Caution, Rule: "below-cut-off",
			Message: "Under this load the voltage is at or below the cut-off: the load stops though the battery is not empty.",
			Numbers: append(numbers, working.Number{Name: "cut-off", Value: cut}),
			Fix:     "Less load, thicker and shorter cables, more strings, or a fuller battery.",
			Source:  ohmsLaw,
		}}
	case !ok:
		return []working.Finding{{
			Severity: working.Note, Rule: "cut-off-not-stated",
			Message: "No cut-off voltage was given, so it is not judged whether the load keeps running.",
			Numbers: numbers,
			Fix:     "Give CutOff from the datasheet of the load.",
			Source:  unknowns,
		}}
	}
	return nil
}

// Findings returns what needs attention, worst first: what the bank brings
// with it, freezing being judged at the lowest state of charge that it begins
// in or is taken down to, why the load does not run, and what is left out.
func (e Endurance) Findings() []working.Finding {
	f := e.Usable.findings(e.lowest())
	f = append(f, e.Sag.Findings()...)
	f = append(f, e.limitFindings()...)
	if e.share() <= 0 {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "already-at-depth",
			Message: "The bank begins at or below the charge that is to be left in it: there is nothing to use.",
			Numbers: []working.Number{{Name: "state of charge", Value: e.StateOfCharge}, {Name: "depth", Value: e.Usable.Assembly.Depth}},
			Fix:     "Charge the bank first.",
			Source:  working.Source{Title: "arithmetic", Provenance: working.Definition},
		})
	}
	if !e.Usable.Assembly.Resistance.IsSet() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "resistance-not-stated",
			Message: "The resistance of the batteries was not given: the voltage is taken not to sag inside them.",
			Numbers: []working.Number{{Name: "voltage", Value: e.Sag.Voltage}},
			Fix:     "Give Resistance from the datasheet.",
			Source:  unknowns,
		})
	}
	f = append(f, working.Finding{
		Severity: working.Note, Rule: "voltage-taken-as-constant",
		Message: "One voltage is taken from beginning to end. A battery sags more when it is nearly empty, cold or old, and the cut-off may come sooner.",
		Numbers: []working.Number{{Name: "at rest", Value: e.Sag.Circuit.OpenCircuit}, {Name: "under load", Value: e.Sag.Voltage}},
		Fix:     "Give OpenCircuit near the end of the discharge to see whether the load still runs there.",
		Source:  practice("the voltage falls over a discharge"),
	})
	working.Sort(f)
	return f
}

// limitFindings puts the current beside the discharge limit.
func (e Endurance) limitFindings() []working.Finding {
	current := working.Number{Name: "current", Value: e.Sag.Current}
	limit, ok := e.Limit.Get()
	switch {
	case !ok:
		return []working.Finding{limitNotStated("discharge", current)}
	case e.End == ByProtection:
		return []working.Finding{{
			Severity: working.Caution, Rule: "discharge-above-limit",
			Message: "The current is above the discharge limit of the bank. Protection opens and everything on the bank goes dark, not only this load; without protection it overheats.",
			Numbers: []working.Number{current, {Name: "limit", Value: limit}, {Name: "most power within it", Value: e.MostPower.Or(0)}},
			Fix:     "A smaller load, or more strings.",
			Source:  energyPower,
		}}
	}
	return nil
}

func limitNotStated(direction string, current working.Number) working.Finding {
	return working.Finding{
		Severity: working.Caution, Rule: direction + "-limit-not-stated",
		Message: "The " + direction + " limit of the batteries was not given, so the current is not judged.",
		Numbers: []working.Number{current},
		Fix:     "Give the limit from the datasheet.",
		Source:  unknowns,
	}
}
