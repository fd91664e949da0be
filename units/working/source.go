package working

import (
	"strings"
	"unicode"
)

// A Provenance says how a value or a rule came into this library.
type Provenance uint8

// The provenances, the firmest first. The zero value is none: a constant or
// a look-up that has it is a mistake in its [Sheet].
const (
	Unstated       Provenance = iota // nothing said
	Definition                       // exact by definition or by arithmetic
	Read                             // seen in the source that is named
	Derived                          // worked out from what the source prints
	Memory                           // recalled, the source not opened
	CommonPractice                   // a habit of the trade that no source fixes
)

var provenanceWords = []string{"provenance not stated", "definition", "read", "derived", "memory", "common practice"}

// String returns "definition", "read", "derived", "memory", "common
// practice" or "provenance not stated".
func (p Provenance) String() string { return wordFor(provenanceWords, uint8(p), "Provenance") }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (p Provenance) MarshalText() ([]byte, error) {
	return marshalWord(provenanceWords, uint8(p), "Provenance")
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError].
func (p *Provenance) UnmarshalText(text []byte) error {
	i, err := unmarshalWord(provenanceWords, text, "a provenance")
	if err == nil {
		*p = Provenance(i)
	}
	return err
}

// A Source is where a value or a rule comes from. Sources are comparable.
type Source struct {
	Body       string     // who published it, such as "IEC"
	Title      string     // of the document, with its number
	Edition    string     // or the year
	Place      string     // table, clause or page in it
	Provenance Provenance // how the value came from there
}

// String returns the citation in one line, "ASTM, B258 Standard diameters,
// 2018, table 1 (from memory)". That a value is remembered, worked out,
// common practice or of no stated provenance always shows. The zero Source
// gives empty text.
func (s Source) String() string {
	if s == (Source{}) {
		return ""
	}
	var parts []string
	for _, p := range [...]string{s.Body, s.Title, s.Edition, s.Place} {
		if p = oneLine(p); p != "" {
			parts = append(parts, p)
		}
	}
	cited := strings.Join(parts, ", ")
	remark := ""
	switch s.Provenance {
	case Definition, Read:
	case Memory:
		remark = "from memory"
	default:
		remark = s.Provenance.String()
	}
	switch {
	case cited == "" && remark == "":
		return s.Provenance.String()
	case cited == "":
		return remark
	case remark == "":
		return cited
	}
	return cited + " (" + remark + ")"
}

// stated reports whether s says enough to be followed: a provenance and,
// unless it is a definition or common practice, what to open.
func (s Source) stated() bool {
	switch s.Provenance {
	case Definition, CommonPractice:
		return true
	case Read, Derived, Memory:
		return oneLine(s.Body) != "" || oneLine(s.Title) != ""
	}
	return false
}

// oneLine returns s with every run of white space as one space and without
// control characters, so that no text can break the layout of a sheet.
func oneLine(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToValidUTF8(s, "\uFFFD"), isGap), " ")
}

func isGap(r rune) bool { return r == ' ' || !unicode.IsPrint(r) }
