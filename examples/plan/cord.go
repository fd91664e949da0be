package plan

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// A cordRow is what a flexible cord may carry with two of its conductors
// carrying current: hot and neutral of a leg. The neutral of a cord with two
// legs carries only what they differ by and is not counted, 400.5.
type cordRow struct {
	gauge    int
	ampacity units.Current
}

// cordTable is column B.
//
// Source: NFPA 70, National Electrical Code, 2017, Table 400.5(A)(1), flexible
// cords at 30 °C ambient, column B; sizes that cords of recreational vehicles
// have. Provenance: read.
func cordTable() []cordRow {
	return []cordRow{
		{16, 13 * units.Ampere},
		{15, 16 * units.Ampere},
		{14, 18 * units.Ampere},
		{13, 21 * units.Ampere},
		{12, 25 * units.Ampere},
		{11, 27 * units.Ampere},
		{10, 30 * units.Ampere},
		{9, 34 * units.Ampere},
		{8, 40 * units.Ampere},
		{7, 47 * units.Ampere},
		{6, 55 * units.Ampere},
		{5, 62 * units.Ampere},
		{4, 70 * units.Ampere},
		{3, 82 * units.Ampere},
		{2, 95 * units.Ampere},
	}
}

// cordSource cites it.
func cordSource() working.Source {
	return working.Source{Title: "National Electrical Code", Body: "NFPA 70", Edition: "2017", Place: "Table 400.5(A)(1), column B, two conductors", Provenance: working.Read}
}

// cordAmpacity returns what a cord of a size may carry.
func cordAmpacity(size wire.Size) (units.Current, bool) {
	for _, row := range cordTable() {
		if size == wire.AWG(row.gauge) {
			return row.ampacity, true
		}
	}
	return 0, false
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
	ampacity, ok := cordAmpacity(size)
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
