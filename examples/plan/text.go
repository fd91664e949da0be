package plan

import (
	"bytes"
	"strings"

	"example.com/drawbar/units/working"
)

// columns is how wide text may be.
const columns = 80

// Text returns the plan as plain text of at most 80 columns.
func (p Plan) Text() string {
	d := p.document()
	var b strings.Builder
	heading(&b, d.title, "=")
	for _, t := range d.lead {
		wrap(&b, "", "", t)
	}
	for _, s := range d.sections {
		s.write(&b)
	}
	return b.String()
}

// heading appends a title, underlined.
func heading(b *strings.Builder, title, line string) {
	widest := 0
	for _, l := range lines(title, columns, columns) {
		b.WriteString(l + "\n")
		widest = max(widest, working.Columns(l))
	}
	b.WriteString(strings.Repeat(line, widest) + "\n\n")
}

// write appends the section.
func (s section) write(b *strings.Builder) {
	b.WriteByte('\n')
	heading(b, s.title, "-")
	for _, t := range s.text {
		wrap(b, "", "", t)
	}
	if len(s.text) > 0 && len(s.rows)+len(s.items) > 0 {
		b.WriteByte('\n')
	}
	if len(s.rows) > 0 {
		table(b, s.head, s.rows)
	}
	for i, it := range s.items {
		if i > 0 && len(it.more) > 0 {
			b.WriteByte('\n')
		}
		it.write(b)
	}
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
	for _, line := range lines(text, columns-working.Columns(first), columns-working.Columns(rest)) {
		b.WriteString(strings.TrimRight(first+line, " ") + "\n")
		first = rest
	}
}

// lines breaks text between words, the first line at one width and the
// others at another. A number stays with its unit, and a word that is wider
// than its line is cut.
func lines(text string, first, rest int) (list []string) {
	line, room := "", first
	for _, word := range working.Words(text) {
		if line != "" && working.Columns(line)+1+working.Columns(word) <= room {
			line += " " + word
			continue
		}
		if line != "" {
			list, line, room = append(list, line), "", rest
		}
		for working.Columns(word) > room {
			head, tail := working.Cut(word, room)
			if tail == "" {
				break
			}
			list, word, room = append(list, head), tail, rest
		}
		line = word
	}
	return append(list, line)
}

// table appends rows in columns, the last of which may wrap.
func table(b *strings.Builder, head []string, rows []row) {
	var all, body [][]string
	if len(head) > 0 {
		all = append(all, head)
	}
	for _, r := range rows {
		all, body = append(all, r.cells), append(body, r.cells)
	}
	widths := make([]int, len(all[0]))
	for _, row := range all {
		for i, cell := range row {
			widths[i] = max(widths[i], working.Columns(cell))
		}
	}
	shrink(widths)
	for r, row := range all {
		writeRow(b, row, widths, rightAligned(body))
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
			pad := strings.Repeat(" ", max(0, widths[i]-working.Columns(cell)))
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
