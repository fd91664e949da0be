package weave

import (
	"bufio"
	stdhtml "html"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer/html"
)

// proseLines returns the Markdown s as lines of plain text.
func proseLines(s string, width int) []string {
	return blockLines(parseProse(s), []byte(s), width)
}

// blockLines returns the blocks inside n, a blank line between any two.
func blockLines(n ast.Node, source []byte, width int) []string {
	tight := false
	if item, ok := n.(*ast.ListItem); ok {
		tight = item.Parent().(*ast.List).IsTight
	}
	var lines []string
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		if len(lines) > 0 && !tight {
			lines = append(lines, "")
		}
		lines = append(lines, oneBlock(c, source, width)...)
	}
	return lines
}

func oneBlock(n ast.Node, source []byte, width int) []string {
	switch n := n.(type) {
	case *ast.Heading:
		return headingLines(plainInline(n, source), n.Level, width)
	case *ast.List:
		return listLines(n, source, width)
	case *ast.Blockquote:
		return prefixed("| ", "| ", blockLines(n, source, width-2))
	case *ast.FencedCodeBlock, *ast.CodeBlock:
		code := strings.TrimRight(codeText(n, source), "\n")
		return prefixed("    ", "    ", strings.Split(code, "\n"))
	case *ast.ThematicBreak:
		return []string{"* * *"}
	case *extast.Table:
		return gridLines(readGrid(n, source), width)
	}
	return wrap(plainInline(n, source), width)
}

func listLines(list *ast.List, source []byte, width int) []string {
	var lines []string
	number := list.Start
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		mark := "- "
		if list.IsOrdered() {
			mark = strconv.Itoa(number) + ". "
			number++
		}
		if len(lines) > 0 && !list.IsTight {
			lines = append(lines, "")
		}
		lines = append(lines, prefixed(mark, strings.Repeat(" ", len(mark)),
			blockLines(item, source, width-len(mark)))...)
	}
	return lines
}

// readGrid returns a table of prose.
func readGrid(table *extast.Table, source []byte) grid {
	var g grid
	for _, a := range table.Alignments {
		g.right = append(g.right, a == extast.AlignRight)
	}
	for row := table.FirstChild(); row != nil; row = row.NextSibling() {
		var cells []string
		for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
			cells = append(cells, plainInline(cell, source))
		}
		if row.Kind() == extast.KindTableHeader {
			g.header = cells
		} else {
			g.rows = append(g.rows, cells)
		}
	}
	return g
}

// plainInline returns what stands inside n. Emphasis of either kind is put
// between asterisks and code between back quotes; a hard break is a newline.
func plainInline(n ast.Node, source []byte) string {
	var b strings.Builder
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			b.WriteString(plainText(c, source))
		case *ast.Emphasis:
			b.WriteString("*" + plainInline(c, source) + "*")
		case *ast.CodeSpan:
			b.WriteString("`" + plainInline(c, source) + "`")
		case *ast.AutoLink:
			b.WriteString("<" + string(c.Label(source)) + ">")
		case *ast.Link:
			b.WriteString(plainInline(c, source))
			if to := string(c.Destination); !strings.HasPrefix(to, "#") {
				b.WriteString(" <" + to + ">")
			}
		}
	}
	return b.String()
}

// plainText returns t with its escapes and entities resolved.
func plainText(t *ast.Text, source []byte) string {
	s := string(t.Value(source))
	if !t.IsRaw() && t.Parent().Kind() != ast.KindCodeSpan {
		// What HTML would show is by definition what is meant.
		var b strings.Builder
		w := bufio.NewWriter(&b)
		html.DefaultWriter.Write(w, []byte(s))
		_ = w.Flush() // a strings.Builder takes everything
		s = stdhtml.UnescapeString(b.String())
	}
	switch {
	case t.HardLineBreak():
		s += "\n"
	case t.SoftLineBreak():
		s += " "
	}
	return s
}
