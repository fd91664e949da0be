package wire

import (
	"example.com/drawbar/units"
)

// A Run is a two-conductor direct-current circuit from a source to one load.
// Both conductors are alike.
type Run struct {
	Current   units.Current // steady current of the load, > 0
	OneWay    units.Length  // source to load, not there and back, > 0
	Conductor Conductor     // one of the two
	Source    units.Voltage // at the source end, > 0
	// Allowed is the drop that is allowed, as a fraction of Source, 0 to 1,
	// neither included. Common practice is 3 % where the load is sensitive and
	// 10 % elsewhere. Not given means that nothing is judged; the inverse
	// questions need it.
	Allowed units.Opt[units.Ratio]
}

// A Drop is the result of [VoltageDrop].
type Drop struct {
	Run        Run              // as used
	PerLength  PerLength        // resistance of one conductor
	Loop       units.Length     // there and back
	Resistance units.Resistance // of the loop
	Voltage    units.Voltage    // lost in the loop
	AtLoad     units.Voltage    // what is left; not above 0 if the load cannot run
	Fraction   units.Ratio      // Voltage over Source
	Heat       units.Power      // given off along the loop
}

// VoltageDrop returns the steady direct-current drop of r:
//
//	R  = r · 2L
//	ΔV = I · R
//
// where r is the [Resistance] per length of one conductor. The current is
// that of the load at the voltage it gets: a load that takes more current at
// lower voltage drops more than its nameplate current says. Joints, fuses and
// switches are not in it.
//
// A field outside the range that [Run] and [Conductor] state, or not finite,
// gives a [*units.RangeError], which matches [units.ErrRange]; so does a
// result that no float64 holds. The Drop is then the zero value. A drop of
// more than the source has is a result, with AtLoad not above 0 and a finding.
func VoltageDrop(r Run) (Drop, error) {
	const op = "wire.VoltageDrop"
	p, err := r.prepare(op)
	if err != nil {
		return Drop{}, err
	}
	return r.drop(op, p)
}

// drop works out the drop of r, whose fields and resistance are checked.
func (r Run) drop(op string, p PerLength) (Drop, error) {
	r.Conductor = p.Conductor
	d := Drop{Run: r, PerLength: p, Loop: 2 * r.OneWay}
	d.Resistance = p.At.Over(d.Loop)
	d.Voltage = r.Current.Through(d.Resistance)
	d.AtLoad = units.Minus(r.Source, d.Voltage)
	d.Fraction = units.RatioOf(d.Voltage, r.Source)
	d.Heat = r.Current.At(d.Voltage)
	if err := units.Above[units.Power](0).Check(op, "Heat", d.Heat); err != nil {
		return Drop{}, err
	}
	if err := units.Above[units.Ratio](0).Check(op, "Fraction", d.Fraction); err != nil {
		return Drop{}, err
	}
	return d, nil
}

// prepare checks r and returns the resistance of its conductor.
func (r Run) prepare(op string) (PerLength, error) {
	if err := r.check(op); err != nil {
		return PerLength{}, err
	}
	if err := units.Above[units.Length](0).Check(op, "OneWay", r.OneWay); err != nil {
		return PerLength{}, err
	}
	return resistance(op, r.Conductor)
}

// check reports the first field out of range, but for OneWay and Conductor,
// which not every question needs.
func (r Run) check(op string) error {
	if err := units.Above[units.Current](0).Check(op, "Current", r.Current); err != nil {
		return err
	}
	if err := units.Above[units.Voltage](0).Check(op, "Source", r.Source); err != nil {
		return err
	}
	if allowed, ok := r.Allowed.Get(); ok {
		return allowedDrops().Check(op, "Allowed", allowed)
	}
	return nil
}

// allowedDrops is the range of Run.Allowed.
func allowedDrops() units.Bounds[units.Ratio] { return units.Above[units.Ratio](0).Below(1) }

// allowedVoltage returns the drop that r allows, in volts.
func (r Run) allowedVoltage(op string) (units.Voltage, error) {
	allowed, ok := r.Allowed.Get()
	if !ok {
		return 0, &units.RangeError{Op: op, Field: "Allowed", Value: r.Allowed, Allowed: allowedDrops()}
	}
	return units.Scale(r.Source, allowed), nil
}
