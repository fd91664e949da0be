// Rig reads the description of a vehicle's electrical system and prints its
// power plan: what the loads use, what each source can carry, how long the
// bank lasts, what the sun brings, each circuit, and what needs attention.
//
//	go run ./examples/rig
//	go run ./examples/rig -rig mine.json -working
//	go run ./examples/rig -h
package main

import (
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"example.com/drawbar/examples/plan"
)

// demo is an invented trailer, the field base of a bird-migration count.
//
//go:embed demo.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

//go:embed usage.txt
var usage string

// run is the program; it returns the exit status.
func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("rig", flag.ContinueOnError)
	flags.SetOutput(io.Discard) // what is wrong is said below, once
	file := flags.String("rig", "", "")
	working := flags.Bool("working", false, "")
	format := flags.String("format", "text", "")
	show := flags.Bool("demo", false, "")
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return write(stdout, stderr, []byte(usage))
	} else if err != nil {
		return wrongFlag(stderr, "rig: "+strings.Replace(err.Error(), "flag provided but not defined:", "unknown flag", 1)+"\n")
	}
	given := false
	flags.Visit(func(f *flag.Flag) { given = given || f.Name == "rig" })
	switch {
	case given && *file == "":
		return wrongFlag(stderr, "rig: -rig names no file\n")
	case given && *show:
		return wrongFlag(stderr, "rig: -demo prints the demo's description, so -rig has nothing to do\n")
	case flags.NArg() > 0:
		return wrongFlag(stderr, fmt.Sprintf("rig: unknown argument %q; a file is named with -rig\n", flags.Arg(0)))
	case *format != "text" && *format != "json" && *format != "markdown":
		return wrongFlag(stderr, fmt.Sprintf("rig: unknown format %q; want text, json or markdown\n", *format))
	case *show:
		return write(stdout, stderr, demo)
	}
	text, err := planned(*file, *format, *working)
	if err != nil {
		fmt.Fprintln(stderr, "rig:", err)
		return 1
	}
	return write(stdout, stderr, text)
}

// wrongFlag says what is wrong and how it goes.
func wrongFlag(stderr io.Writer, message string) int {
	fmt.Fprint(stderr, message+"\n"+usage)
	return 2
}

// write writes all there is to standard output, which fails where a disk is
// full, and returns the exit status.
func write(stdout, stderr io.Writer, text []byte) int {
	if _, err := stdout.Write(text); err != nil {
		fmt.Fprintln(stderr, "rig: the output is not complete:", err)
		return 1
	}
	return 0
}

// unread says which file cannot be read and why, without the name of a system
// call.
func unread(file string, err error) error {
	if at := new(fs.PathError); errors.As(err, &at) {
		err = at.Err
	}
	return fmt.Errorf("%s cannot be read: %w", file, err)
}

// planned returns the plan of the rig in file, or of the demo.
func planned(file, format string, working bool) ([]byte, error) {
	data := demo
	if file != "" {
		var err error
		if data, err = os.ReadFile(file); err != nil {
			return nil, unread(file, err)
		}
	}
	rig, err := plan.Read(data)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	p, err := plan.Make(rig)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	p.Demo = file == ""
	switch {
	case format == "json" && working:
		return p.JSONWithWorking()
	case format == "json":
		return p.JSON()
	case format == "markdown" && working:
		return []byte(p.MarkdownWithWorking()), nil
	case format == "markdown":
		return []byte(p.Markdown()), nil
	case working:
		return []byte(p.TextWithWorking()), nil
	}
	return []byte(p.Text()), nil
}
