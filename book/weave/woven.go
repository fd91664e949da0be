package weave

import "example.com/drawbar/units/working"

// A Woven chapter has been run and can be rendered.
type Woven struct {
	chapter  Chapter
	elements []element
	part     string // what it is: "chapter", "example" or "exercise"
}

// A File is one that belongs into the folder of a chapter.
type File struct {
	Name string // without the folder
	Data []byte // its whole content
}

// Files returns README.md and then the figures in reading order.
func (w *Woven) Files() []File {
	files := []File{{Name: "README.md", Data: []byte(w.Markdown())}}
	walk(w.elements, func(e element) {
		if d, ok := e.(drawing); ok {
			files = append(files, File{Name: d.name + ".svg", Data: d.svg})
		}
	})
	return files
}

// closing returns what everything woven ends with: who decides in the end.
func (w *Woven) closing() []element {
	return []element{
		heading{level: 2, text: "Before you act on this " + w.part},
		box{"Caution", escape(working.DeferToCode) + "\n\n" + escape(working.DeferOnVerdict)},
	}
}

// answers returns the answers to all exercises under one heading, nothing if
// there is none.
func (w *Woven) answers() []element {
	var elements []element
	for _, q := range questions(w.elements) {
		if len(elements) == 0 {
			elements = append(elements, heading{level: 2, text: "Answers"})
		}
		elements = append(elements, heading{level: 3, text: "Answer to exercise " + q.number})
		elements = append(elements, q.answer...)
	}
	return elements
}
