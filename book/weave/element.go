package weave

import (
	"strings"

	"example.com/drawbar/units/working"
)

// An element is what the renderers know: blocks are turned into elements by a
// weaver, which runs and checks everything.
type element interface {
	element()
}

// A heading is plain text.
type heading struct {
	level int // 1 to 3
	text  string
	id    string // for links in HTML; may be empty
}

// A prose is Markdown, filled and checked.
type prose struct{ text string }

// A code is source text without a newline at its end.
type code struct{ language, text string }

// A sheet is the working of a result, folded where that can be.
type sheet struct{ *working.Sheet }

// label returns what a folded sheet shows.
func (s sheet) label() string {
	if title := strings.Join(strings.Fields(s.Title()), " "); title != "" {
		return "Working: " + title
	}
	return "Working"
}

// A box is a warning, with a word such as "Danger"; the text is Markdown.
type box struct{ word, text string }

// A drawing is a figure that has been drawn.
type drawing struct {
	name    string // of the file, without .svg
	folder  string // of the chapter, for who reads elsewhere
	alt     string // plain text
	caption string // Markdown
	svg     []byte
}

// A section keeps together what belongs to one example or misconception.
type section struct {
	kind     string // "example" or "misconception"
	elements []element
}

// A question is an exercise; its answer is shown apart.
type question struct {
	number           string
	elements, answer []element
}

func (heading) element()   {}
func (prose) element()     {}
func (mathBlock) element() {}
func (grid) element()      {}
func (code) element()      {}
func (sheet) element()     {}
func (box) element()       {}
func (drawing) element()   {}
func (section) element()   {}
func (question) element()  {}

// walk calls do for every element, those inside sections and questions too.
func walk(elements []element, do func(element)) {
	for _, e := range elements {
		do(e)
		switch e := e.(type) {
		case section:
			walk(e.elements, do)
		case question:
			walk(e.elements, do)
			walk(e.answer, do)
		}
	}
}

// questions returns all questions in elements, in order.
func questions(elements []element) []question {
	var all []question
	walk(elements, func(e element) {
		if q, ok := e.(question); ok {
			all = append(all, q)
		}
	})
	return all
}
