package weave

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A comparison is a [Row] that has been judged.
type comparison struct {
	what, ours, printed, difference, verdict string

	note   string // the reason for a wider allowance or a difference
	source working.Source
}

// judge compares r. A disagreement without a reason is an error, and so is a
// reason that is not needed.
func (r Row) judge() (comparison, error) {
	c := comparison{what: r.What, source: r.Source}
	switch {
	case strings.TrimSpace(r.What) == "":
		return c, errors.New("a row has no What")
	case r.Source.String() == "" || r.Source.Provenance == working.Unstated:
		return c, fmt.Errorf("row %q: no Source, or one without provenance", r.What)
	case (r.Within == "") != (r.Why == ""):
		return c, fmt.Errorf("row %q: Within and Why go together", r.What)
	case r.Within != "" && r.Differs != "":
		return c, fmt.Errorf("row %q: either Within or Differs", r.What)
	}
	var err error
	agrees := false
	if r.OursText != "" || r.PrintedText != "" {
		agrees, err = c.compareTexts(r)
	} else {
		agrees, err = c.compareNumbers(r)
	}
	switch {
	case err != nil:
	case !agrees && r.Differs == "":
		err = fmt.Errorf("ours is %s, print has %s", broken(c.ours), c.printed)
	case agrees && r.Differs != "":
		err = errors.New("print and computation agree; Differs is not needed")
	case !agrees:
		c.verdict, c.note = "differs", r.Differs
	}
	if err != nil {
		return c, fmt.Errorf("row %q: %w", r.What, err)
	}
	return c, nil
}

func (c *comparison) compareTexts(r Row) (agrees bool, err error) {
	c.ours, c.printed, c.verdict = r.OursText, r.PrintedText, "the same"
	switch {
	case r.Ours != nil || r.Printed.IsSet():
		return false, errors.New("has both numbers and texts")
	case r.OursText == "" || r.PrintedText == "":
		return false, errors.New("one of OursText and PrintedText is empty")
	case r.Within != "":
		return false, errors.New("a text has no Within")
	}
	return r.OursText == r.PrintedText, nil
}

func (c *comparison) compareNumbers(r Row) (agrees bool, err error) {
	if !r.Printed.IsSet() {
		return false, errors.New("nothing printed to compare with")
	}
	unit := r.Printed.Unit()
	if unit == "" {
		unit = "1"
	}
	x, symbol, err := measure(r.Ours, unit)
	if err != nil {
		return false, err
	}
	c.printed = r.Printed.String()
	c.ours = unbroken(withUnit(beside(x, r.Printed), symbol))
	_, isTemperature := r.Ours.(units.Temperature)
	c.difference = difference(x, r.Printed, symbol, isTemperature)
	covered := r.Printed.Covers(x)
	switch {
	case r.Within == "":
		c.verdict = "agrees"
		return covered, nil
	case covered:
		return false, errors.New("agrees to its digits; Within is not needed")
	}
	width, err := allowance(r)
	if err != nil {
		return false, err
	}
	c.verdict, c.note = "agrees within "+unbroken(r.Within), r.Why
	return !units.Exceeds(math.Abs(units.Minus(x, r.Printed.Float())), width), nil
}

// beside returns x, or the difference of x from p, with the decimals of p and
// one more to judge by, if that is not too long.
func beside(x float64, p units.Printed) string {
	digits, exponent, _ := strings.Cut(p.Digits(), "e")
	_, decimals, _ := strings.Cut(digits, ".")
	significant := len(strings.TrimLeft(strings.NewReplacer(".", "", "-", "").Replace(digits), "0"))
	more := 0
	if significant < maxDigits {
		more = 1
	}
	if exponent != "" {
		return units.Significant(x, max(significant, 1)+more)
	}
	return units.Fixed(x, len(decimals)+more)
}

// difference returns ours less printed, and what part of printed that is. Of
// percentages the difference is in points, and a part of a temperature has no
// meaning.
func difference(ours float64, p units.Printed, symbol string, isTemperature bool) string {
	printed := p.Float()
	d := units.Minus(ours, printed)
	shown := beside(d, p)
	if strings.Trim(shown, "-0.") == "" {
		return "0"
	}
	if d > 0 {
		shown = "+" + shown
	}
	switch {
	case symbol == "%":
		return unbroken(shown + " points")
	case isTemperature || printed == 0:
		return unbroken(withUnit(shown, symbol))
	}
	const digits = 2
	part := units.Significant(100*d/math.Abs(printed), digits)
	if d > 0 {
		part = "+" + part
	}
	return unbroken(withUnit(shown, symbol)) + " " + unbroken("("+part+" %)")
}

// allowance returns r.Within in the unit of r.Printed.
func allowance(r Row) (float64, error) {
	w, err := units.ParsePrinted(r.Within)
	if err != nil {
		return 0, err
	}
	if w.Unit() == "%" {
		return w.Float() / 100 * math.Abs(r.Printed.Float()), nil
	}
	if _, err := r.Printed.Cmp(w); err != nil {
		return 0, err
	}
	return w.Float(), nil
}

// comparisonElements returns a table of rows, then what is to be said about
// single rows, then the sources.
func comparisonElements(caption string, rows []Row) ([]element, error) {
	if len(rows) == 0 {
		return nil, errors.New("no row")
	}
	g := grid{
		caption: caption,
		header:  []string{"What", "Ours", "Printed", "Difference", "Verdict", "Source"},
		right:   []bool{false, true, true, true, false, false},
	}
	var notes, sources []string
	numbers := map[working.Source]string{}
	for _, row := range rows {
		c, err := row.judge()
		if err != nil {
			return nil, err
		}
		if numbers[c.source] == "" {
			numbers[c.source] = fmt.Sprintf("[%d]", len(numbers)+1)
			sources = append(sources, escape(numbers[c.source]+" "+c.source.String()))
		}
		g.rows = append(g.rows, []string{c.what, c.ours, c.printed, c.difference, c.verdict, numbers[c.source]})
		if c.note != "" {
			notes = append(notes, "- "+escape(c.what+": "+c.note))
		}
	}
	elements := []element{g}
	if len(notes) > 0 {
		elements = append(elements, prose{strings.Join(notes, "\n")})
	}
	return append(elements, prose{strings.Join(sources, "\\\n")}), nil
}
