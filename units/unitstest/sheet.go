package unitstest

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// What a formula must give back.
const (
	// exactness is how far a formula may be from the value that the
	// calculator returned, as a part of it: far above rounding, far below any
	// digit that is printed.
	exactness = 1e-9
	// noise is by how much rounding in another order moves an operand at most,
	// as a part of it. It matters where operands cancel.
	noise = 1e-12
	// settled is how far operands can be apart, as a part of them, that settle
	// to the same number: [units.Minus] returns 0 for their difference.
	settled = 1e-8
	// guards is how many significant digits an operand is printed with beyond
	// those of the result, at least.
	guards = 2
)

// CheckSheet demands that working can be followed by hand:
//
//   - The sheet has a title and no mistake ([working.Sheet.Err]).
//   - Every symbol of a formula or a comparison is declared in an earlier
//     step, once.
//   - Every formula, on the values of the steps that declare its symbols, not
//     rounded, gives the value of its step to 1e-9, or to float64 noise where
//     operands cancel. A value of exactly 0 may be the difference of operands
//     that settle to the same number.
//   - Every formula, on its operands as printed, gives the result as printed
//     within one unit of its last digit. The result printed is its value,
//     rounded, and an operand is printed with two digits more at least.
//   - Every comparison comes out as the step says.
//   - Constants and look-ups name their source.
//   - At least one step is a look-up, or a formula of more than one symbol
//     repeated.
//
// It works everything out anew from the steps, and takes no check that the
// sheet made itself for granted.
func CheckSheet(t testing.TB, s *working.Sheet) {
	t.Helper()
	if s == nil {
		t.Fatal("there is no sheet")
	}
	if strings.TrimSpace(s.Title()) == "" {
		t.Errorf("the sheet has no title")
	}
	if err := s.Err(); err != nil {
		t.Errorf("%v", err)
	}
	checkSteps(t, s.Title(), s.Steps())
}

// checkSteps checks the steps of the sheet called title.
func checkSteps(t testing.TB, title string, steps []working.Step) {
	t.Helper()
	declared := map[string]working.Step{}
	substance := false
	for i, st := range steps {
		failf := func(format string, args ...any) {
			t.Helper()
			t.Errorf("%s, step %d (%s%s): %s", title, i+1, st.Kind, prefixed(" ", st.Name), fmt.Sprintf(format, args...))
		}
		switch st.Kind {
		case working.ConstantStep, working.LookUpStep:
			substance = substance || st.Kind == working.LookUpStep
			if st.Source == (working.Source{}) {
				failf("no source")
			}
		case working.FormulaStep:
			substance = substance || !repeats(st.Formula)
			checkFormula(failf, st, declared)
		case working.TestStep:
			holds, err := working.Holds(st.Formula, values(declared))
			if err != nil {
				failf("%v", err)
			} else if holds != st.Holds {
				failf("%s: holds is %v, and the step says %v", st.Formula, holds, st.Holds)
			}
		}
		if st.Name == "" {
			continue
		}
		if math.IsNaN(st.Value) || math.IsInf(st.Value, 0) {
			failf("the value is %v", st.Value)
		}
		if _, again := declared[st.Name]; again {
			failf("declared again")
		}
		declared[st.Name] = st
	}
	if !substance {
		t.Errorf("%s: no look-up, and no formula but a symbol repeated: nothing is worked out", title)
	}
}

// repeats reports whether a formula is a single symbol, or no symbol at all.
func repeats(formula string) bool {
	f, err := working.ParseFormula(formula)
	if err != nil {
		return true
	}
	names := f.Names()
	return len(names) == 0 || f.String() == names[0]
}

// values returns the values of the steps by symbol.
func values(declared map[string]working.Step) map[string]float64 {
	v := make(map[string]float64, len(declared))
	for name, st := range declared {
		v[name] = st.Value
	}
	return v
}

// checkFormula checks a formula step against the steps before it.
func checkFormula(failf func(string, ...any), st working.Step, declared map[string]working.Step) {
	exact := values(declared)
	got, err := working.Evaluate(st.Formula, exact)
	if err != nil {
		failf("%v", err)
		return
	}
	off, part := math.Abs(got-st.Value), noise
	if st.Value == 0 {
		part = settled
	}
	if !(off <= exactness*math.Abs(st.Value)) && !(off <= spread(st.Formula, exact, got, part)) {
		failf("%s gives %v, the value is %v", st.Formula, got, st.Value)
	}
	printed, err := strconv.ParseFloat(st.Printed, 64)
	if err != nil {
		failf("%q is no number", st.Printed)
		return
	}
	if problem := printing(printed, st); problem != "" {
		failf("%s", problem)
		return
	}
	operands := map[string]float64{}
	for _, o := range st.Operands {
		x, err := strconv.ParseFloat(o.Printed, 64)
		if err != nil {
			failf("operand %s: %q is no number", o.Name, o.Printed)
			return
		}
		operands[o.Name] = x
		from := declared[o.Name]
		if o.Value != from.Value || o.Unit != from.Unit {
			failf("operand %s is %v %s, declared as %v %s", o.Name, o.Value, o.Unit, from.Value, from.Unit)
		}
		if part := math.Abs(x-units.Settle(o.Value)) / math.Abs(o.Value); units.Exceeds(part, guarded(st)) {
			failf("operand %s is printed as %s, too few digits of %v for a result of %s", o.Name, o.Printed, o.Value, st.Printed)
		}
	}
	byHand, err := working.Evaluate(st.Formula, operands)
	switch {
	case err != nil:
		failf("on the operands as printed: %v", err)
	case units.Exceeds(math.Abs(byHand-printed), st.Resolution):
		failf("%s on the operands as printed gives %v, printed is %s, more than %v away", st.Formula, byHand, st.Printed, st.Resolution)
	}
}

// spread returns how far the formula moves from its value at when every
// operand moves by a part of itself.
func spread(formula string, operands map[string]float64, at, part float64) (sum float64) {
	for name, x := range operands {
		operands[name] = x + part*x
		if moved, err := working.Evaluate(formula, operands); err == nil {
			sum += math.Abs(moved - at)
		}
		operands[name] = x
	}
	return sum
}

// printing returns what is wrong with how the value of a step is printed, or
// nothing.
func printing(printed float64, st working.Step) string {
	if st.Resolution == 0 && printed == 0 && st.Value == 0 {
		return ""
	}
	steps := printed / st.Resolution
	switch {
	case !(st.Resolution > 0):
		return fmt.Sprintf("the resolution of %s is %v", st.Printed, st.Resolution)
	case units.Compare(steps, math.Round(steps)) != 0:
		return fmt.Sprintf("%s has digits beyond its resolution, %v", st.Printed, st.Resolution)
	case units.Exceeds(math.Abs(printed-units.Settle(st.Value)), st.Resolution/2): // what is printed is settled first
		return fmt.Sprintf("printed as %s, the value is %v", st.Printed, st.Value)
	}
	return ""
}

// guarded returns the largest error of an operand as printed, as a part of
// it, that rounding to enough digits for the result of st makes.
func guarded(st working.Step) float64 {
	if st.Value == 0 {
		return math.Inf(1) // no digits to count
	}
	digits := math.Floor(math.Log10(math.Abs(st.Value))) - math.Round(math.Log10(st.Resolution)) + 1
	return 5 * math.Pow(10, -(digits+guards))
}
