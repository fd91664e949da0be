package inverter

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the headroom came about, step by step.
func (h Headroom) Working() *working.Sheet {
	s := working.NewSheet("Inverter: what runs together")
	s.Given("P_rated", h.Machine.Continuous, "W", "that the machine gives for hours")
	powers, apparents := demandSteps(s, h.Demands)
	if len(h.Demands) > 0 {
		s.Formula("P", h.Power, "W", "all together", strings.Join(powers, " + "))
		s.Formula("S", h.Apparent, "VA", "all together, added plainly", strings.Join(apparents, " + "))
	} else {
		s.Given("P", h.Power, "W", "nothing runs")
		s.Given("S", h.Apparent, "VA", "nothing runs")
	}
	s.Formula("P_left", h.PowerLeft, "W", "left in watts", "P_rated - P")
	s.Test("watts", "P <= P_rated", !units.Exceeds(h.Power, h.Machine.Continuous))
	if rated, ok := h.Machine.ContinuousVA.Get(); ok {
		s.Given("S_rated", rated, "VA", "that the machine gives for hours")
		s.Formula("S_left", h.ApparentLeft.Or(0), "VA", "left in volt-amperes", "S_rated - S")
		s.Test("volt-amperes", "S <= S_rated", !units.Exceeds(h.Apparent, rated))
	}
	h.startSteps(s, apparents)
	return s
}

// demandSteps appends each demand and returns the symbols of its powers.
func demandSteps(s *working.Sheet, demands []Demand) (powers, apparents []string) {
	for i, d := range demands {
		n := strconv.Itoa(i + 1)
		s.Given("P_"+n, d.Power, "W", d.Name)
		powers, apparents = append(powers, "P_"+n), append(apparents, "S_"+n)
		switch k, ok := d.PowerFactor.Get(); {
		case ok:
			s.Given("k_"+n, k, "1", "power factor of "+d.Name)
			s.Formula("S_"+n, d.apparent(), "VA", d.Name, "P_"+n+" / k_"+n)
		case d.unstated():
			s.Given("S_"+n, d.apparent(), "VA", d.Name+", power factor not stated, 1 used")
		default:
			s.Given("S_"+n, d.apparent(), "VA", d.Name)
		}
	}
	return powers, apparents
}

// startSteps appends the start that takes the most.
func (h Headroom) startSteps(s *working.Sheet, apparents []string) {
	d, ok := h.starter()
	if !ok {
		return
	}
	s.Choose("start that takes the most", d.Name, "each start was put on top of all others running", plainSum)
	s.Given("S_start", d.Start.Or(0), "VA", "start of "+d.Name+", instead of its running power")
	s.Formula("S_others", h.Others, "VA", "all others running", "S - "+apparents[h.Starting])
	s.Formula("S_peak", h.Start, "VA", "the start on top of them", "S_others + S_start")
	if surge, ok := h.Machine.Surge.Get(); ok {
		s.Given("S_surge", surge, "VA", "that the machine gives for a moment")
		s.Formula("S_surge_left", h.SurgeLeft.Or(0), "VA", "left of the surge", "S_surge - S_peak")
		s.Test("start against surge", "S_peak <= S_surge", !units.Exceeds(h.Start, surge))
	}
}

// Findings returns what is too much and what could not be judged, worst
// first.
func (h Headroom) Findings() []working.Finding {
	f := append(h.runFindings(), h.startFindings()...)
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
	rated, stated := h.Machine.ContinuousVA.Get()
	switch {
	case stated && units.Exceeds(h.Apparent, rated):
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "inverter-overload-va", Source: plainSum,
			Numbers: []working.Number{{Name: "together", Value: h.Apparent}, {Name: "continuous", Value: rated}, {Name: "watts", Value: h.Power}},
			Message: "These loads together take more volt-amperes than the inverter gives for hours. It carries amperes, not watts.",
			Fix:     "Run fewer at a time, or loads of a better power factor.",
		})
	case !stated:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "inverter-va-not-stated", Source: nameplate,
			Numbers: []working.Number{{Name: "together", Value: h.Apparent}},
			Message: "The inverter's volt-amperes are not stated, so only watts are judged.",
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
	rated, ok := h.Machine.ContinuousVA.Get()
	return ok && !units.Exceeds(h.Start, rated)
}
