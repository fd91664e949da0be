// Package weave makes a chapter of the book from the code that computes it.
//
// A chapter is a Go package book/<topic> with a function Chapter, which
// returns a [Chapter]: a list of blocks. A [Worked] example names a solve
// function; the weaver runs it and prints the answer, the working, the
// comparison with print, and the source of the very function that ran.
// [Weave] runs everything once, and the [Woven] chapter is then rendered as
// Markdown, as text for a terminal, or as HTML.
//
// Working is folded in Markdown and HTML. Whatever is woven ends with the
// sentences on who decides, DeferToCode and DeferOnVerdict of package working.
//
// Nothing printed is typed by hand. Prose and questions carry placeholders,
// {{cable.drop}}, that are filled with values computed in the chapter. What
// is missing, empty or unused (a placeholder, a value, an input, a symbol of a
// formula, a solve function) is an [*Error] that names chapter, block and
// thing; nothing is left blank.
//
// The same chapter gives the same bytes each time.
package weave
