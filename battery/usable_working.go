package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// peukert is the law's source: its form is arithmetic on the definition.
var peukert = working.Source{
	Title: "Peukert's law in rated-hours form, t = H·(C/(I·H))^k", Provenance: working.CommonPractice,
}

// Working returns how the exponent came about, step by step.
func (x Exponent) Working() *working.Sheet {
	s := working.NewSheet("Peukert's exponent from two ratings")
	s.Given("C_A", x.A.Capacity, "Ah", "capacity of rating A")
	s.Given("H_A", x.A.Over, "h", "time that it is marked for")
	s.Given("C_B", x.B.Capacity, "Ah", "capacity of rating B")
	s.Given("H_B", x.B.Over, "h", "time that it is marked for")
	s.Formula("I_A", x.CurrentA, "A", "current of rating A", "C_A / H_A")
	s.Formula("I_B", x.CurrentB, "A", "current of rating B", "C_B / H_B")
	s.Formula("k", x.Value, "1", "exponent", "ln(H_A/H_B) / ln(I_B/I_A)")
	return s
}

// Working returns how the delivery came about, step by step.
func (v Delivery) Working() *working.Sheet {
	s := working.NewSheet("Charge at a steady current")
	s.Given("C", v.Discharge.Rating.Capacity, "Ah", "capacity, as marked")
	s.Given("H", v.Discharge.Rating.Over, "h", "time that it is marked for")
	s.Given("k", v.Discharge.Exponent, "1", "Peukert's exponent")
	s.Given("I", v.Discharge.Current, "A", "steady current")
	v.steps(s)
	s.Formula("C_I", v.Charge, "Ah", "charge delivered until empty", "C * f")
	s.Formula("t", v.Time, "h", "time until empty", "C_I / I")
	return s
}

// steps appends the steps that end in f, from C, H, k and I.
func (v Delivery) steps(s *working.Sheet) {
	s.Formula("I_rated", v.Rated, "A", "current that the rating belongs to", "C / H")
	s.Formula("f_law", v.Law, "1", "part of the capacity by Peukert's law", "pow(I_rated/I, k - 1)")
	if v.capped() {
		s.Choose("below the rated current", "the capacity as marked",
			"the law promises more than the rating, which is not counted on", peukert)
	}
	s.Formula("f", v.Factor, "1", "part of the capacity counted on", "min(f_law, 1)")
}

// Working returns how the usable charge came about, step by step.
func (u UsableCharge) Working() *working.Sheet {
	s := working.NewSheet("Usable charge of " + u.Assembly.Bank.Battery.Chemistry.String())
	u.Assembly.steps(s)
	if i, ok := u.Current.Get(); ok {
		s.Given("I", i, "A", "steady current of the bank")
	}
	u.steps(s)
	s.Formula("C_use", u.Charge, "Ah", "usable charge", "C_avail * d*pct")
	s.Formula("E_use", u.Energy, "Wh", "usable energy", "C_use * V")
	return s
}

// steps appends the steps that end in C_avail and d, from C and I.
func (u UsableCharge) steps(s *working.Sheet) {
	one, f := u.Assembly.Bank.Battery, u.Assembly.figures()
	formula := "C"
	if u.Current.IsSet() {
		defaultOr(s, "H", one.RatedOver, f.RatedOver, "h", "time that the capacity is marked for")
		defaultOr(s, "k", one.Exponent, f.Exponent, "1", "Peukert's exponent")
		u.Delivery.steps(s)
		formula += " * f"
	}
	if one.Aged.IsSet() {
		s.Given("a", u.Aged, "%", "left of the capacity by age")
		formula += " * a*pct"
	}
	if u.Assembly.Bank.Multiplier.IsSet() {
		s.Given("m", u.Multiplier, "1", "multiplier of the cold: how much more to buy, so it divides")
		formula += " / m"
	}
	s.Formula("C_avail", u.Available, "Ah", "charge there is, from full to empty", formula)
	depth := one.Usable
	if depth.IsSet() {
		depth = units.Some(u.Assembly.Depth) // settled
	}
	defaultOr(s, "d", depth, f.PlanningDepth, "%", "part that may be taken out")
}
