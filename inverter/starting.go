package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Motor is a single-phase motor at the moment of starting.
type Motor struct {
	LockedRotor units.Current // LRA on its plate, > 0; not the running current
	Voltage     units.Voltage // > 0
	// SoftStart is the part of LockedRotor that a soft starter leaves, > 0 to
	// 100 %, as its maker gives it. Not given: there is none.
	SoftStart units.Opt[units.Ratio]
}

// A Start is the result of [Starting].
type Start struct {
	Motor    Motor               // as used
	Current  units.Current       // at the moment of starting
	Apparent units.ApparentPower // at that moment, for [Demand]
}

// Starting returns what m takes at the moment of starting:
//
//	I = s · I_LRA
//	S = V · I
//
// with s of the soft starter, else 1. Twice the running watts, a rule often
// heard, is far too little for a compressor. A soft starter changes the first
// moment and not the running current.
//
// A field outside the range that [Motor] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The Start is
// then the zero value.
func Starting(m Motor) (Start, error) {
	const op = "inverter.Starting"
	if err := firstError(
		positive[units.Current]().Check(op, "LockedRotor", m.LockedRotor),
		positive[units.Voltage]().Check(op, "Voltage", m.Voltage),
		checkOpt(op, "SoftStart", m.SoftStart, shares()),
	); err != nil {
		return Start{}, err
	}
	s := Start{Motor: m, Current: units.Scale(m.LockedRotor, m.SoftStart.Or(1))}
	s.Apparent = s.Current.ApparentAt(m.Voltage)
	if err := positive[units.ApparentPower]().Check(op, "Apparent", s.Apparent); err != nil {
		return Start{}, err
	}
	return s, nil
}

// Working returns how the start came about, step by step.
func (s Start) Working() *working.Sheet {
	w := working.NewSheet("Motor: starting")
	w.Given("I_LRA", s.Motor.LockedRotor, "A", "locked-rotor current")
	w.Given("V", s.Motor.Voltage, "V", "voltage")
	current := "I_LRA"
	if share, ok := s.Motor.SoftStart.Get(); ok {
		w.Constant("s", share, "1", "part that the soft starter leaves", softStartHabit)
		w.Formula("I", s.Current, "A", "at the moment of starting", "s * I_LRA")
		current = "I"
	}
	w.Formula("S", s.Apparent, "VA", "at the moment of starting", "V * "+current)
	return w
}

// Findings returns where the share of a soft starter has to come from.
func (s Start) Findings() []working.Finding {
	share, ok := s.Motor.SoftStart.Get()
	if !ok {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "soft-start-share", Source: softStartHabit,
		Numbers: []working.Number{{Name: "share left", Value: share}, {Name: "starting", Value: s.Apparent}},
		Message: "What a soft starter leaves of the start is a claim of its maker, and changes nothing of the running current.",
		Fix:     "Take the share from the maker for this compressor, or measure it.",
	}}
}
