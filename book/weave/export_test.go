package weave

import "example.com/drawbar/units/working"

// What the tests of layout reach for.
var (
	Wrap       = wrap
	Words      = words
	Dedent     = dedent
	Escape     = escape
	ProseHTML  = proseHTML
	ProseLines = proseLines
	CheckProse = checkProse
)

// GridLines sets a table of left columns.
func GridLines(header []string, rows [][]string, width int) []string {
	return gridLines(grid{header: header, right: make([]bool, len(header)), rows: rows}, width)
}

// MarkdownSheet returns s, folded.
func MarkdownSheet(s *working.Sheet) string { return markdownSheet(sheet{s}) }
