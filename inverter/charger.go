package inverter

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Charger is a charger or converter at full output.
type Charger struct {
	Current     units.Current // into the bank, > 0
	Voltage     units.Voltage // of the bank while it charges, > 0
	Efficiency  units.Ratio   // > 0 to 100 %: 0.87 or 87 %, not 87
	PowerFactor units.Ratio   // > 0 to 1
	Supply      units.Voltage // that feeds it, such as 120 V, > 0
	// Energy is what is to be put back into the bank, > 0.
	Energy units.Opt[units.Energy]
}

// A ChargerUse is the result of [ChargerDraw].
type ChargerUse struct {
	Charger  Charger                  // as used
	Output   units.Power              // into the bank
	Power    units.Power              // from the supply
	Apparent units.ApparentPower      // from the supply
	Current  units.Current            // from the supply
	Time     units.Opt[units.Elapsed] // to put Energy back at full output, the least there can be; not given if Energy is not
}

// ChargerDraw returns what c takes from its supply:
//
//	P_out = V_bank · I_bank
//	P     = P_out / η
//	S     = P / k
//	I     = S / V_supply
//	t     = E / P_out
//
// The charger and not the generator before it sets the pace of a refill, and a
// bank that takes less near the end makes it longer than t.
//
// A field outside the range that [Charger] states, or not finite, gives a
// [*units.RangeError]; so does a result that no float64 holds. The ChargerUse
// is then the zero value.
func ChargerDraw(c Charger) (ChargerUse, error) {
	const op = "inverter.ChargerDraw"
	if err := firstError(
		positive[units.Current]().Check(op, "Current", c.Current),
		positive[units.Voltage]().Check(op, "Voltage", c.Voltage),
		shares().Check(op, "Efficiency", c.Efficiency),
		shares().Check(op, "PowerFactor", c.PowerFactor),
		positive[units.Voltage]().Check(op, "Supply", c.Supply),
		checkOpt(op, "Energy", c.Energy, positive[units.Energy]()),
	); err != nil {
		return ChargerUse{}, err
	}
	u := ChargerUse{Charger: c, Output: c.Current.At(c.Voltage)}
	u.Power = input(u.Output, c.Efficiency)
	u.Apparent = u.Power.Apparent(c.PowerFactor)
	u.Current = u.Apparent.At(c.Supply)
	err := firstError(
		positive[units.Power]().Check(op, "Output", u.Output),
		positive[units.ApparentPower]().Check(op, "Apparent", u.Apparent),
		positive[units.Current]().Check(op, "Current", u.Current),
	)
	if e, ok := c.Energy.Get(); ok && err == nil {
		u.Time = units.Some(e.Lasts(u.Output))
		err = positive[units.Elapsed]().Check(op, "Time", u.Time.Or(0))
	}
	if err != nil {
		return ChargerUse{}, err
	}
	return u, nil
}

// Demand returns what the charger looks like to the source that feeds it.
func (u ChargerUse) Demand(name string) Demand {
	return Demand{Name: name, Power: u.Power, Apparent: units.Some(u.Apparent)}
}

// Working returns how the draw came about, step by step.
func (u ChargerUse) Working() *working.Sheet {
	c := u.Charger
	s := working.NewSheet("Charger: what it takes from its supply")
	s.Given("I_bank", c.Current, "A", "into the bank")
	s.Given("V_bank", c.Voltage, "V", "of the bank while it charges")
	s.Given("η", c.Efficiency, "1", "efficiency")
	s.Given("k", c.PowerFactor, "1", "power factor")
	s.Given("V_supply", c.Supply, "V", "that feeds it")
	s.Formula("P_out", u.Output, "W", "into the bank", "V_bank * I_bank")
	s.Formula("P", u.Power, "W", "from the supply", "P_out / η")
	s.Formula("S", u.Apparent, "VA", "from the supply", "P / k")
	s.Formula("I", u.Current, "A", "from the supply", "S / V_supply")
	if t, ok := u.Time.Get(); ok {
		s.Given("E", c.Energy.Or(0), "Wh", "to put back")
		s.Formula("t", t, "h", "at full output, the least there can be", "E / P_out")
	}
	return s
}

// Findings returns that a refill takes longer than its arithmetic, where one
// is asked for.
func (u ChargerUse) Findings() []working.Finding {
	t, ok := u.Time.Get()
	if !ok {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note, Rule: "refill-at-full-output", Source: arithmetic,
		Numbers: []working.Number{{Name: "time", Value: t}, {Name: "into the bank", Value: u.Output}},
		Message: "The time counts on full output to the end. A bank takes less as it fills, lead-acid much less, and does not give back all that goes in.",
		Fix:     "Plan for more time.",
	}}
}
