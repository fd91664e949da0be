package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A SplitLoad is what is switched on at a 120/240 V panel, from leg to neutral.
type SplitLoad struct {
	// Powers of the loads of each leg at Nominal, each >= 0, not both 0. They are
	// taken as resistances.
	Powers  units.Legs[units.Power]
	Nominal units.Voltage // from leg to neutral, > 0
}

// A FloatingNeutral is the result of [OpenNeutral].
type FloatingNeutral struct {
	Load   SplitLoad                 // as given
	Line   units.Voltage             // from leg to leg, twice Nominal
	AtLoad units.Legs[units.Voltage] // across the loads of each leg
	Powers units.Legs[units.Power]   // what they then take
}

// OpenNeutral returns what the loads of two opposite legs get when their shared
// neutral is open. They are then in series from leg to leg, and the lighter load
// gets the more:
//
//	V_A = 2·V_nominal · P_B / (P_A + P_B)
//
// Loads are resistances here; electronics fail sooner, and motors stall. A leg
// without load shows the voltage at its outlets. A supply of one leg is dead
// instead.
//
// A field outside the range that [SplitLoad] states gives a [*units.RangeError]
// and the zero FloatingNeutral, and so does a result that no float64 holds.
func OpenNeutral(l SplitLoad) (FloatingNeutral, error) {
	const op = "wire.OpenNeutral"
	if err := l.check(op); err != nil {
		return FloatingNeutral{}, err
	}
	f := FloatingNeutral{Load: l, Line: 2 * l.Nominal}
	both := l.Powers.Total()
	shareA := units.RatioOf(l.Powers.B, both)
	shareB := units.RatioOf(l.Powers.A, both)
	f.AtLoad = units.Legs[units.Voltage]{A: units.Scale(f.Line, shareA), B: units.Scale(f.Line, shareB)}
	f.Powers = units.Legs[units.Power]{A: units.Scale(l.Powers.A, 4*shareA*shareA), B: units.Scale(l.Powers.B, 4*shareB*shareB)}
	if err := units.Above[units.Voltage](0).Check(op, "AtLoad", f.AtLoad.Larger()); err != nil {
		return FloatingNeutral{}, err
	}
	return f, nil
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
	return units.Above[units.Voltage](0).Check(op, "Nominal", l.Nominal)
}

// Working returns how the voltages came about, step by step.
func (f FloatingNeutral) Working() *working.Sheet {
	s := working.NewSheet("Two legs with an open neutral")
	s.Given("P_A", f.Load.Powers.A, "W", "loads of leg A at the nominal voltage")
	s.Given("P_B", f.Load.Powers.B, "W", "loads of leg B at the nominal voltage")
	s.Given("V_nominal", f.Load.Nominal, "V", "from leg to neutral")
	s.Formula("V_line", f.Line, "V", "from leg to leg", "2 * V_nominal")
	s.Formula("V_A", f.AtLoad.A, "V", "across the loads of leg A", "V_line * P_B / (P_A + P_B)")
	s.Formula("V_B", f.AtLoad.B, "V", "across the loads of leg B", "V_line * P_A / (P_A + P_B)")
	s.Formula("P_A2", f.Powers.A, "W", "what the loads of leg A then take", "P_A * pow(V_A/V_nominal, 2)")
	s.Formula("P_B2", f.Powers.B, "W", "what the loads of leg B then take", "P_B * pow(V_B/V_nominal, 2)")
	return s
}

// Findings returns the one that there is: an open neutral is always a danger.
func (f FloatingNeutral) Findings() []working.Finding {
	return []working.Finding{{
		Severity: working.Danger,
		Rule:     "open-neutral",
		Message: "With the neutral open the loads of both legs are in series. The lighter leg burns out what is plugged in, " +
			"and no breaker trips. Every load that is switched changes both voltages.",
		Numbers: []working.Number{{Name: "leg A", Value: f.AtLoad.A}, {Name: "leg B", Value: f.AtLoad.B}, {Name: "nominal", Value: f.Load.Nominal}},
		Fix: "Unplug everything, switch the supply off and have the neutral found and mended before anything is switched on. " +
			"Measure both legs at a pedestal before plugging in.",
		Source: working.Source{Title: "Kirchhoff's laws", Provenance: working.Derived},
	}}
}
