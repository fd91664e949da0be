package inverter

import (
	"strconv"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Findings returns what is too much and what could not be judged, worst
// first.
func (h Headroom) Findings() []working.Finding {
	f := append(h.runFindings(), h.startFindings()...)
	f = append(f, h.unstatedStarts()...)
	if h.Unstated > 0 {
		f = append(f, powerFactorNotStated(h.Unstated, h.Apparent))
	}
	working.Sort(f)
	return f
}

// powerFactorNotStated says how many demands were counted with a power factor
// of 1.
func powerFactorNotStated(count int, sum units.ApparentPower) working.Finding {
	return working.Finding{
		Severity: working.Note, Rule: "power-factor-not-stated", Source: plainSum,
		Numbers: []working.Number{{Name: "apparent power", Value: sum}},
		Message: "Demands that state neither apparent power nor power factor: " + strconv.Itoa(count) + ". They were counted with a power factor of 1, the least they can take.",
		Fix:     "Give the power factor: about 1 for heaters, often 0.6 for small electronic supplies.",
	}
}

// runFindings are about what runs for hours.
func (h Headroom) runFindings() (f []working.Finding) {
	if units.Exceeds(h.Power, h.Machine.Continuous) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-overload", Source: nameplate,
			Numbers: []working.Number{{Name: "together", Value: h.Power}, {Name: "continuous", Value: h.Machine.Continuous}, {Name: "left", Value: h.PowerLeft}},
			Message: "These loads together take more watts than the inverter gives for hours: it shuts down, and everything on it goes dark.",
			Fix:     "Run fewer at a time; Sets lists which are too much together.",
		})
	}
	if units.Exceeds(h.Apparent, h.RatedVA) {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-overload-va", Source: plainSum,
			Numbers: []working.Number{{Name: "together", Value: h.Apparent}, {Name: "continuous", Value: h.RatedVA}, {Name: "watts", Value: h.Power}},
			Message: "These loads together take more volt-amperes than the inverter gives for hours. It carries amperes, not watts.",
			Fix:     "Run fewer at a time, or loads of a better power factor.",
		})
	}
	if !h.Machine.ContinuousVA.IsSet() {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "inverter-va-not-stated", Source: vaOfWatts,
			Numbers: []working.Number{{Name: "together", Value: h.Apparent}, {Name: "taken as", Value: h.RatedVA}},
			Message: "The inverter's volt-amperes are not stated. They were taken as many as its watts.",
			Fix:     "Give ContinuousVA from the datasheet.",
		})
	}
	return f
}

// startFindings are about the start that takes the most.
func (h Headroom) startFindings() (f []working.Finding) {
	d, ok := h.starter()
	if !ok {
		return nil
	}
	peak := working.Number{Name: "start with all others running", Value: h.Start}
	surge, stated := h.Machine.Surge.Get()
	if !stated {
		return append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-surge-not-stated", Source: surgeHabit, Numbers: []working.Number{peak},
			Message: "The inverter's surge is not stated, so whether " + d.Name + " starts is not judged.",
			Fix:     "Give Surge and SurgeFor from the datasheet.",
		})
	}
	limit := working.Number{Name: "surge", Value: surge}
	lasts, hasLasts := d.StartFor.Get()
	holds, hasHolds := h.Machine.SurgeFor.Get()
	switch {
	case units.Exceeds(h.Start, surge):
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-surge", Source: nameplate, Numbers: []working.Number{peak, limit},
			Message: "The start of " + d.Name + " on top of what runs is above the inverter's surge: it will not start, and the inverter may shut down.",
			Fix:     "Start it with less running, with a soft starter, or from another source.",
		})
	case h.startIsLoad():
		return nil
	case hasLasts && hasHolds && units.Exceeds(lasts, holds):
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-surge-too-short", Source: surgeHabit,
			Numbers: []working.Number{peak, limit, {Name: "start lasts", Value: lasts}, {Name: "surge lasts", Value: holds}},
			Message: "The start of " + d.Name + " lasts longer than the inverter gives its surge.",
			Fix:     "Take an inverter whose surge lasts as long as the start.",
		})
	case !hasLasts || !hasHolds:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "inverter-surge-time-not-stated", Source: surgeHabit, Numbers: []working.Number{peak, limit},
			Message: "The start of " + d.Name + " fits the surge by size; how long the start or the surge lasts is not stated.",
			Fix:     "Give SurgeFor and StartFor.",
		})
	}
	return f
}

// startIsLoad reports that the start is no more than the machine gives for
// hours, so that no surge is needed.
func (h Headroom) startIsLoad() bool {
	return !units.Exceeds(h.Start, h.RatedVA)
}

// usualStart is how many times its running current a motor is taken to start
// on by the rule of thumb.
const usualStart units.Ratio = 6

// unstatedStarts are about starts that were counted as none.
func (h Headroom) unstatedStarts() (f []working.Finding) {
	unknown := 0
	for _, d := range h.Demands {
		switch {
		case d.Start.IsSet():
		case d.Kind == MotorLoad:
			f = append(f, working.Finding{
				Severity: working.Note, Rule: "start-not-stated", Source: motorStart,
				Numbers: []working.Number{{Name: "running", Value: d.apparent()}, {Name: "start by the rule of thumb", Value: units.Scale(d.apparent(), usualStart)}},
				Message: "The start of the motor " + d.Name + " is not stated and counts as no more than its running. By the rule of thumb it is six times that.",
				Fix:     "Give Start: the locked-rotor current of its plate times the voltage.",
			})
		case d.Kind != SteadyLoad:
			unknown++
		}
	}
	if unknown > 0 {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "kind-not-stated", Source: motorStart,
			Numbers: []working.Number{{Name: "demands", Value: units.Ratio(unknown), Unit: "1"}},
			Message: "Of some demands it is not stated whether they start as a motor does. Their starts count as no more than their running.",
			Fix:     "Give Kind, and Start where there is a motor.",
		})
	}
	return f
}
