package solar

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the day's sun came about, step by step.
func (x DaySun) Working() *working.Sheet {
	s := working.NewSheet("Sun of a day, above the air")
	s.Choose("method", "FAO-56 for a whole day", "needs latitude and date only", faoSun)
	s.Given("φ", x.Day.Latitude, "°", "latitude, north positive")
	s.Given("J", units.Ratio(x.Day.OfYear), "1", "day of the year")
	s.Constant("G_sc", solarConstant.For(units.Minute), "MJ/m²", "solar constant, for a minute", faoConstant)
	s.Formula("d_r", x.InverseDistance, "1", "inverse relative distance of earth and sun", "1 + 0.033 * cos(2*pi*J / 365)")
	s.Formula("δ", x.Declination, "rad", "declination of the sun", "0.409 * sin(2*pi*J / 365 - 1.39)")
	x.sunsetSteps(s)
	s.Formula("N", x.Daylight, "h", "daylight", "24 / pi * ω_s")
	s.Formula("R_a", x.AboveAir, "MJ/m²", "on a level surface above the air, for the day",
		"24*60/pi * G_sc * d_r * (ω_s * sin(φ*deg) * sin(δ) + cos(φ*deg) * cos(δ) * sin(ω_s))")
	return s
}

func (x DaySun) sunsetSteps(s *working.Sheet) {
	const cosine, reach = "cosine of the sunset hour angle", "abs(φ*deg) + abs(δ)"
	switch x.Horizon {
	case NeverSets:
		s.Test("the sun never sets", reach+" >= pi/2", true)
		s.Formula("X", x.CosSunset, "1", cosine+", at its limit", "-1")
	case NeverRises:
		s.Test("the sun never rises", reach+" >= pi/2", true)
		s.Formula("X", x.CosSunset, "1", cosine+", at its limit", "1")
	default:
		s.Test("the sun rises and sets", reach+" < pi/2", true)
		s.Formula("X", x.CosSunset, "1", cosine, "-tan(φ*deg) * tan(δ)")
	}
	s.Formula("ω_s", x.SunsetAngle, "rad", "sunset hour angle", "acos(X)")
}

// Findings returns that no roof gets what is above the air, and where the
// equations are weak.
func (x DaySun) Findings() []working.Finding {
	f := []working.Finding{{
		Severity: working.Note, Rule: "above-the-air", Source: faoSky,
		Message: "No roof gets this: the air lets about a quarter of it through under an overcast sky and three quarters under a clear one.",
		Numbers: []working.Number{{Name: "above the air", Value: x.AboveAir},
			{Name: "overcast", Value: units.Scale(x.AboveAir, leastOfAboveAir)},
			{Name: "clear", Value: units.Scale(x.AboveAir, mostOfAboveAir)}},
		Fix: "Use measured irradiation of the place and month for a harvest.",
	}}
	latitude := max(x.Day.Latitude, -x.Day.Latitude)
	winter := (x.Day.Latitude > 0) != (x.Declination > 0)
	if winter && units.Exceeds(latitude, limitedBeyond) {
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "winter-beyond-55", Source: highLatitude,
			Message: "In the winter half of the year the equations are of limited validity beyond 55° of latitude.",
			Numbers: []working.Number{{Name: "latitude", Value: x.Day.Latitude}, {Name: "above the air", Value: x.AboveAir}},
			Fix:     "Count on no sun in such a winter.",
		})
	}
	return f
}
