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
	"os"

	"example.com/drawbar/examples/plan"
)

// demo is an invented trailer, the field base of a bird-migration count.
//
//go:embed demo.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

const usage = `Rig prints the power plan of a rig.

    go run ./examples/rig                      the invented demo rig
    go run ./examples/rig -rig FILE            yours, described as in demo.json
    go run ./examples/rig -working             with the working behind each number
    go run ./examples/rig -format markdown     or json, or text (the default)
    go run ./examples/rig -demo > mine.json    the description of the demo, to change

Exit status: 0 done; 1 a mistake in the description, each named with its path;
2 a wrong flag.
`

// run is the program; it returns the exit status.
func run(args []string, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("rig", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() { fmt.Fprint(stderr, usage) }
	file := flags.String("rig", "", "description of the rig, in JSON")
	working := flags.Bool("working", false, "show the working behind each number")
	format := flags.String("format", "text", "text, json or markdown")
	show := flags.Bool("demo", false, "print the description of the demo rig")
	if err := flags.Parse(args); errors.Is(err, flag.ErrHelp) {
		return 0
	} else if err != nil {
		return 2
	}
	given := false
	flags.Visit(func(f *flag.Flag) { given = given || f.Name == "rig" })
	if given && *file == "" {
		fmt.Fprint(stderr, "rig: -rig names no file\n\n"+usage)
		return 2
	}
	if flags.NArg() > 0 || *format != "text" && *format != "json" && *format != "markdown" {
		fmt.Fprintf(stderr, "rig: unknown argument or format %q\n\n%s", append(flags.Args(), *format), usage)
		return 2
	}
	if *show {
		_, _ = stdout.Write(demo)
		return 0
	}
	if err := print(stdout, *file, *format, *working); err != nil {
		fmt.Fprintln(stderr, "rig:", err)
		return 1
	}
	return 0
}

// print writes the plan of the rig in file, or of the demo.
func print(w io.Writer, file, format string, working bool) error {
	data := demo
	if file != "" {
		var err error
		if data, err = os.ReadFile(file); err != nil {
			return err
		}
	}
	rig, err := plan.Read(data)
	if err != nil {
		return err
	}
	p, err := plan.Make(rig)
	if err != nil {
		return err
	}
	switch format {
	case "json":
		text, err := p.JSON()
		if err != nil {
			return err
		}
		_, err = w.Write(text)
		return err
	case "markdown":
		fmt.Fprint(w, p.Markdown())
	default:
		fmt.Fprint(w, p.Text())
	}
	for _, s := range p.Working() {
		if !working {
			break
		}
		if format == "markdown" {
			fmt.Fprint(w, "\n", s.Markdown())
		} else {
			fmt.Fprint(w, "\n", s.Text())
		}
	}
	return nil
}
