package working

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"example.com/drawbar/units"
)

// A Sheet is the working of one result. A result's Working method makes it
// with [NewSheet] and records step by step; readers take its steps or one of
// its renderings. A mistake of the one who records never panics: it stays in
// its step, is shown there, and [Sheet.Err] returns the first. The zero Sheet
// is empty; a nil *Sheet can be read, and forgets what is recorded. Recording
// is not safe for concurrent use; reading is.
type Sheet struct {
	title string
	steps []Step
	index map[string]int // the step that declares a name
}

// NewSheet returns an empty sheet.
func NewSheet(title string) *Sheet { return &Sheet{title: title} }

// A StepError reports a mistake in a sheet.
type StepError struct {
	Sheet  string // its title
	Step   int    // counted from 1; 0 if there is no sheet
	Name   string // the symbol or, where there is none, what the step is about
	Reason string // in a few words; empty if Err says it
	Err    error  // a [*FormulaError], a [*units.ParseError], a [*units.RangeError] or nil
}

// Error returns `working "Voltage drop", step 3 (R): declared twice` and the
// like.
func (e *StepError) Error() string {
	reason := e.Reason
	switch {
	case e.Err == nil:
	case reason == "":
		reason = e.Err.Error()
	default:
		reason += ": " + e.Err.Error()
	}
	return fmt.Sprintf("working %q, step %d (%s): %s", e.Sheet, e.Step, e.Name, reason)
}

// Unwrap returns Err.
func (e *StepError) Unwrap() error { return e.Err }

// Titled returns a copy of s under another title, such as that of the part of
// a whole which it is about.
func (s *Sheet) Titled(title string) *Sheet {
	if s == nil {
		return nil
	}
	return &Sheet{title: title, steps: slices.Clone(s.steps), index: maps.Clone(s.index)}
}

// Title returns the title as it was given.
func (s *Sheet) Title() string {
	if s == nil {
		return ""
	}
	return s.title
}

// Steps returns the steps in order, in a copy of their own.
func (s *Sheet) Steps() []Step {
	if s == nil {
		return nil
	}
	steps := slices.Clone(s.steps)
	for i := range steps {
		steps[i].Operands = slices.Clone(steps[i].Operands)
	}
	return steps
}

// Err returns the first mistake, a [*StepError], or nil if there is none. A
// nil *Sheet, which has no working at all, is a mistake too.
func (s *Sheet) Err() error {
	if s == nil {
		return &StepError{Name: "none", Reason: "there is no sheet"}
	}
	for i := range s.steps {
		if err := s.steps[i].Err; err != nil {
			return err
		}
	}
	return nil
}

// Given records an input as the calculation used it, defaults included. The
// symbol name stands for v in unit in every later formula.
func (s *Sheet) Given(name string, v units.Value, unit, what string) {
	st, err := s.declare(GivenStep, name, v, unit, what)
	s.record(st, err)
}

// Constant records a constant. Its source is needed: a provenance and, where
// that is reading or memory, what was read.
func (s *Sheet) Constant(name string, v units.Value, unit, what string, src Source) {
	st, err := s.declare(ConstantStep, name, v, unit, what)
	st.Source = src
	s.record(st, err, cited(src))
}

// LookUp records a value from a table: what was looked up, where, in which
// row or between which. The source is needed as for [Sheet.Constant].
func (s *Sheet) LookUp(name string, v units.Value, unit, what string, at Lookup) {
	st, err := s.declare(LookUpStep, name, v, unit, what)
	st.Source, st.Lookup = at.Source, at
	s.record(st, err, cited(at.Source))
}

// Formula records v, which the calculator returned, with the formula that
// gives it from the symbols of earlier steps, as [ParseFormula] reads it. A
// formula that does not give v, to a part in 1e9, is a mistake.
func (s *Sheet) Formula(name string, v units.Value, unit, what, formula string) {
	st, err := s.declare(FormulaStep, name, v, unit, what)
	st.Formula = formula
	s.record(st, err, s.compute(&st, err == nil))
}

// Choose records a choice: what was chosen, and the rule, the row or the
// comparison that decided. The source is that of the rule; the zero Source
// where arithmetic decides.
func (s *Sheet) Choose(what, chosen, why string, src Source) {
	s.record(Step{Kind: ChoiceStep, What: what, Chosen: chosen, Why: why, Source: src}, nil)
}

// Test records a comparison of symbols, such as "I_load <= I_limit", and
// whether it holds in the calculator's eyes. The sides are compared settled; a
// comparison that comes out otherwise is a mistake.
func (s *Sheet) Test(what, comparison string, holds bool) {
	st := Step{Kind: TestStep, What: what, Formula: comparison, Holds: holds}
	s.record(st, s.compare(&st))
}

// record appends st with the first of the mistakes.
func (s *Sheet) record(st Step, mistakes ...*StepError) {
	if s == nil {
		return
	}
	for _, err := range mistakes {
		if err != nil && st.Err == nil {
			err.Sheet, err.Step, err.Name = s.title, len(s.steps)+1, st.Name
			if st.Name == "" {
				err.Name = st.What
			}
			st.Err = err
		}
	}
	if _, declared := s.index[st.Name]; st.Name != "" && !declared {
		if s.index == nil {
			s.index = make(map[string]int)
		}
		s.index[st.Name] = len(s.steps)
	}
	s.steps = append(s.steps, st)
}

// declare returns a step that declares name as v in unit.
func (s *Sheet) declare(kind Kind, name string, v units.Value, unit, what string) (Step, *StepError) {
	st := Step{Kind: kind, Name: name, What: what, Unit: unit, Value: math.NaN(), Printed: "?"}
	if reason := reasonAgainstName(name); reason != "" {
		return st, &StepError{Reason: reason}
	}
	if s != nil {
		if first, ok := s.index[name]; ok {
			return st, &StepError{Reason: fmt.Sprintf("declared in step %d already", first+1)}
		}
	}
	x, canonical, err := measure(v, unit)
	if err != nil {
		return st, err
	}
	st.Value, st.Unit = x, canonical
	st.Printed, st.Resolution = units.Significant(x, shownDigits), lastDigit(x, shownDigits)
	return st, nil
}

// measure is [units.Measure] for finite values only.
func measure(v units.Value, unit string) (float64, string, *StepError) {
	x, canonical, err := units.Measure(v, unit)
	if err == nil && !finite(x) {
		err = &units.RangeError{Op: "working.Sheet", Field: "value", Value: v, Allowed: units.Bounds[units.Ratio]{}}
	}
	if err != nil {
		return 0, "", &StepError{Err: err}
	}
	return x, canonical, nil
}

// cited returns a mistake unless src says where to look.
func cited(src Source) *StepError {
	if src.stated() {
		return nil
	}
	return &StepError{Reason: "no source, or none with a provenance"}
}
