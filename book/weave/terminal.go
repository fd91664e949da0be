package weave

import (
	"slices"
	"strings"
)

// Text returns the chapter for a terminal of 80 columns.
func (w *Woven) Text() string {
	parts := textParts(slices.Concat(w.elements, w.answers(), w.closing()))
	var b strings.Builder
	for i, lines := range parts {
		if i > 0 {
			b.WriteString("\n")
		}
		for _, line := range lines {
			b.WriteString(line + "\n")
		}
	}
	return b.String()
}

// Contents returns topic and question of every chapter for a terminal of 80
// columns.
func Contents(book []Chapter) string {
	widest := 0
	for _, c := range book {
		widest = max(widest, columns(c.Topic))
	}
	rest := strings.Repeat(" ", widest+columnGap)
	var b strings.Builder
	for _, c := range book {
		first := c.Topic + rest[columns(c.Topic):]
		for _, line := range prefixed(first, rest, wrap(c.Question, terminalWidth-len(rest))) {
			b.WriteString(line + "\n")
		}
	}
	return b.String()
}

// textParts returns the lines of each element.
func textParts(elements []element) [][]string {
	var parts [][]string
	for _, e := range elements {
		switch e := e.(type) {
		case section:
			parts = append(parts, textParts(e.elements)...)
		case question:
			parts = append(parts, textParts(e.elements)...)
		default:
			parts = append(parts, textPart(e))
		}
	}
	return parts
}

func textPart(e element) []string {
	switch e := e.(type) {
	case heading:
		return headingLines(e.text, e.level, terminalWidth)
	case prose:
		return proseLines(e.text, terminalWidth)
	case mathBlock:
		return textMath(e)
	case grid:
		lines := gridLines(e, terminalWidth)
		if e.caption != "" {
			lines = append(append(wrap(e.caption, terminalWidth), ""), lines...)
		}
		return lines
	case code:
		return prefixed("    ", "    ", strings.Split(e.text, "\n"))
	case sheet:
		return strings.Split(strings.TrimRight(e.Text(), "\n"), "\n")
	case box:
		return textBox(e)
	case drawing:
		lines := proseLines("*Figure:* "+e.caption, terminalWidth)
		return append(lines, wrap("("+e.folder+"/"+e.name+".svg) "+e.alt, terminalWidth)...)
	}
	return nil
}

func textMath(m mathBlock) []string {
	var lines []string
	for _, f := range m.equations {
		lines = append(lines, "    "+f.Text())
	}
	lines = append(lines, "", "where")
	widest := 0
	for _, l := range m.where {
		widest = max(widest, columns(l.symbol.Text()))
	}
	for _, l := range m.where {
		symbol := l.symbol.Text()
		first := "    " + symbol + strings.Repeat(" ", widest-columns(symbol)+columnGap)
		rest := strings.Repeat(" ", columns(first))
		lines = append(lines, prefixed(first, rest, wrap(l.text, terminalWidth-columns(first)))...)
	}
	return lines
}

// textBox returns e in a frame that is open on the right.
func textBox(e box) []string {
	top := "+-- " + e.word + " "
	lines := []string{top + strings.Repeat("-", terminalWidth-columns(top))}
	lines = append(lines, prefixed("| ", "| ", proseLines(e.text, terminalWidth-2))...)
	return append(lines, "+"+strings.Repeat("-", terminalWidth-1))
}
