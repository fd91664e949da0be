package main

// What the tests of the command reach for.
var (
	Run          = run
	Chapters     = chapters
	WriteChapter = writeChapter
)

// Differences weaves c and returns what a weaving would write or remove.
var Differences = compare
