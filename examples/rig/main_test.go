package main

import (
	"bytes"
	"encoding/json"
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
	if status, text, errs := ask("-rig", file); status != 0 || text != demo {
		t.Errorf("the demo from a file: status %d, %s", status, errs)
	}
	write(strings.Replace(description, `"89 %"`, `"89"`, 1))
	status, text, errs := ask("-rig", file)
	if status != 1 || text != "" || !strings.Contains(errs, `inverter.efficiency = "89"`) {
		t.Errorf("a mistake: status %d, %q, %q", status, text, errs)
	}
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"-rig", "no/such/file.json"}, 1, "no such file"},
		{[]string{"-format", "poem"}, 2, "poem"},
		{[]string{"mine.json"}, 2, "mine.json"},
		{[]string{"-rig", ""}, 2, "names no file"},
		{[]string{"-nonsense"}, 2, "nonsense"},
		{[]string{"-h"}, 0, "Exit status"},
	} {
		status, text, errs := ask(c.args...)
		if status != c.status || text != "" || !strings.Contains(errs, c.want) {
			t.Errorf("%v: status %d, %q, %q", c.args, status, text, errs)
		}
	}
}
