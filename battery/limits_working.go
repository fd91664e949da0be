package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the limits came about, step by step.
func (l Limits) Working() *working.Sheet {
	s := working.NewSheet("Current limits of a bank")
	s.Given("n_p", units.Ratio(l.Assembly.Bank.Parallel), "1", "strings in parallel")
	one := l.Assembly.Bank.Battery
	if l.nothingKnown() {
		s.Given("C_b", one.Capacity, "Ah", "capacity of one battery, as marked")
		s.Formula("C", l.Assembly.Capacity, "Ah", "capacity of the bank", "n_p * C_b")
		s.Choose("limits", "not given", "neither a demand nor a limit was stated", working.Source{})
		return s
	}
	side{"dis", "discharge", l.Demand.Discharge, one.DischargeLimit, l.Discharge, l.DischargeOneOut,
		l.DischargeEach, l.DischargeOthers}.steps(s)
	side{"chg", "charge", l.Demand.Charge, one.ChargeLimit, l.Charge, l.ChargeOneOut,
		l.ChargeEach, l.ChargeOthers}.steps(s)
	return s
}

// nothingKnown reports whether there is neither a demand nor a limit.
func (l Limits) nothingKnown() bool {
	one := l.Assembly.Bank.Battery
	return !l.Demand.Discharge.IsSet() && !l.Demand.Charge.IsSet() && !one.DischargeLimit.IsSet() && !one.ChargeLimit.IsSet()
}

// A side is one direction of current: what is demanded, the limit of one
// battery, of all strings and with one out, and the share of each string.
type side struct {
	short, name                            string
	demand, one, all, oneOut, each, others units.Opt[units.Current]
}

// steps appends the steps of one direction.
func (d side) steps(s *working.Sheet) {
	demand, hasDemand := d.demand.Get()
	if hasDemand {
		s.Given("I_"+d.short, demand, "A", d.name+" current demanded")
		s.Formula("I_"+d.short+"_each", d.each.Or(0), "A", "share of each string", "I_"+d.short+" / n_p")
		if others, ok := d.others.Get(); ok {
			s.Formula("I_"+d.short+"_others", others, "A", "share of each of the others with one out",
				"I_"+d.short+" / (n_p - 1)")
		}
	}
	limit, hasLimit := d.one.Get()
	if !hasLimit {
		return
	}
	all, out := "I_max_"+d.short, "I_out_"+d.short
	s.Given("I_b_"+d.short, limit, "A", d.name+" limit of one battery")
	s.Formula(all, d.all.Or(0), "A", d.name+" limit of the bank", "n_p * I_b_"+d.short)
	s.Formula(out, d.oneOut.Or(0), "A", d.name+" limit with one string out", "(n_p - 1) * I_b_"+d.short)
	if hasDemand {
		s.Test(d.name+" against the limit", "I_"+d.short+" <= "+all, !units.Exceeds(demand, d.all.Or(0)))
		s.Test(d.name+" with one string out", "I_"+d.short+" <= "+out, !units.Exceeds(demand, d.oneOut.Or(0)))
	}
}
