package weave

import (
	"strings"
	"unicode/utf8"
)

// terminalWidth is how many columns a terminal has.
const terminalWidth = 80

// columns returns how many columns s takes.
func columns(s string) int { return utf8.RuneCountInString(s) }

// wrap returns the words of s in lines of at most width columns; a newline in
// s is kept. A word that is wider stands alone. A number and its unit are one
// word, and so are those that a no-break space joins; it is shown as a plain
// one.
func wrap(s string, width int) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(s, "\n") {
		line := ""
		for _, word := range words(paragraph) {
			word = broken(word)
			switch {
			case line == "":
				line = word
			case columns(line)+1+columns(word) <= width:
				line += " " + word
			default:
				lines = append(lines, line)
				line = word
			}
		}
		lines = append(lines, line)
	}
	return lines
}

// prefixed puts first before the first of lines and rest before the others;
// blank lines get no space at their end.
func prefixed(first, rest string, lines []string) []string {
	out := make([]string, len(lines))
	for i, line := range lines {
		prefix := rest
		if i == 0 {
			prefix = first
		}
		out[i] = strings.TrimRight(prefix+line, " ")
	}
	return out
}

// headingLines returns a heading with a rule below that tells its level; the
// title of the chapter has one above too.
func headingLines(title string, level, width int) []string {
	const rules = " =-~....."
	lines := wrap(title, width)
	widest := 0
	for _, line := range lines {
		widest = max(widest, columns(line))
	}
	rule := strings.Repeat(rules[level:level+1], widest)
	lines = append(lines, rule)
	if level == 1 {
		lines = append([]string{rule}, lines...)
	}
	return lines
}

// A grid is a table of plain text.
type grid struct {
	caption string // may be empty
	header  []string
	right   []bool // which columns are set flush right
	rows    [][]string
}

const columnGap = 2

// gridLines returns g in at most width columns, cells wrapped where they must.
func gridLines(g grid, width int) []string {
	widths := g.widths(width)
	lines := g.rowLines(g.header, widths)
	var rule []string
	for _, w := range widths {
		rule = append(rule, strings.Repeat("-", w))
	}
	lines = append(lines, strings.Join(rule, strings.Repeat(" ", columnGap)))
	for _, row := range g.rows {
		lines = append(lines, g.rowLines(row, widths)...)
	}
	return lines
}

// widths returns the width of each column: the widest cell, or less for the
// widest columns where there is not the room, but no less than a word.
func (g grid) widths(room int) []int {
	widths := make([]int, len(g.header))
	least := make([]int, len(g.header))
	for _, row := range append([][]string{g.header}, g.rows...) {
		for i, cell := range row {
			widths[i] = max(widths[i], columns(cell))
			for _, word := range words(cell) {
				least[i] = max(least[i], columns(word))
			}
		}
	}
	room -= columnGap * (len(widths) - 1)
	for _, w := range widths {
		room -= w
	}
	for ; room < 0; room++ {
		widest := -1 // of those that can give way
		for i, w := range widths {
			if w > least[i] && (widest < 0 || w > widths[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		widths[widest]--
	}
	return widths
}

// rowLines returns one row, which is as high as its highest cell.
func (g grid) rowLines(row []string, widths []int) []string {
	cells := make([][]string, len(row))
	height := 0
	for i, cell := range row {
		cells[i] = wrap(cell, widths[i])
		height = max(height, len(cells[i]))
	}
	lines := make([]string, height)
	for h := range height {
		var b strings.Builder
		for i := range cells {
			text := ""
			if h < len(cells[i]) {
				text = cells[i][h]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-columns(text)))
			if i > 0 {
				b.WriteString(strings.Repeat(" ", columnGap))
			}
			if g.right[i] {
				b.WriteString(pad + text)
			} else {
				b.WriteString(text + pad)
			}
		}
		lines[h] = strings.TrimRight(b.String(), " ")
	}
	return lines
}
