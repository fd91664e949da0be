package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"example.com/drawbar/book/weave"
)

// weaveFiles writes the files of the chapters named, or of all.
func weaveFiles(book []weave.Chapter, args []string, stdout io.Writer) error {
	flags := flag.NewFlagSet("weave", flag.ContinueOnError)
	root := flags.String("root", ".", "")
	topics, err := parse(flags, args)
	if err != nil {
		return err
	}
	chosen := book
	if len(topics) > 0 {
		chosen = nil
		for _, topic := range topics {
			c, err := find(book, topic)
			if err != nil {
				return err
			}
			chosen = append(chosen, c)
		}
	}
	for _, c := range chosen {
		if err := writeChapter(c, *root, stdout); err != nil {
			return err
		}
	}
	return nil
}

// folder returns where the files of c are.
func folder(root string, c weave.Chapter) string { return filepath.Join(root, "book", c.Topic) }

// writeChapter writes the files of c that have changed, removes figures that
// c no longer has, and says so.
func writeChapter(c weave.Chapter, root string, stdout io.Writer) error {
	changes, err := compare(c, root)
	if err != nil {
		return err
	}
	for _, ch := range changes {
		if ch.gone {
			err = os.Remove(ch.path)
		} else {
			err = os.WriteFile(ch.path, ch.data, 0o644)
		}
		if err != nil {
			return err
		}
		if _, err = fmt.Fprintln(stdout, ch); err != nil {
			return err
		}
	}
	return nil
}

// A change is a file that is not as the chapter has it.
type change struct {
	path string
	data []byte
	gone bool // the chapter has no such figure
}

func (c change) String() string {
	if c.gone {
		return "removed " + c.path
	}
	return "wrote " + c.path
}

// compare weaves c and returns what is not so in its folder, which holds
// the Go files of the chapter.
func compare(c weave.Chapter, root string) ([]change, error) {
	dir := folder(root, c)
	if _, err := os.Stat(dir); err != nil {
		return nil, fmt.Errorf("no folder of the chapter here (see -root): %w", err)
	}
	woven, err := weave.Weave(c)
	if err != nil {
		return nil, err
	}
	var changes []change
	belongs := map[string]bool{}
	for _, f := range woven.Files() {
		path := filepath.Join(dir, f.Name)
		belongs[path] = true
		old, err := os.ReadFile(path)
		switch {
		case err != nil && !errors.Is(err, fs.ErrNotExist):
			return nil, err
		case err != nil || !bytes.Equal(old, f.Data):
			changes = append(changes, change{path: path, data: f.Data})
		}
	}
	figures, err := filepath.Glob(filepath.Join(dir, "*.svg"))
	if err != nil {
		return nil, err
	}
	for _, path := range figures {
		if !belongs[path] {
			changes = append(changes, change{path: path, gone: true})
		}
	}
	return changes, nil
}
