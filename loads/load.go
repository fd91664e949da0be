package loads

import (
	"strings"
	"time"

	"example.com/drawbar/units"
)

// A Load is one line of a ledger: a device, or several alike.
type Load struct {
	Name   string // not empty
	Bus    string // the name of the bus it is connected to
	Kind   Kind   // how it answers to another voltage
	Rating Rating // of one of them, running
	Count  int    // how many, >= 1
	// Duty is the part of its hours in which it runs, 0 to 1: 32 % for a
	// refrigerator that is switched on all day. Not given is 1.
	Duty units.Opt[units.Ratio]
	// Hours is how long a day it is in use, 0 h to 24 h, at no particular
	// time. A load has either Hours or Windows.
	Hours units.Opt[units.Elapsed]
	// Windows are the times of day in which it is in use. No two have a time
	// in common.
	Windows []Window
	// Standby is what one of them takes in the rest of the day, >= 0: for as
	// long as it does not run. Zero is none.
	Standby units.Power
	// MustNotStop marks what has to go on with nobody there.
	MustNotStop bool
}

// day is the 24 hours that a ledger is about.
const day = 24 * units.Hour

// check returns all that is wrong with l on a bus of the given kind, but for
// which bus it is.
func (l Load) check(op string, bus BusKind) faults {
	var f faults
	f.add(named(op, "Name", l.Name))
	if l.Kind < Resistive || l.Kind > ConstantCurrent {
		f.add(&units.RangeError{Op: op, Field: "Kind", Value: l.Kind, Allowed: oneOf(kinds())})
	}
	f = append(f, l.Rating.check(op, l.Kind, bus)...)
	if l.Count < 1 {
		f.add(&units.RangeError{Op: op, Field: "Count", Value: l.Count, Allowed: wording(">= 1")})
	}
	f.add(checkOpt(op, "Duty", l.Duty, units.Between[units.Ratio](0, 1)))
	f.add(checkOpt(op, "Hours", l.Hours, units.Between(0, day)))
	if l.Hours.IsSet() == (len(l.Windows) > 0) {
		f.add(&units.RangeError{Op: op, Field: "Hours", Value: l.Hours, Allowed: wording("either hours, 0 h to 24 h, or windows")})
	}
	f = append(f, checkWindows(op, l.Windows)...)
	f.add(units.AtLeast[units.Power](0).Check(op, "Standby", l.Standby))
	return f
}

// schedule returns the windows of l in words.
func (l Load) schedule() string {
	var b strings.Builder
	for i, w := range l.Windows {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(w.String())
	}
	return b.String()
}

// hours returns how long a day l is in use.
func (l Load) hours() units.Elapsed {
	if h, ok := l.Hours.Get(); ok {
		return h
	}
	var total time.Duration
	for _, w := range l.Windows {
		total += w.length()
	}
	return units.ElapsedOf(total)
}
