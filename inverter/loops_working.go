package inverter

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// Path returns the places and feeds of l in words, such as
// "bank - inverter - backed panel - converter - bank".
func (l Loop) Path() string {
	parts := []string{l.Bank}
	for _, h := range l.Hops {
		parts = append(parts, h.Name, h.To)
	}
	return strings.Join(parts, " - ")
}

// Working returns how the loop's numbers came about, from what comes back to
// what is drawn.
func (l Loop) Working() *working.Sheet {
	s := working.NewSheet("A bank that feeds itself, with " + l.Source + " active")
	s.Choose("path", l.Path(), "every feed of it is closed with this source", arithmetic)
	if !l.Known || len(l.Hops) == 0 {
		s.Choose("numbers", "not stated", "no feed of the path says the most that it gives", working.Source{})
		return s
	}
	s.Given("P_back", l.Back, "W", "into the bank, as hard as the weakest feed lets it run")
	out := "P_back"
	for i := len(l.Hops) - 1; i >= 0; i-- {
		h, n := l.Hops[i], strconv.Itoa(i+1)
		s.Given("η_"+n, h.Efficiency, "1", "efficiency of "+h.Name)
		formula := out + " / η_" + n
		if idle, ok := h.Idle.Get(); ok {
			s.Given("P_idle_"+n, idle, "W", "own draw of "+h.Name)
			formula += " + P_idle_" + n
		}
		s.Formula("P_"+n, h.In, "W", "into "+h.Name, formula)
		out = "P_" + n
	}
	s.Formula("P_lost", l.Lost, "W", "lost on the way round", out+" - P_back")
	return s
}

// Findings returns that the bank feeds itself, with what it loses.
func (l Loop) Findings() []working.Finding {
	f := working.Finding{
		Severity: working.Caution, Rule: "bank-feeds-its-own-charger", Source: arithmetic,
		Message: "With " + l.Source + " active the bank feeds its own charger, " + l.Path() + ", and empties itself by what is lost on the way round.",
		Fix:     "Feed the charger from a panel that this bank does not feed, or through a relay that opens while it does.",
	}
	if l.Known {
		f.Numbers = []working.Number{{Name: "drawn", Value: l.Drawn}, {Name: "back", Value: l.Back}, {Name: "lost", Value: l.Lost}}
	} else {
		f.Message += " How much is not known, for no feed of the path says the most that it gives."
		f.Numbers = []working.Number{{Name: "part that comes back", Value: l.efficiency()}}
	}
	return []working.Finding{f}
}

// efficiency returns that of the whole way round, own draw left out.
func (l Loop) efficiency() units.Ratio {
	whole := units.Ratio(1)
	for _, h := range l.Hops {
		whole *= h.Efficiency
	}
	return whole
}
