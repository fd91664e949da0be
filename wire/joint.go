package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A JointReading is what a meter shows on both sides of a joint, a fuse or a
// switch while a current flows.
type JointReading struct {
	Before  units.Voltage // on the side of the source, against one common point, > 0
	After   units.Voltage // on the side of the load, against the same point, >= 0, not above Before
	Current units.Current // through the joint, at the same moment, > 0
	// Between, if given, is the resistance of conductor between the two probes,
	// which is not the joint's, >= 0.
	Between units.Opt[units.Resistance]
	// Resolution, if given, is one of the last digit that the meter shows, > 0.
	// Each reading may be half of it off.
	Resolution units.Opt[units.Voltage]
}

// A Joint is the result of [MeasureJoint].
type Joint struct {
	Reading    JointReading     // as given
	Lost       units.Voltage    // between the probes
	Wire       units.Voltage    // what the conductor between them takes of it
	Voltage    units.Voltage    // what is the joint's
	Resistance units.Resistance // of the joint
	Heat       units.Power      // given off in the joint
	// Doubt is how far Resistance may be off for the digits of the meter; 0 if
	// Resolution was not given.
	Doubt units.Resistance
	// AtTwice is the heat at twice the current, if the joint stays as it is.
	AtTwice units.Power
}

// MeasureJoint returns the resistance of a joint, and the heat in it, from two
// voltages and a current:
//
//	R = (V_before - V_after - I·R_wire) / I
//	P = I · (V_before - V_after - I·R_wire)
//
// A reading across the joint itself is better: give it as Before, with After 0.
// Two readings near 12 V cancel: with two decimals and 10 A they leave 1 mΩ of
// doubt, as much as a good joint may have.
//
// A field outside the range that [JointReading] states gives a
// [*units.RangeError] and the zero Joint; so does, naming Between, a conductor
// that would lose more than was measured, and a result that no float64 holds.
func MeasureJoint(r JointReading) (Joint, error) {
	const op = "wire.MeasureJoint"
	if err := r.check(op); err != nil {
		return Joint{}, err
	}
	j := Joint{Reading: r, Lost: units.Minus(r.Before, r.After)}
	between := r.Between.Or(0)
	j.Wire = r.Current.Through(between)
	if units.Exceeds(j.Wire, j.Lost) {
		return Joint{}, &units.RangeError{Op: op, Field: "Between", Value: between, Allowed: units.Between(0, j.Lost.Per(r.Current))}
	}
	j.Voltage = units.Minus(j.Lost, j.Wire)
	j.Resistance = j.Voltage.Per(r.Current)
	j.Heat = r.Current.At(j.Voltage)
	j.AtTwice = 4 * j.Heat
	if resolution, ok := r.Resolution.Get(); ok {
		j.Doubt = resolution.Per(r.Current)
	}
	if err := (units.Bounds[units.Power]{}).Check(op, "Heat", j.AtTwice); err != nil {
		return Joint{}, err
	}
	if err := (units.Bounds[units.Resistance]{}).Check(op, "Resistance", j.Resistance+j.Doubt); err != nil {
		return Joint{}, err
	}
	return j, nil
}

// check reports the first field out of range.
func (r JointReading) check(op string) error {
	if err := units.Above[units.Voltage](0).Check(op, "Before", r.Before); err != nil {
		return err
	}
	if err := units.Between(0, r.Before).Check(op, "After", r.After); err != nil {
		return err
	}
	if err := units.Above[units.Current](0).Check(op, "Current", r.Current); err != nil {
		return err
	}
	if between, ok := r.Between.Get(); ok {
		if err := units.AtLeast[units.Resistance](0).Check(op, "Between", between); err != nil {
			return err
		}
	}
	if resolution, ok := r.Resolution.Get(); ok {
		return units.Above[units.Voltage](0).Check(op, "Resolution", resolution)
	}
	return nil
}

// Working returns how the resistance and the heat came about, step by step.
func (j Joint) Working() *working.Sheet {
	r := j.Reading
	s := working.NewSheet("A joint from two voltages and a current")
	s.Given("V_before", r.Before, "V", "on the side of the source")
	s.Given("V_after", r.After, "V", "on the side of the load")
	s.Given("I", r.Current, "A", "through the joint")
	own := "V_before - V_after"
	if between, ok := r.Between.Get(); ok {
		s.Given("R_wire", between, "Ω", "conductor between the probes")
		own += " - I*R_wire"
	}
	s.Formula("ΔV", j.Voltage, "V", "lost in the joint", own)
	s.Formula("R", j.Resistance, "mΩ", "resistance of the joint", "1000 * ΔV / I")
	s.Formula("P", j.Heat, "W", "heat in the joint", "I * ΔV")
	if resolution, ok := r.Resolution.Get(); ok {
		s.Given("u", resolution, "V", "last digit of the meter; each reading may be half of it off")
		s.Formula("R_doubt", j.Doubt, "mΩ", "how far the resistance may be off", "1000 * u / I")
	}
	s.Formula("P_2", j.AtTwice, "W", "heat at twice the current", "4 * P")
	return s
}

// What a joint may give off without a word, and what it may not give off at
// all. Common practice: a lug or a blade terminal of this kind of wiring sheds
// about a watt, and at several it is too hot to touch and gets worse.
const (
	warmJoint = 1 * units.Watt
	hotJoint  = 5 * units.Watt
)

// jointPractice is where the two limits are from.
var jointPractice = working.Source{Title: "a good joint gives off well below a watt; at several it destroys itself",
	Provenance: working.CommonPractice}

// Findings returns what needs attention, worst first: a hot joint, and readings
// whose difference the meter cannot tell from nothing.
func (j Joint) Findings() []working.Finding {
	numbers := []working.Number{{Name: "heat", Value: j.Heat}, {Name: "resistance", Value: j.Resistance}, {Name: "lost", Value: j.Voltage}}
	var f []working.Finding
	switch {
	case !units.Exceeds(hotJoint, j.Heat):
		f = append(f, working.Finding{Severity: working.Danger, Rule: "joint-hot", Numbers: numbers, Source: jointPractice,
			Message: "The joint gives off enough heat to char its insulation and loosen further. No fuse sees it, since the current is normal.",
			Fix:     "Take the load off now. Cut back to bright metal, make the joint anew with the right tool, and measure again."})
	case !units.Exceeds(warmJoint, j.Heat):
		f = append(f, working.Finding{Severity: working.Caution, Rule: "joint-warm", Numbers: numbers, Source: jointPractice,
			Message: "The joint is warmer than a good one. Heat oxidises it, and oxide heats it.",
			Fix:     "Clean and tighten or renew it, and measure again."})
	}
	if j.Doubt > 0 && !units.Exceeds(j.Resistance, j.Doubt) {
		f = append(f, working.Finding{Severity: working.Caution, Rule: "readings-too-coarse", Source: lastDigits,
			Message: "The difference of the readings is no more than the meter may be off: the joint may be good or bad.",
			Numbers: []working.Number{{Name: "resistance", Value: j.Resistance}, {Name: "doubt", Value: j.Doubt}},
			Fix:     "Measure across the joint itself in millivolts, with more current."})
	}
	working.Sort(f)
	return f
}

// lastDigits is why a difference of two readings is worth little.
var lastDigits = working.Source{Title: "two readings, each half of its last digit off", Provenance: working.Derived}
