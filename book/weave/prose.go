package weave

import (
	"errors"
	"fmt"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/text"
)

// markdown returns the reader of prose: CommonMark and tables, written as
// HTML that an XML parser reads too.
func markdown() goldmark.Markdown {
	return goldmark.New(
		goldmark.WithExtensions(extension.NewTable(
			extension.WithTableCellAlignMethod(extension.TableCellAlignStyle))),
		goldmark.WithRendererOptions(html.WithXHTML()),
	)
}

// parseProse returns the tree of s.
func parseProse(s string) ast.Node {
	return markdown().Parser().Parse(text.NewReader([]byte(s)))
}

// proseHTML returns s as HTML.
func proseHTML(s string) string {
	var b strings.Builder
	// A strings.Builder takes everything.
	_ = markdown().Convert([]byte(s), &b)
	return b.String()
}

// dedent removes space around s, and the tabs that its lines after the first
// have in common, so that prose may be indented as code is.
func dedent(s string) string {
	s = strings.TrimSpace(s)
	lines := strings.Split(s, "\n")
	tabs := -1
	for _, line := range lines[1:] {
		if strings.TrimSpace(line) == "" {
			continue
		}
		n := len(line) - len(strings.TrimLeft(line, "\t"))
		if tabs < 0 || n < tabs {
			tabs = n
		}
	}
	for i, line := range lines[1:] {
		lines[1+i] = strings.TrimRight(line[min(max(tabs, 0), len(line)):], " \t")
	}
	return strings.Join(lines, "\n")
}

// checkProse reports what the renderers do not show alike. Headings continue
// from *level, which is updated; nil allows none.
func checkProse(s string, level *int) error {
	if strings.TrimSpace(s) == "" {
		return errors.New("the text is empty")
	}
	source := []byte(s)
	return ast.Walk(parseProse(s), func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		return ast.WalkContinue, checkNode(n, source, level)
	})
}

func checkNode(n ast.Node, source []byte, level *int) error {
	switch n := n.(type) {
	case *ast.Heading:
		title := plainInline(n, source)
		switch {
		case level == nil:
			return fmt.Errorf("heading %q, want none here", title)
		case n.Level < 2 || n.Level > *level+1:
			return fmt.Errorf("heading %q has level %d, want 2 to %d", title, n.Level, *level+1)
		}
		*level = n.Level
	case *ast.HTMLBlock, *ast.RawHTML:
		return errors.New("HTML in prose")
	case *ast.Image:
		return errors.New("an image in prose; want a Figure")
	case *ast.FencedCodeBlock, *ast.CodeBlock:
		return checkCode(codeText(n, source))
	case *ast.Text:
		if !n.IsRaw() && hasDollar(n.Value(source)) {
			return errors.New(`"$" begins math in Markdown; write \$`)
		}
	}
	return nil
}

// hasDollar reports whether text has a dollar sign that is not escaped.
func hasDollar(text []byte) bool {
	for i := 0; i < len(text); i++ {
		switch text[i] {
		case '\\':
			i++
		case '$':
			return true
		}
	}
	return false
}

// checkCode reports a line that is too wide for print.
func checkCode(text string) error {
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		if n := columns(line); n > widestCode {
			return fmt.Errorf("a line of code has %d columns, want at most %d: %s",
				n, widestCode, strings.TrimSpace(line))
		}
	}
	return nil
}

// codeText returns the lines of a code block, tabs expanded.
func codeText(n ast.Node, source []byte) string {
	return expandTabs(string(n.Lines().Value(source)))
}

func expandTabs(s string) string {
	return strings.ReplaceAll(s, "\t", strings.Repeat(" ", tabWidth))
}
