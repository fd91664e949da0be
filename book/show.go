package main

import (
	"errors"
	"flag"
	"io"
	"slices"
	"strings"

	"example.com/drawbar/book/weave"
)

// settings are the -set flags.
type settings []weave.Setting

func (s *settings) String() string { return "" }

// Set implements [flag.Value].
func (s *settings) Set(text string) error {
	name, value, ok := strings.Cut(text, "=")
	if !ok || name == "" {
		return errors.New("want <input>=<value>")
	}
	*s = append(*s, weave.Setting{Input: name, Value: value})
	return nil
}

// show prints a chapter, or one example or exercise of it.
func show(book []weave.Chapter, args []string, stdout io.Writer) error {
	flags := flag.NewFlagSet("show", flag.ContinueOnError)
	example := flags.String("example", "", "")
	format := flags.String("format", "text", "")
	var set settings
	flags.Var(&set, "set", "")
	topics, err := parse(flags, args)
	if err != nil {
		return err
	}
	if len(topics) != 1 {
		return misuse("show: %d topics, want one", len(topics))
	}
	chapter, err := find(book, topics[0])
	if err != nil {
		return err
	}
	if len(set) > 0 && *example == "" {
		return misuse("show: -set needs -example; there are %s", strings.Join(examples(chapter), ", "))
	}
	woven, err := work(chapter, *example, set)
	if err != nil {
		return err
	}
	text, err := render(woven, *format)
	if err != nil {
		return err
	}
	_, err = io.WriteString(stdout, text)
	return err
}

// work weaves the chapter, or one example or exercise of it.
func work(c weave.Chapter, example string, set settings) (*weave.Woven, error) {
	if example == "" {
		return weave.Weave(c)
	}
	woven, err := weave.WeaveExample(c, example, set)
	if isAsked(err, example, set) {
		err = &usageError{err}
	}
	return woven, err
}

// isAsked reports whether err is about what the reader asked for, be it that
// it has no answer, and not about the chapter.
func isAsked(err error, example string, set settings) bool {
	changes := func(name string) bool {
		return slices.ContainsFunc(set, func(s weave.Setting) bool { return s.Input == name })
	}
	if _, ok := errors.AsType[*weave.NoAnswerError](err); ok {
		return true
	}
	if refused, ok := errors.AsType[*weave.InputError](err); ok {
		return changes(refused.Input)
	}
	unknown, ok := errors.AsType[*weave.UnknownError](err)
	return ok && (unknown.Kind == "example" && unknown.Name == example || unknown.Kind == "input" && changes(unknown.Name))
}

func render(w *weave.Woven, format string) (string, error) {
	switch format {
	case "text":
		return w.Text(), nil
	case "markdown":
		return w.Markdown(), nil
	case "html":
		return w.HTML(), nil
	}
	return "", misuse("show: -format %q, want text, markdown or html", format)
}

// examples returns the names of the worked examples and exercises of c.
func examples(c weave.Chapter) []string {
	var names []string
	for _, b := range c.Blocks {
		switch b := b.(type) {
		case weave.Worked:
			names = append(names, b.Name)
		case weave.Exercise:
			names = append(names, b.Name)
		}
	}
	return names
}
