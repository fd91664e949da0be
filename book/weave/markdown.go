package weave

import "strings"

// wovenNote tells who opens the file to change it where to do that.
const wovenNote = "<!-- Woven by `go run ./book weave` from the Go files beside it: change those. -->"

// Markdown returns the chapter in the Markdown that GitHub renders; formulas
// are code blocks with a math block below, and figures are files beside it.
func (w *Woven) Markdown() string {
	parts := append([]string{wovenNote}, markdownParts(w.elements)...)
	parts = append(parts, markdownParts(w.answers())...)
	parts = append(parts, markdownParts(w.closing())...)
	text := strings.Join(parts, "\n\n") + "\n"
	return broken(text)
}

// markdownParts returns the elements, each without blank lines around it.
func markdownParts(elements []element) []string {
	var parts []string
	for _, e := range elements {
		switch e := e.(type) {
		case section:
			parts = append(parts, markdownParts(e.elements)...)
		case question:
			parts = append(parts, markdownParts(e.elements)...)
			parts = append(parts, "[Answer](#answer-to-exercise-"+e.number+")")
		default:
			parts = append(parts, markdownPart(e))
		}
	}
	return parts
}

func markdownPart(e element) string {
	switch e := e.(type) {
	case heading:
		return strings.Repeat("#", e.level) + " " + escape(e.text)
	case prose:
		return e.text
	case mathBlock:
		return markdownMath(e)
	case grid:
		return markdownGrid(e)
	case code:
		return "```" + e.language + "\n" + e.text + "\n```"
	case sheet:
		return markdownSheet(e)
	case box:
		lines := strings.Split("**"+e.word+".** "+e.text, "\n")
		return strings.Join(prefixed("> ", "> ", lines), "\n")
	case drawing:
		return "![" + escape(e.alt) + "](" + e.name + ".svg)\n\n*Figure:* " + e.caption
	}
	return ""
}

// markdownSheet returns the working folded, so that pages of it do not stand
// between an answer and what follows. Within the blank lines Markdown is read.
func markdownSheet(s sheet) string {
	body := strings.TrimSpace(s.Markdown())
	if strings.HasPrefix(body, "**") { // its title, which the summary has
		_, body, _ = strings.Cut(body, "\n\n")
	}
	return "<details>\n" + tag("summary", s.label()) + "\n\n" + body + "\n\n</details>"
}

// markdownMath returns the equations as a code block, for who reads the file
// as it is, and as a math block, then the list of symbols.
func markdownMath(m mathBlock) string {
	var plain, latex []string
	for _, f := range m.equations {
		plain = append(plain, f.Text())
		latex = append(latex, f.LaTeX())
	}
	typeset := strings.Join(latex, " \\\\\n")
	if len(latex) > 1 {
		typeset = "\\begin{gathered}\n" + typeset + "\n\\end{gathered}"
	}
	var list []string
	for _, l := range m.where {
		list = append(list, "- `"+l.symbol.Text()+"`: "+escape(l.text))
	}
	return "```text\n" + strings.Join(plain, "\n") + "\n```\n\n" +
		"```math\n" + typeset + "\n```\n\n" +
		"where\n\n" + strings.Join(list, "\n")
}

func markdownGrid(g grid) string {
	var b strings.Builder
	if g.caption != "" {
		b.WriteString("**" + escape(g.caption) + "**\n\n")
	}
	row := func(cells []string) {
		b.WriteString("|")
		for _, c := range cells {
			b.WriteString(" " + escape(c) + " |")
		}
		b.WriteString("\n")
	}
	row(g.header)
	b.WriteString("|")
	for _, right := range g.right {
		if right {
			b.WriteString(" ---: |")
		} else {
			b.WriteString(" --- |")
		}
	}
	b.WriteString("\n")
	for _, r := range g.rows {
		row(r)
	}
	return strings.TrimRight(b.String(), "\n")
}
