package working

import (
	"html"
	"strings"
)

// HTML returns the sheet as one figure element: its title as the caption,
// its steps as a list, formulas in MathML. Every text in it is escaped. The
// class of a list item is the kind of its step.
func (s *Sheet) HTML() string {
	var b htmlWriter
	b.WriteString(`<figure class="working">` + "\n")
	b.paragraph("figcaption", "", s.Title())
	b.WriteString("<ol>\n")
	if s != nil {
		for _, st := range s.steps {
			b.step(st)
		}
	}
	b.WriteString("</ol>\n</figure>\n")
	return b.String()
}

type htmlWriter struct{ strings.Builder }

// paragraph appends an element with text in it, nothing if the text is
// empty.
func (b *htmlWriter) paragraph(tag, class, text string) {
	if text = oneLine(text); text == "" {
		return
	}
	b.WriteString("<" + tag)
	if class != "" {
		b.WriteString(` class="` + class + `"`)
	}
	b.WriteString(">" + html.EscapeString(text) + "</" + tag + ">\n")
}

func (b *htmlWriter) step(st Step) {
	b.WriteString(`<li class="` + html.EscapeString(st.Kind.String()) + `">` + "\n")
	b.paragraph("p", "what", st.What)
	if math := st.MathML(); math != "" {
		b.WriteString(math + "\n")
	} else {
		b.paragraph("code", "", st.Formula)
	}
	switch st.Kind {
	case FormulaStep:
		b.paragraph("p", "units", st.operandUnits())
	case ChoiceStep:
		b.paragraph("p", "chosen", st.Chosen)
		b.paragraph("p", "why", st.Why)
	case TestStep:
		b.paragraph("p", "units", st.operandUnits())
		b.paragraph("p", "outcome", st.outcome())
	}
	b.paragraph("p", "source", st.cited())
	b.paragraph("p", "mistake", st.mistake())
	b.WriteString("</li>\n")
}
