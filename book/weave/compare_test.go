package weave_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

// Rows that are right, with the cells they make: ours, printed, difference.
func TestComparisons(t *testing.T) {
	tests := []struct {
		name    string
		ours    units.Value
		printed string
		digits  string // of printed
		within  string
		want    string
	}{
		{"one digit more than print", 0.7432 * units.Volt, "V", "0.74", "", "0.743 V | 0.74 V | +0.003 V (+0.43 %) | agrees"},
		{"below print", 0.7368 * units.Volt, "V", "0.74", "", "0.737 V | 0.74 V | -0.003 V (-0.43 %) | agrees"},
		{"too small to show", 0.7401 * units.Volt, "V", "0.74", "", "0.740 V | 0.74 V | 0 | agrees"},
		{"noise", units.Voltage(0.1) + 0.2, "V", "0.3", "", "0.30 V | 0.3 V | 0 | agrees"},
		{"whole number", 1536 * units.Watt, "W", "1536", "", "1536.0 W | 1536 W | 0 | agrees"},
		{"six digits are enough", 123456.2 * units.Watt, "W", "123456", "", "123456 W | 123456 W | 0 | agrees"},
		{"power of ten", 1.723e-8 * units.OhmMetre, "Ω·m", "1.72e-8", "", "1.723e-08 Ω·m | 1.72e-8 Ω·m | +3e-11 Ω·m (+0.17 %) | agrees"},
		{"percentages", 16.66 * units.Percent, "%", "16.7", "", "16.66 % | 16.7 % | -0.04 points | agrees"},
		{"plain number", units.Ratio(2.0052), "", "2", "", "2.0 | 2 | 0 | agrees"},
		{"angle", 45.04 * units.Degree, "°", "45.0", "", "45.04° | 45.0° | +0.04° (+0.089 %) | agrees"},
		{"temperature", units.Celsius(-9.6), "°C", "-10", "", "-9.6 °C | -10 °C | +0.4 °C | agrees"},
		{"zero", 0.002 * units.Volt, "V", "0.00", "", "0.002 V | 0.00 V | +0.002 V | agrees"},
		{"ratio allowed", 0.75 * units.Volt, "V", "0.74", "1.5 %", "0.750 V | 0.74 V | +0.010 V (+1.4 %) | agrees within 1.5 %"},
		{"quantity allowed, its end", 0.76 * units.Volt, "V", "0.74", "0.02 V", "0.760 V | 0.74 V | +0.020 V (+2.7 %) | agrees within 0.02 V"},
	}
	for _, tt := range tests {
		row := weave.Row{What: "it", Ours: tt.ours, Printed: units.MustPrinted(tt.digits, tt.printed), Source: handbook, Within: tt.within}
		if tt.within != "" {
			row.Why = "its own precision"
		}
		got := woven(t, weave.Table{Title: "T", Rows: func() ([]weave.Row, error) { return []weave.Row{row}, nil }})
		if want := "| it | " + tt.want + ` | \[1\] |`; !strings.Contains(got, want) {
			t.Errorf("%s: want %s in\n%s", tt.name, want, got)
		}
	}
}

// noSolve is a source without a solve function that a block would have to use.
var noSolve = fstest.MapFS{"a.go": {Data: []byte("package a\nfunc f() {}")}}

// woven returns the Markdown of a chapter of one block without code.
func woven(t *testing.T, b weave.Block) string {
	t.Helper()
	c := chapter(b)
	c.Source = noSolve
	w, err := weave.Weave(c)
	if err != nil {
		t.Fatal(err)
	}
	return w.Markdown()
}

func TestFormulaWithoutUnit(t *testing.T) {
	got := woven(t, weave.Formula{Equations: []string{"k = pi / 2"}, Where: []weave.Symbol{{Name: "k", What: "a quarter turn"}}})
	if want := "```math\nk = \\frac{\\pi}{2}\n```\n\nwhere\n\n- `k`: a quarter turn\n"; !strings.Contains(got, want) {
		t.Errorf("want %s in\n%s", want, got)
	}
}

func TestContents(t *testing.T) {
	long := chapter()
	long.Topic, long.Question = "a", strings.Repeat("why ", 30)+"not?"
	want := "a      " + strings.TrimSpace(strings.Repeat("why ", 18)) + "\n" +
		"       " + strings.Repeat("why ", 12) + "not?\n" +
		"wrong  What is wrong?\n"
	if got := weave.Contents([]weave.Chapter{long, chapter()}); got != want {
		t.Errorf("Contents = %q, want %q", got, want)
	}
}
