package weave

import (
	"io/fs"

	"example.com/drawbar/book/figure"
)

// A Chapter answers one question that a person has.
type Chapter struct {
	Topic    string  // the folder under book/ and the name for show: lower case letters and digits
	Title    string  // plain text
	Question string  // that the chapter answers, in the words of a person; plain text
	Blocks   []Block // in reading order
	Source   fs.FS   // the chapter's Go files, from //go:embed *.go
}

// A Block is a part of a chapter: [Prose], [Formula], [Worked], [Numbers],
// [Figure], [Table], [Misconception], [Caution] or [Exercise].
type Block interface {
	block()
}

// Prose is Markdown text: paragraphs, lists, tables, code, emphasis and
// links. Its headings begin at level two (##); HTML and images are errors.
// {{example.value}} is replaced by a value of an answer in the chapter, or by
// an input of that example. Write \$ for a dollar sign, since $ begins math
// where the Markdown is read.
type Prose string

// A Formula states the math symbol by symbol.
type Formula struct {
	// Equations are in the formula language of package working, each
	// "symbol = expression" or a comparison.
	Equations []string
	// Where explains every symbol of the equations, in the order read.
	Where []Symbol
}

// A Symbol is one line of the list under a [Formula].
type Symbol struct {
	Name string // as in the equations, such as "ρ_20"
	Unit string // the quantity is divided by it in the equations; empty for a pure number
	What string // plain text
}

// Numbers computes values for the prose and prints nothing itself.
type Numbers struct {
	Name  string                        // unique in the chapter: lower case letters, digits, "_"
	Solve func(*Inputs) (Answer, error) // gives the values
}

// A Worked example asks a question, and answers it by a call to the library
// with inputs that a reader may change.
type Worked struct {
	Name     string                        // for show -example and for placeholders; lower case letters, digits, "_"
	Title    string                        // plain text
	Question string                        // Markdown; {{input}} is replaced by an input of this example
	Inputs   []Input                       // at least one
	Solve    func(*Inputs) (Answer, error) // a function declared in the chapter, whose source is printed
	Helpers  []string                      // names of functions of the chapter to print below it
}

// A Figure is a chart, written as book/<topic>/<name>.svg. One of Draw and
// Bars is given. Title and description of the chart are the alternative text.
type Figure struct {
	Name    string                       // of the file, unique in the chapter: lower case letters, digits, "_"
	Caption string                       // Markdown with placeholders, as in Prose
	Draw    func() (figure.Chart, error) // lines
	Bars    func() (figure.Bars, error)  // or bars
}

// A Table compares computed values with printed ones.
type Table struct {
	Title string                // plain text
	Rows  func() ([]Row, error) // at least one
}

// A Misconception is a wrong belief and the number that demolishes it.
type Misconception struct {
	Name  string                        // as for Numbers
	Claim string                        // as people say it, without quotation marks; plain text
	Solve func(*Inputs) (Answer, error) // its text must contain a value made by Show
}

// A Caution is a box about what can hurt somebody or cost money. Text is
// Markdown with placeholders, as in Prose, but without headings.
type Caution struct {
	Text string // what to heed
}

// An Exercise is a question whose computed answer is shown apart: at the end
// of the chapter, or on request.
type Exercise struct {
	Name     string                        // as for Worked
	Question string                        // Markdown; must mention every input as {{input}}
	Inputs   []Input                       // what is given; may be empty
	Solve    func(*Inputs) (Answer, error) // prints text and working, not code
}

func (Prose) block()         {}
func (Formula) block()       {}
func (Numbers) block()       {}
func (Worked) block()        {}
func (Figure) block()        {}
func (Table) block()         {}
func (Misconception) block() {}
func (Caution) block()       {}
func (Exercise) block()      {}
