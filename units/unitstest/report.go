package unitstest

import (
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A Report is what [Published] found in one file. Rows that failed are in it
// too; the test says so.
type Report struct {
	File        string         // in testdata/published
	Kinds       map[string]int // rows held against print, by kind
	Copies      map[string]int // rows whose note begins with "second copy", by kind: a table of the code, typed twice
	Memory      map[string]int // rows from memory, by kind: they pin a transcription only
	Unprinted   map[string]int // rows derived or common practice, by kind: no check against print
	Sources     map[string]int // all rows, by source
	Provenances map[string]int // all rows, by provenance
	Relaxed     []string       // ids of rows of another kind than digits
	Needless    []string       // those of Relaxed that hold to their digits all the same
	Excused     []string       // ids; in none of the four counts by kind
	Errors      []string       // the error of each expectation of kind measured, in words
}

func newReport(file string) Report {
	return Report{
		File:  file,
		Kinds: map[string]int{}, Copies: map[string]int{}, Memory: map[string]int{}, Unprinted: map[string]int{},
		Sources: map[string]int{}, Provenances: map[string]int{},
	}
}

// add counts a case that was run.
func (r *Report) add(c *Case, excused bool) {
	r.Sources[c.row.source]++
	r.Provenances[c.row.provenance]++
	if c.row.kind != digits {
		r.Relaxed = append(r.Relaxed, c.row.id)
		if !c.needed && len(c.problems) == 0 {
			r.Needless = append(r.Needless, c.row.id)
		}
	}
	if excused {
		r.Excused = append(r.Excused, c.row.id)
	} else {
		r.standing(c.row.standing())[c.row.kind]++
	}
	r.Errors = append(r.Errors, c.errors...)
}

// standing returns the count of the rows that are worth s.
func (r *Report) standing(s standing) map[string]int {
	switch s {
	case fromPrint:
		return r.Kinds
	case secondHand:
		return r.Copies
	case remembered:
		return r.Memory
	}
	return r.Unprinted
}

// String returns the report in a few lines.
func (r Report) String() string {
	var b strings.Builder
	line := func(label, text string) {
		if text != "" {
			fmt.Fprintf(&b, "\n  %s: %s", label, text)
		}
	}
	fmt.Fprintf(&b, "%s: %d rows", r.File, total(r.Sources))
	line("from print", counts(r.Kinds))
	line("second transcription of a table", counts(r.Copies))
	line("from memory, pins a transcription only", counts(r.Memory))
	line("derived or common practice, no check against print", counts(r.Unprinted))
	line("excused", strings.Join(r.Excused, ", "))
	if n := len(r.Relaxed); n > 0 {
		line("relaxed from digits", fmt.Sprintf("%d, of which %d hold to their digits all the same%s",
			n, len(r.Needless), prefixed(": ", strings.Join(r.Needless, ", "))))
	}
	line("by provenance", counts(r.Provenances))
	line("by source", strings.ReplaceAll(counts(r.Sources), "; ", "\n    "))
	line("measured", strings.Join(r.Errors, "\n    "))
	return b.String()
}

func total(count map[string]int) (n int) {
	for _, k := range count {
		n += k
	}
	return n
}

// counts returns "3 digits; 1 measured".
func counts(count map[string]int) string {
	var parts []string
	for _, name := range slices.Sorted(maps.Keys(count)) {
		parts = append(parts, fmt.Sprintf("%d %s", count[name], name))
	}
	return strings.Join(parts, "; ")
}
