package main_test

import (
	"embed"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	book "example.com/drawbar/book"
	"example.com/drawbar/book/figure"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"github.com/google/go-cmp/cmp"
)

//go:embed run_test.go
var source embed.FS

// shelf is a small book: a chapter that is right and one that is not.
func shelf() []weave.Chapter {
	return []weave.Chapter{
		{Topic: "fan", Title: "Fans", Question: "What does a fan take?", Source: source, Blocks: []weave.Block{
			weave.Worked{Name: "small", Title: "A small fan", Question: "What do {{power}} take?", Solve: solveFan,
				Inputs: []weave.Input{{Name: "power", Label: "power", Default: "30 W", Unit: "W", Low: "1 W", High: "100 W"}}},
			weave.Figure{Name: "fans", Caption: "Fans.", Draw: fans},
			weave.Exercise{Name: "fused", Question: "What do {{power}} take behind a fuse?", Solve: solveFused,
				Inputs: []weave.Input{{Name: "power", Label: "power", Default: "30 W", Unit: "W", Low: "1 W", High: "100 W"}}},
		}},
		{Topic: "gap", Title: "Gaps", Question: "What is missing?", Source: source, Blocks: []weave.Block{
			weave.Prose("{{small.current}}"),
			weave.Worked{Name: "small", Title: "A small gap", Question: "What?", Solve: solveFan,
				Inputs: []weave.Input{{Name: "power", Label: "power", Default: "300 W", Unit: "W", Low: "1 W", High: "100 W"}}},
		}},
	}
}

func solveFan(in *weave.Inputs) (weave.Answer, error) {
	i := weave.In[units.Power](in, "power").At(12 * units.Volt)
	return weave.Answer{
		Text:   "They take {{current}}.",
		Values: []weave.Value{weave.Show("current", i, "A", 3)},
	}, nil
}

// solveFused has an answer for what a fuse of 5 A carries.
func solveFused(in *weave.Inputs) (weave.Answer, error) {
	i := weave.In[units.Power](in, "power").At(12 * units.Volt)
	if err := units.Between(0*units.Ampere, 5*units.Ampere).Check("fuse", "Current", i); err != nil {
		return weave.Answer{}, err
	}
	return solveFan(in)
}

func fans() (figure.Chart, error) {
	return figure.Chart{Title: "Fans", Description: "A straight line.",
		X:     figure.Axis{Label: "power", Unit: "W", Max: 10},
		Y:     figure.Axis{Label: "current", Unit: "A", Max: 1},
		Lines: []figure.Line{{Name: "12 V", Points: []figure.Point{{X: 0, Y: 0}, {X: 10, Y: 0.83}}}}}, nil
}

// call returns what the command prints and its status.
func call(args ...string) (stdout, stderr string, status int) {
	var out, complaint strings.Builder
	status = book.Run(shelf(), args, &out, &complaint)
	return out.String(), complaint.String(), status
}

func TestOutput(t *testing.T) {
	tests := []struct {
		name string
		args []string
		want []string // in the output
	}{
		{"list", nil, []string{"fan  What does a fan take?\n", "gap  What is missing?\n"}},
		{"help", []string{"-h"}, []string{"go run ./book show <topic>", "-set <input>=<value>", "Exit status"}},
		{"help as a word", []string{"help"}, []string{"go run ./book show <topic>"}},
		{"help of show", []string{"show", "-h"}, []string{"-example <name>"}},
		{"help of weave", []string{"weave", "-help"}, []string{"-root <folder>"}},
		{"chapter", []string{"show", "fan"}, []string{"====\nFans\n====\n", "*Answer.* They take 2.5 A.", "*Figure:* Fans."}},
		{"markdown", []string{"show", "fan", "-format", "markdown"}, []string{"# Fans\n", "**Answer.** They take 2.5 A."}},
		{"html, flag first", []string{"show", "-format=html", "fan"}, []string{"<!DOCTYPE html>", "<h1>Fans</h1>", "<svg"}},
		{"example", []string{"show", "fan", "-example", "small"}, []string{"*Answer.* They take 2.5 A."}},
		{"setting", []string{"show", "-example", "small", "fan", "-set", "power=60W"}, []string{"*Answer.* They take 5 A.", "60 W (in the chapter: 30 W)"}},
		{"the same value, written otherwise", []string{"show", "fan", "-example", "small", "-set", "power=0.03kW"}, []string{"  30 W   1 W to 100 W"}},
		{"exercise", []string{"show", "fan", "-example", "fused", "-set", "power=60 W"}, []string{"60 W (in the chapter: 30 W)", "They take 5 A."}},
		{"the last setting holds", []string{"show", "fan", "-example", "small", "-set", "power=60 W", "-set", "power=12 W"}, []string{"They take 1 A."}},
	}
	for _, tt := range tests {
		stdout, stderr, status := call(tt.args...)
		if status != 0 || stderr != "" {
			t.Errorf("%s: status %d, %s", tt.name, status, stderr)
		}
		for _, want := range tt.want {
			if !strings.Contains(stdout, want) {
				t.Errorf("%s: lacks %q:\n%s", tt.name, want, stdout)
			}
		}
		if strings.Contains(strings.Join(tt.args, " "), "-example") && strings.Contains(stdout, "Figure") {
			t.Errorf("%s: shows more than the example", tt.name)
		}
	}
}

func TestComplaints(t *testing.T) {
	tests := []struct {
		name   string
		args   []string
		status int
		want   string
	}{
		// what the reader asks for
		{"command", []string{"sow"}, 2, `unknown command "sow"; there are show and weave`},
		{"topic", []string{"show", "van"}, 2, `no topic "van"; there are fan, gap`},
		{"no topic", []string{"show"}, 2, "show: 0 topics, want one"},
		{"two topics", []string{"show", "fan", "gap"}, 2, "show: 2 topics, want one"},
		{"flag", []string{"show", "fan", "-colour"}, 2, "show: flag provided but not defined: -colour"},
		{"format", []string{"show", "fan", "-format", "pdf"}, 2, `-format "pdf", want text, markdown or html`},
		{"example", []string{"show", "fan", "-example", "big"}, 2, `no example "big"; there are small, fused`},
		{"input", []string{"show", "fan", "-example", "small", "-set", "current=1A"}, 2, `no input "current"; there are power`},
		{"range", []string{"show", "fan", "-example", "small", "-set", "power=101 W"}, 2, "power = 101 W, want 1 W to 100 W"},
		{"no unit", []string{"show", "fan", "-example", "small", "-set", "power=50"}, 2, "power = 50, want 1 W to 100 W: no unit; want one of W, "},
		{"another unit", []string{"show", "fan", "-example", "small", "-set", "power=50 kg"}, 2, `want 1 W to 100 W: unknown unit "kg"; want one of W, `},
		{"no answer", []string{"show", "fan", "-example", "fused", "-set", "power=61 W"}, 2,
			`chapter fan: exercise "fused": these inputs have no answer: fuse: Current = 5.08333333 A, want 0 A to 5 A`},
		{"no value", []string{"show", "fan", "-example", "small", "-set", "power"}, 2, "want <input>=<value>"},
		{"no input", []string{"show", "fan", "-example", "small", "-set", "=5 W"}, 2, "want <input>=<value>"},
		{"no example", []string{"show", "fan", "-set", "power=5 W"}, 2, "-set needs -example; there are small, fused"},
		{"weave topic", []string{"weave", "van"}, 2, `no topic "van"; there are fan, gap`},
		{"weave flag", []string{"weave", "-colour"}, 2, "weave: flag provided"},
		// what is wrong with the book
		{"chapter", []string{"show", "gap"}, 1, `chapter gap: worked example "small": power = 300 W, want 1 W to 100 W`},
		{"its example", []string{"show", "gap", "-example", "small"}, 1, "power = 300 W"},
		{"no folder", []string{"weave", "-root", "testdata/nowhere", "fan"}, 1, "no folder of the chapter here (see -root)"},
	}
	for _, tt := range tests {
		stdout, stderr, status := call(tt.args...)
		if status != tt.status || stdout != "" {
			t.Errorf("%s: status %d, want %d; printed %q", tt.name, status, tt.status, stdout)
		}
		if !strings.HasPrefix(stderr, "book: ") || !strings.Contains(stderr, tt.want) {
			t.Errorf("%s: %q lacks %q", tt.name, stderr, tt.want)
		}
	}
}

// closed is a standard output that takes nothing.
type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, errors.New("closed") }

func TestClosedOutput(t *testing.T) {
	root := emptyRoot(t)
	for _, args := range [][]string{nil, {"-h"}, {"show", "fan"}, {"weave", "-root", root, "fan"}} {
		var complaint strings.Builder
		if status := book.Run(shelf(), args, closed{}, &complaint); status != 1 || complaint.String() != "book: closed\n" {
			t.Errorf("%q: status %d, %q", args, status, complaint.String())
		}
	}
}

// emptyRoot returns a root with a folder for the chapter on fans.
func emptyRoot(t *testing.T) string {
	t.Helper()
	root := t.TempDir()
	if err := os.MkdirAll(filepath.Join(root, "book", "fan"), 0o755); err != nil {
		t.Fatal(err)
	}
	return root
}

func TestWeave(t *testing.T) {
	root := emptyRoot(t)
	file := func(name string) string { return filepath.Join(root, "book", "fan", name) }
	write := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(file(name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	weaving := func(want string) {
		t.Helper()
		stdout, stderr, status := call("weave", "-root", root, "fan")
		if diff := cmp.Diff(want, stdout); diff != "" || stderr != "" || status != 0 {
			t.Errorf("status %d, %s\n%s", status, stderr, diff)
		}
	}
	weaving("wrote " + file("README.md") + "\nwrote " + file("fans.svg") + "\n")
	markdown, err := os.ReadFile(file("README.md"))
	if shown, _, _ := call("show", "fan", "-format", "markdown"); err != nil || string(markdown) != shown {
		t.Errorf("README.md is not what show prints: %v", err)
	}
	weaving("") // nothing to do
	write("fans.svg", "another")
	weaving("wrote " + file("fans.svg") + "\n")
	write("old.svg", "of a figure that is gone")
	write("notes.txt", "not woven")
	weaving("removed " + file("old.svg") + "\n")
	if _, err := os.Stat(file("old.svg")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("old.svg: %v", err)
	}
	if _, err := os.Stat(file("notes.txt")); err != nil {
		t.Error(err)
	}

	// All chapters: the second is wrong.
	_, stderr, status := call("weave", "-root", root)
	if status != 1 || !strings.Contains(stderr, "gap") {
		t.Errorf("status %d, %q", status, stderr)
	}
	// A folder where a file should be is no file to compare with.
	if err := os.Mkdir(file("nofile"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(os.Remove(file("README.md")), os.Rename(file("nofile"), file("README.md"))); err != nil {
		t.Fatal(err)
	}
	if _, stderr, status := call("weave", "-root", root, "fan"); status != 1 || !strings.Contains(stderr, "README.md") {
		t.Errorf("status %d, %q", status, stderr)
	}
}
