package working

import "strings"

// Markdown returns the sheet as Markdown: its plain text in code blocks, and
// below each formula the same in a math fence, so that it reads well where
// mathematics is not typeset.
func (s *Sheet) Markdown() string {
	if s == nil {
		return ""
	}
	var parts []string
	if title := oneLine(s.title); title != "" {
		parts = append(parts, "**"+escapeMarkdown(title)+"**")
	}
	var text []string
	flush := func() {
		if len(text) > 0 {
			parts = append(parts, fenced("text", strings.Join(text, "\n\n")))
			text = nil
		}
	}
	for _, b := range blocks(s.steps) {
		text = append(text, strings.Join(b.lines(), "\n"))
		last := b[len(b)-1]
		if last.Kind != FormulaStep && last.Kind != TestStep {
			continue
		}
		if math := last.LaTeX(); math != "" {
			flush()
			parts = append(parts, fenced("math", math))
		}
	}
	flush()
	return strings.Join(parts, "\n\n")
}

// fenced returns a code block with a fence longer than any run of backquotes
// in it.
func fenced(language, body string) string {
	fence := "```"
	for strings.Contains(body, fence) {
		fence += "`"
	}
	return fence + language + "\n" + body + "\n" + fence
}

// escapeMarkdown returns s with a backslash before what Markdown may read.
func escapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>()#+-.!|~$&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
