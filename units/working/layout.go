package working

import "strings"

// width is how many columns plain text has.
const width = 80

// wrap returns text in lines of at most width columns, broken between words as
// [Words] has them. The first begins with first, the others with as many
// spaces.
func wrap(first, text string) []string {
	indent := strings.Repeat(" ", Columns(first))
	room := max(width-Columns(first), 1)
	var lines []string
	line := ""
	for _, word := range Words(text) {
		if line != "" && Columns(line)+1+Columns(word) <= room {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		cut := chop(word, room)
		lines = append(lines, cut[:len(cut)-1]...)
		line = cut[len(cut)-1]
	}
	lines = append(lines, line)
	for i := range lines {
		if i > 0 {
			first = indent
		}
		lines[i] = strings.TrimRight(first+lines[i], " ")
	}
	return lines
}

// chop returns s in parts of at most room columns, broken at a space where
// there is one.
func chop(s string, room int) []string {
	var parts []string
	for Columns(s) > room {
		head, rest := Cut(s, room)
		switch at := strings.LastIndexByte(head, ' '); {
		case strings.HasPrefix(rest, " "):
			rest = rest[1:]
		case at > 0 && rest != "":
			head, rest = head[:at], s[at+1:]
		}
		if rest == "" {
			break
		}
		parts, s = append(parts, head), rest
	}
	return append(parts, s)
}

// wrapPieces returns a formula in lines of at most width columns, broken at
// the outermost operator that a line reaches. The first begins with first,
// the others with as many spaces.
func wrapPieces(first string, p []piece) []string {
	indent := strings.Repeat(" ", Columns(first))
	room := width - Columns(first)
	var lines []string
	for len(p) > 0 {
		n := outermost(p, fitting(p, room))
		for _, part := range chop(joined(p[:n]), room) {
			lines = append(lines, first+part)
			first = indent
		}
		p = p[n:]
	}
	return lines
}

// fitting returns how many pieces of p fit in room columns, at least one.
func fitting(p []piece, room int) int {
	used := Columns(p[0].text)
	for n := 1; n < len(p); n++ {
		if used += 1 + Columns(p[n].text); used > room {
			return n
		}
	}
	return len(p)
}

// outermost returns after how many of the first n pieces of p to break: all
// if they are the rest, else in front of the outermost joint, the last of
// several.
func outermost(p []piece, n int) int {
	if n == len(p) {
		return n
	}
	best := n
	for i := n - 1; i > 0; i-- {
		if p[i].depth < p[best].depth {
			best = i
		}
	}
	return best
}
