package loads

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Working returns how the total of the bus called name came about from its
// lines, each of which has a [Line.Working] of its own. It is nil if there is
// no such bus; a nil sheet can be read and says that there is none.
func (l Ledger) Working(name string) *working.Sheet {
	total, ok := l.On(name)
	if !ok {
		return nil
	}
	s := working.NewSheet("A day of all loads on " + name)
	s.Given("V_bus", total.Bus.Voltage, "V", "voltage of the bus")
	var sum sums
	for _, v := range l.Lines {
		if v.Bus.Name == name {
			sum.given(s, v)
		}
	}
	if len(sum.lines) == 0 {
		s.Choose("loads", "none", "no load is on this bus", working.Source{})
		return s
	}
	sum.each(s)
	total.steps(s, sum)
	return s
}

// sums are the formulas of the totals and what they are made of, line by line.
type sums struct {
	lines                                             []Line
	energy, power, apparent, mustNotStop, mustConnect []string
}

// given appends what one line brings.
func (f *sums) given(s *working.Sheet, v Line) {
	f.lines = append(f.lines, v)
	i := strconv.Itoa(len(f.lines))
	s.Given("P_"+i, v.Power, "W", v.Name+", running")
	f.power = append(f.power, "P_"+i)
	if v.Bus.Kind == Alternating {
		s.Given("S_"+i, v.Apparent, "VA", v.Name+", running")
		f.apparent = append(f.apparent, "S_"+i)
	}
	s.Given("t_"+i, v.Running, "h", v.Name+", running a day")
	if v.StandbyEnergy > 0 {
		s.Given("E_standby_"+i, v.StandbyEnergy, "Wh", v.Name+", a day, while not running")
	}
	f.energy = append(f.energy, "E_"+i)
	if v.MustNotStop {
		f.mustNotStop = append(f.mustNotStop, "E_"+i)
		f.mustConnect = append(f.mustConnect, "P_"+i)
	}
}

// each appends the energy of every line.
func (f sums) each(s *working.Sheet) {
	for n, v := range f.lines {
		i := strconv.Itoa(n + 1)
		energy := "P_" + i + " * t_" + i
		if v.StandbyEnergy > 0 {
			energy += " + E_standby_" + i
		}
		s.Formula("E_"+i, v.Energy, "Wh", v.Name+", a day", energy)
	}
}

// steps appends what the lines come to.
func (t Total) steps(s *working.Sheet, f sums) {
	plus := func(terms []string) string { return strings.Join(terms, " + ") }
	s.Formula("E", t.Energy, "Wh", "all loads, a day", plus(f.energy))
	s.Formula("P_mean", t.Average, "W", "mean over 24 hours", "E / 24")
	if charge, ok := t.Charge.Get(); ok {
		s.Formula("Q", charge, "Ah", "charge a day at the voltage of the bus", "E / V_bus")
	}
	s.Formula("P", t.Connected, "W", "everything connected at once", plus(f.power))
	if t.Bus.Kind == Alternating {
		s.Formula("S", t.ConnectedApparent, "VA", "everything connected at once, added plainly", plus(f.apparent))
		s.Formula("I", t.ConnectedCurrent, "A", "everything connected at once", "S / V_bus")
	} else {
		s.Formula("I", t.ConnectedCurrent, "A", "everything connected at once", "P / V_bus")
	}
	if len(f.mustNotStop) == 0 {
		return
	}
	s.Formula("E_must", t.MustNotStop.Energy, "Wh", "must not stop, a day", plus(f.mustNotStop))
	s.Formula("P_must", t.MustNotStop.Average, "W", "must not stop, mean over 24 hours", "E_must / 24")
	s.Formula("P_must_on", t.MustNotStop.Connected, "W", "must not stop, all running", plus(f.mustConnect))
}

// Findings returns what needs attention, worst first: those of every line, that
// nothing is marked must-not-stop, and always that hours and duties are
// estimates.
func (l Ledger) Findings() []working.Finding {
	var f []working.Finding
	var energy units.Energy
	marked := false
	for _, v := range l.Lines {
		f = append(f, v.Findings()...)
		energy += v.Energy
		marked = marked || v.MustNotStop
	}
	numbers := []working.Number{{Name: "energy a day, all buses", Value: energy}}
	if !marked {
		f = append(f, working.Finding{
			Severity: working.Note,
			Rule:     "nothing-must-not-stop",
			Message:  "No load is marked must-not-stop, so nothing says how long what matters runs with nobody there.",
			Numbers:  numbers,
			Fix:      "Mark what keeps food, medicine, an animal or a person from harm.",
			Source:   working.Source{Title: "what must not stop is the owner's to say", Provenance: working.CommonPractice},
		})
	}
	f = append(f, working.Finding{
		Severity: working.Note,
		Rule:     "hours-are-estimates",
		Message:  "Hours and duties are as they were given: a cold week doubles a furnace, a hot one a refrigerator.",
		Numbers:  numbers,
		Fix:      "Measure a day with a meter at the source and compare.",
		Source:   working.Source{Title: "a ledger is an estimate until it is measured", Provenance: working.CommonPractice},
	})
	working.Sort(f)
	return f
}
