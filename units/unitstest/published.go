package unitstest

import (
	"maps"
	"slices"
	"testing"
)

// Published runs each row of a file in testdata/published against print. The
// file is CSV; lines that start with # are comments, the first other line
// names the columns:
//
//		id,call,given,expect,kind,width,why,source,provenance,note
//
//	  - id: unique in the file.
//	  - call: which function of calls works the row out.
//	  - given: "current=20 A; one_way=15 ft; size=12 AWG".
//	  - expect: "drop=3.60 V; percent=16.7 %", with the digits as printed; see
//	    [units.ParsePrinted] for "1500 W to the nearest 100".
//	  - kind: digits, tolerance or measured.
//	  - width: a ratio of the printed number ("1.5 %") or a quantity ("0.02 V").
//	  - why: the reason for the width, from the source's own precision.
//	  - source and provenance: where the numbers were printed, and whether they
//	    were read there, derived, from memory or common practice.
//	  - note: anything else. One that begins with "second copy" marks a row of a
//	    table that the code has too: it checks the typing, not the code.
//
// An expectation of kind digits holds if the result is what was printed: half
// of the last printed digit away at most, compared settled, or for text
// ([Case.GotText]) the same text. One of another kind may be off by the
// width, if that is more; for kind measured the width is the bound on the
// error, and the report names the error.
//
// A row fails if an expectation does not hold or is not answered, if a given
// is not read, if a result is not finite, and if anything in it is missing,
// unknown or there twice. A row that excused names by id, with the reason,
// must have an expectation that does not hold: an excuse that is no longer
// needed fails, and so does one for no row. So does a call without a row.
//
// The report is logged. It counts as from print only rows that were read there
// and are no second copy.
func Published(t testing.TB, file string, calls map[string]func(c *Case), excused map[string]string) Report {
	t.Helper()
	rows := readRows(t, file)
	report := newReport(file)
	uncalled, unused := maps.Clone(calls), maps.Clone(excused)
	for _, r := range rows {
		delete(uncalled, r.call)
		delete(unused, r.id)
		c := &Case{row: r, problems: r.problems}
		c.run(calls[r.call])
		reason, isExcused := excused[r.id]
		for _, failure := range c.failures(reason, isExcused) {
			t.Errorf("%s:%d: %s: %s", file, r.line, r.id, failure)
		}
		report.add(c, isExcused)
	}
	for _, name := range slices.Sorted(maps.Keys(uncalled)) {
		t.Errorf("%s: no row has the call %q", file, name)
	}
	for _, id := range slices.Sorted(maps.Keys(unused)) {
		t.Errorf("%s: no row has the excused id %q", file, id)
	}
	t.Logf("%s", report)
	return report
}
