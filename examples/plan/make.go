package plan

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/battery"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A maker makes a plan: it keeps what is known so far, and every mistake.
type maker struct {
	rig      Rig
	plan     Plan
	book     loads.Ledger
	assembly battery.Assembly
	problems []Problem
	found    []located
}

// A located finding is one with the part that it is about.
type located struct {
	where string
	working.Finding
}

// Make returns the plan for a rig. What a calculator refuses is a mistake in
// the description: all of them are reported together as a [*DescriptionError],
// and the Plan is then the zero value. Make may be called by several
// goroutines; the same rig gives the same plan.
func Make(r Rig) (Plan, error) {
	var d decoder
	if checkNames(&d, r); len(d.problems) > 0 {
		return Plan{}, &DescriptionError{Problems: d.problems}
	}
	m := &maker{rig: r, plan: Plan{Rig: r.Name, Day: r.Day}}
	// Everything else rests on these two.
	m.ledger()
	m.bank()
	m.cutOff()
	if len(m.problems) > 0 {
		return Plan{}, &DescriptionError{Problems: m.problems}
	}
	for _, step := range []func(){m.use, m.sun, m.loops, m.holdUp, m.inverterLine, m.sources, m.bonds, m.limits,
		m.voltages, m.passThrough, m.service, m.cord, m.sets, m.circuits, m.said, m.unseen} {
		step()
	}
	if len(m.problems) > 0 {
		return Plan{}, &DescriptionError{Problems: m.problems}
	}
	m.finish()
	return m.plan, nil
}

// fail keeps a mistake.
func (m *maker) fail(path, value, allowed string) {
	m.problems = append(m.problems, Problem{Path: path, Value: value, Allowed: allowed})
}

// ok reports whether err is nil, and keeps what it says if not. The path is
// that of the part which the calculator was asked about; the field that it
// names is looked up in [fieldPath].
func (m *maker) ok(path string, err error) bool {
	if err == nil {
		return true
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range many.Unwrap() {
			m.ok(path, e)
		}
		return false
	}
	var limits *units.RangeError
	if !errors.As(err, &limits) {
		m.fail(path, "", err.Error())
		return false
	}
	m.fail(pathOf(path, limits.Field), strconv.Quote(shortened(fmt.Sprint(limits.Value))), limits.Allowed.String())
	return false
}

// sheet keeps the working of a number of the plan.
func (m *maker) sheet(s *working.Sheet) { m.plan.sheets = append(m.plan.sheets, s) }

// find keeps findings about a part.
func (m *maker) find(where string, findings ...working.Finding) {
	for _, f := range findings {
		m.found = append(m.found, located{where, f})
	}
}

// heard keeps findings of a calculator about a part, in the words of the
// description.
func (m *maker) heard(where string, findings ...working.Finding) {
	m.find(where, inWords(findings)...)
}

// bus returns the bus of that name.
func (m *maker) bus(name string) (Bus, bool) {
	for _, b := range m.rig.Buses {
		if b.Name == name {
			return b, true
		}
	}
	return Bus{}, false
}

// load returns the load of that name.
func (m *maker) load(name string) Load {
	for _, l := range m.rig.Loads {
		if l.Name == name {
			return l
		}
	}
	return Load{}
}

// circuitNamed returns the circuit of that name.
func (m *maker) circuitNamed(name string) (Circuit, bool) {
	for _, c := range m.rig.Circuits {
		if c.Name == name && name != "" {
			return c, true
		}
	}
	return Circuit{}, false
}

// finish sorts the findings, gathers what is said of many parts alike, and
// settles every number, so that the plan does not move with the last bits of
// a float64.
func (m *maker) finish() {
	var gathered []located
	index := map[string]int{}
	for _, f := range m.found {
		key := f.Severity.String() + f.Rule + f.Message
		i, ok := index[key]
		if ok && (f.Severity == working.Note || gathered[i].where == f.where) {
			if !strings.Contains(", "+gathered[i].where+",", ", "+f.where+",") {
				gathered[i].where += ", " + f.where
				// The numbers of the first would read as those of all.
				if !slices.Equal(gathered[i].Numbers, f.Numbers) {
					gathered[i].Numbers = nil
				}
			}
			continue
		}
		index[key] = len(gathered)
		gathered = append(gathered, f)
	}
	for s := working.Danger; ; s-- {
		for _, f := range gathered {
			if f.Severity == s {
				m.plan.Findings = append(m.plan.Findings, f.line())
			}
		}
		if s == working.Note {
			break
		}
	}
	settle(reflect.ValueOf(&m.plan).Elem())
}

// line returns f as the plan keeps it.
func (f located) line() Finding {
	line := Finding{Where: f.where, Severity: f.Severity, Rule: f.Rule, Message: f.Message, Fix: f.Fix,
		Source: f.Source.String(), Numbers: []string{}}
	for _, n := range f.Numbers {
		line.Numbers = append(line.Numbers, n.String())
	}
	return line
}

// settle rounds every quantity below v to nine significant digits.
func settle(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if v.CanSet() {
			v.SetFloat(units.Settle(v.Float()))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			settle(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				settle(v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			settle(v.Index(i))
		}
	}
}
