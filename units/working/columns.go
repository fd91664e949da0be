package working

import (
	"unicode"
	"unicode/utf8"
)

// wide are the characters that take two columns of a terminal: blocks whose
// East Asian width is wide, by Unicode Standard Annex 11, whole and from
// memory. A character of one column that is taken for wide costs a column, and
// nothing else.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115f, Stride: 1}, // Hangul Jamo
		{Lo: 0x2e80, Hi: 0xa4cf, Stride: 1}, // CJK radicals to Yi
		{Lo: 0xac00, Hi: 0xd7a3, Stride: 1}, // Hangul syllables
		{Lo: 0xf900, Hi: 0xfaff, Stride: 1}, // CJK compatibility
		{Lo: 0xfe30, Hi: 0xfe6f, Stride: 1}, // CJK compatibility and small forms
		{Lo: 0xff00, Hi: 0xff60, Stride: 1}, // full-width forms
		{Lo: 0xffe0, Hi: 0xffe6, Stride: 1}, // full-width signs
	},
	R32: []unicode.Range32{
		{Lo: 0x1f300, Hi: 0x1f64f, Stride: 1}, // pictographs, faces
		{Lo: 0x1f680, Hi: 0x1f6ff, Stride: 1}, // transport
		{Lo: 0x1f900, Hi: 0x1f9ff, Stride: 1}, // more pictographs
		{Lo: 0x20000, Hi: 0x3fffd, Stride: 1}, // CJK extensions
	},
}

// Columns returns how many columns of a terminal s takes: none for a mark on
// the letter before it, two for the characters of East Asian scripts and for
// pictographs, one for others.
func Columns(s string) (n int) {
	for _, r := range s {
		n += columnsOf(r)
	}
	return n
}

func columnsOf(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}

// Cut returns the part of s that takes no more than so many columns, but its
// first character at least, and the rest of it.
func Cut(s string, columns int) (head, rest string) {
	end, used := 0, 0
	for i, r := range s {
		if used += columnsOf(r); used > columns && i > 0 {
			break
		}
		_, size := utf8.DecodeRuneInString(s[i:])
		end = i + size
	}
	return s[:end], s[end:]
}
