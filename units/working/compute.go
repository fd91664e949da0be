package working

import "example.com/drawbar/units"

// compute fills in the operands and the digits of a formula step. Its value
// is checked only if it has one.
func (s *Sheet) compute(st *Step, hasValue bool) *StepError {
	f, mistake := s.formulaOf(st)
	if mistake != nil {
		return mistake
	}
	got, err := f.Evaluate(st.values())
	if err != nil {
		return &StepError{Err: err}
	}
	switch {
	case !hasValue:
		return nil // the mistake is known
	case !st.reproduces(f, got):
		return &StepError{Reason: "the formula gives " + units.Significant(got, mostDigits) +
			", the result is " + units.Significant(st.Value, mostDigits)}
	case !st.printFormula(f):
		return &StepError{Reason: "the result is lost in the rounding of its operands"}
	}
	return nil
}

// compare fills in the operands, the digits and the sides of a test step.
func (s *Sheet) compare(st *Step) *StepError {
	f, mistake := s.formulaOf(st)
	if mistake != nil {
		return mistake
	}
	op, x, y, err := f.sides(st.values())
	if err != nil {
		return &StepError{Err: err}
	}
	st.printTest(f, op, x, y)
	if op.holds(x, y) != st.Holds {
		opposite := Step{Holds: !st.Holds}
		return &StepError{Reason: "the calculator says that it " + st.outcome() +
			", the comparison of " + st.Left + " and " + st.Right + " " + opposite.outcome()}
	}
	return nil
}

// formulaOf reads the formula of st and fills in its operands from the
// earlier steps, printed with the least number of digits.
func (s *Sheet) formulaOf(st *Step) (Formula, *StepError) {
	f, err := ParseFormula(st.Formula)
	if err != nil {
		return f, &StepError{Err: err}
	}
	var mistake *StepError
	eachName(f.root, func(n name) {
		if st.hasOperand(n.text) {
			return
		}
		earlier, reason := s.declared(n.text)
		if reason != "" {
			if mistake == nil {
				mistake = &StepError{Err: f.fail(n.at, units.ErrSyntax, reason)}
			}
			return
		}
		st.Operands = append(st.Operands, Operand{Name: n.text, Unit: earlier.Unit, Value: earlier.Value})
	})
	st.printOperands(shownDigits)
	return f, mistake
}

func (st *Step) hasOperand(name string) bool {
	for _, o := range st.Operands {
		if o.Name == name {
			return true
		}
	}
	return false
}

// declared returns the step that declares name, or why there is none to use.
func (s *Sheet) declared(name string) (st Step, reason string) {
	i, ok := 0, false
	if s != nil {
		i, ok = s.index[name]
	}
	switch {
	case !ok:
		return st, "unknown symbol " + name + "; declare it in an earlier step"
	case !finite(s.steps[i].Value):
		return st, name + " has no value, for its step has a mistake"
	}
	return s.steps[i], ""
}
