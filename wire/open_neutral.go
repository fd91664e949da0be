package wire

import (
	"math"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// HighLeg is the top of the usual range at a plug over its nominal voltage:
// 127 V of 120 V, range B of ANSI C84.1 (from memory).
const HighLeg = units.Ratio(127.0 / 120)

// A SplitLoad is what is switched on at a panel of two legs, from leg to neutral.
type SplitLoad struct {
	// Powers of the loads of each leg at Nominal, each >= 0, not both 0. They are
	// taken as resistances.
	Powers  units.Legs[units.Power]
	Supply  LegSupply     // SplitPhase unless said otherwise, which drives a leg highest
	Nominal units.Voltage // from leg to neutral, > 0
	// Highest is the most that the loads of a leg stand, not below Nominal. Not
	// given: Nominal times [HighLeg].
	Highest units.Opt[units.Voltage]
}

// A FloatingNeutral is the result of [OpenNeutral].
type FloatingNeutral struct {
	Load    SplitLoad                 // as given
	Line    units.Voltage             // from leg to leg; 0 with OneHot
	AtLoad  units.Legs[units.Voltage] // across the loads of each leg
	Powers  units.Legs[units.Power]   // what they then take
	Highest units.Voltage             // that they stand, as used
}

// OpenNeutral returns what the loads of two legs get when their shared neutral
// is open. They are then in series from leg to leg, and the lighter load gets
// the more:
//
//	V_A = V_line · P_B / (P_A + P_B)
//
// with V_line twice the nominal voltage on split phase, sqrt(3) times it on two
// legs of a network, and nothing where both legs are one hot. No breaker trips.
//
// Loads are resistances here; electronics fail sooner, and motors stall. A leg
// without load shows the voltage at its outlets, and what is switched on next
// changes both. A supply of one leg, such as one of 30 A, is dead instead, its
// hot wires as they were: that is OneHot.
//
// A field outside the range that [SplitLoad] states gives a [*units.RangeError]
// and the zero FloatingNeutral, and so does a result that no float64 holds.
func OpenNeutral(l SplitLoad) (FloatingNeutral, error) {
	const op = "wire.OpenNeutral"
	if err := l.check(op); err != nil {
		return FloatingNeutral{}, err
	}
	lines := l.Supply.lines()
	f := FloatingNeutral{Load: l, Line: units.Scale(l.Nominal, lines), Highest: l.Highest.Or(units.Scale(l.Nominal, HighLeg))}
	both := l.Powers.Total()
	shareA := units.RatioOf(l.Powers.B, both)
	shareB := units.RatioOf(l.Powers.A, both)
	f.AtLoad = units.Legs[units.Voltage]{A: units.Scale(f.Line, shareA), B: units.Scale(f.Line, shareB)}
	timesA, timesB := lines*shareA, lines*shareB // the nominal voltage
	f.Powers = units.Legs[units.Power]{A: units.Scale(l.Powers.A, timesA*timesA), B: units.Scale(l.Powers.B, timesB*timesB)}
	err := units.Above[units.Voltage](0).Check(op, "Highest", f.Highest)
	if err == nil && l.Supply != OneHot {
		err = units.Above[units.Voltage](0).Check(op, "AtLoad", f.AtLoad.Larger())
	}
	if err != nil {
		return FloatingNeutral{}, err
	}
	return f, nil
}

// lines returns the voltage from leg to leg over that from leg to neutral.
func (s LegSupply) lines() units.Ratio {
	switch s {
	case NetworkLegs:
		return units.Ratio(math.Sqrt(3))
	case OneHot:
		return 0
	}
	return 2
}

// check reports the first field out of range.
func (l SplitLoad) check(op string) error {
	if err := units.AtLeast[units.Power](0).Check(op, "Powers.A", l.Powers.A); err != nil {
		return err
	}
	if err := units.AtLeast[units.Power](0).Check(op, "Powers.B", l.Powers.B); err != nil {
		return err
	}
	if err := units.Above[units.Power](0).Check(op, "Powers", l.Powers.Total()); err != nil {
		return err
	}
	if err := l.Supply.check(op); err != nil {
		return err
	}
	if err := units.Above[units.Voltage](0).Check(op, "Nominal", l.Nominal); err != nil {
		return err
	}
	if highest, ok := l.Highest.Get(); ok {
		return units.AtLeast(l.Nominal).Check(op, "Highest", highest)
	}
	return nil
}

// Where the voltages of an open neutral, and the most that loads stand, are from.
var (
	seriesSource = working.Source{Title: "two loads in series", Provenance: working.Derived}
	usualSource  = working.Source{Title: "two loads in series, and the range of ANSI C84.1 from memory", Provenance: working.Derived}
	rangeSource  = working.Source{Body: "ANSI", Title: "C84.1", Place: "range B: 127 V of 120 V", Provenance: working.Memory}
)

// Working returns how the voltages came about, step by step.
func (f FloatingNeutral) Working() *working.Sheet {
	l := f.Load
	s := working.NewSheet("Two legs with an open neutral, " + l.Supply.String())
	s.Given("P_A", l.Powers.A, "W", "loads of leg A at the nominal voltage")
	s.Given("P_B", l.Powers.B, "W", "loads of leg B at the nominal voltage")
	s.Given("V_nominal", l.Nominal, "V", "from leg to neutral")
	s.Constant("θ", l.Supply.Angle(), "deg", "between the legs", legSource)
	s.Formula("V_line", f.Line, "V", "from leg to leg", "2 * V_nominal * sin(θ * deg / 2)")
	s.Formula("V_A", f.AtLoad.A, "V", "across the loads of leg A", "V_line * P_B / (P_A + P_B)")
	s.Formula("V_B", f.AtLoad.B, "V", "across the loads of leg B", "V_line * P_A / (P_A + P_B)")
	s.Formula("P_A2", f.Powers.A, "W", "what the loads of leg A then take", "P_A * pow(V_A/V_nominal, 2)")
	s.Formula("P_B2", f.Powers.B, "W", "what the loads of leg B then take", "P_B * pow(V_B/V_nominal, 2)")
	if l.Highest.IsSet() {
		s.Given("V_high", f.Highest, "V", "that the loads stand")
	} else {
		s.Constant("k_high", HighLeg, "1", "top of the usual range over the nominal voltage", rangeSource)
		s.Formula("V_high", f.Highest, "V", "that the loads are taken to stand", "k_high * V_nominal")
	}
	s.Test("leg A", "V_A <= V_high", !units.Exceeds(f.AtLoad.A, f.Highest))
	s.Test("leg B", "V_B <= V_high", !units.Exceeds(f.AtLoad.B, f.Highest))
	return s
}

// Findings returns the one that there is: what an open neutral does with these
// loads. It is a danger where a leg goes above what its loads stand.
func (f FloatingNeutral) Findings() []working.Finding {
	x := working.Finding{Source: seriesSource, Numbers: []working.Number{
		{Name: "leg A", Value: f.AtLoad.A}, {Name: "leg B", Value: f.AtLoad.B}, {Name: "highest", Value: f.Highest}}}
	if !f.Load.Highest.IsSet() {
		x.Source = usualSource
	}
	const mend = "Switch off at the pedestal and unplug before anything else; have the neutral found and mended, contact by contact, by a licensed electrician. " +
		"Measure both legs at a pedestal before plugging in."
	switch {
	case units.Exceeds(f.AtLoad.Larger(), f.Highest):
		x.Severity, x.Rule = working.Danger, "open-neutral-overvoltage"
		x.Message = "With the neutral open the legs are in series: the leg with the smaller load goes above what its loads stand, they burn or fail at once, and no breaker trips."
		x.Fix = mend + " A device that watches both legs and opens them is worth its price."
	case f.Line > 0:
		x.Severity, x.Rule = working.Caution, "open-neutral-by-chance"
		x.Message = "With the neutral open the legs are in series. These loads happen to divide the voltage within range; the next switch changes that."
		x.Fix = mend
	default:
		x.Severity, x.Rule = working.Caution, "open-neutral-dead"
		x.Message = "With the neutral open nothing runs, and nothing is over its voltage. The hot wires are live all the same, and so is the neutral inside behind every load that is on."
		x.Fix = mend
	}
	return []working.Finding{x}
}
