package plan

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A PartSheet is working with the part of the rig that it is about.
type PartSheet struct {
	Part  string         // as findings name it: a circuit, a load, a source, "use", "bank", "roof"
	Sheet *working.Sheet // its title begins with the part
}

// Working returns the working behind the plan, with the source of every
// number, in the order of the plan.
func (p Plan) Working() []PartSheet { return slices.Clone(p.sheets) }

// sheet keeps the working of a number of a part.
func (m *maker) sheet(part string, s *working.Sheet) { m.sheetOn(part, "", s) }

// sheetOn is sheet for one of several cases of a part. The same working is
// kept once.
func (m *maker) sheetOn(part, of string, s *working.Sheet) {
	title := part
	if of != "" {
		title += ", " + of
	}
	s = s.Titled(title + ": " + s.Title())
	same := func(x PartSheet) bool {
		return x.Part == part && x.Sheet.Title() == s.Title() && x.Sheet.Text() == s.Text()
	}
	if !slices.ContainsFunc(m.plan.sheets, same) {
		m.plan.sheets = append(m.plan.sheets, PartSheet{Part: part, Sheet: s})
	}
}

// partsInOrder brings the sheets of a part together, the parts in the order in
// which they came.
func partsInOrder(sheets []PartSheet) (ordered []PartSheet) {
	for _, part := range partsOf(sheets) {
		for _, s := range sheets {
			if s.Part == part {
				ordered = append(ordered, s)
			}
		}
	}
	return ordered
}

// partsOf returns the parts that have sheets, each once.
func partsOf(sheets []PartSheet) (parts []string) {
	for _, s := range sheets {
		if !slices.Contains(parts, s.Part) {
			parts = append(parts, s.Part)
		}
	}
	return parts
}

// sheetsOf returns "3" or "3 to 5", the numbers of the sheets of some parts,
// and "4, 7 to 9" where they are apart.
func sheetsOf(sheets []PartSheet, parts []string) string {
	var ranges []string
	for _, part := range parts {
		first, last := 0, 0
		for i, s := range sheets {
			if s.Part == part {
				if first == 0 {
					first = i + 1
				}
				last = i + 1
			}
		}
		switch {
		case first == 0:
		case first == last:
			ranges = append(ranges, strconv.Itoa(first))
		default:
			ranges = append(ranges, strconv.Itoa(first)+" to "+strconv.Itoa(last))
		}
	}
	return strings.Join(ranges, ", ")
}

// index says in which sheets the numbers of each row stand.
func (p Plan) index() section {
	s := section{title: "Working", head: []string{"numbers of", "sheets"}, text: []string{
		"Each number of the plan stands, with more digits, in the sheets of its part, which begin with the part's name. " +
			"What was put in is repeated there as given. Values are rounded where they are printed and nowhere else."}}
	for _, r := range p.short().rows {
		s.rows = append(s.rows, row{cells: []string{"In short: " + r.cells[0], sheetsOf(p.sheets, r.parts)}})
	}
	for _, part := range partsOf(p.sheets) {
		s.rows = append(s.rows, row{cells: []string{part, sheetsOf(p.sheets, []string{part})}})
	}
	return s
}

// TextWithWorking returns what [Plan.Text] does, then an index and the working
// behind each number, all of it at most 80 columns wide.
func (p Plan) TextWithWorking() string {
	var b strings.Builder
	b.WriteString(p.Text())
	p.index().write(&b)
	for i, s := range p.sheets {
		b.WriteString("\n" + s.Sheet.Titled(strconv.Itoa(i+1)+". "+s.Sheet.Title()).Text() + "\n")
	}
	return b.String()
}

// MarkdownWithWorking returns what [Plan.Markdown] does, then an index and the
// working behind each number.
func (p Plan) MarkdownWithWorking() string {
	var b strings.Builder
	b.WriteString(p.Markdown())
	p.index().markdown(&b)
	for i, s := range p.sheets {
		b.WriteString("\n" + s.Sheet.Titled(strconv.Itoa(i+1)+". "+s.Sheet.Title()).Markdown() + "\n")
	}
	return b.String()
}

// A sheetLine is a sheet in JSON.
type sheetLine struct {
	Part  string     `json:"part"`
	Title string     `json:"title"`
	Steps []stepLine `json:"steps"`
}

// A stepLine is a step in JSON. What its kind has not is left out.
type stepLine struct {
	Kind    string          `json:"kind"`            // given, constant, look-up, formula, choice or test
	Symbol  string          `json:"symbol,omitzero"` // that it declares
	What    string          `json:"what"`            // in words
	Value   string          `json:"value,omitzero"`  // with its unit
	Formula string          `json:"formula,omitzero"`
	With    []Number        `json:"with"`           // the symbols of the formula and what was put in for them
	Holds   units.Opt[bool] `json:"holds,omitzero"` // of a test
	Chosen  string          `json:"chosen,omitzero"`
	Why     string          `json:"why,omitzero"`
	LookUp  string          `json:"looked_up,omitzero"` // key and row
	Source  Source          `json:"source,omitzero"`
}

func sheetLines(sheets []PartSheet) []sheetLine {
	lines := make([]sheetLine, 0, len(sheets))
	for _, s := range sheets {
		line := sheetLine{Part: s.Part, Title: s.Sheet.Title()}
		for _, step := range s.Sheet.Steps() {
			line.Steps = append(line.Steps, stepLineOf(step))
		}
		lines = append(lines, line)
	}
	return lines
}

func stepLineOf(s working.Step) stepLine {
	line := stepLine{Kind: s.Kind.String(), Symbol: s.Name, What: s.What, Formula: s.Formula, Chosen: s.Chosen, Why: s.Why,
		LookUp: s.Lookup.String(), Source: Source(s.Source)}
	if s.Name != "" {
		line.Value = withUnit(s.Printed, s.Unit)
	}
	if s.Kind == working.TestStep {
		line.Holds = units.Some(s.Holds)
	}
	for _, o := range s.Operands {
		line.With = append(line.With, Number{Name: o.Name, Value: withUnit(o.Printed, o.Unit)})
	}
	return line
}

// withUnit returns "12 V", and a plain number as it is.
func withUnit(printed, unit string) string {
	switch unit {
	case "1", "":
		return printed
	case "°":
		return printed + unit
	}
	return printed + " " + unit
}
