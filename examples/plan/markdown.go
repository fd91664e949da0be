package plan

import (
	"strings"
)

// Markdown returns the plan as Markdown with tables.
func (p Plan) Markdown() string {
	d := p.document()
	var b strings.Builder
	b.WriteString("# " + escape(d.title) + "\n")
	for _, t := range d.lead {
		b.WriteString("\n" + escape(t) + "\n")
	}
	for _, s := range d.sections {
		s.markdown(&b)
	}
	return b.String()
}

// markdown appends the section.
func (s section) markdown(b *strings.Builder) {
	b.WriteString("\n## " + escape(s.title) + "\n")
	for _, t := range s.text {
		b.WriteString("\n" + escape(t) + "\n")
	}
	if len(s.rows) > 0 {
		head := s.head
		if len(head) == 0 {
			head = make([]string, len(s.rows[0].cells))
		}
		b.WriteByte('\n')
		markdownRow(b, head)
		b.WriteString(strings.Repeat("| --- ", len(head)) + "|\n")
		for _, r := range s.rows {
			markdownRow(b, r.cells)
		}
	}
	if len(s.items) > 0 {
		b.WriteByte('\n')
	}
	for _, i := range s.items {
		i.markdown(b)
	}
}

// markdown appends the item with a list of its own below it, since lines that
// only follow each other would run together.
func (i item) markdown(b *strings.Builder) {
	text := escape(i.text)
	if i.mark != "" {
		text = "**" + escape(i.mark) + "**: " + text
	}
	b.WriteString("- " + text + "\n")
	for _, line := range i.more {
		b.WriteString("  - " + escape(line) + "\n")
	}
}

func markdownRow(b *strings.Builder, cells []string) {
	for _, c := range cells {
		b.WriteString("| " + escape(c) + " ")
	}
	b.WriteString("|\n")
}

// escape keeps text from being read as Markdown.
func escape(s string) string {
	return strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "&", "&amp;", "#", `\#`, "[", `\[`,
		"$", `\$`, "~", `\~`, "\n", " ", "\r", " ").Replace(s)
}
