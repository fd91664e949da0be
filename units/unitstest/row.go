package unitstest

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/drawbar/units/working"
)

// The kinds of published rows.
const (
	digits    = "digits"
	tolerance = "tolerance"
	measured  = "measured"
)

// columns are the columns of a published file.
var columns = [...]string{"id", "call", "given", "expect", "kind", "width", "why", "source", "provenance", "note"}

// A row is one row of a published file.
type row struct {
	line               int
	id, call           string
	given, expect      []pair
	kind, width        string
	source, provenance string
	note               string
	problems           []string // what is wrong with it
}

// A pair is "name=text".
type pair struct{ name, text string }

// secondCopy is how the note of a row begins that holds a table of the code
// against the same table typed a second time.
const secondCopy = "second copy"

// A standing is what a row is worth as a check.
type standing uint8

const (
	fromPrint  standing = iota // against what somebody printed
	secondHand                 // against a second transcription of a table
	remembered                 // against what nobody looked up: it pins a transcription only
	unprinted                  // against arithmetic or practice of ours
)

// standing returns the least that is said about r: a second copy from memory
// is from memory.
func (r row) standing() standing {
	switch r.provenance {
	case working.Derived.String(), working.CommonPractice.String():
		return unprinted
	case working.Memory.String():
		return remembered
	}
	if strings.HasPrefix(r.note, secondCopy) {
		return secondHand
	}
	return fromPrint
}

// readRows reads the rows of a file in testdata/published. A file that is no
// table of such rows ends the test.
func readRows(t testing.TB, file string) (rows []row) {
	t.Helper()
	f, err := os.Open(testdata(t, "published/"+file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	header, err := r.Read()
	if err != nil || !slices.Equal(header, columns[:]) {
		t.Fatalf("%s: columns are %q, want %q (%v)", file, header, columns, err)
	}
	lines := map[string]int{} // by id
	for {
		fields, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		line, _ := r.FieldPos(0)
		row := newRow(line, fields)
		if first := lines[row.id]; first != 0 {
			row.problems = append(row.problems, fmt.Sprintf("id of line %d again", first))
		}
		lines[row.id] = line
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s: no rows", file)
	}
	return rows
}

// newRow returns the row of fields, one for each column.
func newRow(line int, fields []string) (r row) {
	cell := map[string]string{}
	for i, name := range columns {
		cell[name] = strings.TrimSpace(fields[i])
	}
	r = row{
		line: line, id: cell["id"], call: cell["call"], kind: cell["kind"], width: cell["width"],
		source: cell["source"], provenance: cell["provenance"], note: cell["note"],
	}
	wrong := func(format string, args ...any) { r.problems = append(r.problems, fmt.Sprintf(format, args...)) }
	var err error
	if r.given, err = pairs(cell["given"]); err != nil {
		wrong("given: %v", err)
	}
	if r.expect, err = pairs(cell["expect"]); err != nil {
		wrong("expect: %v", err)
	}
	for _, name := range []string{"id", "call", "expect", "source"} {
		if cell[name] == "" {
			wrong("no %s", name)
		}
	}
	switch r.kind {
	case digits:
		if r.width != "" || cell["why"] != "" {
			wrong("kind digits has no width, and no reason for one")
		}
	case tolerance, measured:
		if r.width == "" || cell["why"] == "" {
			wrong("kind %s needs a width and the reason for it", r.kind)
		}
	default:
		wrong("kind %q; want digits, tolerance or measured", r.kind)
	}
	if known := provenances(); !slices.Contains(known, r.provenance) {
		wrong("provenance %q; want one of %q", r.provenance, known)
	}
	return r
}

// provenances are those a published row may have.
func provenances() (names []string) {
	for _, p := range []working.Provenance{working.Read, working.Derived, working.Memory, working.CommonPractice} {
		names = append(names, p.String())
	}
	return names
}

// pairs reads "current=20 A; size=12 AWG".
func pairs(s string) (list []pair, err error) {
	if s == "" {
		return nil, nil
	}
	for part := range strings.SplitSeq(s, ";") {
		name, text, _ := strings.Cut(part, "=")
		p := pair{strings.TrimSpace(name), strings.TrimSpace(text)}
		if p.name == "" || p.text == "" {
			return nil, fmt.Errorf("%q is not name=value", strings.TrimSpace(part))
		}
		if _, again := find(list, p.name); again {
			return nil, fmt.Errorf("%s is there twice", p.name)
		}
		list = append(list, p)
	}
	return list, nil
}

// find returns the text of name.
func find(list []pair, name string) (text string, ok bool) {
	i := slices.IndexFunc(list, func(p pair) bool { return p.name == name })
	if i < 0 {
		return "", false
	}
	return list[i].text, true
}
