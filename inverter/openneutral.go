package inverter

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// HighLeg is the top of the usual range at a plug over its nominal voltage:
// 127 V of 120 V, range B of ANSI C84.1 (from memory).
const HighLeg = units.Ratio(127.0 / 120)

// A TwoLegs is the loads of two legs, as resistances, and the neutral between
// them.
type TwoLegs struct {
	Phasing Phasing                 // one of those there are
	Loads   units.Legs[units.Power] // at the nominal voltage, each >= 0 and one of them > 0
	Nominal units.Voltage           // of a leg to neutral, > 0
	// Highest is the most that the loads of a leg stand, not below Nominal.
	// Not given: Nominal times [HighLeg].
	Highest units.Opt[units.Voltage]
}

// A LostNeutral is the result of [OpenNeutral].
type LostNeutral struct {
	Legs    TwoLegs                   // as given
	Across  units.Voltage             // between the two hots, 0 where they are one
	Voltage units.Legs[units.Voltage] // that each leg's loads see
	Highest units.Voltage             // that they stand, as used
}

// OpenNeutral returns what the loads of each leg see once their common neutral
// is open. They are then in series across the two hots, and the leg with the
// smaller load goes high:
//
//	V_A = V_across · P_B / (P_A + P_B)
//
// with P at the nominal voltage and V_across twice that on split phase, sqrt(3)
// times it on two legs of three, and nothing where both legs are one hot. No
// breaker trips. Loads that are no resistances divide it otherwise, and what is
// switched on next changes it.
//
// A rig of one leg, such as one of 30 A, is dead with an open neutral, its
// frame and hot wires as they were: that is OneHot.
//
// A field outside the range that [TwoLegs] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The LostNeutral
// is then the zero value.
func OpenNeutral(l TwoLegs) (LostNeutral, error) {
	const op = "inverter.OpenNeutral"
	if err := firstError(
		l.Phasing.check(op),
		notNegative[units.Power]().Check(op, "Loads.A", l.Loads.A),
		notNegative[units.Power]().Check(op, "Loads.B", l.Loads.B),
		positive[units.Power]().Check(op, "Loads", l.Loads.Total()),
		positive[units.Voltage]().Check(op, "Nominal", l.Nominal),
		checkOpt(op, "Highest", l.Highest, units.AtLeast(l.Nominal)),
	); err != nil {
		return LostNeutral{}, err
	}
	n := LostNeutral{Legs: l, Highest: l.Highest.Or(units.Scale(l.Nominal, HighLeg))}
	n.Across = units.Scale(l.Nominal, l.Phasing.across())
	n.Voltage.A = units.Scale(n.Across, units.RatioOf(l.Loads.B, l.Loads.Total()))
	n.Voltage.B = units.Scale(n.Across, units.RatioOf(l.Loads.A, l.Loads.Total()))
	if err := firstError(
		notNegative[units.Voltage]().Check(op, "Across", n.Across),
		positive[units.Voltage]().Check(op, "Highest", n.Highest),
	); err != nil {
		return LostNeutral{}, err
	}
	return n, nil
}

// across returns the voltage between the hots over that of a leg.
func (p Phasing) across() units.Ratio {
	switch p {
	case SplitPhase:
		return 2
	case TwoOfThree:
		return units.Ratio(math.Sqrt(3))
	}
	return 0
}

// Working returns how the voltages came about, step by step.
func (n LostNeutral) Working() *working.Sheet {
	s := working.NewSheet("Open neutral of two legs, " + n.Legs.Phasing.String())
	s.Given("P_A", n.Legs.Loads.A, "W", "on leg A at the nominal voltage")
	s.Given("P_B", n.Legs.Loads.B, "W", "on leg B at the nominal voltage")
	s.Given("V", n.Legs.Nominal, "V", "nominal, leg to neutral")
	s.Given("θ", n.Legs.Phasing.Angle(), "deg", "between the hots")
	s.Formula("V_across", n.Across, "V", "between the hots", "2 * V * sin(θ * deg / 2)")
	s.Formula("V_A", n.Voltage.A, "V", "on the loads of leg A", "V_across * P_B / (P_A + P_B)")
	s.Formula("V_B", n.Voltage.B, "V", "on the loads of leg B", "V_across * P_A / (P_A + P_B)")
	s.Given("V_high", n.Highest, "V", "that the loads stand")
	s.Test("leg A", "V_A <= V_high", !units.Exceeds(n.Voltage.A, n.Highest))
	s.Test("leg B", "V_B <= V_high", !units.Exceeds(n.Voltage.B, n.Highest))
	return s
}

// Findings returns what an open neutral does with these loads.
func (n LostNeutral) Findings() []working.Finding {
	f := working.Finding{Source: legsInSeries, Numbers: []working.Number{
		{Name: "leg A", Value: n.Voltage.A}, {Name: "leg B", Value: n.Voltage.B}, {Name: "highest", Value: n.Highest}}}
	const mend = "Switch off at the pedestal and unplug before anything else; have the neutral found and mended, contact by contact, by a licensed electrician."
	switch {
	case units.Exceeds(n.Voltage.Larger(), n.Highest):
		f.Severity, f.Rule = working.Danger, "open-neutral-overvoltage"
		f.Message = "With the neutral open the legs are in series: the leg with the smaller load goes above what its loads stand, they burn or fail at once, and no breaker trips."
		f.Fix = mend + " A device that watches both legs and opens them is worth its price."
	case n.Across > 0:
		f.Severity, f.Rule = working.Caution, "open-neutral-by-chance"
		f.Message = "With the neutral open the legs are in series. These loads happen to divide the voltage within range; the next switch changes that."
		f.Fix = mend
	default:
		f.Severity, f.Rule = working.Caution, "open-neutral-dead"
		f.Message = "With the neutral open nothing runs, and nothing is over its voltage. The hot wires are live all the same, and so is the neutral inside behind every load that is on."
		f.Fix = mend
	}
	return []working.Finding{f}
}
