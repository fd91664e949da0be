package weave

import (
	_ "embed"
	stdhtml "html"
	"strings"
)

// pageStyle is the style sheet of a page.
//
//go:embed page.css
var pageStyle string

// HTML returns the chapter as a page that needs no other file.
func (w *Woven) HTML() string {
	return "<!DOCTYPE html>\n" +
		`<html lang="en-GB" xmlns="http://www.w3.org/1999/xhtml">` + "\n<head>\n" +
		`<meta charset="utf-8"/>` + "\n" +
		`<meta name="viewport" content="width=device-width, initial-scale=1"/>` + "\n" +
		tag("title", w.chapter.Title) + "\n" +
		"<style>\n" + pageStyle + "</style>\n</head>\n<body>\n<main>\n" +
		w.Fragment() +
		"</main>\n</body>\n</html>\n"
}

// Fragment returns the chapter as an HTML article, without the page around
// it and its style.
func (w *Woven) Fragment() string {
	return "<article>\n" + htmlParts(w.elements) + htmlParts(w.closing()) + "</article>\n"
}

// tag returns text, escaped, in an element.
func tag(name, text string) string {
	return "<" + name + ">" + stdhtml.EscapeString(text) + "</" + name + ">"
}

// htmlParts returns the elements, each with a newline at its end.
func htmlParts(elements []element) string {
	var b strings.Builder
	for _, e := range elements {
		b.WriteString(strings.TrimRight(htmlPart(e), "\n") + "\n")
	}
	return b.String()
}

func htmlPart(e element) string {
	switch e := e.(type) {
	case heading:
		return htmlHeading(e)
	case prose:
		return proseHTML(e.text)
	case mathBlock:
		return htmlMath(e)
	case grid:
		return htmlGrid(e)
	case code:
		return "<pre><code>" + stdhtml.EscapeString(e.text) + "</code></pre>"
	case sheet:
		return "<details>\n" + tag("summary", e.label()) + "\n" + e.HTML() + "</details>"
	case box:
		return `<aside class="` + strings.ToLower(e.word) + `">` + "\n" +
			proseHTML("**"+e.word+".** "+e.text) + "</aside>"
	case drawing:
		return "<figure>\n" + strings.TrimSpace(string(e.svg)) + "\n<figcaption>\n" +
			proseHTML(e.caption) + "</figcaption>\n</figure>"
	case section:
		return `<section class="` + e.kind + `">` + "\n" + htmlParts(e.elements) + "</section>"
	case question:
		return `<section class="exercise">` + "\n" + htmlParts(e.elements) +
			"<details>\n<summary>Answer</summary>\n" + htmlParts(e.answer) + "</details>\n</section>"
	}
	return ""
}

func htmlHeading(h heading) string {
	name := "h" + string(rune('0'+h.level))
	id := ""
	if h.id != "" {
		id = ` id="` + h.id + `"`
	}
	return "<" + name + id + ">" + stdhtml.EscapeString(h.text) + "</" + name + ">"
}

func htmlMath(m mathBlock) string {
	var b strings.Builder
	b.WriteString(`<div class="equations">` + "\n")
	for _, f := range m.equations {
		b.WriteString(f.MathML() + "\n")
	}
	b.WriteString("</div>\n<p>where</p>\n<dl>\n")
	for _, l := range m.where {
		// In a line of text.
		symbol := strings.Replace(l.symbol.MathML(), ` display="block"`, "", 1)
		b.WriteString("<dt>" + symbol + "</dt>" + tag("dd", l.text) + "\n")
	}
	return b.String() + "</dl>"
}

func htmlGrid(g grid) string {
	var b strings.Builder
	b.WriteString("<table>\n")
	if g.caption != "" {
		b.WriteString(tag("caption", g.caption) + "\n")
	}
	row := func(name, scope string, cells []string) {
		b.WriteString("<tr>")
		for i, c := range cells {
			class := ""
			if g.right[i] {
				class = ` class="number"`
			}
			b.WriteString("<" + name + scope + class + ">" + stdhtml.EscapeString(c) + "</" + name + ">")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("<thead>\n")
	row("th", ` scope="col"`, g.header)
	b.WriteString("</thead>\n<tbody>\n")
	for _, r := range g.rows {
		row("td", "", r)
	}
	return b.String() + "</tbody>\n</table>"
}
