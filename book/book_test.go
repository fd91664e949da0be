package main_test

import (
	"io"
	"os"
	"path/filepath"
	"slices"
	"testing"

	book "example.com/drawbar/book"
	"example.com/drawbar/units/unitstest"
)

// The committed README.md and figures of every chapter are what a weaving
// gives now. DRAWBAR_UPDATE=1 rewrites them.
func TestWovenFilesAreCurrent(t *testing.T) {
	root := unitstest.Root(t)
	for _, c := range book.Chapters() {
		if os.Getenv("DRAWBAR_UPDATE") == "1" {
			if err := book.WriteChapter(c, root, io.Discard); err != nil {
				t.Error(err)
			}
		}
		changes, err := book.Differences(c, root)
		if err != nil {
			t.Error(err)
		}
		for _, ch := range changes {
			t.Errorf("%s is not as woven; weaving it: %v", c.Topic, ch)
		}
	}
}

// Every folder beside the weaver and the figures is a chapter of the book.
func TestEveryChapterIsListed(t *testing.T) {
	var listed []string
	for _, c := range book.Chapters() {
		listed = append(listed, c.Topic)
	}
	entries, err := os.ReadDir(filepath.Join(unitstest.Root(t), "book"))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		name := e.Name()
		if e.IsDir() && name != "weave" && name != "figure" && !slices.Contains(listed, name) {
			t.Errorf("book/%s is not in chapters.go", name)
		}
	}
	slices.Sort(listed)
	if len(slices.Compact(listed)) != len(book.Chapters()) {
		t.Errorf("a topic is listed twice: %q", listed)
	}
}
