package plan

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// cordSource cites the table of [wire.CordAmpacity], column B.
func cordSource() working.Source {
	return working.Source{Title: "National Electrical Code", Body: "NFPA 70", Edition: "2017", Place: "Table 400.5(A)(1), column B, two conductors", Provenance: working.Read}
}

// cordAmpacity returns what a cord of a size may carry in each of two
// conductors that carry current: hot and neutral of a leg. The neutral of a
// cord with two legs carries only what they differ by and is not counted,
// 400.5. It is not ok if the table has no row for the size.
func cordAmpacity(size wire.Size, service units.Current) (i units.Current, ok bool, err error) {
	c, err := wire.CordAmpacity(wire.Cord{Size: size, Conductors: 2, Load: service})
	if notTabulated(err) {
		return 0, false, nil
	}
	return c.Current, err == nil, err
}

// cord holds the trailer's cord against its service.
func (m *maker) cord() {
	s := m.rig.Shore
	if s == nil {
		return
	}
	size, ok := s.Cord.Get()
	if !ok {
		m.find("shore", working.Finding{
			Severity: working.Note, Rule: "cord-not-stated", Source: cordSource(), Numbers: []working.Number{{Name: "service", Value: s.Service}},
			Message: "The size of the shore cord is not stated, so it is not judged.",
			Fix:     "Read it from the jacket, such as 10/3, and give shore.cord.",
		})
		return
	}
	ampacity, ok, err := cordAmpacity(size, s.Service)
	if !m.ok("shore", err) {
		return
	}
	if !ok {
		m.find("shore", working.Finding{
			Severity: working.Caution, Rule: "cord-not-judged", Source: cordSource(), Numbers: []working.Number{{Name: "service", Value: s.Service}},
			Message: "Not judged: the table of cords has no row for " + size.String() + ".",
			Fix:     "Hold the cord against the code that has this size.",
		})
		return
	}
	sheet := working.NewSheet("The shore cord")
	sheet.LookUp("I_cord", ampacity, "A", "that the cord may carry", working.Lookup{Key: size.String(), Row: size.String() + ", two conductors that carry current", Source: cordSource()})
	sheet.Given("I_service", s.Service, "A", "rating of the service")
	tooSmall := units.Exceeds(s.Service, ampacity)
	sheet.Test("cord against service", "I_service <= I_cord", !tooSmall)
	m.sheet("shore", sheet)
	if tooSmall {
		m.find("shore", working.Finding{
			Severity: working.Danger, Rule: "cord-below-service", Source: cordSource(),
			Numbers: []working.Number{{Name: "service", Value: s.Service},
				{Name: "cord", Value: ampacity}},
			Message: "The cord may carry less than the service that protects it: it can burn before the main opens.",
			Fix:     "Use a cord of a larger size; an extension counts as the cord does.",
		})
	}
}
