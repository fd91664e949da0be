package plan

import (
	"reflect"
	"strings"

	"example.com/drawbar/battery"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A maker makes a plan: it keeps what is known so far, and every mistake.
type maker struct {
	rig      Rig
	plan     Plan
	book     loads.Ledger
	assembly battery.Assembly
	side     inverter.DCCurrent       // of the inverter, if there is one
	fit      solar.Fit                // of the roof, if there is one
	through  units.Opt[units.Current] // that may pass the inverter; not given if neither relay nor device is
	found    []located
	mistakes
}

// A located finding is one with the part that it is about.
type located struct {
	where string
	working.Finding
}

// Make returns the plan for a rig. What a calculator refuses is a mistake in
// the description: all of them are reported together as a [*DescriptionError],
// but for what could only be worked out of a part that has one, and the Plan is
// then the zero value. Make may be called by several goroutines; the same rig
// gives the same plan.
func Make(r Rig) (Plan, error) {
	var d decoder
	d.checkFields(r)
	checkNames(&d, r)
	m := &maker{rig: r, plan: Plan{Rig: r.Name, Day: r.Day}, mistakes: d.mistakes}
	m.work()
	if len(m.problems) > 0 {
		return Plan{}, &DescriptionError{Problems: m.problems}
	}
	m.finish()
	return m.plan, nil
}

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
	return circuitIn(m.rig, name)
}

// circuitIn returns the circuit of r of that name.
func circuitIn(r Rig, name string) (Circuit, bool) {
	for _, c := range r.Circuits {
		if c.Name == name && name != "" {
			return c, true
		}
	}
	return Circuit{}, false
}

// finish sorts the findings and the sheets, and settles every number, so that
// the plan does not move with the last bits of a float64.
func (m *maker) finish() {
	said := map[string]bool{}
	for _, f := range m.found {
		// The same may be found of several cases of a part.
		if key := f.Severity.String() + "\n" + f.where + "\n" + f.Rule + "\n" + f.Message; !said[key] {
			said[key] = true
			m.plan.Findings = append(m.plan.Findings, m.findingOf(f))
		}
	}
	ordered(m.plan.Findings)
	m.plan.sheets = partsInOrder(m.plan.sheets)
	settle(reflect.ValueOf(&m.plan).Elem())
}

// findingOf returns f as the plan keeps it.
func (m *maker) findingOf(f located) Finding {
	// The plan ends with who decides: one mend among others need not say it.
	mend := strings.TrimSpace(strings.ReplaceAll(f.Fix, working.DeferToCode, ""))
	line := Finding{Part: f.where, Severity: f.Severity, Rule: f.Rule, Message: f.Message, Mend: mend,
		Source: Source(f.Source), Numbers: numbersOf(f.Numbers)}
	if c, ok := m.circuitNamed(f.where); ok {
		line.Route = c.route()
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
