package unitstest

import (
	"errors"
	"fmt"
	"math"
	"reflect"

	"example.com/drawbar/units"
)

// A deviation is how a result compares with what was printed.
type deviation struct {
	got    string // in the printed unit
	digits bool   // agrees to the printed digits
	within bool   // agrees to the width, or to the digits
	off    string // how far off: of what was printed, or in its unit if that is a temperature or 0
}

// compare returns how v compares with printed. The width may be empty.
func compare(printed, width string, v units.Value) (d deviation, err error) {
	p, err := units.ParsePrinted(printed)
	if err != nil {
		return d, err
	}
	if d.digits, err = p.Agrees(v); err != nil {
		return d, err
	}
	x, unit, _ := units.Measure(v, unitOf(p)) // as Agrees did
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return d, fmt.Errorf("the result is %v", x)
	}
	const shown = 9 // digits: all that verdicts look at
	symbol := ""
	if unit != plainNumber {
		symbol = " " + unit
	}
	d.got = units.Significant(x, shown) + symbol
	off := math.Abs(units.Minus(x, p.Float()))
	d.off = units.Significant(off, 2) + symbol
	if _, isTemperature := v.(units.Temperature); !isTemperature && p.Float() != 0 {
		d.off = units.Significant(100*off/math.Abs(p.Float()), 2) + " %"
	}
	d.within = d.digits
	if width != "" {
		allowed, err := widthIn(unit, width, p, v)
		if err != nil {
			return d, fmt.Errorf("width %q: %w", width, err)
		}
		d.within = d.digits || !units.Exceeds(off, allowed)
	}
	return d, nil
}

// plainNumber is the unit of a number without one.
const plainNumber = "1"

func unitOf(p units.Printed) string {
	if p.Unit() == "" {
		return plainNumber
	}
	return p.Unit()
}

// widthIn returns the width as a number of unit: a ratio is one of p, which
// the value v was printed as; a temperature has a width in kelvins or the like.
func widthIn(unit, width string, p units.Printed, v units.Value) (float64, error) {
	_, isTemperature := v.(units.Temperature)
	if isTemperature {
		change, err := units.Parse[units.TemperatureChange](width)
		if err != nil {
			return 0, err
		}
		x, _, err := units.Measure(change, unit)
		return x, positive(x, err)
	}
	if ratio, err := units.Parse[units.Ratio](width); err == nil {
		return float64(ratio) * math.Abs(p.Float()), positive(float64(ratio), nil)
	}
	q := reflect.New(reflect.TypeOf(v))
	if err := q.Interface().(interface{ UnmarshalText([]byte) error }).UnmarshalText([]byte(width)); err != nil {
		return 0, err
	}
	x, _, err := units.Measure(q.Elem().Interface().(units.Value), unit)
	return x, positive(x, err)
}

// positive returns err, or one if x is not above zero.
func positive(x float64, err error) error {
	if err == nil && !(x > 0) {
		return errors.New("not above zero")
	}
	return err
}
