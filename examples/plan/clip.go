package plan

import (
	"math"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// clipped returns what passes the controller of a day's harvest. Its output
// limit cuts the best hours off: with the day's sun as half a sine wave from
// sunrise to sunset, energy E over daylight t has its peak at P = π·E/(2t), and
// above a limit L, with a = L/P below 1, there is left of it
//
//	1 − √(1−a²) + a·(π/2 − arcsin a)
//
// A day of passing clouds has sharper peaks and loses more.
func (m *maker) clipped(h solar.DayHarvest) (units.Energy, bool) {
	light, stated, ok := m.daylight()
	if !ok {
		return 0, false
	}
	// The sun of a polar night brings nothing to cut.
	if light == 0 || h.Energy == 0 {
		return h.Energy, true
	}
	volts := m.rig.Bank.Typical.Or(m.assembly.Voltage)
	limit := m.rig.Roof.Controller.OutputLimit.At(volts)
	peak := units.Scale(h.Energy.In(light), math.Pi/2*units.One)
	if !units.Exceeds(peak, limit) {
		return h.Energy, true
	}
	a := float64(units.RatioOf(limit, peak))
	left := units.Ratio(1 - math.Sqrt(1-a*a) + a*(math.Pi/2-math.Asin(a)))
	energy := units.Scale(h.Energy, left)
	s := working.NewSheet("What the controller passes of the day")
	s.Given("E", h.Energy, "Wh", "harvest of the day")
	s.Given("t", light, "h", "daylight")
	s.Formula("P_peak", peak, "W", "at noon of half a sine wave", "pi * E / (2 * t)")
	s.Given("I_limit", m.rig.Roof.Controller.OutputLimit, "A", "output limit of the controller")
	s.Given("V", volts, "V", "of the bank while it is charged")
	s.Formula("P_limit", limit, "W", "the most that it passes", "I_limit * V")
	s.Formula("a", units.Ratio(a), "1", "limit as a part of the peak", "P_limit / P_peak")
	s.Formula("x", left, "1", "part of the day that passes", "1 - sqrt(1 - a*a) + a * (pi/2 - asin(a))")
	s.Formula("E_passed", energy, "Wh", "into the bank", "x * E")
	m.sheet("roof", s)
	f := working.Finding{
		Severity: working.Caution, Rule: "harvest-clipped", Source: physics("a day of half a sine wave between sunrise and sunset"),
		Message: "The controller's output limit cuts off the best hours of this day; only what passes it is counted.",
		Numbers: []working.Number{{Name: "harvest", Value: h.Energy}, {Name: "passes", Value: energy}, {Name: "at noon", Value: peak}, {Name: "limit", Value: limit}},
		Fix:     "Use a larger controller, or know that the panels give no more.",
	}
	if !stated {
		f.Message += " Twelve hours of daylight are assumed: give roof.sun.latitude and roof.sun.day_of_year."
	}
	if nameplate := units.Scale(m.rig.Roof.Power, units.Ratio(m.rig.Roof.Panels)); units.Exceeds(peak, nameplate) {
		f.Message += " At noon that is more than the panels have on their nameplates: look at the irradiation and the hours of daylight."
		f.Numbers = append(f.Numbers, working.Number{Name: "nameplate", Value: nameplate})
	}
	m.find("roof", f)
	return energy, true
}

// daylight returns sunrise to sunset of the day, and whether its place and day
// are stated; twelve hours if not.
func (m *maker) daylight() (light units.Elapsed, stated, ok bool) {
	s := m.rig.Roof.Sun
	latitude, stated := s.Latitude.Get()
	if !stated {
		return 12 * units.Hour, false, true
	}
	sun, err := solar.SunOn(solar.DayAt{Latitude: latitude, OfYear: s.DayOfYear})
	return sun.Daylight, true, m.ok("roof", err)
}
