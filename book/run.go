package main

import (
	"errors"
	"flag"
	"fmt"
	"io"

	"example.com/drawbar/book/weave"
)

const usage = `The book of worked examples, each worked live by the library.

    go run ./book                          list the chapters
    go run ./book show <topic>             print a chapter for the terminal
    go run ./book weave [<topic>...]       write README.md and figures of all
                                           chapters, or of those named, into
                                           book/<topic>

show takes these flags, before or after the topic:

    -example <name>      only that worked example or exercise
    -set <input>=<value> with another input, such as -set current=30A, within
                         its sensible range; again for further inputs. It goes
                         with -example; the names are in the table of what
                         is given.
    -format <format>     text (the default), markdown or html

weave takes -root <folder>, the root of the repository, if that is not the
current one.

Exit status: 0 done; 1 a chapter cannot be woven or a file not written;
2 an unknown topic, example, input or flag, a value that cannot be read or is
out of range, or inputs that together have no answer.
`

// Exit statuses.
const (
	done    = 0
	failed  = 1
	misused = 2
)

// A usageError is a command that asks for what does not exist or is refused.
type usageError struct{ err error }

func (e *usageError) Error() string { return e.err.Error() }

func (e *usageError) Unwrap() error { return e.err }

// misuse returns the usageError of a command that is not written as it should
// be.
func misuse(format string, args ...any) error {
	return &usageError{fmt.Errorf(format+" (go run ./book -h explains)", args...)}
}

// run does what args say with the chapters of the book and returns the exit
// status.
func run(book []weave.Chapter, args []string, stdout, stderr io.Writer) int {
	err := dispatch(book, args, stdout)
	if errors.Is(err, flag.ErrHelp) {
		_, err = io.WriteString(stdout, usage)
	}
	if err == nil {
		return done
	}
	// Nothing can be done if the complaint cannot be written.
	_, _ = fmt.Fprintln(stderr, "book:", err)
	if _, ok := errors.AsType[*usageError](err); ok {
		return misused
	}
	return failed
}

func dispatch(book []weave.Chapter, args []string, stdout io.Writer) error {
	if len(args) == 0 {
		_, err := io.WriteString(stdout, weave.Contents(book))
		return err
	}
	switch command, rest := args[0], args[1:]; command {
	case "show":
		return show(book, rest, stdout)
	case "weave":
		return weaveFiles(book, rest, stdout)
	case "-h", "-help", "--help", "help":
		return flag.ErrHelp
	default:
		return misuse("unknown command %q; there are show and weave", command)
	}
}

// find returns the chapter on topic.
func find(book []weave.Chapter, topic string) (weave.Chapter, error) {
	unknown := &weave.UnknownError{Kind: "topic", Name: topic}
	for _, c := range book {
		if c.Topic == topic {
			return c, nil
		}
		unknown.Known = append(unknown.Known, c.Topic)
	}
	return weave.Chapter{}, &usageError{unknown}
}

// parse reads flags before, between and behind the other arguments, which it
// returns.
func parse(flags *flag.FlagSet, args []string) ([]string, error) {
	flags.SetOutput(io.Discard) // the caller reports
	var others []string
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				return nil, err
			}
			return nil, misuse("%s: %w", flags.Name(), err)
		}
		if flags.NArg() == 0 {
			return others, nil
		}
		others = append(others, flags.Arg(0))
		args = flags.Args()[1:]
	}
}
