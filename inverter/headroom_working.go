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
	rated := "that the machine gives for hours"
	if !h.Machine.ContinuousVA.IsSet() {
		rated += ", not stated: as many as watts"
	}
	s.Given("S_rated", h.RatedVA, "VA", rated)
	s.Formula("S_left", h.ApparentLeft, "VA", "left in volt-amperes", "S_rated - S")
	s.Test("volt-amperes", "S <= S_rated", !units.Exceeds(h.Apparent, h.RatedVA))
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
