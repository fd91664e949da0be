package plan

import (
	"encoding/json"
	"strings"
)

// Markdown returns the plan as Markdown with tables.
func (p Plan) Markdown() string {
	d := p.document()
	var b strings.Builder
	b.WriteString("# " + escape(d.title) + "\n\n" + escape(d.lead) + "\n")
	for _, s := range d.sections {
		b.WriteString("\n## " + escape(s.title) + "\n")
		for _, t := range s.text {
			b.WriteString("\n" + escape(t) + "\n")
		}
		if len(s.rows) > 0 {
			head := s.head
			if len(head) == 0 {
				head = make([]string, len(s.rows[0]))
			}
			b.WriteByte('\n')
			markdownRow(&b, head)
			b.WriteString(strings.Repeat("| --- ", len(head)) + "|\n")
			for _, row := range s.rows {
				markdownRow(&b, row)
			}
		}
		if len(s.items) > 0 {
			b.WriteByte('\n')
		}
		for _, i := range s.items {
			text := escape(i.text)
			if i.mark != "" {
				text = "**" + escape(i.mark) + "**: " + text
			}
			b.WriteString("- " + text + "\n")
			for _, line := range i.more {
				b.WriteString("  " + escape(line) + "\n")
			}
		}
	}
	return b.String()
}

func markdownRow(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + escape(c) + " ")
	}
	b.WriteString("|\n")
}

// escape keeps text from being read as Markdown.
func escape(s string) string {
	return strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "#", `\#`, "[", `\[`, "$", `\$`).Replace(s)
}

// JSON returns the plan as indented JSON. Its names stay; quantities are text
// with a unit.
func (p Plan) JSON() ([]byte, error) {
	data, err := json.MarshalIndent(p, "", "  ")
	return append(data, '\n'), err
}
