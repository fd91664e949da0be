package harness_test

import (
	"bufio"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/book/harness"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units/unitstest"
)

// TestRecordedDigits: each number that the chapter prints of the simulator is
// one of the file that it names, rounded.
func TestRecordedDigits(t *testing.T) {
	numbers := 0
	for _, b := range harness.Chapter().Blocks {
		table, ok := b.(weave.Table)
		if !ok || table.Title != "Networks of the simulator" {
			continue
		}
		rows, err := table.Rows()
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			numbers++
			if !isRecorded(t, r.Source.Place, r.Printed.Digits()) {
				t.Errorf("%s: no number in %s is %s rounded", r.What, r.Source.Place, r.Printed.Digits())
			}
		}
	}
	if numbers < 20 {
		t.Errorf("%d numbers of the simulator, want 20 or more", numbers)
	}
}

// isRecorded reports whether some number of a recorded file rounds to these
// digits.
func isRecorded(t *testing.T, file, digits string) bool {
	t.Helper()
	f, err := os.Open(filepath.Join(unitstest.Root(t), filepath.FromSlash(file)))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	_, decimals, _ := strings.Cut(digits, ".")
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		_, number, ok := strings.Cut(lines.Text(), ",")
		x, err := strconv.ParseFloat(number, 64)
		if ok && err == nil && strconv.FormatFloat(x, 'f', len(decimals), 64) == digits {
			return true
		}
	}
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return false
}

// noVoltage is what an answer says of a collapse. The printed code has a line
// end in it.
const noVoltage = "It does not settle: there is no voltage at which"

// TestOtherInputs: what the examples say when their inputs are others.
func TestOtherInputs(t *testing.T) {
	for _, c := range []struct {
		example, input, value string
		want                  string
	}{
		// Collapse where one step of arithmetic prints a voltage.
		{"inverter", "power", "3800 W", noVoltage},                                // 12.2² / (4 · 0.010) is 3721 W
		{"inverter", "power", "3800 W", "97.9 %"},                                 // 3721 / 3800
		{"inverter", "power", "1700 W", "it runs."},                               // 6.1 + √(6.1² - 0.010 · 1700) is 10.596 V
		{"dimming", "fed", "on the panel", "the panel's feeder changes by 1.4 V"}, // 143 A in 9.8 mΩ
		{"dimming", "fed", "on the panel", "feeder-above-limit"},
		{"dimming", "bank", "60 mΩ", noVoltage},
		// Equal shares without links; minus at the other end is the example itself.
		{"row", "lead", "0 mΩ", "In order they give 50 A, 50 A, 50 A and 50 A."},
		{"row", "minus", "4", "In order they give 54.5 A, 45.5 A, 45.5 A and 54.5 A."},
		{"row", "limit", "77.1 A", "the row may give 200 A"}, // its share of 200 A is 77.1 A
		{"two", "second", "500 W", "It settles. Alone, the first gets 10.6"},
		{"two", "first", "5000 W", noVoltage},            // above the 4879 W of the way
		{"two", "second", "5000 W", noVoltage},           // the same
		{"unlike", "lead", "13.2 V", "gives 5 A"},        // 0.1 V over 20 mΩ
		{"unlike", "lithium", "12.4 V", "gives 0 A"},     // alike
		{"unlike", "current", "45 A", "it gives 67.5 A"}, // 45 A and half of the load: 10 mΩ on either side
		{"lug", "lug", "0 mΩ", "first gives 75 A"},       // symmetric
		{"charged", "low", "12.3 V", "28.6 A"},           // 0.4 V over 14 mΩ
		{"most", "power", "3000 W", "Yes, by this arithmetic."},
		{"compressor", "size", "16 AWG", "It gets 8.999 V"}, // 255.1 mΩ: 6.2 + √(6.2² - 0.2551 · 120)
	} {
		woven, err := weave.WeaveExample(harness.Chapter(), c.example, []weave.Setting{{Input: c.input, Value: c.value}})
		if err != nil {
			t.Errorf("%s, %s = %s: %v", c.example, c.input, c.value, err)
			continue
		}
		if text := strings.Join(strings.Fields(woven.Text()), " "); !strings.Contains(text, c.want) {
			t.Errorf("%s, %s = %s: no %q in\n%.1500s", c.example, c.input, c.value, c.want, text)
		}
	}
}

// TestSeveralInputs: the same with more than one input changed.
func TestSeveralInputs(t *testing.T) {
	for _, c := range []struct {
		example string
		set     []weave.Setting
		want    string
	}{
		{"compressor", []weave.Setting{{Input: "power", Value: "400 W"}, {Input: "size", Value: "16 AWG"}, {Input: "one_way", Value: "60 ft"}}, noVoltage},
		// Seen from the other end, the row is the same.
		{"row", []weave.Setting{{Input: "plus", Value: "4"}, {Input: "minus", Value: "4"}}, "Battery 4 works hardest, with 38.5 %"},
		{"row", []weave.Setting{{Input: "plus", Value: "2"}, {Input: "minus", Value: "3"}}, "In order they give 45.5 A, 54.5 A, 54.5 A and 45.5 A."},
		// The row has 60 ∥ (40 + 60 ∥ (40 + 60 ∥ 100)) mΩ, which is 33 mΩ: 13.2 V are gone at 399 A.
		{"row", []weave.Setting{{Input: "each", Value: "60 mΩ"}, {Input: "lead", Value: "20 mΩ"}, {Input: "current", Value: "600 A"}}, noVoltage},
		// E²/4R: twice the voltage, four times the power of 3057 W.
		{"most", []weave.Setting{{Input: "voltage", Value: "25.6 V"}, {Input: "power", Value: "8000 W"}}, "The most is 12230 W, at 12.8 V"},
		{"long_row", []weave.Setting{{Input: "batteries", Value: "2"}, {Input: "lead", Value: "0 mΩ"}}, "50 % of the whole, where an equal share is 50 %."},
		// 1 A through (3 + 2·3) mΩ beside 3 mΩ: three quarters in the first.
		{"long_row", []weave.Setting{{Input: "batteries", Value: "2"}, {Input: "lead", Value: "3 mΩ"}}, "75 % of the whole"},
	} {
		woven, err := weave.WeaveExample(harness.Chapter(), c.example, c.set)
		if err != nil {
			t.Errorf("%s, %v: %v", c.example, c.set, err)
			continue
		}
		if text := strings.Join(strings.Fields(woven.Text()), " "); !strings.Contains(text, c.want) {
			t.Errorf("%s, %v: no %q in\n%.1500s", c.example, c.set, c.want, text)
		}
	}
}
