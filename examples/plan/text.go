package plan

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"example.com/drawbar/units/working"
)

// columns is how wide text may be.
const columns = 80

// Text returns the plan as plain text of at most 80 columns.
func (p Plan) Text() string {
	d := p.document()
	var b strings.Builder
	b.WriteString(d.title + "\n" + strings.Repeat("=", utf8.RuneCountInString(d.title)) + "\n\n")
	wrap(&b, "", "", d.lead)
	for _, s := range d.sections {
		b.WriteString("\n" + s.title + "\n" + strings.Repeat("-", utf8.RuneCountInString(s.title)) + "\n\n")
		for _, t := range s.text {
			wrap(&b, "", "", t)
		}
		if len(s.text) > 0 && len(s.rows)+len(s.items) > 0 {
			b.WriteByte('\n')
		}
		if len(s.rows) > 0 {
			table(&b, s.head, s.rows)
		}
		for i, it := range s.items {
			if i > 0 && len(it.more) > 0 {
				b.WriteByte('\n')
			}
			it.write(&b)
		}
	}
	return b.String()
}

// write appends the item.
func (i item) write(b *strings.Builder) {
	if i.mark != "" {
		wrap(b, "", "  ", i.mark+": "+i.text)
	} else {
		wrap(b, "- ", "  ", i.text)
	}
	for _, line := range i.more {
		wrap(b, "  ", "    ", line)
	}
}

// wrap appends text in lines of at most 80 columns.
func wrap(b *strings.Builder, first, rest, text string) {
	for _, line := range lines(text, columns-utf8.RuneCountInString(first), columns-utf8.RuneCountInString(rest)) {
		b.WriteString(first + line + "\n")
		first = rest
	}
}

// lines breaks text between words, the first line at one width and the
// others at another. A number stays with its unit.
func lines(text string, first, rest int) (list []string) {
	line, width := "", first
	for _, word := range working.Words(text) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width:
			list, line, width = append(list, line), word, rest
		default:
			line += " " + word
		}
	}
	return append(list, line)
}

// table appends rows in columns, the last of which may wrap.
func table(b *strings.Builder, head []string, rows [][]string) {
	all := rows
	if len(head) > 0 {
		all = append([][]string{head}, rows...)
	}
	widths := make([]int, len(all[0]))
	for _, row := range all {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	shrink(widths)
	for r, row := range all {
		writeRow(b, row, widths, rightAligned(rows))
		if r == 0 && len(head) > 0 {
			for i, w := range widths {
				b.WriteString(strings.Repeat("-", w))
				if i < len(widths)-1 {
					b.WriteString("  ")
				}
			}
			b.WriteByte('\n')
		}
	}
}

// shrink makes the widest columns narrower until the table fits.
func shrink(widths []int) {
	for {
		total, widest := 2*(len(widths)-1), 0
		for i, w := range widths {
			total += w
			if w > widths[widest] {
				widest = i
			}
		}
		if total <= columns {
			return
		}
		widths[widest]--
	}
}

// rightAligned says which columns hold numbers only.
func rightAligned(rows [][]string) []bool {
	right := make([]bool, len(rows[0]))
	for i := range right {
		right[i] = true
		for _, row := range rows {
			if row[i] != "-" && !startsWithDigit(row[i]) || strings.Contains(row[i], " ") && !strings.HasSuffix(row[i], " %") && !strings.HasSuffix(row[i], " A") {
				right[i] = false
			}
		}
	}
	return right
}

func startsWithDigit(s string) bool {
	s = strings.TrimPrefix(s, "-")
	return s != "" && '0' <= s[0] && s[0] <= '9'
}

// writeRow appends a row, its cells wrapped to their widths.
func writeRow(b *strings.Builder, row []string, widths []int, right []bool) {
	cells, height := make([][]string, len(row)), 0
	for i, cell := range row {
		cells[i] = lines(cell, widths[i], widths[i])
		height = max(height, len(cells[i]))
	}
	for h := range height {
		var line bytes.Buffer
		for i := range row {
			cell := ""
			if h < len(cells[i]) {
				cell = cells[i][h]
			}
			pad := strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell)))
			if right[i] {
				cell = pad + cell
			} else {
				cell += pad
			}
			if i > 0 {
				line.WriteString("  ")
			}
			line.WriteString(cell)
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}
