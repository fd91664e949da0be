package solar

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Numbers of the sun's yearly course.
// Source: FAO Irrigation and Drainage Paper 56 (1998), equations 21, 23 and
// 24. Provenance: read.
const (
	solarConstant   units.Irradiance = 0.0820e6 / 60 // 0.0820 MJ/m² a minute
	distanceSwing   units.Ratio      = 0.033
	tropic                           = 0.409 * units.Radian // greatest declination
	equinoxPhase                     = 1.39 * units.Radian
	daysOfYear                       = 365
	hoursOfDay                       = 24 * units.Hour
	fullTurn                         = 2 * math.Pi * units.Radian
	halfTurn                         = math.Pi * units.Radian
	quarterTurn                      = math.Pi / 2 * units.Radian
	limitedBeyond                    = 55 * units.Degree // see highLatitude
	leastOfAboveAir units.Ratio      = 0.25              // equation 35, overcast
	mostOfAboveAir  units.Ratio      = 0.75              // equation 35, clear
)

var (
	faoSun = working.Source{Body: "FAO", Title: "Irrigation and Drainage Paper 56, Crop evapotranspiration", Edition: "1998",
		Place: "equations 21 to 25 and 34", Provenance: working.Read}
	faoConstant = working.Source{Body: "FAO", Title: "Irrigation and Drainage Paper 56, Crop evapotranspiration", Edition: "1998",
		Place: "equation 21", Provenance: working.Read}
	faoSky = working.Source{Body: "FAO", Title: "Irrigation and Drainage Paper 56, Crop evapotranspiration", Edition: "1998",
		Place: "equation 35 with a_s = 0.25 and b_s = 0.50", Provenance: working.Read}
	highLatitude = working.Source{Body: "FAO", Title: "Irrigation and Drainage Paper 56, Crop evapotranspiration", Edition: "1998",
		Place: "equation 21, on winter months beyond 55°", Provenance: working.Memory}
)

// A DayAt is a day of the year at a latitude.
type DayAt struct {
	Latitude units.Angle // north positive, −90° to 90°; 0 is the equator
	OfYear   int         // 1 on 1 January, 365 or 366 on 31 December
}

// A Horizon says whether the sun crosses the horizon on a day.
type Horizon uint8

const (
	// RisesAndSets is an ordinary day.
	RisesAndSets Horizon = iota
	// NeverSets is a day of midnight sun.
	NeverSets
	// NeverRises is a day of polar night.
	NeverRises
)

// String returns "rises and sets", "never sets" or "never rises".
func (h Horizon) String() string {
	switch h {
	case RisesAndSets:
		return "rises and sets"
	case NeverSets:
		return "never sets"
	case NeverRises:
		return "never rises"
	}
	return "unknown"
}

// A DaySun is the result of [SunOn].
type DaySun struct {
	Day             DayAt             // as used
	InverseDistance units.Ratio       // inverse relative distance of earth and sun, squared
	Declination     units.Angle       // of the sun, north positive
	CosSunset       units.Ratio       // cosine of the sunset hour angle, limited to −1 and 1
	Horizon         Horizon           // whether the sun rises and sets
	SunsetAngle     units.Angle       // hour angle of sunset: 0 if the sun never rises, π if it never sets
	Daylight        units.Elapsed     // sunrise to sunset of the sun's centre, no refraction
	AboveAir        units.Irradiation // on a level surface above the air, for the day
}

// SunOn returns the day's sun by the equations of FAO-56:
//
//	d_r = 1 + 0.033 cos(2πJ/365)                                        (23)
//	δ   = 0.409 sin(2πJ/365 − 1.39)                                     (24)
//	ω_s = arccos(−tan φ tan δ)                                          (25)
//	R_a = (24·60/π) G_sc d_r (ω_s sin φ sin δ + cos φ cos δ sin ω_s)    (21)
//	N   = 24 ω_s/π                                                      (34)
//
// with G_sc = 0.0820 MJ/m² a minute. They are made for the whole day: the
// declination is up to 1.2° off near the equinoxes, and where the sun never
// rises or never sets ω_s is 0 or π. The daylight is that of the sun's centre
// on a bare horizon without refraction, some minutes less than what an
// almanac has.
//
// A field outside the range that [DayAt] states gives a [*units.RangeError] and
// the zero DaySun.
func SunOn(d DayAt) (DaySun, error) {
	if err := d.check("solar.SunOn"); err != nil {
		return DaySun{}, err
	}
	turn := units.Scale(fullTurn, units.Ratio(d.OfYear)/daysOfYear)
	s := DaySun{Day: d}
	s.InverseDistance = 1 + distanceSwing*units.Ratio(turn.Cos())
	s.Declination = units.Scale(tropic, units.Ratio((turn - equinoxPhase).Sin()))
	s.Horizon, s.CosSunset = horizon(d.Latitude, s.Declination)
	s.SunsetAngle = units.Angle(math.Acos(float64(s.CosSunset)))
	s.Daylight = units.Scale(hoursOfDay, units.RatioOf(s.SunsetAngle, halfTurn))
	height := float64(s.SunsetAngle)*d.Latitude.Sin()*s.Declination.Sin() +
		d.Latitude.Cos()*s.Declination.Cos()*s.SunsetAngle.Sin()
	s.AboveAir = units.Scale(solarConstant.For(hoursOfDay), s.InverseDistance*units.Ratio(height/math.Pi))
	return s, nil
}

// horizon returns whether the sun crosses the horizon, and the cosine of the
// hour angle at which it does. The condition is one of angles, not of the
// cosine, since the tangent of a pole's latitude is float64 noise.
func horizon(latitude, declination units.Angle) (Horizon, units.Ratio) {
	reach := max(latitude, -latitude) + max(declination, -declination)
	switch {
	case units.Exceeds(quarterTurn, reach):
		return RisesAndSets, units.Ratio(-latitude.Tan() * declination.Tan())
	case (latitude > 0) == (declination > 0):
		return NeverSets, -1
	}
	return NeverRises, 1
}

func (d DayAt) check(op string) error {
	latitudes := units.Between(-90*units.Degree, 90*units.Degree)
	if err := latitudes.Check(op, "Latitude", d.Latitude); err != nil {
		return err
	}
	if d.OfYear < 1 || d.OfYear > daysOfYear+1 {
		return &units.RangeError{Op: op, Field: "OfYear", Value: d.OfYear, Allowed: allowed("1 to 366")}
	}
	return nil
}
