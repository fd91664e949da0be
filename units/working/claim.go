package working

import (
	"math"
	"reflect"

	"example.com/drawbar/units"
)

// commonWidth is how far a claim may be from the computed value however
// finely it is stated. Common practice, no source fixes it: nominal voltages,
// lengths by eye and temperatures that nobody measured are no better.
const commonWidth = 5 * units.Percent

// A Claim is a number that somebody states, beside the one computed.
type Claim struct {
	What     string        // in words, such as "drop at the pump"
	Stated   units.Printed // as stated; the zero value if nothing is
	Computed units.Value   // nil if it cannot be computed for lack of an input
	Unit     string        // of a Stated that is a bare number, as a column of a quote is headed; else empty or the same unit
	SafeSide Side          // where a wrong Stated does no harm
	Findings []Finding     // about what the claim is about
}

// A Judgement is the outcome of [Claim.Judge].
type Judgement struct {
	Verdict    Verdict                // what became of the claim
	What       string                 // of the claim
	Stated     units.Printed          // of the claim
	Computed   string                 // as printed, with its unit; empty if there is none
	Unit       string                 // of Off and Width: that of Stated
	Off        units.Opt[float64]     // stated minus computed, in Unit; zero if they are equal
	Difference units.Opt[units.Ratio] // Off over the size of computed; not set if that is 0 or nearly so, or a temperature
	Width      float64                // half the width of agreement, in Unit
	Rule       string                 // which rule gave Width: "as stated to 0.1 V" or "5 % (common practice)"
	Danger     string                 // the rule of the first danger found; empty if none
}

// Judge compares the claim with the computed value in the unit of Stated.
//
// A claim agrees if it is within half of its last stated digit, or within 5 %
// of the computed value (common practice), whichever is wider; the ends
// agree, and everything is compared settled as by [units.Compare]. A
// temperature has no 5 %, for its zero is arbitrary: its digits decide. A
// claim beyond that width on its SafeSide is [AgreeConservative], any other
// [Disagree]. Where nothing is stated, or nothing could be computed, the
// verdict is [NotStated]. One finding of [Danger] makes it [Unsafe] in every
// case.
//
// A unit that Computed does not have is a [*units.ParseError], a Unit that is
// not that of Stated a [*units.UnitError], a Computed that is not finite and
// a SafeSide that is not defined a [*units.RangeError]. The verdict is then
// NotStated, or Unsafe.
func (c Claim) Judge() (Judgement, error) {
	j := Judgement{What: c.What, Stated: c.Stated}
	err := c.compare(&j)
	if err != nil {
		j = Judgement{What: c.What, Stated: c.Stated}
	}
	for _, f := range c.Findings {
		if f.Severity >= Danger {
			j.Verdict, j.Danger = Unsafe, f.Rule
			break
		}
	}
	return j, err
}

// compare fills in everything but the findings.
func (c Claim) compare(j *Judgement) error {
	if c.SafeSide > Lower {
		return &units.RangeError{Op: "working.Claim.Judge", Field: "SafeSide", Value: uint8(c.SafeSide), Allowed: oneOf(sideWords)}
	}
	if !given(c.Computed) {
		j.Unit = c.Stated.Unit()
		return nil
	}
	computed, err := c.measure(j)
	if err != nil || !c.Stated.IsSet() {
		return err
	}
	_, isTemperature := c.Computed.(units.Temperature)
	stated := c.Stated.Float()
	off := units.Minus(stated, computed)
	j.Off = units.Some(off)
	if ratio := off / math.Abs(computed); finite(ratio) && !isTemperature {
		j.Difference = units.Some(units.Ratio(ratio))
	}
	j.Width, j.Rule = c.Stated.Resolution().Float()/2, "as stated to "+c.Stated.Resolution().String()
	if common := float64(commonWidth) * math.Abs(computed); !isTemperature && units.Exceeds(common, j.Width) {
		j.Width, j.Rule = common, commonWidth.String()+" (common practice)"
	}
	j.Verdict = verdictOn(stated, computed, j.Width, c.SafeSide)
	return nil
}

// given reports whether v is there to be measured.
func given(v units.Value) bool {
	if t, ok := v.(units.Temperature); ok {
		return t.IsSet()
	}
	return v != nil
}

// isFinite reports whether v is a finite quantity or temperature.
func isFinite(v units.Value) bool {
	if t, ok := v.(units.Temperature); ok {
		return finite(t.Celsius())
	}
	n := reflect.ValueOf(v)
	return n.Kind() == reflect.Float64 && finite(n.Float())
}

// measure returns Computed in the unit of the claim, and fills in both.
func (c Claim) measure(j *Judgement) (float64, error) {
	notFinite := &units.RangeError{Op: "working.Claim.Judge", Field: "Computed", Value: c.Computed, Allowed: units.Bounds[units.Ratio]{}}
	if !isFinite(c.Computed) {
		return 0, notFinite
	}
	unit, err := c.unit()
	if err != nil {
		return 0, err
	}
	if unit == "" && !c.Stated.IsSet() {
		j.Computed = c.Computed.String()
		return 0, nil
	}
	x, canonical, err := units.Measure(c.Computed, unit)
	switch {
	case err != nil:
		return 0, err
	case !finite(x): // too large for the unit
		return 0, notFinite
	}
	j.Unit = canonical
	j.Computed = withUnit(printSignificant(x, resultDigits), canonical)
	return x, nil
}

// unit returns the unit to compare in, empty if nothing says it.
func (c Claim) unit() (string, error) {
	stated := c.Stated.Unit()
	_, isRatio := c.Computed.(units.Ratio)
	switch {
	case stated == "" && c.Unit == "" && isRatio && c.Stated.IsSet():
		_, err := units.As[units.Ratio](c.Stated) // refuses a bare 16.7, which may mean per cent
		return "1", err
	case stated == "" || c.Unit == "":
		return stated + c.Unit, nil
	}
	_, a, err := units.Measure(c.Computed, stated)
	if err != nil {
		return "", err
	}
	_, b, err := units.Measure(c.Computed, c.Unit)
	if err == nil && a != b {
		err = &units.UnitError{Op: "working.Claim.Judge", Got: c.Stated.String(), Want: c.Unit}
	}
	return stated, err
}

// verdictOn returns the verdict of the numbers alone.
func verdictOn(stated, computed, width float64, side Side) Verdict {
	low, high := units.Minus(computed, width), units.Minus(computed, -width)
	harmless := Neither
	switch {
	case units.Exceeds(stated, high):
		harmless = Higher
	case units.Exceeds(low, stated):
		harmless = Lower
	default:
		return Agree
	}
	if side == harmless {
		return AgreeConservative
	}
	return Disagree
}

// String returns the judgement in one line, "disagree: stated 2.0 %, computed
// 4.684 %, 57 % low; rule: 5 % (common practice)".
func (j Judgement) String() string {
	verdict := j.Verdict.String()
	if danger := oneLine(j.Danger); j.Verdict == Unsafe && danger != "" {
		verdict += " by rule " + danger
	}
	switch stated := j.Stated.IsSet(); {
	case stated && j.Computed != "":
		return verdict + ": stated " + j.Stated.String() + ", computed " + j.Computed + ", " + j.distance() + "; rule: " + j.Rule
	case stated:
		return verdict + ": nothing computed to judge " + j.Stated.String() + " by"
	case j.Computed != "":
		return verdict + ": computed " + j.Computed
	}
	return verdict + ": nothing stated, nothing computed"
}

// distance returns how far the claim is off, "57 % low", in its unit where
// there is no sensible ratio.
func (j Judgement) distance() string {
	const digits = 2
	off := j.Off.Or(0)
	if off == 0 {
		return "no difference"
	}
	side := " high"
	if off < 0 {
		side = " low"
	}
	if r, ok := j.Difference.Get(); ok {
		return units.Significant(math.Abs(units.In(r, units.Percent)), digits) + " %" + side
	}
	return withUnit(units.Significant(math.Abs(off), digits), j.Unit) + side
}
