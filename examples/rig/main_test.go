package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func ask(args ...string) (status int, stdout, stderr string) {
	var out, errs bytes.Buffer
	status = run(args, &out, &errs)
	return status, out.String(), errs.String()
}

func TestDemo(t *testing.T) {
	status, text, errs := ask()
	if status != 0 || errs != "" {
		t.Fatalf("status %d, %s", status, errs)
	}
	for _, want := range []string{"In short", "DANGER C4", "3109 Wh a day", "Circuits", "carbon monoxide"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in the plan", want)
		}
	}
	if strings.Contains(text, "\x1b") {
		t.Error("the plan has colour")
	}
	status, with, _ := ask("-working")
	if status != 0 || !strings.HasPrefix(with, text) || !strings.Contains(with, "from memory") || len(with) < 3*len(text) {
		t.Errorf("-working: status %d, %d bytes after %d", status, len(with), len(text))
	}
	for i, line := range strings.Split(with, "\n") {
		if n := len([]rune(line)); n > 80 {
			t.Errorf("line %d has %d columns: %q", i+1, n, line)
		}
	}
}

func TestFormats(t *testing.T) {
	status, text, _ := ask("-format", "json")
	if status != 0 || !json.Valid([]byte(text)) {
		t.Errorf("json: status %d", status)
	}
	if strings.Contains(text, `"working"`) || !strings.Contains(text, `"demo": true`) {
		t.Error("json: working that nobody asked for, or no word that it is a demo")
	}
	status, text, _ = ask("-format", "json", "-working")
	var plan struct {
		Demo    bool
		Working []struct {
			Part  string
			Steps []struct{ Kind, Value string }
		}
	}
	if err := json.Unmarshal([]byte(text), &plan); status != 0 || err != nil || !plan.Demo || len(plan.Working) < 90 || plan.Working[0].Part != "lamps" ||
		plan.Working[0].Steps[0].Value != "3.2 W" {
		t.Errorf("json with working: status %d, %v, %d sheets", status, err, len(plan.Working))
	}
	if status, text, _ = ask("-format", "markdown"); status != 0 || strings.Contains(text, "```math") {
		t.Errorf("markdown without working: status %d", status)
	}
	status, text, _ = ask("-format", "markdown", "-working")
	if status != 0 || !strings.HasPrefix(text, "# Power plan") || !strings.Contains(text, "```math") {
		t.Errorf("markdown: status %d", status)
	}
}

func TestOwnRig(t *testing.T) {
	_, description, _ := ask("-demo")
	file := filepath.Join(t.TempDir(), "mine.json")
	write := func(text string) {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write(description)
	_, demo, _ := ask()
	// The same plan; only that of a rig nobody named says that it is a demo.
	head := "DEMO, invented data: no real vehicle, place or product. Do not act on it.\n"
	if status, text, errs := ask("-rig", file); status != 0 || text != strings.Replace(demo, head, "", 1) || text == demo {
		t.Errorf("the demo from a file: status %d, %s", status, errs)
	}
	write(strings.Replace(description, `"89 %"`, `"89"`, 1))
	status, text, errs := ask("-rig", file)
	if want := "rig: " + file + ": a mistake in the description of the rig:\n  inverter.efficiency = \"89\", want "; status != 1 || text != "" || !strings.HasPrefix(errs, want) {
		t.Errorf("a mistake: status %d, %q, %q", status, text, errs)
	}
	// One that only shows between the parts: the panels do not fit their strings.
	write(strings.Replace(description, `"series": 2`, `"series": 3`, 1))
	if status, text, errs := ask("-rig", file); status != 1 || text != "" || !strings.HasPrefix(errs, "rig: "+file+": a mistake in the description of the rig:\n  roof.series = 3, want ") {
		t.Errorf("a mistake between parts: status %d, %q, %q", status, text, errs)
	}
	write(strings.Replace(description, `"89 %"`, `89 %`, 1))
	if status, text, errs := ask("-rig", file); status != 1 || text != "" || !strings.HasPrefix(errs, "rig: "+file+": line 166: '%' is not expected here; ") {
		t.Errorf("a text without quotes: status %d, %q, %q", status, text, errs)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"-rig", "no/such/file.json"}, 1, "rig: no/such/file.json cannot be read: no such file or directory\n"},
		{[]string{"-rig", "."}, 1, "rig: . cannot be read: is a directory\n"},
		{[]string{"-format", "poem"}, 2, "poem"},
		{[]string{"mine.json"}, 2, "mine.json"},
		{[]string{"-rig", ""}, 2, "names no file"},
		{[]string{"-nonsense"}, 2, "rig: unknown flag -nonsense\n\n"},
		{[]string{"-rig"}, 2, "rig: flag needs an argument: -rig\n\n"},
		{[]string{"-working=perhaps"}, 2, "rig: invalid boolean value \"perhaps\" for -working"},
		{[]string{"-rig", "mine.json", "-demo"}, 2, "nothing to do"},
	} {
		status, text, errs := ask(c.args...)
		if status != c.status || text != "" || !strings.Contains(errs, c.want) || !strings.HasPrefix(errs, "rig: ") || strings.Contains(errs, "\nrig: ") {
			t.Errorf("%v: status %d, %q, %q", c.args, status, text, errs)
		}
		if c.status == 2 && strings.Count(errs, "Exit status") != 1 {
			t.Errorf("%v: the usage is there %d times", c.args, strings.Count(errs, "Exit status"))
		}
	}
}

// TestHelp: who asks how it goes gets it as an answer, not as an error, with
// every flag and exit status.
func TestHelp(t *testing.T) {
	status, text, errs := ask("-h")
	if status != 0 || errs != "" {
		t.Errorf("status %d, %q", status, errs)
	}
	for _, want := range []string{"-rig FILE", "-demo", "-working", "-format FORMAT", "Exit status: 0", "1 a mistake", "2 a wrong flag", "go doc"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len(line) > 80 {
			t.Errorf("%d columns: %q", len(line), line)
		}
	}
}

// A full disk takes so many bytes and no more.
type full struct{ room int }

func (f *full) Write(p []byte) (int, error) {
	n := min(len(p), f.room)
	if f.room -= n; n < len(p) {
		return n, errors.New("no space left on device")
	}
	return n, nil
}

// TestFullDisk: a plan that is cut short is not taken for one that was printed.
func TestFullDisk(t *testing.T) {
	for _, args := range [][]string{{}, {"-working"}, {"-format", "json"}, {"-format", "json", "-working"}, {"-format", "markdown"},
		{"-format", "markdown", "-working"}, {"-demo"}, {"-h"}} {
		var errs bytes.Buffer
		if status := run(args, &full{room: 100}, &errs); status != 1 || !strings.Contains(errs.String(), "no space left") {
			t.Errorf("%v: status %d, %q", args, status, errs.String())
		}
	}
}
