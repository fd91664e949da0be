package units

import (
	"math"
	"time"
)

// The methods of this file change dimension. Each is one multiplication or
// division of float64, without checks: a division by zero gives an infinity,
// which the checks of a calculator's result refuse.

// Scale returns q times ratio.
func Scale[Q Quantity](q Q, ratio Ratio) Q { return Q(float64(q) * float64(ratio)) }

// RatioOf returns part over whole.
func RatioOf[Q Quantity](part, whole Q) Ratio { return Ratio(float64(part) / float64(whole)) }

// Through returns the voltage that i makes across r: V = I·R.
func (i Current) Through(r Resistance) Voltage { return Voltage(float64(i) * float64(r)) }

// At returns the power of i at v: P = V·I, for direct current or in phase.
func (i Current) At(v Voltage) Power { return Power(float64(i) * float64(v)) }

// ApparentAt returns the apparent power of i at v, both effective values.
func (i Current) ApparentAt(v Voltage) ApparentPower {
	return ApparentPower(float64(i) * float64(v))
}

// Heating returns the power that i turns into heat in r: P = I²·R.
func (i Current) Heating(r Resistance) Power { return Power(float64(i) * float64(i) * float64(r)) }

// For returns the charge that i carries in d.
func (i Current) For(d Elapsed) Charge { return Charge(float64(i) * float64(d)) }

// LetThrough returns the joule integral of i flowing for d: I²·t.
func (i Current) LetThrough(d Elapsed) JouleIntegral {
	return JouleIntegral(float64(i) * float64(i) * float64(d))
}

// Across returns the current that v drives through r: I = V/R.
func (v Voltage) Across(r Resistance) Current { return Current(float64(v) / float64(r)) }

// Per returns the resistance across which i makes v: R = V/I.
func (v Voltage) Per(i Current) Resistance { return Resistance(float64(v) / float64(i)) }

// At returns the current that makes p at v: I = P/V.
func (p Power) At(v Voltage) Current { return Current(float64(p) / float64(v)) }

// For returns the energy of p over d.
func (p Power) For(d Elapsed) Energy { return Energy(float64(p) * float64(d)) }

// Apparent returns the apparent power of a load that takes p at power factor
// pf: S = P/pf.
func (p Power) Apparent(pf Ratio) ApparentPower { return ApparentPower(float64(p) / float64(pf)) }

// Real returns the real power of s at power factor pf: P = S·pf.
func (s ApparentPower) Real(pf Ratio) Power { return Power(float64(s) * float64(pf)) }

// At returns the effective current of s at the effective voltage v: I = S/V.
func (s ApparentPower) At(v Voltage) Current { return Current(float64(s) / float64(v)) }

// At returns the charge that carries e at the constant voltage v.
func (e Energy) At(v Voltage) Charge { return Charge(float64(e) / float64(v)) }

// In returns the mean power of e spread over d.
func (e Energy) In(d Elapsed) Power { return Power(float64(e) / float64(d)) }

// Lasts returns how long e feeds p.
func (e Energy) Lasts(p Power) Elapsed { return Elapsed(float64(e) / float64(p)) }

// At returns the energy that q carries at the constant voltage v.
func (q Charge) At(v Voltage) Energy { return Energy(float64(q) * float64(v)) }

// In returns the mean current of q spread over d.
func (q Charge) In(d Elapsed) Current { return Current(float64(q) / float64(d)) }

// Lasts returns how long q feeds i.
func (q Charge) Lasts(i Current) Elapsed { return Elapsed(float64(q) / float64(i)) }

// Of returns the resistance of a conductor of length l and cross-section a:
// R = ρ·L/A.
func (rho Resistivity) Of(l Length, a Area) Resistance {
	return Resistance(float64(rho) * float64(l) / float64(a))
}

// Over returns the resistance per length of a conductor of cross-section a:
// r = ρ/A.
func (rho Resistivity) Over(a Area) ResistancePerLength {
	return ResistancePerLength(float64(rho) / float64(a))
}

// Over returns the resistance of a conductor of length l.
func (r ResistancePerLength) Over(l Length) Resistance {
	return Resistance(float64(r) * float64(l))
}

// Along returns the resistance per length of r spread along l.
func (r Resistance) Along(l Length) ResistancePerLength {
	return ResistancePerLength(float64(r) / float64(l))
}

// By returns the area of a rectangle of sides l and w.
func (l Length) By(w Length) Area { return Area(float64(l) * float64(w)) }

// By returns the volume of a body of base a and height h.
func (a Area) By(h Length) Volume { return Volume(float64(a) * float64(h)) }

// In returns the mean speed of l covered in d.
func (l Length) In(d Elapsed) Speed { return Speed(float64(l) / float64(d)) }

// For returns the distance covered at s in d.
func (s Speed) For(d Elapsed) Length { return Length(float64(s) * float64(d)) }

// For returns the volume that f moves in d.
func (f VolumeFlow) For(d Elapsed) Volume { return Volume(float64(f) * float64(d)) }

// In returns the mean flow of v moved in d.
func (v Volume) In(d Elapsed) VolumeFlow { return VolumeFlow(float64(v) / float64(d)) }

// Over returns the mass of length l.
func (m MassPerLength) Over(l Length) Mass { return Mass(float64(m) * float64(l)) }

// Along returns the mass per length of m spread along l.
func (m Mass) Along(l Length) MassPerLength { return MassPerLength(float64(m) / float64(l)) }

// On returns the radiant power that falls on a.
func (g Irradiance) On(a Area) Power { return Power(float64(g) * float64(a)) }

// For returns the irradiation of g over d.
func (g Irradiance) For(d Elapsed) Irradiation { return Irradiation(float64(g) * float64(d)) }

// On returns the radiant energy that falls on a.
func (h Irradiation) On(a Area) Energy { return Energy(float64(h) * float64(a)) }

// In returns the mean irradiance of h spread over d.
func (h Irradiation) In(d Elapsed) Irradiance { return Irradiance(float64(h) / float64(d)) }

// Over returns the relative change that a change of temperature dt makes.
func (k PerKelvin) Over(dt TemperatureChange) Ratio { return Ratio(float64(k) * float64(dt)) }

// Period returns the time of one cycle.
func (f Frequency) Period() Elapsed { return Elapsed(1 / float64(f)) }

// Sin returns the sine of a.
func (a Angle) Sin() float64 { return math.Sin(float64(a)) }

// Cos returns the cosine of a.
func (a Angle) Cos() float64 { return math.Cos(float64(a)) }

// Tan returns the tangent of a.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }

// ElapsedOf returns d as a computed time, exact to a nanosecond within 104
// days and to nine digits always.
func ElapsedOf(d time.Duration) Elapsed { return Elapsed(d.Seconds()) }

// Duration returns e rounded to the nanosecond, half away from zero. An e
// that is not finite or longer than a [time.Duration] holds, about 292
// years, is a [*RangeError].
func (e Elapsed) Duration() (time.Duration, error) {
	ns := math.Round(float64(e) * 1e9)
	if !(math.Abs(ns) < 1<<63) {
		const most = 9223372036 * Second // math.MaxInt64 ns, whole seconds
		return 0, &RangeError{Op: "units.Elapsed.Duration", Field: "Elapsed", Value: e, Allowed: Between(-most, most)}
	}
	return time.Duration(ns), nil
}
