package figure

import (
	"strings"
	"unicode"
)

// fonts are those of the reader's system, the likeliest first.
const fonts = "system-ui, -apple-system, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif"

// advances are the widths of ' ' to '~' in thousandths of the font size.
// The font that will be used is not known. These are of DejaVu Sans 2.37,
// wider than most, measured at size 1000: room enough for the others.
var advances = [...]int{
	318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, // space to /
	636, 636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, // 0 to ?
	1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787, // @ to O
	603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, // P to _
	500, 613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, // ` to o
	635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838, // p to ~
}

// thinSpace parts the digits of long numbers.
const thinSpace = '\u2009'

// advance returns about how wide r is in thousandths of the font size.
func advance(r rune) int {
	const (
		unknown = 1100 // wider than nearly all letters
		picture = 1300 // wider than emoji are
	)
	switch i := int(r) - ' '; {
	case 0 <= i && i < len(advances):
		return advances[i]
	case unicode.Is(unicode.Mn, r):
		return 0
	case r == thinSpace:
		return 200
	case strings.ContainsRune("°²³·’", r):
		return 500 // the widest of them, °
	case strings.ContainsRune("µΩΔρ×−–", r):
		return 838 // the widest of them, × and −
	case r >= 0x1F000:
		return picture
	}
	return unknown
}

// textWidth returns about how wide a text is at a font size, on the page.
func textWidth(text string, size int) int {
	w := 0
	for _, r := range text {
		w += advance(r)
	}
	return w*size*px/1000 + 1
}

// wrapTitle returns the title in the lines it is drawn in, which are bold and
// as wide as the page: one or two, or none if it has no room.
func wrapTitle(title string) []string {
	const (
		bold = 20 // per cent wider than plain
		most = (pageWidth - 2*margin) * 100 / (100 + bold)
	)
	var lines []string
	for _, word := range strings.Fields(title) {
		if last := len(lines) - 1; last >= 0 && textWidth(lines[last]+" "+word, titleSize) <= most {
			lines[last] += " " + word
			continue
		}
		if textWidth(word, titleSize) > most || len(lines) == 2 {
			return nil
		}
		lines = append(lines, word)
	}
	return lines
}
